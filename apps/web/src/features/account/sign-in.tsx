import { useMutation, useQueryClient } from '@tanstack/react-query';
import { z } from 'zod';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Field, Form, useTypedForm } from '../../ui/form.js';
import { filled } from '../../ui/typed.js';

const signIn = graphql(`
  mutation SignIn($email: String!, $password: String!) {
    signIn(email: $email, password: $password) { __typename ... on Account { id } ... on SignInRefusal { sentence } }
  }
`);
const typed = z.object({ email: filled('your email address'), password: z.string().min(1, 'your password') });

export function SignIn({ offline }: { offline?: unknown }) {
  const form = useTypedForm(typed, nothing);
  const client = useQueryClient();
  const attempt = useMutation({
    mutationFn: (values: z.output<typeof typed>) => request(signIn, values),
    onSuccess: (answer) => {
      if (answer.signIn.__typename === 'Account') void client.invalidateQueries();
    },
  });
  const refusal = attempt.data?.signIn.__typename === 'SignInRefusal' ? new Error(attempt.data.signIn.sentence) : undefined;
  return (
    <main className="door">
      <h1>Cartwright</h1>
      <p className="lede">From the shelf to trim height and home again. Sign in as the window that started Cartwright says.</p>
      <Form form={form} className="tower" onSubmit={(values) => attempt.mutate(values)} error={refusal ?? attempt.error ?? offline}>
        <Field name="email" label="Email" type="email" autoComplete="username" />
        <Field name="password" label="Password" type="password" autoComplete="current-password" />
        <button type="submit" disabled={attempt.isPending}>
          Sign in
        </button>
      </Form>
    </main>
  );
}

const nothing = { email: '', password: '' };
