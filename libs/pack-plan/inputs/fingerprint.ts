import { canonicalJson, textHash } from '#kernel';
import type { Item, Show, TourFile } from '#tour-file';
import { isLoadingEmpty, itemKinds, wholeHangs } from '#tour-file';
import type { PackPlan } from '../contract/index.js';

export const loadingPart = 'the loading wishes of the show';

export const itemsPart = 'which items are on file';

/** Part of the inputs -> its hash. */
export type Fingerprint = Readonly<Record<string, string>>;

/** One hash for each part of the inputs that a plan depends on, so that a stale plan can say which part changed. */
export function fingerprintOf(file: TourFile, showId: string): Fingerprint {
  return {
    ...fingerprintWithoutItems(file, showId),
    ...fingerprintOfIds(file.items.map((each) => each.id)),
    ...fingerprintOfItems(file.items),
  };
}

/** The parts that are not of single items; `items` of the file are not looked at. */
export function fingerprintWithoutItems(file: TourFile, showId: string): Fingerprint {
  const { tour, catalogue } = file;
  const show = tour.shows.find((each) => each.id === showId);
  const parts: Record<string, unknown> = {
    'the dates, trucks and freight of the tour': {
      ...tour,
      spares: null,
      spareTrunk: null,
      shows: tour.shows.map(({ id, from, to }) => ({ id, from, to })),
    },
    'the spares wanted and the losses counted': { spares: tour.spares, spareTrunk: tour.spareTrunk },
    'the other shows of the tour': tour.shows.filter((each) => each.id !== showId).map(withoutLoading),
    'the venue, dates and rule of the show': show && { ...withoutLoading(show), hangs: null },
    'the examination rules': file.examinationRules,
    'the load rules': file.loadRules,
    'the rigging systems': file.systems,
    'promises to other tours': file.bookings.map(({ tourId: _tourId, ...promise }) => promise),
  };
  if (!isLoadingEmpty(show?.loading)) parts[loadingPart] = show!.loading;
  for (const hang of show ? wholeHangs(show) : []) parts[`the hang ${hang.id}`] = hang;
  for (const [kind, models] of Object.entries(catalogue)) for (const model of models) parts[`the model ${model.model} (${kind})`] = model;
  return hashed(parts);
}

export const fingerprintOfIds = (ids: readonly string[]): Fingerprint => hashed({ [itemsPart]: [...ids].sort() });

/** A part for each item; where it stands and how often it was used are no inputs. */
export function fingerprintOfItems(items: readonly Item[]): Fingerprint {
  const parts: Record<string, unknown> = {};
  for (const { stack: _stack, in: _in, uses: _uses, ...item } of items) parts[`${item.kind} ${item.id}`] = item;
  return hashed(parts);
}

/** The names that the part of an item may have; one of another kind than before is another part. */
export const partsOfItem = (id: string): string[] => itemKinds.map((kind) => `${kind} ${id}`);

const hashed = (parts: Record<string, unknown>): Fingerprint =>
  Object.fromEntries(Object.entries(parts).map(([key, value]) => [key, textHash(canonicalJson(value ?? null))]));

function withoutLoading({ loading: _loading, ...rest }: Show): Omit<Show, 'loading'> {
  return rest;
}

export type InputChange = 'new' | 'gone' | 'changed';

/** What became of each of these parts; those that are as they were are left out. */
export function changesBetween(
  then: Fingerprint,
  now: Fingerprint,
  parts: Iterable<string>,
): (readonly [part: string, change: InputChange])[] {
  return [...new Set(parts)].flatMap((part) =>
    then[part] === now[part] ? [] : [[part, now[part] === undefined ? 'gone' : then[part] === undefined ? 'new' : 'changed'] as const],
  );
}

/** The parts of the inputs that are not as they were when the plan was made; empty when it is not stale. */
export function changedInputs(plan: Pick<PackPlan, 'fingerprint' | 'carts' | 'show'>, file: TourFile): readonly string[] {
  const now = fingerprintOf(file, plan.show.id);
  const stacks = new Map(file.items.filter((each) => each.kind === 'cart').map((each) => [each.id, each.stack ?? []]));
  return inputChangeSentences(
    changesBetween(plan.fingerprint, now, [...Object.keys(plan.fingerprint), ...Object.keys(now)]),
    floorFits(plan, (cart) => stacks.get(cart) ?? []),
  );
}

export function inputChangeSentences(changes: readonly (readonly [part: string, change: InputChange])[], fits: boolean): readonly string[] {
  const sentences = changes.map(([part, change]) => describeChange(part, change));
  return fits ? sentences : [...sentences, 'the boxes stand on the carts as they do at no point of the list of moves'];
}

function describeChange(part: string, change: InputChange): string {
  if (change === 'gone') return `${part} is no longer on file`;
  const many =
    /^(the other shows|the dates|the spares|the examination rules|the load rules|the rigging systems|promises|which items|the venue|the loading wishes)/.test(
      part,
    );
  return change === 'new' ? `${part} ${many ? 'are' : 'is'} new` : `${part} ${many ? 'have' : 'has'} changed`;
}

/** True while every cart stands as it does at some point of the plan's list: before it, after some of its moves, or after all. */
export function floorFits(plan: Pick<PackPlan, 'carts'>, stackOf: (cart: string) => readonly string[]): boolean {
  const stacks = new Map(plan.carts.floorBefore.carts.map(({ cart, boxes }) => [cart, [...boxes]]));
  const points = new Map([...stacks].map(([cart, boxes]) => [cart, new Set([boxes.join('\n')])]));
  for (const { box, from, to } of plan.carts.moves) {
    stacks.get(from)?.shift();
    stacks.get(to)?.unshift(box);
    for (const cart of [from, to]) points.get(cart)?.add(stacks.get(cart)!.join('\n'));
  }
  return [...points].every(([cart, wanted]) => wanted.has(stackOf(cart).join('\n')));
}
