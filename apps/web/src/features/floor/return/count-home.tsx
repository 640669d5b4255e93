import { Link } from 'react-router';
import { Faults } from '../../../ui/faults.js';
import { CountForm } from '../../count/count-form.js';
import { useCountSheet } from '../../count/use-count-sheet.js';
import { useHardware } from '../../plan/use-plan-parts.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';

/** Pins and small hardware, line by line; the batches follow. */
export function CountHome({ me, show, plan, home }: OnFloor) {
  const query = useCountSheet(show.tourId, show.showId);
  const hardware = useHardware(plan.id).data;
  return (
    <FloorPage
      name="Count what came back"
      title="Pins and small hardware"
      back={`${home}/return`}
      foot={
        <Link className="btn plain" to={`/tours/${show.tourId}/shows/${show.showId}/counts`}>
          Counts so far, and what they taught
        </Link>
      }
    >
      {query.isError && !query.data && <Faults of={query.error} />}
      {!query.data && !query.isError && <p className="quiet">Reading ...</p>}
      {me.role === 'safety' && <p className="quiet">Counts are entered by the warehouse or the system tech.</p>}
      {query.data && hardware && me.role !== 'safety' && <CountForm key={query.data.showId} sheet={query.data} hardware={hardware} />}
    </FloorPage>
  );
}
