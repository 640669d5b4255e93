import type { Browser } from 'playwright-core';
import { demoPeople } from '../../apps/api/src/features/transfer/demo.js';
import { itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

describe('visits of a season on screen', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    if (process.env.CHROMIUM) browser = await openBrowser();
    await test.dataSource.query(
      `INSERT INTO booking (id, item_id, holder_kind, holder_id, tour_name, period) SELECT gen_random_uuid(), id, 'named', 'Lanterns', 'Lanterns', '[2027-10-01,2027-11-20]'
       FROM item WHERE kind = 'hoist' AND state = 'in service'`,
    );
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  itInBrowser('are entered, agreed, and take results; a calendar has an address', async () => {
    const page = await openPage(browser!, { width: 1440, height: 1000 });
    await signInOn(page, test.address, demoPeople.find((each) => each.role === 'safety')!.email, passwordOf('safety'));
    const shots = process.env.CARTWRIGHT_PICTURES;
    const look = async (name: string) => {
      if (!shots) return;
      await page.screenshot({ path: `${shots}/${name}.png`, fullPage: true });
      await page.setViewportSize({ width: 390, height: 844 });
      await page.screenshot({ path: `${shots}/${name}-390.png`, fullPage: true });
      await page.setViewportSize({ width: 1440, height: 1000 });
    };
    await page.getByRole('button', { name: 'More' }).click();
    await page.getByRole('link', { name: 'Visits' }).click();
    await page.getByLabel('From', { exact: true }).fill('2027-02-26');
    await page.getByLabel('To', { exact: true }).fill('2027-12-31');
    await page.getByLabel(/^Days, as/).fill('2027-02-26 2027-03-20, 2027-09-20');
    await page.getByRole('button', { name: 'Add days' }).click();
    await page.getByRole('link', { name: '2027-09-20' }).waitFor();
    await page.getByText(/Proved: no choice/).waitFor();
    await page.getByRole('button', { name: 'Agree these visits' }).click();
    await page.getByText('○ agreed').first().waitFor();
    await page.getByRole('button', { name: 'Make an address' }).click();
    await page.getByText(/examinations\.ics$/).waitFor();
    await look('visits');
    const row = page.getByRole('row').filter({ hasText: '○ agreed' }).first();
    await row.getByRole('link').click();
    await page.getByRole('button', { name: 'Print the list' }).waitFor();
    await look('visit-list');
    if (shots) await page.pdf({ path: `${shots}/visit-list.pdf`, format: 'A4', landscape: true });
    const [{ id }] = await test.dataSource.query(`SELECT id FROM visit WHERE state = 'agreed' ORDER BY on_day LIMIT 1`);
    await test.dataSource.query(
      `UPDATE visit SET on_day = '2027-02-26' WHERE id = $1 AND NOT EXISTS (SELECT FROM visit WHERE on_day = '2027-02-26' AND state = 'agreed')`,
      [id],
    );
    await page.getByLabel('Examiner', { exact: true }).fill('Rosa Tamm (invented)');
    await page
      .getByLabel(/^Outcome of/)
      .first()
      .selectOption('pass');
    await page
      .getByLabel(/^Report number of/)
      .first()
      .fill('RT-100');
    await page.getByRole('button', { name: 'Record 1 result' }).click();
    await page.getByText('○ passed').waitFor();
  });
});
