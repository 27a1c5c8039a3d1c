/** Breaks that the checks of the heat must notice. */

import type { Break } from './types.ts';

/** One for each check. */
export const heatBreaks: readonly Break[] = [
  { check: 'heat.pipeInAir', file: 'core/heat/stillAir.ts', from: '0.387 * rayleigh', to: '0.378 * rayleigh' },
  {
    check: 'heat.steamPipeInAir',
    file: 'core/heat/stillAir.ts',
    from: '0.387 * rayleigh ** (1 / 6)',
    to: '0.387 * rayleigh ** (1 / 5)',
  },
  { check: 'heat.greyPipe', file: 'core/heat/stillAir.ts', from: '5.670374e-8', to: '5.760374e-8' },
  {
    check: 'heat.biotOfApple',
    file: 'core/print/cooling.ts',
    from: '(coefficient * size) / conductivity',
    to: '(2 * coefficient * size) / conductivity',
  },
  {
    check: 'heat.cooledCylinder',
    file: 'core/heat/warmMarch.ts',
    from: 'const stage = 1 - Math.SQRT1_2;',
    to: 'const stage = 1 - Math.SQRT1_2 / 2;',
  },
  {
    check: 'heat.copperFin',
    file: 'core/heat/solidMatrix.ts',
    from: 'addToBand(matrix, b, b, conductance);',
    to: 'addToBand(matrix, b, b, 2 * conductance);',
  },
  {
    check: 'heat.shortFin',
    file: 'core/heat/solidMatrix.ts',
    from: 'right[wall] += cells.toAmbient[i] * cells.ambient +',
    to: 'right[wall] +=',
  },
  { check: 'heat.pipeFlow', file: 'core/heat/coefficients.ts', from: 'pipeNusselt = 3.66', to: 'pipeNusselt = 4.36' },
  { check: 'heat.slab', file: 'core/heat/coefficients.ts', from: 'Math.PI ** 2 / 2', to: 'Math.PI ** 2 / 4' },
  {
    check: 'heat.iceToWater',
    file: 'core/heat/enthalpy.ts',
    from: 'content.heatOfFusion + content.heatCapacityMelt * above',
    to: 'content.heatOfFusion + content.heatCapacitySolid * above',
  },
  {
    check: 'heat.dieRise',
    file: 'core/heat/stream.ts',
    from: 'const target = wall + made / exchange;',
    to: 'const target = wall + made / (2 * exchange);',
  },
  {
    check: 'heat.neck',
    file: 'core/heat/heatCells.ts',
    from: 'barrel.boreDiameter + 2 * stop.wall',
    to: 'barrel.boreDiameter + stop.wall',
  },
  {
    check: 'heat.coreRod',
    file: 'core/heat/heatCells.ts',
    from: 'cell / (screw.steel.conductivity * Math.PI * r * r)',
    to: 'cell / (screw.steel.conductivity * 2 * Math.PI * r * r)',
  },
];
