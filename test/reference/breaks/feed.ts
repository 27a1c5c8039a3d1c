/** Breaks that the checks of the feed must notice. */

import type { Break } from './types.ts';

/** One for each check. */
export const feedBreaks: readonly Break[] = [
  {
    check: 'feed.plugAngle',
    file: 'core/feed/plug.ts',
    from: '(2 * depth) / shape.widthBarrel',
    to: 'depth / shape.widthBarrel',
  },
  {
    check: 'feed.plugAngleNearSlip',
    file: 'core/feed/plug.ts',
    from: '(root * root) / tanBarrel',
    to: 'root / tanBarrel',
  },
  {
    check: 'feed.smallPlugAdvance',
    file: 'core/feed/plug.ts',
    from: 'Math.sin(angle) / (Math.sin(angle) + tanBarrel * Math.cos(angle))',
    to: 'Math.sin(angle) / (Math.cos(angle) + tanBarrel * Math.sin(angle))',
  },
  {
    check: 'feed.plugWithPressure',
    file: 'core/feed/plug.ts',
    from: '(rise / shape.depth) * pressureTerm',
    to: 'rise * pressureTerm',
  },
  {
    check: 'feed.measuredAngle',
    file: 'core/feed/plug.ts',
    from: '(Math.max(0, advance) * tanBarrel) / (1 - advance)',
    to: '(Math.max(0, advance) * tanBarrel) / (1 + advance)',
  },
  {
    check: 'feed.conveyorFlow',
    file: 'core/feed/conveyor.ts',
    from: '(Math.PI / 4) * (diameter',
    to: '(Math.PI / 2) * (diameter',
  },
  {
    check: 'feed.twelveInchConveyor',
    file: 'core/feed/conveyor.ts',
    from: '(Math.PI / 4) * (diameter',
    to: '(Math.PI / 2) * (diameter',
  },
  {
    check: 'feed.sixInchConveyor',
    file: 'core/feed/conveyor.ts',
    from: 'diameter ** 2 - shaft ** 2',
    to: 'diameter ** 2',
  },
  {
    check: 'feed.conveyorPower',
    file: 'core/feed/conveyor.ts',
    from: 'massFlow * gravity * (resistance * length + lift)',
    to: 'massFlow * (resistance * length + lift)',
  },
  {
    check: 'feed.conveyorLift',
    file: 'core/feed/conveyor.ts',
    from: '(resistance * length + lift)',
    to: '(resistance * length - lift)',
  },
  { check: 'feed.perfectBite', file: 'core/feed/throat.ts', from: 'diameter - 2 * depth', to: 'diameter - depth' },
  { check: 'feed.coneOutlet', file: 'core/feed/arching.ts', from: '2 + degrees / 60', to: '2 + degrees / 90' },
  {
    check: 'feed.steepConeOutlet',
    file: 'core/feed/arching.ts',
    from: '/ (bulkDensity * gravity);\n\n/** Cohesive',
    to: '/ bulkDensity;\n\n/** Cohesive',
  },
  { check: 'feed.slotOutlet', file: 'core/feed/arching.ts', from: '1 + degrees / 180', to: '1 + degrees / 60' },
  {
    check: 'feed.massFlowCone',
    file: 'core/feed/flowKind.ts',
    from: '(1 - sine) / (2 * sine)',
    to: '(1 - sine) / (1 + sine)',
  },
  {
    check: 'feed.binOf11m',
    file: 'core/feed/bin.ts',
    from: 'horizontal: lateral * vertical',
    to: 'horizontal: vertical',
  },
  {
    check: 'feed.binOf13m',
    file: 'core/feed/bin.ts',
    from: 'horizontal: lateral * vertical',
    to: 'horizontal: vertical',
  },
  {
    check: 'feed.hopperStress',
    file: 'core/feed/bin.ts',
    from: '-Math.expm1(-rate * depth)',
    to: '-Math.expm1(-2 * rate * depth)',
  },
  {
    check: 'feed.lateralRatio',
    file: 'core/feed/bin.ts',
    from: '1.1 * (1 - Math.sin(angle))',
    to: '1 - Math.sin(angle)',
  },
  {
    check: 'feed.discharge',
    file: 'core/feed/hopper.ts',
    from: 'Math.sqrt(gravity) * open ** 2.5',
    to: 'Math.sqrt(gravity) * open ** 2',
  },
  {
    check: 'feed.sifting',
    file: 'core/feed/flowKind.ts',
    from: '1 / (2 / Math.sqrt(3) - 1)',
    to: '1 / (Math.sqrt(2) - 1)',
  },
];
