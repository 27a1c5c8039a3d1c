import { describe, expect, it } from 'vitest';
import { buildStations } from '../../../core/geometry/stations.ts';
import { designOf, flighted, plain } from './designs.ts';

const last = (values: ArrayLike<number>) => values[values.length - 1] as number;

describe('stations of a square-flanked constant screw', () => {
  const Rb = 7e-3;
  const Rf = 6.95e-3;
  const Rr = 4.5e-3;
  const stations = buildStations(designOf(), 12);
  // The flight is a sector of angle 2 pi land / lead between root and crest.
  const area = Math.PI * (Rb ** 2 - Rr ** 2) - ((Math.PI * 1.4) / 14) * (Rf ** 2 - Rr ** 2);

  it('has the closed-form free area everywhere', () => {
    for (const value of stations.freeArea) expect(value).toBeCloseTo(area, 14);
  });

  it('adds up to area times length', () => {
    expect(last(stations.freeVolume) / (area * 84e-3)).toBeCloseTo(1, 12);
  });

  it('has a helix angle of 17.657 degrees at the barrel for lead = diameter: atan(1/pi)', () => {
    expect((last(stations.helixBarrel) * 180) / Math.PI).toBeCloseTo(17.6568, 4);
  });

  it('has the normal width (lead - land) cos(helix angle) at the barrel', () => {
    expect(last(stations.widthBarrel)).toBeCloseTo(12.6e-3 * Math.cos(Math.atan(1 / Math.PI)), 14);
  });

  it('has the helical length of six turns at mean radius', () => {
    expect(last(stations.helicalLength)).toBeCloseTo(6 * Math.hypot(14e-3, Math.PI * 11.5e-3), 12);
  });

  it('wets bore, root between the flights and two helicoids', () => {
    const k = (2 * Math.PI) / 14e-3;
    const helicoid = (r: number) => (r / 2) * Math.sqrt(1 + (k * r) ** 2) + Math.asinh(k * r) / (2 * k);
    const perLength = 2 * Math.PI * Rb + 2 * Math.PI * Rr * 0.9 + 2 * (helicoid(Rf) - helicoid(Rr));
    expect(last(stations.wettedArea) / (perLength * 84e-3)).toBeCloseTo(1, 12);
  });

  it('starts at the bore and ends at the last section', () => {
    expect([stations.z[0], last(stations.z), stations.count]).toEqual([0, 84e-3, 73]);
  });
});

describe('stations of other screws', () => {
  it('doubles section boundaries and keeps the running sums there', () => {
    const stations = buildStations(designOf({ sections: [flighted(), plain(), flighted()] }), 12);
    const twin = Array.from(stations.z).findIndex((z, i) => i > 0 && z === stations.z[i - 1]);
    expect([stations.section[twin - 1], stations.section[twin]]).toEqual([0, 1]);
    expect([stations.flighted[twin - 1], stations.flighted[twin]]).toEqual([1, 0]);
    expect(stations.freeVolume[twin]).toBe(stations.freeVolume[twin - 1]);
    expect(stations.starts[twin]).toBe(0);
  });

  it('treats a plain section as an annulus', () => {
    const stations = buildStations(designOf({ sections: [plain()] }), 12);
    const annulus = Math.PI * (49e-6 - 20.25e-6);
    expect(last(stations.freeVolume) / (annulus * 10e-3)).toBeCloseTo(1, 12);
    expect(last(stations.wettedArea) / (Math.PI * 23e-3 * 10e-3)).toBeCloseTo(1, 12);
    expect(last(stations.helicalLength)).toBeCloseTo(10e-3, 14);
    expect(last(stations.widthBarrel)).toBeCloseTo(Math.PI * 14e-3, 14);
  });

  it('integrates tapered, widening, filleted channels independently of the station count', () => {
    const section = flighted({
      rootDiameterEnd: 11e-3,
      leadEnd: 10e-3,
      flankAngle: 0.3,
      rootFillet: 0.6e-3,
      starts: 2,
    });
    const coarse = buildStations(designOf({ sections: [section] }), 4);
    const fine = buildStations(designOf({ sections: [section] }), 40);
    expect(last(coarse.freeVolume) / last(fine.freeVolume)).toBeCloseTo(1, 8);
    expect(last(coarse.wettedArea) / last(fine.wettedArea)).toBeCloseTo(1, 8);
    expect(last(coarse.helicalLength) / last(fine.helicalLength)).toBeCloseTo(1, 8);
  });

  it('never lets z fall back', () => {
    const sections = [flighted({ leadStart: 9e-3, leadEnd: 22e-3 }), plain(), flighted({ starts: 2 })];
    const { z } = buildStations(designOf({ sections }), 12);
    for (let i = 1; i < z.length; i++) expect(z[i]).toBeGreaterThanOrEqual(z[i - 1] as number);
  });
});
