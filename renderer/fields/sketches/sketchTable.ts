/** Which drawing shows the dimension of which field, and where in it; coordinates as in Dimension.tsx. */

import type { BaseName } from './bases.tsx';
import type { DimensionShape, Point } from './Dimension.tsx';

/** A drawing with its dimension. */
export interface SketchPlan {
  readonly base: BaseName;
  readonly shapes: readonly DimensionShape[];
}

const plan = (base: BaseName, ...shapes: DimensionShape[]): SketchPlan => ({ base, shapes });
const span = (from: Point, to: Point, reach?: number): DimensionShape => ({
  kind: 'span',
  from,
  to,
  ...(reach === undefined ? {} : { reach }),
});
const arc = (at: Point, radius: number, start: number, end: number): DimensionShape => ({
  kind: 'arc',
  at,
  radius,
  start,
  end,
});
const ring = (at: Point, radius: number): DimensionShape => ({ kind: 'ring', at, radius });

/** By the field's place without indexes. */
export const sketchTable: Readonly<Record<string, SketchPlan>> = {
  'screw.sections.lengthMm': plan('screw', span([4, 36], [128, 36], 16)),
  'screw.sections.leadStartMm': plan('screw', span([20, 5], [62, 5], 7)),
  'screw.sections.leadEndMm': plan('screw', span([62, 5], [104, 5], 7)),
  'screw.sections.rootDiameterStartMm': plan('screw', span([9, 23.7], [9, 48.3])),
  'screw.sections.rootDiameterEndMm': plan('screw', span([124, 16.3], [124, 55.7])),
  'screw.sections.starts': plan('screw', ring([23, 12], 6), ring([65, 12], 6), ring([107, 12], 6)),
  'screw.sections.flightWidthMm': plan('flight', span([98, 4], [110, 4], 14)),
  'screw.sections.flankAngleDeg': plan('flight', arc([40, 19], 32, 81, 90)),
  'screw.sections.rootFilletMm': plan('flight', ring([49, 47], 7), ring([89, 47], 7)),
  'screw.radialClearanceMm': plan('flight', span([104, 15], [104, 19], 12)),
  'screw.tip.includedAngleDeg': plan('tip', arc([93, 36], 40, 158, 202)),
  'screw.tip.pinDiameterMm': plan('tip', span([90, 30], [90, 42])),
  'screw.tip.pinLengthMm': plan('tip', span([78, 49], [100, 49], 6)),
  'screw.shank.diameterMm': plan('shank', span([16, 26], [16, 46])),
  'screw.shank.lengthMm': plan('shank', span([4, 58], [52, 58], 8)),
  'screw.shank.filletMm': plan('shank', ring([49, 22], 6), ring([49, 50], 6)),
  'barrel.boreDiameterMm': plan('barrel', span([80, 20], [80, 52], 8)),
  'barrel.outerDiameterMm': plan('barrel', span([117, 10], [117, 62], 6)),
  'barrel.lengthMm': plan('barrel', span([8, 45], [112, 45], 7)),
  'barrel.feedOpening.startMm': plan('barrel', span([8, 28], [22, 28], 8)),
  'barrel.feedOpening.lengthMm': plan('barrel', span([22, 15], [44, 15], 6)),
  'barrel.feedOpening.widthMm': plan('across', span([56, 8], [76, 8], 5)),
  'barrel.heatBreak.startMm': plan('barrel', span([8, 28], [54, 28], 8)),
  'barrel.heatBreak.lengthMm': plan('barrel', span([54, 7], [64, 7], 5)),
  'barrel.heatBreak.wallMm': plan('barrel', span([59, 15], [59, 20], 8)),
  'barrel.zones.startMm': plan('barrel', span([8, 28], [70, 28], 22)),
  'barrel.zones.endMm': plan('barrel', span([8, 28], [88, 28], 22)),
  'nozzle.outerDiameterMm': plan('nozzle', span([116, 6], [116, 66], 10)),
  'nozzle.segments.startDiameterMm': plan('nozzle', span([10, 14.5], [10, 57.5])),
  'nozzle.segments.endDiameterMm': plan('nozzle', span([58, 28], [58, 44])),
  'nozzle.segments.lengthMm': plan('nozzle', span([8, 36], [58, 36], 10)),
  'hopper.outletDiameterMm': plan('hopper', span([52, 58], [80, 58], 5)),
  'hopper.wallHalfAngleDeg': plan('hopper', arc([52, 54], 26, 233, 270)),
  'hopper.heightMm': plan('hopper', span([66, 12], [66, 54], 12)),
  'hopper.gapMm': plan('hopper', span([80, 66], [84, 66], 4)),
  'print.lineWidthMm': plan('line', span([45, 37], [87, 37], 10)),
  'print.layerHeightMm': plan('line', span([96, 30], [96, 44], 8)),
  'print.wallThicknessMm': plan('wall', span([24, 8], [108, 8], 6)),
  'print.nozzleHeightMm': plan('travel', span([66, 26], [66, 62], 12)),
  'print.filamentDiameterMm': plan('filament', span([66, 24], [66, 48], 8)),
  'grain.d10Mm': plan('grains', span([15, 50], [33, 50], 6)),
  'grain.d50Mm': plan('grains', span([42, 44], [74, 44], 8)),
  'grain.d90Mm': plan('grains', span([79, 38], [125, 38], 10)),
};
