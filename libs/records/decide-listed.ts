import { type BadInput, shownText } from '#kernel';
import { type CsvFault, type Examination, type ItemState, type ListedRow, columnOf, examinationCells } from '#tour-file';
import { intervalOf } from '#trade';
import { type Judging, type NamedOnFile, recordFaults } from './examination-faults.js';

/** An item as an examiner's list meets it: what it is, and every record that counts or waits. */
export interface ListedItem extends NamedOnFile {
  readonly state: ItemState;
  /** Of a batch. */
  readonly count: number | null;
  /** How often it is examined: its own intervals, or those of every rule in force for its kind. */
  readonly intervals: readonly string[];
  readonly records: readonly Examination[];
  /** Passed ones that the safety officer has not accepted yet. */
  readonly waiting: readonly Examination[];
}

/** By whom a list comes in: what passed counts at once where the safety officer brings it, else it waits for him. */
export interface ListedBy extends Judging {
  readonly isOfficer: boolean;
}

/** What becomes of a row. `already`: it is on file, or waits, with the same contents. */
export type DecidedRow = { readonly is: 'already' | 'counts' | 'waits' } | { readonly is: 'faulty'; readonly faults: readonly CsvFault[] };

const keyOf = ({ serial, examination: { on, report, check } }: Pick<ListedRow, 'serial' | 'examination'>): string =>
  [serial, on, report ?? '', check ?? ''].join('\n');

const dayOf = ({ serial, examination: { on, check } }: Pick<ListedRow, 'serial' | 'examination'>): string =>
  `${serial}\n${on}\n${check ?? ''}`;

/**
 * Decides an examiner's list row by row. An examination is known by its item, its day, its check and the number of its report. One that is on file or waits with the
 * same contents is there already; with other contents it is a fault, as a record is corrected on the page of its item with a reason. What failed counts
 * at once, whoever brings it; a pass on the day of a failed one is a fault, because a list does not say which came last.
 */
export function decideListed(rows: readonly ListedRow[], by: ListedBy): (row: ListedRow, item: ListedItem | undefined) => DecidedRow {
  const failedOn = new Set(rows.filter((each) => each.examination.outcome === 'fail').map((each) => dayOf(each)));
  const firstOf = new Map<string, number>();
  for (const each of rows) if (!firstOf.has(keyOf(each))) firstOf.set(keyOf(each), each.row);
  return (row, item) => {
    const fault = (column: string, value: string, wanted: string): DecidedRow => ({
      is: 'faulty',
      faults: [{ row: row.row, column, value: value.slice(0, 80), wanted }],
    });
    const { serial, examination } = row;
    if (!item) return fault('serial', serial, 'the serial of an item on file');
    const said = found(row, item);
    if (said === 'same') return { is: 'already' };
    if (said !== null)
      return fault(
        'report',
        examination.report ?? '',
        `the contents ${said}; a record is corrected on the page of ${serial}, with a reason`,
      );
    const first = firstOf.get(keyOf(row)) ?? row.row;
    if (first !== row.row) return fault('report', `${examination.report ?? ''}, as in row ${first}`, 'each examination of an item once');
    const faults = newFaults(row, item, by);
    if (faults.length > 0) return { is: 'faulty', faults };
    if (examination.outcome === 'fail') return { is: 'counts' };
    const failed =
      failedOn.has(dayOf(row)) ||
      item.records.some(({ on, outcome, check }) => on === examination.on && check === examination.check && outcome === 'fail');
    if (failed)
      return fault(
        'outcome',
        'pass',
        `no pass on the day of a failed examination: which came last that day is said on the page of ${serial}`,
      );
    return { is: by.isOfficer ? 'counts' : 'waits' };
  };
}

/** `same`: there with the same contents; a sentence: there with others; null: new. */
function found(row: ListedRow, { records, waiting }: ListedItem): string | null {
  const cells = textOf(row, row.examination);
  const alike = (list: readonly Examination[]) => list.filter((each) => keyOf({ serial: row.serial, examination: each }) === keyOf(row));
  const [onFile, proposed] = [alike(records), alike(waiting)];
  if ([...onFile, ...proposed].some((each) => textOf(row, each) === cells)) return 'same';
  return onFile.length > 0 ? 'that are on file' : proposed.length > 0 ? 'that wait for the safety officer' : null;
}

/** What a list says of an examination, blanks at the ends of cells apart. */
const textOf = ({ serial }: ListedRow, examination: Examination): string =>
  JSON.stringify(examinationCells({ serial, examination }).map((cell) => cell.trim()));

/** What is wrong with a row that is new. */
function newFaults(row: ListedRow, item: ListedItem, by: ListedBy): CsvFault[] {
  const { serial, pieces, examination } = row;
  const faults: BadInput[] = [];
  if (item.state === 'retired') faults.push({ field: 'serial', value: serial, wanted: 'an item that is not retired' });
  const unknown = examination.satisfies?.filter((each) => !item.intervals.includes(intervalOf(examination.check, each))) ?? [];
  if (unknown.length > 0)
    faults.push({
      field: 'satisfies',
      value: unknown.join(' '),
      wanted:
        item.intervals.length === 0
          ? `empty: no rule on file says how often a ${item.kind} is examined`
          : `of the intervals of ${serial}: ${item.intervals.join(' ')}; empty where it answers all of them`,
    });
  faults.push(...piecesFaults(serial, pieces, item.count), ...recordFaults(examination, item, null, by));
  return faults.map(({ field, value, wanted }) => ({
    row: row.row,
    column: field === 'serial' || field === 'pieces' ? field : columnOf(field),
    value: shownText(value),
    wanted,
  }));
}

/** A record speaks of a batch as a whole. */
function piecesFaults(serial: string, pieces: number | undefined, count: number | null): BadInput[] {
  if (pieces === undefined || pieces === count) return [];
  const wanted =
    count === null
      ? `empty: ${serial} is one thing, no batch`
      : pieces > count
        ? `at most ${count}: ${serial} holds ${count}`
        : `${count}, the whole batch: take the others out of ${serial} first, as a batch of their own`;
  return [{ field: 'pieces', value: pieces, wanted }];
}
