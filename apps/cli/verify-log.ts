import pg from 'pg';
import { groupDigits } from '#kernel';
import { Trouble } from '#runtime';
import { type LogFault, type LogVerdict, verifyLog } from '../api/src/platform/seal/verify-log.js';
import { atTerminal, openHouseDatabase } from './keeping/house-database.js';
import { plainText } from './keeping/stored-tables.js';

const usage = 'npm run -s verify-log -- [--head HASH]';

/** Verifies the log of a house against its seals and a head from paper. Exit code 1 where a line is not what was sealed, naming the first. */
export function main(args: readonly string[], root: string): Promise<number> {
  const say = (sentence: string) => void process.stdout.write(`${sentence}\n`);
  return atTerminal(async () => {
    const wanted = headFrom(args);
    const database = await openHouseDatabase(root, (sentence) => void process.stderr.write(`${sentence}\n`));
    const client = new pg.Client({ connectionString: database.url });
    try {
      await client.connect();
      await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
      for (const statement of plainText) await client.query(statement);
      const verdict = await verifyLog(async (sql, values) => (await client.query(sql, values)).rows as never, wanted);
      for (const sentence of sentencesOf(verdict, wanted)) say(sentence);
      return verdict.fault ? 1 : 0;
    } finally {
      await client.end().catch(() => undefined);
      await database.close();
    }
  });
}

function headFrom(args: readonly string[]): string | undefined {
  if (args.length === 0) return undefined;
  const [flag, head, ...more] = args;
  if (flag !== '--head' || head === undefined || more.length > 0 || !/^[0-9a-fA-F]{64}$/.test(head))
    throw new Trouble(`Wanted: ${usage}, the hash of 64 hexadecimal digits as printed.`);
  return head.toLowerCase();
}

function sentencesOf({ fault, lines, seals, head, sealedAt, wantedAt, reworded, unsealed }: LogVerdict, wanted?: string): string[] {
  const counted = `${groupDigits(lines)} lines in ${groupDigits(seals)} seals`;
  if (fault) return [`NOT AS SEALED: ${faultWords(fault)}`, `Before it, ${counted} are as they were sealed.`];
  return [
    `${counted} are as they were sealed${sealedAt === null ? '' : `, the newest ${sealedAt}`}.`,
    ...(head === '' ? [] : [`Head: ${head}`]),
    ...(wantedAt ? [`The head ${wanted} stands for the first ${groupDigits(wantedAt.lines)} lines, sealed ${wantedAt.sealedAt}.`] : []),
    ...(reworded > 0 ? [`${groupDigits(reworded)} lines lost the name of a person who left; that is a line of the log itself.`] : []),
    ...(unsealed > 0 ? [`${groupDigits(unsealed)} newer lines wait for the next seal.`] : []),
  ];
}

function faultWords(fault: LogFault): string {
  if (fault.kind === 'head') return `the head ${fault.head} is none of this log: what stood in it then was taken out or sealed anew.`;
  if (fault.kind === 'seal')
    return `seal ${fault.seal} does not agree with its lines (${fault.first} to ${fault.last}) and the seal before it.`;
  const sealed = fault.seal === null ? '' : ` of seal ${fault.seal}`;
  const now = fault.now === null ? '' : ` It says now: ${fault.now}`;
  if (fault.kind === 'missing') return `line ${fault.line}${sealed} is missing.`;
  if (fault.kind === 'out of order') return `line ${fault.line}${sealed} stands out of its order.${now}`;
  if (fault.kind === 'put in') return `line ${fault.line} was put in behind lines that are sealed.${now}`;
  return `line ${fault.line}${sealed} was changed.${now}`;
}
