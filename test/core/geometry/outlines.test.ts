import { describe, expect, it } from 'vitest';
import { sectionShape, solidArea } from '../../../core/geometry/crossSection.ts';
import { channelOutline, transverseOutline } from '../../../core/geometry/outlines.ts';
import type { PlaneOutline } from '../../../core/geometry/types.ts';
import { designOf, flighted, plain, tip } from './designs.ts';

/** Signed area of a closed polygon, m²: positive when counter-clockwise. */
function shoelace({ x, y }: PlaneOutline): number {
  let sum = 0;
  for (let i = 0; i < x.length; i++) {
    const next = (i + 1) % x.length;
    sum += (x[i] as number) * (y[next] as number) - (x[next] as number) * (y[i] as number);
  }
  return sum / 2;
}

const shaped = flighted({ flankAngle: 0.3, rootFillet: 0.7e-3, starts: 2 });

describe('axial outline', () => {
  const { outer, inner } = channelOutline(
    designOf({
      sections: [flighted(), plain({ rootDiameterStart: 11e-3 })],
      tip: tip('cone', Math.PI / 2, 3e-3, 2e-3),
    }),
  );

  it('follows bore, entry and land to the orifice', () => {
    const cone = 6.5e-3 / Math.tan(Math.PI / 6);
    const z = [0, 106e-3, 106e-3 + cone, 108e-3 + cone];
    for (const [i, value] of z.entries()) expect(outer.z[i]).toBeCloseTo(value, 12);
    expect(Array.from(outer.r)).toEqual([7e-3, 7e-3, 0.5e-3, 0.5e-3]);
  });

  it('follows roots, steps, tip and pin to the axis', () => {
    const expected = [
      [0, 4.5],
      [84, 4.5],
      [84, 5.5],
      [94, 4.5],
      [97, 1.5],
      [99, 1.5],
      [99, 0],
    ];
    expect(inner.z).toHaveLength(expected.length);
    expected.forEach(([z, r], i) => {
      expect(inner.z[i]).toBeCloseTo((z as number) * 1e-3, 12);
      expect(inner.r[i]).toBeCloseTo((r as number) * 1e-3, 12);
    });
  });

  it('shows shoulders and ledges as steps', () => {
    const segments = [
      { name: 'shoulder', length: 0, startDiameter: 14e-3, endDiameter: 6e-3 },
      { name: 'bore', length: 4e-3, startDiameter: 6e-3, endDiameter: 6e-3 },
      { name: 'ledge', length: 3e-3, startDiameter: 8e-3, endDiameter: 2e-3 },
    ];
    const stepped = channelOutline(designOf({ segments })).outer;
    expect(Array.from(stepped.r)).toEqual([7e-3, 7e-3, 3e-3, 3e-3, 4e-3, 1e-3]);
  });
});

describe('transverse outline', () => {
  it.each([0, 10e-3, 84e-3])('encloses the solid area, counter-clockwise, at %f m', (z) => {
    const area = shoelace(transverseOutline(designOf({ sections: [shaped] }), z));
    expect(area / solidArea(sectionShape(shaped, z, 6.95e-3))).toBeCloseTo(1, 3);
  });

  it('is mirrored for a left-hand screw and stays counter-clockwise', () => {
    const right = transverseOutline(designOf(), 5e-3);
    const left = transverseOutline(designOf({ hand: 'left' }), 5e-3);
    expect(shoelace(left)).toBeCloseTo(shoelace(right), 14);
    expect(Math.max(...left.y)).toBeCloseTo(-Math.min(...right.y), 14);
  });

  it('turns a right-hand flight counter-clockwise on the way up', () => {
    const { x, y } = transverseOutline(designOf(), 3.5e-3);
    const far = Array.from(x, (value, i) => ({ x: value, y: y[i] as number })).filter(
      (p) => Math.hypot(p.x, p.y) > 6.9e-3,
    );
    const middle = far.reduce((sum, p) => sum + Math.atan2(p.y, p.x), 0) / far.length;
    expect(middle).toBeCloseTo(Math.PI / 2, 10);
  });

  it('is a circle on shank, plain stretch and tip, and nothing beyond', () => {
    const design = designOf({ sections: [flighted(), plain()], tip: tip('cone', Math.PI / 2) });
    const radius = (z: number) => Math.sqrt(shoelace(transverseOutline(design, z)) / Math.PI);
    expect(radius(-5e-3)).toBeCloseTo(5e-3, 5);
    expect(radius(90e-3)).toBeCloseTo(4.5e-3, 5);
    expect(radius(96e-3)).toBeCloseTo(2.5e-3, 5);
    expect(transverseOutline(design, -30e-3).x).toHaveLength(0);
    expect(transverseOutline(design, 120e-3).x).toHaveLength(0);
  });
});
