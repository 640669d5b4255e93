import { type AddressInfo, type Socket, connect, createServer } from 'node:net';

/** Open, silent (new connections are taken and hear nothing) or shut (new connections are refused, old ones are cut). */
export type ProxyState = 'open' | 'silent' | 'shut';

/** Stands between the API and its database: goes away, or cuts a connection at the moment that a commit has been carried out but not yet answered. */
export interface DatabaseProxy {
  readonly url: string;
  /** The answer to the next commit is lost on the way; gives how many have been lost since. */
  loseNextCommit(): void;
  readonly lost: () => number;
  turn(state: ProxyState): void;
  close(): Promise<void>;
}

export async function startDatabaseProxy(databaseUrl: string): Promise<DatabaseProxy> {
  const real = new URL(databaseUrl);
  let toLose = 0;
  let lost = 0;
  let state: ProxyState = 'open';
  const open = new Set<Socket>();
  const server = createServer((client) => {
    if (state === 'shut') return void client.destroy();
    if (state === 'silent') return void open.add(client.on('error', () => undefined).once('close', () => open.delete(client)));
    const database = connect(Number(real.port), real.hostname);
    for (const socket of [client, database]) {
      open.add(socket);
      socket.on('error', () => undefined);
      socket.on('close', () => {
        open.delete(socket);
        client.destroy();
        database.destroy();
      });
    }
    client.pipe(database);
    database.on('data', (bytes) => {
      // CommandComplete (PostgreSQL message formats): 'C', length 11, "COMMIT", NUL.
      if (toLose > 0 && bytes.includes('C\u0000\u0000\u0000\u000bCOMMIT\u0000', 0, 'latin1')) {
        toLose--;
        lost++;
        client.destroy();
      } else client.write(bytes);
    });
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const url = Object.assign(new URL(databaseUrl), { hostname: '127.0.0.1', port: String((server.address() as AddressInfo).port) }).href;
  return {
    url,
    loseNextCommit: () => toLose++,
    lost: () => lost,
    turn: (to) => {
      state = to;
      if (to === 'shut') for (const socket of open) socket.destroy();
    },
    close: async () => {
      for (const socket of open) socket.destroy();
      await new Promise((done) => server.close(done));
    },
  };
}
