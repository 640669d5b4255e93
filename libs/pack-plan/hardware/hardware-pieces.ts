import type { FittedPieces, TravellingPieces } from '#hardware-count';
import { type Hang, type PinUse, type TourFile, hangName, legSteel, wholeHangs } from '#tour-file';
import { wantedLoads } from '../carts/index.js';
import type { CartsResult } from '../contract/index.js';
import { isOurs } from '../picks/index.js';
import { type PlanInputs, framesOf, gatherInputs, modelOf } from '../inputs/index.js';
import { controlOf } from './hoist-control.js';

const travels = { box: 'with its box', cart: 'with its cart', trunk: 'loose' } as const;

/** Fitted pieces with the hang that they belong to. */
export interface HangPieces extends FittedPieces {
  readonly hang: string;
}

interface Load {
  readonly hang: string;
  readonly cartModel: string | null;
}

/** Key of what belongs to a cart and has no model of its own. */
export const cartPart = (model: string, part: 'pole' | 'lid'): string => `${model}, ${part}`;

/** Pins of the joint between grid and box 1: the grid's, and of box 1 those whose role the grid leaves open. */
function topJoint(inputs: PlanInputs, hang: Hang): { pins: readonly PinUse[]; unusedOfBox: readonly PinUse[] } {
  const { catalogue } = inputs.file;
  const ofGrid = modelOf(catalogue.grids, hang.grid).pins;
  const ofBox = hang.boxes[0] ? modelOf(catalogue.boxes, hang.boxes[0].model).pins : [];
  const given = new Set(ofGrid.map((each) => each.role));
  return { pins: [...ofGrid, ...ofBox.filter((each) => !given.has(each.role))], unusedOfBox: ofBox.filter((each) => given.has(each.role)) };
}

/** Pins of every joint of a hang, from the grid down: those of a joint between boxes are the lower box's. */
function jointsOf(inputs: PlanInputs, hang: Hang): { readonly pins: readonly PinUse[]; readonly where: string }[] {
  return [
    { pins: topJoint(inputs, hang).pins, where: 'grid to box 1' },
    ...hang.boxes.slice(1).map((box) => ({ pins: modelOf(inputs.file.catalogue.boxes, box.model).pins, where: 'joints between boxes' })),
  ];
}

/** Hoists, shackles and slings of a hang, one by one: picks, legs of bridles, the pull-back, what holds the hang if a hoist lets go. */
function liftingOf(hang: Hang): { readonly model: string; readonly item: 'hoist' | 'shackle' | 'sling'; readonly where: string }[] {
  const steel = (of: { readonly shackles: readonly string[]; readonly slings: readonly string[] } | undefined, where: string) => [
    ...(of?.shackles ?? []).map((model) => ({ model, item: 'shackle' as const, where })),
    ...(of?.slings ?? []).map((model) => ({ model, item: 'sling' as const, where })),
  ];
  return [
    ...hang.picks
      .filter(isOurs)
      .flatMap((pick) => [
        ...steel(pick, `hole ${pick.hole}`),
        ...(pick.bridle ? legSteel(pick.bridle) : []).flatMap((leg) => steel(leg, `bridle of hole ${pick.hole}`)),
        { model: pick.hoist, item: 'hoist' as const, where: `hole ${pick.hole}` },
      ]),
    ...steel(hang.pullBack, 'pull-back'),
    ...steel(hang.secondary, 'secondary suspension'),
  ];
}

/** What the design fits: pins by joint and role, shackles, slings and a hoist by pick, a grid, and what holds each cart together; a loom for each cart load. */
export function fittedPieces(inputs: PlanInputs, loads: readonly Load[]): HangPieces[] {
  const pieces: HangPieces[] = [];
  const names = new Map(inputs.hangs.map((each) => [each.id, hangName(each)]));
  const addTo = (hang: string) => (key: string, item: string, count: number, where: string) =>
    pieces.push({ key, item, count, where: `${names.get(hang) ?? hang}, ${where}`, hang });
  for (const hang of inputs.hangs) {
    const add = addTo(hang.id);
    for (const { pins, where } of jointsOf(inputs, hang)) for (const each of pins) add(each.pin, `${each.role} pin`, each.count, where);
    for (const { model, item, where } of liftingOf(hang)) add(model, item, 1, where);
    add(hang.grid!, 'grid', 1, 'grid');
    for (const { model, where } of framesOf(inputs, hang)) {
      add(model.model, 'frame', 1, where);
      for (const each of model.pins) add(each.pin, `${each.role} pin`, each.count, `frames, ${where}`);
    }
  }
  for (const { model, item, count, where, hang } of controlOf(inputs)) pieces.push({ key: model, item, count, where, hang });
  for (const { hang, cartModel } of loads) {
    const add = addTo(hang);
    const loom = inputs.hangs.find((each) => each.id === hang)?.loom;
    if (loom !== undefined) add(loom, 'loom', 1, 'cart loads');
    if (cartModel === null) continue;
    const cart = modelOf(inputs.file.catalogue.carts, cartModel);
    if (cart.basePins) add(cart.basePins.pin, 'cart base pin', cart.basePins.count, 'carts');
    if (cart.poles > 0) add(cartPart(cartModel, 'pole'), 'cart pole', cart.poles, 'carts');
    if (cart.lids > 0) add(cartPart(cartModel, 'lid'), 'cart lid', cart.lids, 'carts');
  }
  return pieces;
}

/** What rolls out: every planned box with its pins, every planned cart with its own, and loose what no box or cart brings. */
export function travellingPieces(inputs: PlanInputs, carts: CartsResult): TravellingPieces[] {
  const { catalogue } = inputs.file;
  const pieces: TravellingPieces[] = [];
  for (const load of carts.loads) {
    const with_ = { load: load.id, cart: load.cart };
    for (const box of load.boxes) {
      if (box.serial === null) continue;
      for (const each of modelOf(catalogue.boxes, box.model).pins)
        if (each.stowed !== 'trunk') pieces.push({ key: each.pin, count: each.count, travels: travels[each.stowed], ...with_ });
    }
    if (load.cartModel === null) continue;
    const cart = modelOf(catalogue.carts, load.cartModel);
    const add = (key: string, count: number) => pieces.push({ key, count, travels: 'with its cart', ...with_ });
    if (cart.basePins) add(cart.basePins.pin, cart.basePins.count);
    if (cart.poles > 0) add(cartPart(load.cartModel, 'pole'), cart.poles);
    if (cart.lids > 0) add(cartPart(load.cartModel, 'lid'), cart.lids);
  }
  const apart = { load: null, cart: null };
  for (const hang of inputs.hangs) {
    const ofGrid = modelOf(catalogue.grids, hang.grid).pins;
    for (const { pins } of jointsOf(inputs, hang))
      for (const each of pins)
        if (each.stowed === 'trunk' || ofGrid.includes(each))
          pieces.push({ key: each.pin, count: each.count, travels: travels[each.stowed], ...apart });
    for (const { model } of liftingOf(hang)) pieces.push({ key: model, count: 1, travels: 'loose', ...apart });
    pieces.push({ key: hang.grid!, count: 1, travels: 'loose', ...apart });
    for (const { model, position } of framesOf(inputs, hang)) {
      const load = model.onCartMm === undefined ? undefined : loadOf(carts, hang, position);
      const by = load === undefined ? ({ travels: 'loose', ...apart } as const) : carriedBy(load);
      pieces.push({ key: model.model, count: 1, ...by });
      for (const each of model.pins)
        pieces.push({ key: each.pin, count: each.count, ...(each.stowed === 'trunk' ? { travels: 'loose', ...apart } : by) });
    }
  }
  for (const { model, count } of controlOf(inputs)) pieces.push({ key: model, count, travels: 'loose', ...apart });
  for (const load of carts.loads) {
    const loom = inputs.hangs.find((each) => each.id === load.hang)?.loom;
    if (loom !== undefined) pieces.push({ key: loom, count: 1, travels: 'loose', ...apart });
  }
  return pieces;
}

const carriedBy = ({ id, cart }: { readonly id: string; readonly cart: string | null }) =>
  ({ travels: 'with its cart', load: id, cart }) as const;

/** The cart load that holds the box of a position. */
const loadOf = (carts: CartsResult, hang: Hang, position: number | null) =>
  carts.loads.find((load) => load.hang === hang.id && load.cart !== null && load.boxes.some((box) => box.position === position));

/** Pins that ride with a box 1 whose grid brings its own. */
export function stayingPieces(inputs: PlanInputs, carts: CartsResult): FittedPieces[] {
  return inputs.hangs.flatMap((hang) => {
    const rides = carts.loads.some((load) => load.hang === hang.id && load.boxes.some((box) => box.position === 1 && box.serial !== null));
    return (rides ? topJoint(inputs, hang).unusedOfBox : [])
      .filter((each) => each.stowed !== 'trunk')
      .map((each) => ({ key: each.pin, item: `${each.role} pin`, count: each.count, where: `${hangName(hang)}, box 1` }));
  });
}

/** Pieces of one whole joint of every hang, by pin model: of each hang the joint that takes most of that pin. */
export function fullJointSets(inputs: PlanInputs): ReadonlyMap<string, number> {
  const sets = new Map<string, number>();
  for (const hang of inputs.hangs) {
    const most = new Map<string, number>();
    for (const { pins } of [...jointsOf(inputs, hang), ...framesOf(inputs, hang).map(({ model }) => model)]) {
      const here = new Map<string, number>();
      for (const each of pins) here.set(each.pin, (here.get(each.pin) ?? 0) + each.count);
      for (const [pin, count] of here) most.set(pin, Math.max(count, most.get(pin) ?? 0));
    }
    for (const [pin, count] of most) sets.set(pin, (sets.get(pin) ?? 0) + count);
  }
  return sets;
}

/** What a show of the tour fits, whether it has a plan or not: cart loads as they are cut, each on the cart that the depot has most of. */
export function fittedInShow(file: TourFile, showId: string): HangPieces[] {
  return fittedAsDesigned(gatherInputs(file, showId));
}

/** The same for another show of the tour of these inputs. */
export function fittedInOtherShow(inputs: PlanInputs, showId: string): HangPieces[] {
  const show = inputs.file.tour.shows.find((each) => each.id === showId)!;
  return fittedAsDesigned({ ...inputs, show, hangs: wholeHangs(show) });
}

function fittedAsDesigned(inputs: PlanInputs): HangPieces[] {
  const cartModel = usualCart(inputs.file);
  return fittedPieces(
    inputs,
    wantedLoads(inputs).map((load) => ({ hang: load.hang.id, cartModel })),
  );
}

function usualCart(file: TourFile): string | null {
  const tally = new Map<string, number>();
  for (const item of file.items) if (item.kind === 'cart') tally.set(item.model, (tally.get(item.model) ?? 0) + 1);
  return [...tally].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1))[0]?.[0] ?? null;
}
