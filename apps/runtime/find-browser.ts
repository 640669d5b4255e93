import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Path of a Chromium: CHROMIUM, or one of the usual names on the PATH. */
export function findBrowser(): string | undefined {
  const named = process.env.CHROMIUM;
  if (named) return existsSync(named) ? named : undefined;
  const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
  return (process.env.PATH ?? '')
    .split(delimiter)
    .flatMap((folder) => names.map((name) => join(folder, name)))
    .find((path) => existsSync(path));
}
