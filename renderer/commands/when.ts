/** When commands can be given. */

import { projectStore } from '../store/project.ts';

/** At any time. */
export const always = (): boolean => true;

/** While a project is open. */
export const isOpen = (): boolean => projectStore.getState().history !== null;
