import { describe, expect, it } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { parseProject } from '../../../core/project/parse.ts';
import { serializeProject } from '../../../core/project/serialize.ts';
import { brokenProjects, edgeProjects, scaledDemo } from '../../helpers/edgeProjects.ts';
import { codesOf, expectOk } from '../../helpers/projects.ts';

describe('designs at the edge', () => {
  it.each(edgeProjects)('%s is allowed, on disk and as a design', (_, project) => {
    expect(codesOf(validateDesign(project, 'C'))).toEqual([]);
    expect(expectOk(parseProject(serializeProject(project)))).toEqual(project);
  });

  it.each(brokenProjects)('past the edge: %s', (code, project) => {
    expect(codesOf(validateDesign(project, 'C'))).toContain(code);
  });

  it('scale as a whole', () => {
    const large = expectOk(validateDesign(scaledDemo(3), 'C'));
    expect(large.barrel.boreDiameter).toBeCloseTo(0.042, 12);
    expect(large.nozzle.segments.at(-1)?.endDiameter).toBeCloseTo(0.0036, 12);
    expect(large.screw.sections[1]?.length).toBeCloseTo(0.165, 12);
  });
});
