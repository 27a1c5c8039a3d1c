/** The heavy libraries of hand-over modules under Node, each loaded when a module asks for it, once. */

import { createRequire } from 'node:module';
import type { HandoverTools } from '../../core/index.ts';
import { brepKernel } from '../services/brepKernel.ts';

/** Names in variables keep the compiler from wanting types that the packages lack; they stay outside the bundle. */
const packages = {
  solids: 'manifold-3d',
  pdf: 'pdfkit',
} as const;

const files = createRequire(import.meta.url);

interface SolidGlue {
  readonly default: (settings: { locateFile(): string }) => Promise<{ setup(): void }>;
}

async function solids(): Promise<unknown> {
  const glue = (await import(packages.solids)) as SolidGlue;
  const kit = await glue.default({ locateFile: () => files.resolve('manifold-3d/manifold.wasm') });
  kit.setup();
  return kit;
}

async function pdf(): Promise<unknown> {
  const { default: document } = (await import(packages.pdf)) as { readonly default: unknown };
  return document;
}

/** Loads once what is asked for again; a load that failed is tried anew. */
function once(load: () => Promise<unknown>): () => Promise<unknown> {
  let loading: Promise<unknown> | null = null;
  return () => {
    loading ??= load().catch((fault: unknown) => {
      loading = null;
      throw fault;
    });
    return loading;
  };
}

/** Tools for one run of a command. */
export const nodeTools = (): HandoverTools => ({
  solids: once(solids),
  brep: brepKernel,
  pdf: once(pdf),
});
