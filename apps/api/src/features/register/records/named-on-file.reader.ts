import type { EntityManager } from 'typeorm';
import type { NamedOnFile } from '#records';
import type { Examination, ItemKind } from '#tour-file';

/** A record on file that another one may correct. */
export interface RecordOnFile {
  readonly item: string;
  readonly data: Examination;
  readonly isCorrected: boolean;
}

interface Asking {
  readonly itemId: string;
  readonly supersedes: string | null;
  readonly reportsOf?: readonly string[];
}

/** What is on file of the items that records are of, and the records that they correct. */
export async function loadNamed(
  manager: EntityManager,
  asked: readonly Asking[],
): Promise<{ readonly items: ReadonlyMap<string, NamedOnFile>; readonly records: ReadonlyMap<string, RecordOnFile> }> {
  const ids = [...new Set(asked.map((each) => each.itemId))];
  const items: { id: string; kind: ItemKind; incidents: string[] }[] = await manager.query(
    `SELECT id, kind, ARRAY(SELECT on_day::text FROM incident WHERE item_id = item.id) AS incidents FROM item WHERE id = ANY($1)`,
    [ids],
  );
  const files: { id: string; item: string }[] = await manager.query(
    'SELECT id::text, item_id AS item FROM report_file WHERE item_id = ANY($1)',
    [[...new Set([...ids, ...asked.flatMap((each) => each.reportsOf ?? [])])]],
  );
  const speaksOf = new Map(asked.map((each) => [each.itemId, new Set([each.itemId, ...(each.reportsOf ?? [])])]));
  const corrected = asked.flatMap(({ supersedes }) => (supersedes !== null && /^\d{1,18}$/.test(supersedes) ? [supersedes] : []));
  const records: (RecordOnFile & { id: string })[] = await manager.query(
    `SELECT id, item_id AS item, data, EXISTS (SELECT FROM examination later WHERE later.supersedes = examination.id) AS "isCorrected"
     FROM examination WHERE id = ANY($1::bigint[])`,
    [corrected],
  );
  return {
    items: new Map(
      items.map(({ id, kind, incidents }) => [
        id,
        { kind, incidents, reportFiles: files.filter((each) => speaksOf.get(id)?.has(each.item)).map((each) => each.id) },
      ]),
    ),
    records: new Map(records.map((each) => [each.id, each])),
  };
}
