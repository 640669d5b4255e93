import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Suspense, lazy } from 'react';
import { z } from 'zod';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Field, Form, useTypedForm } from '../../ui/form.js';
import { filled, password } from '../../ui/typed.js';

const signIn = graphql(`
  mutation SignIn($email: String!, $password: String!) {
    signIn(email: $email, password: $password) { __typename ... on Account { id } ... on SignInRefusal { sentence } }
  }
`);
const typed = z.object({ email: filled('your email address'), password: z.string().min(1, 'your password') });

const toSetUpQuery = graphql(`query ToSetUp { isToSetUp }`);
const SetUp = lazy(async () => ({ default: (await import('./set-up.js')).SetUp }));

/** The door: signing in, or in an empty house naming its first people. */
export function Door({ offline }: { offline?: unknown }) {
  const query = useQuery({ queryKey: ['to set up'], queryFn: () => request(toSetUpQuery), staleTime: 0 });
  if (!query.data?.isToSetUp) return <SignIn offline={offline} />;
  return (
    <Suspense fallback={<p className="quiet">Reading ...</p>}>
      <SetUp onDone={() => void query.refetch()} />
    </Suspense>
  );
}

function SignIn({ offline }: { offline?: unknown }) {
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
      <p className="lede">
        From the shelf to trim height and home again. Sign in as the window that started Cartwright says, or with what you chose.
      </p>
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

const newPassword = graphql(`mutation FirstPassword($next: String!) { changePassword(old: "", next: $next) }`);
const chosen = z.object({ next: password });

/** What another person gave lets in once: now the own one is chosen. */
export function FirstPassword() {
  const form = useTypedForm(chosen, { next: '' });
  const save = useMutation({
    mutationFn: (values: z.output<typeof chosen>) => request(newPassword, values),
    onSuccess: () => location.assign('/'),
  });
  return (
    <main className="door">
      <h1>Choose your own password</h1>
      <p className="lede">The one that you were given has been used up. Nobody else knows the one that you choose now.</p>
      <Form form={form} className="tower" onSubmit={(values) => save.mutate(values)} error={save.error}>
        <Field name="next" label="Your password, at least 10 characters" type="password" autoComplete="new-password" />
        <button type="submit" disabled={save.isPending}>
          Keep it and sign in again
        </button>
      </Form>
    </main>
  );
}
