import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import type { SpecProcess } from './spec-process.js';

interface Place {
  readonly line: number;
  readonly column: number | null;
}
interface Statement {
  readonly start: Place;
  readonly end: Place;
  readonly times: number;
}
interface CoveredFile {
  readonly path: string;
  readonly statementMap: Record<string, { readonly start: Place; readonly end: Place }>;
  readonly s: Record<string, number>;
}

/** A spec, how long it takes with its statements counted, and the statements of each source with how often it runs them. */
export interface SpecCoverage {
  readonly spec: string;
  readonly seconds: number;
  readonly files: ReadonlyMap<string, readonly Statement[]>;
}

/** Each spec once, with what it runs of some folders counted; every one must pass. */
export async function coverageOf(
  specs: readonly string[],
  of: readonly string[],
  process: SpecProcess,
  folder: string,
): Promise<readonly SpecCoverage[]> {
  const found: SpecCoverage[] = [];
  for (const spec of specs) {
    const directory = mkdtempSync(join(tmpdir(), 'cartwright-coverage-'));
    try {
      const started = performance.now();
      const reply = await process.run({ spec, coverage: { of, directory } }, 600);
      const seconds = (performance.now() - started) / 1000;
      if (!reply?.passed) throw new Error(`${spec} fails without any mutant`);
      const covered = JSON.parse(readFileSync(join(directory, 'coverage-final.json'), 'utf8')) as Record<string, CoveredFile>;
      const files = Object.values(covered).map((file) => [relative(folder, file.path), statementsOf(file)] as const);
      found.push({ spec, seconds, files: new Map(files) });
    } finally {
      rmSync(directory, { recursive: true, force: true });
    }
  }
  return found.sort((a, b) => a.seconds - b.seconds);
}

const statementsOf = ({ statementMap, s }: CoveredFile): Statement[] =>
  Object.entries(statementMap).map(([key, { start, end }]) => ({ start, end, times: s[key] ?? 0 }));

/** The specs that run the statement at a place, the quickest first; where no statement is known, those that run any of the file. */
export function specsThatRun(coverage: readonly SpecCoverage[], path: string, at: Place): readonly SpecCoverage[] {
  return coverage.filter(({ files }) => {
    const statements = files.get(path) ?? [];
    const around = statements.filter((each) => !before(at, each.start) && !before(each.end, at));
    if (around.length === 0) return statements.some((each) => each.times > 0);
    return around.reduce((inner, each) => (before(each.start, inner.start) ? inner : each)).times > 0;
  });
}

/** A statement whose end has no column ends with its line. */
const before = (a: Place, b: Place): boolean =>
  a.line < b.line || (a.line === b.line && (a.column ?? Number.POSITIVE_INFINITY) < (b.column ?? Number.POSITIVE_INFINITY));
