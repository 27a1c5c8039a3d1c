/** Why a design is hatched: a hole, or a limit that is not kept; and the strokes themselves. */

import { type Evaluated, limitStates } from '../../core/index.ts';
import { searchText } from '../strings/search.ts';
import type { LimitSetup } from './store.ts';

/** How a place is drawn. */
export type Ground = 'good' | 'missed' | 'hole' | 'pending';

/** Limits that count. */
export const ticked = (limits: readonly LimitSetup[] | null, hatch: boolean): readonly LimitSetup[] =>
  hatch ? (limits ?? []).filter(({ on }) => on) : [];

/** The ground of a design. */
export function groundOf(design: Evaluated | undefined, limits: readonly LimitSetup[]): Ground {
  if (!design) return 'pending';
  if (design.hole !== null) return 'hole';
  return limitStates(limits, design).some(({ beyond }) => beyond !== 0) ? 'missed' : 'good';
}

/** The reason in words; empty where there is none. */
export function reasonOf(design: Evaluated | undefined, limits: readonly LimitSetup[]): string {
  if (!design) return searchText.result.pending;
  if (design.hole !== null) return design.hole;
  const missed = limitStates(limits, design).filter(({ beyond }) => beyond !== 0);
  return missed.length > 0 ? searchText.result.missing(missed.map(({ label }) => label).join(', ')) : '';
}

/** Distance between strokes, px. */
const gaps = { hole: 6, missed: 11 } as const;

/** Slanted strokes over a rectangle: close ones for holes, wide ones the other way for limits that are not kept. `weight`: px. */
export function hatch(
  ctx: CanvasRenderingContext2D,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  kind: 'hole' | 'missed',
  colour: string,
  ratio = 1,
  weight = 1,
): void {
  const { x, y, width, height } = box;
  const gap = gaps[kind] * ratio;
  const way = kind === 'hole' ? 1 : -1;
  ctx.save();
  ctx.beginPath();
  ctx.rect(x, y, width, height);
  ctx.clip();
  ctx.strokeStyle = colour;
  ctx.lineWidth = ratio * weight;
  ctx.beginPath();
  // strokes lie on one lattice of the whole picture, so that cells join
  const along = (px: number, py: number) => px + way * py;
  const corners = [along(x, y), along(x + width, y), along(x, y + height), along(x + width, y + height)];
  const first = Math.floor(Math.min(...corners) / gap);
  const last = Math.ceil(Math.max(...corners) / gap);
  for (let n = first; n <= last; n++) {
    ctx.moveTo(n * gap - way * y, y);
    ctx.lineTo(n * gap - way * (y + height), y + height);
  }
  ctx.stroke();
  ctx.restore();
}
