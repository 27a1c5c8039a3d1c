/** The one thing that is said of a material whose viscosity is not known. */

import type { Material } from '../project/materialSchema.ts';
import type { Issue } from '../result.ts';
import { hasViscosity } from './rheology.ts';

/**
 * One issue where a material has no viscosity law, none otherwise.
 * @param material stored material
 * @param path path of the material in its document
 */
export function unknownViscosity(material: Material, path: readonly (string | number)[]): readonly Issue[] {
  if (hasViscosity(material)) return [];
  return [
    {
      path: [...path, 'rheology'],
      code: 'viscosity-unknown',
      message: `The viscosity of ${material.name} is not known, so nothing that flows can be predicted.`,
      value: 'no law',
      allowed: 'a Newtonian, power, Carreau-Yasuda or Cross-WLF law',
      remedy: 'Give a law with its constants, or fit one to measured viscosities.',
    },
  ];
}
