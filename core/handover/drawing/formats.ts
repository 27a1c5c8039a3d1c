/** Sizes of sheets and scales. */

import type { Box } from './model.ts';

/** A sheet in landscape, mm. A sizes after ISO 216, the American ones after ANSI/ASME Y14.1 (inches times 25.4). */
export interface SheetFormat {
  readonly id: string;
  readonly label: string;
  readonly width: number;
  readonly height: number;
}

/** Sizes on offer. */
export const sheetFormats: readonly SheetFormat[] = [
  { id: 'A4', label: 'A4', width: 297, height: 210 },
  { id: 'A3', label: 'A3', width: 420, height: 297 },
  { id: 'A2', label: 'A2', width: 594, height: 420 },
  { id: 'ansiA', label: 'ANSI A', width: 279.4, height: 215.9 },
  { id: 'ansiB', label: 'ANSI B', width: 431.8, height: 279.4 },
  { id: 'ansiC', label: 'ANSI C', width: 558.8, height: 431.8 },
];

/** Drawing space: 20 mm at the filing edge and 10 mm elsewhere, ISO 5457. */
export const frameOf = ({ width, height }: SheetFormat): Box => ({
  left: 20,
  bottom: 10,
  right: width - 10,
  top: height - 10,
});

/** Whether lettering is small: sheets up to A4. */
export const isSmallFormat = ({ width }: SheetFormat): boolean => width < 350;

/** Preferred scales of ISO 5455, largest first. */
export const preferredScales: readonly number[] = [50, 20, 10, 5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50];

/** A scale as drawings write it: 2:1, 1:5. */
export const scaleText = (scale: number): string =>
  scale >= 1 ? `${Number(scale.toFixed(3))}:1` : `1:${Number((1 / scale).toFixed(3))}`;

/** A scale read from its text; null for `auto`. */
export function scaleOf(text: string): number | null {
  const [left, right] = text.split(':').map(Number);
  return left && right ? left / right : null;
}

/** Largest preferred scale at which `size` (mm) takes no more than `room` (mm) on paper; the smallest if none does. */
export const scaleFor = (size: number, room: number, most = 50): number =>
  preferredScales.find((scale) => scale <= most && size * scale <= room) ?? 1 / 50;
