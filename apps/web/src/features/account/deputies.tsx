import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { z } from 'zod';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { type AnswerOf, request } from '../../platform/request.js';
import { today } from '../../platform/today.js';
import { Faults } from '../../ui/faults.js';
import { Choice, Field, Form, useTypedForm } from '../../ui/form.js';
import { Loaded } from '../../ui/page.js';
import { day, filled } from '../../ui/typed.js';
import { TellPassword, givenPassword } from './given-password.js';

const deputiesQuery = graphql(`
  query Deputies {
    deputies { id personId person officerId officer from until depot tour reason namedBy state }
    people { id name role state passwordByOfficer }
    tours(first: 100) { edges { node { id name } } }
  }
`);
const nameMutation = graphql(`mutation NameDeputy($deputy: DeputyInput!) { nameDeputy(deputy: $deputy) }`);
const signMutation = graphql(`mutation SignDeputy($id: ID!) { signDeputy(id: $id) }`);
const withdrawMutation = graphql(`mutation WithdrawDeputy($id: ID!) { withdrawDeputy(id: $id) }`);

type Answer = AnswerOf<typeof deputiesQuery>;
type Deputy = Answer['deputies'][number];

const stateWords: Readonly<Record<string, string>> = {
  'to sign': 'waits for a second safety officer: not in force',
  'to come': 'to come',
  now: 'in force',
  over: 'over',
  withdrawn: 'withdrawn',
  void: 'void: one of the two is not what they were',
};

/** Who takes the place of a safety officer, when and for what. */
export function Deputies({ me }: { me: Person }) {
  const query = useQuery({ queryKey: ['deputies'], queryFn: () => request(deputiesQuery) });
  return (
    <Loaded query={query}>
      {(answer) => (
        <>
          <p className="quiet">
            A deputy does what the safety officer does, on the days named; whatever a deputy signs says so. A deputy names no deputies,
            accepts nothing proposed by themselves, and releases no plan of their own over its stops.
          </p>
          {answer.deputies.length === 0 && <p className="quiet">Nobody is named.</p>}
          <ul className="plain">
            {answer.deputies.map((each) => (
              <OneDeputy key={each.id} of={each} me={me} />
            ))}
          </ul>
          {me.role === 'safety' && <NameDeputy answer={answer} me={me} />}
        </>
      )}
    </Loaded>
  );
}

function OneDeputy({ of, me }: { of: Deputy; me: Person }) {
  const client = useQueryClient();
  const act = useMutation({
    mutationFn: (send: () => Promise<unknown>) => send(),
    onSuccess: () => client.invalidateQueries(),
  });
  const isOpen = ['to sign', 'to come', 'now'].includes(of.state);
  return (
    <li className="record">
      <p>
        <strong>{of.person}</strong>, deputy of {of.officer}, {of.from} to {of.until}, {of.tour ?? of.depot ?? 'the whole company'}
      </p>
      <p className="quiet">
        {stateWords[of.state] ?? of.state}; named by {of.namedBy}: {of.reason}.
      </p>
      <div className="row">
        {of.state === 'to sign' && me.role === 'safety' && (
          <button
            type="button"
            className="small"
            disabled={act.isPending}
            onClick={() => act.mutate(() => request(signMutation, { id: of.id }))}
          >
            Sign
          </button>
        )}
        {isOpen && (me.role === 'safety' || me.id === of.personId) && (
          <button
            type="button"
            className="plain small"
            disabled={act.isPending}
            onClick={() => act.mutate(() => request(withdrawMutation, { id: of.id }))}
          >
            Withdraw at once
          </button>
        )}
      </div>
      <Faults of={act.error} />
    </li>
  );
}

const typed = z.object({
  personId: filled('somebody on file'),
  officerId: z.string(),
  from: day,
  until: day,
  depot: z.string(),
  tourId: z.string(),
  reason: filled('why'),
});

function NameDeputy({ answer: { people, tours }, me }: { answer: Answer; me: Person }) {
  const nobody = { personId: '', officerId: me.id, from: today(), until: today(), depot: '', tourId: '', reason: '' };
  const form = useTypedForm(typed, nobody);
  const client = useQueryClient();
  const name = useMutation({
    mutationFn: async (of: z.output<typeof typed>) => {
      const person = people.find((each) => each.id === of.personId);
      const password = person && !(person.passwordByOfficer && person.state === 'in') ? givenPassword() : null;
      await request(nameMutation, {
        deputy: {
          ...of,
          password,
          depot: of.depot.trim() || null,
          tourId: of.tourId || null,
          timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
        },
      });
      return password === null ? null : { person: person?.name ?? '', password };
    },
    onSuccess: async () => {
      form.reset(nobody);
      await client.invalidateQueries({ queryKey: ['deputies'] });
      await client.invalidateQueries({ queryKey: ['people'] });
    },
  });
  const able = people.filter((each) => each.state === 'in' || each.state === 'new');
  const named = (isOfficer: boolean) =>
    able.filter((each) => (each.role === 'safety') === isOfficer).map((each) => [each.id, each.name] as const);
  return (
    <details>
      <summary>Name a deputy</summary>
      <Form form={form} onSubmit={(of) => name.mutate(of)} error={name.error}>
        <div className="fields">
          <Choice name="personId" label="Who acts" choices={[['', 'choose'], ...named(false)]} />
          <Choice name="officerId" label="Deputy of" choices={named(true)} />
          <Field name="from" label="First day" type="date" />
          <Field name="until" label="Last day" type="date" />
          <Field name="depot" label="For what belongs to this depot alone" description="Left empty: everywhere." />
          <Choice
            name="tourId"
            label="For this tour alone"
            choices={[['', 'all tours'], ...tours.edges.map(({ node }) => [node.id, node.name] as const)]}
          />
          <Field name="reason" label="Why" />
        </div>
        <p className="quiet">
          Of yourself it holds at once. Of another safety officer it waits for that one’s signature, or a third one’s. Whoever never had a
          password from a safety officer gets one with it, for one sign-in, and chooses the own one before anything is signed: nobody else
          knows a way in then.
        </p>
        <button type="submit" disabled={name.isPending}>
          Name
        </button>
      </Form>
      {name.data && <TellPassword {...name.data} />}
    </details>
  );
}
