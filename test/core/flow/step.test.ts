import { describe, expect, test } from 'vitest';
import { pipeFlow } from '../../../core/flow/pipe.ts';
import { stepLength, stepPressureDrop } from '../../../core/flow/step.ts';
import { stepTable } from '../../../core/flow/stepTable.ts';
import { contractionProfile } from '../../../core/flow/tip/region.ts';
import { newtonian, pipe, powerLaw, solved } from './tip/regions.ts';

const flow = 5e-9;
const wide = 2e-3;

/** L/R of a narrowing by the solver: whole drop less the wide pipe, with the same inlet, less developed narrow flow. */
function solvedLength(law: typeof newtonian, ratio: number): number {
  const narrow = ratio * wide;
  const [before, after] = [4 * wide, 5 * narrow];
  const outer = contractionProfile({
    barrelRadius: wide,
    straightLength: before,
    includedAngle: Math.PI,
    orificeRadius: narrow,
    landLength: after,
  });
  const options = { withAge: false, fineness: 0.8 };
  const whole = solved({ ...pipe(wide, before), outer }, law, { volumeFlow: flow }, options).field;
  const ahead = solved(pipe(wide, before), law, { volumeFlow: flow }, options).field;
  expect(whole.convergence.converged && ahead.convergence.converged).toBe(true);
  const { gradient, wallStress } = pipeFlow(law, narrow, flow);
  return (whole.pressureDrop - ahead.pressureDrop - gradient * after) / (2 * wallStress);
}

describe('a sudden narrowing', () => {
  test.each([
    ['Newtonian', newtonian, 1, 0.4],
    ['index 0.4', powerLaw(0.4), 0.4, 0.4],
  ] as const)('%s: the solver finds the tabulated length again', (_, law, index, ratio) => {
    expect(Math.abs(solvedLength(law, ratio) / stepLength(index, ratio) - 1)).toBeLessThan(0.03);
  });

  test('gives the table at its entries', () => {
    stepTable.index.forEach((index, i) => {
      stepTable.ratio.forEach((ratio, j) => {
        expect(stepLength(index, ratio)).toBeCloseTo(stepTable.length[i][j], 12);
      });
    });
  });

  test('costs more the narrower it is and, where narrow, the more the melt thins; nothing without a step', () => {
    for (const index of [0.15, 0.2, 0.25, 0.35, 0.45, 0.7, 0.9, 1, 1.2]) {
      let before = Number.POSITIVE_INFINITY;
      for (let ratio = 0.01; ratio < 1; ratio += 0.01) {
        const length = stepLength(index, ratio);
        expect(length).toBeLessThan(before);
        expect(length).toBeGreaterThan(0);
        before = length;
      }
      expect(stepLength(index, 1)).toBe(0);
    }
    expect(stepLength(0.3, 0.3)).toBeGreaterThan(stepLength(0.5, 0.3));
  });

  test('towards a wide reservoir a Newtonian melt pays 3 pi/16 (Sampson 1891)', () => {
    expect(Math.abs(stepLength(1, 0) / ((3 * Math.PI) / 16) - 1)).toBeLessThan(3e-3);
  });

  test('without flow there is no loss', () => {
    expect(stepPressureDrop(powerLaw(0.4), 0.007, 0.002, 0)).toBe(0);
  });
});
