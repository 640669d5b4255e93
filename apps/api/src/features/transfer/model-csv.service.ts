import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { ok, refuse, shownText } from '#kernel';
import {
  type CsvFault,
  type Kit,
  type ModelKind,
  checkKit,
  headingOf,
  modelCell,
  modelColumns,
  modelExamples,
  modelKinds,
  readModelsCsv,
} from '#tour-file';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { KitReader } from '../register/kit.reader.js';
import { putModels } from '../register/kit.writer.js';
import { TourReader } from '../tour/tour.reader.js';
import { readCsvFile, writeCsvFile } from './csv-file.js';
import { areFaults, isFault, readRowEdit, rowToSave } from './edit-row.js';
import { type CsvImport, changedCells, nothingImported } from './csv-import.js';

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
  async import(kind: ModelKind, bytes: Buffer, dryRun: boolean, who: SignedIn): Promise<CsvImport> {
    const records = readCsvFile(bytes);
    if (!Array.isArray(records)) return nothingImported(0, [records]);
    const read = readModelsCsv(kind, records);
    if (read.faults.length > 0) return nothingImported(records.length - 1, read.faults);
    const outcome = await this.unitOfWork.run<CsvImport, CsvImport>(async (manager) => {
      const answer = await this.apply(manager, kind, read.models, dryRun, who);
      return answer.faults.length > 0 || dryRun ? refuse(answer) : ok(answer);
    });
    return outcome.ok ? outcome.value : outcome.error;
  }

  /** One model from a form: what others wrote meanwhile stays, and where both wrote the same cell nothing is saved and both are shown. */
  async edit(kind: ModelKind, bytes: Buffer, who: SignedIn): Promise<CsvImport> {
    const records = readCsvFile(bytes);
    if (!Array.isArray(records)) return nothingImported(0, [records]);
    const edit = readRowEdit(records);
    if (isFault(edit)) return nothingImported(0, [edit]);
    const outcome = await this.unitOfWork.run<CsvImport, CsvImport>(async (manager) => {
      const { catalogue } = await this.kit.load(manager);
      const name = edit.wanted.model ?? '';
      const model = (catalogue[kind] as readonly Model[]).find((each) => each.model === name);
      if (!model) return refuse(nothingImported(1, [{ row: 3, column: 'model', value: name, wanted: 'a model on file' }]));
      const rows = rowToSave(edit, Object.fromEntries(modelColumns(kind).map((column) => [column.heading, modelCell(model, column)])));
      const read = areFaults(rows) ? { models: [], faults: rows } : readModelsCsv(kind, rows);
      if (read.faults.length > 0) return refuse(nothingImported(1, read.faults));
      const answer = await this.apply(manager, kind, read.models, false, who);
      return answer.faults.length > 0 ? refuse(answer) : ok(answer);
    });
    return outcome.ok ? outcome.value : outcome.error;
  }

  private async apply(
    manager: EntityManager,
    kind: ModelKind,
    models: readonly Model[],
    dryRun: boolean,
    who: SignedIn,
  ): Promise<CsvImport> {
    const columns = modelColumns(kind);
    const kit = await this.kit.load(manager);
    const before = new Map<string, Model>(kit.catalogue[kind].map((each) => [each.model, each]));
    const added = models.filter((each) => !before.has(each.model));
    const changed = models.flatMap((each) => {
      const was = before.get(each.model);
      const what = was ? changedCells(columns, (model: Model, column) => modelCell(model, columns[column]!), was, each) : '';
      return what === '' ? [] : [{ id: each.model, what, model: each }];
    });
    const given = new Map(models.map((each) => [each.model, each]));
    const after: Kit = {
      ...kit,
      catalogue: { ...kit.catalogue, [kind]: [...kit.catalogue[kind].map((each) => given.get(each.model) ?? each), ...added] },
    };
    const rowOf = (model: string) => models.findIndex((each) => each.model === model) + 2;
    const faults = [...faultsAfter(kind, after, rowOf), ...(await this.faultsInTours(manager, after))].slice(0, 200);
    const answer: CsvImport = {
      rows: models.length,
      added: added.map((each) => each.model),
      changed: changed.map(({ id, what }) => ({ id, what })),
      unchanged: models.length - added.length - changed.length,
      faults,
    };
    if (faults.length > 0 || dryRun) return answer;
    await putModels(manager, kind, [...added, ...changed.map((each) => each.model)]);
    await recordEvents(manager, who, this.clock.now(), [
      ...added.map((each) => ({ what: 'came in', sentence: `The model ${each.model} came on file.` })),
      ...changed.map(({ id, what }) => ({ what: 'changed', sentence: `Changed the model ${id}: ${what}.` })),
    ]);
    return answer;
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
