/** The axis of a long part on paper: straight, or with stretches left out between break lines. */

/** A stretch that is drawn. */
interface AxisPiece {
  /** m along the part */
  readonly from: number;
  readonly to: number;
  /** mm on paper where it begins */
  readonly x: number;
}

/** Where places of the part lie on paper. */
export interface Axis {
  /** paper mm per mm of the part */
  readonly scale: number;
  readonly pieces: readonly AxisPiece[];
  /** m that are not drawn */
  readonly leftOut: number;
  /** mm on paper of the whole */
  readonly length: number;
}

/** Room between two break lines, mm. */
export const breakGap = 2.4;
/** Kept at each end of a broken stretch, mm on paper. */
const keptEnd = 14;

/** Place on paper, mm; in a stretch left out, the middle of its gap. */
export function onPaper(axis: Axis, z: number): number {
  const piece = axis.pieces.find(({ from, to }) => z >= from - 1e-9 && z <= to + 1e-9);
  if (piece) return piece.x + (z - piece.from) * 1e3 * axis.scale;
  const next = axis.pieces.find(({ from }) => from > z);
  return next ? next.x - breakGap / 2 : axis.length;
}

/** Whether a place is drawn and no break lies within `margin` (m) of it. */
export const isDrawn = (axis: Axis, z: number, margin: number): boolean =>
  axis.pieces.some(
    ({ from, to }, i) => z >= from + (i > 0 ? margin : 0) && z <= to - (i < axis.pieces.length - 1 ? margin : 0),
  );

/** Whether a stretch of the part is broken. */
export const isBroken = (axis: Axis, from: number, to: number): boolean =>
  axis.pieces.some((piece, i) => i > 0 && piece.from > from && piece.from < to);

/** Stretches left out so that the part fits: longest stretches first, both their ends kept. */
function cutsFor(stretches: readonly { from: number; to: number }[], excess: number, kept: number) {
  let rest = excess;
  const cuts: { from: number; to: number }[] = [];
  for (const { from, to } of [...stretches].sort((a, b) => b.to - b.from - (a.to - a.from))) {
    const most = to - from - 2 * kept;
    if (rest <= 0 || most <= 0) continue;
    const length = Math.min(most, rest);
    const middle = (from + to) / 2;
    cuts.push({ from: middle - length / 2, to: middle + length / 2 });
    rest -= length;
  }
  return { cuts: cuts.sort((a, b) => a.from - b.from), rest };
}

/**
 * Axis from `start` to `end` (m) at a scale, no longer than `room` (mm) if stretches may be broken.
 * @returns null where even breaking all stretches does not make it fit
 */
export function makeAxis(
  start: number,
  end: number,
  scale: number,
  room: number,
  stretches: readonly { from: number; to: number }[],
): Axis | null {
  const perMetre = 1e3 * scale;
  const excess = end - start - room / perMetre;
  if (excess <= 1e-9) {
    return {
      scale,
      pieces: [{ from: start, to: end, x: start * perMetre }],
      leftOut: 0,
      length: (end - start) * perMetre,
    };
  }
  const gaps = (stretches.length * breakGap) / perMetre;
  const { cuts, rest } = cutsFor(stretches, excess + gaps, keptEnd / perMetre);
  if (rest > gaps) return null;
  const pieces: AxisPiece[] = [];
  let x = start * perMetre;
  let from = start;
  for (const cut of [...cuts, { from: end, to: end }]) {
    pieces.push({ from, to: cut.from, x });
    x += (cut.from - from) * perMetre + breakGap;
    from = cut.to;
  }
  const leftOut = cuts.reduce((sum, cut) => sum + cut.to - cut.from, 0);
  return { scale, pieces, leftOut, length: x - breakGap - start * perMetre };
}
