import { describe, expect, it } from 'vitest';
import type { FlightedSection } from '../../../core/design/types.ts';
import { sectionShape, solidArea, wettedPerLength } from '../../../core/geometry/crossSection.ts';
import { flightProfileAt, halfWidthAt } from '../../../core/geometry/flightProfile.ts';
import { distanceAfterTurns, turnsAt } from '../../../core/geometry/profile.ts';
import { flighted } from './designs.ts';

/** Plain midpoint sum, independent of the library's quadrature. */
function midpoint(f: (x: number) => number, from: number, to: number, parts: number): number {
  let sum = 0;
  for (let i = 0; i < parts; i++) sum += f(from + ((to - from) * (i + 0.5)) / parts);
  return (sum * (to - from)) / parts;
}

const crest = 6.95e-3;
const shapes = [
  flighted(),
  flighted({ flankAngle: 0.4 }),
  flighted({ rootFillet: 0.8e-3 }),
  flighted({ flankAngle: 0.25, rootFillet: 1e-3, starts: 2 }),
];

describe('solid area of the transverse section', () => {
  it.each(shapes)('equals the sum over thin rings (%#)', (section) => {
    const profile = flightProfileAt(section, 0, crest);
    const ring = (r: number) => 2 * Math.PI * r * ((2 * halfWidthAt(profile, r)) / profile.pitch);
    const summed = Math.PI * 4.5e-3 ** 2 + midpoint(ring, 4.5e-3, crest, 200_000);
    expect(solidArea(sectionShape(section, 0, crest)) / summed).toBeCloseTo(1, 7);
  });

  it('grows by the spandrels: two of (1 - pi/4) rho² per flight, seen at the root', () => {
    const rho = 0.1e-3;
    const area = (section: FlightedSection) => solidArea(sectionShape(section, 0, crest));
    const grown = area(flighted({ rootFillet: rho })) - area(flighted());
    const spandrels = 2 * (1 - Math.PI / 4) * rho ** 2;
    expect(grown / (((spandrels * 2 * Math.PI) / 14e-3) * 4.5e-3)).toBeCloseTo(1, 1);
  });
});

describe('half width of the flight', () => {
  const profile = flightProfileAt(flighted({ flankAngle: 0.3, rootFillet: 0.9e-3 }), 0, crest);

  it('runs from base to crest without a jump', () => {
    expect(halfWidthAt(profile, profile.floorRadius)).toBeCloseTo(profile.halfBase, 12);
    expect(halfWidthAt(profile, crest)).toBeCloseTo(0.7e-3, 12);
    const joint = profile.floorRadius + profile.filletHeight;
    expect(halfWidthAt(profile, joint - 1e-12)).toBeCloseTo(halfWidthAt(profile, joint + 1e-12), 10);
  });

  it('meets the flank without a kink', () => {
    const joint = profile.floorRadius + profile.filletHeight;
    const slope = (halfWidthAt(profile, joint) - halfWidthAt(profile, joint - 1e-8)) / 1e-8;
    expect(slope).toBeCloseTo(-Math.tan(0.3), 3);
  });

  it('raises the floor where steep flanks meet above the root', () => {
    const met = flightProfileAt(flighted({ flankAngle: 1, leadStart: 5e-3, leadEnd: 5e-3 }), 0, crest);
    expect(met.floorRadius).toBeGreaterThan(4.5e-3);
    expect(met.halfBase).toBeLessThan(met.pitch / 2);
  });
});

describe('wetted area per length', () => {
  it.each(shapes)('matches a direct sum over the flank surface (%#)', (section) => {
    const profile = flightProfileAt(section, 0, crest);
    const k = (2 * Math.PI) / profile.lead;
    const n = 40_000;
    let flank = 0;
    for (let i = 0; i < n; i++) {
      // squared spacing resolves the vertical tangent of the fillet at the root
      const r0 = profile.floorRadius + (crest - profile.floorRadius) * (i / n) ** 2;
      const r1 = profile.floorRadius + (crest - profile.floorRadius) * ((i + 1) / n) ** 2;
      const dx = halfWidthAt(profile, r1) - halfWidthAt(profile, r0);
      flank += Math.hypot(r1 - r0, ((k * (r0 + r1)) / 2) * Math.hypot(dx, r1 - r0));
    }
    const floor = 2 * Math.PI * 4.5e-3 * (1 - (2 * profile.halfBase) / profile.pitch);
    const whole = 2 * Math.PI * 7e-3 + floor + 2 * profile.starts * flank;
    expect(wettedPerLength(sectionShape(section, 0, crest), 7e-3) / whole).toBeCloseTo(1, 6);
  });
});

describe('turns of a varying lead', () => {
  const section = flighted({ leadStart: 10e-3, leadEnd: 20e-3, length: 60e-3 });

  it('is (L / d) ln(lead end / lead start)', () => {
    expect(turnsAt(section, 60e-3)).toBeCloseTo(6 * Math.log(2), 12);
  });

  it('is the integral of 1 / lead', () => {
    const summed = midpoint((u) => 1 / (10e-3 + u / 6), 0, 33e-3, 100_000);
    expect(turnsAt(section, 33e-3)).toBeCloseTo(summed, 8);
  });

  it('inverts', () => {
    expect(turnsAt(section, distanceAfterTurns(section, 2.5))).toBeCloseTo(2.5, 12);
  });

  it('tends to the constant lead', () => {
    const nearly = flighted({ leadEnd: 14e-3 * (1 + 1e-10) });
    expect(turnsAt(nearly, 84e-3)).toBeCloseTo(6, 8);
  });
});
