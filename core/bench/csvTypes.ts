/** What reading a table of trials takes and gives. */

import type { Project, Trial } from '../project/schema.ts';

/** What a column may stand for. `tempC` may come in several columns, in order along the machine. */
export type BenchField =
  | 'id'
  | 'date'
  | 'revision'
  | 'material'
  | 'lot'
  | 'speed'
  | 'tempC'
  | 'seconds'
  | 'grams'
  | 'rate'
  | 'torque'
  | 'current'
  | 'labL'
  | 'labA'
  | 'labB'
  | 'photo'
  | 'note'
  | 'excluded'
  | 'excludedWhy';

/** What the trials may refer to, and what stands where the table does not say. */
export interface BenchContext {
  readonly revisions: readonly { readonly id: string; readonly name: string; readonly heated: readonly string[] }[];
  readonly materials: readonly { readonly id: string; readonly name: string }[];
  readonly revisionId: string;
  readonly materialId: string;
  /** YYYY-MM-DD for lines without a date; absent = such lines are errors */
  readonly date?: string;
  /** ids that are taken */
  readonly trialIds: readonly string[];
  /** trials that the bench log still takes */
  readonly room: number;
}

/** What the reader may be told instead of guessing. */
export interface BenchCsvChoices {
  readonly delimiter?: string;
  readonly decimal?: '.' | ',';
  readonly dateOrder?: 'dmy' | 'mdy';
  /** field of each column by its index; null = do not use; undefined or absent = guess */
  readonly fields?: readonly (BenchField | null | undefined)[];
  /** unit of each column by its index; undefined or absent = as the table says */
  readonly units?: readonly (string | undefined)[];
}

/** What a column was taken for. */
export interface BenchColumn {
  readonly index: number;
  readonly header: string;
  readonly field: BenchField | null;
  /** unit as written, '' where the file says none */
  readonly unit: string;
  /** place among the temperatures, 0 = nearest the feed; null for other columns */
  readonly order: number | null;
  readonly confidence: 'given' | 'sure' | 'likely' | 'guess' | 'none';
  readonly reason: string;
}

/** A remark on a place of the file; lines and columns count from 1. */
export interface CsvFault {
  readonly line: number;
  /** 0 = the whole line */
  readonly column: number;
  readonly header: string;
  /** what stands there, shortened */
  readonly text: string;
  readonly message: string;
  /** what would be allowed */
  readonly allowed: string;
}

/** A line that became a trial. */
export interface ReadTrial {
  readonly line: number;
  readonly trial: Trial;
}

/** A table of trials as read. Every line is in exactly one of trials, faulty lines and skips. */
export interface BenchImport {
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  /** null where the dates do not need it */
  readonly dateOrder: 'dmy' | 'mdy' | null;
  /** lines of the file that carry a row, so many began */
  readonly rows: number;
  readonly headerLine: number;
  readonly columns: readonly BenchColumn[];
  readonly trials: readonly ReadTrial[];
  /** at least one per faulty line */
  readonly errors: readonly CsvFault[];
  readonly faultyLines: number;
  /** doubts about lines that were read all the same */
  readonly warnings: readonly CsvFault[];
  readonly skips: readonly { readonly line: number; readonly reason: string }[];
  /** first rows as text */
  readonly preview: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

/** Longest text that is read, UTF-16 units: `mostCsvRows` lines of 200 characters. */
export const longestCsvText = 4_000_000;
/** Most lines that are read: four times what a bench log holds. */
export const mostCsvRows = 20_000;
/** Most trials that a bench log holds. */
export const mostTrials = 5000;

/** The context of a project: its revisions, materials and trials. */
export function benchContext(project: Project, revisionId: string, date?: string): BenchContext {
  const revision = project.revisions.find(({ id }) => id === revisionId) ?? project.revisions[0];
  const heated = (zones: Project['revisions'][number]['barrel']['zones']) =>
    zones.filter(({ kind }) => kind === 'heated').sort((p, q) => p.startMm - q.startMm);
  return {
    revisions: project.revisions.map(({ id, name, barrel }) => ({
      id,
      name,
      heated: [...heated(barrel.zones).map((zone) => zone.name), 'nozzle'],
    })),
    materials: project.materials.map(({ id, name }) => ({ id, name })),
    revisionId: revision.id,
    materialId: revision.materialId,
    ...(date === undefined ? {} : { date }),
    trialIds: project.benchLog.map(({ id }) => id),
    room: Math.max(0, mostTrials - project.benchLog.length),
  };
}
