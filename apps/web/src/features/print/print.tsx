import { useMemo } from 'react';
import { useParams, useSearchParams } from 'react-router';
import { type NamedSheets, drawCode } from '#drawings';
import { useSettings } from '../../platform/settings.js';
import { Drawing } from '../../ui/drawing.js';
import { Loaded } from '../../ui/page.js';
import { usePrint } from '../../ui/use-print.js';
import { useWholePlan } from '../plan/use-plan-parts.js';
import { type PlanInForce, useShow } from '../plan/use-show.js';
import type { PackPlan } from '#pack-plan';
import { fileName, sheetsOf, usePageRules } from './printed-plan.js';

/** Sheets for paper, A4 or Letter; the browser's print window opens by itself. `?only=`: one of them, by its name. */
export function Print() {
  const { tourId = '', showId = '' } = useParams();
  const query = useShow(tourId, showId);
  const [search] = useSearchParams();
  const shown = search.get('plan') === 'draft' && query.data?.draft ? query.data.draft : query.data?.inForce;
  const whole = useWholePlan(shown?.id);
  return (
    <Loaded query={query}>
      {() =>
        !shown ? (
          <p>There is no plan of this show yet: nothing to print.</p>
        ) : (
          <Loaded query={whole}>{(plan) => <Sheets plan={plan} shown={shown} isReady={!query.isFetching} />}</Loaded>
        )
      }
    </Loaded>
  );
}

function Sheets({ plan, shown, isReady }: { plan: PackPlan; shown: PlanInForce; isReady: boolean }) {
  const { what = 'all' } = useParams();
  const { units } = useSettings();
  const [search] = useSearchParams();
  const only = search.get('only');
  const paper = search.get('paper') === 'Letter' ? 'Letter' : search.get('paper') === 'A4' ? 'A4' : null;
  const named = useMemo(() => sheetsOf(plan, shown, units, drawCode), [plan, shown, units]);
  const parts = chosen(named, what, only);
  usePrint(isReady, fileName(plan, shown, only ?? what));
  usePageRules(plan, shown, paper);
  if (parts.length === 0)
    return (
      <p>
        {only === null ? `There are no sheets "${what}"` : `There is no sheet "${only}" of ${what}`}. There are:{' '}
        {[...named.map(({ key }) => key), 'all'].join(', ')}.
      </p>
    );
  return parts
    .flatMap(({ sheets }) => sheets())
    .map((each, index) => <Drawing key={`${what} ${only ?? ''} ${index}`} of={each} releasedAt={shown.releasedAt} />);
}

const chosen = (named: readonly NamedSheets[], what: string, only: string | null): NamedSheets['parts'] =>
  named
    .filter(({ key }) => what === 'all' || key === what)
    .flatMap(({ parts }) => parts.filter(({ name }) => only === null || name === only));
