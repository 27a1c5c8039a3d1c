/** Edits of the screw's row of sections beyond adding and removing: split, merge, join, move, name. Pure. */

import { produce } from 'immer';
import type { Project, Revision, SectionInput } from '../../core/index.ts';

const inScrew = (id: string, change: (screw: Revision['screw']) => void) =>
  produce<Project>((draft) => {
    const revision = draft.revisions.find((candidate) => candidate.id === id);
    if (revision) change(revision.screw);
  });

/** Shortest section that the file holds, mm. */
export const shortestMm = 0.5;
/** Longest section that the file holds, mm. */
const longestMm = 2000;

/** To a nanometre, so that sums of typed millimetres stay clean. mm */
const clean = (value: number): number => Number(value.toFixed(6));
/** To a micrometre: what is read off a slope needs no more. mm */
const between = (from: number, to: number, share: number): number => Number((from + share * (to - from)).toFixed(3));

/** Cuts a section `atMm` from its start; root and lead at the cut are those of the whole. Nothing where a part is too short. */
export const splitSectionAt = (id: string, index: number, atMm: number) =>
  inScrew(id, ({ sections }) => {
    const whole = sections[index];
    if (!whole || atMm < shortestMm || whole.lengthMm - atMm < shortestMm) return;
    const share = atMm / whole.lengthMm;
    const root = between(whole.rootDiameterStartMm, whole.rootDiameterEndMm, share);
    const first = { ...whole, lengthMm: clean(atMm), rootDiameterEndMm: root };
    const second = { ...whole, lengthMm: clean(whole.lengthMm - atMm), rootDiameterStartMm: root };
    if (whole.kind === 'flighted' && first.kind === 'flighted' && second.kind === 'flighted') {
      first.leadEndMm = between(whole.leadStartMm, whole.leadEndMm, share);
      second.leadStartMm = first.leadEndMm;
    }
    sections.splice(index, 1, first, second);
  });

/** Why a section cannot be merged with the one after it, or null where it can. */
export function mergeFault(
  sections: readonly SectionInput[],
  index: number,
): 'last' | 'kind' | 'starts' | 'long' | null {
  const [first, second] = [sections[index], sections[index + 1]];
  if (!first || !second) return 'last';
  if (first.kind !== second.kind) return 'kind';
  if (first.kind === 'flighted' && second.kind === 'flighted' && first.starts !== second.starts) return 'starts';
  return first.lengthMm + second.lengthMm > longestMm ? 'long' : null;
}

/** One section of two: lengths added, the start of the first, the end of the second, all else of the first. */
export const mergeSections = (id: string, index: number) =>
  inScrew(id, ({ sections }) => {
    const [first, second] = [sections[index], sections[index + 1]];
    if (!first || !second || mergeFault(sections, index)) return;
    first.lengthMm = clean(first.lengthMm + second.lengthMm);
    first.rootDiameterEndMm = second.rootDiameterEndMm;
    if (first.kind === 'flighted' && second.kind === 'flighted') first.leadEndMm = second.leadEndMm;
    sections.splice(index + 1, 1);
  });

/** What each section begins with where it begins as the one before it ends; a plain stretch hands the lead through. */
function joinedStarts(sections: readonly SectionInput[]): { root: number; lead: number | null }[] {
  let lead: number | null = null;
  return sections.map((section, index) => {
    const before = sections[index - 1];
    const start = { root: before?.rootDiameterEndMm ?? section.rootDiameterStartMm, lead };
    if (section.kind === 'flighted') lead = section.leadEndMm;
    return start;
  });
}

/** How many sections do not begin as the one before them ends. */
export function openJoints(sections: readonly SectionInput[]): number {
  const starts = joinedStarts(sections);
  return sections.filter((section, index) => {
    const { root, lead } = starts[index] ?? { root: section.rootDiameterStartMm, lead: null };
    const leadOpen = section.kind === 'flighted' && lead !== null && section.leadStartMm !== lead;
    return section.rootDiameterStartMm !== root || leadOpen;
  }).length;
}

/** Lets every section begin with the root and the lead with which the one before it ends. */
export const joinEnds = (id: string) =>
  inScrew(id, ({ sections }) => {
    const starts = joinedStarts(sections);
    for (const [index, section] of sections.entries()) {
      const { root, lead } = starts[index] ?? { root: section.rootDiameterStartMm, lead: null };
      section.rootDiameterStartMm = root;
      if (section.kind === 'flighted' && lead !== null) section.leadStartMm = lead;
    }
  });

/** Takes a section out and puts it in again so that it stands at `to`. */
export const moveSectionTo = (id: string, from: number, to: number) =>
  inScrew(id, ({ sections }) => {
    if (from === to || to < 0 || to >= sections.length) return;
    const [moved] = sections.splice(from, 1);
    if (moved) sections.splice(to, 0, moved);
  });

/** Names a section; an empty name takes its name away. */
export const nameSection = (id: string, index: number, name: string) =>
  inScrew(id, ({ sections }) => {
    const section = sections[index];
    if (!section) return;
    if (name.trim() === '') delete section.name;
    else section.name = name.trim().slice(0, 120);
  });
