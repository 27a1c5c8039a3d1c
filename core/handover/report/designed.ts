/** The design: side view, and tables of screw, barrel and nozzle. */

import type { Design, NozzleSegment, ScrewSection, Zone } from '../../design/types.ts';
import { formatNumber, formatQuantity, fromSi, type Unit } from '../../units.ts';
import { type Cell, cell, facts, type ReportSection, table } from './model.ts';
import { sidePicture } from './sidePicture.ts';
import { idOf, type ReportSubject, titleOf } from './source.ts';

const num = (si: number, unit: Unit, digits = 4): string => formatNumber(fromSi(si, unit), digits);

/** One number, or both ends where they differ. */
const ends = (start: number, end: number, unit: Unit): string =>
  Math.abs(start - end) < 1e-12 ? num(start, unit) : `${num(start, unit)} to ${num(end, unit)}`;

function sectionRow(section: ScrewSection, i: number, bore: number): (string | Cell)[] {
  const { rootDiameterStart: from, rootDiameterEnd: to } = section;
  const shared = [ends(from, to, 'mm'), ends((bore - from) / 2, (bore - to) / 2, 'mm')];
  const flighted =
    section.kind === 'flighted'
      ? [
          ends(section.leadStart, section.leadEnd, 'mm'),
          ...[...shared, String(section.starts), num(section.flightWidth, 'mm')],
          ...[num(section.flankAngle, '°', 3), num(section.rootFillet, 'mm')],
        ]
      : ['–', ...shared, '–', '–', '–', '–'];
  return [cell(String(i + 1), { strong: true }), section.kind, num(section.length, 'mm'), ...flighted];
}

const screwTable = (subject: ReportSubject) => {
  const { screw, barrel } = subject.design;
  return table(
    idOf(subject, 'screw'),
    'Screw, section by section from the feed end; lengths in mm',
    [
      ...['No.|5', 'Kind|10', 'Length|9|right', 'Lead|14|right', 'Root diameter|15|right', 'Depth to bore|15|right'],
      ...['Starts|8|right', 'Land|8|right', 'Flank (°)|8|right', 'Fillet|8|right'],
    ],
    screw.sections.map((section, i) => sectionRow(section, i, barrel.boreDiameter)),
  );
};

const tipWords = ({ tip }: Design['screw']): string => {
  const shape = tip.kind === 'cone' ? `cone, ${num(tip.includedAngle, '°', 3)}° included` : tip.kind;
  const pin = tip.pinLength > 0 ? `, pin ${num(tip.pinDiameter, 'mm')} mm × ${num(tip.pinLength, 'mm')} mm` : '';
  return `${shape}${pin}`;
};

function machineFacts(subject: ReportSubject) {
  const { screw, barrel, nozzle, hopper, drive } = subject.design;
  const mm = (si: number) => formatQuantity(si, 'mm', 4);
  const fastest = Math.max(...drive.motorCurve.map(({ speed }) => speed));
  const strongest = Math.max(...drive.motorCurve.map(({ torque }) => torque));
  return facts(idOf(subject, 'machine'), 'Screw ends, barrel, hopper and drive', [
    ['Screw: hand and tip', `${screw.hand} hand; ${tipWords(screw)}`],
    ['Screw: shank', `${mm(screw.shankDiameter)} × ${mm(screw.shankLength)}`],
    ['Screw: clearance to the bore, per side', mm(screw.radialClearance)],
    ['Screw: steel', `${screw.steel.name}; yield ${formatQuantity(screw.steel.yieldStress, 'MPa', 3)}`],
    ['Barrel: bore, outside, length', `${mm(barrel.boreDiameter)}, ${mm(barrel.outerDiameter)}, ${mm(barrel.length)}`],
    [
      'Barrel: feed opening',
      `from ${mm(barrel.feedOpening.start)}, ${mm(barrel.feedOpening.length)} long, ${mm(barrel.feedOpening.width)} wide`,
    ],
    [
      'Barrel: pressure limit',
      barrel.pressureLimit === null ? 'not known' : formatQuantity(barrel.pressureLimit, 'MPa', 3),
    ],
    ['Nozzle: outside', mm(nozzle.outerDiameter)],
    [
      'Hopper',
      `outlet ${mm(hopper.outletDiameter)}, wall ${num(hopper.wallHalfAngle, '°', 3)}° from upright, ${mm(hopper.height)} high; ${hopper.agitation === 'none' ? 'no agitation' : hopper.agitation}`,
    ],
    [
      'Drive',
      `motor up to ${formatQuantity(strongest, 'N·m', 3)} and ${formatQuantity(fastest, 'rpm', 3)}, gear ${formatNumber(drive.gearRatio, 4)} : 1 at ${num(drive.gearEfficiency, '%', 3)} % efficiency; ${num(drive.usableTorqueShare, '%', 3)} % of the torque used at most`,
    ],
  ]);
}

function zoneRow(zone: Zone): string[] {
  const place = `${num(zone.start, 'mm')} to ${num(zone.end, 'mm')}`;
  if (zone.kind === 'heated')
    return [zone.name, zone.kind, place, num(zone.setTemperature, '°C'), num(zone.maxPower, 'W')];
  return [zone.name, zone.kind, place, zone.kind === 'cooled' ? num(zone.coolantTemperature, '°C') : '–', '–'];
}

/** Included angle of a piece of the bore, 180° where it is a flat step. */
function angleOf({ length, startDiameter, endDiameter }: NozzleSegment): string {
  if (startDiameter === endDiameter) return '–';
  const angle = length === 0 ? Math.PI : 2 * Math.atan(Math.abs(startDiameter - endDiameter) / 2 / length);
  return formatNumber((angle * 180) / Math.PI, 3);
}

/** The section of one revision. */
export function designSection(subject: ReportSubject): ReportSection {
  const { design, revision } = subject;
  const id = (name: string) => idOf(subject, name);
  const { barrel, nozzle, screw } = design;
  const nozzleZone = ['Nozzle', 'heated', 'all of it', num(nozzle.setTemperature, '°C'), num(nozzle.maxPower, 'W')];
  return {
    id: id('design'),
    title: titleOf(subject, 'The design'),
    blocks: [
      {
        kind: 'figure',
        id: id('side'),
        caption:
          'Side view, true to scale: barrel and nozzle cut open, flights dark where the plane of the drawing cuts them, numbers of the screw’s sections above, set temperatures below.',
        alt: `Side view of revision ${design.revisionId}: a screw of ${screw.sections.length} section${screw.sections.length === 1 ? '' : 's'} in a barrel with a bore of ${formatQuantity(barrel.boreDiameter, 'mm', 4)}, feed opening on the left, nozzle on the right. The tables below hold every dimension.`,
        picture: sidePicture(revision, design),
      },
      screwTable(subject),
      machineFacts(subject),
      table(
        id('zones'),
        'Zones of the barrel, and the nozzle',
        ['Zone|30', 'Kind|16', 'From – to (mm)|22', 'Set (°C)|16|right', 'Watts|16|right'],
        [...barrel.zones.map(zoneRow), nozzleZone],
      ),
      table(
        id('nozzle'),
        'Bore after the barrel, in the direction of flow',
        ['Piece|34', 'Length (mm)|16|right', 'Diameter (mm)|30|right', 'Included angle (°)|20|right'],
        nozzle.segments.map((piece) => [
          ...[piece.name, num(piece.length, 'mm'), ends(piece.startDiameter, piece.endDiameter, 'mm'), angleOf(piece)],
        ]),
      ),
    ],
  };
}
