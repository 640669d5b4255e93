import { type Tour, type TourClash, mergeTours } from '#tour-file';
import { Refused } from '../../../platform/refused.js';

/** A tour as it was read. */
export interface ReadTour {
  readonly version: number;
  readonly tour: Tour;
}

/** Where tours are read and saved: the house, or one in a test. */
export interface TourStore {
  read(id: string): Promise<ReadTour>;
  save(tour: Tour, expectedVersion: number): Promise<ReadTour>;
}

/** Two people gave the same field different values: both are told, and what is on file now. */
export class Clashed extends Refused {
  constructor(
    readonly clashes: readonly TourClash[],
    readonly now: ReadTour,
  ) {
    super('Somebody else saved the same meanwhile.', 'bad input', {
      faults: clashes.map(({ path, yours, onFile }) => ({
        field: `tour.${path}`,
        value: yours,
        wanted: `your word on it: ${shown(onFile)} was saved meanwhile by somebody else. Save once more to put yours in its place, or take theirs`,
      })),
    });
  }
}

const shown = (value: unknown): string =>
  value === null ? 'nothing' : typeof value === 'string' ? `“${value}”` : JSON.stringify(value).slice(0, 120);

export const isOlder = (fault: unknown): boolean =>
  fault instanceof Refused && fault.faults.some((each) => each.field === 'expectedVersion');

const tries = 8;

/** Saves what became of a tour that was read as `was`. What others saved meanwhile holds beside it; where both gave one field different values, nothing is saved. */
export async function saveOver(store: TourStore, was: ReadTour, wanted: Tour): Promise<ReadTour> {
  let [tour, version] = [wanted, was.version];
  for (let attempt = 1; ; attempt++) {
    try {
      return await store.save(tour, version);
    } catch (fault) {
      if (!isOlder(fault) || attempt === tries) throw fault;
    }
    const now = await store.read(was.tour.id);
    const answer = mergeTours(was.tour, wanted, now.tour);
    if ('clashes' in answer) throw new Clashed(answer.clashes, now);
    [tour, version] = [answer.merged, now.version];
  }
}
