import { z } from 'zod';
import { readPeriod } from '#kernel';
import { otherChecks, recordFields, recordLists, ruleBases } from '#trade';
import { count, kgOrNone, label, name, period, place, plainDate, sentence } from '../forms/index.js';
import { examination } from './examination.js';
import { lent } from './lent.js';

export const itemKinds = [
  'box',
  'cart',
  'grid',
  'hoist',
  'shackle',
  'sling',
  'pin',
  'loom',
  'case',
  'truck',
  'frame',
  'cell',
  'control',
  'aid',
] as const;
export const itemStates = ['in service', 'quarantined', 'in repair', 'retired'] as const;

/**
 * One thing with a serial, or (with `count`) a batch that is kept and examined as a lot.
 * A cart's `stack` names the boxes on it, top first; `in` names the case or truck that it lies in.
 */
export const item = z.strictObject({
  id: name,
  kind: z.enum(itemKinds),
  model: name,
  count: count.optional(),
  state: z.enum(itemStates).default('in service'),
  /** It, or its model, waits for the safety officer: nothing of it is used until then. */
  unaccepted: z.enum(['item', 'model']).optional(),
  reason: sentence.optional(),
  depot: name,
  in: name.optional(),
  stack: z.array(name).max(12).optional(),
  contentsKg: kgOrNone.optional(),
  owner: name.optional(),
  hire: z.strictObject({ from: plainDate, to: plainDate }).optional(),
  lent: lent.optional(),
  assetId: label.optional(),
  uses: count.optional(),
  intervals: z.array(period).max(10).optional(),
  declaredOn: plainDate.optional(),
  boughtOn: plainDate.optional(),
  firstUsedOn: plainDate.optional(),
  examinations: z.array(examination).max(200).default([]),
  events: z
    .array(z.strictObject({ on: plainDate, what: sentence }))
    .max(200)
    .default([]),
});

const ruleStatus = z.enum(['found', 'from memory', 'house rule']);
const mostMonths = 120;

/** Longer is a slip: the longest that any law read for this asks for is four years. */
const ruleInterval = period.refine((text) => {
  const read = readPeriod(text);
  return !read || read.months + read.days / 30 <= mostMonths;
}, 'a period of at most 10 years, such as P6M or P1Y');

/** What a record under a rule must hold: the list of a law, or the rule's own. */
const recordRule = z.strictObject({
  list: z.enum(recordLists).optional(),
  fields: z.array(z.enum(recordFields)).max(recordFields.length).optional(),
  source: sentence.min(1),
  status: ruleStatus,
});

/** How long a record under a rule is kept: until the latest of what is named. */
const retentionRule = z.strictObject({
  /** From the day of the report. */
  atLeast: period.optional(),
  untilNextReport: z.boolean().optional(),
  whileInUse: z.boolean().optional(),
  source: sentence.min(1),
  status: ruleStatus,
});

/**
 * How often a class of item is examined, under which rule; `status` says whether the rule's text was read. `basis` says what it counts by (left out:
 * time); a rule of another basis has no interval.
 */
export const examinationRule = z
  .strictObject({
    jurisdiction: place,
    kinds: z.array(z.enum(itemKinds)).min(1).max(itemKinds.length),
    /** Which check it asks for, a regime of its own; left out: the examination of lifting equipment. */
    check: z.enum(otherChecks).optional(),
    intervals: z.array(ruleInterval).max(10),
    who: sentence.optional(),
    /** As what somebody may examine; left out: the rule does not say. */
    mayExamine: z.array(sentence.min(1)).min(1).max(10).optional(),
    basis: z.enum(ruleBases).optional(),
    /** By lifts or hours: how many. */
    every: z.int().positive().max(1_000_000).optional(),
    record: recordRule.optional(),
    retention: retentionRule.optional(),
    source: sentence,
    status: ruleStatus,
  })
  .superRefine(({ intervals, basis, every, retention }, context) => {
    const counted = basis === 'lifts' || basis === 'hours';
    const say = (field: string, message: string) => context.addIssue({ code: 'custom', path: [field], message });
    if (intervals.length === 0 && (basis === undefined || basis === 'time')) say('intervals', 'at least one of them');
    if (intervals.length > 0 && basis !== undefined && basis !== 'time') say('intervals', `none: the rule counts ${basis}`);
    if (counted && every === undefined) say('every', `required: after how many ${basis}`);
    if (!counted && every !== undefined) say('every', 'a number only where the rule counts lifts or hours');
    if (retention && !retention.atLeast && !retention.untilNextReport && !retention.whileInUse)
      say('retention', 'a period, until the next report, or while it is in use: at least one of them');
  });

export type ItemKind = (typeof itemKinds)[number];
export type ItemState = (typeof itemStates)[number];
export type Item = z.output<typeof item>;
export type ExaminationRule = z.output<typeof examinationRule>;
