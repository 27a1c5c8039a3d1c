/** Axes of the bench's drawings. */

/** A step of 1, 2 or 5 times a power of ten that gives about `count` steps over `span`. */
function niceStep(span: number, count: number): number {
  const rough = span / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(rough));
  const share = rough / power;
  return power * (share <= 1 ? 1 : share <= 2 ? 2 : share <= 5 ? 5 : 10);
}

/** Values from 0 up to and including the first step at or beyond `most`. */
export function ticksUpTo(most: number, count = 5): readonly number[] {
  if (!(most > 0) || !Number.isFinite(most)) return [0, 1];
  const step = niceStep(most, count);
  const steps = Math.ceil(most / step - 1e-9);
  return Array.from({ length: steps + 1 }, (_, i) => Number((i * step).toPrecision(6)));
}

/** Ratios around 1 to label a logarithmic axis with, wide enough for the given ones: at least 2/3 to 1.5. */
export function ratioTicks(ratios: readonly number[]): readonly number[] {
  const all = [0.02, 0.05, 0.1, 0.2, 0.33, 0.5, 0.67, 0.8, 1, 1.25, 1.5, 2, 3, 5, 10, 20, 50];
  const usable = ratios.filter((ratio) => ratio > 0);
  const least = Math.min(0.68, ...usable);
  const most = Math.max(1.45, ...usable);
  const first = all.findLastIndex((value) => value <= least);
  const last = all.findIndex((value) => value >= most);
  return all.slice(Math.max(0, first), last < 0 ? all.length : last + 1);
}
