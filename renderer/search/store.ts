/** What a search is to vary and to reach, and what the last ones found; kept while the dialog is closed. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type {
  Evaluated,
  Project,
  SearchChange,
  SearchInput,
  SeekLimit,
  SeekResult,
  SeekSpec,
  SensitivityRow,
  SweepPlan,
} from '../../core/index.ts';
import type { SeekNews } from './solve/runs.ts';

/** One axis as set up. Units of the file. */
export interface AxisSetup {
  readonly input: string;
  readonly from: number;
  readonly to: number;
  readonly steps: number;
  readonly scale: 'linear' | 'log';
}

/** One input of a goal as set up. Units of the file. */
export interface GoalInputSetup {
  readonly input: string;
  readonly low: number;
  readonly high: number;
  readonly step: number;
}

/** One limit as set up; bound SI. */
export interface LimitSetup extends SeekLimit {
  readonly on: boolean;
  readonly why: string;
  /** stated by the reader: stays when limits are proposed for another revision */
  readonly own: boolean;
}

/** How a run stands. */
export interface RunState {
  readonly state: 'running' | 'done' | 'stopped' | 'fault';
  readonly fault: string | null;
  /** what it was run on */
  readonly project: Project;
  readonly revisionId: string;
  readonly inputs: readonly SearchInput[];
  /** ms of the window's clock: when its present phase began, and the latest news */
  readonly since: number;
  readonly now: number;
}

/** The last sweep. */
export interface SweepRun extends RunState {
  readonly plan: SweepPlan;
  readonly designs: readonly (Evaluated | undefined)[];
  readonly done: number;
  readonly fields: Evaluated['fields'];
}

/** The last goal seek. */
export interface SeekRun extends RunState {
  readonly spec: SeekSpec;
  readonly news: SeekNews;
}

/** A candidate looked at. */
export interface ChosenCandidate {
  readonly from: 'formula' | 'solved';
  readonly rank: number;
}

/** What a maker's step does to the candidate with these changes. */
interface StepsRun {
  readonly of: readonly SearchChange[];
  readonly state: 'running' | 'done' | 'fault';
  readonly rows: readonly SensitivityRow[];
  readonly fault: string | null;
}

/** A candidate that became a revision. */
export interface Taken {
  readonly of: readonly SearchChange[];
  readonly id: string;
  readonly note: string;
}

/** Everything. */
export interface SearchState {
  readonly way: 'sweep' | 'goal';
  readonly axes: readonly AxisSetup[];
  readonly sweepFields: Evaluated['fields'];
  /** figures shown: on the chart both, on the map the first */
  readonly shown: readonly [string, string | null];
  readonly hatchLimits: boolean;
  readonly goalInputs: readonly GoalInputSetup[];
  readonly objective: SeekSpec['objective'];
  /** null until they are proposed for a machine */
  readonly limits: readonly LimitSetup[] | null;
  /** the revision that they were proposed for */
  readonly limitsFor: string | null;
  readonly budget: number;
  readonly confirm: boolean;
  readonly sweepRun: SweepRun | null;
  readonly seekRun: SeekRun | null;
  readonly chosen: ChosenCandidate | null;
  /** of the candidate it was last asked for; null until then */
  readonly sensitivity: StepsRun | null;
  /** candidates of the last search that became revisions */
  readonly taken: readonly Taken[];
}

/** As it stands before anything is chosen. */
export const emptySearch: SearchState = {
  way: 'sweep',
  axes: [],
  sweepFields: 'formula',
  shown: ['t95', 'volumeFlow'],
  hatchLimits: true,
  goalInputs: [],
  objective: { figure: 't95', sense: 'least' },
  limits: null,
  limitsFor: null,
  budget: 120,
  confirm: true,
  sweepRun: null,
  seekRun: null,
  chosen: null,
  sensitivity: null,
  taken: [],
};

/** Outside React. */
export const searchStore = createStore<SearchState>(() => emptySearch);

/** Picks a part inside a view. */
export const useSearch = <T>(pick: (state: SearchState) => T): T => useStore(searchStore, pick);

/** Changes some of it. */
export const setSearch = (change: Partial<SearchState>): void => searchStore.setState(change);

/** The list a search's result is shown from. */
export const shownResult = ({ news }: SeekRun, from: ChosenCandidate['from']): SeekResult | null =>
  from === 'solved' ? news.solved : news.result;

/** Whether two candidates are one design. */
export const sameChanges = (a: readonly SearchChange[], b: readonly SearchChange[]): boolean =>
  a.length === b.length && a.every(({ input, value }, i) => b[i]?.input === input && b[i]?.value === value);

/** Whether what a run rests on has changed since: its revision, material, running or print. */
export function isStale(run: RunState, project: Project): boolean {
  const of = (one: Project) => {
    const {
      name: _n,
      note: _o,
      date: _d,
      locked: _l,
      parent: _p,
      ...machine
    } = one.revisions.find(({ id }) => id === run.revisionId) ?? ({} as Project['revisions'][number]);
    return [...Object.values(machine), one.materials, one.process, one.print, one.calibrations];
  };
  const before = of(run.project);
  const after = of(project);
  return before.length !== after.length || before.some((part, i) => part !== after[i]);
}
