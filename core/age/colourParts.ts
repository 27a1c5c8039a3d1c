/** Parts of the path as the colour sees them, checked. */

import type { AgedPart } from './extentDistribution.ts';
import { durationOf, type HeatSegment } from './lawRun.ts';

function heatProblem(passage: readonly HeatSegment[]): string | null {
  const usable = passage.every((s) => s.duration >= 0 && s.temperature > 0 && Number.isFinite(s.temperature));
  const total = durationOf(passage);
  return usable && total > 0 && Number.isFinite(total) ? null : 'the melt temperature is not known';
}

/** Why parts cannot be used, or null. */
export function partsProblem(parts: readonly AgedPart[]): string | null {
  if (parts.length === 0) return 'no residence times are known';
  for (const { atoms, heat } of parts) {
    const fine = atoms.time.length > 0 && atoms.time.every((time) => time >= 0 && Number.isFinite(time));
    if (!fine) return 'no residence times are known';
    const problem = heatProblem(heat);
    if (problem) return problem;
  }
  return null;
}

/** Parts with all times multiplied: the same machine at another flow, its melt volumes and temperatures kept. */
export const scaledParts = (parts: readonly AgedPart[], factor: number): AgedPart[] =>
  parts.map(({ part, atoms, heat }) => ({
    part,
    atoms: { time: atoms.time.map((time) => time * factor), share: atoms.share, shortest: atoms.shortest * factor },
    heat: heat.map(({ duration, temperature }) => ({ duration: duration * factor, temperature })),
  }));
