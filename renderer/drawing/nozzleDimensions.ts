/** Dimensions of the nozzle's pieces: lengths, diameters, angles of cones, and the body's outside. */

import type { Revision } from '../../core/index.ts';
import type { FieldSpec } from '../fields/spec.ts';
import type { Path } from '../store/path.ts';
import { drawingText } from '../strings/drawing.ts';
import { nozzleFields, pieceFields } from '../strings.ts';
import { angleDeg, lengthFor } from './endDimensions.ts';
import { agree, runOf, sameAt } from './join.ts';
import { clean, type Dimension, type Magnet, type Scene } from './types.ts';

const words = drawingText;
type Piece = Revision['nozzle']['segments'][number];
type DiameterKey = 'startDiameterMm' | 'endDiameterMm';

const specOf = (key: string): FieldSpec => {
  const spec = [...pieceFields, ...nozzleFields].find((candidate) => candidate.key === key);
  if (!spec) throw new Error(`the nozzle has no ${key}`);
  return spec;
};

/** Every stored diameter of the bore from barrel to orifice, in the order of flow. */
function chainOf({ root, revision }: Scene): readonly Path[] {
  const pieces = revision.nozzle.segments.flatMap((_, i): Path[] =>
    ['startDiameterMm', 'endDiameterMm'].map((key) => [...root, 'nozzle', 'segments', i, key]),
  );
  return [[...root, 'barrel', 'boreDiameterMm'], ...pieces];
}

/** Diameters of the nozzle that agree with the barrel's bore without a break. */
export function boreRun(scene: Scene): readonly Path[] {
  return runOf(scene.revision, scene.root.length, chainOf(scene), 0).slice(1);
}

/** A piece where it stands, mm. */
interface Stood {
  readonly scene: Scene;
  readonly piece: Piece;
  readonly index: number;
  readonly start: number;
  readonly end: number;
}

const shared = ({ scene, piece, index }: Stood, key: string) => ({
  id: `piece/${index}/${key}`,
  group: 'outlet' as const,
  entry: { list: 'segments' as const, index },
  owner: words.piece(index + 1, piece.name),
  path: [...scene.root, 'nozzle', 'segments', index, key] as Path,
  spec: specOf(key),
  sign: '',
  magnets: [] as readonly Magnet[],
  range: null,
});

function lengthOf(stood: Stood): Dimension {
  const { piece, start, end, scene } = stood;
  const base = shared(stood, 'lengthMm');
  const middle = -Math.min(piece.startDiameterMm, piece.endDiameterMm) / 4;
  return {
    ...base,
    value: piece.lengthMm,
    mark: { kind: 'along', from: start, to: end, r: scene.revision.nozzle.outerDiameterMm / 2, above: false },
    grip: { z: end, r: middle, axis: 'z', aside: piece.lengthMm === 0 ? 1 : 0 },
    valueAt: (at) => at - start,
    changes: (value) => sameAt([base.path], value),
    rank: piece.lengthMm === 0 ? 4 : 1,
  };
}

/** Included angle of a cone: the diameters stay, the length follows. */
function angleOf(stood: Stood): readonly Dimension[] {
  const { piece, start, end, scene } = stood;
  const { startDiameterMm: one, endDiameterMm: other, lengthMm } = piece;
  if (agree(one, other) || lengthMm === 0) return [];
  const base = shared(stood, 'lengthMm');
  const { tip } = scene.revision.screw;
  const [z, r] = [(start + end) / 2, (one + other) / 4];
  return [
    {
      ...base,
      id: `piece/${stood.index}/angle`,
      spec: { key: 'lengthMm', label: words.angle, unit: '°', help: words.pieceAngleHelp, step: 1 },
      value: clean(Number(angleDeg(lengthMm, one, other).toFixed(2))),
      mark: { kind: 'note', z, r: -r, above: false },
      grip: { z, r: -r, axis: 'z', aside: 0 },
      valueAt: (at) => angleDeg(Math.max(0.001, 2 * (at - start)), one, other),
      changes: (value) => sameAt([base.path], Number(lengthFor(value, one, other).toFixed(4))),
      magnets: tip.kind === 'cone' ? [{ value: tip.includedAngleDeg, name: words.magnets.tipAngle }] : [],
      range: { min: 2, max: 178 },
      rank: 2,
    },
  ];
}

/** Which of a piece's diameters are shown: those that no neighbour with the same value shows. */
function keysOf({ piece, index, scene }: Stood): readonly DiameterKey[] {
  if (!scene.manners.joined) return ['startDiameterMm', 'endDiameterMm'];
  const { segments } = scene.revision.nozzle;
  const [before, after] = [segments[index - 1], segments[index + 1]];
  const evenPiece = (one: Piece | undefined) => one !== undefined && agree(one.startDiameterMm, one.endDiameterMm);
  if (evenPiece(piece))
    return before && evenPiece(before) && agree(before.endDiameterMm, piece.startDiameterMm) ? [] : ['startDiameterMm'];
  const known = before ? before.endDiameterMm : scene.revision.barrel.boreDiameterMm;
  const first = agree(known, piece.startDiameterMm) ? [] : (['startDiameterMm'] as const);
  const shownByNext = evenPiece(after) && agree(after?.startDiameterMm, piece.endDiameterMm);
  return [...first, ...(shownByNext ? [] : (['endDiameterMm'] as const))];
}

function pieceMagnets({ piece, index, scene }: Stood, key: DiameterKey): readonly Magnet[] {
  const { segments } = scene.revision.nozzle;
  const before = segments[index - 1]?.endDiameterMm ?? scene.revision.barrel.boreDiameterMm;
  const after = segments[index + 1]?.startDiameterMm;
  const other = key === 'startDiameterMm' ? piece.endDiameterMm : piece.startDiameterMm;
  return [
    { value: before, name: index === 0 ? words.magnets.bore : words.magnets.pieceBefore },
    ...(after === undefined ? [] : [{ value: after, name: words.magnets.pieceAfter }]),
    { value: other, name: words.magnets.otherEnd },
  ];
}

function diameterOf(stood: Stood, key: DiameterKey): Dimension {
  const { piece, index, scene, start, end } = stood;
  const base = shared(stood, key);
  const even = scene.manners.joined && agree(piece.startDiameterMm, piece.endDiameterMm);
  const value = piece[key];
  const z = even ? (start + end) / 2 : key === 'startDiameterMm' ? start : end;
  const chain = chainOf(scene);
  const place = 1 + 2 * index + (key === 'startDiameterMm' ? 0 : 1);
  const isOrifice = index === scene.revision.nozzle.segments.length - 1 && (even || key === 'endDiameterMm');
  const label = isOrifice ? words.orifice : even ? words.diameter : base.spec.label;
  return {
    ...base,
    spec: { ...base.spec, label },
    sign: 'Ø ',
    value,
    mark: { kind: 'across', z, r: value / 2, above: true },
    grip: { z, r: value / 2, axis: 'r', aside: even ? 0 : key === 'startDiameterMm' ? 1 : -1 },
    valueAt: (at) => 2 * Math.abs(at),
    changes: (wanted, { joined }) =>
      sameAt(joined ? runOf(scene.revision, scene.root.length, chain, place) : [base.path], wanted),
    magnets: pieceMagnets(stood, key),
    rank: isOrifice ? 0 : 2,
  };
}

/** The body's outside. */
function outsideOf(scene: Scene, start: number, end: number): Dimension {
  const key = 'nozzle.outerDiameterMm';
  const { outerDiameterMm } = scene.revision.nozzle;
  const path: Path = [...scene.root, ...key.split('.')];
  const z = start + 0.7 * (end - start);
  return {
    id: key,
    group: 'outlet',
    entry: null,
    owner: words.nozzle,
    path,
    spec: specOf(key),
    sign: 'Ø ',
    value: outerDiameterMm,
    mark: { kind: 'across', z, r: outerDiameterMm / 2, above: true },
    grip: { z, r: outerDiameterMm / 2, axis: 'r', aside: 0 },
    valueAt: (at) => 2 * Math.abs(at),
    changes: (value) => sameAt([path], value),
    magnets: [],
    range: null,
    rank: 5,
  };
}

/** All dimensions of the nozzle. */
export function nozzleDimensions(scene: Scene): readonly Dimension[] {
  const first = scene.revision.barrel.lengthMm;
  let end = first;
  const pieces = scene.revision.nozzle.segments.flatMap((piece, index) => {
    const start = end;
    end += piece.lengthMm;
    const stood: Stood = { scene, piece, index, start, end };
    return [lengthOf(stood), ...angleOf(stood), ...keysOf(stood).map((key) => diameterOf(stood, key))];
  });
  return [...pieces, outsideOf(scene, first, end)];
}
