import { Link } from 'react-router';
import { Faults } from '../../../ui/faults.js';
import { usePicks } from '../../plan/use-plan-parts.js';
import { useTicks } from '../../plan/use-ticks.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';

/** Which hang is flown: each with its holds, the way up. */
export function ChooseHang({ show, plan, home }: OnFloor) {
  const query = usePicks(plan.id, plan.hangs);
  const { ticked } = useTicks({ planId: plan.id, tourId: show.tourId, showId: show.showId });
  return (
    <FloorPage name="Flying" title="Flying" back={home}>
      {query.isError && <Faults of={query.error} />}
      {!query.data && !query.isError && <p className="quiet">Reading ...</p>}
      {query.data?.hangs.map(({ hang, name, runningOrder }) => {
        const holds = runningOrder.goingUp.filter((each) => each.hold);
        return (
          <Link key={hang} className="job" to={`${home}/fly/${encodeURIComponent(hang)}`}>
            <b>{name}</b>
            <span>{runningOrder.approved === null ? '■ example, not for use' : (runningOrder.manual ?? '')}</span>
            <div className="n">
              {holds.filter((each) => ticked.has(each.key)).length}
              <small> of {holds.length} holds</small>
            </div>
          </Link>
        );
      })}
    </FloorPage>
  );
}
