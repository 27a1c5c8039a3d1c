/** The blocks of each part: main view at the scale that fits, then details, tables and notes. */

import { flightProfileAt } from '../../geometry/flightProfile.ts';
import { flightRadius, placeSections } from '../../geometry/profile.ts';
import { tipShape } from '../../geometry/tip.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { Axis } from './axis.ts';
import { barrelEdges, barrelPlan, barrelSection, zoneTables } from './barrelViews.ts';
import { preferredScales, scaleText } from './formats.ts';
import { landCircle, landDetail } from './landDetail.ts';
import { fits, heightOf, longView, type SheetRoom, widthOf } from './longView.ts';
import type { Block, Entity } from './model.ts';
import { partNotesBlock, toleranceBlock } from './notes.ts';
import { nozzleLength, nozzleSection, pieceTables } from './nozzleViews.ts';
import { captioned, crossSectionView, filletSection, flightDetail } from './screwDetails.ts';
import {
  type DetailPlace,
  firstFlighted,
  screwEnd,
  screwEnds,
  screwSide,
  uprightPlace,
  widestRadius,
} from './screwSide.ts';
import { sectionTables } from './screwTable.ts';
import { type DrawingSetting, letterHeight, type PartId } from './setting.ts';
import { boxOf, entityBox, moved } from './shapes.ts';
import { mm, numberText } from './size.ts';
import { rowsIn } from './tables.ts';
import { tipDetail } from './tipDetail.ts';

/** Blocks of a part and the scale of its main view. */
export interface PartBlocks {
  readonly part: PartId;
  readonly blocks: readonly Block[];
  readonly scale: number;
  /** m that the main view leaves out */
  readonly leftOut: number;
}

/** The chosen scale leaves no room. */
const noRoom = (setting: DrawingSetting, part: PartId) =>
  fail({
    path: ['scale'],
    code: 'drawing-no-room',
    message: `The ${part} does not fit on ${setting.format.label} at this scale.`,
    value: setting.scale === null ? 'automatic' : scaleText(setting.scale),
    allowed: 'a scale at which the main view fits inside the frame',
    remedy: 'Choose the automatic scale, a smaller scale or a larger sheet.',
  });

const brokenText = (axis: Axis): string =>
  axis.leftOut > 0 ? `, broken: ${numberText(Number(mm(axis.leftOut).toFixed(1)))} mm left out` : '';

/** Where along the first flighted section A–A is taken: clear of its number and of the detail before it. */
const cutShare = 0.8;

/** Places on the screw that details enlarge. */
function detailPlaces({ design }: DrawingSetting, axis: Axis): DetailPlace[] {
  const places: DetailPlace[] = [];
  const tip = tipShape(design);
  if (tip.end > tip.start) {
    const radius = 1.15 * Math.hypot((tip.end - tip.start) / 2, tip.bodyRadius);
    places.push({ letter: 'B', z: (tip.start + tip.end) / 2, y: 0, radius });
  }
  const placed = filletSection(design);
  if (placed && placed.section.kind === 'flighted') {
    const profile = flightProfileAt(placed.section, 0, flightRadius(design));
    const depth = profile.flightRadius - profile.floorRadius;
    const radius = Math.max(1.25 * Math.hypot(profile.halfBase, depth / 2), 3 / (1e3 * axis.scale));
    places.push({
      letter: 'C',
      z: uprightPlace(design, axis, placed, 0.25),
      y: profile.floorRadius + depth / 2,
      radius,
    });
  }
  return places;
}

/** Side view with the end view at its side, as the projection has it. */
function screwMain(setting: DrawingSetting, axis: Axis): Block {
  const height = letterHeight(setting);
  const flighted = firstFlighted(setting.design);
  const cut = flighted ? uprightPlace(setting.design, axis, flighted, cutShare) : null;
  const side = screwSide(setting, axis, cut, detailPlaces(setting, axis));
  const end = screwEnd(setting, axis.scale);
  const [a, b] = [boxOf(side.map(entityBox)), boxOf(end.map(entityBox))];
  // seen from the right: on the left in first angle, on the right in third
  const shift = setting.firstAngle ? a.left - 6 - b.right : a.right + 6 - b.left;
  const both: Entity[] = [...side, ...end.map((entity) => moved(entity, shift, 0))];
  return captioned(`Side view (${scaleText(axis.scale)})${brokenText(axis)}`, both, height);
}

function screwBlocks(setting: DrawingSetting, room: SheetRoom): Result<PartBlocks> {
  const { design } = setting;
  const height = letterHeight(setting);
  const ends = screwEnds(design);
  const widest = widestRadius(design);
  const stretches = placeSections(design.screw).map(({ start, end }) => ({ from: start, to: end }));
  const view = longView(
    {
      ...ends,
      diameter: 2 * flightRadius(design),
      share: 0.36,
      stretches: [...stretches, { from: ends.from, to: 0 }],
      beside: (scale) => 2e3 * widest * scale + 14 + 2 * (4.2 * height + 4),
      draw: (axis) => screwMain(setting, axis),
    },
    room,
    setting.scale,
  );
  if (!view) return noRoom(setting, 'screw');
  const detail = Math.min(0.34 * heightOf(room), 76);
  const flighted = firstFlighted(design);
  const tip = tipShape(design);
  const fillet = filletSection(design);
  const blocks = [
    view.block,
    ...(flighted ? [crossSectionView(setting, uprightPlace(design, view.axis, flighted, cutShare), detail)] : []),
    ...(tip.end > tip.start ? [tipDetail(setting, 'Detail B', detail)] : []),
    ...(fillet ? [flightDetail(setting, 'Detail C', fillet, detail)] : []),
    ...sectionTables(setting, rowsIn(heightOf(room))),
    partNotesBlock(setting, 'screw', notesWidth(room)),
    toleranceBlock(setting, mm(ends.to - ends.from)),
  ];
  return ok({ part: 'screw', blocks, scale: view.axis.scale, leftOut: view.axis.leftOut });
}

/** Width of the notes: what stands free beside the title block, within reason. */
const notesWidth = ({ aside }: SheetRoom): number => Math.min(Math.max(aside.right - aside.left - 1, 70), 110);

/** Half section and the view from above, over or under it as the projection has it. */
function barrelMain(setting: DrawingSetting, axis: Axis): Block {
  const section = barrelSection(setting, axis);
  const plan = barrelPlan(setting, axis);
  const [a, b] = [boxOf(section.map(entityBox)), boxOf(plan.map(entityBox))];
  const shift = setting.firstAngle ? a.bottom - 8 - b.top : a.top + 8 - b.bottom;
  const both = [...section, ...plan.map((entity) => moved(entity, 0, shift))];
  const name = `Half section and view from above (${scaleText(axis.scale)})${brokenText(axis)}`;
  return captioned(name, both, letterHeight(setting));
}

/** Half section and view from above together where that costs no scale, else one after the other. */
function barrelViews(setting: DrawingSetting, room: SheetRoom): { axis: Axis; blocks: Block[] } | null {
  const { barrel } = setting.design;
  const height = letterHeight(setting);
  const edges = barrelEdges(setting);
  const view = (draw: (axis: Axis) => Block) =>
    longView(
      {
        from: 0,
        to: barrel.length,
        diameter: barrel.outerDiameter,
        share: 0.2,
        stretches: edges.slice(1).map((to, i) => ({ from: edges[i] as number, to })),
        beside: () => 2 * (4.2 * height + 6),
        draw,
      },
      room,
      setting.scale,
    );
  const both = view((axis) => barrelMain(setting, axis));
  const name = (what: string, axis: Axis) => `${what} (${scaleText(axis.scale)})${brokenText(axis)}`;
  const alone = view((axis) => captioned(name('Half section', axis), barrelSection(setting, axis), height));
  if (both && (!alone || both.axis.scale >= alone.axis.scale)) return { axis: both.axis, blocks: [both.block] };
  if (!alone) return null;
  const { axis, block } = alone;
  return { axis, blocks: [block, captioned(name('View from above', axis), barrelPlan(setting, axis), height)] };
}

function barrelBlocks(setting: DrawingSetting, room: SheetRoom): Result<PartBlocks> {
  const views = barrelViews(setting, room);
  if (!views) return noRoom(setting, 'barrel');
  const blocks = [
    ...views.blocks,
    ...zoneTables(setting, rowsIn(heightOf(room))),
    partNotesBlock(setting, 'barrel', notesWidth(room)),
    toleranceBlock(setting, mm(setting.design.barrel.length)),
  ];
  return ok({ part: 'barrel', blocks, scale: views.axis.scale, leftOut: views.axis.leftOut });
}

function nozzleBlocks(setting: DrawingSetting, room: SheetRoom): Result<PartBlocks> {
  const { outerDiameter } = setting.design.nozzle;
  const height = letterHeight(setting);
  const largest = Math.max(nozzleLength(setting), outerDiameter);
  const scales = setting.scale === null ? preferredScales.filter((s) => s <= 20) : [setting.scale];
  for (const scale of scales) {
    if (largest * 1e3 * scale > widthOf(room)) continue;
    const block = captioned(
      `Section (${scaleText(scale)})`,
      [...nozzleSection(setting, scale), ...landCircle(setting, scale)],
      height,
    );
    if (!fits(block, room)) continue;
    const blocks = [
      block,
      ...landDetail(setting, scale, Math.min(0.34 * heightOf(room), 60)),
      ...pieceTables(setting, rowsIn(heightOf(room))),
      partNotesBlock(setting, 'nozzle', notesWidth(room)),
      toleranceBlock(setting, mm(largest)),
    ];
    return ok({ part: 'nozzle', blocks, scale, leftOut: 0 });
  }
  return noRoom(setting, 'nozzle');
}

/** Blocks of a part; an issue where a chosen scale leaves no room. */
export function partBlocks(setting: DrawingSetting, part: PartId, room: SheetRoom): Result<PartBlocks> {
  if (part === 'screw') return screwBlocks(setting, room);
  return part === 'barrel' ? barrelBlocks(setting, room) : nozzleBlocks(setting, room);
}
