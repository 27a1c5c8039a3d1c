/** All kinds of hand-over files, in the order of the dialogue. The window and the headless command read this list. */

import { stlModule, threeMfModule } from './mesh/meshModules.ts';
import { stepModule } from './step/stepModule.ts';
import type { HandoverModule } from './types.ts';

/** Every module. */
export const handoverModules: readonly HandoverModule[] = [threeMfModule, stlModule, stepModule];
