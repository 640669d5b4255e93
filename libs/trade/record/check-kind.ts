/** Checks that are regimes of their own beside the examination of lifting equipment: a record of one says nothing of another. */
export const otherChecks = ['electrical', 'pre-use'] as const;
export type OtherCheck = (typeof otherChecks)[number];
export type CheckKind = 'examination' | OtherCheck;

/** An interval as it is kept: of an examination the period alone ("P6M"), of another check with its name before it ("electrical P1Y"). */
export const intervalOf = (check: CheckKind | undefined, period: string): string =>
  check === undefined || check === 'examination' ? period : `${check} ${period}`;

export function splitInterval(interval: string): { readonly check: CheckKind; readonly period: string } {
  const check = otherChecks.find((each) => interval.startsWith(`${each} `));
  return check === undefined ? { check: 'examination', period: interval } : { check, period: interval.slice(check.length + 1) };
}

/** The intervals of rules for something, each with its check, each once. */
export const intervalsOfRules = (rules: readonly { readonly check?: OtherCheck; readonly intervals: readonly string[] }[]): string[] => [
  ...new Set(rules.flatMap(({ check, intervals }) => intervals.map((each) => intervalOf(check, each)))),
];

/** An item's own intervals take the place of those of the rules for the examination; other checks stay as the rules have them. */
export const intervalsOfItem = (own: readonly string[] | null | undefined, ofRules: readonly string[]): readonly string[] =>
  own ? [...own, ...ofRules.filter((each) => splitInterval(each).check !== 'examination')] : ofRules;
