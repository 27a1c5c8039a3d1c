/** What a search takes and gives: plain data, so that it can cross to a worker and back. */

import type { CapacityKind } from '../prediction/capacityTypes.ts';
import type { Unit } from '../units.ts';

/** Something of a design that can be varied. */
export interface SearchInput {
  /** place of a number, as `resolveField` reads it, or `joint.…` for several numbers moved together */
  readonly id: string;
  readonly label: string;
  /** symbol of the file's unit, '' where it has none */
  readonly unit: string;
  /** as it stands now, unit of the file */
  readonly value: number;
  /** what is proposed to be searched, low < high */
  readonly low: number;
  readonly high: number;
  /** what the file format and the machine allow at most */
  readonly floor: number;
  readonly ceiling: number;
  /** smallest step that a maker or a controller can be asked for */
  readonly step: number;
  /** what kind of thing it is: a granulate is measured, not chosen */
  readonly of: 'machine' | 'running' | 'print' | 'granulate';
}

/** One number of a design given another value. */
export interface SearchChange {
  /** id of a SearchInput */
  readonly input: string;
  /** unit of the file */
  readonly value: number;
}

/** A design that was looked at. */
export interface Evaluated {
  readonly changes: readonly SearchChange[];
  /** SI by id of `searchFigures`; null where there is no number. Empty where the design is refused. */
  readonly figures: Readonly<Record<string, number | null>>;
  /** findings that stop or warn; null where the design is refused */
  readonly findings: number | null;
  readonly limit: CapacityKind | null;
  /** why there is nothing to show: the design is refused, or nothing comes out; else null */
  readonly hole: string | null;
  readonly fields: 'formula' | 'solved';
}

/** One axis of a sweep. */
export interface SweepAxis {
  readonly input: string;
  /** unit of the file; either may be the larger */
  readonly from: number;
  readonly to: number;
  /** 2 or more */
  readonly steps: number;
  readonly scale: 'linear' | 'log';
}

/** A sweep laid out: candidates in rows of the second axis, the first axis running fastest. */
export interface SweepPlan {
  readonly axes: readonly SweepAxis[];
  /** values of each axis, unit of the file */
  readonly values: readonly (readonly number[])[];
  readonly candidates: readonly (readonly SearchChange[])[];
}

/** An input of a goal seek with its bounds. */
export interface SeekInput {
  readonly input: string;
  readonly label: string;
  readonly unit: string;
  /** unit of the file */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** candidates are whole multiples of it */
  readonly step: number;
}

/** What a figure has to keep. */
export interface SeekLimit {
  /** id of a figure */
  readonly figure: string;
  readonly sense: 'atLeast' | 'atMost';
  /** SI */
  readonly bound: number;
}

/** A goal seek as asked for. */
export interface SeekSpec {
  readonly inputs: readonly SeekInput[];
  readonly objective: { readonly figure: string; readonly sense: 'least' | 'most' };
  readonly limits: readonly SeekLimit[];
  /** most designs that are evaluated, the present one not counted */
  readonly budget: number;
}

/** Designs to be evaluated next; they do not depend on each other. */
export interface SeekBatch {
  readonly phase: 'global' | 'local';
  readonly candidates: readonly (readonly SearchChange[])[];
}

/** How a figure stands to its limit. */
export interface LimitState {
  readonly figure: string;
  readonly label: string;
  readonly unit: Unit | '';
  readonly sense: SeekLimit['sense'];
  /** SI */
  readonly bound: number;
  readonly value: number | null;
  /** 0 where kept, else how far beyond, relative to the bound; null where there is no number to tell by */
  readonly beyond: number | null;
  readonly state: 'kept' | 'binds' | 'unmet';
}

/** A figure against the present design. */
export interface FigureChange {
  readonly id: string;
  readonly label: string;
  readonly unit: Unit | '';
  /** SI */
  readonly before: number | null;
  readonly value: number | null;
  /** relative; null where there is none */
  readonly change: number | null;
  readonly verdict: 'better' | 'worse' | 'different' | 'smaller than the model error' | 'same' | 'unknown';
}

/** A candidate that is worth a look. */
export interface Candidate {
  readonly design: Evaluated;
  readonly rank: number;
  readonly meets: boolean;
  readonly limits: readonly LimitState[];
  readonly figures: readonly FigureChange[];
  /** inputs at an end of their range */
  readonly atEnd: readonly { readonly input: string; readonly label: string; readonly end: 'low' | 'high' }[];
}

/** What a goal seek found so far. */
export interface SeekResult {
  readonly evaluated: number;
  readonly holes: number;
  /** of those evaluated, how many keep every limit */
  readonly meeting: number;
  readonly base: Evaluated;
  readonly baseLimits: readonly LimitState[];
  /** best first, each different enough from those before it */
  readonly candidates: readonly Candidate[];
  /** sentences: what was found, what binds, what is unmet */
  readonly account: readonly string[];
}

/** One input moved by a maker's step, and what that does. */
export interface SensitivityRow {
  readonly input: string;
  readonly label: string;
  readonly unit: string;
  readonly step: number;
  /** downwards, then upwards */
  readonly sides: readonly {
    readonly value: number;
    readonly hole: string | null;
    /** SI */
    readonly objective: number | null;
    /** relative to the candidate */
    readonly change: number | null;
    /** labels of limits no longer kept */
    readonly breaks: readonly string[];
  }[];
}
