import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { useListAddress } from '../../ui/list/list-address.js';
import { SavedFilters } from '../../ui/list/saved-filters.js';

const peopleQuery = graphql(`query LogPeople { people { id name } }`);
const toursQuery = graphql(`query LogTours { tours(first: 200) { edges { node { id name } } } }`);

/** What is looked for: all of it in the address, so that a view can be sent to another. */
export function LogFilters() {
  const { asked, put, search, show } = useListAddress(['item', 'tour', 'person', 'day']);
  const people = useQuery({ queryKey: ['log people'], queryFn: () => request(peopleQuery) });
  const tours = useQuery({ queryKey: ['log tours'], queryFn: () => request(toursQuery) });
  return (
    <>
      <form className="row" onSubmit={(event) => event.preventDefault()}>
        <ItemFilter key={asked.item} value={asked.item} put={(value) => put('item', value)} />
        <label>
          Tour
          <select value={asked.tour} onChange={(event) => put('tour', event.target.value)}>
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
          <select value={asked.person} onChange={(event) => put('person', event.target.value)}>
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
          <input type="date" value={asked.day} onChange={(event) => put('day', event.target.value)} />
        </label>
      </form>
      <SavedFilters list="log" search={search} show={show} />
    </>
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
