/** Breaks that the checks of the material must notice. */

import type { Break } from './types.ts';

/** One for each check. */
export const materialBreaks: readonly Break[] = [
  {
    check: 'material.absAtRest',
    file: 'core/material/wlf.ts',
    from: 'Math.max(0, temperature - d2 - d3 * pressure)',
    to: 'Math.max(0, temperature - 1 - d2 - d3 * pressure)',
  },
  {
    check: 'material.absAt2000PerSecond',
    file: 'core/material/viscosityLaw.ts',
    from: 'ratio ** (1 - law.index)',
    to: 'ratio ** law.index',
  },
  {
    check: 'material.absPowerLaw',
    file: 'core/material/viscosityLaw.ts',
    from: '((law.index - 1) / 2)',
    to: '(law.index / 2)',
  },
  {
    check: 'material.ldpePowerLaw',
    file: 'core/material/shift.ts',
    from: 'Math.exp(-shift.coefficient *',
    to: 'Math.exp(-1.01 * shift.coefficient *',
  },
  {
    check: 'material.sucroseAt140',
    file: 'core/material/wlf.ts',
    from: '/ (a2 + d3 * pressure + above)',
    to: '/ (a2 + d3 * pressure)',
  },
  { check: 'material.petShift', file: 'core/material/shift.ts', from: '1 / rateConstant(1,', to: 'rateConstant(1,' },
  { check: 'material.pcReferred', file: 'core/material/wlf.ts', from: '(-a1 * above)', to: '(-1.001 * a1 * above)' },
  {
    check: 'material.localIndexOfCross',
    file: 'core/material/viscosityLaw.ts',
    from: 'return 1 + Math.log(above / below)',
    to: 'return 1 - Math.log(above / below)',
  },
  { check: 'material.filled', file: 'core/material/filler.ts', from: '** -2;', to: '** -2.5;' },
  {
    check: 'material.fittedIndex',
    file: 'core/material/fit/fitModels.ts',
    from: 'Math.log(viscosityAt(',
    to: '1.02 * Math.log(viscosityAt(',
  },
  {
    check: 'material.fittedConsistency',
    file: 'core/material/fit/fitModels.ts',
    from: 'value[name] = log ? Math.exp(at[k] ?? 0)',
    to: 'value[name] = log ? 1.02 * Math.exp(at[k] ?? 0)',
  },
  {
    check: 'material.misra1aLevel',
    file: 'core/material/fit/leastSquares.ts',
    from: 'return (i: number) => values[i] ?? 0;',
    to: 'return (i: number) => 1.01 * (values[i] ?? 0);',
  },
  {
    check: 'material.misra1aDeviation',
    file: 'core/material/fit/leastSquares.ts',
    from: '(j === k ? 1e-10 : 0)',
    to: '(j === k ? 1e-2 : 0)',
  },
  {
    check: 'material.danWoodExponent',
    file: 'core/material/fit/leastSquares.ts',
    from: 'return (i: number) => values[i] ?? 0;',
    to: 'return (i: number) => (values[i] ?? 0) ** 1.01;',
  },
];
