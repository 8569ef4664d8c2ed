import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'electron-vite';

export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      // All that it needs is in the bundle, so that a packed app carries no other packages, but for one whose binary can't be bundled.
      externalizeDeps: false,
      rolldownOptions: { input: { main: 'src-main/desktop/main.ts' }, output: { entryFileNames: '[name].js' }, external: ['better-sqlite3'] },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
      // A sandboxed preload is one CommonJS file and can load nothing beside it.
      externalizeDeps: false,
      isolatedEntries: true,
      rolldownOptions: { input: { preload: 'src-main/desktop/preload.ts' }, output: { format: 'cjs', entryFileNames: '[name].cjs' } },
    },
  },
  renderer: {
    root: 'src-renderer',
    plugins: [svelte()],
    worker: { format: 'es' },
    build: {
      outDir: 'out/renderer',
      // The same files are opened by installed browsers, which may be older than Electron's.
      target: 'es2022',
      // The content security policy refuses fonts and workers that are inlined as data.
      assetsInlineLimit: 0,
      rolldownOptions: { input: 'src-renderer/index.html' },
    },
  },
});
