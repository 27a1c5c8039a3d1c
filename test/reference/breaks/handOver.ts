/** Breaks that the checks of the hand-over must notice. */

import type { Break } from './types.ts';

/** One for each check. */
export const handOverBreaks: readonly Break[] = [
  {
    check: 'handOver.leastPlay',
    file: 'core/make/isoFits.ts',
    from: "shaft === 'g6' ? step.gDeviation : 0",
    to: "shaft === 'g6' ? step.fDeviation : 0",
  },
  {
    check: 'handOver.mostPlay',
    file: 'core/make/isoFits.ts',
    from: 'step.it7 + below + step.it6',
    to: 'step.it7 + step.it6',
  },
  {
    check: 'handOver.holeOf14mm',
    file: 'core/make/isoLimits.ts',
    from: 'millimetres > above && millimetres <= upTo',
    to: 'millimetres >= above / 2 && millimetres <= upTo / 2',
  },
  {
    check: 'handOver.shaftOf100mm',
    file: 'core/make/isoLimits.ts',
    from: 'lower: -(below + grade) * 1e-6',
    to: 'lower: -below * 1e-6',
  },
  {
    check: 'handOver.shaftOf40mm',
    file: 'core/make/isoLimits.ts',
    from: '-(below + grade) * 1e-6',
    to: '(below + grade) * 1e-6',
  },
  {
    check: 'handOver.gradeFormula',
    file: 'core/make/isoFitTable.ts',
    from: 'it6: 13, it7: 21',
    to: 'it6: 13, it7: 33',
  },
  {
    check: 'handOver.generalLength',
    file: 'core/handover/drawing/generalToleranceTable.ts',
    from: 'f: 0.15, m: 0.3',
    to: 'f: 0.15, m: 0.5',
  },
  {
    check: 'handOver.generalAngle',
    file: 'core/handover/drawing/generalToleranceTable.ts',
    from: 'f: 1 / 2, m: 1 / 2',
    to: 'f: 1 / 3, m: 1 / 2',
  },
  {
    check: 'handOver.fileSize',
    file: 'core/handover/mesh/stlFile.ts',
    from: 'const perTriangle = 50;',
    to: 'const perTriangle = 48;',
  },
  { check: 'handOver.fileVolume', file: 'core/handover/mesh/stlFile.ts', from: 'at + 12 + 4 * i', to: 'at + 4 * i' },
  {
    check: 'handOver.drawingUnit',
    file: 'core/handover/drawing/writeDxf.ts',
    from: 'Units.Millimeters',
    to: 'Units.Inches',
  },
  {
    check: 'handOver.sheet',
    file: 'core/handover/drawing/formats.ts',
    from: "'A3', width: 420",
    to: "'A3', width: 410",
  },
  {
    check: 'handOver.metricDriver',
    file: 'core/make/changeGears.ts',
    from: 'const wanted = lead / leadscrew;',
    to: 'const wanted = leadscrew / lead;',
  },
  {
    check: 'handOver.transposingWheel',
    file: 'core/make/changeGears.ts',
    from: 'ratio: driver / driven',
    to: 'ratio: driven / driver',
  },
  {
    check: 'handOver.guidelineClearance',
    file: 'core/make/runningClearance.ts',
    from: 'guidelineClearanceShare = 0.0015',
    to: 'guidelineClearanceShare = 0.002',
  },
  {
    check: 'handOver.growth',
    file: 'core/make/runningClearance.ts',
    from: 'diameter * expansion * rise',
    to: '2 * diameter * expansion * rise',
  },
];
