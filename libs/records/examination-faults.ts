import type { BadInput } from '#kernel';
import type { Examination, ExaminationRule, ItemKind } from '#tour-file';
import type { RecordField } from '#trade';
import { type AskedField, askedFields, mayExamine, missingFields, rulesOfRecord } from './asked-fields.js';

const mostLetters = 300;

/** The record that a new one corrects, and why. */
export interface Correction {
  readonly of: Examination;
  readonly reason: string;
}

/** What every record is judged by: the last day that has begun, the rules in force, and how a field that is missing is asked for. */
export interface Judging {
  readonly latestDay: string;
  readonly rules: readonly ExaminationRule[];
  readonly wanted: (field: RecordField, asked: AskedField) => string;
}

/** What is on file of an item that a record of it may name. */
export interface NamedOnFile {
  readonly kind: ItemKind;
  /** Days of its incidents. */
  readonly incidents: readonly string[];
  /** Reports kept for it, or for another item that the same report speaks of. */
  readonly reportFiles: readonly string[];
}

/** Everything that is wrong with a record; what it names on file is looked at where it is right in itself. */
export function recordFaults(data: Examination, item: NamedOnFile, correction: Correction | null, judging: Judging): readonly BadInput[] {
  const faults = [...examinationFaults(data, judging.latestDay, correction), ...ruleFaults(data, item.kind, judging)];
  return faults.length > 0 ? faults : namingFaults(data, item);
}

/**
 * What a record needs to count. An examination says who made it and under which report; a correction says why, and one that turns a failure into a
 * pass brings the report itself (the reports are kept: LOLER 1998 reg. 11).
 */
export function examinationFaults(data: Examination, latestDay: string, correction: Correction | null): BadInput[] {
  const faults: BadInput[] = [];
  const add = (field: string, value: unknown, wanted: string) => faults.push({ field, value: value ?? null, wanted });
  if (data.on > latestDay) add('on', data.on, `no later than today, ${latestDay}`);
  if (data.examiner === undefined) add('examiner', null, 'the name of who examined it');
  if (data.report === undefined && data.reportFile === undefined) add('report', null, 'the number of the report, or the report itself');
  if (!correction) return faults;
  const reason = correction.reason.trim();
  if (reason === '' || reason.length > mostLetters) add('reason', reason.slice(0, 80), 'why the record is corrected, 1 to 300 characters');
  if (correction.of.outcome === 'fail' && data.outcome === 'pass' && data.reportFile === undefined)
    add('reportFile', null, 'the report itself: a failure becomes a pass by its report alone');
  return faults;
}

/** Fields outside the particulars of a record. */
const atTop: ReadonlySet<string> = new Set(['nextLatestOn', 'examiner', 'report', 'reportFile']);

/** What the rules on file ask of a record of this kind of item and it does not say: a fault a field. */
function ruleFaults(data: Examination, kind: ItemKind, { rules, wanted }: Judging): BadInput[] {
  const under = rulesOfRecord(rules, kind, data);
  const faults = missingFields(data, askedFields(under)).map(
    (each): BadInput => ({
      field: atTop.has(each.field) ? each.field : `particulars.${each.field}`,
      value: null,
      wanted: wanted(each.field, each),
    }),
  );
  const may = mayExamine(under);
  const capacity = data.particulars?.capacity;
  if (capacity !== undefined && may.length > 0 && !may.includes(capacity))
    return [
      ...faults,
      { field: 'particulars.capacity', value: capacity, wanted: `who may examine by the rules on file: ${may.join(', ')}` },
    ];
  return faults;
}

function namingFaults({ reportFile, answers }: Examination, item: NamedOnFile): BadInput[] {
  const faults: BadInput[] = [];
  if (reportFile !== undefined && !item.reportFiles.includes(reportFile))
    faults.push({ field: 'reportFile', value: reportFile, wanted: 'a report kept for this item' });
  for (const [index, day] of (answers ?? []).entries())
    if (!item.incidents.includes(day))
      faults.push({ field: `answers[${index}]`, value: day, wanted: 'the day of an incident of this item on file' });
  return faults;
}
