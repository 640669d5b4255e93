import { useMutation } from '@tanstack/react-query';
import { z } from 'zod';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Field, Form, useTypedForm } from '../../ui/form.js';
import { filled, password } from '../../ui/typed.js';

const setUp = graphql(`mutation SetUp($code: String!, $people: FirstPeopleInput!) { setUp(code: $code, people: $people) }`);

const firstPeople = z.object({
  code: filled('the code that the window of the start shows'),
  name: filled('your name, as others see it'),
  email: filled('an email address').regex(/@/, 'an email address'),
  password,
  officerName: filled('the name of the safety officer'),
  officerEmail: filled('an email address').regex(/@/, 'an email address'),
  officerPassword: password,
});
const nothing = { code: '', name: '', email: '', password: '', officerName: '', officerEmail: '', officerPassword: '' };

/** The first people of an empty house: who sets it up, and who answers for what lifts. */
export function SetUp({ onDone }: { onDone: () => void }) {
  const form = useTypedForm(firstPeople, nothing);
  const save = useMutation({
    mutationFn: ({ code, ...people }: z.output<typeof firstPeople>) => request(setUp, { code, people }),
    onSuccess: onDone,
  });
  return (
    <main className="door">
      <h1>Begin with your own</h1>
      <p className="lede">
        Nothing is on file yet. Two people begin: you plan, and the safety officer approves what figures are held against. They are not the
        same person.
      </p>
      <Form form={form} className="tower" onSubmit={(typed) => save.mutate(typed)} error={save.error}>
        <Field name="code" label="Code from the window that started Cartwright" />
        <h2>You, the system tech</h2>
        <Field name="name" label="Your name" autoComplete="name" />
        <Field name="email" label="Your email" type="email" autoComplete="username" />
        <Field name="password" label="Your password, at least 10 characters" type="password" autoComplete="new-password" />
        <h2>The safety officer</h2>
        <Field name="officerName" label="Name of the safety officer" />
        <Field name="officerEmail" label="Email of the safety officer" type="email" />
        <Field
          name="officerPassword"
          label="First password for them, at least 10 characters"
          description="It lets in once, within a day; they choose their own then."
        />
        <button type="submit" disabled={save.isPending}>
          Begin
        </button>
      </Form>
    </main>
  );
}
