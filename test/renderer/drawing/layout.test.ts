import { describe, expect, test } from 'vitest';
import type { Project } from '../../../core/index.ts';
import { drawnOf } from '../../../renderer/drawing/dimensions.ts';
import { type Box, crowded, type Layout, layOut } from '../../../renderer/drawing/layout.ts';
import type { Dimension } from '../../../renderer/drawing/types.ts';
import { moved, showing, toPixels, type Viewport, viewOf, zoomedAt } from '../../../renderer/drawing/viewport.ts';
import { activeRevision } from '../../../renderer/store/project.ts';
import type { Place } from '../../../renderer/store/view.ts';
import { demo, openedExamples } from './examples.ts';

const sizes = [
  { width: 558, height: 300 },
  { width: 940, height: 640 },
] as const;
const places: readonly Place[] = ['whole', 'feed', 'screw', 'outlet'];
const manners = { keepLength: true, joined: true };
const write = ({ sign, value }: Dimension) => `${sign}${value}`;

function laidOut(project: Project, view: Viewport, size: (typeof sizes)[number], joined = true): Layout {
  const drawn = drawnOf(project, { ...manners, joined });
  const radius = drawn.revision.barrel.outerDiameterMm / 2;
  return layOut({ dimensions: drawn.dimensions, write, radius }, size, toPixels(view, size));
}

const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Pairs of texts that lie over each other. */
function clashes({ placed }: Layout): readonly string[] {
  return placed.flatMap((one, i) =>
    placed
      .slice(i + 1)
      .filter((other) => overlap(one.box, other.box))
      .map((other) => `${one.dimension.id} over ${other.dimension.id}`),
  );
}

/** Texts that a dimension line other than their own runs through. */
function crossed({ placed }: Layout): readonly string[] {
  return placed.flatMap(({ box, dimension }) =>
    placed
      .filter(({ line, dimension: other }) => {
        if (!line || other === dimension) return false;
        const [from, to] = [Math.min(line.from, line.to), Math.max(line.from, line.to)];
        return line.y > box.y && line.y < box.y + box.height && from < box.x + box.width && to > box.x;
      })
      .map(({ dimension: other }) => `${other.id} through ${dimension.id}`),
  );
}

describe('texts of dimensions', () => {
  test.each(openedExamples())(
    '%s: none lies over another or is run through, at any size and place',
    (_name, project) => {
      for (const size of sizes) {
        for (const place of places) {
          for (const joined of [true, false]) {
            const layout = laidOut(project, viewOf(place, activeRevision(project), size), size, joined);
            expect([place, clashes(layout), crossed(layout)]).toEqual([place, [], []]);
            for (const { box } of layout.placed) {
              expect(box.x).toBeGreaterThanOrEqual(0);
              expect(box.x + box.width).toBeLessThanOrEqual(size.width);
              expect(box.y).toBeGreaterThanOrEqual(0);
              expect(box.y + box.height).toBeLessThanOrEqual(size.height);
            }
          }
        }
      }
    },
  );

  test('nearly all find room in a large view, and what does not is counted', () => {
    const [small, large] = sizes;
    const project = demo();
    const counts = [small, large].map((size) => {
      const layout = laidOut(project, viewOf('whole', activeRevision(project), size), size);
      return [layout.placed.length, layout.left, layout.placed.length + layout.left];
    });
    expect(counts[1]?.[1]).toBe(0);
    expect(counts[0]?.[2]).toBe(counts[1]?.[2]);
  });

  test('the orifice goes before a shank', () => {
    const narrow = { width: 300, height: 150 };
    const project = demo();
    const layout = laidOut(project, viewOf('whole', activeRevision(project), narrow), narrow as never);
    const ids = layout.placed.map(({ dimension }) => dimension.id);
    expect(layout.left).toBeGreaterThan(0);
    expect(ids).toContain('piece/3/startDiameterMm');
    expect(ids).not.toContain('nozzle.outerDiameterMm');
  });
});

describe('handles', () => {
  test('stand clear of each other at every zoom; those that would not come forth when it is larger', () => {
    const project = demo();
    const { dimensions } = drawnOf(project, manners);
    const [size] = sizes;
    const seats = (view: Viewport) => {
      const at = toPixels(view, size);
      return ({ grip }: Dimension) => ({ x: at.x(grip.z) + 8 * grip.aside, y: at.y(grip.r) });
    };
    const whole = viewOf('whole', activeRevision(project), size);
    const hidden = crowded(dimensions, seats(whole));
    const shown = dimensions.filter(({ id }) => !hidden.has(id)).map(seats(whole));
    for (const [i, a] of shown.entries()) {
      for (const b of shown.slice(i + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(11);
    }
    expect(hidden.size).toBeGreaterThan(0);
    expect(crowded(dimensions, seats({ ...whole, zoom: 60 })).size).toBeLessThan(hidden.size);
  });
});

describe('the view', () => {
  const [size] = sizes;
  const whole = viewOf('whole', activeRevision(demo()), size);

  test('fits the whole machine to one scale', () => {
    const { x, y } = toPixels(whole, size);
    const { screw, barrel, nozzle } = activeRevision(demo());
    const end = nozzle.segments.reduce((sum, { lengthMm }) => sum + lengthMm, barrel.lengthMm);
    expect(x(-screw.shank.lengthMm)).toBeGreaterThan(0);
    expect(x(end)).toBeLessThan(size.width);
    expect(y(barrel.outerDiameterMm / 2)).toBeGreaterThan(40);
    expect(x(10) - x(0)).toBeCloseTo(y(0) - y(10), 9);
  });

  test('zooming keeps the place under the pointer, moving shifts it by as much', () => {
    const at = { x: 100, y: 90 };
    const before = toPixels(whole, size);
    const z = whole.z + (at.x - size.width / 2) / whole.zoom;
    const after = toPixels(zoomedAt(whole, 3, at, size), size);
    expect(before.x(z)).toBeCloseTo(100, 6);
    expect(after.x(z)).toBeCloseTo(100, 6);
    expect(toPixels(moved(whole, 12, -5), size).y(3)).toBeCloseTo(before.y(3) - 5, 9);
  });

  test('comes to a handle that is out of sight, and stays where one is in sight', () => {
    const close = { zoom: 40, z: 20, r: 0 };
    const { x } = toPixels(showing(close, { z: 160, r: 5 }, size), size);
    expect(x(160)).toBeGreaterThan(0);
    expect(x(160)).toBeLessThan(size.width);
    expect(showing(close, { z: 20, r: 0 }, size)).toBe(close);
  });
});
