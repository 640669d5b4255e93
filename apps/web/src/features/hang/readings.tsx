import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';

const recordQuery = graphql(`
  query RiggingRecord($planId: ID!) {
    riggingRecord(planId: $planId) {
      readings { id hang hole place readingKg readAt readBy verdict sentence }
      signOffs { id hang kind name remark signedAt signedBy }
    }
  }
`);
const addMutation = graphql(`
  mutation AddLoadReading($planId: ID!, $hang: String!, $hole: String!, $place: String!, $readingKg: Float!) {
    addLoadReading(planId: $planId, hang: $hang, hole: $hole, place: $place, readingKg: $readingKg) { readings { id } }
  }
`);

export function useRiggingRecord(planId: string) {
  return useQuery({ queryKey: ['rigging', planId], queryFn: async () => (await request(recordQuery, { planId })).riggingRecord });
}

/** What load cells showed, beside what was computed; a field for the next reading on a released plan. */
export function Readings({
  planId,
  isReleased,
  hang,
  holes,
  me,
}: {
  planId: string;
  isReleased: boolean;
  hang: string;
  holes: readonly string[];
  me: Person;
}) {
  const record = useRiggingRecord(planId);
  const client = useQueryClient();
  const [hole, setHole] = useState(holes[0] ?? '');
  const [place, setPlace] = useState('at the hook');
  const [kg, setKg] = useState('');
  const add = useMutation({
    mutationFn: () => request(addMutation, { planId, hang, hole, place, readingKg: Number(kg) }),
    onSuccess: async () => {
      setKg('');
      await client.invalidateQueries({ queryKey: ['rigging', planId] });
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    add.mutate();
  };
  const own = (record.data?.readings ?? []).filter((each) => each.hang === hang && holes.includes(each.hole));
  return (
    <>
      {own.length === 0 && <p className="quiet">Nothing has been measured yet.</p>}
      {own.map((each) => (
        <Note key={each.id} weight={each.verdict === 'differs' ? 'stop' : each.verdict === 'agrees' ? 'agrees' : 'look'}>
          {each.sentence} {each.readBy}, {each.readAt.slice(0, 16).replace('T', ' ')} UTC.
        </Note>
      ))}
      <Faults of={add.error ?? record.error} />
      {me.role === 'warehouse' ? null : isReleased ? (
        <form onSubmit={submit} className="fields">
          {holes.length > 1 && (
            <label>
              Hole
              <select value={hole} onChange={(event) => setHole(event.target.value)}>
                {holes.map((each) => (
                  <option key={each}>{each}</option>
                ))}
              </select>
            </label>
          )}
          <label>
            Load cell sits
            <select value={place} onChange={(event) => setPlace(event.target.value)}>
              <option>at the hook</option>
              <option>above the hoist</option>
            </select>
          </label>
          <label>
            It reads, kg
            <input inputMode="decimal" value={kg} onChange={(event) => setKg(event.target.value)} />
          </label>
          <button type="submit" disabled={kg.trim() === '' || !Number.isFinite(Number(kg)) || add.isPending}>
            Enter the reading
          </button>
        </form>
      ) : (
        <p className="quiet">Readings are entered on a released revision: what hangs is what was released.</p>
      )}
    </>
  );
}
