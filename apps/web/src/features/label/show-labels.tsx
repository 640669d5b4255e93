import { useMemo } from 'react';
import { useParams, useSearchParams } from 'react-router';
import { labelSheets } from '#drawings';
import { structurePoints, trunkLines } from '#pack-plan';
import { Faults } from '../../ui/faults.js';
import { Page } from '../../ui/page.js';
import { useCarts, useHardware, usePicks } from '../plan/use-plan-parts.js';
import { type PlanInForce, useShow } from '../plan/use-show.js';
import { PaperFields, Sheets, stockOf, useKeptOnDevice } from './paper.js';
import { type PlaceKind, placeKinds, placeLabels } from './place-labels.js';

/** Labels of the places of a show, and the codes that say done, undo and fault. */
export function ShowLabels() {
  const { tourId = '', showId = '' } = useParams();
  const query = useShow(tourId, showId);
  const plan = query.data?.inForce;
  return (
    <Page
      title={query.data ? `Labels, ${query.data.name}` : 'Labels'}
      lede="For places that people work at: large words, a square code that opens their page of the floor, and bars for a reader."
    >
      <Faults of={query.error} />
      {query.data && !plan && <p>There is no plan of this show yet: it is made at the desk.</p>}
      {plan && <OfPlan plan={plan} floor={`/floor/${tourId}/${showId}`} />}
    </Page>
  );
}

function OfPlan({ plan, floor }: { plan: PlanInForce; floor: string }) {
  const [search, setSearch] = useSearchParams();
  const kind = (Object.keys(placeKinds) as PlaceKind[]).find((each) => each === search.get('of')) ?? 'slots';
  const kept = useKeptOnDevice();
  const carts = useCarts(plan.id);
  const hardware = useHardware(plan.id);
  const picks = usePicks(plan.id, plan.hangs);
  const isRead = carts.data && hardware.data && picks.data;
  const labels = useMemo(
    () =>
      carts.data && hardware.data && picks.data
        ? placeLabels(kind, {
            floor,
            loads: carts.data.loads,
            trunks: [...trunkLines(hardware.data.lines).keys()],
            trucks: plan.trucks,
            points: structurePoints(picks.data),
          })
        : [],
    [kind, floor, carts.data, hardware.data, picks.data, plan.trucks],
  );
  const stock = stockOf(kept);
  const pages = useMemo(
    () => (stock ? labelSheets(labels, { stock, house: location.origin, skip: Number(kept.skip) || 0 }) : []),
    [labels, stock, kept.skip],
  );
  return (
    <>
      <div className="fields noprint">
        <label>
          Of what
          <select value={kind} onChange={(event) => setSearch({ of: event.target.value }, { replace: true })}>
            {Object.entries(placeKinds).map(([each, name]) => (
              <option key={each} value={each}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <PaperFields kept={kept} />
      </div>
      <div className="noprint">
        <Faults of={carts.error ?? hardware.error ?? picks.error} />
        <p className="quiet" role="status">
          {isRead ? `${labels.length} labels on ${pages.length} pages.` : 'Reading ...'} Print at 100 %, without margins of the printer.
          {kind === 'lanyard'
            ? ' A reader that types sends them to box moves, trucks and carts; a camera reads them there too.'
            : ` Each code opens ${location.origin}: print from the address under which the phones reach the house. Slots follow this plan.`}
        </p>
        <p className="row">
          <button type="button" disabled={pages.length === 0} onClick={() => window.print()}>
            Print
          </button>
        </p>
      </div>
      <Sheets pages={pages} />
    </>
  );
}
