/** The open project and its undo history: the only place where a Project changes. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Project, Revision } from '../../core/index.ts';
import { type History, record, type StepName, startHistory, stepBack, stepForward } from './history.ts';
import { sameButShown, shownAfterStep, withShown } from './shownRevision.ts';

/** Where the project lives: the host's handle for writing back, null where there is no file of its own yet. */
export interface ProjectFile {
  readonly handle: string | null;
  readonly name: string;
  /** Path for display; absent where there is none. */
  readonly path?: string | null;
  /** Fingerprint of the file as last read or written; absent where there is none. */
  readonly version?: string | null;
}

/** Which project is open, where it lives, and what may be undone. */
export interface ProjectState {
  /** null until the first project is loaded */
  readonly history: History<Project> | null;
  readonly file: ProjectFile;
  /** the project as it was last saved or loaded */
  readonly saved: Project | null;
}

/** Outside React: read with getState, follow with subscribe. */
export const projectStore = createStore<ProjectState>(() => ({
  history: null,
  file: { handle: null, name: '' },
  saved: null,
}));

/** Picks a part of the state inside a view. */
export const useProjectState = <T>(pick: (state: ProjectState) => T): T => useStore(projectStore, pick);

/** The open project; views below the loading screen may rely on it. */
export function useProject(): Project {
  const project = useProjectState((state) => state.history?.present);
  if (!project) throw new Error('no project is open');
  return project;
}

/** The project now, or null. */
export const currentProject = (): Project | null => projectStore.getState().history?.present ?? null;

/** The revision being worked on: the active one, or the first where the active id is unknown. */
export function activeRevision(project: Project): Revision {
  const active = project.revisions.find((revision) => revision.id === project.activeRevision) ?? project.revisions[0];
  if (!active) throw new Error('a project holds at least one revision');
  return active;
}

/** Whether there are changes that no file holds; which revision is shown is none. */
export const isUnsaved = (state: ProjectState): boolean =>
  state.history !== null && !sameButShown(state.history.present, state.saved);

/** Opens a project with an empty history. */
export function loadProject(project: Project, file: ProjectFile): void {
  projectStore.setState({ history: startHistory(project), file, saved: project });
}

/** Begins with a project that no file holds. */
export function startProject(project: Project): void {
  projectStore.setState({ history: startHistory(project), file: { handle: null, name: '' }, saved: null });
}

/** Notes that `saved` is what the file holds; edits made while it was written stay unsaved. */
export const markSaved = (saved: Project, file: ProjectFile): void => projectStore.setState({ saved, file });

/** Replaces the project by `change(project)` as one named step. */
export function applyEdit(change: (project: Project) => Project, step: StepName, now = Date.now()): void {
  projectStore.setState(({ history }) =>
    history ? { history: record(history, change(history.present), step, now) } : {},
  );
}

/** Shows another revision. That is written with the file, but is neither a change to be saved nor a step to undo. */
export function showRevision(id: string): void {
  projectStore.setState(({ history }) =>
    history ? { history: { ...history, present: withShown(history.present, id), open: null } } : {},
  );
}

/** Moves through the history without losing sight of the revision that is shown. */
function move(step: (history: History<Project>) => History<Project>): void {
  projectStore.setState(({ history }) => {
    if (!history) return {};
    const moved = step(history);
    return { history: { ...moved, present: shownAfterStep(history.present, moved.present) } };
  });
}

/** Takes the latest step back. */
export const undo = (): void => move(stepBack);

/** Makes an undone step again. */
export const redo = (): void => move(stepForward);
