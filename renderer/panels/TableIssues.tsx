/** What is wrong in a table of numbers, below it: a cell is too narrow for a sentence. */

import { IssueText } from '../fields/IssueText.tsx';
import { useDrafts } from '../store/drafts.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { isWithin, type Path, pathKey } from '../store/path.ts';

/** Props. */
export interface TableIssuesProps {
  readonly list: Path;
  /** of the element, for the cells to name as what describes them */
  readonly id: string;
  /** where an issue stands, by its path below the list */
  place(path: Path): string;
}

/** The issues at and below the list, each with its place in words. */
export function TableIssues({ list, id, place }: TableIssuesProps) {
  const drafts = Object.values(useDrafts((all) => all)).flatMap((draft) =>
    draft.issue ? [{ ...draft.issue, path: draft.path }] : [],
  );
  const found = useEvaluation((state) => state.issues);
  // what is typed now speaks for its field; that of the value still kept would only confuse
  const typed = new Set(drafts.map(({ path }) => pathKey(path)));
  const issues = [...drafts, ...found.filter(({ path }) => !typed.has(pathKey(path)))].filter((issue) =>
    isWithin(issue.path, list),
  );
  return (
    <div id={id}>
      {issues.map((issue) => (
        <IssueText key={pathKey(issue.path) + issue.code} issue={issue} place={place(issue.path.slice(list.length))} />
      ))}
    </div>
  );
}
