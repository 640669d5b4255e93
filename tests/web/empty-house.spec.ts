import type { Browser, Page } from 'playwright-core';
import { writeCsv } from '#kernel';
import { type Item, type ItemKind, type ModelKind, csvColumns, modelCell, modelColumns, modelExamples } from '#tour-file';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type TestApp, agentOf, postListed, startTestApp, testDay } from '../support/test-app.js';

const depot = 'Depot of the test';
const password = 'a password of one’s own';

const models = (kind: ModelKind, rows: readonly object[] = [modelExamples[kind]]): string =>
  writeCsv([
    modelColumns(kind).map((each) => each.heading),
    ...rows.map((row) => modelColumns(kind).map((column) => modelCell(row, column))),
  ]);

const items = (kind: ItemKind, model: string, ids: readonly string[], more: Partial<Item> = {}): string => {
  const columns = csvColumns(kind);
  const item = (id: string): Item => ({ id, kind, model, state: 'in service', depot, examinations: [], events: [], ...more });
  return writeCsv([columns.map((each) => each.heading), ...ids.map((id) => columns.map((column) => column.cell(item(id))))]);
};

describe('from an empty house to a first plan, in a browser', () => {
  let test: TestApp;
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    if (!browserPath) return;
    test = await startTestApp({ demo: false, web: true, config: { setUpCode: 'k4codek4' } });
    browser = await openBrowser();
    page = await openPage(browser, { width: 1440, height: 900 });
    page.setDefaultTimeout(20_000);
  });
  afterAll(async () => {
    await browser?.close();
    await test?.close();
  });

  const importFile = async (kind: string, text: string): Promise<void> => {
    await page.goto(`${test.address}/import`);
    await page.getByLabel(/^Files: CSV/).setInputFiles({ name: 'rows.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
    await page.getByLabel('What rows.csv holds').selectOption(kind);
    await page.getByRole('button', { name: 'Show what would change' }).click();
    await page.getByText(/^Would change: /).waitFor();
    await page.getByRole('button', { name: /^Import all/ }).click();
    await page.getByText(/^Imported in /).waitFor();
  };

  itInBrowser('takes a wrong code from nobody, and names the first people by the right one', async () => {
    await page.goto(test.address);
    await page.getByLabel(/^Code/).fill('wrong');
    await page.getByLabel('Your name').fill('Tamsin Vane');
    await page.getByLabel('Your email').fill('tamsin@example.org');
    await page.getByLabel(/^Your password/).fill(password);
    await page.getByLabel('Name of the safety officer').fill('Osric Bell');
    await page.getByLabel('Email of the safety officer').fill('osric@example.org');
    await page.getByLabel(/^First password/).fill('first password');
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByRole('alert').getByText('wanted the code that the window of the start shows').first().waitFor();
    await page.getByLabel(/^Code/).fill('k4codek4');
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByLabel('Email', { exact: true }).waitFor();
    await signInOn(page, test.address, 'tamsin@example.org', password);
    await page.getByRole('link', { name: 'What a first plan needs, in order' }).click();
    await page.getByText('■ next').waitFor();
    await page.getByText('Nobody of the warehouse is on file.').waitFor();
  });

  itInBrowser('makes a load rule and a rigging system of what is typed, with nothing filled in', async () => {
    await page.goto(`${test.address}/rules`);
    await page.getByText('Make a load rule', { exact: true }).click();
    const rule = page.getByRole('region', { name: 'Load rules' });
    for (const [label, value] of [
      ['Short name', 'ours'],
      ['Title', 'Agreed with our venues'],
    ] as const)
      await rule.getByLabel(label, { exact: true }).fill(value);
    await rule.getByLabel('Jurisdiction', { exact: true }).selectOption('GB');
    await rule.getByLabel('Source', { exact: true }).first().fill('our own agreement');
    expect(await rule.getByLabel('Factor on point loads').inputValue()).toBe('');
    await rule.getByRole('button', { name: 'Save the regime' }).click();
    await rule.getByRole('alert').waitFor();
    await rule.getByLabel('Factor on point loads').fill('1.25');
    await rule.getByLabel(/^Usable share/).fill('0.5');
    await rule.getByRole('button', { name: 'Save the regime' }).click();
    await page.getByRole('heading', { name: 'Load regime ours' }).waitFor();
    await page.getByText('Make a rigging system', { exact: true }).click();
    const system = page.getByRole('region', { name: 'Rigging systems' });
    await system.getByLabel('Name of the rigging system').fill('Saltmarsh rig');
    await system.getByLabel('Manual', { exact: true }).fill('Manual of the Saltmarsh rig');
    await system.getByLabel('Revision of the manual').fill('3');
    for (const [label, value] of [
      ['Splay is set at the', 'lower box'],
      ['Joint between two carts', 'set at the point'],
      ['Joint to the grid closes', 'on the ground'],
      ['Joints between carts close', 'swung back and driven down'],
    ] as const)
      await system.getByLabel(label).selectOption(value);
    await system.getByRole('button', { name: 'Put the rigging system on file' }).click();
    await page.getByRole('heading', { name: 'Rigging system Saltmarsh rig' }).waitFor();
    await page.getByText('■ Example, not for use').waitFor();
  });

  itInBrowser('lets the safety officer in once, who puts a set of examination rules on file and approves the system', async () => {
    const officer = await openPage(browser, { width: 390, height: 900 });
    officer.setDefaultTimeout(20_000);
    await officer.goto(test.address);
    await officer.getByLabel('Email').fill('osric@example.org');
    await officer.getByLabel('Password').fill('first password');
    await officer.getByRole('button', { name: 'Sign in' }).click();
    await officer.getByLabel(/^Your password/).fill('another of my own');
    await officer.getByRole('button', { name: /^Keep it/ }).click();
    await officer.getByRole('heading', { name: 'Cartwright' }).waitFor();
    await signInOn(officer, test.address, 'osric@example.org', 'another of my own');
    await officer.goto(`${test.address}/rules`);
    await officer.getByText('United Kingdom: LOLER 1998').click();
    await officer.getByRole('button', { name: 'Put these 5 rules on file' }).click();
    await officer.getByRole('button', { name: 'Take it out ... The rule of GB (United Kingdom) for hoist' }).first().waitFor();
    await officer.getByRole('button', { name: 'Approve revision 3' }).click();
    await officer.getByText(/^Manual of the Saltmarsh rig.*Approved by Osric Bell/).waitFor();
    await officer.context().close();
  });

  itInBrowser('puts a model on file by a form that begins empty, and says what is missing', async () => {
    await page.goto(`${test.address}/register`);
    await page.getByText('Catalogue models', { exact: true }).click();
    await page.getByText('Put a model on file', { exact: true }).click();
    const form = page.locator('details', { hasText: 'Put a model on file' }).last();
    await form.getByLabel('Kind').selectOption('shackles');
    expect(await form.getByLabel('rated load').inputValue()).toBe('');
    await form.getByLabel('model', { exact: true }).fill('Bow shackle 4.75');
    await form.getByLabel('size').fill('4.75 t');
    await form.getByLabel('mass kg').fill('1.1');
    await form.getByRole('button', { name: 'Put the model on file' }).click();
    await form.getByRole('alert').first().waitFor();
    await form.getByLabel('rated load').fill('4.75 t');
    await form.getByRole('button', { name: 'Put the model on file' }).click();
    await form.getByRole('status').waitFor();
  });

  itInBrowser('takes models and items from files', async () => {
    const pins = ['Link pin 12', 'Link pin 10', 'Lock pin 8', 'Base pin 12'];
    await importFile(
      'models/pins',
      models(
        'pins',
        pins.map((model) => ({ model, massKg: 0.1 })),
      ),
    );
    for (const kind of ['boxes', 'grids', 'hoists', 'carts', 'cases', 'trucks'] as const) await importFile(`models/${kind}`, models(kind));
    await importFile('items/box', items('box', modelExamples.boxes.model, ['B-1', 'B-2', 'B-3']));
    await importFile('items/grid', items('grid', modelExamples.grids.model, ['G-1']));
    const declared = { declaredOn: testDay };
    await importFile('items/hoist', items('hoist', modelExamples.hoists.model, ['H-1', 'H-2'], declared));
    await importFile('items/shackle', items('shackle', 'Bow shackle 4.75', ['S-1'], { count: 12, ...declared }));
    for (const [index, model] of pins.entries())
      await importFile('items/pin', items('pin', model, [`P-${index + 1}`], { count: 40, ...declared }));
    await importFile('items/cart', items('cart', modelExamples.carts.model, ['K-1']));
    await importFile('items/case', items('case', modelExamples.cases.model, ['C-1']));
    await importFile('items/truck', items('truck', modelExamples.trucks.model, ['T-1']));
    await page.goto(`${test.address}/begin`);
    await page.getByText('No tour yet.').waitFor();
    expect(await page.getByText('Still without').count()).toBe(0);
  });

  itInBrowser('says that what others brought waits for the safety officer, and uses it once it is accepted', async () => {
    await page.goto(`${test.address}/begin`);
    await page.getByText(/^\D*\d+ things wait\./).waitFor();
    const reply = await postListed(test.address, 'SignIn', { email: 'osric@example.org', password: 'another of my own' });
    const officer = agentOf(test.address, (reply.headers.get('set-cookie') ?? '').split(';')[0]!);
    const { edges } = (await officer.graphql('{ proposals(first: 100) { edges { node { id } } } }')).data.proposals;
    const ids = edges.map((each: any) => each.node.id);
    const accept = 'mutation($ids: [ID!]!) { answerProposals(ids: $ids, accept: true, reason: "compared with the papers") }';
    expect((await officer.graphql(accept, { ids })).data).toEqual({ answerProposals: ids.length });
    await page.goto(`${test.address}/begin`);
    await page.getByText('Nothing waits.').waitFor();
  });

  itInBrowser('makes a tour, a hang of pasted rows and a plan of it', async () => {
    await page.goto(`${test.address}/tours`);
    await page.getByText('Make a new tour', { exact: true }).click();
    const form = page.locator('details', { hasText: 'Make a new tour' });
    for (const [label, value] of [
      ['Name of the tour', 'First tour'],
      ['Depot', depot],
      ['First prep day', '2027-03-01'],
      ['Last return day', '2027-03-09'],
      ['First show', 'Opening'],
      ['Venue', 'Corn Hall'],
      ['Load-in day', '2027-03-04'],
      ['Load-out day', '2027-03-05'],
    ] as const)
      await form.getByLabel(label, { exact: true }).fill(value);
    await form.getByLabel('Country whose examination rules hold', { exact: true }).selectOption('GB');
    await form.getByLabel('Time zone of the venue', { exact: true }).selectOption('Europe/London');
    await form.getByLabel('Load rule').selectOption('ours');
    await form.getByRole('button', { name: 'Make the tour' }).click();
    await page.getByRole('heading', { name: 'First tour' }).waitFor();
    await page.getByRole('checkbox', { name: /^T-1/ }).check();
    await page.getByText('Saving ...').waitFor({ state: 'detached' });
    await page.getByRole('link', { name: 'Opening', exact: true }).click();
    await page.getByRole('link', { name: 'Change the hangs' }).click();
    await page.getByRole('button', { name: 'Add a hang' }).click();
    await page.getByText('Picks, steel, points and tilts').click();
    await page.getByLabel('Hole').nth(0).selectOption('A');
    await page.getByLabel('Hole').nth(1).selectOption('F');
    await page.getByText('Paste rows from a spreadsheet').click();
    await page.getByLabel(/^Position, model, splay/).fill('1\tTurnstone\t0.5\n2\tTurnstone\t1\n3\tTurnstone\t2');
    await page.getByRole('button', { name: 'Use these 3 boxes' }).click();
    await page.getByRole('button', { name: 'Save the hangs' }).click();
    await page.getByRole('button', { name: 'Make the plan' }).click();
    await page.getByRole('region', { name: 'Carts' }).waitFor({ timeout: 60_000 });
    await page.getByText('K-1').first().waitFor();
    await page.goto(`${test.address}/begin`);
    await page.getByText('1 made.').waitFor();
  });
});
