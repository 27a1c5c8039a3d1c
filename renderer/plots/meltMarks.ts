/** Where granulate softens, first melts and is molten, and labels for these places that never cover each other. */

import type { Prediction } from '../../core/index.ts';
import { text } from '../strings.ts';

/** A place on the axis and its short name. */
export interface MeltMark {
  /** m */
  readonly z: number;
  readonly name: string;
}

const words = text.axial.marks;

/** The places that lie on the screw, in order. What melts within one station has one place for both ends of melting. */
export function meltMarks({ melting }: Pick<Prediction, 'melting'>): MeltMark[] {
  const { softensAt, meltsFrom } = melting;
  const molten = melting.ends.suited;
  const atOnce = meltsFrom !== null && molten !== null && meltsFrom >= molten;
  const places = [
    { z: softensAt, name: words.softens },
    ...(atOnce ? [] : [{ z: meltsFrom, name: words.firstMelt }]),
    { z: molten, name: atOnce ? words.atOnce : words.molten },
  ];
  return places
    .flatMap(({ z, name }) => (z !== null && Number.isFinite(z) ? [{ z, name }] : []))
    .sort((a, b) => a.z - b.z);
}

/** Width that a letter of the labels is given, px; a little more than they need. */
export const letterWidth = 6.4;

interface Cluster {
  /** sum of what each label would put the cluster's left end at, and how many there are */
  readonly sum: number;
  readonly count: number;
  readonly width: number;
}

const startOf = ({ sum, count }: Cluster): number => sum / count;

/** Puts two neighbours side by side; the right one's wishes count from where it then stands. */
const joined = (left: Cluster, right: Cluster, gap: number): Cluster => ({
  sum: left.sum + right.sum - right.count * (left.width + gap),
  count: left.count + right.count,
  width: left.width + gap + right.width,
});

/**
 * Left ends of labels in the order given: centred on their places, or where they would touch, side by side round the
 * mean of their places; then pushed inside `from` to `to`.
 * @param labels place and width of each, in order of place; @param gap kept between neighbours; all px
 * @returns labels that do not fit between the ends run over `from`
 */
export function spreadLabels(
  labels: readonly { readonly at: number; readonly width: number }[],
  from: number,
  to: number,
  gap: number,
): number[] {
  const clusters: Cluster[] = [];
  for (const { at, width } of labels) {
    let next: Cluster = { sum: at - width / 2, count: 1, width };
    for (let last = clusters.at(-1); last && startOf(last) + last.width + gap > startOf(next); last = clusters.at(-1)) {
      next = joined(last, next, gap);
      clusters.pop();
    }
    clusters.push(next);
  }
  const lefts: number[] = [];
  for (const cluster of clusters) {
    let left = startOf(cluster);
    for (let i = 0; i < cluster.count; i++) {
      lefts.push(left);
      left += (labels[lefts.length - 1]?.width ?? 0) + gap;
    }
  }
  return insideEnds(lefts, labels, from, to, gap);
}

/** Pushes labels off the ends, and each other along. */
function insideEnds(
  lefts: readonly number[],
  labels: readonly { readonly width: number }[],
  from: number,
  to: number,
  gap: number,
): number[] {
  const pushed = [...lefts];
  let least = from;
  pushed.forEach((left, i) => {
    pushed[i] = Math.max(left, least);
    least = (pushed[i] ?? 0) + (labels[i]?.width ?? 0) + gap;
  });
  let most = to;
  for (let i = pushed.length - 1; i >= 0; i--) {
    pushed[i] = Math.min(pushed[i] ?? 0, most - (labels[i]?.width ?? 0));
    most = (pushed[i] ?? 0) - gap;
  }
  return pushed;
}
