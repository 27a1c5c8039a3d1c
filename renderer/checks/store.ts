/** Which stage's checks are asked for. */

import { createStore } from 'zustand/vanilla';
import { setView } from '../store/view.ts';

/** Stage by its name in the checks, or all. */
export const evidenceStore = createStore<{ readonly stage: string }>(() => ({ stage: 'all' }));

/** Opens the table of checks at a stage. */
export function openEvidence(stage = 'all'): void {
  evidenceStore.setState({ stage });
  setView({ dialog: 'evidence' });
}

/** Stages by the pages of the handbook, where the two names differ. */
const stageOfPage: Readonly<Record<string, string>> = { 'operating-point': 'operatingPoint', 'hand-over': 'handOver' };

/** Stage of a place in the handbook, written `page#heading`. */
export function stageOfPlace(place: string): string {
  const page = place.split('#')[0] ?? '';
  return stageOfPage[page] ?? page;
}
