import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, picture, signInOn } from '../support/browser.js';
import { type Agent, type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const floor = '/floor/harbour-lights/quayside';

describe('a lift by two people on two hangs, each with a phone', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let system: Agent;
  let plan: { id: string; plan: any };
  let one: Page;
  let other: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    system = await test.as('system');
    const made = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }';
    plan = (await system.graphql(made)).data.makePackPlan.plan;
    const released = await system.graphql('mutation($id: ID!) { releasePackPlan(planId: $id, despite: "a trial") { __typename } }', {
      id: plan.id,
    });
    expect(released.data.releasePackPlan.__typename).toBe('PlanView');
    if (!browserPath) return;
    browser = await openBrowser();
    const open = async (role: 'warehouse' | 'system') => {
      const page = await openPage(browser!, { width: 390, height: 844 });
      page.setDefaultTimeout(20_000);
      await signInOn(page, test.address, `${role}@cartwright.example`, passwordOf(role));
      return page;
    };
    [one, other] = [await open('warehouse'), await open('system')];
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  const hangs = () => plan.plan.picks.hangs.slice(0, 2);
  const holdsOf = (hang: any) => hang.runningOrder.goingUp.filter((each: any) => each.hold);
  const progress = async () =>
    (await system.graphql('query($id: ID!) { plan(id: $id) { ticks tickRemarks { what remark by } } }', { id: plan.id })).data.plan;
  const allSent = (page: Page) => page.getByRole('button', { name: 'all sent' }).waitFor();
  const begin = async (page: Page, hang: any, watches: string) => {
    await page.goto(`${test.address}${floor}`);
    await page.getByRole('link', { name: /^Flying/ }).click();
    await page.getByRole('link', { name: new RegExp(`^${hang.name}`) }).click();
    await page.getByRole('heading', { name: 'Who flies it?' }).waitFor();
    expect(await page.getByRole('button', { name: 'These two fly it' }).isDisabled()).toBe(true);
    await page.getByLabel('Watches it').fill(watches);
    await page.getByRole('button', { name: 'These two fly it' }).click();
    await page.getByRole('button', { name: 'It is so: go on' }).waitFor();
  };

  itInBrowser('each names the two who fly once, and works hold by hold; neither hang waits for the other', async () => {
    const [left, right] = hangs();
    await begin(one, left, 'Sol Achterberg');
    await begin(other, right, 'Rosa Tamm');
    await picture(one, 'fly-hold');
    await one.getByRole('button', { name: 'It is so: go on' }).click();
    await other.getByRole('button', { name: 'It is so: go on' }).click();
    const of = (hang: any) => holdsOf(hang).length;
    await one.getByRole('heading', { level: 1, name: `${left.name} goes up: hold 2 of ${of(left)}` }).waitFor();
    await other.getByRole('heading', { level: 1, name: `${right.name} goes up: hold 2 of ${of(right)}` }).waitFor();
    await Promise.all([allSent(one), allSent(other)]);
    const { ticks, tickRemarks } = await progress();
    expect([...ticks].sort()).toEqual([holdsOf(left)[0].key, holdsOf(right)[0].key].sort());
    expect(tickRemarks).toEqual(
      expect.arrayContaining([
        { what: holdsOf(left)[0].key, remark: 'with Wren Castellan and Sol Achterberg', by: 'Wren Castellan' },
        { what: holdsOf(right)[0].key, remark: 'with Sol Achterberg and Rosa Tamm', by: 'Sol Achterberg' },
      ]),
    );
    await one.reload();
    await one.getByText('Wren Castellan and Sol Achterberg fly it.').waitFor();
  });

  itInBrowser('a bouncing finger ticks one hold; a hold is taken back; what comes from paper is marked so', async () => {
    const [left] = hangs();
    const [, second] = holdsOf(left);
    const on = one.getByRole('button', { name: 'It is so: go on' });
    await one.waitForTimeout(750);
    await on.dblclick({ delay: 20 });
    await one.getByRole('heading', { level: 1, name: /: hold 3 of/ }).waitFor();
    await allSent(one);
    await one.waitForTimeout(750);
    await one.getByRole('button', { name: 'Undo' }).click();
    await one.getByRole('heading', { level: 1, name: /: hold 2 of/ }).waitFor();
    await allSent(one);
    await one.getByRole('button', { name: 'Enter it late, from paper' }).click();
    const paper = one.getByRole('button', { name: 'It was so, by the paper' });
    expect(await paper.isDisabled()).toBe(true);
    await one.getByLabel('What the paper says').fill('14:20, Ines Aldous');
    await one.waitForTimeout(750);
    await paper.click();
    await one.getByRole('heading', { level: 1, name: /: hold 3 of/ }).waitFor();
    await allSent(one);
    expect((await progress()).tickRemarks.find((each: any) => each.what === second.key).remark).toBe(
      'with Wren Castellan and Sol Achterberg, late from paper: 14:20, Ines Aldous',
    );
    await one.getByText('Holds so far: 2').click();
    await one.getByText('late from paper: 14:20, Ines Aldous').waitFor();
    await picture(one, 'fly-paper');
  });

  itInBrowser('at trim the cells are read beside what they should show, by who may', async () => {
    const [, right] = hangs();
    for (const hold of holdsOf(right).slice(1))
      await system.graphql('mutation($id: ID!, $what: String!) { tick(planId: $id, what: $what, done: true) { id } }', {
        id: plan.id,
        what: hold.key,
      });
    await other.getByText('All holds of the way up are ticked.').waitFor();
    await other.getByLabel('It reads, kg').fill(String(Math.round(right.picks[0].hookLoadKg)));
    await other.getByRole('button', { name: 'Enter the reading' }).click();
    await other.getByText(/kg read at the hook of hole/).waitFor();
    await picture(other, 'fly-trim');
    await other.getByRole('link', { name: 'Sign the inspection and the handover' }).waitFor();
  });
});
