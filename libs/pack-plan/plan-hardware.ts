import { type HardwareUse, countHardware } from '#hardware-count';
import type { PinUse } from '#tour-file';
import { cartModel } from './allocation-case.js';
import { type ChosenItem, usableBatches } from './chosen-items.js';
import type { CartsResult, HardwareResult } from './plan.js';
import { type PlanInputs, modelOf } from './plan-inputs.js';

const hardwareCaution =
  'Counts follow from the design and the figures on file. Count by hand before lifting: nothing leaves the ground with a pin missing, and the rigging system’s manual decides which pin goes where.';

const travels = { box: 'with its box', cart: 'with its cart', trunk: 'loose' } as const;

/** What every hang takes, piece by piece: pins by joint and role, shackles and slings by pick, base pins by cart, a loom for each cart load. */
function hardwareUses(inputs: PlanInputs, carts: CartsResult): readonly HardwareUse[] {
  const { catalogue } = inputs.file;
  const uses: HardwareUse[] = [];
  const addPins = (pins: readonly PinUse[], where: string) => {
    for (const each of pins)
      uses.push({ model: each.pin, item: `${each.role} pin`, count: each.count, travels: travels[each.stowed], where });
  };
  for (const hang of inputs.hangs) {
    addPins(modelOf(catalogue.grids, hang.grid).pins, `${hang.id}, grid to box 1`);
    // The pins of a joint between boxes are those of the box below it.
    for (const box of hang.boxes.slice(1)) addPins(modelOf(catalogue.boxes, box.model).pins, `${hang.id}, joints between boxes`);
    for (const pick of hang.picks) {
      for (const model of pick.shackles)
        uses.push({ model, item: 'shackle', count: 1, travels: 'loose', where: `${hang.id}, hole ${pick.hole}` });
      for (const model of pick.slings)
        uses.push({ model, item: 'sling', count: 1, travels: 'loose', where: `${hang.id}, hole ${pick.hole}` });
    }
  }
  for (const load of carts.loads) {
    const cart = load.cartModel === null ? undefined : cartModel(inputs, load.cartModel);
    if (cart?.basePins)
      uses.push({
        model: cart.basePins.pin,
        item: 'cart base pin',
        count: cart.basePins.count,
        travels: 'with its cart',
        where: `${load.hang}, carts`,
      });
    const loom = inputs.hangs.find((each) => each.id === load.hang)?.loom;
    if (loom !== undefined) uses.push({ model: loom, item: 'loom', count: 1, travels: 'loose', where: `${load.hang}, cart loads` });
  }
  return uses;
}

export function planHardware(inputs: PlanInputs, carts: CartsResult, chosen: readonly ChosenItem[]): HardwareResult {
  const { catalogue, tour } = inputs.file;
  const uses = hardwareUses(inputs, carts);
  const models = [...new Set(uses.map((use) => use.model))];
  const batches = models.flatMap((model) => usableBatches(inputs, model).map((lot) => ({ ...lot, model })));
  const jointSet = new Map<string, number>();
  const first = inputs.hangs[0];
  for (const pin of first ? modelOf(catalogue.grids, first.grid).pins : []) jointSet.set(pin.pin, (jointSet.get(pin.pin) ?? 0) + pin.count);
  const counted = countHardware({
    uses,
    stock: batches.map(({ id, model, count, trunk }) => ({ id, model, count, trunk })),
    spares: tour.spares.map(({ item, ...setting }) => ({ model: item, ...setting })),
    usesEach: tour.shows.length,
    jointSet,
    hangs: inputs.hangs.length,
  });
  const sizes = new Map([...catalogue.pins, ...catalogue.shackles].map((each) => [each.model, each.size ?? null]));
  return {
    lines: counted.lines.map((line) => ({
      key: line.model,
      item: line.item,
      model: line.model,
      size: sizes.get(line.model) ?? null,
      fitted: line.fitted,
      withBox: line.withBox,
      withCart: line.withCart,
      loose: line.loose,
      trunks: line.trunks,
      spares: line.spares,
      levelReached: line.levelReached,
      onHand: line.onHand,
      missing: line.missing,
      unit: 'pieces',
      working: {
        terms: [
          ...line.terms.map(({ where, count }) => ({ what: where, value: count, unit: 'pieces' })),
          ...(line.mean === null ? [] : [{ what: `losses to expect over ${tour.shows.length} shows`, value: line.mean, unit: 'pieces' }]),
        ],
        rule:
          line.mean === null
            ? 'Spares: one joint set for each hang. No losses are on file for this model, so no level is stated.'
            : 'Spares: the smallest number that suffices at the wanted level, at least one of what stops a show and one joint set for each hang. Losses are Poisson, or gamma-Poisson where they were counted.',
        source:
          'count per joint and pick as filed with the models; spares: Poisson process of losses (Birolini, Reliability Engineering, ch. 4)',
      },
    })),
    trunkLevel: counted.trunkLevel,
    chosen: chosen
      .filter((each) => each.item !== null)
      .map((each) => ({ item: each.item!, kind: each.kind, model: each.model, where: each.where })),
    caution: hardwareCaution,
  };
}
