/** A fitted law put into the project. */

import type { Material, Project, RheologyFit, Sourced } from '../../core/index.ts';
import { changeMaterial, duplicateMaterial, freeMaterialId } from '../store/materials.ts';
import { fitText } from '../strings/fit.ts';

const isSourced = (node: unknown): node is Sourced =>
  typeof node === 'object' && node !== null && 'status' in node && 'source' in node && 'value' in node;

/** Every sourced value below a node, changed. */
function retold<T>(node: T, tell: (name: string, value: Sourced) => Sourced): T {
  if (typeof node !== 'object' || node === null) return node;
  const entries = Object.entries(node).map(([key, child]: [string, unknown]) => [
    key,
    isSourced(child) ? tell(key, child) : retold(child, tell),
  ]);
  return Object.fromEntries(entries) as T;
}

/** The law with its source in words; what the readings do not determine is told as estimated. */
function toldLaw({ rheology, parameters }: RheologyFit): Material['rheology'] {
  const open = new Set(parameters.filter((one) => one.fitted && !one.determined).map(({ name }) => name));
  return retold(rheology, (name, value) => {
    const source = fitText.here(value.source);
    if (!open.has(name)) return { ...value, source };
    return { ...value, source: `${source}; ${fitText.notDetermined}`.slice(0, 600), status: 'estimated' };
  });
}

/** A material with a fitted law in place of its own, and the range of the readings as the law's. */
const withFit =
  (fit: RheologyFit) =>
  (material: Material): Material => ({
    ...material,
    rheology: toldLaw(fit),
    rheologyRange: { ...fit.range, source: fitText.here(fit.range.source) },
  });

/** Puts the law into a material of the project. */
export const takeInto = (id: string, fit: RheologyFit) => changeMaterial(id, withFit(fit));

/** Puts a copy of a material with the law after it, under a free id and the given name. */
export const takeIntoCopy =
  (id: string, name: string, fit: RheologyFit) =>
  (project: Project): Project =>
    changeMaterial(freeMaterialId(project, id), withFit(fit))(duplicateMaterial(id, name)(project));
