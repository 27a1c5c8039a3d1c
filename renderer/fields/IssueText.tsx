/** Why a value is refused: what was found, what is allowed, what to do. */

import { type Issue, lookText } from '../../core/index.ts';
import { useLook } from '../look.ts';
import { text } from '../strings.ts';

/** One issue at its field, its lengths in the unit that the fields are shown in. */
export function IssueText({
  issue,
  id,
  place,
}: {
  readonly issue: Issue;
  readonly id?: string;
  readonly place?: string;
}) {
  const look = useLook();
  return (
    <p className="issue" id={id} role="alert">
      <span aria-hidden="true" className="issue-mark">
        ✕
      </span>
      {place && <b>{place}: </b>}
      {lookText(issue.message, look)} {issue.allowed && `${text.describe.allowed}: ${lookText(issue.allowed, look)}. `}
      {issue.remedy}
    </p>
  );
}
