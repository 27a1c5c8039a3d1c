/** Bracketed root finding that says when it did not converge. */

/** What a root search found. */
export interface RootResult {
  readonly x: number;
  readonly converged: boolean;
  readonly evaluations: number;
}

/** How a root search ends. */
export interface RootOptions {
  /** absolute tolerance on x, same unit as x */
  readonly tolerance: number;
  /** most evaluations of the function, >= 3 */
  readonly maxEvaluations?: number;
}

/**
 * Root of a continuous function between two points where its signs differ.
 * @param f function; only values inside [low, high] are asked for
 * @param low, high ends of the bracket, any order
 * @returns the root; where the signs agree, the end with the smaller |f| and converged = false
 * Method: false position with the Anderson-Bjorck weighting (Anderson & Bjorck 1973), bisection when a step stalls.
 */
export function bracketedRoot(f: (x: number) => number, low: number, high: number, options: RootOptions): RootResult {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return { x: a, converged: true, evaluations: 2 };
  if (fb === 0) return { x: b, converged: true, evaluations: 2 };
  if (!(Math.sign(fa) * Math.sign(fb) < 0))
    return { x: Math.abs(fa) < Math.abs(fb) ? a : b, converged: false, evaluations: 2 };
  const most = options.maxEvaluations ?? 80;
  let stalled = 0;
  for (let used = 3; used <= most; used++) {
    const width = Math.abs(b - a);
    const x = stalled >= 3 ? (a + b) / 2 : falsePosition(a, b, fa, fb);
    const fx = f(x);
    if (fx === 0 || width <= options.tolerance) return { x, converged: true, evaluations: used };
    if (Math.sign(fx) !== Math.sign(fb)) {
      a = b;
      fa = fb;
    } else {
      const weight = 1 - fx / fb;
      fa *= weight > 0 ? weight : 0.5;
    }
    b = x;
    fb = fx;
    stalled = Math.abs(b - a) > width / 2 ? stalled + 1 : 0;
    if (Math.abs(b - a) <= options.tolerance) return { x: b, converged: true, evaluations: used };
  }
  return { x: b, converged: false, evaluations: most };
}

function falsePosition(a: number, b: number, fa: number, fb: number): number {
  const x = b - (fb * (b - a)) / (fb - fa);
  const inside = x > Math.min(a, b) && x < Math.max(a, b);
  return inside ? x : (a + b) / 2;
}

/** Where a sign change lies. */
export interface Bracket {
  readonly low: number;
  readonly high: number;
}
