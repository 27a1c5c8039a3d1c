import { beforeEach, describe, expect, test } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { type CalibrationFit, type Project, parseProject, type Trial } from '../../../core/index.ts';
import { isOld } from '../../../renderer/bench/runs.ts';
import { draftOf, judgeDraft, newDraft, type TrialDraft, withRevision } from '../../../renderer/bench/trialDraft.ts';
import {
  addTrial,
  changeTrial,
  dropKept,
  freshTrialId,
  importTrials,
  keepFit,
  removeTrial,
  takeBack,
  takeCalibrationOff,
} from '../../../renderer/bench/trials.ts';
import { currentProject, loadProject, projectStore, undo } from '../../../renderer/store/project.ts';
import { viewStore } from '../../../renderer/store/view.ts';
import { today } from '../../../renderer/today.ts';

function demo(): Project {
  const read = parseProject(demoText);
  if (!read.ok) throw new Error('the demo is a good project');
  return read.value;
}

const project = (): Project => {
  const now = currentProject();
  if (!now) throw new Error('a project is open');
  return now;
};
const steps = () => projectStore.getState().history?.past.map(({ label }) => label);
const typed = (draft: TrialDraft, texts: Partial<TrialDraft['texts']>): TrialDraft => ({
  ...draft,
  texts: { ...draft.texts, ...texts },
});

beforeEach(() => loadProject(demo(), { handle: null, name: 'demo.json' }));

describe('a draft', () => {
  test('becomes a trial with units and decimal commas understood', () => {
    const draft = typed(newDraft(project()), { seconds: '2 min', grams: '8,1', torqueNm: '340 N·cm', labL: '' });
    const { trial, issues } = judgeDraft(project(), draft);
    expect(issues).toEqual({});
    expect(trial).toMatchObject({ id: freshTrialId(project()), seconds: 120, grams: 8.1, torqueNm: 3.4 });
    expect(trial?.lab).toBeUndefined();
  });

  test('a trial to text and back stays as it is, fields of other programs too', () => {
    for (const trial of project().benchLog) {
      expect(judgeDraft(project(), draftOf(trial)).trial).toEqual(trial);
      const more = { ...trial, balance: 'B2' } as Trial;
      const holding = { ...project(), benchLog: [more] };
      expect(judgeDraft(holding, draftOf(more)).trial).toEqual(more);
    }
  });

  const bad: readonly (readonly [string, Partial<TrialDraft['texts']>, string])[] = [
    ['no mass', { grams: '' }, 'grams'],
    ['a length for a mass', { grams: '8 mm' }, 'grams'],
    ['a time of nothing', { seconds: '0' }, 'seconds'],
    ['a speed beyond any', { screwSpeedRpm: '1e6' }, 'screwSpeedRpm'],
    ['no date', { date: '' }, 'date'],
    ['half a colour', { labL: '70' }, 'labA'],
    ['a lightness above white', { labL: '120', labA: '0', labB: '0' }, 'labL'],
    ['a revision that is not there', { revisionId: 'Z' }, 'revisionId'],
  ];
  test.each(bad)('%s is refused at its field', (_, texts, field) => {
    const draft = typed(newDraft(project()), { seconds: '60', grams: '4', ...texts });
    const judged = judgeDraft(project(), draft);
    expect(judged.trial).toBeNull();
    expect(Object.keys(judged.issues)).toContain(field);
  });

  test('leaving out wants a reason', () => {
    const draft = { ...draftOf(project().benchLog[0]), excluded: true };
    expect(Object.keys(judgeDraft(project(), draft).issues)).toEqual(['excludedWhy']);
    const told = judgeDraft(project(), typed(draft, { excludedWhy: 'hopper ran empty' })).trial;
    expect(told).toMatchObject({ excluded: true, excludedWhy: 'hopper ran empty' });
  });

  test('another revision asks for as many temperatures as it has heaters', () => {
    const draft = { ...newDraft(project()), temps: ['190'] };
    expect(withRevision(project(), draft, 'A').temps).toEqual(['175', '185', '188']);
  });
});

describe('edits', () => {
  test('each is one named step, and all are undone', () => {
    const [first] = project().benchLog;
    addTrial({ ...first, id: 'T7' });
    changeTrial('T7', { ...first, id: 'T7', grams: 9, excluded: true, excludedWhy: 'spilt' });
    takeBack('T7');
    removeTrial('T7');
    importTrials([
      { ...first, id: 'X1' },
      { ...first, id: 'X2' },
    ]);
    expect(steps()).toEqual([
      'Add trial T7',
      'Change trial T7',
      'Use trial T7 again',
      'Remove trial T7',
      'Import 2 trials',
    ]);
    expect(
      project()
        .benchLog.map(({ id }) => id)
        .slice(-2),
    ).toEqual(['X1', 'X2']);
    undo();
    undo();
    expect(project().benchLog.at(-1)).toEqual({ ...first, id: 'T7', grams: 9 });
    for (let i = 0; i < 3; i++) undo();
    expect(project()).toEqual(demo());
  });

  test('today is written as the file wants it', () => expect(today()).toMatch(/^20\d\d-[01]\d-[0-3]\d$/));
});

describe('a calibration', () => {
  const held = { value: 1, low: 1, high: 1, fitted: false, reason: null, entangled: false };
  const error = { rms: 0.1, median: 0.1 };
  const fit: CalibrationFit = {
    factors: { feed: held, wallFriction: held, colourRate: held, viscosity: { ...held, value: 1.3, fitted: true } },
    observations: [],
    trialIds: ['T1', 'T2'],
    skipped: [],
    outliers: [],
    error: { before: { rms: 0.3, median: 0.3 }, after: error, leaveOneOut: null },
    scale: 1,
    freedom: 1,
    converged: true,
    rounds: 3,
    evaluations: 9,
  };

  test('is applied, taken off and deleted in steps of their own', () => {
    const before = project();
    expect(keepFit(fit, 'apply', 'C', 'Two trials')).toBe(true);
    const [kept] = project().calibrations ?? [];
    expect(project().revisions.find(({ id }) => id === 'C')?.calibrationId).toBe(kept?.id);
    expect(isOld(before, project())).toBe(true);
    dropKept(kept?.id ?? '');
    expect(project().calibrations).toHaveLength(1);
    takeCalibrationOff('C');
    dropKept(kept?.id ?? '');
    expect(project().calibrations).toEqual([]);
    expect(steps()).toEqual(['Calibrate revision C', 'Take the calibration off C', 'Delete a calibration']);
  });

  test('is kept as a variant, which is opened; the revision stays as it was', () => {
    const before = project().revisions[2];
    expect(keepFit(fit, 'variant', 'C', 'Two trials')).toBe(true);
    expect(project().revisions[2]).toEqual(before);
    expect(project().activeRevision).toBe('C-calibrated');
  });

  test('a locked revision keeps its prediction, and the refusal is told', () => {
    expect(keepFit(fit, 'apply', 'A', 'Two trials')).toBe(false);
    expect(steps()).toEqual([]);
    expect(viewStore.getState().notice).toMatchObject({ kind: 'bad', text: expect.stringMatching(/locked/) });
  });
});
