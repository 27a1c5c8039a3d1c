/** Every check against the outside world, in the order of the stages. */

import { channelChecks } from './channel.ts';
import type { Check } from './types.ts';

/** All of them; each stage's file holds its own. */
export const checks: readonly Check[] = [...channelChecks];
