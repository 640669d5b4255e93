import { readFileSync } from 'node:fs';

const swc = JSON.parse(readFileSync(new URL('./swcrc.json', import.meta.url), 'utf8'));

const shared = {
  rootDir: new URL('..', import.meta.url).pathname,
  extensionsToTreatAsEsm: ['.ts', '.tsx'],
  transform: { '^.+\\.tsx?$': ['@swc/jest', { ...swc, swcrc: false }] },
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': '$1' },
  testEnvironmentOptions: { customExportConditions: ['cartwright-source', 'node', 'node-addons'] },
  modulePathIgnorePatterns: ['<rootDir>/dist', '<rootDir>/.data'],
};

/** Pure specs run anywhere; `database` specs share one embedded PostgreSQL started in the global set-up. */
export default {
  rootDir: shared.rootDir,
  maxWorkers: 2,
  projects: [
    {
      ...shared,
      displayName: 'pure',
      testMatch: ['<rootDir>/libs/**/*.spec.ts', '<rootDir>/tests/reference/**/*.spec.ts', '<rootDir>/tests/architecture/**/*.spec.ts', '<rootDir>/tests/corpora/**/*.spec.ts', '<rootDir>/apps/cli/**/*.spec.ts', '<rootDir>/apps/runtime/**/*.spec.ts'],
    },
  ],
};
