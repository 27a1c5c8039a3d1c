/** Edits of the project's materials as pure functions. */

import { produce } from 'immer';
import type { Material, Project, Sourced } from '../../core/index.ts';
import { materialParts, type PartName, startAnchor, startFreshMass, startLaw } from './materialStarts.ts';

/** An id that no material of the project has: the wanted one, or with the next free number. */
export function freeMaterialId(project: Project, wanted: string): string {
  const taken = new Set(project.materials.map(({ id }) => id));
  const stem = wanted.slice(0, 50);
  for (let n = 1; ; n++) {
    const id = n === 1 ? wanted : `${stem}-${n}`;
    if (!taken.has(id)) return id;
  }
}

/** Puts a material into the project, under a free id. */
export const addMaterial = (material: Material) =>
  produce<Project>((draft) => {
    draft.materials.push({ ...material, id: freeMaterialId(draft as Project, material.id) });
  });

/** Puts a copy of a material after it, under a free id and the given name. */
export const duplicateMaterial = (id: string, name: string) => (project: Project) => {
  const index = project.materials.findIndex((material) => material.id === id);
  const material = project.materials[index];
  if (!material) return project;
  const copy = { ...structuredClone(material), id: freeMaterialId(project, id), name };
  return { ...project, materials: project.materials.toSpliced(index + 1, 0, copy) };
};

/** What uses a material: ids of revisions that run it, and whether bench trials refer to it. */
export function usersOf(
  project: Project,
  id: string,
): { readonly revisions: readonly string[]; readonly trials: boolean } {
  return {
    revisions: project.revisions.filter(({ materialId }) => materialId === id).map((revision) => revision.id),
    trials: project.benchLog.some(({ materialId }) => materialId === id),
  };
}

/** Whether a material can be removed: nothing uses it, and another one stays. */
export function isRemovable(project: Project, id: string): boolean {
  const { revisions, trials } = usersOf(project, id);
  return revisions.length === 0 && !trials && project.materials.length > 1;
}

/** Removes a material unless something uses it. */
export const removeMaterial = (id: string) => (project: Project) =>
  isRemovable(project, id) ? { ...project, materials: project.materials.filter((one) => one.id !== id) } : project;

/** Replaces the material of this id by what `change` makes of it. */
export const changeMaterial =
  (id: string, change: (material: Material) => Material) =>
  (project: Project): Project => ({
    ...project,
    materials: project.materials.map((material) => (material.id === id ? change(material) : material)),
  });

/** Gives a material an optional part with start values, or takes it away. */
export const setPart = (id: string, part: PartName, present: boolean) =>
  changeMaterial(id, (material) => {
    const { [part]: _, ...rest } = material;
    return (present ? { ...rest, [part]: materialParts[part] } : rest) as Material;
  });

/** Adds a degradation law with start values under a free id. */
export const addLaw = (id: string) =>
  changeMaterial(id, (material) => {
    const taken = new Set(material.degradation.map((law) => law.id));
    let n = material.degradation.length + 1;
    while (taken.has(`change-${n}`)) n++;
    const law = startLaw(`change-${n}`, material.windowLowC.value, material.windowHighC.value);
    return { ...material, degradation: [...material.degradation, law] };
  });

/** Removes a degradation law; a colour that hung on it hangs on none. */
export const removeLaw = (id: string, index: number) =>
  changeMaterial(id, ({ colourLaw, ...material }) => {
    const degradation = material.degradation.filter((_, place) => place !== index);
    const known = degradation.some((law) => law.id === colourLaw);
    return { ...material, degradation, ...(known && colourLaw !== undefined ? { colourLaw } : {}) };
  });

/** Gives a law of chain breaks the molar mass of fresh chains as a start value, or takes it away. */
export const setFreshMass = (id: string, index: number, present: boolean) =>
  changeMaterial(id, (material) => ({
    ...material,
    degradation: material.degradation.map((law, place) => {
      if (place !== index || law.kind !== 'scission') return law;
      const { initialMolarMassKgPerMol: _, ...rest } = law;
      return present ? { ...rest, initialMolarMassKgPerMol: startFreshMass } : rest;
    }),
  }));

/** Says where all colour anchors come from, or how well they are known. */
export const setAnchorOrigin = (id: string, origin: Partial<Pick<Sourced, 'source' | 'status'>>) =>
  changeMaterial(id, (material) => ({
    ...material,
    colourAnchors: material.colourAnchors.map((anchor) => ({ ...anchor, ...origin })),
  }));

/** Names the law that the colour follows; null for none. */
export const setColourLaw = (id: string, lawId: string | null) =>
  changeMaterial(id, ({ colourLaw: _, ...material }) =>
    lawId === null ? (material as Material) : { ...material, colourLaw: lawId },
  );

/** Adds a colour anchor after the last one, a step further and of its colour. */
export const addAnchor = (id: string) =>
  changeMaterial(id, (material) => {
    const [before, last] = material.colourAnchors.slice(-2);
    const end = last ?? before;
    const step = last && before ? last.extent - before.extent : 1;
    const anchor = end ? { ...end, extent: Number((end.extent + step).toPrecision(6)) } : startAnchor;
    return { ...material, colourAnchors: [...material.colourAnchors, anchor] };
  });
