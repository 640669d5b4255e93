import type { DataSource } from 'typeorm';
import type { RuleEdition } from './rule-edition.types.js';

const newest = `SELECT edition.id::text AS id, changes->0->'was' AS was, changes->0->'wanted' AS wanted, reason, made_at AS "madeAt", coalesce(account.name, 'Cartwright') AS "madeBy"
FROM edition LEFT JOIN account ON account.id = made_by_id WHERE kind = 'examination rule' AND changes->0->>'field' = '' ORDER BY edition.id DESC LIMIT 500`;

/** Changes of examination rules with the rule before and after, newest first. */
export async function ruleEditions(dataSource: DataSource): Promise<RuleEdition[]> {
  const rows: (Omit<RuleEdition, 'madeAt'> & { madeAt: Date })[] = await dataSource.query(newest);
  return rows.map((row) => ({ ...row, madeAt: row.madeAt.toISOString() }));
}
