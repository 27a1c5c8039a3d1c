/** Pictures as plain shapes in points (1/72 in), y downwards: what both writers draw, line for line. */

import { capShare, textWidth } from '../drawing/lettering.ts';

/** A colour by what it is for, so that a dark screen can choose its own; or the colour itself where it is a datum. */
export type Tone =
  | 'ink'
  | 'soft'
  | 'grid'
  | 'steel'
  | 'paper'
  | 'curve1'
  | 'curve2'
  | 'curve3'
  | 'curve4'
  | 'curve5'
  | 'curve6'
  | `#${string}`;

/** Tones on white paper. Curves: colours that stay apart for colour-blind readers (Okabe and Ito 2008). */
export const paperTones: Readonly<Record<Exclude<Tone, `#${string}`>, string>> = {
  ink: '#1a1a1a',
  soft: '#555555',
  grid: '#d5d5d5',
  steel: '#b9c0c7',
  paper: '#ffffff',
  curve1: '#0072b2',
  curve2: '#d55e00',
  curve3: '#007a58',
  curve4: '#a3457c',
  curve5: '#8a6100',
  curve6: '#1a1a1a',
};

/** The curves' tones in order. */
export const curveTones = ['curve1', 'curve2', 'curve3', 'curve4', 'curve5', 'curve6'] as const;

/** A point. */
export type Spot = readonly [x: number, y: number];

/** One or several lines, or areas where closed; areas of one path are filled even-odd. */
export interface PathShape {
  readonly kind: 'path';
  readonly pieces: readonly (readonly Spot[])[];
  readonly closed: boolean;
  readonly fill: Tone | null;
  readonly stroke: Tone | null;
  readonly width: number;
  readonly dash: readonly number[];
}

/** A line of text on its base line. */
export interface TextShape {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** reads upwards */
  readonly turned: boolean;
  readonly tone: Tone;
}

/** A picture. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly (PathShape | TextShape)[];
}

/** Width of a picture that takes the whole line of an A4 page. */
export const fullWidth = 483;

/** Width of a text in the pictures' letters. */
export const widthOf = (text: string, size: number): number => textWidth(text, size * capShare);

/** A drawn line. */
export const line = (points: readonly Spot[], stroke: Tone, width = 0.8, dash: readonly number[] = []): PathShape => ({
  kind: 'path',
  pieces: [points],
  closed: false,
  fill: null,
  stroke,
  width,
  dash,
});

/** Areas of one colour. */
export const areas = (
  pieces: readonly (readonly Spot[])[],
  fill: Tone | null,
  stroke: Tone | null = null,
): PathShape => ({
  kind: 'path',
  pieces,
  closed: true,
  fill,
  stroke,
  width: 0.6,
  dash: [],
});

/** A word. */
export const word = (
  x: number,
  y: number,
  text: string,
  {
    size = 8,
    anchor = 'start',
    turned = false,
    tone = 'ink',
  }: Partial<Omit<TextShape, 'kind' | 'x' | 'y' | 'text'>> = {},
): TextShape => ({ kind: 'text', x, y, text, size, anchor, turned, tone });

/** An axis-parallel rectangle. */
export const box = (x: number, y: number, width: number, height: number): Spot[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];
