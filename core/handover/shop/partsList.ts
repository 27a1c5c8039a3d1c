/** What to make and what to buy, indented as assembled. Figures are the design's; what it does not say is not described. */

import type { Design } from '../../design/types.ts';
import { boreEnd, placeSegments } from '../../geometry/bore.ts';
import { flightRadius } from '../../geometry/profile.ts';
import { overallLength } from '../../make/cutting.ts';
import { formatQuantity } from '../../units.ts';
import type { HandoverSource, HandoverSubject } from '../types.ts';
import { driveParts } from './driveParts.ts';
import { type Part, unknown } from './part.ts';
import type { Sheet } from './sheet.ts';
import { aboutLines } from './turning.ts';

const mm = (length: number) => formatQuantity(length, 'mm', 5);
const celsius = (kelvin: number) => formatQuantity(kelvin, '°C', 4);
const watts = (power: number) => formatQuantity(power, 'W', 4);
const wiring = 'kind, voltage and leads not described';

/** A heater with its sensor, for the stretch of one duty. */
function heating(place: string, power: number, temperature: number, size: string): Part[] {
  return [
    { name: `heater, ${place}`, quantity: 1, source: 'buy', figures: [`${watts(power)} in all`, size, wiring] },
    {
      name: `temperature sensor, ${place}`,
      quantity: 1,
      source: 'buy',
      figures: [`must read ${celsius(temperature)}`, `kind and fitting ${unknown}`],
    },
  ];
}

function screwPart(design: Design): Part {
  const { screw, barrel } = design;
  return {
    name: 'screw',
    quantity: 1,
    source: 'make',
    figures: [
      `crest ${mm(2 * flightRadius(design))} in a bore of ${mm(barrel.boreDiameter)}`,
      `overall ${mm(overallLength(design))}`,
      `shank ${mm(screw.shankDiameter)} by ${mm(screw.shankLength)}`,
      `${screw.hand}-hand, ${screw.sections.length} sections`,
      `${screw.steel.name}, yield ${formatQuantity(screw.steel.yieldStress, 'MPa', 3)}`,
    ],
  };
}

function zoneParts({ barrel }: Design): Part[] {
  return barrel.zones.flatMap((zone) => {
    const place = `zone ${zone.name}`;
    const size = `${mm(zone.end - zone.start)} along a barrel of ${mm(barrel.outerDiameter)}`;
    if (zone.kind === 'heated') return heating(place, zone.maxPower, zone.setTemperature, size);
    if (zone.kind === 'insulated') {
      return [
        { name: `insulation, ${place}`, quantity: 1, source: 'buy' as const, figures: [size, `kind ${unknown}`] },
      ];
    }
    const coolant = `coolant at ${celsius(zone.coolantTemperature)}`;
    return [
      { name: `cooler, ${place}`, quantity: 1, source: 'buy' as const, figures: [size, coolant, `kind ${unknown}`] },
    ];
  });
}

function barrelPart(design: Design): Part {
  const { barrel } = design;
  const { feedOpening, heatBreak, pressureLimit } = barrel;
  const limit = pressureLimit === null ? unknown : formatQuantity(pressureLimit, 'MPa', 3);
  const breakPart: Part = heatBreak
    ? {
        name: 'heat break',
        quantity: 1,
        source: 'make',
        figures: [
          `${mm(heatBreak.length)} long from z ${mm(heatBreak.start)}`,
          `wall ${mm(heatBreak.wall)}`,
          `conducts ${formatQuantity(heatBreak.conductivity, 'W/(m·K)', 3)}`,
        ],
      }
    : { name: 'heat break', quantity: null, source: 'make', figures: [unknown] };
  return {
    name: 'barrel',
    quantity: 1,
    source: 'make',
    figures: [
      `bore ${mm(barrel.boreDiameter)}, outside ${mm(barrel.outerDiameter)}, ${mm(barrel.length)} long`,
      `feed opening ${mm(feedOpening.length)} by ${mm(feedOpening.width)} from z ${mm(feedOpening.start)}`,
      `pressure limit ${limit}`,
      `metal ${unknown}, conducts ${formatQuantity(barrel.conductivity, 'W/(m·K)', 3)}`,
    ],
    parts: [breakPart, ...zoneParts(design)],
  };
}

function nozzlePart(design: Design): Part {
  const { nozzle, barrel } = design;
  const segments = placeSegments(design);
  const orifice = 2 * (segments[segments.length - 1]?.endRadius ?? 0);
  const length = boreEnd(design) - barrel.length;
  const size = `on ${mm(nozzle.outerDiameter)} by ${mm(length)}`;
  return {
    name: 'nozzle',
    quantity: 1,
    source: 'make',
    figures: [
      `orifice ${mm(orifice)}, outside ${mm(nozzle.outerDiameter)}, ${mm(length)} long`,
      `${segments.length} segments`,
      `thread and metal ${unknown}`,
    ],
    parts: heating('nozzle', nozzle.maxPower, nozzle.setTemperature, size),
  };
}

function hopperPart({ hopper }: Design): Part {
  const { agitation } = hopper;
  const mover: Part[] =
    agitation === 'none'
      ? []
      : [{ name: agitation, quantity: 1, source: 'buy', figures: [`size and drive ${unknown}`] }];
  return {
    name: 'hopper',
    quantity: 1,
    source: 'make',
    figures: [
      `outlet ${mm(hopper.outletDiameter)}, ${mm(hopper.height)} high`,
      `wall ${formatQuantity(hopper.wallHalfAngle, '°', 3)} from upright`,
      `sheet and finish ${unknown}`,
    ],
    parts: mover,
  };
}

/** Everything, as one tree. */
export function partsTree(subject: HandoverSubject): Part {
  const { design, revision } = subject;
  const heated = design.barrel.zones.filter(({ kind }) => kind === 'heated').length + 1;
  const control: Part = {
    name: 'temperature control',
    quantity: heated,
    source: 'buy',
    figures: ['one channel for each heater and sensor', `kind and over-temperature cut-out ${unknown}`],
  };
  const fasteners: Part = {
    name: 'fasteners, seals, couplings, wiring, guards',
    quantity: null,
    source: 'by the maker',
    figures: [unknown],
  };
  return {
    name: `extruder, revision ${revision.id} ${revision.name}`,
    quantity: 1,
    source: 'make',
    figures: [],
    parts: [
      screwPart(design),
      barrelPart(design),
      nozzlePart(design),
      hopperPart(design),
      ...driveParts(subject),
      control,
      fasteners,
    ],
  };
}

/** Rows of a part and what is below it: number, indented name, quantity, source, figures. */
export function partRows(part: Part, number = '1', level = 0): string[][] {
  const quantity = part.quantity === null ? unknown : String(part.quantity);
  const name = `${'  '.repeat(level)}${part.name}`;
  const own = [number, String(level), name, quantity, part.source, part.figures.join('; ')];
  return [own, ...(part.parts ?? []).flatMap((each, i) => partRows(each, `${number}.${i + 1}`, level + 1))];
}

/** The list as a sheet. */
export function partsSheet(source: HandoverSource): Sheet {
  const [subject] = source.subjects;
  const rows = partRows(partsTree(subject));
  return {
    title: 'Parts list',
    about: [...aboutLines(source), 'Only what the design describes; the rest says so and is for the maker to choose.'],
    parts: [
      {
        kind: 'table',
        id: 'parts',
        heading: 'What to make and what to buy',
        note: null,
        columns: ['item', 'level', 'name', 'quantity', 'make or buy', 'key figures'],
        rows,
      },
    ],
  };
}
