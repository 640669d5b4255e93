import type { Browser, Locator, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

/** A field is emptied a moment after the answer. */
async function expectValue(field: Locator, value: string): Promise<void> {
  for (let tries = 0; tries < 50 && (await field.inputValue()) !== value; tries++) await field.page().waitForTimeout(100);
  expect(await field.inputValue()).toBe(value);
}

describe('forms in a browser', () => {
  let test: TestApp;
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    if (!browserPath) return;
    test = await startTestApp({ web: true });
    browser = await openBrowser();
    page = await openPage(browser, { width: 390, height: 900 });
    page.setDefaultTimeout(20_000);
    await signInOn(page, test.address, 'system@cartwright.example', passwordOf('system'));
  });
  afterAll(async () => {
    await browser?.close();
    await test?.close();
  });

  itInBrowser('leaves an emptied height empty, says beside it what is wanted, and saves it when it is typed', async () => {
    await page.goto(`${test.address}/tours/harbour-lights/shows/old-mill/hangs`);
    const height = page.getByRole('region', { name: 'Centre' }).getByLabel('Trim height, mm');
    await height.fill('');
    await page.getByRole('button', { name: 'Save the hangs' }).click();
    await page.getByRole('alert').getByText('empty: wanted a number').waitFor();
    expect(await height.inputValue()).toBe('');
    expect(await height.getAttribute('aria-invalid')).toBe('true');
    const said = await height.getAttribute('aria-describedby');
    expect(await page.locator(`[id="${said}"]`).innerText()).toContain('wanted a number');
    await height.fill('9120');
    await page.getByRole('button', { name: 'Save the hangs' }).click();
    await page.getByRole('heading', { name: 'Old Mill', exact: true }).waitFor();
    const file = (await (await (await test.as('system')).fetch('/api/tours/harbour-lights/file')).json()) as {
      tour: { shows: { id: string; hangs: { id: string; trimHeightMm: number }[] }[] };
    };
    const hangs = file.tour.shows.find((each) => each.id === 'old-mill')!.hangs;
    expect(hangs.find((each) => each.id === 'Centre')!.trimHeightMm).toBe(9120);
  });

  itInBrowser('keeps what was typed when the tour is read again, and says what a level must be', async () => {
    await page.goto(`${test.address}/tours/harbour-lights`);
    await page.getByText('Levels and losses').click();
    await page.getByLabel('Level of the whole trunk, %').fill('120');
    const again = page.waitForResponse(
      (reply) => reply.url().endsWith('/graphql') && (reply.request().postData() ?? '').includes('"operationName":"Tour"'),
    );
    await page.getByText('Weigh these otherwise').click();
    await page.getByLabel('Each use of a box').fill('2');
    await page.getByRole('button', { name: 'Save the weights' }).click();
    await again;
    expect(await page.getByLabel('Level of the whole trunk, %').inputValue()).toBe('120');
    await page.getByRole('button', { name: 'Save the spares' }).click();
    await page.getByRole('alert').getByText('found “120”: wanted a percentage over 0 and under 100, or nothing').waitFor();
  });

  itInBrowser('is empty once what was typed in it was sent', async () => {
    await page.goto(`${test.address}/people`);
    await page.getByText('Add a person', { exact: true }).click();
    const form = page.locator('details', { hasText: 'Add a person' });
    await form.getByLabel('Name').fill('Merle Strand');
    await form.getByLabel('Email').fill('merle@example.org');
    await form.getByLabel(/assword/).fill('a first password');
    await form.getByRole('button').last().click();
    await page.getByText('Merle Strand').first().waitFor();
    await expectValue(form.getByLabel('Name'), '');
    expect(await form.getByLabel('Email').inputValue()).toBe('');
    expect(await form.getByLabel(/assword/).inputValue()).toBe('');
    // What is secret is never kept on the device.
    expect(JSON.stringify(await page.evaluate('({ ...localStorage })'))).not.toContain('a first password');
  });

  itInBrowser('keeps on the device what was typed and not sent, and offers it to whoever comes back', async () => {
    const to = `${test.address}/tours/harbour-lights`;
    const form = page.locator('details', { hasText: 'Add a show' }).last();
    const open = async (): Promise<void> => {
      await page.goto(to);
      await page.getByText('Add a show', { exact: true }).click();
    };
    await open();
    await form.getByLabel('Name', { exact: true }).fill('An extra night');
    await form.getByLabel('Venue', { exact: true }).fill('Corn Hall');
    await page.waitForTimeout(500);
    await open();
    await form.getByText('You typed something here on').waitFor();
    expect(await form.getByLabel('Name', { exact: true }).inputValue()).toBe('');
    await form.getByRole('button', { name: 'Take it up again' }).click();
    expect(await form.getByLabel('Name', { exact: true }).inputValue()).toBe('An extra night');
    expect(await form.getByLabel('Venue', { exact: true }).inputValue()).toBe('Corn Hall');
    await page.waitForTimeout(500);
    await open();
    await form.getByRole('button', { name: 'Forget it' }).click();
    await open();
    await form.getByLabel('Name', { exact: true }).waitFor();
    expect(await form.getByText('You typed something here on').count()).toBe(0);
  });

  itInBrowser('gives back a hang that was taken out, takes angles alone, and keeps edits that were left by Back', async () => {
    await page.goto(`${test.address}/tours/harbour-lights/shows/old-mill`);
    await page.getByRole('link', { name: 'Change the hangs' }).click();
    const centre = page.getByRole('region', { name: 'Centre' });
    await centre.getByRole('button', { name: 'Remove this hang' }).click();
    await centre.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo' }).click();
    await centre.waitFor();
    await centre.getByText('Paste rows from a spreadsheet').click();
    const count = await centre.getByLabel(/^Splay of position/).count();
    await centre
      .getByLabel(/^Position, model, splay/)
      .fill(Array.from({ length: count }, (_, at) => (at === 0 ? '0,5' : '1,25°')).join('\n'));
    await centre.getByRole('button', { name: `Use these ${count} boxes` }).click();
    expect(await centre.getByLabel('Splay of position 2', { exact: true }).inputValue()).toBe('1.25');
    await page.goBack();
    await page.getByRole('heading', { name: 'Old Mill' }).waitFor();
    await page.getByRole('link', { name: 'Change the hangs' }).click();
    await page.getByText('Your edits from before are here again').waitFor();
    expect(await centre.getByLabel('Splay of position 2', { exact: true }).inputValue()).toBe('1.25');
    await page.getByRole('button', { name: 'Take what is on file' }).click();
    await page.getByText('Your edits from before are here again').waitFor({ state: 'detached' });
    expect(await centre.getByLabel('Splay of position 2', { exact: true }).inputValue()).not.toBe('1.25');
  });

  itInBrowser('takes back one change of a hang after the other, and makes them again', async () => {
    await page.goto(`${test.address}/tours/harbour-lights/shows/fenland/hangs`);
    const first = page.locator('main section').first();
    const height = first.getByLabel('Trim height, mm');
    const was = await height.inputValue();
    for (const value of ['7010', '7020']) {
      await height.fill(value);
      await page.waitForTimeout(700);
    }
    const back = page.getByRole('button', { name: 'Take back the last change' });
    await back.click();
    await expectValue(height, '7010');
    await back.click();
    await expectValue(height, was);
    expect(await back.isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Make it again' }).click();
    await expectValue(height, '7010');
    // What is not saved is there again after the page was closed.
    await page.waitForTimeout(500);
    await page.goto(`${test.address}/tours/harbour-lights/shows/fenland/hangs`);
    await page.getByText('Your edits from before are here again').waitFor();
    await expectValue(height, '7010');
    await page.getByRole('button', { name: 'Take what is on file' }).click();
    await expectValue(height, was);
  });
});
