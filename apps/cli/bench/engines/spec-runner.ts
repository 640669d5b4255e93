// Runs in a process of its own, which stays warm from spec to spec: jest and the packages are read once. It is ended when a mutant never ends.
import { fileURLToPath } from 'node:url';
import { runCLI } from 'jest';

export interface SpecRequest {
  readonly spec: string;
  /** Of which folders to count what is run, and where to write it; left out, nothing is counted. */
  readonly coverage?: { readonly of: readonly string[]; readonly directory: string };
}

export interface SpecReply {
  readonly passed: boolean;
}

const beside = (file: string): string => fileURLToPath(new URL(file, import.meta.url));

async function runSpec({ spec, coverage }: SpecRequest): Promise<SpecReply> {
  const args = { config: '.config/jest.config.js', selectProjects: ['pure'], runInBand: true, bail: 1, silent: true, watchman: false };
  const counted =
    coverage === undefined
      ? {}
      : {
          coverage: true,
          collectCoverageFrom: JSON.stringify(coverage.of.map((each) => `${each}/**/*.ts`)),
          coverageDirectory: coverage.directory,
          coverageReporters: ['json'],
        };
  const failFast = { testEnvironment: beside('./fail-fast-environment.js'), setupFilesAfterEnv: [beside('./fail-fast-properties.js')] };
  const one = { ...args, ...failFast, ...counted, reporters: [], runTestsByPath: true, _: [spec], $0: 'jest' };
  const { results } = await runCLI(one, [process.cwd()]);
  return { passed: results.success && results.numTotalTests > 0 };
}

process.on('message', (request: SpecRequest) => {
  void runSpec(request)
    .catch(() => ({ passed: false }))
    .then((reply) => process.send?.(reply));
});
