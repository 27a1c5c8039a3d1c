/** The screw as a sheet for turning and milling: stations, sections, blank, order of cutting. */

import type { Design, FlightedSection } from '../../design/types.ts';
import { flightRadius, type PlacedSection, placeSections, turnsOf } from '../../geometry/profile.ts';
import { tipOutline, tipShape } from '../../geometry/tip.ts';
import { blankDiameter, type CutFigures, cutFigures, overallLength } from '../../make/cutting.ts';
import { formatNumber, fromSi } from '../../units.ts';
import type { HandoverSource } from '../types.ts';
import { controlCells, gearCells, type Lathe, leadText, startAngles, turnsPerInch } from './lathe.ts';
import type { Sheet, SheetList, SheetTable } from './sheet.ts';

const mm = (length: number) => formatNumber(length * 1e3, 6);
const short = (length: number) => formatNumber(length * 1e3, 4);
const degrees = (angle: number) => formatNumber(fromSi(angle, '°'), 4);

/** Lines that say whose sheet it is. */
export function aboutLines({ project, subjects: [{ revision, design }], date }: HandoverSource): string[] {
  return [
    `${project.name}, revision ${revision.id} ${revision.name}. Design ${design.hash.slice(0, 12)}, written ${date}.`,
    ...(project.invented ? ['The machine and its figures are invented.'] : []),
  ];
}

/** Distances from a section's start: its ends and the multiples of `every` (m) of the screw's own z between them. */
function distances({ start, end }: PlacedSection, every: number): number[] {
  const first = Math.floor(start / every + 1e-9) + 1;
  const count = Math.max(0, Math.ceil(end / every - 1e-9) - first);
  return [0, ...Array.from({ length: count }, (_, i) => (first + i) * every - start), end - start];
}

function stationRow(cut: CutFigures): string[] {
  return [
    String(cut.section + 1),
    mm(cut.z),
    mm(cut.rootDiameter),
    short(cut.depth),
    mm(cut.lead),
    formatNumber(25.4e-3 / cut.lead, 4),
    String(cut.starts),
    degrees(cut.helixRoot),
    degrees(cut.helixCrest),
    degrees(cut.flank),
    short(cut.land),
    short(cut.landAcross),
    short(cut.fillet),
    short(cut.widestTool),
  ];
}

const stationColumns = [
  ...['section', 'z (mm)', 'root diameter (mm)', 'depth from crest (mm)', 'lead (mm)', 'turns per inch', 'starts'],
  ...['helix at root (°)', 'helix at crest (°)', 'flank from square (°)', 'land along axis (mm)', 'land across (mm)'],
  ...['largest corner radius of tool (mm)', 'widest tool between flights (mm)'],
];

/** Rows along all flighted sections; a plain one has a row at each end with its diameter. */
function stationTable(design: Design, every: number): SheetTable {
  const rows = placeSections(design.screw).flatMap((placed) => {
    const { section, start, end, index } = placed;
    if (section.kind === 'flighted') {
      return distances(placed, every).map((u) => stationRow(cutFigures(design, placed, section, u)));
    }
    const plain = (z: number, diameter: number) => [String(index + 1), mm(z), mm(diameter), ...Array(11).fill('')];
    return [plain(start, section.rootDiameterStart), plain(end, section.rootDiameterEnd)];
  });
  return {
    kind: 'table',
    id: 'stations',
    heading: 'Stations',
    note: 'z from where the bore begins, along the flow. Across is normal to the flight. Empty: no flight.',
    columns: stationColumns,
    rows,
  };
}

function sectionRow(placed: PlacedSection, section: FlightedSection, lathe: Lathe): string[] {
  const own = [
    String(placed.index + 1),
    mm(placed.start),
    mm(placed.end),
    leadText(section),
    turnsPerInch(section),
    formatNumber(turnsOf(section), 4),
    startAngles(section),
  ];
  if (lathe.controlled) {
    const { feed, change, taper } = controlCells(section);
    return [...own, feed, change, taper];
  }
  const { train, error, share } = gearCells(section, lathe);
  return [...own, train, error, share, controlCells(section).taper];
}

/** How each section is threaded. */
function sectionTable(design: Design, lathe: Lathe): SheetTable {
  const machine = lathe.controlled
    ? ['threading feed at the start (mm a turn)', 'change of lead in the first turn (mm)']
    : ['change gears, driver:driven', 'error of lead (mm a turn)', 'error of lead (%)'];
  const rows = placeSections(design.screw).flatMap((placed) =>
    placed.section.kind === 'flighted' ? [sectionRow(placed, placed.section, lathe)] : [],
  );
  const hand = design.screw.hand === 'left' ? 'Left' : 'Right';
  return {
    kind: 'table',
    id: 'sections',
    heading: 'Flights',
    note: `${hand}-hand flights. ${
      lathe.controlled
        ? 'Feed and change of lead are for constant spindle speed; lead and root change evenly along z. A lead that falls therefore changes less from turn to turn, one that rises more: a control that takes one change for all turns ends at another lead, so program the stations instead.'
        : `Spindle to a leadscrew of ${formatNumber(lathe.leadscrew * 1e3, 5)} mm a turn; wheels at hand: ${lathe.teeth.join(' ')}. Idlers are left out.`
    }`,
    columns: [
      ...['section', 'from z (mm)', 'to z (mm)', 'lead (mm)', 'turns per inch', 'turns', 'angle of starts (°)'],
      ...machine,
      'change of the root’s diameter a turn (mm)',
    ],
    rows,
  };
}

/** Corners of the blank from the shank's end on. */
function blankCorners(design: Design): { z: number; diameter: number; what: string }[] {
  const { shankDiameter, shankLength, shankFillet } = design.screw;
  const crest = 2 * flightRadius(design);
  const shank = { diameter: shankDiameter, what: 'shank' };
  const shoulder = shankFillet ? `shank; fillet R${short(shankFillet)} at this shoulder` : 'shank';
  const corners =
    shankLength > 0
      ? [
          { z: -shankLength, ...shank },
          { z: 0, diameter: shankDiameter, what: shoulder },
        ]
      : [];
  for (const { section, start, end, index } of placeSections(design.screw)) {
    const isFlight = section.kind === 'flighted';
    const what = isFlight ? `crest of section ${index + 1}` : `plain section ${index + 1}`;
    corners.push({ z: start, diameter: isFlight ? crest : section.rootDiameterStart, what });
    corners.push({ z: end, diameter: isFlight ? crest : section.rootDiameterEnd, what });
  }
  const tip = tipOutline(tipShape(design), 6).map(({ z, r }) => ({ z, diameter: 2 * r, what: 'tip' }));
  return [...corners, ...tip];
}

function blankTable(design: Design): SheetTable {
  const corners = blankCorners(design);
  const from = corners[0]?.z ?? 0;
  return {
    kind: 'table',
    id: 'blank',
    heading: 'Turned blank',
    note: `Straight from corner to corner; a ball is given at six chords. Overall ${mm(overallLength(design))} mm, largest diameter ${mm(blankDiameter(design))} mm; bar at least 1 mm over it and 10 mm longer (common practice). Material as described: ${design.screw.steel.name}.`,
    columns: ['from the shank’s end (mm)', 'z (mm)', 'diameter (mm)', 'what'],
    rows: corners.map(({ z, diameter, what }) => [mm(z - from), mm(z), mm(diameter), what]),
  };
}

/** The order of cutting in the words of the trade; the design decides which steps there are. */
function order(design: Design): SheetList {
  const { sections } = design.screw;
  const flights = sections.filter((section): section is FlightedSection => section.kind === 'flighted');
  const tapered = flights.some(({ rootDiameterStart, rootDiameterEnd }) => rootDiameterStart !== rootDiameterEnd);
  const several = flights.some(({ starts }) => starts > 1);
  const varied = flights.some(({ leadStart, leadEnd }) => leadStart !== leadEnd);
  const lines = [
    'Take stress-relieved bar, face it, and centre both ends; keep stock ahead of the tip for the centre.',
    'Rough the outside to the blank’s table with 0.3 to 0.5 mm left over; leave the shank thick for the driver.',
    'Support the middle with a steady or following rest where the finding on slenderness says so.',
    'Rough the channel in light passes from the shallow end, with a tool narrower than the widest listed; finish flanks and root with the listed corner radius.',
    ...(several ? ['Cut all starts to one depth before the next pass, turning the work by the listed angles.'] : []),
    ...(tapered ? ['Set the taper of the root by the listed change a turn; check the root at three stations.'] : []),
    ...(varied ? ['The lead varies: mill with a rotary axis, or thread with a numeric control.'] : []),
    'Finish-turn or grind the crest last, to the crest’s diameter; then break its edges by no more than 0.1 mm.',
    'Polish root and flanks along the flight; turn the shank, then cut off the centre and finish the tip.',
    'Measure root, crest and lead at the stations, and the screw’s run-out between centres.',
  ];
  return { kind: 'list', heading: 'Order of cutting (common practice)', lines };
}

/** What may hurt. */
const cautions: SheetList = {
  kind: 'list',
  heading: 'Cautions (common practice)',
  lines: [
    'Rotating work catches sleeves, gloves, hair and rags: none of them near it. Guards closed; chuck key out before starting.',
    'Long thin bar behind the spindle or between centres whips: keep speed low and support it.',
    'Threading at these leads moves the carriage fast: set a stop, try it without cutting, keep the hand on the feed’s release.',
    'Chips are sharp and hot: a hook, not fingers; eye protection. Never file or polish with emery wound round the hand.',
    'Changing gears: switch off at the main switch. Follow the machine’s manual and the rules of place and shop; they come before this sheet.',
  ],
};

/** The whole sheet; `every` in m. */
export function turningSheet(source: HandoverSource, lathe: Lathe, every: number): Sheet {
  const [{ design }] = source.subjects;
  return {
    title: 'Turning and milling sheet of the screw',
    about: [...aboutLines(source), 'All lengths at the temperature of the shop; tolerances are the drawing’s.'],
    parts: [sectionTable(design, lathe), stationTable(design, every), blankTable(design), order(design), cautions],
  };
}
