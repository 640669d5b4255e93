import { tailsOfLosses, meanLosses, smallestSpares } from './loss-model.js';
import { type SparesCase, lossModelOf } from './spares-case.js';

type SpareLine = SparesCase['lines'][number];

/** One use of loose hardware: how many of a model, in which role, where it is fitted and how it travels. */
export interface HardwareUse {
  readonly model: string;
  /** "front link pin", "bow shackle", "sling" ... */
  readonly item: string;
  readonly count: number;
  readonly travels: 'with its box' | 'with its cart' | 'loose';
  /** What it is fitted to, for the working: "joint 1 of Main left". */
  readonly where: string;
}

export interface HardwareInput {
  readonly uses: readonly HardwareUse[];
  /** Lots that may be used on the dates, with the trunk that they lie in. */
  readonly stock: readonly { readonly id: string; readonly model: string; readonly count: number; readonly trunk: string | null }[];
  /** How the losses of a model are known and the level wanted; a model without one gets the least that its kind asks for. */
  readonly spares: readonly {
    readonly model: string;
    readonly lossPerUse?: number;
    readonly prior?: SpareLine['prior'];
    readonly counted?: SpareLine['counted'];
    readonly level: number;
    readonly stopsAShow: boolean;
  }[];
  /** How often each fitted piece is used over the supply period: the number of shows. */
  readonly usesEach: number;
  /** The pieces of one whole joint, by model: spares hold at least one such set for each hang. */
  readonly jointSet: ReadonlyMap<string, number>;
  readonly hangs: number;
}

export interface HardwareCountLine {
  readonly item: string;
  readonly model: string;
  readonly fitted: number;
  readonly withBox: number;
  readonly withCart: number;
  readonly loose: number;
  readonly spares: number;
  /** Chance that the spares suffice; null where no losses are on file. */
  readonly levelReached: number | null;
  readonly mean: number | null;
  readonly onHand: number;
  /** What fitted pieces and spares need beyond the stock. */
  readonly missing: number;
  readonly trunks: readonly string[];
  readonly terms: readonly { readonly where: string; readonly count: number }[];
}

export interface HardwareCount {
  readonly lines: readonly HardwareCountLine[];
  /** Chance that no line with known losses runs short, lines taken as independent; null where none has. */
  readonly trunkLevel: number | null;
}

/** Counts what is fitted, by model: where each piece travels, the spares beside it and what the stock does not cover. A spare never counts as fitted. */
export function countHardware(input: HardwareInput): HardwareCount {
  const models = [...new Set(input.uses.map((use) => use.model))];
  const lines = models.map((model) => countLine(input, model));
  const levels = lines.map((line) => line.levelReached).filter((each) => each !== null);
  return { lines, trunkLevel: levels.length > 0 ? levels.reduce((product, each) => product * each, 1) : null };
}

function countLine(input: HardwareInput, model: string): HardwareCountLine {
  const uses = input.uses.filter((use) => use.model === model);
  const fitted = sum(uses, () => true);
  const stock = input.stock.filter((lot) => lot.model === model);
  const onHand = stock.reduce((total, lot) => total + lot.count, 0);
  const setting = input.spares.find((each) => each.model === model);
  const spares = sparesOf(input, model, fitted, setting);
  return {
    item: [...new Set(uses.map((use) => use.item))].join(', '),
    model,
    fitted,
    withBox: sum(uses, (use) => use.travels === 'with its box'),
    withCart: sum(uses, (use) => use.travels === 'with its cart'),
    loose: sum(uses, (use) => use.travels === 'loose'),
    ...spares,
    onHand,
    missing: Math.max(0, fitted + spares.spares - onHand),
    trunks: [...new Set(stock.flatMap((lot) => (lot.trunk === null ? [] : [lot.trunk])))],
    terms: termsOf(uses),
  };
}

function sparesOf(
  { usesEach, jointSet, hangs }: HardwareInput,
  model: string,
  fitted: number,
  setting: HardwareInput['spares'][number] | undefined,
): Pick<HardwareCountLine, 'spares' | 'levelReached' | 'mean'> {
  const fullJoints = (jointSet.get(model) ?? 0) * hangs;
  if (!setting) return { spares: fullJoints, levelReached: null, mean: null };
  const { stopsAShow, model: item, ...line } = setting;
  const losses = lossModelOf({ ...line, item, installed: fitted, uses: usesEach });
  const spares = Math.max(smallestSpares(losses, setting.level).spares, fullJoints, stopsAShow ? 1 : 0);
  return { spares, levelReached: tailsOfLosses(losses, spares).atMost, mean: meanLosses(losses) };
}

const sum = (uses: readonly HardwareUse[], counts: (use: HardwareUse) => boolean): number =>
  uses.reduce((total, use) => total + (counts(use) ? use.count : 0), 0);

function termsOf(uses: readonly HardwareUse[]): { where: string; count: number }[] {
  const terms = new Map<string, number>();
  for (const { where, count } of uses) terms.set(where, (terms.get(where) ?? 0) + count);
  return [...terms].map(([where, count]) => ({ where, count }));
}
