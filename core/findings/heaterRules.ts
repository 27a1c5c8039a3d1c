/** Findings about heaters: too weak, absent, or not able to keep a zone cool enough. */

import type { HeaterLoad, Prediction } from '../prediction/types.ts';
import { formatQuantity } from '../units.ts';
import { type FindingRule, found } from './context.ts';

const celsius = (value: number) => formatQuantity(value, '°C', 3);
const watts = (value: number) => formatQuantity(value, 'W', 3);

/** How far above its set temperature a zone may stand with its heater off, K. */
const bearable = 5;

/** The nozzle's heater, last in the list. */
export const nozzleOf = ({ heat }: Pick<Prediction, 'heat'>): HeaterLoad => heat.zones[heat.zones.length - 1];

const sentence = ({ name, reached, setTemperature, needed, maxPower }: HeaterLoad): string =>
  `${name}: reaches ${celsius(reached)} of ${celsius(setTemperature)}; needs ${watts(needed)}, has ${watts(maxPower)}, ${watts(needed - maxPower)} are missing.`;

const weakOf = ({ heat }: Pick<Prediction, 'heat'>, part: HeaterLoad['part']): HeaterLoad[] =>
  heat.zones.filter((zone) => zone.part === part && zone.duty === 'weak');

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
      });
    },
  },
  {
    code: 'heater-too-weak',
    about: 'every heated zone holds its set temperature at the working point',
    check: ({ prediction, design }) => {
      const weak = weakOf(prediction, 'zone');
      const { heater, installed } = prediction.heat;
      if (weak.length === 0) return null;
      const zone = design.barrel.zones.find(({ name }) => name === weak[0].name);
      return found({
        severity: 'warn',
        where: weak.map(({ name }) => name).join(', '),
        z: zone ? (zone.start + zone.end) / 2 : null,
        saw: weak.map(sentence).join(' '),
        why: 'The wall stays colder than set; granules melt later or not at all.',
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
