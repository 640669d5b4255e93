import { writeCsv } from '#kernel';
import { type ItemKind, type ModelKind, itemKinds, modelKinds } from '#tour-file';
import { itemCells, modelCells, saveForm, sendRows, sendTour } from '../../support/register-edits.js';
import { type Agent, type TestApp, agentOf, postListed } from '../../support/test-app.js';

type Asked = 'warehouse' | 'system' | 'safety';

/** What an act needs: people signed in, and what earlier acts left for later ones. */
export interface House {
  readonly test: TestApp;
  readonly empty: TestApp;
  readonly agents: Readonly<Record<Asked, Agent>>;
  readonly kept: Map<string, any>;
}

/** One way of writing: how it is called in the house's own list of ways, and a call that succeeds. */
export type Act = readonly [name: string, call: (house: House) => Promise<unknown>];

const tour = 'harbour-lights';

/** Calls a mutation that has to succeed; gives what it answers. */
async function ask({ agents }: House, who: Asked, call: string, variables: object = {}, types = ''): Promise<any> {
  const { data, errors } = await agents[who].graphql(`mutation${types} { ${call} }`, variables);
  if (errors) throw new Error(`${JSON.stringify(errors)}: ${call}`);
  return Object.values(data)[0];
}

const q = (text: string): string => JSON.stringify(text);

async function read({ agents }: House, query: string): Promise<any> {
  const { data, errors } = await agents.system.graphql(query);
  if (errors) throw new Error(`${query}: ${JSON.stringify(errors)}`);
  return Object.values(data)[0];
}

/** A plan of the first show with all that it says; the newest draft afterwards. */
async function draft(house: House): Promise<{ id: string; plan: any }> {
  const made = await ask(house, 'system', `makePackPlan(tourId: "${tour}", showId: "quayside") { ... on PlanMade { plan { id plan } } }`);
  return made.plan;
}

const made = ' { __typename ... on LoadingDone { draftId } ... on PlanningRefusal { sentence reasons } }';

const pieceIn = ({ id, plan }: { id: string; plan: any }) => ({ id, piece: plan.truck.trucks[0].placements[0].id as string });

/** A wish at the dock, for a piece that stands in a truck; gives the draft that it makes. */
async function wish(house: House, call: (id: string, piece: string) => string, id?: string): Promise<string> {
  const plan = id ? { id, piece: house.kept.get('piece') } : await draft(house).then(pieceIn);
  house.kept.set('piece', plan.piece);
  const done = await ask(house, 'warehouse', call(q(plan.id), q(plan.piece)) + made);
  if (done.__typename !== 'LoadingDone') throw new Error(`${call(plan.id, plan.piece)}: ${JSON.stringify(done)}`);
  return done.draftId;
}

const nameDeputy = (house: House, personId: string, officerId: string): Promise<string> => {
  const days = { from: '2027-02-26', until: '2027-02-27', timeZone: 'Europe/London', reason: 'at the yard' };
  return ask(
    house,
    'safety',
    'nameDeputy(deputy: $d)',
    { d: { personId, officerId, password: 'from an officer', ...days } },
    '($d: DeputyInput!)',
  );
};

const signedIn = async ({ test }: House, who: string, password: string): Promise<Agent> => {
  const reply = await postListed(test.address, 'SignIn', { email: `${who}@cartwright.example`, password });
  return agentOf(test.address, (reply.headers.get('set-cookie') ?? '').split(';')[0] ?? '');
};

/** In with what another person gave, once. */
async function chooseOwn(house: House, who: string, given: string): Promise<void> {
  const { errors } = await (await signedIn(house, who, given)).graphql('mutation { changePassword(old: "", next: "chosen by myself") }');
  if (errors) throw new Error(JSON.stringify(errors));
}

const people: readonly Act[] = [
  [
    'mutation addPerson',
    async (house) => {
      for (const name of ['Tam Orrery', 'Ona Fell']) {
        const person = { name, email: `${name.slice(0, 3)}@cartwright.example`, role: 'warehouse', password: 'long enough 1' };
        house.kept.set(name, (await ask(house, 'system', 'addPerson(person: $person) { id }', { person }, '($person: PersonInput!)')).id);
      }
    },
  ],
  ['mutation renamePerson', (house) => ask(house, 'system', `renamePerson(id: "${house.kept.get('Tam Orrery')}", name: "Tam Orr") { id }`)],
  [
    'mutation renewPassword',
    (house) => ask(house, 'system', `renewPassword(id: "${house.kept.get('Tam Orrery')}", password: "given anew 12")`),
  ],
  [
    'mutation changePassword',
    async (house) => {
      await chooseOwn(house, 'ona', 'long enough 1');
      await chooseOwn(house, 'tam', 'given anew 12');
    },
  ],
  ['mutation changeRole', (house) => ask(house, 'system', `changeRole(id: "${house.kept.get('Tam Orrery')}", role: "system")`)],
  ['mutation disablePerson', (house) => ask(house, 'system', `disablePerson(id: "${house.kept.get('Tam Orrery')}")`)],
  ['mutation enablePerson', (house) => ask(house, 'system', `enablePerson(id: "${house.kept.get('Tam Orrery')}")`)],
  [
    'mutation nameDeputy',
    async (house) => {
      const { id } = await read(house, '{ people { id role } }').then((found) => found.find((each: any) => each.role === 'safety'));
      house.kept.set('deputy', await nameDeputy(house, house.kept.get('Tam Orrery'), id));
    },
  ],
  ['mutation withdrawDeputy', (house) => ask(house, 'safety', `withdrawDeputy(id: "${house.kept.get('deputy')}")`)],
  ['mutation setOnePerson', (house) => ask(house, 'safety', 'setOnePerson(isOn: true, reason: "a house of two people")')],
  ['mutation proposeOfficer', (house) => ask(house, 'system', `proposeOfficer(id: "${house.kept.get('Tam Orrery')}")`)],
  [
    'mutation answerProposal',
    (house) => ask(house, 'safety', `answerProposal(id: "${house.kept.get('Tam Orrery')}", accept: true, password: "for one sign-in")`),
  ],
  [
    'mutation signDeputy',
    async (house) => {
      const id = await nameDeputy(house, house.kept.get('Ona Fell'), house.kept.get('Tam Orrery'));
      await chooseOwn(house, 'tam', 'for one sign-in');
      const tam = await signedIn(house, 'tam', 'chosen by myself');
      const { errors } = await tam.graphql(`mutation { signDeputy(id: "${id}") }`);
      if (errors) throw new Error(JSON.stringify(errors));
    },
  ],
  ['mutation removePerson', (house) => ask(house, 'system', `removePerson(id: "${house.kept.get('Ona Fell')}")`)],
  [
    'mutation setUp',
    async ({ empty }) => {
      const officer = { officerName: 'Osric Bell', officerEmail: 'osric@example.org', officerPassword: 'first password' };
      const first = { name: 'Tamsin Vane', email: 'tamsin@example.org', password: 'first password 2' };
      const reply = await (await postListed(empty.address, 'SetUp', { code: 'k4codek4', people: { ...first, ...officer } })).json();
      if (!(reply as any).data?.setUp) throw new Error(JSON.stringify(reply));
    },
  ],
];

const register: readonly Act[] = [
  ['mutation quarantine', (house) => ask(house, 'warehouse', 'quarantine(itemId: "P-050", reason: "horn cracked") { item }')],
  [
    'mutation releaseFromQuarantine',
    (house) => ask(house, 'safety', 'releaseFromQuarantine(itemId: "P-050", reason: "new horn") { item }'),
  ],
  [
    'mutation recordExamination',
    (house) => {
      const examination = { on: '2027-02-25', outcome: 'pass', examiner: 'Northgate Inspection (invented)', report: 'NI-1' };
      return ask(house, 'safety', 'recordExamination(itemId: "H-08", examination: $e) { item }', { e: examination }, '($e: AnyJson!)');
    },
  ],
  [
    'mutation recordIncident',
    (house) => ask(house, 'system', 'recordIncident(itemId: "H-07", on: "2027-02-25", what: "shock load") { item }'),
  ],
  [
    'mutation correctSerial',
    async (house) => {
      const made = await sendRows(house.agents.safety, 'items/box', [{ serial: 'P-9O1', model: 'Plover', depot: 'Ferry Lane' }]);
      if (made.status !== 200) throw new Error(JSON.stringify(made));
      await ask(house, 'safety', 'correctSerial(itemId: "P-9O1", serial: "P-901", reason: "read wrong") { id }');
    },
  ],
  [
    'mutation changeItems',
    async (house) => {
      const cells = '[{ column: "owner", value: "the company" }]';
      const done = await ask(house, 'warehouse', `changeItems(ids: ["P-001", "P-002"], cells: ${cells}) { __typename }`);
      if (done.__typename !== 'ManyChanged') throw new Error(JSON.stringify(done));
    },
  ],
  [
    'mutation splitLot',
    (house) => ask(house, 'warehouse', 'splitLot(itemId: "SH-1", pieces: 1, state: "quarantined", reason: "bow bent") { taken }'),
  ],
  [
    'POST /api/csv/lots',
    async ({ agents }) => {
      const headers = { 'content-type': 'text/csv', 'x-cartwright': '1' };
      const body = 'batch,pieces,state,reason\r\nSH-1,1,retired,lost at sea\r\n';
      const reply = await agents.warehouse.fetch('/api/csv/lots', { method: 'POST', headers, body });
      if (!reply.ok) throw new Error(await reply.text());
    },
  ],
  ['mutation setStack', (house) => ask(house, 'warehouse', 'setStack(cart: "K07", serials: []) { item }')],
  [
    'POST /api/reports/:itemId',
    async ({ agents }) => {
      const body = '%PDF-1.7\n1 0 obj\n<<>>\nendobj\ntrailer\n<<>>\n%%EOF\n';
      const headers = { 'content-type': 'application/pdf', 'x-cartwright': '1' };
      const reply = await agents.safety.fetch('/api/reports/H-08?name=a.pdf', { method: 'POST', headers, body });
      if (!reply.ok) throw new Error(await reply.text());
    },
  ],
];

const rules: readonly Act[] = [
  [
    'mutation addExaminationRules',
    (house) => {
      const rule = { jurisdiction: 'NL', kinds: ['hoist'], intervals: ['P12M'], source: 'of the house', status: 'found' };
      house.kept.set('rule', rule);
      return ask(house, 'safety', 'addExaminationRules(rules: $rules)', { rules: [rule] }, '($rules: [ModelJson!]!)');
    },
  ],
  [
    'mutation changeExaminationRule',
    (house) => {
      const was = house.kept.get('rule') as object;
      const rule = { ...was, who: 'competent person', source: 'a rule of the house, second edition' };
      house.kept.set('rule', rule);
      return ask(
        house,
        'safety',
        'changeExaminationRule(was: $was, rule: $rule, reason: "who examines is named")',
        { was, rule },
        '($was: ModelJson!, $rule: ModelJson!)',
      );
    },
  ],
  [
    'mutation removeExaminationRule',
    (house) =>
      ask(
        house,
        'safety',
        'removeExaminationRule(rule: $rule, reason: "a scheme")',
        { rule: house.kept.get('rule') },
        '($rule: ModelJson!)',
      ),
  ],
  [
    'mutation saveLoadRule',
    async (house) => {
      const { loadRules } = await read(house, '{ rules }');
      const variables = { was: loadRules[0], rule: { ...loadRules[0], dynamicFactor: loadRules[0].dynamicFactor + 0.1 } };
      return ask(house, 'system', 'saveLoadRule(rule: $rule, was: $was)', variables, '($rule: ModelJson!, $was: ModelJson)');
    },
  ],
  [
    'mutation saveRiggingSystem',
    async (house) => {
      const [{ approved: _approved, ...was }] = await read(house, '{ riggingSystems }');
      house.kept.set('system', was.id);
      const variables = { was, system: { ...was, windLimitMps: 10 } };
      return ask(house, 'system', 'saveRiggingSystem(system: $system, was: $was)', variables, '($system: ModelJson!, $was: ModelJson)');
    },
  ],
  ['mutation approveRiggingSystem', (house) => ask(house, 'safety', `approveRiggingSystem(id: ${q(house.kept.get('system'))})`)],
];

const tours: readonly Act[] = [
  [
    'mutation answerPlace',
    async (house) => {
      const page = await read(house, `{ tour(id: "${tour}") { version tour } }`);
      const variables = { tour: { ...page.tour, jurisdictions: ['GB', 'NO'] }, v: page.version };
      await ask(house, 'system', 'saveTour(tour: $tour, expectedVersion: $v) { version }', variables, '($tour: TourJson!, $v: Int)');
      return ask(house, 'safety', `answerPlace(tourId: "${tour}", place: "NO", rulesOf: "GB", reason: "home rules") { ruled }`);
    },
  ],
  [
    'mutation saveVenue',
    async (house) => {
      const venue = { name: 'Quayside Hall', city: 'Saltmouth', country: 'GB', timeZone: 'Europe/London', points: [], doors: [] };
      house.kept.set('venue', (await ask(house, 'system', 'saveVenue(venue: $v) { id }', { v: venue }, '($v: VenueJson!)')).id);
    },
  ],
  [
    'mutation chooseVenue',
    (house) => ask(house, 'system', `chooseVenue(tourId: "${tour}", showId: "fenland", venueId: "${house.kept.get('venue')}")`),
  ],
  [
    'mutation saveTour',
    async (house) => {
      const page = await read(house, `{ tour(id: "${tour}") { version tour } }`);
      const variables = {
        tour: { ...page.tour, shows: page.tour.shows.map((show: any) => ({ ...show, name: `${show.name} II` })) },
        v: page.version,
      };
      return ask(house, 'system', 'saveTour(tour: $tour, expectedVersion: $v) { version }', variables, '($tour: TourJson!, $v: Int)');
    },
  ],
  [
    'mutation removeShow',
    async (house) =>
      ask(house, 'system', `removeShow(tourId: "${tour}", showId: "fenland", expectedVersion: ${await version(house)}) { version }`),
  ],
  [
    'mutation putShowBack',
    async (house) =>
      ask(house, 'system', `putShowBack(tourId: "${tour}", showId: "fenland", expectedVersion: ${await version(house)}) { version }`),
  ],
  [
    'mutation removeTour',
    async (house) => ask(house, 'system', `removeTour(tourId: "${tour}", expectedVersion: ${await version(house)}) { version }`),
  ],
  [
    'mutation putTourBack',
    async (house) => ask(house, 'system', `putTourBack(tourId: "${tour}", expectedVersion: ${await version(house)}) { version }`),
  ],
  [
    'POST /api/tours/file',
    async (house) => {
      const file = JSON.parse(await (await house.agents.system.fetch(`/api/tours/${tour}/file`)).text());
      Object.assign(file, { bookings: [], tour: { ...file.tour, id: 'later', name: 'Later' } });
      const said = await sendTour(house.agents.system, file);
      if (said.status !== 200) throw new Error(JSON.stringify(said.body).slice(0, 500));
    },
  ],
];

const version = async ({ test }: House): Promise<number> =>
  Number((await test.dataSource.query('SELECT version FROM tour WHERE id = $1', [tour]))[0].version);

const fleet: readonly Act[] = [
  [
    'mutation placeHold',
    async (house) => {
      const hold = 'hold: { name: "Regatta", from: "2027-06-01", to: "2027-06-04", hours: 24, items: ["P-051"] }';
      house.kept.set('hold', (await ask(house, 'warehouse', `placeHold(${hold}) { ... on Hold { id } }`)).id);
    },
  ],
  ['mutation giveHoldBack', (house) => ask(house, 'warehouse', `giveHoldBack(id: "${house.kept.get('hold')}")`)],
];

const planning: readonly Act[] = [
  [
    'mutation takeImprovement',
    async (house) => {
      const { id } = await draft(house);
      for (;;) {
        if ((await read(house, `{ planImprovement(planId: "${id}") { code } }`))?.code === 'shorter') break;
        await new Promise((resolve) => setTimeout(resolve, 200));
      }
      return ask(house, 'system', `takeImprovement(planId: "${id}") { __typename }`);
    },
  ],
  ['mutation makePackPlan', async (house) => house.kept.set('draft', await draft(house))],
  [
    'mutation planWholeTour',
    (house) => ask(house, 'system', `planWholeTour(tourId: "${tour}", depot: 1, dock: 3, fixedUntil: 0) { __typename }`),
  ],
  ['mutation startSearch', (house) => ask(house, 'system', `startSearch(tourId: "${tour}", showId: "old-mill") { id }`)],
  [
    'mutation keepPieces',
    async (house) => house.kept.set('kept', await wish(house, (id, piece) => `keepPieces(planId: ${id}, pieces: [${piece}])`)),
  ],
  ['mutation letPiecesGo', (house) => wish(house, (id, piece) => `letPiecesGo(planId: ${id}, pieces: [${piece}])`, house.kept.get('kept'))],
  ['mutation keepRow', (house) => wish(house, (id) => `keepRow(planId: ${id}, truck: "T1", row: 5)`)],
  [
    'mutation keepLoaded',
    async (house) => {
      const { id } = await draft(house);
      await ask(house, 'warehouse', `tick(planId: "${id}", what: "T1 row 1", done: true) { id }`);
      return wish(house, (each) => `keepLoaded(planId: ${each})`, id);
    },
  ],
  [
    'mutation setGroupEnd',
    async (house) => {
      const { id, plan } = await draft(house);
      const placed: any[] = plan.truck.trucks.flatMap((each: any) => each.placements);
      const groups = new Set<string>(placed.map((each) => each.group ?? each.label));
      for (const group of groups)
        for (const end of ['door', 'nose']) {
          const call = `setGroupEnd(planId: "${id}", group: "${group}", end: "${end}")${made}`;
          if ((await ask(house, 'warehouse', call)).__typename === 'LoadingDone') return;
        }
      throw new Error('no group goes to an end beside what is kept');
    },
  ],
  [
    'mutation waiveOrder',
    async (house) =>
      house.kept.set(
        'waived',
        await wish(house, (id, piece) => `waiveOrder(planId: ${id}, piece: ${piece}, reason: "not before evening")`),
      ),
  ],
  ['mutation endWaiver', (house) => wish(house, (id, piece) => `endWaiver(planId: ${id}, piece: ${piece})`, house.kept.get('waived'))],
  [
    'mutation takeCase',
    async (house) => {
      const rows = [{ serial: 'WB-20', model: 'Workbox', state: 'in service', depot: 'Ferry Lane' }];
      const said = await sendRows(house.agents.warehouse, 'items/case', rows);
      if (said.status !== 200) throw new Error(JSON.stringify(said.body));
      house.kept.set('taken', await wish(house, (id) => `takeCase(planId: ${id}, case: "WB-20")`));
    },
  ],
  ['mutation leaveCase', (house) => wish(house, (id) => `leaveCase(planId: ${id}, case: "WB-20")`, house.kept.get('taken'))],
  [
    'mutation leavePiece',
    async (house) =>
      house.kept.set(
        'without',
        await wish(house, (id, piece) => `leavePiece(planId: ${id}, piece: ${piece}, reason: "a castor is broken")`),
      ),
  ],
  [
    'mutation takePieceAlong',
    (house) => wish(house, (id, piece) => `takePieceAlong(planId: ${id}, piece: ${piece})`, house.kept.get('without')),
  ],
  [
    'mutation swapRows',
    async (house) => {
      const { id, plan } = await draft(house);
      const rows: number[] = plan.truck.trucks[0].rows.map((each: any) => each.number);
      for (const first of rows)
        for (const second of rows.filter((each) => each > first)) {
          const call = `swapRows(planId: "${id}", truck: "T1", first: ${first}, second: ${second}, reason: "nearer the door")${made}`;
          if ((await ask(house, 'warehouse', call)).__typename === 'LoadingDone') return;
        }
      throw new Error('no two rows change places');
    },
  ],
];

const floor: readonly Act[] = [
  [
    'mutation releasePackPlan',
    async (house) => {
      const { id, plan } = await draft(house);
      const done = await ask(house, 'system', `releasePackPlan(planId: "${id}", despite: "a trial") { __typename }`);
      if (done.__typename !== 'PlanView') throw new Error(done.__typename);
      house.kept.set('released', { id, plan });
    },
  ],
  [
    'mutation tick',
    (house) => {
      const { id, plan } = house.kept.get('released');
      return ask(
        house,
        'warehouse',
        `tick(planId: "${id}", what: ${q(plan.picks.hangs[0].runningOrder.goingUp[0].key)}, done: true) { id }`,
      );
    },
  ],
  [
    'mutation doMove',
    (house) => {
      const { id, plan } = house.kept.get('released');
      const { box, from, to } = plan.carts.moves[0];
      return ask(house, 'warehouse', `doMove(planId: "${id}", box: ${q(box)}, from: ${q(from)}, to: ${q(to)})`);
    },
  ],
  [
    'mutation undoMove',
    (house) => {
      const { id, plan } = house.kept.get('released');
      const { box, from, to } = plan.carts.moves[0];
      return ask(house, 'warehouse', `undoMove(planId: "${id}", box: ${q(box)}, from: ${q(from)}, to: ${q(to)})`);
    },
  ],
  [
    'mutation confirmCart',
    (house) => {
      const { id, plan } = house.kept.get('released');
      const load = plan.carts.loads[0];
      const serials = load.boxes.map((each: any) => each.serial);
      return ask(
        house,
        'warehouse',
        `confirmCart(planId: "${id}", load: ${q(load.load ?? load.id)}, serials: ${JSON.stringify(serials)}) { agrees }`,
      );
    },
  ],
  [
    'mutation seeBarredAct',
    async (house) => {
      const { id, plan } = house.kept.get('released');
      const hang = plan.picks.hangs.at(-1);
      const hoist = hang.picks[0].hoistSerial;
      await ask(house, 'system', `quarantine(itemId: ${q(hoist)}, reason: "cracked") { item }`);
      const late = { 'idempotency-key': '00000000-0000-4000-8000-0000000000aa', 'x-done-at': '2027-02-26T08:30:00Z' };
      await house.agents.system.graphql(
        `mutation { tick(planId: "${id}", what: ${q(hang.runningOrder.goingUp[0].key)}, done: true) { id } }`,
        {},
        late,
      );
      const { doneAlthoughBarred } = await read(house, `{ plan(id: "${id}") { doneAlthoughBarred { id } } }`);
      await ask(house, 'safety', `seeBarredAct(tourId: "${tour}", id: "${doneAlthoughBarred[0].id}", because: "came down again")`);
      return ask(house, 'safety', `releaseFromQuarantine(itemId: ${q(hoist)}, reason: "looked at") { item }`);
    },
  ],
  [
    'mutation addLoadReading',
    (house) => {
      const { id, plan } = house.kept.get('released');
      const hang = plan.picks.hangs.find((each: any) => each.hang === 'Centre');
      return ask(
        house,
        'system',
        `addLoadReading(planId: "${id}", hang: "Centre", hole: ${q(hang.picks[0].hole)}, place: "at the hook", readingKg: 300) { readings { hang } }`,
      );
    },
  ],
  [
    'mutation signOff',
    async (house) => {
      const { id, plan } = house.kept.get('released');
      const hang = plan.picks.hangs.find((each: any) => each.hang === 'Centre');
      for (const { key } of hang.runningOrder.goingUp.filter((each: any) => each.hold))
        await ask(house, 'system', `tick(planId: "${id}", what: ${q(key)}, done: true) { id }`);
      return ask(
        house,
        'system',
        `signOff(planId: "${id}", hang: "Centre", kind: "inspected", name: "Sol Achterberg", remark: "the load cell was wrong") { signOffs { hang } }`,
      );
    },
  ],
  [
    'mutation returnCart',
    (house) => ask(house, 'warehouse', `returnCart(planId: "${house.kept.get('released').id}", cart: "K07", serials: ["P-050"]) { id }`),
  ],
  [
    'mutation returnItems',
    (house) => ask(house, 'warehouse', `returnItems(planId: "${house.kept.get('released').id}", items: ["H-08"]) { id }`),
  ],
  [
    'mutation reportFault',
    (house) => ask(house, 'warehouse', 'reportFault(itemId: "P-050", kind: "looks", what: "grille dented", then: "flies") { id }'),
  ],
  [
    'mutation benchTest',
    (house) =>
      ask(
        house,
        'warehouse',
        `benchTest(planId: "${house.kept.get('released').id}", itemId: "P-050", failed: ["drivers"], remark: "a high driver")`,
      ),
  ],
  [
    'mutation readSplays',
    (house) => {
      const { id, plan } = house.kept.get('released');
      const load = plan.carts.loads[0];
      const splays = load.boxes.filter((each: any) => each.splaySet === 'in the cart').map((each: any) => each.splayDeg);
      return ask(house, 'warehouse', `readSplays(planId: "${id}", load: ${q(load.id)}, splays: ${JSON.stringify(splays)})`);
    },
  ],
  [
    'mutation countTrunk',
    (house) => {
      const { id, plan } = house.kept.get('released');
      const [{ lot, trunk, count }] = plan.hardware.lines.flatMap((each: any) => each.takenFrom).filter((each: any) => each.trunk !== null);
      return ask(house, 'warehouse', `countTrunk(planId: "${id}", trunk: "${trunk}", counts: [{ lot: "${lot}", count: ${count - 1} }])`);
    },
  ],
  [
    'POST /api/pictures/:itemId',
    async ({ agents }) => {
      const headers = { 'content-type': 'image/png', 'x-cartwright': '1' };
      const pixel = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';
      const body = Buffer.from(pixel, 'base64');
      const reply = await agents.warehouse.fetch('/api/pictures/H-08?name=a.png', { method: 'POST', headers, body });
      if (!reply.ok) throw new Error(await reply.text());
    },
  ],
  [
    'mutation recordCounts',
    async (house) => {
      const call = `recordCounts(tourId: "${tour}", showIds: ["quayside"], lines: [{ key: "Link pin 12", sent: 132, returned: 131, damaged: 0 }])`;
      const sheet = await ask(house, 'warehouse', `${call} { ... on CountSheet { records { id } } }`);
      house.kept.set('count', sheet.records[0].id);
    },
  ],
  [
    'mutation correctCount',
    async (house) => {
      const call = `correctCount(id: "${house.kept.get('count')}", sent: 132, returned: 132, damaged: 0, reason: "in the cable trunk")`;
      const sheet = await ask(house, 'warehouse', `${call} { records { id inForce } }`);
      house.kept.set('count', sheet.records.find((each: any) => each.inForce).id);
    },
  ],
  [
    'mutation takeCountBack',
    (house) => ask(house, 'warehouse', `takeCountBack(id: "${house.kept.get('count')}", reason: "wrong show") { records { id } }`),
  ],
  [
    'mutation swapBox',
    (house) => {
      const { id, plan } = house.kept.get('released');
      return ask(
        house,
        'warehouse',
        `swapBox(planId: "${id}", serial: ${q(plan.carts.loads[0].boxes[1].serial)}, reason: "horn cracked") { __typename }`,
      );
    },
  ],
];

/** One row of each kind in the depot's own words; what stands on file already is said again with another note. */
const files: readonly Act[] = [
  ...itemKinds.flatMap((kind): Act[] => [
    [`POST /api/csv/items/${kind}`, (house) => sendItem(house, kind, 'file')],
    [`POST /api/csv/items/${kind}/edit`, (house) => sendItem(house, kind, 'form')],
  ]),
  ...modelKinds.flatMap((kind): Act[] => [
    [`POST /api/csv/models/${kind}`, (house) => sendModel(house, kind, 'file')],
    [`POST /api/csv/models/${kind}/edit`, (house) => sendModel(house, kind, 'form')],
  ]),
];

async function sendItem({ agents, test }: House, kind: ItemKind, way: 'file' | 'form'): Promise<void> {
  const [{ id }] = await test.dataSource.query(`SELECT id FROM item WHERE kind = $1 AND state = 'in service' ORDER BY id DESC LIMIT 1`, [
    kind,
  ]);
  const was = await itemCells(agents.system, id);
  const wanted = { ...was, depot: `${was['depot']} ${way}` };
  const said =
    way === 'file' ? await sendRows(agents.system, `items/${kind}`, [wanted]) : await saveForm(agents.system, `items/${kind}`, was, wanted);
  if (said.status !== 200) throw new Error(`${kind} by ${way}: ${JSON.stringify(said.body)}`);
}

async function sendModel({ agents, test }: House, kind: ModelKind, way: 'file' | 'form'): Promise<void> {
  const [{ model }] = await test.dataSource.query('SELECT model FROM model WHERE kind = $1 ORDER BY model LIMIT 1', [kind]);
  const was = await modelCells(agents.system, kind, model);
  const mass = Object.keys(was).find((heading) => /mass|kg/i.test(heading) && /^[\d.]+$/.test(was[heading] ?? '')) ?? '';
  const wanted = { ...was, [mass]: String(Number(was[mass]) + (way === 'file' ? 0.25 : 0.5)) };
  const said =
    way === 'file'
      ? await sendRows(agents.system, `models/${kind}`, [wanted])
      : await saveForm(agents.system, `models/${kind}`, was, wanted);
  if (said.status !== 200)
    throw new Error(`${kind} by ${way}, ${mass}: ${JSON.stringify(said.body)} ${writeCsv([Object.keys(was), Object.values(was)])}`);
}

/** The same rows beside the requests; the act is over when the file is in. */
const imports: readonly Act[] = [
  ...itemKinds.map((kind): Act => [`POST /api/imports/items/${kind}`, (house) => importItem(house, kind)]),
  ...modelKinds.map((kind): Act => [`POST /api/imports/models/${kind}`, (house) => importModel(house, kind)]),
  [
    'POST /api/imports/examinations',
    (house) =>
      importRow(house, 'examinations', {
        ...{ serial: 'H-03', 'examined on': '2027-02-24', outcome: 'pass', examiner: 'B. Ropemaker', report: 'RM-24' },
      }),
  ],
];

async function importItem(house: House, kind: ItemKind): Promise<void> {
  const [{ id }] = await house.test.dataSource.query(
    `SELECT id FROM item WHERE kind = $1 AND state = 'in service' ORDER BY id DESC LIMIT 1`,
    [kind],
  );
  const was = await itemCells(house.agents.system, id);
  await importRow(house, `items/${kind}`, { ...was, depot: `${was['depot']} beside` });
}

async function importModel(house: House, kind: ModelKind): Promise<void> {
  const [{ model }] = await house.test.dataSource.query('SELECT model FROM model WHERE kind = $1 ORDER BY model LIMIT 1', [kind]);
  const was = await modelCells(house.agents.safety, kind, model);
  const mass = Object.keys(was).find((heading) => /mass|kg/i.test(heading) && /^[\d.]+$/.test(was[heading] ?? '')) ?? '';
  await importRow(house, `models/${kind}`, { ...was, [mass]: String(Number(was[mass]) + 0.25) });
}

async function importRow({ agents }: House, of: string, row: Readonly<Record<string, string>>): Promise<void> {
  const headers = { 'content-type': 'text/csv', 'x-cartwright': '1' };
  const query = 'dryRun=false&reason=weighed%20again';
  const reply = await agents.safety.fetch(`/api/imports/${of}?${query}`, {
    method: 'POST',
    headers,
    body: writeCsv([Object.keys(row), Object.values(row)]),
  });
  const { id } = (await reply.json()) as { id: string };
  for (;;) {
    const { csvImport } = (
      await agents.safety.graphql('query($id: ID!) { csvImport(id: $id) { state code outcome { changed faults { column wanted } } } }', {
        id,
      })
    ).data;
    if (csvImport.state === 'done') return;
    if (csvImport.state !== 'going') throw new Error(`${of}: ${JSON.stringify(csvImport)}`);
    await new Promise((soon) => setTimeout(soon, 100));
  }
}

const season = 'from: "2027-02-26", to: "2027-12-31"';

async function visit(house: House, at: number): Promise<{ id: string; version: number }> {
  const { data } = await house.agents.safety.graphql(`{ visits(${season}) { id onDay version } }`);
  return [...data.visits].sort((a, b) => (a.onDay < b.onDay ? -1 : 1))[at];
}

const visits: readonly Act[] = [
  [
    'mutation addVisitDays',
    (house) =>
      ask(
        house,
        'safety',
        'addVisitDays(days: $days)',
        { days: ['2027-02-26', '2027-03-20', '2027-04-05', '2027-06-15', '2027-09-20'].map((onDay) => ({ onDay, depot: 'Ferry Lane' })) },
        '($days: [PossibleDayInput!]!)',
      ),
  ],
  [
    'mutation agreeVisits',
    async (house) => {
      const { data } = await house.agents.safety.graphql(`{ visitSeason(${season}, withIdle: false, without: []) { answer } }`);
      const planned: string[] = data.visitSeason.answer.visits.map((each: { id: string }) => each.id);
      return ask(house, 'safety', `agreeVisits(${season}, visits: ${JSON.stringify(planned)})`);
    },
  ],
  [
    'mutation enterVisitResults',
    async (house) => {
      const { id } = await visit(house, 0);
      const lines = [{ itemId: 'H-01', outcome: 'pass', report: 'V-1' }];
      return ask(
        house,
        'safety',
        'enterVisitResults(id: $id, examiner: "Rosa Tamm (invented)", lines: $lines) { visit { entered } }',
        { id, lines },
        '($id: ID!, $lines: [VisitResultInput!]!)',
      );
    },
  ],
  [
    'mutation moveVisit',
    async (house) => {
      const { id, version } = await visit(house, 1);
      return ask(house, 'safety', `moveVisit(id: "${id}", onDay: "2027-03-22", expectedVersion: ${version})`);
    },
  ],
  [
    'mutation cancelVisit',
    async (house) => {
      const { id, version } = await visit(house, 1);
      return ask(house, 'safety', `cancelVisit(id: "${id}", expectedVersion: ${version})`);
    },
  ],
  ['mutation renewCalendar', (house) => ask(house, 'safety', 'renewCalendar')],
  [
    'mutation withdrawCalendar',
    async (house) => {
      const { data } = await house.agents.safety.graphql('{ ownCalendars { id } }');
      return ask(house, 'safety', `withdrawCalendar(id: "${data.ownCalendars[0].id}")`);
    },
  ],
];

const answers: readonly Act[] = [
  [
    'mutation answerProposals',
    async (house) => {
      const was = await itemCells(house.agents.warehouse, 'SH-1');
      await saveForm(house.agents.warehouse, 'items/shackle', was, { ...was, count: String(Number(was['count']) + 4) });
      const { newest } = await read({ ...house, agents: { ...house.agents, system: house.agents.safety } }, '{ proposals { newest } }');
      return ask(house, 'safety', `answerProposals(through: "${newest}", accept: true, reason: "counted again")`);
    },
  ],
  [
    'mutation answerAllProposals',
    async (house) => {
      const was = await itemCells(house.agents.warehouse, 'SH-1');
      await saveForm(house.agents.warehouse, 'items/shackle', was, { ...was, count: String(Number(was['count']) + 4) });
      const officer = { ...house, agents: { ...house.agents, system: house.agents.safety } };
      const { newest } = await read(officer, '{ proposals { newest } }');
      await ask(house, 'safety', `answerAllProposals(through: "${newest}", accept: true, reason: "counted once more") { id }`);
      while ((await read(officer, '{ latestProposalAnswering { isGoing } }')).isGoing)
        await new Promise((resolve) => setTimeout(resolve, 50));
    },
  ],
];

/** Every act in an order in which each finds what it needs. */
const lentHoist = 'serial: "L-1", kind: "hoist", model: "Chain hoist 2.5 t", by: "lender", owner: "Quay Hire (invented)"';

async function takeInLent({ agents }: House): Promise<void> {
  const more = 'depot: "Ferry Lane", on: "2027-02-25", condition: "clean"';
  const said = await agents.warehouse.graphql(`mutation { takeInLentKit(kit: { ${lentHoist}, ${more} }) { itemId } }`);
  if (said.errors && !JSON.stringify(said.errors).includes('is here already')) throw new Error(JSON.stringify(said.errors));
}

async function seeLentPaper({ agents }: House): Promise<void> {
  const headers = { 'content-type': 'application/pdf', 'x-cartwright': '1' };
  const reply = await agents.warehouse.fetch('/api/papers/L-1?name=plate.pdf', { method: 'POST', headers, body: '%PDF-1.7' });
  if (reply.status !== 200) throw new Error(`the paper: ${reply.status}`);
}

/** In their order: what is cleared has no paper yet, and what went back is not touched any more. */
const ofOthers: readonly Act[] = [
  ['mutation takeInLentKit', takeInLent],
  ['mutation clearLentPaper', (house) => ask(house, 'safety', 'clearLentPaper(itemId: "L-1", reason: "plate read on site")')],
  ['POST /api/papers/:itemId', seeLentPaper],
  ['mutation giveBackLentKit', (house) => ask(house, 'warehouse', 'giveBackLentKit(itemId: "L-1", on: "2027-02-26", condition: "clean")')],
];

export const acts: readonly Act[] = [
  ...people,
  ...register,
  ...planning,
  ...visits,
  ...floor,
  ...fleet,
  ...rules,
  ...tours,
  ...files,
  ...imports,
  ...ofOthers,
  ...answers,
];

/** Ways of writing that leave no line, each with its reason. */
export const leavesNoLine: Readonly<Record<string, string>> = {
  'mutation signIn': 'who is signed in is kept apart for a time and shown to that person; tries are counted',
  'mutation signOut': 'as signIn',
  'mutation endSessions': 'as signIn',
  'mutation cancelJob': 'work under way is given up; nothing on file changes',
  'mutation cancelCsvImport': 'a file on its way in is given up; nothing on file changes',
  'POST /api/requests/:id/settle': 'asks whether a write was done, and if not, that it stays undone',
};
