import { join } from 'node:path';
import { Trouble, findRunningDatabase, hasDatabase, startEmbeddedDatabase } from '#runtime';
import { readSettings } from '../../api/src/platform/config/config.js';

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
    if (!(fault instanceof Trouble) && (fault as { code?: string }).code !== 'ECONNREFUSED') throw fault;
    process.stderr.write(
      `${fault instanceof Trouble ? fault.message : 'The database does not answer: wanted DATABASE_URL of one that does.'}\n`,
    );
    return 1;
  }
}

/** Bytes as people read them. */
export const sizeOf = (bytes: number): string => (bytes < 1e6 ? `${Math.ceil(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`);
