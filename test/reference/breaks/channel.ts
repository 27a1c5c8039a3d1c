/** Breaks that the checks of this stage must notice. */

import type { Break } from './types.ts';

/** One a check. */
export const channelBreaks: readonly Break[] = [
  {
    check: 'channel.openFlowOf75mmScrew',
    file: 'core/flow/reach.ts',
    from: 'const speed = 2 * Math.PI * shape.barrelRadius * screwSpeed;',
    to: 'const speed = Math.PI * shape.barrelRadius * screwSpeed;',
  },
  {
    check: 'channel.flowAgainst7MPa',
    file: 'core/flow/reach.ts',
    from: 'loaded.down.gradient / Math.sin(shape.helixMean)',
    to: 'loaded.down.gradient * Math.sin(shape.helixMean)',
  },
  {
    check: 'channel.flowOf5inScrew',
    file: 'core/flow/reach.ts',
    from: 'const down = speed * Math.cos(shape.helixBarrel);',
    to: 'const down = speed * Math.sin(shape.helixBarrel);',
  },
  {
    check: 'channel.flowOf65mmScrew',
    file: 'core/flow/reach.ts',
    from: '(drag - throughFlow / shape.starts)',
    to: '(drag + throughFlow / shape.starts)',
  },
  {
    check: 'channel.speedOf110mmScrew',
    file: 'core/flow/plate.ts',
    from: 'side.wallSpeed / 2 - side.value / gap',
    to: 'side.wallSpeed / 3 - side.value / gap',
  },
  {
    check: 'channel.closedPressureOf80mmScrew',
    file: 'core/flow/plate.ts',
    from: '(unknowns[2 * c + 1] * scaled.stress) / gap',
    to: '(unknowns[2 * c + 1] * scaled.stress) / (2 * gap)',
  },
  {
    check: 'channel.pressureOf4inScrew',
    file: 'core/flow/reach.ts',
    from: 'return openPerWidth - (drag',
    to: 'return 0.5 * openPerWidth - (drag',
  },
  {
    check: 'channel.dragOverFlight',
    file: 'core/flow/leakage.ts',
    from: 'dragged: (crossSpeed * shape.clearance) / 2',
    to: 'dragged: crossSpeed * shape.clearance',
  },
  {
    check: 'channel.widthFactorOfSquare',
    file: 'core/flow/shapeFactors.ts',
    from: '/ (2 * ratio)) / i ** 5',
    to: '/ (2 * ratio)) / i ** 4',
  },
  {
    check: 'channel.widthFactorAt1To2Half',
    file: 'core/flow/shapeFactors.ts',
    from: '((192 * ratio) / Math.PI ** 5)',
    to: '((192 * ratio) / Math.PI ** 4)',
  },
  {
    check: 'channel.widthFactorAt1To5',
    file: 'core/flow/shapeFactors.ts',
    from: 'return 1 - ((192 * ratio)',
    to: 'return 1 + ((192 * ratio)',
  },
  {
    check: 'channel.widthFactorAt1To10',
    file: 'core/flow/shapeFactors.ts',
    from: '((192 * ratio)',
    to: '((180 * ratio)',
  },
  {
    check: 'channel.dragFactorOfSquare',
    file: 'core/flow/shapeFactors.ts',
    from: '(16 / (Math.PI ** 3 * ratio))',
    to: '(15 / (Math.PI ** 3 * ratio))',
  },
  {
    check: 'channel.closedGradientWideN5',
    file: 'core/flow/plateSums.ts',
    from: 'Math.sqrt(down * down + cross * cross)',
    to: 'Math.sqrt(down * down + 0.5 * cross * cross)',
  },
  {
    check: 'channel.closedGradientWideN3',
    file: 'core/flow/plateSums.ts',
    from: 'Math.sqrt(down * down + cross * cross)',
    to: '(Math.abs(down) + Math.abs(cross))',
  },
  {
    check: 'channel.planeFlowN5',
    file: 'core/flow/plate.ts',
    from: 'unknowns[at + 1] = (side.value * gap) / stress',
    to: 'unknowns[at + 1] = (side.value * gap) / (2 * stress)',
  },
  {
    check: 'channel.crossFlowTurns',
    file: 'core/flow/plate.ts',
    from: 'rootStress: (unknowns[2 * c] - unknowns[2 * c + 1] / 2)',
    to: 'rootStress: (unknowns[2 * c] - unknowns[2 * c + 1] / 3)',
  },
  {
    check: 'channel.closedGradientThinning',
    file: 'core/flow/field/prepared.ts',
    from: 'loadPerGradient: (length * length) /',
    to: 'loadPerGradient: (2 * length * length) /',
  },
  {
    check: 'channel.flowAtHalfGradientThinning',
    file: 'core/flow/field/prepared.ts',
    from: 'flow: 2 * starts * speed',
    to: 'flow: starts * speed',
  },
  {
    check: 'channel.crossStreamThinning',
    file: 'core/flow/field/orbitGrid.ts',
    from: 'sum(psi, at) * scales.speed * scales.length',
    to: 'sum(psi, at) * scales.speed',
  },
  {
    check: 'channel.heatThinning',
    file: 'core/flow/field/prepared.ts',
    from: 'power: 2 * viscosity',
    to: 'power: viscosity',
  },
  {
    check: 'channel.barrelStressThinning',
    file: 'core/flow/field/barrelStress.ts',
    from: 'along: viscosity * rate *',
    to: 'along: viscosity *',
  },
  {
    check: 'channel.closedGradientSquare',
    file: 'core/flow/field/strainRows.ts',
    from: 'out[ROWS + 2] = jet.fx;',
    to: 'out[ROWS + 2] = 0.9 * jet.fx;',
  },
  {
    check: 'channel.circulationOfSquareCavity',
    file: 'core/flow/field/strainRows.ts',
    from: 'out[0] = 2 * jet.fxy;',
    to: 'out[0] = jet.fxy;',
  },
  {
    check: 'channel.closedGradientOfDeepHelix',
    file: 'core/flow/field/strainRows.ts',
    from: 'out[7] = jet.fy - jet.f / r;',
    to: 'out[7] = jet.fy + jet.f / r;',
  },
  {
    check: 'channel.openFlowOfDeepHelix',
    file: 'core/flow/field/lid.ts',
    from: 'across: -1 / twist',
    to: 'across: 1 / twist',
  },
  {
    check: 'channel.closedGradientOfThinningHelix',
    file: 'core/flow/field/prepared.ts',
    from: '(viscosity * speed * (twist > 0 ? twist : 1))',
    to: '(viscosity * speed)',
  },
  {
    check: 'channel.flowOfThinningHelix',
    file: 'core/flow/field/strainRows.ts',
    from: 'out[8] = c * (jet.fy - jet.f / r);',
    to: 'out[8] = 0.5 * c * (jet.fy - jet.f / r);',
  },
  {
    check: 'channel.halfPipe',
    file: 'core/flow/field/cellRows.ts',
    from: 'const WALL_STIFFNESS = 100;',
    to: 'const WALL_STIFFNESS = 1e-4;',
  },
  {
    check: 'channel.triangularDuct',
    file: 'core/flow/field/sectionShape.ts',
    from: 'flankSlope: Math.tan(angle)',
    to: 'flankSlope: Math.sin(angle)',
  },
  {
    check: 'channel.closedPressureOf40mmScrew',
    file: 'core/flow/reach.ts',
    from: 'const drag = dragFactor * shape.widthBarrel',
    to: 'const drag = 2 * dragFactor * shape.widthBarrel',
  },
];
