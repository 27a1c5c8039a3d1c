import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { sectionShape, solidArea } from '../../../core/geometry/crossSection.ts';
import { screwMesh } from '../../../core/geometry/screwMesh.ts';
import { screwVolume, shankVolume } from '../../../core/geometry/summary.ts';
import { eulerNumber, meshIsClosed, meshVolume } from '../../helpers/meshFacts.ts';
import { designOf, flighted, plain, tip } from './designs.ts';
import { anyDesign, anyOptions, seed } from './generate.ts';
import { judge } from './manifold.ts';

const options = { aroundCount: 64, ringsPerTurn: 48 };
const solid = (design: Design) => screwVolume(design) + shankVolume(design);

const screws: Record<string, Design> = {
  'constant, square': designOf(),
  'without a shank': designOf({ shankLength: 0 }),
  'V flanks, fillets, cone': designOf({
    sections: [flighted({ flankAngle: 0.3, rootFillet: 0.6e-3 })],
    tip: tip('cone', 1),
  }),
  'plain stretch between one start and two': designOf({
    sections: [flighted(), plain(), flighted({ starts: 2 })],
    tip: tip('hemisphere'),
  }),
  'tapered, then another lead; hemisphere with pin': designOf({
    sections: [
      flighted({ length: 28e-3 }),
      flighted({ length: 28e-3, rootDiameterEnd: 11e-3 }),
      flighted({ length: 14e-3, rootDiameterStart: 11e-3, rootDiameterEnd: 11e-3, leadStart: 20e-3, leadEnd: 12e-3 }),
    ],
    tip: tip('hemisphere', 0, 3e-3, 4e-3),
  }),
  'stepped roots, changing flanks, flat with pin': designOf({
    sections: [
      flighted({ length: 30e-3 }),
      flighted({ length: 14.3e-3, rootDiameterStart: 11e-3, rootDiameterEnd: 11e-3, flankAngle: 0.2 }),
      plain({ rootDiameterStart: 13e-3 }),
      flighted({ length: 20e-3, rootFillet: 1e-3 }),
    ],
    tip: tip('flat', Math.PI, 3e-3, 4e-3),
  }),
  'steps of opposite direction at one angle': designOf({
    sections: [flighted({ flightWidth: 3.5e-3, starts: 2 }), flighted({ flightWidth: 7e-3, starts: 1 })],
  }),
  'plain alone': designOf({ sections: [plain()], tip: tip('cone', 1.2, 2e-3, 0) }),
};

describe.each(Object.entries(screws))('mesh of a screw: %s', (_, design) => {
  const mesh = screwMesh(design, options);

  it('is closed, one ball-like shell', () => {
    expect(meshIsClosed(mesh)).toBe(true);
    expect(eulerNumber(mesh)).toBe(2);
  });

  it('holds the analytic volume', () => {
    expect(Math.abs(meshVolume(mesh) / solid(design) - 1)).toBeLessThan(1e-5);
  });

  it('is accepted by the geometry kernel', async () => {
    const judged = await judge(mesh);
    expect(judged.status()).toBe('NoError');
    expect(judged.genus()).toBe(0);
    expect(judged.decompose()).toHaveLength(1);
    expect(judged.volume() / solid(design)).toBeCloseTo(1, 5);
  });

  it('loses little enough by chords that widening stays within 0.3 %', () => {
    expect(mesh.deviation).toBeLessThan(0.003 * 6.95e-3);
  });
});

describe('mesh of a screw', () => {
  it('has the analytic section wherever it is sliced', async () => {
    const section = flighted({
      flankAngle: 0.3,
      rootFillet: 0.6e-3,
      rootDiameterEnd: 11e-3,
      leadEnd: 11e-3,
      starts: 2,
    });
    const judged = await judge(screwMesh(designOf({ sections: [section] }), { aroundCount: 96, ringsPerTurn: 96 }));
    for (const z of [3.1e-3, 20.77e-3, 41.3e-3, 60e-3, 83.2e-3]) {
      const slice = judged.slice(z);
      expect(slice.numContour()).toBe(1);
      expect(Math.abs(slice.area() / solidArea(sectionShape(section, z, 6.95e-3)) - 1)).toBeLessThan(2e-3);
    }
  });

  it('turns the flight by 2 pi times the integral of 1 / lead', async () => {
    const section = flighted({ leadStart: 10e-3, leadEnd: 20e-3, length: 60e-3 });
    const judged = await judge(screwMesh(designOf({ sections: [section] }), options));
    const z = 33e-3;
    const points = judged.slice(z).toPolygons()[0] as [number, number][];
    const land = points.filter(([x, y]) => Math.hypot(x, y) > 6.5e-3);
    const [x, y] = land.reduce(([a, b], [c, d]) => [a + c, b + d], [0, 0]);
    const expected = 2 * Math.PI * 6 * Math.log(1 + z / 60e-3);
    const difference = Math.atan2(y, x) - expected;
    expect(Math.abs(Math.atan2(Math.sin(difference), Math.cos(difference)))).toBeLessThan(0.03);
  });

  it('mirrors a left-hand screw in y', () => {
    const right = screwMesh(designOf(), options);
    const left = screwMesh(designOf({ hand: 'left' }), options);
    expect(left.positions).toEqual(right.positions.map((value, i) => (i % 3 === 1 ? -value : value)));
    expect(meshVolume(left)).toBeCloseTo(meshVolume(right), 14);
    expect(meshIsClosed(left)).toBe(true);
  });

  it('stays between root and crest up to the stated deviation, at corners and at the middle of edges', () => {
    const mesh = screwMesh(designOf(), options);
    const at = (i: number) => Array.from(mesh.positions.subarray(3 * i, 3 * i + 3)) as [number, number, number];
    for (let t = 0; t < mesh.indices.length; t++) {
      const a = at(mesh.indices[t] as number);
      const b = at(mesh.indices[t % 3 === 2 ? t - 2 : t + 1] as number);
      if (Math.min(a[2], b[2]) < 1e-4 || Math.max(a[2], b[2]) > 83.9e-3) continue;
      const middle = Math.hypot(a[0] + b[0], a[1] + b[1]) / 2;
      const widest = Math.max(Math.hypot(a[0], a[1]), middle);
      const least = Math.min(Math.hypot(a[0], a[1]), middle);
      if (widest > 6.95e-3 + 1.01 * mesh.deviation || least < 4.5e-3 - 1.01 * mesh.deviation) {
        expect.fail(`radius ${least} to ${widest} at z ${a[2]}`);
      }
    }
    expect(mesh.deviation).toBeGreaterThan(0);
  });

  it('keeps skew flank facets within the stated deviation of the helicoid', () => {
    const mesh = screwMesh(designOf(), options);
    const corner = (i: number) => Array.from(mesh.positions.subarray(3 * i, 3 * i + 3)) as [number, number, number];
    let worst = 0;
    for (let t = 0; t < mesh.indices.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => corner(mesh.indices[t + k] as number)) as [number, number, number][];
      const points = [a, b, c] as [number, number, number][];
      const radii = points.map(([x, y]) => Math.hypot(x, y));
      const isFlat = Math.max(...radii) - Math.min(...radii) < 1e-4;
      if (isFlat || points.some(([, , z]) => z < 1e-4 || z > 83.9e-3)) continue;
      // middle of each side, against the two helicoids half a land either side of the flight's centre
      points.forEach((p, k) => {
        const q = points[(k + 1) % 3] as [number, number, number];
        const [x, y, z] = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2];
        const axial = (z - (Math.atan2(y, x) * 14e-3) / (2 * Math.PI)) / 14e-3;
        const off = Math.abs(Math.abs(axial - Math.round(axial)) * 14e-3 - 0.7e-3);
        worst = Math.max(worst, off * Math.cos(Math.atan(14e-3 / (2 * Math.PI * Math.hypot(x, y)))));
      });
    }
    expect(worst).toBeLessThan(1.05 * mesh.deviation);
    expect(worst).toBeGreaterThan(0.3 * mesh.deviation);
  });

  it('deviates less the finer it is, with the square of the spacing', () => {
    const coarse = screwMesh(designOf(), { aroundCount: 48, ringsPerTurn: 48 }).deviation;
    const fine = screwMesh(designOf(), { aroundCount: 96, ringsPerTurn: 96 }).deviation;
    expect(coarse / fine).toBeGreaterThan(3.3);
    expect(coarse / fine).toBeLessThan(4.7);
  });

  it('is a closed solid of the analytic volume for any makeable screw', async () => {
    await fc.assert(
      fc.asyncProperty(anyDesign, anyOptions, async (design, anyOption) => {
        const mesh = screwMesh(design, anyOption);
        expect(meshIsClosed(mesh)).toBe(true);
        expect(Math.abs(meshVolume(mesh) / solid(design) - 1)).toBeLessThan(1e-3);
        const judged = await judge(mesh);
        expect([judged.status(), judged.genus()]).toEqual(['NoError', 0]);
        judged.delete();
      }),
      { seed, numRuns: 60 },
    );
  });
});
