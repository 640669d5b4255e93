import { useQuery, useQueryClient } from '@tanstack/react-query';
import { z } from 'zod';
import { graphql } from '#contracts';
import type { WholeTour } from '#pack-plan';
import type { Tour } from '#tour-file';
import type { Person } from '../../../platform/person.js';
import { usePlanning } from '../../../platform/planning.js';
import { type AnswerOf, request } from '../../../platform/request.js';
import { dayOf } from '../../../platform/written.js';
import { Choice, Figure, Form, useTypedForm } from '../../../ui/form.js';
import { Note } from '../../../ui/notes.js';
import { Loaded } from '../../../ui/page.js';
import { figure } from '../../../ui/typed.js';
import { UnderWay } from '../../../ui/under-way.js';
import { verdictOf } from './how-it-stands.js';
import { CartsOverTime, ShowSums, WhatIsRebuilt } from './whole-tour-tables.js';

const wholeTourQuery = graphql(`query WholeTour($tourId: ID!) { wholeTour(tourId: $tourId) { plan madeAt madeBy } }`);
const planMutation = graphql(`
  mutation PlanWholeTour($tourId: ID!, $depot: Float!, $dock: Float!, $fixedUntil: Int!) {
    planWholeTour(tourId: $tourId, depot: $depot, dock: $dock, fixedUntil: $fixedUntil, waitMs: 800) {
      __typename
      ... on TourPlanned { tourId }
      ... on PlanningRefusal { code sentence reasons }
      ... on JobUnderWay { job { id state progress } }
    }
  }
`);

/** Prep and all load-ins planned together: how many box moves, which carts roll on, what is rebuilt where and why. */
export function WholeTourPart({ tour, me }: { tour: Tour; me: Person }) {
  const query = useQuery({ queryKey: ['whole-tour', tour.id], queryFn: () => request(wholeTourQuery, { tourId: tour.id }) });
  return (
    <Loaded query={query}>
      {({ wholeTour }) => (
        <>
          {wholeTour ? (
            <>
              <p>{verdictOf(wholeTour.plan)}</p>
              <p className="quiet">
                Planned {dayOf(wholeTour.madeAt)}
                {wholeTour.madeBy ? ` by ${wholeTour.madeBy}` : ''}
                {wholeTour.plan.fixedUntil > 0 ? `, the first ${wholeTour.plan.fixedUntil} shows kept as they were` : ''}.
              </p>
              <ShowSums plan={wholeTour.plan} />
              <CartsOverTime plan={wholeTour.plan} />
              <WhatIsRebuilt plan={wholeTour.plan} />
            </>
          ) : (
            <p className="quiet">
              Each show is planned from the floor as it stands. Planned as a whole, prep makes ready what later shows want where that saves
              box moves at the dock.
            </p>
          )}
          {me.role !== 'safety' && <PlanForm tour={tour} plan={wholeTour?.plan ?? null} />}
        </>
      )}
    </Loaded>
  );
}

const weight = () => figure('a number from 0.1 to 100', { min: 0.1, max: 100 });
const typedPlan = z.object({ depot: weight(), dock: weight(), fixedUntil: z.string().transform(Number) });

/** Three to one by common practice; no published source. */
const usual = { depot: 1, dock: 3 };

function PlanForm({ tour, plan }: { tour: Tour; plan: WholeTour | null }) {
  const client = useQueryClient();
  const { depot, dock } = plan?.weights ?? usual;
  const form = useTypedForm(typedPlan, { depot: String(depot), dock: String(dock), fixedUntil: '0' });
  const planning = usePlanning<AnswerOf<typeof planMutation>['planWholeTour']>({ onAnswer: () => client.invalidateQueries() });
  const ask = (typed: z.output<typeof typedPlan>) =>
    planning.mutate(async (requestId) => (await request(planMutation, { tourId: tour.id, ...typed }, { requestId })).planWholeTour);
  const shows = plan?.stops ?? [];
  return (
    <Form form={form} onSubmit={ask} error={planning.error} keeps={false}>
      <div className="fields">
        <Figure name="depot" label="A box move at prep counts" />
        <Figure
          name="dock"
          label="A box move between shows counts"
          description="depot hands are cheaper than the dock at six in the morning"
        />
        {shows.length > 0 && (
          <Choice
            name="fixedUntil"
            label="Fixed until show"
            choices={[
              ['0', 'none: plan all of it from the floor as it stands'],
              ...shows.slice(0, -1).map(({ name }, index) => [String(index + 1), `${index + 1} ${name}`] as const),
            ]}
          />
        )}
      </div>
      <button type="submit" className={plan ? 'plain' : ''} disabled={planning.isPending}>
        {plan ? 'Plan the tour as a whole again' : 'Plan the tour as a whole'}
      </button>
      {planning.isPending && <UnderWay job={planning.job} onCancel={planning.cancel} of="Planning the tour" />}
      {planning.data?.__typename === 'PlanningRefusal' && <Note weight="stop">{planning.data.sentence}</Note>}
    </Form>
  );
}
