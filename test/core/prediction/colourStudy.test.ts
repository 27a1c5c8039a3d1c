import { expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import {
  colourAtPrintSpeed,
  colourAtShift,
  mostPrintSpeed,
  type StudyRun,
  setRun,
  speedSweepOf,
  studyBase,
  studySpeeds,
  temperatureSweepOf,
  withPauses,
} from '../../../core/prediction/colourStudy.ts';
import { predict } from '../../../core/prediction/predict.ts';
import { loadDesign } from '../../helpers/projects.ts';

const design: Design = loadDesign('demo', 'C');
const way = { fields: 'formula' } as const;
const base = studyBase(design, way);
const at = (share: number) => colourAtPrintSpeed(design, base, share * design.print.speed, way);

test('the place of the set screw speed is the prediction itself', () => {
  const alone = predict(design, { curvePoints: 0 });
  const { point, stay } = setRun(design, base);
  expect(point?.at).toBeCloseTo(alone.print.highestSpeed, 12);
  expect(point?.dE00Mean).toBeCloseTo(alone.colour.dE00Mean ?? Number.NaN, 10);
  expect(point?.dE00Worst).toBeCloseTo(alone.colour.dE00Worst ?? Number.NaN, 10);
  expect(stay).toBeCloseTo(alone.residence.mean, 8);
  // asked for by the print speed that it feeds, the screw speed is found back
  const again = colourAtPrintSpeed(design, base, alone.print.highestSpeed, way);
  expect((again.screwSpeed ?? 0) / design.process.screwSpeed).toBeCloseTo(1, 2);
});

test('a line is fed as asked, and prints darken as they slow down', () => {
  const [slow, set] = [at(0.5), at(1)];
  for (const run of [slow, set]) expect((run.point?.at ?? 0) / run.asked).toBeCloseTo(1, 2);
  expect(slow.stay ?? 0).toBeGreaterThan(1.8 * (set.stay ?? 0));
  expect(slow.point?.dE00Mean ?? 0).toBeGreaterThan(1.5 * (set.point?.dE00Mean ?? 0));
  expect(set.point?.dE00MeanLow ?? 9).toBeLessThan(set.point?.dE00Mean ?? 0);
  const sweep = speedSweepOf(design, [set, setRun(design, base), slow]);
  expect(sweep.points.map((point) => point.at)).toEqual(
    [...sweep.points.map((point) => point.at)].sort((a, b) => a - b),
  );
  const paused = withPauses(design, sweep, design.print.speed);
  expect(paused?.speed).toBeCloseTo(0.85 * design.print.speed, 10);
  expect(paused?.dE00Mean ?? 0).toBeGreaterThan(set.point?.dE00Mean ?? 9);
  expect(withPauses(design, sweep, 0.1 * design.print.speed)).toBeNull();
});

test('where the drive ends, the speed is said that it still feeds', () => {
  const most = mostPrintSpeed(design, base) ?? 0;
  expect(most).toBeGreaterThan(design.print.speed);
  const run = colourAtPrintSpeed(design, base, 2 * most, way);
  expect(run).toMatchObject({ point: null, screwSpeed: null });
  expect(run.reason).toMatch(/the most is about \d+ mm\/s/);
  expect(Math.max(...studySpeeds(design, base))).toBeLessThanOrEqual(most * 1.0001);
});

test('a feeder sets the flow while the screw keeps its speed', () => {
  const starved = { ...design, process: { ...design.process, starvedRate: 1e-5 } };
  const own = studyBase(starved, way);
  const run = colourAtPrintSpeed(starved, own, 0.5 * design.print.speed, way);
  expect(run.screwSpeed).toBe(design.process.screwSpeed);
  expect((run.point?.at ?? 0) / run.asked).toBeCloseTo(1, 6);
  expect(colourAtPrintSpeed(starved, own, 20 * design.print.speed, way).reason).toMatch(/^The machine carries/);
  expect(mostPrintSpeed(starved, own)).toBeNull();
});

test('hotter is darker, at the nozzle’s temperature, and a limit between is found', () => {
  const hot = colourAtShift(design, 20, way);
  const asSet = setRun(design, base);
  const here = design.nozzle.setTemperature;
  expect(hot.asked).toBe(here + 20);
  const [cool, warm] = [asSet.point?.dE00Mean ?? 0, hot.point?.dE00Mean ?? 0];
  expect(warm).toBeGreaterThan(1.5 * cool);
  const runs: StudyRun[] = [hot, { ...asSet, point: asSet.point && { ...asSet.point, at: here } }];
  const limited = { ...design, process: { ...design.process, acceptableDeltaE: (cool + warm) / 2 } };
  expect(temperatureSweepOf(limited, runs).keptMean?.to).toBeCloseTo(here + 10, 6);
});

test('without a colour law the sweep says why', () => {
  const plain = { ...design, material: { ...design.material, colourLaw: null } };
  const run = setRun(plain, studyBase(plain, way));
  expect(run.point).toBeNull();
  expect(speedSweepOf(plain, [run]).reason).toBe(run.reason);
  expect(run.reason).toMatch(/No degradation law .* is tied to colour/);
});
