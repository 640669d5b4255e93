import type { BreachKinds, LoadBreach } from '#trade';

/** A rule that a load breaks, or a claim that is not so. */
export type Violation = LoadBreach;

/** What is said of a violation. */
export type Said = {
  [C in keyof BreachKinds]: [
    code: C,
    kind: BreachKinds[C],
    subject: string,
    names?: readonly string[],
    numbers?: Readonly<Record<string, number>>,
  ];
}[keyof BreachKinds];

export const violation = (...[code, kind, subject, names = [], numbers = {}]: Said): Violation =>
  ({ code, kind, subject, names, numbers }) as Violation;
