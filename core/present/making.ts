/** What a maker wants to hold screw, bore and shank to. */

import type { Design } from '../design/types.ts';
import { slidingFit } from '../make/isoFits.ts';
import { guidelineClearance, newClearanceShare, thermalGrowth } from '../make/runningClearance.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { quantityRow, textRow } from './row.ts';
import type { PresentedGroup } from './types.ts';

const microns = (metres: number): string => `${formatNumber(metres * 1e6, 2)} µm`;

/** Clearances and fits of a design. */
export function makingGroup(design: Design): PresentedGroup {
  const { barrel, screw, process, nozzle } = design;
  const bore = barrel.boreDiameter;
  const sets = barrel.zones.flatMap((zone) => (zone.kind === 'heated' ? [zone.setTemperature] : []));
  const rise = Math.max(nozzle.setTemperature, ...sets) - process.ambient;
  const fit = slidingFit(screw.shankDiameter, 'g6');
  return {
    id: 'making',
    title: 'Making',
    rows: [
      textRow(
        {
          id: 'usualClearance',
          label: 'Clearance the trade holds',
          help: 'Per side: 0.001 of the bore on a new industrial screw, 0.0015 as a guideline. Prototypes run with more.',
        },
        `${formatQuantity(guidelineClearance(bore, newClearanceShare), 'mm', 2)} to ${formatQuantity(guidelineClearance(bore), 'mm', 2)}`,
      ),
      quantityRow(
        {
          id: 'hotGrowth',
          label: 'Screw grows when hot',
          help: 'On diameter, from room to the hottest set temperature. A barrel of other metal grows more or less.',
        },
        thermalGrowth(bore - 2 * screw.radialClearance, screw.steel.expansion, rise),
        'mm',
        2,
      ),
      textRow(
        {
          id: 'shankFit',
          label: 'Shank g6 in an H7 bore',
          help: 'Play after ISO 286 for a shank that turns or slides; sizes above 6 mm up to 30 mm.',
        },
        fit ? `${microns(fit.least)} to ${microns(fit.most)} of play` : 'outside the table kept here',
      ),
    ],
  };
}
