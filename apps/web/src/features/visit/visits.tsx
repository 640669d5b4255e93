import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import { addPeriod, isPlainDate } from '#kernel';
import { type Person, actsAsOfficer } from '../../platform/person.js';
import { type AnswerOf, request } from '../../platform/request.js';
import { today } from '../../platform/today.js';
import { Faults } from '../../ui/faults.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { CountedUse } from './counted-use.js';
import { OwnCalendar } from './own-calendar.js';
import { addDays, cancelVisit, moveVisit, visitsQuery } from './operations.js';
import { type Season, SeasonPlan } from './season-plan.js';
import { scrolls } from '../../ui/scrolls.js';

type Read = AnswerOf<typeof visitsQuery>;
type Visit = Read['visits'][number];

/** Visits of examiners over a season and all tours: which days are possible, which are needed, what is seen on each. */
export function Visits({ me }: { me: Person }) {
  const [season, setSeason] = useState<Season>(() => ({ from: today(), to: addPeriod(today(), { months: 12, days: 0 }), depot: '' }));
  const isSeason = isPlainDate(season.from) && isPlainDate(season.to) && season.from <= season.to;
  const query = useQuery({
    queryKey: ['visits', season],
    queryFn: () => request(visitsQuery, { ...season, depot: season.depot || null }),
    enabled: isSeason,
  });
  const isOfficer = actsAsOfficer(me, 'the house');
  return (
    <Page title="Visits" lede="On which days an examiner has to come, so that everything promised is in date on each day of its tours.">
      <Part number={1} title="Season">
        <div className="fields">
          {(['from', 'to'] as const).map((key) => (
            <label key={key}>
              {key === 'from' ? 'From' : 'To'}
              <input type="date" value={season[key]} onChange={(event) => setSeason({ ...season, [key]: event.target.value })} />
            </label>
          ))}
          <label>
            Depot
            <select value={season.depot} onChange={(event) => setSeason({ ...season, depot: event.target.value })}>
              <option value="">all depots</option>
              {(query.data?.depots ?? []).map((each) => (
                <option key={each}>{each}</option>
              ))}
            </select>
          </label>
        </div>
      </Part>
      <Loaded query={query}>
        {(read) => (
          <>
            <Part number={2} title="Days on which an examiner may come">
              <Days visits={read.visits} mayChange={actsAsOfficer(me, 'the house')} />
              {actsAsOfficer(me, 'the house') && <AddDays read={read} />}
            </Part>
            {actsAsOfficer(me, 'the house') && <SeasonPlan season={season} visits={read.visits} />}
          </>
        )}
      </Loaded>
      <CountedUse number={isOfficer ? 4 : 3} depot={season.depot} />
      <Part number={isOfficer ? 5 : 4} title="Calendar">
        <OwnCalendar depots={query.data?.depots ?? []} />
      </Part>
      <p className="caution">
        Dates are computed from the records on file and from the promises of tours. They do not replace the examination: a competent person
        decides what may be used.
      </p>
    </Page>
  );
}

const states: Record<string, string> = { possible: '◐ possible', agreed: '○ agreed', cancelled: '■ cancelled' };

function Days({ visits, mayChange }: { visits: readonly Visit[]; mayChange: boolean }) {
  if (visits.length === 0)
    return (
      <p>
        No day yet.{' '}
        {mayChange ? 'Enter the days that your examiner offers.' : 'The safety officer enters the days that the examiner offers.'}
      </p>
    );
  return (
    <div {...scrolls}>
      <table>
        <thead>
          <tr>
            <th>Day</th>
            <th>Where</th>
            <th>State</th>
            <th className="num">Items</th>
            <th className="num">Entered</th>
            <th className="noprint">Change</th>
          </tr>
        </thead>
        <tbody>
          {visits.map((each) => (
            <tr key={each.id}>
              <td className="mono">
                <Link to={`/visits/${each.id}`}>{each.onDay}</Link>
              </td>
              <td>{each.placeName}</td>
              <td>{states[each.state]}</td>
              <td className="num">{each.list?.length ?? ''}</td>
              <td className="num">{each.entered || ''}</td>
              <td className="noprint">
                {mayChange && each.state !== 'cancelled' && (each.entered > 0 ? 'results are entered' : <ChangeDay visit={each} />)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function ChangeDay({ visit }: { visit: Visit }) {
  const [onDay, setOnDay] = useState(visit.onDay);
  const client = useQueryClient();
  const onSuccess = () => client.invalidateQueries({ queryKey: ['visits'] });
  const named = { id: visit.id, expectedVersion: visit.version };
  const move = useMutation({ mutationFn: () => request(moveVisit, { ...named, onDay }), onSuccess });
  const cancel = useMutation({ mutationFn: () => request(cancelVisit, named), onSuccess });
  return (
    <details>
      <summary>Move or cancel</summary>
      <div className="row">
        <input
          type="date"
          aria-label={`New day of the visit of ${visit.onDay}`}
          value={onDay}
          onChange={(event) => setOnDay(event.target.value)}
        />
        <button type="button" className="small" disabled={onDay === visit.onDay || move.isPending} onClick={() => move.mutate()}>
          Move
        </button>
        <button type="button" className="plain small" disabled={cancel.isPending} onClick={() => cancel.mutate()}>
          Nobody comes
        </button>
      </div>
      <Faults of={move.error ?? cancel.error} />
    </details>
  );
}

/** Several days at once, as an examiner writes them in a mail. */
function AddDays({ read }: { read: Read }) {
  const [text, setText] = useState('');
  const [at, setAt] = useState('');
  const client = useQueryClient();
  const place = at === '' ? `depot ${read.depots[0] ?? ''}` : at;
  const show = read.showsInSeason.find((each) => `show ${each.tourId} ${each.showId}` === place);
  const days = text.split(/[\s,;]+/).filter((each) => each !== '');
  const add = useMutation({
    mutationFn: () =>
      request(addDays, {
        days: days.map((onDay) => (show ? { onDay, tourId: show.tourId, showId: show.showId } : { onDay, depot: place.slice(6) })),
      }),
    onSuccess: async () => {
      setText('');
      await client.invalidateQueries({ queryKey: ['visits'] });
    },
  });
  return (
    <div className="fields noprint at-foot">
      <label>
        Where
        <select value={place} onChange={(event) => setAt(event.target.value)}>
          {read.depots.map((each) => (
            <option key={each} value={`depot ${each}`}>
              {each}
            </option>
          ))}
          {read.showsInSeason.map((each) => (
            <option key={`${each.tourId} ${each.showId}`} value={`show ${each.tourId} ${each.showId}`}>
              {each.name}, {each.from}
              {each.to === each.from ? '' : ` to ${each.to}`}
            </option>
          ))}
        </select>
      </label>
      <label>
        Days, as 2027-03-14, several with blanks between
        <textarea rows={2} value={text} onChange={(event) => setText(event.target.value)} />
      </label>
      <button type="button" disabled={days.length === 0 || add.isPending} onClick={() => add.mutate()}>
        Add days
      </button>
      <Faults of={add.error} />
    </div>
  );
}
