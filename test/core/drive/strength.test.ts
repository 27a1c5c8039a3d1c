import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { mechanicalState } from '../../../core/drive/mechanics.ts';
import { fullTorque } from '../../../core/drive/motor.ts';
import { shoulderFactor } from '../../../core/drive/notch.ts';
import { rootPlaces } from '../../../core/drive/rootStress.ts';
import { equivalentStress, thrustOf, torsionStress } from '../../../core/drive/strength.ts';
import { unknownParts } from '../../../core/drive/torqueParts.ts';
import type { Revision } from '../../../core/project/schema.ts';
import { demoC, edgeProjects } from '../../helpers/edgeProjects.ts';
import { nonFinite } from '../../helpers/finite.ts';
import { expectOk } from '../../helpers/projects.ts';

const seeded = { seed: 20261125, numRuns: 200 };
const loads = { torque: 3, pressure: 5e6, mostPressure: 20e6, screwSpeed: 0.2 };
const designOf = (change: (revision: Revision) => void) => expectOk(validateDesign(demoC(change), 'C'));
const plain = designOf(() => {});

describe('step factor', () => {
  test('is 1 to 2.2, falls with the fillet and grows with the step, without jumps', () => {
    const ratio = fc.double({ min: 0.001, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 0.98, noNaN: true }), ratio, ratio, (thin, a, b) => {
        const [small, large] = [Math.min(a, b), Math.max(a, b)];
        const step = (1 - thin) / 2;
        const sharp = shoulderFactor(1, thin, small * step);
        const round = shoulderFactor(1, thin, large * step);
        expect(sharp).toBeLessThanOrEqual(2.2);
        expect(round).toBeGreaterThanOrEqual(1);
        expect(round).toBeLessThanOrEqual(sharp + 1e-9);
        const beside = shoulderFactor(1, thin, small * step * 1.0001);
        expect(Math.abs(beside - sharp)).toBeLessThan(1e-3);
      }),
      seeded,
    );
  });
});

describe('places of the screw', () => {
  test('shank, its step, and each section; no step where nothing changes', () => {
    expect(rootPlaces(plain.screw).map(({ kind }) => kind)).toEqual(['shank', 'shankShoulder', 'root', 'root', 'root']);
    const even = designOf((r) => Object.assign(r.screw.shank, { diameterMm: 6.4 }));
    expect(rootPlaces(even.screw).map(({ kind }) => kind)).toEqual(['shank', 'root', 'root', 'root']);
  });

  test('a step between sections counts as sharp; a shank’s fillet counts as given', () => {
    const stepped = designOf((r) => {
      Object.assign(r.screw.sections[0] as object, { rootDiameterEndMm: 5.4 });
      Object.assign(r.screw.shank, { filletMm: 1.8 });
    });
    const places = rootPlaces(stepped.screw);
    expect(places.find(({ kind }) => kind === 'shoulder')).toMatchObject({ factor: 2.2, fillet: null });
    const shank = places.find(({ kind }) => kind === 'shankShoulder');
    expect(shank?.factor).toBeGreaterThan(1);
    expect(shank?.factor).toBeLessThan(1.4);
  });

  test('without a shank there is no shank to break', () => {
    const bare = { ...plain.screw, shankLength: 0 };
    expect(rootPlaces(bare).map(({ kind }) => kind)).toEqual(['root', 'root', 'root']);
  });
});

describe('mechanical state', () => {
  test('the weakest place has the least margin, under the motor’s full torque and the blocked thrust', () => {
    const state = mechanicalState(plain, loads);
    const margins = state.roots.map(({ margin }) => margin ?? Number.POSITIVE_INFINITY);
    expect(state.worstRoot.margin).toBe(Math.min(...margins));
    const { worstRoot } = state;
    const shear = worstRoot.factor * torsionStress(fullTorque(plain.drive), worstRoot.diameter);
    expect(worstRoot.full).toBeCloseTo(shear, 3);
    const axial = thrustOf(20e6, plain.barrel.boreDiameter) / ((Math.PI / 4) * worstRoot.diameter ** 2);
    expect(worstRoot.margin).toBeCloseTo(plain.screw.steel.yieldStress / equivalentStress(shear, axial), 9);
  });

  test('stress and twist grow with torque in proportion, walls with pressure', () => {
    const once = mechanicalState(plain, loads);
    const twice = mechanicalState(plain, { ...loads, torque: 6, mostPressure: 40e6 });
    expect(twice.twist / once.twist).toBeCloseTo(2, 9);
    expect(twice.worstRoot.running / once.worstRoot.running).toBeCloseTo(2, 9);
    twice.walls.forEach((wall, i) => {
      expect(wall.equivalent / once.walls[i].equivalent).toBeCloseTo(2, 9);
    });
    expect(twice.worstRoot.margin ?? 0).toBeLessThan(once.worstRoot.margin ?? 0);
  });

  test('a thin heat break is the weakest wall', () => {
    const state = mechanicalState(
      designOf((r) => Object.assign(r.barrel.heatBreak as object, { wallMm: 0.5 })),
      loads,
    );
    const worst = state.walls.reduce((a, b) => (b.equivalent > a.equivalent ? b : a));
    expect(worst.part).toBe('heat break');
  });

  test('no load: no margin is told, nothing is infinite', () => {
    const idle = { ...plain, drive: { ...plain.drive, motorCurve: [{ speed: 1, torque: 0 }] } };
    const state = mechanicalState(idle, { torque: 0, pressure: 0, mostPressure: 0, screwSpeed: 0 });
    expect(state.worstRoot.margin).toBeNull();
    expect(nonFinite(state)).toEqual([]);
  });

  test.each(edgeProjects)('%s: every number is finite', (_, project) => {
    const design = expectOk(validateDesign(project, 'C'));
    expect(nonFinite(mechanicalState(design, loads))).toEqual([]);
  });
});

test('unknown parts of the torque are named', () => {
  const parts = { solids: null, film: 0.5, channel: 2, clearance: 1, tip: 0.25 };
  expect(unknownParts(parts)).toEqual(['granules rubbing in the feed']);
  expect(unknownParts({ ...parts, solids: 1 })).toEqual([]);
});
