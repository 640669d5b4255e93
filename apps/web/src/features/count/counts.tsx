import { Link, useParams } from 'react-router';
import type { Person } from '../../platform/person.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { useHardware } from '../plan/use-plan-parts.js';
import { useShow } from '../plan/use-show.js';
import { CountForm } from './count-form.js';
import { CountRecords } from './count-records.js';
import { Learned } from './learned.js';
import { useCountSheet } from './use-count-sheet.js';

/** When a show comes back: count the pieces, see what was counted and what it taught. */
export function Counts({ me }: { me: Person }) {
  const { tourId = '', showId = '' } = useParams();
  const query = useCountSheet(tourId, showId);
  const planId = useShow(tourId, showId).data?.inForce?.id;
  const hardware = useHardware(planId).data;
  return (
    <Loaded query={query}>
      {(sheet) => (
        <Page
          title="Counts at return"
          lede={
            <>
              <Link to={`/tours/${tourId}`}>{sheet.tourName}</Link> · <Link to={`/tours/${tourId}/shows/${showId}`}>{sheet.name}</Link>
            </>
          }
        >
          <Part number={1} title="Count what came back">
            {me.role === 'safety' ? (
              <p>Counts are entered by the warehouse or the system tech.</p>
            ) : (
              <CountForm key={sheet.showId} sheet={sheet} hardware={hardware} />
            )}
          </Part>
          <Part number={2} title="What the counts taught">
            <Learned sheet={sheet} />
          </Part>
          <Part number={3} title="Records of this tour">
            <CountRecords records={sheet.records} mayCorrect={me.role !== 'safety'} />
          </Part>
        </Page>
      )}
    </Loaded>
  );
}
