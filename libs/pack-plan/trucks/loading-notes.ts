import { noLoading } from '#tour-file';
import type { LoadingWish } from '#trade';
import { tell } from '#words';
import type { LoadingNote } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import type { FreightPiece } from './freight.js';

/** What the packing engine is told to leave as it is, and how the plan names it. */
export interface TruckWishes {
  readonly kept: readonly {
    readonly id: string;
    readonly truck: string;
    readonly xMm: number;
    readonly yMm: number;
    readonly zMm: number;
    readonly turned: boolean;
    readonly loaded: boolean;
  }[];
  readonly waived: readonly string[];
  readonly notes: readonly LoadingNote[];
}

/** The wishes of a show that can still be followed; for each of the others a note that says why not. */
export function truckWishes(inputs: PlanInputs, freight: readonly FreightPiece[], trucks: readonly string[]): TruckWishes {
  const wanted = inputs.show.loading ?? noLoading;
  const pieces = new Map(freight.map((each) => [each.id, each]));
  const gone = wanted.kept.flatMap(({ piece, truck }): LoadingWish[] => {
    if (!pieces.has(piece)) return [{ code: 'kept-piece-gone', piece, truck }];
    return trucks.includes(truck) ? [] : [{ code: 'kept-truck-gone', piece, truck }];
  });
  const kept = wanted.kept.filter(({ piece, truck }) => pieces.has(piece) && trucks.includes(truck));
  const facts: LoadingWish[] = [
    ...gone,
    ...trucks.flatMap((truck) => keptIn(truck, kept)),
    ...wanted.waived.map(({ piece, reason, by, on }): LoadingWish => {
      const found = pieces.get(piece);
      return found ? { code: 'waived', piece, name: found.label, reason, by, on } : { code: 'waived-piece-gone', piece };
    }),
    ...wanted.taken.map(
      ({ case: piece, by, on }): LoadingWish => ({ code: pieces.has(piece) ? 'taken' : 'taken-is-no-case', piece, by, on }),
    ),
    ...wanted.ends.map(({ group, end }): LoadingWish => {
      const found = freight.find((each) => each.group === group);
      return found ? { code: 'end', group, name: found.groupName, end } : { code: 'end-group-gone', group, end };
    }),
  ];
  return {
    kept: kept.map(({ piece, ...rest }) => ({ id: piece, ...rest })),
    waived: wanted.waived.filter(({ piece }) => pieces.has(piece)).map((each) => each.piece),
    notes: facts.map((fact) => ({ kind: kindOf(fact), subject: subjectOf(fact), sentence: tell(inputs.words.wishes, fact), fact })),
  };
}

function keptIn(truck: string, kept: readonly { readonly truck: string; readonly loaded: boolean }[]): LoadingWish[] {
  const here = kept.filter((each) => each.truck === truck);
  return here.length === 0 ? [] : [{ code: 'kept', truck, pieces: here.length, loaded: here.filter((each) => each.loaded).length }];
}

const subjectOf = (wish: LoadingWish): string => ('group' in wish ? wish.group : 'piece' in wish ? wish.piece : wish.truck);
const kindOf = ({ code }: LoadingWish): LoadingNote['kind'] =>
  code === 'kept' || code === 'waived' || code === 'taken' || code === 'end' ? code : 'without effect';
