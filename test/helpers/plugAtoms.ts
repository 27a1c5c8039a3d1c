import type { TimeAtoms } from '../../core/residence/atoms.ts';

/** Plug flow: everything takes the same time (s). */
export const plugAtoms = (time: number): TimeAtoms => ({
  time: Float64Array.of(time),
  share: Float64Array.of(1),
  shortest: time,
});
