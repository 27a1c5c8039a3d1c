/** What a printed line asks for. */

import type { LineState } from './types.ts';

/**
 * Cross-section of a laid line with rounded sides.
 * @param width, height m, width >= height
 * @returns m²; (w - h) h + pi h²/4; where the line is narrower than high, the rectangle w h x pi/4 (an ellipse)
 */
export function lineArea(width: number, height: number): number {
  if (width < height) return (Math.PI / 4) * width * height;
  return (width - height) * height + (Math.PI / 4) * height * height;
}

/**
 * Spacing of neighbouring lines that leaves no gap and no overlap in volume.
 * @returns m; w - h (1 - pi/4)
 */
export function lineSpacing(width: number, height: number): number {
  return Math.max(0.05 * width, width - height * (1 - Math.PI / 4));
}

/** Section of a line taken as a rectangle, m²: an upper bound that some calculators use. */
export const rectangleArea = (width: number, height: number): number => width * height;

/**
 * Passes for a wall of a thickness, at least one: outer lines a full width, the rest at line spacing, to the nearest
 * count; close to half-way to the fewer, which are laid wider. m.
 */
export function passesPerWall(wall: number, width: number, height: number): number {
  const exact = (wall - width) / lineSpacing(width, height) + 1;
  return Math.max(1, Math.ceil(exact - halfWay));
}

/** Just above one half: nearest count, near ties to the fewer. */
const halfWay = 0.55;

/**
 * Line width with which a count of passes fills a wall exactly.
 * @returns m; (t + (n - 1) h (1 - pi/4))/n, from neighbours at their spacing
 */
export const fittedWidth = (wall: number, passes: number, height: number): number =>
  (wall + (passes - 1) * height * (1 - Math.PI / 4)) / passes;

/** Outline of the section of a laid line, m: two flats and two half circles; an ellipse's (Ramanujan 1914) where narrow. */
export function linePerimeter(width: number, height: number): number {
  if (width >= height) return 2 * (width - height) + Math.PI * height;
  const h = ((width - height) / (width + height)) ** 2;
  return (Math.PI / 2) * (width + height) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
}

/** Line width over bore that lays well: common practice, and open slicing documentation. */
export const widthBand = { from: 1.05, to: 1.5 } as const;
/** Layer height over bore that lays well, from the same places. */
export const heightBand = { from: 0.2, to: 0.8 } as const;

const tolerance = 1e-9;

/**
 * Section, passes and proportions of a line.
 * @param wall, width, height, bore of the orifice, m, all > 0
 */
export function lineState(wall: number, width: number, height: number, bore: number): LineState {
  const passes = passesPerWall(wall, width, height);
  const widthOverBore = width / bore;
  const heightOverBore = height / bore;
  const below = (value: number, least: number) => value < least * (1 - tolerance);
  return {
    area: lineArea(width, height),
    rectangleArea: rectangleArea(width, height),
    spacing: lineSpacing(width, height),
    passes,
    fittedWidth: fittedWidth(wall, passes, height),
    widthOverBore,
    heightOverBore,
    width: below(widthOverBore, widthBand.from) ? 'narrow' : below(widthBand.to, widthOverBore) ? 'wide' : 'good',
    height: below(heightOverBore, heightBand.from) ? 'thin' : below(heightBand.to, heightOverBore) ? 'high' : 'good',
  };
}

/**
 * Steps per length of a virtual filament: steps per volume times its cross-section.
 * Any one unit of length: mm with mm³ (1.12838 mm makes 1 mm²), or m with m³.
 */
export function stepsPerFilamentLength(stepsPerVolume: number, filamentDiameter: number): number {
  return (stepsPerVolume * Math.PI * filamentDiameter ** 2) / 4;
}
