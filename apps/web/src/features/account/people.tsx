import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { z } from 'zod';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Choice, Field, Form, useTypedForm } from '../../ui/form.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { filled, password } from '../../ui/typed.js';

const peopleQuery = graphql(`query People { people { id name email role } }`);
const addMutation = graphql(`mutation AddPerson($person: PersonInput!) { addPerson(person: $person) { id } }`);
const renameMutation = graphql(`mutation RenamePerson($id: ID!, $name: String!) { renamePerson(id: $id, name: $name) { id name } }`);
const passwordMutation = graphql(`mutation ChangePassword($old: String!, $next: String!) { changePassword(old: $old, next: $next) }`);

const roleWords: Readonly<Record<string, string>> = { warehouse: 'warehouse', system: 'system tech', safety: 'safety officer' };

/** Who may sign in, with which permissions. */
export function People({ me }: { me: Person }) {
  const query = useQuery({ queryKey: ['people'], queryFn: () => request(peopleQuery) });
  return (
    <Page
      title="People"
      lede="Who may sign in. Only the system tech adds people; only the safety officer examines and releases from quarantine."
    >
      <Part number={1} title="On file">
        <Loaded query={query}>
          {({ people }) => (
            <div className="scroll">
              <table>
                <thead>
                  <tr>
                    <th>Name</th>
                    <th>Email</th>
                    <th>Role</th>
                  </tr>
                </thead>
                <tbody>
                  {people.map((each) => (
                    <tr key={each.id}>
                      <td>{me.role === 'system' ? <PersonName id={each.id} name={each.name} /> : each.name}</td>
                      <td>{each.email}</td>
                      <td>{roleWords[each.role] ?? each.role}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          )}
        </Loaded>
        {me.role === 'system' && <AddPerson />}
      </Part>
      <Part number={2} title="Your password">
        <NewPassword />
      </Part>
    </Page>
  );
}

const typedName = z.object({ name: filled('the name that others see') });

/** The name as it stands, with a form that changes it; what is on record keeps the name under which it was written. */
function PersonName({ id, name }: { id: string; name: string }) {
  const form = useTypedForm(typedName, { name });
  const client = useQueryClient();
  const rename = useMutation({
    mutationFn: (typed: z.output<typeof typedName>) => request(renameMutation, { id, name: typed.name }),
    onSuccess: () => client.invalidateQueries(),
  });
  return (
    <details>
      <summary>{name}</summary>
      <Form form={form} onSubmit={(typed) => rename.mutate(typed)} error={rename.error}>
        <Field name="name" label="Name" />
        <button type="submit" className="small" disabled={rename.isPending}>
          Save the name
        </button>
      </Form>
    </details>
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
          <Choice name="role" label="Role" choices={Object.entries(roleWords)} />
          <Field name="password" label="First password, at least 10 characters" type="password" autoComplete="new-password" />
        </div>
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
