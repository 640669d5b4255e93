import { type Finding, type Mismatch, type PackPlan, say } from '../contract/index.js';

/** What the checkers of the engines and the second opinion on the plan do not agree with. A plan with such a finding cannot be released. */
export const checkerDisagrees = 'checker-disagrees';

/** Mismatches that stand beside the results of a plan. */
export const mismatchesIn = ({
  carts,
  picks,
  hardware,
  truck,
  due,
}: Pick<PackPlan, 'carts' | 'picks' | 'hardware' | 'truck' | 'due'>): Mismatch[] =>
  [carts, ...picks.hangs, hardware, truck, due].flatMap((each) => each.mismatches ?? []);

export const checkerFindings = (mismatches: readonly Mismatch[]): Finding[] =>
  mismatches.map(({ check, subject, found }) =>
    say(
      'inputs',
      'stop',
      checkerDisagrees,
      subject,
      null,
      `The check of ${check} does not agree with this plan. ${subject}: ${found}. It cannot be released; tell whoever looks after Cartwright.`,
    ),
  );
