import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from 'react-router';
import { z } from 'zod';
import { graphql } from '#contracts';
import type { Person } from '../../../platform/person.js';
import { request } from '../../../platform/request.js';
import { dayOf } from '../../../platform/written.js';
import { Choice, Field, Figure, Form, useTypedForm } from '../../../ui/form.js';
import { figure, filled } from '../../../ui/typed.js';

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
  ['quarantined', 'Quarantine: failed or in doubt'],
  ['retired', 'Count out: lost or scrapped'],
] as const;

const nothing = { pieces: '', state: 'quarantined', reason: '' };
const split = (count: number) =>
  z.object({
    pieces: figure(`a whole number from 1 to ${count - 1}: one piece at least stays`, { whole: true, min: 1, max: count - 1 }),
    state: z.string(),
    reason: filled('what is wrong with them, or where they went'),
  });

function SplitForm({ id, count, me }: { id: string; count: number; me: Person }) {
  const schema = split(count);
  const form = useTypedForm(schema, nothing);
  const client = useQueryClient();
  const send = useMutation({
    mutationFn: (values: z.output<typeof schema>) => request(splitMutation, { itemId: id, ...values }),
    onSuccess: async () => {
      form.reset(nothing);
      await client.invalidateQueries();
    },
  });
  return (
    <details>
      <summary>Take some of the {count} pieces out</summary>
      <Form form={form} onSubmit={(values) => send.mutate(values)} error={send.error}>
        <div className="fields">
          <Figure name="pieces" label="How many" />
          <Choice name="state" label="What becomes of them" choices={ways} />
          <Field name="reason" label="Why" />
        </div>
        {send.data && <Taken of={send.data.splitLot} me={me} />}
        <button type="submit" disabled={send.isPending}>
          Take them out
        </button>
      </Form>
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
