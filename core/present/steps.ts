/** Motor steps for a volume. */

import { toSi } from '../units.ts';

/** Steps per mm³ from steps per m³. */
export const stepsPerCubicMm = (stepsPerCubicMetre: number): number => stepsPerCubicMetre * toSi(1, 'mm³');
