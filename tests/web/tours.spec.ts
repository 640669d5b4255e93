import type { Browser, Page } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type Agent, type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

describe('tours changed in a browser', () => {
  let test: TestApp;
  let system: Agent;
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    if (!browserPath) return;
    test = await startTestApp({ web: true });
    system = await test.as('system');
    browser = await openBrowser();
    page = await openPage(browser, { width: 390, height: 900 });
    page.setDefaultTimeout(20_000);
    await signInOn(page, test.address, 'system@cartwright.example', passwordOf('system'));
  });
  afterAll(async () => {
    await browser?.close();
    await test?.close();
  });

  const tour = async () => (await system.graphql('{ tour(id: "harbour-lights") { version tour } }')).data.tour.tour;
  const showOf = async (id: string) => (await tour()).shows.find((each: any) => each.id === id);

  /** Somebody else, who looks again as often as the page was quicker. */
  const saveBeside = async (change: (tour: any) => object): Promise<void> => {
    for (;;) {
      const { version, tour: data } = (await system.graphql('{ tour(id: "harbour-lights") { version tour } }')).data.tour;
      const { errors } = await system.graphql(
        'mutation($tour: TourJson!, $v: Int) { saveTour(tour: $tour, expectedVersion: $v) { version } }',
        {
          tour: change(data),
          v: version,
        },
      );
      if (!errors) return;
    }
  };

  itInBrowser('changes the venue, the day and the surroundings of a show', async () => {
    await page.goto(`${test.address}/tours/harbour-lights`);
    await page.getByRole('link', { name: 'Change or copy Old Mill' }).click();
    const form = page.getByRole('region', { name: 'The show', exact: true });
    await form.getByLabel('Venue', { exact: true }).fill('Old Mill, yard');
    await form.getByLabel('Outdoors').check();
    await form.getByRole('button', { name: 'Save the show' }).click();
    await page.getByText('Old Mill, yard').waitFor();
    expect(await showOf('old-mill')).toMatchObject({ venue: 'Old Mill, yard', outdoor: true, personsBelow: true });
  });

  itInBrowser('says beside the field that a show lies outside of its tour, and takes it once the tour is longer', async () => {
    const { returnTo } = await tour();
    const later = new Date(Date.parse(returnTo) + 86_400_000).toISOString().slice(0, 10);
    await page.goto(`${test.address}/tours/harbour-lights/shows/fenland/change`);
    const form = page.getByRole('region', { name: 'The show', exact: true });
    await form.getByLabel('Load-out day').fill(later);
    await form.getByRole('button', { name: 'Save the show' }).click();
    await form.getByRole('alert').getByText(`no later than the tour's last return day, ${returnTo}`).first().waitFor();
    await page.goto(`${test.address}/tours/harbour-lights/change`);
    await page.getByLabel('Last return day').fill(later);
    await page.getByRole('button', { name: 'Save the tour' }).click();
    await page.getByRole('heading', { name: 'Harbour Lights', exact: true }).waitFor();
    expect((await tour()).returnTo).toBe(later);
  });

  itInBrowser('copies a show with its hangs to other days, removes it and puts it back', async () => {
    await page.goto(`${test.address}/tours/harbour-lights/shows/fenland/change`);
    const form = page.getByRole('region', { name: 'Copy the show' });
    const { to, hangs } = await showOf('fenland');
    await form.getByLabel('Name of the copy').fill('Fenland');
    await form.getByLabel('Venue', { exact: true }).fill('Second hall');
    await form.getByLabel('Load-in day').fill(to);
    await form.getByLabel('Load-out day').fill(to);
    await form.getByRole('button', { name: 'Copy the show' }).click();
    await page.waitForURL(/shows\/fenland-2$/);
    expect(await showOf('fenland-2')).toMatchObject({ venue: 'Second hall', from: to, hangs });
    await page.goto(`${test.address}/tours/harbour-lights/shows/fenland-2/change`);
    await page.getByRole('button', { name: 'Remove the show ...' }).click();
    await page.getByText('Nothing is given back').waitFor();
    await page.getByRole('button', { name: 'Remove the show', exact: true }).click();
    await page.getByRole('button', { name: 'Put Fenland back' }).click();
    await page.getByRole('button', { name: 'Put Fenland back' }).waitFor({ state: 'detached' });
    expect(await showOf('fenland-2')).toMatchObject({ hangs });
  });

  itInBrowser('loses no tick of freight, however fast they come while somebody else saves', async () => {
    await page.goto(`${test.address}/tours/harbour-lights`);
    await page.route('**/graphql', async (route) => {
      await new Promise((done) => setTimeout(done, 150));
      await route.continue();
    });
    await page.getByText(/\d+ cases travel/).click();
    const freightList = page.locator('details', { hasText: 'cases travel' });
    const ticks = freightList.getByRole('checkbox');
    const checked = freightList.getByRole('checkbox', { checked: true });
    await ticks.first().waitFor();
    const before = (await tour()).freight.length;
    const ticked = await checked.count();
    expect(ticked).toBe(before);
    for (let index = 0; index < 12; index++) {
      await ticks.nth(index).click();
      if (index === 4) {
        await saveBeside((data) => ({ ...data, visitDays: [data.prepFrom] }));
      }
    }
    await page.getByText('Saving ...').waitFor({ state: 'detached' });
    await page.unrouteAll({ behavior: 'wait' });
    const shown = await checked.count();
    const { freight, visitDays, prepFrom } = await tour();
    expect(freight.length).toBe(shown);
    expect(shown).toBe(before - 12);
    expect(visitDays).toEqual([prepFrom]);
  });

  itInBrowser('removes a whole tour from its page, and puts it back from the list', async () => {
    await page.goto(`${test.address}/tours/harbour-lights/change`);
    await page.getByRole('button', { name: 'Remove the tour ...' }).click();
    await page.getByText('What the removal takes along:').waitFor();
    await page.getByRole('button', { name: 'Remove the tour', exact: true }).click();
    await page.getByText('1 removed tour').click();
    await page.getByRole('button', { name: 'Put Harbour Lights back' }).click();
    await page.getByRole('link', { name: 'Harbour Lights' }).waitFor();
  });

  itInBrowser('says what a move of a show breaks before it is saved, and takes the move back', async () => {
    const { shows } = await tour();
    const [first, second] = shows;
    await page.goto(`${test.address}/tours/harbour-lights/shows/${first.id}/change`);
    const form = page.getByRole('region', { name: 'The show', exact: true });
    await form.getByLabel('Load-in day').fill(second.from);
    await form.getByLabel('Load-out day').fill(second.to);
    await form.getByText(`■ ${second.name} is on the same days`).waitFor();
    expect((await showOf(first.id)).from).toBe(first.from);
    await form.getByRole('button', { name: 'Save the show' }).click();
    await page.getByText(`is moved from ${first.from}`).waitFor();
    expect((await showOf(first.id)).from).toBe(second.from);
    await page.getByRole('button', { name: 'Undo the move' }).click();
    await page.getByText(`is moved from ${first.from}`).waitFor({ state: 'detached' });
    expect(await showOf(first.id)).toMatchObject({ from: first.from, to: first.to });
  });
});
