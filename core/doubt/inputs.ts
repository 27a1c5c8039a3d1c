/** Everything about a revision that is stated as a range. */

import { type FactorName, factorNames } from '../design/calibrate.ts';
import { fieldUnit } from '../project/fieldUnit.ts';
import { isObject } from '../project/looseView.ts';
import type { Material } from '../project/materialSchema.ts';
import type { Calibration, Project, Revision } from '../project/schema.ts';
import { parseFieldPath, resolveField, valueAt } from './fieldPath.ts';
import { fieldLabel } from './labels.ts';
import { factorDoubts, standsFor } from './modelDoubts.ts';
import type { DoubtInput, DoubtInputs, SkippedDoubt } from './types.ts';

type Found = { readonly input: DoubtInput } | { readonly skip: SkippedDoubt };

const skip = (path: string, reason: string): Found => ({ skip: { path, reason } });

function field(
  path: string,
  nominal: number,
  low: number,
  high: number,
  more: Pick<DoubtInput, 'from' | 'why'>,
): Found {
  if (!(low < high)) return skip(path, 'Its low end is not below its high end.');
  if (!(low <= nominal && nominal <= high)) return skip(path, `The range does not enclose the value ${nominal}.`);
  const unit = fieldUnit(parseFieldPath(path) ?? []);
  return { input: { path, label: fieldLabel(path), unit, nominal, low, high, distribution: 'triangular', ...more } };
}

/** Sourced values of a material that carry a range, by their place in it. */
function rangedFields(node: unknown, place: string): readonly (readonly [string, Readonly<Record<string, unknown>>])[] {
  if (Array.isArray(node)) return node.flatMap((item, i) => rangedFields(item, `${place}[${i}]`));
  if (!isObject(node)) return [];
  const ranged = typeof node.low === 'number' || typeof node.high === 'number';
  if (typeof node.value === 'number') return ranged ? [[place, node]] : [];
  return Object.entries(node).flatMap(([key, item]) => rangedFields(item, place === '' ? key : `${place}.${key}`));
}

/** Why a material's range plays no part, or null. */
function materialSkip(place: string, colourLaw: number, calibration: Calibration | undefined): string | null {
  if (place.startsWith('mechanical.')) return 'No output of this study reads it.';
  if (place.startsWith('degradation[') && !place.startsWith(`degradation[${colourLaw}].`)) {
    return 'This law does not drive the colour.';
  }
  const measured = factorNames.find((name) => calibration?.factors[name].fitted && standsFor(name, place, colourLaw));
  return measured ? `The calibration ${calibration?.name ?? ''} has measured it.` : null;
}

function materialDoubts(material: Material, colourLaw: number, calibration: Calibration | undefined): Found[] {
  return rangedFields(material, '').map(([place, node]) => {
    const path = `material.${place}`;
    const reason = materialSkip(place, colourLaw, calibration);
    if (reason !== null) return skip(path, reason);
    const value = Number(node.value);
    const low = typeof node.low === 'number' ? node.low : value;
    const high = typeof node.high === 'number' ? node.high : value;
    return field(path, value, low, high, { from: 'material', why: String(node.source ?? '') });
  });
}

function factorDoubt(name: FactorName, taken: readonly string[], calibration: Calibration | undefined): Found[] {
  const path = `factor.${name}`;
  const { label, low, high, why, onlyWithout } = factorDoubts[name];
  const fitted = calibration?.factors[name];
  const shared = { path, label, unit: '', distribution: 'triangular' } as const;
  if (calibration && fitted?.fitted) {
    const { value: nominal } = fitted;
    const ends = { low: Math.min(fitted.low, nominal), high: Math.max(fitted.high, nominal) };
    if (!(ends.low > 0 && ends.low < ends.high)) return [skip(path, 'The calibration gives it no usable range.')];
    return [
      {
        input: { ...shared, nominal, ...ends, from: 'calibration', why: `Limits of calibration ${calibration.name}.` },
      },
    ];
  }
  if (onlyWithout && taken.length > 0) return [skip(path, `The ranges of ${taken.join(', ')} stand for it.`)];
  return [{ input: { ...shared, nominal: 1, low, high, from: 'model', why } }];
}

function userDoubts(
  project: Project,
  revision: Revision,
  colourLaw: number,
  calibration: Calibration | undefined,
): Found[] {
  return (project.doubts ?? []).map(({ path, low, high }) => {
    const at = resolveField(project, revision.id, path);
    if (at === null) return skip(path, 'The active revision has no number at this place.');
    const place = /^material\.(.*?)(?:\.value)?$/.exec(path)?.[1];
    const reason = place === undefined ? null : materialSkip(place, colourLaw, calibration);
    if (reason !== null) return skip(path, reason);
    return field(path, Number(valueAt(project, at)), low, high, { from: 'user', why: 'Stated in this project.' });
  });
}

/** Later ranges on one path replace earlier ones. */
function lastPerPath(found: readonly Found[]): readonly Found[] {
  const byPath = new Map<string, Found>();
  for (const one of found) byPath.set('input' in one ? one.input.path : one.skip.path, one);
  return [...byPath.values()];
}

/** Ranges of the model's factors that the material's own values do not already tell. */
function modelDoubts(
  fields: readonly Found[],
  material: Material,
  colourLaw: number,
  calibration?: Calibration,
): Found[] {
  const places = fields.flatMap((one) => ('input' in one ? [one.input.path] : []));
  return factorNames.flatMap((name) => {
    if (name === 'colourRate' && (colourLaw < 0 || material.colourAnchors.length === 0)) return [];
    const taken = places.filter((path) => standsFor(name, path.replace(/^material\./, ''), colourLaw));
    return factorDoubt(name, taken, calibration);
  });
}

/**
 * All that is doubtful about a revision: ranges of its material, ranges stated in the project (they replace those of
 * the material), and the model's factors. A factor found from trials brings its 95 % limits and stands for the
 * material's own ranges of what it scales. Units are those of the file.
 * @returns inputs, and every range that was not taken with the reason; empty where the revision or material is missing
 */
export function doubtInputs(project: Project, revisionId: string): DoubtInputs {
  const revision = project.revisions.find(({ id }) => id === revisionId);
  const material = project.materials.find(({ id }) => id === revision?.materialId);
  if (!revision || !material) return { inputs: [], skipped: [] };
  const calibration = project.calibrations?.find(({ id }) => id === revision.calibrationId);
  const colourLaw = material.degradation.findIndex(({ id }) => id === material.colourLaw);
  const fields = lastPerPath([
    ...materialDoubts(material, colourLaw, calibration),
    ...userDoubts(project, revision, colourLaw, calibration),
  ]);
  const all = [...fields, ...modelDoubts(fields, material, colourLaw, calibration)];
  return {
    inputs: all.flatMap((one) => ('input' in one ? [one.input] : [])),
    skipped: all.flatMap((one) => ('skip' in one ? [one.skip] : [])),
  };
}
