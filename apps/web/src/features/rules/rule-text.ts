import { z } from 'zod';
import { periodFromWords, periodsFromWords } from '#kernel';
import { type ExaminationRule, itemKinds } from '#tour-file';
import { type RecordField, otherChecks, recordFields, recordLists, ruleBases } from '#trade';
import { english } from '#words';
import { figureOrNothing, filled, manyWords } from '../../ui/typed.js';

/** What tells rules apart: of one place, kinds, check, basis and intervals there is one. */
export const keyOf = ({ jurisdiction, kinds, check, basis, intervals }: ExaminationRule): string =>
  `${jurisdiction}: ${kinds.join()}: ${check ?? ''}: ${basis ?? 'time'}: ${intervals.join()}`;

/** Whether two rules of one key ask for the same: of whom, on record for what, and kept how long. */
export const asksTheSame = (a: ExaminationRule, b: ExaminationRule): boolean =>
  asks.every((part) => JSON.stringify(a[part] ?? null) === JSON.stringify(b[part] ?? null));
const asks = ['mayExamine', 'record', 'retention', 'every'] as const;

const fieldWords = (text: string): string[] =>
  text
    .split(';')
    .map((each) => each.trim())
    .filter(Boolean);
const fieldNamed = (words: string): RecordField | undefined =>
  recordFields.find((each) => [each, english.recordField(each)].some((name) => name.toLowerCase() === words.toLowerCase()));
const unknownFields = (text: string): string[] => fieldWords(text).filter((each) => fieldNamed(each) === undefined);
const fieldsNamed = (text: string): RecordField[] => {
  const named = new Set(fieldWords(text).map(fieldNamed));
  return recordFields.filter((each) => named.has(each));
};

/** An examination rule as it is typed. */
export const typedRule = z.object({
  jurisdiction: filled('a country'),
  part: z
    .string()
    .trim()
    .regex(/^([A-Z0-9]{1,3})?$/, 'the letters after the country’s, such as CA of US-CA, or nothing'),
  kinds: manyWords('kinds of items, with commas between'),
  check: z.string(),
  basis: z.string(),
  intervals: z.string().trim(),
  every: figureOrNothing('a whole number above nought', { min: 1, max: 1_000_000, whole: true }),
  who: z.string().trim(),
  mayExamine: z.string().trim(),
  list: z.string(),
  fields: z
    .string()
    .trim()
    .refine(
      (text) => unknownFields(text).length === 0,
      `names of fields, with ; between: ${recordFields.map(english.recordField).join('; ')}`,
    ),
  keptFor: z.string().trim(),
  keptUntil: z.string(),
  keptBy: z.string().trim(),
  source: filled('where it stands'),
  status: z.string(),
  reason: z.string().trim(),
});
type RuleText = z.input<typeof typedRule>;

export const noRule: RuleText = {
  ...{
    jurisdiction: '',
    part: '',
    kinds: '',
    check: '',
    basis: 'time',
    intervals: '',
    every: '',
    who: '',
    mayExamine: '',
    list: '',
    fields: '',
  },
  ...{ keptFor: '', keptUntil: '', keptBy: '', source: '', status: 'house rule', reason: '' },
};

export function ruleText(rule: ExaminationRule): RuleText {
  const [country = '', part = ''] = rule.jurisdiction.split('-');
  const { retention, record } = rule;
  return {
    ...{ jurisdiction: country, part, kinds: rule.kinds.join(', '), check: rule.check ?? '', basis: rule.basis ?? 'time' },
    ...{ intervals: rule.intervals.join(', '), every: rule.every === undefined ? '' : `${rule.every}`, who: rule.who ?? '' },
    ...{
      mayExamine: (rule.mayExamine ?? []).join('; '),
      list: record ? (record.list ?? 'own') : '',
      fields: (record?.fields ?? []).map(english.recordField).join('; '),
    },
    ...{ keptFor: retention?.atLeast ?? '', keptBy: retention?.source ?? '', source: rule.source, status: rule.status, reason: '' },
    keptUntil: [retention?.untilNextReport && 'next', retention?.whileInUse && 'use'].filter(Boolean).join(' '),
  };
}

const words = (text: string, between: RegExp): string[] =>
  text
    .split(between)
    .map((each) => each.trim())
    .filter(Boolean);

/** The rule that was typed, as far as it goes; its reader judges it. */
export function ruleFrom(typed: z.output<typeof typedRule>, was: ExaminationRule | null): object {
  const {
    jurisdiction,
    part,
    kinds,
    check,
    basis,
    intervals,
    every,
    who,
    mayExamine,
    list,
    fields,
    keptFor,
    keptUntil,
    keptBy,
    source,
    status,
  } = typed;
  const may = words(mayExamine, /;/);
  const isKept = keptFor !== '' || keptUntil !== '';
  const own = fieldsNamed(fields);
  const record =
    (list === '' || list === 'own') && own.length === 0
      ? undefined
      : {
          ...(list === '' || list === 'own' ? {} : { list }),
          ...(own.length === 0 ? {} : { fields: own }),
          source: was?.record?.source ?? (list === '' || list === 'own' ? source : list),
          status: was?.record?.status ?? status,
        };
  return {
    jurisdiction: part === '' ? jurisdiction : `${jurisdiction}-${part}`,
    kinds,
    ...(check === '' ? {} : { check }),
    intervals: periodsFromWords(intervals),
    ...(basis === 'time' ? {} : { basis }),
    ...(every === undefined ? {} : { every }),
    ...(who === '' ? {} : { who }),
    ...(may.length === 0 ? {} : { mayExamine: may }),
    ...(record ? { record } : {}),
    ...(isKept
      ? {
          retention: {
            ...(keptFor === '' ? {} : { atLeast: periodFromWords(keptFor) }),
            ...(keptUntil.includes('next') ? { untilNextReport: true } : {}),
            ...(keptUntil.includes('use') ? { whileInUse: true } : {}),
            ...{ source: keptBy || source, status: was?.retention?.status ?? status },
          },
        }
      : {}),
    ...{ source, status },
  };
}

type Choices = readonly (readonly [string, string])[];

export const choices = {
  check: [['', english.check.examination], ...otherChecks.map((each) => [each, english.check[each]] as const)] as Choices,
  basis: ruleBases.map((each) => [each, english.ruleBasis[each]] as const) as Choices,
  list: [['', 'examiner and report'], ...recordLists.map((each) => [each, `the list of ${each}`] as const)] as Choices,
  keptUntil: [
    ['', 'no more than that'],
    ['next', 'and until the next report'],
    ['use', 'and while it is in use'],
    ['next use', 'and until the next report, and while it is in use'],
  ] as Choices,
  status: [
    ['house rule', 'a rule of your company'],
    ['found', 'read in the text itself'],
    ['from memory', 'from memory: no authority'],
  ] as Choices,
};

export const kindsSaid = itemKinds.join(', ');
