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

/** What of the section is looked at: how much enlarged, and which place (m) is in the middle. */
export interface SectionView {
  /** 1 = the whole */
  readonly zoom: number;
  readonly x: number;
  readonly depth: number;
}

/** Most that the section is enlarged. */
export const mostZoom = 20;

/** The whole section. */
export const wholeSection: SectionView = { zoom: 1, x: 0, depth: 0 };

/** A view by `factor` nearer or farther about a place of the section (m), which stays where it is; the whole at 1. */
export function zoomedView(
  view: SectionView,
  factor: number,
  at: { readonly x: number; readonly depth: number },
): SectionView {
  const zoom = Math.min(mostZoom, Math.max(1, view.zoom * factor));
  if (zoom === 1) return wholeSection;
  const share = view.zoom / zoom;
  return { zoom, x: at.x + (view.x - at.x) * share, depth: at.depth + (view.depth - at.depth) * share };
}

/** Steel drawn beside and below the channel, as a share of its depth. */
const margin = 0.18;

/** Highest picture, px. */
const tallest = 300;

/** The layout enlarged about the view's middle, which is kept so that no empty room comes in. */
export function enlarged(layout: SectionLayout, view: SectionView): SectionLayout {
  if (view.zoom === 1) return layout;
  const perMetre = layout.perMetre * view.zoom;
  const [left, right] = [layout.x(-layout.halfWidth), layout.x(layout.halfWidth)];
  const [top, bottom] = [layout.y(0), layout.y(layout.depth)];
  const reachX = layout.halfWidth - (right - left) / 2 / perMetre;
  const reachDepth = (bottom - top) / 2 / perMetre;
  const x = Math.min(reachX, Math.max(-reachX, view.x));
  const depth = Math.min(layout.depth - reachDepth, Math.max(reachDepth, view.depth));
  return {
    ...layout,
    perMetre,
    x: (distance) => (left + right) / 2 + (distance - x) * perMetre,
    y: (down) => (top + bottom) / 2 + (down - depth) * perMetre,
  };
}

/** The frame of the picture inside its axes, px. */
export const frameOf = (whole: SectionLayout) => ({
  left: whole.x(-whole.halfWidth),
  right: whole.x(whole.halfWidth),
  top: whole.y(0),
  bottom: whole.y(whole.depth),
});

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
