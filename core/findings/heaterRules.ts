/** Findings about heaters: too weak, absent, or not able to keep a zone cool enough. */

import type { HeaterLoad, Prediction } from '../prediction/types.ts';
import { formatQuantity } from '../units.ts';
import { type FindingContext, type FindingRule, found } from './context.ts';

const celsius = (value: number) => formatQuantity(value, '°C', 3);
const watts = (value: number) => formatQuantity(value, 'W', 3);

/** How far above its set temperature a zone may stand with its heater off, K. */
const bearable = 5;

/** Watts wanted over watts there are, from which on some are called missing. */
const lacking = 1.005;

/** The nozzle's heater, last in the list. */
export const nozzleOf = ({ heat }: Pick<Prediction, 'heat'>): HeaterLoad => heat.zones[heat.zones.length - 1];

/** A weak heater may need less than it has, once its neighbours hold theirs: then they are what it lacks. */
function sentence({ name, reached, setTemperature, needed, maxPower }: HeaterLoad): string {
  const state = `${name}: reaches ${celsius(reached)} of ${celsius(setTemperature)}`;
  return needed > lacking * maxPower
    ? `${state}; needs ${watts(needed)}, has ${watts(maxPower)}, ${watts(needed - maxPower)} are missing.`
    : `${state} with all its ${watts(maxPower)}, which would do if its neighbours held theirs: they draw heat from it.`;
}

const weakOf = ({ heat }: Pick<Prediction, 'heat'>, part: HeaterLoad['part']): HeaterLoad[] =>
  heat.zones.filter((zone) => zone.part === part && zone.duty === 'weak');

/** Zones that their own watts leave below melting though they are set above it. */
const coldForWatts = ({ design, prediction }: FindingContext): HeaterLoad[] =>
  weakOf(prediction, 'zone').filter(
    ({ reached, setTemperature }) => reached < design.material.melting && setTemperature >= design.material.melting,
  );

/** Names the watts where they are why granules stay solid; empty where they are not. */
export function wattsText(context: FindingContext): string {
  const cold = coldForWatts(context).map(
    ({ name, reached, setTemperature, maxPower }) =>
      `“${name}” reaches ${celsius(reached)} of ${celsius(setTemperature)} with its ${watts(maxPower)}`,
  );
  return cold.length > 0 ? ` Watts are missing: ${cold.join('; ')}.` : '';
}

/** Whether weak heaters are why nothing melts or comes out. */
function stopsOutput(context: FindingContext): boolean {
  const { limits } = context.driven.point;
  const nothing = limits.melting <= 0 || limits.pumping <= 0 || limits.heater <= 0;
  return nothing && coldForWatts(context).length > 0;
}

/** Rules of heaters. */
export const heaterRules: readonly FindingRule[] = [
  {
    code: 'no-heated-zone',
    about: 'the barrel has a heated zone',
    check: ({ prediction, design }) => {
      if (prediction.heat.zones.some(({ part, maxPower }) => part === 'zone' && maxPower > 0)) return null;
      return found({
        severity: 'stop',
        where: 'barrel',
        z: design.barrel.length / 2,
        saw: 'No zone of the barrel is heated.',
        why: 'Only the nozzle and the shear of the melt would warm the granules; a cold start is impossible.',
        change: 'Make the zone behind the heat break a heated one and give it watts.',
        value: 0,
        limit: 1,
        unit: 'heated zones',
      });
    },
  },
  {
    code: 'heater-too-weak',
    about: 'every heated zone holds its set temperature at the working point',
    check: (context) => {
      const { prediction, design } = context;
      const weak = weakOf(prediction, 'zone');
      const { heater, installed } = prediction.heat;
      if (weak.length === 0) return null;
      const zone = design.barrel.zones.find(({ name }) => name === weak[0].name);
      const stops = stopsOutput(context);
      return found({
        severity: stops ? 'stop' : 'warn',
        where: weak.map(({ name }) => name).join(', '),
        z: zone ? (zone.start + zone.end) / 2 : null,
        saw: weak.map(sentence).join(' '),
        why: stops
          ? 'The wall stays below melting: nothing melts there, and nothing comes out.'
          : 'The wall stays colder than set; granules melt later or not at all.',
        change: `Install more watts or insulate. All heaters together need ${watts(heater)} and have ${watts(installed)}; twice the steady need is common for warming up.`,
        value: weak[0].needed,
        limit: weak[0].maxPower,
        unit: 'W',
      });
    },
  },
  {
    code: 'nozzle-too-weak',
    about: 'the nozzle holds its set temperature at the working point',
    check: ({ prediction, design }) => {
      const [weak] = weakOf(prediction, 'nozzle');
      if (!weak) return null;
      return found({
        severity: 'warn',
        where: 'nozzle',
        z: design.barrel.length,
        saw: sentence(weak),
        why: 'The melt leaves colder and stiffer than set.',
        change: 'Give the nozzle more watts, shorten it, or let the barrel’s last zone warm it.',
        value: weak.needed,
        limit: weak.maxPower,
        unit: 'W',
      });
    },
  },
  {
    code: 'zone-overheats',
    about: 'no heater stands above its set temperature while it is off',
    check: ({ prediction }) => {
      const hot = prediction.heat.zones.filter(
        ({ duty, reached, setTemperature }) => duty === 'off' && reached > setTemperature + bearable,
      );
      if (hot.length === 0) return null;
      const words = hot.map(
        ({ name, reached, setTemperature }) =>
          `${name}: stands at ${celsius(reached)} with its heater off; ${celsius(setTemperature)} is set.`,
      );
      return found({
        severity: 'warn',
        where: hot.map(({ name }) => name).join(', '),
        saw: words.join(' '),
        why: 'Shear or a hotter neighbour brings more heat than the place can lose; its controller can only switch off.',
        change: 'Cool it, turn slower, or bring the set temperatures of neighbours closer together.',
        value: hot[0].reached,
        limit: hot[0].setTemperature + bearable,
        unit: 'K',
      });
    },
  },
];
