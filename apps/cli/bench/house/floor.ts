import { mkdtempSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type CDPSession, type Page, chromium } from 'playwright-core';
import { DataSource } from 'typeorm';
import { Trouble, findBrowser, startEmbeddedDatabase } from '#runtime';
import { createApp } from '../../../api/src/create-app.js';
import { migrate } from '../../../api/src/data-source.js';
import { loadDemo } from '../../../api/src/features/transfer/demo.js';
import { TourFileService } from '../../../api/src/features/transfer/tour-file.service.js';
import { configOf } from '../../../api/src/platform/config/config.js';
import { numberFrom, readArguments, say } from '../arguments.js';
import { makeDemoPlan } from './demo-plan.js';
import { benchDay, cookieOf, password } from './house.js';

const slowCpu = 4;
/** "Slow 4G" as browsers' own tools name it: 1.6 Mbit/s down, 750 kbit/s up, 150 ms there and back. */
const slow4G = { offline: false, latency: 150, downloadThroughput: (1.6e6 / 8) | 0, uploadThroughput: (750e3 / 8) | 0 };
const goals = { answerMs: 100, offlineAnswerMs: 100, firstKiB: 200, interactiveMs: 3_000 } as const;

/**
 * The floor on a phone four times slower than this machine: bytes of its first page and when that can be used over slow 4G, nothing kept yet; from a code read
 * to the answer drawn, with a network and without. The middle of so many rounds.
 */
export async function run(args: readonly string[], root: string): Promise<number> {
  const rounds = numberFrom(readArguments(args), 'rounds', 5);
  const executablePath = findBrowser();
  if (!executablePath) throw new Trouble('No Chromium was found. Set CHROMIUM to its path.');
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-bench-'));
  const database = await startEmbeddedDatabase({ folder, durable: false, say: () => undefined });
  await migrate(database.url);
  const app = await createApp({ config: configOf(database.url, { webFolder: join(root, 'dist', 'web') }) });
  const browser = await chromium.launch({ executablePath, args: ['--headless', '--no-sandbox', '--disable-gpu'] });
  try {
    await app.listen(0, '127.0.0.1');
    const dataSource = app.get(DataSource);
    await loadDemo(dataSource, app.get(TourFileService), root, benchDay, () => password);
    const planId = await makeDemoPlan(dataSource);
    const address = `http://127.0.0.1:${(app.getHttpServer().address() as AddressInfo).port}`;
    const cookie = await cookieOf(address, 'warehouse@cartwright.example', password);
    const [made]: { tourId: string; showId: string; loads: readonly Load[] }[] = await dataSource.query(
      `SELECT tour_id AS "tourId", show_id AS "showId", plan #> '{carts,loads}' AS loads FROM pack_plan WHERE id = $1`,
      [planId],
    );
    if (!made) throw new Trouble('The plan was not kept.');
    const at = { browser, address, cookie, floor: `${address}/floor/${made.tourId}/${made.showId}` };
    const firsts = [];
    for (let round = 0; round < rounds; round++) firsts.push(await firstPage(at));
    const answers = await answersOf(at, made.loads.filter((each) => each.boxes.length > 1).slice(0, rounds));
    const measured = {
      firstKiB: Number((middle(firsts.map((each) => each.bytes)) / 1024).toFixed(1)),
      interactiveMs: Math.round(middle(firsts.map((each) => each.interactiveMs))),
      answerMs: Math.round(middle(answers.online)),
      slowestAnswerMs: Math.round(Math.max(...answers.online)),
      offlineAnswerMs: Math.round(middle(answers.offline)),
      slowestOfflineAnswerMs: Math.round(Math.max(...answers.offline)),
    };
    const over = (Object.keys(goals) as (keyof typeof goals)[]).filter((each) => !(measured[each] < goals[each]));
    say(JSON.stringify({ rounds, reads: answers.online.length, ...measured, goals, over }));
    return over.length > 0 ? 1 : 0;
  } finally {
    await browser.close();
    await app.close();
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Load {
  readonly id: string;
  readonly boxes: readonly { readonly serial: string | null }[];
}

interface At {
  readonly browser: Browser;
  readonly address: string;
  readonly cookie: string;
  readonly floor: string;
}

/** Runs in the page: notes when the way on is first drawn, and when the page has then been free for a moment. */
const watchWayOn = `
  const seen = new MutationObserver(() => {
    if (!document.querySelector('.fl-foot .btn.big')) return;
    seen.disconnect();
    const wait = (before) => setTimeout(() => {
      const now = performance.now();
      if (now - before < 100) globalThis.interactiveAt = now; else wait(now);
    }, 50);
    wait(performance.now());
  });
  seen.observe(document, { childList: true, subtree: true });`;

/** Runs in the page: from the Enter of a reader until its answer is drawn. */
const watchAnswers = `
  globalThis.answers = [];
  addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    const since = event.timeStamp;
    const seen = new MutationObserver(() => {
      seen.disconnect();
      requestAnimationFrame(() => setTimeout(() => globalThis.answers.push(performance.now() - since)));
    });
    seen.observe(document.querySelector('.fl-body'), { childList: true, subtree: true, characterData: true });
  }, { capture: true });`;

async function openPhone({ browser, address, cookie }: At): Promise<{ page: Page; wire: CDPSession }> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const [name = '', value = ''] = cookie.split('=');
  await context.addCookies([{ name, value, url: address }]);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  const wire = await context.newCDPSession(page);
  await wire.send('Network.enable');
  await wire.send('Emulation.setCPUThrottlingRate', { rate: slowCpu });
  return { page, wire };
}

/** Everything that comes before the way on can be pressed, as it goes over the wire. */
async function firstPage(at: At): Promise<{ bytes: number; interactiveMs: number }> {
  const { page, wire } = await openPhone(at);
  await page.addInitScript(watchWayOn);
  await wire.send('Network.emulateNetworkConditions', slow4G);
  let bytes = 0;
  wire.on('Network.dataReceived', ({ encodedDataLength }) => (bytes += encodedDataLength));
  await page.goto(at.floor, { waitUntil: 'commit' });
  await page.waitForFunction('globalThis.interactiveAt !== undefined');
  const read = bytes;
  const interactiveMs = Number(await page.evaluate('globalThis.interactiveAt'));
  await page.context().close();
  return { bytes: read, interactiveMs };
}

/** Half of the boxes of each load read with a network, the other half without. */
async function answersOf(at: At, loads: readonly Load[]): Promise<{ online: number[]; offline: number[] }> {
  const { page } = await openPhone(at);
  const [online, offline]: number[][] = [[], []];
  for (const load of loads) {
    await page.context().setOffline(false);
    await page.goto(`${at.floor}/carts/${encodeURIComponent(load.id)}`);
    await page.locator('.slots li').first().waitFor();
    await page.evaluate(watchAnswers);
    const serials = load.boxes.flatMap((each) => each.serial ?? []);
    for (const [index, serial] of serials.entries()) {
      if (index === Math.floor(serials.length / 2)) await page.context().setOffline(true);
      await page.getByRole('textbox').fill(serial);
      await page.keyboard.press('Enter');
      await page.waitForFunction(`globalThis.answers.length === ${index + 1}`);
      const took = Number(await page.evaluate('globalThis.answers.at(-1)'));
      (index < Math.floor(serials.length / 2) ? online : offline)?.push(took);
    }
  }
  await page.context().close();
  return { online: online ?? [], offline: offline ?? [] };
}

function middle(of: readonly number[]): number {
  if (of.length === 0) throw new Error('nothing was measured');
  return [...of].sort((a, b) => a - b)[Math.floor(of.length / 2)] ?? NaN;
}
