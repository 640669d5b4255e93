import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

/** PostgreSQL refuses to run as root; root runs it as the system's unprivileged user. */
export interface DatabaseUser {
  readonly uid: number;
  readonly gid: number;
}

export function databaseUser(): DatabaseUser | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const id = (flag: string) => Number(execFileSync('id', [flag, 'nobody'], { encoding: 'utf8' }).trim());
  return { uid: id('-u'), gid: id('-g') };
}

/** Whether a user without rights of its own can walk down to this folder. */
export function canReach(folder: string): boolean {
  for (let at = resolve(folder); ; at = dirname(at)) {
    try {
      if ((statSync(at).mode & 0o001) === 0) return false;
    } catch {
      // not there yet: what lies above decides
    }
    if (dirname(at) === at) return true;
  }
}

/** A folder that the database user can reach, one for each checkout. */
export function reachableFolder(folder: string): string {
  return join('/var/lib', `cartwright-${createHash('sha256').update(resolve(folder)).digest('hex').slice(0, 12)}`);
}
