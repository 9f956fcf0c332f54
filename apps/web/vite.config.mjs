import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { offlinePlugin } from './offline/offlinePlugin.mjs';

const root = import.meta.dirname ?? new URL('.', import.meta.url).pathname;

/** The workspaces' own modules only compute: importing one does nothing by itself, so what is not used is left out. */
const ownModule = /[\\/](packages|node_modules[\\/]@panewright)[\\/]/;

export default defineConfig({
  root,
  plugins: [react(), offlinePlugin(root)],
  worker: { format: 'es' },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: true,
    rolldownOptions: { treeshake: { moduleSideEffects: (id) => !ownModule.test(id) || id.endsWith('.css') } },
  },
  server: { proxy: { '/api': 'http://127.0.0.1:4173' } },
});
