/** Findings about colour, molar mass and changing over. */

import { changeOver } from '../age/changeOver.ts';
import { layerStep } from '../age/colourSweep.ts';
import { colourAtFlow, meltPassages } from '../prediction/colourStage.ts';
import type { ColourOrigin, ColourPrediction, LawOutcome } from '../prediction/types.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type FindingContext, type FindingRule, type Found, found } from './context.ts';

/** Share of the fresh molar mass left in the oldest hundredth, and on average, that calls for a word; own choice. */
const massLeft = { worst: 0.9, mean: 0.8 } as const;
/** How far outside its measured temperatures a law may be asked without a word, K; own choice. */
const temperatureSlack = 3;
/** Colour step between fast and slow layers that shows, dE00; common practice: 1 is just seen. */
const visibleStep = 1;
/** Slower than the set output by this factor counts as a slow print. */
const slower = 1.05;
/** Longest change of material without a word, s; own choice. */
const longChange = 1800;

const fixOf: Readonly<Record<ColourOrigin['part'], string>> = {
  channel: 'Shorten the molten stretch of the channel, make it shallower, or run its zones colder.',
  tip: 'Make the space before the screw tip smaller: a longer tip cone close to its seat.',
  nozzle: 'Make the nozzle bore shorter or narrower, or run the nozzle colder.',
};

const originText = ({ part, share, time, temperature }: ColourOrigin): string =>
  `${formatQuantity(share, '%', 2)} from the ${part} (${formatQuantity(time, 's', 2)} at ${formatQuantity(temperature, '°C', 3)})`;

const largest = (origin: readonly ColourOrigin[]): ColourOrigin | null =>
  origin.reduce<ColourOrigin | null>((most, own) => (most && most.share >= own.share ? most : own), null);

/** Where the parts end, m. */
function placeOf({ machine, prediction }: FindingContext, part: ColourOrigin['part']): number {
  if (part === 'channel') return machine.stations.z[Math.max(0, machine.lastFlight)];
  return part === 'tip' ? prediction.geometry.sectionsLength : machine.design.barrel.length;
}

function originFinding(context: FindingContext): Found | null {
  const { colour } = context.prediction;
  const limit = context.design.process.acceptableDeltaE;
  const most = largest(colour.origin);
  if (!most || colour.dE00Worst === null || colour.dE00Worst <= limit) return null;
  return found({
    severity: 'note',
    where: most.part,
    z: placeOf(context, most.part),
    saw: `The colour comes ${colour.origin.map(originText).join(', ')}.`,
    why: 'What saves time or heat there changes the colour most.',
    change: fixOf[most.part],
    value: most.share,
  });
}

function bleedFinding({ design, prediction }: FindingContext): Found | null {
  const limit = design.process.acceptableDeltaE;
  const { bleed } = prediction.colour;
  const darkest = bleed.reduce<ColourPrediction['bleed'][number] | null>(
    (most, own) => (most && most.dE00Streak >= own.dE00Streak ? most : own),
    null,
  );
  if (!darkest || darkest.dE00Streak <= limit) return null;
  const [first] = bleed;
  const other = first === darkest ? '' : ` Mixed in, most comes from the ${first.part}: ${first.where}.`;
  return found({
    severity: 'note',
    where: `${darkest.part}: ${darkest.where}`,
    z: darkest.z,
    saw: `Its melt, held for ${formatQuantity(darkest.held, 's', 2)}, makes up ${formatQuantity(darkest.shareLow, '%', 2)} to ${formatQuantity(darkest.share, '%', 2)} of the stream; unmixed it streaks by ΔE00 ${formatNumber(darkest.dE00Streak, 2)} (up to ${formatNumber(darkest.dE00StreakHigh, 2)}), evenly mixed it adds ${darkest.dE00Added < 0.001 ? 'less than 0.001' : formatNumber(darkest.dE00Added, 1)}.${other}`,
    why: 'A streak is seen long before the mean colour moves.',
    change: prediction.dead.spots.find(({ z }) => z === darkest.z)?.remedy ?? 'Round the place where it lingers.',
    value: darkest.dE00Streak,
    limit,
    unit: 'dE00',
  });
}

function massFinding({ prediction }: FindingContext): Found | null {
  const worst = prediction.colour.laws.reduce<LawOutcome | null>((most, own) => {
    const left = own.molarMass?.shareWorst ?? null;
    if (left === null) return most;
    return (most?.molarMass?.shareWorst ?? 1) <= left ? most : own;
  }, null);
  const loss = worst?.molarMass;
  if (!worst || !loss || loss.shareWorst === null || loss.shareMean === null) return null;
  if (loss.shareWorst >= massLeft.worst) return null;
  const all = loss.shareMean < massLeft.mean;
  return found({
    severity: all ? 'warn' : 'note',
    where: all ? 'extrudate' : 'slowest melt',
    z: prediction.geometry.sectionsLength,
    saw: worst.means,
    why: 'Shorter chains make weaker, more brittle parts, and thin melt drips.',
    change: 'Dry the granulate, run colder or faster, or make the melt volume smaller.',
    value: all ? loss.shareMean : loss.shareWorst,
    limit: all ? massLeft.mean : massLeft.worst,
  });
}

function rangeFinding({ design, machine, driven, prediction }: FindingContext): Found | null {
  const law = design.material.degradation.find(({ id }) => id === design.material.colourLaw);
  if (!law || prediction.colour.dE00Mean === null) return null;
  const passages = meltPassages(machine, driven.point.state, prediction.residence);
  const temperatures = passages.flatMap(({ heat }) => heat.map(({ temperature }) => temperature));
  const [coolest, hottest] = [Math.min(...temperatures), Math.max(...temperatures)];
  const above = hottest > law.validTo + temperatureSlack;
  if (!above && coolest >= law.validFrom - temperatureSlack) return null;
  return found({
    severity: 'note',
    where: 'melt',
    saw: `The melt is at ${formatQuantity(coolest, '°C', 3)} to ${formatQuantity(hottest, '°C', 3)}; the law of its colour was measured from ${formatQuantity(law.validFrom, '°C', 3)} to ${formatQuantity(law.validTo, '°C', 3)}.`,
    why: 'Outside, its rate is extrapolated, and another reaction may take over.',
    change: 'Hold strands for known times at this temperature, measure their colour, and enter the law anew.',
    value: above ? hottest : coolest,
    limit: above ? law.validTo : law.validFrom,
    unit: 'K',
  });
}

function slowFinding({ design, machine, driven, prediction }: FindingContext): Found | null {
  const { colour, output, print, residence } = prediction;
  const factor = output.volumeFlow / print.meanDemand;
  const { dE00Mean, dE00Worst, labMean, srgb } = colour;
  if (!(factor > slower && Number.isFinite(factor))) return null;
  if (dE00Mean === null || dE00Worst === null || labMean === null || srgb === null) return null;
  const slow = colourAtFlow(machine, driven.point.state, residence, factor);
  if (!slow) return null;
  const limit = design.process.acceptableDeltaE;
  const turns = slow.dE00Mean > limit && dE00Mean <= limit;
  const step = layerStep(slow, { dE00Mean, dE00Worst, labMean, srgb });
  if (!turns && step < visibleStep) return null;
  return found({
    severity: turns ? 'warn' : 'note',
    where: 'extrudate',
    saw: `At the print's mean demand of ${formatQuantity(print.meanDemand, 'mm³/s', 3)} melt stays ${formatQuantity(factor * residence.mean, 's', 3)} instead of ${formatQuantity(residence.mean, 's', 3)}: colour shifts by ΔE00 ${formatNumber(slow.dE00Mean, 2)} instead of ${formatNumber(dE00Mean, 2)}, and slow and fast layers differ by ${formatNumber(step, 2)}.`,
    why: 'Melt waits while the printer travels or prints slowly; layers of different speed show as bands.',
    change: 'Print at an even, higher flow, run colder, or use a smaller screw for this print.',
    value: turns ? slow.dE00Mean : step,
    limit: turns ? limit : visibleStep,
    unit: 'dE00',
  });
}

/** From the darkest measured colour of the material back to what is accepted, in words; empty where not known. */
function backToFresh({ design, prediction }: FindingContext): string {
  const fresh = prediction.colour.labFresh;
  const dark = [...design.material.colourAnchors].sort((a, b) => b.extent - a.extent)[0]?.lab;
  if (!fresh || !dark) return '';
  const limit = design.process.acceptableDeltaE;
  const { time } = changeOver(prediction.residence, prediction.output.massFlow, dark, fresh, limit).toColour;
  return time === null
    ? ''
    : ` From the darkest known colour back to what is accepted takes ${formatQuantity(time, 's', 3)}.`;
}

function changeFinding(context: FindingContext): Found | null {
  const { residence, output, geometry } = context.prediction;
  const time = residence.washout999;
  if (!output.flows || time <= longChange) return null;
  return found({
    severity: 'note',
    where: 'whole melt path',
    z: geometry.sectionsLength,
    saw: `After a change of material it takes ${formatQuantity(time, 'min', 3)} and ${formatQuantity(time * output.massFlow, 'g', 3)} until only a thousandth of the old is left.${backToFresh(context)}`,
    why: 'Slow corners let old melt out long after the rest; a little dark spoils much pale.',
    change: 'Go from pale to dark, purge at full speed, and remove places where melt lingers.',
    value: time,
    limit: longChange,
    unit: 's',
  });
}

/** Rules of colour, molar mass and change of material. */
export const colourRules: readonly FindingRule[] = [
  { code: 'colour-origin', about: 'part that gives most of an unaccepted colour', check: originFinding },
  { code: 'spot-bleeds', about: 'streaks that a dead spot sheds', check: bleedFinding },
  { code: 'molar-mass-loss', about: 'molar mass left after chain scission', check: massFinding },
  { code: 'colour-extrapolated', about: 'melt temperature against the range of the colour law', check: rangeFinding },
  { code: 'slow-print-darkens', about: 'colour at the mean demand of the print', check: slowFinding },
  { code: 'change-over-long', about: 'time and melt to wash out an old material', check: changeFinding },
];
