/** Findings about steps of the screw, bearing, walls and stepping. */

import { shoulderFactor } from '../drive/notch.ts';
import { shearShareOfYield } from '../drive/strength.ts';
import type { RootStress } from '../drive/types.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type FindingRule, found } from './context.ts';
import { lengthText, pressureText } from './words.ts';

const stress = (value: number) => formatQuantity(value, 'MPa', 3);
const force = (value: number) => formatQuantity(value, 'N', 3);
const rate = (value: number) => `${formatNumber(value, 3)} a second`;

/** Static rating over thrust of a slow bearing that is wanted; common practice. */
const staticSafety = 2;

/** Thrust that a motor's own bearings bear, N; common practice of small motors. */
const motorBears = 10;

/** Least life of a bearing that is not worth a note, s: 1000 h, own choice. */
const leastLife = 1000 * 3600;

/** Pressure from which walls, threads and relief want looking after, Pa: a few MPa. */
const lookedAfter = 5e6;

/** Microsteps a second that small and that fast controllers still make; common practice. */
const stepRates = { small: 40e3, fast: 200e3 } as const;

/** Full steps a second at which steppers are known to shake: Acarnley shows trouble near 20 and 40. */
const shaking = { from: 10, to: 60 } as const;

/** Euler load over thrust below which a note is due; own choice. */
const bowingSafety = 2;

/** Fillet that brings a step's factor down, m; null where a full quarter circle does not. */
function filletFor({ thick, diameter }: RootStress, factor: number): number | null {
  const step = (thick - diameter) / 2;
  if (shoulderFactor(thick, diameter, step) > factor) return null;
  let [small, large] = [0, step];
  for (let i = 0; i < 30; i++) {
    const middle = (small + large) / 2;
    if (shoulderFactor(thick, diameter, middle) > factor) small = middle;
    else large = middle;
  }
  return large;
}

const shoulderNames = { shankShoulder: 'step from shank to screw', shoulder: 'step between sections' } as const;

/** Thrust in words; nothing is said of running where nothing presses. */
const pressed = (thrust: number, blocked: number): string =>
  thrust > 0
    ? `Running presses the screw back with ${force(thrust)}, a blocked nozzle with up to ${force(blocked)}`
    : `A blocked nozzle presses the screw back with up to ${force(blocked)}`;

/** Rules of strength. */
export const strengthRules: readonly FindingRule[] = [
  {
    code: 'shoulder-stress',
    about: 'torsion of steps of the screw, with their stress concentration, under the motor’s full torque',
    check: ({ design, prediction }) => {
      const { yieldStress } = design.screw.steel;
      const steps = prediction.drive.roots.filter(({ factor }) => factor > 1);
      const worst = steps.reduce<RootStress | null>((a, b) => (a && a.full >= b.full ? a : b), null);
      const allowed = shearShareOfYield * yieldStress;
      if (!worst || worst.full <= allowed) return null;
      const yields = worst.full > yieldStress / 2;
      const fillet = filletFor(worst, (worst.factor * allowed) / worst.full);
      const sharp = worst.fillet === null ? ', its fillet unknown and taken as sharp' : '';
      return found({
        severity: yields ? 'warn' : 'note',
        where: worst.kind === 'shoulder' ? shoulderNames.shoulder : shoulderNames.shankShoulder,
        z: worst.z,
        saw: `Full torque loads the ${lengthText(worst.diameter)} side of the step with ${stress(worst.full)}, ${formatNumber(worst.factor, 3)} times the plain stress${sharp}; ${stress(allowed)} are allowed.`,
        why: 'Cracks start at such steps after many starts and jams; brittle or printed metal breaks at once. A tough shaft evens a single overload out.',
        change:
          fillet === null
            ? 'No fillet is enough here: taper the step, thicken the root, limit the torque, or use stronger steel.'
            : `Turn a fillet of at least ${lengthText(fillet)} there, or limit the torque.`,
        value: worst.full,
        limit: allowed,
        unit: 'Pa',
      });
    },
  },
  {
    code: 'bearing-overloaded',
    about: 'thrust against the static rating of the axial bearing',
    check: ({ design, prediction }) => {
      const { bearing, thrust, thrustBlocked } = prediction.drive;
      const rating = design.drive.bearing;
      if (!bearing || !rating) return null;
      const running = bearing.staticMargin !== null && bearing.staticMargin < 1;
      const blocked = bearing.staticMarginBlocked !== null && bearing.staticMarginBlocked < 1;
      const thin = bearing.staticMargin !== null && bearing.staticMargin < staticSafety;
      if (!running && !blocked && !thin) return null;
      return found({
        severity: running ? 'stop' : blocked ? 'warn' : 'note',
        where: 'thrust bearing',
        saw: `${pressed(thrust, thrustBlocked)}; the bearing bears ${force(rating.staticLoad)} at rest.`,
        why: 'Balls or rollers dent their races; the screw then walks back, and flights and tip wear.',
        change: `Take a bearing of at least ${force(Math.max(staticSafety * thrust, thrustBlocked))} static axial rating, or limit the torque.`,
        value: blocked && !running ? thrustBlocked : thrust,
        limit: rating.staticLoad,
        unit: 'N',
      });
    },
  },
  {
    code: 'bearing-life',
    about: 'rated life of the axial bearing',
    check: ({ prediction }) => {
      const life = prediction.drive.bearing?.lifeTime ?? null;
      if (life === null || life >= leastLife) return null;
      return found({
        severity: 'note',
        where: 'thrust bearing',
        saw: `Nine bearings in ten would outlast ${formatNumber(life / 3600, 3)} h of this running.`,
        why: 'Twice the thrust takes away seven eighths of a ball bearing’s life, nine tenths of a roller bearing’s.',
        change: 'Take a larger bearing, or lower the head pressure.',
        value: life,
        limit: leastLife,
        unit: 's',
      });
    },
  },
  {
    code: 'bearing-unknown',
    about: 'an axial bearing is given',
    check: ({ design, prediction }) =>
      design.drive.bearing || prediction.drive.thrustBlocked < motorBears
        ? null
        : found({
            severity: 'note',
            where: 'thrust bearing',
            saw: `No axial bearing is given. ${pressed(prediction.drive.thrust, prediction.drive.thrustBlocked)}.`,
            why: 'The radial bearings of a motor or gear are not made for this load.',
            change: 'Fit an axial, angular or tapered bearing, and enter its ratings.',
            value: prediction.drive.thrustBlocked,
            limit: motorBears,
            unit: 'N',
          }),
  },
  {
    code: 'over-pressure-limit',
    about: 'running and blocked pressure against the barrel’s limit',
    check: ({ prediction }) => {
      const { pressureLimit, mostPressure } = prediction.drive;
      const running = prediction.output.headPressure;
      if (pressureLimit === null || mostPressure <= pressureLimit) return null;
      const over = running > pressureLimit;
      return found({
        severity: over ? 'stop' : 'warn',
        where: 'barrel and nozzle',
        z: prediction.geometry.sectionsLength,
        saw: over
          ? `Running needs ${pressureText(running)}; the barrel’s limit is ${pressureText(pressureLimit)}.`
          : `With a blocked nozzle the pressure can reach ${pressureText(mostPressure)}; the barrel’s limit is ${pressureText(pressureLimit)}.`,
        why: 'Threads strip and parts fly when a wall or joint gives way under hot melt.',
        change:
          'Limit the torque so that the motor stalls below the limit, fit a relief path, and have it approved by a competent person.',
        value: over ? running : mostPressure,
        limit: pressureLimit,
        unit: 'Pa',
      });
    },
  },
  {
    code: 'pressure-limit-unknown',
    about: 'a pressure limit is given where pressure can be high',
    check: ({ prediction }) => {
      const { pressureLimit, mostPressure, walls } = prediction.drive;
      if (pressureLimit !== null || mostPressure < lookedAfter) return null;
      const worst = walls.reduce((a, b) => (b.equivalent > a.equivalent ? b : a));
      return found({
        severity: 'note',
        where: worst.part,
        saw: `No pressure limit is given; at ${pressureText(mostPressure)} the thinnest wall, the ${worst.part}, bears ${stress(worst.equivalent)} by the greatest-shear rule.`,
        why: 'The metal of barrel and nozzle is not in the file, and hot metal yields sooner.',
        change: 'Hold the stress against the yield of the hot metal, threads apart, and enter the barrel’s limit.',
        value: mostPressure,
        limit: lookedAfter,
        unit: 'Pa',
      });
    },
  },
  {
    code: 'screw-bows',
    about: 'thrust against the load at which the screw bows',
    check: ({ prediction }) => {
      const { bucklingFree, thrust, thrustBlocked } = prediction.drive;
      const most = Math.max(bowingSafety * thrust, thrustBlocked);
      if (most <= bucklingFree) return null;
      const running = bowingSafety * thrust > bucklingFree;
      return found({
        severity: 'note',
        where: 'whole screw',
        saw: `${running ? 'Running' : 'A blocked nozzle'} presses with ${force(running ? thrust : thrustBlocked)}; held at its drive end alone, a bar as thin as the root bows at ${force(bucklingFree)}.`,
        why: 'Melt and barrel hold the screw, so it rubs on one side rather than collapses.',
        change: 'Thicken the root, shorten the screw, or open the nozzle; harden flights that must rub.',
        value: running ? thrust : thrustBlocked,
        limit: running ? bucklingFree / bowingSafety : bucklingFree,
        unit: 'N',
      });
    },
  },
  {
    code: 'step-rate-high',
    about: 'microsteps a second against what controllers make',
    check: ({ prediction }) => {
      const asked = Math.max(prediction.drive.stepping.microsteps, prediction.print.firmware.demandStepRate ?? 0);
      if (asked <= stepRates.small) return null;
      const fast = asked > stepRates.fast;
      return found({
        severity: fast ? 'warn' : 'note',
        where: 'drive',
        saw: `The motor wants ${rate(asked)} microsteps; small controllers make about ${rate(stepRates.small)}, fast ones ${rate(stepRates.fast)}, shared by all axes.`,
        why: 'A controller that cannot follow loses steps or slows the print.',
        change: 'Use fewer microsteps or a lower gear ratio.',
        value: asked,
        limit: fast ? stepRates.fast : stepRates.small,
        unit: '1/s',
      });
    },
  },
  {
    code: 'step-shake',
    about: 'full steps a second against rates at which steppers shake',
    check: ({ prediction }) => {
      const { fullSteps } = prediction.drive.stepping;
      if (!(fullSteps > shaking.from && fullSteps < shaking.to)) return null;
      return found({
        severity: 'note',
        where: 'drive',
        saw: `The motor runs at ${rate(fullSteps)} full steps, where many steppers shake.`,
        why: 'In resonance the torque drops and steps are lost; where it lies depends on load and mounting.',
        change: 'Gear lower, use microsteps, and try the speed under load.',
        value: fullSteps,
        limit: shaking.to,
        unit: '1/s',
      });
    },
  },
];
