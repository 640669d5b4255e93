import { createHash } from 'node:crypto';
import { rmSync, statSync } from 'node:fs';
import { type Server, type Socket, connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** What the owner of a data folder tells the others; the port when its database answers. */
export interface OwnerNote {
  readonly pid: number;
  readonly port: number | null;
}

/** This process owns the folder until it releases it or ends, however it ends. */
export interface Owned {
  readonly kind: 'owner';
  tell(port: number): void;
  release(): Promise<void>;
}

/** Another process owns the folder and runs its database. */
export interface Guest {
  readonly kind: 'guest';
  readonly pid: number;
  readonly port: number;
  /** When the owner is gone. */
  readonly gone: Promise<void>;
  leave(): void;
}

/**
 * One owner of a data folder. The lock is a local socket whose name follows from the folder: the system takes it away with the process that holds
 * it, so that no crash leaves it behind. Whoever comes second hears from it who the owner is, and when he is gone.
 */
export async function takeFolder(folder: string): Promise<Owned | Guest> {
  const path = lockOf(folder);
  for (;;) {
    const owned = await listen(path);
    if (owned) return owned;
    const guest = await ask(path);
    if (guest) return guest;
    // A file that nobody answers behind: left by a crash, where sockets are files.
    if (process.platform !== 'linux' && process.platform !== 'win32') rmSync(path, { force: true });
  }
}

/** Of the folder itself, not of one of its names. */
function lockOf(folder: string): string {
  const { dev, ino } = statSync(folder, { bigint: true });
  const name = `cartwright-${createHash('sha256').update(`${dev}:${ino}`).digest('hex').slice(0, 24)}`;
  if (process.platform === 'linux') return `\0${name}`;
  return process.platform === 'win32' ? `\\\\.\\pipe\\${name}` : join(tmpdir(), `${name}.sock`);
}

function listen(path: string): Promise<Owned | undefined> {
  let note: OwnerNote = { pid: process.pid, port: null };
  const guests = new Set<Socket>();
  const server: Server = createServer((guest) => {
    guests.add(guest);
    guest.on('error', () => undefined);
    guest.on('close', () => guests.delete(guest));
    guest.write(`${JSON.stringify(note)}\n`);
  });
  const owned: Owned = {
    kind: 'owner',
    tell: (port) => {
      note = { ...note, port };
      for (const guest of guests) guest.write(`${JSON.stringify(note)}\n`);
    },
    release: () =>
      new Promise((done) => {
        server.close(() => done());
        for (const guest of guests) guest.destroy();
      }),
  };
  return new Promise((resolve, reject) => {
    server.once('error', (fault: NodeJS.ErrnoException) => (fault.code === 'EADDRINUSE' ? resolve(undefined) : reject(fault)));
    server.listen({ path }, () => resolve(owned));
  });
}

/** Waits until the owner's database answers; undefined where the owner is gone before that. */
function ask(path: string): Promise<Guest | undefined> {
  return new Promise((resolve) => {
    const socket = connect({ path });
    let said = '';
    const gone = new Promise<void>((left) => {
      socket.once('close', () => {
        left();
        // Not at once again: the name is free a moment later.
        setTimeout(() => resolve(undefined), 50);
      });
    });
    socket.on('error', () => undefined);
    socket.on('data', (bytes) => {
      said += bytes.toString();
      const lines = said.split('\n');
      said = lines.pop() ?? '';
      for (const line of lines) {
        const { pid, port } = JSON.parse(line) as OwnerNote;
        if (port !== null) resolve({ kind: 'guest', pid, port, gone, leave: () => void socket.destroy() });
      }
    });
  });
}
