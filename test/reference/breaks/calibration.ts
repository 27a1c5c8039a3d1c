/** Breaks that the checks of the calibration must notice. */

import type { Break } from './types.ts';

/** One for each check. */
export const calibrationBreaks: readonly Break[] = [
  {
    check: 'calibration.misra1aLevel',
    file: 'core/bench/leastSquares.ts',
    from: 'y: observations.map(({ measured }, i) => root[i] * measured)',
    to: 'y: observations.map(({ measured }) => measured)',
  },
  {
    check: 'calibration.misra1aRate',
    file: 'core/bench/leastSquares.ts',
    from: 'columns.map((column) => root[i] * column[i])',
    to: 'columns.map((column) => -root[i] * column[i])',
  },
  {
    check: 'calibration.tOf3',
    file: 'core/math/studentT.ts',
    from: '(2 / Math.PI) * (angle',
    to: '(1 / Math.PI) * (angle',
  },
  {
    check: 'calibration.tOf10',
    file: 'core/math/studentT.ts',
    from: '((k - 1) / k) * cosine * cosine',
    to: '((k - 1) / k) * cosine',
  },
  {
    check: 'calibration.tOf5At99',
    file: 'core/math/studentT.ts',
    from: 'Math.sqrt(count) * Math.tan',
    to: 'count * Math.tan',
  },
  {
    check: 'calibration.quantile',
    file: 'core/doubt/statistics.ts',
    from: '* (sorted.length - 1)',
    to: '* sorted.length',
  },
  {
    check: 'calibration.unevenQuantile',
    file: 'core/doubt/statistics.ts',
    from: '(sorted[above] - sorted[below]) * (place - below)',
    to: '(sorted[above] - sorted[below]) / 2',
  },
  {
    check: 'calibration.medianDeviation',
    file: 'core/doubt/statistics.ts',
    from: '1.4826022185056018',
    to: '1.2533141373155',
  },
  { check: 'calibration.tukeyEfficiency', file: 'core/bench/robust.ts', from: 'tukeyEnd = 4.685', to: 'tukeyEnd = 6' },
  {
    check: 'calibration.huberEfficiency',
    file: 'core/bench/robust.ts',
    from: 'huberTurn = 1.345',
    to: 'huberTurn = 1.5',
  },
  {
    check: 'calibration.rankCorrelation',
    file: 'core/doubt/influence.ts',
    from: 'Math.hypot(...ranks.map((rank) => rank - mean))',
    to: 'Math.hypot(...ranks)',
  },
  {
    check: 'calibration.rankStrength',
    file: 'core/doubt/influence.ts',
    from: 'const mean = (ranks.length + 1) / 2;',
    to: 'const mean = ranks.length / 3;',
  },
  {
    check: 'calibration.triangle',
    file: 'core/doubt/latin.ts',
    from: '(1 - unit) * span * (high - mode)',
    to: '(1 - unit) * span * (mode - low)',
  },
  {
    check: 'calibration.checkeredStrand',
    file: 'core/bench/photoLab.ts',
    from: 'sum[k] += linearOf[value]',
    to: 'sum[k] += value / 255',
  },
];
