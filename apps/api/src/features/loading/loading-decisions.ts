import { type PackPlan, type TruckResultOne, rowKey, tickText } from '#pack-plan';
import type { KeptPiece, LoadingAct, TourFile } from '#tour-file';
import { BadInputError } from '../../platform/graphql/fault.js';

/** What is put on file, and the sentence of the record. */
export interface Decision {
  readonly acts: readonly LoadingAct[];
  readonly sentence: string;
}

const bad = (field: string, value: unknown, wanted: string): BadInputError => new BadInputError([{ field, value, wanted }]);
const short = (text: string): string => text.slice(0, 80);
const some = (ids: readonly string[]): string =>
  ids.length > 6 ? `${ids.slice(0, 6).join(', ')} and ${ids.length - 6} more` : ids.join(', ');

export function truckOf(plan: PackPlan, truckId: string): TruckResultOne {
  const truck = plan.truck.trucks.find((each) => each.id === truckId);
  if (!truck)
    throw bad('truck', short(truckId), `a truck of this plan: ${plan.truck.trucks.map((each) => each.id).join(', ') || 'it has none'}`);
  return truck;
}

export function rowOf(truck: TruckResultOne, field: string, row: number): TruckResultOne['rows'][number] {
  const found = truck.rows.find((each) => each.number === row);
  if (!found) throw bad(field, row, `a row of ${truck.id}, 1 to ${truck.rows.length}`);
  return found;
}

function placesOf(plan: PackPlan, pieces: readonly string[], isLoaded: (piece: string) => boolean): KeptPiece[] {
  const places = new Map(plan.truck.trucks.flatMap((truck) => truck.placements.map((at) => [at.id, { truck: truck.id, at }] as const)));
  return pieces.map((piece, index) => {
    const found = places.get(piece);
    if (!found) throw bad(`pieces[${index}]`, short(piece), 'a piece that stands in a truck of this plan');
    const { xMm, yMm, zMm, turned } = found.at;
    return { piece, truck: found.truck, xMm, yMm, zMm, turned, loaded: isLoaded(piece) };
  });
}

const loadedIn = (plan: PackPlan): ReadonlySet<string> =>
  new Set(plan.truck.trucks.flatMap((truck) => (truck.kept ?? []).filter((each) => each.loaded).map((each) => each.piece)));

/** Pieces stay where they stand, with all that they stand on. */
export function decideKeep(plan: PackPlan, pieces: readonly string[]): Decision {
  if (pieces.length === 0 || pieces.length > 5000) throw bad('pieces', `a list of ${pieces.length}`, '1 to 5000 pieces');
  const loaded = loadedIn(plan);
  const kept = placesOf(plan, [...new Set(pieces)], (piece) => loaded.has(piece));
  return { acts: [{ kind: 'keep', pieces: kept }], sentence: `Keeps ${some(kept.map((each) => each.piece))} where the plan has them.` };
}

export function decideKeepRow(plan: PackPlan, truckId: string, row: number): Decision {
  const { pieces, number } = rowOf(truckOf(plan, truckId), 'row', row);
  return { ...decideKeep(plan, pieces), sentence: `Keeps row ${number} of ${truckId}: ${some(pieces)}.` };
}

/** Everything in the rows that are ticked is in the truck. */
export function decideKeepLoaded(plan: PackPlan, ticks: ReadonlySet<string>): Decision {
  const pieces = plan.truck.trucks.flatMap((truck) =>
    truck.rows.filter((row) => ticks.has(tickText(rowKey(truck.id, row.number)))).flatMap((row) => row.pieces),
  );
  if (pieces.length === 0) throw bad('planId', 'no row ticked', 'a plan with at least one row ticked as loaded');
  return {
    acts: [{ kind: 'keep', pieces: placesOf(plan, pieces, () => true) }],
    sentence: `${pieces.length} pieces are loaded and stay: ${some(pieces)}.`,
  };
}

/** These pieces, or all that are kept, may be planned anywhere again. */
export function decideLetGo(file: TourFile, plan: PackPlan, wanted: readonly string[] | null): Decision {
  const kept = new Set(showOf(file, plan).loading?.kept.map((each) => each.piece));
  const pieces = wanted ?? [...kept];
  pieces.forEach((piece, index) => {
    if (!kept.has(piece)) throw bad(`pieces[${index}]`, short(piece), 'a piece that is kept where it stands');
  });
  if (pieces.length === 0) throw bad('pieces', 'nothing', 'a piece that is kept where it stands');
  return { acts: [{ kind: 'let go', pieces: [...pieces] }], sentence: `Lets ${some(pieces)} go: they may be planned anywhere again.` };
}

/** Waivers for pieces of the plan, all for one reason. */
export function decideWaive(plan: PackPlan, pieces: readonly string[], reason: string, who: string, on: string): Decision {
  const why = reason.trim().replace(/\.$/, '');
  if (why === '' || why.length > 300) throw bad('reason', short(reason), 'a sentence of 1 to 300 characters');
  placesOf(plan, pieces, () => false);
  return {
    acts: pieces.map((piece) => ({ kind: 'waive', piece, reason: why, by: who, on })),
    sentence: `Waived the unloading order for ${some(pieces)}: ${why}.`,
  };
}

export function decideEndWaiver(file: TourFile, plan: PackPlan, piece: string): Decision {
  if (!showOf(file, plan).loading?.waived.some((each) => each.piece === piece))
    throw bad('piece', short(piece), 'a piece for which the unloading order is waived');
  return { acts: [{ kind: 'no waiver', piece }], sentence: `${piece} comes off in its turn again.` };
}

/** A case of the register that does not travel yet, in service and not promised elsewhere. */
export function decideTake(file: TourFile, plan: PackPlan, caseId: string, against: string | null, who: string, on: string): Decision {
  const item = file.items.find((each) => each.id === caseId);
  if (!item) throw bad('case', short(caseId), 'a case on the register; put it there first, with its model and what it holds');
  if (item.kind !== 'case') throw bad('case', caseId, `a case; ${caseId} is a ${item.kind}`);
  const travels =
    file.tour.freight.some((each) => each.case === caseId) || showOf(file, plan).loading?.taken.some((each) => each.case === caseId);
  if (travels) throw bad('case', caseId, 'a case that does not travel yet');
  if (against !== null) throw bad('case', caseId, `a case that may travel; it is ${against}`);
  return { acts: [{ kind: 'take', case: caseId, by: who, on }], sentence: `Took ${caseId} along at the dock.` };
}

export function decideLeave(file: TourFile, plan: PackPlan, caseId: string): Decision {
  if (!showOf(file, plan).loading?.taken.some((each) => each.case === caseId))
    throw bad('case', short(caseId), 'a case that was taken along at the dock');
  return { acts: [{ kind: 'leave', case: caseId }], sentence: `${caseId} stays behind after all.` };
}

export function decideEnd(plan: PackPlan, group: string, end: string | null): Decision {
  const groups = [...new Set(plan.truck.trucks.flatMap((truck) => truck.placements.map((each) => each.group ?? each.label)))];
  if (!groups.includes(group)) throw bad('group', short(group), `a group of this plan: ${groups.join(', ')}`);
  if (end !== null && end !== 'door' && end !== 'nose') throw bad('end', short(end), 'door, nose, or nothing for the usual place');
  return {
    acts: [{ kind: 'end', group, end }],
    sentence: end === null ? `${group} in its usual place again.` : `${group} wanted at the ${end}.`,
  };
}

const showOf = (file: TourFile, plan: PackPlan) => file.tour.shows.find((each) => each.id === plan.show.id)!;
