import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defaultClientConditions, defineConfig } from 'vite';

export default defineConfig({
  root: fileURLToPath(new URL('../apps/web', import.meta.url)),
  plugins: [react()],
  resolve: { conditions: ['cartwright-source', ...defaultClientConditions] },
  build: { outDir: fileURLToPath(new URL('../dist/web', import.meta.url)), emptyOutDir: true, chunkSizeWarningLimit: 1500 },
});
