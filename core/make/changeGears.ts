/**
 * Change gears of a lathe: drivers over driven between spindle and leadscrew. The screw's lead is the leadscrew's times
 * the ratio. Plain arithmetic.
 */

/** A train: spindle side first, pairs of driver and driven wheel; one pair is a simple train, two a compound one. */
export interface GearTrain {
  readonly pairs: readonly (readonly [driver: number, driven: number])[];
  /** product of drivers over product of driven */
  readonly ratio: number;
  /** lead that it cuts less the lead wanted, m per turn */
  readonly error: number;
}

/** Errors below this share are rounding, not gears. */
const exact = 1e-9;

interface Pair {
  readonly a: number;
  readonly b: number;
  readonly ratio: number;
}

/** All ordered pairs of two different wheels, by rising ratio; wheels by their place in the set, of which each is there once. */
function pairsOf(teeth: readonly number[]): Pair[] {
  const pairs = teeth.flatMap((driver, a) =>
    teeth.flatMap((driven, b) => (a === b ? [] : [{ a, b, ratio: driver / driven }])),
  );
  return pairs.sort((p, q) => p.ratio - q.ratio);
}

/** Place of the first pair with at least the wanted ratio. */
function firstFrom(pairs: readonly Pair[], wanted: number): number {
  let [low, high] = [0, pairs.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((pairs[middle] as Pair).ratio < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The pair nearest to a ratio that shares no wheel with `taken`. */
function nearestPair(pairs: readonly Pair[], wanted: number, taken: Pair | null): Pair | null {
  const isFree = ({ a, b }: Pair) => !taken || (a !== taken.a && a !== taken.b && b !== taken.a && b !== taken.b);
  const from = firstFrom(pairs, wanted);
  let up = from;
  while (up < pairs.length && !isFree(pairs[up] as Pair)) up++;
  let down = from - 1;
  while (down >= 0 && !isFree(pairs[down] as Pair)) down--;
  const [above, below] = [pairs[up], pairs[down]];
  if (!above || !below) return above ?? below ?? null;
  return above.ratio - wanted < wanted - below.ratio ? above : below;
}

/** The best of all trains of two pairs. */
function compound(pairs: readonly Pair[], wanted: number): readonly Pair[] | null {
  let best: readonly Pair[] | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const first of pairs) {
    const second = nearestPair(pairs, wanted / first.ratio, first);
    if (!second) continue;
    const off = Math.abs((first.ratio * second.ratio) / wanted - 1);
    // among equals the one whose pairs are most alike spares the wheels
    const strain = Math.abs(Math.log(first.ratio / second.ratio)) * 1e-12;
    if (off + strain >= least) continue;
    least = off + strain;
    best = [first, second];
  }
  return best;
}

/**
 * The train that comes nearest to a lead; a simple one where it is exact, else compound where that is nearer.
 * @param lead wanted, m per turn; @param leadscrew lead of the leadscrew, m per turn
 * @param teeth wheels at hand, each usable once; a size that is there twice stands twice
 * @returns null where fewer than two wheels are there
 */
export function changeGears(lead: number, leadscrew: number, teeth: readonly number[]): GearTrain | null {
  const wanted = lead / leadscrew;
  const pairs = pairsOf(teeth);
  const simple = nearestPair(pairs, wanted, null);
  if (!simple) return null;
  const isExact = Math.abs(simple.ratio / wanted - 1) < exact;
  const double = isExact ? null : compound(pairs, wanted);
  const product = (list: readonly Pair[]) => list.reduce((sum, { ratio }) => sum * ratio, 1);
  const better = double && Math.abs(product(double) - wanted) < Math.abs(simple.ratio - wanted) * (1 - exact);
  const chosen = better && double ? double : [simple];
  const ratio = product(chosen);
  const off = Math.abs(ratio / wanted - 1) < exact ? 0 : (ratio - wanted) * leadscrew;
  const named = chosen.map(({ a, b }): [number, number] => [teeth[a] as number, teeth[b] as number]);
  return { pairs: named, ratio, error: off };
}

/** `40:50` or `30:45 × 60:80`. */
export const trainText = ({ pairs }: GearTrain): string => pairs.map(([a, b]) => `${a}:${b}`).join(' × ');
