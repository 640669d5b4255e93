import { type Socket, connect } from 'node:net';

/** Holds a place in the house: the head is sent, taken in (RFC 9110, 10.1.1), and the body never comes. Destroying the socket gives it back. */
export async function holdPlace(address: string, cookie: string, from = '127.0.0.1'): Promise<Socket> {
  for (;;) {
    const socket = connect(Number(new URL(address).port), '127.0.0.1');
    const first = new Promise<string>((done) => socket.once('data', (data) => done(data.toString())));
    socket.write(
      `POST /graphql HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: 20\r\nexpect: 100-continue\r\ncookie: ${cookie}\r\nx-forwarded-for: ${from}\r\n\r\n`,
    );
    await first;
    // A place that was given back a moment ago may not be free yet: then a refusal follows at once.
    const isRefused = await Promise.race([
      new Promise<boolean>((done) => socket.once('data', () => done(true)).once('close', () => done(true))),
      new Promise<boolean>((done) => setTimeout(() => done(false), 250)),
    ]);
    if (!isRefused && /^HTTP\/1\.1 100 /.test(await first) && !/HTTP\/1\.1 [2-5]/.test(await first)) return socket;
    socket.destroy();
  }
}
