/** Findings about motor, gear and strength. */

import { highestScrewSpeed, usableTorque } from '../drive/motor.ts';
import { shearShareOfYield } from '../drive/strength.ts';
import { unknownParts } from '../drive/torqueParts.ts';
import { formatQuantity } from '../units.ts';
import { type FindingContext, type FindingRule, type Found, found } from './context.ts';
import { strengthRules } from './strengthRules.ts';
import { lengthText, torqueText as torque } from './words.ts';

const rpm = (value: number) => formatQuantity(value, 'rpm', 3);
const stress = (value: number) => formatQuantity(value, 'MPa', 3);

/** Share of the usable torque above which a note is due. */
const tightShare = 0.85;

/** Pull-out torque over running torque below which a note is due; common practice, 1.5 to 2. */
const stallSafety = 1.5;

const notCounted = 'Friction of the granules varies from lot to lot.';

/** Clearance per side below which screws rub, m; own choice, about what turning and straightness can hold. */
const leastClearance = 5e-6;

/** Clearance per side over the bore, common practice. */
const clearanceOverBore = [0.001, 0.002];

/** Torque asked for and torque there is, both at one speed: the set one, or the slowest tried where the drive stalls. */
function overTorque({ driven, prediction, design }: FindingContext): Found | null {
  if (driven.heldBy !== 'torque' || driven.point.limits.grainFit === 0) return null;
  const { drive } = prediction;
  const highest = highestScrewSpeed(design.drive);
  const speed = driven.stalled ? driven.point.screwSpeed : Math.min(design.process.screwSpeed, highest);
  const asked = driven.stalled ? drive.torque : driven.torqueAtSetSpeed;
  const gives = usableTorque(design.drive, speed);
  return found({
    severity: 'stop',
    where: 'drive',
    saw: driven.stalled
      ? `The drive cannot turn the screw at any useful speed: at ${rpm(speed)} granules and melt still ask for ${torque(asked)}, and the drive may give ${torque(gives)}. Nothing comes out.`
      : `At ${rpm(speed)} granules and melt ask for ${torque(asked)}, and the drive may give ${torque(gives)}; it holds ${rpm(prediction.output.screwSpeed)}.`,
    why: 'The motor stalls, silently where it runs open loop.',
    change: driven.stalled
      ? 'Gear lower, take a stronger motor after checking the screw’s root, raise the temperature, or make the channel deeper.'
      : 'Turn slower, raise the temperature, gear lower, or take a stronger motor after checking the screw’s root.',
    value: asked,
    limit: gives,
    unit: 'N m',
  });
}

/** Rules of the drive. */
export const driveRules: readonly FindingRule[] = [
  {
    code: 'over-torque',
    about: 'torque at the set speed against what the drive may give',
    check: overTorque,
  },
  {
    code: 'torque-tight',
    about: 'reserve of torque',
    check: ({ driven, prediction }) => {
      const { torque: asked, torqueUsable, parts } = prediction.drive;
      const missing = unknownParts(parts);
      if (driven.heldBy === 'torque' || !prediction.output.flows || asked < tightShare * torqueUsable) return null;
      return found({
        severity: 'note',
        where: 'drive',
        saw: `Running asks for ${torque(asked)} of ${torque(torqueUsable)}.`,
        why: missing.length > 0 ? `More adds to it that is not counted: ${missing.join(' and ')}.` : notCounted,
        change: 'Keep a share in hand: slower, warmer, or geared lower.',
        value: asked,
        limit: tightShare * torqueUsable,
        unit: 'N m',
      });
    },
  },
  {
    code: 'stall-close',
    about: 'torque at which the motor stalls over the torque of running',
    check: ({ driven, prediction }) => {
      const { motorMargin, torque: asked, torquePullout } = prediction.drive;
      if (motorMargin === null || motorMargin >= stallSafety || driven.stalled || !prediction.output.flows) return null;
      return found({
        severity: 'note',
        where: 'drive',
        saw: `The motor stalls at ${torque(torquePullout)} on the screw; running asks for ${torque(asked)}.`,
        why: 'Cold melt, a large grain or a worn gear take the little that is left, and an open loop does not tell.',
        change: `Keep at least ${stallSafety} times the running torque: turn slower, run warmer, or gear lower.`,
        value: motorMargin,
        limit: stallSafety,
        unit: '',
      });
    },
  },
  {
    code: 'over-motor-speed',
    about: 'set speed against the motor’s highest',
    check: ({ design }) => {
      const highest = highestScrewSpeed(design.drive);
      const { screwSpeed } = design.process;
      if (screwSpeed <= highest) return null;
      return found({
        severity: 'warn',
        where: 'drive',
        saw: `${rpm(screwSpeed)} at the screw is beyond the motor’s curve; it ends at ${rpm(highest)}.`,
        why: 'A stepper loses steps beyond its curve.',
        change: 'Lower the set speed or the gear ratio.',
        value: screwSpeed,
        limit: highest,
        unit: 'rev/s',
      });
    },
  },
  {
    code: 'no-clearance',
    about: 'room between flight and barrel',
    check: ({ design }) => {
      const { radialClearance } = design.screw;
      if (radialClearance >= leastClearance) return null;
      const { boreDiameter } = design.barrel;
      const [low, high] = clearanceOverBore.map((share) => lengthText(share * boreDiameter));
      return found({
        severity: 'warn',
        where: 'flights',
        saw:
          radialClearance > 0
            ? `The clearance is ${lengthText(radialClearance)} per side; warm and bent screws need more.`
            : 'The flights touch the barrel: there is no clearance.',
        why: 'The screw rubs and seizes; friction and wear are not counted in torque and output.',
        change: `Leave ${low} to ${high} per side (0.001 to 0.002 of the bore, common practice).`,
        value: radialClearance,
        limit: leastClearance,
        unit: 'm',
      });
    },
  },
  {
    code: 'root-overstressed',
    about: 'torsion of the least root under the torque of running and under the motor’s full torque',
    check: ({ design, prediction }) => {
      const allowed = shearShareOfYield * design.screw.steel.yieldStress;
      const { rootShear, rootShearFull } = prediction.drive;
      if (rootShearFull <= allowed) return null;
      const running = rootShear > allowed;
      return found({
        severity: running ? 'stop' : 'warn',
        where: 'least root of the screw',
        z: prediction.geometry.leastRootAt,
        saw: running
          ? `Running loads the root with ${stress(rootShear)}; ${stress(allowed)} are allowed.`
          : `The motor’s full torque would load the root with ${stress(rootShearFull)}; ${stress(allowed)} are allowed.`,
        why: 'A cold start or a jam puts all the motor’s torque on the screw at once.',
        change: 'Thicken the root, limit the torque, or use stronger steel. Bending is not counted.',
        value: running ? rootShear : rootShearFull,
        limit: allowed,
        unit: 'Pa',
      });
    },
  },
  ...strengthRules,
];
