import { X509Certificate, createPrivateKey, createSign } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { createServer } from 'node:https';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { type LanCertificate, lanCertificate, leafBy, namesOfThisMachine } from './lan-certificate.js';

const names = ['dock.local', 'dock', '192.168.20.7', 'localhost', '127.0.0.1'];
const now = new Date();
const inDays = (days: number) => new Date(now.getTime() + days * 86_400_000);

/** What OpenSSL says of a connection by somebody who trusts the root alone: undefined where it is content. */
async function verdict(
  { key, cert, root }: Pick<LanCertificate, 'key' | 'cert' | 'root'>,
  servername: string,
): Promise<string | undefined> {
  const server = createServer({ key, cert });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  try {
    return await new Promise((resolve) => {
      const socket = connect({ host: '127.0.0.1', port, servername, ca: [root] }, () => {
        socket.destroy();
        resolve(undefined);
      });
      socket.on('error', (fault: Error) => resolve(fault.message));
    });
  } finally {
    server.close();
  }
}

describe('the certificate of a house on its own network', () => {
  let folder: string;
  beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'cartwright-lan-'))));
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('is taken by OpenSSL from whoever trusts the root, under each name, and under no other', async () => {
    const made = await lanCertificate(folder, names, now);
    expect(await verdict(made, 'dock.local')).toBeUndefined();
    expect(await verdict(made, 'localhost')).toBeUndefined();
    expect(await verdict(made, 'elsewhere.local')).toMatch(/does not match certificate's altnames/);
    expect(new X509Certificate(made.cert).checkIP('192.168.20.7')).toBe('192.168.20.7');
  });

  it('cannot be made for a name or an address outside: the root vouches for none', async () => {
    const { root } = await lanCertificate(folder, names, now);
    const rootKey = readFileSync(join(folder, 'root.key'), 'utf8');
    for (const foreign of ['bank.example', '203.0.113.9', '172.32.0.1', '11.0.0.1']) {
      const made = await leafBy({ root, rootKey, names: [...names, foreign], now });
      expect([foreign, await verdict({ ...made, root }, 'localhost')]).toEqual([foreign, 'permitted subtree violation']);
      const { leftOut, ...kept } = await lanCertificate(folder, [...names, foreign], now);
      expect(leftOut).toEqual([foreign]);
      expect(await verdict(kept, 'localhost')).toBeUndefined();
    }
  });

  it('stays the same from start to start, and is made anew for other names and before its days run out', async () => {
    const first = await lanCertificate(folder, names, now);
    expect(await lanCertificate(folder, names, inDays(300))).toEqual(first);
    const moved = await lanCertificate(
      folder,
      names.map((each) => each.replace('20.7', '20.8')),
      now,
    );
    expect(moved.root).toBe(first.root);
    expect(moved.cert).not.toBe(first.cert);
    const later = await lanCertificate(folder, names, inDays(380));
    expect(later.root).toBe(first.root);
    expect(new Date(new X509Certificate(later.cert).validTo).getTime()).toBeGreaterThan(inDays(700).getTime());
  });

  it('keeps its keys to its owner, and ends within the days that browsers take', async () => {
    const { key, cert } = await lanCertificate(folder, names, now);
    for (const file of ['root.key', 'leaf.key']) expect(statSync(join(folder, file)).mode & 0o077).toBe(0);
    const leaf = new X509Certificate(cert);
    const days = (Date.parse(leaf.validTo) - Date.parse(leaf.validFrom)) / 86_400_000;
    expect(days).toBeLessThanOrEqual(398);
    expect(leaf.ca).toBe(false);
    const signature = createSign('sha256').update('a word').sign(createPrivateKey(key));
    expect(signature.length).toBeGreaterThan(0);
  });
});

describe('names of this machine', () => {
  it('are its own, with the one first that survives a new address', () => {
    const interfaces = {
      lo: [{ address: '127.0.0.1', family: 'IPv4', internal: true }],
      lan: [
        { address: '192.168.20.7', family: 'IPv4', internal: false },
        { address: 'fe80::1', family: 'IPv6', internal: false },
      ],
    } as unknown as NodeJS.Dict<never[]>;
    expect(namesOfThisMachine('Dock PC.example', interfaces)).toEqual([
      'dock-pc.local',
      'dock-pc',
      '192.168.20.7',
      'localhost',
      '127.0.0.1',
    ]);
    expect(namesOfThisMachine('localhost', {})).toEqual(['localhost', '127.0.0.1']);
  });
});
