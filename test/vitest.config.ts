import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Pinned so that every run sees the same clock face. */
process.env.TZ = 'UTC';

/** Node loads core itself, see the preloaded file; tests and other rooms go through the runner. */
const nativeCore = {
  execArgv: ['--import', new URL('helpers/nativeCore.mjs', import.meta.url).href],
  server: { deps: { external: [/(?<!\/test)\/core\/[^?]*\.ts$/] } },
};

/** The same for workers that last one file only: core in one piece, quicker to load. */
const bundledCore = {
  ...nativeCore,
  execArgv: ['--import', new URL('helpers/bundledCore.mjs', import.meta.url).href],
};

/** Rooms with state outside core: a window's document, stores, replaced modules. */
const shellRooms = ['test/electron/**', 'test/renderer/**'];

/** One window at a time, and patience for a software rasteriser. */
const browserTests = { testTimeout: 120_000, hookTimeout: 120_000, fileParallelism: false };

export default defineConfig({
  test: {
    root: fileURLToPath(new URL('..', import.meta.url)),
    maxWorkers: 2,
    projects: [
      {
        test: {
          ...nativeCore,
          name: 'spec',
          include: ['test/**/*.test.{ts,tsx}'],
          exclude: ['test/e2e/**', 'test/**/long/**', ...shellRooms, 'node_modules/**'],
          testTimeout: 60_000,
          // core is pure: files may share a worker, and its compiled code, without meeting each other
          isolate: false,
        },
      },
      {
        test: {
          ...bundledCore,
          name: 'spec-shell',
          include: shellRooms.map((room) => `${room}/*.test.{ts,tsx}`),
          exclude: ['test/**/long/**', 'node_modules/**'],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'e2e',
          include: ['test/e2e/*.test.ts'],
          ...browserTests,
        },
      },
      // minutes of use, kept out of the gate, which has to stay short
      { test: { name: 'long', include: ['test/{e2e,electron,reference}/long/*.test.ts'], ...browserTests } },
      { test: { name: 'bench', include: [], benchmark: { include: ['test/bench/**/*.bench.ts'] } } },
    ],
  },
});
