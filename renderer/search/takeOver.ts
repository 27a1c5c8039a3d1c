/** Making a candidate a revision of the project: one step. */

import {
  type Candidate,
  checkProject,
  figureOf,
  issueText,
  type Project,
  type SearchChange,
  type SeekSpec,
  withChanges,
} from '../../core/index.ts';
import { applyEdit, currentProject } from '../store/project.ts';
import { freeId } from '../store/revisions.ts';
import { searchText } from '../strings/search.ts';
import { today } from '../today.ts';
import { inSentence, plainFigure, plainValue } from './shown.ts';
import {
  type ChosenCandidate,
  type SeekRun,
  sameChanges,
  searchStore,
  setSearch,
  shownResult,
  type Taken,
} from './store.ts';

const words = searchText.note;

/** Longest name that a file takes. */
const longestName = 120;

/** The goal in words. */
function goalText({ objective: { figure, sense } }: SeekSpec): string {
  return words.goal(searchText.goal.senses[sense], inSentence(figureOf(figure).label));
}

/** A candidate of a run. */
function candidateOf(run: SeekRun, { from, rank }: ChosenCandidate): Candidate {
  const found = shownResult(run, from)?.candidates.find((one) => one.rank === rank);
  if (!found) throw new Error(`no candidate ${rank} was found`);
  return found;
}

/** What was searched and what it rests on. */
export function noteOf(run: SeekRun, chosen: ChosenCandidate): string {
  const { spec, revisionId, news } = run;
  const candidate = candidateOf(run, chosen);
  const varied = spec.inputs.map(({ input, label, unit, value, low, high }) => {
    const found = candidate.design.changes.find((change) => change.input === input)?.value ?? value;
    return words.within(inSentence(label), plainValue(found, unit), plainValue(low, unit), plainValue(high, unit));
  });
  const limits = candidate.limits.map(
    ({ label, sense, bound, unit, value }) =>
      `${inSentence(label)} ${searchText.goal.sensesOf[sense]} ${plainFigure(bound, unit)} (${plainFigure(value, unit)})`,
  );
  const goal = candidate.figures.find(({ id }) => id === spec.objective.figure);
  return [
    words.searched(inSentence(goalText(spec)), revisionId, news.result?.evaluated ?? 0),
    ...(goal ? [`${goal.label}: ${plainFigure(goal.before, goal.unit)} → ${plainFigure(goal.value, goal.unit)}.`] : []),
    words.varied(varied.join('; ')),
    ...(limits.length > 0 ? [words.limits(limits.join('; '))] : []),
    words.rests[chosen.from],
    words.error,
  ].join('\n');
}

/** The project with the revision, or why not. */
export type Taking = { readonly project: Project; readonly taken: Taken } | { readonly refusal: string };

/** Inputs that belong to the whole project and not to a revision. */
export const isShared = (input: string): boolean => /^(process|print)\./.test(input);

/**
 * The project with a candidate as a new revision at work. The machine is that of the search, so that it is what was
 * evaluated even where the project has changed since.
 * @returns the project, or why it cannot be made: its base revision or its material is gone, or the file format refuses it
 */
function withCandidate(project: Project, run: SeekRun, chosen: ChosenCandidate, date: string): Taking {
  const candidate = candidateOf(run, chosen);
  const { changes } = candidate.design;
  const made = withChanges(run.project, run.revisionId, changes).revisions.find(({ id }) => id === run.revisionId);
  const parent = run.revisionId;
  if (!made || !project.revisions.some(({ id }) => id === parent)) return { refusal: searchText.detail.gone(parent) };
  if (!project.materials.some(({ id }) => id === made.materialId))
    return { refusal: searchText.detail.goneMaterial(made.materialId) };
  const id = freeId(project);
  const name = words.name(goalText(run.spec), chosen.rank).slice(0, longestName);
  const added = { ...structuredClone(made), id, name, date, parent, locked: false, note: noteOf(run, chosen) };
  const grown = { ...project, revisions: [...project.revisions, added], activeRevision: id };
  const shared = changes.filter(({ input }) => isShared(input));
  const next = withChanges(grown, id, shared);
  const checked = checkProject(next);
  if (!checked.ok) return { refusal: searchText.detail.refused(checked.issues.slice(0, 2).map(issueText).join(' ')) };
  return { project: next, taken: { of: changes, id, note: added.note } };
}

/** Takes the candidate over as one step that can be undone; says why where it cannot, and then changes nothing. */
export function takeOver(run: SeekRun, chosen: ChosenCandidate): string | null {
  const before = currentProject();
  if (!before) return null;
  const made = withCandidate(before, run, chosen, today());
  if ('refusal' in made) return made.refusal;
  applyEdit(() => made.project, { label: words.step(inSentence(goalText(run.spec))) });
  setSearch({ taken: [...searchStore.getState().taken, made.taken] });
  return null;
}

/** The revision that a candidate became, where the project still has it: undo takes it away. */
export const takenAs = (taken: readonly Taken[], changes: readonly SearchChange[], project: Project): string | null =>
  taken.find(
    ({ of, id, note }) =>
      sameChanges(of, changes) && project.revisions.some((one) => one.id === id && one.note === note),
  )?.id ?? null;
