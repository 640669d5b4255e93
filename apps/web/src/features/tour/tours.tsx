import { useInfiniteQuery, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from 'react-router';
import { z } from 'zod';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { useRuledPlaces } from '../../platform/ruled-places.js';
import { Choice, Field, Form, useTypedForm } from '../../ui/form.js';
import { More } from '../../ui/more.js';
import { Loaded, Page } from '../../ui/page.js';
import { PlaceChoice } from '../../ui/places.js';
import { day, filled } from '../../ui/typed.js';
import { newTour } from './edit/new-tour.js';
import { RemovedTours } from './removed-tours.js';
import { rulesQuery, saveTour, toursQuery } from './edit/operations.js';
import { TourOfRouteForm } from './route/tour-of-route-form.js';
import { ShowFields } from './edit/show-fields.js';
import { fieldOfNewShow, typedShow } from './edit/typed-show.js';
import { scrolls } from '../../ui/scrolls.js';

export function Tours({ me }: { me: Person }) {
  const query = useInfiniteQuery({
    queryKey: ['tours'],
    queryFn: async ({ pageParam }) => (await request(toursQuery, { after: pageParam })).tours,
    initialPageParam: null as string | null,
    getNextPageParam: ({ pageInfo }) => (pageInfo.hasNextPage ? pageInfo.endCursor : undefined),
  });
  const tours = query.data?.pages.flatMap((page) => page.edges.map((edge) => edge.node)) ?? [];
  return (
    <Page title="Tours" lede="A tour is a chain of shows that share kit and trucks.">
      <Loaded query={query}>
        {() =>
          tours.length === 0 ? (
            <p>No tour yet. Make one below, or import a tour file.</p>
          ) : (
            <div {...scrolls}>
              <table>
                <thead>
                  <tr>
                    <th>Tour</th>
                    <th>First prep day</th>
                    <th>Last return day</th>
                    <th className="num">Shows</th>
                  </tr>
                </thead>
                <tbody>
                  {tours.map((tour) => (
                    <tr key={tour.id}>
                      <td>
                        <Link to={`/tours/${tour.id}`}>{tour.name}</Link>
                      </td>
                      <td>{tour.prepFrom}</td>
                      <td>{tour.returnTo}</td>
                      <td className="num">{tour.shows}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          )
        }
      </Loaded>
      <More of={query} />
      <p>
        <Link to="/venues">Venues and depots on file</Link>
      </p>
      {me.role === 'system' && <TourOfRouteForm />}
      {me.role === 'system' && <NewTourForm />}
      <RemovedTours me={me} />
    </Page>
  );
}

const typedTour = z.object({
  name: filled('a name'),
  depot: filled('the place where it starts and ends'),
  prepFrom: day,
  returnTo: day,
  jurisdiction: filled('a country'),
  loadRule: filled('a load rule'),
  ...typedShow.shape,
});
const nothing = {
  name: '',
  depot: '',
  prepFrom: '',
  returnTo: '',
  jurisdiction: '',
  loadRule: '',
  show: '',
  venue: '',
  timeZone: 'Europe/London',
  from: '',
  to: '',
};

function NewTourForm() {
  const rules = useQuery({ queryKey: ['house-rules'], queryFn: () => request(rulesQuery) });
  const form = useTypedForm(typedTour, nothing);
  const navigate = useNavigate();
  const client = useQueryClient();
  const ruled = useRuledPlaces();
  const loadRules = (rules.data?.rules as { loadRules: { id: string; title: string }[] } | undefined)?.loadRules ?? [];
  const save = useMutation({
    mutationFn: (typed: z.output<typeof typedTour>) => request(saveTour, { tour: newTour(typed, typed.loadRule), expectedVersion: null }),
    onSuccess: async ({ saveTour: { id } }) => {
      await client.invalidateQueries();
      await navigate(`/tours/${id}`);
    },
  });
  return (
    <details>
      <summary>Make a new tour</summary>
      {rules.data && loadRules.length === 0 && (
        <p>
          No load rule is on file, and a show needs one. <Link to="/rules">Make one first</Link>.
        </p>
      )}
      <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error} fieldOf={fieldOfNewShow}>
        <div className="fields">
          <Field name="name" label="Name of the tour" />
          <Field name="depot" label="Depot" />
          <Field name="prepFrom" label="First prep day" type="date" />
          <Field name="returnTo" label="Last return day" type="date" />
          <PlaceChoice name="jurisdiction" label="Country whose examination rules hold" ruled={ruled} />
          <Choice
            name="loadRule"
            label="Load rule"
            choices={[['', 'choose one'], ...loadRules.map((each) => [each.id, `${each.id}: ${each.title}`] as const)]}
          />
          <Field name="show" label="First show" />
          <ShowFields />
        </div>
        <button type="submit" disabled={save.isPending}>
          Make the tour
        </button>
      </Form>
    </details>
  );
}
