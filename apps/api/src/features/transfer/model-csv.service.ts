import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { ok, refuse, shownText } from '#kernel';
import {
  type CsvFault,
  type Kit,
  type ModelKind,
  type ModelsCsv,
  checkKit,
  headingOf,
  modelCell,
  modelColumns,
  modelExamples,
  modelKinds,
  readModelsCsv,
} from '#tour-file';
import { type Words, tell } from '#words';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { WORDS } from '../../platform/config/words.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { handOf, keepEditions, propose, reasonFaults, waitingFact } from '../edition/edition.writer.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { KitReader } from '../register/kit.reader.js';
import { leaveToAccept, putModels } from '../register/kit.writer.js';
import { TourReader } from '../tour/tour.reader.js';
import { readCsvFile, writeCsvFile } from './csv-file.js';
import { areFaults, isFault, readRowEdit, rowToSave } from './edit-row.js';
import { type CsvImport, byRow, changedCells, nothingImported } from './csv-import.js';
import { holdModels } from './held-rows.js';
import { unwatched } from './import-watch.js';
import { whyFaults } from './why-faults.js';

type Model = { readonly model: string };

/** Catalogue models of one kind out to CSV and in again, all rows or none. */
@Injectable()
export class ModelCsvService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly kit: KitReader,
    private readonly tours: TourReader,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  static kindOf(text: string): ModelKind | undefined {
    return modelKinds.find((kind) => kind === text);
  }

  async export(kind: ModelKind): Promise<string> {
    const { catalogue } = await this.kit.load(this.dataSource.manager);
    return this.write(kind, catalogue[kind]);
  }

  example(kind: ModelKind): string {
    return this.write(kind, [modelExamples[kind]]);
  }

  private write(kind: ModelKind, models: readonly Model[]): string {
    const columns = modelColumns(kind);
    return writeCsvFile(columns, models, (model, column) => modelCell(model, columns[column]!));
  }

  /** A dry run says the same and saves nothing. */
  async import(kind: ModelKind, bytes: Buffer, dryRun: boolean, who: SignedIn, reason = '', watch = unwatched): Promise<CsvImport> {
    watch.tell({ step: 'reading' });
    const records = readCsvFile(bytes, watch.mostRows);
    if (!Array.isArray(records)) return nothingImported(0, [records]);
    watch.tell({ total: records.length - 1 });
    const read = readModelsCsv(kind, records);
    if (read.models.length === 0 && read.faults.length > 0) return nothingImported(records.length - 1, read.faults);
    // Where rows cannot be read the others are held against the register all the same: all that is wrong is told at once.
    const isDry = dryRun || read.faults.length > 0;
    const outcome = await this.unitOfWork.run<CsvImport, CsvImport>(async (manager) => {
      await watch.begun(manager, []);
      watch.tell({ step: 'checking', checked: 0, written: 0, dated: 0 });
      const answer = await this.apply(manager, kind, read, isDry, who, isDry ? 'asked what would be' : reason);
      if (read.faults.length > 0) return refuse(nothingImported(records.length - 1, byRow([...read.faults, ...answer.faults])));
      if (answer.faults.length > 0 || dryRun) return refuse(answer);
      await watch.saved(manager, answer);
      watch.tell({ step: 'writing', checked: answer.rows, written: answer.rows, dated: answer.rows });
      return ok(answer);
    }, watch.isolation);
    return outcome.ok ? outcome.value : outcome.error;
  }

  /** One model from a form: what others wrote meanwhile stays, and where both wrote the same cell nothing is saved and both are shown. */
  async edit(kind: ModelKind, bytes: Buffer, who: SignedIn, reason = ''): Promise<CsvImport> {
    const records = readCsvFile(bytes, unwatched.mostRows);
    if (!Array.isArray(records)) return nothingImported(0, [records]);
    const edit = readRowEdit(records);
    if (isFault(edit)) return nothingImported(0, [edit]);
    const outcome = await this.unitOfWork.run<CsvImport, CsvImport>(async (manager) => {
      const { catalogue } = await this.kit.load(manager);
      const name = edit.wanted.model ?? '';
      const model = (catalogue[kind] as readonly Model[]).find((each) => each.model === name);
      if (!model) return refuse(nothingImported(1, [{ row: 3, column: 'model', value: name, wanted: 'a model on file' }]));
      const rows = rowToSave(edit, Object.fromEntries(modelColumns(kind).map((column) => [column.heading, modelCell(model, column)])));
      const read = areFaults(rows) ? { models: [], rowOf: new Map<string, number>(), faults: rows } : readModelsCsv(kind, rows);
      if (read.faults.length > 0) return refuse(nothingImported(1, read.faults));
      const answer = await this.apply(manager, kind, read, false, who, reason);
      return answer.faults.length > 0 ? refuse(answer) : ok(answer);
    });
    return outcome.ok ? outcome.value : outcome.error;
  }

  private async apply(
    manager: EntityManager,
    kind: ModelKind,
    { models, rowOf: rows }: Pick<ModelsCsv, 'models' | 'rowOf'>,
    dryRun: boolean,
    who: SignedIn,
    reason: string,
  ): Promise<CsvImport> {
    const columns = modelColumns(kind);
    const kit = await this.kit.load(manager);
    const before = new Map<string, Model>(kit.catalogue[kind].map((each) => [each.model, each]));
    const hand = handOf(who);
    const held = holdModels(kind, before, await this.unaccepted(manager, kind), models, hand);
    const changed = held.changed.flatMap((each) => {
      const was = before.get(each.model);
      const what = was ? changedCells(columns, (model: Model, column) => modelCell(model, columns[column]!), was, each) : '';
      return what === '' ? [] : [{ id: each.model, what, model: each }];
    });
    const rowOf = (model: string) => rows.get(model) ?? 1;
    const faults = await this.faultsWith(manager, kit, kind, models, rowOf);
    // What holds until the rest is accepted must agree as well.
    if (faults.length === 0 && held.waits.length > 0)
      faults.push(...(await this.faultsWith(manager, kit, kind, [...held.changed, ...held.added], rowOf)));
    faults.push(...whyFaults(reasonFaults(hand, held.own, reason), rowOf(changed[0]?.id ?? '')));
    const added = held.added.map((each) => each.model);
    const answer: CsvImport = {
      rows: models.length,
      added,
      changed: changed.map(({ id, what }) => ({ id, what })),
      unchanged: models.length - added.length - changed.length,
      faults,
      waits: held.waits.map((each) => {
        const fact = waitingFact(each);
        return { id: fact.code === 'examination' ? fact.item : fact.id, sentence: tell(this.words.waiting, fact) };
      }),
    };
    if (faults.length > 0 || dryRun) return answer;
    const at = this.clock.now();
    await putModels(manager, kind, [...held.added, ...changed.map((each) => each.model)]);
    const isNewHeld = held.waits.some((each) => each.field === '');
    if (isNewHeld) await leaveToAccept(manager, kind, added);
    await propose(manager, who, at, reason, held.waits);
    await keepEditions(manager, who, at, reason, held.editions);
    await recordEvents(manager, who, at, [
      ...added.map((id) => ({ what: 'came in', sentence: `The model ${id} came on file.` })),
      ...changed.map(({ id, what }) => ({ what: 'changed', sentence: `Changed the model ${id}: ${what}.` })),
      ...answer.waits.map(({ sentence }) => ({ what: 'proposed', sentence })),
    ]);
    return answer;
  }

  private async unaccepted(manager: EntityManager, kind: ModelKind): Promise<ReadonlySet<string>> {
    const rows: { model: string }[] = await manager.query('SELECT model FROM model WHERE kind = $1 AND NOT is_accepted', [kind]);
    return new Set(rows.map((row) => row.model));
  }

  /** What would be wrong in the register and in the tours if these models were on file. */
  private async faultsWith(
    manager: EntityManager,
    kit: Kit,
    kind: ModelKind,
    models: readonly Model[],
    rowOf: (model: string) => number,
  ): Promise<CsvFault[]> {
    const given = new Map(models.map((each) => [each.model, each]));
    const onFile = new Set<string>(kit.catalogue[kind].map((each) => each.model));
    const after: Kit = {
      ...kit,
      catalogue: {
        ...kit.catalogue,
        [kind]: [...kit.catalogue[kind].map((each) => given.get(each.model) ?? each), ...models.filter((each) => !onFile.has(each.model))],
      },
    };
    return [...faultsAfter(kind, after, rowOf), ...(await this.faultsInTours(manager, after))];
  }

  private async faultsInTours(...[manager, kit]: Parameters<TourReader['faultsWith']>): Promise<CsvFault[]> {
    const faults = await this.tours.faultsWith(manager, kit);
    return faults.map(({ field, value, wanted }) => ({ row: 2, column: field, value: shownText(value), wanted }));
  }
}

/** The whole register with these models in it must agree with itself. */
function faultsAfter(kind: ModelKind, kit: Kit, rowOf: (model: string) => number): CsvFault[] {
  const faults = checkKit(kit);
  return faults.flatMap((fault) => {
    const [, ofKind, index, rest] = /^catalogue\.(\w+)\[(\d+)\]\.?(.*)$/.exec(fault.field) ?? [];
    const model = ofKind === kind ? kit.catalogue[kind][Number(index)]?.model : undefined;
    const row = model === undefined ? 0 : rowOf(model);
    if (row >= 2) return [{ row, column: headingOf(kind, rest!), value: shownText(fault.value), wanted: fault.wanted }];
    return [{ row: 2, column: fault.field, value: shownText(fault.value), wanted: fault.wanted }];
  });
}
