import { X509Certificate } from 'node:crypto';
import { type Server, createServer } from 'node:http';
import type { LanCertificate } from '#runtime';

/** Of the root, as devices and this window show it. */
const fingerprintOf = ({ root }: LanCertificate): string => new X509Certificate(root).fingerprint256;

/** What the window says of a house on its own network. */
export function lanLines(lan: LanCertificate, port: number): string[] {
  const [first = 'localhost'] = lan.names;
  const others = lan.names.slice(1).filter((each) => each !== '127.0.0.1');
  return [
    `Cartwright is at https://${first}:${port}`,
    ...others.map((each) => `  or at https://${each}:${port}`),
    ...lan.leftOut.map((each) => `  not at ${each}: the certificate is for networks and names of one's own, those of the first start`),
    `A device that is to open it without a network trusts its certificate once; how is told at http://${first}:${port + 1}`,
    `  SHA-256 of the certificate, to be compared there: ${fingerprintOf(lan)}`,
  ];
}

/** From memory, not from the makers' pages: the words of a platform change with its versions. */
const steps: readonly (readonly [string, readonly string[]])[] = [
  [
    'iPhone, iPad',
    [
      'Open the certificate in Safari and allow it to be loaded.',
      'Settings, General, VPN & Device Management: install it.',
      'Settings, General, About, Certificate Trust Settings: switch it on.',
    ],
  ],
  [
    'Android',
    ['Load the certificate.', 'Settings, Security, Encryption & credentials, Install a certificate, CA certificate: choose the file.'],
  ],
  ['Windows', ['Open the certificate, Install Certificate, Current User.', 'Place it in: Trusted Root Certification Authorities.']],
  ['macOS', ['Open the certificate: it goes into Keychain Access.', 'Open it there, Trust: Always Trust.']],
  ['Firefox, everywhere', ['Settings, Privacy & Security, View Certificates, Authorities, Import: for websites.']],
];

/** Over plain HTTP, for devices that do not trust the house yet; gives out the root's certificate and says how it is trusted, nothing else. */
export function serveTrustPage(lan: LanCertificate, port: number): Promise<Server> {
  const page = trustPage(lan, port);
  const server = createServer({ requestTimeout: 10_000, headersTimeout: 5_000 }, (request, response) => {
    request.resume();
    if (request.method !== 'GET' && request.method !== 'HEAD') return response.writeHead(405, { allow: 'GET, HEAD' }).end();
    if (request.url === '/cartwright-root.crt')
      return response.writeHead(200, { 'content-type': 'application/x-x509-ca-cert', 'content-disposition': 'attachment' }).end(lan.root);
    if (request.url !== '/') return response.writeHead(404).end();
    response.writeHead(200, {
      'content-type': 'text/html; charset=utf-8',
      'content-security-policy': "default-src 'none'; style-src 'unsafe-inline'",
    });
    response.end(page);
  });
  server.maxConnections = 100;
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port + 1, '0.0.0.0', () => resolve(server));
  });
}

function trustPage(lan: LanCertificate, port: number): string {
  const [first = 'localhost'] = lan.names;
  const platforms = steps.map(([name, list]) => `<h2>${name}</h2><ol>${list.map((each) => `<li>${each}</li>`).join('')}</ol>`).join('');
  return `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><title>Trust this house</title>
<style>body{font:18px/1.5 system-ui,sans-serif;max-width:36em;margin:0 auto;padding:16px;color:#16181a;background:#faf8f2}a{color:#0f5e5c}code{overflow-wrap:anywhere}.way{display:block;padding:18px;border:2px solid;border-radius:3px;text-align:center;font-weight:650;text-decoration:none;margin:12px 0}</style>
<h1>Trust this house</h1>
<p>A device that trusts the certificate of this house opens its screens without a network too. The certificate speaks for the names of this machine and for networks of one's own, for no other address.</p>
<p><b>Compare first.</b> This page itself came unprotected. The window in which the house was started shows the same SHA-256, and so does the device when it installs the certificate; where they differ, do not install it.</p>
<p><code>${fingerprintOf(lan)}</code></p>
<a class="way" href="/cartwright-root.crt">Load the certificate</a>
${platforms}
<p>The words on a device differ with its version. Then open:</p>
<a class="way" href="https://${first}:${port}">https://${first}:${port}</a>
<p>Without the certificate a browser warns, and after the warning opens the screens with a network only.</p></html>`;
}
