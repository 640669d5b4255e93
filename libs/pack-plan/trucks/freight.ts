import type { CaseModel } from '#tour-file';
import type { FreightFact, LoadBreach, ReasonAgainst } from '#trade';
import { type Words, breachOf } from '#words';
import { cartModel } from '../carts/index.js';
import type { CartsResult } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';

/** One thing on wheels that has to go into a truck, in the words of the loader and in the numbers of the packing engine. */
export interface FreightPiece {
  readonly id: string;
  readonly label: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly massKg: number;
  readonly mayTurn: boolean;
  readonly floorOnly: boolean;
  readonly maxOnTopKg: number;
  readonly firstOff: number;
  /** A hang by its id, or a purpose. */
  readonly group: string;
  readonly groupName: string;
  /** Travels, but must not fly. */
  readonly tag: string | null;
  readonly fact: FreightFact;
}

/** What people call it: "Main left, 1st cart (K01)"; a truck or an unknown id by its id. */
export function freightName(freight: ReadonlyMap<string, FreightPiece>, id: string): string {
  const piece = freight.get(id);
  if (piece === undefined) return id;
  return piece.fact.isCase ? piece.label : `${piece.label} (${id})`;
}

/** A rule that the load checker found broken, as it is told at the dock. */
export const breachSentence = (words: Words, freight: ReadonlyMap<string, FreightPiece>, breach: LoadBreach): string =>
  `${freightName(freight, breach.subject)}: ${breachOf(words.breaches, breach)}.`;

type Purpose = CaseModel['purpose'];
/**
 * What the riggers need first stands nearest the door (common practice of the trade, no published source): hoists with control and steel, grids, then what the
 * first carts want as soon as they hang, looms, amplifiers and mains, then the first carts, the second carts and so on. What is on one line comes off together.
 */
const beforeCarts: readonly (readonly Purpose[])[] = [['hoists', 'hardware'], ['grids'], ['cable', 'amplifiers']];
const groupNames: Record<Purpose, string> = {
  hoists: 'Hoists',
  hardware: 'Hardware',
  grids: 'Grids',
  cable: 'Cable',
  amplifiers: 'Amplifiers',
  other: 'Other cases',
};

/** Carts of the show, cases of the tour and what was taken along at the dock, each with its place in the unloading order. */
export function freightOf(inputs: PlanInputs, carts: CartsResult): readonly FreightPiece[] {
  return atItsEnd(inputs, usualFreight(inputs, carts));
}

/** What the show wants at the door comes off before all else, what it wants at the nose after all else. */
function atItsEnd(inputs: PlanInputs, freight: readonly FreightPiece[]): readonly FreightPiece[] {
  const ends = new Map(inputs.show.loading?.ends.map((each) => [each.group, each.end]));
  const last = Math.max(0, ...freight.map((each) => each.firstOff));
  return freight.map((each) => {
    const end = ends.get(each.group);
    return end === undefined ? each : { ...each, firstOff: end === 'door' ? 0 : last + 1 };
  });
}

/** Cases of the tour, and those taken along at the dock that are on the register. */
function casesOf(inputs: PlanInputs): readonly { readonly case: string; readonly firstOff?: number | undefined }[] {
  const listed = new Set(inputs.file.tour.freight.map((each) => each.case));
  const taken = inputs.show.loading?.taken ?? [];
  return [...inputs.file.tour.freight, ...taken.filter((each) => !listed.has(each.case) && inputs.items.get(each.case)?.kind === 'case')];
}

function usualFreight(inputs: PlanInputs, carts: CartsResult): readonly FreightPiece[] {
  const waves = [...new Set(inputs.hangs.map((each) => each.goesUp))].sort((a, b) => a - b);
  const deepest = Math.max(1, ...carts.loads.map((each) => each.of));
  const firstCart = beforeCarts.length;
  const cartPieces = carts.loads
    .filter((load) => load.cart !== null)
    .map((load): FreightPiece => {
      const model = cartModel(inputs, load.cartModel!);
      const wave = waves.indexOf(inputs.hangs.find((each) => each.id === load.hang)!.goesUp);
      const held = load.boxes.filter((each) => each.serial !== null).length;
      return {
        id: load.cart!,
        label: `${load.hangName}, ${ordinal(load.number)} cart`,
        ...sizeOf(model),
        heightMm: model.heightsMm[held]! + (load.frames ?? []).reduce((sum, each) => sum + each.onCartMm, 0),
        massKg: load.massKg,
        firstOff: firstCart + wave * deepest + load.number,
        group: load.hang,
        groupName: load.hangName,
        tag: null,
        fact: { isCase: false, inside: [] },
      };
    });
  const lastCart = firstCart + waves.length * deepest;
  const casePieces = casesOf(inputs).map((each): FreightPiece => {
    const item = inputs.items.get(each.case)!;
    const model = modelOf(inputs.file.catalogue.cases, item.model);
    const before = beforeCarts.findIndex((each) => each.includes(model.purpose));
    const inside = contentsOf(inputs, item.id).flatMap(({ id }) => {
      const why = barring(inputs, id);
      return why && outOfService.includes(why.code) ? [id] : [];
    });
    const against = barring(inputs, item.id);
    return {
      id: item.id,
      label: `${model.model} ${item.id}`,
      ...sizeOf(model),
      heightMm: model.heightMm,
      massKg: model.massKg + (item.contentsKg ?? 0) + contentsMassKg(inputs, item.id),
      firstOff: each.firstOff ?? (before >= 0 ? before + 1 : lastCart + 1),
      group: groupNames[model.purpose],
      groupName: groupNames[model.purpose],
      tag: inside.length > 0 ? inputs.words.tag(inside) : null,
      fact: { isCase: true, inside, ...(against === null ? {} : { against }) },
    };
  });
  return [...casePieces, ...cartPieces];
}

const sizeOf = (model: { lengthMm: number; widthMm: number; mayTurn: boolean; floorOnly: boolean; maxOnTopKg: number }) => ({
  lengthMm: model.lengthMm,
  widthMm: model.widthMm,
  mayTurn: model.mayTurn,
  floorOnly: model.floorOnly,
  maxOnTopKg: model.maxOnTopKg,
});

/** What the gate says against an item by its state and its records; where it is and who else holds it is no matter of the gate. */
function barring(inputs: PlanInputs, id: string): ReasonAgainst | null {
  const { reason = null, judgement = null } = inputs.availability.get(id) ?? {};
  if (reason !== null && reason.code !== 'other-depot' && reason.code !== 'promised') return reason;
  return judgement?.state === 'failed' || judgement?.state === 'blocked' ? { code: judgement.state } : null;
}

const outOfService: readonly ReasonAgainst['code'][] = ['state', 'failed', 'blocked', 'not-accepted', 'paper-missing', 'given-back'];

const contentsOf = (inputs: PlanInputs, id: string) => inputs.file.items.filter((each) => each.in === id);

/** Mass of the items on file that lie in a case: hoists with their chain, grids, slings, shackles, pins, looms, frames, cells, control, chain bags and tag lines. */
function contentsMassKg(inputs: PlanInputs, id: string): number {
  const { catalogue } = inputs.file;
  return contentsOf(inputs, id).reduce((sum, item) => {
    const count = item.count ?? 1;
    switch (item.kind) {
      case 'hoist': {
        const model = modelOf(catalogue.hoists, item.model);
        return sum + model.massKg + model.chainKgPerM * model.chainLengthM;
      }
      case 'grid':
        return sum + modelOf(catalogue.grids, item.model).massKg;
      case 'shackle':
        return sum + count * modelOf(catalogue.shackles, item.model).massKg;
      case 'sling':
        return sum + count * modelOf(catalogue.slings, item.model).massKg;
      case 'pin':
        return sum + count * modelOf(catalogue.pins, item.model).massKg;
      case 'loom':
        return sum + count * modelOf(catalogue.looms, item.model).massKg;
      case 'frame':
        return sum + count * modelOf(catalogue.frames, item.model).massKg;
      case 'cell':
        return sum + count * modelOf(catalogue.cells, item.model).massKg;
      case 'control':
        return sum + count * modelOf(catalogue.controls, item.model).massKg;
      case 'aid':
        return sum + count * modelOf(catalogue.aids, item.model).massKg;
      default:
        return sum;
    }
  }, 0);
}

function ordinal(n: number): string {
  const tail = n % 100 >= 11 && n % 100 <= 13 ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${n}${tail}`;
}
