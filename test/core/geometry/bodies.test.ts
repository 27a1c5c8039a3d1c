import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meshArea } from '../../../core/checks/meshArea.ts';
import { barrelMesh } from '../../../core/geometry/barrelMesh.ts';
import { barrelVolume } from '../../../core/geometry/barrelWall.ts';
import { nozzleBodyVolume, nozzleMesh } from '../../../core/geometry/nozzleMesh.ts';
import { eulerNumber, meshIsClosed, meshVolume } from '../../helpers/meshFacts.ts';
import { designOf } from './designs.ts';
import { anyDesign, seed } from './generate.ts';
import { judge } from './manifold.ts';

const options = { aroundCount: 64, ringsPerTurn: 48 };
const degree = Math.PI / 180;
const cuts = [0, 30, 90, 118, 120, 125, 180, 200, 230, 239, 300, 350].map((angle) => angle * degree);

describe('barrel', () => {
  const { barrel } = designOf();

  it('weighs a tube less the slot: chord areas of both circles', () => {
    const segment = (R: number) => 6e-3 * Math.sqrt(R * R - 36e-6) + R * R * Math.asin(6e-3 / R);
    const slot = (segment(14e-3) - segment(7e-3)) * 20e-3;
    expect(barrelVolume(barrel, 0)).toBeCloseTo(Math.PI * (196e-6 - 49e-6) * 96e-3 - slot, 14);
  });

  it('loses exactly half to a half cut, which meets the slot in its middle', () => {
    expect(barrelVolume(barrel, Math.PI)).toBeCloseTo(barrelVolume(barrel, 0) / 2, 14);
  });

  it('loses its share to a small cut beside the slot', () => {
    const wedge = (Math.PI * (196e-6 - 49e-6) * 96e-3 * 30) / 360;
    expect(barrelVolume(barrel, 30 * degree)).toBeCloseTo(barrelVolume(barrel, 0) - wedge, 14);
  });

  it.each(cuts)('is meshed as a closed solid of the analytic volume, cut by %f rad', async (cut) => {
    const mesh = barrelMesh(designOf(), options, cut);
    expect(meshIsClosed(mesh)).toBe(true);
    expect(Math.abs(meshVolume(mesh) / barrelVolume(barrel, cut) - 1)).toBeLessThan(1e-5);
    const judged = await judge(mesh);
    expect(judged.status()).toBe('NoError');
    expect(judged.decompose()).toHaveLength(1);
  });

  it('is a ring with one hole uncut, a slab with one hole under a small cut, and a slab under a half cut', () => {
    const euler = (cut: number) => eulerNumber(barrelMesh(designOf(), options, cut));
    expect([euler(0), euler(30 * degree), euler(Math.PI)]).toEqual([-2, 0, 2]);
  });

  it('is open at +y for the feed and at -x for the view', () => {
    const inCut = (x: number, y: number) => Math.abs(Math.atan2(y, -x)) < 29 * degree;
    const atFeed = (x: number, y: number, z: number) => Math.abs(x) < 5.9e-3 && y > 0 && z > 4.1e-3 && z < 23.9e-3;
    for (const mesh of [barrelMesh(designOf(), options, 60 * degree), nozzleMesh(designOf(), options, 60 * degree)]) {
      for (let i = 0; i < mesh.positions.length; i += 3) {
        const [x, y, z] = Array.from(mesh.positions.subarray(i, i + 3)) as [number, number, number];
        expect(inCut(x, y) || atFeed(x, y, z)).toBe(false);
      }
    }
  });

  it('is meshed with openings at either end, too wide or empty', () => {
    const openings = [
      { start: 0, length: 10e-3, width: 8e-3 },
      { start: 90e-3, length: 30e-3, width: 8e-3 },
      { start: 10e-3, length: 20e-3, width: 40e-3 },
      { start: 200e-3, length: 20e-3, width: 5e-3 },
    ];
    for (const feedOpening of openings) {
      const design = designOf({ feedOpening });
      const mesh = barrelMesh(design, options, 0);
      expect(meshIsClosed(mesh)).toBe(true);
      expect(meshVolume(mesh) / barrelVolume(design.barrel, 0)).toBeCloseTo(1, 5);
    }
  });
});

/** A neck from `start`, `length` long and `wall` thick, mm, in a barrel 96 mm long, 14 by 28 mm, open from 4 to 24 mm. */
const necked = (start: number, length: number, wall: number, more: Parameters<typeof designOf>[0] = {}) =>
  designOf({
    ...more,
    heatBreak: { start: start * 1e-3, length: length * 1e-3, wall: wall * 1e-3, conductivity: 16 },
  });

describe('neck of the heat break', () => {
  const plain = barrelVolume(designOf().barrel, 0);

  it('takes pi L (R² - r²) off the barrel', () => {
    const { barrel } = necked(40, 14, 1.5);
    expect(plain - barrelVolume(barrel, 0)).toBeCloseTo(Math.PI * 14e-3 * (14e-3 ** 2 - 8.5e-3 ** 2), 14);
    expect(barrelVolume(barrel, Math.PI)).toBeCloseTo(barrelVolume(barrel, 0) / 2, 14);
  });

  it('takes nothing off where it is as thick as the wall', () => {
    expect(barrelVolume(necked(40, 14, 7).barrel, 0)).toBe(plain);
  });

  it('takes off only what the feed opening left, where both meet', () => {
    // the opening over 10 mm of the ring between neck and outer surface, chord areas of both circles
    const segment = (R: number) => 6e-3 * Math.sqrt(R * R - 36e-6) + R * R * Math.asin(6e-3 / R);
    const shared = (segment(14e-3) - segment(8.5e-3)) * 10e-3;
    const { barrel } = necked(14, 20, 1.5);
    const ring = Math.PI * 20e-3 * (14e-3 ** 2 - 8.5e-3 ** 2);
    expect(plain - barrelVolume(barrel, 0)).toBeCloseTo(ring - shared, 14);
  });

  it('reaches from shoulder to shoulder and no further', () => {
    const { positions, indices } = barrelMesh(necked(40, 14, 1.5), options, 0);
    const about = (radius: number) => {
      const found = new Set<string>();
      for (let t = 0; t < indices.length; t += 3) {
        const corners = Array.from(indices.subarray(t, t + 3), (id) => positions.subarray(3 * id, 3 * id + 3));
        const round = corners.every(([x = 0, y = 0]) => Math.abs(Math.hypot(x, y) - radius) < 5e-5);
        const zs = corners.map(([, , z = 0]) => Math.round(1e3 * z));
        const [low, high] = [Math.min(...zs), Math.max(...zs)];
        if (round && high > low) found.add(`${low} to ${high}`);
      }
      return [...found].sort();
    };
    expect(about(8.5e-3)).toEqual(['40 to 54']);
    expect(about(14e-3)).toEqual(['0 to 4', '24 to 40', '4 to 24', '54 to 96']);
    expect(about(7e-3)).toEqual(['0 to 4', '24 to 40', '4 to 24', '40 to 54', '54 to 96']);
  });

  it.each([
    ['in the middle', necked(40, 14, 1.5)],
    ['from the feed end', necked(0, 3, 1.5)],
    ['up to the far end', necked(80, 16, 0.1)],
    ['all along', necked(0, 96, 2)],
    ['over the end of the opening', necked(14, 20, 1.5)],
    ['within the opening', necked(8, 6, 0.4)],
    ['round the opening', necked(2, 30, 1)],
    ['from end to start of the opening alike', necked(4, 20, 1.5)],
    ['behind the opening at once', necked(24, 10, 1.5)],
    ['before the opening', necked(1, 3, 1.5)],
    ['in a slot wider than itself', necked(14, 20, 0.2, { feedOpening: { start: 4e-3, length: 20e-3, width: 24e-3 } })],
  ])('is meshed %s as one closed solid of the analytic volume', async (_, design) => {
    for (const cut of [0, 90 * degree, 118 * degree, Math.PI]) {
      const mesh = barrelMesh(design, options, cut);
      expect(meshIsClosed(mesh)).toBe(true);
      expect(Math.abs(meshVolume(mesh) / barrelVolume(design.barrel, cut) - 1)).toBeLessThan(1e-5);
      const judged = await judge(mesh);
      expect(judged.status()).toBe('NoError');
      expect(judged.decompose()).toHaveLength(1);
    }
  });
});

describe('nozzle body', () => {
  const stepped = designOf({
    segments: [
      { name: 'shoulder', length: 0, startDiameter: 14e-3, endDiameter: 8e-3 },
      { name: 'adapter', length: 6e-3, startDiameter: 8e-3, endDiameter: 8e-3 },
      { name: 'ledge', length: 4e-3, startDiameter: 10e-3, endDiameter: 10e-3 },
      { name: 'cone', length: 5e-3, startDiameter: 9e-3, endDiameter: 2e-3 },
      { name: 'flat', length: 0, startDiameter: 2e-3, endDiameter: 1e-3 },
      { name: 'land', length: 2e-3, startDiameter: 0.8e-3, endDiameter: 0.8e-3 },
    ],
  });

  it('weighs a cylinder less its bore', () => {
    const bore = Math.PI * (16e-6 * 6e-3 + 25e-6 * 4e-3 + ((20.25e-6 + 4.5e-6 + 1e-6) / 3) * 5e-3 + 0.16e-6 * 2e-3);
    expect(nozzleBodyVolume(stepped, 0)).toBeCloseTo(Math.PI * 100e-6 * 17e-3 - bore, 14);
  });

  it.each(cuts)('is meshed as a closed solid of the analytic volume, cut by %f rad', async (cut) => {
    for (const design of [designOf(), stepped]) {
      const mesh = nozzleMesh(design, options, cut);
      expect(meshIsClosed(mesh)).toBe(true);
      expect(Math.abs(meshVolume(mesh) / nozzleBodyVolume(design, cut) - 1)).toBeLessThan(1e-5);
      const judged = await judge(mesh);
      expect([judged.status(), judged.genus()]).toEqual(['NoError', cut === 0 ? 1 : 0]);
    }
  });

  it('has the surface of a tube where the bore is straight', () => {
    const segments = [{ name: 'land', length: 10e-3, startDiameter: 4e-3, endDiameter: 4e-3 }];
    const area = 2 * Math.PI * (12e-3 * 10e-3 + (100e-6 - 4e-6));
    const mesh = nozzleMesh(designOf({ segments }), { aroundCount: 256, ringsPerTurn: 48 }, 0);
    expect(meshArea(mesh) / area).toBeCloseTo(1, 3);
  });
});

describe('bodies of any makeable machine', () => {
  it('are closed solids of the analytic volume', () => {
    const cut = fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 6, noNaN: true }));
    fc.assert(
      fc.property(anyDesign, cut, fc.integer({ min: 24, max: 128 }), (design, cutAngle, aroundCount) => {
        const barrel = barrelMesh(design, { aroundCount, ringsPerTurn: 12 }, cutAngle);
        expect(meshIsClosed(barrel)).toBe(true);
        expect(Math.abs(meshVolume(barrel) / barrelVolume(design.barrel, cutAngle) - 1)).toBeLessThan(1e-3);
        expect(barrel.deviation).toBeLessThan(0.02 * design.barrel.outerDiameter);
        const nozzle = nozzleMesh(design, { aroundCount, ringsPerTurn: 12 }, cutAngle);
        expect(meshIsClosed(nozzle)).toBe(true);
        expect(Math.abs(meshVolume(nozzle) / nozzleBodyVolume(design, cutAngle) - 1)).toBeLessThan(1e-3);
      }),
      { seed, numRuns: 100 },
    );
  });
});
