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
  markOutSheet,
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
import { useWholePlan } from '../plan/use-plan-parts.js';
import { type PlanInForce, useShow } from '../plan/use-show.js';
import type { PackPlan } from '#pack-plan';
import type { Units } from '#drawings';

/** Sheets for paper, A4 or Letter; the browser's print window opens by itself. */
export function Print() {
  const { tourId = '', showId = '', what = 'all' } = useParams();
  const { units } = useSettings();
  const query = useShow(tourId, showId);
  const [search] = useSearchParams();
  const shown = search.get('plan') === 'draft' && query.data?.draft ? query.data.draft : query.data?.inForce;
  const whole = useWholePlan(shown?.id);
  const ready = whole.data !== undefined && !query.isFetching;
  useEffect(() => {
    if (!ready) return undefined;
    document.title = `${query.data!.name} · ${what}`;
    const later = setTimeout(() => window.print(), 400);
    return () => clearTimeout(later);
  }, [ready, what, query.data]);
  return (
    <Loaded query={query}>
      {() =>
        !shown ? (
          <p>There is no plan of this show yet: nothing to print.</p>
        ) : (
          <Loaded query={whole}>{(plan) => <Sheets nodes={sheetsOf(plan, shown, what, units)} releasedAt={shown.releasedAt} />}</Loaded>
        )
      }
    </Loaded>
  );
}

function Sheets({ nodes, releasedAt }: { nodes: readonly Node[]; releasedAt: PlanInForce['releasedAt'] }) {
  if (nodes.length === 0)
    return (
      <p>There are no such sheets. There are: carts, hangs, picks, points, mark-out, stages, running, hardware, trucks, due, moves, all.</p>
    );
  return (
    <>
      {nodes.map((each, index) => (
        <Drawing key={index} of={each} releasedAt={releasedAt} />
      ))}
    </>
  );
}

function sheetsOf(plan: PackPlan, { revision, releasedDespite, changed }: PlanInForce, what: string, units: Units): readonly Node[] {
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
    case 'mark-out':
      return [markOutSheet(context, units)];
    case 'stages':
      return plan.picks.hangs.filter((hang) => hang.stages.length > 0).map((hang) => stageSheet(context, hang, units));
    case 'running':
      return plan.picks.hangs.flatMap((hang) => runningSheets(context, hang, units));
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
