import { z } from 'zod';
import { count, kgOrNone, name, period, place, plainDate, sentence } from './words.js';

export const itemKinds = ['box', 'cart', 'grid', 'hoist', 'shackle', 'sling', 'pin', 'loom', 'case', 'truck'] as const;
export const itemStates = ['in service', 'quarantined', 'in repair', 'retired'] as const;

const text = z.string().max(2000);

/**
 * What a report of thorough examination holds besides its dates and outcome: contents of LOLER 1998 Schedule 1, in the order of its
 * paragraphs. Texts are the examiner's own and are shown as his.
 */
const reportParticulars = z.strictObject({
  employer: text.optional(),
  premises: text.optional(),
  manufactured: text.optional(),
  previousOn: plainDate.optional(),
  workingLoadLimit: text.optional(),
  firstAfterInstallation: z.boolean().optional(),
  installedStatement: text.optional(),
  basis: z.enum(['within 6 months', 'within 12 months', 'under a scheme', 'after exceptional circumstances']).optional(),
  statement: text.optional(),
  dangerousParts: text.optional(),
  repairsNeeded: text.optional(),
  repairsBeforeDanger: text.optional(),
  tests: text.optional(),
  examinerAddress: text.optional(),
  qualifications: text.optional(),
  employedBy: text.optional(),
  authenticatedBy: text.optional(),
  reportOn: plainDate.optional(),
});

/** The same shape as in an examinations case; who, what and which report may stand beside it. */
const examinationFields = z.strictObject({
  on: plainDate,
  outcome: z.enum(['pass', 'fail']),
  satisfies: z.array(period).max(10).optional(),
  nextLatestOn: plainDate.optional(),
  underScheme: z.boolean().optional(),
  defectBy: plainDate.optional(),
  /** Days of the events that this examination answers. */
  answers: z.array(plainDate).max(200).optional(),
  examiner: sentence.optional(),
  report: sentence.optional(),
  particulars: reportParticulars.optional(),
  /** Id of the report itself, kept beside the record. */
  reportFile: z.uuid().optional(),
});

/** A report sets no day that lies before its own examination. */
export const examination = examinationFields.superRefine(({ on, nextLatestOn, defectBy }, context) => {
  for (const [key, day] of Object.entries({ nextLatestOn, defectBy }))
    if (day !== undefined && day < on)
      context.addIssue({ code: 'custom', path: [key], message: `a day on or after the examination (${on})` });
});

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
  assetId: z.string().max(50).optional(),
  uses: count.optional(),
  intervals: z.array(period).max(10).optional(),
  declaredOn: plainDate.optional(),
  examinations: z.array(examination).max(200).default([]),
  events: z
    .array(z.strictObject({ on: plainDate, what: sentence }))
    .max(200)
    .default([]),
});

/** How often a class of item is examined, under which rule; `status` says whether the rule's text was read. */
export const examinationRule = z.strictObject({
  jurisdiction: place,
  kinds: z.array(z.enum(itemKinds)).min(1).max(10),
  intervals: z.array(period).min(1).max(10),
  who: sentence.optional(),
  source: sentence,
  status: z.enum(['found', 'from memory', 'house rule']),
});

export type ItemKind = (typeof itemKinds)[number];
export type ItemState = (typeof itemStates)[number];
export type Item = z.output<typeof item>;
export type Examination = z.output<typeof examination>;
export type ExaminationRule = z.output<typeof examinationRule>;
