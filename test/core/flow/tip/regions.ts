/** Regions and laws the tip tests share. */

import { contractionProfile, type TipRegion, type TipShape, tipLength } from '../../../../core/flow/tip/region.ts';
import { solveTipFully, type TipFlow, type TipOptions, type TipSolution } from '../../../../core/flow/tip/solveTip.ts';
import type { ViscosityLaw } from '../../../../core/material/viscosityLaw.ts';
import { issueText } from '../../../../core/result.ts';

export const DEG = Math.PI / 180;

export const newtonian: ViscosityLaw = { model: 'newtonian', viscosity: 1000 };

export const powerLaw = (index: number): ViscosityLaw => ({
  model: 'powerLaw',
  consistency: 1e4,
  index,
  regularisingRate: 1e-6,
});

/** Plain pipe. */
export const pipe = (radius: number, length: number): TipRegion => ({
  screwRadius: 0,
  annulusLength: 0,
  tip: { kind: 'flat' },
  outer: [
    { z: 0, r: radius },
    { z: length, r: radius },
  ],
});

/** A 14 mm bore with a 9 mm screw end in front of a contraction. */
export function head(tip: TipShape, includedAngle: number, gap = 3e-3, extra: Partial<TipRegion> = {}): TipRegion {
  const screw = { screwRadius: 4.5e-3, tip, ...extra };
  const annulusLength = 4e-3;
  const outer = contractionProfile({
    ...{ barrelRadius: 7e-3, straightLength: annulusLength + tipLength(screw) + gap, includedAngle },
    ...{ orificeRadius: 0.4e-3, landLength: 1e-3 },
  });
  return { ...screw, annulusLength, outer };
}

/** Solves and fails the test with words if the region is refused. */
export function solved(region: TipRegion, law: ViscosityLaw, flow: TipFlow, options?: TipOptions): TipSolution {
  const result = solveTipFully(region, law, flow, options);
  if (!result.ok) throw new Error(result.issues.map(issueText).join('\n'));
  return result.value;
}
