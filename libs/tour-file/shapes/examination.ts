import { z } from 'zod';
import { addPeriod } from '#kernel';
import { otherChecks } from '#trade';
import { period, plainDate, sentence } from '../forms/index.js';

const text = z.string().max(2000);

/** A part with a defect. Without `dangerousBy` it is a danger now; `remediedOn`: put right on that day, before the report was made out. */
const defect = z.strictObject({
  part: sentence.min(1),
  what: sentence.min(1),
  dangerousBy: plainDate.optional(),
  repair: sentence.optional(),
  remediedOn: plainDate.optional(),
});

/**
 * What a report of thorough examination holds besides its dates and outcome: contents of LOLER 1998 Schedule 1, in the order of its
 * paragraphs. Texts are the examiner's own and are shown as his.
 */
const reportParticulars = z.strictObject({
  employer: text.optional(),
  premises: text.optional(),
  /** Words of the report by which the thing is known; the serial stands with the item. */
  identity: text.optional(),
  manufactured: text.optional(),
  /** `none`: it was the first. */
  previousOn: z.union([plainDate, z.literal('none')], 'a day that exists, written YYYY-MM-DD, or none').optional(),
  workingLoadLimit: text.optional(),
  firstAfterInstallation: z.boolean().optional(),
  installedStatement: text.optional(),
  basis: z.enum(['within 6 months', 'within 12 months', 'under a scheme', 'after exceptional circumstances']).optional(),
  statement: text.optional(),
  /** Empty: the report names none. */
  defects: z.array(defect).max(50).optional(),
  /** Texts of records from before defects were kept one by one; they are shown, not asked for. */
  dangerousParts: text.optional(),
  repairsNeeded: text.optional(),
  repairsBeforeDanger: text.optional(),
  tests: text.optional(),
  examinerAddress: text.optional(),
  qualifications: text.optional(),
  /** As what the examiner acts: one of those who may examine under the rule. */
  capacity: sentence.optional(),
  employedBy: text.optional(),
  authenticatedBy: text.optional(),
  reportOn: plainDate.optional(),
  remarks: text.optional(),
});

/** The same shape as in an examinations case; who, what and which report may stand beside it. */
const examinationFields = z.strictObject({
  on: plainDate,
  outcome: z.enum(['pass', 'fail']),
  /** Which check it was; left out: the examination of lifting equipment. */
  check: z.enum(otherChecks).optional(),
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

export type Defect = z.output<typeof defect>;
export type Examination = z.output<typeof examinationFields>;

/** The first day on which a defect of the report that was not put right could be a danger. */
export const earliestDanger = ({ particulars }: Pick<Examination, 'particulars'>): string | undefined =>
  particulars?.defects?.flatMap((each) => (each.remediedOn === undefined && each.dangerousBy ? [each.dangerousBy] : [])).sort()[0];

/** A report sets no day that lies before its own examination, and its defects agree with its outcome and its date. */
export const examination = examinationFields.superRefine((given, context) => {
  const { on, outcome, nextLatestOn, defectBy, particulars } = given;
  const say = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
  // Longer is a slip, as in a rule: the longest that any law read for this asks for is four years.
  const latest = addPeriod(on, { months: 120, days: 0 });
  for (const [key, day] of Object.entries({ nextLatestOn, defectBy }))
    if (day !== undefined && (day < on || day > latest))
      say(
        [key],
        day < on ? `a day on or after the examination (${on})` : `a day within ten years of the examination, no later than ${latest}`,
      );
  if (!particulars) return;
  const { reportOn, previousOn, defects } = particulars;
  if (reportOn !== undefined && reportOn < on) say(['particulars', 'reportOn'], `a day on or after the examination (${on})`);
  if (previousOn !== undefined && previousOn !== 'none' && previousOn >= on)
    say(['particulars', 'previousOn'], `a day before this examination (${on}), or none`);
  defects?.forEach((each, index) => {
    const at = (key: string) => ['particulars', 'defects', index, key];
    if (each.dangerousBy !== undefined && each.dangerousBy < on) say(at('dangerousBy'), `a day on or after the examination (${on})`);
    if (each.remediedOn !== undefined && each.remediedOn < on) say(at('remediedOn'), `a day on or after the examination (${on})`);
    if (outcome === 'pass' && each.dangerousBy === undefined && each.remediedOn === undefined)
      say(at('dangerousBy'), 'the day by which it could become a danger, or the day it was put right: what is a danger now has failed');
  });
  const danger = earliestDanger(given);
  if (danger !== undefined && (defectBy === undefined || defectBy > danger))
    say(['defectBy'], `no later than the first day on which a defect of the report could be a danger (${danger})`);
});
