/** Where melt dwells: eddies and dead spots. */

import { describe, expect, it } from 'vitest';
import type { ProfilePoint } from '../../../../core/flow/tip/region.ts';
import { DEG, head, newtonian, powerLaw, solved } from './regions.ts';

const Q = 5e-9;
const options = { fineness: 1.2 };
const mm = (...points: (readonly [number, number, (number | undefined)?])[]): ProfilePoint[] =>
  points.map(([z, r, fillet]) => ({ z: 1e-3 * z, r: 1e-3 * r, ...(fillet ? { fillet: 1e-3 * fillet } : {}) }));
const walled = (outer: readonly ProfilePoint[]) => ({ ...head({ kind: 'flat' }, Math.PI), outer });

const plain = mm([0, 7], [7, 7], [12, 0.4], [13, 0.4]);
const grooved = mm([0, 7], [5, 7], [5, 7.6], [6, 7.6], [6, 7], [7, 7], [12, 0.4], [13, 0.4]);

describe('dead volume', () => {
  it('of a flat shoulder sits in its corner, and an entry cone empties it', () => {
    const flat = solved(head({ kind: 'flat' }, Math.PI), newtonian, { volumeFlow: Q }, options).field;
    const cone = solved(head({ kind: 'flat' }, 60 * DEG), newtonian, { volumeFlow: Q }, options).field;
    const spot = flat.spots?.[0];
    expect(spot?.cause).toBe('corner');
    expect(spot?.feature).toMatchObject({ kind: 'corner', wall: 'outer', index: 1 });
    expect(spot?.z).toBeGreaterThan(5.5e-3);
    expect(spot?.r).toBeGreaterThan(5.5e-3);
    expect(flat.statistics?.fractionOver5).toBeGreaterThan(1.4 * (cone.statistics?.fractionOver5 ?? 1));
    expect(cone.spots?.some((other) => other.cause === 'corner' && other.meanAge > (10 * cone.volume) / Q)).toBe(false);
  });

  it('of a joint that gapes is a ledge at its place', () => {
    const { field } = solved(walled(grooved), newtonian, { volumeFlow: Q }, options);
    const oldest = [...(field.spots ?? [])].sort((a, b) => b.meanAge - a.meanAge)[0];
    expect(oldest.cause).toBe('ledge');
    expect(oldest.z).toBeGreaterThan(5e-3);
    expect(oldest.z).toBeLessThan(6e-3);
    expect(oldest.r).toBeGreaterThan(7e-3);
    const without = solved(walled(plain), newtonian, { volumeFlow: Q }, options).field;
    expect(without.spots?.some((spot) => spot.cause === 'ledge')).toBe(false);
  });

  it('sums to the share older than three means, up to the specks left out', () => {
    const { field } = solved(walled(grooved), powerLaw(0.5), { volumeFlow: Q }, options);
    const sum = (field.spots ?? []).reduce((total, spot) => total + spot.volume, 0) / field.volume;
    expect(Math.abs(sum - (field.statistics?.fractionOver3 ?? 0))).toBeLessThan(0.006);
  });

  it('shrinks when the corner is rounded', () => {
    const corner = (fillet?: number) => walled(mm([0, 7], [7, 7, fillet], [7, 0.4], [8, 0.4]));
    const share = (fillet?: number): number =>
      solved(corner(fillet), newtonian, { volumeFlow: Q }, options).field.statistics?.fractionOver10 ?? 0;
    expect(share(2)).toBeLessThan(0.7 * share());
  });
});

describe('eddies', () => {
  it('sit in the corner of a flat shoulder far behind the tip, and nowhere else', () => {
    const outer = mm([0, 4], [12, 4], [12, 1], [14, 1]);
    const pipe = { screwRadius: 0, annulusLength: 0, tip: { kind: 'flat' } as const, outer };
    const [eddy, ...others] = solved(pipe, newtonian, { volumeFlow: Q }, { ...options, withAge: false }).field.eddies;
    expect(others).toHaveLength(0);
    expect(eddy.z).toBeCloseTo(12e-3, 9);
    expect(eddy.r).toBeCloseTo(4e-3, 9);
    expect(eddy.strength).toBeGreaterThan(5e-4);
    expect(eddy.strength).toBeLessThan(5e-3);
  });

  it('fill a groove, and are absent from a slender cone', () => {
    const groove = solved(walled(grooved), newtonian, { volumeFlow: Q }, { ...options, withAge: false }).field.eddies;
    expect(groove.some((eddy) => eddy.z >= 5e-3 && eddy.z <= 6e-3 && eddy.r > 6.9e-3)).toBe(true);
    const slender = head({ kind: 'cone', includedAngle: 60 * DEG }, 60 * DEG);
    expect(solved(slender, newtonian, { volumeFlow: Q }, { ...options, withAge: false }).field.eddies).toHaveLength(0);
  });
});
