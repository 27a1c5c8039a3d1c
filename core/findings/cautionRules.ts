/**
 * Standing cautions: true for every machine of this kind, with this machine's and this material's numbers. Each says why
 * in two sentences and leaves the decision to local codes and licensed people; none is ever left out as dealt with.
 */

import { fullTorque } from '../drive/motor.ts';
import type { Prediction } from '../prediction/types.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type FindingContext, type FindingRule, found } from './context.ts';
import { hottest } from './hottest.ts';
import { materialCautionRules } from './materialCautions.ts';
import { feedDistance } from './openingReach.ts';
import { lengthText, pressureText, torqueText } from './words.ts';

const standing = (code: string, where: string, saw: string, why: string, change: string): FindingRule => ({
  code,
  about: `standing caution: ${where}`,
  check: () => found({ severity: 'caution', where, saw, why, change }),
});

/** Hottest that the machine is or is set to be, K. */
const hottestOrSet = (context: FindingContext): number => {
  const { zones } = context.design.barrel;
  return Math.max(
    hottest(context).temperature,
    ...zones.flatMap((zone) => (zone.kind === 'heated' ? [zone.setTemperature] : [])),
  );
};

/** Below this a blocked nozzle is called a low pressure, Pa: that of a garden tap, own choice. */
const lowPressure = 1e5;

/** What a blocked nozzle does, by the pressure it brings. */
function blockedText({ blockedPressure, stallPressure }: Prediction['drive']): string {
  const most = stallPressure ?? blockedPressure;
  return most < lowPressure
    ? `A blocked nozzle lets the screw build little pressure, about ${pressureText(most)} by this estimate; trapped gas can bring more.`
    : `A blocked nozzle lets pressure rise, up to ${pressureText(most)} by this estimate.`;
}

/** Energy that is hardly felt, J: own choice. */
const leastEnergy = 1e-3;

/** Energy of melt under the highest pressure, J: half of compressibility, pressure squared and volume. */
function storedEnergy({ prediction }: FindingContext): number {
  const { release } = prediction.print;
  return 0.5 * release.compressibility.high * prediction.drive.mostPressure ** 2 * release.volume;
}

const hotMelt: FindingRule = {
  code: 'caution-hot-melt',
  about: 'standing caution: burns',
  check: (context) =>
    found({
      severity: 'caution',
      where: 'barrel, nozzle and melt',
      saw: `Surfaces and melt reach ${formatQuantity(hottestOrSet(context), '°C', 3)}.`,
      why: 'Bare metal burns skin within a second from about 65 °C. Melt sticks to skin and keeps burning.',
      change:
        'Guard hot parts, wear rated gloves and face protection, let it cool before reaching in, and follow local rules for hot work.',
      value: hottestOrSet(context),
      unit: 'K',
    }),
};

const blockedNozzle: FindingRule = {
  code: 'caution-blocked-nozzle',
  about: 'standing caution: pressure',
  check: ({ prediction }) =>
    found({
      severity: 'caution',
      where: 'nozzle',
      z: prediction.geometry.sectionsLength,
      saw: blockedText(prediction.drive),
      why: 'Melt and trapped gas can burst out, above all while heating up. Walls and threads then bear more than in running.',
      change:
        'Stand clear of the nozzle, stop screw and heat when flow stops, never force it. Relief and pressure-bearing parts are for a competent person to approve under local codes.',
      value: prediction.drive.stallPressure ?? prediction.drive.blockedPressure,
      unit: 'Pa',
    }),
};

const hotRelease: FindingRule = {
  code: 'caution-hot-release',
  about: 'standing caution: opening a hot head under pressure',
  check: (context) => {
    const energy = storedEnergy(context);
    return found({
      severity: 'caution',
      where: 'nozzle and its thread',
      saw:
        energy < leastEnergy
          ? 'Blocked melt itself holds hardly any energy in this machine; trapped gas may hold much.'
          : `A blocked head holds up to ${formatNumber(energy, 2)} J in its melt by this estimate; trapped gas holds far more.`,
      why: 'A nozzle unscrewed or a plug loosened under pressure is shot out together with hot melt. A stopped motor does not tell that the pressure is gone.',
      change:
        'Turn the screw back, let the melt run free while hot, and open joints only without pressure, from the side. Have the way to do it approved by a competent person.',
      value: energy,
      unit: 'J',
    });
  },
};

const coldStart: FindingRule = {
  code: 'caution-cold-start',
  about: 'standing caution: turning the screw before it is hot',
  check: ({ design, prediction }) => {
    const { worstRoot } = prediction.drive;
    const margin =
      worstRoot.margin === null
        ? ''
        : worstRoot.margin < 1
          ? `; its weakest place yields at ${formatNumber(worstRoot.margin, 2)} times this`
          : `, its weakest place then holding ${formatNumber(worstRoot.margin, 2)} times this before it yields`;
    return found({
      severity: 'caution',
      where: 'screw and drive',
      z: worstRoot.z,
      saw: `A cold plug puts the motor’s full ${torqueText(fullTorque(design.drive))} on the screw${margin}.`,
      why: 'Stiff, cold material stops the screw at once and can break it or strip the gear. Bending, which is not counted, adds to it.',
      change:
        'Do not turn before every zone has soaked at its temperature; lock the motor out until then, and let a qualified person set the torque or current limit.',
      value: fullTorque(design.drive),
      unit: 'N m',
    });
  },
};

const turningScrew: FindingRule = {
  code: 'caution-turning-screw',
  about: 'standing caution: rotation, with the distance that the feed’s openings ask for',
  check: ({ design }) => {
    const { feedOpening } = design.barrel;
    const distance = feedDistance(design.barrel, design.hopper);
    const opening = `The feed opening of ${lengthText(feedOpening.length)} by ${lengthText(feedOpening.width)} under a hopper outlet of ${lengthText(design.hopper.outletDiameter)}`;
    const kept = Number.isFinite(distance);
    return found({
      severity: 'caution',
      where: 'feed opening and drive',
      z: feedOpening.start + feedOpening.length / 2,
      saw: kept
        ? `${opening} asks for ${lengthText(distance)} from the screw to the reaching hand; the hopper stands ${lengthText(design.hopper.height)} high.`
        : `${opening} lets an arm through; no distance keeps it safe.`,
      why: 'The screw pulls in whatever reaches it, and even a small geared motor crushes a finger. The distances are those of ISO 13857 for people of 14 and older, as reprinted.',
      change:
        'Guard the opening at that distance by the standard itself and local rules, isolate the drive before clearing a bridge, and use a wooden or plastic rod.',
      value: kept ? design.hopper.height : null,
      limit: kept ? distance : null,
      unit: 'm',
    });
  },
};

/** Cautions, in the order of the machine. */
export const cautionRules: readonly FindingRule[] = [
  hotMelt,
  ...materialCautionRules,
  blockedNozzle,
  hotRelease,
  coldStart,
  turningScrew,
  standing(
    'caution-mains-heaters',
    'heaters',
    'Heaters on mains voltage need earthing, fusing and an independent thermal cut-out.',
    'A failed sensor or relay heats without end. A broken earth puts mains on the barrel.',
    'Leave it to a licensed electrician under the local code; add a cut-out that does not depend on the controller.',
  ),
  standing(
    'caution-food',
    'everything that touches the melt',
    'Contact with food is not assessed.',
    'Steel, coatings, dead corners and residues all count. Brass may hold lead, and nothing that has run plastics is clean.',
    'Do not use it for food without materials, cleaning and approval under local law.',
  ),
];
