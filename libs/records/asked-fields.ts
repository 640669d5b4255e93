import type { Examination, ExaminationRule, ItemKind } from '#tour-file';
import { type RecordField, type RecordList, recordFields } from '#trade';
import { type ListedField, lolerSchedule1 } from './loler-schedule-1.js';

const lists: Readonly<Record<RecordList, readonly ListedField[]>> = { 'LOLER 1998 Schedule 1': lolerSchedule1 };

/** A field that a record must hold, and by what. */
export interface AskedField {
  readonly field: RecordField;
  /** The list of a law, or the source of the rule. */
  readonly source: string;
  readonly paragraph: string | null;
  readonly wasRead: boolean;
}

/** Rules of a kind of item that a record is made under: all of its check that count time, or those of which it satisfies an interval; of another check all. */
export const rulesOfRecord = (
  rules: readonly ExaminationRule[],
  kind: ItemKind,
  { satisfies, check }: Pick<Examination, 'satisfies' | 'check'>,
): readonly ExaminationRule[] =>
  rules.filter(
    (rule) =>
      rule.kinds.includes(kind) &&
      rule.check === check &&
      (check !== undefined || rule.intervals.length > 0) &&
      (!satisfies || rule.intervals.some((each) => satisfies.includes(each))),
  );

/** What the rules together ask of a record, each field once, in the order in which a report is read. The list of a law comes before a rule's own. */
export function askedFields(rules: readonly ExaminationRule[]): readonly AskedField[] {
  const asked = new Map<RecordField, AskedField>();
  const add = (each: AskedField) => asked.has(each.field) || asked.set(each.field, each);
  for (const { record } of rules)
    if (record?.list)
      for (const { field, paragraph, wasRead } of lists[record.list]) add({ field, source: record.list, paragraph, wasRead });
  for (const { record } of rules)
    for (const field of record?.fields ?? [])
      add({ field, source: record?.source ?? '', paragraph: null, wasRead: record?.status !== 'from memory' });
  return recordFields.flatMap((field) => asked.get(field) ?? []);
}

/** As what somebody may examine under the rules; empty: none of them says. */
export const mayExamine = (rules: readonly ExaminationRule[]): readonly string[] => [
  ...new Set(rules.flatMap((rule) => rule.mayExamine ?? [])),
];

/** The paragraph under which a field is asked for, else that of the list of LOLER, where it has one; and whether it was read there. */
export function paragraphOf(
  field: RecordField,
  asked: readonly AskedField[],
): { readonly paragraph: string | null; readonly wasRead: boolean } {
  const { paragraph = null, wasRead = true } =
    asked.find((each) => each.field === field && each.paragraph !== null) ?? lolerSchedule1.find((each) => each.field === field) ?? {};
  return { paragraph, wasRead };
}

/** Asked fields that the record leaves open. What the list asks for in one case only is asked for in that case only. */
export function missingFields(record: Examination, asked: readonly AskedField[]): readonly AskedField[] {
  return asked.filter(({ field }) => applies(field, record) && isOpen(field, record));
}

function applies(field: RecordField, { outcome, particulars }: Examination): boolean {
  const isFirst = particulars?.firstAfterInstallation === true;
  switch (field) {
    case 'installedStatement':
      return isFirst && outcome === 'pass';
    case 'basis':
      return !isFirst;
    case 'statement':
      return !isFirst && outcome === 'pass';
    case 'nextLatestOn':
      return outcome === 'pass';
    case 'identity':
      // The record hangs on the item: serial, kind and model are its particulars.
      return false;
    default:
      return true;
  }
}

function isOpen(field: RecordField, record: Examination): boolean {
  const { particulars } = record;
  switch (field) {
    case 'nextLatestOn':
    case 'examiner':
    case 'report':
    case 'reportFile':
      return !record[field]?.trim();
    case 'defects':
      return particulars?.defects === undefined && !particulars?.dangerousParts?.trim();
    case 'firstAfterInstallation':
      return particulars?.firstAfterInstallation === undefined;
    default:
      return !particulars?.[field]?.trim();
  }
}
