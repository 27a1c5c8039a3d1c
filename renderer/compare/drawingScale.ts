/** Where things lie in the drawing of heads over each other. Plain arithmetic between metres and pixels. */

/** The stretch of the axis that is seen, m. */
export interface Sight {
  readonly from: number;
  readonly to: number;
}

/** Metres to pixels and back. */
export interface DrawingScale {
  x(z: number): number;
  y(r: number): number;
  z(x: number): number;
  /** heights over lengths; 1 = true proportions */
  readonly stretch: number;
}

/** Room under the axis for its numbers, above the drawing, and left and right of it, px. */
export const room = { under: 34, above: 8, side: 14 } as const;

/**
 * The scale of a drawing `width` by `height` px.
 * @param most greatest radius, m
 * @param isTrue lengths and heights alike; else heights fill the drawing where that makes them larger
 */
export function drawingScale(
  sight: Sight,
  size: { readonly width: number; readonly height: number },
  most: number,
  isTrue: boolean,
): DrawingScale {
  const along = Math.max(1, size.width - 2 * room.side) / (sight.to - sight.from);
  const filling = (size.height - room.under - room.above) / most;
  const up = isTrue ? along : Math.max(along, filling);
  return {
    x: (z) => room.side + (z - sight.from) * along,
    y: (r) => size.height - room.under - r * up,
    z: (x) => sight.from + (x - room.side) / along,
    stretch: up / along,
  };
}

/** Shortest stretch that can be looked at, m. */
const closest = 0.002;

/** A stretch kept within `whole` and not shorter than what can be looked at. */
function kept(from: number, length: number, whole: Sight): Sight {
  const span = Math.min(whole.to - whole.from, Math.max(closest, length));
  const start = Math.min(Math.max(from, whole.from), whole.to - span);
  return { from: start, to: start + span };
}

/** Zooms by `factor` (above 1 comes closer) about `at` (m), which stays where it is. */
export function zoomed(sight: Sight, factor: number, at: number, whole: Sight): Sight {
  const length = (sight.to - sight.from) / factor;
  const share = (at - sight.from) / (sight.to - sight.from);
  const span = Math.min(whole.to - whole.from, Math.max(closest, length));
  return kept(at - share * span, span, whole);
}

/** Moves along the axis by `by` (m). */
export const moved = (sight: Sight, by: number, whole: Sight): Sight =>
  kept(sight.from + by, sight.to - sight.from, whole);

/** Round places (1, 2 or 5 times a power of ten) between two values, about `count` of them. */
export function roundPlaces(from: number, to: number, count: number): number[] {
  const rough = (to - from) / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((factor) => factor * power >= rough) ?? 10) * power;
  const places: number[] = [];
  for (let k = Math.ceil(from / step - 1e-9); k * step <= to + 1e-9 * step; k++)
    places.push(Number((k * step).toPrecision(12)));
  return places;
}
