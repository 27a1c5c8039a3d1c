import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { checkProject } from '../../../core/project/parse.ts';
import type { Project, Revision } from '../../../core/project/schema.ts';
import { assumedValues } from '../../../core/project/templates/assumed.ts';
import { newProject } from '../../../core/project/templates/newProject.ts';
import { screwRoom } from '../../../core/project/templates/room.ts';
import { screwPicture } from '../../../core/project/templates/screwPicture.ts';
import { templateIds, templateScrew } from '../../../core/project/templates/screwTemplates.ts';
import { issueText } from '../../../core/result.ts';
import { loadExample, loadMaterial, materialNames } from '../../helpers/projects.ts';

const bores = [8, 14, 25, 40];

const asked = (boreMm: number, materialId = 'pla', orificeMm = 1) => ({
  name: 'Bench head',
  boreMm,
  heatedMm: 8 * boreMm,
  orificeMm,
  material: loadMaterial(materialId),
  torqueNm: 1.2,
  gearRatio: 20,
  date: '2026-03-02',
});

const faults = (project: Project): string[] => {
  const checked = validateDesign(project, project.activeRevision);
  return checked.ok ? [] : checked.issues.map(issueText);
};

function revisionOf(project: Project): Revision {
  const revision = project.revisions.find(({ id }) => id === project.activeRevision);
  if (!revision) throw new Error('the open revision');
  return revision;
}

/** The project with a template's screw in its open revision. */
function withTemplate(project: Project, id: (typeof templateIds)[number], fits: boolean): Project {
  const revision = revisionOf(project);
  const material = project.materials.find((one) => one.id === revision.materialId);
  if (!material) throw new Error('the material of the revision');
  const { sections, tip } = templateScrew(id, screwRoom(revision, material, fits));
  const changed = { ...revision, screw: { ...revision.screw, sections, tip } };
  return { ...project, revisions: project.revisions.map((one) => (one === revision ? changed : one)) };
}

const total = (project: Project) => revisionOf(project).screw.sections.reduce((sum, s) => sum + s.lengthMm, 0);

describe('a new project', () => {
  test.each(bores)('of bore %d mm is a valid design and a valid file for every granulate', (bore) => {
    for (const id of materialNames) {
      const project = newProject(asked(bore, id));
      // Some shipped granulates say that their viscosity is not known; that alone may stand in the way.
      const unknown = project.materials[0]?.rheology.model === 'unknown' ? /viscosity of .* is not known/ : null;
      expect([id, ...faults(project).filter((fault) => !unknown?.test(fault))]).toEqual([id]);
      expect(checkProject(project).ok).toBe(true);
    }
  });

  test.each([
    [5, 0.05, 3],
    [5, 2.5, 30],
    [80, 0.8, 3],
    [80, 40, 30],
  ])('holds at the ends of what may be asked: bore %d, orifice %d, heated %d bores', (bore, orifice, heated) => {
    expect(faults(newProject({ ...asked(bore, 'pla', orifice), heatedMm: heated * bore }))).toEqual([]);
  });

  test('keeps what was asked and tells the rest with its rule', () => {
    const project = newProject(asked(14));
    const revision = revisionOf(project);
    expect(revision.barrel).toMatchObject({ boreDiameterMm: 14, lengthMm: 4 * 14 + 112 });
    expect(revision.nozzle.segments.at(-1)).toMatchObject({ endDiameterMm: 1 });
    expect(revision.drive.motorCurve[0]).toEqual({ speedRpm: 0, torqueNm: 1.2 });
    // PLA's window is 180 to 220 °C
    expect(revision.nozzle.setTempC).toBe(200);
    const assumed = assumedValues(project);
    expect(assumed.length).toBeGreaterThan(10);
    for (const { label, value, rule } of assumed) {
      expect([label, Number.isFinite(value), rule.length > 3]).toEqual([label, true, true]);
    }
  });
});

test('what is told as assumed is what the project has, in a bore of half an inch', () => {
  const project = newProject(asked(12.7));
  const { screw, barrel } = revisionOf(project);
  const told = Object.fromEntries(assumedValues(project).map(({ label, value }) => [label, value]));
  const [first] = screw.sections;
  // the template rounds leads above 10 mm to half a millimetre
  expect(first).toMatchObject({ kind: 'flighted', leadStartMm: 12.5 });
  expect(told.Lead).toBe(12.5);
  expect(told['Root Ø at the feed']).toBe(first?.rootDiameterStartMm);
  expect(told['Root Ø at the end']).toBe(screw.sections.at(-1)?.rootDiameterEndMm);
  expect(told['Barrel length']).toBe(barrel.lengthMm);
});

describe('a screw template', () => {
  test.each(templateIds)('%s is a valid design in bores of 8, 14, 25 and 40 mm, for coarse and fine grains', (id) => {
    for (const bore of bores) {
      for (const material of ['pla', 'wax', 'sucrose']) {
        for (const fits of [true, false]) {
          const project = withTemplate(newProject(asked(bore, material)), id, fits);
          expect([bore, material, fits, ...faults(project)]).toEqual([bore, material, fits]);
        }
      }
    }
  });

  test.each(templateIds)('%s fits every shipped example, whatever its tip and nozzle', (id) => {
    for (const name of ['demo', 'hdpe-regrind', 'wax-head']) {
      const example = loadExample(name);
      for (const { id: revision } of example.revisions) {
        const project = { ...example, activeRevision: revision };
        expect([name, revision, ...faults(withTemplate(project, id, true))]).toEqual([name, revision]);
        expect([name, revision, ...faults(withTemplate(project, id, false))]).toEqual([name, revision]);
      }
    }
  });

  test('is as its name says', () => {
    const project = newProject(asked(25));
    const made = Object.fromEntries(
      templateIds.map((id) => [id, revisionOf(withTemplate(project, id, true)).screw.sections]),
    );
    const roots = (id: string) => made[id]?.flatMap((s) => [s.rootDiameterStartMm, s.rootDiameterEndMm]) ?? [];
    expect(new Set(roots('constant')).size).toBe(1);
    expect(roots('tapered')[0]).toBeLessThan(roots('tapered').at(-1) ?? 0);
    expect(made.twoStage?.at(-1)?.kind).toBe('plain');
    const pumps = made.twoStage?.filter(({ name }) => name?.endsWith('metering')) ?? [];
    expect(pumps[1]?.rootDiameterEndMm).toBeLessThan(pumps[0]?.rootDiameterEndMm ?? 0);
    expect(made.vThread?.every((s) => s.kind === 'flighted' && s.flankAngleDeg >= 15)).toBe(true);
    expect(made.doubleStart?.every((s) => s.kind === 'flighted' && s.starts === 2)).toBe(true);
  });

  test('keeps the end that fits, and draws back where it would be thicker', () => {
    const project = newProject(asked(14));
    expect(total(withTemplate(project, 'constant', true))).toBeCloseTo(total(project), 9);
    expect(total(withTemplate(project, 'constant', false))).toBeLessThan(total(project));
  });

  test('takes its depth from the grains, and says where they are too coarse for the core', () => {
    const deep = (bore: number, material: string) =>
      templateScrew('tapered', screwRoom(revisionOf(newProject(asked(bore, material))), loadMaterial(material), true));
    const root = (bore: number, material: string) => deep(bore, material).sections[0]?.rootDiameterStartMm ?? 0;
    expect(root(25, 'wax')).toBeLessThan(root(25, 'sucrose'));
    expect([deep(8, 'pla').tooCoarse, deep(25, 'pla').tooCoarse]).toEqual([true, false]);
  });
});

describe('the picture of a screw', () => {
  const section = {
    kind: 'flighted' as const,
    lengthMm: 60,
    leadStartMm: 20,
    leadEndMm: 20,
    rootDiameterStartMm: 10,
    rootDiameterEndMm: 16,
    starts: 1,
    flightWidthMm: 2,
    flankAngleDeg: 0,
    rootFilletMm: 0,
  };
  const flat = { kind: 'flat' as const, pinDiameterMm: 0, pinLengthMm: 0 };

  test('has one pass a turn, each half a lead long, with the root of its place', () => {
    const { passes, flightMm, lengthMm } = screwPicture({ sections: [section], tip: flat }, 20, 0.5);
    expect(passes.map(({ topMm }) => topMm)).toEqual([0, 20, 40]);
    expect(passes.map(({ bottomMm }) => bottomMm)).toEqual([10, 30, 50]);
    expect(passes[1]?.rootMm).toBeCloseTo(6, 9);
    expect([flightMm, lengthMm]).toEqual([9.5, 60]);
  });

  test('has twice the passes with two starts, leaning flanks wider at the root, and none on plain stretches', () => {
    const double = screwPicture({ sections: [{ ...section, starts: 2, flankAngleDeg: 45 }], tip: flat }, 20, 0);
    expect(double.passes.map(({ topMm }) => topMm)).toEqual([0, 10, 20, 30, 40, 50]);
    expect(double.passes[0]?.rootWidthMm).toBeCloseTo(2 + 2 * 5, 9);
    const plain = { kind: 'plain' as const, lengthMm: 7, rootDiameterStartMm: 16, rootDiameterEndMm: 16 };
    const ended = screwPicture({ sections: [{ ...section, lengthMm: 15 }, plain], tip: flat }, 20, 0);
    expect(ended.passes).toHaveLength(1);
    expect(ended.lengthMm).toBe(22);
  });

  test('spreads its passes where the lead grows, and runs on from section to section', () => {
    const growing = { ...section, leadEndMm: 40 };
    const tops = screwPicture(
      { sections: [growing, { ...section, leadStartMm: 40, leadEndMm: 40 }], tip: flat },
      20,
      0,
    );
    const z = tops.passes.map(({ topMm }) => topMm);
    // turns over 60 mm while the lead grows from 20 to 40 mm: 60 ln 2 / 20 = 2.0794
    expect(z.filter((top) => top < 60)).toHaveLength(3);
    const gaps = z.slice(1).map((top, i) => top - (z[i] ?? 0));
    expect(gaps.every((gap, i) => i === 0 || gap > (gaps[i - 1] ?? 0) - 1e-9)).toBe(true);
    expect(gaps.at(-1)).toBeGreaterThan(39);
    expect(gaps.at(-1)).toBeLessThan(40);
  });
});
