/** The solid kernel under Node: its WASM lies beside the bundle, or where npm put it. */

import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

/** Folder below the bundle that the build copies WASM and licence to. */
const besideBundle = ['./solid-kernel/replicad_single.wasm', '../solid-kernel/replicad_single.wasm'];

/** Path of the WASM. Throws where it is nowhere. */
function wasmPath(): string {
  const beside = besideBundle
    .map((path) => fileURLToPath(new URL(path, import.meta.url)))
    .find((path) => existsSync(path));
  return beside ?? createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm');
}

let kernel: Promise<unknown> | null = null;

async function load(): Promise<unknown> {
  const { default: start } = await import('replicad-opencascadejs');
  return start({ locateFile: wasmPath, print: () => undefined });
}

/** The kernel, set up once a process, with its own messages kept off the terminal; a load that failed is tried anew. */
export function brepKernel(): Promise<unknown> {
  kernel ??= load().catch((fault: unknown) => {
    kernel = null;
    throw fault;
  });
  return kernel;
}
