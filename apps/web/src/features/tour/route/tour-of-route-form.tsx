import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useWatch } from 'react-hook-form';
import { Link, useNavigate } from 'react-router';
import { z } from 'zod';
import { idOf, tourOfRoute } from '#tour-file';
import { request } from '../../../platform/request.js';
import { useRuledPlaces } from '../../../platform/ruled-places.js';
import { Choice, Field, Form, useTypedForm } from '../../../ui/form.js';
import { PlaceChoice, zoneChoices } from '../../../ui/places.js';
import { day, filled } from '../../../ui/typed.js';
import { rulesQuery, saveTour } from '../edit/operations.js';
import { RouteFields } from './route-fields.js';
import { rowsOf, useRouteSheet } from './use-route-sheet.js';

const typedTour = z.object({
  name: filled('a name'),
  depot: filled('the place where it starts and ends'),
  prepFrom: day,
  returnTo: day,
  jurisdiction: filled('a country'),
  loadRule: filled('a load rule'),
  timeZone: filled('a zone'),
});
const nothing = { name: '', depot: '', prepFrom: '', returnTo: '', jurisdiction: '', loadRule: '', timeZone: 'Europe/London' };

/** A whole tour of a route sheet: its shows with their days and places, its designs by name. */
export function TourOfRouteForm() {
  const rules = useQuery({ queryKey: ['house-rules'], queryFn: () => request(rulesQuery) });
  const form = useTypedForm(typedTour, nothing);
  const sheet = useRouteSheet(useWatch({ control: form.control, name: 'timeZone' }));
  const navigate = useNavigate();
  const client = useQueryClient();
  const ruled = useRuledPlaces();
  const loadRules = (rules.data?.rules as { loadRules: { id: string; title: string }[] } | undefined)?.loadRules ?? [];
  const rows = rowsOf(sheet.route);
  const save = useMutation({
    mutationFn: ({ jurisdiction, timeZone: _zone, ...typed }: z.output<typeof typedTour>) =>
      request(saveTour, {
        tour: tourOfRoute(rows, { ...typed, jurisdictions: [jurisdiction] }, idOf(typed.name)),
        expectedVersion: null,
      }),
    onSuccess: async ({ saveTour: { id } }) => {
      await client.invalidateQueries();
      await navigate(`/tours/${id}`);
    },
  });
  return (
    <details>
      <summary>Make a tour of a route sheet</summary>
      {rules.data && loadRules.length === 0 && (
        <p>
          No load rule is on file, and a show needs one. <Link to="/rules">Make one first</Link>.
        </p>
      )}
      <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error}>
        <RouteFields of={sheet} />
        <div className="fields">
          <Field name="name" label="Name of the tour" />
          <Field name="depot" label="Depot" />
          <Field name="prepFrom" label="First prep day" type="date" />
          <Field name="returnTo" label="Last return day" type="date" />
          <PlaceChoice name="jurisdiction" label="Country whose examination rules hold" ruled={ruled} />
          <Choice
            name="loadRule"
            label="Load rule of every show"
            choices={[['', 'choose one'], ...loadRules.map((each) => [each.id, `${each.id}: ${each.title}`] as const)]}
          />
          <Choice name="timeZone" label="Time zone where the sheet names none" choices={zoneChoices('')} />
        </div>
        <button type="submit" disabled={save.isPending || rows.length === 0}>
          {rows.length === 0 ? 'Make the tour' : `Make the tour of ${rows.length} shows`}
        </button>
      </Form>
    </details>
  );
}
