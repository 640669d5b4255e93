import { useState } from 'react';
import { itemKinds } from '#tour-file';
import { type DatesAsked, useDatesChoices } from './dates-asked.js';

/** Depot, tour, kind and days ahead of the due list. */
export function DatesChoices({ asked, put }: { asked: DatesAsked; put: (name: keyof DatesAsked, value: string) => void }) {
  const { data } = useDatesChoices();
  const tours = data?.tours.edges.map(({ node }) => node) ?? [];
  const days = [...new Set(['30', '90', ...(asked.days ? [asked.days] : [])])];
  return (
    <form className="fields" onSubmit={(event) => event.preventDefault()}>
      <DepotChoice key={asked.depot} value={asked.depot} depots={data?.depots ?? []} put={(value) => put('depot', value)} />
      <label>
        Tour
        <select value={asked.tour} onChange={(event) => put('tour', event.target.value)}>
          <option value="">all kit</option>
          {tours.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
          {asked.tour !== '' && !tours.some(({ id }) => id === asked.tour) && <option value={asked.tour}>{asked.tour}</option>}
        </select>
      </label>
      <label>
        Kind
        <select value={asked.kind} onChange={(event) => put('kind', event.target.value)}>
          <option value="">all kinds</option>
          {itemKinds.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </label>
      <label>
        Runs out
        <select value={asked.days} onChange={(event) => put('days', event.target.value)}>
          <option value="">any day</option>
          {days.map((each) => (
            <option key={each} value={each}>
              in the next {each} days
            </option>
          ))}
        </select>
      </label>
    </form>
  );
}

/** Asked for when it has been typed whole. */
function DepotChoice({ value, depots, put }: { value: string; depots: readonly string[]; put: (value: string) => void }) {
  const [typed, type] = useState(value);
  return (
    <label>
      Depot
      <input
        list="dates-depots"
        value={typed}
        placeholder="all depots"
        onChange={(event) => type(event.target.value)}
        onBlur={() => typed !== value && put(typed)}
        onKeyDown={(event) => event.key === 'Enter' && put(typed)}
      />
      <datalist id="dates-depots">
        {depots.map((each) => (
          <option key={each} value={each} />
        ))}
      </datalist>
    </label>
  );
}
