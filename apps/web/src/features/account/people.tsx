import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { graphql } from '#contracts';
import type { Person } from '../../app/person.js';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Loaded, Page, Part } from '../../ui/page.js';

const peopleQuery = graphql(`query People { people { id name email role } }`);
const addMutation = graphql(`mutation AddPerson($person: PersonInput!) { addPerson(person: $person) { id } }`);
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
                      <td>{each.name}</td>
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

const nobody = { name: '', email: '', role: 'warehouse', password: '' };

function AddPerson() {
  const [person, setPerson] = useState(nobody);
  const client = useQueryClient();
  const add = useMutation({
    mutationFn: () => request(addMutation, { person }),
    onSuccess: async () => {
      setPerson(nobody);
      await client.invalidateQueries({ queryKey: ['people'] });
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    add.mutate();
  };
  const field = (key: 'name' | 'email' | 'password', label: string, type: string) => (
    <label>
      {label}
      <input type={type} autoComplete="off" value={person[key]} onChange={(event) => setPerson({ ...person, [key]: event.target.value })} />
    </label>
  );
  return (
    <details>
      <summary>Add a person</summary>
      <form onSubmit={submit}>
        <div className="fields">
          {field('name', 'Name', 'text')}
          {field('email', 'Email', 'email')}
          <label>
            Role
            <select value={person.role} onChange={(event) => setPerson({ ...person, role: event.target.value })}>
              {Object.entries(roleWords).map(([role, word]) => (
                <option key={role} value={role}>
                  {word}
                </option>
              ))}
            </select>
          </label>
          {field('password', 'First password, at least 10 characters', 'password')}
        </div>
        <Faults of={add.error} />
        <button type="submit" disabled={add.isPending}>
          Add
        </button>
      </form>
    </details>
  );
}

function NewPassword() {
  const [old, setOld] = useState('');
  const [next, setNext] = useState('');
  const change = useMutation({
    mutationFn: () => request(passwordMutation, { old, next }),
    onSuccess: () => location.assign('/'),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    change.mutate();
  };
  return (
    <form onSubmit={submit}>
      <div className="fields">
        <label>
          The one you have
          <input type="password" autoComplete="current-password" value={old} onChange={(event) => setOld(event.target.value)} />
        </label>
        <label>
          The new one, at least 10 characters
          <input type="password" autoComplete="new-password" value={next} onChange={(event) => setNext(event.target.value)} />
        </label>
      </div>
      <Faults of={change.error} />
      <button type="submit" disabled={change.isPending}>
        Change it and sign in again
      </button>
    </form>
  );
}
