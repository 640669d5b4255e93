import { readFileSync } from 'node:fs';

const swc = JSON.parse(readFileSync(new URL('./swcrc.json', import.meta.url), 'utf8'));

const shared = {
  rootDir: new URL('..', import.meta.url).pathname,
  extensionsToTreatAsEsm: ['.ts', '.tsx'],
  transform: { '^.+\\.tsx?$': ['<rootDir>/.config/jest-transform.js', { ...swc, swcrc: false }] },
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': '$1' },
  testEnvironmentOptions: { customExportConditions: ['cartwright-source', 'node', 'node-addons'] },
  modulePathIgnorePatterns: ['<rootDir>/dist', '<rootDir>/.data'],
};

/** `pure` runs anywhere; `database` and `browser` need what `npm test` starts: an embedded PostgreSQL, and a Chromium where there is one. */
export default {
  rootDir: shared.rootDir,
  maxWorkers: 2,
  // Modules of a spec are not all given back: a worker that has grown begins anew, or the later ones spend their time collecting garbage.
  workerIdleMemoryLimit: '1200MB',
  testTimeout: 180_000,
  projects: [
    {
      ...shared,
      displayName: 'pure',
      testMatch: ['libs', 'tests/reference', 'tests/architecture', 'tests/corpora', 'tests/pack-plan', 'apps'].map(
        (folder) => `<rootDir>/${folder}/**/*.spec.ts`,
      ),
    },
    { ...shared, displayName: 'database', testMatch: ['<rootDir>/tests/api/**/*.spec.ts', '<rootDir>/tests/database/**/*.spec.ts'] },
    { ...shared, displayName: 'browser', testMatch: ['<rootDir>/tests/web/**/*.spec.ts'] },
  ],
};
