/** Where the values stand that completeness speaks of by name. */

import type { Material } from '../../../core/index.ts';
import type { Path } from '../../store/path.ts';

/** Places below the material by the names that core gives its values. */
const fixed: Readonly<Record<string, string>> = {
  viscosity: 'rheology',
  'range of the viscosity law': 'rheologyRange',
  filler: 'filler',
  'melt density': 'meltDensityKgM3',
  'bulk density': 'bulkDensityKgM3',
  'grain sizes': 'grain',
  'friction on the barrel': 'frictionOnBarrel',
  'friction on the screw': 'frictionOnScrew',
  'softening temperature': 'softeningC',
  'angle of repose': 'angleOfReposeDeg',
  'angle of internal friction': 'internalFrictionDeg',
  'unconfined strength': 'unconfinedStrengthPa',
  'thermal conductivity': 'conductivityWPerMK',
  'heat capacity of the solid': 'heatCapacitySolidJPerKgK',
  'heat capacity of the melt': 'heatCapacityMeltJPerKgK',
  'heat of fusion': 'heatOfFusionJPerKg',
  'solid density': 'solidDensityKgM3',
  'melting temperature': 'meltingC',
  'colours at two extents or more': 'colourAnchors',
  'colours at each extent': 'colourAnchors',
  'stiffness, strength and expansion of the print': 'mechanical',
  stiffness: 'mechanical.youngGPa',
  strength: 'mechanical.strengthMPa',
  'thermal expansion': 'mechanical.expansionPerMK',
  'Poisson ratio': 'mechanical.poisson',
  'setting temperature': 'mechanical.setC',
  'surface tension': 'surfaceTensionNPerM',
  'melt compressibility': 'meltCompressibilityPerGPa',
};

/** Place of the law that the colour hangs on, or of the choice where it hangs on none. */
function colourLawPlace({ degradation, colourLaw }: Material): Path {
  const index = degradation.findIndex(({ id }) => id === colourLaw);
  return index < 0 ? ['colourLaw'] : ['degradation', index];
}

/** Place of the law that loss of properties rests on, or of the list where there is none. */
function lossPlace({ degradation, colourLaw }: Material): Path {
  const scission = degradation.findIndex(({ kind }) => kind === 'scission');
  const index = scission < 0 ? degradation.findIndex(({ id }) => id !== colourLaw) : scission;
  return index < 0 ? ['degradation'] : ['degradation', index];
}

/** The place below the material of the value that completeness calls `name`; null where the name is not known. */
export function knownPlace(material: Material, name: string): Path | null {
  const bare = name.replace(/ \(not given\)$/, '');
  if (bare === 'rate law of the colour') return colourLawPlace(material);
  if (bare === 'rate law of chain breaks') return lossPlace(material);
  if (bare === 'molar mass of fresh chains') return [...lossPlace(material), 'initialMolarMassKgPerMol'];
  return fixed[bare]?.split('.') ?? null;
}
