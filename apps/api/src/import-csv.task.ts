import { constants, setPriority } from 'node:os';
import { DataSource, type EntityManager } from 'typeorm';
import { canonicalJson } from '#kernel';
import { english } from '#words';
import { dataSourceOptions } from './data-source.js';
import { insideAct } from './platform/acts/current-act.js';
import { TryAgain, UnitOfWork } from './platform/database/unit-of-work.js';
import { writings } from './planning/snapshot/input-versions.js';
import { ExaminationWriter } from './features/register/examination.writer.js';
import { KitReader } from './features/register/kit.reader.js';
import { TourReader } from './features/tour/tour.reader.js';
import type { CsvImport } from './features/transfer/csv-import.js';
import { CsvService } from './features/transfer/csv.service.js';
import { ExaminationCsvService } from './features/transfer/examined/examination-csv.service.js';
import { type ImportWatch, importSteps } from './features/transfer/import-watch.js';
import { ModelCsvService } from './features/transfer/model-csv.service.js';
import { type ImportAnswer, answerOf } from './features/transfer/import/import-answer.js';
import type { ImportTask } from './features/transfer/import/import-task.js';

/** The largest file. */
const mostRows = 100_000;

/** Tries that let catalogue, rules and tours be written meanwhile; from then on their writers wait for the import instead. */
const politeTries = 2;

/** Rows of a file into the register in a thread with a connection of its own, all or none; nothing of it runs where requests are answered. */
export default async function importCsv(task: ImportTask): Promise<ImportAnswer> {
  if (process.platform === 'linux') setPriority(constants.priority.PRIORITY_BELOW_NORMAL);
  const options = dataSourceOptions(task.databaseUrl, false);
  const extra: unknown = { ...options.extra, max: 1, application_name: 'cartwright import' };
  const dataSource = await new DataSource({ ...options, extra }).initialize();
  try {
    return answerOf(await insideAct({ who: task.who, via: `POST /api/imports/${task.of}` }, () => rowsInto(dataSource, task)));
  } finally {
    await dataSource.destroy();
  }
}

function rowsInto(dataSource: DataSource, task: ImportTask): Promise<CsvImport> {
  const clock = { now: () => new Date(task.at) };
  const unitOfWork = new UnitOfWork(dataSource, clock, english);
  const parts = [unitOfWork, dataSource, new KitReader(), new TourReader(), clock, english] as const;
  const bytes = Buffer.from(task.bytes);
  const [register, kind = ''] = task.of.split('/');
  const watch = watchOf(task);
  if (register === 'examinations') {
    const lists = new ExaminationCsvService(unitOfWork, dataSource, new ExaminationWriter(clock, english), clock, english);
    return lists.import(bytes, task.dryRun, task.who, watch);
  }
  const [itemKind, modelKind] = [CsvService.kindOf(kind), ModelCsvService.kindOf(kind)];
  if (register === 'items' && itemKind) return new CsvService(...parts).import(itemKind, bytes, task.dryRun, task.who, task.reason, watch);
  if (register === 'models' && modelKind)
    return new ModelCsvService(...parts).import(modelKind, bytes, task.dryRun, task.who, task.reason, alone(watch, task));
  throw new Error(`nothing is imported into ${task.of}`);
}

/** Models are what others are checked against: their files are written as one SERIALIZABLE transaction, and nothing is held for them. */
const alone = (watch: ImportWatch, { id }: ImportTask): ImportWatch => ({
  ...watch,
  isolation: 'SERIALIZABLE',
  begun: (manager) => mustGoOn(manager, id),
  saved: (manager, answer) => noteEnd(manager, id, answer),
});

const noteEnd = async (manager: EntityManager, id: string, answer: CsvImport): Promise<void> => {
  await manager.query(`INSERT INTO csv_import_end (import_id, state, answer) VALUES ($1, 'done', $2)`, [
    id,
    canonicalJson(answerOf(answer)),
  ]);
};

function watchOf({ id, figures }: ImportTask): ImportWatch {
  const told = new Int32Array(figures);
  let tries = 0;
  let versions = '';
  return {
    mostRows,
    isolation: 'READ COMMITTED',
    tell: ({ step, total, checked, written, dated }) => {
      for (const [at, value] of [step && importSteps.indexOf(step), total, checked, written, dated].entries())
        if (value !== undefined) Atomics.store(told, at, value);
    },
    begun: async (manager, items) => {
      await mustGoOn(manager, id);
      if (++tries > politeTries) await keepAsItIs(manager);
      versions = await versionsOfChecked(manager);
      await manager.query('SELECT id FROM item WHERE id = ANY($1) ORDER BY id FOR UPDATE', [items]);
    },
    saved: async (manager, answer) => {
      await keepAsItIs(manager);
      if ((await versionsOfChecked(manager)) !== versions) throw new TryAgain();
      await noteEnd(manager, id, answer);
    },
  };
}

/** What the rows are checked against beside the register: nobody writes it until the transaction ends. */
const keepAsItIs = (manager: EntityManager): Promise<unknown> => manager.query('LOCK TABLE model, rule, tour IN SHARE ROW EXCLUSIVE MODE');

async function versionsOfChecked(manager: EntityManager): Promise<string> {
  const [row]: { versions: string }[] = await manager.query(
    `SELECT concat_ws(' ', ${['model', 'rule', 'tour'].map(writings).join(', ')}) AS versions`,
  );
  return row?.versions ?? '';
}

async function mustGoOn(manager: EntityManager, id: string): Promise<void> {
  const ended: unknown[] = await manager.query('SELECT 1 FROM csv_import_end WHERE import_id = $1', [id]);
  if (ended.length > 0) throw new Error('it was ended by somebody else');
}
