/** Making a candidate a revision of the project: one step. */

import { figureOf, type Project, type SeekSpec, withChanges } from '../../core/index.ts';
import { applyEdit } from '../store/project.ts';
import { freeId } from '../store/revisions.ts';
import { searchText } from '../strings/search.ts';
import { inSentence, shownFigure, shownValue } from './shown.ts';
import { type ChosenCandidate, type SeekRun, setSearch, shownResult } from './store.ts';

const words = searchText.note;

/** Longest name that a file takes. */
const longestName = 120;

/** The goal in words. */
export function goalText({ objective: { figure, sense } }: SeekSpec): string {
  return words.goal(searchText.goal.senses[sense], inSentence(figureOf(figure).label));
}

/** What was searched and what it rests on. */
export function noteOf(run: SeekRun, chosen: ChosenCandidate): string {
  const { spec, revisionId, news } = run;
  const candidate = shownResult(run, chosen.from)?.candidates.find(({ rank }) => rank === chosen.rank);
  const varied = spec.inputs.map(({ input, label, unit, value, low, high }) => {
    const found = candidate?.design.changes.find((change) => change.input === input)?.value ?? value;
    return words.within(inSentence(label), shownValue(found, unit), shownValue(low, unit), shownValue(high, unit));
  });
  const limits = (candidate?.limits ?? []).map(
    ({ label, sense, bound, unit, value }) =>
      `${inSentence(label)} ${searchText.goal.sensesOf[sense]} ${shownFigure(bound, unit)} (${shownFigure(value, unit)})`,
  );
  const goal = candidate?.figures.find(({ id }) => id === spec.objective.figure);
  return [
    words.searched(inSentence(goalText(spec)), revisionId, news.result?.evaluated ?? 0),
    ...(goal ? [`${goal.label}: ${shownFigure(goal.before, goal.unit)} → ${shownFigure(goal.value, goal.unit)}.`] : []),
    words.varied(varied.join('; ')),
    ...(limits.length > 0 ? [words.limits(limits.join('; '))] : []),
    words.rests[chosen.from],
    words.error,
  ].join('\n');
}

/** Inputs that belong to the whole project and not to a revision. */
export const isShared = (input: string): boolean => /^(process|print)\./.test(input);

/**
 * The project with a candidate as a new revision at work. The machine is that of the search, so that it is what was
 * evaluated even where the project has changed since.
 */
export function withCandidate(project: Project, run: SeekRun, chosen: ChosenCandidate, date: string): Project {
  const candidate = shownResult(run, chosen.from)?.candidates.find(({ rank }) => rank === chosen.rank);
  const changes = candidate?.design.changes ?? [];
  const made = withChanges(run.project, run.revisionId, changes).revisions.find(({ id }) => id === run.revisionId);
  if (!candidate || !made) return project;
  const id = freeId(project);
  const parent = project.revisions.some((revision) => revision.id === run.revisionId) ? run.revisionId : null;
  const name = words.name(goalText(run.spec), chosen.rank).slice(0, longestName);
  const added = { ...structuredClone(made), id, name, date, parent, locked: false, note: noteOf(run, chosen) };
  const grown = { ...project, revisions: [...project.revisions, added], activeRevision: id };
  return withChanges(
    grown,
    id,
    changes.filter(({ input }) => isShared(input)),
  );
}

/** Takes the candidate over as one step that can be undone. */
export function takeOver(run: SeekRun, chosen: ChosenCandidate): void {
  const date = new Date().toISOString().slice(0, 10);
  const change = (project: Project): Project => {
    const next = withCandidate(project, run, chosen, date);
    if (next !== project) setSearch({ taken: next.activeRevision });
    return next;
  };
  applyEdit(change, { label: words.step(inSentence(goalText(run.spec))) });
}
