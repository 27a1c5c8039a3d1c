/** Findings about the melt between orifice and cold print. */

import { heightBand, widthBand } from '../print/bead.ts';
import { soundShare } from '../print/cracking.ts';
import { strandLimits } from '../print/strand.ts';
import type { CrackState } from '../print/types.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type FindingRule, found } from './context.ts';
import { lengthText } from './words.ts';

const celsius = (value: number) => formatQuantity(value, '°C', 3);
const time = (value: number) => formatQuantity(value, 's', 2);
const volume = (value: number) => formatQuantity(value, 'mm³', 3);
const stress = (value: number) => formatQuantity(value, 'MPa', 3);

/** Ooze as a length of line from which a note is due, m; own choice. */
const oozedLine = 5e-3;

/** Dripping over the print's demand from which a warning is due; own choice. */
const drippingShare = 0.01;

/** Time to set from which a note is due, s; own choice: longer than most layers take to come round. */
const slowSetting = 60;

/** Fitted line width over the asked one that is still called a fit; own choice. */
const widthFit = 0.15;

/** Rules of ooze, strand, setting and cracks. */
export const meltLineRules: readonly FindingRule[] = [
  {
    code: 'oozes',
    about: 'melt that follows after a stop',
    check: ({ prediction }) => {
      const { release, line, firmware } = prediction.print;
      const length = release.ooze.value / line.area;
      if (!prediction.output.flows || length < oozedLine) return null;
      const turn = firmware.releaseAngle === null ? '' : ` of ${formatQuantity(firmware.releaseAngle, '°', 2)} or more`;
      return found({
        severity: 'note',
        where: 'orifice',
        saw: `After a stop ${volume(release.ooze.value)} follow, ${lengthText(length)} of line, nine tenths of it within ${time(release.time90.value)}.`,
        why: 'Melt is stored under pressure between screw and orifice; it strings on travel and blobs at starts.',
        change: `Turn back by a release${turn}, tell the firmware its pressure time of ${time(release.time.value)}, and keep the volume after the flights small.`,
        value: length,
        limit: oozedLine,
        unit: 'm',
      });
    },
  },
  {
    code: 'drips',
    about: 'weight of the melt against skin and viscosity at the orifice',
    check: ({ prediction }) => {
      const { drip, demand, outlet } = prediction.print;
      if (drip.drips === false || drip.rate < drippingShare * demand) return null;
      const drop = drip.dropTime === null ? '' : `, a drop every ${time(drip.dropTime)}`;
      const skin = drip.held === null ? ' The skin’s hold is unknown and left out.' : '';
      return found({
        severity: 'warn',
        where: 'orifice',
        saw: `At ${celsius(outlet)} the melt has ${formatQuantity(drip.viscosity, 'Pa·s', 2)}; ${lengthText(drip.column)} of it standing upright drip up to ${formatQuantity(drip.rate, 'mm³/s', 2)}${drop}.${skin}`,
        why: 'So thin a melt drips from the open nozzle whenever it stands still.',
        change: 'Run colder, use a smaller bore or a shut-off, and keep the nozzle on the work.',
        value: drip.rate,
        limit: drippingShare * demand,
        unit: 'm³/s',
      });
    },
  },
  {
    code: 'strand-breaks',
    about: 'time to pinch off against the time across the gap to the layer',
    check: ({ design, prediction }) => {
      const { strand } = prediction.print;
      const { verdict, number, breakupTime, gapTime } = strand;
      if (number === null || breakupTime === null || gapTime === null || verdict === 'strand') return null;
      const drops = verdict === 'drips';
      return found({
        severity: drops ? 'warn' : 'note',
        where: 'orifice',
        saw: `Free melt pinches off in ${time(breakupTime)}; it takes ${time(gapTime)} across ${lengthText(design.print.nozzleHeight)} to the layer.`,
        why: drops
          ? 'Surface tension is faster than the melt, so drops form instead of a strand.'
          : 'Surface tension pulls the strand in before it sets; it necks, and lines sag and run together.',
        change: 'Keep the nozzle in contact, closer than its bore; run colder or faster.',
        value: number,
        limit: drops ? strandLimits.drips : strandLimits.strand,
        unit: '',
      });
    },
  },
  {
    code: 'sets-slowly',
    about: 'time until a free line sets',
    check: ({ design, prediction }) => {
      const { cooling } = prediction.print;
      if (cooling.reason === 'neverSets') {
        return found({
          severity: 'warn',
          where: 'print',
          saw: `The air round the print is at ${celsius(cooling.air)}; the material does not set there.`,
          why: 'Every layer stays soft and sinks under the next.',
          change: 'Lower the chamber’s temperature below setting.',
          value: cooling.air,
          limit: design.material.mechanical?.setTemperature ?? null,
          unit: 'K',
        });
      }
      if (cooling.setTime === null || cooling.setTime < slowSetting) return null;
      const path =
        cooling.setLength === null ? '' : `, ${formatQuantity(cooling.setLength, 'm', 2)} of line at this speed`;
      const guess = cooling.coefficientKnown ? '' : ' The cooling is a guess within a factor of two.';
      return found({
        severity: 'note',
        where: 'print',
        saw: `A free line sets in about ${time(cooling.setTime)}${path}.${guess}`,
        why: 'A layer with a shorter path is laid on soft melt and sinks; cooling often limits before melting does.',
        change: 'Give each layer at least that path or pause, blow air on it, print slower, or lay smaller lines.',
        value: cooling.setTime,
        limit: slowSetting,
        unit: 's',
      });
    },
  },
  {
    code: 'cooling-stress',
    about: 'stress of the cooling print against its strength',
    check: ({ design, prediction }) => {
      const { crack } = prediction.print;
      const { mechanical } = design.material;
      if (crack.verdict === null || crack.verdict === 'low' || crack.share === null || !mechanical) return null;
      const worst = Math.max(crack.bedStress ?? 0, crack.chamberStress ?? 0);
      return found({
        severity: crack.verdict === 'exceeds' ? 'warn' : 'note',
        where: 'print',
        saw: `Cooling from ${celsius(mechanical.setTemperature)} to ${celsius(Math.min(crack.bed, crack.chamber))} while held would load it with ${stress(worst)}; its strength is ${stress(mechanical.strength)}.`,
        why: 'Brittle prints crack, tough ones warp or come off the bed; creep lets part of the stress go.',
        change: crackAdvice(crack),
        value: worst,
        limit: soundShare * mechanical.strength,
        unit: 'Pa',
      });
    },
  },
  {
    code: 'line-against-bore',
    about: 'line width and layer height against the bore',
    check: ({ prediction }) => {
      const { width, height, widthOverBore, heightOverBore } = prediction.print.line;
      if (width === 'good' && height === 'good') return null;
      const byWidth = width !== 'good';
      const band = byWidth ? widthBand : heightBand;
      const value = byWidth ? widthOverBore : heightOverBore;
      return found({
        severity: 'note',
        where: 'print',
        saw: `The line is ${formatNumber(widthOverBore, 3)} bores wide and ${formatNumber(heightOverBore, 3)} high; ${widthBand.from} to ${widthBand.to} and ${heightBand.from} to ${heightBand.to} lay well.`,
        why: 'Narrow or high lines are hardly pressed down and bond badly; wide or thin ones need much pressure.',
        change: 'Fit line width and layer height to the bore, or the bore to them.',
        value,
        limit: value < band.from ? band.from : band.to,
        unit: '',
      });
    },
  },
  {
    code: 'passes-uneven',
    about: 'wall thickness against whole passes',
    check: ({ design, prediction }) => {
      const { passes, fittedWidth } = prediction.print.line;
      const { lineWidth, wallThickness } = design.print;
      if (Math.abs(fittedWidth / lineWidth - 1) <= widthFit) return null;
      return found({
        severity: 'note',
        where: 'print',
        saw: `A wall of ${lengthText(wallThickness)} takes ${passes === 1 ? 'one pass' : `${passes} passes`} of ${lengthText(fittedWidth)}, not ${lengthText(lineWidth)}.`,
        why: 'With the asked width the wall comes out thicker or thinner, or gaps stay between the lines.',
        change: 'Change the wall to a whole count of lines, or lay lines of that width.',
        value: fittedWidth,
        limit: lineWidth,
        unit: 'm',
      });
    },
  },
];

function crackAdvice({ wantedTemperature, bedKnown, chamberKnown }: CrackState): string {
  if (wantedTemperature === null) return 'Hold bed and chamber warmer.';
  const guess = bedKnown && chamberKnown ? '' : ' What is not given was taken at ambient.';
  return `Hold bed and chamber at ${celsius(wantedTemperature)} or above, which keeps the stress under half the strength, and cool slowly.${guess}`;
}
