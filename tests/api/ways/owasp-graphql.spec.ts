import { setTimeout as pause } from 'node:timers/promises';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { GraphQLSchemaHost } from '@nestjs/graphql';
import { type GraphQLSchema, getNamedType, isInputObjectType, isLeafType, isListType } from 'graphql';
import { DataSource } from 'typeorm';
import { holdPlace } from '../../support/hold-place.js';
import { someValue } from '../../support/some-values.js';
import { type Agent, type TestApp, post, postListed, startTestApp } from '../../support/test-app.js';
import { eachOf } from './owasp.js';

let test: TestApp;
let system: Agent;
let warehouse: Agent;
let schema: GraphQLSchema;
beforeAll(async () => {
  test = await startTestApp();
  [system, warehouse] = await Promise.all([test.as('system'), test.as('warehouse')]);
  ({ schema } = test.app.get(GraphQLSchemaHost));
});
afterAll(() => test.close());

const codeOf = async (who: Agent, query: string, variables?: object): Promise<string> =>
  (await who.graphql(query, variables)).errors?.[0]?.extensions.code ?? 'done';
const sentenceOf = async (who: Agent, query: string, variables?: object): Promise<string> =>
  (await who.graphql(query, variables)).errors?.[0]?.message ?? 'done';
const queries = () => Object.values(schema.getQueryType()?.getFields() ?? {});
const mutations = () => Object.values(schema.getMutationType()?.getFields() ?? {});

/** Each query of the schema with one text in the place of every text and id that it takes. */
const withText = (text: string): { query: string; variables: object }[] =>
  queries()
    .filter(({ args }) => args.some((each) => ['String', 'ID'].includes(getNamedType(each.type).name)))
    .map(({ name, args, type }) => ({
      query: `query Own(${args.map((each) => `$${each.name}: ${String(each.type)}`).join(', ')}) { ${name}(${args.map((each) => `${each.name}: $${each.name}`).join(', ')})${isLeafType(getNamedType(type)) ? '' : ' { __typename }'} }`,
      variables: Object.fromEntries(
        args.map((each) => [
          each.name,
          ['String', 'ID'].includes(getNamedType(each.type).name) && !isListType(each.type) ? text : someValue(each.type),
        ]),
      ),
    }));

const sourcesUnder = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((each) => each.endsWith('.ts'))
    .map((each) => join(folder, each));

eachOf('GraphQL Cheat Sheet', 'https://cheatsheetseries.owasp.org/cheatsheets/GraphQL_Cheat_Sheet.html', [
  {
    section: 'Input Validation',
    asks: 'Types for what comes in; own scalars for what is not plain; input types for mutations.',
    house: 'Every argument has a type; values of own scalars are read by the shapes of the tour file, field by field.',
    shows: async () => {
      for (const { args } of [...queries(), ...mutations()])
        for (const each of args) expect(isLeafType(getNamedType(each.type)) || isInputObjectType(getNamedType(each.type))).toBe(true);
      const reply = await system.graphql('mutation { saveTour(tour: { id: 5, shows: "none" }) { id } }');
      expect(reply.errors?.[0]?.extensions).toMatchObject({
        code: 'BAD_INPUT',
        faults: expect.arrayContaining([expect.objectContaining({ field: 'id' })]),
      });
    },
  },
  {
    section: 'Input Validation',
    asks: 'Allowed values are listed, not forbidden ones.',
    house: 'Kinds, states, roles and ends are closed lists; another value is named with what would be right.',
    shows: async () => {
      const wrong = [
        '{ items(kind: "rocket") { totalCount } }',
        '{ items(state: "lost") { totalCount } }',
        '{ attention(role: "guest") { edges { cursor } } }',
      ];
      for (const query of wrong) expect(await codeOf(system, query)).toBe('BAD_INPUT');
    },
  },
  {
    section: 'Input Validation',
    asks: 'One encoding inside, for text in any alphabet.',
    house: 'Text is UTF-8, or says what else it is; names that cannot be told apart are one (NFKC); NUL is refused.',
    shows: async () => {
      const send = (type: string, body: Buffer) =>
        fetch(`${test.address}/graphql`, { method: 'POST', headers: { 'content-type': type, cookie: system.cookie }, body });
      const utf16 = Buffer.from('{"query":"{ me { id } }"}', 'utf16le');
      expect((await send('application/json', utf16)).status).toBe(400);
      expect((await send('application/json; charset=x-unknown', utf16)).status).toBe(415);
      const [first] = (await system.graphql('{ people { name } }')).data.people;
      const wide = first.name.replaceAll(/[a-z]/g, (letter: string) => String.fromCodePoint((letter.codePointAt(0) ?? 0) + 0xfee0));
      const person = { name: wide, email: 'wide@cartwright.example', role: 'warehouse', password: 'given by another' };
      const added = await system.graphql('mutation($person: PersonInput!) { addPerson(person: $person) { id } }', { person });
      expect(added.errors?.[0]?.extensions.faults?.[0]?.field).toBe('name');
      expect(await codeOf(system, '{ items(search: "\\u0000") { totalCount } }')).toBe('BAD_INPUT');
    },
  },
  {
    section: 'Injection Prevention',
    asks: 'Values never become part of a statement, a command or a document of another kind.',
    house: 'Parameters throughout: the same answers, whatever stands in a text, and never a fault of ours.',
    shows: async () => {
      const texts = [
        "' OR '1'='1",
        "'; DROP TABLE item; --",
        '$(reboot) `reboot`',
        '*)(uid=*))(|(uid=*',
        '{"$gt": ""}',
        '<!DOCTYPE x [<!ENTITY y SYSTEM "file:///etc/passwd">]>',
        '\r\nset-cookie: x=y',
      ];
      const count = async () => (await test.dataSource.query('SELECT count(*)::int AS count FROM item'))[0].count;
      const before = await count();
      let tried = 0;
      for (const text of texts)
        for (const { query, variables } of withText(text)) {
          const reply = await system.graphql(query, variables);
          const code = reply.errors?.[0]?.extensions.code ?? 'done';
          expect({ query, text, code }).toEqual({ query, text, code: expect.stringMatching(/^(done|BAD_INPUT|NOT_FOUND|NOT_ALLOWED)$/) });
          tried++;
        }
      expect(tried).toBeGreaterThan(150);
      expect((await system.graphql('query($t: String) { items(search: $t) { totalCount } }', { t: texts[0] })).data.items.totalCount).toBe(
        0,
      );
      expect(await count()).toBe(before);
    },
  },
  {
    section: 'Process Validation',
    asks: 'Nothing is asked of a host that a user names.',
    house: 'The API asks nobody but its database: no client of HTTP and no shell in its sources.',
    shows: () => {
      const sources = [...sourcesUnder('apps/api/src'), ...sourcesUnder('apps/worker/src'), ...sourcesUnder('libs')].filter(
        (each) => !each.endsWith('.spec.ts'),
      );
      expect(sources.length).toBeGreaterThan(300);
      const asking =
        /\bfetch\(|from 'node:(https|http2|dgram|child_process)'|from '(axios|undici|got|node-fetch)'|\b(request|get) .*from 'node:http'/;
      expect(sources.filter((each) => asking.test(readFileSync(each, 'utf8')))).toEqual([]);
    },
  },
  {
    section: 'Query Limiting (Depth & Amount)',
    asks: 'A greatest depth.',
    house: 'Counted with fragments unfolded, introspection too.',
    shows: async () => {
      const deep = `{ __schema { types ${'{ fields { type '.repeat(6)} { name } ${'} }'.repeat(6)} } }`;
      expect(await sentenceOf(system, deep)).toMatch(/levels|depth exceeded/);
    },
  },
  {
    section: 'Query Limiting (Depth & Amount)',
    asks: 'A greatest amount, and pages.',
    house: 'Lists that grow come in pages of at most 200.',
    shows: async () => {
      for (const list of ['items', 'examinedItems', 'tours', 'attention', 'proposals']) {
        expect(await codeOf(system, `{ ${list}(first: 99999999) { edges { cursor } } }`)).toMatch(/^(BAD_INPUT|TOO_MUCH)$/);
        expect(
          (await system.graphql(`{ ${list} { edges { cursor } pageInfo { hasNextPage } } }`)).data[list].edges.length,
        ).toBeLessThanOrEqual(200);
      }
    },
  },
  {
    section: 'Timeouts',
    asks: 'At the application or below it.',
    house: 'The database stops a statement after a minute and a pause inside a transaction after two; the caller is told in words.',
    shows: async () => {
      const dataSource = test.app.get(DataSource);
      expect(await dataSource.query('SHOW statement_timeout')).toEqual([{ statement_timeout: '1min' }]);
      expect(await dataSource.query('SHOW idle_in_transaction_session_timeout')).toEqual([{ idle_in_transaction_session_timeout: '2min' }]);
    },
  },
  {
    section: 'Query Cost Analysis',
    asks: 'A greatest cost.',
    house: 'Counted from the document before any of it is done.',
    shows: async () => {
      const pages = Array.from(
        { length: 8 },
        (_, index) => `p${index}: items(first: 200) { edges { cursor node { id kind model state depot place dueOn } } }`,
      );
      expect(await sentenceOf(system, `{ ${pages.join(' ')} }`)).toContain('it costs');
    },
  },
  {
    section: 'Rate Limiting',
    asks: 'By address, by person, or both.',
    house: 'Tries at the door by both; everything else by places: one person alone never fills the house.',
    shows: async () => {
      const narrow = await startTestApp({
        beside: test,
        config: { atOnce: { all: 64, person: 3, strangers: 2, knownDevices: 1, address: 2, halfSent: { all: 2, address: 2 } } },
      });
      try {
        const ask = (cookie: string) => postListed(narrow.address, 'Me', {}, { cookie }).then(({ status }) => status);
        const held = await Promise.all([0, 1, 2].map(() => holdPlace(narrow.address, system.cookie)));
        // A place is taken when the request is looked at, a moment after it was let in.
        for (let looks = 0; looks < 100 && (await ask(system.cookie)) !== 429; looks++) await pause(100);
        expect(await ask(system.cookie)).toBe(429);
        expect(await ask(warehouse.cookie)).toBe(200);
        for (const each of held) each.destroy();
      } finally {
        await narrow.close();
      }
    },
  },
  {
    section: 'Server-side Batching and Caching',
    asks: 'A list does not ask the database once a row.',
    house: 'A page is one statement or two, however many rows it has.',
    shows: async () => {
      const dataSource = test.app.get(DataSource);
      const make = dataSource.createQueryRunner.bind(dataSource);
      const asked: string[] = [];
      dataSource.createQueryRunner = (mode) => {
        const runner = make(mode);
        const query = runner.query.bind(runner);
        runner.query = ((text: string, ...rest: []) => {
          asked.push(text);
          return query(text, ...rest);
        }) as never;
        return runner;
      };
      try {
        const count = async (first: number) => {
          asked.length = 0;
          await system.graphql(`{ items(first: ${first}) { totalCount edges { node { id state depot place dueOn } } } }`);
          return asked.filter((text) => /\bitem\b/.test(text)).length;
        };
        expect(await count(1)).toBeGreaterThan(0);
        expect(await count(100)).toBe(await count(1));
      } finally {
        dataSource.createQueryRunner = make;
      }
    },
  },
  {
    section: 'System Resource Management',
    asks: 'Bounds by the operating system or the container.',
    house: 'For whoever runs the house. By itself it solves outside the thread that answers, with a bound on threads and connections.',
    shows: async () => {
      const text = await (await fetch(`${test.address}/metrics`)).text();
      expect(Number(/^cartwright_solvers (\d+)$/m.exec(text)?.[1])).toBeGreaterThanOrEqual(1);
      const connections = await test.dataSource.query(
        `SELECT count(*)::int AS count FROM pg_stat_activity WHERE datname = current_database()`,
      );
      expect(connections[0].count).toBeLessThan(60);
    },
  },
  {
    section: 'Access Control',
    asks: 'Every query and every mutation looks who asks.',
    house: 'What does not declare for whom it is, is for nobody; everybody tries everything in roles-by-way.',
    shows: () => {
      const table = readFileSync('tests/api/ways/roles-by-way.md', 'utf8');
      for (const { name } of queries()) expect(table).toContain(`| query ${name} |`);
      for (const { name } of mutations()) expect(table).toContain(`| mutation ${name} |`);
    },
  },
  {
    section: 'Access Control',
    asks: 'On edges and on nodes.',
    house: 'Nodes are reached through their lists and pages alone: no node or nodes field, and no subscription.',
    shows: () => {
      expect(queries().filter(({ name }) => /^nodes?$/i.test(name))).toEqual([]);
      expect(schema.getSubscriptionType()).toBeUndefined();
    },
  },
  {
    section: 'General Data Access',
    asks: 'Holding an id is not a right.',
    house: 'Sessions and requests of others stay theirs, whoever knows their ids.',
    shows: async () => {
      const [theirs] = (await warehouse.graphql('{ sessions { id isThis } }')).data.sessions.filter(
        (each: { isThis: boolean }) => each.isThis,
      );
      await system.graphql(`mutation { endSessions(id: "${theirs.id}") }`);
      expect((await warehouse.graphql('{ me { id } }')).data.me).not.toBeNull();
      const id = '6f1c2f9e-6f52-4a8e-9d3d-0f2f6d7b9a11';
      await warehouse.graphql(
        'mutation { quarantine(itemId: "P-010", reason: "a dent") { summary { id } } }',
        {},
        { 'x-request-id': id, 'idempotency-key': id },
      );
      expect(await (await system.fetch(`/api/requests/${id}`)).json()).toEqual({ outcome: 'unknown yet' });
    },
  },
  {
    section: 'Query Access (Data Fetching); Mutation Access (Data Manipulation)',
    asks: 'Fields that some may not read, acts that some may not do.',
    house: 'Everybody signed in reads the house; passwords and tokens are fields of nothing; acts are by role.',
    shows: async () => {
      const types = Object.values(schema.getTypeMap()).filter(
        (each) => 'getFields' in each && !isInputObjectType(each) && !each.name.startsWith('__'),
      );
      const names = types.flatMap((each) => Object.keys((each as { getFields(): object }).getFields()));
      expect(names.length).toBeGreaterThan(200);
      expect(
        // Two acts, and whose hand gave a password last.
        names.filter(
          (each) => /password|hash|token|secret/i.test(each) && !['changePassword', 'renewPassword', 'passwordByOfficer'].includes(each),
        ),
      ).toEqual([]);
      expect(await codeOf(warehouse, 'mutation { approveRiggingSystem(id: "x") }')).toBe('NOT_ALLOWED');
    },
  },
  {
    section: 'Mitigating Batching Attacks',
    asks: 'No lists of operations.',
    house: 'One operation a request.',
    shows: async () => {
      const reply = await fetch(`${test.address}/graphql`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', cookie: system.cookie },
        body: JSON.stringify([{ query: '{ me { id } }' }, { query: '{ me { id } }' }]),
      });
      expect(reply.status).toBe(400);
    },
  },
  {
    section: 'Mitigating Batching Attacks',
    asks: 'No guessing of passwords by many fields of one operation.',
    house: 'Strangers send no operations of their own; of others no more than ten fields pass, and each try counts.',
    shows: async () => {
      const tries = (count: number) =>
        `mutation { ${Array.from({ length: count }, (_, index) => `t${index}: signIn(email: "guess@cartwright.example", password: "${index}") { ... on SignInRefusal { sentence } }`).join(' ')} }`;
      expect((await post(test.address, '', tries(2))).status).toBe(401);
      expect(await codeOf(system, tries(12))).toBe('TOO_MUCH');
      const answers: string[] = Object.values((await system.graphql(tries(10))).data).map((each: any) => each.sentence);
      expect(answers.filter((each) => each.startsWith('No account'))).toHaveLength(5);
      expect(answers.filter((each) => each.startsWith('Too many tries'))).toHaveLength(5);
    },
  },
  {
    section: 'Introspection + GraphiQL',
    asks: 'Off, or for some only; no explorer.',
    house: 'For roles that may send operations of their own; there is no explorer.',
    shows: async () => {
      const house = await startTestApp({ beside: test, config: { ownOperations: ['system'] } });
      try {
        const ask = (cookie: string) => post(house.address, cookie, '{ __schema { queryType { name } } }').then(({ status }) => status);
        expect(await Promise.all([ask(''), ask(warehouse.cookie), ask(system.cookie)])).toEqual([401, 403, 200]);
        const page = await fetch(`${house.address}/graphql`, { headers: { accept: 'text/html', cookie: system.cookie } });
        expect({ status: page.status, isPage: (await page.text()).includes('<html') }).toEqual({ status: 405, isPage: false });
      } finally {
        await house.close();
      }
    },
  },
  {
    section: 'Introspection + GraphiQL',
    asks: 'No hints at names of fields where introspection is off.',
    house: 'Whoever may not introspect sends no document at all, so there is nobody to hint to.',
    shows: async () => {
      const reply = await post(test.address, '', '{ peopl { id } }');
      expect({ status: reply.status, hint: (await reply.text()).includes('Did you mean') }).toEqual({ status: 401, hint: false });
    },
  },
  {
    section: "Don't Return Excessive Errors",
    asks: 'No stack, no statement, no names of tables.',
    house: 'A fault is told as an incident number; what is wrong with an input, by field and value.',
    shows: async () => {
      const house = await startTestApp({ beside: test });
      try {
        await house.app.get(DataSource).destroy();
        const text = JSON.stringify(await (await post(house.address, system.cookie, '{ items { totalCount } }')).json());
        expect(text).not.toMatch(/SELECT|node_modules|\.ts:|\.js:|at \w+ \(/);
        expect(text).toMatch(/message/);
      } finally {
        await house.close().catch(() => undefined);
      }
      for (const { query, variables } of withText('x')) {
        const { errors } = await system.graphql(query, variables);
        expect(JSON.stringify(errors ?? [])).not.toMatch(/SELECT|node_modules|\.ts:|\.js:/);
      }
    },
  },
]);
