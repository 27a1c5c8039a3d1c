/** Standing cautions: true for every machine of this kind. They defer to local codes and licensed practice. */

import type { Prediction } from '../prediction/types.ts';
import { formatQuantity } from '../units.ts';
import { type FindingContext, type FindingRule, found } from './context.ts';
import { pressureText } from './words.ts';

const standing = (code: string, where: string, saw: string, why: string, change: string): FindingRule => ({
  code,
  about: `standing caution: ${where}`,
  check: () => found({ severity: 'caution', where, saw, why, change }),
});

/** Hottest of set temperatures, walls and melt, K: shear may heat the melt above any set temperature. */
const hottest = ({ design, prediction }: FindingContext): number => {
  const { meltTemperature, wallTemperature } = prediction.axial;
  const sets = design.barrel.zones.flatMap((zone) => (zone.kind === 'heated' ? [zone.setTemperature] : []));
  return Math.max(design.nozzle.setTemperature, ...sets, ...meltTemperature, ...wallTemperature);
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

/** Cautions, in the order of the machine. */
export const cautionRules: readonly FindingRule[] = [
  {
    code: 'caution-hot-melt',
    about: 'standing caution: burns',
    check: (context) =>
      found({
        severity: 'caution',
        where: 'barrel, nozzle and melt',
        saw: `Surfaces and melt reach ${formatQuantity(hottest(context), '°C', 3)}.`,
        why: 'Bare metal burns skin within a second from about 65 °C; melt sticks and keeps burning.',
        change: 'Guard hot parts, wear rated gloves and face protection, and let it cool before reaching in.',
        value: hottest(context),
        unit: 'K',
      }),
  },
  {
    code: 'caution-fumes',
    about: 'standing caution: fumes and the material’s own cautions',
    check: ({ design }) =>
      found({
        severity: 'caution',
        where: 'nozzle and hopper',
        saw: 'Hot plastic, wax and wood give off fine particles and vapours.',
        why: design.material.cautions.join(' ') || 'Some decomposition products are harmful.',
        change: 'Extract at the source and follow the material’s safety data sheet and local rules.',
      }),
  },
  {
    code: 'caution-blocked-nozzle',
    about: 'standing caution: pressure',
    check: ({ prediction }) =>
      found({
        severity: 'caution',
        where: 'nozzle',
        z: prediction.geometry.sectionsLength,
        saw: blockedText(prediction.drive),
        why: 'Melt and trapped gas can burst out, above all while heating up.',
        change:
          'Stand clear of the nozzle, stop screw and heat when flow stops, never force it. Relief and pressure-bearing parts are for a competent person to approve.',
        value: prediction.drive.stallPressure ?? prediction.drive.blockedPressure,
        unit: 'Pa',
      }),
  },
  standing(
    'caution-turning-screw',
    'feed opening and drive',
    'The screw pulls in whatever reaches it.',
    'Even a small geared motor crushes a finger.',
    'Cover the opening out of reach, isolate the drive before clearing a bridge, and use a wooden or plastic rod.',
  ),
  standing(
    'caution-mains-heaters',
    'heaters',
    'Heaters on mains voltage need earthing, fusing and an independent thermal cut-out.',
    'A failed sensor or relay heats without end.',
    'Leave it to a licensed electrician under the local code; add a cut-out that does not depend on the controller.',
  ),
  standing(
    'caution-food',
    'everything that touches the melt',
    'Contact with food is not assessed.',
    'Steel, coatings, dead corners and residues all count.',
    'Do not use it for food without materials, cleaning and approval under local law.',
  ),
];
