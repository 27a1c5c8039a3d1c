/** The solid modeller for tests, loaded once a worker. */

import Module from 'manifold-3d';
import type { HandoverTools } from '../../../core/handover/types.ts';

let loading: Promise<unknown> | null = null;

async function load(): Promise<unknown> {
  const kit = await Module();
  kit.setup();
  return kit;
}

const none = () => Promise.reject(new Error('not wanted in this test'));

/** Tools with the solid modeller alone. */
export const solidTools: HandoverTools = {
  solids: () => {
    loading ??= load();
    return loading;
  },
  brep: none,
  pdf: none,
};
