/** Outlines of a machine as text of SVG paths, in mm: z to the right, radius up (the drawing turns y over). */

import type { AxialOutline, PlaneOutline, Revision, SideShape } from '../../core/index.ts';

type Spot = readonly [number, number];

const number = (value: number): string => String(Math.round(value * 1e4) / 1e4);
const line = (spots: readonly Spot[]): string => `M${spots.map(([z, r]) => `${number(z)} ${number(r)}`).join('L')}`;
const closed = (spots: readonly Spot[]): string => `${line(spots)}Z`;

const spotsOf = ({ z, r }: AxialOutline): Spot[] => Array.from(z, (value, i) => [1000 * value, 1000 * r[i]] as const);
const mirrored = (spots: readonly Spot[]): Spot[] => spots.map(([z, r]) => [z, -r] as const);

const shapes = (list: readonly PlaneOutline[]): string =>
  list.map(({ x, y }) => closed(Array.from(x, (value, i) => [1000 * value, 1000 * y[i]] as const))).join('');

/** Paths of the parts. */
export interface Paths {
  readonly barrel: string;
  readonly nozzle: string;
  readonly shank: string;
  readonly root: string;
  readonly cuts: string;
  readonly crests: string;
  /** bore of barrel and nozzle: the wall that melt touches */
  readonly wall: string;
}

const box = (from: number, to: number, low: number, high: number): string =>
  closed([
    [from, low],
    [to, low],
    [to, high],
    [from, high],
  ]);

/** One side of the barrel's wall, thinned at the heat break. */
function wallOf({ barrel }: Revision, from: number, to: number): readonly Spot[] {
  const [inner, outer] = [barrel.boreDiameterMm / 2, barrel.outerDiameterMm / 2];
  const thin = barrel.heatBreak;
  const [start, end] = thin ? [Math.max(from, thin.startMm), Math.min(to, thin.startMm + thin.lengthMm)] : [0, 0];
  const neck: readonly Spot[] =
    thin && end > start
      ? [
          [start, outer],
          [start, inner + thin.wallMm],
          [end, inner + thin.wallMm],
          [end, outer],
        ]
      : [];
  return [[from, inner], [from, outer], ...neck, [to, outer], [to, inner]];
}

function barrelPath(revision: Revision): string {
  const { lengthMm, feedOpening } = revision.barrel;
  const [open, shut] = [feedOpening.startMm, feedOpening.startMm + feedOpening.lengthMm];
  const upper = [
    ...(open > 0 ? [wallOf(revision, 0, Math.min(open, lengthMm))] : []),
    ...(shut < lengthMm ? [wallOf(revision, Math.max(0, shut), lengthMm)] : []),
  ];
  return [...upper, mirrored(wallOf(revision, 0, lengthMm))].map(closed).join('');
}

/** The nozzle's body, a cylinder round its bore, above and below the axis. */
function nozzlePath({ barrel, nozzle }: Revision, bore: readonly Spot[]): string {
  const inside = bore.filter(([z]) => z >= barrel.lengthMm - 1e-6);
  // the first point is the barrel's own bore, which the body closes from outside
  const outer = nozzle.outerDiameterMm / 2;
  const end = inside.at(-1)?.[0] ?? barrel.lengthMm;
  const half: readonly Spot[] = [[barrel.lengthMm, outer], ...inside, [end, outer]];
  return closed(half) + closed(mirrored(half));
}

/** All paths of a machine. */
export function pathsOf(revision: Revision, shape: SideShape): Paths {
  const root = spotsOf(shape.root);
  const bore = spotsOf(shape.bore);
  const { shank } = revision.screw;
  return {
    barrel: barrelPath(revision),
    nozzle: nozzlePath(revision, bore),
    shank: box(-shank.lengthMm, 0, -shank.diameterMm / 2, shank.diameterMm / 2),
    root: closed([[root[0]?.[0] ?? 0, 0], ...root, ...mirrored(root).reverse()]),
    cuts: shapes(shape.cuts),
    crests: shapes(shape.crests),
    wall: line(bore) + line(mirrored(bore)),
  };
}

/** A piece of the nozzle's bore, or a section of the screw, as a closed shape on both sides of the axis. */
export const chosenPath = (from: number, to: number, fromMm: number, toMm: number): string =>
  closed([
    [from, fromMm / 2],
    [to, toMm / 2],
    [to, -toMm / 2],
    [from, -fromMm / 2],
  ]);
