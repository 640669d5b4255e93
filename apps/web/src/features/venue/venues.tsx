import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { z } from 'zod';
import { graphql } from '#contracts';
import { placeName } from '#trade';
import type { Venue } from '#tour-file';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { useRuledPlaces } from '../../platform/ruled-places.js';
import { Choice, Field, Form, useTypedForm } from '../../ui/form.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { PlaceChoice, whyNoPlace, zoneChoices } from '../../ui/places.js';
import { filled } from '../../ui/typed.js';

const venuesQuery = graphql(`query Venues { venues { id version venue shows { tourId showId } } }`);
const saveMutation = graphql(`
  mutation SaveVenue($id: ID, $venue: VenueJson!, $expectedVersion: Int) { saveVenue(id: $id, venue: $venue, expectedVersion: $expectedVersion) { id } }
`);

/** Where shows are. */
export function Venues({ me }: { me: Person }) {
  const query = useQuery({ queryKey: ['venues'], queryFn: () => request(venuesQuery) });
  return (
    <Page
      title="Venues and depots"
      lede="What the houses say of themselves. A show says at which one it is; the words of its tour stay as they were written. A depot stands here under the name that the register uses: its zone says which day it is there."
    >
      <Loaded query={query}>
        {({ venues }) => (
          <>
            {venues.length === 0 && <p>No venue yet.</p>}
            {venues.map(({ id, version, venue, shows }, index) => (
              <Part key={id} number={index + 1} title={venue.name}>
                <p>
                  {[venue.city, venue.country && placeName(venue.country), venue.timeZone].filter(Boolean).join(', ')}. {shows.length}{' '}
                  {shows.length === 1 ? 'show' : 'shows'}, {venue.points.length} {venue.points.length === 1 ? 'point' : 'points'} on file.
                </p>
                <NoCountry of={venue} />
                {me.role === 'system' && <VenueForm id={id} version={version} venue={venue} title="Change" />}
              </Part>
            ))}
          </>
        )}
      </Loaded>
      {me.role === 'system' && <VenueForm id={null} version={null} venue={nothing} title="Add a venue" />}
    </Page>
  );
}

/** Before venues had to say whose law holds there. */
function NoCountry({ of: { country } }: { of: Partial<Venue> }) {
  const why = country === undefined ? 'no country on file: whose law holds there is not known' : whyNoPlace(country);
  return why === undefined ? null : <p>■ {why}. Choose its country.</p>;
}

const nothing: Venue = { name: '', country: '', timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone, points: [], doors: [] };
const typedVenue = z.object({
  name: filled('a name'),
  city: z.string().trim(),
  country: filled('a country'),
  timeZone: filled('a zone'),
  datum: z.string().trim(),
});

/** What may be typed of a venue; the rest of what is on file of it stays. */
function VenueForm({ id, version, venue, title }: { id: string | null; version: number | null; venue: Venue; title: string }) {
  const { name, city = '', country = '', timeZone, datum = '' } = venue;
  const form = useTypedForm(typedVenue, { name, city, country, timeZone, datum });
  const ruled = useRuledPlaces();
  const client = useQueryClient();
  const save = useMutation({
    mutationFn: (typed: z.output<typeof typedVenue>) => {
      const { city: _city, datum: _datum, ...rest } = venue;
      const said = Object.fromEntries(Object.entries(typed).filter(([, value]) => value !== ''));
      return request(saveMutation, { id, venue: { ...rest, ...said }, expectedVersion: version });
    },
    onSuccess: async () => {
      if (id === null) form.reset();
      await client.invalidateQueries({ queryKey: ['venues'] });
    },
  });
  return (
    <details>
      <summary>{title}</summary>
      <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error}>
        <div className="fields">
          <Field name="name" label="Name" />
          <Field name="city" label="City" />
          <PlaceChoice name="country" label="Country" ruled={ruled} onFile={country} />
          <Choice name="timeZone" label="Time zone" choices={zoneChoices(timeZone)} />
          <Field name="datum" label="Datum" description="where measures start, in words" />
        </div>
        <button type="submit" disabled={save.isPending}>
          Save
        </button>
      </Form>
    </details>
  );
}
