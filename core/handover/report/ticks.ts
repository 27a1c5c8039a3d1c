/** Marks of an axis at round numbers. */

/** Step of 1, 2 or 5 times a power of ten that gives about `count` marks over a span > 0. */
function roundStep(span: number, count: number): number {
  const power = 10 ** Math.floor(Math.log10(span / count));
  const ratio = span / count / power;
  return power * (ratio >= 7.07 ? 10 : ratio >= 3.16 ? 5 : ratio >= 1.41 ? 2 : 1);
}

/** Round numbers within low and high, about `count` of them; the one number where they are equal. */
export function linearTicks(low: number, high: number, count: number): number[] {
  if (!(high > low)) return [low];
  const step = roundStep(high - low, count);
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  // a product with a fraction such as 0.1 carries last digits that nobody wants to read
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** 1, 2 and 5 times powers of ten within low and high, both > 0; powers alone over wide ranges. */
export function logTicks(low: number, high: number): number[] {
  const decades = Math.log10(high / low);
  const lead = decades > 4 ? [1] : decades > 2 ? [1, 3] : [1, 2, 5];
  const found: number[] = [];
  for (let power = Math.floor(Math.log10(low)); power <= Math.log10(high); power++) {
    for (const digit of lead) {
      const value = Number((digit * 10 ** power).toPrecision(12));
      if (value >= low * (1 - 1e-9) && value <= high * (1 + 1e-9)) found.push(value);
    }
  }
  return found;
}

/** A range with its ends moved out to round numbers; values all alike get room around them. */
export function roundRange(low: number, high: number, count: number): readonly [number, number] {
  if (!(high > low)) {
    const room = Math.max(Math.abs(low) * 0.1, 1);
    return [low - room, low + room];
  }
  const step = roundStep(high - low, count);
  return [Math.floor(low / step + 1e-9) * step, Math.ceil(high / step - 1e-9) * step];
}
