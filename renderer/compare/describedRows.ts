/** Revisions side by side as they are described: one row per value, named as its field is. */

import type { Revision } from '../../core/index.ts';
import { showNumber, writeNumber } from '../fields/quantity.ts';
import { type FieldSpec, unitText } from '../fields/spec.ts';
import {
  barrelFields,
  bearingFields,
  driveFields,
  feedOpeningFields,
  heatBreakFields,
  hopperFields,
  motorFields,
  nozzleFields,
  pieceFields,
  screwFields,
  sectionFields,
  shankFields,
  steelFields,
  text,
  tipFields,
  zoneFields,
} from '../strings.ts';

/** One value over all revisions; empty text where a revision has none. */
export interface DescribedRow {
  readonly key: string;
  readonly label: string;
  readonly values: readonly string[];
  readonly differs: boolean;
}

const words = text.describe;
const rooms = ['materialId', 'screw', 'barrel', 'nozzle', 'hopper', 'drive'] as const;

const wholeSpecs: readonly FieldSpec[] = [
  ...screwFields,
  ...steelFields,
  ...tipFields,
  ...shankFields,
  ...barrelFields,
  ...feedOpeningFields,
  ...heatBreakFields,
  ...nozzleFields,
  ...hopperFields,
  ...driveFields,
  ...bearingFields,
];

/** Lists: where they stand, what one entry is called, and the fields of an entry. */
const lists: readonly { prefix: string; entry: string; specs: readonly FieldSpec[] }[] = [
  { prefix: 'screw.sections.', entry: words.section, specs: sectionFields },
  { prefix: 'barrel.zones.', entry: words.zone, specs: Object.values(zoneFields) },
  { prefix: 'nozzle.segments.', entry: words.nozzlePiece, specs: pieceFields },
  { prefix: 'drive.motorCurve.', entry: words.point, specs: motorFields },
];

/** What is known of the field at a dotted key of a revision. */
export function specOf(key: string): FieldSpec | undefined {
  const list = lists.find(({ prefix }) => key.startsWith(prefix));
  if (!list) return wholeSpecs.find((candidate) => candidate.key === key);
  const [, name = ''] = key.slice(list.prefix.length).split('.');
  return list.specs.find((candidate) => candidate.key === name);
}

/** A number as its field shows it: in the unit and with the decimal sign of this window. */
function written(value: number, key: string): string {
  const spec = specOf(key);
  return spec ? showNumber(value, spec.unit) : writeNumber(value);
}

/** Leaves of plain data as dotted keys. */
function leaves(value: unknown, key: string, into: Map<string, string>): void {
  if (typeof value === 'object' && value !== null) {
    for (const [name, child] of Object.entries(value)) leaves(child, key ? `${key}.${name}` : name, into);
  } else if (value !== undefined) {
    into.set(key, typeof value === 'number' ? written(value, key) : String(value ?? '–'));
  }
}

const spelled = (key: string): string =>
  key
    .replace(/(Mm|C|W|Deg|MPa|GPa|Nm|Rpm)$/, '')
    .replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const placed = (room: string | undefined, label: string): string => {
  const name = Object.entries(text.parts).find(([id]) => id === room)?.[1];
  return name && !label.startsWith(name) ? `${name}: ${label}` : label;
};

/** What a dotted key is called in the window, with its unit. */
export function labelOf(key: string): string {
  const list = lists.find(({ prefix }) => key.startsWith(prefix));
  const withUnit = ({ label, unit }: FieldSpec) => `${label}${unitText(unit) ? `, ${unitText(unit)}` : ''}`;
  if (list) {
    const [index, name = ''] = key.slice(list.prefix.length).split('.');
    const spec = specOf(key);
    return `${list.entry} ${Number(index) + 1}: ${spec ? withUnit(spec) : capital(spelled(name))}`;
  }
  if (key === 'materialId') return text.parts.granulate;
  const spec = specOf(key);
  const [room, ...rest] = key.split('.');
  return placed(room, spec ? withUnit(spec) : capital(rest.map(spelled).join(' ')));
}

/** Rows of all values in the order of the first revision that has them. */
export function describedRows(revisions: readonly Revision[]): DescribedRow[] {
  const columns = revisions.map((revision) => {
    const column = new Map<string, string>();
    for (const room of rooms) leaves(revision[room], room, column);
    return column;
  });
  const keys = new Set(columns.flatMap((column) => [...column.keys()]));
  return [...keys].map((key) => {
    const values = columns.map((column) => column.get(key) ?? '');
    return { key, label: labelOf(key), values, differs: new Set(values).size > 1 };
  });
}
