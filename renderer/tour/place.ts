/** Where the tour's card stands beside what it speaks of. Pixels of the window. */

/** A rectangle. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const gap = 12;

const between = (value: number, least: number, most: number): number => Math.max(least, Math.min(value, most));

/** The part of `box` that can be seen. */
function seen(box: Box, room: { readonly width: number; readonly height: number }): Box {
  const left = between(box.left, 0, room.width);
  const top = between(box.top, 0, room.height);
  const width = between(box.left + box.width, left, room.width) - left;
  const height = between(box.top + box.height, top, room.height) - top;
  return { left, top, width, height };
}

/**
 * Left and top of the card: to the right of the target, else to its left, else below, else above, else over its middle;
 * always wholly inside the window where it fits there at all.
 */
export function placeCard(
  target: Box | null,
  card: { readonly width: number; readonly height: number },
  room: { readonly width: number; readonly height: number },
): { readonly left: number; readonly top: number } {
  const inside = (left: number, top: number) => ({
    left: between(left, gap, Math.max(gap, room.width - card.width - gap)),
    top: between(top, gap, Math.max(gap, room.height - card.height - gap)),
  });
  if (!target) return inside((room.width - card.width) / 2, (room.height - card.height) / 2);
  const box = seen(target, room);
  const right = box.left + box.width;
  const bottom = box.top + box.height;
  const middle = box.top + (box.height - card.height) / 2;
  if (right + gap + card.width + gap <= room.width) return inside(right + gap, middle);
  if (box.left - gap - card.width >= gap) return inside(box.left - gap - card.width, middle);
  const centre = box.left + (box.width - card.width) / 2;
  if (bottom + gap + card.height + gap <= room.height) return inside(centre, bottom + gap);
  if (box.top - gap - card.height >= gap) return inside(centre, box.top - gap - card.height);
  return inside(centre, middle);
}
