import { resolve } from 'node:path';
import { readLayout } from '../layout/read-layout.js';
import { readArguments, say } from './arguments.js';

/** Sources a folder, imports between folders, and circles of folders; `--of DIR` looks at another checkout of the repository, by its own rules. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const { files, folders, arrows, circles } = await readLayout(resolve(readArguments(args).get('of') ?? root));
  for (const [folder, count] of folders.slice(0, 12)) say(`${String(count).padStart(4)} files  ${folder}`);
  for (const circle of circles) say(`circle: ${circle.join(' <-> ')}`);
  say(
    JSON.stringify({
      files,
      folders: folders.length,
      mostFiles: folders[0]?.[1] ?? 0,
      overTwelve: folders.filter(([, count]) => count > 12).length,
      arrows,
      circles: circles.length,
    }),
  );
  return 0;
}
