import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { ok, refuse, shownText } from '#kernel';
import { type Words, tell } from '#words';
import {
  type CsvFault,
  type Item,
  type ItemKind,
  type Kit,
  checkKit,
  csvColumns,
  csvExamples,
  itemKinds,
  readItemsCsv,
  withUnseen,
} from '#tour-file';
import { CLOCK, type Clock, today } from '../../platform/config/config.js';
import { WORDS } from '../../platform/config/words.js';
import { BadInputError } from '../../platform/faults/fault.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { handOf, keepEditions, propose, reasonFaults, waitingFact } from '../edition/edition.writer.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { workOutDates } from '../register/item-dates.writer.js';
import { KitReader } from '../register/kit.reader.js';
import { changeItems, eventOfPlace, insertItems, writeStacks } from '../register/kit.writer.js';
import { TourReader } from '../tour/tour.reader.js';
import { readCsvFile, writeCsvFile } from './csv-file.js';
import { areFaults, isFault, readRowEdit, rowToSave } from './edit-row.js';
import { type CsvImport, byRow, changedCells, nothingImported } from './csv-import.js';
import { holdItems } from './held-rows.js';
import { type ImportWatch, inSlices, unwatched } from './import-watch.js';
import { type Cell, cellFaults, rowsByKind } from './many/many-rows.js';
import type { ManyChanged, ManyRefusal, RefusedItem } from './many/many.types.js';
import { whyFaults } from './why-faults.js';

/** As many as a page of a list may hold. */
const mostAtOnce = 200;

/** Rows to be put on file, and by whom. */
interface Given {
  readonly kind: ItemKind;
  readonly items: readonly Item[];
  readonly rowOf: ReadonlyMap<string, number>;
  readonly who: SignedIn;
  readonly reason: string;
  /** Only what would be is asked. */
  readonly isDry: boolean;
}

interface ChangedItem {
  readonly id: string;
  readonly what: string;
  readonly item: Item;
}

/** Items of one kind out to CSV and in again, all rows or none. */
@Injectable()
export class CsvService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly kit: KitReader,
    private readonly tours: TourReader,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
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
  async import(kind: ItemKind, bytes: Buffer, dryRun: boolean, who: SignedIn, reason = '', watch = unwatched): Promise<CsvImport> {
    watch.tell({ step: 'reading' });
    const records = readCsvFile(bytes, watch.mostRows);
    if (!Array.isArray(records)) return nothingImported(0, [records]);
    watch.tell({ total: records.length - 1 });
    const read = readItemsCsv(kind, records);
    if (read.items.length === 0 && read.faults.length > 0) return nothingImported(records.length - 1, read.faults);
    // Where rows cannot be read the others are held against the register all the same: all that is wrong is told at once.
    const isDry = dryRun || read.faults.length > 0;
    const given: Given = { kind, items: read.items, rowOf: read.rowOf, who, reason: isDry ? 'asked what would be' : reason, isDry };
    const concerned = read.items.flatMap((item) => [item.id, ...(item.stack ?? [])]);
    const outcome = await this.unitOfWork.run<CsvImport, CsvImport>(async (manager) => {
      await watch.begun(manager, concerned);
      const answer = await this.apply(manager, given, watch);
      if (read.faults.length > 0) return refuse(nothingImported(records.length - 1, byRow([...read.faults, ...answer.faults])));
      if (answer.faults.length > 0 || dryRun) return refuse(answer);
      await watch.saved(manager, answer);
      return ok(answer);
    }, watch.isolation);
    return outcome.ok ? outcome.value : outcome.error;
  }

  /** One item from a form: what others wrote meanwhile stays, and where both wrote the same cell nothing is saved and both are shown. */
  async edit(kind: ItemKind, bytes: Buffer, who: SignedIn, reason = ''): Promise<CsvImport> {
    const records = readCsvFile(bytes, unwatched.mostRows);
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
      const read = areFaults(rows) ? { items: [], rowOf: new Map<string, number>(), faults: rows } : readItemsCsv(kind, rows);
      if (read.faults.length > 0) return refuse(nothingImported(1, read.faults));
      const answer = await this.apply(manager, { kind, items: read.items, rowOf: read.rowOf, who, reason, isDry: false }, unwatched);
      return answer.faults.length > 0 ? refuse(answer) : ok(answer);
    });
    return outcome.ok ? outcome.value : outcome.error;
  }

  /** The same cells in many items: one save, or what of which item is refused. */
  async changeMany(ids: readonly string[], cells: readonly Cell[], who: SignedIn, reason: string): Promise<ManyChanged | ManyRefusal> {
    const wanted = [...new Set(ids)];
    if (wanted.length === 0 || wanted.length > mostAtOnce)
      throw new BadInputError([{ field: 'ids', value: `${wanted.length} items`, wanted: `1 to ${mostAtOnce} items` }]);
    const outcome = await this.unitOfWork.run<ManyChanged, ManyRefusal>(async (manager) => {
      const items = await this.kit.items(manager, wanted);
      const missing = wanted.filter((id) => !items.some((item) => item.id === id));
      if (missing.length > 0)
        return refuse({ refused: missing.map((id) => ({ id, column: 'serial', value: id, wanted: 'an item on file' })) });
      const faults = cellFaults(cells, new Set(items.map((item) => item.kind)));
      if (faults.length > 0) throw new BadInputError(faults);
      const refused: RefusedItem[] = [];
      const sum: ManyChanged = { changed: 0, unchanged: 0, waits: [] };
      for (const { kind, rows } of rowsByKind(items, cells)) {
        const read = readItemsCsv(kind, rows);
        const answer =
          read.faults.length > 0
            ? nothingImported(rows.length - 1, read.faults)
            : await this.apply(manager, { kind, items: read.items, rowOf: read.rowOf, who, reason, isDry: false }, unwatched);
        refused.push(
          ...answer.faults.map(({ row, column, value, wanted: right }) => ({ id: rows[row - 1]?.[0] ?? '', column, value, wanted: right })),
        );
        sum.changed += answer.changed.length;
        sum.unchanged += answer.unchanged;
        sum.waits.push(...answer.waits);
      }
      return refused.length > 0 ? refuse({ refused }) : ok(sum);
    });
    return outcome.ok ? outcome.value : outcome.error;
  }

  private async apply(
    manager: EntityManager,
    { kind, items: given, rowOf: rows, who, reason, isDry }: Given,
    watch: ImportWatch,
  ): Promise<CsvImport> {
    watch.tell({ step: 'checking', checked: 0, written: 0, dated: 0 });
    const kit = await this.kit.around(manager, given);
    const before = new Map(kit.items.map((item) => [item.id, item]));
    // What a CSV does not hold stays as it is on file.
    const merged = given.map((item) => withUnseen(item, before.get(item.id)));
    const day = today(this.clock);
    const hand = handOf(who);
    const held = await holdItems(manager, kit, merged, hand, day);
    const columns = csvColumns(kind);
    const changed = held.changed.flatMap((item) => {
      const was = before.get(item.id);
      const what = was ? changedCells(columns, (each: Item, column) => columns[column]!.cell(each), was, item) : '';
      return what === '' ? [] : [{ id: item.id, what, item }];
    });
    const rowOf = (id: string) => rows.get(id) ?? 1;
    const rowOfFirst = rowOf((changed[0]?.item ?? merged[0])?.id ?? '');
    const faults = [...this.faultsOfAct(before, merged, rowOf, who)];
    if (faults.length === 0) faults.push(...(await this.faultsWith(manager, kit, merged, rowOf, rowOfFirst)));
    // What holds until the rest is accepted must agree as well.
    if (faults.length === 0 && held.waits.length > 0)
      faults.push(...(await this.faultsWith(manager, kit, [...held.changed, ...held.added], rowOf, rowOfFirst)));
    faults.push(...whyFaults(reasonFaults(hand, held.own, reason), rowOfFirst));
    const answer: CsvImport = {
      rows: given.length,
      added: held.added.map((item) => item.id),
      changed: changed.map(({ id, what }) => ({ id, what })),
      unchanged: merged.length - held.added.length - changed.length,
      faults,
      waits: held.waits.map((each) => ({ id: each.subject, sentence: tell(this.words.waiting, waitingFact(each)) })),
    };
    watch.tell({ checked: given.length });
    if (faults.length > 0 || isDry) return answer;
    const at = this.clock.now();
    await this.save(manager, held.added, changed, who, watch);
    await propose(manager, who, at, reason, held.waits);
    await keepEditions(manager, who, at, reason, held.editions);
    await recordEvents(
      manager,
      who,
      at,
      answer.waits.map(({ id, sentence }) => ({ what: 'proposed', itemId: id, sentence })),
    );
    watch.tell({ step: 'dates', written: given.length });
    await workOutDates(manager, day, { only: given.map((item) => item.id), tell: (dated) => watch.tell({ dated }) });
    return answer;
  }

  /** What would be wrong in the register and in the tours if these rows were on file; `kit` is what they are judged by. */
  private async faultsWith(
    manager: EntityManager,
    kit: Kit,
    rows: readonly Item[],
    rowOf: (id: string) => number,
    rowOfFirst: number,
  ): Promise<CsvFault[]> {
    const byId = new Map<string, Item>(rows.map((item) => [item.id, item]));
    const onFile = new Set(kit.items.map((item) => item.id));
    const moved = new Set(rows.flatMap((item) => item.stack ?? []));
    const items = [
      ...kit.items.map(
        (item) =>
          byId.get(item.id) ??
          (item.kind === 'cart' ? { ...item, stack: (item.stack ?? []).filter((serial) => !moved.has(serial)) } : item),
      ),
      ...rows.filter((item) => !onFile.has(item.id)),
    ];
    // Of an item a tour knows the serial, the kind and the model.
    const anotherModel = new Set(
      kit.items
        .filter(({ id, kind, model }) => byId.has(id) && (byId.get(id)?.model !== model || byId.get(id)?.kind !== kind))
        .map((item) => item.id),
    );
    return [
      ...this.faultsAfter(kit, items, byId, rowOf),
      ...(await this.faultsInTours(manager, { ...kit, items }, anotherModel, rowOfFirst)),
    ];
  }

  private async save(
    manager: EntityManager,
    added: readonly Item[],
    changed: readonly ChangedItem[],
    who: SignedIn,
    watch: ImportWatch,
  ): Promise<void> {
    const at = this.clock.now();
    let written = 0;
    const wrote = (rows: readonly unknown[]) => watch.tell({ step: 'writing', written: (written += rows.length) });
    for (const some of inSlices(added)) {
      const bare = some.map(({ stack: _stack, ...item }) => item);
      await insertItems(manager, bare, who, at);
      const events = some.map((item) => ({ what: 'came in', itemId: item.id, sentence: 'Came on file.' }));
      await recordEvents(manager, who, at, events);
      wrote(some);
    }
    for (const some of inSlices(changed)) {
      const items = some.map((each) => each.item);
      await changeItems(manager, items);
      const events = some.map(({ id, what }) => ({ what: 'changed', itemId: id, sentence: `Changed: ${what}.` }));
      await recordEvents(manager, who, at, events);
      wrote(some);
    }
    const carts = [...added, ...changed.map((each) => each.item)].filter((item) => item.kind === 'cart');
    const moved = await writeStacks(
      manager,
      carts.map((cart) => ({ cart: cart.id, serials: cart.stack ?? [] })),
    );
    await recordEvents(manager, who, at, moved.map(eventOfPlace));
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

  /** The register with these rows in it must agree with itself; faults are told at their rows. */
  private faultsAfter(kit: Kit, items: readonly Item[], given: ReadonlyMap<string, Item>, rowOf: (id: string) => number): CsvFault[] {
    const faults = checkKit({ ...kit, items: [...items] }, 100_000);
    return faults.flatMap((fault) => {
      const [, index, rest] = /^items\[(\d+)\]\.?(.*)$/.exec(fault.field) ?? [];
      const item = items[Number(index)];
      const column = (rest ?? '').split('[')[0]!.replace('stack', 'boxes, top first').replace(/^id$/, 'serial');
      return item && given.has(item.id) ? [{ row: rowOf(item.id), column, value: shownText(fault.value), wanted: fault.wanted }] : [];
    });
  }

  private async faultsInTours(manager: EntityManager, kit: Kit, anotherModel: ReadonlySet<string>, row: number): Promise<CsvFault[]> {
    const faults = await this.tours.faultsNaming(manager, kit, anotherModel);
    return faults.map(({ field, value, wanted }) => ({ row, column: field, value: shownText(value), wanted }));
  }
}
