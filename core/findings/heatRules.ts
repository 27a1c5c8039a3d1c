/** Findings about temperatures and melting. */

import { formatQuantity } from '../units.ts';
import { type FindingRule, found } from './context.ts';
import { nozzleOf, wattsText } from './heaterRules.ts';
import { hottest } from './hottest.ts';

const celsius = (value: number) => formatQuantity(value, '°C', 3);
const mm = (value: number) => formatQuantity(value, 'mm', 3);

/** Melting capacity over output below which melting holds the output: pumping cannot come closer without turns in the melt. */
const closeToMelting = 1.25;

/** Rules of heat. */
export const heatRules: readonly FindingRule[] = [
  {
    code: 'over-safe-temperature',
    about: 'nothing is hotter than the material’s highest safe temperature',
    check: (context) => {
      const { maxSafe } = context.design.material;
      const hot = hottest(context);
      if (hot.temperature <= maxSafe) return null;
      return found({
        severity: 'stop',
        where: hot.where,
        z: hot.z,
        saw: `${celsius(hot.temperature)} is above the highest safe temperature, ${celsius(maxSafe)}.`,
        why: 'The material breaks down fast; gas and fumes form and pressure can rise.',
        change: 'Lower the set temperature or the speed.',
        value: hot.temperature,
        limit: maxSafe,
        unit: 'K',
      });
    },
  },
  {
    code: 'outside-window',
    about: 'melt leaves within the processing window',
    check: ({ design, prediction }) => {
      const { windowLow, windowHigh, maxSafe } = design.material;
      const nozzle = nozzleOf(prediction).reached;
      const melt = prediction.axial.meltTemperature[prediction.stations.count - 1];
      const value = nozzle < windowLow || nozzle > windowHigh ? nozzle : melt;
      if (value > maxSafe || (value >= windowLow && value <= windowHigh)) return null;
      return found({
        severity: 'warn',
        where: value === nozzle ? 'nozzle' : 'end of the screw',
        z: design.barrel.length,
        saw: `${celsius(value)} lies outside the window of ${celsius(windowLow)} to ${celsius(windowHigh)}.`,
        why: value < windowLow ? 'Cold melt is stiff and may not bond.' : 'Hot melt ages faster and runs.',
        change: value < windowLow ? 'Raise the set temperatures.' : 'Lower the set temperatures.',
        value,
        limit: value < windowLow ? windowLow : windowHigh,
        unit: 'K',
      });
    },
  },
  {
    code: 'nozzle-below-melting',
    about: 'the nozzle is hot enough for the material to flow',
    check: ({ design, prediction }) => {
      const { melting } = design.material;
      const { setTemperature, reached } = nozzleOf(prediction);
      const value = Math.min(setTemperature, reached);
      if (value >= melting) return null;
      const carried = reached >= melting;
      return found({
        severity: carried ? 'warn' : 'stop',
        where: 'nozzle',
        z: design.barrel.length,
        saw: `The nozzle is set to ${celsius(setTemperature)} and stands at ${celsius(reached)}; the material flows from ${celsius(melting)}.`,
        why: carried
          ? 'Barrel and melt alone keep it open; it freezes in a draught or a pause.'
          : 'The melt freezes in the nozzle and the pressure behind it rises.',
        change: carried
          ? 'Raise the nozzle’s set temperature.'
          : 'Raise the nozzle’s set temperature and watts. The numbers shown take its melt at the melting temperature.',
        value,
        limit: melting,
        unit: 'K',
      });
    },
  },
  {
    code: 'not-molten',
    about: 'granules are molten before the screw ends',
    check: (context) => {
      const { prediction, driven, machine } = context;
      const { start } = driven.point.state.melt;
      if (start.reach < machine.stations.count - 1) return null;
      const weak = wattsText(context);
      return found({
        severity: 'stop',
        where: 'end of the screw',
        z: prediction.geometry.sectionsLength,
        saw: `The granules are not molten where the screw ends.${weak}`,
        why: 'Solid pieces reach the nozzle and block it.',
        change: weak
          ? 'Install more watts there or insulate it; higher set temperatures alone change nothing.'
          : 'Raise the zone temperatures, lengthen the heated zone, or turn slower.',
        value: prediction.melting.engagement.unmelted,
        limit: 0,
      });
    },
  },
  {
    code: 'melting-limits',
    about: 'melting keeps pace with pumping',
    check: ({ prediction }) => {
      const { volumeFlow } = prediction.output;
      const melting = prediction.capacities.find(({ kind }) => kind === 'melting')?.volumeFlow ?? 0;
      if (!(volumeFlow > 0) || melting > closeToMelting * volumeFlow) return null;
      return found({
        severity: 'warn',
        where: 'heated length',
        z: prediction.geometry.sectionsLength,
        saw: `At most ${formatQuantity(melting, 'mm³/s', 3)} melt before the flights end; ${formatQuantity(volumeFlow, 'mm³/s', 3)} come out.`,
        why: 'At more than this, unmolten granules reach the nozzle.',
        change: 'Lengthen the heated zone, raise its temperature, make the channel shallower, or turn slower.',
        value: melting,
        limit: closeToMelting * volumeFlow,
        unit: 'm³/s',
      });
    },
  },
  {
    code: 'flights-end-early',
    about: 'flights still run where the melt begins',
    check: ({ prediction, driven, machine }) => {
      const { start } = driven.point.state.melt;
      const { stations, lastFlight } = machine;
      if (lastFlight < 0 || start.reach >= stations.count - 1) return null;
      const front = stations.z[start.reach + 1];
      const end = stations.z[lastFlight];
      const turns = (end - front) / Math.max(stations.lead[lastFlight], 1e-6);
      if (turns >= 1.5) return null;
      return found({
        severity: turns < 0 ? 'stop' : 'warn',
        where: 'melt front',
        z: Math.min(front, prediction.geometry.sectionsLength),
        saw: `The granules are molten from ${mm(front)} on; the last flight ends at ${mm(end)}.${prediction.limit === 'pumping' ? ' Pumping limits the output because melting is so late.' : ''}`,
        why: 'With less than one and a half turns in the melt the screw builds little pressure; only granules push from behind.',
        change: 'Carry the flights further, move the heat upstream, or turn slower.',
        value: turns,
        limit: 1.5,
        unit: 'turns',
      });
    },
  },
];
