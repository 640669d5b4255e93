import { randomUUID } from 'node:crypto';
import type { DataSource } from 'typeorm';
import { addDays } from '#kernel';

const [tourCount, itemsOfTour, visitDays] = [40, 50, 60];

/** Forty tours of the year to come that hold fifty hoists each, and sixty days of examiners, every third of them agreed with a list. */
export async function fillSeason(dataSource: DataSource, today: string): Promise<void> {
  const hoists: { id: string }[] = await dataSource.query(
    `SELECT id FROM item WHERE id LIKE 'HOIST-%' AND state = 'in service' ORDER BY id`,
  );
  const depots: { depot: string }[] = await dataSource.query(`SELECT DISTINCT depot FROM item WHERE id LIKE 'HOIST-%' ORDER BY depot`);
  for (let tour = 0; tour < tourCount; tour++) {
    const id = `season-${tour + 1}`;
    const from = addDays(today, 5 + tour * 8);
    const to = addDays(from, 27);
    await dataSource.query(
      `INSERT INTO tour (id, name, prep_from, return_to, version, data) SELECT $1, $2, $3::date, $4::date, 1, data || jsonb_build_object('id', $1::text, 'name', $2::text, 'shows', '[]'::jsonb)
       FROM tour ORDER BY prep_from LIMIT 1`,
      [id, `Season tour ${tour + 1}`, from, to],
    );
    const own = hoists.slice(tour * itemsOfTour, (tour + 1) * itemsOfTour).map((each) => each.id);
    await dataSource.query(
      `INSERT INTO booking (id, item_id, holder_kind, holder_id, tour_name, period) SELECT id, item, 'tour', $3, $4, daterange($5, $6, '[]') FROM unnest($1::uuid[], $2::text[]) held (id, item)`,
      [own.map(() => randomUUID()), own, id, `Season tour ${tour + 1}`, from, to],
    );
  }
  for (let day = 0; day < visitDays; day++) {
    const onDay = addDays(today, 3 + day * 6);
    const isAgreed = day % 3 === 0;
    const seen = hoists
      .slice(day * 20, (day + 1) * 20)
      .map(({ id }) => ({ id, until: onDay, carriesTo: addDays(onDay, 365), neededOn: addDays(onDay, 1) }));
    await dataSource.query(`INSERT INTO visit (id, on_day, depot, state, list, changed_at) VALUES ($1, $2, $3, $4, $5, now())`, [
      ...[randomUUID(), onDay, depots[day % depots.length]!.depot],
      ...[isAgreed ? 'agreed' : 'possible', isAgreed ? JSON.stringify(seen) : null],
    ]);
  }
  await dataSource.query('ANALYZE');
}
