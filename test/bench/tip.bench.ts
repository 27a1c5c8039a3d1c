import { bench, describe } from 'vitest';
import { solveTip } from '../../core/flow/tip/solveTip.ts';
import { DEG, head, newtonian, powerLaw } from '../core/flow/tip/regions.ts';

const options = { iterations: 3, warmupIterations: 1, time: 0 };
const cone = head({ kind: 'cone', includedAngle: 60 * DEG }, 120 * DEG);
const flat = head({ kind: 'flat' }, Math.PI);

describe('tip field with age (must 4 s, aim 2 s)', () => {
  bench('newtonian, cone', () => void solveTip(cone, newtonian, { volumeFlow: 5e-9 }), options);
  bench('n = 0.5, flat tip and shoulder', () => void solveTip(flat, powerLaw(0.5), { volumeFlow: 5e-9 }), options);
  bench('n = 0.3, cone, turning', () => void solveTip(cone, powerLaw(0.3), { volumeFlow: 5e-9, turnRate: 5 }), options);
});
