/** What the drawing shows and lets be pulled: dimensions of the machine. All lengths mm as stored, angles degrees. */

import type { Revision } from '../../core/index.ts';
import type { Change } from '../fields/check.ts';
import type { FieldSpec } from '../fields/spec.ts';
import type { Path } from '../store/path.ts';

/** Which dimensions belong together and are shown or hidden together. */
export type Group = 'screw' | 'barrel' | 'outlet';
/** The groups in the order of their buttons. */
export const groups: readonly Group[] = ['screw', 'barrel', 'outlet'];

/** A list of the description whose entries can be chosen on the drawing. */
type ListName = 'sections' | 'zones' | 'segments';

/** An entry of such a list. */
export interface Entry {
  readonly list: ListName;
  readonly index: number;
}

/** How a pull treats its neighbours. */
export interface Manners {
  /** a border inside the screw moves alone: what one section gains the next one loses */
  readonly keepLength: boolean;
  /** ends that touch and agree move together */
  readonly joined: boolean;
}

/** Where a dimension is drawn: between two places of the axis, across the axis, or as a note with a leader. */
type Mark =
  | { readonly kind: 'along'; readonly from: number; readonly to: number; readonly r: number; readonly above: boolean }
  | { readonly kind: 'across'; readonly z: number; readonly r: number; readonly above: boolean }
  | { readonly kind: 'note'; readonly z: number; readonly r: number; readonly above: boolean };

/** What is pulled, and along which way. `aside` moves it a few px off a neighbour at the same place. */
interface Grip {
  readonly z: number;
  readonly r: number;
  readonly axis: 'z' | 'r';
  readonly aside: -1 | 0 | 1;
}

/** A value that a pull sticks to. */
export interface Magnet {
  readonly value: number;
  readonly name: string;
}

/** Least and greatest value. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/** One dimension. */
export interface Dimension {
  /** unique in a drawing, and the same from one state of the project to the next */
  readonly id: string;
  readonly group: Group;
  /** the field that it edits; of a derived one, the field that gives way */
  readonly path: Path;
  readonly entry: Entry | null;
  /** whose it is, such as `Section 2 compression` */
  readonly owner: string;
  /** name, unit and help of the value */
  readonly spec: FieldSpec;
  readonly value: number;
  /** written before the number */
  readonly sign: string;
  readonly mark: Mark;
  readonly grip: Grip;
  /** value for the grip at `at` (mm on its axis) */
  valueAt(at: number): number;
  /** the edits that give it a value */
  changes(value: number, manners: Manners): readonly Change[];
  readonly magnets: readonly Magnet[];
  /** where it is not the schema that sets the range */
  readonly range: Range | null;
  /** smaller is shown first where there is not room for all */
  readonly rank: number;
}

/** What dimensions are made from. */
export interface Scene {
  readonly revision: Revision;
  /** path of the revision */
  readonly root: Path;
  readonly manners: Manners;
}

/** Millimetres and degrees without the dust of arithmetic. */
export const clean = (value: number): number => Number(value.toFixed(6));
