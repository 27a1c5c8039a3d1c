import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Pinned so that every run sees the same clock face. */
process.env.TZ = 'UTC';

export default defineConfig({
  test: {
    root: fileURLToPath(new URL('..', import.meta.url)),
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: 'spec',
          include: ['test/**/*.test.{ts,tsx}'],
          exclude: ['test/e2e/**', 'node_modules/**'],
          testTimeout: 30_000,
          // Node loads core itself, see the preloaded file; tests and the rest go through the runner.
          execArgv: ['--import', new URL('helpers/nativeCore.mjs', import.meta.url).href],
          server: { deps: { external: [/(?<!\/test)\/core\/[^?]*\.ts$/] } },
        },
      },
      {
        test: {
          name: 'e2e',
          include: ['test/e2e/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
      { test: { name: 'bench', include: [], benchmark: { include: ['test/bench/**/*.bench.ts'] } } },
    ],
  },
});
