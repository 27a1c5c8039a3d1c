import { describe, expect, test } from 'vitest';
import type { Design, FlightedSection } from '../../../core/design/types.ts';
import {
  leastCorner,
  leastPin,
  leastPoint,
  leastTool,
  makeRules,
  mostFlightHeight,
  mostPin,
  mostReach,
  mostSlender,
} from '../../../core/findings/makeRules.ts';
import { leastWall } from '../../../core/findings/wallRules.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { measureGeometry } from '../../../core/geometry/summary.ts';
import { overallLength, sectionEnds } from '../../../core/make/cutting.ts';
import { loadDesign } from '../../helpers/projects.ts';
import { contextOf, said, withDesign } from './machineContext.ts';

const demo = contextOf('demo', 'C');
const { screw } = demo.design;
const first = screw.sections[0] as FlightedSection;
const rule = (code: string, change: Partial<Design>) => said(makeRules, code, withDesign(demo, change));
const cut = (change: Partial<FlightedSection>): Partial<Design> => ({
  screw: { ...screw, sections: [{ ...first, ...change }] },
});
const tipped = (tip: Partial<Design['screw']['tip']>): Partial<Design> => ({
  screw: { ...screw, tip: { ...screw.tip, ...tip } },
});

test('a root is slender from twelve diameters on', () => {
  const thick = (root: number) => {
    const { prediction } = demo;
    const geometry = { ...prediction.geometry, leastRootDiameter: root };
    return said(makeRules, 'screw-slender', { ...demo, prediction: { ...prediction, geometry } });
  };
  const limit = overallLength(demo.design) / mostSlender;
  expect(thick(1.001 * limit)).toBeNull();
  expect(thick(0.999 * limit)).toMatchObject({ severity: 'note', limit: mostSlender });
});

test('a corner is sharp below the radius of usual tools', () => {
  expect(rule('corner-sharp', cut({ rootFillet: leastCorner }))).toBeNull();
  expect(rule('corner-sharp', cut({ rootFillet: 0.99 * leastCorner }))).toMatchObject({
    unit: 'm',
    limit: leastCorner,
  });
  expect(rule('corner-sharp', cut({ rootFillet: 0 }))?.saw).toContain('is sharp');
});

test('a flight is slim where it is too high for its thickness', () => {
  const width = (share: number) => {
    const [{ depth, meanThickness, land }] = sectionEnds({ ...demo.design, ...cut({}) }) as [
      ReturnType<typeof sectionEnds>[0],
    ];
    return ((depth / mostFlightHeight) * land) / meanThickness / share;
  };
  expect(rule('flight-slim', cut({ flightWidth: width(0.999) }))).toBeNull();
  expect(rule('flight-slim', cut({ flightWidth: width(1.001) }))?.value).toBeCloseTo(1.001 * mostFlightHeight, 9);
});

describe('a channel', () => {
  /** Land that leaves a tool of the given width between square flights. */
  const landFor = (tool: number): Partial<FlightedSection> => {
    const [{ helixRoot, lead }] = sectionEnds({ ...demo.design, ...cut({ rootFillet: 0 }) }) as [
      ReturnType<typeof sectionEnds>[0],
    ];
    return { rootFillet: 0, starts: 2, flightWidth: lead / 2 - tool / Math.cos(helixRoot) };
  };

  test('is narrow below the smallest tool', () => {
    expect(rule('channel-narrow', cut(landFor(1.001 * leastTool)))).toBeNull();
    expect(rule('channel-narrow', cut(landFor(0.999 * leastTool)))?.value).toBeCloseTo(0.999 * leastTool, 9);
  });

  test('is deep for its width beyond a tool’s reach', () => {
    const [{ depth }] = sectionEnds({ ...demo.design, ...cut({}) }) as [ReturnType<typeof sectionEnds>[0]];
    expect(rule('channel-deep-narrow', cut(landFor((1.001 * depth) / mostReach)))).toBeNull();
    expect(rule('channel-deep-narrow', cut(landFor((0.999 * depth) / mostReach)))).toMatchObject({ limit: mostReach });
  });
});

describe('a tip', () => {
  test('is fine as a sharp bare point, not as a blunt one', () => {
    const cone = (includedAngle: number, pinDiameter = 0) =>
      tipped({ kind: 'cone', includedAngle, pinDiameter, pinLength: 0 });
    expect(rule('tip-fine', cone(leastPoint))).toBeNull();
    expect(rule('tip-fine', cone(0.99 * leastPoint))).toMatchObject({ unit: 'rad', limit: leastPoint });
    expect(rule('tip-fine', cone(0.99 * leastPoint, 1e-3))).toBeNull();
  });

  test('is fine with a pin too thin or too long', () => {
    const pin = (pinDiameter: number, pinLength: number) => tipped({ kind: 'flat', pinDiameter, pinLength });
    expect(rule('tip-fine', pin(leastPin, mostPin * leastPin))).toBeNull();
    expect(rule('tip-fine', pin(0.99 * leastPin, leastPin))).toMatchObject({ value: 0.99 * leastPin, unit: 'm' });
    expect(rule('tip-fine', pin(2e-3, 1.01 * mostPin * 2e-3))?.value).toBeCloseTo(1.01 * mostPin, 9);
  });
});

describe('a wall', () => {
  const { barrel, nozzle } = demo.design;

  test('of the barrel is thin below two millimetres', () => {
    const walled = (wall: number) => ({ barrel: { ...barrel, outerDiameter: barrel.boreDiameter + 2 * wall } });
    expect(rule('wall-thin-to-bore', walled(leastWall.barrel))).toBeNull();
    expect(rule('wall-thin-to-bore', walled(0.99 * leastWall.barrel))?.where).toContain('barrel');
  });

  test('of the nozzle is thin below one, at its widest bore', () => {
    const widest = Math.max(...nozzle.segments.filter(({ length }) => length > 0).map((each) => each.startDiameter));
    const walled = (wall: number) => ({ nozzle: { ...nozzle, outerDiameter: widest + 2 * wall } });
    expect(rule('nozzle-thin-to-bore', walled(leastWall.nozzle))).toBeNull();
    expect(rule('nozzle-thin-to-bore', walled(0.99 * leastWall.nozzle))).toMatchObject({ limit: leastWall.nozzle });
  });

  test('of a neck is thin below two millimetres, as that of the barrel', () => {
    const necked = (wall: number) => ({
      barrel: { ...barrel, heatBreak: { start: 0.044, length: 0.014, wall, conductivity: 16 } },
    });
    expect(rule('neck-thin-to-turn', necked(leastWall.barrel))).toBeNull();
    expect(rule('neck-thin-to-turn', necked(0.99 * leastWall.barrel))).toMatchObject({ z: 0.051, unit: 'm' });
    expect(rule('neck-thin-to-turn', { barrel: { ...barrel, heatBreak: null } })).toBeNull();
  });

  test('is told each time where barrel, neck and nozzle are thin at once', () => {
    const thin = { ...barrel, outerDiameter: barrel.boreDiameter + 3e-3 };
    const heatBreak = { start: 0.044, length: 0.014, wall: 0.5e-3, conductivity: 16 };
    const change = {
      barrel: { ...thin, heatBreak },
      nozzle: { ...nozzle, outerDiameter: barrel.boreDiameter + 1e-3 },
    };
    const walls = ['wall-thin-to-bore', 'neck-thin-to-turn', 'nozzle-thin-to-bore'];
    expect(walls.map((code) => rule(code, change)?.where)).toEqual([
      'wall of the barrel',
      'wall of the heat break',
      'wall of the nozzle',
    ]);
  });
});

test('of the shipped examples all are slender, four have thin necks, and two have corners as sharp as no usual tool leaves them', () => {
  const list = [
    ['demo', 'A'],
    ['demo', 'B'],
    ['demo', 'C'],
    ['hdpe-regrind', 'R1'],
    ['pla-pellet-misfit', 'P1'],
    ['wax-head', 'W1'],
  ] as const;
  const codes = list.map(([name, revision]) => {
    const design = loadDesign(name, revision);
    const geometry = measureGeometry(design, buildStations(design, 4));
    const context = { ...demo, design, prediction: { ...demo.prediction, geometry } };
    return makeRules.filter(({ check }) => check(context) !== null).map(({ code }) => code);
  });
  // necks of 1.5 mm in demo A to C and pla-pellet-misfit, under the 2 mm that bore true
  const slender = ['screw-slender'];
  const sharp = ['screw-slender', 'corner-sharp'];
  const neck = 'neck-thin-to-turn';
  expect(codes).toEqual([[...sharp, neck], [...sharp, neck], [...slender, neck], slender, [...slender, neck], slender]);
});
