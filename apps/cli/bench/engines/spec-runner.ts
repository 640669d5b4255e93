// Runs in a process of its own, which stays warm from spec to spec: jest and the packages are read once. It is ended when a mutant never ends.
import { runCLI } from 'jest';

export interface SpecRequest {
  /** One after another, until one fails. */
  readonly specs: readonly string[];
  /** Where to write what was covered; left out, nothing is counted. */
  readonly coverage?: string;
}

export interface SpecReply {
  readonly passed: boolean;
  readonly failedIn?: string | undefined;
}

async function runSpecs({ specs, coverage }: SpecRequest): Promise<SpecReply> {
  for (const spec of specs) {
    const args = { config: '.config/jest.config.js', selectProjects: ['pure'], runInBand: true, bail: 1, silent: true, watchman: false };
    const counted =
      coverage === undefined
        ? {}
        : {
            coverage: true,
            collectCoverageFrom: JSON.stringify(['libs/**/*.ts']),
            coverageDirectory: coverage,
            coverageReporters: ['json'],
          };
    const one = { ...args, ...counted, reporters: [], runTestsByPath: true, _: [spec], $0: 'jest' };
    const { results } = await runCLI(one, [process.cwd()]);
    if (!results.success || results.numTotalTests === 0) return { passed: false, failedIn: spec };
  }
  return { passed: true };
}

process.on('message', (request: SpecRequest) => {
  void runSpecs(request)
    .catch(() => ({ passed: false }))
    .then((reply) => process.send?.(reply));
});
