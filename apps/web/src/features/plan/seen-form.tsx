import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';

const seeMutation = graphql(
  `mutation SeeBarredAct($tourId: ID!, $id: ID!, $because: String!) { seeBarredAct(tourId: $tourId, id: $id, because: $because) }`,
);

/** What the safety officer, or a deputy, found where something was done although barred: said once. */
export function SeenForm({ tourId, id }: { tourId: string; id: string }) {
  const [because, setBecause] = useState('');
  const client = useQueryClient();
  const see = useMutation({
    mutationFn: () => request(seeMutation, { tourId, id, because }),
    onSuccess: () => client.invalidateQueries(),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    see.mutate();
  };
  return (
    <form onSubmit={submit}>
      <div className="fields">
        <label>
          Seen, because
          <input value={because} maxLength={300} onChange={(event) => setBecause(event.target.value)} />
        </label>
      </div>
      <Faults of={see.error} />
      <button type="submit" disabled={see.isPending || because.trim() === ''}>
        Seen: no longer a stop
      </button>
    </form>
  );
}
