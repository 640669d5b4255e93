import type { DataSource } from 'typeorm';
import { LogQuery } from '../../../api/src/features/log/log.query.js';
import { DatesListQuery } from '../../../api/src/features/register/dates/dates-list.query.js';
import { median, numberFrom, readArguments, say } from '../arguments.js';
import { benchDay, openHouse } from './house.js';
import { fillHouse } from './made-house.js';

const goalMs = 100;

interface Asked {
  readonly text: string;
  readonly values: readonly unknown[];
}

/** Ten acts of a thousand lines each by a person, as imports leave them, and one line apiece for every tenth item. */
const acts = [
  `INSERT INTO event (at, who, person_id, what, sentence, item_id, act) SELECT now(), 'Wren Castellan', $1, 'changed', 'Changed by a file.', item.id,
     ('00000000-0000-4000-8000-' || lpad((item.place % 10)::text, 12, '0'))::uuid FROM item WHERE item.place % 10 = 3`,
  `INSERT INTO event (at, who, person_id, what, sentence, item_id, tour_id) SELECT now(), 'Wren Castellan', $1, 'changed', 'Changed by a form.', item.id, 'made-1' FROM item WHERE item.place % 10 = 4`,
];

/** The statements of the log and of the list of dates in a house of ten years, explained and timed by the database itself. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const [items, rounds] = [numberFrom(values, 'items', 100_000), numberFrom(values, 'rounds', 5)];
  const house = await openHouse(root);
  try {
    await fillHouse(house.dataSource, items, benchDay);
    const [person]: { id: string }[] = await house.dataSource.query(`SELECT id FROM account WHERE role = 'warehouse'`);
    for (const statement of acts) await house.dataSource.query(statement, [person?.id]);
    await house.dataSource.query('VACUUM ANALYZE event');
    const [counted]: { lines: number }[] = await house.dataSource.query('SELECT count(*)::int AS lines FROM event');
    const [log, dates] = [house.app.get(LogQuery), house.app.get(DatesListQuery)];
    const pages: Readonly<Record<string, () => Promise<unknown>>> = {
      'log, all': () => log.acts({}, 40),
      'log, further on': async () => log.acts({}, 40, (await log.acts({}, 40)).pageInfo.endCursor),
      'log, an item': () => log.acts({ item: 'BOX-000001' }, 40),
      'log, a tour': () => log.acts({ tour: 'made-1' }, 40),
      'log, a person': () => log.acts({ person: person?.id ?? null }, 40),
      'log, a day': () => log.acts({ day: benchDay, zone: 'Europe/London' }, 40),
      'log, lines of an act': () => log.lines({ act: '00000000-0000-4000-8000-000000000003' }, 50),
      'dates, all': () => dates.examined(100),
      'dates, further on': async () => dates.examined(100, (await dates.examined(100)).pageInfo.endCursor),
      'dates, a depot': () => dates.examined(100, null, { depot: 'Northgate' }),
      'dates, a tour': () => dates.examined(100, null, { tour: 'made-1' }),
      'dates, a kind': () => dates.examined(100, null, { kind: 'sling' }),
      'dates, next 30 days': () => dates.examined(100, null, { days: 30 }),
    };
    const told: Record<string, number> = {};
    for (const [name, page] of Object.entries(pages)) {
      const asked = await statementsOf(house.dataSource, page);
      const times: number[] = [];
      for (let round = 0; round < rounds; round++) times.push(await databaseMs(house.dataSource, asked));
      told[name] = Math.round(median(times) * 10) / 10;
      say(`${name.padEnd(24)} ${String(told[name]).padStart(8)} ms at the database, ${asked.length} statements`);
    }
    const slowest = Math.max(...Object.values(told));
    say(JSON.stringify({ items, lines: counted?.lines, rounds, goalMs, slowestMs: slowest, pagesMs: told }));
    return slowest <= goalMs ? 0 : 1;
  } finally {
    await house.close();
  }
}

/** What a page asks the database, as it is asked. */
async function statementsOf(dataSource: DataSource, page: () => Promise<unknown>): Promise<Asked[]> {
  const asked: Asked[] = [];
  const query = dataSource.query.bind(dataSource);
  dataSource.query = ((text: string, given: readonly unknown[] = []) => {
    // What is written meanwhile is not to be written again.
    if (!/\b(INSERT|UPDATE|DELETE)\b/.test(text)) asked.push({ text, values: given });
    return query(text, [...given]);
  }) as typeof dataSource.query;
  try {
    await page();
  } finally {
    dataSource.query = query;
  }
  return asked;
}

/** Planning and execution of all of them together, as the server measures. */
async function databaseMs(dataSource: DataSource, asked: readonly Asked[]): Promise<number> {
  let sum = 0;
  for (const { text, values } of asked) {
    const [row]: { 'QUERY PLAN': { 'Planning Time': number; 'Execution Time': number }[] }[] = await dataSource.query(
      `EXPLAIN (ANALYZE, FORMAT JSON) ${text}`,
      [...values],
    );
    const [plan] = row?.['QUERY PLAN'] ?? [];
    sum += (plan?.['Planning Time'] ?? 0) + (plan?.['Execution Time'] ?? 0);
  }
  return sum;
}
