import type { Browser } from 'playwright-core';
import { browserPath, itInBrowser, openBrowser, openPage, signInOn } from '../support/browser.js';
import { type TestApp, passwordOf, startTestApp } from '../support/test-app.js';

const show = '/tours/harbour-lights/shows/quayside';

/** Pages of a PDF, by its page objects. */
const pagesOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;

describe('rigging in a browser', () => {
  let test: TestApp;
  let browser: Browser | undefined;
  let hang: any;
  let centre: any;
  beforeAll(async () => {
    test = await startTestApp({ web: true });
    const system = await test.as('system');
    const { data } = await system.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }',
    );
    hang = data.makePackPlan.plan.plan.picks.hangs[0];
    centre = data.makePackPlan.plan.plan.picks.hangs[2];
    await system.graphql('mutation($id: ID!) { releasePackPlan(planId: $id, despite: "test") { __typename } }', {
      id: data.makePackPlan.plan.id,
    });
    if (browserPath) browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await test.close();
  });

  const open = async (width: number) => {
    const page = await openPage(browser!, { width, height: 900 });
    page.setDefaultTimeout(20_000);
    await signInOn(page, test.address, 'system@cartwright.example', passwordOf('system'));
    return page;
  };

  itInBrowser(
    'opens a pick from the show, shows a sum that gives the reaction when it is done again, and prints it on one page',
    async () => {
      const page = await open(1440);
      await page.goto(`${test.address}${show}`);
      await page.getByRole('link', { name: 'The sum and every comparison on one page' }).first().click();
      await page.getByRole('heading', { name: 'Main left, hole C', exact: true }).waitFor();
      const step = await page.getByText(/^Reaction = /).innerText();
      // The sum as a rigger would do it again: mass × g × (a − b) / (c − d) from the printed figures.
      const figures = step
        .replaceAll('\u202f', '')
        .replaceAll('\u2212', '-')
        .match(/-?\d+(\.\d+)?/g)!
        .map(Number);
      const [mass, g, cg, other, own, otherAgain, reaction] = figures as [number, number, number, number, number, number, number];
      expect(otherAgain).toBe(other);
      expect((mass * g * (cg - other)) / (own - other)).toBeCloseTo(reaction, -1);
      expect(reaction).toBeCloseTo(hang.picks[0].reactionN, 0);
      await page.getByLabel('It reads, kg').fill(String(Math.round(hang.picks[0].hookLoadKg)));
      await page.getByRole('button', { name: 'Enter the reading' }).click();
      await page.getByText(/kg read at the hook of hole C/).waitFor();
      for (const [what, pages] of [
        ['picks', 6],
        ['points', 2],
        ['mark-out', 1],
      ] as const) {
        await page.goto(`${test.address}/print/harbour-lights/quayside/${what}`);
        await page.waitForSelector('.sheetpage');
        for (const format of ['A4', 'Letter'])
          expect({ what, format, pages: pagesOf(await page.pdf({ format })) }).toEqual({ what, format, pages });
      }
      await page.context().close();
    },
  );

  itInBrowser('steps through the lift of twelve boxes by the keys alone, with the figures of the plan', async () => {
    for (const width of [390, 1440]) {
      const page = await open(width);
      await page.goto(`${test.address}${show}/hangs/Centre/picks/C`);
      const slider = page.getByRole('slider', { name: 'Moment of the lift' });
      await slider.waitFor();
      const worst = centre.picks[0].worst.at as string;
      expect(await slider.getAttribute('aria-valuetext')).toBe(worst);
      await slider.focus();
      await page.keyboard.press('Home');
      for (const [index, stage] of centre.stages.entries()) {
        expect(await slider.getAttribute('aria-valuetext')).toBe(stage.name);
        await page
          .getByRole('img', { name: `${stage.name}: side view with its forces`, exact: true })
          .first()
          .waitFor();
        const row = await page
          .getByRole('row', { name: /^Hole C / })
          .first()
          .innerText();
        expect(row).toContain(`${(stage.picks[0].reactionN / 1000).toFixed(2).replace('-', '\u2212')} kN`);
        if (index < centre.stages.length - 1) await page.keyboard.press('ArrowRight');
      }
      expect(await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth')).toBe(0);
      await page.context().close();
    }
  });

  itInBrowser('ticks the lift sequence on a phone; what comes after a hold waits for it', async () => {
    const page = await open(390);
    await page.goto(`${test.address}${show}/hangs/Centre/running`);
    const steps = page.locator('ol.steps').first().locator('input');
    await steps.first().waitFor();
    expect(await steps.nth(1).isDisabled()).toBe(true);
    await steps.first().click();
    for (let tries = 0; tries < 100 && (await steps.nth(1).isDisabled()); tries++) await page.waitForTimeout(100);
    expect(await steps.nth(1).isDisabled()).toBe(false);
    expect(await steps.first().isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Sign the inspection' }).click();
    await page
      .getByText(/every hold of going up ticked first/)
      .first()
      .waitFor();
    expect(await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth')).toBe(0);
    await page.context().close();
  });
});
