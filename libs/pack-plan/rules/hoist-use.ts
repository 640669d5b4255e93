import type { HoistModel, LoadRule } from '#tour-file';
import type { ComparisonCause, FactorCause, HoistUseFact } from '#trade';
import { type Words, english } from '#words';
import type { Factor } from '../contract/index.js';
import { generalShare, toldFactor } from './regime.js';
import { type FoundUse, type ShowUse, peopleOf, useCaseOf } from './use-case.js';

/** What the regime says of a hoist at one of its fields: of its class, or of the use case of the show. */
export interface UseSaid {
  readonly code: ComparisonCause;
  readonly field: string | null;
}

/** A hoist against its use in a show. `code` null where nobody is below and nothing moves over people, `useCase` where nobody speaks of use cases. */
export interface HoistUse {
  readonly factors: readonly Factor[];
  readonly code: ComparisonCause | null;
  readonly field: string | null;
  readonly useCase: UseSaid | null;
  readonly use: HoistUseFact;
}

/** What is known of the model. */
export type UsedHoist = Partial<Pick<HoistModel, 'hoistClass' | 'ratedFor' | 'ratedForUseCase'>>;

/** One share of the rated load, the least that class or use case ask for, and never again what the figure on file is reduced by already. */
export function hoistUse(rule: LoadRule, show: ShowUse, hoist: UsedHoist, hasSecondary: boolean, words: Words = english): HoistUse {
  const found = useCaseOf(rule, show);
  const ofClass = classSaid(rule, show, hoist, hasSecondary);
  const useCase = found ? caseSaid(rule, found, hoist) : null;
  const use = {
    ...{ hoistClass: hoist.hoistClass ?? null, needsSecondary: ofClass.needsSecondary, movesOverPersons: show.movesOverPersons === true },
    ...(found ? { useCase: caseFact(found, show, hoist) } : {}),
  };
  const { code, field } = ofClass;
  return { factors: usableShare(rule, show, hoist, found, words), code, field, useCase, use };
}

const classOf = (rule: LoadRule, { hoistClass }: UsedHoist) => rule.hoistClasses?.classes.find((each) => each.hoistClass === hoistClass);
const isOverPeople = (show: ShowUse): boolean => peopleOf(show) !== 'nobody below';

interface ClassSaid {
  readonly code: ComparisonCause | null;
  readonly field: string | null;
  readonly needsSecondary: boolean;
}

function classSaid(rule: LoadRule, show: ShowUse, hoist: UsedHoist, hasSecondary: boolean): ClassSaid {
  if (!isOverPeople(show)) return { code: null, field: null, needsSecondary: false };
  if (!rule.hoistClasses) return { code: 'class-without-rule', field: null, needsSecondary: false };
  const field = hoist.hoistClass === undefined ? 'hoistClasses' : `hoistClasses.classes[${hoist.hoistClass}]`;
  const found = classOf(rule, hoist);
  if (!found) return { code: hoist.hoistClass === undefined ? 'class-not-on-file' : 'class-not-in-rule', field, needsSecondary: false };
  const needsSecondary = found.holdOverPersons === 'with secondary suspension';
  const said = (code: ComparisonCause): ClassSaid => ({ code, field, needsSecondary });
  if (show.movesOverPersons && !found.moveOverPersons) return said('class-must-not-move');
  if (found.holdOverPersons === 'not allowed') return said('class-must-not-hold');
  return said(needsSecondary && !hasSecondary ? 'class-wants-secondary' : 'class-may-hold');
}

function caseSaid(rule: LoadRule, { found, cause }: FoundUse, { hoistClass, ratedFor, ratedForUseCase }: UsedHoist): UseSaid {
  const field = found ? fieldOf(found.useCase) : rule.useCases ? 'useCases' : null;
  const said = (code: ComparisonCause): UseSaid => ({ code, field });
  const asked = found?.hoistClasses;
  if (cause !== null && cause !== 'use-case-not-said') return said(cause);
  if (asked && hoistClass === undefined) return said('use-case-class-unknown');
  if (asked && hoistClass !== undefined && !asked.includes(hoistClass)) return said('use-case-wants-class');
  if (cause !== null) return said(cause);
  const isUnknown = ratedFor === 'use case' && !rule.useCases?.cases.some((each) => each.useCase === ratedForUseCase);
  return said(isUnknown ? 'rated-for-without-rule' : 'use-case-as-asked');
}

const fieldOf = (useCase: string): string => `useCases.cases[${useCase}]`;

const caseFact = ({ found, several }: FoundUse, show: ShowUse, { ratedForUseCase }: UsedHoist): NonNullable<HoistUseFact['useCase']> => ({
  name: found?.useCase ?? show.useCase ?? null,
  people: peopleOf(show),
  casePeople: found?.people ?? null,
  several: several.map((each) => each.useCase),
  classes: found?.hoistClasses ?? [],
  ratedForUseCase: ratedForUseCase ?? null,
});

function usableShare(rule: LoadRule, show: ShowUse, hoist: UsedHoist, use: FoundUse | undefined, words: Words): readonly Factor[] {
  const ofClass = isOverPeople(show) ? classOf(rule, hoist) : undefined;
  const ofCase = use?.found ?? undefined;
  const asked: Factor[] = [];
  if (ofClass) {
    const { hoistClass, usableShareWithPersonsBelow } = ofClass;
    asked.push(
      toldFactor(words, { code: 'hoist-class', hoistClass }, usableShareWithPersonsBelow, rule, `hoistClasses.classes[${hoistClass}]`),
    );
  }
  if (ofCase) {
    const { useCase, usableShare: share } = ofCase;
    asked.push(toldFactor(words, { code: 'use-case', useCase }, share, rule, fieldOf(useCase)));
  }
  if (asked.length === 0 && isOverPeople(show)) asked.push(generalShare(rule, words));
  const least = asked.reduce<Factor | null>((a, b) => (a === null || b.factor < a.factor ? b : a), null);
  return least === null || least.factor === 1 ? [] : [withoutTwice(rule, hoist, least, words)];
}

/** The share that is left to take off a rated load which is reduced already. */
function withoutTwice(rule: LoadRule, hoist: UsedHoist, share: Factor, words: Words): Factor {
  const reduced = alreadyReduced(rule, hoist);
  if (!reduced) return share;
  const { kind, name, already } = reduced;
  const cause: FactorCause = { code: 'rated-for', kind, name, already, asked: share.factor };
  return toldFactor(words, cause, Math.min(1, share.factor / already), rule, share.fact?.field ?? 'usableShareWithPersonsBelow');
}

/** What a rated load on file is reduced by already; null: nothing, or nobody knows. A class of which the regime says nothing has its general share. */
function alreadyReduced(rule: LoadRule, hoist: UsedHoist) {
  const { ratedFor, hoistClass, ratedForUseCase } = hoist;
  if (ratedFor === 'class' && hoistClass !== undefined) {
    const already = classOf(rule, hoist)?.usableShareWithPersonsBelow ?? rule.usableShareWithPersonsBelow;
    return { kind: 'class', name: hoistClass, already } as const;
  }
  const found = ratedFor === 'use case' ? rule.useCases?.cases.find((each) => each.useCase === ratedForUseCase) : undefined;
  return found ? ({ kind: 'use case', name: found.useCase, already: found.usableShare } as const) : null;
}
