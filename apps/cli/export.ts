import { Trouble } from '#runtime';
import { exportHouse } from './keeping/export-house.js';
import { atTerminal, openHouseDatabase } from './keeping/house-database.js';

const usage = 'npm run export -- FOLDER';

/** Everything that the house owns, in open formats. */
export function main(args: readonly string[], root: string): Promise<number> {
  const say = (sentence: string) => void process.stdout.write(`${sentence}\n`);
  return atTerminal(async () => {
    const [folder, ...more] = args;
    if (folder === undefined || folder.startsWith('-') || more.length > 0) throw new Trouble(`Wanted: ${usage}`);
    const database = await openHouseDatabase(root, say);
    try {
      const files = await exportHouse(database.url, folder);
      say(`${folder}: ${files} files, listed with their hashes in contents.csv. Passwords are not among them.`);
      return 0;
    } finally {
      await database.close();
    }
  });
}
