import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { createNeighbour, type FirstFigures, firstFigures } from '../../../core/prediction/firstFigures.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Revision } from '../../../core/project/schema.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { nonFinite } from '../../helpers/finite.ts';
import { expectOk, loadDesign, type loadExample } from '../../helpers/projects.ts';

type Change = (revision: Revision, project: ReturnType<typeof loadExample>) => void;
const design = (change: Change) => expectOk(validateDesign(demoC(change), 'C'));
const cold = (change: Change) => firstFigures(design(change), createNeighbour());
const plain: Change = () => {};
const figures = ({ output, residence, drive, dead }: FirstFigures) => [
  output.volumeFlow,
  output.headPressure,
  residence.mean,
  drive.torque,
  dead.fractionOver3,
];

/** Edits as a maker makes them one after the other, some of them strides. */
const edits: Readonly<Record<string, Change>> = {
  'twice the speed': (_, { process }) => {
    process.screwSpeedRpm *= 2;
  },
  'a hundredth of the speed': (_, { process }) => {
    process.screwSpeedRpm /= 100;
  },
  'a colder nozzle': ({ nozzle }) => {
    nozzle.setTempC -= 15;
  },
  'a narrower land': ({ nozzle }) => {
    for (const segment of nozzle.segments.slice(-1)) segment.startDiameterMm = segment.endDiameterMm *= 0.6;
  },
  'a shorter last section': ({ screw }) => {
    const last = screw.sections.at(-1);
    if (last) last.lengthMm -= 4;
  },
};

describe('first figures begun at a neighbour', () => {
  test.each(Object.entries(edits))('%s: agree with those begun at a standstill', (_, change) => {
    const neighbour = createNeighbour();
    firstFigures(design(plain), neighbour);
    const near = firstFigures(design(change), neighbour);
    const far = cold(change);
    expect(nonFinite(near, /^capacities\.\d+\.(volumeFlow|reserve)$/)).toEqual([]);
    expect(near.limit).toBe(far.limit);
    expect(near.converged).toBe(far.converged);
    const apart = figures(near).map((value, k) => Math.abs(value / figures(far)[k] - 1));
    expect(Math.max(...apart)).toBeLessThan(0.01);
  });

  test('what gave nothing is no neighbour, nor is another machine', () => {
    const neighbour = createNeighbour();
    firstFigures(loadDesign('pla-pellet-misfit'), neighbour);
    expect(figures(firstFigures(design(plain), neighbour))).toEqual(figures(cold(plain)));
    const wax = firstFigures(loadDesign('wax-head'), neighbour);
    expect(figures(wax)).toEqual(figures(firstFigures(loadDesign('wax-head'), createNeighbour())));
  });

  test('are those of the whole prediction at the same stations', () => {
    const { options: _o, ...whole } = predict(design(plain), { stationsPerTurn: 4, curvePoints: 0 });
    const { designHash, output, limit, capacities, residence, dead, fields, colour, drive, converged } = whole;
    const same = { designHash, output, limit, capacities, residence, dead, fields, colour, drive, converged };
    expect(cold(plain)).toEqual(same);
  });
});
