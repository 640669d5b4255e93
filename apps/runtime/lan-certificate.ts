import 'reflect-metadata';
import { X509Certificate as Read, webcrypto } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname, networkInterfaces } from 'node:os';
import { BlockList } from 'node:net';
import { join } from 'node:path';
import { AsnConvert } from '@peculiar/asn1-schema';
import { GeneralName, GeneralSubtree, GeneralSubtrees, NameConstraints, id_ce_nameConstraints } from '@peculiar/asn1-x509';
import * as x509 from '@peculiar/x509';

/** What a server needs to speak TLS, PEM, and what a device needs to trust it. */
export interface LanCertificate {
  readonly key: string;
  readonly cert: string;
  readonly root: string;
  /** The names and addresses under which it is known, the name of this machine first. */
  readonly names: readonly string[];
  /** What the root does not vouch for: a name that the machine was given later, an address that is not of a network of one's own. */
  readonly leftOut: readonly string[];
}

const algorithm = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;
const dayMs = 86_400_000;
const rootDays = 3_650;
/** Browsers take no longer ones. */
const leafDays = 397;
/** Where fewer days are left, a start makes a new one. */
const renewDays = 60;

/** Networks of one's own: loopback, RFC 1918, link-local RFC 3927, and their IPv6 kin (RFC 4193, RFC 4291). */
const ownNetworks = ['127.0.0.0/8', '10.0.0.0/8', '172.16.0.0/12', '192.168.0.0/16', '169.254.0.0/16', '::1/128', 'fc00::/7', 'fe80::/10'];
const networkOf = (network: string): readonly [string, number] => {
  const [address = '', bits] = network.split('/');
  return [address, Number(bits)];
};

/**
 * A root of this house's own and a certificate by it, kept in a folder: made once, the certificate anew when the names of the machine change or its days run
 * out. The root vouches for this machine's names and for networks of one's own, nothing else (name constraints, RFC 5280, 4.2.1.10): a device that trusts
 * it trusts nothing more.
 */
export async function lanCertificate(folder: string, wanted: readonly string[], now: Date): Promise<LanCertificate> {
  const file = (name: string) => join(folder, name);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  if (!['root.pem', 'root.key'].every((name) => existsSync(file(name)))) {
    const made = await makeRoot(
      wanted.filter((each) => !isAddress(each)),
      now,
    );
    writeFileSync(file('root.key'), made.key, { mode: 0o600 });
    writeFileSync(file('root.pem'), made.cert);
  }
  const root = read(file('root.pem'));
  // One name that the root does not vouch for would spoil the others with it.
  const names = wanted.filter(vouchedForBy(root));
  const leftOut = wanted.filter((each) => !names.includes(each));
  if (['leaf.pem', 'leaf.key'].every((name) => existsSync(file(name)))) {
    const [key, cert] = [read(file('leaf.key')), read(file('leaf.pem'))];
    if (isGood(cert, root, names, now)) return { key, cert, root, names, leftOut };
  }
  const { key, cert } = await leafBy({ root, rootKey: read(file('root.key')), names, now });
  writeFileSync(file('leaf.key'), key, { mode: 0o600 });
  writeFileSync(file('leaf.pem'), cert);
  return { key, cert, root, names, leftOut };
}

/** Names and addresses by which others on the network find this machine, the name that survives a new address first. */
export function namesOfThisMachine(host = hostname(), interfaces = networkInterfaces()): string[] {
  const short =
    host
      .split('.')[0]
      ?.toLowerCase()
      .replace(/[^a-z0-9-]/g, '-') ?? '';
  const addresses = Object.values(interfaces)
    .flatMap((each) => each ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address);
  return [
    ...new Set([...(short === '' || short === 'localhost' ? [] : [`${short}.local`, short]), ...addresses, 'localhost', '127.0.0.1']),
  ];
}

const isAddress = (each: string): boolean => /^[\d.]+$/.test(each) || each.includes(':');
const read = (path: string): string => readFileSync(path, 'utf8');

/** Whether a name or an address is one of those that a root is limited to. */
function vouchedForBy(root: string): (name: string) => boolean {
  const raw = new x509.X509Certificate(root).getExtension(id_ce_nameConstraints);
  const bases = raw ? [...(AsnConvert.parse(raw.value, NameConstraints).permittedSubtrees ?? [])].map(({ base }) => base) : [];
  const networks = new BlockList();
  for (const [address, bits] of ownNetworks.map(networkOf)) networks.addSubnet(address, bits, address.includes(':') ? 'ipv6' : 'ipv4');
  return (name) =>
    isAddress(name) ? networks.check(name, name.includes(':') ? 'ipv6' : 'ipv4') : bases.some(({ dNSName }) => dNSName === name);
}

function isGood(cert: string, root: string, names: readonly string[], now: Date): boolean {
  const [leaf, above] = [new Read(cert), new Read(root)];
  const daysLeft = (Date.parse(leaf.validTo) - now.getTime()) / dayMs;
  const isByRoot = leaf.checkIssued(above) && leaf.verify(above.publicKey);
  return (
    isByRoot && daysLeft > renewDays && names.every((each) => (isAddress(each) ? leaf.checkIP(each) : leaf.checkHost(each)) !== undefined)
  );
}

const serial = (): string =>
  Buffer.from(webcrypto.getRandomValues(new Uint8Array(16)).map((byte, at) => (at === 0 ? (byte & 0x7f) | 0x40 : byte))).toString('hex');
const after = (now: Date, days: number): Date => new Date(now.getTime() + days * dayMs);
/** Clocks of devices are not all right. */
const before = (now: Date): Date => after(now, -1);

async function makeKeys(): Promise<{ keys: webcrypto.CryptoKeyPair; pem: string }> {
  const keys = await webcrypto.subtle.generateKey(algorithm, true, ['sign', 'verify']);
  const pem = x509.PemConverter.encode(await webcrypto.subtle.exportKey('pkcs8', keys.privateKey), 'PRIVATE KEY');
  return { keys, pem };
}

async function makeRoot(names: readonly string[], now: Date): Promise<{ key: string; cert: string }> {
  const { keys, pem } = await makeKeys();
  const cert = await x509.X509CertificateGenerator.createSelfSigned({
    serialNumber: serial(),
    name: `CN=Cartwright on ${names[0] ?? 'this machine'} ${serial().slice(0, 6)}`,
    notBefore: before(now),
    notAfter: after(now, rootDays),
    signingAlgorithm: algorithm,
    keys,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      onlyFor(names),
    ],
  });
  return { key: pem, cert: cert.toString('pem') };
}

function onlyFor(names: readonly string[]): x509.Extension {
  const permitted = [
    ...names.map((dNSName) => new GeneralName({ dNSName })),
    ...ownNetworks.map((each) => AsnConvert.parse(addressAndMask(...networkOf(each)), GeneralName)),
  ];
  const constraints = new NameConstraints({
    permittedSubtrees: new GeneralSubtrees(permitted.map((base) => new GeneralSubtree({ base }))),
  });
  return new x509.Extension(id_ce_nameConstraints, true, AsnConvert.serialize(constraints));
}

/** A GeneralName of an address and its mask (context tag 7, RFC 5280). */
function addressAndMask(address: string, bits: number): ArrayBuffer {
  const bytes = address.includes(':') ? ipv6Bytes(address) : address.split('.').map(Number);
  const mask = bytes.map((_, at) => (0xff00 >> Math.min(8, Math.max(0, bits - 8 * at))) & 0xff);
  return new Uint8Array([0x87, bytes.length * 2, ...bytes, ...mask]).buffer;
}

/** Of an address that is written as its head or its tail alone. */
function ipv6Bytes(address: string): number[] {
  const [head = '', tail = ''] = address.split('::');
  const bytesOf = (part: string) =>
    part === '' ? [] : part.split(':').flatMap((each) => [parseInt(each, 16) >> 8, parseInt(each, 16) & 0xff]);
  const [first, last] = [bytesOf(head), bytesOf(tail)];
  return [...first, ...Array.from({ length: 16 - first.length - last.length }, () => 0), ...last];
}

/** A certificate by the root's key, for whatever names: that the root vouches for them is looked at before. */
export async function leafBy(of: {
  root: string;
  rootKey: string;
  names: readonly string[];
  now: Date;
}): Promise<{ key: string; cert: string }> {
  const { keys, pem } = await makeKeys();
  const root = new x509.X509Certificate(of.root);
  const signingKey = await webcrypto.subtle.importKey('pkcs8', x509.PemConverter.decodeFirst(of.rootKey), algorithm, false, ['sign']);
  const cert = await x509.X509CertificateGenerator.create({
    serialNumber: serial(),
    subject: `CN=${of.names[0] ?? 'localhost'}`,
    issuer: root.subject,
    notBefore: before(of.now),
    notAfter: after(of.now, leafDays - 1),
    signingAlgorithm: algorithm,
    publicKey: keys.publicKey,
    signingKey,
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(of.names.map((value) => ({ type: isAddress(value) ? 'ip' : 'dns', value }))),
      await x509.AuthorityKeyIdentifierExtension.create(root.publicKey),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  return { key: pem, cert: cert.toString('pem') };
}
