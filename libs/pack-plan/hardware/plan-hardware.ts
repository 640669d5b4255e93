import { type HardwareCountLine, type SpareNumber, countHardware, planSpares, verifyHardware, verifySpares } from '#hardware-count';
import { eachDay } from '#kernel';
import { type CartsResult, type HangResult, type HardwareLine, type HardwareResult, checkedBy, mismatchesOf } from '../contract/index.js';
import { tell } from '#words';
import { type PlanInputs, usableItems } from '../inputs/index.js';
import type { ChosenItem } from '../picks/index.js';
import { chainsOf } from './hardware-chain.js';
import { fittedPieces, stayingPieces, travellingPieces } from './hardware-pieces.js';
import { spareLines, trunkResult, weightsOf } from './hardware-spares.js';
import { filedWithBoxes, hardwareLots, outOfUse, pinsKeptWithBoxes } from './hardware-stock.js';

const hardwareCaution =
  'Counts follow from the design and the figures on file. Count by hand before lifting: nothing leaves the ground with a pin missing, and the rigging system’s manual decides which pin goes where.';

/** Everything that is fitted, where each piece travels, the spares beside it, what the stock does not cover, and the chain of every hoist. */
export function planHardware(
  inputs: PlanInputs,
  carts: CartsResult,
  chosen: readonly ChosenItem[],
  hangs: readonly HangResult[],
): HardwareResult {
  const { tour } = inputs.file;
  const fitted = fittedPieces(inputs, carts.loads);
  const wanted = spareLines(inputs, fitted);
  const spares = planSpares(wanted, tour.spareTrunk?.level ?? null);
  const kept = pinsKeptWithBoxes(inputs, carts);
  const input = {
    from: tour.prepFrom,
    to: tour.returnTo,
    fitted,
    travelling: travellingPieces(inputs, carts),
    staying: stayingPieces(inputs, carts),
    lots: hardwareLots(inputs),
    keptAtHome: kept.atHome,
    spares: new Map(spares.lines.map((line) => [line.key, line.spares])),
  };
  const counted = countHardware(input);
  const found = chosen
    .filter((each) => each.item !== null)
    .map(({ item, kind, model, where }) => ({ item: item!, kind, model, where: tell(inputs.words.whereabouts, where), fact: where }));
  const lines = counted.map((line, index) => lineResult(inputs, line, spares.lines[index]!, found));
  return {
    lines,
    trunk: trunkResult(inputs, spares.trunk),
    chains: chainsOf(inputs, chosen, hangs),
    chosen: [...found, ...spareSerials(inputs, lines, found)],
    keptWithBoxes: [...kept.all].flatMap(([model, byModels]) => {
      const onFile = filedWithBoxes(inputs, model);
      return onFile === null || !lines.some((line) => line.model === model) ? [] : [{ model, byModels, onFile }];
    }),
    caution: hardwareCaution,
    ...checkedBy([
      ...mismatchesOf('hardware count', inputs.show.name, verifyHardware(input, counted, eachDay(tour.prepFrom, tour.returnTo))),
      ...mismatchesOf('spares', inputs.show.name, verifySpares(wanted, spares)),
    ]),
  };
}

function lineResult(inputs: PlanInputs, line: HardwareCountLine, spare: SpareNumber, chosen: HardwareResult['chosen']): HardwareLine {
  const { catalogue, tour } = inputs.file;
  const sizes = new Map([...catalogue.pins, ...catalogue.shackles].map((each) => [each.model, each.size ?? null]));
  const isCartPart = /^cart (pole|lid)$/.test(line.item);
  const isSerial = /^(hoist|grid)$/.test(line.item);
  const takenFrom = isCartPart || isSerial ? [] : line.takenFrom;
  const cases = isSerial
    ? chosen.filter((each) => each.model === line.key).map((each) => inputs.items.get(each.item)?.in)
    : takenFrom.map((each) => each.trunk);
  return {
    key: line.key,
    item: line.item,
    model: isCartPart ? line.key.slice(0, line.key.lastIndexOf(', ')) : line.key,
    size: sizes.get(line.key) ?? null,
    fitted: line.fitted,
    withBox: line.withBox,
    withCart: line.withCart,
    loose: line.loose,
    staysInBox: line.staysInBox,
    difference: line.difference,
    trunks: [...new Set(cases.filter((each) => each !== null && each !== undefined))],
    takenFrom,
    carriers: line.carriers,
    spares: line.spares,
    levelWanted: tour.spares.find((each) => each.item === line.key)?.level ?? null,
    levelReached: spare.levelReached,
    pooling: spare.pooling,
    learned: spare.learned,
    weightEach: weightsOf(inputs).get(line.key) ?? null,
    onHand: line.onHand,
    keptAtHome: isCartPart ? 0 : line.keptAtHome,
    missing: line.missing,
    shortOn: line.shortOn,
    outOfUse: outOfUse(inputs, line.key),
    unit: 'pieces',
    working: {
      terms: [
        ...line.terms.map(({ where, count }) => ({ what: where, value: count, unit: 'pieces' })),
        ...(line.staysInBox > 0
          ? [{ what: 'rides with box 1 and is not fitted, the grid brings its own', value: line.staysInBox, unit: 'pieces' }]
          : []),
        ...(spare.mean === null ? [] : [{ what: `losses to expect over ${tour.shows.length} shows`, value: spare.mean, unit: 'pieces' }]),
        ...(spare.learned
          ? [
              { what: 'loss per use believed before counting', value: spare.learned.priorMean, unit: '' },
              { what: 'loss per use with what was counted', value: spare.learned.posteriorMean, unit: '' },
              { what: 'spares by the belief alone', value: spare.learned.sparesByPriorAlone, unit: 'pieces' },
            ]
          : []),
        ...(spare.pooling
          ? [
              { what: 'spares for that level: one stock for all', value: spare.pooling.together, unit: 'pieces' },
              { what: 'spares for that level: a stock for each hang', value: spare.pooling.byHang, unit: 'pieces' },
              { what: 'spares for that level: a stock for each leg', value: spare.pooling.byLeg, unit: 'pieces' },
            ]
          : []),
      ],
      rule: ruleOf(spare, tour.spareTrunk !== undefined),
      source:
        'count per joint and pick as filed with the models; spares: Poisson process of losses (Birolini, Reliability Engineering, ch. 4)',
    },
  };
}

function ruleOf(spare: SpareNumber, hasTrunk: boolean): string {
  if (spare.mean === null) return 'Spares: one joint set for each hang. No losses are on file for this model, so no level is stated.';
  const trunk = hasTrunk ? ' Above that, as many as the level of the whole trunk takes at least mass or cost.' : '';
  return `Spares: the smallest number that suffices at the wanted level, at least one of what stops a show and one joint set for each hang.${trunk} Losses are Poisson, or gamma-Poisson where they were counted; one stock for all hangs and shows.`;
}

const spare = { code: 'spare' } as const;

/** Hoists that travel as spares: in date like the rest, and hung nowhere. */
function spareSerials(inputs: PlanInputs, lines: readonly HardwareLine[], chosen: HardwareResult['chosen']): HardwareResult['chosen'] {
  const taken = new Set(chosen.map((each) => each.item));
  return lines
    .filter((line) => line.item === 'hoist')
    .flatMap((line) =>
      usableItems(inputs, 'hoist', line.model)
        .filter(({ item }) => !taken.has(item.id))
        .slice(0, line.spares)
        .map(({ item }) => ({
          item: item.id,
          kind: 'hoist',
          model: line.model,
          where: inputs.words.whereabouts.spare(spare),
          fact: spare,
        })),
    );
}
