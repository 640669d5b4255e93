import { randomInt } from 'node:crypto';
import { DataSource } from 'typeorm';
import { Trouble } from '#runtime';
import { dataSourceOptions } from '../api/src/data-source.js';
import { renewAtTheMachine } from '../api/src/features/account/renew-at-the-machine.js';
import { hashPassword } from '../api/src/platform/sign-in/password.js';
import { atTerminal, openHouseDatabase } from './keeping/house-database.js';

const usage = 'npm run -s renew -- EMAIL';

/** Letters and digits that nobody mistakes for one another. */
const signs = 'abcdefghjkmnpqrstuvwxyz23456789';

/**
 * A password for one sign-in, for a person whom nobody on the screens may give one: the only safety officer. Whoever holds the database's own login may
 * do this, and the log says that it was done at the machine. Exit code 1 where nobody has that address.
 */
export function main(args: readonly string[], root: string): Promise<number> {
  const say = (sentence: string) => void process.stdout.write(`${sentence}\n`);
  return atTerminal(async () => {
    const [email, ...more] = args;
    if (email === undefined || email.startsWith('-') || more.length > 0) throw new Trouble(`Wanted: ${usage}`);
    const database = await openHouseDatabase(root, say);
    const dataSource = await new DataSource(dataSourceOptions(database.url)).initialize();
    try {
      const password = Array.from({ length: 16 }, () => signs[randomInt(signs.length)]).join('');
      const hash = await hashPassword(password);
      const name = await dataSource.transaction('SERIALIZABLE', (manager) => renewAtTheMachine(manager, email, hash, new Date()));
      if (name === null) throw new Trouble(`Nobody who may sign in has the address ${email.slice(0, 200)}.`);
      say(
        `${name} has the password ${password} for one sign-in within a day, and chooses a new one then. Every session of ${name} has ended.`,
      );
      return 0;
    } finally {
      await dataSource.destroy();
      await database.close();
    }
  });
}
