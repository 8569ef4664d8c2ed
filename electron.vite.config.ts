import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'electron-vite';
import type { Plugin } from 'vite';
import { FONT_FILES } from './src-main/documents/pdf/fonts.ts';

/** The fonts of the papers, beside the program that sets them. */
const fontsOfPapers: Plugin = {
  name: 'fonts-of-papers',
  generateBundle() {
    for (const file of Object.values(FONT_FILES).flatMap((weights) => Object.values(weights))) this.emitFile({ type: 'asset', fileName: `fonts/${basename(file)}`, source: readFileSync(file) });
  },
};

export default defineConfig({
  main: {
    plugins: [fontsOfPapers],
    build: {
      outDir: 'out/main',
      // All that it needs is in the bundle, so that a packed app carries no other packages, but for one whose binary can't be bundled.
      externalizeDeps: false,
      rolldownOptions: { input: { main: 'src-main/desktop/main.ts', 'paper-worker': 'src-main/office/paper-worker.ts' }, output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' }, external: ['better-sqlite3'] },
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
