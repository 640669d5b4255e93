import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { z } from 'zod';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import { Field, Figure, Form, useTypedForm } from '../../ui/form.js';
import { Note } from '../../ui/notes.js';
import { Loaded } from '../../ui/page.js';
import { day, figure, filled, manyNames } from '../../ui/typed.js';

const holdsQuery = graphql(`query OpenHolds { openHolds { id name from to until items barred } }`);
const placeMutation = graphql(`
  mutation PlaceHold($hold: HoldInput!) {
    placeHold(hold: $hold) { __typename ... on Hold { id } ... on BookingRefusal { sentence } }
  }
`);
const backMutation = graphql(`mutation GiveHoldBack($id: ID!) { giveHoldBack(id: $id) }`);

/** Serials kept for somebody; a hold ends by itself. */
export function Holds({ me }: { me: Person }) {
  const client = useQueryClient();
  const query = useQuery({ queryKey: ['holds'], queryFn: () => request(holdsQuery) });
  const back = useMutation({ mutationFn: (id: string) => request(backMutation, { id }), onSuccess: () => client.invalidateQueries() });
  const mayHold = me.role !== 'safety';
  return (
    <>
      <Loaded query={query}>
        {({ openHolds }) =>
          openHolds.length === 0 ? (
            <p className="quiet">Nothing is on hold.</p>
          ) : (
            <ul className="plain">
              {openHolds.map((hold) => (
                <li key={hold.id} className="row">
                  <span>
                    <b>{hold.name}</b>, {hold.from} to {hold.to}, ends {momentOf(hold.until)}:{' '}
                    <span className="mono">{hold.items.join(', ')}</span>
                    {hold.barred.map((each) => (
                      <Note key={each} weight="look">
                        {each}. It may not be used on these days unless that is mended.
                      </Note>
                    ))}
                  </span>
                  {mayHold && (
                    <button type="button" className="plain small" disabled={back.isPending} onClick={() => back.mutate(hold.id)}>
                      Give back
                    </button>
                  )}
                </li>
              ))}
            </ul>
          )
        }
      </Loaded>
      <Faults of={back.error} />
      {mayHold && <NewHold />}
    </>
  );
}

const nothing = { name: '', from: '', to: '', hours: '48', items: '' };
const typedHold = z.object({
  name: filled('who or what it is held for'),
  from: day,
  to: day,
  hours: figure('hours, a whole number from 1', { min: 1, whole: true }),
  items: manyNames('serials, with blanks between'),
});

function NewHold() {
  const form = useTypedForm(typedHold, nothing);
  const client = useQueryClient();
  const place = useMutation({
    mutationFn: (hold: z.output<typeof typedHold>) => request(placeMutation, { hold }),
    onSuccess: async ({ placeHold }) => {
      if (placeHold.__typename === 'Hold') form.reset(nothing);
      await client.invalidateQueries();
    },
  });
  const refusal = place.data?.placeHold.__typename === 'BookingRefusal' ? place.data.placeHold.sentence : undefined;
  return (
    <details>
      <summary>Put items on hold</summary>
      <Form form={form} onSubmit={(hold) => place.mutate(hold)} error={place.error}>
        <div className="fields">
          <Field name="name" label="Held for" />
          <Field name="from" label="First day" type="date" />
          <Field name="to" label="Last day" type="date" />
          <Figure name="hours" label="Ends by itself after" unit="hours" />
          <Field name="items" label="Serials, with blanks between" />
        </div>
        {refusal && <Note weight="stop">{refusal}</Note>}
        <button type="submit" disabled={place.isPending}>
          Hold them
        </button>
      </Form>
    </details>
  );
}
