/** Breaks that the checks of this stage must notice. */

import type { Break } from './types.ts';

/** One a check. */
export const driveBreaks: readonly Break[] = [
  { check: 'drive.notchTo07', file: 'core/drive/notch.ts', from: '0.905 + 0.783 * root', to: '0.905 - 0.783 * root' },
  { check: 'drive.notchTo08', file: 'core/drive/notch.ts', from: '1.557 + 1.073 * root', to: '1.557 - 1.073 * root' },
  { check: 'drive.notchTo09', file: 'core/drive/notch.ts', from: '- 0.075 * ratio;', to: '+ 0.075 * ratio;' },
  {
    check: 'drive.notchSmallStepSharp',
    file: 'core/drive/notch.ts',
    from: 'const relative = (2 * step) / thick;',
    to: 'const relative = (8 * step) / thick;',
  },
  {
    check: 'drive.notchSmallStep',
    file: 'core/drive/notch.ts',
    from: 'const ratio = step / fillet;',
    to: 'const ratio = fillet / step;',
  },
  {
    check: 'drive.notchLargeStep',
    file: 'core/drive/notch.ts',
    from: '-0.437 - 1.969 * root',
    to: '-0.437 + 1.969 * root',
  },
  {
    check: 'drive.shearOfShaft',
    file: 'core/drive/strength.ts',
    from: 'return (16 * torque * diameter)',
    to: 'return (32 * torque * diameter)',
  },
  {
    check: 'drive.shearOf4inShaft',
    file: 'core/drive/strength.ts',
    from: '(diameter ** 4 - bore ** 4)',
    to: '(diameter ** 3 - bore ** 3)',
  },
  {
    check: 'drive.windUp',
    file: 'core/drive/strength.ts',
    from: 'const shear = young / (2 * (1 + metalPoisson));',
    to: 'const shear = young / (2 * (1 - metalPoisson));',
  },
  {
    check: 'drive.bowing',
    file: 'core/drive/strength.ts',
    from: '(Math.PI * diameter ** 4) / 64',
    to: '(Math.PI * diameter ** 4) / 32',
  },
  {
    check: 'drive.torqueOf55kW',
    file: 'core/drive/motor.ts',
    from: 'power / (2 * Math.PI * speed)',
    to: 'power / (Math.PI * speed)',
  },
  {
    check: 'drive.torqueOfHorsepower',
    file: 'core/drive/motor.ts',
    from: 'power / (2 * Math.PI * speed)',
    to: 'power / speed',
  },
  {
    check: 'drive.lifeOfBallBearing',
    file: 'core/drive/bearing.ts',
    from: '(dynamicLoad / load) **',
    to: '(load / dynamicLoad) **',
  },
  { check: 'drive.lifeOfRollerBearing', file: 'core/drive/bearing.ts', from: 'roller: 10 / 3', to: 'roller: 3' },
  {
    check: 'drive.hoursOfBallBearing',
    file: 'core/drive/bearing.ts',
    from: 'turns / screwSpeed',
    to: 'turns * screwSpeed',
  },
  {
    check: 'drive.thrust',
    file: 'core/drive/strength.ts',
    from: '(headPressure * Math.PI * bore * bore) / 4',
    to: 'headPressure * Math.PI * bore * bore',
  },
  {
    check: 'drive.hoopOfThinTube',
    file: 'core/drive/pressureWall.ts',
    from: '(pressure * inner) / (outer - inner)',
    to: '(pressure * inner) / (outer + inner)',
  },
  {
    check: 'drive.hoopOfThickTube',
    file: 'core/drive/pressureWall.ts',
    from: '(pressure * (outer ** 2 + inner ** 2))',
    to: '(pressure * (outer ** 2 - inner ** 2))',
  },
  {
    check: 'drive.equivalentOfThickTube',
    file: 'core/drive/pressureWall.ts',
    from: '(2 * pressure * outer ** 2)',
    to: '(pressure * outer ** 2)',
  },
];
