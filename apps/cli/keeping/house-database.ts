import { join } from 'node:path';
import { Trouble, findRunningDatabase, hasDatabase, startEmbeddedDatabase } from '#runtime';
import { readSettings } from '../../api/src/platform/config/config.js';
import { databaseErrorOf, isConnectionLost } from '../../api/src/platform/faults/database-error.js';

export interface HouseDatabase {
  readonly url: string;
  close(): Promise<void>;
}

/** The database of the house that this environment names: DATABASE_URL, or the one in the data folder, running already or started for this command. */
export async function openHouseDatabase(root: string, say: (sentence: string) => void, makes = false): Promise<HouseDatabase> {
  const settings = readSettings(process.env, 'start');
  const close = () => Promise.resolve();
  if (settings.databaseUrl !== null) return { url: settings.databaseUrl, close };
  const folder = settings.dataFolder ?? join(root, '.data');
  const running = await findRunningDatabase(folder);
  if (running !== undefined) return { url: running, close };
  if (!makes && !hasDatabase(folder))
    throw new Trouble(`There is no house in ${folder}: wanted DATA_FOLDER or DATABASE_URL of the one that is meant.`);
  const database = await startEmbeddedDatabase({ folder, durable: true, say });
  return { url: database.url, close: () => database.stop() };
}

/** Runs a command for a person at a terminal: trouble is told as a sentence, and makes exit code 1. */
export async function atTerminal(work: () => Promise<number>): Promise<number> {
  try {
    return await work();
  } catch (fault) {
    const sentence = fault instanceof Trouble ? fault.message : troubleOf(fault);
    if (sentence === undefined) throw fault;
    process.stderr.write(`${sentence}\n`);
    return 1;
  }
}

/** Codes of the system and of the database (SQLSTATE class 53 and 57) that are no fault of the program. */
const troubles: Readonly<Record<string, string>> = {
  ECONNREFUSED: 'The database does not answer: wanted DATABASE_URL of one that does.',
  53100: 'The disk of the database is full. Nothing was changed; make room and try again.',
  ENOSPC: 'The disk is full. Nothing was changed; make room and try again.',
  '57P01': 'The database was stopped in the middle of it. Nothing was changed.',
  '57P02':
    'The database fell in the middle of it, as it does where its disk is full. Nothing was changed; look at the room on its disk and try again.',
  '57P03': 'The database is not ready: it starts, or cannot write on its disk. Look at the room there and try again.',
};

function troubleOf(fault: unknown): string | undefined {
  const code = databaseErrorOf(fault)?.code ?? (fault as { code?: string }).code ?? '';
  return troubles[code] ?? (isConnectionLost(fault) ? troubles['57P02'] : undefined);
}

/** Bytes as people read them. */
export const sizeOf = (bytes: number): string => (bytes < 1e6 ? `${Math.ceil(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`);
