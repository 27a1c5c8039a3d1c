import { expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { flightCuts, sideShape } from '../../../core/present/sideShape.ts';
import { changedDemo, expectOk } from '../../helpers/projects.ts';

/** The demo with its first revision, a constant lead of 14 mm over 160 mm, in a number of starts. */
const project = (starts: number) =>
  changedDemo(({ revisions }) => {
    const section = revisions[0]?.screw.sections[0];
    if (section?.kind === 'flighted') section.starts = starts;
  });

/** Middles of the cuts and their sides, from low to high. */
function constant(starts: number) {
  const cuts = flightCuts(expectOk(validateDesign(project(starts), 'A')));
  return cuts.map(({ x, y }) => ({ z: ((x[0] ?? 0) + (x.at(-1) ?? 0)) / 2, side: Math.sign(y[0] ?? 0) }));
}

test('one start passes the plane twice a lead, alternately above and below', () => {
  const cuts = constant(1);
  expect(cuts).toHaveLength(Math.ceil((2 * 160) / 14));
  // the first and the last are cut off at the ends of the section
  const whole = cuts.slice(1, -1);
  whole.slice(1).forEach((cut, i) => {
    expect(cut.z - (whole[i]?.z ?? 0)).toBeCloseTo(0.007, 6);
    expect(cut.side).toBe(-(whole[i]?.side ?? 0));
  });
});

test('two starts pass it twice as often', () => {
  expect(Math.abs(constant(2).length - 2 * constant(1).length)).toBeLessThanOrEqual(1);
});

test('each runs from the root to the crest and back, the same for a design as for its file', () => {
  const demo = project(1);
  const design = expectOk(validateDesign(demo, 'A'));
  const [, cut] = flightCuts(design);
  const top = Math.max(...Array.from(cut?.y ?? [], Math.abs));
  expect(top).toBeCloseTo(design.barrel.boreDiameter / 2 - design.screw.radialClearance, 12);
  expect(cut?.y[0]).toBe(cut?.y.at(-1));
  expect(Math.abs(cut?.y[0] ?? 0)).toBeLessThan(top - 1e-3);
  const [stored] = demo.revisions;
  expect(stored && sideShape(stored).cuts).toEqual(flightCuts(design));
});
