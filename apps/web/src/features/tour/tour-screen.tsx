import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { z } from 'zod';
import { graphql } from '#contracts';
import type { Tour } from '#tour-file';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Field, Figure, Form, useTypedForm } from '../../ui/form.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { figureOrNothing, filled } from '../../ui/typed.js';
import { BetweenShows } from './between-shows.js';
import { newShow } from './new-tour.js';
import { saveTour, tourQuery } from './operations.js';
import { ShowFields, fieldOfNewShow, typedShow } from './show-fields.js';
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
            <ShowTable tour={tour} states={showStates} />
            <AddShow tour={tour} version={version} />
            <Names key={version} tour={tour} version={version} />
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

interface ShowState {
  readonly showId: string;
  readonly state: string;
  readonly revision?: string | null;
  readonly stops: number;
  readonly looks: number;
}

function ShowTable({ tour, states }: { tour: Tour; states: readonly ShowState[] }) {
  return (
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
            const state = states.find((each) => each.showId === show.id);
            return (
              <tr key={show.id}>
                <td>
                  <Link to={`/tours/${tour.id}/shows/${show.id}`}>{show.name}</Link>
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
  const nothing = { show: '', venue: '', timeZone: tour.shows[0]?.timeZone ?? 'Europe/London', from: '', to: '' };
  const form = useTypedForm(typedShow, nothing);
  const save = useSave(version);
  const add = (typed: z.output<typeof typedShow>) =>
    save.mutate(
      {
        ...tour,
        shows: [...tour.shows, newShow(typed, tour.shows[0]?.loadRule ?? '')].sort((a, b) => (a.from < b.from ? -1 : 1)),
      },
      { onSuccess: () => form.reset(nothing) },
    );
  return (
    <details>
      <summary>Add a show</summary>
      <Form form={form} onSubmit={add} error={save.error} fieldOf={fieldOfNewShow}>
        <div className="fields">
          <Field name="show" label="Name" />
          <ShowFields />
        </div>
        <button type="submit" disabled={save.isPending}>
          Add the show
        </button>
      </Form>
    </details>
  );
}

const typedNames = z.object({ tour: filled('a name'), shows: z.array(filled('a name')) });
const fieldOfNames = (path: string): string | undefined => {
  const show = /^tour\.shows\[(\d+)\]\.name$/.exec(path)?.[1];
  return show === undefined ? (path === 'tour.name' ? 'tour' : undefined) : `shows.${show}`;
};

/** What the tour and its shows are called; ids, plans, promises and ticks stay what they are. */
function Names({ tour, version }: { tour: Tour; version: number }) {
  const form = useTypedForm(typedNames, { tour: tour.name, shows: tour.shows.map((show) => show.name) });
  const save = useSave(version);
  const rename = (names: z.output<typeof typedNames>) =>
    save.mutate({
      ...tour,
      name: names.tour,
      shows: tour.shows.map((show, index) => ({ ...show, name: names.shows[index] ?? show.name })),
    });
  return (
    <details>
      <summary>Names</summary>
      <Form form={form} onSubmit={rename} error={save.error} fieldOf={fieldOfNames}>
        <p className="quiet">Only the words change: plans, promises and what is ticked stay with their tour and show.</p>
        <div className="fields">
          <Field name="tour" label="Tour" />
          {tour.shows.map((show, index) => (
            <Field key={show.id} name={`shows.${index}`} label={`Show from ${show.from}`} />
          ))}
        </div>
        <button type="submit" disabled={save.isPending}>
          Save the names
        </button>
      </Form>
    </details>
  );
}

const weight = figureOrNothing('a number from 0 to 1000000, or nothing', { min: 0, max: 1e6 });
const typedWishes = z.object({ dueSoon: weight, wear: weight });

/** Weights are set here or the usual ones hold. */
function Wishes({ tour, version }: { tour: Tour; version: number }) {
  const form = useTypedForm(typedWishes, { dueSoon: String(tour.wishes?.dueSoon ?? ''), wear: String(tour.wishes?.wear ?? '') });
  const save = useSave(version);
  const weigh = ({ dueSoon, wear }: z.output<typeof typedWishes>) => {
    const { wishes: _wishes, ...rest } = tour;
    const wishes = { ...(dueSoon === undefined ? {} : { dueSoon }), ...(wear === undefined ? {} : { wear }) };
    save.mutate(Object.keys(wishes).length === 0 ? rest : { ...rest, wishes });
  };
  return (
    <Form form={form} onSubmit={weigh} error={save.error}>
      <p>
        The plan then takes the fewest carts, then boxes that do not fall due within 30 days after the tour, then the less used, with like
        boxes left and right.
      </p>
      <details>
        <summary>Weigh these otherwise</summary>
        <div className="fields">
          <Figure name="dueSoon" label="A box that falls due soon" description="empty: the usual 1000" />
          <Figure name="wear" label="Each use of a box" description="empty: the usual 1" />
        </div>
        <button type="submit" className="plain" disabled={save.isPending}>
          Save the weights
        </button>
      </details>
    </Form>
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
                    className="tick"
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
              className="tick"
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
                      className="tick"
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
