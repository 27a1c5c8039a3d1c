import { describe, expect, it } from 'vitest';
import { childNode, projectJsonSchema, schemaNode, variantOf } from '../../../core/project/jsonSchema.ts';
import { projectSchema } from '../../../core/project/schema.ts';
import { keptText } from '../../helpers/assets.ts';

describe('JSON Schema of the project file', () => {
  it('is the one shipped with the program', () => {
    const wanted = `${JSON.stringify(projectJsonSchema(), null, 2)}\n`;
    expect(keptText('project.schema.json', wanted)).toBe(wanted);
  });

  it('keeps unknown fields allowed', () => {
    expect(projectJsonSchema().additionalProperties).toEqual({});
  });

  it('tells variants apart by their constants', () => {
    const root = schemaNode(projectSchema);
    const screw = { sections: [{ kind: 'plain' }] };
    const revision = { screw };
    const project = { revisions: [revision] };
    const revisions = childNode(root, project, 'revisions');
    const node = revisions && childNode(revisions, project.revisions, 0);
    const screwNode = node && childNode(node, revision, 'screw');
    const sections = screwNode && childNode(screwNode, screw, 'sections');
    const section = sections && childNode(sections, screw.sections, 0);
    expect(section && Object.keys(variantOf(section, { kind: 'plain' }).properties ?? {})).not.toContain('leadStartMm');
    expect(section && Object.keys(variantOf(section, { kind: 'flighted' }).properties ?? {})).toContain('leadStartMm');
  });
});
