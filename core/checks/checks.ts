/** Every check against the outside world, in the order of the stages. */

import { calibrationChecks } from './calibration.ts';
import { channelChecks } from './channel.ts';
import { refinedChannelChecks, refinedTipChecks } from './cross/refined.ts';
import { trackedChecks } from './cross/tracked.ts';
import { washedChecks } from './cross/washed.ts';
import { degradationChecks } from './degradation.ts';
import { driveChecks } from './drive.ts';
import { feedChecks } from './feed.ts';
import { geometryChecks } from './geometry.ts';
import { handOverChecks } from './handOver.ts';
import { heatChecks } from './heat.ts';
import { materialChecks } from './material.ts';
import { meltingChecks } from './melting.ts';
import { operatingPointChecks } from './operatingPoint.ts';
import { printChecks } from './print.ts';
import { residenceChecks } from './residence.ts';
import { searchChecks } from './search.ts';
import { tipChecks } from './tip.ts';
import type { Check } from './types.ts';

/** All of them; each stage's file holds its own. */
export const checks: readonly Check[] = [
  ...geometryChecks,
  ...materialChecks,
  ...heatChecks,
  ...feedChecks,
  ...meltingChecks,
  ...channelChecks,
  ...refinedChannelChecks,
  ...tipChecks,
  ...refinedTipChecks,
  ...washedChecks,
  ...operatingPointChecks,
  ...residenceChecks,
  ...trackedChecks,
  ...degradationChecks,
  ...driveChecks,
  ...printChecks,
  ...calibrationChecks,
  ...searchChecks,
  ...handOverChecks,
];
