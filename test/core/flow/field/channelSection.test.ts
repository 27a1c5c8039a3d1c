import { expect, test } from 'vitest';
import {
  type ChannelSection,
  channelSectionIssues,
  type FlatSection,
  largestRootFillet,
  sectionRootWidth,
} from '../../../../core/flow/field/channelSection.ts';
import { prepareChannel } from '../../../../core/flow/field/prepared.ts';
import { sectionShape, wallAt } from '../../../../core/flow/field/sectionShape.ts';

const square: FlatSection = { kind: 'flat', depth: 2e-3, width: 8e-3, helixAngle: 0.3, rootFillet: 0, flankAngle: 0 };
const codes = (section: ChannelSection) => channelSectionIssues(section).map((issue) => issue.code);

test('a plain square channel has no issues', () => {
  expect(codes(square)).toEqual([]);
});

test.each<[string, Partial<FlatSection>]>([
  ['section-depth', { depth: 0 }],
  ['section-width', { flankAngle: 1.2 }],
  ['section-rootFillet', { rootFillet: 2.1e-3 }],
  ['section-rootFillet', { rootFillet: Number.NaN }],
  ['section-flankAngle', { flankAngle: -0.1 }],
])('%s is named for %o', (code, change) => {
  expect(codes({ ...square, ...change })).toContain(code);
  expect(() => prepareChannel({ ...square, ...change })).toThrow(RangeError);
});

test('half flights are refused', () => {
  const screw = { barrelRadius: 8e-3, rootRadius: 5e-3, lead: 16e-3, starts: 1.5, flightAxialWidth: 1e-3 };
  expect(codes({ kind: 'helical', ...screw, flankAngle: 0, rootFillet: 0 })).toEqual(['section-starts']);
});

test('flanks at 30 degrees narrow the root by 2 H tan 30', () => {
  expect(sectionRootWidth({ ...square, flankAngle: Math.PI / 6 })).toBeCloseTo(8e-3 - 4e-3 * Math.tan(Math.PI / 6), 12);
});

test('the largest fillet of a square channel is its depth, or half its width', () => {
  expect(largestRootFillet(square)).toBeCloseTo(2e-3, 12);
  expect(largestRootFillet({ ...square, width: 3e-3 })).toBeCloseTo(1.5e-3, 12);
});

test('the fillet touches flank and root', () => {
  const shape = sectionShape({ ...square, rootFillet: 1e-3, flankAngle: 0.3 });
  expect(wallAt(shape, shape.filletHeight * 0.999999)).toBeCloseTo(0, 6);
  // at the root the wall stands where the arc leaves it
  expect(wallAt(shape, 0)).toBeCloseTo(1 + shape.filletCentre / shape.rootHalfWidth, 12);
});
