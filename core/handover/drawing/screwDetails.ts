/** Section and details of the screw, enlarged. */

import type { Design, FlightedSection } from '../../design/types.ts';
import { type FlightProfile, flightProfileAt } from '../../geometry/flightProfile.ts';
import { transverseOutline } from '../../geometry/outlines.ts';
import { flightRadius, type PlacedSection, placeSections, rootRadiusAt } from '../../geometry/profile.ts';
import {
  angleDimension,
  heightDimension,
  lengthDimension,
  radiusDimension,
  upright,
  uprightRoom,
} from './dimensions.ts';
import { scaleFor, scaleText } from './formats.ts';
import { radiusAtOffset } from './helixView.ts';
import { lettering } from './lettering.ts';
import { roughnessMark, roughnessText } from './marks.ts';
import type { Block, Entity, Point } from './model.ts';
import { type Mark, markRow } from './rows.ts';
import { centreLine } from './screwOutline.ts';
import { outlinePoints } from './screwSide.ts';
import { type DrawingSetting, letterHeight } from './setting.ts';
import { blockOf, boxOf, entityBox, line, path, pt } from './shapes.ts';
import { auxiliary, degreesText, mm, plainSize } from './size.ts';

/** Hatch distance, mm. */
const hatchSpacing = 2;

/** A view with its caption above it, in the middle. */
export function captioned(name: string, entities: readonly Entity[], height: number): Block {
  const box = boxOf(entities.map(entityBox));
  const caption = lettering(name, pt((box.left + box.right) / 2, box.top + 1.2 * height), 1.2 * height, {
    align: 'middle',
  });
  return blockOf(name, [...entities, caption]);
}

/** Section A–A across the screw at `z` (m), seen from the tip. */
export function crossSectionView(setting: DrawingSetting, z: number, room: number): Block {
  const { design } = setting;
  const height = letterHeight(setting);
  const crest = flightRadius(design);
  const scale = scaleFor(2e3 * crest, room, 20);
  const outline = outlinePoints(transverseOutline(design, z), scale);
  const placed = placeSections(design.screw).find(({ start, end }) => z >= start && z <= end) as PlacedSection;
  const root = rootRadiusAt(placed.section, z - placed.start);
  const [r, R] = [root * 1e3 * scale, crest * 1e3 * scale];
  const rootSize = plainSize(mm(2 * root), '⌀', scale);
  return captioned(
    `A–A (${scaleText(scale)})`,
    [
      path('OUTLINE', outline, true),
      { kind: 'hatch', layer: 'HATCH', loops: [outline], spacing: hatchSpacing },
      { kind: 'circle', layer: 'THIN', centre: pt(0, 0), radius: R },
      centreLine(-R, R),
      line('CENTRE', pt(0, -R - 3), pt(0, R + 3)),
      lengthDimension(pt(-r, 0), pt(r, 0), -R - 2.2 * height - 2, rootSize, height),
    ],
    height,
  );
}

/** The flighted section whose root fillet is shown: the one with the largest. */
export function filletSection(design: Design): PlacedSection | null {
  const flighted = placeSections(design.screw).filter(({ section }) => section.kind === 'flighted');
  const fillet = ({ section }: PlacedSection) => (section as FlightedSection).rootFillet;
  return flighted.reduce<PlacedSection | null>(
    (best, each) => (best && fillet(best) >= fillet(each) ? best : each),
    null,
  );
}

/** Surface of one flight in the axial plane from -`half` to `half` (m) of its middle, on paper, y from the floor. */
function flightCurve(profile: FlightProfile, half: number, s: number): Point[] {
  const { halfLand, halfFoot, halfBase, filletHeight, flank } = profile;
  const top = halfFoot - filletHeight * Math.tan(flank);
  const arc = Array.from({ length: 25 }, (_, i) => halfBase + ((top - halfBase) * i) / 24);
  // square flanks: the crest's edge and the fillet's end stand over each other
  const side = [half, ...arc].map((x) => ({ x, r: radiusAtOffset(profile, x + (x === top ? 1e-12 : 0)) }));
  const right = [...side, { x: halfLand, r: profile.flightRadius }].map(({ x, r }) =>
    pt(x * s, (r - profile.floorRadius) * s),
  );
  return [...right.map(({ x, y }) => pt(-x, y)), ...right.reverse()];
}

/** Wavy lower end of a part that is cut off, THIN. */
function tornEdge(left: number, right: number, y: number): Point[] {
  const n = 16;
  return Array.from({ length: n + 1 }, (_, i) => {
    const share = i / n;
    return pt(right + (left - right) * share, y + 0.7 * Math.sin(share * 4 * Math.PI));
  });
}

/** Labels of the flight detail: fillet and flank angle. */
function flightLabels(profile: FlightProfile, setting: DrawingSetting, scale: number): Entity[] {
  const height = letterHeight(setting);
  const s = 1e3 * scale;
  const found: Entity[] = [];
  const h = (profile.flightRadius - profile.floorRadius) * s;
  const { fillet, flank } = profile;
  if (fillet > 1e-6) {
    const centre = pt(-profile.halfBase * s, fillet * s);
    const angle = -(Math.PI / 4) + flank / 2;
    const onArc = pt(centre.x + fillet * s * Math.cos(angle), centre.y + fillet * s * Math.sin(angle));
    const reach = Math.max(6, 0.35 * h);
    const elbow = pt(onArc.x - reach, onArc.y + reach);
    const size = plainSize(mm(fillet), 'R', scale);
    const label = lettering(`R${Number(size.value.toFixed(3))}`, pt(elbow.x - 0.6, elbow.y + 0.8), height, {
      align: 'right',
      layer: 'DIMENSION',
    });
    found.push(radiusDimension(centre, onArc, size, label, [elbow, pt(label.box.left, elbow.y)], height));
  }
  return found;
}

/** Flank angle between the flank and the plane across the axis, label above the view. */
function flankMark(profile: FlightProfile, scale: number, height: number): Mark[] {
  if (profile.flank < 1e-4) return [];
  const s = 1e3 * scale;
  const degrees = (profile.flank * 180) / Math.PI;
  const h = (profile.flightRadius - profile.floorRadius) * s;
  const vertex = pt(profile.halfLand * s, h);
  const radius = 0.7 * h;
  const foot = pt(vertex.x + radius * Math.sin(profile.flank / 2), vertex.y - radius * Math.cos(profile.flank / 2));
  return [
    {
      foot,
      room: uprightRoom(height),
      draw: (x, row, knee) => [
        line('DIMENSION', pt(vertex.x, vertex.y - 0.8), pt(vertex.x, vertex.y - radius - 1.5)),
        angleDimension(
          { vertex, radius, from: 270, to: 270 + degrees },
          { value: degrees, prefix: '', fit: null, scale },
          upright(degreesText(degrees), x, row + 0.8, height),
          [foot, pt(foot.x, knee), pt(x, row)],
          height,
        ),
      ],
    },
  ];
}

/** Detail of the flight's foot in the axial plane: width, depth, fillet, flank, textures. */
export function flightDetail(setting: DrawingSetting, name: string, placed: PlacedSection, room: number): Block {
  const { design } = setting;
  const height = letterHeight(setting);
  const profile = flightProfileAt(placed.section as FlightedSection, 0, flightRadius(design));
  const depth = profile.flightRadius - profile.floorRadius;
  const half = Math.min(profile.pitch / 2, Math.max(2.2 * profile.halfBase, profile.halfBase + 1.2 * depth));
  const scale = Math.min(scaleFor(2e3 * half, room), scaleFor(1e3 * depth, 0.5 * room));
  const s = 1e3 * scale;
  const [x, h] = [half * s, depth * s];
  const curve = flightCurve(profile, half, s);
  const torn = tornEdge(-x, x, -Math.max(5, 0.35 * h));
  const land = profile.halfLand * s;
  const labels = flightLabels(profile, setting, scale);
  const labelsTop = Math.max(0, ...labels.map((label) => entityBox(label).top));
  const high = Math.max(h + 2.2 * height, labelsTop + 0.5 * height);
  const row = high + 2.4 * height + 6;
  const textures: Mark[] = [
    roughnessMark(roughnessText(setting.roughness.channel), pt(0.5 * (profile.halfBase * s + x), 0), height),
    ...flankMark(profile, scale, height),
  ];
  const size = plainSize(mm(2 * profile.halfLand), '', scale);
  return captioned(
    `${name} (${scaleText(scale)}), width along the axis`,
    [
      path('OUTLINE', curve),
      path('THIN', torn),
      { kind: 'hatch', layer: 'HATCH', loops: [[...curve, ...torn]], spacing: hatchSpacing },
      lengthDimension(pt(-land, h), pt(land, h), high, size, height),
      heightDimension(
        { x: x + 2.2 * height + 2, low: pt(x, 0), high: pt(land, h) },
        // crest and root are held, so the depth follows
        auxiliary(plainSize(mm(depth), '', scale)),
        height,
      ),
      ...labels,
      ...markRow(textures, row, row - 5, -x, x),
    ],
    height,
  );
}
