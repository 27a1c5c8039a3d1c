/** A machine and a granulate of round numbers, made up for checks that need a whole design. */

import type { Design } from '../design/types.ts';
import { validateDesign } from '../design/validate.ts';
import type { Material } from '../project/materialSchema.ts';
import { newProject } from '../project/templates/newProject.ts';
import { madeUp } from './given.ts';
import { orThrow } from './orThrow.ts';

/** A granulate of round numbers. */
const madeMaterial: Material = {
  id: 'made-up',
  name: 'Made up for checks',
  invented: true,
  form: 'pellet',
  rheology: { model: 'newtonian', viscosityPaS: madeUp(500), shift: { kind: 'none' } },
  meltDensityKgM3: madeUp(1000),
  solidDensityKgM3: madeUp(1200),
  bulkDensityKgM3: madeUp(700),
  grain: { d10Mm: madeUp(1.5), d50Mm: madeUp(2), d90Mm: madeUp(2.5), aspectRatio: madeUp(1.2) },
  frictionOnBarrel: madeUp(0.4),
  frictionOnScrew: madeUp(0.25),
  conductivityWPerMK: madeUp(0.2),
  heatCapacitySolidJPerKgK: madeUp(1500),
  heatCapacityMeltJPerKgK: madeUp(2000),
  heatOfFusionJPerKg: madeUp(50_000),
  softeningC: madeUp(60),
  meltingC: madeUp(150),
  windowLowC: madeUp(170),
  windowHighC: madeUp(230),
  maxSafeC: madeUp(260),
  degradation: [],
  colourAnchors: [],
  cautions: [],
};

/** A design of that granulate with a bore of 16 mm. */
export function madeDesign(): Design {
  const project = newProject({
    name: 'Made up for checks',
    boreMm: 16,
    heatedMm: 160,
    orificeMm: 0.8,
    material: madeMaterial,
    torqueNm: 2,
    gearRatio: 5,
    date: '2000-01-01',
  });
  return orThrow(validateDesign(project, project.activeRevision));
}
