/** Bundle of the window's code; everything is addressed relative to the page, whichever host serves it. */

import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { kernelGlue } from './kernelGlue.ts';

const folder = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: folder('.'),
  base: './',
  publicDir: folder('../assets/public'),
  plugins: [react(), kernelGlue()],
  worker: { format: 'es', plugins: () => [kernelGlue()] },
  build: {
    outDir: folder('../dist/renderer'),
    emptyOutDir: true,
    target: 'chrome140',
    // The policy forbids inline code and data addresses for code.
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 4000,
  },
});
