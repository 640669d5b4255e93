import { connect } from 'node:net';
import { gzipSync } from 'node:zlib';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { renderMarkup } from '#drawings';
import { openEventStream } from '../../support/event-stream.js';
import { type Agent, type TestApp, startTestApp } from '../../support/test-app.js';
import { eachOf } from './owasp.js';
import { tinyJpeg, tinyPng } from '../../support/tiny-pictures.js';

let test: TestApp;
let safety: Agent;
let system: Agent;
beforeAll(async () => {
  test = await startTestApp();
  [safety, system] = await Promise.all([test.as('safety'), test.as('system')]);
});
afterAll(() => test.close());

const pdf = Buffer.from('%PDF-1.7 an invented report');
const keep = (type: string, body: Buffer | string, { name = 'report.pdf', who = safety, headers = {} }: Partial<Kept> = {}) =>
  who.fetch(`/api/reports/H-01?name=${encodeURIComponent(name)}`, {
    method: 'POST',
    headers: { 'content-type': type, 'x-cartwright': '1', ...headers },
    body,
  });
interface Kept {
  readonly name: string;
  readonly who: Agent;
  readonly headers: Record<string, string>;
}
const kept = async (name: string): Promise<Response> => {
  const { id } = (await (await keep('application/pdf', pdf, { name })).json()) as { id: string };
  return safety.fetch(`/api/reports/${id}`);
};
const screens = (): string[] =>
  readdirSync('apps/web/src', { recursive: true, encoding: 'utf8' })
    .filter((each) => /\.tsx?$/.test(each))
    .map((each) => readFileSync(join('apps/web/src', each), 'utf8'));

eachOf('File Upload Cheat Sheet', 'https://cheatsheetseries.owasp.org/cheatsheets/File_Upload_Cheat_Sheet.html', [
  {
    section: 'List Allowed Extensions; Content-Type Validation',
    asks: 'A list of what is taken.',
    house: 'Reports are PDF, JPEG or PNG; lists CSV; tours JSON. Names decide nothing.',
    shows: async () => {
      for (const type of ['text/html', 'image/svg+xml', 'application/zip', 'application/x-msdownload', 'image/gif', '__proto__'])
        expect((await keep(type, pdf)).status).toBe(415);
      expect((await keep('application/pdf', pdf, { name: 'report.pdf.exe' })).status).toBe(200);
    },
  },
  {
    section: 'File Signature Validation',
    asks: 'What it is, not what it says.',
    house: 'A report begins as its type does, a picture says how wide and how high it is, or it is refused.',
    shows: async () => {
      const [png, jpeg] = [tinyPng, tinyJpeg];
      const page = Buffer.from('<script>alert(1)</script>');
      const status = async (type: string, body: Buffer) => (await keep(type, body)).status;
      expect([await status('application/pdf', pdf), await status('image/png', png), await status('image/jpeg', jpeg)]).toEqual([
        200, 200, 200,
      ]);
      for (const type of ['application/pdf', 'image/png', 'image/jpeg']) expect(await status(type, page)).toBe(415);
      expect([
        await status('image/png', jpeg),
        await status('application/pdf', png),
        await status('application/pdf', pdf.subarray(0, 4)),
      ]).toEqual([415, 415, 415]);
      // A beginning alone is no picture, nor is one without width or height.
      const flat = Buffer.from(png);
      flat.writeUInt32BE(0, 20);
      for (const body of [png.subarray(0, 8), png.subarray(0, 30), flat]) expect(await status('image/png', body)).toBe(415);
      for (const body of [jpeg.subarray(0, 5), jpeg.subarray(0, 15)]) expect(await status('image/jpeg', body)).toBe(415);
    },
  },
  {
    section: 'Filename Sanitization',
    asks: 'A name of the application’s own; a bound on what was given.',
    house:
      'Files are found by a random number; the given name is kept as a word of at most 300 characters and can neither name a path nor end a header.',
    shows: async () => {
      expect((await keep('application/pdf', pdf, { name: 'x'.repeat(301) })).status).toBe(422);
      for (const name of ['../../etc/passwd', 'a"; filename="b.html', 'a\r\nset-cookie: x=y', 'COM1', 'naïve – Prüfung.pdf']) {
        const back = await kept(name);
        expect(back.headers.get('set-cookie')).toBeNull();
        expect(back.headers.get('content-disposition')).toBe(`attachment; filename*=UTF-8''${encodeURIComponent(name)}`);
      }
    },
  },
  {
    section: 'File Content Validation',
    asks: 'Rewriting, scanning for malware.',
    house: 'Not done: a report is evidence and stays byte for byte. Nothing here opens it; browsers are told to save it, not to show it.',
    shows: async () => {
      const back = await kept('report.pdf');
      expect(Buffer.from(await back.arrayBuffer())).toEqual(pdf);
      expect(back.headers.get('content-disposition')).toMatch(/^attachment/);
      expect(back.headers.get('x-content-type-options')).toBe('nosniff');
      expect(back.headers.get('content-security-policy')).toContain("script-src 'self'");
    },
  },
  {
    section: 'File Storage Location; Filesystem Permissions',
    asks: 'Outside of what is served.',
    house: 'In the database, under a number; no path leads to one.',
    shows: async () => {
      const { id } = (await (await keep('application/pdf', pdf)).json()) as { id: string };
      const [{ count }] = await test.dataSource.query('SELECT count(*)::int AS count FROM report_file WHERE id = $1', [id]);
      expect(count).toBe(1);
      for (const path of [`/${id}`, `/reports/${id}`, '/api/reports/..%2f..%2fpackage.json'])
        expect((await safety.fetch(path)).ok).toBe(false);
    },
  },
  {
    section: 'User Permissions',
    asks: 'Known people with the right to it.',
    house: 'The safety officer keeps reports; whoever is signed in reads them; the bodies of strangers are not even read.',
    shows: async () => {
      expect((await keep('application/pdf', pdf, { who: system })).status).toBe(403);
      const stranger: Agent = { ...safety, fetch: (path, init) => fetch(test.address + path, init) };
      expect((await keep('application/pdf', pdf, { who: stranger })).status).toBe(401);
    },
  },
  {
    section: 'Upload and Download Limits',
    asks: 'A greatest size, counted after unpacking.',
    house: '20 MB, packed or not; archives are not unpacked.',
    shows: async () => {
      const large = Buffer.concat([pdf, Buffer.alloc(21 * 1024 * 1024)]);
      expect((await keep('application/pdf', large)).status).toBe(413);
      const packed = gzipSync(large);
      expect(packed.length).toBeLessThan(100_000);
      expect((await keep('application/pdf', packed, { headers: { 'content-encoding': 'gzip' } })).status).toBe(413);
    },
  },
  {
    section: 'File Upload Cheat Sheet, principles',
    asks: 'Protected from requests of other sites.',
    house: 'A header that a form of another site cannot set.',
    shows: async () => {
      const reply = await safety.fetch('/api/reports/H-01', { method: 'POST', headers: { 'content-type': 'application/pdf' }, body: pdf });
      expect(reply.status).toBe(403);
    },
  },
]);

eachOf(
  'HTML5 Security Cheat Sheet, what goes on while a page is open',
  'https://cheatsheetseries.owasp.org/cheatsheets/HTML5_Security_Cheat_Sheet.html',
  [
    {
      section: 'Cross Origin Resource Sharing',
      asks: 'Only chosen origins; never *.',
      house: 'None: no answer names another origin.',
      shows: async () => {
        for (const path of ['/graphql', '/api/changes', '/api/events', '/healthz'])
          for (const method of ['GET', 'OPTIONS']) {
            const abort = new AbortController();
            const reply = await system.fetch(path, { method, headers: { origin: 'https://elsewhere.example' }, signal: abort.signal });
            const named = [...reply.headers.keys()].filter((each) => each.startsWith('access-control-'));
            abort.abort();
            expect({ path, named }).toEqual({ path, named: [] });
          }
      },
    },
    {
      section: 'WebSockets',
      asks: 'Origin, authentication and input are checked.',
      house: 'Does not apply: there are none, and a request for one is not taken up.',
      shows: async () => {
        const answer = await new Promise<string>((done) => {
          let text = '';
          const socket = connect(Number(new URL(test.address).port), '127.0.0.1', () =>
            socket.write(
              `GET /graphql HTTP/1.1\r\nhost: x\r\nconnection: Upgrade\r\nupgrade: websocket\r\nsec-websocket-version: 13\r\nsec-websocket-key: dGhlIHNhbXBsZSBub25jZQ==\r\ncookie: ${system.cookie}\r\n\r\n`,
            ),
          );
          const end = () => {
            socket.destroy();
            done(text);
          };
          socket.on('data', (chunk) => {
            text += chunk.toString();
            end();
          });
          socket.on('close', end);
        });
        expect(answer).not.toMatch(/^HTTP\/1\.1 101/);
      },
    },
    {
      section: 'Server-Sent Events',
      asks: 'The address of a stream is checked.',
      house: 'It is written in the screens, with a position alone behind it; a position that is none is refused.',
      shows: async () => {
        const opened = screens().flatMap((each) => each.match(/new EventSource\(.*/g) ?? []);
        expect(opened).toHaveLength(1);
        expect(opened[0]).toContain("'/api/events'");
        const reply = await system.fetch('/api/changes?since=%27%20OR%201=1');
        expect(reply.status < 500 && !(await reply.text()).includes('OR 1=1')).toBe(true);
      },
    },
    {
      section: 'Server-Sent Events; WebSockets',
      asks: 'Messages are data, never markup or code.',
      house: 'A message is a list of topics, read as JSON; the screens hold no eval; drawings alone become markup, their texts escaped.',
      shows: async () => {
        const stream = await openEventStream(system);
        await system.graphql('mutation { quarantine(itemId: "P-020", reason: "<img src=x onerror=alert(1)>") { summary { id } } }');
        const topics = await stream.until('item/P-020');
        stream.close();
        expect(topics.every((each) => /^[\w/.:-]+$/.test(each))).toBe(true);
        const code = screens();
        expect(code.filter((each) => /\beval\(|new Function\(|innerHTML =|document\.write|postMessage\([^)]*'\*'/.test(each))).toEqual([]);
        expect(code.filter((each) => each.includes('dangerouslySetInnerHTML'))).toEqual([
          expect.stringContaining('renderMarkup(withOnePersonLine(of, line))'),
        ]);
        expect(renderMarkup({ tag: 'p', attributes: { title: '"><script>' }, children: ['<img src=x onerror=alert(1)>'] })).toBe(
          '<p title="&quot;&gt;&lt;script&gt;">&lt;img src=x onerror=alert(1)&gt;</p>',
        );
      },
    },
    {
      section: 'WebSocket implementation hints: authentication, authorization, explicit invalidation',
      asks: 'Also for what stays open.',
      house: 'A stream opens for who is signed in, twelve a person; whoever is signed out is not let in again.',
      shows: async () => {
        const leaving = await test.as('warehouse');
        const streams = await Promise.all(Array.from({ length: 13 }, () => openEventStream(leaving)));
        expect(streams.map(({ status }) => status).toSorted()).toEqual([...Array<number>(12).fill(200), 429]);
        for (const each of streams) each.close();
        await leaving.graphql('mutation { signOut }');
        expect((await openEventStream(leaving)).status).toBe(401);
      },
    },
    {
      section: 'Local Storage',
      asks: 'No session and nothing secret in it.',
      house: 'Settings, what was typed, and a number for who reads; the session is a cookie that no script sees.',
      shows: () => {
        const kept = screens().flatMap((each) => each.match(/(local|session)Storage\.setItem\(.*/g) ?? []);
        expect(kept.length).toBeGreaterThan(3);
        expect(kept.filter((each) => /password|token|cookie/i.test(each))).toEqual([]);
        for (const text of screens()) expect(text).not.toContain('document.cookie');
      },
    },
    {
      section: 'Sandboxed frames; Tabnabbing',
      asks: 'In no frame of others; no way back from what is opened.',
      house: 'Frames are forbidden both ways; what opens in another tab is a page of the house.',
      shows: async () => {
        const reply = await system.fetch('/api/changes');
        expect(reply.headers.get('x-frame-options')).toBe('DENY');
        expect(reply.headers.get('content-security-policy')).toContain("frame-ancestors 'none'");
        const beside = screens().flatMap((each) => each.match(/<\w+[^<]*target="_blank"/g) ?? []);
        expect(beside.length).toBeGreaterThan(3);
        expect(beside.filter((each) => !/^<Link[^<]* to=/.test(each))).toEqual([]);
      },
    },
  ],
);
