import { type PlainDate, invariant } from '#kernel';
import { type Hang, type Item, type LoadRule, type Show, type TourFile, wholeHangs } from '#tour-file';
import { type Words, english } from '#words';
import { type Availability, judgeAvailability } from './availability.js';

/** Everything the five results are made from, looked up once. */
export interface PlanInputs {
  readonly file: TourFile;
  readonly show: Show;
  readonly hangs: readonly Hang[];
  readonly loadRule: LoadRule;
  readonly availability: ReadonlyMap<string, Availability>;
  readonly items: ReadonlyMap<string, Item>;
  /** What is said of it is said in these words. */
  readonly words: Words;
}

export function gatherInputs(file: TourFile, showId: string, words: Words = english): PlanInputs {
  const show = file.tour.shows.find((each) => each.id === showId);
  invariant(show, `show ${showId} is in the tour`);
  const loadRule = file.loadRules.find((each) => each.id === show.loadRule);
  invariant(loadRule, `load rule ${show.loadRule} is on file`);
  return {
    file,
    show,
    hangs: wholeHangs(show).map((hang) => withPlates(file, hang)),
    loadRule,
    availability: judgeAvailability(file, show.to),
    items: new Map(file.items.map((each) => [each.id, each])),
    words,
  };
}

/** Tilt plates and adapters hang at the grid, beside what the design says hangs there. */
function withPlates({ catalogue }: TourFile, hang: Hang): Hang {
  const plates = (hang.frames ?? []).map((model) => ({ position: 0, massKg: modelOf(catalogue.frames, model).massKg, what: model }));
  return plates.length === 0 ? hang : { ...hang, extras: [...hang.extras, ...plates] };
}

/** The model of that name; the file was read with every reference checked. */
export function modelOf<M extends { readonly model: string }>(models: readonly M[], name: string | undefined): M {
  const found = models.find((each) => each.model === name);
  invariant(found, `model ${name} is on file`);
  return found;
}

/** Serial-numbered items of a kind that may be planned, those in date throughout first, then least used, then by serial. */
export function usableItems(inputs: PlanInputs, kind: Item['kind'], model?: string): readonly Availability[] {
  return [...inputs.availability.values()]
    .filter(
      ({ item, reason }) =>
        item.kind === kind && reason === null && item.count === undefined && (model === undefined || item.model === model),
    )
    .sort((a, b) => rank(a) - rank(b) || (a.item.uses ?? 0) - (b.item.uses ?? 0) || (a.item.id < b.item.id ? -1 : 1));
}

const rank = (each: Availability): number => (each.judgement === null || each.judgement.state === 'in date throughout' ? 0 : 1);

export type DateSpan = { readonly from: PlainDate; readonly to: PlainDate };
