import { useState } from 'react';
import { Link, useParams } from 'react-router';
import { useSettings } from '../../platform/settings.js';
import { Loaded, Page } from '../../ui/page.js';
import { useWholePlan } from '../plan/use-plan-parts.js';
import { type PlanInForce, useShow } from '../plan/use-show.js';
import type { PackPlan } from '#pack-plan';
import { sheetsOf } from './printed-plan.js';

/** Every sheet of a show by its name, each printed alone. */
export function PrintList() {
  const { tourId = '', showId = '' } = useParams();
  const query = useShow(tourId, showId);
  const shown = query.data?.inForce;
  const whole = useWholePlan(shown?.id);
  return (
    <Loaded query={query}>
      {(show) => (
        <Page title={`Print: ${show.name}`} lede={<Link to={`/tours/${tourId}/shows/${showId}`}>Back to the show</Link>}>
          {shown ? (
            <Loaded query={whole}>{(plan) => <List plan={plan} shown={shown} base={`/print/${tourId}/${showId}`} />}</Loaded>
          ) : (
            <p>There is no plan of this show yet: nothing to print.</p>
          )}
        </Page>
      )}
    </Loaded>
  );
}

function List({ plan, shown, base }: { plan: PackPlan; shown: PlanInForce; base: string }) {
  const { units } = useSettings();
  const [paper, setPaper] = useState<'A4' | 'Letter'>('A4');
  const named = sheetsOf(plan, shown, units, () => null);
  const to = (key: string, only?: string) =>
    `${base}/${key}?${new URLSearchParams({ paper, ...(only === undefined ? {} : { only }) }).toString()}`;
  return (
    <>
      <p>
        {shown.revision ? `Revision ${shown.revision}` : 'Draft, not released'}
        {shown.changed.length > 0 ? '. ◐ Stale: inputs have changed since.' : '.'} Every page carries tour, show, date and page number.
      </p>
      <div className="row">
        <label>
          Paper{' '}
          <select value={paper} onChange={(event) => setPaper(event.target.value === 'Letter' ? 'Letter' : 'A4')}>
            <option>A4</option>
            <option>Letter</option>
          </select>
        </label>
        <Link className="btn" to={to('all')} target="_blank">
          Print all sheets
        </Link>
      </div>
      {named.map(({ key, name, parts }) => (
        <section key={key} aria-label={name}>
          <div className="n" aria-hidden="true" />
          <div>
            <h2>{name}</h2>
            <div className="row">
              <Link className="btn plain" to={to(key)} target="_blank">
                {parts.length === 1 ? `Print ${parts[0]?.name ?? name}` : `Print ${name.toLowerCase()}: all ${parts.length}`}
              </Link>
              {parts.length > 1 &&
                parts.map((part) => (
                  <Link key={part.name} to={to(key, part.name)} target="_blank" aria-label={`Print ${name.toLowerCase()}, ${part.name}`}>
                    {part.name}
                  </Link>
                ))}
            </div>
          </div>
          <aside />
        </section>
      ))}
    </>
  );
}
