import { describe, expect, test } from 'vitest';
import { describedRows, labelOf } from '../../../renderer/compare/describedRows.ts';
import { partOf } from '../../../renderer/panels/partOf.ts';
import { issuePlace } from '../../../renderer/panels/SectionTable.tsx';
import { partIds } from '../../../renderer/store/view.ts';
import { text } from '../../../renderer/strings.ts';
import { loadExample } from '../../helpers/projects.ts';

const [a, , c] = loadExample('demo').revisions;
if (!a || !c) throw new Error('the demo has three revisions');

describe('differences in the description', () => {
  test('a revision differs from itself in nothing', () => {
    expect(describedRows([c, structuredClone(c)]).filter((row) => row.differs)).toEqual([]);
  });

  test('one changed value is one row, named as its field', () => {
    const other = structuredClone(c);
    other.screw.radialClearanceMm = 0.25;
    expect(describedRows([c, other]).filter((row) => row.differs)).toEqual([
      { key: 'screw.radialClearanceMm', label: 'Screw: Flight clearance, mm', values: ['0.1', '0.25'], differs: true },
    ]);
  });

  test('values that only one revision has leave the other empty', () => {
    const rows = describedRows([a, c]).filter((row) => row.key.startsWith('screw.sections.2.'));
    expect(rows.length).toBeGreaterThan(5);
    expect(rows.every((row) => row.values[0] === '' && row.differs)).toBe(true);
  });

  test('every number of the demo has a name in words', () => {
    for (const row of describedRows([a, c])) expect(labelOf(row.key)).not.toMatch(/Mm\b|Deg\b|WPerMK|undefined/);
    expect(labelOf('nozzle.segments.0.lengthMm')).toBe('Nozzle, piece 1: Length, mm');
    expect(labelOf('screw.tip.kind')).toBe('Screw: Tip kind');
    expect(labelOf('drive.bearing.staticLoadN')).toBe('Drive: Static axial load, N');
  });
});

test('every number of a project is edited in some part of the description', () => {
  const project = loadExample('demo');
  const rooms = ['screw', 'barrel', 'nozzle', 'hopper', 'drive', 'materialId'];
  const paths = [...rooms.map((room) => ['revisions', 0, room]), ['materials', 0], ['process'], ['print']];
  for (const path of paths) expect(partIds).toContain(partOf(path));
  expect(partOf(['revisions', 0, 'screw', 'tip', 'kind'])).toBe('tip');
  expect(partOf(['benchLog', 0])).toBeNull();
  expect(Object.keys(text.parts)).toEqual([...partIds]);
  expect(project.revisions).toHaveLength(3);
});

test('an issue of a section is placed in words, whether it names a value, a section or all of them', () => {
  expect(issuePlace([2, 'rootDiameterEndMm'])).toBe('Section 3, Root Ø end');
  expect(issuePlace([0])).toBe('Section 1');
  expect(issuePlace([])).toBe('Sections');
});
