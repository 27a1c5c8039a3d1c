import { describe, expect, test } from 'vitest';
import { checkProject } from '../../../core/index.ts';
import {
  addSection,
  copyEntry,
  dropEntry,
  duplicateSection,
  removeSection,
  setSectionKind,
  setValue,
  swapEntry,
} from '../../../renderer/store/edits.ts';
import {
  branchRevision,
  deleteRevision,
  freeId,
  keptBecause,
  lockRevision,
  renameRevision,
} from '../../../renderer/store/revisions.ts';
import { loadExample } from '../../helpers/projects.ts';

const demo = loadExample('demo');
const sectionsOf = (project: typeof demo) => {
  const revision = project.revisions.find(({ id }) => id === 'C');
  if (!revision) throw new Error('the demo has a revision C');
  return revision.screw.sections;
};

describe('sections', () => {
  const edits = {
    add: addSection('C', 0),
    duplicate: duplicateSection('C', 0),
    remove: removeSection('C', 0),
    plain: setSectionKind('C', 0, 'plain'),
  };

  test.each(Object.entries(edits))(
    '%s leaves a project that can be saved, and other revisions untouched',
    (_, edit) => {
      const edited = edit(demo);
      expect(checkProject(edited).ok).toBe(true);
      expect(edited).not.toBe(demo);
      expect(edited.revisions[0]).toBe(demo.revisions[0]);
    },
  );

  test('a plain section becomes flighted again with the flight of its neighbours', () => {
    const back = setSectionKind('C', 0, 'flighted')(setSectionKind('C', 0, 'plain')(demo));
    expect(sectionsOf(back)[0]).toMatchObject({ kind: 'flighted', leadStartMm: 14 });
  });

  test('the last section stays', () => {
    let one = demo;
    for (let n = 0; n < 5; n++) one = removeSection('C', 0)(one);
    expect(sectionsOf(one)).toHaveLength(1);
  });
});

test('a value is put at its place and nothing else is copied', () => {
  const path = ['process', 'screwSpeedRpm'];
  const edited = setValue(path, 42)(demo);
  expect(edited.process.screwSpeedRpm).toBe(42);
  expect(edited.revisions).toBe(demo.revisions);
  expect(demo.process.screwSpeedRpm).not.toBe(42);
});

test('list entries are copied, dropped and swapped', () => {
  const list = ['revisions', 2, 'barrel', 'zones'];
  const names = (project: typeof demo) => project.revisions[2]?.barrel.zones.map((zone) => zone.name) ?? [];
  const [a, b, ...rest] = names(demo);
  expect(names(copyEntry(list, 0)(demo))).toEqual([a, a, b, ...rest]);
  expect(names(dropEntry(list, 0)(demo))).toEqual([b, ...rest]);
  expect(names(swapEntry(list, 0, 1)(demo))).toEqual([b, a, ...rest]);
});

describe('revisions', () => {
  test('a branch is a deep copy under a free id, unlocked and open', () => {
    const branched = branchRevision('A', 'Next', '2026-03-01')(demo);
    const made = branched.revisions.at(-1);
    expect(branched.activeRevision).toBe(freeId(demo));
    expect(made).toMatchObject({ id: freeId(demo), parent: 'A', locked: false, name: 'Next' });
    expect(made?.screw).toEqual(demo.revisions[0]?.screw);
    expect(made?.screw).not.toBe(demo.revisions[0]?.screw);
    expect(checkProject(branched).ok).toBe(true);
  });

  const untried: typeof demo = { ...demo, benchLog: [] };

  test('deleting hands branches to the grandparent and opens a neighbour', () => {
    const open = lockRevision('B', false)(untried);
    const gone = deleteRevision('B')(open);
    expect(gone.revisions.map(({ id }) => id)).toEqual(['A', 'C']);
    expect(gone.revisions[1]?.parent).toBe('A');
    const without = deleteRevision('C')(open);
    expect(without.activeRevision).toBe('B');
    expect(checkProject(without).ok).toBe(true);
  });

  test('the last, the locked and the tried revisions are kept', () => {
    expect(keptBecause(lockRevision('A', true)(untried), 'A')).toBe('locked');
    expect(keptBecause(lockRevision('C', false)(demo), 'C')).toBe('trials');
    expect(deleteRevision('C')(demo)).toBe(demo);
    let one: typeof demo = untried;
    for (const { id } of demo.revisions) one = deleteRevision(id)(lockRevision(id, false)(one));
    expect(one.revisions).toHaveLength(1);
    expect(keptBecause(one, one.activeRevision)).toBe('last');
  });

  test('renaming touches one name', () => {
    expect(renameRevision('C', 'New name')(demo).revisions[2]?.name).toBe('New name');
  });
});
