import { Link } from 'react-router';
import { rowKey, tickText } from '#pack-plan';
import { Faults } from '../../ui/faults.js';
import { useTrucks } from '../plan/use-plan-parts.js';
import { useTicks } from '../plan/use-ticks.js';
import { FloorPage } from './floor-page.js';
import type { OnFloor } from './on-floor.js';

/** Which truck: how many rows are in, of each. */
export function ChooseTruck({ show, plan, home }: OnFloor) {
  const query = useTrucks(plan.id, plan.trucks);
  const { ticked } = useTicks({ planId: plan.id, tourId: show.tourId, showId: show.showId });
  return (
    <FloorPage name="Trucks" title="Trucks" back={home}>
      {query.isError && <Faults of={query.error} />}
      {!query.data && !query.isError && <p className="quiet">Reading ...</p>}
      {query.data?.map((truck) => {
        const done = truck.rows.filter((row) => ticked.has(tickText(rowKey(truck.id, row.number)))).length;
        return (
          <Link key={truck.id} className="job" to={`${home}/trucks/${encodeURIComponent(truck.id)}`}>
            <b className="mono">{truck.id}</b>
            <span>{truck.model}</span>
            <div className="n">
              {done}
              <small> of {truck.rows.length} rows in</small>
            </div>
          </Link>
        );
      })}
    </FloorPage>
  );
}
