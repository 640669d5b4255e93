import { noLoading } from '#tour-file';
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
  const notes: LoadingNote[] = [];
  const note = (kind: LoadingNote['kind'], subject: string, sentence: string) => notes.push({ kind, subject, sentence });
  const kept = wanted.kept.filter(({ piece, truck }) => {
    if (!pieces.has(piece)) note('without effect', piece, `${piece} was to stay where it stands in ${truck}, but it no longer travels.`);
    else if (!trucks.includes(truck)) note('without effect', piece, `${piece} was to stay in ${truck}, but that truck may not be used.`);
    else return true;
    return false;
  });
  for (const truck of trucks) {
    const here = kept.filter((each) => each.truck === truck);
    const loaded = here.filter((each) => each.loaded).length;
    if (here.length > 0)
      note(
        'kept',
        truck,
        `${truck}: ${count(here.length)} where ${here.length === 1 ? 'it stands' : 'they stand'}${loaded > 0 ? `, ${loaded} of them loaded` : ''}.`,
      );
  }
  const waived = wanted.waived.filter(({ piece, reason, by, on }) => {
    const found = pieces.get(piece);
    if (found) note('waived', piece, `${found.label} need not come off in its turn: ${reason} (${by}, ${on}).`);
    else note('without effect', piece, `${piece} was excused from the unloading order, but it no longer travels.`);
    return found !== undefined;
  });
  for (const { case: id, by, on } of wanted.taken) {
    if (pieces.has(id)) note('taken', id, `${id} was taken along at the dock (${by}, ${on}).`);
    else note('without effect', id, `${id} was taken along at the dock, but it is no case on file.`);
  }
  for (const { group, end } of wanted.ends) {
    if (freight.some((each) => each.group === group)) note('end', group, `${group}: wanted at the ${end}.`);
    else note('without effect', group, `${group} was wanted at the ${end}, but none of it travels.`);
  }
  return { kept: kept.map(({ piece, ...rest }) => ({ id: piece, ...rest })), waived: waived.map((each) => each.piece), notes };
}

const count = (pieces: number): string => (pieces === 1 ? '1 piece stays' : `${pieces} pieces stay`);
