import { describe, expect, it } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { parseMaterial, parseProject } from '../../../core/project/parse.ts';
import { serializeMaterial, serializeProject } from '../../../core/project/serialize.ts';
import { assetText, keptText } from '../../helpers/assets.ts';
import { exampleNames, expectOk, materialNames } from '../../helpers/projects.ts';

describe('shipped examples', () => {
  it('are the demo and three more', () => {
    expect(exampleNames).toEqual(['demo', 'hdpe-regrind', 'pla-pellet-misfit', 'wax-head']);
  });

  it.each(exampleNames)('%s is valid in every revision, invented and says so', (name) => {
    const project = expectOk(parseProject(assetText(`examples/${name}.json`)));
    for (const { id } of project.revisions) expect(expectOk(validateDesign(project, id)).revisionId).toBe(id);
    expect(project.invented).toBe(true);
    expect(project.note).toMatch(/invented/i);
    expect(project.materials.every((m) => m.invented)).toBe(true);
  });

  it.each(exampleNames)('%s is stored as the program would write it', (name) => {
    const path = `examples/${name}.json`;
    const wanted = serializeProject(expectOk(parseProject(assetText(path))));
    expect(keptText(path, wanted)).toBe(wanted);
  });
});

describe('shipped materials', () => {
  it.each(materialNames)('%s is stored as the program would write it, under its id', (id) => {
    const path = `materials/${id}.json`;
    const material = expectOk(parseMaterial(assetText(path)));
    const wanted = serializeMaterial(material);
    expect(keptText(path, wanted)).toBe(wanted);
    expect(material.id).toBe(id);
  });
});
