import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { DataSource } from 'typeorm';
import { findBrowser, startEmbeddedDatabase } from '#runtime';
import { createApp } from '../api/src/create-app.js';
import { migrate } from '../api/src/data-source.js';
import { MakeService } from '../api/src/features/plan/make/make.service.js';
import { JobRunner } from '../api/src/planning/jobs/job-runner.js';
import { Jobs } from '../api/src/planning/jobs/jobs.js';
import { demoPeople, loadDemo } from '../api/src/features/transfer/demo.js';
import { configOf } from '../api/src/platform/config/config.js';
import { TourFileService } from '../api/src/features/transfer/tour-file.service.js';
import { main as test } from './test.js';

const day = '2027-02-26';
const password = 'pictures only';
const tour = '/tours/harbour-lights/shows/quayside';

/** Picture -> screen, width, and a part of the page where it is not the whole first screen. */
const pictures: readonly {
  readonly name: string;
  readonly path: string;
  readonly width: number;
  readonly height: number;
  readonly scrollTo?: string;
}[] = [
  { name: 'today', path: '/', width: 1280, height: 800 },
  { name: 'show', path: tour, width: 1280, height: 980 },
  { name: 'lift', path: `${tour}/hangs/Centre/picks/C`, width: 1280, height: 1180, scrollTo: '#lift' },
  { name: 'truck', path: tour, width: 1280, height: 620, scrollTo: '#trucks' },
  { name: 'cart-on-a-phone', path: '/floor/harbour-lights/quayside/carts', width: 390, height: 780 },
];

/** Takes the pictures of the README, in a Chromium on this machine: from the demo tour, and on the tested walk from an empty house to the first cart cards. */
export async function main(args: readonly string[], root: string): Promise<number> {
  process.env.CARTWRIGHT_WALK_PICTURES = join(root, 'apps', 'web', 'pictures');
  const walked = await test(['tests/web/whole-tour'], root);
  return walked !== 0 || args.includes('--walk') ? walked : ofDemo(root);
}

async function ofDemo(root: string): Promise<number> {
  const executablePath = findBrowser();
  if (!executablePath) {
    process.stderr.write('No Chromium was found. Set CHROMIUM to its path.\n');
    return 1;
  }
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-pictures-'));
  const database = await startEmbeddedDatabase({ folder, durable: false, say: () => undefined });
  const app = await startDemo(database.url, root);
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    mkdirSync(join(root, 'apps', 'web', 'pictures'), { recursive: true });
    for (const { name, path, width, height, scrollTo } of pictures) {
      const page = await (await browser.newContext({ viewport: { width, height } })).newPage();
      await signIn(page, app.address);
      await page.goto(app.address + path);
      await page.locator('h1').waitFor();
      if (scrollTo) await page.evaluate(`document.querySelector('${scrollTo}').scrollIntoView()`);
      await page.waitForTimeout(500);
      await page.screenshot({ path: join(root, 'apps', 'web', 'pictures', `${name}.png`) });
      await page.context().close();
    }
    return 0;
  } finally {
    await browser.close();
    await app.close();
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function startDemo(databaseUrl: string, root: string) {
  await migrate(databaseUrl);
  const app = await createApp({
    config: configOf(databaseUrl, { webFolder: join(root, 'dist', 'web') }),
    clock: { now: () => new Date(`${day}T09:00:00Z`) },
  });
  await app.listen(0, '127.0.0.1');
  await loadDemo(app.get(DataSource), app.get(TourFileService), root, day, () => password);
  app.get(JobRunner).start();
  await app.get(Jobs).ended(await app.get(MakeService).make('harbour-lights', 'quayside', { name: 'Sol Achterberg' }));
  return { address: `http://127.0.0.1:${(app.getHttpServer().address() as AddressInfo).port}`, close: () => app.close() };
}

async function signIn(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.getByLabel('Email').fill(demoPeople[0]!.email);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.getByRole('navigation').waitFor();
}
