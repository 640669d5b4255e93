import type { LoadRule, Show, UseCase } from '#tour-file';
import type { ComparisonCause, UsePeople } from '#trade';

/** What a show says of the people about its loads. */
export type ShowUse = Pick<Show, 'personsBelow' | 'movesOverPersons' | 'useCase'>;

/** What is true of a show: nobody below, loads held over people, or moved over them. */
export const peopleOf = ({ personsBelow, movesOverPersons }: ShowUse): UsePeople =>
  movesOverPersons ? 'moved over' : personsBelow ? 'held over' : 'nobody below';

/**
 * The use case of a show by its regime: the one that the show names, else the one for its people. `cause` null where there is one; with several the one that
 * asks for least of a rated load is taken.
 */
export interface FoundUse {
  readonly found: UseCase | null;
  readonly several: readonly UseCase[];
  readonly cause: ComparisonCause | null;
}

/** undefined where neither regime nor show speaks of use cases. */
export function useCaseOf(rule: LoadRule, show: ShowUse): FoundUse | undefined {
  if (!rule.useCases) return show.useCase === undefined ? undefined : none('use-case-without-rule');
  const named = show.useCase;
  const fit = rule.useCases.cases.filter((each) => (named === undefined ? each.people === peopleOf(show) : each.useCase === named));
  const found = [...fit].sort((a, b) => a.usableShare - b.usableShare)[0];
  if (!found) return none('use-case-not-in-rule');
  if (fit.length > 1) return { found, several: fit, cause: 'use-case-not-said' };
  return { found, several: [], cause: found.people === peopleOf(show) ? null : 'use-case-other-people' };
}

const none = (cause: ComparisonCause): FoundUse => ({ found: null, several: [], cause });
