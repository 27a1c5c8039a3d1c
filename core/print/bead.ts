/** What a printed line asks for. */

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

/** Passes needed for a wall of a thickness, at least one: outer lines a full width, the rest at line spacing. */
export function passesPerWall(wall: number, width: number, height: number): number {
  return Math.max(1, Math.round((wall - width) / lineSpacing(width, height)) + 1);
}

/** Steps per mm of a virtual filament: steps per mm³ times its cross-section; diameter in mm (1.12838 makes it 1 mm²). */
export function stepsPerFilamentLength(stepsPerCubicMm: number, filamentDiameterMm: number): number {
  return (stepsPerCubicMm * Math.PI * filamentDiameterMm ** 2) / 4;
}
