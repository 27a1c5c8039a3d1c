/** What is written at a dimension. */

import { isoLimits, type LimitClass } from '../../make/isoLimits.ts';

/** A size to be written and measured. */
export interface Size {
  /** mm, or degrees for an angle */
  readonly value: number;
  readonly prefix: '' | '⌀' | 'R' | 'SR';
  /** limits with the class they come from */
  readonly fit: { readonly name: string; readonly upper: number; readonly lower: number } | null;
  /** paper mm per mm of the part; null in a broken view */
  readonly scale: number | null;
  /** follows from other dimensions: in brackets and rounded, not to be held */
  readonly auxiliary?: boolean;
}

/** Millimetres of a length in m, to a hundredth of a micrometre, so that sizes read as they were typed. */
export const mm = (metres: number): number => Number((metres * 1e3).toFixed(5));

/** To some decimals, halves upwards as written: 21.485 is not a binary number and would round down. */
const rounded = (value: number, decimals: number): number =>
  Number(`${Math.round(Number(`${value.toFixed(5)}e${decimals}`))}e-${decimals}`) + 0;

/** A number as drawings write it: at most three decimals, no padding. */
export const numberText = (value: number): string => String(rounded(value, 3));

/** The same size as an auxiliary dimension. */
export const auxiliary = (size: Size): Size => ({ ...size, auxiliary: true });

/** A plain size without limits of its own. */
export const plainSize = (value: number, prefix: Size['prefix'], scale: number | null): Size => ({
  value,
  prefix,
  fit: null,
  scale,
});

/** A diameter held to an ISO 286 class; plain where the class is 'none' or the table ends. Diameter m. */
export function fittedSize(diameter: number, name: string, scale: number | null): Size {
  const limits = name === 'none' ? null : isoLimits(diameter, name as LimitClass);
  const fit = limits && { name, upper: limits.upper * 1e3, lower: limits.lower * 1e3 };
  return { ...plainSize(mm(diameter), '⌀', scale), fit };
}

const micron = (millimetres: number): string => {
  const value = Math.round(millimetres * 1e3);
  return value === 0 ? '0' : `${value > 0 ? '+' : '−'}${Math.abs(value)}`;
};

/** Text of a length, diameter or radius, e.g. `⌀10 g6 (−5/−14 µm)`. */
export function sizeText({ value, prefix, fit, auxiliary: isAuxiliary }: Size): string {
  if (isAuxiliary) return `(${prefix}${rounded(value, 2)})`;
  const limits = fit ? ` ${fit.name} (${micron(fit.upper)}/${micron(fit.lower)} µm)` : '';
  return `${prefix}${numberText(value)}${limits}`;
}

/** Text of an angle in degrees, to a tenth: general tolerances are wider, and lengths rounded as typed make more digits. */
export const degreesText = (degrees: number): string => `${Number(degrees.toFixed(1))}°`;
