/** Jets of tensor-product splines in the physical coordinates of half a channel. */

import { type SplineBasis, splineJets } from '../../math/splineBasis.ts';
import { halfWidthAt, type SectionShape } from './sectionShape.ts';
import type { Jet } from './strainRows.ts';

/** Local functions of one cell at one point, with the derivatives of the mapping there. */
export interface CellJets {
  /** Values and derivatives along the mapped coordinate s, from {@link splineJets}. */
  readonly across: Float64Array;
  /** The same along y. */
  readonly up: Float64Array;
  /** Half-width at the point. */
  readonly halfWidth: number;
  /** ds/dy, d2s/dy2 and d/ds(ds/dy) at fixed x. */
  readonly sy: number;
  readonly syy: number;
  readonly sys: number;
}

/**
 * Prepares the jets of a cell at mapped place s (0 flank, 1 centre) and height y. With x = (s - 1) b(y) and b linear,
 * s_y = (1 - s) b'/b, d(s_y)/ds = -b'/b, s_yy = -2 (1 - s) (b'/b)^2.
 */
export function cellJets(
  shape: SectionShape,
  across: SplineBasis,
  up: SplineBasis,
  cell: readonly [number, number],
  s: number,
  y: number,
): CellJets {
  const halfWidth = halfWidthAt(shape, y);
  const rate = shape.flankSlope / halfWidth;
  return {
    across: splineJets(across, cell[0], s),
    up: splineJets(up, cell[1], y),
    halfWidth,
    sy: (1 - s) * rate,
    syy: -2 * (1 - s) * rate * rate,
    sys: -rate,
  };
}

/** Physical jet of local function (i across, j up) of a cell of degree p, into out. */
export function functionJet(jets: CellJets, degree: number, i: number, j: number, out: Jet): void {
  const n = degree + 1;
  const { across, up, halfWidth, sy, syy, sys } = jets;
  const a0 = across[i];
  const a1 = across[n + i];
  const a2 = across[2 * n + i];
  const u0 = up[j];
  const u1 = up[n + j];
  const fs = a1 * u0;
  const fss = a2 * u0;
  const fsy = a1 * u1;
  out.f = a0 * u0;
  out.fx = fs / halfWidth;
  out.fy = a0 * u1 + fs * sy;
  out.fxx = fss / (halfWidth * halfWidth);
  out.fxy = (fsy + fss * sy + fs * sys) / halfWidth;
  out.fyy = a0 * up[2 * n + j] + 2 * fsy * sy + fss * sy * sy + fs * syy;
}
