import { describe, expect, test } from 'vitest';
import type { Project } from '../../../core/index.ts';
import { revisionIssues } from '../../../core/index.ts';
import { addPiece, mergePieces, mergeZones, splitPiece, splitZone } from '../../../renderer/drawing/entryEdits.ts';
import { activeRevision } from '../../../renderer/store/project.ts';
import { demo } from './examples.ts';

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
});
