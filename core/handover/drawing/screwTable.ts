/** Data of the flight, section by section, as a thread's data stand on a sheet. */

import type { FlightedSection } from '../../design/types.ts';
import { flightRadius, placeSections } from '../../geometry/profile.ts';
import type { Block } from './model.ts';
import { type DrawingSetting, sectionName } from './setting.ts';
import { degreesText, mm, numberText } from './size.ts';
import { tableBlocks } from './tables.ts';

/** One value, or both where start and end differ. */
const fromTo = (start: number, end: number): string => {
  const [a, b] = [numberText(mm(start)), numberText(mm(end))];
  return a === b ? a : `${a} / ${b}`;
};

const columns = [
  { head: 'No.' },
  { head: 'Section', words: true },
  { head: 'From, mm' },
  { head: 'To, mm' },
  { head: 'Lead' },
  { head: 'Starts' },
  { head: 'Hand' },
  { head: '(Depth)' },
  { head: 'Root ⌀' },
  { head: 'Width along axis' },
  { head: 'Flank' },
  { head: 'Fillet' },
];

const flightCells = (section: FlightedSection, hand: string, depths: string, roots: string): string[] => [
  fromTo(section.leadStart, section.leadEnd),
  String(section.starts),
  hand,
  depths,
  roots,
  numberText(mm(section.flightWidth)),
  degreesText((section.flankAngle * 180) / Math.PI),
  section.rootFillet === 0 ? 'sharp' : `R${numberText(mm(section.rootFillet))}`,
];

/** Tables of all sections, lengths in mm; `a / b` where a value runs from a to b. Depth is measured from the crest and follows from both diameters; the flight's width is that along the axis. */
export function sectionTables(setting: DrawingSetting, mostRows: number): Block[] {
  const { design } = setting;
  const crest = flightRadius(design);
  const rows = placeSections(design.screw).map(({ section, index, start, end }) => {
    const roots = fromTo(section.rootDiameterStart, section.rootDiameterEnd);
    const depths = `(${fromTo(crest - section.rootDiameterStart / 2, crest - section.rootDiameterEnd / 2)})`;
    const place = [String(index + 1), sectionName(setting, index), numberText(mm(start)), numberText(mm(end))];
    if (section.kind === 'plain') return [...place, 'plain', '', '', depths, roots, '', '', ''];
    return [...place, ...flightCells(section, design.screw.hand, depths, roots)];
  });
  return tableBlocks(
    'Flight data, mm; a / b: at start and end; (depth) follows from crest and root',
    columns,
    rows,
    mostRows,
  );
}
