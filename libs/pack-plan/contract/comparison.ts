import type { ComparedPart, ComparisonCause, ComparisonFact, FactorCause } from '#trade';

/** What a rated load is multiplied by before it is compared, and where that rule stands. */
export interface Factor {
  readonly what: string;
  readonly factor: number;
  readonly source: string;
  readonly status: string;
  /** The field of the show’s load rule that gives it. */
  readonly fact: { readonly cause: FactorCause; readonly field: string | null } | null;
}

/** What was compared, what came of it and, where the load rule speaks without a factor, by which of its fields and figures. */
export interface ComparedFact extends Pick<ComparisonFact, 'use' | 'worstAt'> {
  readonly code: ComparisonCause;
  readonly part: ComparedPart;
  readonly ruled?: { readonly field: string | null; readonly value: number; readonly limit: number | null };
}

export interface Comparison {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  /** null: no rated value on file. */
  readonly limit: number | null;
  readonly verdict: 'within' | 'over' | 'no rated value on file' | 'no rule on file';
  readonly sentence: string;
  /** As it is stated, in its own unit. */
  readonly rated: { readonly value: number; readonly unit: string } | null;
  readonly factors: readonly Factor[];
  /** What the figures do not say; of plans that kept the words alone only the structure above a point is known again. */
  readonly fact: ComparedFact | null;
}
