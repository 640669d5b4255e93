import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { type Place, answersThatHold, hasRules } from '#inspection-calendar';
import { type BadInput, ok } from '#kernel';
import { placeOf } from '#pack-plan';
import type { PlaceAnswer, Tour } from '#tour-file';
import { placeName } from '#trade';
import { rulesInForce } from '../../planning/snapshot/judged.reader.js';
import { loadTours } from '../../planning/snapshot/tour-places.js';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError } from '../../platform/faults/fault.js';
import { type SignedIn, authorId } from '../../platform/sign-in/person.js';
import { TourReader } from '../tour/tour.reader.js';
import type { TourPlaces } from './place.types.js';
import { PlaceAnswerRow } from './rows.js';

type Judged = Place<PlaceAnswer>;

/** Whose rules a tour is judged by at a place without rules on file: the safety officer's answer, kept with who and when. */
@Injectable()
export class PlaceService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly tours: TourReader,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async places(tourId: string): Promise<TourPlaces> {
    const { manager } = this.dataSource;
    const { tour, place } = await this.judged(manager, tourId);
    const decisions = await manager.getRepository(PlaceAnswerRow).find({ where: { tourId }, order: { id: 'DESC' }, take: 500 });
    const held = answersThatHold(place);
    const ruled = ruledPlaces(place);
    return {
      places: tour.jurisdictions.map((each) => ({
        place: each,
        hasRules: hasRules(each, place.rules),
        judgedBy: held.find((answer) => answer.place === each)?.rulesOf ?? null,
        decisions: decisions
          .filter((row) => row.place === each)
          .map(({ rulesOf, because, decidedBy, decidedAt }) => ({ rulesOf, because, decidedBy, decidedAt: decidedAt.toISOString() })),
      })),
      ruled,
      home: await homeOf(manager, tour, ruled),
    };
  }

  /** `rulesOf` null takes the answer back. Plans of the tour become stale. */
  async answer(tourId: string, placeCode: string, rulesOf: string | null, reason: string, who: SignedIn): Promise<TourPlaces> {
    const because = reason.trim().replace(/\.$/, '');
    await this.unitOfWork.run(async (manager) => {
      const { tour, place, isRemoved } = await this.judged(manager, tourId);
      const faults = [
        ...(isRemoved ? [{ field: 'tourId', value: tourId, wanted: 'a tour that is on the list; it is put back first' }] : []),
        ...placeFaults(placeCode, rulesOf, place),
        ...reasonFaults(because),
      ];
      if (faults.length > 0) throw new BadInputError(faults);
      const decidedAt = this.clock.now();
      await manager
        .getRepository(PlaceAnswerRow)
        .insert({ tourId, place: placeCode, rulesOf, because, decidedBy: who.name, decidedById: authorId(who), decidedAt });
      const sentence =
        rulesOf === null
          ? `${placeName(placeCode)} is not judged again on ${tour.name}: ${because}.`
          : `${placeName(placeCode)} is judged by the rules of ${placeName(rulesOf)} on ${tour.name}: ${because}.`;
      await recordEvents(manager, who, decidedAt, [{ what: 'answered', tourId, sentence }]);
      return ok(undefined);
    });
    return this.places(tourId);
  }

  private async judged(manager: EntityManager, tourId: string): Promise<{ tour: Tour; place: Judged; isRemoved: boolean }> {
    const { removedAt } = await this.tours.tour(manager, tourId);
    const [tour] = await loadTours(manager, [tourId]);
    if (!tour) throw new Error('a tour that is on file is read');
    const place = placeOf({ tour, examinationRules: await rulesInForce(manager) });
    return { tour, place, isRemoved: Boolean(removedAt) };
  }
}

const ruledPlaces = ({ rules }: Judged): string[] =>
  [...new Set(rules.filter((each) => each.intervals.length > 0 && each.check === undefined).map((each) => each.jurisdiction))].sort();

function placeFaults(code: string, rulesOf: string | null, place: Judged): BadInput[] {
  const value = code.slice(0, 40);
  const open = place.jurisdictions.filter((each) => !hasRules(each, place.rules));
  const wanted = open.length === 0 ? 'nothing: rules of every place that the tour visits are on file' : `one of ${open.join(', ')}`;
  if (!open.includes(code))
    return [{ field: 'place', value, wanted: `a place that the tour visits and that has no rules on file: ${wanted}` }];
  const ruled = ruledPlaces(place);
  if (rulesOf !== null && !ruled.includes(rulesOf))
    return [
      {
        field: 'rulesOf',
        value: rulesOf.slice(0, 40),
        wanted: `a place with examination rules on file: ${ruled.join(', ') || 'there is none'}`,
      },
    ];
  if (rulesOf === null && !(place.taken ?? []).some((each) => each.place === code))
    return [{ field: 'rulesOf', value: null, wanted: 'the place whose rules are taken: there is no answer to take back' }];
  return [];
}

const reasonFaults = (because: string): BadInput[] =>
  because === '' || because.length > 300
    ? [{ field: 'reason', value: because.slice(0, 80), wanted: 'a sentence of 1 to 300 characters' }]
    : [];

/** The place of the depot, by its name on the list of venues. */
async function homeOf(manager: EntityManager, { depot }: Tour, ruled: readonly string[]): Promise<string | null> {
  const rows: { country: string | null }[] = await manager.query('SELECT DISTINCT country FROM venue WHERE name = $1', [depot]);
  const [only] = rows;
  return rows.length === 1 && only?.country && ruled.includes(only.country) ? only.country : null;
}
