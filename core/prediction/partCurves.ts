/** Residence of each part of the path alone. */

import type { TimeAtoms } from '../residence/atoms.ts';
import { joinResidence } from '../residence/combine.ts';
import type { PartCurve } from './dwellTypes.ts';

/** Curves of parts in series; the head comes last. */
export const partCurves = (atoms: readonly TimeAtoms[]): PartCurve[] =>
  atoms.map((own, i) => {
    const { time, cumulative } = joinResidence([own]);
    return { part: i === atoms.length - 1 ? 'tip and nozzle' : 'channel', time, cumulative };
  });
