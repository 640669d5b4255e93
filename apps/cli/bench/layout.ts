import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { cruise, type ICruiseOptions, type ICruiseResult } from 'dependency-cruiser';
import { readArguments, say } from './arguments.js';

/** Sources a folder, imports between folders, and circles of folders; `--of DIR` looks at another checkout of the repository, by its own rules. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const base = resolve(readArguments(args).get('of') ?? root);
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
  const sizes = [...files].sort(([, a], [, b]) => b - a);
  for (const [folder, count] of sizes.slice(0, 12)) say(`${String(count).padStart(4)} files  ${folder}`);
  const circles = circlesIn(arrows);
  for (const circle of circles) say(`circle: ${circle.join(' <-> ')}`);
  const between = [...arrows.values()].reduce((sum, each) => sum + each.size, 0);
  say(
    JSON.stringify({
      files: modules.length,
      folders: files.size,
      mostFiles: sizes[0]?.[1] ?? 0,
      overTwelve: sizes.filter(([, count]) => count > 12).length,
      arrows: between,
      circles: circles.length,
    }),
  );
  return 0;
}

const isSource = (path: string): boolean =>
  /^(apps|libs)\/.*\.(ts|tsx|mjs)$/.test(path) && !/\.spec\.tsx?$/.test(path) && !path.startsWith('libs/contracts/');
const folderOf = (path: string): string => path.slice(0, path.lastIndexOf('/'));

/** Folders that reach one another: the strongly connected parts of more than one folder (Tarjan, SIAM J. Comput. 1, 1972). */
export function circlesIn(arrows: ReadonlyMap<string, ReadonlySet<string>>): string[][] {
  const order = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const circles: string[][] = [];
  const visit = (folder: string): void => {
    order.set(folder, order.size);
    low.set(folder, order.get(folder)!);
    stack.push(folder);
    for (const next of arrows.get(folder) ?? []) {
      if (!order.has(next)) visit(next);
      if (stack.includes(next)) low.set(folder, Math.min(low.get(folder)!, low.get(next)!));
    }
    if (low.get(folder) !== order.get(folder)) return;
    const part = stack.splice(stack.indexOf(folder));
    if (part.length > 1) circles.push(part.sort());
  };
  for (const folder of arrows.keys()) if (!order.has(folder)) visit(folder);
  return circles;
}
