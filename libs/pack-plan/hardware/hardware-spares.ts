import { type LossKnowledge, type SpareLine, type SparesPlan, type TrunkAnswer, planSpares } from '#hardware-count';
import { groupDigits } from '#kernel';
import type { SpareSetting, TourFile } from '#tour-file';
import type { TrunkResult } from '../contract/index.js';
import { type PlanInputs, gatherInputs } from '../inputs/index.js';
import { type HangPieces, fittedInOtherShow, fittedInShow, fullJointSets } from './hardware-pieces.js';

/** Every line that this show fits, as the spares are worked out for it. The period of supply is the whole tour: a piece fitted for one show is one use. */
export function spareLines(inputs: PlanInputs, fitted: readonly HangPieces[]): SpareLine[] {
  const { tour } = inputs.file;
  const legs = tour.shows.map((show) => ({
    leg: show.id,
    fitted: show.id === inputs.show.id ? fitted : fittedInOtherShow(inputs, show.id),
  }));
  const sets = fullJointSets(inputs);
  const weights = weightsOf(inputs);
  return [...new Set(fitted.map((each) => each.key))].map((key): SpareLine => {
    const setting = tour.spares.find((each) => each.item === key);
    return {
      key,
      knowledge: setting ? knowledgeOf(setting) : null,
      level: setting?.level ?? null,
      stopsAShow: setting?.stopsAShow ?? false,
      fullSets: sets.get(key) ?? 0,
      weight: weights.get(key) ?? null,
      cells: legs.flatMap(({ leg, fitted: pieces }) =>
        pieces.filter((each) => each.key === key).map((each) => ({ hang: each.hang, leg, pieceUses: each.count })),
      ),
    };
  });
}

/** The spares of a show as it is designed, whether it has a plan or not. */
export const sparesOfDesign = (file: TourFile, showId: string): SparesPlan =>
  planSpares(spareLines(gatherInputs(file, showId), fittedInShow(file, showId)), file.tour.spareTrunk?.level ?? null);

const knowledgeOf = ({ lossPerUse, prior, counted }: SpareSetting): LossKnowledge =>
  lossPerUse !== undefined ? { lossPerUse } : { prior: prior!, ...(counted ? { counted } : {}) };

/** Mass or cost of one piece of each model that has it on file. */
export function weightsOf(inputs: PlanInputs): ReadonlyMap<string, number> {
  const { catalogue, tour } = inputs.file;
  const byCost = tour.spareTrunk?.least === 'cost';
  const weights = new Map<string, number>();
  for (const each of [
    ...catalogue.pins,
    ...catalogue.shackles,
    ...catalogue.slings,
    ...catalogue.looms,
    ...catalogue.hoists,
    ...catalogue.frames,
    ...catalogue.cells,
    ...catalogue.controls,
    ...catalogue.aids,
  ]) {
    const massKg = 'chainKgPerM' in each ? each.massKg + each.chainKgPerM * each.chainLengthM : each.massKg;
    const weight = byCost ? each.costEach : massKg;
    if (weight !== undefined && weight > 0) weights.set(each.model, weight);
  }
  return weights;
}

export function trunkResult(inputs: PlanInputs, trunk: TrunkAnswer): TrunkResult {
  const least = inputs.file.tour.spareTrunk?.least ?? 'mass';
  const { wanted, level, weight, bound, equalShareWeight, status, unweighed } = trunk;
  const amount = (value: number): string =>
    least === 'cost' ? `a cost of ${groupDigits(Math.round(value))}` : `${value < 10 ? value.toFixed(2) : value.toFixed(1)} kg`;
  const without = unweighed.length === 0 ? '' : ` No ${least} on file for ${unweighed.join(', ')}: each takes an equal share of the level.`;
  const sentence =
    wanted === null
      ? `No level is wanted for the whole trunk: each line has its own. The spares come to ${amount(weight)}.${without}`
      : `Wanted for the whole trunk: ${share(wanted)}. The spares come to ${amount(weight)}; ${
          status === 'optimal' ? 'no choice that reaches the level comes to less' : `none comes to less than ${amount(bound)}`
        }. Equal shares for all lines would come to ${amount(equalShareWeight)}.${without}`;
  return { wanted, least, level, weight, bound, equalShareWeight, status, sentence };
}

const share = (level: number): string => `${Number((level * 100).toFixed(2))} %`;
