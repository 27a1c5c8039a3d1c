/** Marks that stand in the row above a view, and signs drawn by strokes of our own. */

import { throughDimension, type UprightMeasure, upright, uprightRoom } from './dimensions.ts';
import { lettering, textWidth } from './lettering.ts';
import type { Entity, PathEntity, Point } from './model.ts';
import type { Mark } from './rows.ts';
import { dot, line, path, pt } from './shapes.ts';
import type { Size } from './size.ts';

const leader = (foot: Point, x: number, row: number, knee: number): Entity[] => [
  path('DIMENSION', [foot, pt(foot.x, knee), pt(x, row)]),
  dot('DIMENSION', foot, 0.45),
];

/** Room that a number in a circle needs along its row, mm. */
export const balloonRoom = (height: number): number => 2.3 * height + 1.2;

/** Number of a section in a circle. */
export function balloon(text: string, foot: Point, height: number): Mark {
  const radius = 1.15 * height;
  return {
    foot,
    room: balloonRoom(height),
    draw: (x, row, knee) => [
      ...leader(foot, x, row, knee),
      { kind: 'circle', layer: 'THIN', centre: pt(x, row + radius), radius },
      lettering(text, pt(x, row + radius - height / 2), height, { align: 'middle' }),
    ],
  };
}

/** A word or size with a leader, upright. */
export const note = (text: string, foot: Point, height: number): Mark => ({
  foot,
  room: uprightRoom(height),
  draw: (x, row, knee) => [...leader(foot, x, row, knee), upright(text, x, row + 0.8, height)],
});

/** Letter of a detail or a cutting plane, without a leader's dot. */
export const letter = (text: string, foot: Point, height: number): Mark => ({
  foot,
  room: textWidth(text, height) + 2,
  draw: (x, row, knee) => [
    path('DIMENSION', [foot, pt(foot.x, knee), pt(x, row)]),
    lettering(text, pt(x, row + 1), height, { align: 'middle' }),
  ],
});

/** A measure through the part with its size in the row. */
export const through = (measure: UprightMeasure, size: Size, height: number): Mark => ({
  foot: pt(measure.x, measure.high.y),
  room: uprightRoom(height),
  draw: (x, row, knee) => [throughDimension(measure, size, height, { x, y: row, knee })],
});

/**
 * Texture symbol for a surface from which material is removed, after ISO 1302 and ISO 21920-1: two legs at 60° and the
 * bar that closes them, with the value under the long arm. `at` is its point on the surface.
 */
export function roughnessSymbol(at: Point, value: string, height: number): Entity[] {
  const low = 1.4 * height;
  const high = 3 * height;
  const slope = Math.tan(Math.PI / 6);
  const arm = textWidth(value, height) + 0.8;
  const shape: PathEntity = path('DIMENSION', [
    pt(at.x - low * slope, at.y + low),
    at,
    pt(at.x + high * slope, at.y + high),
    pt(at.x + high * slope + arm, at.y + high),
  ]);
  const bar = line('DIMENSION', pt(at.x - low * slope, at.y + low), pt(at.x + low * slope, at.y + low));
  const text = lettering(value, pt(at.x + high * slope + 0.3, at.y + high - 1.35 * height), height);
  return [shape, bar, text];
}

/** Width of a texture symbol to the left and right of its point, mm. */
const roughnessRoom = (value: string, height: number): { left: number; right: number } => ({
  left: 1.4 * height * Math.tan(Math.PI / 6),
  right: 3 * height * Math.tan(Math.PI / 6) + textWidth(value, height) + 0.8,
});

/** A texture symbol at the end of a leader. */
export function roughnessMark(value: string, foot: Point, height: number): Mark {
  const { left, right } = roughnessRoom(value, height);
  return {
    foot,
    room: left + right + 3,
    draw: (x, row, knee) => {
      const at = x - (right - left) / 2;
      return [...leader(foot, at, row, knee), ...roughnessSymbol(pt(at, row), value, height)];
    },
  };
}

/** How a roughness is written: `Ra 0.8`. */
export const roughnessText = (micrometres: number): string => `Ra ${Number(micrometres.toFixed(3))}`;

/**
 * Sign of the projection after ISO 5456-2: a blunt cone with its small end to the left, and the circles of its view from
 * there, to the right in first angle and to the left in third. `at` is the middle of the sign.
 */
export function projectionSign(at: Point, height: number, first: boolean): Entity[] {
  const big = height / 2;
  const less = big / 2;
  const shift = first ? height * 0.75 : -height * 0.75;
  const circles = pt(at.x + shift, at.y);
  const left = at.x - shift - height / 2;
  const right = left + height;
  return [
    path('THIN', [pt(left, at.y - less), pt(right, at.y - big), pt(right, at.y + big), pt(left, at.y + less)], true),
    { kind: 'circle', layer: 'THIN', centre: circles, radius: big },
    { kind: 'circle', layer: 'THIN', centre: circles, radius: less },
    line('CENTRE', pt(left - 1, at.y), pt(right + 1, at.y)),
    line('CENTRE', pt(circles.x - big - 1, at.y), pt(circles.x + big + 1, at.y)),
    line('CENTRE', pt(circles.x, at.y - big - 1), pt(circles.x, at.y + big + 1)),
  ];
}
