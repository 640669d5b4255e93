import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { z } from 'zod';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { Refused, request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Field, Form, useTypedForm } from '../../ui/form.js';
import { filled } from '../../ui/typed.js';
import { TellPassword, givenPassword } from './given-password.js';
import { roleWords } from './role-words.js';

const renameMutation = graphql(
  `mutation RenamePerson($id: ID!, $name: String!, $was: String) { renamePerson(id: $id, name: $name, was: $was) { id name } }`,
);
const renewMutation = graphql(`mutation RenewPassword($id: ID!, $password: String!) { renewPassword(id: $id, password: $password) }`);
const disableMutation = graphql(`mutation DisablePerson($id: ID!) { disablePerson(id: $id) }`);
const enableMutation = graphql(`mutation EnablePerson($id: ID!) { enablePerson(id: $id) }`);
const roleMutation = graphql(`mutation ChangeRole($id: ID!, $role: String!, $was: String) { changeRole(id: $id, role: $role, was: $was) }`);
const proposeMutation = graphql(`mutation ProposeOfficer($id: ID!) { proposeOfficer(id: $id) }`);
const answerMutation = graphql(
  `mutation AnswerProposal($id: ID!, $accept: Boolean!, $password: String) { answerProposal(id: $id, accept: $accept, password: $password) }`,
);
const removeMutation = graphql(`mutation RemovePerson($id: ID!) { removePerson(id: $id) }`);

const stateWords: Readonly<Record<string, string>> = {
  in: 'may sign in',
  new: 'has a password from another person, not used yet',
  out: 'may not sign in',
  left: 'has left',
};

export interface OnFile {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: string;
  readonly state: string;
  readonly sessions: number;
  readonly proposedBy: string | null | undefined;
}

/** One person: what others see, and for whoever keeps people what can be done. */
export function PersonRecord({ person, me }: { person: OnFile; me: Person }) {
  const { name, email, role, state, sessions, proposedBy } = person;
  const keeps = (me.role === 'system' || me.role === 'safety') && state !== 'left';
  const devices = sessions === 0 ? 'signed in nowhere' : sessions === 1 ? 'signed in on 1 device' : `signed in on ${sessions} devices`;
  return (
    <li className="record">
      <p>
        <strong>{name}</strong>, {roleWords[role] ?? role}
      </p>
      <p className="quiet">
        {state === 'left' ? stateWords.left : `${email}, ${stateWords[state] ?? state}, ${devices}`}
        {proposedBy ? `; proposed as a safety officer by ${proposedBy}` : ''}
      </p>
      {keeps && (
        <details>
          <summary>Change</summary>
          {person.id !== me.id && (role !== 'safety' || me.role === 'safety') && <PersonName id={person.id} name={name} />}
          {person.id !== me.id && <Acts person={person} me={me} />}
        </details>
      )}
    </li>
  );
}

const typedName = z.object({ name: filled('the name that others see') });

/** What is on record keeps the name under which it was written. */
function PersonName({ id, name }: { id: string; name: string }) {
  const form = useTypedForm(typedName, { name });
  const client = useQueryClient();
  // What was read when the first letter was typed, or was shown with a refusal since.
  const read = useRef(name);
  const isDirty = form.formState.dirtyFields.name === true;
  useEffect(() => {
    if (!isDirty) read.current = name;
  }, [isDirty, name]);
  const rename = useMutation({
    mutationFn: (typed: z.output<typeof typedName>) => request(renameMutation, { id, name: typed.name, was: read.current }),
    onError: (fault) => {
      for (const { onFile } of fault instanceof Refused ? fault.faults : []) if (typeof onFile === 'string') read.current = onFile;
    },
    onSuccess: () => client.invalidateQueries(),
  });
  return (
    <Form form={form} className="tower" onSubmit={(typed) => rename.mutate(typed)} error={rename.error}>
      <Field name="name" label="Name" />
      <div className="row">
        <button type="submit" className="small" disabled={rename.isPending}>
          Save the name
        </button>
      </div>
    </Form>
  );
}

function Acts({ person, me }: { person: OnFile; me: Person }) {
  const { id, role, state, proposedBy } = person;
  const client = useQueryClient();
  const [given, setGiven] = useState<string>();
  const act = useMutation({
    mutationFn: (send: () => Promise<unknown>) => send(),
    onSettled: () => client.invalidateQueries({ queryKey: ['people'] }),
  });
  const give = (send: (password: string) => Promise<unknown>) => async () => {
    const password = givenPassword();
    await send(password);
    setGiven(password);
  };
  const renew = give((password) => request(renewMutation, { id, password }));
  const accept = give((password) => request(answerMutation, { id, accept: true, password }));
  const other = role === 'warehouse' ? 'system' : 'warehouse';
  const button = (words: string, send: () => Promise<unknown>) => (
    <button type="button" className="plain small" disabled={act.isPending} onClick={() => act.mutate(send)}>
      {words}
    </button>
  );
  return (
    <>
      <div className="row">
        <button type="button" className="plain small" disabled={act.isPending} onClick={() => act.mutate(renew)}>
          Give a new password
        </button>
        {state === 'out'
          ? button('Let sign in again', () => request(enableMutation, { id }))
          : button('Stop from signing in', () => request(disableMutation, { id }))}
        {button(`Make ${roleWords[other] ?? other}`, () => request(roleMutation, { id, role: other, was: role }))}
        {role !== 'safety' && !proposedBy && button('Propose as safety officer', () => request(proposeMutation, { id }))}
        {proposedBy && me.role === 'safety' && button('Accept as safety officer', accept)}
        {proposedBy && me.role === 'safety' && button('Turn the proposal down', () => request(answerMutation, { id, accept: false }))}
      </div>
      {given && <TellPassword person={person.name} password={given} />}
      <Leaves person={person} send={() => act.mutate(() => request(removeMutation, { id }))} isPending={act.isPending} />
      <Faults of={act.error} />
    </>
  );
}

/** Not taken back: the name is gone then. */
function Leaves({ person, send, isPending }: { person: OnFile; send: () => void; isPending: boolean }) {
  return (
    <details>
      <summary>{person.name} has left</summary>
      <p>The name and the email go out of all records and sheets; what was done stays under a number. This is not taken back.</p>
      <button type="button" className="small" disabled={isPending} onClick={send}>
        Take the name out
      </button>
    </details>
  );
}
