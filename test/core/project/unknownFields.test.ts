import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkProject } from '../../../core/project/parse.ts';
import { unknownFields } from '../../../core/project/unknownFields.ts';
import { expectOk, loadExample } from '../../helpers/projects.ts';

const where = (change: (project: Record<string, unknown>) => void) => {
  const data = structuredClone(loadExample('demo')) as unknown as Record<string, unknown>;
  change(data);
  return unknownFields(expectOk(checkProject(data))).map(({ path, remedy }) => [path.join('.'), remedy]);
};
const part = (owner: Record<string, unknown>, ...path: (string | number)[]) =>
  path.reduce((at, key) => at[key] as Record<string, unknown>, owner) as Record<string, unknown>;

test.each(readdirSync('assets/examples').filter((name) => name.endsWith('.json')))('%s has none', (name) => {
  expect(unknownFields(loadExample(name.replace('.json', '')))).toEqual([]);
});

test('a slip of the pen is told with the name that is meant; what stands inside is not looked at', () => {
  const found = where((project) => {
    const print = part(project, 'print');
    delete print.coolingWPerM2K;
    print.cooling_WPerM2k = 20;
    const shank = part(project, 'revisions', 0, 'screw', 'shank');
    delete shank.filletMm;
    shank.filetMm = 0.5;
    part(project, 'revisions', 0, 'screw', 'sections', 0).maker = { any: { thing: 1 } };
    part(project, 'process').screwSpeedRPM = 1;
  });
  expect(Object.fromEntries(found)).toEqual({
    'revisions.0.screw.sections.0.maker': 'Mend its name, or leave it.',
    'revisions.0.screw.shank.filetMm': 'If "filletMm" is meant, call it that.',
    'print.cooling_WPerM2k': 'If "coolingWPerM2K" is meant, call it that.',
    'process.screwSpeedRPM': '"screwSpeedRpm" stands beside it and counts: take one of the two out.',
  });
});
