import type { EntityManager } from 'typeorm';
import type { ListedItem } from '#records';
import { intervalsOfItem, intervalsOfRules } from '#trade';
import type { Examination, ExaminationRule, ItemKind, ItemState } from '#tour-file';

// By joins and not item by item: a list may name a hundred thousand of them.
const listed = `SELECT item.id, item.kind, item.state, item.count, item.rest->'intervals' AS intervals,
  coalesce(made.records, '[]') AS records, coalesce(asked.waiting, '[]') AS waiting, coalesce(happened.days, '[]') AS incidents
FROM item
LEFT JOIN (SELECT item_id, jsonb_agg(data ORDER BY id) AS records FROM examination
  WHERE item_id = ANY($1) AND NOT EXISTS (SELECT FROM examination later WHERE later.supersedes = examination.id) GROUP BY item_id) made ON made.item_id = item.id
LEFT JOIN (SELECT subject, jsonb_agg(wanted ORDER BY id) AS waiting FROM proposal
  WHERE kind = 'record' AND state = 'proposed' AND subject = ANY($1) GROUP BY subject) asked ON asked.subject = item.id
LEFT JOIN (SELECT item_id, jsonb_agg(on_day) AS days FROM incident WHERE item_id = ANY($1) GROUP BY item_id) happened ON happened.item_id = item.id
WHERE item.id = ANY($1)`;

interface ListedOnFile {
  readonly id: string;
  readonly kind: ItemKind;
  readonly state: ItemState;
  readonly count: number | null;
  readonly intervals: string[] | null;
  readonly records: Examination[];
  readonly waiting: Examination[];
  readonly incidents: string[];
}

/** Items as an examiner's list meets them, with every record that counts or waits. */
export async function loadListed(
  manager: EntityManager,
  ids: readonly string[],
  rules: readonly ExaminationRule[],
): Promise<ReadonlyMap<string, ListedItem>> {
  const rows: ListedOnFile[] = await manager.query(listed, [ids]);
  const byRules = (kind: ItemKind): string[] => intervalsOfRules(rules.filter((each) => each.kinds.includes(kind)));
  return new Map(rows.map((row) => [row.id, { ...row, intervals: intervalsOfItem(row.intervals, byRules(row.kind)), reportFiles: [] }]));
}

/** A record that counts, of which item or batch. */
export interface CountingRecord {
  readonly id: string;
  readonly item: string;
  readonly count: number | null;
  readonly data: Examination;
}

/** Records that count, in the order in which they came on file, a page at a time. */
export const countingRecords = (manager: EntityManager, after: string, limit: number): Promise<CountingRecord[]> =>
  manager.query(
    `SELECT record.id, item.id AS item, item.count, record.data FROM examination record JOIN item ON item.id = record.item_id
     WHERE record.id > $1 AND NOT EXISTS (SELECT FROM examination later WHERE later.supersedes = record.id) ORDER BY record.id LIMIT $2`,
    [after, limit],
  );
