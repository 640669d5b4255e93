import type { InputFinding, QuoteSubject } from '#trade';
import type { Mismatch, PackPlan } from '../contract/index.js';

/** Mismatches that stand beside the results of a plan. */
export const mismatchesIn = ({
  carts,
  picks,
  hardware,
  truck,
  due,
}: Pick<PackPlan, 'carts' | 'picks' | 'hardware' | 'truck' | 'due'>): Mismatch[] =>
  [carts, ...picks.hangs, hardware, truck, due].flatMap((each) => each.mismatches ?? []);

const quote = (text: string): QuoteSubject => ({ kind: 'quote', text });

/** What the checkers of the engines and the second opinion on the plan do not agree with. A plan with such a finding cannot be released. */
export const checkerFindings = (mismatches: readonly Mismatch[]): InputFinding[] =>
  mismatches.map(({ check, subject, found }) => ({
    code: 'checker-disagrees',
    subjects: { about: quote(subject), check: quote(check), found: quote(found) },
    numbers: {},
    date: null,
  }));
