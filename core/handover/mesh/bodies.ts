/** From a design and the options to checked, closed bodies ready to be written. Lengths mm. */

import type { Design } from '../../design/types.ts';
import { fail, ok, type Result } from '../../result.ts';
import { formatNumber } from '../../units.ts';
import { choiceOf, flagOf, numberOf } from '../check.ts';
import type { HandoverProgress, HandoverTools, HandoverValues } from '../types.ts';
import { notchesOf } from './notches.ts';
import { exactVolume, largestRadius, meshWithin, type PartId, partIds } from './part.ts';
import type { Solid, SolidKit } from './solids.ts';
import { isCutAt, partRange, splitBody } from './split.ts';
import { thinPlaces } from './thinPlaces.ts';
import { changedCaution, printCautions, splitCaution } from './words.ts';

/** A body ready to be written. */
export interface Body {
  readonly name: string;
  readonly part: PartId;
  /** xyz triples, mm */
  readonly positions: Float32Array;
  readonly indices: Uint32Array;
}

/** Bodies and what is worth knowing of them. */
export interface Bodies {
  readonly bodies: readonly Body[];
  readonly facts: readonly { readonly label: string; readonly text: string }[];
  readonly cautions: readonly string[];
}

/** Volume of a mesh may differ from the exact one by this share before it is held for a fault. */
const volumeShare = 1e-4;

/** Handles that a sound body of each part has: none; bore and feed opening; bore. */
const handles: Readonly<Record<PartId, readonly number[]>> = { screw: [0], barrel: [1, 2], nozzle: [1] };

const unsound = (part: PartId, what: string, value: string): Result<never> =>
  fail({
    path: [part],
    code: 'mesh-unsound',
    message: `The mesh of the ${part} is not sound: ${what}.`,
    value,
    remedy: 'Allow another deviation; if it stays, it is a fault of the program.',
  });

/** A part's mesh as a checked solid. */
interface Meshed {
  readonly part: PartId;
  readonly solid: Solid;
  readonly facts: Bodies['facts'];
}

const cubicMm = (volume: number): string => `${formatNumber(volume, 6)} mm³`;

function meshed(kit: SolidKit, design: Design, part: PartId, tolerance: number): Result<Meshed> {
  const { mesh, deviation } = meshWithin(design, part, tolerance / 1000);
  if (mesh.indices.length === 0) return unsound(part, 'it has no length', '0 mm');
  if (1000 * deviation > tolerance) {
    const allowed = `${formatNumber(1010 * deviation, 2)} mm or more on a radius of ${formatNumber(1000 * largestRadius(design, part), 4)} mm`;
    const message = `The ${part} cannot be meshed so finely.`;
    return fail({
      path: ['options', 'tolerance'],
      code: 'mesh-fineness',
      message,
      value: `${tolerance} mm`,
      allowed,
      remedy: 'Allow more.',
    });
  }
  const vertProperties = mesh.positions.map((value) => 1000 * value);
  const solid = kit.Manifold.ofMesh(new kit.Mesh({ numProp: 3, vertProperties, triVerts: mesh.indices }));
  const [status, genus, volume] = [solid.status(), solid.genus(), solid.volume()];
  const exact = 1e9 * exactVolume(design, part);
  if (status !== 'NoError') return unsound(part, 'its triangles do not close', status);
  if (!handles[part].includes(genus)) return unsound(part, 'it has another number of holes', `${genus}`);
  const off = volume / exact - 1;
  if (!(Math.abs(off) < volumeShare)) return unsound(part, 'its volume is off', cubicMm(volume));
  const facts = [
    { label: `${part}: triangles`, text: `${solid.numTri()}` },
    { label: `${part}: deviation`, text: `at most ${formatNumber(1000 * deviation, 3)} mm from the true surface` },
    {
      label: `${part}: volume`,
      text: `${cubicMm(volume)}; by formula ${cubicMm(exact)}, off by ${formatNumber(100 * off, 2)} %`,
    },
    { label: `${part}: surface`, text: `closed, ${genus} ${genus === 1 ? 'hole' : 'holes'} through it` },
  ];
  return ok({ part, solid, facts });
}

/** Which parts the options name. */
function partsOf(values: HandoverValues): readonly PartId[] {
  const chosen = choiceOf<PartId | 'all'>(values, 'part');
  return chosen === 'all' ? partIds : [chosen];
}

/** A flat along the shank, cut off a screw. */
function withFlat(kit: SolidKit, design: Design, solid: Solid, depth: number): Result<Solid> {
  const radius = 500 * design.screw.shankDiameter;
  const length = 1000 * design.screw.shankLength;
  const most = length > 0 ? radius / 2 : 0;
  if (depth > most) {
    const message = length > 0 ? 'The flat would leave too little of the shank.' : 'The screw has no shank for a flat.';
    return fail({
      path: ['options', 'flat'],
      code: 'handover-option',
      message,
      value: `${depth} mm`,
      allowed: `0 to ${formatNumber(most, 3)} mm on this screw`,
      remedy: 'Take less.',
    });
  }
  const block = kit.Manifold.cube([4 * radius, 2 * radius, length], false);
  return ok(solid.subtract(block.translate([-2 * radius, -3 * radius + depth, -length])));
}

/** Features that the options ask for, on one part. */
function featured(
  kit: SolidKit,
  design: Design,
  { part, solid, facts }: Meshed,
  values: HandoverValues,
): Result<Meshed> {
  if (part !== 'screw') return ok({ part, solid, facts });
  const notches = notchesOf(kit, design, values);
  if (!notches.ok) return notches;
  const cut = notches.value.rings.reduce((body, ring) => body.subtract(ring), solid);
  const flat = numberOf(values, 'flat');
  const done = flat > 0 ? withFlat(kit, design, cut, flat) : ok(cut);
  if (!done.ok) return done;
  const removed = solid.volume() - done.value.volume();
  const more = [...notches.value.facts];
  if (flat > 0) more.push({ label: 'Flat on the shank', text: `${flat} mm deep` });
  if (more.length > 0) more.push({ label: 'screw: taken off', text: cubicMm(removed) });
  return ok({ part, solid: done.value, facts: [...facts, ...more] });
}

/** Lays a body so that its lowest point is at height 0. */
const onBed = (solid: Solid): Solid => solid.translate([0, 0, -solid.boundingBox().min[2]]);

function bodyOf(name: string, part: PartId, solid: Solid): Result<Body> {
  if (solid.isEmpty() || solid.status() !== 'NoError')
    return unsound(part, 'nothing sound is left of it', solid.status());
  const { numProp, vertProperties, triVerts } = solid.getMesh();
  const positions = new Float32Array((vertProperties.length / numProp) * 3);
  for (let i = 0; i < positions.length; i++) positions[i] = vertProperties[Math.floor(i / 3) * numProp + (i % 3)];
  return ok({ name, part, positions, indices: triVerts });
}

/** One part's bodies, finished. */
function finished(kit: SolidKit, design: Design, { part, solid }: Meshed, values: HandoverValues): Result<Body[]> {
  const lies = flagOf(values, 'onBed');
  const whole = choiceOf(values, 'split') === 'none';
  const pieces = whole ? ok([{ name: part as string, solid }]) : splitBody(kit, design, part, solid, values, lies);
  if (!pieces.ok) return pieces;
  const bodies = pieces.value.map((piece) => bodyOf(piece.name, part, lies ? onBed(piece.solid) : piece.solid));
  const issues = bodies.flatMap((body) => (body.ok ? [] : body.issues));
  return issues.length > 0 ? fail(...issues) : ok(bodies.flatMap((body) => (body.ok ? [body.value] : [])));
}

function missedCut(design: Design, parts: readonly PartId[], values: HandoverValues): Result<null> {
  const at = numberOf(values, 'splitAt');
  if (choiceOf(values, 'split') !== 'across' || parts.some((part) => isCutAt(design, part, at))) return ok(null);
  const allowed = parts.map((part) =>
    partRange(design, part)
      .map((z) => formatNumber(z, 4))
      .join(' to '),
  );
  const message = 'The cut meets none of the bodies.';
  return fail({
    path: ['options', 'splitAt'],
    code: 'handover-option',
    message,
    value: `${at} mm`,
    allowed: `${allowed.join(' or ')} mm`,
    remedy: 'Choose a place inside one.',
  });
}

function cautionsOf(design: Design, parts: readonly PartId[], values: HandoverValues): string[] {
  const least = numberOf(values, 'minWall');
  const thin = least > 0 ? parts.flatMap((part) => thinPlaces(design, part, least / 1000)) : [];
  const isSplit = choiceOf(values, 'split') !== 'none';
  const notched = numberOf(values, 'runout') > 0 || numberOf(values, 'reliefWidth') > 0 || numberOf(values, 'flat') > 0;
  const isPrinted = isSplit || flagOf(values, 'onBed') || least > 0 || numberOf(values, 'flat') > 0;
  return [
    ...(thin.length > 0 ? [`Thinner than ${least} mm: ${thin.join('; ')}.`] : []),
    ...(isSplit || notched ? [changedCaution] : []),
    ...(isSplit ? [splitCaution] : []),
    ...(isPrinted ? printCautions : []),
  ];
}

/** Facts on the least wall where it was looked for and nothing is thinner. */
const wallFacts = (values: HandoverValues, cautions: readonly string[]): Bodies['facts'] => {
  const least = numberOf(values, 'minWall');
  if (least === 0 || cautions.some((caution) => caution.startsWith('Thinner'))) return [];
  return [{ label: 'Least wall', text: `nothing thinner than ${least} mm among walls, lands, roots` }];
};

/** Meshes, checks, changes and splits the parts that the options name. */
export async function makeBodies(
  design: Design,
  values: HandoverValues,
  tools: HandoverTools,
  tell: HandoverProgress,
): Promise<Result<Bodies>> {
  const parts = partsOf(values);
  const missed = missedCut(design, parts, values);
  if (!missed.ok) return missed;
  tell(0.02, 'loading the solid modeller');
  const kit = (await tools.solids()) as SolidKit;
  const bodies: Body[] = [];
  const facts: Bodies['facts'][number][] = [];
  for (const [i, part] of parts.entries()) {
    tell(0.05 + (0.8 * i) / parts.length, `meshing the ${part}`);
    const mesh = meshed(kit, design, part, numberOf(values, 'tolerance'));
    if (!mesh.ok) return mesh;
    const done = featured(kit, design, mesh.value, values);
    if (!done.ok) return done;
    const made = finished(kit, design, done.value, values);
    if (!made.ok) return made;
    bodies.push(...made.value);
    facts.push(...done.value.facts);
  }
  const cautions = cautionsOf(design, parts, values);
  return ok({ bodies, facts: [...facts, ...wallFacts(values, cautions)], cautions });
}
