import { useParams, useSearchParams } from 'react-router';
import { hangsWithSheet, nothingBarredSheet } from '#drawings';
import type { PackPlan } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { momentOf } from '../../platform/written.js';
import { Drawing } from '../../ui/drawing.js';
import { Loaded } from '../../ui/page.js';
import { usePrint } from '../../ui/use-print.js';
import { useBarred } from '../plan/barred-notes.js';
import { useWholePlan } from '../plan/use-plan-parts.js';
import { type PlanInForce, useShow } from '../plan/use-show.js';
import { fileName, usePageRules } from '../print/printed-plan.js';

/** What hangs with what must not fly, a sheet a hang; those in the air first. `?hang=`: of that one alone. */
export function HangsWithPrint() {
  const { tourId = '', showId = '' } = useParams();
  const query = useShow(tourId, showId);
  const shown = query.data?.inForce;
  const whole = useWholePlan(shown?.id);
  return (
    <Loaded query={query}>
      {() =>
        shown ? (
          <Loaded query={whole}>{(plan) => <Sheets plan={plan} shown={shown} />}</Loaded>
        ) : (
          <p>There is no plan of this show yet: nothing hangs.</p>
        )
      }
    </Loaded>
  );
}

function Sheets({ plan, shown }: { plan: PackPlan; shown: PlanInForce }) {
  const { units } = useSettings();
  const [search] = useSearchParams();
  const one = search.get('hang');
  const { items, flying, saidAt } = useBarred(shown.id);
  usePrint(saidAt > 0, fileName(plan, shown, `what hangs with ${one ?? 'it'}`));
  usePageRules(plan, shown, null);
  if (saidAt === 0) return <p className="quiet">Reading ...</p>;
  const isUp = new Set(flying.map((each) => each.hang));
  const asked = plan.picks.hangs.filter((hang) => one === null || hang.hang === one);
  if (asked.length === 0)
    return (
      <p>
        {one === null
          ? 'This plan has no hang.'
          : `There is no hang "${one}". There are: ${plan.picks.hangs.map((each) => each.hang).join(', ')}.`}
      </p>
    );
  const concerned = asked
    .map((hang) => ({ hang, barred: items.filter((each) => each.hangs.includes(hang.hang)) }))
    .filter(({ barred }) => barred.length > 0)
    .sort((a, b) => Number(isUp.has(b.hang.hang)) - Number(isUp.has(a.hang.hang)));
  const context = { plan, revision: shown.revision ?? null, isStale: shown.changed.length > 0 };
  if (concerned.length === 0)
    return <Drawing of={nothingBarredSheet(context, asked, isUp, momentOf(saidAt))} releasedAt={shown.releasedAt} />;
  return concerned.map(({ hang, barred }) => (
    <Drawing
      key={hang.hang}
      of={hangsWithSheet(
        context,
        hang,
        barred.map(({ itemId, sentence }) => ({ item: itemId, sentence })),
        isUp.has(hang.hang),
        units,
      )}
      releasedAt={shown.releasedAt}
    />
  ));
}
