import { expect, test } from 'vitest';
import { evaluateFlow } from '../../../core/prediction/flowState.ts';
import { createMachine } from '../../../core/prediction/machine.ts';
import { solidsAt } from '../../../core/prediction/solidsStage.ts';
import { loadDesign } from '../../helpers/projects.ts';

test('a plug holds nothing where the balance leaves a residue, and all where the melt really presses', () => {
  const machine = createMachine(loadDesign('demo', 'C'), 8);
  const flow = 4e-8;
  const state = evaluateFlow(machine, 1 / 6, flow, new Float64Array(machine.channel.reaches.length));
  const pressed = (share: number) => {
    const march = { ...state.march, startPressure: share * state.headPressure };
    return solidsAt(machine, { ...state, march }, flow);
  };
  const none = pressed(0);
  for (const share of [-5, -0.01, 0.001, 0.01]) expect(pressed(share)).toEqual(none);
  expect(none).toMatchObject({ packedFrom: null, holds: true });
  expect(none.nominal.buildable).toBeGreaterThan(0);
  expect(pressed(20).holds).toBe(false);
});
