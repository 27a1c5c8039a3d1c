import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { validateDesign } from '../../../core/design/validate.ts';
import { barrelMesh } from '../../../core/geometry/barrelMesh.ts';
import { barrelVolume } from '../../../core/geometry/barrelWall.ts';
import { borePieces } from '../../../core/geometry/bore.ts';
import { nozzleBodyVolume, nozzleMesh } from '../../../core/geometry/nozzleMesh.ts';
import { screwMesh } from '../../../core/geometry/screwMesh.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { measureGeometry } from '../../../core/geometry/summary.ts';
import { anyDesign, pinned } from '../../helpers/arbitraries.ts';
import { eulerNumber, meshIsClosed, meshVolume } from '../../helpers/meshFacts.ts';
import { exampleNames, expectOk, loadExample } from '../../helpers/projects.ts';
import { judge } from './manifold.ts';

/** All revisions of all shipped examples. */
const examples: [string, Design][] = exampleNames.flatMap((name) => {
  const project = loadExample(name);
  return project.revisions.map(({ id }): [string, Design] => [`${name} ${id}`, expectOk(validateDesign(project, id))]);
});

/** Fails unless screw, barrel and nozzle are closed solids of the analytic volume within 0.1 %. */
async function expectSolids(design: Design, aroundCount: number, cutAngle: number): Promise<void> {
  const options = { aroundCount, ringsPerTurn: Math.ceil(aroundCount / 2) };
  const summary = measureGeometry(design, buildStations(design, 12));
  const screw = screwMesh(design, options);
  const bodies = [
    { mesh: screw, volume: summary.screwVolume + summary.shankVolume },
    { mesh: barrelMesh(design, options, cutAngle), volume: barrelVolume(design.barrel, cutAngle) },
    { mesh: nozzleMesh(design, options, cutAngle), volume: nozzleBodyVolume(design, cutAngle) },
  ];
  for (const { mesh, volume } of bodies) {
    expect(meshIsClosed(mesh)).toBe(true);
    expect(Math.abs(meshVolume(mesh) / volume - 1)).toBeLessThan(1e-3);
    const judged = await judge(mesh);
    expect(judged.status()).toBe('NoError');
    expect(judged.decompose()).toHaveLength(1);
    judged.delete();
  }
  expect(eulerNumber(screw)).toBe(2);
}

describe.each(examples)('geometry of %s', (_, design) => {
  it('meshes to closed solids', () => expectSolids(design, 64, 2));

  it('shares the bore between screw and melt', () => {
    const { channelVolume, screwVolume, tipVolume, nozzleVolume } = measureGeometry(design, buildStations(design, 12));
    const { boreDiameter, length } = design.barrel;
    const nozzle = borePieces(design)
      .slice(1)
      .reduce((sum, piece) => {
        const [a, b] = [piece.radius(piece.from), piece.radius(piece.to)];
        return sum + (Math.PI / 3) * (a * a + a * b + b * b) * (piece.to - piece.from);
      }, 0);
    const bore = (Math.PI / 4) * boreDiameter ** 2 * length + nozzle;
    expect((channelVolume + screwVolume + tipVolume + nozzleVolume) / bore).toBeCloseTo(1, 5);
  });
});

describe('geometry of any valid design', () => {
  it('meshes to closed solids of the analytic volume', async () => {
    const cut = fc.oneof(fc.constant(0), fc.double({ min: 0.05, max: 5.5, noNaN: true }));
    await fc.assert(fc.asyncProperty(anyDesign, fc.integer({ min: 24, max: 48 }), cut, expectSolids), pinned(40));
  });
});
