/** Extents of the laws in closed form. */

/** Extent of d(alpha)/dt = k (1 - alpha)^n from alpha = 0 at reduced time X = integral of k dt. Order 0: X itself. */
export function extentOfOrder(order: number, reducedTime: number): number {
  if (order === 0) return reducedTime;
  if (order === 1) return -Math.expm1(-reducedTime);
  // exp/log form keeps full digits as the order nears 1; below order 1 all is used up at X = 1/(1 - n)
  const base = (order - 1) * reducedTime;
  return base <= -1 ? 1 : -Math.expm1(Math.log1p(base) / (1 - order));
}

/**
 * Extent of the modified Gompertz law, shifted and scaled so that it starts at 0 and ends at 1.
 * @param reducedTime integral of the steepest rate, dimensionless
 * @param lag steepest rate times lag, dimensionless, >= 0
 * Source: Zwietering et al. 1990, y = exp{-exp[e (lag - X) + 1]}; the start value exp[-exp(e lag + 1)] (0.066 without
 * lag, below 3e-5 from lag 0.5 on) is taken out here so that fresh granulate has extent 0.
 */
export function extentWithLag(reducedTime: number, lag: number): number {
  const raw = (x: number) => Math.exp(-Math.exp(Math.E * (lag - x) + 1));
  const start = raw(0);
  return (raw(reducedTime) - start) / (1 - start);
}

/**
 * Number-average molar mass after random scission: 1/M = 1/M0n + X/m.
 * @param initial M0n, kg/mol
 * @param repeatUnitMass m, kg/mol
 * @param extent X, scissions per repeat unit, small against 1
 * @returns kg/mol
 * Source: Kuhn 1930; the common melt-degradation form of it. Number averages of a blend add as 1/M, so the mean extent
 * of an outflow gives the number average of the outflow.
 */
export function molarMassAfter(initial: number, repeatUnitMass: number, extent: number): number {
  return 1 / (1 / initial + extent / repeatUnitMass);
}
