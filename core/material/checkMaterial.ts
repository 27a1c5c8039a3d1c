/** Whether a material's values make physical sense together. */

import type { Material } from '../project/materialSchema.ts';
import type { Issue } from '../result.ts';
import { kineticRules } from './checkLaws.ts';
import { orderRules } from './checkOrder.ts';
import { constantRules, viscosityRules } from './checkViscosity.ts';

/**
 * Checks the physical sense of a material whose shape already fits the schema: temperatures, grain sizes and densities
 * in order, window inside the safe limit, viscosity that falls with temperature and does not rise with shear, laws with
 * positive activation energies, colours within the reach of their law.
 * @param material stored material
 * @param path path of the material in its document
 * @returns one issue per fault; the viscosity is judged once the values it rests on are in order
 */
export function materialIssues(material: Material, path: readonly (string | number)[] = []): readonly Issue[] {
  const rules = [...orderRules(material), ...constantRules(material)];
  const sound = rules.every(({ holds }) => holds);
  const all = [...rules, ...(sound ? viscosityRules(material) : []), ...kineticRules(material)];
  const broken = all.filter(({ holds }) => !holds);
  return broken.map(({ holds: _, field, ...issue }) => ({ path: [...path, ...field], ...issue }));
}
