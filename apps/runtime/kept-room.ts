import { randomBytes } from 'node:crypto';
import { existsSync, rmSync, statfsSync, writeFileSync } from 'node:fs';

/** Enough for PostgreSQL to start, end its recovery and answer reads: two segments of its log. */
const roomBytes = 32 * 1024 * 1024;

/** Kept where this is a small part of what is free. */
const freeTimes = 4;

const fileOf = (data: string): string => `${data}-room`;

/** A file beside the cluster that is given up where a start finds the disk full: without any room a database cannot even be read. */
export function keepRoom(data: string): void {
  const file = fileOf(data);
  if (existsSync(file)) return;
  try {
    const { bavail, bsize } = statfsSync(data);
    if (bavail * bsize < freeTimes * roomBytes) return;
    // No zeros: a file system may keep those in no room at all.
    writeFileSync(file, randomBytes(roomBytes), { mode: 0o600 });
  } catch {
    rmSync(file, { force: true });
  }
}

/** False where none was kept. */
export function giveRoom(data: string): boolean {
  const file = fileOf(data);
  if (!existsSync(file)) return false;
  rmSync(file);
  return true;
}
