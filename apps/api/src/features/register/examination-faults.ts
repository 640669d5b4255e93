import type { BadInput } from '#kernel';
import type { Examination } from '#tour-file';

const mostLetters = 300;

/** The record that a new one corrects, and why. */
export interface Correction {
  readonly of: Examination;
  readonly reason: string;
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
