import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate, useParams } from 'react-router';
import { z } from 'zod';
import type { Tour } from '#tour-file';
import type { Person } from '../../../platform/person.js';
import { request } from '../../../platform/request.js';
import { useRuledPlaces } from '../../../platform/ruled-places.js';
import { Field, Form, useTypedForm } from '../../../ui/form.js';
import { Loaded, Page, Part } from '../../../ui/page.js';
import { PlacesChoice } from '../../../ui/places.js';
import { day, days, filled } from '../../../ui/typed.js';
import { tourQuery } from '../edit/operations.js';
import { removeTour } from '../edit/removal-operations.js';
import { useTourSave } from '../edit/use-tour-save.js';
import { RemovePart } from './remove-part.js';

/** What a tour is as a whole: its name, days, depot and rules; and its removal. */
export function ChangeTour({ me }: { me: Person }) {
  const { tourId = '' } = useParams();
  const query = useQuery({ queryKey: ['tour', tourId], queryFn: () => request(tourQuery, { id: tourId }) });
  if (me.role !== 'system') return <Page title="Change the tour">The system tech changes tours.</Page>;
  return (
    <Loaded query={query}>
      {({ tour: { version, tour } }) => (
        <Page title={`Change ${tour.name}`} lede={<Link to={`/tours/${tourId}`}>Back to the tour</Link>}>
          <Part number={1} title="The tour">
            <TourForm tour={tour} version={version} />
          </Part>
          <Part number={2} title="Remove the tour">
            <Removal tourId={tourId} version={version} />
          </Part>
        </Page>
      )}
    </Loaded>
  );
}

const typedTour = z.object({
  name: filled('a name'),
  depot: filled('the place where it starts and ends'),
  prepFrom: day,
  returnTo: day,
  jurisdictions: z.array(z.string()).min(1, 'at least one place'),
  visitDays: days,
});

function TourForm({ tour, version }: { tour: Tour; version: number }) {
  const { name, depot, prepFrom, returnTo, jurisdictions, visitDays } = tour;
  const form = useTypedForm(typedTour, {
    name,
    depot,
    prepFrom,
    returnTo,
    jurisdictions,
    visitDays: visitDays.join(', '),
  });
  const saveIt = useTourSave({ tour, version }, form.formState.isDirty);
  const ruled = useRuledPlaces();
  const client = useQueryClient();
  const navigate = useNavigate();
  const save = useMutation({
    mutationFn: (typed: z.output<typeof typedTour>) => saveIt((of) => ({ ...of, ...typed })),
    onSuccess: async () => {
      await client.invalidateQueries();
      await navigate(`/tours/${tour.id}`);
    },
  });
  return (
    <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error}>
      <div className="fields">
        <Field name="name" label="Name of the tour" />
        <Field name="depot" label="Depot" />
        <Field name="prepFrom" label="First prep day" type="date" />
        <Field name="returnTo" label="Last return day" type="date" />
        <Field
          name="visitDays"
          label="Days on which an examiner can come"
          description="YYYY-MM-DD, with commas between; any day where empty"
        />
      </div>
      <PlacesChoice name="jurisdictions" label="Whose examination rules hold" ruled={ruled} />
      <p className="quiet">
        A venue on record adds the country that it is in. Every item that the tour holds is held from the first prep day to the last return
        day. Days on which somebody else holds one are refused.
      </p>
      <button type="submit" disabled={save.isPending}>
        Save the tour
      </button>
    </Form>
  );
}

function Removal({ tourId, version }: { tourId: string; version: number }) {
  const client = useQueryClient();
  const navigate = useNavigate();
  const remove = useMutation({
    mutationFn: () => request(removeTour, { tourId, expectedVersion: version }),
    onSuccess: async () => {
      await navigate('/tours');
      await client.invalidateQueries();
    },
  });
  return <RemovePart what="tour" tourId={tourId} remove={remove} />;
}
