import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { findBrowser, startEmbeddedDatabase } from '#runtime';
import { prepareDatabase } from '../api/src/prepare-database.js';

interface JestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numRuntimeErrorTestSuites: number;
  readonly testResults: { name: string; assertionResults: { status: string; fullName: string }[] }[];
}

/** Every test on a database of its own; ends with a line "N passed, N failed". Arguments go to jest (a part of a path, --testNamePattern ...). */
export async function main(args: readonly string[], root: string): Promise<number> {
  const browser = findBrowser();
  if (!browser && process.env.CARTWRIGHT_REQUIRE_BROWSER === '1') {
    process.stderr.write('No Chromium was found, and CARTWRIGHT_REQUIRE_BROWSER asks for one. Set CHROMIUM to its path.\n');
    process.stdout.write('0 passed, 1 failed\n');
    return 1;
  }
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-test-'));
  const database = await startEmbeddedDatabase({ folder, durable: false, say: () => undefined });
  try {
    await onServer(database.url, 'CREATE DATABASE cartwright_template');
    await prepareDatabase({ databaseUrl: database.urlOf('cartwright_template'), ownerUrl: null });
    const reportFile = join(folder, 'report.json');
    const code = await runJest(root, [...args, '--json', `--outputFile=${reportFile}`], {
      TEST_DATABASE_URL: database.url,
      CHROMIUM: browser ?? '',
    });
    if (!existsSync(reportFile)) {
      process.stdout.write('0 passed, 1 failed\n');
      return code || 1;
    }
    return report(JSON.parse(readFileSync(reportFile, 'utf8')) as JestReport, browser, code);
  } finally {
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function onServer(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(statement);
  await client.end();
}

function runJest(root: string, args: readonly string[], environment: NodeJS.ProcessEnv): Promise<number> {
  const jest = join(root, 'node_modules', 'jest', 'bin', 'jest.js');
  const child = spawn(
    process.execPath,
    ['--experimental-vm-modules', '--no-warnings', jest, '--config', join(root, '.config', 'jest.config.js'), ...args],
    {
      cwd: root,
      env: { ...process.env, ...environment },
      stdio: ['ignore', 'ignore', 'inherit'],
    },
  );
  return new Promise((resolve) => child.once('exit', (code) => resolve(code ?? 1)));
}

function report(
  { numPassedTests, numFailedTests, numRuntimeErrorTestSuites, testResults }: JestReport,
  browser: string | undefined,
  code: number,
): number {
  const left = testResults.flatMap((suite) =>
    suite.assertionResults.filter((each) => each.status === 'pending').map((each) => each.fullName),
  );
  if (left.length > 0)
    process.stdout.write(
      `Not run${browser ? '' : ' (no Chromium here; set CHROMIUM to its path)'}:\n${left.map((name) => `  ${name}\n`).join('')}`,
    );
  const failed = numFailedTests + numRuntimeErrorTestSuites + (numPassedTests === 0 && numFailedTests === 0 ? 1 : 0);
  process.stdout.write(`${numPassedTests} passed, ${failed} failed${left.length > 0 ? `, ${left.length} skipped` : ''}\n`);
  return failed > 0 || code !== 0 ? 1 : 0;
}
