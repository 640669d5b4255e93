import { canonicalJson, textHash } from '#kernel';
import type { Booking, Item, Show, TourFile } from '#tour-file';
import { isLoadingEmpty, itemKinds, wholeHangs } from '#tour-file';
import { type InputChange, type InputPart, keyOfPart, partOfKey } from '#trade';
import type { PackPlan } from '../contract/index.js';

export const loadingPart = keyOfPart({ code: 'loading' });
export const itemsPart = keyOfPart({ code: 'register' });

/**
 * Says how a fingerprint is worked out. Missing: names count (plans up to version 0.1). `true`: ids alone count, and promises of all days. `dated`: of promises
 * to others only those that touch the days of the tour.
 */
const namesPart = keyOfPart({ code: 'names' });
type Way = 'named' | true | 'dated';

/** Key of a part of the inputs -> its hash. */
export type Fingerprint = Readonly<Record<string, string>>;

/**
 * One hash for each part of the inputs that a plan depends on, so that a stale plan can say which part changed. What tours, shows and hangs are called
 * is no part of it: a plan does not grow old by a rename. `then`: a fingerprint that this one is compared with, and is worked out alike.
 */
export function fingerprintOf(file: TourFile, showId: string, then?: Fingerprint): Fingerprint {
  return {
    ...fingerprintWithoutItems(file, showId, then),
    ...fingerprintOfIds(file.items.map((each) => each.id)),
    ...fingerprintOfItems(file.items),
  };
}

/** The parts that are not of single items; `items` of the file are not looked at. */
export function fingerprintWithoutItems(given: TourFile, showId: string, then?: Fingerprint): Fingerprint {
  const way = wayOf(then);
  const written = withoutDesigns(given);
  const file = way === 'named' ? written : withoutNames(written);
  const { tour, catalogue } = file;
  const shown = tour.shows.find((each) => each.id === showId);
  const parts: [InputPart, unknown][] = [
    [{ code: 'tour' }, { ...tour, spares: null, spareTrunk: null, shows: tour.shows.map(({ id, from, to }) => ({ id, from, to })) }],
    [{ code: 'spares' }, { spares: tour.spares, spareTrunk: tour.spareTrunk }],
    [{ code: 'other-shows' }, tour.shows.filter((each) => each.id !== showId).map(withoutLoading)],
    [{ code: 'show' }, shown && { ...withoutLoading(shown), hangs: null }],
    [{ code: 'examination-rules' }, file.examinationRules],
    [{ code: 'load-rules' }, file.loadRules],
    [{ code: 'systems' }, file.systems],
    [{ code: 'bookings' }, (way === 'dated' ? file.bookings.filter((each) => touches(each, tour)) : file.bookings).map(withoutTourId)],
  ];
  if (!isLoadingEmpty(shown?.loading)) parts.push([{ code: 'loading' }, shown!.loading]);
  for (const hang of shown ? wholeHangs(shown) : []) parts.push([{ code: 'hang', id: hang.id }, hang]);
  for (const [of, models] of Object.entries(catalogue))
    for (const model of models) parts.push([{ code: 'model', of, id: model.model }, model]);
  if (way !== 'named') parts.push([{ code: 'names' }, way]);
  return spelledAsThen(hashed(parts), parts, then);
}

/** Before places had codes the United Kingdom was written UK; a plan of that time does not grow old by the code. */
function spelledAsThen(now: Fingerprint, parts: readonly (readonly [InputPart, unknown])[], then?: Fingerprint): Fingerprint {
  if (!then) return now;
  const placed = parts.filter(
    ([part]) => ['tour', 'examination-rules', 'load-rules'].includes(part.code) && then[keyOfPart(part)] !== now[keyOfPart(part)],
  );
  const before = hashed(placed.map(([part, value]) => [part, JSON.parse(canonicalJson(value ?? null).replaceAll('"GB"', '"UK"'))]));
  return { ...now, ...Object.fromEntries(Object.entries(before).filter(([key, hash]) => then[key] === hash)) };
}

function wayOf(then: Fingerprint | undefined): Way {
  const mark = then?.[namesPart];
  if (then !== undefined && mark === undefined) return 'named';
  return mark === textHash(canonicalJson(true)) ? true : 'dated';
}

const withoutTourId = ({ tourId: _tourId, ...promise }: Booking): Omit<Booking, 'tourId'> => promise;

const touches = ({ from, to }: Booking, { prepFrom, returnTo }: TourFile['tour']): boolean => from <= returnTo && to >= prepFrom;

/** Ids alone: a promise is to the id of a tour, or to the name where that is all that is known of it. */
function withoutNames(file: TourFile): TourFile {
  return {
    ...file,
    bookings: file.bookings.map(({ tourId, ...promise }) => ({ ...promise, tour: tourId === undefined ? promise.tour : `id ${tourId}` })),
    tour: {
      ...file.tour,
      name: '',
      shows: file.tour.shows.map((show) => ({ ...show, name: '', hangs: show.hangs.map(({ name: _name, ...hang }) => hang) })),
    },
  };
}

/** A plan is made of the hangs of its shows; which design they came from, and what else that holds, is no part of it. */
function withoutDesigns({ tour, ...file }: TourFile): TourFile {
  const { designs: _designs, ...rest } = tour;
  return { ...file, tour: { ...rest, shows: tour.shows.map(({ design: _design, ...show }) => show) } };
}

export const fingerprintOfIds = (ids: readonly string[]): Fingerprint => hashed([[{ code: 'register' }, [...ids].sort()]]);

/** A part for each item; where it stands and how often it was used are no inputs. */
export const fingerprintOfItems = (items: readonly Item[]): Fingerprint =>
  hashed(items.map(({ stack: _stack, in: _in, uses: _uses, ...item }) => [{ code: 'item', of: item.kind, id: item.id }, item]));

/** Keys that the part of an item may have; one of another kind than before is another part. */
export const partsOfItem = (id: string): string[] => itemKinds.map((of) => keyOfPart({ code: 'item', of, id }));

const hashed = (parts: readonly (readonly [InputPart, unknown])[]): Fingerprint =>
  Object.fromEntries(parts.map(([part, value]) => [keyOfPart(part), textHash(canonicalJson(value ?? null))]));

function withoutLoading({ loading: _loading, ...rest }: Show): Omit<Show, 'loading'> {
  return rest;
}

/** What became of each of these parts, by their keys; those that are as they were are left out. */
export const changesBetween = (then: Fingerprint, now: Fingerprint, keys: Iterable<string>): readonly InputChange[] =>
  [...new Set(keys)].flatMap((key): InputChange[] => {
    const part = partOfKey(key);
    if (!part || then[key] === now[key]) return [];
    return [{ code: now[key] === undefined ? 'gone' : then[key] === undefined ? 'new' : 'changed', part }];
  });

/** The parts of the inputs that are not as they were when the plan was made; empty when it is not stale. */
export function changedInputs(plan: Pick<PackPlan, 'fingerprint' | 'carts' | 'show'>, file: TourFile): readonly InputChange[] {
  const now = fingerprintOf(file, plan.show.id, plan.fingerprint);
  const stacks = new Map(file.items.filter((each) => each.kind === 'cart').map((each) => [each.id, each.stack ?? []]));
  const changes = changesBetween(plan.fingerprint, now, [...Object.keys(plan.fingerprint), ...Object.keys(now)]);
  return withFloor(
    changes,
    floorFits(plan, (cart) => stacks.get(cart) ?? []),
  );
}

/** Changes of the inputs, and that of the floor where the boxes do not stand as the plan knows them. */
export const withFloor = (changes: readonly InputChange[], fits: boolean): readonly InputChange[] =>
  fits ? changes : [...changes, { code: 'floor-differs' }];

/** True while every cart stands as it does at some point of the plan's list: before it, after some of its moves, or after all. */
export function floorFits(plan: Pick<PackPlan, 'carts'>, stackOf: (cart: string) => readonly string[]): boolean {
  const stacks = new Map(plan.carts.floorBefore.carts.map(({ cart, boxes, beneath = [] }) => [cart, [...boxes, ...beneath]]));
  const points = new Map([...stacks].map(([cart, boxes]) => [cart, new Set([boxes.join('\n')])]));
  for (const { box, from, to } of plan.carts.moves) {
    stacks.get(from)?.shift();
    stacks.get(to)?.unshift(box);
    for (const cart of [from, to]) points.get(cart)?.add(stacks.get(cart)!.join('\n'));
  }
  return [...points].every(([cart, wanted]) => wanted.has(stackOf(cart).join('\n')));
}
