import { describe, expect, it } from 'vitest';
import { entryNear, headRemedy } from '../../../core/path/headRemedies.ts';
import { loadDesign } from '../../helpers/projects.ts';

describe('headRemedy', () => {
  const flat = loadDesign('demo', 'A');
  const wide = loadDesign('demo', 'B');
  const slender = loadDesign('demo', 'C');
  const entry = (design: typeof flat) => design.barrel.length;

  it('reads the included angle of the entry, 180 degrees for a flat shoulder', () => {
    expect(entryNear(flat, entry(flat))?.angle).toBeCloseTo(180, 6);
    expect(entryNear(wide, entry(wide))?.angle).toBeCloseTo(120, 0);
    expect(entryNear(slender, entry(slender))?.angle).toBeCloseTo(60, 0);
  });

  it('asks for a cone where the shoulder is flat, and for a fillet where the entry is slender', () => {
    expect(headRemedy(flat, 'corner', entry(flat))).toContain('flat shoulder');
    expect(headRemedy(slender, 'corner', entry(slender))).toMatch(/^Round/);
  });

  it('never advises what the design has already', () => {
    expect(headRemedy(flat, 'tip', entry(flat))).toContain('conical tip');
    expect(headRemedy(slender, 'tip', entry(slender))).not.toContain('Give the screw a conical tip');
    expect(headRemedy(wide, 'shoulder', entry(wide))).toContain('from 120 degrees');
    expect(headRemedy(slender, 'shoulder', entry(slender))).not.toContain('60 or less');
    const orifice = slender.nozzle.segments.reduce((z, { length }) => z + length, entry(slender));
    expect(headRemedy(slender, 'shoulder', orifice)).not.toContain('tip reach');
  });
});
