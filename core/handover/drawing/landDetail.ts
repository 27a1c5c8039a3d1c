/** Detail of the nozzle's land and orifice, where they come out small in its section. */

import { heightDimension } from './dimensions.ts';
import { scaleFor, scaleText } from './formats.ts';
import { lettering } from './lettering.ts';
import type { Block, Entity, Point } from './model.ts';
import { pieces } from './nozzleViews.ts';
import { chainWithTotal } from './rows.ts';
import { captioned } from './screwDetails.ts';
import { centreLine } from './screwOutline.ts';
import { type DrawingSetting, letterHeight } from './setting.ts';
import { line, path, pt } from './shapes.ts';
import { auxiliary, mm, plainSize } from './size.ts';

/** An orifice narrower than this on paper gets a detail, mm. */
const smallOrifice = 5;

/** The bore's last stretch: from a little before the last piece to the orifice; z from where it begins, m. */
interface Land {
  readonly bore: readonly { readonly z: number; readonly r: number }[];
  /** where the last piece begins, and the orifice */
  readonly from: number;
  readonly to: number;
  readonly orifice: number;
  /** of the shown wall */
  readonly wall: number;
}

function landOf(setting: DrawingSetting): Land | null {
  const list = pieces(setting);
  const last = list[list.length - 1];
  if (!last) return null;
  const before = list[list.length - 2];
  const length = last.end - last.start;
  const shown = before ? Math.min(before.end - before.start, Math.max(0.7 * length, 1.5 * last.startRadius)) : 0;
  const share = before ? 1 - shown / (before.end - before.start) : 0;
  const ahead = before
    ? [
        { z: 0, r: before.startRadius + (before.endRadius - before.startRadius) * share },
        { z: shown, r: before.endRadius },
      ]
    : [];
  const bore = [...ahead, { z: shown, r: last.startRadius }, { z: shown + length, r: last.endRadius }];
  const widest = Math.max(...bore.map(({ r }) => r));
  const wall = Math.min(setting.design.nozzle.outerDiameter / 2, widest + 0.6 * (shown + length));
  return { bore, from: shown, to: shown + length, orifice: last.endRadius, wall };
}

/** Lining and lines of the wall on one side of the axis. */
function wallEntities({ bore, to, wall }: Land, s: number, sign: 1 | -1): Entity[] {
  const points = bore.map(({ z, r }) => pt(z * s, sign * r * s));
  const first = points[0] as Point;
  const [right, top] = [to * s, sign * wall * s];
  const torn = Array.from({ length: 17 }, (_, i) =>
    pt(right * (1 - i / 16), top + 0.6 * Math.sin((i / 16) * 4 * Math.PI)),
  );
  const side = Array.from({ length: 9 }, (_, i) =>
    pt(0.6 * Math.sin((i / 8) * 2 * Math.PI), top + (first.y - top) * (i / 8)),
  );
  return [
    { kind: 'hatch', layer: 'HATCH', loops: [[...points, ...torn, ...side]], spacing: 2.5 },
    path('OUTLINE', [...points, pt(right, top)]),
    path('THIN', [...torn, ...side.slice(1)]),
  ];
}

/** The detail as a block, its sizes in brackets because the section holds them; none where the orifice is large enough in the main section, drawn at `mainScale`. */
export function landDetail(setting: DrawingSetting, mainScale: number, room: number): Block[] {
  const land = landOf(setting);
  if (!land || 2e3 * land.orifice * mainScale >= smallOrifice) return [];
  const height = letterHeight(setting);
  const scale = Math.min(scaleFor(1e3 * land.to, room), scaleFor(2e3 * land.wall, room));
  if (scale <= mainScale) return [];
  const s = 1e3 * scale;
  const [right, r, wall] = [land.to * s, land.orifice * s, land.wall * s];
  const measure = { x: right + 2.2 * height + 2, low: pt(right, -r), high: pt(right, r) };
  const link = {
    a: pt(land.from * s, -wall),
    b: pt(right, -wall),
    size: auxiliary(plainSize(mm(land.to - land.from), '', scale)),
  };
  const edges = land.bore
    .slice(1)
    .map(({ z, r: radius }) => line('OUTLINE', pt(z * s, -radius * s), pt(z * s, radius * s)));
  const entities = [
    ...wallEntities(land, s, 1),
    ...wallEntities(land, s, -1),
    ...edges,
    centreLine(0, right),
    heightDimension(measure, auxiliary(plainSize(mm(2 * land.orifice), '⌀', scale)), height),
    ...chainWithTotal([link], -wall - 1.9 * height - 2, height, link.size),
  ];
  return [captioned(`Detail D (${scaleText(scale)})`, entities, height)];
}

/** Circle round the land in the main section, with its letter at the right below; nothing where there is no detail. */
export function landCircle(setting: DrawingSetting, scale: number): Entity[] {
  const land = landOf(setting);
  if (!land || 2e3 * land.orifice * scale >= smallOrifice) return [];
  const height = letterHeight(setting);
  const s = 1e3 * scale;
  const list = pieces(setting);
  const end = (list[list.length - 1]?.end ?? 0) * s;
  const length = (land.to - land.from) * s;
  const radius = Math.max(0.62 * length, 1.6 * land.orifice * s, 2.5);
  const centre = pt(end - length / 2, 0);
  const foot = pt(centre.x + radius * Math.SQRT1_2, -radius * Math.SQRT1_2);
  const out = pt(end + 2.2 * height + 6, foot.y - 6);
  return [
    { kind: 'circle', layer: 'THIN', centre, radius },
    line('DIMENSION', foot, out),
    lettering('D', pt(out.x + 0.6, out.y - 0.7 * height), 1.4 * height),
  ];
}
