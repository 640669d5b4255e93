import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Reflector } from '@nestjs/core';
import { SessionStore } from '../../../apps/api/src/platform/sign-in/session-store.js';
import { DeputyScopes } from '../../../apps/api/src/platform/sign-in/deputy.js';
import { SignedInGuard } from '../../../apps/api/src/platform/sign-in/signed-in.js';
import { type TestApp, agentOf, postListed, startTestApp, testDay } from '../../support/test-app.js';
import { type Way, declaredWays } from './declared-ways.js';

const file = join('tests', 'api', 'ways', 'roles-by-way.md');
const columns = ['stranger', 'warehouse', 'system', 'safety', 'deputy', 'given password', 'disabled', 'signed out'] as const;
type Who = (typeof columns)[number];
type Answer = 'yes' | 'no' | 'sign in' | 'own password' | `not tried: ${string}`;

/**
 * Everybody tries every way into the house. What is to come of it is declared beside what answers, and kept in a table beside this file, so that no
 * new way comes and no way changes unseen. Written anew with CARTWRIGHT_WRITE_ROLES=1.
 */
describe('roles by operations and ways', () => {
  let test: TestApp;
  let ways: readonly Way[];
  let cookies: Readonly<Record<Who, string>>;
  beforeAll(async () => {
    test = await startTestApp();
    ways = declaredWays(test.app);
    const [warehouse, system, safety] = await Promise.all([test.as('warehouse'), test.as('system'), test.as('safety')]);
    const signIn = async (email: string, password: string) => {
      const reply = await postListed(test.address, 'SignIn', { email, password });
      return (reply.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    };
    const add = async (name: string, role = 'system') => {
      const person = { name, email: `${name}@cartwright.example`, role, password: 'given by another' };
      const { data } = await system.graphql('mutation($person: PersonInput!) { addPerson(person: $person) { id } }', { person });
      return { id: data.addPerson.id as string, email: person.email, cookie: await signIn(person.email, person.password) };
    };
    const given = await add('given');
    const leaving = await add('disabled');
    await agentOf(test.address, leaving.cookie).graphql('mutation { changePassword(old: "", next: "chosen by myself") }');
    const standing = await add('standing', 'warehouse');
    const { me } = (await safety.graphql('{ me { id } }')).data;
    const days = { from: testDay, until: testDay, timeZone: 'Europe/London', reason: 'at the yard' };
    const deputy = { personId: standing.id, officerId: me.id, password: 'from the officer', ...days };
    await safety.graphql('mutation($deputy: DeputyInput!) { nameDeputy(deputy: $deputy) }', { deputy });
    const handed = agentOf(test.address, await signIn(standing.email, 'from the officer'));
    await handed.graphql('mutation { changePassword(old: "", next: "chosen by myself") }');
    const disabled = await signIn(leaving.email, 'chosen by myself');
    await system.graphql(`mutation { disablePerson(id: "${leaving.id}") }`);
    const ended = await test.as('safety');
    await ended.graphql('mutation { signOut }');
    cookies = {
      stranger: '',
      warehouse: warehouse.cookie,
      system: system.cookie,
      safety: safety.cookie,
      deputy: await signIn(standing.email, 'chosen by myself'),
      'given password': given.cookie,
      disabled,
      'signed out': ended.cookie,
    };
    expect(Object.values(cookies).filter((each) => each.length > 40)).toHaveLength(columns.length - 1);
  });
  afterAll(() => test.close());

  it('every way says for whom it is', () => {
    expect(ways.filter(({ permission }) => !permission).map(({ name }) => name)).toEqual([]);
    expect(new Set(ways.map(({ name }) => name)).size).toBe(ways.length);
  });

  it('what does not say for whom it is, is for nobody', async () => {
    const guard = new SignedInGuard(new Reflector(), test.app.get(SessionStore), test.app.get(DeputyScopes));
    const silent = class {
      readonly handler = () => undefined;
    };
    const request = { headers: { cookie: cookies.safety } };
    const context = {
      getType: () => 'http',
      getHandler: () => new silent().handler,
      getClass: () => silent,
      switchToHttp: () => ({ getRequest: () => request, getResponse: () => undefined }),
    };
    await expect(guard.canActivate(context as never)).rejects.toThrow('This is for nobody');
  });

  it('answers everybody as it says, and as the table has it', async () => {
    const table = [`| way | for | ${columns.join(' | ')} |`, `| --- | --- |${' --- |'.repeat(columns.length)}`];
    const open: string[] = [];
    const shut: string[] = [];
    let tried = 0;
    for (const way of ways) {
      const answers = await Promise.all(columns.map((who) => answerOf(test.address, way, cookies[who])));
      table.push(`| ${way.name} | ${inWords(way)} | ${answers.join(' | ')} |`);
      for (const [index, who] of columns.entries()) {
        const [answer, wanted] = [answers[index], wantedOf(way, who)];
        tried++;
        if (answer !== wanted) (answer === 'yes' ? open : shut).push(`${way.name}, ${who}: ${answer}, wanted ${wanted}`);
      }
    }
    process.stderr.write(`${ways.length} ways, ${tried} tried, ${open.length} open, ${shut.length} wrongly shut\n`);
    expect({ open, shut }).toEqual({ open: [], shut: [] });
    const now = `${table.join('\n')}\n`;
    if (process.env.CARTWRIGHT_WRITE_ROLES === '1') writeFileSync(file, now);
    expect(readFileSync(file, 'utf8')).toBe(now);
    // Some thousands of requests: a busy machine takes its time.
  }, 900_000);
});

function wantedOf({ permission, isOwnWords }: Way, who: Who): Answer {
  if (permission === undefined) return 'no';
  const isSignedIn = who === 'warehouse' || who === 'system' || who === 'safety' || who === 'deputy' || who === 'given password';
  if (permission.allowed.length === 0) return 'no';
  if (!isSignedIn) return permission.isForStrangers && !isOwnWords ? 'yes' : 'sign in';
  if (who === 'given password') return permission.isBeforeOwnPassword ? 'yes' : 'own password';
  if (who === 'deputy') return permission.allowed.includes('warehouse') || permission.byDeputy ? 'yes' : 'no';
  return permission.allowed.includes(who) ? 'yes' : 'no';
}

const inWords = ({ permission }: Way): string =>
  !permission
    ? 'not said'
    : permission.isForStrangers
      ? 'everybody'
      : permission.allowed.length === 3
        ? 'signed in'
        : permission.allowed.toSorted().join(', ') || 'nobody';

async function answerOf(address: string, { path, init }: Way, cookie: string): Promise<Answer> {
  const reply = await fetch(address + path, { ...init, headers: { ...(init.headers as Record<string, string>), cookie } });
  if (reply.headers.get('content-type')?.startsWith('text/event-stream')) {
    await reply.body?.cancel();
    return 'yes';
  }
  const text = await reply.text();
  return path === '/graphql' ? answerOfOperation(reply.status, text) : answerOfRoute(reply.status, text);
}

interface Told {
  readonly errors?: readonly { readonly message: string; readonly extensions: { readonly code: string } }[];
}

/** What an operation that was let in may say; anything else means that it was not tried. */
const saidByTheHouse = new Set(['BAD_INPUT', 'NOT_FOUND', 'NOT_ALLOWED']);

function answerOfOperation(status: number, text: string): Answer {
  const { errors = [] } = JSON.parse(text) as Told;
  const codes = errors.map((each) => each.extensions.code);
  if (status === 401 || codes.includes('NOT_SIGNED_IN')) return 'sign in';
  if (codes.includes('NEW_PASSWORD_WANTED')) return 'own password';
  if (errors.some(({ message }) => isOfTheGuard(message))) return 'no';
  return status === 200 && codes.every((code) => saidByTheHouse.has(code)) ? 'yes' : `not tried: ${text.slice(0, 200)}`;
}

function answerOfRoute(status: number, text: string): Answer {
  if (status === 401) return 'sign in';
  if (status === 403) return text.includes('password of your own') ? 'own password' : 'no';
  return status === 429 || status >= 500 ? `not tried: ${status} ${text.slice(0, 200)}` : 'yes';
}

/** Services say no in sentences of their own, to who was let in. */
const isOfTheGuard = (sentence: string): boolean => /^This is for (nobody|.*; you are signed in as )/.test(sentence);
