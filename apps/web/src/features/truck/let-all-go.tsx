import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { UnderWay } from '../../ui/under-way.js';
import { useTruckHead } from '../plan/use-plan-parts.js';
import { Answer } from './loading-answer.js';
import { letGoMutation } from './operations.js';
import { useLoadingAct } from './use-loading-act.js';

/** Where something is kept in the trucks: the way out of it, also when nothing could be planned around it. */
export function LetAllGo({ planId, onDraft }: { planId: string; onDraft: () => void }) {
  const acts = useLoadingAct(onDraft);
  const kept = (useTruckHead(planId).data?.notes ?? []).filter((each) => each.kind === 'kept');
  if (kept.length === 0 && !acts.data) return null;
  return (
    <>
      {kept.length > 0 && (
        <p>
          {kept.map((each) => each.sentence).join(' ')}{' '}
          <button
            type="button"
            className="plain"
            disabled={acts.isPending}
            onClick={() => acts.mutate(async (requestId) => (await request(letGoMutation, { planId }, { requestId })).letPiecesGo)}
          >
            Let everything go that is kept
          </button>
        </p>
      )}
      {acts.isPending && <UnderWay job={acts.job} onCancel={acts.cancel} of="Planning around it" />}
      <Faults of={acts.error} />
      {acts.data && <Answer of={acts.data} />}
    </>
  );
}
