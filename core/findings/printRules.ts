/** Findings about what leaves the nozzle. */

import { viscosityAt } from '../material/viscosityLaw.ts';
import { flowingTemperature } from '../prediction/flowState.ts';
import { pinchTime } from '../print/ooze.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type FindingRule, found } from './context.ts';

const flow = (value: number) => formatQuantity(value, 'mm³/s', 3);

/** Melt thinner than this, Pa s, drips from any open nozzle; own estimate from gravity head and 1 mm bores. */
const drippingViscosity = 30;

/** Rules of the print side. */
export const printRules: readonly FindingRule[] = [
  {
    code: 'demand-not-met',
    about: 'output against what the print asks for',
    check: ({ prediction }) => {
      const { margin, demand, speedForDemand } = prediction.print;
      if (margin >= 1) return null;
      const faster =
        speedForDemand === null
          ? 'No speed of this drive meets it.'
          : `Turning at ${formatQuantity(speedForDemand, 'rpm', 3)} would meet it.`;
      const slower = formatQuantity(prediction.print.highestSpeed, 'mm/s', 3);
      return found({
        severity: 'warn',
        where: 'print',
        saw: `The print asks for ${flow(demand)}; ${flow(prediction.output.volumeFlow)} come out.`,
        why: 'Lines come out thin and gaps open.',
        change: `${faster} Or print at ${slower} at most, or lay a smaller line.`,
        value: prediction.output.volumeFlow,
        limit: demand,
        unit: 'm³/s',
      });
    },
  },
  {
    code: 'far-above-demand',
    about: 'output far above what the print asks for',
    check: ({ prediction }) => {
      const { margin, speedForDemand } = prediction.print;
      if (margin < 3 || speedForDemand === null) return null;
      return found({
        severity: 'note',
        where: 'print',
        saw: `${formatNumber(margin, 3)} times what the print asks for comes out at this speed.`,
        why: 'The screw will turn slower than set; melt then stays longer than shown here.',
        change: `Judge residence and colour at ${formatQuantity(speedForDemand, 'rpm', 3)}, the speed that meets the print.`,
        value: margin,
        limit: 3,
        unit: '',
      });
    },
  },
  {
    code: 'drips',
    about: 'thin melt at the orifice',
    check: ({ design }) => {
      const { material, nozzle, process } = design;
      const radius = nozzle.segments[nozzle.segments.length - 1].endDiameter / 2;
      const law = material.viscosityLaw(flowingTemperature(material, nozzle.setTemperature), process.backPressure);
      const viscosity = viscosityAt(law, 1);
      if (viscosity >= drippingViscosity) return null;
      const tension = material.surfaceTension;
      const pinch =
        tension === null
          ? ''
          : ` A thread pinches off in ${formatQuantity(pinchTime(viscosity, radius, tension), 's', 2)}.`;
      return found({
        severity: 'warn',
        where: 'orifice',
        z: null,
        saw: `At ${formatQuantity(nozzle.setTemperature, '°C', 3)} the melt has ${formatQuantity(viscosity, 'Pa·s', 2)}.${pinch}`,
        why: 'So thin a melt drips from the open nozzle and forms drops instead of a strand when the nozzle is lifted.',
        change: 'Run colder, use a smaller bore or a shut-off, and keep the nozzle on the work.',
        value: viscosity,
        limit: drippingViscosity,
        unit: 'Pa s',
      });
    },
  },
  {
    code: 'line-wider-than-high',
    about: 'line section',
    check: ({ design }) =>
      design.print.lineWidth >= design.print.layerHeight
        ? null
        : found({
            severity: 'note',
            where: 'print',
            saw: 'The line is narrower than the layer is high.',
            why: 'Such a line hardly touches the one below; its section is only a guess.',
            change: 'Use a line at least as wide as high.',
            value: design.print.lineWidth,
            limit: design.print.layerHeight,
            unit: 'm',
          }),
  },
];
