import { expect, test } from 'vitest';
import { projectDifference } from '../../../core/project/difference.ts';
import { changedDemo } from '../../helpers/projects.ts';

const demo = changedDemo(() => undefined);
const seen = (after: unknown) => projectDifference(demo, after).map(({ path, kind }) => `${kind} ${path.join('/')}`);

test('the same project differs in nothing, whichever revision is shown', () => {
  expect(seen(changedDemo(() => undefined))).toEqual([]);
  expect(seen({ ...demo, activeRevision: 'A' })).toEqual([]);
});

test('a changed number is told where it stands, with both values', () => {
  const after = changedDemo((project) => {
    project.revisions[1].screw.sections[2].lengthMm = 55.5;
  });
  const [only, ...others] = projectDifference(demo, after);
  expect(others).toEqual([]);
  expect(only).toMatchObject({ kind: 'changed', path: ['revisions', 'B', 'screw', 'sections', 2, 'lengthMm'] });
  expect([only?.before, only?.after]).toEqual([demo.revisions[1].screw.sections[2].lengthMm, 55.5]);
});

test('entries with ids are matched by them, so that one put in front is one difference', () => {
  const after = changedDemo((project) => {
    project.revisions.unshift({ ...structuredClone(project.revisions[0]), id: 'Z' });
  });
  expect(seen(after)).toEqual(['added revisions/Z']);
  const fewer = changedDemo((project) => {
    project.revisions.splice(0, 1);
  });
  expect(seen(fewer)).toEqual(['removed revisions/A']);
});

test('another order of the same entries is one difference', () => {
  expect(seen(changedDemo((project) => void project.revisions.reverse()))).toEqual(['order revisions']);
});

test('no more is told than was asked for', () => {
  expect(projectDifference([1, 2, 3], [4, 5, 6], 2)).toHaveLength(2);
});
