/** Every reader of hostile input. */

import { hostTargets } from './hostTargets.ts';
import { projectTargets } from './projectTargets.ts';
import { tableTargets } from './tableTargets.ts';
import type { Target } from './targetTypes.ts';

/** In the order of a campaign's record. */
export const targets: readonly Target[] = [...projectTargets, ...tableTargets, ...hostTargets];
