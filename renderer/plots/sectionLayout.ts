/** Where the cross-section of the channel stands in its picture: to scale, barrel on top. */

import type { StationSection } from '../../core/index.ts';

/** Room for the axes, px. */
export const room = { left: 46, right: 12, top: 20, bottom: 38 } as const;

/** Metres to pixels. */
export interface SectionLayout {
  readonly width: number;
  readonly height: number;
  /** half the width and the depth that are drawn, m */
  readonly halfWidth: number;
  readonly depth: number;
  readonly perMetre: number;
  x(distance: number): number;
  y(depth: number): number;
}

/** Steel drawn beside and below the channel, as a share of its depth. */
const margin = 0.18;

/** Highest picture, px. */
const tallest = 300;

/** Layout in a box `width` px wide; the height follows from the scale. */
export function sectionLayout(section: StationSection, width: number): SectionLayout {
  const deepest = Math.max(...section.depth);
  const halfWidth = Math.max(...section.x) + margin * deepest;
  const depth = deepest * (1 + margin);
  const across = Math.max(40, width - room.left - room.right);
  const perMetre = Math.min(across / (2 * halfWidth), (tallest - room.top - room.bottom) / depth);
  const middle = room.left + across / 2;
  return {
    width,
    height: Math.ceil(room.top + room.bottom + depth * perMetre),
    halfWidth,
    depth,
    perMetre,
    x: (distance) => middle + distance * perMetre,
    y: (down) => room.top + down * perMetre,
  };
}

/** Round marks from `from` to `to` (mm), at most about `most` of them. */
export function roundMarks(from: number, to: number, most: number): number[] {
  const raw = (to - from) / most;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = power * ([1, 2, 5, 10].find((factor) => factor * power >= raw) ?? 10);
  const first = Math.ceil(from / step - 1e-9);
  const count = Math.floor(to / step + 1e-9) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => Number(((first + i) * step).toPrecision(6)));
}

/** A node of the section and how far it is, px. */
export function nearestNode(
  section: StationSection,
  layout: SectionLayout,
  px: number,
  py: number,
): { readonly node: number; readonly distance: number } {
  let node = 0;
  let least = Number.POSITIVE_INFINITY;
  section.x.forEach((x, k) => {
    const distance = Math.hypot(layout.x(x) - px, layout.y(section.depth[k] ?? 0) - py);
    if (distance >= least) return;
    least = distance;
    node = k;
  });
  return { node, distance: least };
}
