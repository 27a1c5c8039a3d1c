/** Findings about plug, melting models, throat and warming up. */

import { formatQuantity } from '../units.ts';
import { type FindingContext, type FindingRule, type Found, found } from './context.ts';
import { lengthText as mm, pressureText } from './words.ts';

const celsius = (value: number) => formatQuantity(value, '°C', 3);

/** Kelvins below softening that a throat should keep running, and standing hot, which is rare; own choice. */
const throatMargin = { running: 10, standing: 5 } as const;

/** Time of warming up after which it is worth a word, s; own choice. */
const longWarmUp = 30 * 60;

/** The throat while running, and at a hot standstill where running is cool enough. */
function throatFinding({ design, prediction }: FindingContext): Found | null {
  const { coldEnd } = prediction;
  const { feedOpening } = design.barrel;
  const state = coldEnd.running.margin < throatMargin.running ? 'running' : 'standing';
  const { margin, wall, core, granules, coldEnd: creep } = coldEnd[state];
  if (margin >= throatMargin[state]) return null;
  const hottest = Math.max(wall, core, granules);
  const part = hottest === core ? 'screw' : hottest === wall ? 'barrel wall' : 'granules';
  const turning = prediction.output.flows ? 'while it runs' : 'while the heaters are on and nothing comes through';
  const when = state === 'running' ? turning : 'once the screw has stood hot for long';
  const through = creep.core > creep.wall ? 'the screw core' : 'the barrel’s wall';
  return found({
    severity: coldEnd.running.margin <= 0 ? 'stop' : state === 'running' || margin < 0 ? 'warn' : 'note',
    where: 'feed opening',
    z: feedOpening.start + feedOpening.length,
    saw: `Under the feed opening the ${part} ${part === 'granules' ? 'reach' : 'reaches'} ${celsius(hottest)} ${when}; granules soften from ${celsius(design.material.softening)}.`,
    why: `Softened granules glue the throat shut. Most of the heat comes back through ${through} (${formatQuantity(Math.max(creep.core, creep.wall), 'W', 2)}).`,
    change:
      state === 'running'
        ? 'Cool the feed block, thin or lengthen the heat break, cool the screw’s drive end, or keep heated zones away.'
        : 'Switch the heaters off or run the screw empty before a pause; cool the feed block; thin the heat break.',
    value: hottest,
    limit: design.material.softening - throatMargin[state],
    unit: 'K',
  });
}

/** Rules of what stands in the channel. */
export const contentRules: readonly FindingRule[] = [
  {
    code: 'calibration-material',
    about: 'material of the trials that calibrate the revision against the one it runs',
    check: ({ design }) => {
      const { calibration, material } = design;
      if (calibration === null || calibration.materialId === material.id) return null;
      return found({
        severity: 'warn',
        where: 'calibration',
        saw: `The calibration “${calibration.name}” was found with another material than “${material.name}”.`,
        why: 'Factors of viscosity, friction and colour belong to the material they were weighed with.',
        change: 'Take the calibration off, or weigh trials with this material.',
      });
    },
  },
  {
    code: 'softens-in-feed',
    about: 'wall, screw and granules under the feed opening against softening, running and standing hot',
    check: throatFinding,
  },
  {
    code: 'plug-slips-back',
    about: 'plug of granules against the pressure of the melt ahead of it',
    check: ({ prediction, driven }) => {
      const { solids, melting, output } = prediction;
      if (!output.flows || solids.holds) return null;
      const melt = driven.point.state.march.startPressure;
      return found({
        severity: 'warn',
        where: 'granules ahead of the melt',
        z: melting.meltsFrom,
        saw: `The plug can hold ${pressureText(solids.nominal.buildable)}; the melt presses back with ${pressureText(melt)}.`,
        why: 'Melt works its way back between the granules, freezes there, and the output surges.',
        change: 'Polish the root, roughen the barrel of the feed, deepen the feed, or lower the head pressure.',
        value: solids.nominal.buildable,
        limit: melt,
        unit: 'Pa',
      });
    },
  },
  {
    code: 'plug-locks',
    about: 'pressure of a plug that jams itself',
    check: ({ prediction }) => {
      const { solids, output } = prediction;
      if (!output.flows || !solids.capped) return null;
      return found({
        severity: 'warn',
        where: 'granules ahead of the melt',
        z: solids.packedFrom,
        saw: `The plug would lock itself; its pressure is capped at ${pressureText(solids.pressureLimit)}, where granules yield.`,
        why: 'Torque shoots up and down, and screws break in the feed.',
        change: 'Shorten the cold flighted length between opening and heat, or lower the friction on the barrel.',
        value: solids.pressureLimit,
        unit: 'Pa',
      });
    },
  },
  {
    code: 'melting-uncertain',
    about: 'end of melting by both models against the last flight',
    check: ({ prediction }) => {
      const { ends, engagement } = prediction.melting;
      const { flightEnd, front } = engagement;
      if (!prediction.output.flows || flightEnd === null || front === null || front > flightEnd) return null;
      if (ends.latest !== null && ends.latest <= flightEnd) return null;
      const latest = ends.latest === null ? 'not on the screw at all' : `only at ${mm(ends.latest)}`;
      return found({
        severity: 'note',
        where: 'end of melting',
        z: front,
        saw: `The granules are molten at ${mm(front)} by the model that suits; by the other one ${latest}, and the flights end at ${mm(flightEnd)}.`,
        why: 'On small screws neither model is sure; unmolten granules would pass the last flight and be pushed no more.',
        change: 'Leave reserve: let the flight run on, heat earlier or hotter, or try a slow run first.',
        value: ends.latest,
        limit: flightEnd,
        unit: 'm',
      });
    },
  },
  {
    code: 'warms-slowly',
    about: 'time until every zone is warm and the granulate inside molten',
    check: ({ prediction }) => {
      const { warmUp } = prediction;
      if (warmUp === null || !Number.isFinite(warmUp.mayTurn) || warmUp.mayTurn <= longWarmUp) return null;
      return found({
        severity: 'note',
        where: 'heaters',
        saw: `From cold it takes ${formatQuantity(warmUp.mayTurn, 'min', 2)} until the screw may turn; zones are warm after ${formatQuantity(warmUp.ready, 'min', 2)}.`,
        why: 'A screw turned before the granulate inside is soft can break or stall the drive.',
        change: 'More watts or a lighter barrel warm up faster; wait for the granulate, not only for the sensors.',
        value: warmUp.mayTurn,
        limit: longWarmUp,
        unit: 's',
      });
    },
  },
  {
    code: 'never-warm',
    about: 'heaters that cannot bring their zone to its set temperature from cold',
    check: ({ prediction }) => {
      const { warmUp } = prediction;
      if (warmUp === null || (warmUp.tooWeak.length === 0 && Number.isFinite(warmUp.mayTurn))) return null;
      const weak = warmUp.tooWeak.map((name) => `“${name}”`).join(', ');
      return found({
        severity: 'stop',
        where: 'heaters',
        saw:
          warmUp.tooWeak.length > 0
            ? `With the screw standing, ${weak} never ${warmUp.tooWeak.length > 1 ? 'reach their set temperatures' : 'reaches its set temperature'}.`
            : 'With the screw standing, the granulate in the heated length never melts.',
        why: 'The machine cannot be started from cold.',
        change: 'Fit stronger heaters, insulate the barrel, or shorten the way heat takes to cooling.',
        value: warmUp.tooWeak.length,
        limit: 0,
        unit: 'heaters',
      });
    },
  },
];
