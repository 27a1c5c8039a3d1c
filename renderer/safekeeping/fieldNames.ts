/** What a place of the project is called in the panels, and the field that edits it. */

import { fieldLabel, fieldUnit, pathText } from '../../core/index.ts';
import { labelOf, specOf } from '../compare/describedRows.ts';
import { type FieldSpec, unitText } from '../fields/spec.ts';
import { safeText } from '../strings/safekeeping.ts';
import {
  anchorFields,
  degradationFields,
  fillerFields,
  grainFields,
  lawFields,
  mechanicalFields,
  orderField,
  printFields,
  rheologyFields,
  rheologyRangeFields,
  runningFields,
  shiftFields,
  shiftReferenceField,
  text,
  thermalFields,
} from '../strings.ts';

type Path = readonly (string | number)[];

const words = safeText.difference;

const materialSpecs: readonly FieldSpec[] = [
  shiftReferenceField,
  ...Object.values(rheologyFields).flat(),
  ...Object.values(shiftFields).flat(),
  ...rheologyRangeFields,
  ...grainFields,
  ...thermalFields,
  ...mechanicalFields,
  ...fillerFields,
];

/** Fields of an entry of a list inside a material: the aging laws and the measured colours. */
const entrySpecs: readonly FieldSpec[] = [
  orderField,
  ...lawFields,
  ...anchorFields,
  ...Object.values(degradationFields).flat(),
];

/** What stands inside a sourced value is named as the value itself, with what it says of it. */
const inSourced: Readonly<Record<string, string>> = {
  value: '',
  low: text.describe.range,
  high: text.describe.range,
  source: text.describe.source,
  status: text.describe.status,
};

function materialSpec(rest: Path): FieldSpec | undefined {
  const key = rest.join('.');
  const last = String(rest.at(-1));
  return materialSpecs.find((spec) => spec.key === key) ?? entrySpecs.find((spec) => spec.key === last);
}

/** The field of the number at a path from the project's root; entries may stand under an id or a position. */
export function specAt(path: Path): FieldSpec | undefined {
  const [head, ...rest] = path;
  if (head === 'revisions') return specOf(rest.slice(1).join('.'));
  if (head === 'process') return runningFields.find(({ key }) => key === path.join('.'));
  if (head === 'print') return printFields.find(({ key }) => key === path.join('.'));
  if (head !== 'materials') return undefined;
  const inside = rest.slice(1);
  return materialSpec(inside) ?? materialSpec(inside.slice(0, -1));
}

const withUnit = (label: string, unit: string): string => (unit ? `${label}, ${unit}` : label);

function materialLabel(rest: Path): string {
  const of = inSourced[String(rest.at(-1))];
  const spec = materialSpec(rest) ?? (of === undefined ? undefined : materialSpec(rest.slice(0, -1)));
  const name = spec ? spec.label : fieldLabel(pathText(of === undefined ? rest : rest.slice(0, -1)));
  const unit = spec ? unitText(spec.unit) : fieldUnit(rest);
  const numeric = of === undefined || !['source', 'status'].includes(String(rest.at(-1)));
  return withUnit(of ? `${name}: ${of.toLowerCase()}` : name, numeric ? unit : '');
}

/** The part of the project that a path leads into, such as `Revision B`; empty for what belongs to the whole. */
export function placeOf(path: Path, project: unknown): string {
  const [head, entry] = path;
  if (head === 'process') return text.parts.running;
  if (head === 'print') return text.parts.print;
  if (entry === undefined) return '';
  const id = typeof entry === 'string' ? entry : idAt(project, path.slice(0, 2));
  if (head === 'revisions') return words.revision(id);
  if (head === 'benchLog') return words.trial(id);
  if (head === 'calibrations') return words.calibration(id);
  return head === 'materials' ? id : '';
}

function idAt(project: unknown, path: Path): string {
  const entry = path.reduce<unknown>((value, key) => Reflect.get(Object(value), key), project);
  const id: unknown = Reflect.get(Object(entry), 'id');
  return typeof id === 'string' ? id : String(Number(path.at(-1)) + 1);
}

/** The name of a value inside its part, with its unit; empty where the path leads to a whole entry. */
export function valueName(path: Path): string {
  const [head, ...rest] = path;
  const spec = specAt(path);
  if (head === 'process' || head === 'print')
    return spec ? withUnit(spec.label, unitText(spec.unit)) : withUnit(fieldLabel(pathText(rest)), fieldUnit(path));
  if (head === 'revisions') return rest.length < 2 ? '' : labelOf(rest.slice(1).join('.'));
  if (head === 'materials') return rest.length < 2 ? '' : materialLabel(rest.slice(1));
  const inside = head === 'benchLog' || head === 'calibrations' ? rest.slice(1) : path;
  return inside.length === 0 ? '' : withUnit(fieldLabel(pathText(inside)), fieldUnit(inside));
}
