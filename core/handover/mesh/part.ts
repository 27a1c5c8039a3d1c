/** The parts of a design as closed meshes of a wanted fineness, with the volumes they must have. */

import type { Design } from '../../design/types.ts';
import { barrelMesh } from '../../geometry/barrelMesh.ts';
import { barrelVolume } from '../../geometry/barrelWall.ts';
import { nozzleBodyVolume, nozzleMesh } from '../../geometry/nozzleMesh.ts';
import { flightRadius } from '../../geometry/profile.ts';
import { screwMesh } from '../../geometry/screwMesh.ts';
import { screwVolume, shankVolume } from '../../geometry/summary.ts';
import type { MeasuredMesh, MeshOptions, SolidMesh } from '../../geometry/types.ts';
import { meshDeviation } from './deviation.ts';

/** What can be handed over as a body. */
export type PartId = 'screw' | 'barrel' | 'nozzle';

/** All parts. */
export const partIds: readonly PartId[] = ['screw', 'barrel', 'nozzle'];

/** Volume by closed formulas and Gauss quadrature of the exact shape, m³. */
export function exactVolume(design: Design, part: PartId): number {
  if (part === 'screw') return screwVolume(design) + shankVolume(design);
  return part === 'barrel' ? barrelVolume(design.barrel, 0) : nozzleBodyVolume(design, 0);
}

/** Largest radius of a part, m. */
export function largestRadius(design: Design, part: PartId): number {
  if (part === 'screw') return Math.max(flightRadius(design), design.screw.shankDiameter / 2);
  return (part === 'barrel' ? design.barrel.outerDiameter : design.nozzle.outerDiameter) / 2;
}

function meshOf(design: Design, part: PartId, options: MeshOptions): MeasuredMesh {
  if (part === 'screw') return screwMesh(design, options);
  return part === 'barrel' ? barrelMesh(design, options, 0) : nozzleMesh(design, options, 0);
}

/** Fewest and most chords of a turn, and corrections of their number. */
const fewest = 24;
const most = 1440;
const rounds = 8;

/** A mesh and how far it was found to lie from the exact shape, m. */
export interface FoundMesh {
  readonly mesh: SolidMesh;
  readonly deviation: number;
}

/**
 * A mesh whose deviation, sampled on the mesh itself (see `meshDeviation`), is within `tolerance` (m), and not much
 * finer than that asks for.
 * @returns the mesh; its `deviation` stays above the tolerance where 1440 chords of a turn do not reach it
 */
export function meshWithin(design: Design, part: PartId, tolerance: number): FoundMesh {
  const share = Math.min(tolerance / largestRadius(design, part), 0.1);
  let count = Math.ceil(Math.PI / Math.acos(1 - share));
  for (let round = 1; ; round++) {
    const chords = Math.min(most, Math.max(fewest, count));
    const mesh = meshOf(design, part, { aroundCount: chords, ringsPerTurn: chords });
    // the mesh's own bound is at hand at once; only what it lets through is sampled
    const deviation = mesh.deviation > tolerance ? mesh.deviation : meshDeviation(design, part, mesh);
    if (chords === most || round === rounds) return { mesh, deviation: Math.max(deviation, mesh.deviation) };
    if (deviation <= tolerance) return { mesh, deviation };
    // sags of chords and of skew facets shrink with the square of their number
    count = Math.ceil(chords * Math.sqrt(deviation / tolerance) * 1.01) + 1;
  }
}
