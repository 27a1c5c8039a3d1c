import { expect, test } from 'vitest';
import { buildStations, validateDesign } from '../../../core/index.ts';
import { cutFlights } from '../../../renderer/solve/cutFlights.ts';
import { changedDemo, expectOk } from '../../helpers/projects.ts';

/** Cuts of the demo's first revision, a constant lead of 14 mm over 160 mm, with a number of starts. */
function constant(starts: number) {
  const project = changedDemo(({ revisions }) => {
    const section = revisions[0]?.screw.sections[0];
    if (section?.kind === 'flighted') section.starts = starts;
  });
  return cutFlights(buildStations(expectOk(validateDesign(project, 'A')), 24));
}

test('one start passes the plane twice a lead, alternately above and below', () => {
  const cuts = constant(1);
  expect(cuts).toHaveLength(Math.ceil((2 * 160) / 14));
  cuts.slice(1).forEach((cut, i) => {
    expect(cut.z - (cuts[i]?.z ?? 0)).toBeCloseTo(0.007, 6);
    expect(cut.side).toBe(-(cuts[i]?.side ?? 0));
  });
});

test('two starts pass it twice as often', () => {
  expect(Math.abs(constant(2).length - 2 * constant(1).length)).toBeLessThanOrEqual(1);
});
