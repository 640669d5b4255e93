import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { today } from '../../platform/today.js';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { FirstDay } from './first-day.js';
import { Holds } from './holds.js';

const calendarQuery = graphql(`
  query FleetCalendar($from: String!, $days: Int!, $depot: String) {
    depots
    fleetCalendar(from: $from, days: $days, depot: $depot) { model count days { day free promised out short } }
  }
`);
const remediesQuery = graphql(
  `query Remedies($model: String!, $day: String!, $depot: String) { remedies(model: $model, day: $day, depot: $depot) { serial kind sentence } }`,
);

/** The boxes of the house over the days to come: free, promised, out, short; what would free one; holds. */
export function Fleet({ me }: { me: Person }) {
  const [from, setFrom] = useState(today);
  const [days, setDays] = useState(28);
  const [depot, setDepot] = useState('');
  const [cell, setCell] = useState<{ model: string; day: string } | null>(null);
  const query = useQuery({
    queryKey: ['fleet', from, days, depot],
    queryFn: () => request(calendarQuery, { from, days, depot: depot || null }),
    enabled: /^\d{4}-\d\d-\d\d$/.test(from),
  });
  return (
    <Page title="Fleet" lede="Every model of box on every day: how many nobody holds, and where it runs short.">
      <Part
        number={1}
        title="Free on the day"
        margin={
          <>
            <p className="note">
              <b>■ short</b> tours want more than they hold and is free
            </p>
            <p className="note">
              <b>18</b> free, of those that may be used
            </p>
          </>
        }
      >
        <div className="fields">
          <label>
            From
            <input type="date" value={from} onChange={(event) => setFrom(event.target.value || today())} />
          </label>
          <label>
            Days
            <select value={days} onChange={(event) => setDays(Number(event.target.value))}>
              {[14, 28, 56, 112].map((each) => (
                <option key={each}>{each}</option>
              ))}
            </select>
          </label>
          <label>
            At
            <select value={depot} onChange={(event) => setDepot(event.target.value)}>
              <option value="">any depot</option>
              {(query.data?.depots ?? []).map((each) => (
                <option key={each}>{each}</option>
              ))}
            </select>
          </label>
        </div>
        <Loaded query={query}>
          {({ fleetCalendar }) => (
            <div className="scroll wide">
              <table className="tight">
                <thead>
                  <tr>
                    <th>Day</th>
                    {fleetCalendar.map((each) => (
                      <th key={each.model} className="num">
                        {each.model} ({each.count})
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {(fleetCalendar[0]?.days ?? []).map(({ day }, index) => (
                    <tr key={day}>
                      <td>{day}</td>
                      {fleetCalendar.map((model) => {
                        const at = model.days[index]!;
                        return (
                          <td key={model.model} className="num">
                            <button
                              type="button"
                              className="plain small"
                              aria-label={`${model.model} on ${day}: ${at.free} free, ${at.promised} promised, ${at.out} out${at.short > 0 ? `, ${at.short} short` : ''}`}
                              onClick={() => setCell({ model: model.model, day })}
                            >
                              {at.short > 0 ? `■ ${at.free}, ${at.short} short` : at.free}
                            </button>
                          </td>
                        );
                      })}
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          )}
        </Loaded>
      </Part>
      {cell && <Remedies model={cell.model} day={cell.day} depot={depot} />}
      <Part number={cell ? 3 : 2} title="First day for a design">
        <FirstDay />
      </Part>
      <Part number={cell ? 4 : 3} title="Holds">
        <Holds me={me} />
      </Part>
    </Page>
  );
}

function Remedies({ model, day, depot }: { model: string; day: string; depot: string }) {
  const query = useQuery({
    queryKey: ['remedies', model, day, depot],
    queryFn: () => request(remediesQuery, { model, day, depot: depot || null }),
  });
  useEffect(() => document.getElementById('remedies')?.scrollIntoView({ block: 'nearest' }), [model, day]);
  return (
    <Part id="remedies" number={2} title={`What would free a ${model} on ${day}`}>
      <Faults of={query.error} />
      {query.data?.remedies.length === 0 && <p>No {model} is held back on that day: hire in, or change the design.</p>}
      <ol>
        {query.data?.remedies.map((each) => (
          <li key={each.serial}>{each.sentence}</li>
        ))}
      </ol>
    </Part>
  );
}
