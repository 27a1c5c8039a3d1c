/** The open project and its undo history: the only place where a Project changes. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Project, Revision } from '../../core/index.ts';
import { type History, record, type StepName, startHistory, stepBack, stepForward } from './history.ts';

/** Where the project lives: the host's handle for writing back, null where there is no file of its own yet. */
export interface ProjectFile {
  readonly handle: string | null;
  readonly name: string;
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

/** Whether there are changes that no file holds. */
export const isUnsaved = (state: ProjectState): boolean =>
  state.history !== null && state.history.present !== state.saved;

/** Opens a project with an empty history. */
export function loadProject(project: Project, file: ProjectFile): void {
  projectStore.setState({ history: startHistory(project), file, saved: project });
}

/** Notes that `saved` is what the file holds; edits made while it was written stay unsaved. */
export const markSaved = (saved: Project, file: ProjectFile): void => projectStore.setState({ saved, file });

/** Replaces the project by `change(project)` as one named step. */
export function applyEdit(change: (project: Project) => Project, step: StepName, now = Date.now()): void {
  projectStore.setState(({ history }) =>
    history ? { history: record(history, change(history.present), step, now) } : {},
  );
}

/** Takes the latest step back. */
export function undo(): void {
  projectStore.setState(({ history }) => (history ? { history: stepBack(history) } : {}));
}

/** Makes an undone step again. */
export function redo(): void {
  projectStore.setState(({ history }) => (history ? { history: stepForward(history) } : {}));
}
