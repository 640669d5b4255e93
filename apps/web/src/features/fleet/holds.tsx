import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { graphql } from '#contracts';
import type { Person } from '../../app/person.js';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';
import { Loaded } from '../../ui/page.js';

const holdsQuery = graphql(`query OpenHolds { openHolds { name from to until items } }`);
const placeMutation = graphql(`
  mutation PlaceHold($hold: HoldInput!) {
    placeHold(hold: $hold) { __typename ... on Hold { name } ... on BookingRefusal { sentence } }
  }
`);
const backMutation = graphql(`mutation GiveHoldBack($name: String!) { giveHoldBack(name: $name) }`);

/** Serials kept for somebody; a hold ends by itself. */
export function Holds({ me }: { me: Person }) {
  const client = useQueryClient();
  const query = useQuery({ queryKey: ['holds'], queryFn: () => request(holdsQuery) });
  const back = useMutation({ mutationFn: (name: string) => request(backMutation, { name }), onSuccess: () => client.invalidateQueries() });
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
                <li key={hold.name} className="row">
                  <span>
                    <b>{hold.name}</b>, {hold.from} to {hold.to}, ends {hold.until.slice(0, 16).replace('T', ' ')}:{' '}
                    <span className="mono">{hold.items.join(', ')}</span>
                  </span>
                  {mayHold && (
                    <button type="button" className="plain small" disabled={back.isPending} onClick={() => back.mutate(hold.name)}>
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

function NewHold() {
  const [form, setForm] = useState({ name: '', from: '', to: '', hours: '48', items: '' });
  const client = useQueryClient();
  const place = useMutation({
    mutationFn: () =>
      request(placeMutation, {
        hold: {
          name: form.name.trim(),
          from: form.from,
          to: form.to,
          hours: Number(form.hours),
          items: form.items.split(/[\s,]+/).filter((each) => each !== ''),
        },
      }),
    onSuccess: () => client.invalidateQueries(),
  });
  const refusal = place.data?.placeHold.__typename === 'BookingRefusal' ? place.data.placeHold.sentence : undefined;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    place.mutate();
  };
  const field = (key: keyof typeof form, label: string, type = 'text') => (
    <label>
      {label}
      <input type={type} required value={form[key]} onChange={(event) => setForm({ ...form, [key]: event.target.value })} />
    </label>
  );
  return (
    <details>
      <summary>Put items on hold</summary>
      <form onSubmit={submit}>
        <div className="fields">
          {field('name', 'Held for')}
          {field('from', 'First day', 'date')}
          {field('to', 'Last day', 'date')}
          {field('hours', 'Ends by itself after, hours', 'number')}
          {field('items', 'Serials, with blanks between')}
        </div>
        <Faults of={place.error} />
        {refusal && <Note weight="stop">{refusal}</Note>}
        <button type="submit" disabled={place.isPending}>
          Hold them
        </button>
      </form>
    </details>
  );
}
