/** Bundle of the window's code; everything is addressed relative to the page, whichever host serves it. */

import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { handbookModule } from './handbookPages.ts';
import { kernelGlue } from './kernelGlue.ts';

const folder = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/**
 * Core's modules do nothing when they are loaded but say what they hold, so those of which nothing is used are left
 * out, window and workers alike; a bundler cannot see that by itself.
 */
const plain = (part: string) => part.replace(/[.*+?^${}()|[\]]/g, '\\$&');
const core = new RegExp(`^${folder('../core/').split(/[\\/]/).map(plain).join('[\\\\/]')}`);
const rolldownOptions = { treeshake: { moduleSideEffects: [{ test: core, sideEffects: false }] } };

export default defineConfig({
  root: folder('.'),
  base: './',
  publicDir: folder('../assets/public'),
  plugins: [react(), kernelGlue(), handbookModule()],
  worker: { format: 'es', rolldownOptions, plugins: () => [kernelGlue()] },
  build: {
    outDir: folder('../dist/renderer'),
    emptyOutDir: true,
    target: 'chrome140',
    rolldownOptions,
    // The policy forbids inline code and data addresses for code.
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 4000,
  },
});
