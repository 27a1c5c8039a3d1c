/** Detail of the screw's tip, enlarged. */

import { tipOutline, tipShape } from '../../geometry/tip.ts';
import { angleDimension, heightDimension, upright, uprightRoom } from './dimensions.ts';
import { scaleFor, scaleText } from './formats.ts';
import { note, through } from './marks.ts';
import type { Block, Entity } from './model.ts';
import { type ChainLink, chainWithTotal, type Mark, markRow } from './rows.ts';
import { captioned } from './screwDetails.ts';
import { centreLine } from './screwOutline.ts';
import { type DrawingSetting, letterHeight } from './setting.ts';
import { line, path, pt } from './shapes.ts';
import { auxiliary, degreesText, mm, plainSize } from './size.ts';

/** Marks of the tip: angle of a cone, radius of a hemisphere. */
function tipMarks(setting: DrawingSetting, scale: number): Mark[] {
  const { design } = setting;
  const height = letterHeight(setting);
  const tip = tipShape(design);
  const s = 1e3 * scale;
  const middle = tip.start + tip.bodyLength * 0.45;
  if (tip.bodyLength <= 0) return [];
  if (tip.kind === 'hemisphere') {
    const foot = pt(middle * s, Math.sqrt(tip.bodyRadius ** 2 - (middle - tip.start) ** 2) * s);
    return [note(`SR${Number(mm(tip.bodyRadius).toFixed(3))}`, foot, height)];
  }
  const half = design.screw.tip.includedAngle / 2;
  const vertex = pt((tip.start + tip.bodyRadius / Math.tan(half)) * s, 0);
  const radius = (vertex.x - middle * s) / Math.cos(half);
  const foot = pt(middle * s, radius * Math.sin(half));
  const degrees = (half * 360) / Math.PI;
  const draw: Mark['draw'] = (x, row, knee) => [
    angleDimension(
      { vertex, radius, from: 180 - degrees / 2, to: 180 + degrees / 2 },
      { value: degrees, prefix: '', fit: null, scale },
      upright(degreesText(degrees), x, row + 0.8, height),
      [foot, pt(foot.x, knee), pt(x, row)],
      height,
    ),
  ];
  return [{ foot, room: uprightRoom(height), draw }];
}

/** Lines of the tip and a little of the root before it, which begins at `from` (mm on paper). */
function tipLines(setting: DrawingSetting, s: number, from: number): Entity[] {
  const tip = tipShape(setting.design);
  const [r, pin] = [tip.bodyRadius * s, tip.pinRadius * s];
  const outline = tipOutline(tip, 48).map((p) => pt(p.z * s, p.r * s));
  const side = (sign: 1 | -1) => path('OUTLINE', [pt(from, sign * r), ...outline.map(({ x, y }) => pt(x, sign * y))]);
  const joint = (tip.start + tip.bodyLength) * s;
  return [
    side(1),
    side(-1),
    line('OUTLINE', pt(tip.start * s, -r), pt(tip.start * s, r)),
    ...(pin > 0 && tip.bodyLength > 0 ? [line('OUTLINE', pt(joint, -pin), pt(joint, pin))] : []),
    centreLine(from, tip.end * s),
  ];
}

/** Lengths of body and pin; the body's follows from its angle or radius and the diameters. */
function tipChain(setting: DrawingSetting, scale: number, height: number): Entity[] {
  const tip = tipShape(setting.design);
  const s = 1e3 * scale;
  const r = tip.bodyRadius * s;
  const joint = tip.start + tip.bodyLength;
  const stretches = [
    { from: tip.start, to: joint, follows: true },
    { from: joint, to: tip.end, follows: false },
  ].filter(({ from, to }) => to - from > 1e-9);
  const links = stretches.map(({ from, to, follows }): ChainLink => {
    const size = plainSize(mm(to - from), '', scale);
    return { a: pt(from * s, -r), b: pt(to * s, -r), size: follows ? auxiliary(size) : size };
  });
  return chainWithTotal(links, -r - 1.9 * height - 2, height, plainSize(mm(tip.end - tip.start), '', scale));
}

/** Detail of the tip with its last piece of root. */
export function tipDetail(setting: DrawingSetting, name: string, room: number): Block {
  const { design } = setting;
  const height = letterHeight(setting);
  const tip = tipShape(design);
  const behind = Math.min(0.5 * tip.bodyRadius, design.screw.sections[design.screw.sections.length - 1]?.length ?? 0);
  const length = tip.end - tip.start + behind;
  const scale = Math.min(scaleFor(1e3 * length, room, 20), scaleFor(2e3 * tip.bodyRadius, room, 20));
  const s = 1e3 * scale;
  const [r, pin] = [tip.bodyRadius * s, tip.pinRadius * s];
  const from = (tip.start - behind) * s;
  const joint = tip.start + tip.bodyLength;
  const pinAt = (joint + 0.6 * (tip.end - joint)) * s;
  const measure = { x: pinAt, low: pt(pinAt, -pin), high: pt(pinAt, pin) };
  const pinSize = plainSize(mm(2 * tip.pinRadius), '⌀', scale);
  const marks = [...tipMarks(setting, scale), ...(pin > 0 ? [through(measure, pinSize, height)] : [])];
  const root = { x: from - 2.2 * height - 2, low: pt(from, -r), high: pt(from, r) };
  return captioned(
    `${name} (${scaleText(scale)})`,
    [
      ...tipLines(setting, s, from),
      heightDimension(root, auxiliary(plainSize(mm(2 * tip.bodyRadius), '⌀', scale)), height),
      ...tipChain(setting, scale, height),
      ...markRow(marks, r + 9, r + 3, from, tip.end * s + 4),
    ],
    height,
  );
}
