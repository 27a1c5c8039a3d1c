/** Why a value is refused: what was found, what is allowed, what to do. */

import type { Issue } from '../../core/index.ts';
import { text } from '../strings.ts';

/** One issue at its field. */
export function IssueText({
  issue,
  id,
  place,
}: {
  readonly issue: Issue;
  readonly id?: string;
  readonly place?: string;
}) {
  return (
    <p className="issue" id={id} role="alert">
      <span aria-hidden="true" className="issue-mark">
        ✕
      </span>
      {place && <b>{place}: </b>}
      {issue.message} {issue.allowed && `${text.describe.allowed}: ${issue.allowed}. `}
      {issue.remedy}
    </p>
  );
}
