/** Whether a material's values suffice for each prediction. */

import type { Material, Sourced, StoredLaw } from '../project/materialSchema.ts';
import type { PredictionTopic, TopicCompleteness } from './completenessTypes.ts';
import { hasViscosity } from './rheology.ts';

/** One value behind a prediction: its name and how it is known. */
interface Need {
  readonly name: string;
  readonly state: 'known' | 'doubtful' | 'missing';
}

const trusted: readonly Sourced['status'][] = ['seen', 'measured here'];

const need = (name: string, value: Pick<Sourced, 'status'> | undefined): Need => ({
  name,
  state: value === undefined ? 'missing' : trusted.includes(value.status) ? 'known' : 'doubtful',
});

/** A value the prediction can do without: it is doubtful, not missing, where it is not given. */
const wish = (name: string, value: Pick<Sourced, 'status'> | undefined): Need =>
  value === undefined ? { name: `${name} (not given)`, state: 'doubtful' } : need(name, value);

const isSourced = (node: unknown): node is Sourced =>
  typeof node === 'object' && node !== null && 'status' in node && 'value' in node;

/** Every sourced value inside a part counts; the part is as good as its worst. */
function part(name: string, node: object | undefined): Need {
  if (node === undefined) return { name, state: 'missing' };
  const values = Object.values(node).flatMap((item: unknown): Need[] =>
    isSourced(item)
      ? [need(name, item)]
      : typeof item === 'object' && item !== null && !Array.isArray(item)
        ? [part(name, item)]
        : [],
  );
  return { name, state: values.some(({ state }) => state === 'doubtful') ? 'doubtful' : 'known' };
}

function viscosity(m: Material): readonly Need[] {
  if (!hasViscosity(m)) return [{ name: 'viscosity', state: 'missing' }];
  const told = m.rheologyRange?.status;
  const range = wish('range of the viscosity law', told === undefined ? undefined : { status: told });
  return [part('viscosity', m.rheology), range, ...(m.filler ? [part('filler', m.filler)] : [])];
}

const meltDensity = (m: Material): Need => need('melt density', m.meltDensityKgM3);

const feeding = (m: Material): readonly Need[] => [
  need('bulk density', m.bulkDensityKgM3),
  part('grain sizes', m.grain),
  need('friction on the barrel', m.frictionOnBarrel),
  need('friction on the screw', m.frictionOnScrew),
  need('softening temperature', m.softeningC),
  wish('angle of repose', m.angleOfReposeDeg),
  wish('angle of internal friction', m.internalFrictionDeg),
  wish('unconfined strength', m.unconfinedStrengthPa),
];

const heat = (m: Material): readonly Need[] => [
  need('thermal conductivity', m.conductivityWPerMK),
  need('heat capacity of the solid', m.heatCapacitySolidJPerKgK),
  need('heat capacity of the melt', m.heatCapacityMeltJPerKgK),
  need('heat of fusion', m.heatOfFusionJPerKg),
  need('solid density', m.solidDensityKgM3),
  need('melting temperature', m.meltingC),
];

function colour(m: Material): readonly Need[] {
  const law = m.degradation.find(({ id }) => id === m.colourLaw);
  const anchors: Need =
    m.colourAnchors.length < 2
      ? { name: 'colours at two extents or more', state: 'missing' }
      : {
          name: 'colours at each extent',
          state: m.colourAnchors.every(({ status }) => status && trusted.includes(status)) ? 'known' : 'doubtful',
        };
  return [part('rate law of the colour', law), anchors];
}

/** Loss of molar mass, or any law of a share used up. */
function propertyLoss({ degradation, colourLaw }: Material): readonly Need[] {
  const isScission = (law: StoredLaw) => law.kind === 'scission';
  const law = degradation.find(isScission) ?? degradation.find(({ id }) => id !== colourLaw);
  if (!law) return [{ name: 'rate law of chain breaks', state: 'missing' }];
  const mass = law.kind === 'scission' ? [wish('molar mass of fresh chains', law.initialMolarMassKgPerMol)] : [];
  return [part('rate law of chain breaks', law), ...mass];
}

const cracking = (m: Material): readonly Need[] =>
  m.mechanical === undefined
    ? [{ name: 'stiffness, strength and expansion of the print', state: 'missing' }]
    : [
        need('stiffness', m.mechanical.youngGPa),
        need('strength', m.mechanical.strengthMPa),
        need('thermal expansion', m.mechanical.expansionPerMK),
        need('Poisson ratio', m.mechanical.poisson),
        need('setting temperature', m.mechanical.setC),
      ];

const topics: Readonly<Record<PredictionTopic, (m: Material) => readonly Need[]>> = {
  feeding,
  melting: (m) => [...heat(m), meltDensity(m), ...viscosity(m)],
  pumping: (m) => [...viscosity(m), meltDensity(m)],
  residence: (m) => [...viscosity(m), meltDensity(m)],
  colour: (m) => [...colour(m), ...viscosity(m)],
  propertyLoss: (m) => [...propertyLoss(m), ...viscosity(m)],
  cracking,
  strand: (m) => [
    ...viscosity(m),
    meltDensity(m),
    wish('surface tension', m.surfaceTensionNPerM),
    wish('melt compressibility', m.meltCompressibilityPerGPa),
  ],
};

const namesOf = (needs: readonly Need[], state: Need['state']): readonly string[] => [
  ...new Set(needs.filter((one) => one.state === state).map(({ name }) => name)),
];

/**
 * How well a material is known, prediction by prediction.
 * @param material stored material
 * @returns one entry for each topic, in the order of the path of the granules; a prediction without a viscosity is
 *   missing where the melt has to flow
 */
export function completenessOf(material: Material): readonly TopicCompleteness[] {
  return (Object.keys(topics) as PredictionTopic[]).map((topic) => {
    const needs = topics[topic](material);
    const [missing, doubtful] = [namesOf(needs, 'missing'), namesOf(needs, 'doubtful')];
    const state = missing.length > 0 ? 'missing' : doubtful.length > 0 ? 'doubtful' : 'known';
    return { topic, state, missing, doubtful };
  });
}
