import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync, readlinkSync, realpathSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { Trouble } from './trouble.js';

/** A number that no process has: above the largest that systems give. */
const nobody = 2 ** 31 - 1;

/**
 * Makes way for a PostgreSQL on this folder. Only what is surely a PostgreSQL of this folder hears a signal; where the number in `postmaster.pid` has
 * been given to another program since, the file is told so and that program is left alone.
 */
export async function makeWay(data: string, say: (sentence: string) => void): Promise<void> {
  const file = join(data, 'postmaster.pid');
  const server = existsSync(file) ? Number(readFileSync(file, 'utf8').split('\n')[0]) : 0;
  // Ended, and not yet fetched by its parent: to PostgreSQL that is still a process that holds the folder.
  if (server > 0 && server !== nobody && isZombie(server)) tellGone(file);
  else if (server > 0 && server !== nobody && isAlive(server)) {
    const isOurs = isOfFolder(server, data);
    if (isOurs === undefined)
      throw new Trouble(
        `Process ${server} stands in ${file}, and it cannot be told here whether it is the database of this folder. Nothing was stopped: look at it, stop it by hand if it is, and start again.`,
      );
    if (isOurs) await stopOrphan(server, say);
    else {
      say(`Process ${server} stands in ${file} and is another program by now: it is left alone.`);
      tellGone(file);
    }
  }
  await endOrphanBackends(data);
}

/** That the process of this number does not hold the folder. The rest of the file stays: by it PostgreSQL sees whether anybody still works on it. */
function tellGone(file: string): void {
  if (existsSync(file)) writeFileSync(file, readFileSync(file, 'utf8').replace(/^\d+/, String(nobody)));
}

async function stopOrphan(server: number, say: (sentence: string) => void): Promise<void> {
  say('An earlier Cartwright ended without stopping its database: stopping it now.');
  for (const signal of ['SIGINT', 'SIGQUIT'] as const) {
    signalTo(server, signal);
    for (let tries = 0; tries < 100 && isAlive(server); tries++) await pause(50);
    if (!isAlive(server)) return;
  }
  throw new Trouble(`The database of an earlier start (process ${server}) does not stop. Stop it by hand and start again.`);
}

/** Connections of a server that died hold on to its memory until they see it; what they still do is lost with it. */
async function endOrphanBackends(data: string): Promise<void> {
  for (const signal of ['SIGQUIT', 'SIGKILL'] as const) {
    for (let tries = 0; tries < 20; tries++) {
      const left = backendsOf(data);
      if (left.length === 0) return;
      if (tries === 0) for (const each of left) signalTo(each, signal);
      await pause(50);
    }
  }
}

function backendsOf(data: string): number[] {
  if (process.platform !== 'linux') return [];
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map(Number)
    .filter((pid) => isOfFolder(pid, data) === true && !isZombie(pid));
}

/** Whether this process is a PostgreSQL that works in this folder; undefined where that cannot be seen. */
export function isOfFolder(pid: number, data: string): boolean | undefined {
  if (process.platform === 'win32') return undefined;
  if (process.platform === 'linux') {
    try {
      return basename(readlinkSync(`/proc/${pid}/exe`)).startsWith('postgres') && readlinkSync(`/proc/${pid}/cwd`) === realpathSync(data);
    } catch {
      // Gone, or somebody else's, which ours never is.
      return false;
    }
  }
  const { status, stdout } = spawnSync('ps', ['-p', String(pid), '-o', 'command='], { encoding: 'utf8' });
  return status === 0 ? /postgres/.test(stdout) && (stdout.includes(data) || stdout.includes(realpathSync(data))) : undefined;
}

/** Ended, and only not yet fetched by its parent. */
function isZombie(pid: number): boolean {
  if (process.platform !== 'linux') return false;
  try {
    return /^\d+ \(.*\) Z/.test(readFileSync(`/proc/${pid}/stat`, 'utf8'));
  } catch {
    // Gone altogether.
    return false;
  }
}

function isAlive(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return !isZombie(pid);
  } catch (fault) {
    return (fault as NodeJS.ErrnoException).code === 'EPERM';
  }
}

function signalTo(pid: number, signal: NodeJS.Signals): void {
  try {
    process.kill(pid, signal);
  } catch {
    // Gone meanwhile.
  }
}
