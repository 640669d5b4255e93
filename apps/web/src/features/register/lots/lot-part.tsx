import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import type { Person } from '../../../platform/person.js';
import { request } from '../../../platform/request.js';
import { dayOf } from '../../../platform/written.js';
import { Faults } from '../../../ui/faults.js';

const splitsQuery = graphql(
  `query LotSplits($itemId: ID!) { lotSplits(itemId: $itemId) { parentId childId pieces ofPieces state reason madeBy madeAt } }`,
);
const splitMutation = graphql(`
  mutation SplitLot($itemId: ID!, $pieces: Int!, $state: String!, $reason: String!) {
    splitLot(itemId: $itemId, pieces: $pieces, state: $state, reason: $reason) { taken left }
  }
`);

/** Where a batch came from, what was taken out of it, and taking some pieces out. */
export function LotPart({ id, count, state, me }: { id: string; count: number; state: string; me: Person }) {
  const query = useQuery({ queryKey: ['item', id, 'splits'], queryFn: () => request(splitsQuery, { itemId: id }) });
  return (
    <>
      {query.data?.lotSplits.map((each) => {
        const other = each.childId === id ? each.parentId : each.childId;
        const link = (
          <Link className="mono" to={`/register/${encodeURIComponent(other)}`}>
            {other}
          </Link>
        );
        return (
          <p key={each.childId}>
            {each.childId === id ? (
              <>
                {each.pieces} of the {each.ofPieces} pieces of {link}, taken out
              </>
            ) : (
              <>
                {each.pieces} of {each.ofPieces} taken out into {link}
              </>
            )}{' '}
            by {each.madeBy} on {dayOf(each.madeAt)}: {each.reason}.
          </p>
        );
      })}
      {count > 1 && state !== 'retired' && <SplitForm id={id} count={count} me={me} />}
    </>
  );
}

const ways = [
  ['quarantined', 'Quarantine them: failed or in doubt'],
  ['retired', 'Count them out: lost or scrapped'],
] as const;

const nothing = { pieces: '', state: 'quarantined', reason: '' };

function SplitForm({ id, count, me }: { id: string; count: number; me: Person }) {
  const [values, setValues] = useState(nothing);
  const client = useQueryClient();
  const { pieces, state, reason } = values;
  const split = useMutation({
    mutationFn: () => request(splitMutation, { itemId: id, pieces: Number(pieces), state, reason }),
    onSuccess: async () => {
      setValues(nothing);
      await client.invalidateQueries();
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    split.mutate();
  };
  return (
    <details>
      <summary>Take some of the {count} pieces out</summary>
      <form onSubmit={submit}>
        <div className="fields">
          <label>
            How many
            <input
              type="number"
              inputMode="numeric"
              min={1}
              max={count - 1}
              value={pieces}
              onChange={(event) => setValues({ ...values, pieces: event.target.value })}
            />
          </label>
          <label>
            What becomes of them
            <select value={state} onChange={(event) => setValues({ ...values, state: event.target.value })}>
              {ways.map(([key, label]) => (
                <option key={key} value={key}>
                  {label}
                </option>
              ))}
            </select>
          </label>
          <label>
            Why
            <input value={reason} onChange={(event) => setValues({ ...values, reason: event.target.value })} />
          </label>
        </div>
        <Faults of={split.error} />
        {split.data && <Taken of={split.data.splitLot} me={me} />}
        <button type="submit" disabled={split.isPending}>
          Take them out
        </button>
      </form>
    </details>
  );
}

function Taken({ of, me }: { of: { readonly taken: string; readonly left: number }; me: Person }) {
  return (
    <p role="status">
      Taken out into{' '}
      <Link className="mono" to={`/register/${encodeURIComponent(of.taken)}`}>
        {of.taken}
      </Link>
      ; {of.left} are left here.{me.role === 'safety' && ' If they failed an examination, record it there.'}
    </p>
  );
}
