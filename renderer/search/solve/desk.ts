/** Answers what a worker of a search is asked; keeps solved fields from design to design. */

import { createFieldCache, evaluateCandidate, type Project } from '../../../core/index.ts';
import type { SearchAnswer, SearchAsk } from './protocol.ts';

/** A fresh desk: asks in, answers out, null where there is nothing to say. */
export function searchDesk(): (ask: SearchAsk) => SearchAnswer | null {
  let at: { readonly project: Project; readonly revisionId: string } | null = null;
  const cache = createFieldCache();
  return (ask) => {
    if (ask.kind === 'set') {
      at = ask;
      return null;
    }
    if (at === null) throw new Error('nothing was set to be searched');
    const { index, changes, fields } = ask;
    return {
      kind: 'design',
      index,
      design: evaluateCandidate(at.project, at.revisionId, changes, { fields }, cache),
    };
  };
}
