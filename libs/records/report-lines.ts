import type { Defect, Examination } from '#tour-file';
import { type RecordField, recordFields } from '#trade';
import { type AskedField, missingFields, paragraphOf } from './asked-fields.js';

/** A line of a report as it is read: what the record says, or that it does not say it. */
export interface ReportLine {
  readonly field: RecordField;
  readonly paragraph: string | null;
  /** Whether the text under that paragraph was read, and is no more than remembered. */
  readonly wasRead: boolean;
  /** null: it says nothing. Of defects and files other rooms say more. */
  readonly value: string | boolean | null;
  /** A rule asks for it and it is not there. */
  readonly isMissing: boolean;
}

/** Every field of a report, those it leaves open too, in the order in which it is read. */
export function reportLines(record: Examination, asked: readonly AskedField[]): readonly ReportLine[] {
  const missing = new Set(missingFields(record, asked).map((each) => each.field));
  return recordFields.map((field) => ({
    field,
    ...paragraphOf(field, asked),
    value: valueOf(field, record),
    isMissing: missing.has(field),
  }));
}

function valueOf(field: RecordField, record: Examination): string | boolean | null {
  if (field === 'nextLatestOn' || field === 'examiner' || field === 'report' || field === 'reportFile') return record[field] ?? null;
  if (field === 'defects') return record.particulars?.dangerousParts ?? null;
  return record.particulars?.[field] ?? null;
}

/** A defect that a later passed examination closed, or that still stands. */
export interface FollowedDefect extends Defect {
  readonly reportedOn: string;
  readonly report: string | null;
  /** null: it is open. */
  readonly closedOn: string | null;
  readonly closedBy: string | null;
}

/** Defects of an item's records, each with the day it was put right: said in its report, or by the next passed examination. */
export function followDefects(records: readonly Examination[]): readonly FollowedDefect[] {
  const inOrder = [...records].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  return inOrder.flatMap((record, index) =>
    (record.particulars?.defects ?? []).map((each): FollowedDefect => {
      const later = inOrder.slice(index + 1).find((other) => other.outcome === 'pass' && other.on > record.on);
      const own = each.remediedOn ?? null;
      return {
        ...each,
        reportedOn: record.on,
        report: record.report ?? null,
        closedOn: own ?? later?.on ?? null,
        closedBy: own === null ? (later?.report ?? null) : (record.report ?? null),
      };
    }),
  );
}
