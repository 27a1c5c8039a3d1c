/** Breaks that the checks of this stage must notice. */

import type { Break } from './types.ts';

/** One a check. */
export const tipBreaks: readonly Break[] = [
  {
    check: 'tip.gradientAtNarrowEnd',
    file: 'core/flow/pipe.ts',
    from: 'gradient: (2 * wallStress) / radius',
    to: 'gradient: wallStress / radius',
  },
  { check: 'tip.dropOfTaperedDie', file: 'core/flow/cone.ts', from: 'gradient * radius;', to: 'gradient;' },
  {
    check: 'tip.dropOfTaperedDieWithAngle',
    file: 'core/flow/cone.ts',
    from: 'const exact = ((3 / Math.PI)',
    to: 'const exact = ((2.9 / Math.PI)',
  },
  {
    check: 'tip.capillarySlow',
    file: 'core/flow/pipe.ts',
    from: 'return (4 / 3) * wallRate',
    to: 'return (3 / 2) * wallRate',
  },
  {
    check: 'tip.capillaryMiddle',
    file: 'core/flow/pipe.ts',
    from: 'share ** 3 * 3 * t * t',
    to: 'share ** 2 * 3 * t * t',
  },
  {
    check: 'tip.capillaryFast',
    file: 'core/flow/pipe.ts',
    from: '(4 * volumeFlow) / (Math.PI * radius ** 3)',
    to: '(8 * volumeFlow) / (Math.PI * radius ** 3)',
  },
  {
    check: 'tip.rabinowitschFactor',
    file: 'core/flow/pipe.ts',
    from: 'share ** 3 * 3 * t * t',
    to: 'share * 3 * t * t',
  },
  {
    check: 'tip.dropOf1mmNozzle',
    file: 'core/flow/pipe.ts',
    from: '(4 * volumeFlow) / (Math.PI * radius ** 3)',
    to: '(4 * volumeFlow) / (Math.PI * radius ** 2)',
  },
  {
    check: 'tip.ringGradient',
    file: 'core/flow/annulus.ts',
    from: 'const exact = 8 / (Math.PI',
    to: 'const exact = 6 / (Math.PI',
  },
  {
    check: 'tip.stepFromReservoir',
    file: 'core/flow/step.ts',
    from: 'return 2 * wallStress * stepLength(',
    to: 'return wallStress * stepLength(',
  },
  {
    check: 'tip.dropFlatShoulder',
    file: 'core/flow/tip/forces.ts',
    from: 'pa * rb + pb * ra)) / 6',
    to: 'pa * rb + pb * ra)) / 5',
  },
  {
    check: 'tip.oldFlatShoulder',
    file: 'core/flow/tip/ageField.ts',
    from: 'work.source(point.z, point.r) : 1;',
    to: 'work.source(point.z, point.r) : 2;',
  },
  {
    check: 'tip.eddyFlatShoulder',
    file: 'core/flow/tip/wallShear.ts',
    from: 'return -along / ((2 / 3)',
    to: 'return along / ((2 / 3)',
  },
  {
    check: 'tip.dropBluntEntry',
    file: 'core/flow/tip/strain.ts',
    from: 'out[2] = Math.SQRT2 * e2;',
    to: 'out[2] = e2;',
  },
  {
    check: 'tip.oldBluntEntry',
    file: 'core/flow/tip/ageStatistics.ts',
    from: '[3, 5, 10].map((times) => ({ limit: times * meanTime',
    to: '[3, 5, 10].map((times) => ({ limit: 0.5 * times * meanTime',
  },
  {
    check: 'tip.dropFlatShoulderThinning',
    file: 'core/flow/tip/stressUpdate.ts',
    from: 'state.curve[2 * point] = size / mark.rate;',
    to: 'state.curve[2 * point] = 2 * size / mark.rate;',
  },
  {
    check: 'tip.oldFlatShoulderThinning',
    file: 'core/flow/tip/ageField.ts',
    from: 'along[a] * point.value[b] +',
    to: '0.5 * along[a] * point.value[b] +',
  },
  {
    check: 'tip.eddyFlatShoulderThinning',
    file: 'core/flow/tip/eddies.ts',
    from: 'const share = a.stress / (a.stress - b.stress);',
    to: 'const share = -20 * a.stress / (a.stress - b.stress);',
  },
  {
    check: 'tip.meanAgeAtOrifice',
    file: 'core/flow/tip/ageField.ts',
    from: '+= point.flow * point.shape[a] * point.shape[b]',
    to: '+= 0.9 * point.flow * point.shape[a] * point.shape[b]',
  },
  {
    check: 'tip.eddyOfContraction',
    file: 'core/flow/tip/eddies.ts',
    from: 'lengthBefore: Math.max(0, s - stretch.from)',
    to: 'lengthBefore: Math.max(0, stretch.to - stretch.from)',
  },
  {
    check: 'tip.torqueOfTurningCore',
    file: 'core/flow/tip/forces.ts',
    from: 'torque += 2 * Math.PI * mesh.y[node]',
    to: 'torque += Math.PI * mesh.y[node]',
  },
  {
    check: 'tip.solvedTaperedDie',
    file: 'core/material/viscosityLaw.ts',
    from: '** ((law.index - 1) / 2);',
    to: '** (law.index - 1);',
  },
  {
    check: 'tip.sucroseThroughPipe',
    file: 'core/flow/pipe.ts',
    from: 'gradient: (2 * wallStress) / radius',
    to: 'gradient: (3 * wallStress) / radius',
  },
  {
    check: 'tip.sucroseThroughRing',
    file: 'core/flow/annulus.ts',
    from: 'const round = Math.PI * (boreRadius + coreRadius);',
    to: 'const round = 2 * Math.PI * boreRadius;',
  },
  {
    check: 'tip.doubledFlow',
    file: 'core/material/viscosityLaw.ts',
    from: '** ((law.index - 1) / 2);',
    to: '** (law.index - 1);',
  },
  {
    check: 'tip.refinedDrop',
    file: 'core/flow/tip/tipMesh.ts',
    from: '{ wall: 0.06, corner: 0.02, growth: 0.25, largest: 0.15 }',
    to: '{ wall: 0.9, corner: 0.9, growth: 2, largest: 2 }',
  },
  {
    check: 'tip.refinedOld',
    file: 'core/flow/tip/tipMesh.ts',
    from: '{ wall: 0.06, corner: 0.02, growth: 0.25, largest: 0.15 }',
    to: '{ wall: 0.9, corner: 0.9, growth: 2, largest: 2 }',
  },
  {
    check: 'tip.washedMean',
    file: 'core/flow/tip/ageField.ts',
    from: '+= point.flow * point.shape[a] * point.shape[b]',
    to: '+= 0.9 * point.flow * point.shape[a] * point.shape[b]',
  },
  {
    check: 'tip.washedOld',
    file: 'core/flow/tip/ageField.ts',
    from: 'work.source(point.z, point.r) : 1;',
    to: 'work.source(point.z, point.r) : 2;',
  },
  {
    check: 'tip.washedByMean',
    file: 'core/flow/tip/ageStatistics.ts',
    from: 'fraction: (passed - flow / 2) / total',
    to: 'fraction: (passed - flow / 2) / (1.1 * total)',
  },
];
