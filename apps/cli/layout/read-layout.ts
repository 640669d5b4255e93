import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { cruise, type ICruiseOptions, type ICruiseResult } from 'dependency-cruiser';

export interface Layout {
  readonly files: number;
  /** Folders with their number of sources, the fullest first. */
  readonly folders: readonly (readonly [folder: string, files: number])[];
  /** Pairs of folders of which one imports from the other. */
  readonly arrows: number;
  /** Folders that reach one another. */
  readonly circles: readonly (readonly string[])[];
}

/** How the sources below apps and libs of the checkout at `base` lie in folders, and which folder imports from which. */
export async function readLayout(base: string): Promise<Layout> {
  const { cruiseOptions } = (await import(pathToFileURL(join(base, '.config', 'dependency-rules.js')).href)) as {
    cruiseOptions: ICruiseOptions;
  };
  const { output } = await cruise(['apps', 'libs'], { ...cruiseOptions, validate: false, baseDir: base }, {}, {});
  const modules = (output as ICruiseResult).modules.filter((each) => isSource(each.source));
  const files = new Map<string, number>();
  const arrows = new Map<string, Set<string>>();
  for (const { source, dependencies } of modules) {
    const from = folderOf(source);
    files.set(from, (files.get(from) ?? 0) + 1);
    for (const { resolved } of dependencies) {
      const to = folderOf(resolved);
      if (isSource(resolved) && to !== from) arrows.set(from, (arrows.get(from) ?? new Set()).add(to));
    }
  }
  return {
    files: modules.length,
    folders: [...files].sort(([, a], [, b]) => b - a),
    arrows: [...arrows.values()].reduce((sum, each) => sum + each.size, 0),
    circles: circlesIn(arrows),
  };
}

const isSource = (path: string): boolean =>
  /^(apps|libs)\/.*\.(ts|tsx|mjs)$/.test(path) && !/\.spec\.tsx?$/.test(path) && !path.startsWith('libs/contracts/');
const folderOf = (path: string): string => path.slice(0, path.lastIndexOf('/'));

/** Folders that reach one another: the strongly connected parts of more than one folder (Tarjan, SIAM J. Comput. 1, 1972). */
function circlesIn(arrows: ReadonlyMap<string, ReadonlySet<string>>): string[][] {
  const order = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const circles: string[][] = [];
  const visit = (folder: string): number => {
    const place = order.size;
    let lowest = place;
    order.set(folder, place);
    stack.push(folder);
    for (const next of arrows.get(folder) ?? []) {
      const reached = order.has(next) ? (low.get(next) ?? order.get(next) ?? place) : visit(next);
      if (stack.includes(next)) lowest = Math.min(lowest, reached);
      low.set(folder, lowest);
    }
    low.set(folder, lowest);
    if (lowest !== place) return lowest;
    const part = stack.splice(stack.indexOf(folder));
    if (part.length > 1) circles.push(part.sort());
    return lowest;
  };
  for (const folder of arrows.keys()) if (!order.has(folder)) visit(folder);
  return circles;
}
