import { Link, useParams } from 'react-router';
import { drawHang, drawRear, formatForce, formatMass, pickContent } from '#drawings';
import type { HangResult } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { Drawing } from '../../ui/drawing.js';
import { Note } from '../../ui/notes.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { useHang } from '../plan/use-plan-parts.js';
import { type PlanInForce, useShow } from '../plan/use-show.js';
import { LiftSteps } from './lift-steps.js';
import { Readings } from './readings.js';
import type { Person } from '../../platform/person.js';
import { scrolls } from '../../ui/scrolls.js';

/** One pick: every mass, the sum with its figures, what was compared with what; what a load cell shows beside it. */
export function PickScreen({ me }: { me: Person }) {
  const { tourId = '', showId = '', hangId = '', hole = '' } = useParams();
  const query = useShow(tourId, showId);
  return (
    <Loaded query={query}>
      {({ name, inForce }) => {
        if (!inForce?.hangs.includes(hangId)) return <Page title={`${hangId}, hole ${hole}`}>This pick is in no plan of the show.</Page>;
        return <Pick me={me} name={name} inForce={inForce} />;
      }}
    </Loaded>
  );
}

function Pick({ me, name, inForce }: { me: Person; name: string; inForce: PlanInForce }) {
  const { tourId = '', showId = '', hangId = '', hole = '' } = useParams();
  const { units } = useSettings();
  const query = useHang(inForce.id, hangId);
  return (
    <Loaded query={query}>
      {({ hang, picks }) => {
        const pick = hang.picks.find((each) => each.hole === hole);
        if (!pick) return <Page title={`${hangId}, hole ${hole}`}>This pick is in no plan of the show.</Page>;
        const stops = pick.comparisons.filter((each) => each.verdict === 'over');
        return (
          <Page
            title={`${hang.name}, hole ${pick.hole}`}
            lede={
              <>
                <Link to={`/tours/${tourId}/shows/${showId}`}>{name}</Link> · point {pick.point} · hoist{' '}
                <span className="mono">{pick.hoistSerial ?? 'none found'}</span>
              </>
            }
            actions={
              <Link className="btn plain" to={`/print/${tourId}/${showId}/picks`} target="_blank">
                Print a page for each pick
              </Link>
            }
          >
            <Part
              number={1}
              title={`${formatMass(pick.hookLoadKg, units)} at the hook, ${formatForce(pick.pointLoadDynamicN, units)} at the point with its factor`}
              margin={
                <>
                  {stops.map((each) => (
                    <Note key={each.what} weight="stop">
                      {each.sentence}
                    </Note>
                  ))}
                  <p className="caution">{picks.caution}</p>
                </>
              }
            >
              <div {...scrolls} className="scroll working-page">
                {pickContent(picks.loadRule, hang, pick, units).map((each, index) => (
                  <Drawing key={index} of={each} />
                ))}
              </div>
            </Part>
            <Part number={2} title="Load cells" margin={<p className="quiet">A reading is judged by the tolerance of the regime.</p>}>
              <Readings planId={inForce.id} isReleased={inForce.state === 'released'} hang={hang.hang} holes={[pick.hole]} me={me} />
            </Part>
            <Pictures hang={hang} hole={pick.hole} />
          </Page>
        );
      }}
    </Loaded>
  );
}

/** The lift with this pick's worst moment, and the hang at trim from two sides. */
function Pictures({ hang, hole }: { hang: HangResult; hole: string }) {
  const { units } = useSettings();
  return (
    <>
      {hang.stages.length > 0 && (
        <Part
          number={3}
          id="lift"
          title="The lift, moment by moment"
          margin={<p className="quiet">Forces in one scale: the moment beside the hang at trim. The worst moment is often not the last.</p>}
        >
          <LiftSteps hang={hang} hole={hole} />
        </Part>
      )}
      <Part number={4} title="Side and rear">
        <div className="pair">
          <Drawing of={drawHang(hang, units)} />
          <Drawing of={drawRear(hang, units)} />
        </div>
      </Part>
    </>
  );
}
