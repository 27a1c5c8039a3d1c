/**
 * What every kind of hand-over file is to the dialogue and the headless command: one small uniform module each.
 *
 * A module is called through `runHandover` (run.ts) alone, which checks the options against the module's own list and
 * the subjects against `needs` and `several` first; inside `write` the readers of check.ts (`numberOf`, `choiceOf`,
 * `flagOf`, `textOf`) tell the values apart. File names come from `fileName` (names.ts).
 * Later additions to this contract are optional: `HandoverFile.cautions`.
 */

import type { Design } from '../design/types.ts';
import type { Prediction } from '../prediction/types.ts';
import type { Presentation } from '../present/types.ts';
import type { Project, Revision } from '../project/schema.ts';
import type { Result } from '../result.ts';

/** One revision with what was predicted of it; without a prediction where the module needs none. */
export interface HandoverSubject {
  readonly revision: Revision;
  readonly design: Design;
  readonly prediction: Prediction | null;
  readonly presentation: Presentation | null;
}

/** Everything a module writes from. */
export interface HandoverSource {
  readonly project: Project;
  /** at least one; the first is the one asked for, more where revisions are compared */
  readonly subjects: readonly HandoverSubject[];
  /** day of writing as YYYY-MM-DD, handed in because core has no clock */
  readonly date: string;
}

/** A choice the person has before writing. Lengths in mm, as typed. */
export type HandoverOption = {
  readonly id: string;
  readonly label: string;
  readonly help: string;
} & (
  | {
      readonly kind: 'choice';
      readonly choices: readonly { readonly id: string; readonly label: string }[];
      readonly start: string;
    }
  | {
      readonly kind: 'number';
      readonly unit: string;
      readonly least: number;
      readonly most: number;
      readonly start: number;
    }
  | { readonly kind: 'text'; readonly longest: number; readonly start: string }
  | { readonly kind: 'flag'; readonly start: boolean }
);

/** Values of a module's options, by id; checked against them before `write` is called. */
export type HandoverValues = Readonly<Record<string, string | number | boolean>>;

/** A written file and what is worth knowing of it (size of the mesh, deviation, volume against the analytic one …). */
export interface HandoverFile {
  /** without folders, with extension */
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
  readonly facts: readonly { readonly label: string; readonly text: string }[];
  /** what whoever makes or runs it must know, one sentence or a few each; shown before saving */
  readonly cautions?: readonly string[];
}

/**
 * Heavy libraries, loaded only when a module asks; the host of core hands them in. Each is typed where it is used, by
 * the least part of it that is used.
 */
export interface HandoverTools {
  /** manifold-3d, set up */
  solids(): Promise<unknown>;
  /** OpenCASCADE, set up */
  brep(): Promise<unknown>;
  /** pdfkit's document class; Helvetica (plain, bold, oblique) and Courier are known to it, and no other font */
  pdf(): Promise<unknown>;
}

/** Hears how far a long writing is, 0 to 1, and what it is at. */
export type HandoverProgress = (done: number, stage: string) => void;

/** One kind of file that can be handed over. */
export interface HandoverModule {
  /** word of the headless command's --to */
  readonly id: string;
  readonly label: string;
  readonly help: string;
  /** without dot */
  readonly extension: string;
  readonly mediaType: string;
  /** group in the dialogue */
  readonly group: 'model' | 'drawing' | 'shop' | 'controller' | 'report' | 'data';
  /** what must have been predicted: nothing, the quick formulas, or solved fields */
  readonly needs: 'design' | 'prediction' | 'solved';
  /** whether more than one revision can be written into it */
  readonly several: boolean;
  readonly options: readonly HandoverOption[];
  /** Writes the files (usually one); issues where the design cannot be written in this form. */
  write(
    source: HandoverSource,
    values: HandoverValues,
    tools: HandoverTools,
    tell: HandoverProgress,
  ): Promise<Result<readonly HandoverFile[]>>;
}
