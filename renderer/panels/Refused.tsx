/** Why nothing can be predicted, each point leading to its field. */

import { Button } from 'react-aria-components';
import { type Issue, pathText } from '../../core/index.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { pathKey } from '../store/path.ts';
import { setView } from '../store/view.ts';
import { text } from '../strings.ts';
import { partOf } from './partOf.ts';

/** Opens the part that holds the value and puts the cursor into it, or into the first value of a list. */
function goTo(issue: Issue): void {
  const part = partOf(issue.path);
  if (part) setView({ part });
  requestAnimationFrame(() => {
    const place = CSS.escape(pathKey(issue.path));
    const field =
      document.querySelector<HTMLElement>(`[data-path="${place}"]`) ??
      document.querySelector<HTMLElement>(`[data-path^="${place}/"]`);
    field?.focus();
    field?.scrollIntoView({ block: 'center' });
  });
}

/** The list of issues; nothing where there are none. */
export function Refused() {
  const issues = useEvaluation((state) => state.issues);
  if (issues.length === 0) return null;
  return (
    <section className="refused" role="alert">
      <h2>
        <span aria-hidden="true">✕</span> {text.verdict.refused}
      </h2>
      <p>{text.verdict.refusedHelp}</p>
      <ul>
        {issues.map((issue) => (
          <li key={`${issue.code}-${pathText(issue.path)}`}>
            <Button className="link" onPress={() => goTo(issue)}>
              {issue.message}
            </Button>{' '}
            {issue.value !== undefined && `(${issue.value}) `}
            {issue.allowed && `${text.describe.allowed}: ${issue.allowed}. `}
            {issue.remedy}
          </li>
        ))}
      </ul>
    </section>
  );
}
