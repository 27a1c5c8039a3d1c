/** Adding, splitting and merging pieces of the nozzle and zones of the barrel, as pure functions. */

import type { Project, Revision } from '../../core/index.ts';
import { type Path, valueAt, withValue } from '../store/path.ts';
import { drawingText } from '../strings/drawing.ts';
import { clean } from './types.ts';

type Piece = Revision['nozzle']['segments'][number];
type Zone = Revision['barrel']['zones'][number];

/** Kinds of piece that can be added. */
export type PieceKind = 'land' | 'cone' | 'ledge' | 'gap';

/** Shapes of new pieces, mm, until they are pulled: start values of ours. */
const fresh = { landMm: 2, coneMm: 2, gapMm: 0.5, gapDepthMm: 1, narrowing: 0.7 } as const;

const middle = (a: number, b: number): number => clean((a + b) / 2);

function changed<T>(list: Path, change: (items: T[]) => void) {
  return (project: Project): Project => {
    const items = valueAt(project, list);
    if (!Array.isArray(items)) return project;
    const copy = [...items];
    change(copy);
    return withValue(project, list, copy);
  };
}

/** Replaces entry `index` by two that make the same shape together. */
function splitEntry<T>(list: Path, index: number, halves: (whole: T) => [T, T]) {
  return changed<T>(list, (items) => {
    const whole = items[index];
    if (whole !== undefined) items.splice(index, 1, ...halves(whole));
  });
}

/** Replaces entry `index` and the next by one from the near end of the first to the far end of the second. */
function mergeEntry<T>(list: Path, index: number, one: (first: T, second: T) => T) {
  return changed<T>(list, (items) => {
    const [first, second] = [items[index], items[index + 1]];
    if (first !== undefined && second !== undefined) items.splice(index, 2, one(first, second));
  });
}

/** Cuts a piece of the nozzle into two halves of the same shape. */
export const splitPiece = (list: Path, index: number) =>
  splitEntry<Piece>(list, index, (whole) => {
    const lengthMm = middle(whole.lengthMm, 0);
    const cut = middle(whole.startDiameterMm, whole.endDiameterMm);
    return [
      { ...whole, lengthMm, endDiameterMm: cut },
      { ...whole, lengthMm: clean(whole.lengthMm - lengthMm), startDiameterMm: cut },
    ];
  });

/** Makes one straight piece of two. */
export const mergePieces = (list: Path, index: number) =>
  mergeEntry<Piece>(list, index, (first, second) => ({
    ...first,
    lengthMm: clean(first.lengthMm + second.lengthMm),
    endDiameterMm: second.endDiameterMm,
  }));

/** A new piece that goes on where `before` ends; what follows is `after`. */
function freshPiece(kind: PieceKind, before: Piece, after: Piece | undefined): Piece {
  const name = drawingText.entry.names[kind];
  const from = before.endDiameterMm;
  const narrow = clean(Math.max(0.05, Number((from * fresh.narrowing).toFixed(1))));
  const to = after && after.startDiameterMm !== from ? after.startDiameterMm : narrow;
  switch (kind) {
    case 'land':
      return { name, lengthMm: fresh.landMm, startDiameterMm: from, endDiameterMm: from };
    case 'cone':
      return { name, lengthMm: fresh.coneMm, startDiameterMm: from, endDiameterMm: to };
    case 'ledge':
      return { name, lengthMm: 0, startDiameterMm: from, endDiameterMm: to };
    case 'gap': {
      const wide = clean(from + 2 * fresh.gapDepthMm);
      return { name, lengthMm: fresh.gapMm, startDiameterMm: wide, endDiameterMm: wide };
    }
  }
}

/** Adds a piece after another: a straight land, a cone, a ledge (a step of no length), or a gap wider than the bore. */
export const addPiece = (list: Path, index: number, kind: PieceKind) =>
  changed<Piece>(list, (pieces) => {
    const before = pieces[index];
    if (before) pieces.splice(index + 1, 0, freshPiece(kind, before, pieces[index + 1]));
  });

/** Largest heater power that the file takes for a zone, W. */
const mostPowerW = 20000;

/**
 * Cuts a zone in the middle; both halves keep its temperature, and a heater's power is shared by their lengths, so that
 * the machine's total stays.
 */
export const splitZone = (list: Path, index: number) =>
  splitEntry<Zone>(list, index, (whole) => {
    const cut = Math.round(middle(whole.startMm, whole.endMm) * 10) / 10;
    const halves: [Zone, Zone] = [
      { ...whole, endMm: cut },
      { ...whole, startMm: cut },
    ];
    const [first, second] = halves;
    const length = whole.endMm - whole.startMm;
    if (whole.kind === 'heated' && first.kind === 'heated' && second.kind === 'heated' && length > 0) {
      first.maxPowerW = clean((whole.maxPowerW * (cut - whole.startMm)) / length);
      second.maxPowerW = clean(whole.maxPowerW - first.maxPowerW);
    }
    return halves;
  });

/** Why a zone cannot be merged with the one after it in the list, or null where it can. */
export function zoneMergeFault(zones: readonly Zone[], index: number): 'last' | 'kind' | 'power' | null {
  const [first, second] = [zones[index], zones[index + 1]];
  if (!first || !second) return 'last';
  if (first.kind !== second.kind) return 'kind';
  return powerOf(first) + powerOf(second) > mostPowerW ? 'power' : null;
}

/** Power of a zone's heater, W; none where it has no heater. */
const powerOf = (zone: Zone): number => (zone.kind === 'heated' ? zone.maxPowerW : 0);

/** Makes one zone of two of a kind; it keeps the first one's name and temperature and has the power of both. */
export const mergeZones = (list: Path, index: number) =>
  changed<Zone>(list, (zones) => {
    const [first, second] = [zones[index], zones[index + 1]];
    if (!first || !second || zoneMergeFault(zones, index) !== null) return;
    const stretch = { startMm: Math.min(first.startMm, second.startMm), endMm: Math.max(first.endMm, second.endMm) };
    const maxPowerW = clean(powerOf(first) + powerOf(second));
    const one = first.kind === 'heated' ? { ...first, ...stretch, maxPowerW } : { ...first, ...stretch };
    zones.splice(index, 2, one);
  });
