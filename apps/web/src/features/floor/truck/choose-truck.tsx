import { Link } from 'react-router';
import { rowKey, rowWays, tickText } from '#pack-plan';
import { Faults } from '../../../ui/faults.js';
import { useTrucks } from '../../plan/use-plan-parts.js';
import { useTicks } from '../../plan/use-ticks.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { searchOf, useRowWay, wayWords } from './row-way.js';

/** Which truck, to load it, to unload it or to load it for home: how many rows are done, of each. */
export function ChooseTruck({ show, plan, home }: OnFloor) {
  const way = useRowWay();
  const query = useTrucks(plan.id, plan.trucks);
  const { ticked } = useTicks({ planId: plan.id, tourId: show.tourId, showId: show.showId });
  return (
    <FloorPage
      name="Trucks"
      title={`Trucks: ${wayWords[way].name.toLowerCase()}`}
      back={home}
      foot={
        <nav className="three" aria-label="What is done with the trucks">
          {rowWays.map((each) => (
            <Link
              key={each}
              className={each === way ? 'btn' : 'btn plain'}
              aria-current={each === way ? 'page' : undefined}
              to={`${home}/trucks${searchOf(each)}`}
              replace
            >
              {wayWords[each].name}
            </Link>
          ))}
        </nav>
      }
    >
      {query.isError && <Faults of={query.error} />}
      {!query.data && !query.isError && <p className="quiet">Reading ...</p>}
      {query.data?.map((truck) => {
        const done = truck.rows.filter((row) => ticked.has(tickText(rowKey(truck.id, row.number, way)))).length;
        return (
          <Link key={truck.id} className="job" to={`${home}/trucks/${encodeURIComponent(truck.id)}${searchOf(way)}`}>
            <b className="mono">{truck.id}</b>
            <span>{truck.model}</span>
            <div className="n">
              {done}
              <small>
                {' '}
                of {truck.rows.length} rows {way === 'unload' ? 'off' : 'in'}
              </small>
            </div>
          </Link>
        );
      })}
    </FloorPage>
  );
}
