/** Breaks that the checks of this stage must notice. */

import type { Break } from './types.ts';

/** One a check. */
export const printBreaks: readonly Break[] = [
  {
    check: 'print.flowOfLine',
    file: 'core/print/bead.ts',
    from: 'return (width - height) * height + (Math.PI / 4) * height * height;',
    to: 'return width * height;',
  },
  {
    check: 'print.lineOverRectangle',
    file: 'core/print/bead.ts',
    from: '(width - height) * height + (Math.PI / 4)',
    to: '(width - height) * height + (Math.PI / 2)',
  },
  {
    check: 'print.passesOfWall',
    file: 'core/print/bead.ts',
    from: '(wall - width) / lineSpacing(width, height) + 1',
    to: 'wall / lineSpacing(width, height) + 1',
  },
  {
    check: 'print.unitFilament',
    file: 'core/print/firmware.ts',
    from: '2e-3 / Math.sqrt(Math.PI)',
    to: '1e-3 / Math.sqrt(Math.PI)',
  },
  {
    check: 'print.stepsPerFilament',
    file: 'core/print/bead.ts',
    from: '(stepsPerVolume * Math.PI * filamentDiameter ** 2) / 4',
    to: '(stepsPerVolume * Math.PI * filamentDiameter ** 2) / 2',
  },
  {
    check: 'print.storedVolume',
    file: 'core/print/ooze.ts',
    from: 'stored: ranged((kappa) => kappa * volume * pressure)',
    to: 'stored: ranged((kappa) => (kappa * volume * pressure) / 2)',
  },
  {
    check: 'print.releaseTime',
    file: 'core/print/ooze.ts',
    from: '(compressibility * volume) / (1 / nozzleResistance + 1 / screwResistance)',
    to: '(compressibility * volume) * (1 / nozzleResistance + 1 / screwResistance)',
  },
  {
    check: 'print.releaseOfThinningMelt',
    file: 'core/print/ooze.ts',
    from: '(left ** -excess - 1) / excess',
    to: '(left ** -excess + 1) / excess',
  },
  {
    check: 'print.heldColumn',
    file: 'core/print/drip.ts',
    from: '(2 * surfaceTension) / radius',
    to: 'surfaceTension / radius',
  },
  {
    check: 'print.ohnesorgeOfInk',
    file: 'core/print/strand.ts',
    from: 'viscosity / Math.sqrt(density * surfaceTension * radius)',
    to: 'viscosity / (density * surfaceTension * radius)',
  },
  {
    check: 'print.breakUpOfThinJet',
    file: 'core/print/strand.ts',
    from: 'Math.sqrt((density * radius ** 3) / surfaceTension) / inertialGrowth',
    to: 'Math.sqrt((density * radius ** 3) / surfaceTension) * inertialGrowth',
  },
  {
    check: 'print.biotOfApple',
    file: 'core/print/cooling.ts',
    from: '(coefficient * size) / conductivity',
    to: 'coefficient * size * conductivity',
  },
  {
    check: 'print.thermocouple',
    file: 'core/print/cooling.ts',
    from: 'timeConstant * Math.log(Math.max(1, (outlet - air) / (setTemperature - air)))',
    to: 'timeConstant * Math.log10(Math.max(1, (outlet - air) / (setTemperature - air)))',
  },
  {
    check: 'print.steelBall',
    file: 'core/print/cooling.ts',
    from: 'const size = lineArea(width, height) / linePerimeter(width, height);',
    to: 'const size = (4 * lineArea(width, height)) / linePerimeter(width, height);',
  },
  {
    check: 'print.quenchOfGlass',
    file: 'core/print/cracking.ts',
    from: '(stress * (1 - poisson)) / (young * expansion)',
    to: '(stress * (1 + poisson)) / (young * expansion)',
  },
];
