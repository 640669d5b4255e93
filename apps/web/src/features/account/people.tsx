import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { z } from 'zod';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Choice, Field, Form, useTypedForm } from '../../ui/form.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { Deputies } from './deputies.js';
import { OnePerson } from './one-person.js';
import { PersonRecord } from './person-record.js';
import { roleWords } from './role-words.js';
import { Sessions } from './sessions.js';
import { filled, password } from '../../ui/typed.js';

const peopleQuery = graphql(`query People { people { id name email role state sessions proposedBy } }`);
const addMutation = graphql(`mutation AddPerson($person: PersonInput!) { addPerson(person: $person) { id } }`);
const passwordMutation = graphql(`mutation ChangePassword($old: String!, $next: String!) { changePassword(old: $old, next: $next) }`);

/** Who may sign in, with which permissions. */
export function People({ me }: { me: Person }) {
  const query = useQuery({ queryKey: ['people'], queryFn: () => request(peopleQuery) });
  return (
    <Page
      title="People"
      lede="Who may sign in, and as what. The system tech and the safety officer keep people; a safety officer is proposed by one and accepted by another."
    >
      <Part number={1} title="On file">
        <Loaded query={query}>
          {({ people }) => (
            <ul className="plain">
              {people.map((each) => (
                <PersonRecord key={each.id} person={each} me={me} />
              ))}
            </ul>
          )}
        </Loaded>
        {me.role === 'system' && <AddPerson />}
      </Part>
      <Part number={2} title="Deputies of the safety officer">
        <Deputies me={me} />
      </Part>
      <Part number={3} title="How many judge">
        <OnePerson me={me} />
      </Part>
      <Part number={4} title="Where you are signed in">
        <Sessions />
      </Part>
      <Part number={5} title="Your password">
        <NewPassword />
      </Part>
    </Page>
  );
}

const nobody = { name: '', email: '', role: 'warehouse', password: '' };
const newPerson = z.object({
  name: filled('the name that others see'),
  email: filled('an email address').regex(/@/, 'an email address'),
  role: z.string(),
  password,
});

function AddPerson() {
  const form = useTypedForm(newPerson, nobody);
  const client = useQueryClient();
  const add = useMutation({
    mutationFn: (person: z.output<typeof newPerson>) => request(addMutation, { person }),
    onSuccess: async () => {
      form.reset(nobody);
      await client.invalidateQueries({ queryKey: ['people'] });
    },
  });
  return (
    <details>
      <summary>Add a person</summary>
      <Form form={form} onSubmit={(person) => add.mutate(person)} error={add.error}>
        <div className="fields">
          <Field name="name" label="Name" />
          <Field name="email" label="Email" type="email" />
          <Choice name="role" label="Role" choices={Object.entries(roleWords).filter(([role]) => role !== 'safety')} />
          <Field name="password" label="First password, for one sign-in within a day" type="password" autoComplete="new-password" />
        </div>
        <p className="quiet">A safety officer is added as one of these, then proposed.</p>
        <button type="submit" disabled={add.isPending}>
          Add
        </button>
      </Form>
    </details>
  );
}

const noPasswords = { old: '', next: '' };
const change = z.object({ old: z.string().min(1, 'the one you have'), next: password });

function NewPassword() {
  const form = useTypedForm(change, noPasswords);
  const save = useMutation({
    mutationFn: (passwords: z.output<typeof change>) => request(passwordMutation, passwords),
    onSuccess: () => location.assign('/'),
  });
  return (
    <Form form={form} onSubmit={(passwords) => save.mutate(passwords)} error={save.error}>
      <div className="fields">
        <Field name="old" label="The one you have" type="password" autoComplete="current-password" />
        <Field name="next" label="The new one, at least 10 characters" type="password" autoComplete="new-password" />
      </div>
      <button type="submit" disabled={save.isPending}>
        Change it and sign in again
      </button>
    </Form>
  );
}
