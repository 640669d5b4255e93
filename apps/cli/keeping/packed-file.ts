import { once } from 'node:events';
import { type WriteStream, createReadStream, createWriteStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { type Gzip, createGunzip, createGzip } from 'node:zlib';

const block = 512;

/** Writes named parts into one gzipped tar (POSIX.1-1988 ustar), which any tar opens. */
export class PackedWriter {
  private readonly gzip: Gzip = createGzip({ level: 6 });
  private readonly file: WriteStream;
  private readonly failures: Error[] = [];

  constructor(private readonly path: string) {
    // What is on file holds hashed passwords: for its owner alone.
    this.file = createWriteStream(path, { mode: 0o600 });
    for (const stream of [this.gzip, this.file]) stream.on('error', (fault: Error) => this.failures.push(fault));
    this.gzip.pipe(this.file);
  }

  async add(name: string, bytes: Buffer, at: Date): Promise<void> {
    await this.write(headerOf(name, bytes.length, at));
    await this.write(bytes);
    await this.write(Buffer.alloc((block - (bytes.length % block)) % block));
  }

  /** All of it is on the disk when this has ended. */
  async close(): Promise<void> {
    await this.write(Buffer.alloc(2 * block));
    const closed = once(this.file, 'close');
    this.gzip.end();
    await closed;
    this.mustNotHaveFailed();
    const handle = await open(this.path, 'r+');
    await handle.sync();
    await handle.close();
  }

  private mustNotHaveFailed(): void {
    const [first] = this.failures;
    if (first) throw first;
  }

  abandon(): void {
    this.gzip.destroy();
    this.file.destroy();
  }

  /** Or until the file is closed; what is not waited for any more is listened to no more. */
  private async untilDrained(): Promise<void> {
    const listening = new AbortController();
    const waits = [once(this.gzip, 'drain', listening), once(this.file, 'close', listening)];
    try {
      await Promise.race(waits);
    } finally {
      listening.abort();
      await Promise.allSettled(waits);
    }
  }

  private async write(bytes: Buffer): Promise<void> {
    this.mustNotHaveFailed();
    if (bytes.length > 0 && !this.gzip.write(bytes)) await this.untilDrained();
    this.mustNotHaveFailed();
  }
}

function headerOf(name: string, size: number, at: Date): Buffer {
  if (Buffer.byteLength(name) > 99) throw new RangeError(`${name}: wanted a name of at most 99 bytes`);
  const header = Buffer.alloc(block);
  const octal = (value: number, digits: number) => value.toString(8).padStart(digits, '0');
  header.write(name, 0);
  header.write(octal(0o600, 7), 100);
  header.write(octal(0, 7), 108);
  header.write(octal(0, 7), 116);
  header.write(octal(size, 11), 124);
  header.write(octal(Math.floor(at.getTime() / 1000), 11), 136);
  header.write('        ', 148);
  header.write('0', 156);
  header.write('ustar\u000000', 257, 'latin1');
  header.write(`${octal(sumOf(header), 6)}\0 `, 148);
  return header;
}

const sumOf = (header: Buffer): number => header.reduce((sum, byte) => sum + byte, 0);

export interface PackedPart {
  readonly name: string;
  readonly bytes: Buffer;
}

/** The largest part that is ever read into memory. */
const mostBytes = 64 * 1024 * 1024;

/** The parts of a packed file in their order. Throws where it was cut off or changed. */
export async function* readPacked(path: string): AsyncGenerator<PackedPart> {
  const gunzip = createGunzip();
  createReadStream(path)
    .on('error', (fault) => gunzip.destroy(fault))
    .pipe(gunzip);
  const bytes = new ByteQueue(gunzip[Symbol.asyncIterator]() as AsyncIterator<Buffer>);
  for (;;) {
    const header = await bytes.take(block);
    if (header.every((byte) => byte === 0)) return;
    const told = parseInt(header.toString('latin1', 148, 156), 8);
    const unsummed = Buffer.from(header).fill(' ', 148, 156);
    const size = parseInt(header.toString('latin1', 124, 135), 8);
    if (told !== sumOf(unsummed) || !(size <= mostBytes)) throw new Error('a part has no proper heading');
    const name = header.toString('utf8', 0, header.indexOf(0));
    const content = await bytes.take(size);
    await bytes.take((block - (size % block)) % block);
    yield { name, bytes: content };
  }
}

class ByteQueue {
  private held: Buffer = Buffer.alloc(0);

  constructor(private readonly chunks: AsyncIterator<Buffer>) {}

  async take(count: number): Promise<Buffer> {
    const parts: Buffer[] = [this.held];
    let length = this.held.length;
    while (length < count) {
      const next = await this.chunks.next();
      if (next.done === true) throw new Error('the file ends too early');
      parts.push(next.value);
      length += next.value.length;
    }
    const all = parts.length === 1 ? this.held : Buffer.concat(parts);
    this.held = all.subarray(count);
    return all.subarray(0, count);
  }
}
