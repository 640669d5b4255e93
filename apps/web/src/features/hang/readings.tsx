import { useQuery } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { useParams } from 'react-router';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { useOutbox } from '../../platform/outbox/outbox.js';
import { pendingOf } from '../../platform/outbox/pending.js';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';

const recordQuery = graphql(`
  query RiggingRecord($planId: ID!) {
    riggingRecord(planId: $planId) {
      readings { id hang hole place readingKg readAt readBy verdict sentence }
      signOffs { id hang kind name remark company role place signedAt signedBy }
    }
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
  const outbox = useOutbox();
  const { tourId = '', showId = '' } = useParams();
  const [unkept, setUnkept] = useState<unknown>(null);
  const [hole, setHole] = useState(holes[0] ?? '');
  const [place, setPlace] = useState('at the hook');
  const [kg, setKg] = useState('');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const values = { planId, hang, hole, place, readingKg: Number(kg) };
    const words = `${hang}, hole ${hole}, ${place}: the load cell reads ${kg} kg`;
    outbox.put({ kind: 'reading', values, words, tourId, showId }).then(() => setKg(''), setUnkept);
  };
  const onTheirWay = pendingOf(outbox.waiting, 'reading', planId).filter(
    ({ values }) => values.hang === hang && holes.includes(String(values.hole)),
  );
  const own = (record.data?.readings ?? []).filter((each) => each.hang === hang && holes.includes(each.hole));
  return (
    <>
      {onTheirWay.map((each) => (
        <p key={each.id} className="quiet">
          ◐ Not sent yet: {each.words}.
        </p>
      ))}
      {own.length === 0 && <p className="quiet">Nothing has been measured yet.</p>}
      {own.map((each) => (
        <Note key={each.id} weight={each.verdict === 'differs' ? 'stop' : each.verdict === 'agrees' ? 'agrees' : 'look'}>
          {each.sentence} {each.readBy}, {momentOf(each.readAt)}.
        </Note>
      ))}
      <Faults of={unkept ?? record.error} />
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
          <button type="submit" disabled={kg.trim() === '' || !Number.isFinite(Number(kg))}>
            Enter the reading
          </button>
        </form>
      ) : (
        <p className="quiet">Readings are entered on a released revision: what hangs is what was released.</p>
      )}
    </>
  );
}
