import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';

const signIn = graphql(`
  mutation SignIn($email: String!, $password: String!) {
    signIn(email: $email, password: $password) { __typename ... on Account { id } ... on SignInRefusal { sentence } }
  }
`);

export function SignIn({ offline }: { offline?: unknown }) {
  const [email, setEmail] = useState('');
  const [password, setPassword] = useState('');
  const client = useQueryClient();
  const attempt = useMutation({
    mutationFn: () => request(signIn, { email, password }),
    onSuccess: (answer) => {
      if (answer.signIn.__typename === 'Account') void client.invalidateQueries();
    },
  });
  const refusal = attempt.data?.signIn.__typename === 'SignInRefusal' ? attempt.data.signIn.sentence : undefined;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    attempt.mutate();
  };
  return (
    <main style={{ maxWidth: 420, margin: '8vh auto' }}>
      <h1>Cartwright</h1>
      <p className="lede">From the shelf to trim height and home again. Sign in as the window that started Cartwright says.</p>
      <form onSubmit={submit} style={{ display: 'grid', gap: 14 }}>
        <label>
          Email
          <input
            type="email"
            name="email"
            autoComplete="username"
            required
            value={email}
            onChange={(event) => setEmail(event.target.value)}
          />
        </label>
        <label>
          Password
          <input
            type="password"
            name="password"
            autoComplete="current-password"
            required
            value={password}
            onChange={(event) => setPassword(event.target.value)}
          />
        </label>
        <Faults of={refusal ?? attempt.error ?? offline} />
        <button type="submit" disabled={attempt.isPending}>
          Sign in
        </button>
      </form>
    </main>
  );
}
