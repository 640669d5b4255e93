import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { useParams, useSearchParams } from 'react-router';
import { type InspectionFile, inspectionFile, itemsInTheAir } from '#drawings';
import type { PackPlan } from '#pack-plan';
import type { ExaminationRule } from '#tour-file';
import { request } from '../../platform/request.js';
import { useSettings } from '../../platform/settings.js';
import { today } from '../../platform/today.js';
import { Drawing } from '../../ui/drawing.js';
import { Loaded } from '../../ui/page.js';
import { useWholePlan } from '../plan/use-plan-parts.js';
import { type PlanInForce, useShow } from '../plan/use-show.js';
import { inspectedItems, rulesAndSealQuery, signOffsQuery } from './operations.js';
import { usePrint } from '../../ui/use-print.js';

/** The inspection file of a show, in one print. */
export function InspectionPrint() {
  const { tourId = '', showId = '' } = useParams();
  const query = useShow(tourId, showId);
  const [search] = useSearchParams();
  const shown = search.get('plan') === 'draft' && query.data?.draft ? query.data.draft : query.data?.inForce;
  const whole = useWholePlan(shown?.id);
  return (
    <Loaded query={query}>
      {(show) =>
        shown ? (
          <Loaded query={whole}>{(plan) => <OfPlan plan={plan} shown={shown} title={`${show.name} · inspection file`} />}</Loaded>
        ) : (
          <p>There is no plan of this show yet: nothing hangs.</p>
        )
      }
    </Loaded>
  );
}

function OfPlan({ plan, shown, title }: { plan: PackPlan; shown: PlanInForce; title: string }) {
  const facts = useFacts(plan, shown.id);
  usePrint(facts.data !== undefined, title);
  return <Loaded query={facts}>{(found) => <Sheets plan={plan} shown={shown} facts={found} />}</Loaded>;
}

type Facts = Pick<InspectionFile, 'items' | 'rules' | 'signOffs' | 'logHead'>;

function useFacts(plan: PackPlan, planId: string) {
  return useQuery({
    queryKey: ['inspection', planId],
    queryFn: async (): Promise<Facts> => {
      const [items, house, rigging] = await Promise.all([
        inspectedItems({ ids: itemsInTheAir(plan) }),
        request(rulesAndSealQuery),
        request(signOffsQuery, { planId }),
      ]);
      const { examinationRules } = house.rules as { examinationRules: ExaminationRule[] };
      return {
        items,
        rules: examinationRules,
        signOffs: rigging.riggingRecord.signOffs,
        ...(house.logSeal ? { logHead: house.logSeal } : {}),
      };
    },
  });
}

function Sheets({ plan, shown, facts }: { plan: PackPlan; shown: PlanInForce; facts: Facts }) {
  const { units } = useSettings();
  const { revision, releasedBy, releasedAt, releasedDespite, changed } = shown;
  const sheet = useMemo(
    () =>
      inspectionFile(
        {
          ...facts,
          plan,
          revision: revision ?? null,
          releasedBy: releasedBy ?? null,
          releasedAt: releasedAt ?? null,
          releasedDespite: releasedDespite ?? null,
          isStale: changed.length > 0,
          printedOn: today(),
        },
        units,
      ),
    [facts, plan, revision, releasedBy, releasedAt, releasedDespite, changed, units],
  );
  return <Drawing of={sheet} releasedAt={releasedAt} />;
}
