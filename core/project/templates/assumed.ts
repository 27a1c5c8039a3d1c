/** What a new project takes for granted, read back from it with the rule that each value follows. */

import type { Unit } from '../../units.ts';
import type { Project, Revision } from '../schema.ts';

/** One value that was not asked. */
export interface Assumed {
  readonly label: string;
  /** in `unit` */
  readonly value: number;
  readonly unit: Unit | '';
  readonly rule: string;
  readonly source: 'common practice' | 'own choice' | 'from memory' | 'granulate';
}

type Source = Assumed['source'];

const row = (label: string, value: number, unit: Unit, rule: string, source: Source = 'own choice'): Assumed => ({
  label,
  value,
  unit,
  rule,
  source,
});
const mm = (label: string, value: number, rule: string, source?: Source) => row(label, value, 'mm', rule, source);

function ofBarrel({ screw, barrel }: Revision): Assumed[] {
  return [
    mm('Barrel length', barrel.lengthMm, 'four bores of cooled feed and heat break, and the heated length'),
    mm('Barrel outer Ø', barrel.outerDiameterMm, 'twice the bore, 10 mm more at least', 'common practice'),
    mm('Feed opening', barrel.feedOpening.lengthMm, '1.7 bores long, so that every turn passes under it'),
    mm('Flight clearance', screw.radialClearanceMm, '0.5 % of the bore, 0.05 mm at least'),
  ];
}

const depthRule = '1.3 grains or 0.18 bores deep, a core of 0.4 bores at least';

function ofScrew({ screw: { sections } }: Revision): Assumed[] {
  const [first, last] = [sections[0], sections.at(-1)];
  const lead = first?.kind === 'flighted' ? first.leadStartMm : Number.NaN;
  return [
    mm('Root Ø at the feed', first?.rootDiameterEndMm ?? Number.NaN, depthRule, 'common practice'),
    mm('Root Ø at the end', last?.rootDiameterEndMm ?? Number.NaN, 'depth falls 2.5 times', 'common practice'),
    mm('Lead', lead, 'one bore, rounded as a drawing would', 'common practice'),
  ];
}

function ofHeating({ nozzle, barrel }: Revision): Assumed[] {
  const heated = barrel.zones.find((zone) => zone.kind === 'heated');
  const power = heated?.kind === 'heated' ? heated.maxPowerW : Number.NaN;
  const window = 'a third, then the middle of the granulate’s working window';
  return [
    row('Set temperatures', nozzle.setTempC, '°C', window, 'granulate'),
    row('Heater power per zone', power, 'W', '4 W on each cm² of the outside', 'common practice'),
  ];
}

/** What the project of these answers takes for granted, read back from it. */
export function assumedValues(project: Project): Assumed[] {
  const [revision] = project.revisions;
  if (!revision) return [];
  return [
    ...ofBarrel(revision),
    ...ofScrew(revision),
    ...ofHeating(revision),
    mm('Hopper outlet Ø', revision.hopper.outletDiameterMm, 'as long as the feed opening'),
    row('Screw speed', project.process.screwSpeedRpm, 'rpm', 'to begin with'),
    mm('Line width', project.print.lineWidthMm, '1.5 orifices, layers of 0.6 orifices', 'common practice'),
  ];
}
