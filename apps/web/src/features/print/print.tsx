import { useEffect } from 'react';
import { useParams, useSearchParams } from 'react-router';
import {
  type Node,
  allSheets,
  cartCardSheet,
  drawCode,
  dueSheet,
  hangSheet,
  hardwareSheets,
  moveSheet,
  pickSheet,
  pointSheet,
  runningSheets,
  stageSheet,
  truckSheet,
} from '#drawings';
import { useSettings } from '../../platform/settings.js';
import { Drawing } from '../../ui/drawing.js';
import { Loaded } from '../../ui/page.js';
import { type PlanInForce, useShow } from '../show/use-show.js';
import type { Units } from '#drawings';

/** Sheets for paper, A4 or Letter; the browser's print window opens by itself. */
export function Print() {
  const { tourId = '', showId = '', what = 'all' } = useParams();
  const { units } = useSettings();
  const query = useShow(tourId, showId);
  const [search] = useSearchParams();
  const ready = Boolean(query.data?.inForce) && !query.isFetching;
  useEffect(() => {
    if (!ready) return undefined;
    document.title = `${query.data!.name} · ${what}`;
    const later = setTimeout(() => window.print(), 400);
    return () => clearTimeout(later);
  }, [ready, what, query.data]);
  return (
    <Loaded query={query}>
      {({ inForce: current, draft }) => {
        const inForce = search.get('plan') === 'draft' && draft ? draft : current;
        return !inForce ? (
          <p>There is no plan of this show yet: nothing to print.</p>
        ) : sheetsOf(inForce, what, units).length === 0 ? (
          <p>There are no such sheets. There are: carts, hangs, picks, points, stages, running, hardware, trucks, due, moves, all.</p>
        ) : (
          <>
            {sheetsOf(inForce, what, units).map((each, index) => (
              <Drawing key={index} of={each} />
            ))}
          </>
        );
      }}
    </Loaded>
  );
}

function sheetsOf({ plan, revision, releasedDespite, changed }: PlanInForce, what: string, units: Units): readonly Node[] {
  const context = {
    plan,
    isStale: changed.length > 0,
    revision: revision && releasedDespite ? `${revision}, released although it says stop: ${releasedDespite}` : (revision ?? null),
  };
  switch (what) {
    case 'carts':
      return plan.carts.loads.map((load) => cartCardSheet(context, load, load.cart === null ? null : drawCode(load.cart), units));
    case 'hangs':
      return [...plan.picks.hangs.map((hang) => hangSheet(context, hang, units)), pointSheet(context, units)];
    case 'picks':
      return plan.picks.hangs.flatMap((hang) => hang.picks.map((pick) => pickSheet(context, hang, pick, units)));
    case 'points':
      return [pointSheet(context, units)];
    case 'stages':
      return plan.picks.hangs.filter((hang) => hang.stages.length > 0).map((hang) => stageSheet(context, hang, units));
    case 'running':
      return plan.picks.hangs.flatMap((hang) => runningSheets(context, hang));
    case 'hardware':
      return hardwareSheets(context, units);
    case 'trucks':
      return plan.truck.trucks.map((truck) => truckSheet(context, truck, units));
    case 'due':
      return [dueSheet(context)];
    case 'moves':
      return [moveSheet(context)];
    case 'all':
      return allSheets(context, units, drawCode);
    default:
      return [];
  }
}
