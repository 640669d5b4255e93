import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { Link, useParams } from 'react-router';
import { graphql } from '#contracts';
import type { Tour } from '#tour-file';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { BetweenShows } from './between-shows.js';
import { newShow } from './new-tour.js';
import { saveTour, tourQuery } from './operations.js';
import { SpareSettings } from './spare-settings.js';

const kitQuery = graphql(`
  query TravellingKit {
    trucks: items(kind: "truck", first: 100) { edges { node { id model } } }
    cases: items(kind: "case", first: 200) { edges { node { id model } } }
  }
`);

export function TourScreen() {
  const { tourId = '' } = useParams();
  const query = useQuery({ queryKey: ['tour', tourId], queryFn: () => request(tourQuery, { id: tourId }) });
  return (
    <Loaded query={query}>
      {({ tour: { version, tour }, showStates }) => (
        <Page
          title={tour.name}
          lede={`${tour.prepFrom} to ${tour.returnTo}, from ${tour.depot}. Examination rules of ${tour.jurisdictions.join(', ')}.`}
        >
          <Part number={1} title="Shows" margin={<a href={`/api/tours/${tourId}/file`}>Save the tour as a file</a>}>
            <div className="scroll">
              <table>
                <thead>
                  <tr>
                    <th>Show</th>
                    <th>Venue</th>
                    <th>Days</th>
                    <th className="num">Hangs</th>
                    <th>Plan</th>
                  </tr>
                </thead>
                <tbody>
                  {tour.shows.map((show) => {
                    const state = showStates.find((each) => each.showId === show.id);
                    return (
                      <tr key={show.id}>
                        <td>
                          <Link to={`/tours/${tourId}/shows/${show.id}`}>{show.name}</Link>
                        </td>
                        <td>{show.venue}</td>
                        <td>{show.from === show.to ? show.from : `${show.from} to ${show.to}`}</td>
                        <td className="num">{show.hangs.length}</td>
                        <td>
                          {!state
                            ? 'no plan yet'
                            : `${state.state === 'released' ? `revision ${state.revision}` : 'draft'}: ${state.stops} to stop for, ${state.looks} to look at`}
                        </td>
                      </tr>
                    );
                  })}
                </tbody>
              </table>
            </div>
            <AddShow tour={tour} version={version} />
          </Part>
          <Part number={2} title="Carts between the shows">
            <BetweenShows tourId={tourId} />
          </Part>
          <Part number={3} title="Trucks and freight">
            <TravellingKit tour={tour} version={version} />
          </Part>
          <Part number={4} title="Spares of the hardware trunk">
            <SpareSettings tour={tour} version={version} />
          </Part>
          <Part number={5} title="Where plans need equally many box moves">
            <Wishes tour={tour} version={version} />
          </Part>
        </Page>
      )}
    </Loaded>
  );
}

function useSave(version: number) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (tour: Tour) => request(saveTour, { tour, expectedVersion: version }),
    onSuccess: () => client.invalidateQueries(),
  });
}

function AddShow({ tour, version }: { tour: Tour; version: number }) {
  const [form, setForm] = useState({ show: '', venue: '', timeZone: tour.shows[0]?.timeZone ?? 'Europe/London', from: '', to: '' });
  const save = useSave(version);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate({
      ...tour,
      shows: [...tour.shows, newShow(form, tour.shows[0]?.loadRule ?? '')].sort((a, b) => (a.from < b.from ? -1 : 1)),
    });
  };
  const field = (key: keyof typeof form, label: string, type = 'text') => (
    <label>
      {label}
      <input type={type} required value={form[key]} onChange={(event) => setForm({ ...form, [key]: event.target.value })} />
    </label>
  );
  return (
    <details>
      <summary>Add a show</summary>
      <form onSubmit={submit}>
        <div className="fields">
          {field('show', 'Name')}
          {field('venue', 'Venue')}
          {field('timeZone', 'Time zone')}
          {field('from', 'Load-in day', 'date')}
          {field('to', 'Load-out day', 'date')}
        </div>
        <Faults of={save.error} />
        <button type="submit" disabled={save.isPending}>
          Add the show
        </button>
      </form>
    </details>
  );
}

/** Weights are set here or the usual ones hold. */
function Wishes({ tour, version }: { tour: Tour; version: number }) {
  const [dueSoon, setDueSoon] = useState(String(tour.wishes?.dueSoon ?? ''));
  const [wear, setWear] = useState(String(tour.wishes?.wear ?? ''));
  const save = useSave(version);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const { wishes: _wishes, ...rest } = tour;
    const wishes = { ...(dueSoon === '' ? {} : { dueSoon: Number(dueSoon) }), ...(wear === '' ? {} : { wear: Number(wear) }) };
    save.mutate(Object.keys(wishes).length === 0 ? rest : { ...rest, wishes });
  };
  return (
    <form onSubmit={submit}>
      <p>
        The plan then takes the fewest carts, then boxes that do not fall due within 30 days after the tour, then the less used, with like
        boxes left and right.
      </p>
      <details>
        <summary>Weigh these otherwise</summary>
        <div className="fields">
          <label>
            A box that falls due soon (usual: 1000)
            <input inputMode="numeric" value={dueSoon} onChange={(event) => setDueSoon(event.target.value)} />
          </label>
          <label>
            Each use of a box (usual: 1)
            <input inputMode="numeric" value={wear} onChange={(event) => setWear(event.target.value)} />
          </label>
        </div>
        <button type="submit" className="plain" disabled={save.isPending}>
          Save the weights
        </button>
      </details>
      <Faults of={save.error} />
    </form>
  );
}

function TravellingKit({ tour, version }: { tour: Tour; version: number }) {
  const kit = useQuery({ queryKey: ['travelling-kit'], queryFn: () => request(kitQuery) });
  const save = useSave(version);
  const toggle = (list: string[], id: string) => (list.includes(id) ? list.filter((each) => each !== id) : [...list, id]);
  const cases = tour.freight.map((each) => each.case);
  return (
    <Loaded query={kit}>
      {(data) => (
        <>
          <h3>Trucks</h3>
          <ul className="plain row">
            {data.trucks.edges.map(({ node }) => (
              <li key={node.id}>
                <label className="row">
                  <input
                    type="checkbox"
                    style={{ width: 24, minHeight: 24 }}
                    checked={tour.trucks.includes(node.id)}
                    onChange={() => save.mutate({ ...tour, trucks: toggle(tour.trucks, node.id) })}
                  />
                  {node.id} {node.model}
                </label>
              </li>
            ))}
          </ul>
          <label className="row">
            <input
              type="checkbox"
              style={{ width: 24, minHeight: 24 }}
              checked={tour.roadRules?.includes('US bridge formula') ?? false}
              onChange={(event) => {
                const { roadRules: _roadRules, ...rest } = tour;
                save.mutate(event.target.checked ? { ...rest, roadRules: ['US bridge formula'] } : rest);
              }}
            />
            Hold every load against the federal bridge formula of the United States (23 U.S.C. 127)
          </label>
          <details>
            <summary>{cases.length} cases travel</summary>
            <ul className="plain row">
              {data.cases.edges.map(({ node }) => (
                <li key={node.id}>
                  <label className="row">
                    <input
                      type="checkbox"
                      style={{ width: 24, minHeight: 24 }}
                      checked={cases.includes(node.id)}
                      onChange={() =>
                        save.mutate({
                          ...tour,
                          freight: cases.includes(node.id)
                            ? tour.freight.filter((each) => each.case !== node.id)
                            : [...tour.freight, { case: node.id }],
                        })
                      }
                    />
                    {node.id} {node.model}
                  </label>
                </li>
              ))}
            </ul>
          </details>
          <Faults of={save.error} />
        </>
      )}
    </Loaded>
  );
}
