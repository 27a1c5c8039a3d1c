/** Torque by what causes it. */

import type { TorqueParts } from './types.ts';

/** Names of the parts that are not known, as they read in a sentence. */
export function unknownParts({ solids, film }: TorqueParts): string[] {
  const names: string[] = [];
  if (solids === null) names.push('granules rubbing in the feed');
  if (film === null) names.push('the film round the granules');
  return names;
}
