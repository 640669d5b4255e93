import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { type BadInput, canonicalJson } from '#kernel';
import { type Words, tell } from '#words';
import { type Booking, type TourFile, readTourFile } from '#tour-file';
import { CLOCK, type Clock, today } from '../../platform/config/config.js';
import { latestDayAtWork } from '../venue/place-days.reader.js';
import { WORDS } from '../../platform/config/words.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { waitingFact } from '../edition/edition.writer.js';
import type { Author } from '../../platform/sign-in/person.js';
import { addBookings } from '../plan/bookings/booking.writer.js';
import { workOutDates } from '../register/item-dates.writer.js';
import { KitReader } from '../register/kit.reader.js';
import { addKit } from '../register/added-kit.writer.js';
import { addTour } from '../tour/tour.writer.js';
import { TourReader } from '../tour/tour.reader.js';
import { TourFileReader } from '../../planning/snapshot/tour-file.reader.js';

export interface TourFileImport {
  readonly tour: string;
  readonly models: number;
  readonly items: number;
  readonly shows: number;
  readonly faults: readonly BadInput[];
  /** What of it waits for the safety officer: how much, and the first in words. */
  readonly waiting: number;
  readonly waits: readonly string[];
}

/** How many sentences of what waits are told; the list of the safety officer holds all. */
const mostTold = 50;

class DryRun extends Error {}

/** A tour file into the app, all or nothing, and out of it again as it was written while nothing changed. */
@Injectable()
export class TourFileService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly tours: TourReader,
    private readonly reader: TourFileReader,
    private readonly kit: KitReader,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  async import(input: unknown, who: Author, dryRun: boolean): Promise<TourFileImport> {
    const read = readTourFile(input);
    if (!read.ok) return { tour: '', models: 0, items: 0, shows: 0, faults: read.error, waiting: 0, waits: [] };
    const file = read.value;
    const said = {
      tour: file.tour.name,
      models: Object.values(file.catalogue).reduce((sum, models) => sum + models.length, 0),
      items: file.items.length,
      shows: file.tour.shows.length,
    };
    let held: Pick<TourFileImport, 'waiting' | 'waits'> = { waiting: 0, waits: [] };
    try {
      const outcome = await this.unitOfWork.run<void, readonly BadInput[]>(async (manager) => {
        const [at, day] = [this.clock.now(), today(this.clock)];
        const zones = file.tour.shows.map((show) => show.timeZone);
        const latest = await latestDayAtWork(manager, this.clock, zones);
        const kit = await addKit(manager, await this.kit.load(manager), file, who, { at, day, latest });
        const faults = [...(await addTour(manager, file.tour, input as object)), ...kit.faults];
        held = {
          waiting: kit.waits.length,
          waits: kit.waits.slice(0, mostTold).map((each) => tell(this.words.waiting, waitingFact(each))),
        };
        if (faults.length === 0) faults.push(...(await addBookings(manager, file.bookings)));
        if (faults.length > 0) return { ok: false, error: faults };
        const { id, name } = file.tour;
        await recordEvents(manager, who, this.clock.now(), [
          {
            what: 'imported',
            tourId: id,
            sentence: `Imported the tour ${name} with ${said.items} items.${held.waiting > 0 ? ` ${held.waiting} of what it says waits for the safety officer.` : ''}`,
          },
          ...kit.added.map((itemId) => ({
            what: 'imported',
            itemId,
            tourId: id,
            sentence: `Came with the file of the tour ${name}.`,
          })),
        ]);
        await workOutDates(manager, today(this.clock));
        if (dryRun) throw new DryRun();
        return { ok: true, value: undefined };
      });
      return { ...said, ...held, faults: outcome.ok ? [] : outcome.error };
    } catch (fault) {
      if (fault instanceof DryRun) return { ...said, ...held, faults: [] };
      throw fault;
    }
  }

  /** The file as it was written where what is on file still says the same; else as it now is. */
  async export(tourId: string): Promise<object> {
    const { manager } = this.dataSource;
    const [{ written }, loaded] = await Promise.all([this.tours.tour(manager, tourId), this.reader.load(manager, tourId)]);
    const now = withoutAnswers(loaded);
    if (written === null) return withoutEmpty(now);
    const before = readTourFile(written);
    if (!before.ok) return withoutEmpty(now);
    const scope = within(now, before.value);
    return same(before.value, scope) ? written : withoutEmpty({ ...scope, ...(before.value.note ? { note: before.value.note } : {}) });
  }
}

/** What the safety officer answered of places is of this house: no file takes it along. */
function withoutAnswers({ tour: { placeAnswers: _placeAnswers, ...tour }, ...file }: TourFile): TourFile {
  return { ...file, tour };
}

/** Only what the file brought: a larger register does not change it. */
function within(now: TourFile, file: TourFile): TourFile {
  const names = (models: readonly { model: string }[]) => new Set(models.map((each) => each.model));
  const catalogue = Object.fromEntries(
    Object.entries(now.catalogue).map(([kind, models]) => [
      kind,
      models.filter((each) => names(file.catalogue[kind as keyof TourFile['catalogue']]).has(each.model)),
    ]),
  );
  const ids = new Set(file.items.map((each) => each.id));
  const tours = new Set(file.bookings.flatMap((each) => [each.tour, each.tourId ?? each.tour]));
  const withoutId = ({ tourId: _tourId, ...booking }: Booking): Booking => booking;
  const written = new Set(file.bookings.map((each) => canonicalJson(each)));
  return {
    ...now,
    catalogue: catalogue as TourFile['catalogue'],
    systems: now.systems.filter((each) => file.systems.some((other) => other.id === each.id)),
    examinationRules: now.examinationRules.filter((each) =>
      file.examinationRules.some((other) => canonicalJson(other) === canonicalJson(each)),
    ),
    loadRules: now.loadRules.filter((each) => file.loadRules.some((other) => other.id === each.id)),
    items: now.items.filter((each) => ids.has(each.id)),
    // A promise that was written without the id of its tour is given back without it.
    bookings: now.bookings
      .filter((each) => tours.has(each.tour) || tours.has(each.tourId ?? each.tour))
      .map((each) => (written.has(canonicalJson(withoutId(each))) ? withoutId(each) : each)),
  };
}

function same(a: TourFile, b: TourFile): boolean {
  const normal = ({ note: _note, ...file }: TourFile) => ({
    ...file,
    items: file.items.map(({ stack, ...item }) => (item.kind === 'cart' ? { ...item, stack: stack ?? [] } : item)),
    bookings: [...file.bookings].sort((x, y) => (canonicalJson(x) < canonicalJson(y) ? -1 : 1)),
  });
  return canonicalJson(normal(a)) === canonicalJson(normal(b));
}

/** Leaves out lists that are empty. */
function withoutEmpty(file: TourFile): object {
  return JSON.parse(
    JSON.stringify(file, (_key, value: unknown) => (Array.isArray(value) && value.length === 0 ? undefined : value)),
  ) as object;
}
