import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { findViolations } from '../../apps/cli/layout/boundaries.js';

/** A file in one room of an engine that knows another room. */
const arrow = (engine: string, from: string, to: string): Record<string, Record<string, string>> => ({
  [`${engine}-${from}-knows`]: {
    [`libs/${engine}/${from}/a.ts`]: `export { b } from '../${to}/index.js';`,
    [`libs/${engine}/${to}/index.ts`]: 'export const b = 1;',
  },
});

/** Rule -> files that break it, and nothing else in the folder. */
const broken: Record<string, Record<string, string>> = {
  'no-circles': {
    'libs/kernel/a.ts': "import './b.js';\nexport const a = 1;",
    'libs/kernel/b.ts': "import './a.js';\nexport const b = 1;",
  },
  'libs-are-pure': { 'libs/truck-pack/a.ts': "import { readFileSync } from 'node:fs';\nexport const a = readFileSync;" },
  'engines-stand-alone': {
    'libs/truck-pack/a.ts': "export { b } from '../hang-statics/b.js';",
    'libs/hang-statics/b.ts': 'export const b = 1;',
  },
  'kernel-knows-nobody': { 'libs/kernel/a.ts': "export { b } from '../pack-plan/b.js';", 'libs/pack-plan/b.ts': 'export const b = 1;' },
  'trade-knows-the-kernel': { 'libs/trade/a.ts': "export { b } from '../words/b.js';", 'libs/words/b.ts': 'export const b = 1;' },
  'words-know-the-trade': { 'libs/words/a.ts': "export { b } from '../pack-plan/b.js';", 'libs/pack-plan/b.ts': 'export const b = 1;' },
  'tour-file-before-plan': {
    'libs/tour-file/a.ts': "export { b } from '../pack-plan/b.js';",
    'libs/pack-plan/b.ts': 'export const b = 1;',
  },
  'records-know-the-file': {
    'libs/records/a.ts': "export { b } from '../pack-plan/b.js';",
    'libs/pack-plan/b.ts': 'export const b = 1;',
  },
  'editions-know-the-file': {
    'libs/editions/a.ts': "export { b } from '../pack-plan/b.js';",
    'libs/pack-plan/b.ts': 'export const b = 1;',
  },
  'plan-before-drawings': { 'libs/pack-plan/a.ts': "export { b } from '../drawings/b.js';", 'libs/drawings/b.ts': 'export const b = 1;' },
  'rooms-have-one-door': {
    'libs/pack-plan/picks/a.ts': "export { b } from '../carts/b.js';",
    'libs/pack-plan/carts/b.ts': 'export const b = 1;',
  },
  'the-contract-knows-no-result': {
    'libs/pack-plan/contract/a.ts': "export { b } from '../carts/index.js';",
    'libs/pack-plan/carts/index.ts': 'export const b = 1;',
  },
  'nobody-knows-the-maker': {
    'libs/pack-plan/picks/a.ts': "export { b } from '../make/index.js';",
    'libs/pack-plan/make/index.ts': 'export const b = 1;',
  },
  'web-sees-contracts-and-libs': {
    'apps/web/src/a.ts': "export { b } from '../../api/src/platform/b.js';",
    'apps/api/src/platform/b.ts': 'export const b = 1;',
  },
  'platform-knows-no-feature': {
    'apps/api/src/platform/a.ts': "export { b } from '../features/tour/b.js';",
    'apps/api/src/features/tour/b.ts': 'export const b = 1;',
  },
  'planning-knows-no-feature': {
    'apps/api/src/planning/a.ts': "export { b } from '../features/tour/b.js';",
    'apps/api/src/features/tour/b.ts': 'export const b = 1;',
  },
  'platform-knows-no-planning': {
    'apps/api/src/platform/a.ts': "export { b } from '../planning/b.js';",
    'apps/api/src/planning/b.ts': 'export const b = 1;',
  },
  'features-meet-at-readers-and-writers': {
    'apps/api/src/features/plan/a.ts': "export { b } from '../tour/tour.queries.js';",
    'apps/api/src/features/tour/tour.queries.ts': 'export const b = 1;',
  },
  'screens-never-read-the-whole-register': {
    'apps/api/src/features/register/a.query.ts': "export { b } from './kit.reader.js';",
    'apps/api/src/features/register/kit.reader.ts': 'export const b = 1;',
  },
  'rows-never-leave-the-api': {
    'apps/cli/a.ts': "export { b } from '../api/src/features/tour/rows.js';",
    'apps/api/src/features/tour/rows.ts': 'export const b = 1;',
  },
  'nobody-imports-tests': { 'libs/kernel/a.ts': "export { b } from '../../tests/b.js';", 'tests/b.ts': 'export const b = 1;' },
  'rooms-have-doors': {
    'libs/cart-allocation/a.ts': "export { b } from './case/b.js';",
    'libs/cart-allocation/case/b.ts': 'export const b = 1;',
  },
  'rooms-meet-at-doors': {
    'libs/cart-allocation/bound/a.ts': "export { b } from '../case/b.js';",
    'libs/cart-allocation/case/b.ts': 'export const b = 1;',
  },
  ...arrow('cart-allocation', 'case', 'bound'),
  ...arrow('cart-allocation', 'bound', 'carry-out'),
  ...arrow('cart-allocation', 'carry-out', 'exact'),
  ...arrow('cart-allocation', 'pinned', 'bound'),
  ...arrow('cart-allocation', 'exact', 'bound'),
  ...arrow('cart-allocation', 'check', 'bound'),
  ...arrow('cart-allocation', 'solve', 'why'),
  ...arrow('cart-allocation', 'why', 'exact'),
  ...arrow('cart-allocation', 'tour', 'bound'),
  ...arrow('truck-pack', 'case', 'space'),
  ...arrow('truck-pack', 'space', 'bound'),
  ...arrow('truck-pack', 'bound', 'rows'),
  ...arrow('truck-pack', 'rows', 'fleet'),
  ...arrow('truck-pack', 'fleet', 'free'),
  ...arrow('truck-pack', 'free', 'container'),
  ...arrow('truck-pack', 'container', 'case'),
  ...arrow('truck-pack', 'check', 'space'),
  ...arrow('truck-pack', 'stowage', 'rows'),
  ...arrow('truck-pack', 'small', 'rows'),
  'everything-resolves': { 'apps/api/src/a.ts': "export { b } from './nowhere.js';" },
};

describe('the dependency rules', () => {
  const folders: string[] = [];
  afterAll(() => folders.forEach((folder) => rmSync(folder, { recursive: true, force: true })));

  const holding = async (files: Record<string, string>) => {
    const base = mkdtempSync(join(tmpdir(), 'cartwright-rules-'));
    folders.push(base);
    writeFileSync(join(base, 'package.json'), '{"type":"module"}');
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(dirname(join(base, name)), { recursive: true });
      writeFileSync(join(base, name), text);
    }
    const tops = [...new Set(Object.keys(files).map((name) => name.split('/')[0]!))];
    return (await findViolations(process.cwd(), base, tops)).map((each) => each.rule);
  };

  it.each(Object.entries(broken))('%s refuses a file that breaks it', async (rule, files) => {
    expect(await holding(files)).toContain(rule);
  });

  it('says nothing of a reader of another feature, a lib under the screens and the kernel under an engine', async () => {
    expect(
      await holding({
        'apps/api/src/features/plan/a.ts': "export { b } from '../tour/tour.reader.js';",
        'apps/api/src/features/tour/tour.reader.ts': 'export const b = 1;',
        'apps/web/src/a.ts': "export { c } from '../../../libs/truck-pack/c.js';",
        'libs/truck-pack/c.ts': "export { d as c } from '../kernel/d.js';\nexport { e } from './rows/index.js';",
        'libs/truck-pack/rows/index.ts': "export { e } from './e.js';",
        'libs/truck-pack/rows/e.ts': "export { f as e } from '../space/index.js';",
        'libs/truck-pack/space/index.ts': 'export const f = 1;',
        'libs/kernel/d.ts': 'export const d = 1;',
        'libs/cart-allocation/solve/solve-allocation.ts': "export { e } from '../bound/index.js';",
        'libs/cart-allocation/bound/index.ts': "export { e } from './e.js';",
        'libs/cart-allocation/bound/e.ts': "export { f as e } from '../case/index.js';",
        'libs/cart-allocation/case/index.ts': 'export const f = 1;',
      }),
    ).toEqual([]);
  });

  it('has a broken file for every rule', async () => {
    const file = '../../.config/dependency-rules.js';
    const { rules } = (await import(file)) as { rules: { forbidden: { name: string; comment: string }[] } };
    expect(rules.forbidden.map((each) => each.name).sort()).toEqual(Object.keys(broken).sort());
    expect(rules.forbidden.every((each) => each.comment.length > 20)).toBe(true);
  });

  it('holds in this repository', async () => {
    expect(await findViolations(process.cwd(), process.cwd(), ['apps', 'libs', 'migrations', 'tests'])).toEqual([]);
  });
});
