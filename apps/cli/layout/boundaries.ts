import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { cruise, type ICruiseOptions, type ICruiseResult } from 'dependency-cruiser';

export interface Violation {
  readonly rule: string;
  readonly from: string;
  readonly to: string;
  readonly comment: string;
}

/** Holds folders below `base` against the rule file; `base` stands in for the repository's top. */
export async function findViolations(root: string, base: string, folders: readonly string[]): Promise<readonly Violation[]> {
  const { rules, cruiseOptions } = (await import(pathToFileURL(join(root, '.config', 'dependency-rules.js')).href)) as {
    rules: { forbidden: { name: string; comment: string }[] };
    cruiseOptions: ICruiseOptions;
  };
  const { output } = await cruise([...folders], { ...cruiseOptions, baseDir: base }, {}, {});
  const { summary } = output as ICruiseResult;
  return summary.violations.map(({ rule, from, to }) => ({
    rule: rule.name,
    from,
    to,
    comment: rules.forbidden.find((each) => each.name === rule.name)?.comment ?? '',
  }));
}
