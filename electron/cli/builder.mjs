/** Builds what is missing or older than its sources, and leaves the rest alone. */

import { copyFileSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { collectFacts } from './bundleFacts.mjs';
import { collectPackages, writeNotices } from './licences.mjs';
import { compareStamp, stampFor } from './staleness.mjs';

/** The project's folder. */
export const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
/** Everything built lies below this folder. */
export const dist = join(root, 'dist');

/** Loaded from their packages when a hand-over file needs them: each carries files beside its code. */
const heavy = ['manifold-3d', 'replicad-opencascadejs', 'pdfkit'];

/** File beside a bundle with the licences of the packages in it. */
const notices = 'third-party.txt';

/** Core's modules only say what they hold, see renderer/vite.config.ts. */
const plain = (part) => part.replace(/[.*+?^${}()|[\]]/g, '\\$&');
const core = new RegExp(`^${join(root, 'core').split(/[\\/]/).map(plain).join('[\\\\/]')}[\\\\/]`);
const treeshake = { moduleSideEffects: [{ test: core, sideEffects: false }] };

/** What can be built: the files it depends on, and how it is made into a folder. */
const targets = {
  cli: {
    sources: ['core', 'electron', 'package-lock.json'],
    make: (out) => {
      laySolidKernel(out);
      return bundle(out, { ssr: { noExternal: true } }, 'es', 'mjs', {
        main: 'electron/cli/main.ts',
        start: 'electron/cli/start.ts',
        predictWorker: 'electron/cli/predictWorker.ts',
        sweepWorker: 'electron/cli/sweepWorker.ts',
      });
    },
  },
  electron: {
    sources: ['core', 'electron', 'package-lock.json'],
    // One bundle each: the sandboxed preload script may load nothing but itself.
    make: async (out) => {
      const packages = new Set();
      const settings = { ssr: { noExternal: true, external: ['electron'] }, plugins: [collectPackages(packages)] };
      await bundle(out, settings, 'cjs', 'cjs', { main: 'electron/main.ts' });
      await bundle(out, settings, 'cjs', 'cjs', { preload: 'electron/preload.ts' });
      writeNotices(packages, join(out, notices));
    },
  },
  renderer: {
    sources: [
      'core',
      'renderer',
      'assets/handbook',
      'assets/public',
      'electron/contract.ts',
      'electron/cli/builder.mjs',
      'electron/cli/bundleFacts.mjs',
      'electron/cli/licences.mjs',
      'package-lock.json',
    ],
    make: async (out) => {
      const { build } = await import('vite');
      const packages = new Set();
      const facts = {};
      const plugins = () => [collectPackages(packages), collectFacts(facts, root)];
      await build({
        configFile: join(root, 'renderer/vite.config.ts'),
        logLevel: 'warn',
        plugins: plugins(),
        worker: { plugins },
        build: { outDir: out, manifest: true },
      });
      // hidden, so that neither host serves it, and on no list of what is packed
      writeFileSync(join(out, '.vite/facts.json'), JSON.stringify(facts, null, 1));
      writeNotices(packages, join(out, notices));
    },
  },
};

/** A package written for CommonJS names its temporary files after its own; a module has no such name of itself. */
const moduleNames = 'const __filename = import.meta.filename;';

/** Lays the solid kernel's WASM, which is a file of its own by its licence (LGPL), beside the bundle with that licence. */
function laySolidKernel(out) {
  const from = join(root, 'node_modules/replicad-opencascadejs');
  const folder = join(out, 'solid-kernel');
  mkdirSync(folder, { recursive: true });
  copyFileSync(join(from, 'dist/replicad_single.wasm'), join(folder, 'replicad_single.wasm'));
  copyFileSync(join(from, 'LICENSE'), join(folder, 'LICENSE'));
}

async function bundle(outDir, settings, format, extension, input) {
  const { build } = await import('vite');
  await build({
    ...settings,
    configFile: false,
    root,
    logLevel: 'warn',
    publicDir: false,
    build: {
      outDir,
      emptyOutDir: false,
      ssr: true,
      target: 'node20',
      minify: false,
      rolldownOptions: {
        input,
        external: ['electron', ...heavy],
        treeshake,
        output: {
          format,
          banner: format === 'es' ? moduleNames : '',
          entryFileNames: `[name].${extension}`,
          chunkFileNames: `chunks/[name]-[hash].${extension}`,
        },
      },
    },
  });
}

const stampPath = (name) => join(dist, name, '.stamp');

function stampOf(name) {
  try {
    return readFileSync(stampPath(name), 'utf8');
  } catch {
    return '';
  }
}

/** Whether a target needs no building; `looks` as for compareStamp. */
function isFresh(name, looks) {
  const state = compareStamp(root, targets[name].sources, stampOf(name), looks);
  if (state !== 'touched') return state === 'fresh';
  try {
    writeFileSync(stampPath(name), stampFor(root, targets[name].sources));
  } catch {
    // another process is swapping the folder; the next look takes longer, nothing else
  }
  return true;
}

/** Builds those of the named targets that are missing or stale; `say` hears one line for each. */
export async function ensureBuilt(names, say = () => undefined) {
  const looks = new Map();
  for (const name of names) {
    if (isFresh(name, looks)) continue;
    await withLock(async () => {
      // Another process may have built it while this one waited.
      if (isFresh(name)) return;
      say(`Building ${name} ...`);
      await rebuild(name, stampFor(root, targets[name].sources));
    });
  }
}

/** Builds as for use, whoever asks: inside a test runner the bundler would take the widgets' code for developers. */
async function forUse(make) {
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await make();
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
  }
}

/** Builds beside the old folder and swaps at the end, so that a failed build leaves the old one. */
async function rebuild(name, stamp) {
  const beside = join(dist, `.${name}-new`);
  rmSync(beside, { recursive: true, force: true });
  mkdirSync(beside, { recursive: true });
  await forUse(() => targets[name].make(beside));
  writeFileSync(join(beside, '.stamp'), stamp);
  rmSync(join(dist, name), { recursive: true, force: true });
  renameSync(beside, join(dist, name));
}

const lockPath = join(dist, '.building');
/** A lock older than this was left by a build that was killed, ms. */
const lockLife = 180_000;

async function withLock(work) {
  mkdirSync(dist, { recursive: true });
  while (!tryLock()) await new Promise((wake) => setTimeout(wake, 100));
  try {
    await work();
  } finally {
    rmSync(lockPath, { recursive: true, force: true });
  }
}

function tryLock() {
  try {
    mkdirSync(lockPath);
    return true;
  } catch {
    const facts = statSync(lockPath, { throwIfNoEntry: false });
    if (facts && Date.now() - facts.mtimeMs > lockLife) rmSync(lockPath, { recursive: true, force: true });
    return false;
  }
}
