import { readFileSync } from 'node:fs';

const manifest = new URL('../../../../../package.json', import.meta.url.replace('/dist/apps/', '/apps/'));

/** Of this Cartwright. */
export const { version } = JSON.parse(readFileSync(manifest, 'utf8')) as { version: string };
