/** Everything about a revision that can be varied, with a range that makes sense to begin with. */

import { resolveField, valueAt } from '../doubt/fieldPath.ts';
import { fieldLabel } from '../doubt/labels.ts';
import { numberPlaces } from '../doubt/numberPlaces.ts';
import { fieldUnit } from '../project/fieldUnit.ts';
import { childNode, type SchemaNode, schemaNode } from '../project/jsonSchema.ts';
import { type Project, projectSchema, type Revision } from '../project/schema.ts';
import { jointInputs } from './joint.ts';
import { makeableStep, onStep } from './steps.ts';
import type { SearchInput } from './types.ts';

/** A field's name without what the file's short spelling leaves in it. */
const named = (path: string): string =>
  fieldLabel(path)
    .replace(/^Process/, 'Running')
    .replace(/ (mJPer m3|n|delta e)$/, (ending) => (ending === ' delta e' ? ' colour difference' : ''))
    .replace(/\btemp$/, 'temperature');

/** Section and zone by their own names, where they have one. */
function labelOf(revision: Revision, path: string): string {
  const part = /^(screw\.sections|barrel\.zones|nozzle\.segments)\[(\d+)\]\.(.*)$/.exec(path);
  if (!part) return named(path);
  const [, list = '', index = '', rest = ''] = part;
  const parts: readonly { readonly name?: string | undefined }[] =
    list === 'screw.sections'
      ? revision.screw.sections
      : list === 'barrel.zones'
        ? revision.barrel.zones
        : revision.nozzle.segments;
  const what = list === 'screw.sections' ? 'Screw section' : list === 'barrel.zones' ? 'Barrel zone' : 'Nozzle piece';
  const name = parts[Number(index)]?.name;
  return `${what} ${Number(index) + 1}${name ? ` (${name})` : ''}, ${named(rest).toLowerCase()}`;
}

const kindOf = (path: string): SearchInput['of'] => {
  const head = /^(process|print|material)\./.exec(path)?.[1];
  return head === 'process' ? 'running' : head === 'print' ? 'print' : head === 'material' ? 'granulate' : 'machine';
};

/** Limits of the file format at a place of the project; infinite where it names none. */
function formatLimits(project: Project, at: readonly (string | number)[]): readonly [number, number] {
  let node: SchemaNode | undefined = schemaNode(projectSchema);
  let here: unknown = project;
  for (const key of at) {
    node = node && childNode(node, here, key);
    here = valueAt(here, [key]);
  }
  return [node?.minimum ?? Number.NEGATIVE_INFINITY, node?.maximum ?? Number.POSITIVE_INFINITY];
}

/** What the machine allows beside the format: a root leaves a channel, a clearance a root. mm */
function machineLimits(revision: Revision, path: string): readonly [number, number] {
  const { boreDiameterMm } = revision.barrel;
  if (/rootDiameter|Root$/.test(path)) return [0, boreDiameterMm - 4 * revision.screw.radialClearanceMm - 0.1];
  if (/radialClearanceMm$/.test(path)) return [0, (boreDiameterMm - 1) / 4];
  if (/flightWidth/.test(path)) return [0.1, Number.POSITIVE_INFINITY];
  return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
}

/** About a third to either side, or what a maker would try: 15 K, half to double the speed. */
function proposal(path: string, unit: string, value: number, step: number): readonly [number, number] {
  if (unit === '°C' || unit === 'K') return [value - 15, value + 15];
  if (unit === 'rpm') return [value / 2, value * 2];
  if (/starts$/.test(path)) return [1, Math.max(3, value)];
  if (value === 0) return [0, 20 * step];
  const share = /rootDiameter|Root$/.test(path) ? 0.2 : 0.3;
  return [value - share * Math.abs(value), value + share * Math.abs(value)];
}

function ranged(
  found: Pick<SearchInput, 'id' | 'label' | 'unit' | 'value' | 'step' | 'of'>,
  limits: readonly (readonly [number, number])[],
): SearchInput {
  const { id, unit, value, step } = found;
  const floor = Math.max(...limits.map(([least]) => least));
  const ceiling = Math.min(...limits.map(([, most]) => most));
  const [low, high] = proposal(id, unit, value, step);
  const least = onStep(Math.max(low, floor), step);
  const most = onStep(Math.min(high, ceiling), step);
  const fits = least < most && least >= floor && most <= ceiling;
  return {
    ...found,
    floor,
    ceiling,
    low: fits ? least : Math.max(low, floor),
    high: fits ? most : Math.min(high, ceiling),
  };
}

function jointOnes(revision: Revision): readonly SearchInput[] {
  return jointInputs.flatMap((joint) => {
    const value = joint.read(revision);
    if (value === null || !Number.isFinite(value)) return [];
    const { id, label, unit, step } = joint;
    const format: readonly [number, number] =
      unit === 'mm' ? [0, 400] : id === 'joint.temperature' ? [-200, 200] : [0.2, 20];
    return [ranged({ id, label, unit, value, step, of: 'machine' }, [format, machineLimits(revision, id)])];
  });
}

/**
 * All inputs of a revision that can be varied: the joint ones, then every number of its machine, running, print and
 * granulate. Values in units of the file; ranges are proposals, held within what file format and machine allow.
 * @returns empty where there is no such revision
 */
export function searchInputs(project: Project, revisionId: string): readonly SearchInput[] {
  const revision = project.revisions.find(({ id }) => id === revisionId);
  if (!revision) return [];
  const single = numberPlaces(project, revisionId).flatMap(({ path, value }): readonly SearchInput[] => {
    const at = resolveField(project, revisionId, path);
    if (at === null) return [];
    const limits = [formatLimits(project, at), machineLimits(revision, path)];
    const found = { id: path, label: labelOf(revision, path), unit: fieldUnit(at), value };
    return [ranged({ ...found, step: makeableStep(path, value), of: kindOf(path) }, limits)];
  });
  return [...jointOnes(revision), ...single].filter(({ low, high }) => low < high);
}
