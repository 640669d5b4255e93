import { useMutation, useQuery } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';

const showsQuery = graphql(`query ShowsToServe { tours { id name showNames { showId name } } }`);
const firstQuery = graphql(`
  query FirstDayFor($tourId: ID!, $showId: ID!, $from: String!, $days: Int!) {
    firstDayFor(tourId: $tourId, showId: $showId, from: $from, days: $days)
  }
`);

/** The first day from which the design of a show can be served for some days on end. */
export function FirstDay() {
  const tours = useQuery({ queryKey: ['shows-to-serve'], queryFn: () => request(showsQuery) });
  const shows = (tours.data?.tours ?? []).flatMap((each) =>
    each.showNames.map((show) => ({ tourId: each.id, showId: show.showId, name: `${each.name}: ${show.name}` })),
  );
  const [chosen, setChosen] = useState(0);
  const [from, setFrom] = useState(() => new Date().toISOString().slice(0, 10));
  const [days, setDays] = useState(3);
  const find = useMutation({
    mutationFn: () => request(firstQuery, { tourId: shows[chosen]!.tourId, showId: shows[chosen]!.showId, from, days }),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    find.mutate();
  };
  if (shows.length === 0) return <p className="quiet">No show is on file yet.</p>;
  return (
    <form onSubmit={submit}>
      <div className="fields">
        <label>
          Design of
          <select
            value={chosen}
            onChange={(event) => {
              setChosen(Number(event.target.value));
              find.reset();
            }}
          >
            {shows.map((each, index) => (
              <option key={each.name} value={index}>
                {each.name}
              </option>
            ))}
          </select>
        </label>
        <label>
          No earlier than
          <input
            type="date"
            value={from}
            onChange={(event) => {
              setFrom(event.target.value);
              find.reset();
            }}
          />
        </label>
        <label>
          Days on end
          <input
            type="number"
            min={1}
            max={400}
            value={days}
            onChange={(event) => {
              setDays(event.target.valueAsNumber || 1);
              find.reset();
            }}
          />
        </label>
      </div>
      <Faults of={find.error} />
      <button type="submit" className="plain" disabled={find.isPending}>
        Find the day
      </button>
      {find.data && (
        <p role="status">
          {find.data.firstDayFor
            ? `${find.data.firstDayFor}: from that day every box of the design is free for ${days} ${days === 1 ? 'day' : 'days on end'}.`
            : 'Not within the next 400 days. Look above at what would free a box.'}
        </p>
      )}
    </form>
  );
}
