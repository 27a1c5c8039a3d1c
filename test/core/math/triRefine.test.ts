import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CornerMesh, doubleArea, withEdgeNodes } from '../../../core/math/triMesh.ts';
import { refineTriangles } from '../../../core/math/triRefine.ts';

const square: CornerMesh = {
  x: [0, 1, 1, 0],
  y: [0, 0, 1, 1],
  corners: [0, 1, 2, 0, 2, 3],
  neighbours: [-1, 1, -1, -1, -1, 0],
  edgeTags: [2, 0, 1, 3, 4, 0],
};

function areas(mesh: CornerMesh): number[] {
  return Array.from({ length: mesh.corners.length / 3 }, (_, t) => {
    const [a, b, c] = mesh.corners.slice(3 * t, 3 * t + 3);
    return doubleArea(mesh.x[a], mesh.y[a], mesh.x[b], mesh.y[b], mesh.x[c], mesh.y[c]) / 2;
  });
}

function leastAngle(mesh: CornerMesh): number {
  let least = Math.PI;
  for (let t = 0; t < mesh.corners.length; t += 3)
    for (let k = 0; k < 3; k++) {
      const [a, b, c] = [0, 1, 2].map((j) => mesh.corners[t + ((k + j) % 3)]);
      const [ux, uy] = [mesh.x[b] - mesh.x[a], mesh.y[b] - mesh.y[a]];
      const [vx, vy] = [mesh.x[c] - mesh.x[a], mesh.y[c] - mesh.y[a]];
      least = Math.min(least, Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
    }
  return least;
}

describe('refined triangles', () => {
  it('tile the outline, link back and keep their angles, whatever the size field', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.005, max: 0.2, noNaN: true }),
        (px, py, finest) => {
          const size = (x: number, y: number): number => finest + 0.25 * Math.hypot(x - px, y - py);
          const { mesh, complete } = refineTriangles(square, size, 20_000);
          const all = areas(mesh);
          expect(complete).toBe(true);
          expect(Math.min(...all)).toBeGreaterThan(0);
          expect(all.reduce((sum, area) => sum + area, 0)).toBeCloseTo(1, 12);
          expect(leastAngle(mesh)).toBeGreaterThan((20 * Math.PI) / 180);
          mesh.neighbours.forEach((other, e) => {
            if (other >= 0) expect(mesh.neighbours.slice(3 * other, 3 * other + 3)).toContain(Math.floor(e / 3));
            expect(other >= 0).toBe(mesh.edgeTags[e] === 0);
          });
        },
      ),
      { seed: 3, numRuns: 25 },
    );
  });

  it('quadruple when the size halves', () => {
    const count = (size: number): number => refineTriangles(square, () => size, 20_000).mesh.corners.length / 3;
    expect(count(0.05) / count(0.1)).toBeGreaterThan(3);
    expect(count(0.05) / count(0.1)).toBeLessThan(5.5);
  });

  it('stop at the point limit and say so', () => {
    const { mesh, complete } = refineTriangles(square, () => 0.01, 500);
    expect(complete).toBe(false);
    expect(mesh.x.length).toBeLessThan(520);
  });

  it('share their edge middles', () => {
    const { mesh } = refineTriangles(square, () => 0.2, 1000);
    const full = withEdgeNodes(mesh);
    const edges = (full.neighbours.length + full.neighbours.filter((other) => other < 0).length) / 2;
    expect(full.x.length).toBe(full.cornerCount + edges);
    for (let e = 0; e < full.neighbours.length; e++) {
      const t = Math.floor(e / 3);
      const [a, b] = [1, 2].map((j) => full.nodes[6 * t + ((e + j) % 3)]);
      expect(full.x[full.nodes[6 * t + 3 + (e % 3)]]).toBeCloseTo((full.x[a] + full.x[b]) / 2, 14);
    }
  });
});
