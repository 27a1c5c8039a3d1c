import { describe, expect, it } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import type { Project, Revision } from '../../../core/project/schema.ts';
import { changedDemo, expectOk, loadDesign, revisionAt } from '../../helpers/projects.ts';

describe('the hash of a design', () => {
  const hashAfter = (change: (revision: Revision, project: Project) => void): string => {
    const project = changedDemo((p) => change(revisionAt(p, 2), p));
    return expectOk(validateDesign(project, 'C')).hash;
  };
  const base = hashAfter(() => undefined);

  it.each<[string, (r: Revision, p: Project) => void]>([
    ['its name', (r) => (r.name = 'Another')],
    ['its note', (r) => (r.note = 'Another')],
    ['its date', (r) => (r.date = '2030-01-01')],
    ['its lock', (r) => (r.locked = true)],
    ['its parent', (r) => (r.parent = null)],
    ['another revision', (_, p) => (revisionAt(p, 0).barrel.boreDiameterMm = 15)],
    ['the bench log', (_, p) => (p.benchLog = [])],
    ['the project’s name', (_, p) => (p.name = 'Another')],
  ])('does not see %s', (_, change) => {
    expect(hashAfter(change)).toBe(base);
  });

  it.each<[string, (r: Revision, p: Project) => void]>([
    ['the bore', (r) => (r.barrel.outerDiameterMm = 28.01)],
    ['a set temperature', (r) => (r.nozzle.setTempC = 189)],
    ['the material', (_, p) => Object.assign(p.materials[0]?.meltDensityKgM3 as object, { value: 1136 })],
    ['the speed', (_, p) => (p.process.screwSpeedRpm = 11)],
    ['the print demand', (_, p) => (p.print.speedMmPerS = 31)],
  ])('sees %s', (_, change) => {
    expect(hashAfter(change)).not.toBe(base);
  });

  it('is the same whatever the order of keys in the file', () => {
    expect(base).toBe(loadDesign('demo', 'C').hash);
    expect(
      hashAfter((r, p) => Object.assign(p.revisions, { 2: Object.fromEntries(Object.entries(r).reverse()) })),
    ).toBe(base);
    expect(base).toMatch(/^[0-9a-f]{16}$/);
  });
});
