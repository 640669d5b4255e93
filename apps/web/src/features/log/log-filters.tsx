import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useSearchParams } from 'react-router';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';

const peopleQuery = graphql(`query LogPeople { people { id name } }`);
const toursQuery = graphql(`query LogTours { tours(first: 200) { edges { node { id name } } } }`);

/** What is looked for: all of it in the address, so that a view can be sent to another. */
export function LogFilters() {
  const [asked, ask] = useSearchParams();
  const people = useQuery({ queryKey: ['log people'], queryFn: () => request(peopleQuery) });
  const tours = useQuery({ queryKey: ['log tours'], queryFn: () => request(toursQuery) });
  const put = (name: string, value: string) =>
    ask(
      (before) => {
        const next = new URLSearchParams(before);
        if (value.trim() === '') next.delete(name);
        else next.set(name, value.trim());
        return next;
      },
      { replace: true },
    );
  return (
    <form className="row" onSubmit={(event) => event.preventDefault()}>
      <ItemFilter key={asked.get('item') ?? ''} value={asked.get('item') ?? ''} put={(value) => put('item', value)} />
      <label>
        Tour
        <select value={asked.get('tour') ?? ''} onChange={(event) => put('tour', event.target.value)}>
          <option value="">any</option>
          {tours.data?.tours.edges.map(({ node }) => (
            <option key={node.id} value={node.id}>
              {node.name}
            </option>
          ))}
        </select>
      </label>
      <label>
        Person
        <select value={asked.get('person') ?? ''} onChange={(event) => put('person', event.target.value)}>
          <option value="">anybody</option>
          {people.data?.people.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        Day
        <input type="date" value={asked.get('day') ?? ''} onChange={(event) => put('day', event.target.value)} />
      </label>
    </form>
  );
}

/** Asked for when it has been typed whole. */
function ItemFilter({ value, put }: { value: string; put: (value: string) => void }) {
  const [typed, type] = useState(value);
  return (
    <label>
      Item
      <input
        value={typed}
        placeholder="serial or batch"
        onChange={(event) => type(event.target.value)}
        onBlur={() => typed !== value && put(typed)}
        onKeyDown={(event) => event.key === 'Enter' && put(typed)}
      />
    </label>
  );
}
