import { once } from 'node:events';
import type pg from 'pg';

/** What of the driver's connection a COPY needs; the driver itself has queries only. */
interface Connection {
  readonly stream: {
    readonly writableLength: number;
    pause(): void;
    resume(): void;
    once(event: string, heard: () => void): void;
    removeListener(event: string, heard: () => void): void;
  };
  query(text: string): void;
  sendCopyFromChunk(chunk: Buffer): void;
  endCopyFrom(): void;
  sendCopyFail(why: string): void;
}

/** So much is held of what the other side does not take yet. */
const mostWaiting = 4 * 1024 * 1024;

/** What every COPY of either way answers to the driver. */
abstract class Copy {
  /** The driver reads it; nothing is called back. */
  readonly callback = (): void => undefined;
  private settle!: { resolve: (rows: number) => void; reject: (fault: Error) => void };
  readonly done = new Promise<number>((resolve, reject) => (this.settle = { resolve, reject }));
  protected connection: Connection | undefined;
  private rows = 0;

  constructor(private readonly statement: string) {}

  submit(connection: Connection): null {
    this.connection = connection;
    connection.query(this.statement);
    return null;
  }

  handleRowDescription(): void {}
  handleDataRow(): void {}

  handleCommandComplete({ text }: { text: string }): void {
    this.rows = Number(/\d+$/.exec(text)?.[0] ?? 0);
  }

  handleError(fault: Error): void {
    this.settle.reject(fault);
  }

  handleReadyForQuery(): void {
    this.last().then(() => this.settle.resolve(this.rows), this.settle.reject);
  }

  /** What must have ended before the copy has. */
  protected abstract last(): Promise<void>;
}

class CopyOut extends Copy {
  private kept = Promise.resolve();
  private waiting = 0;

  constructor(
    statement: string,
    private readonly keep: (chunk: Buffer) => Promise<void> | void,
  ) {
    super(statement);
  }

  handleCopyData({ chunk: passing }: { chunk: Buffer }): void {
    // The driver uses its buffer again.
    const chunk = Buffer.from(passing);
    this.waiting += chunk.length;
    if (this.waiting > mostWaiting) this.connection?.stream.pause();
    this.kept = this.kept.then(async () => {
      await this.keep(chunk);
      this.waiting -= chunk.length;
      if (this.waiting <= mostWaiting) this.connection?.stream.resume();
    });
    // Told when the copy ends; until then nobody waits for it.
    this.kept.catch(() => this.connection?.stream.resume());
  }

  protected last(): Promise<void> {
    return this.kept;
  }
}

class CopyIn extends Copy {
  private sent = Promise.resolve();

  constructor(
    statement: string,
    private readonly chunks: AsyncIterable<Buffer> | Iterable<Buffer>,
  ) {
    super(statement);
  }

  handleCopyInResponse(connection: Connection): void {
    this.sent = this.send(connection);
    this.sent.catch((fault: Error) => connection.sendCopyFail(fault.message.slice(0, 200)));
  }

  private async send(connection: Connection): Promise<void> {
    for await (const chunk of this.chunks) {
      connection.sendCopyFromChunk(chunk);
      if (connection.stream.writableLength > mostWaiting) await once(connection.stream as never, 'drain');
    }
    connection.endCopyFrom();
  }

  protected last(): Promise<void> {
    return this.sent;
  }
}

/** Runs `COPY ... TO STDOUT` and gives each chunk to `keep`, no faster than that takes them; gives back how many rows there were. */
export function copyOut(client: pg.ClientBase, statement: string, keep: (chunk: Buffer) => Promise<void> | void): Promise<number> {
  return run(client, new CopyOut(statement, keep));
}

/** Runs `COPY ... FROM STDIN` with the chunks; gives back how many rows came in. */
export function copyIn(client: pg.ClientBase, statement: string, chunks: AsyncIterable<Buffer> | Iterable<Buffer>): Promise<number> {
  return run(client, new CopyIn(statement, chunks));
}

function run(client: pg.ClientBase, copy: Copy): Promise<number> {
  client.query(copy as unknown as pg.Submittable);
  return copy.done;
}
