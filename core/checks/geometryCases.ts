/** Screws of round numbers for the checks of geometry and hand-over. Lengths m. */

import type { Design, FlightedSection } from '../design/types.ts';
import { screwMesh } from '../geometry/screwMesh.ts';
import { buildStations } from '../geometry/stations.ts';
import { measureGeometry } from '../geometry/summary.ts';
import type { SolidMesh } from '../geometry/types.ts';
import { madeDesign } from './madeMachine.ts';

/** Radius of the crest of these screws, m. */
export const crest = 8e-3;

/** A flight of 16 mm lead on a root of 10 mm: land 1.6 mm, flank 10°, fillet 1 mm, 80 mm long. */
export const flight: FlightedSection = {
  kind: 'flighted',
  length: 0.08,
  leadStart: 0.016,
  leadEnd: 0.016,
  rootDiameterStart: 0.01,
  rootDiameterEnd: 0.01,
  starts: 1,
  flightWidth: 1.6e-3,
  flankAngle: Math.PI / 18,
  rootFillet: 1e-3,
};

/** Two flights of 20 mm lead on a root of 8.8 mm: land 1.5 mm, flank 5°, fillet 0.8 mm. */
export const twoStart: FlightedSection = {
  ...flight,
  leadStart: 0.02,
  leadEnd: 0.02,
  rootDiameterStart: 8.8e-3,
  rootDiameterEnd: 8.8e-3,
  starts: 2,
  flightWidth: 1.5e-3,
  flankAngle: Math.PI / 36,
  rootFillet: 0.8e-3,
};

/** A design of such sections with a flat end, without shank and clearance. */
export function screwOf(sections: readonly FlightedSection[]): Design {
  const design = madeDesign();
  const tip = { kind: 'flat', includedAngle: Math.PI, pinDiameter: 0, pinLength: 0 } as const;
  const screw = { ...design.screw, sections, tip, radialClearance: 0, shankLength: 0 };
  return { ...design, screw, barrel: { ...design.barrel, boreDiameter: 2 * crest } };
}

/** Compression of a screw of two such sections, the second with a root of 13 mm. */
export function compression(): number {
  const root = { rootDiameterStart: 0.013, rootDiameterEnd: 0.013 };
  const design = screwOf([flight, { ...flight, ...root }]);
  return measureGeometry(design, buildStations(design, 24)).compressionRatio;
}

/** Volume, m³, and way along the channel, m, of the first section alone. */
export function channelOf(): { readonly volume: number; readonly length: number } {
  const { freeVolume, helicalLength, count } = buildStations(screwOf([flight]), 16);
  return { volume: freeVolume[count - 1] ?? Number.NaN, length: helicalLength[count - 1] ?? Number.NaN };
}

/** The first section alone as a mesh. */
export const flightMesh = (): SolidMesh => screwMesh(screwOf([flight]), { aroundCount: 96, ringsPerTurn: 96 });
