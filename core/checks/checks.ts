/** Every check against the outside world, in the order of the stages. */

import { channelChecks } from './channel.ts';
import { driveChecks } from './drive.ts';
import { operatingPointChecks } from './operatingPoint.ts';
import { printChecks } from './print.ts';
import { residenceChecks } from './residence.ts';
import { tipChecks } from './tip.ts';
import type { Check } from './types.ts';

/** All of them; each stage's file holds its own. */
export const checks: readonly Check[] = [
  ...channelChecks,
  ...tipChecks,
  ...operatingPointChecks,
  ...residenceChecks,
  ...driveChecks,
  ...printChecks,
];
