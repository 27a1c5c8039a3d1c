/** A square on a picture, moved by pointer or keys. */

import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { benchText } from '../strings/bench.ts';
import { type Picture, type Square, within } from './picture.ts';

const words = benchText.photo;

/** Which of the two. */
export type SquareName = 'white' | 'strand';

const moves: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Shares of the picture that a key moves by, and with Shift. */
const [short, long] = [0.004, 0.04];
const grow: Readonly<Record<string, number>> = { '+': 1.15, '=': 1.15, '-': 1 / 1.15 };

/** The square that a key asks for, or null. */
function keyed(square: Square, key: string, shift: boolean): Square | null {
  const move = moves[key];
  const by = shift ? long : short;
  if (move) return { ...square, x: square.x + by * move[0], y: square.y + by * move[1] };
  const times = grow[key];
  return times === undefined ? null : { ...square, side: square.side * times };
}

const percent = (share: number): number => Math.round(1000 * share) / 10;

/** One square over the picture. */
export function PhotoSquare(props: {
  readonly name: SquareName;
  readonly square: Square;
  readonly picture: Picture;
  place(square: Square): void;
}) {
  const { name, square, picture, place } = props;
  const held = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const onKey = (event: KeyboardEvent) => {
    const next = keyed(square, event.key, event.shiftKey);
    if (!next) return;
    event.preventDefault();
    place(within(next, picture));
  };
  const shareAt = (event: PointerEvent<HTMLElement>) => {
    const box = event.currentTarget.parentElement?.getBoundingClientRect();
    return box ? { x: (event.clientX - box.left) / box.width, y: (event.clientY - box.top) / box.height } : null;
  };
  const onDown = (event: PointerEvent<HTMLElement>) => {
    const at = shareAt(event);
    if (!at) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    held.current = { x: at.x - square.x, y: at.y - square.y };
  };
  const onMove = (event: PointerEvent<HTMLElement>) => {
    const at = held.current && shareAt(event);
    if (at && held.current) place(within({ ...square, x: at.x - held.current.x, y: at.y - held.current.y }, picture));
  };
  const tall = (square.side * picture.width) / picture.height;
  const style = {
    left: `${100 * (square.x - square.side / 2)}%`,
    top: `${100 * (square.y - tall / 2)}%`,
    width: `${100 * square.side}%`,
    height: `${100 * tall}%`,
  };
  return (
    <button
      type="button"
      className={`photo-square ${name}`}
      style={style}
      aria-label={words.place(words.squares[name], percent(square.x), percent(square.y), percent(square.side))}
      onKeyDown={onKey}
      onPointerDown={onDown}
      onPointerMove={onMove}
      onPointerUp={() => {
        held.current = null;
      }}
    >
      <span>{words.letters[name]}</span>
    </button>
  );
}
