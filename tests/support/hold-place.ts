import { type Socket, connect } from 'node:net';

/** Holds a place in the house: the head is sent, taken in (RFC 9110, 10.1.1), and the body never comes. Destroying the socket gives it back. */
export async function holdPlace(address: string, cookie: string, from = '127.0.0.1'): Promise<Socket> {
  const socket = connect(Number(new URL(address).port), '127.0.0.1');
  const isTakenIn = new Promise<void>((done) => socket.once('data', () => done()));
  socket.write(
    `POST /graphql HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: 20\r\nexpect: 100-continue\r\ncookie: ${cookie}\r\nx-forwarded-for: ${from}\r\n\r\n`,
  );
  await isTakenIn;
  return socket;
}
