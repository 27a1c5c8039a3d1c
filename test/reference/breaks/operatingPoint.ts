/** Breaks that the checks of this stage must notice. */

import type { Break } from './types.ts';

/** One a check. */
export const operatingPointBreaks: readonly Break[] = [
  {
    check: 'operatingPoint.pressureOf75mmScrew',
    file: 'core/prediction/flowState.ts',
    from: 'const headPressure = process.backPressure + drop.total;',
    to: 'const headPressure = process.backPressure + 2 * drop.total;',
  },
  {
    check: 'operatingPoint.flowOf75mmScrew',
    file: 'core/flow/channel.ts',
    from: 'pulling -= flow.gradient * length;',
    to: 'pulling -= 0.5 * flow.gradient * length;',
  },
  {
    check: 'operatingPoint.flowOf30mmScrew',
    file: 'core/flow/reach.ts',
    from: 'const down = speed * Math.cos(shape.helixBarrel);',
    to: 'const down = speed;',
  },
  {
    check: 'operatingPoint.flowOfTaperedScrew',
    file: 'core/flow/reach.ts',
    from: 'const speed = 2 * Math.PI * shape.barrelRadius * screwSpeed;',
    to: 'const speed = 2 * Math.PI * shape.rootRadius * screwSpeed;',
  },
  {
    check: 'operatingPoint.pressureOfTaperedScrew',
    file: 'core/flow/headDrop.ts',
    from: 'return plain(pipeFlow(law, boreStart, volumeFlow).gradient * length);',
    to: 'return plain(pipeFlow(law, boreEnd, volumeFlow).gradient * length * 1.1);',
  },
  {
    check: 'operatingPoint.powerOf75mmScrew',
    file: 'core/flow/reach.ts',
    from: 'const around = loaded.down.lidStress * cos + loaded.cross.lidStress * sin;',
    to: 'const around = loaded.down.lidStress * cos;',
  },
  {
    check: 'operatingPoint.heatOf75mmScrew',
    file: 'core/flow/reach.ts',
    from: 'const channelArea = (shape.starts * shape.widthBarrel) / sin;',
    to: 'const channelArea = shape.starts * shape.widthBarrel;',
  },
  {
    check: 'operatingPoint.bestEfficiency',
    file: 'core/flow/plate.ts',
    from: 'lidStress: (unknowns[2 * c] + unknowns[2 * c + 1] / 2)',
    to: 'lidStress: (unknowns[2 * c] + unknowns[2 * c + 1] / 3)',
  },
  {
    check: 'operatingPoint.flowOf8mmScrew',
    file: 'core/flow/reach.ts',
    from: 'const drag = dragFactor * shape.widthBarrel * openPerWidth;',
    to: 'const drag = shape.widthBarrel * openPerWidth;',
  },
  {
    check: 'operatingPoint.flowOf8mmScrewThinning',
    file: 'core/path/channelNode.ts',
    from: 'const pressure = solved / (shape.starts * shape.widthMean * plate);',
    to: 'const pressure = solved / (shape.starts * shape.widthBarrel * plate);',
  },
  {
    check: 'operatingPoint.flowOf85mmScrew',
    file: 'core/flow/reach.ts',
    from: 'loaded.down.gradient / Math.sin(shape.helixMean)',
    to: 'loaded.down.gradient / Math.cos(shape.helixMean)',
  },
];
