/** Steps in which parts are made and controllers are set: common practice of small workshops. */

/** A value on the next whole multiple of a step, without the digits that rounding leaves. */
export const onStep = (value: number, step: number): number =>
  Number((Math.round(value / step) * step).toPrecision(10));

/** The multiple of a step next to a value that lies within bounds; the bound nearer where no multiple does. */
export function onStepWithin(value: number, step: number, low: number, high: number): number {
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  if (first > last) return Math.min(high, Math.max(low, value));
  const at = Math.min(last, Math.max(first, Math.round(value / step)));
  return Number((at * step).toPrecision(10));
}

/** Two digits below the leading one: for numbers that no tool or dial sets. */
function fineStep(value: number): number {
  const size = Math.abs(value);
  return size > 0 ? Number((10 ** (Math.floor(Math.log10(size)) - 2)).toPrecision(1)) : 0.01;
}

/** By the end of a field's name: what a lathe, a mill, a controller or a feeder is asked for. */
const steps: readonly (readonly [RegExp, number])[] = [
  [/radialClearanceMm$/, 0.005],
  [/(Diameter\w*|[fF]illet|flightWidth|wall)Mm$/, 0.05],
  [/(lineWidth|layerHeight|nozzleHeight)Mm$/, 0.05],
  [/Mm$/, 0.1],
  [/screwSpeedRpm$/, 1],
  [/Deg$/, 1],
  [/C$/, 1],
  [/W$/, 5],
  [/speedMmPerS$/, 1],
  [/Ratio$/, 1],
];

/**
 * Step of a field.
 * @param path text of its place
 * @param value as it stands, unit of the file
 */
export function makeableStep(path: string, value: number): number {
  if (/starts$/.test(path)) return 1;
  const found = /^material\./.test(path) ? undefined : steps.find(([ending]) => ending.test(path))?.[1];
  // what is smaller than two steps is made by finer means
  return found !== undefined && (value === 0 || found <= Math.abs(value) / 2) ? found : fineStep(value);
}
