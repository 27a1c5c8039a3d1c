/** Limits proposed for the revision at work, beside those that the reader stated. */

import { type Project, proposedLimits } from '../../core/index.ts';
import { type LimitSetup, searchStore, setSearch } from './store.ts';

const alike = (a: LimitSetup, b: LimitSetup): boolean => a.figure === b.figure && a.sense === b.sense;

/** Limits proposed for a revision, none of them the reader's own. */
const fresh = (project: Project, revisionId: string): readonly LimitSetup[] =>
  proposedLimits(project, revisionId).map((limit) => ({ ...limit, own: false }));

/**
 * Keeps the limits to the machine. Another revision gets its own proposals; those that the reader stated stay as they
 * are, and so does what is ticked. Of the same revision the proposed bounds follow what changes, and what was taken
 * away stays away.
 */
export function proposeFor(project: Project, revisionId: string): void {
  const { limits, limitsFor } = searchStore.getState();
  const before = limits ?? [];
  const proposed = fresh(project, revisionId);
  const followed = (limit: LimitSetup): LimitSetup => {
    const found = limit.own ? undefined : proposed.find((one) => alike(one, limit));
    return found ? { ...found, on: limit.on } : limit;
  };
  if (limitsFor === revisionId && limits !== null) {
    setSearch({ limits: before.map(followed) });
    return;
  }
  const own = before.filter((limit) => limit.own);
  const added = proposed
    .filter((limit) => !own.some((one) => alike(one, limit)))
    .map((limit) => ({ ...limit, on: before.find((one) => alike(one, limit))?.on ?? limit.on }));
  setSearch({ limits: [...added, ...own], limitsFor: revisionId });
}

/** Proposes anew; what the reader stated goes too. */
export const proposeAnew = (project: Project, revisionId: string): void =>
  setSearch({ limits: fresh(project, revisionId), limitsFor: revisionId });
