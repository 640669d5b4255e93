import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { ok, refuse, shownText } from '#kernel';
import { type CsvFault, type Item, type ItemKind, checkKit, csvColumns, csvExamples, itemKinds, readItemsCsv } from '#tour-file';
import { CLOCK, type Clock, today } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { workOutDates } from '../register/item-dates.writer.js';
import { KitReader } from '../register/kit.reader.js';
import { changeItems, eventOfPlace, insertItems, writeStacks } from '../register/kit.writer.js';
import { TourReader } from '../tour/tour.reader.js';
import { readCsvFile, writeCsvFile } from './csv-file.js';
import { areFaults, isFault, readRowEdit, rowToSave } from './edit-row.js';
import { type CsvImport, changedCells, nothingImported } from './csv-import.js';

/** Items of one kind out to CSV and in again, all rows or none. */
@Injectable()
export class CsvService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly kit: KitReader,
    private readonly tours: TourReader,
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
    return writeCsvFile(columns, items, (item, column) => columns[column]!.cell(item));
  }

  /** A dry run says the same and saves nothing. */
  async import(kind: ItemKind, bytes: Buffer, dryRun: boolean, who: SignedIn): Promise<CsvImport> {
    const records = readCsvFile(bytes);
    if (!Array.isArray(records)) return nothingImported(0, [records]);
    const read = readItemsCsv(kind, records);
    if (read.faults.length > 0) return nothingImported(records.length - 1, read.faults);
    const outcome = await this.unitOfWork.run<CsvImport, CsvImport>(async (manager) => {
      const answer = await this.apply(manager, kind, read.items, who);
      return answer.faults.length > 0 || dryRun ? { ok: false, error: answer } : { ok: true, value: answer };
    });
    return outcome.ok ? outcome.value : outcome.error;
  }

  /** One item from a form: what others wrote meanwhile stays, and where both wrote the same cell nothing is saved and both are shown. */
  async edit(kind: ItemKind, bytes: Buffer, who: SignedIn): Promise<CsvImport> {
    const records = readCsvFile(bytes);
    if (!Array.isArray(records)) return nothingImported(0, [records]);
    const edit = readRowEdit(records);
    if (isFault(edit)) return nothingImported(0, [edit]);
    const outcome = await this.unitOfWork.run<CsvImport, CsvImport>(async (manager) => {
      const id = edit.wanted.serial ?? '';
      const [item] = await this.kit.items(manager, [id]);
      if (item?.kind !== kind)
        return refuse(nothingImported(1, [{ row: 3, column: 'serial', value: id, wanted: `the serial of a ${kind} on file` }]));
      const now = Object.fromEntries(csvColumns(kind).map(({ heading, cell }) => [heading, cell(item)]));
      const rows = rowToSave(edit, now);
      const read = areFaults(rows) ? { items: [], faults: rows } : readItemsCsv(kind, rows);
      if (read.faults.length > 0) return refuse(nothingImported(1, read.faults));
      const answer = await this.apply(manager, kind, read.items, who);
      return answer.faults.length > 0 ? refuse(answer) : ok(answer);
    });
    return outcome.ok ? outcome.value : outcome.error;
  }

  private async apply(manager: EntityManager, kind: ItemKind, given: readonly Item[], who: SignedIn): Promise<CsvImport> {
    const kit = await this.kit.load(manager);
    const before = new Map(kit.items.map((item) => [item.id, item]));
    // What a CSV does not hold stays as it is on file.
    const merged = given.map((item) => {
      const { examinations = [], events = [], intervals } = before.get(item.id) ?? {};
      return { ...item, examinations, events, intervals };
    });
    const added = merged.filter((item) => !before.has(item.id));
    const columns = csvColumns(kind);
    const changed = merged.flatMap((item) => {
      const was = before.get(item.id);
      const what = was ? changedCells(columns, (each: Item, column) => columns[column]!.cell(each), was, item) : '';
      return what === '' ? [] : [{ id: item.id, what, item }];
    });
    const byId = new Map<string, Item>(merged.map((item) => [item.id, item]));
    const moved = new Set(merged.flatMap((item) => item.stack ?? []));
    const after = [
      ...kit.items.map(
        (item) =>
          byId.get(item.id) ??
          (item.kind === 'cart' ? { ...item, stack: (item.stack ?? []).filter((serial) => !moved.has(serial)) } : item),
      ),
      ...added,
    ];
    const rowOf = (id: string) => given.findIndex((item) => item.id === id) + 2;
    const faults = [
      ...this.faultsOfAct(before, merged, rowOf, who),
      ...this.faultsAfter(kit, after, byId, rowOf),
      ...(await this.faultsInTours(manager, { ...kit, items: after }, changed[0] && rowOf(changed[0].id))),
    ].slice(0, 200);
    const answer: CsvImport = {
      rows: given.length,
      added: added.map((item) => item.id),
      changed: changed.map(({ id, what }) => ({ id, what })),
      unchanged: merged.length - added.length - changed.length,
      faults,
    };
    if (faults.length === 0)
      await this.save(
        manager,
        added,
        changed.map((each) => each.item),
        who,
        changed,
      );
    return answer;
  }

  private async save(
    manager: EntityManager,
    added: readonly Item[],
    changed: readonly Item[],
    who: SignedIn,
    said: readonly { id: string; what: string }[],
  ): Promise<void> {
    await insertItems(
      manager,
      added.map(({ stack: _stack, ...item }) => item),
      who,
      this.clock.now(),
    );
    await changeItems(manager, changed);
    const carts = [...added, ...changed].filter((item) => item.kind === 'cart');
    const moved = await writeStacks(
      manager,
      carts.map((cart) => ({ cart: cart.id, serials: cart.stack ?? [] })),
    );
    await recordEvents(manager, who, this.clock.now(), [
      ...added.map((item) => ({ what: 'came in', itemId: item.id, sentence: 'Came on file.' })),
      ...said.map(({ id, what }) => ({ what: 'changed', itemId: id, sentence: `Changed: ${what}.` })),
      ...moved.map(eventOfPlace),
    ]);
    await workOutDates(manager, today(this.clock));
  }

  /** What a row may not do, whoever writes it: turn a serial into another kind, or let an item out of quarantine past the safety officer. */
  private faultsOfAct(before: ReadonlyMap<string, Item>, rows: readonly Item[], rowOf: (id: string) => number, who: SignedIn): CsvFault[] {
    return rows.flatMap((item): CsvFault[] => {
      const was = before.get(item.id);
      if (!was) return [];
      if (was.kind !== item.kind)
        return [{ row: rowOf(item.id), column: 'serial', value: item.id, wanted: `another serial: ${item.id} is a ${was.kind}` }];
      if (was.state === 'quarantined' && item.state !== 'quarantined' && who.role !== 'safety')
        return [{ row: rowOf(item.id), column: 'state', value: item.state, wanted: 'quarantined: only the safety officer releases it' }];
      return [];
    });
  }

  /** The whole register with these rows in it must agree with itself; faults are told at their rows. */
  private faultsAfter(
    kit: Awaited<ReturnType<KitReader['load']>>,
    items: readonly Item[],
    given: ReadonlyMap<string, Item>,
    rowOf: (id: string) => number,
  ): CsvFault[] {
    const faults = checkKit({ ...kit, items: [...items] });
    return faults.flatMap((fault) => {
      const [, index, rest] = /^items\[(\d+)\]\.?(.*)$/.exec(fault.field) ?? [];
      const item = items[Number(index)];
      const column = (rest ?? '').split('[')[0]!.replace('stack', 'boxes, top first').replace(/^id$/, 'serial');
      return item && given.has(item.id) ? [{ row: rowOf(item.id), column, value: shownText(fault.value), wanted: fault.wanted }] : [];
    });
  }

  private async faultsInTours(manager: EntityManager, kit: Awaited<ReturnType<KitReader['load']>>, row = 2): Promise<CsvFault[]> {
    const faults = await this.tours.faultsWith(manager, kit);
    return faults.map(({ field, value, wanted }) => ({ row, column: field, value: shownText(value), wanted }));
  }
}
