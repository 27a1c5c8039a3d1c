/** What lies under a place of the drawing: a piece of the nozzle, a zone of the barrel, a section of the screw. */

import type { Revision } from '../../core/index.ts';
import type { Entry } from './types.ts';

/** Start and end of an entry along the axis, mm, and its diameters there. */
export interface Extent {
  readonly from: number;
  readonly to: number;
  readonly fromMm: number;
  readonly toMm: number;
}

function stretches(lengths: readonly number[], start: number): readonly (readonly [number, number])[] {
  let end = start;
  return lengths.map((length) => {
    const from = end;
    end += length;
    return [from, end] as const;
  });
}

/** The entry at z, r (mm); null off the machine. */
export function entryAt({ screw, barrel, nozzle }: Revision, z: number, r: number): Entry | null {
  const found = (list: Entry['list'], index: number): Entry | null => (index < 0 ? null : { list, index });
  if (z > barrel.lengthMm) {
    const pieces = stretches(
      nozzle.segments.map(({ lengthMm }) => lengthMm),
      barrel.lengthMm,
    );
    if (Math.abs(r) > nozzle.outerDiameterMm / 2) return null;
    return found(
      'segments',
      pieces.findIndex(([from, to]) => to > from && z >= from && z <= to),
    );
  }
  if (Math.abs(r) > barrel.outerDiameterMm / 2) return null;
  if (Math.abs(r) > barrel.boreDiameterMm / 2) {
    return found(
      'zones',
      barrel.zones.findIndex(({ startMm, endMm }) => z >= startMm && z <= endMm),
    );
  }
  const sections = stretches(
    screw.sections.map(({ lengthMm }) => lengthMm),
    0,
  );
  return found(
    'sections',
    sections.findIndex(([from, to]) => z >= from && z <= to),
  );
}

/** Where an entry lies; null where it is gone. */
export function extentOf({ screw, barrel, nozzle }: Revision, { list, index }: Entry): Extent | null {
  if (list === 'zones') {
    const zone = barrel.zones[index];
    return zone
      ? { from: zone.startMm, to: zone.endMm, fromMm: barrel.outerDiameterMm, toMm: barrel.outerDiameterMm }
      : null;
  }
  if (list === 'segments') {
    const piece = nozzle.segments[index];
    const place = stretches(
      nozzle.segments.map(({ lengthMm }) => lengthMm),
      barrel.lengthMm,
    )[index];
    return piece && place
      ? { from: place[0], to: place[1], fromMm: piece.startDiameterMm, toMm: piece.endDiameterMm }
      : null;
  }
  const place = stretches(
    screw.sections.map(({ lengthMm }) => lengthMm),
    0,
  )[index];
  return place ? { from: place[0], to: place[1], fromMm: barrel.boreDiameterMm, toMm: barrel.boreDiameterMm } : null;
}
