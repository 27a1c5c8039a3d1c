/** The solid kernel in a worker: 23 MB of WASM, fetched the first time it is asked for. */

let kernel: Promise<unknown> | null = null;

async function load(): Promise<unknown> {
  const [{ default: start }, { default: address }] = await Promise.all([
    import('replicad-opencascadejs'),
    import('replicad-opencascadejs/wasm?url'),
  ]);
  return start({ locateFile: () => address, print: () => undefined });
}

/** The kernel, set up once a worker. Fails where the WASM cannot be fetched or compiled; a later call tries again. */
export function brepKernel(): Promise<unknown> {
  kernel ??= load().catch((fault: unknown) => {
    kernel = null;
    throw fault;
  });
  return kernel;
}
