import { describe, expect, test } from 'vitest';
import type { Project } from '../../../core/index.ts';
import { revisionIssues } from '../../../core/index.ts';
import {
  addPiece,
  mergePieces,
  mergeZones,
  splitPiece,
  splitZone,
  zoneMergeFault,
} from '../../../renderer/drawing/entryEdits.ts';
import { pieceTools, sectionTools, zoneTools } from '../../../renderer/drawing/entryTools.ts';
import { activeRevision } from '../../../renderer/store/project.ts';
import { changed, demo } from './examples.ts';

const pieces = ['revisions', 2, 'nozzle', 'segments'];
const zones = ['revisions', 2, 'barrel', 'zones'];
const segmentsOf = (project: Project) =>
  activeRevision(project).nozzle.segments.map(({ lengthMm, startDiameterMm, endDiameterMm }) => [
    lengthMm,
    startDiameterMm,
    endDiameterMm,
  ]);
const stretchesOf = (project: Project) =>
  activeRevision(project).barrel.zones.map(({ startMm, endMm }) => [startMm, endMm]);
const powersOf = (project: Project) =>
  activeRevision(project).barrel.zones.map((zone) => (zone.kind === 'heated' ? zone.maxPowerW : 0));

describe('pieces of the nozzle', () => {
  test('splitting keeps the shape, and merging the halves brings the piece back', () => {
    const halves = splitPiece(pieces, 0)(demo());
    expect(segmentsOf(halves).slice(0, 2)).toEqual([
      [3.897, 14, 9.5],
      [3.897, 9.5, 5],
    ]);
    expect(segmentsOf(mergePieces(pieces, 0)(halves))).toEqual(segmentsOf(demo()));
  });

  test.each([
    ['land', [2, 5, 5]],
    ['cone', [2, 5, 3.5]],
    ['ledge', [0, 5, 3.5]],
    ['gap', [0.5, 7, 7]],
  ] as const)('a new %s goes on where the piece before it ends', (kind, shape) => {
    const more = addPiece(pieces, 1, kind)(demo());
    expect(segmentsOf(more)[2]).toEqual(shape);
    expect(segmentsOf(more)).toHaveLength(5);
    expect(revisionIssues(activeRevision(more), [])).toEqual([]);
  });

  test('a cone put before a step leads over to what follows', () => {
    const stepped = addPiece(pieces, 1, 'gap')(demo());
    expect(segmentsOf(addPiece(pieces, 1, 'cone')(stepped))[2]).toEqual([2, 5, 7]);
  });

  test('merging past the end changes nothing', () => {
    expect(segmentsOf(mergePieces(pieces, 3)(demo()))).toEqual(segmentsOf(demo()));
  });
});

describe('zones', () => {
  test('a zone is cut in the middle and put together again', () => {
    const cut = splitZone(zones, 2)(demo());
    expect(stretchesOf(cut)).toEqual([
      [0, 44],
      [44, 58],
      [58, 83],
      [83, 108],
      [108, 162],
    ]);
    expect(revisionIssues(activeRevision(cut), [])).toEqual([]);
    expect(stretchesOf(mergeZones(zones, 2)(cut))).toEqual(stretchesOf(demo()));
  });

  test('the power of a heater is shared by length when cut, and added when merged: the total stays', () => {
    const odd = changed(demo(), ({ barrel }) => Object.assign(barrel.zones[2] ?? {}, { endMm: 107.9, maxPowerW: 100 }));
    const [total, cut] = [(p: Project) => powersOf(p).reduce((a, b) => a + b, 0), splitZone(zones, 2)(odd)];
    // 58 to 107.9 mm is cut at 83 mm: 25 and 24.9 mm
    expect(powersOf(cut).slice(2)).toEqual([50.1002, 49.8998, 120].map((watts) => expect.closeTo(watts, 4)));
    expect(total(cut)).toBeCloseTo(220, 9);
    expect(powersOf(mergeZones(zones, 2)(cut))).toEqual(powersOf(odd));
    expect(total(mergeZones(zones, 2)(demo()))).toBe(240);
  });

  test('zones of unlike kinds, or too strong together, are not merged, and the menu says why', () => {
    const strong = changed(demo(), ({ barrel }) => Object.assign(barrel.zones[3] ?? {}, { maxPowerW: 19900 }));
    const fault = (project: Project, index: number) => zoneMergeFault(activeRevision(project).barrel.zones, index);
    expect([0, 1, 2, 3].map((index) => fault(demo(), index))).toEqual(['kind', 'kind', null, 'last']);
    expect(fault(strong, 2)).toBe('power');
    for (const [project, index] of [[demo(), 1] as const, [strong, 2] as const]) {
      expect(mergeZones(zones, index)(project)).toEqual(project);
    }
    const menu = (index: number) =>
      zoneTools(activeRevision(demo()), { list: zones, index, count: 4, locked: false })[1];
    expect(menu(1)).toMatchObject({ disabled: true, note: expect.stringMatching(/the other is not/) });
    expect(menu(2)).toMatchObject({ disabled: false, note: expect.stringMatching(/powers are added/) });
  });

  test('the last section and the last piece cannot be merged with a next one, and the menu says why', () => {
    const place = (list: readonly (string | number)[], index: number, count: number) =>
      ({ list, index, count, locked: false }) as const;
    const sections = (index: number) => sectionTools(activeRevision(demo()), place(['sections'], index, 3))[1];
    expect(sections(2)).toMatchObject({ disabled: true, note: 'there is no next section' });
    expect(sections(1)).toMatchObject({ disabled: false, note: expect.stringMatching(/are kept/) });
    const count = segmentsOf(demo()).length;
    const last = pieceTools(place(pieces, count - 1, count))[1];
    expect(last).toMatchObject({ disabled: true, note: 'there is no next piece' });
  });
});
