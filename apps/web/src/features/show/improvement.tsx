import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';

const improvementQuery = graphql(`query PlanImprovement($planId: ID!) { planImprovement(planId: $planId) { code sentence } }`);
const takeMutation = graphql(`
  mutation TakeImprovement($planId: ID!) {
    takeImprovement(planId: $planId) { __typename ... on PlanMade { planId } ... on StaleRefusal { sentence changed { sentence } } }
  }
`);

/** A list of box moves that was not proved to be the shortest: that the house goes on looking, what came of it, and the shorter list to take in. */
export function Improvement({
  planId,
  replaces,
  mayTake,
  onDraft,
}: {
  planId: string;
  /** True where another draft than this plan would give way. */
  replaces: boolean;
  mayTake: boolean;
  onDraft: () => void;
}) {
  const client = useQueryClient();
  const query = useQuery({
    queryKey: ['improvement', planId],
    queryFn: async () => (await request(improvementQuery, { planId })).planImprovement ?? null,
  });
  const take = useMutation({
    mutationFn: () => request(takeMutation, { planId }),
    onSuccess: async ({ takeImprovement }) => {
      if (takeImprovement.__typename !== 'PlanMade') return;
      onDraft();
      await client.invalidateQueries();
    },
  });
  const found = query.data;
  if (!found) return null;
  const refusal = take.data?.takeImprovement.__typename === 'StaleRefusal' ? take.data.takeImprovement : null;
  return (
    <div role="status" className="improvement">
      {found.code === 'shorter' ? <Note weight="look">{found.sentence}</Note> : <p className="quiet">{found.sentence}</p>}
      {found.code === 'shorter' && mayTake && (
        <button type="button" disabled={take.isPending} onClick={() => take.mutate()}>
          Take it in as the draft{replaces ? ', in the place of the one there is' : ''}
        </button>
      )}
      {refusal && (
        <Note weight="look">
          {refusal.sentence}{' '}
          {refusal.changed
            .slice(0, 6)
            .map((each) => each.sentence)
            .join('; ')}
          {refusal.changed.length > 6 ? ` and ${refusal.changed.length - 6} more` : ''}.
        </Note>
      )}
      <Faults of={take.error} />
    </div>
  );
}
