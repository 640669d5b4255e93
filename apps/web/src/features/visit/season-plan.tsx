import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import type { NotSaved, SeasonAnswer, SeasonCount } from '#inspection-calendar';
import { type AnswerOf, request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Loaded, Part } from '../../ui/page.js';
import { agreeVisits, seasonQuery, type visitsQuery } from './operations.js';
import { scrolls } from '../../ui/scrolls.js';

export interface Season {
  readonly from: string;
  readonly to: string;
  /** Empty: all. */
  readonly depot: string;
}

type Visits = AnswerOf<typeof visitsQuery>['visits'];

/** The fewest visits with their proof, what none of them saves, and what it would be without some. */
export function SeasonPlan({ season, visits }: { season: Season; visits: Visits }) {
  const [withIdle, setWithIdle] = useState(false);
  const [check, setCheck] = useState('examination');
  const [without, setWithout] = useState<readonly string[]>([]);
  const asked = { ...season, depot: season.depot || null };
  const days = visits.map((each) => `${each.id} ${each.onDay} ${each.state === 'cancelled'}`);
  const query = useQuery({
    queryKey: ['visit-season', asked, withIdle, without, days, check],
    queryFn: async () => (await request(seasonQuery, { ...asked, withIdle, without: [...without], check })).visitSeason,
  });
  const client = useQueryClient();
  const agree = useMutation({
    mutationFn: (answer: SeasonAnswer) => request(agreeVisits, { ...asked, visits: answer.visits.map((each) => each.id) }),
    onSuccess: () => client.invalidateQueries({ queryKey: ['visits'] }),
  });
  const nameOf = (id: string): string => visits.find((each) => each.id === id)?.placeName ?? '';
  return (
    <Part number={3} title="The fewest visits" margin={<Asked check={check} onCheck={setCheck} withIdle={withIdle} onIdle={setWithIdle} />}>
      <Loaded query={query}>
        {({ answer, without: left, names }) => (
          <>
            {check !== 'examination' && (
              <p className="quiet">
                By the dates of this check alone, on the days above on which somebody may come. What is agreed and listed is the
                examination; this is to plan the other check by.
              </p>
            )}
            <p>
              <b>{visitsIn(answer.count)}</b> {proofOf(answer.count)}
            </p>
            {promisedAlone}
            {withIdle && (
              <p>
                With idle kit in date on every day: {visitsIn(answer.withIdle)} {proofOf(answer.withIdle)} {answer.withIdle.notSaved}{' '}
                {answer.withIdle.notSaved === 1 ? 'item' : 'items'} cannot be kept so. What waits at its depot may run out there, and is
                examined before it is next promised.
              </p>
            )}
            {left && <WithoutDays before={answer} after={left} />}
            <ChosenVisits
              of={answer}
              nameOf={nameOf}
              without={without}
              onTurn={(id) => setWithout(without.includes(id) ? without.filter((each) => each !== id) : [...without, id])}
            />
            {answer.visits.length > 0 && check === 'examination' && (
              <button type="button" disabled={agree.isPending || without.length > 0} onClick={() => agree.mutate(answer)}>
                Agree these visits
              </button>
            )}
            {agree.isSuccess && <p role="status">Agreed: the lists stand behind each day above.</p>}
            <Faults of={agree.error} />
            <NotSavedItems of={answer.notSaved} names={new Map(names.map((each) => [each.id, `${each.kind}, ${each.model}`]))} />
          </>
        )}
      </Loaded>
    </Part>
  );
}

const promisedAlone = (
  <p className="quiet">
    Only what is promised is planned for: by released plans, by holds and to people by name. Plans that are still drafts are not counted;
    look again when they are released.
  </p>
);

interface AskedProps {
  check: string;
  onCheck: (check: string) => void;
  withIdle: boolean;
  onIdle: (withIdle: boolean) => void;
}

const Asked = ({ check, onCheck, withIdle, onIdle }: AskedProps) => (
  <>
    <label>
      What is due
      <select value={check} onChange={(event) => onCheck(event.target.value)}>
        <option value="examination">examination</option>
        <option value="electrical">electrical check</option>
        <option value="pre-use">pre-use check</option>
      </select>
    </label>
    <label className="row">
      <input type="checkbox" className="tick" checked={withIdle} onChange={(event) => onIdle(event.target.checked)} />
      Count what it takes to keep idle kit in date as well
    </label>
  </>
);

interface Chosen {
  of: SeasonAnswer;
  nameOf: (id: string) => string;
  without: readonly string[];
  onTurn: (id: string) => void;
}

const ChosenVisits = ({ of: answer, nameOf, without, onTurn }: Chosen) => (
  <table>
    <thead>
      <tr>
        <th>Day</th>
        <th>Where</th>
        <th className="num">Items</th>
        <th className="noprint">What if it falls away</th>
      </tr>
    </thead>
    <tbody>
      {answer.visits.map((each) => (
        <tr key={each.id}>
          <td className="mono">{each.on}</td>
          <td>{nameOf(each.id)}</td>
          <td className="num">
            <details>
              <summary>{each.items.length}</summary>
              <span className="mono">{each.items.map((item) => item.id).join(', ')}</span>
            </details>
          </td>
          <td className="noprint">
            <input
              type="checkbox"
              className="tick"
              aria-label={`Without ${each.on}`}
              checked={without.includes(each.id)}
              onChange={() => onTurn(each.id)}
            />
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);

const visitsIn = ({ visits, examinations }: SeasonCount): string =>
  `${visits} ${visits === 1 ? 'visit' : 'visits'} with ${examinations} ${examinations === 1 ? 'examination' : 'examinations'}.`;

function proofOf({ visits, visitsAtLeast, examinations, examinationsAtLeast }: SeasonCount): string {
  if (visits > visitsAtLeast) return `Not proved to be the fewest: at least ${visitsAtLeast} are needed.`;
  if (examinations > examinationsAtLeast)
    return `Proved: no choice of the days has fewer visits. Of examinations, at least ${examinationsAtLeast} are needed.`;
  return 'Proved: no choice of the days has fewer visits, and none of so few visits has fewer examinations.';
}

function WithoutDays({ before, after }: { before: SeasonAnswer; after: SeasonAnswer }) {
  const known = new Set(before.notSaved.map((each) => each.id));
  const lost = after.notSaved.filter((each) => !known.has(each.id)).map((each) => each.id);
  return (
    <p>
      <b>Without the days that are ticked:</b> {visitsIn(after.count)} On {after.visits.map((each) => each.on).join(', ') || 'no day'}.{' '}
      {lost.length === 0 ? 'Everything is still served.' : `■ ${lost.length} more cannot be kept in date: ${lost.slice(0, 20).join(', ')}.`}
    </p>
  );
}

const reasons: Record<NotSaved['code'], string> = {
  failed: 'failed: it needs repair and a report first',
  'nobody-comes': 'no examiner comes in time',
  elsewhere: 'an examiner comes in time, and it is elsewhere',
};

function NotSavedItems({ of, names }: { of: readonly NotSaved[]; names: ReadonlyMap<string, string> }) {
  if (of.length === 0) return <p>○ Every item that is promised is served.</p>;
  return (
    <>
      <h3>■ What none of these days saves: {of.length}</h3>
      <div {...scrolls}>
        <table>
          <thead>
            <tr>
              <th>Item</th>
              <th>What</th>
              <th>Needed on</th>
              <th>Why</th>
              <th>It could be seen</th>
            </tr>
          </thead>
          <tbody>
            {of.map((each) => (
              <tr key={each.id}>
                <td className="mono">
                  <Link to={`/register/${encodeURIComponent(each.id)}`}>{each.id}</Link>
                </td>
                <td>{names.get(each.id)}</td>
                <td className="mono">{each.neededOn}</td>
                <td>{reasons[each.code]}</td>
                <td>
                  {each.chances
                    .map(
                      (chance) => `${chance.from} to ${chance.to}${chance.at.kind === 'depot' ? `, ${chance.at.depot}` : ', at the show'}`,
                    )
                    .join('; ')}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
