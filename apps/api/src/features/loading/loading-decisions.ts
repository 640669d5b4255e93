import { type PackPlan, type RowSwap, type TruckResultOne, rowKey, swapOf, tickText, whyNotUsable } from '#pack-plan';
import type { KeptPiece, LoadingAct, TourFile } from '#tour-file';
import type { Refusal } from '#trade';
import { type Words, tell } from '#words';
import { BadInputError } from '../../platform/faults/fault.js';
import type { JobRefusal } from '../../planning/jobs/jobs.js';

/** What somebody at the dock wants of the trucks of a plan. */
export type Wish =
  | { readonly kind: 'keep'; readonly pieces: readonly string[] }
  | { readonly kind: 'keep row'; readonly truck: string; readonly row: number }
  | { readonly kind: 'keep loaded' }
  | { readonly kind: 'let go'; readonly pieces: readonly string[] | null }
  | { readonly kind: 'waive'; readonly piece: string; readonly reason: string }
  | { readonly kind: 'end waiver'; readonly piece: string }
  | { readonly kind: 'stay'; readonly piece: string; readonly reason: string }
  | { readonly kind: 'travel'; readonly piece: string }
  | { readonly kind: 'take'; readonly case: string }
  | { readonly kind: 'leave'; readonly case: string }
  | { readonly kind: 'end'; readonly group: string; readonly end: string | null }
  | {
      readonly kind: 'swap rows';
      readonly truck: string;
      readonly first: number;
      readonly second: number;
      readonly reason: string | null;
    };

/** What a wish is judged by: the plan that it was wished of, everything on file, what is ticked, who wishes and when. */
export interface WishContext {
  readonly plan: PackPlan;
  readonly file: TourFile;
  readonly ticks: ReadonlySet<string>;
  readonly who: string;
  readonly today: string;
  readonly words: Words;
}

/** What is put on file, and the sentence of the record. */
export interface Decision {
  readonly acts: readonly LoadingAct[];
  readonly sentence: string;
}

/** What a wish puts on file, or why it cannot be; bad input throws. */
export function decideWish(wish: Wish, context: WishContext): Decision | JobRefusal {
  const { plan, file, ticks, who, today, words } = context;
  switch (wish.kind) {
    case 'keep':
      return decideKeep(plan, wish.pieces);
    case 'keep row':
      return decideKeepRow(plan, wish.truck, wish.row);
    case 'keep loaded':
      return decideKeepLoaded(plan, ticks);
    case 'let go':
      return decideLetGo(file, plan, wish.pieces);
    case 'waive':
      return decideWaive(plan, [wish.piece], wish.reason, who, today);
    case 'end waiver':
      return decideEndWaiver(file, plan, wish.piece);
    case 'stay':
      return decideStay(plan, ticks, wish.piece, wish.reason, who, today);
    case 'travel':
      return decideTravel(file, plan, wish.piece);
    case 'take': {
      const against = whyNotUsable(file, plan.show.id, wish.case);
      return decideTake(file, plan, wish.case, against && tell(words.against, against), who, today);
    }
    case 'leave':
      return decideLeave(file, plan, wish.case);
    case 'end':
      return decideEnd(plan, wish.group, wish.end);
    case 'swap rows':
      return decideSwap(wish, context);
  }
}

/** A refusal in its words. */
export const refusalOf = (refusal: Refusal, reasons: readonly string[], words: Words): JobRefusal => ({
  code: refusal.code,
  sentence: tell(words.refusals, refusal),
  reasons,
});

const bad = (field: string, value: unknown, wanted: string): BadInputError => new BadInputError([{ field, value, wanted }]);
const short = (text: string): string => text.slice(0, 80);
const some = (ids: readonly string[]): string =>
  ids.length > 6 ? `${ids.slice(0, 6).join(', ')} and ${ids.length - 6} more` : ids.join(', ');

function truckOf(plan: PackPlan, truckId: string): TruckResultOne {
  const truck = plan.truck.trucks.find((each) => each.id === truckId);
  if (!truck)
    throw bad('truck', short(truckId), `a truck of this plan: ${plan.truck.trucks.map((each) => each.id).join(', ') || 'it has none'}`);
  return truck;
}

function rowOf(truck: TruckResultOne, field: string, row: number): TruckResultOne['rows'][number] {
  const found = truck.rows.find((each) => each.number === row);
  if (!found) throw bad(field, row, `a row of ${truck.id}, 1 to ${truck.rows.length}`);
  return found;
}

function placesOf(plan: PackPlan, pieces: readonly string[], isLoaded: (piece: string) => boolean): KeptPiece[] {
  const places = new Map(plan.truck.trucks.flatMap((truck) => truck.placements.map((at) => [at.id, { truck: truck.id, at }] as const)));
  const stowed = new Set(plan.truck.trucks.flatMap((truck) => (truck.kind ? [truck.id] : [])));
  return pieces.map((piece, index) => {
    const found = places.get(piece);
    if (!found) throw bad(`pieces[${index}]`, short(piece), 'a piece that stands in a truck of this plan');
    if (stowed.has(found.truck)) throw bad(`pieces[${index}]`, short(piece), `a piece in a truck; ${found.truck} is stowed without rows`);
    const { xMm, yMm, zMm, turned } = found.at;
    return { piece, truck: found.truck, xMm, yMm, zMm, turned, loaded: isLoaded(piece) };
  });
}

const loadedIn = (plan: PackPlan): ReadonlySet<string> =>
  new Set(plan.truck.trucks.flatMap((truck) => (truck.kept ?? []).filter((each) => each.loaded).map((each) => each.piece)));

/** Pieces stay where they stand, with all that they stand on. */
function decideKeep(plan: PackPlan, pieces: readonly string[]): Decision {
  if (pieces.length === 0 || pieces.length > 5000) throw bad('pieces', `a list of ${pieces.length}`, '1 to 5000 pieces');
  const loaded = loadedIn(plan);
  const kept = placesOf(plan, [...new Set(pieces)], (piece) => loaded.has(piece));
  return { acts: [{ kind: 'keep', pieces: kept }], sentence: `Keeps ${some(kept.map((each) => each.piece))} where the plan has them.` };
}

function decideKeepRow(plan: PackPlan, truckId: string, row: number): Decision {
  const { pieces, number } = rowOf(truckOf(plan, truckId), 'row', row);
  return { ...decideKeep(plan, pieces), sentence: `Keeps row ${number} of ${truckId}: ${some(pieces)}.` };
}

/** What is ticked as loaded is in the truck: nothing that is wished of the rest moves it. */
function loadedStays(plan: PackPlan, ticks: ReadonlySet<string>): readonly (LoadingAct & { readonly kind: 'keep' })[] {
  const inRows = plan.truck.trucks.filter((truck) => truck.kind === undefined);
  const pieces = inRows.flatMap((truck) =>
    truck.rows.filter((row) => ticks.has(tickText(rowKey(truck.id, row.number)))).flatMap((row) => row.pieces),
  );
  return pieces.length === 0 ? [] : [{ kind: 'keep', pieces: placesOf(plan, pieces, () => true) }];
}

/** Everything in the rows that are ticked is in the truck. */
function decideKeepLoaded(plan: PackPlan, ticks: ReadonlySet<string>): Decision {
  const acts = loadedStays(plan, ticks);
  const pieces = acts.flatMap((each) => each.pieces.map(({ piece }) => piece));
  if (pieces.length === 0) throw bad('planId', 'no row ticked', 'a plan with at least one row ticked as loaded');
  return {
    acts,
    sentence: `${pieces.length} pieces are loaded and stay: ${some(pieces)}.`,
  };
}

/** These pieces, or all that are kept, may be planned anywhere again. */
function decideLetGo(file: TourFile, plan: PackPlan, wanted: readonly string[] | null): Decision {
  const kept = new Set(showOf(file, plan).loading?.kept.map((each) => each.piece));
  const pieces = wanted ?? [...kept];
  pieces.forEach((piece, index) => {
    if (!kept.has(piece)) throw bad(`pieces[${index}]`, short(piece), 'a piece that is kept where it stands');
  });
  if (pieces.length === 0) throw bad('pieces', 'nothing', 'a piece that is kept where it stands');
  return { acts: [{ kind: 'let go', pieces: [...pieces] }], sentence: `Lets ${some(pieces)} go: they may be planned anywhere again.` };
}

/** Waivers for pieces of the plan, all for one reason. */
function decideWaive(plan: PackPlan, pieces: readonly string[], reason: string, who: string, on: string): Decision {
  const why = reasonOf(reason);
  placesOf(plan, pieces, () => false);
  return {
    acts: pieces.map((piece) => ({ kind: 'waive', piece, reason: why, by: who, on })),
    sentence: `Waived the unloading order for ${some(pieces)}: ${why}.`,
  };
}

function decideEndWaiver(file: TourFile, plan: PackPlan, piece: string): Decision {
  if (!showOf(file, plan).loading?.waived.some((each) => each.piece === piece))
    throw bad('piece', short(piece), 'a piece for which the unloading order is waived');
  return { acts: [{ kind: 'no waiver', piece }], sentence: `${piece} comes off in its turn again.` };
}

/** A piece that does not travel with this show. What is ticked as loaded is in the truck and travels. */
function decideStay(plan: PackPlan, ticks: ReadonlySet<string>, piece: string, reason: string, who: string, on: string): Decision {
  const why = reasonOf(reason);
  placesOf(plan, [piece], () => false);
  const row = plan.truck.trucks
    .flatMap((truck) => truck.rows.map((each) => ({ truck: truck.id, ...each })))
    .find((each) => each.pieces.includes(piece));
  if (row && ticks.has(tickText(rowKey(row.truck, row.number))))
    throw bad('piece', piece, `a piece that is not loaded; row ${row.number} of ${row.truck} is ticked: take the tick back first`);
  return {
    acts: [...loadedStays(plan, ticks), { kind: 'stay', piece, reason: why, by: who, on }],
    sentence: `${piece} stays behind: ${why}.`,
  };
}

function decideTravel(file: TourFile, plan: PackPlan, piece: string): Decision {
  if (!showOf(file, plan).loading?.stays?.some((each) => each.piece === piece))
    throw bad('piece', short(piece), 'a piece that stays behind');
  return { acts: [{ kind: 'travel', piece }], sentence: `${piece} travels after all.` };
}

function reasonOf(reason: string): string {
  const why = reason.trim().replace(/\.$/, '');
  if (why === '' || why.length > 300) throw bad('reason', short(reason), 'a sentence of 1 to 300 characters');
  return why;
}

/** A case of the register that does not travel yet, in service and not promised elsewhere. */
function decideTake(file: TourFile, plan: PackPlan, caseId: string, against: string | null, who: string, on: string): Decision {
  const item = file.items.find((each) => each.id === caseId);
  if (!item) throw bad('case', short(caseId), 'a case on the register; put it there first, with its model and what it holds');
  if (item.kind !== 'case') throw bad('case', caseId, `a case; ${caseId} is a ${item.kind}`);
  const travels =
    file.tour.freight.some((each) => each.case === caseId) || showOf(file, plan).loading?.taken.some((each) => each.case === caseId);
  if (travels) throw bad('case', caseId, 'a case that does not travel yet');
  if (against !== null) throw bad('case', caseId, `a case that may travel; it is ${against}`);
  return { acts: [{ kind: 'take', case: caseId, by: who, on }], sentence: `Took ${caseId} along at the dock.` };
}

function decideLeave(file: TourFile, plan: PackPlan, caseId: string): Decision {
  if (!showOf(file, plan).loading?.taken.some((each) => each.case === caseId))
    throw bad('case', short(caseId), 'a case that was taken along at the dock');
  return { acts: [{ kind: 'leave', case: caseId }], sentence: `${caseId} stays behind after all.` };
}

function decideEnd(plan: PackPlan, group: string, end: string | null): Decision {
  const groups = [...new Set(plan.truck.trucks.flatMap((truck) => truck.placements.map((each) => each.group ?? each.label)))];
  if (!groups.includes(group)) throw bad('group', short(group), `a group of this plan: ${groups.join(', ')}`);
  if (end !== null && end !== 'door' && end !== 'nose') throw bad('end', short(end), 'door, nose, or nothing for the usual place');
  return {
    acts: [{ kind: 'end', group, end }],
    sentence: end === null ? `${group} in its usual place again.` : `${group} wanted at the ${end}.`,
  };
}

const showOf = (file: TourFile, plan: PackPlan) => file.tour.shows.find((each) => each.id === plan.show.id)!;

/** What two exchanged rows would do. */
export function lookAtSwap(file: TourFile, plan: PackPlan, truckId: string, first: number, second: number, words: Words): RowSwap {
  const truck = truckOf(plan, truckId);
  rowOf(truck, 'first', first);
  rowOf(truck, 'second', second);
  if (first === second) throw bad('second', second, 'another row than the first');
  return swapOf(file, plan, truckId, first, second, words);
}

function decideSwap(
  { truck, first, second, reason }: Extract<Wish, { kind: 'swap rows' }>,
  { plan, file, ticks, who, today, words }: WishContext,
): Decision | JobRefusal {
  if (truckOf(plan, truck).kind) throw bad('truck', short(truck), 'a truck that is loaded in rows');
  const { breaches, places } = lookAtSwap(file, plan, truck, first, second, words);
  const reasons = breaches.map((each) => each.sentence);
  if (breaches.some((each) => !each.mayBeWaived)) return refusalOf({ code: 'swap-breaks-rules', truck, first, second }, reasons, words);
  if (breaches.length > 0 && reason === null) return refusalOf({ code: 'swap-out-of-turn', truck, first, second }, reasons, words);
  const pieces = [...new Set(breaches.map((each) => each.piece))];
  const waived = pieces.length > 0 ? decideWaive(plan, pieces, reason ?? '', who, today) : { acts: [], sentence: '' };
  return {
    acts: [...loadedStays(plan, ticks), ...waived.acts, { kind: 'keep', pieces: places }],
    sentence: `Exchanged rows ${first} and ${second} of ${truck}. ${waived.sentence}`.trim(),
  };
}
