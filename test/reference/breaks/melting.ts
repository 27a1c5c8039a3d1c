/** Breaks that the checks of the melting must notice. */

import type { Break } from './types.ts';

/** One for each check. */
export const meltingBreaks: readonly Break[] = [
  { check: 'melting.heatToBed', file: 'core/melting/filmShear.ts', from: 'bed: beyond / b', to: 'bed: beyond' },
  { check: 'melting.heatOfShear', file: 'core/melting/filmShear.ts', from: 'slope ** index', to: 'slope' },
  { check: 'melting.carriedFilm', file: 'core/melting/filmShear.ts', from: '1 / b - 1 / (e - 1)', to: '1 / b - 1 / e' },
  {
    check: 'melting.filmMixedTemperature',
    file: 'core/melting/filmShear.ts',
    from: '(e * (b - 1) + 1) / (b * b)',
    to: '(e * (b - 1) + 1) / b',
  },
  {
    check: 'melting.filmWarmedByShear',
    file: 'core/melting/filmShear.ts',
    from: 'toBed / (6 * conductivity)',
    to: 'toBed / (3 * conductivity)',
  },
  {
    check: 'melting.filmThickness',
    file: 'core/melting/dragRemoval.ts',
    from: '(2 * drive * width)',
    to: '(drive * width)',
  },
  {
    check: 'melting.quarterLeft',
    file: 'core/melting/dragRemoval.ts',
    from: '(rate * length) / (2 * solid)) ** 2',
    to: '(rate * length) / solid) ** 2',
  },
  {
    check: 'melting.smallQuarterLeft',
    file: 'core/melting/dragRemoval.ts',
    from: '- 2 * barrelSpeed * bedSpeed * Math.cos(helix)',
    to: '+ 2 * barrelSpeed * bedSpeed * Math.cos(helix)',
  },
  {
    check: 'melting.marchByFilm',
    file: 'core/melting/filmStep.ts',
    from: 'add(mass / c.massFlow);',
    to: 'add((2 * mass) / c.massFlow);',
  },
  { check: 'melting.looseBed', file: 'core/melting/drainage.ts', from: '(180 * solid ** 2)', to: '(150 * solid ** 2)' },
  {
    check: 'melting.touchingBed',
    file: 'core/melting/drainage.ts',
    from: 'pores ** 3) / (180',
    to: 'pores ** 2) / (180',
  },
];
