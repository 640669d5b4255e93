import { Inject, Injectable } from '@nestjs/common';
import { parse } from 'csv-parse/sync';
import { DataSource, type EntityManager } from 'typeorm';
import { canonicalJson, shownText, writeCsv } from '#kernel';
import { type CsvFault, type Item, type ItemKind, checkTourFile, csvColumns, csvExamples, itemKinds, readItemsCsv } from '#tour-file';
import { CLOCK, type Clock } from '../../platform/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { KitReader } from '../register/kit.reader.js';
import { changeItem, insertItems, writeStack } from '../register/kit.writer.js';

export interface CsvImport {
  readonly rows: number;
  readonly added: readonly string[];
  readonly changed: readonly { readonly id: string; readonly what: string }[];
  readonly unchanged: number;
  readonly faults: readonly CsvFault[];
}

/** Cells that a spreadsheet would take for a formula are written with a quote before them, and read without it. */
const guarded = (cell: string): string => (/^[=+\-@\t]/.test(cell) ? `'${cell}` : cell);
const unguarded = (cell: string): string => (/^'[=+\-@\t]/.test(cell) ? cell.slice(1) : cell);

@Injectable()
export class CsvService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly kit: KitReader,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  static kindOf(text: string): ItemKind | undefined {
    return itemKinds.find((kind) => kind === text);
  }

  async export(kind: ItemKind): Promise<string> {
    return this.write(
      kind,
      (await this.kit.items(this.dataSource.manager)).filter((item) => item.kind === kind),
    );
  }

  example(kind: ItemKind): string {
    return this.write(kind, [csvExamples[kind]]);
  }

  private write(kind: ItemKind, items: readonly Item[]): string {
    const columns = csvColumns(kind);
    return writeCsv([columns.map((each) => each.heading), ...items.map((item) => columns.map((each) => guarded(each.cell(item))))]);
  }

  /** All rows or none; a dry run says the same and saves nothing. */
  async import(kind: ItemKind, bytes: Buffer, dryRun: boolean, who: { readonly name: string }): Promise<CsvImport> {
    const records = readRecords(bytes);
    if (!Array.isArray(records)) return { ...nothing, faults: [records] };
    const read = readItemsCsv(kind, records);
    if (read.faults.length > 0) return { ...nothing, rows: records.length - 1, faults: read.faults.slice(0, 200) };
    const outcome = await this.unitOfWork.run<CsvImport, CsvImport>(async (manager) => {
      const answer = await this.apply(manager, kind, read.items, who);
      return answer.faults.length > 0 || dryRun ? { ok: false, error: answer } : { ok: true, value: answer };
    });
    return outcome.ok ? outcome.value : outcome.error;
  }

  private async apply(manager: EntityManager, kind: ItemKind, given: readonly Item[], who: { readonly name: string }): Promise<CsvImport> {
    const kit = await this.kit.load(manager);
    const before = new Map(kit.items.map((item) => [item.id, item]));
    const merged = given.map((item) => ({
      ...item,
      examinations: before.get(item.id)?.examinations ?? [],
      events: before.get(item.id)?.events ?? [],
      intervals: before.get(item.id)?.intervals,
    }));
    const added = merged.filter((item) => !before.has(item.id));
    const changed = merged.flatMap((item) => {
      const what = before.has(item.id) ? differences(kind, before.get(item.id)!, item) : '';
      return what === '' ? [] : [{ id: item.id, what, item }];
    });
    const byId = new Map(merged.map((item) => [item.id, item]));
    const moved = new Set(merged.flatMap((item) => item.stack ?? []));
    const after = [
      ...kit.items.map(
        (item) =>
          byId.get(item.id) ??
          (item.kind === 'cart' ? { ...item, stack: (item.stack ?? []).filter((serial) => !moved.has(serial)) } : item),
      ),
      ...added,
    ];
    const faults = this.faultsAfter(kit, after, byId, given);
    const answer = {
      rows: given.length,
      added: added.map((item) => item.id),
      changed: changed.map(({ id, what }) => ({ id, what })),
      unchanged: merged.length - added.length - changed.length,
      faults,
    };
    if (faults.length > 0) return answer;
    await insertItems(
      manager,
      added.map(({ stack: _stack, ...item }) => item),
      who.name,
      this.clock.now(),
    );
    for (const { item } of changed) await changeItem(manager, item);
    for (const item of [...added, ...changed.map((each) => each.item)])
      if (item.kind === 'cart') await writeStack(manager, item.id, item.stack ?? []);
    await recordEvents(manager, who, this.clock.now(), [
      ...added.map((item) => ({ what: 'imported', itemId: item.id, sentence: 'Came in from a CSV file.' })),
      ...changed.map(({ id, what }) => ({ what: 'changed', itemId: id, sentence: `Changed from a CSV file: ${what}.` })),
    ]);
    return answer;
  }

  /** The whole register with these rows in it must agree with itself; faults are told at their rows. */
  private faultsAfter(
    kit: Awaited<ReturnType<KitReader['load']>>,
    items: readonly Item[],
    given: ReadonlyMap<string, Item>,
    rows: readonly Item[],
  ): CsvFault[] {
    const known = new Map(kit.items.map((item) => [item.id, item]));
    const kinds = rows.filter((item) => known.has(item.id) && known.get(item.id)!.kind !== item.kind);
    const file = { format: 'cartwright tour 1' as const, ...kit, items: [...items], bookings: [], tour: emptyTour };
    const faults = checkTourFile(file).filter((fault) => fault.field.startsWith('items['));
    const rowOf = (id: string) => rows.findIndex((item) => item.id === id) + 2;
    return [
      ...kinds.map((item) => ({
        row: rowOf(item.id),
        column: 'serial',
        value: item.id,
        wanted: `another serial: ${item.id} is a ${known.get(item.id)!.kind}`,
      })),
      ...faults.flatMap((fault) => {
        const [, index, rest] = /^items\[(\d+)\]\.?(.*)$/.exec(fault.field) ?? [];
        const item = items[Number(index)];
        const column = (rest ?? '').split('[')[0]!.replace('stack', 'boxes, top first').replace(/^id$/, 'serial');
        return item && given.has(item.id) ? [{ row: rowOf(item.id), column, value: shownText(fault.value), wanted: fault.wanted }] : [];
      }),
    ].slice(0, 200);
  }
}

const nothing: Omit<CsvImport, 'faults'> = { rows: 0, added: [], changed: [], unchanged: 0 };
const emptyTour = {
  id: '-',
  name: '-',
  depot: '-',
  prepFrom: '2000-01-01',
  returnTo: '2000-01-01',
  jurisdictions: [],
  visitDays: [],
  trucks: [],
  freight: [],
  spares: [],
  shows: [],
};

function readRecords(bytes: Buffer): string[][] | CsvFault {
  if (bytes.length === 0) return { row: 1, column: '', value: '', wanted: 'a CSV file (RFC 4180) with a heading' };
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff) || bytes.subarray(0, 200).includes(0))
    return { row: 1, column: '', value: 'UTF-16', wanted: 'a CSV file in UTF-8; save it again as "CSV UTF-8"' };
  try {
    const records: string[][] = parse(bytes, { bom: true, relax_column_count: true, skip_empty_lines: true, max_record_size: 100_000 });
    if (records.length > 50_001)
      return { row: 50_002, column: '', value: `${records.length - 1} rows`, wanted: 'at most 50,000 rows in one file' };
    return records.map((record) => record.map(unguarded));
  } catch (fault) {
    return {
      row: Number((fault as { lines?: number }).lines ?? 1),
      column: '',
      value: (fault as Error).message.slice(0, 100),
      wanted: 'a CSV file by RFC 4180: fields with commas, quotes or line ends in quotes, quotes doubled',
    };
  }
}

function differences(kind: ItemKind, before: Item, after: Item): string {
  return csvColumns(kind)
    .filter((column) => canonicalJson(column.cell(before)) !== canonicalJson(column.cell(after)))
    .map((column) => `${column.heading} ${column.cell(before) || 'nothing'} to ${column.cell(after) || 'nothing'}`)
    .join(', ');
}
