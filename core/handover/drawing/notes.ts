/** What is written on the sheets beside the views: limits, textures, cautions. */

import { placeSegments } from '../../geometry/bore.ts';
import { flightRadius } from '../../geometry/profile.ts';
import { formatQuantity } from '../../units.ts';
import { angleText, linearTolerance, toleranceName } from './generalTolerance.ts';
import { angularSteps, linearSteps } from './generalToleranceTable.ts';
import { roughnessText } from './marks.ts';
import type { Block } from './model.ts';
import type { DrawingSetting, PartId } from './setting.ts';
import { mm, numberText } from './size.ts';
import { notesBlock, tableBlock } from './tables.ts';

/** Hottest set temperature of barrel and nozzle, K. */
function hottestSet({ design }: DrawingSetting): number {
  const zones = design.barrel.zones.flatMap((zone) => (zone.kind === 'heated' ? [zone.setTemperature] : []));
  return Math.max(design.nozzle.setTemperature, ...zones);
}

function pressureNote({ design }: DrawingSetting, part: 'barrel' | 'nozzle'): string {
  const limit = design.barrel.pressureLimit;
  const told =
    limit === null ? 'No pressure limit is known.' : `Taken to stand up to ${formatQuantity(limit, 'MPa', 3)}.`;
  return `Caution, pressure: the ${part} holds melt, and a blocked nozzle lets pressure rise. ${told} Strength is not proved by this sheet; have it approved and check against local codes.`;
}

const heatNote = (setting: DrawingSetting): string =>
  `Caution, heat: runs at up to ${formatQuantity(hottestSet(setting), '°C', 3)}. Guard against burns; check against local codes.`;

/** What the general tolerances leave open of the orifice, and what that is of the flow. */
function orificeNote({ design, tolerance }: DrawingSetting): string[] {
  const pieces = placeSegments(design).filter(({ start, end }) => end > start);
  const diameter = mm(2 * (pieces[pieces.length - 1]?.endRadius ?? 0));
  if (!(diameter > 0)) return [];
  const limit = linearTolerance(diameter, tolerance);
  if (limit === null) return [`Orifice ⌀${numberText(diameter)}: no general tolerance so small; agree limits.`];
  // a round land at one pressure: d to the power 3 + 1/n, at least 4 for melts that thin (n up to 1)
  const percent = (d: number) => numberText(Math.round(100 * Math.abs((Math.max(d, 0) / diameter) ** 4 - 1)));
  const effect = `−${percent(diameter - limit)} to +${percent(diameter + limit)} %`;
  return [`Orifice ±${numberText(limit)}: ${effect} of flow at one pressure, more for thinning melts.`];
}

/** What the general tolerances of the root leave open of the channel's depth, where it is shallowest. */
function depthNote({ design, tolerance }: DrawingSetting): string[] {
  const crest = flightRadius(design);
  const roots = design.screw.sections.flatMap((section) =>
    section.kind === 'flighted' ? [section.rootDiameterStart, section.rootDiameterEnd] : [],
  );
  const root = Math.max(...roots);
  const limit = linearTolerance(mm(root), tolerance);
  const depth = mm(crest - root / 2);
  if (roots.length === 0 || limit === null || !(depth > 0)) return [];
  const share = numberText(Math.round((50 * limit) / depth));
  return [`Root ±${numberText(limit)}: least depth ${numberText(depth)} ±${share} %, back flow with its cube.`];
}

function partNotes(setting: DrawingSetting, part: PartId): string[] {
  const { design, roughness } = setting;
  const { screw } = design;
  if (part === 'screw') {
    return [
      `${screw.hand === 'right' ? 'Right' : 'Left'}-hand flight; ${numberText(mm(screw.radialClearance))} clearance per side to the bore ⌀${numberText(mm(design.barrel.boreDiameter))}.`,
      `Flight crests and ends: no burrs. Root and flanks ${roughnessText(roughness.channel)}.`,
      ...depthNote(setting),
      `Caution: a cold or blocked screw bears the motor’s full torque. Runs at up to ${formatQuantity(hottestSet(setting), '°C', 3)}; check against local codes.`,
    ];
  }
  const bore = `Bore ${roughnessText(roughness.bore)}.`;
  const open = 'Joints, threads and seats of heaters are not in the design: add them.';
  if (part === 'barrel') return [bore, open, pressureNote(setting, 'barrel'), heatNote(setting)];
  return [
    `Wetted bore ${roughnessText(roughness.bore)}; no burrs at the orifice.`,
    ...orificeNote(setting),
    open,
    pressureNote(setting, 'nozzle'),
    heatNote(setting),
  ];
}

/** The cautions that stand on a part's sheet. */
export const partCautions = (setting: DrawingSetting, part: PartId): string[] =>
  partNotes(setting, part).filter((note) => note.startsWith('Caution'));

/** Notes of a part's sheet. */
export function partNotesBlock(setting: DrawingSetting, part: PartId, width: number): Block {
  const { design, tolerance, roughness } = setting;
  const notes = [
    `Dimensions in mm. General tolerances ${toleranceName(tolerance)}. Surfaces ${roughnessText(roughness.general)} unless shown otherwise.`,
    ...partNotes(setting, part),
    ...(design.invented ? ['Invented example: machine and figures are made up; not for making.'] : []),
  ];
  return notesBlock('Notes', notes, width);
}

const plusMinus = (value: number | null): string => (value === null ? '—' : `±${numberText(value)}`);

/** The limits of the general tolerances for sizes up to `largest` (mm). */
export function toleranceBlock({ tolerance }: DrawingSetting, largest: number): Block {
  const steps = linearSteps.filter(({ above }) => above < largest);
  const columns = [
    { head: 'Length', words: true },
    ...steps.map(({ above, upTo }, i) => ({ head: `${i === 0 ? '' : '>'}${above}–${upTo}` })),
  ];
  const legs = angularSteps.slice(0, Math.max(1, steps.length));
  const range = (above: number, upTo: number) =>
    Number.isFinite(upTo) ? (above === 0 ? `≤${upTo}` : `>${above}–${upTo}`) : `>${above}`;
  const fill = (cells: string[]) => [...cells, ...Array<string>(Math.max(0, columns.length - cells.length)).fill('')];
  return tableBlock(
    `Limits of ${toleranceName(tolerance)}, mm`,
    columns,
    [
      ['Deviation', ...steps.map((step) => plusMinus(step[tolerance]))],
      fill(['Shorter leg', ...legs.map(({ above, upTo }) => range(above, upTo))]),
      fill(['Angle', ...legs.map((step) => (step[tolerance] === null ? '—' : `±${angleText(step[tolerance])}`))]),
    ],
    true,
  );
}
