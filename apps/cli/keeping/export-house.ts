import { createHash } from 'node:crypto';
import { appendFileSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { DataSource } from 'typeorm';
import { itemKinds, modelKinds } from '#tour-file';
import { Trouble } from '#runtime';
import { createApp } from '../../api/src/create-app.js';
import { writeCsvFile } from '../../api/src/features/transfer/csv-file.js';
import { CsvService } from '../../api/src/features/transfer/csv.service.js';
import { ModelCsvService } from '../../api/src/features/transfer/model-csv.service.js';
import { TourFileService } from '../../api/src/features/transfer/tour-file.service.js';
import { configOf } from '../../api/src/platform/config/config.js';

/** Tables that hold what nobody but this house can use: passwords, requests under way, what is worked out anew. */
const ofTheHouse = ['account', 'session', 'request', 'change', 'migrations', 'input_change', 'plan_freshness', 'plan_part'];
/** Tables whose rows leave as files of their own. */
const asFiles = ['report_file', 'pack_plan', 'tour'];
/** What lets somebody in, as columns and in the lines of the log: no other program has a use for it, not even as a hash of a hash. */
const secrets = ['password_hash', 'token_hash', 'device_hash'];
const fetched = 2000;

/**
 * Everything that a house owns in formats that anybody reads, into an empty folder: CSV (RFC 4180) of the register, the catalogue and every record, JSON
 * of tours and plans, reports as they were handed in, and a list of all files with their hashes. Gives back how many files there are.
 */
export async function exportHouse(databaseUrl: string, folder: string): Promise<number> {
  mkdirSync(folder, { recursive: true });
  if (readdirSync(folder).length > 0) throw new Trouble(`${folder} is not empty: wanted a new folder.`);
  const files = new FileList(folder);
  const app = await createApp({ config: configOf(databaseUrl) });
  await app.init();
  try {
    const dataSource = app.get(DataSource);
    for (const kind of itemKinds) files.write(`register/${kind}.csv`, await app.get(CsvService).export(kind));
    for (const kind of modelKinds) files.write(`catalogue/${kind}.csv`, await app.get(ModelCsvService).export(kind));
    for (const { id } of await rowsOf<{ id: string }>(dataSource, 'SELECT id FROM tour ORDER BY id'))
      files.write(`tours/${fileName(id)}.json`, JSON.stringify(await app.get(TourFileService).export(id), null, 2));
    await writePlans(dataSource, files);
    await writeReports(dataSource, files);
    const people = await rowsOf(dataSource, 'SELECT id, name, email, role FROM account ORDER BY name');
    files.write('records/person.csv', csvOf(['id', 'name', 'email', 'role'], people));
    await writeRecords(dataSource, files);
    return files.close();
  } finally {
    await app.close();
  }
}

type Row = Readonly<Record<string, unknown>>;
const rowsOf = <T = Row>(dataSource: DataSource, sql: string, values: unknown[] = []): Promise<T[]> => dataSource.query(sql, values);

class FileList {
  private readonly lines: { file: string; bytes: number; sha256: string }[] = [];

  constructor(private readonly folder: string) {}

  write(file: string, ...parts: readonly (string | Buffer)[]): void {
    const add = this.begin(file);
    for (const part of parts) add(part);
  }

  /** A file that is written part by part. */
  begin(file: string): (part: string | Buffer) => void {
    const path = join(this.folder, file);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, '', { mode: 0o600 });
    const line = { file, bytes: 0, sha256: '' };
    const hash = createHash('sha256');
    this.lines.push(line);
    return (part) => {
      const bytes = Buffer.from(part);
      appendFileSync(path, bytes);
      line.bytes += bytes.length;
      line.sha256 = hash.update(bytes).copy().digest('hex');
    };
  }

  close(): number {
    writeFileSync(join(this.folder, 'contents.csv'), csvOf(['file', 'bytes', 'sha256'], this.lines));
    return this.lines.length;
  }
}

/** Letters, digits, point, dash and underscore; what else a name has becomes a dash. */
const fileName = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}._-]+/gu, '-')
    .replace(/^\.+/, '')
    .slice(0, 120) || 'unnamed';

async function writePlans(dataSource: DataSource, files: FileList): Promise<void> {
  const plans = await rowsOf<{ id: string; name: string }>(
    dataSource,
    `SELECT id, concat_ws('-', tour_id, show_id, coalesce(revision, 'draft')) AS name FROM pack_plan ORDER BY 2`,
  );
  for (const { id, name } of plans) {
    const [plan] = await rowsOf(dataSource, 'SELECT * FROM pack_plan WHERE id = $1', [id]);
    files.write(`plans/${fileName(name)}.json`, JSON.stringify(plan, null, 2));
  }
}

async function writeReports(dataSource: DataSource, files: FileList): Promise<void> {
  const reports = await rowsOf<{ id: string; item_id: string; name: string }>(
    dataSource,
    'SELECT id, item_id, name FROM report_file ORDER BY item_id, kept_at, id',
  );
  for (const { id, item_id: item, name } of reports) {
    const [report] = await rowsOf<{ bytes: Buffer }>(dataSource, 'SELECT bytes FROM report_file WHERE id = $1', [id]);
    if (report) files.write(`reports/${fileName(item)}/${id.slice(0, 8)}-${fileName(name)}`, report.bytes);
  }
  const lines = await rowsOf(dataSource, 'SELECT id, item_id, name, type, kept_by, kept_at FROM report_file ORDER BY item_id, kept_at, id');
  files.write('records/report_file.csv', csvOf(['id', 'item_id', 'name', 'type', 'kept_by', 'kept_at'], lines));
}

/** Every other table whole. */
async function writeRecords(dataSource: DataSource, files: FileList): Promise<void> {
  const tables = await rowsOf<{ name: string; columns: string[] }>(
    dataSource,
    `SELECT table_name::text AS name, array_agg(column_name::text ORDER BY ordinal_position) AS columns FROM information_schema.columns
     JOIN information_schema.tables USING (table_schema, table_name) WHERE table_schema = 'public' AND table_type = 'BASE TABLE' AND table_name <> ALL ($1)
       AND column_name <> ALL ($2)
     GROUP BY table_name ORDER BY 1`,
    [[...ofTheHouse, ...asFiles], secrets],
  );
  const runner = dataSource.createQueryRunner();
  try {
    await runner.startTransaction('REPEATABLE READ');
    for (const { name, columns } of tables) {
      const add = files.begin(`records/${name}.csv`);
      add(csvOf(columns, []));
      await runner.query(
        `DECLARE each_row CURSOR FOR SELECT ${columns.map((column) => readOf(name, column)).join(', ')} FROM "${name}" ORDER BY 1`,
      );
      for (;;) {
        const rows = (await runner.query(`FETCH ${fetched} FROM each_row`)) as Row[];
        if (rows.length === 0) break;
        add(csvOf(columns, rows, false));
      }
      await runner.query('CLOSE each_row');
    }
  } finally {
    await runner.rollbackTransaction();
    await runner.release();
  }
}

/** What a line of the log says of a row before and after, without its secrets. */
const readOf = (table: string, column: string): string =>
  table === 'event' && (column === 'before' || column === 'after')
    ? `"${column}" - ARRAY[${secrets.map((each) => `'${each}'`).join(', ')}] AS "${column}"`
    : `"${column}"`;

function csvOf(columns: readonly string[], rows: readonly Row[], withHeading = true): string {
  const text = writeCsvFile(
    columns.map((heading) => ({ heading })),
    rows,
    (row, column) => cellOf(row[columns[column] ?? '']),
  );
  return withHeading ? text : text.slice(text.indexOf('\r\n') + 2);
}

function cellOf(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (value instanceof Date) return value.toISOString();
  if (Buffer.isBuffer(value)) return value.toString('base64');
  return typeof value === 'string' ? value : JSON.stringify(value);
}
