import { z } from 'zod';
import { type AskedField, askedFields, mayExamine, missingFields, rulesOfRecord } from '#records';
import { type Examination, type ExaminationRule, type ItemKind, examination } from '#tour-file';
import { type RecordField, otherChecks } from '#trade';
import { english } from '#words';
import { periodsFromWords, readInput } from '#kernel';

/** A defect as it is typed. */
export interface TypedDefect {
  readonly id: string;
  readonly part: string;
  readonly what: string;
  readonly dangerousBy: string;
  readonly repair: string;
  readonly remediedOn: string;
}

export type FieldForm = 'date' | 'text' | 'long' | 'yes or no' | 'defects' | 'file' | readonly string[];

/** How each field of a report is typed. */
export const formOf: Readonly<Record<RecordField, FieldForm>> = {
  ...{ employer: 'long', premises: 'long', identity: 'text', manufactured: 'text', previousOn: 'text', workingLoadLimit: 'text' },
  ...{ firstAfterInstallation: 'yes or no', installedStatement: 'long', statement: 'long', defects: 'defects', nextLatestOn: 'date' },
  basis: ['', 'within 6 months', 'within 12 months', 'under a scheme', 'after exceptional circumstances'],
  ...{ tests: 'long', examiner: 'text', examinerAddress: 'long', qualifications: 'text', capacity: 'text', employedBy: 'long' },
  ...{ authenticatedBy: 'long', remarks: 'long', report: 'text', reportOn: 'date', reportFile: 'file' },
};

/** Fields that every record is asked for, whatever the rules say. */
export const always: readonly RecordField[] = ['examiner', 'report'];

/** Fields of a record outside its particulars. */
const atTop: ReadonlySet<RecordField> = new Set(['nextLatestOn', 'examiner', 'report', 'reportFile']);

export interface Asked {
  readonly fields: readonly AskedField[];
  readonly may: readonly string[];
}

/** `satisfies` and `check` as they are typed: which rules the record is made under. */
export function askedOf(rules: readonly ExaminationRule[], kind: string, satisfies: string, check: string): Asked {
  const periods = periodsFromWords(satisfies);
  const made = otherChecks.find((each) => each === check);
  const under = rulesOfRecord(rules, kind as ItemKind, { check: made, ...(periods.length > 0 ? { satisfies: periods } : {}) });
  return { fields: askedFields(under), may: mayExamine(under) };
}

const wordsOf = (typed: string): string[] => typed.split(/[\s,]+/).filter((each) => each !== '');

export const typedExamination = z.record(z.string(), z.string());
export type TypedExamination = z.output<typeof typedExamination>;

const yes = (value: unknown): string => (value === true ? 'yes' : value === false ? 'no' : '');
const textOf = (value: unknown): string =>
  Array.isArray(value) ? value.join(' ') : typeof value === 'boolean' ? yes(value) : typeof value === 'string' ? value : '';

const outside = ['on', 'check', 'defectBy', 'satisfies', 'underScheme', 'answers'] as const;

/** A record as the form holds it; an empty form without one. */
export function typedOf(of: Examination | undefined): TypedExamination {
  const record = of as Readonly<Record<string, unknown>> | undefined;
  const particulars = of?.particulars as Readonly<Record<string, unknown>> | undefined;
  const fields = Object.keys(formOf).filter((key) => formOf[key as RecordField] !== 'defects');
  return {
    ...Object.fromEntries(outside.map((key) => [key, textOf(record?.[key])])),
    ...Object.fromEntries(fields.map((key) => [key, textOf(atTop.has(key as RecordField) ? record?.[key] : particulars?.[key])])),
    outcome: of?.outcome ?? 'pass',
    reason: '',
    corrects: of ? 'yes' : '',
  };
}

/** The record that was typed; what was left empty is left out. Texts of earlier records that the form does not ask for stay. */
export function recordOf(
  typed: TypedExamination,
  defects: readonly TypedDefect[] | null,
  reportFile: string | undefined,
  before: Examination | undefined,
): object {
  const { dangerousParts, repairsNeeded, repairsBeforeDanger } = before?.particulars ?? {};
  const particulars = {
    ...(dangerousParts === undefined ? {} : { dangerousParts }),
    ...(repairsNeeded === undefined ? {} : { repairsNeeded }),
    ...(repairsBeforeDanger === undefined ? {} : { repairsBeforeDanger }),
    ...given(typed, (key) => !atTop.has(key)),
    ...(defects === null ? {} : { defects: defects.map(({ id: _id, ...each }) => filledOf(each)) }),
  };
  return {
    on: typed.on,
    outcome: typed.outcome,
    ...filledOf({ check: typed.check ?? '', defectBy: typed.defectBy ?? '' }),
    ...(typed.satisfies?.trim() ? { satisfies: periodsFromWords(typed.satisfies) } : {}),
    ...(typed.answers?.trim() ? { answers: wordsOf(typed.answers) } : {}),
    ...(typed.underScheme ? { underScheme: typed.underScheme === 'yes' } : {}),
    ...given(typed, (key) => atTop.has(key)),
    ...(Object.keys(particulars).length > 0 ? { particulars } : {}),
    ...(reportFile === undefined ? {} : { reportFile }),
  };
}

const given = (typed: TypedExamination, wanted: (key: RecordField) => boolean): object =>
  Object.fromEntries(
    (Object.keys(formOf) as RecordField[])
      .filter((key) => wanted(key) && formOf[key] !== 'defects' && formOf[key] !== 'file' && typed[key]?.trim())
      .map((key) => [key, formOf[key] === 'yes or no' ? typed[key] === 'yes' : typed[key]?.trim()]),
  );

const filledOf = (values: Readonly<Record<string, string>>): object =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value.trim() !== ''));

export interface TypedFault {
  readonly field: string;
  readonly value: unknown;
  readonly wanted: string;
}

/** What is wrong with a record before anything of it is sent: its own shape, and what the rules ask for. `hasFile`: a report goes with it. */
export function faultsOf(record: object, asked: Asked, hasFile: boolean): readonly TypedFault[] {
  const read = readInput(examination, record);
  if (!read.ok) return read.error;
  const data = hasFile ? { ...read.value, reportFile: read.value.reportFile ?? 'with it' } : read.value;
  return missingFields(data, asked.fields).map((each) => ({
    field: atTop.has(each.field) ? each.field : `particulars.${each.field}`,
    value: null,
    wanted: english.recordWanted(each.field, each),
  }));
}
