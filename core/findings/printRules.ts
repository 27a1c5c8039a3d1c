/** Findings about what leaves the nozzle. */

import { gravity } from '../math/constants.ts';
import { heldHead, meltColumn } from '../print/drip.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type FindingRule, found } from './context.ts';
import { meltLineRules } from './meltLineRules.ts';
import { lengthText, pressureText } from './words.ts';

const flow = (value: number) => formatQuantity(value, 'mm³/s', 3);

/** Times the weight of the melt or the hold of its skin below which the screw does not rule the flow; own choice. */
const weightShare = 3;

/** Rules of the print side. */
export const printRules: readonly FindingRule[] = [
  {
    code: 'demand-not-met',
    about: 'output against what the print asks for',
    check: ({ prediction }) => {
      const { margin, demand, speedForDemand } = prediction.print;
      if (margin >= 1) return null;
      const slower = `print at ${formatQuantity(prediction.print.highestSpeed, 'mm/s', 3)} at most, or lay a smaller line`;
      const change =
        speedForDemand === null
          ? `No speed of this drive meets it: ${slower}.`
          : `Turn at ${formatQuantity(speedForDemand, 'rpm', 3)}, which would meet it, ${slower}.`;
      return found({
        severity: 'warn',
        where: 'print',
        saw: prediction.output.flows
          ? `The print asks for ${flow(demand)}; ${flow(prediction.output.volumeFlow)} come out.`
          : `The print asks for ${flow(demand)}; nothing comes out.`,
        why: prediction.output.flows ? 'Lines come out thin and gaps open.' : 'Nothing is laid.',
        change: prediction.output.flows ? change : 'Mend first what stops the output.',
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
    code: 'weight-and-skin',
    about: 'head pressure against the melt’s own weight and the skin at the orifice',
    check: ({ design, driven, machine, prediction }) => {
      const { material, nozzle, barrel } = design;
      const { flows, headPressure } = prediction.output;
      if (!flows) return null;
      const { start } = driven.point.state.melt;
      const from = machine.stations.z[Math.min(start.reach, machine.stations.count - 1)];
      const column = meltColumn(barrel.length, from, nozzle.segments);
      const radius = nozzle.segments[nozzle.segments.length - 1].endDiameter / 2;
      const held =
        material.surfaceTension === null ? 0 : heldHead(material.surfaceTension, radius, material.meltDensity);
      const asPressure = (height: number) => material.meltDensity * gravity * height;
      const limit = weightShare * asPressure(Math.max(column, held));
      if (headPressure >= limit) return null;
      const skin = held > 0 ? `, and the skin at the orifice holds ${pressureText(asPressure(held))}` : '';
      return found({
        severity: 'warn',
        where: 'orifice',
        saw: `The head stands under ${pressureText(headPressure)}; ${lengthText(column)} of melt standing upright press with ${pressureText(asPressure(column))}${skin}.`,
        why: 'Weight and surface tension are not in this model: how the machine hangs, how full it is and how the orifice is wetted decide what comes out.',
        change: 'Take the output as rough. A smaller orifice, a colder nozzle or a shut-off lets the screw rule.',
        value: headPressure,
        limit,
        unit: 'Pa',
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
  ...meltLineRules,
];
