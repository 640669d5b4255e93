import { join } from 'node:path';
import { type Browser, type Page, chromium } from 'playwright-core';

/** Where the Chromium is; undefined where there is none: the browser tests are then named as not run. */
export const browserPath = process.env.CHROMIUM || undefined;

export const itInBrowser = browserPath ? it : it.skip;

/** `film`: a file of uncompressed pictures (YUV4MPEG2) that the camera sees over and over. */
export function openBrowser(film?: string): Promise<Browser> {
  return chromium.launch({
    executablePath: browserPath!,
    args: [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--use-fake-device-for-media-stream',
      ...(film ? ['--use-fake-ui-for-media-stream', `--use-file-for-fake-video-capture=${film}`] : []),
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

/** Whatever the page's own rules refused (an inline style, a foreign address) counts as a fault of the page. */
const rulesAreKept = `addEventListener('securitypolicyviolation', (event) => {
  setTimeout(() => { throw new Error('the rules of the page forbid ' + event.violatedDirective + ': ' + (event.sample || event.blockedURI)); });
});`;

/** A page of its own context. The browser's print window is counted (`window.printsAsked`) instead of opened: it would run into a PDF being made. */
export async function openPage(browser: Browser, viewport: { width: number; height: number }): Promise<Page> {
  const context = await browser.newContext({ viewport });
  await context.addInitScript('window.printsAsked = 0; window.print = () => { window.printsAsked += 1; };');
  await context.addInitScript(rulesAreKept);
  return context.newPage();
}

/** Signs in on the page as a person would. */
export async function signInOn(page: Page, address: string, email: string, password: string): Promise<void> {
  await page.goto(address);
  await page.getByLabel('Email').fill(email);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.getByRole('heading', { name: 'Today' }).waitFor();
}

/** A picture of the page as it is, for people to look at: kept where CARTWRIGHT_PICTURES names a folder. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env.CARTWRIGHT_PICTURES;
  if (folder) await page.screenshot({ path: join(folder, `${name}.png`) });
}
