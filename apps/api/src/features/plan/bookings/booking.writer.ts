import { randomUUID } from 'node:crypto';
import { type EntityManager, In } from 'typeorm';
import { type BadInput, invariant } from '#kernel';
import type { Booking } from '#tour-file';
import { BookingRow, PackPlanRow } from '../stored/rows.js';
import { replaceBookings, usesTogether } from './booking.repository.js';

type OnFile = Booking & Pick<BookingRow, 'holderKind' | 'holderId'>;

/**
 * Puts the promises of other tours on file as a tour file tells them. One that is on file already stays; one that overlaps another tour's
 * promise of the same serial is refused by name.
 */
export async function addBookings(manager: EntityManager, bookings: readonly Booking[]): Promise<readonly BadInput[]> {
  const rows = manager.getRepository(BookingRow);
  const tours: { id: string; name: string }[] = await manager.query('SELECT id, name FROM tour WHERE name = ANY($1)', [
    bookings.map((each) => each.tour),
  ]);
  const holderOf = ({ tour, tourId }: Booking) => {
    const id = tourId ?? tours.find((each) => each.name === tour)?.id;
    return id === undefined ? ({ holderKind: 'named', holderId: tour } as const) : ({ holderKind: 'tour', holderId: id } as const);
  };
  const onFile: (OnFile & { count: number | null })[] = await manager.query(
    `SELECT item_id AS item, count, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", tour_name AS tour,
       holder_kind AS "holderKind", holder_id AS "holderId" FROM booking WHERE item_id = ANY($1)`,
    [bookings.map((each) => each.item)],
  );
  const sameHolder = (each: Booking, known: OnFile) => {
    const { holderKind, holderId } = holderOf(each);
    return known.holderKind === holderKind && known.holderId === holderId;
  };
  const fresh = bookings.filter((each) => !onFile.some((other) => each.item === other.item && sameHolder(each, other)));
  const faults = bookings.flatMap((each, index): BadInput[] => {
    const other = onFile.find(
      (known) =>
        known.item === each.item &&
        known.from <= each.to &&
        each.from <= known.to &&
        (sameHolder(each, known) ? known.from !== each.from || known.to !== each.to : known.count === null && each.count === undefined),
    );
    if (!other) return [];
    const wanted = `days on which nobody holds ${each.item}: ${other.tour} holds it from ${other.from} to ${other.to}`;
    return [{ field: `bookings[${index}]`, value: `${each.item}, ${each.from} to ${each.to}`, wanted }];
  });
  if (faults.length > 0) return faults;
  const values = fresh.map((each) => ({
    id: randomUUID(),
    itemId: each.item,
    ...holderOf(each),
    tourName: each.tour,
    period: `[${each.from},${each.to}]`,
    count: each.count ?? null,
  }));
  if (values.length > 0) await rows.insert(values);
  return [];
}

/** What a tour holds goes with it to its new days; where somebody else holds some of it there, who and when is the fault. */
export async function movePromises(
  manager: EntityManager,
  { id, name, prepFrom, returnTo }: { readonly id: string; readonly name: string; readonly prepFrom: string; readonly returnTo: string },
): Promise<readonly BadInput[]> {
  const own = await manager.getRepository(BookingRow).findBy({ holderKind: 'tour', holderId: id });
  if (own.length === 0) return [];
  const uses = own.map(({ itemId, count }) => ({ item: itemId, count }));
  const clashes = await replaceBookings(manager, { id, name }, prepFrom, returnTo, uses);
  return clashes.slice(0, mostNamed).map(({ item, tour, from, to }) => ({
    field: 'tour.prepFrom',
    value: `${prepFrom} to ${returnTo}`,
    wanted: `days on which nobody else holds ${item}: ${tour} holds it from ${from} to ${to}`,
  }));
}

const mostNamed = 20;

/** What a tour holds anew, from the released plans of these of its shows; gives how many of its promises ended. */
export async function promiseAnew(
  manager: EntityManager,
  { id, name, prepFrom, returnTo }: { readonly id: string; readonly name: string; readonly prepFrom: string; readonly returnTo: string },
  showIds: readonly string[],
): Promise<number> {
  const rows = manager.getRepository(BookingRow);
  const before = await rows.countBy({ holderKind: 'tour', holderId: id });
  const plans = await manager.getRepository(PackPlanRow).findBy({ tourId: id, state: 'released', showId: In([...showIds]) });
  const uses = usesTogether(plans.map((each) => each.plan.uses));
  const clashes = before === 0 && uses.length === 0 ? [] : await replaceBookings(manager, { id, name }, prepFrom, returnTo, uses);
  // It gives back and takes nothing more.
  invariant(clashes.length === 0, 'fewer promises clash with nobody');
  return before - uses.length;
}

/** A tour gives back what it holds from today on; what it held in the past stays written. */
export async function endPromises(manager: EntityManager, tourId: string, today: string): Promise<number> {
  const [{ ended }]: [{ ended: number }] = await manager.query(
    `WITH gone AS (DELETE FROM booking WHERE holder_kind = 'tour' AND holder_id = $1 AND upper(period) > $2::date RETURNING 1) SELECT count(*)::int AS ended FROM gone`,
    [tourId, today],
  );
  return ended;
}
