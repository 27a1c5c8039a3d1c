/** A sheet as plain strokes, fills and lettering, for writers that know no dimensions and no lining. */

import { hatchLines } from './hatchLines.ts';
import { layers } from './layers.ts';
import type { ArcEntity, CircleEntity, Entity, FillEntity, LayerName, PathEntity, Sheet, TextEntity } from './model.ts';
import { line } from './shapes.ts';

/** What is left: nothing that needs knowledge of drawings. */
export type FlatEntity = PathEntity | CircleEntity | ArcEntity | FillEntity | TextEntity;

function flat(entity: Entity): FlatEntity[] {
  if (entity.kind === 'hatch') return hatchLines(entity).map(([a, b]) => line('HATCH', a, b));
  if (entity.kind === 'dimension') return [...entity.strokes, entity.label];
  return [entity];
}

/** All of a sheet, layer by layer in the order of `layers`. */
export function flatLayers({ entities }: Sheet): { layer: LayerName; entities: FlatEntity[] }[] {
  const all = entities.flatMap(flat);
  return (Object.keys(layers) as LayerName[])
    .map((layer) => ({ layer, entities: all.filter((entity) => entity.layer === layer) }))
    .filter((group) => group.entities.length > 0);
}
