// Plain JavaScript on purpose: it runs before anything is installed. Installs when the lock file changed, builds what
// the command needs when a source changed, then hands over to the command in apps/cli.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const [command = 'help', ...rest] = process.argv.slice(2);

/** Command -> what must be built before it. */
const needs = {
  start: ['server', 'web'],
  test: ['server', 'web'],
  check: ['server'],
  bench: ['server'],
  solve: ['server'],
  plan: ['server'],
  backup: ['server'],
  restore: ['server'],
  export: ['server'],
  'verify-log': ['server'],
  renew: ['server'],
  generate: ['server'],
  pictures: ['server', 'web'],
  build: ['server', 'web'],
};

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) fail(`Node ${process.versions.node} is too old: Cartwright needs Node 20.19 or later.`);
if (!(command in needs)) fail(`Unknown command "${command}". There is: ${Object.keys(needs).join(', ')}.`);

// Whoever reads the output may have read enough.
process.stdout.on('error', (fault) => {
  if (fault.code === 'EPIPE') process.exit(0);
  throw fault;
});

await oneAtATime(async () => {
  await install();
  for (const part of command === 'bench' && rest[0] === 'bytes' ? needs.start : needs[command]) await build(part);
});
if (command !== 'build') {
  process.chdir(
    process.env.INIT_CWD && ['solve', 'plan', 'bench', 'backup', 'restore', 'export'].includes(command) ? process.env.INIT_CWD : root,
  );
  const { main } = await import(pathToFileURL(join(root, 'dist', 'apps', 'cli', `${command}.js`)).href);
  process.exitCode = await main(rest, root);
}

/** Several starts at once: one installs and builds, the others wait for it. The system frees the lock of one that is killed. */
async function oneAtATime(work) {
  const name = `cartwright-build-${createHash('sha256').update(root).digest('hex').slice(0, 24)}`;
  const file = join(tmpdir(), `${name}.sock`);
  const path = process.platform === 'linux' ? `\0${name}` : process.platform === 'win32' ? `\\\\.\\pipe\\${name}` : file;
  for (;;) {
    const lock = createServer((waiting) => waiting.on('error', () => undefined));
    const isOurs = await new Promise((resolve) => {
      lock.once('error', () => resolve(false));
      lock.listen({ path }, () => resolve(true));
    });
    if (isOurs) {
      await work();
      // Whoever waits is let go with it.
      await new Promise((done) => {
        lock.on('connection', (waiting) => waiting.destroy());
        setImmediate(() => lock.close(done));
      });
      return;
    }
    const wasThere = await new Promise((resolve) => {
      const holder = connect({ path });
      holder.once('connect', () => resolve(new Promise((gone) => holder.once('close', () => gone(true)))));
      holder.once('error', () => resolve(false));
      holder.resume();
    });
    if (!wasThere && path === file) rmSync(file, { force: true });
    await new Promise((soon) => setTimeout(soon, 20));
  }
}

async function install() {
  const lock = join(root, 'package-lock.json');
  const stamp = join(root, 'node_modules', '.cartwright-installed');
  const wanted = hashOf([lock]);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  if (
    !existsSync(stamp) &&
    existsSync(join(root, 'node_modules', '.package-lock.json')) &&
    newerThan(join(root, 'node_modules', '.package-lock.json'), lock)
  ) {
    writeFileSync(stamp, wanted);
    return;
  }
  note('Installing packages (first run only) ...');
  const npm = process.env.npm_execpath;
  const [program, args] = npm ? [process.execPath, [npm, 'ci']] : ['npm', ['ci']];
  const code = await underWay('installing packages', program, args, { shell: !npm && process.platform === 'win32' });
  if (code !== 0) fail('Installing packages failed; the lines above say why. Nothing was started.');
  writeFileSync(stamp, wanted);
}

async function build(part) {
  const inputs = part === 'server' ? ['apps/api', 'apps/worker', 'apps/cli', 'apps/runtime', 'libs', 'migrations'] : ['apps/web', 'libs'];
  const files = inputs.flatMap((folder) => sources(join(root, folder)));
  const stamp = join(root, 'dist', `.built-${part}`);
  const wanted = hashOf([join(root, 'package-lock.json'), join(root, 'package.json'), ...files]);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  note(part === 'server' ? 'Building ...' : 'Building the screens ...');
  const bin = (name, file) => join(root, 'node_modules', name, file);
  if (part === 'server') {
    for (const folder of inputs) rmSync(join(root, 'dist', folder), { recursive: true, force: true });
    await run([
      bin('@swc/cli', 'bin/swc.js'),
      ...inputs.filter((folder) => existsSync(join(root, folder))),
      '--out-dir',
      'dist',
      '--config-file',
      '.config/swcrc.json',
      '--ignore',
      '**/*.spec.ts',
      '--extensions',
      '.ts',
      '--quiet',
    ]);
  } else {
    await run([bin('vite', 'bin/vite.js'), 'build', '--config', '.config/vite.config.js', '--logLevel', 'warn']);
  }
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, wanted);
}

async function run(args) {
  const code = await underWay('building', process.execPath, args, {});
  if (code !== 0) fail('Building failed; the lines above say why.');
}

/** Runs a program to its end, and says every few seconds that it is still at it; it ends with whoever started it. */
async function underWay(what, program, args, options) {
  const began = Date.now();
  const child = spawn(program, args, { cwd: root, stdio: ['ignore', 2, 2], ...options });
  const timer = setInterval(() => note(`  still ${what}, ${Math.round((Date.now() - began) / 1000)} seconds so far ...`), 5_000);
  const stop = (signal) => child.kill(signal);
  process.once('SIGINT', stop).once('SIGTERM', stop);
  try {
    return await new Promise((resolve, reject) => child.once('error', reject).once('exit', (code) => resolve(code ?? 1)));
  } finally {
    clearInterval(timer);
    process.off('SIGINT', stop).off('SIGTERM', stop);
  }
}

function sources(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) return sources(path);
      return /\.spec\.tsx?$/.test(entry.name) ? [] : [path];
    })
    .sort();
}

function hashOf(files) {
  const hash = createHash('sha256');
  for (const file of files) {
    if (!existsSync(file)) continue;
    hash.update(relative(root, file)).update(readFileSync(file));
  }
  return hash.digest('hex');
}

function newerThan(file, other) {
  return existsSync(other) && statSync(file).mtimeMs >= statSync(other).mtimeMs;
}

function note(sentence) {
  process.stderr.write(`${sentence}\n`);
}

function fail(sentence) {
  process.stderr.write(`${sentence}\n`);
  process.exit(1);
}
