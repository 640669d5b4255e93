import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { build, defaultClientConditions, defineConfig } from 'vite';

const at = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));
const outDir = at('dist/web');
const resolve = { conditions: ['cartwright-source', ...defaultClientConditions] };

const hashOf = (files) =>
  files
    .reduce((hash, file) => hash.update(readFileSync(file)), createHash('sha256'))
    .digest('hex')
    .slice(0, 16);
const filesUnder = (folder) =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();

/** The screens without a network: what was built is named in a program of the browser's own that keeps it. */
const kept = () => ({
  name: 'kept-on-the-device',
  apply: 'build',
  async closeBundle() {
    const files = filesUnder(outDir)
      .filter((file) => !/\.map$|service-worker/.test(file))
      .map((file) => {
        const url = file.slice(outDir.length).replaceAll('\\', '/');
        return { url, revision: url.startsWith('/assets/') ? null : hashOf([file]) };
      });
    await build({
      configFile: false,
      root: at('apps/web'),
      publicDir: false,
      logLevel: 'warn',
      resolve,
      define: { BUILT_FILES: JSON.stringify(files), 'process.env.NODE_ENV': '"production"' },
      build: {
        outDir,
        emptyOutDir: false,
        lib: { entry: at('apps/web/src/service-worker.ts'), formats: ['iife'], name: 'kept', fileName: () => 'service-worker.js' },
      },
    });
  },
});

export default defineConfig({
  root: at('apps/web'),
  plugins: [react(), kept()],
  resolve,
  // What was read stays readable in the next version for as long as answers keep their shapes.
  define: { SHAPES: JSON.stringify(hashOf(filesUnder(at('libs/contracts')))) },
  build: { outDir, emptyOutDir: true, chunkSizeWarningLimit: 1500 },
});
