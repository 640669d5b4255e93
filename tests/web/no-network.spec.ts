import { type AddressInfo, type Server, type Socket, connect, createServer } from 'node:net';
import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type Agent, type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const floor = '/floor/harbour-lights/quayside';
const truckPage = '/tours/harbour-lights/shows/quayside/trucks/T1';

/** Between the device and the house: while it is off, nobody answers at the address. */
class Line {
  private readonly open = new Set<Socket>();
  private isOn = true;
  private readonly server: Server;
  constructor(house: number) {
    this.server = createServer((near) => {
      if (!this.isOn) return near.destroy();
      const far = connect(house, '127.0.0.1');
      for (const [end, other] of [[near, far] as const, [far, near] as const]) {
        this.open.add(end);
        end.on('error', () => undefined).on('close', () => (this.open.delete(end), other.destroy()));
        end.pipe(other);
      }
    });
  }
  async listen(): Promise<string> {
    await new Promise<void>((resolve) => this.server.listen(0, '127.0.0.1', resolve));
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}`;
  }
  turn(to: 'on' | 'off'): void {
    this.isOn = to === 'on';
    if (!this.isOn) for (const end of this.open) end.destroy();
  }
  close(): void {
    this.turn('off');
    this.server.close();
  }
}

describe('a device in a basement', () => {
  let test: TestApp;
  let line: Line;
  let address: string;
  let system: Agent;
  let browser: Browser | undefined;
  let page: Page;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    system = await test.as('system');
    const made = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id } } } }',
    );
    await system.graphql('mutation($id: ID!) { releasePackPlan(planId: $id, despite: "a test") { __typename } }', {
      id: made.data.makePackPlan.plan.id,
    });
    line = new Line(Number(new URL(test.address).port));
    address = await line.listen();
    if (!browserPath) return;
    browser = await openBrowser();
    page = await openPage(browser, { width: 390, height: 844 });
    page.setDefaultTimeout(60_000);
    await signInOn(page, address, 'warehouse@cartwright.example', passwordOf('warehouse'));
  });
  afterAll(async () => {
    await browser?.close();
    line.close();
    await test.close();
  });

  const heading = (of: Page) => of.locator('h1').first().innerText();

  afterEach(() => line.turn('on'));

  itInBrowser('opens and reloads every floor screen without the house, with what it read last', async () => {
    // The screens are kept a while after the first has stood.
    await page.evaluate('navigator.serviceWorker.ready');
    const places = [floor, `${floor}/carts`, `${floor}/moves`, `${floor}/trucks`, truckPage];
    const seen: string[] = [];
    for (const place of places) {
      await page.goto(address + place);
      await page.locator('h1').first().waitFor();
      await page.waitForLoadState('networkidle');
      seen.push(await heading(page));
      // What was read is written a moment after it was read.
      await page.waitForTimeout(1_500);
    }
    await page.goto(address + floor);
    await page.getByText('What to do now').waitFor();
    await page.getByRole('button', { name: 'all sent' }).click();
    await page.getByText('These screens open without a network too').waitFor();
    line.turn('off');
    for (const [index, place] of places.entries()) {
      await page.goto(address + place);
      await page.locator('h1').first().waitFor();
      expect([place, await heading(page)]).toEqual([place, seen[index]]);
      // What is kept is written anew meanwhile.
      await page.waitForTimeout(1_500);
      await page.reload();
      await page.locator('h1').first().waitFor();
      expect([place, await heading(page)]).toEqual([place, seen[index]]);
    }
  });

  itInBrowser('keeps twenty actions through closing and opening again without the house, and brings them once and in order', async () => {
    await page.goto(address + truckPage);
    await page.getByLabel('Row 1 loaded').waitFor();
    line.turn('off');
    const rows = Array.from({ length: 20 }, (_, index) => 1 + (index % 4));
    for (const [index, row] of rows.entries()) await page.getByLabel(`Row ${row} loaded`).setChecked(index % 8 < 4);
    await page.getByText('20 not sent yet').waitFor();
    const next = await page.context().newPage();
    await page.close();
    page = next;
    page.setDefaultTimeout(60_000);
    await page.goto(address + truckPage);
    await page.getByText('20 not sent yet').waitFor();
    line.turn('on');
    await page.getByText('not sent yet').waitFor({ state: 'detached' });
    const told = await test.dataSource.query<{ sentence: string }[]>(
      `SELECT sentence FROM event WHERE what IN ('ticked', 'unticked') ORDER BY id`,
    );
    expect(told.map(({ sentence }) => sentence.replace(/ of .*/, ''))).toEqual(
      rows.map((row, index) => `${index % 8 < 4 ? 'Ticked' : 'Took back'} T1 row ${row}`),
    );
  });
});
