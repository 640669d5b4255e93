import type { Browser, Page } from 'playwright-core';
import { rowKey, tickText } from '#pack-plan';
import { browserPath, itInBrowser, openBrowser, openPage, picture, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const truckPage = '/floor/harbour-lights/quayside/trucks/T1';
/** How many actions wait on the device: more by this. */
const queued = Number(process.env.CARTWRIGHT_QUEUED ?? 40);

describe('a device at its limits', () => {
  let test: TestApp;
  let planId: string;
  let personId: string;
  let browser: Browser | undefined;
  let page: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    const system = await test.as('system');
    const made = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id } } } }',
    );
    planId = made.data.makePackPlan.plan.id;
    await system.graphql('mutation($id: ID!) { releasePackPlan(planId: $id, despite: "a test") { __typename } }', { id: planId });
    personId = (await (await test.as('warehouse')).graphql('{ me { id } }')).data.me.id;
    if (!browserPath) return;
    browser = await openBrowser();
    page = await openPage(browser, { width: 390, height: 844 });
    page.setDefaultTimeout(30_000);
    await signInOn(page, test.address, 'warehouse@cartwright.example', passwordOf('warehouse'));
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  const ticksOn = async (): Promise<string[]> =>
    (
      await test.dataSource.query(`SELECT place FROM tick WHERE plan_id = $1 AND kind = 'row' AND subject = 'T1' ORDER BY place`, [planId])
    ).map((each: { place: number }) => `Row ${each.place}`);
  const press = (name: RegExp) => page.getByRole('button', { name }).click();

  itInBrowser('keeps its screen on while a truck is loaded, lets it go after, and says so where it cannot', async () => {
    await page.addInitScript(() => {
      const asked = { held: 0, released: 0, refuses: false };
      const request = () => {
        if (asked.refuses) return Promise.reject(new DOMException('low', 'NotAllowedError'));
        asked.held++;
        return Promise.resolve({ addEventListener: () => undefined, release: () => Promise.resolve(void asked.released++) });
      };
      Object.assign(globalThis, { asked });
      Object.defineProperty((globalThis as any).navigator, 'wakeLock', { configurable: true, value: { request } });
    });
    const asked = () => page.evaluate(() => (globalThis as any).asked);
    await page.goto(test.address + truckPage);
    await page.getByText('The screen stays on while this is open.').waitFor();
    const { held, released } = await asked();
    expect(held - released).toBe(1);
    await page.evaluate(() => void ((globalThis as any).asked.refuses = true));
    await page.getByRole('link', { name: 'Back' }).click();
    await page.waitForFunction(() => (globalThis as any).asked.held === (globalThis as any).asked.released);
    await page.goBack();
    await page.getByText('The device lets the screen go dark just now').waitFor();
  });

  itInBrowser('whose clock is two days off is told so; what was done counts, with both times on record', async () => {
    await page.clock.setSystemTime(Date.now() + 2 * 86_400_000);
    await page.goto(test.address + truckPage);
    await page.getByText('The clock of this device is 2 days ahead of that of the house.').waitFor();
    await press(/^Row 1 is in/);
    await page.getByText('Row 1 is in: noted').waitFor();
    await page.getByRole('button', { name: 'all sent' }).waitFor();
    await picture(page, 'floor-clock-off');
    expect(await ticksOn()).toEqual(['Row 1']);
    const [{ ahead }] = await test.dataSource.query(
      `SELECT extract(epoch FROM done_at) - $1::float / 1000 AS ahead FROM event WHERE what = 'ticked' ORDER BY id DESC LIMIT 1`,
      [Date.now()],
    );
    expect(Number(ahead) / 86_400).toBeCloseTo(2, 1);
    await page.clock.setSystemTime(Date.now());
    await page.reload();
    await page.getByText('Row 1 is in: noted').waitFor();
    await page.getByText('The clock of this device').waitFor({ state: 'detached' });
  });

  itInBrowser('that is full says that nothing was noted, shows it so, and goes on when there is room', async () => {
    // A browser answers so when the disk is full (Indexed Database API, 4.5).
    await page.evaluate(() => {
      const { prototype } = (globalThis as any).IDBObjectStore;
      const add = prototype.add;
      (globalThis as any).makeRoom = () => void (prototype.add = add);
      prototype.add = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await press(/^Row 2 is in/);
    await page.getByText('Not noted: the storage of this device is full.').waitFor();
    await picture(page, 'floor-device-full');
    await page.getByRole('button', { name: /^Row 2 is in/ }).waitFor();
    expect(await ticksOn()).toEqual(['Row 1']);
    await page.evaluate(() => (globalThis as any).makeRoom());
    // A second press within 700 ms is no second press.
    await page.waitForTimeout(800);
    await press(/^Row 2 is in/);
    await page.getByText('Row 2 is in: noted').waitFor();
    await page.getByRole('button', { name: 'all sent' }).waitFor();
    expect(await ticksOn()).toEqual(['Row 1', 'Row 2']);
  });

  itInBrowser('with thousands of actions that wait still answers at once and sends all of them in order', async () => {
    await page.context().setOffline(true);
    const whats = [1, 2, 3].map((row) => tickText(rowKey('T1', row)));
    await page.evaluate(
      async ({ whats, count, planId, personId }) => {
        const opening = (globalThis as any).indexedDB.open('cartwright-outbox', 1);
        await new Promise((done) => (opening.onsuccess = done));
        const writing = opening.result.transaction('action', 'readwrite');
        for (let at = 0; at < count; at++) {
          const values = { planId, what: whats[at % 3], done: at % 2 === 0 };
          const doneAt = new Date().toISOString();
          writing.objectStore('action').add({
            ...{ id: crypto.randomUUID(), kind: 'tick', values, words: `action ${at + 1}`, doneAt, personId, personName: 'W' },
            ...{ tourId: 'harbour-lights', showId: 'quayside', since: doneAt, state: 'waiting', reason: null, faults: 0 },
          });
        }
        await new Promise((done) => (writing.oncomplete = done));
        opening.result.close();
      },
      { whats, count: queued, planId, personId },
    );
    await press(/^Undo/);
    await page.getByRole('button', { name: `not sent yet: ${queued + 1}` }).waitFor();
    const before = Number((await test.dataSource.query('SELECT count(*) FROM event'))[0].count);
    await page.context().setOffline(false);
    await page.getByRole('button', { name: 'all sent' }).waitFor({ timeout: 120_000 + queued * 500 });
    const state = new Set(await ticksOn());
    const last = (row: number) => Array.from({ length: queued }, (_, at) => at).findLast((at) => at % 3 === row - 1) ?? 0;
    // The last word on each row is that of the queue; on row 2 that of who pressed after it.
    for (const row of [1, 3]) expect([row, state.has(`Row ${row}`)]).toEqual([row, last(row) % 2 === 0]);
    expect(state.has('Row 2')).toBe(false);
    expect(Number((await test.dataSource.query('SELECT count(*) FROM event'))[0].count)).toBeGreaterThan(before);
    expect(
      await page.evaluate(
        () =>
          new Promise((done) => {
            const opening = (globalThis as any).indexedDB.open('cartwright-outbox', 1);
            opening.onsuccess = () => {
              const count = opening.result.transaction('action').objectStore('action').count();
              count.onsuccess = () => done(count.result);
            };
          }),
      ),
    ).toBe(0);
  });
});
