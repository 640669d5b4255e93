import { useMutation, useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { z } from 'zod';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { today } from '../../platform/today.js';
import { Choice, Field, Figure, Form, useTypedForm } from '../../ui/form.js';
import { day, figure } from '../../ui/typed.js';

const showsQuery = graphql(`query ShowsToServe { tours(first: 100) { edges { node { id name showNames { showId name } } } } }`);
const firstQuery = graphql(`
  query FirstDayFor($tourId: ID!, $showId: ID!, $from: String!, $days: Int!) {
    firstDayFor(tourId: $tourId, showId: $showId, from: $from, days: $days)
  }
`);

/** The first day from which the design of a show can be served for some days on end. */
export function FirstDay() {
  const tours = useQuery({ queryKey: ['shows-to-serve'], queryFn: () => request(showsQuery) });
  const shows = (tours.data?.tours.edges ?? []).flatMap(({ node: each }) =>
    each.showNames.map((show) => ({ tourId: each.id, showId: show.showId, name: `${each.name}: ${show.name}` })),
  );
  if (shows.length === 0) return <p className="quiet">No show is on file yet.</p>;
  return <DayForm shows={shows} />;
}

interface ShowOfTour {
  readonly tourId: string;
  readonly showId: string;
  readonly name: string;
}

const typedQuestion = z.object({
  show: z.string(),
  from: day,
  days: figure('a whole number from 1 to 400', { min: 1, max: 400, whole: true }),
});

function DayForm({ shows }: { shows: readonly ShowOfTour[] }) {
  const [first] = useState(today);
  const form = useTypedForm(typedQuestion, { show: '0', from: first, days: '3' });
  const find = useMutation({
    mutationFn: async ({ show, from, days }: z.output<typeof typedQuestion>) => {
      const { tourId, showId } = shows[Number(show)] ?? { tourId: '', showId: '' };
      return { days, on: (await request(firstQuery, { tourId, showId, from, days })).firstDayFor };
    },
  });
  // An answer stands beside the question that it answers.
  const { reset } = find;
  useEffect(() => form.subscribe({ formState: { values: true }, callback: () => reset() }), [form, reset]);
  return (
    <Form form={form} onSubmit={(question) => find.mutate(question)} error={find.error}>
      <div className="fields">
        <Choice name="show" label="Design of" choices={shows.map((each, index) => [String(index), each.name] as const)} />
        <Field name="from" label="No earlier than" type="date" />
        <Figure name="days" label="Days on end" />
      </div>
      <button type="submit" className="plain" disabled={find.isPending}>
        Find the day
      </button>
      {find.data && (
        <p role="status">
          {find.data.on
            ? `${find.data.on}: from that day every box of the design is free for ${find.data.days} ${find.data.days === 1 ? 'day' : 'days on end'}.`
            : 'Not within the next 400 days. Look above at what would free a box.'}
        </p>
      )}
    </Form>
  );
}
