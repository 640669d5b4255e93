import { canonicalJson, textHash } from '#kernel';
import type { Show, TourFile } from '#tour-file';
import { isLoadingEmpty, wholeHangs } from '#tour-file';
import type { PackPlan } from '../contract/index.js';

export const loadingPart = 'the loading wishes of the show';

/** One hash for each part of the inputs that a plan depends on, so that a stale plan can say which part changed. */
export function fingerprintOf(file: TourFile, showId: string): Readonly<Record<string, string>> {
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
    'promises to other tours': file.bookings,
    'which items are on file': file.items.map((each) => each.id).sort(),
  };
  if (!isLoadingEmpty(show?.loading)) parts[loadingPart] = show!.loading;
  for (const hang of show ? wholeHangs(show) : []) parts[`the hang ${hang.id}`] = hang;
  for (const [kind, models] of Object.entries(catalogue)) for (const model of models) parts[`the model ${model.model} (${kind})`] = model;
  for (const { stack: _stack, in: _in, uses: _uses, ...item } of file.items) parts[`${item.kind} ${item.id}`] = item;
  return Object.fromEntries(Object.entries(parts).map(([key, value]) => [key, textHash(canonicalJson(value ?? null))]));
}

function withoutLoading({ loading: _loading, ...rest }: Show): Omit<Show, 'loading'> {
  return rest;
}

/** The parts of the inputs that are not as they were when the plan was made; empty when it is not stale. */
export function changedInputs(plan: Pick<PackPlan, 'fingerprint' | 'carts' | 'show'>, file: TourFile): readonly string[] {
  const now = fingerprintOf(file, plan.show.id);
  const keys = new Set([...Object.keys(plan.fingerprint), ...Object.keys(now)]);
  const changed = [...keys].filter((key) => plan.fingerprint[key] !== now[key]).map((key) => describeChange(key, plan.fingerprint, now));
  return floorFits(plan, file) ? changed : [...changed, 'the boxes stand on the carts as they do at no point of the list of moves'];
}

function describeChange(key: string, then: Readonly<Record<string, string>>, now: Readonly<Record<string, string>>): string {
  if (now[key] === undefined) return `${key} is no longer on file`;
  const many =
    /^(the other shows|the dates|the spares|the examination rules|the load rules|the rigging systems|promises|which items|the venue|the loading wishes)/.test(
      key,
    );
  return then[key] === undefined ? `${key} ${many ? 'are' : 'is'} new` : `${key} ${many ? 'have' : 'has'} changed`;
}

/** True while every cart stands as it does at some point of the plan's list: before it, after some of its moves, or after all. */
function floorFits(plan: Pick<PackPlan, 'carts'>, file: TourFile): boolean {
  const now = new Map(file.items.filter((each) => each.kind === 'cart').map((each) => [each.id, (each.stack ?? []).join('\n')]));
  const stacks = new Map(plan.carts.floorBefore.carts.map(({ cart, boxes }) => [cart, [...boxes]]));
  const points = new Map([...stacks].map(([cart, boxes]) => [cart, new Set([boxes.join('\n')])]));
  for (const { box, from, to } of plan.carts.moves) {
    stacks.get(from)?.shift();
    stacks.get(to)?.unshift(box);
    for (const cart of [from, to]) points.get(cart)?.add(stacks.get(cart)!.join('\n'));
  }
  return [...points].every(([cart, wanted]) => wanted.has(now.get(cart) ?? ''));
}
