import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseProject } from '../../../core/project/parse.ts';
import type { Project } from '../../../core/project/schema.ts';
import { serializeProject } from '../../../core/project/serialize.ts';
import { anyProject, pinned } from '../../helpers/arbitraries.ts';
import { exampleNames, expectOk, loadExample } from '../../helpers/projects.ts';

/** The same data with the keys of every object in reverse order. */
const reversed = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(reversed);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, item]) => [key, reversed(item)]),
  );
};

describe('a project as text', () => {
  it('comes back as it went out', () => {
    fc.assert(
      fc.property(anyProject, (project) => {
        expect(expectOk(parseProject(serializeProject(project)))).toEqual(project);
      }),
      pinned(60),
    );
  });

  it('does not depend on the order in which keys were set', () => {
    fc.assert(
      fc.property(anyProject, (project) => {
        expect(serializeProject(reversed(project) as Project)).toBe(serializeProject(project));
      }),
      pinned(30),
    );
  });

  it.each(exampleNames)('keeps unknown fields of %s after the known ones, by name', (name) => {
    const project = { ...loadExample(name), zeta: { deep: [1, { b: 2, a: 1 }] }, alpha: 'kept' };
    const text = serializeProject(project);
    expect(expectOk(parseProject(text))).toEqual(project);
    expect(text).toMatch(/"alpha": "kept",\n {2}"zeta": \{/);
    expect(text.indexOf('"benchLog"')).toBeLessThan(text.indexOf('"alpha"'));
    expect(text).toMatch(/"a": 1,\n\s+"b": 2/);
    expect(text.endsWith('}\n')).toBe(true);
  });

  it('begins with format, version and name', () => {
    expect(Object.keys(JSON.parse(serializeProject(loadExample('demo')))).slice(0, 3)).toEqual([
      'format',
      'version',
      'name',
    ]);
  });
});
