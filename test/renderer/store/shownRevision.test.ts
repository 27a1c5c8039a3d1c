import { beforeEach, describe, expect, test } from 'vitest';
import { setValue } from '../../../renderer/store/edits.ts';
import {
  applyEdit,
  currentProject,
  isUnsaved,
  loadProject,
  markSaved,
  projectStore,
  redo,
  showRevision,
  undo,
} from '../../../renderer/store/project.ts';
import {
  branchRevision,
  dateRevision,
  deleteRevision,
  descentOf,
  isDate,
  lockRevision,
} from '../../../renderer/store/revisions.ts';
import { changedDemo } from '../../helpers/projects.ts';

const file = { handle: null, name: 'demo.json' };
const shown = () => currentProject()?.activeRevision;
const unsaved = () => isUnsaved(projectStore.getState());
const steps = () => projectStore.getState().history?.past.length;
const branch = (from: string) => applyEdit(branchRevision(from, 'Next', '2026-03-01'), { label: 'Branch' });

beforeEach(() => {
  loadProject(
    changedDemo((project) => {
      project.benchLog = [];
      for (const revision of project.revisions) revision.locked = false;
    }),
    file,
  );
});

describe('looking at another revision', () => {
  test('is neither an unsaved change nor a step to undo, and is written with the file', () => {
    showRevision('A');
    expect(shown()).toBe('A');
    expect(unsaved()).toBe(false);
    expect(steps()).toBe(0);
    applyEdit(setValue(['process', 'screwSpeedRpm'], 33), { label: 'Speed' });
    expect(unsaved()).toBe(true);
    const project = currentProject();
    if (!project) throw new Error('no project');
    markSaved(project, file);
    showRevision('B');
    expect(unsaved()).toBe(false);
    expect(projectStore.getState().saved?.activeRevision).toBe('A');
  });

  test('one that does not exist changes nothing', () => {
    const before = currentProject();
    showRevision('Z');
    expect(currentProject()).toBe(before);
  });

  test('keeps what can be made again', () => {
    applyEdit(setValue(['process', 'screwSpeedRpm'], 33), { label: 'Speed' });
    undo();
    showRevision('A');
    redo();
    expect(currentProject()?.process.screwSpeedRpm).toBe(33);
    expect(shown()).toBe('A');
  });
});

describe('undoing', () => {
  test('a change of the process leaves the shown revision shown, and nothing unsaved', () => {
    applyEdit(setValue(['process', 'screwSpeedRpm'], 33), { label: 'Speed' });
    showRevision('A');
    undo();
    expect(shown()).toBe('A');
    expect(unsaved()).toBe(false);
  });

  test('a change of another revision shows that one, so that nothing changes unseen', () => {
    applyEdit(setValue(['revisions', 2, 'screw', 'radialClearanceMm'], 0.2), { label: 'Clearance' });
    showRevision('A');
    undo();
    expect(shown()).toBe('C');
    expect(currentProject()?.revisions[2]?.screw.radialClearanceMm).not.toBe(0.2);
  });

  test('a note of another revision does not pull it into view', () => {
    applyEdit(lockRevision('C', true), { label: 'Lock' });
    showRevision('A');
    undo();
    expect(shown()).toBe('A');
  });

  test('a branch goes back to what it came from, and comes again with redo', () => {
    showRevision('B');
    branch('B');
    expect(shown()).toBe('D');
    undo();
    expect(shown()).toBe('B');
    redo();
    expect(shown()).toBe('D');
  });

  test('a deletion brings the deleted one back into view', () => {
    showRevision('B');
    applyEdit(deleteRevision('B'), { label: 'Delete' });
    expect(shown()).toBe('A');
    undo();
    expect(shown()).toBe('B');
    expect(currentProject()?.revisions.map(({ id }) => id)).toEqual(['A', 'B', 'C']);
  });
});

describe('descent', () => {
  test('branches follow what they came from, however the list is ordered', () => {
    const descent = descentOf([
      { id: 'C', parent: 'B' },
      { id: 'A', parent: null },
      { id: 'D', parent: 'A' },
      { id: 'B', parent: 'A' },
    ]);
    expect(descent.map(({ id, depth }) => `${id}${depth}`)).toEqual(['A0', 'D1', 'B1', 'C2']);
    expect(descent[0]?.children).toEqual(['D', 'B']);
  });

  test('a parent that is gone begins a line; a ring still shows every revision once', () => {
    expect(descentOf([{ id: 'B', parent: 'gone' }])).toEqual([{ id: 'B', parent: null, depth: 0, children: [] }]);
    const ring = descentOf([
      { id: 'A', parent: 'B' },
      { id: 'B', parent: 'A' },
    ]);
    expect(ring.map(({ id }) => id)).toEqual(['A', 'B']);
  });
});

test('a date is a day of the calendar, or is taken away', () => {
  expect(['2026-02-28', '2024-02-29'].every(isDate)).toBe(true);
  expect(['2026-02-29', '2026-13-01', '26-01-01', 'today', ''].some(isDate)).toBe(false);
  applyEdit(dateRevision('A', '2026-02-28'), { label: 'Date' });
  expect(currentProject()?.revisions[0]?.date).toBe('2026-02-28');
  applyEdit(dateRevision('A', ''), { label: 'Date' });
  expect(currentProject()?.revisions[0]).not.toHaveProperty('date');
});
