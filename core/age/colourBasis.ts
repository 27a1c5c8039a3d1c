/** Words beside a colour prediction: what it rests on, why it is doubtful, why there is none. */

import type { Basis } from '../prediction/types.ts';
import { celsiusText } from './celsiusText.ts';
import type { ColourPath } from './colourPath.ts';
import type { ColouredMaterial } from './colourTypes.ts';
import type { AgedPart } from './extentDistribution.ts';
import type { KineticLaw } from './laws.ts';

const source =
  'Arrhenius 1889; Fritsch and Butland 1984 (anchors); CIE 15 (L*a*b*); Sharma, Wu and Dalal 2005, eq. 2 to 22 (dE00)';

const common = [
  'Colour follows the extent of one law; air, moisture, shear and wall metal act as where it was measured.',
  'Only the time as melt counts, not the heating of the granulate before.',
  'Old and young melt are averaged in linear XYZ, as fine streaks seen together.',
  'The worst streak is melt older than 99 % of the output.',
];

/** How ages and temperatures of the parts are joined. */
function aboutParts(parts: readonly AgedPart[]): string[] {
  if (parts.length === 1 && parts[0].heat.length === 1) return ['All melt has one temperature.'];
  const within = `Melt of any age in ${parts.length > 1 ? 'a part' : 'the machine'} spends it at the local temperatures in proportion to the mean times there.`;
  if (parts.length === 1) return [within];
  const names = parts.map(({ part }) => part).join(' and ');
  return [within, `Ages in ${names} are independent: melt mixes between them, so their extents are convolved.`];
}

/** Basis of a prediction that could be made. */
export function colourBasis(
  material: ColouredMaterial,
  law: KineticLaw,
  path: ColourPath,
  parts: readonly AgedPart[],
  doubts: readonly string[],
): Basis {
  const assumptions = [...common];
  assumptions.push(...aboutParts(parts));
  if (material.invented) assumptions.push(`The data of ${material.name} are invented for an example.`);
  return {
    model: `${law.id}, colour from ${material.name}'s anchors`,
    assumptions,
    source,
    range: `${celsiusText(law.validFrom)} to ${celsiusText(law.validTo)}, extent ${path.first} to ${path.last}`,
    doubt: doubts.length > 0 ? doubts.join(' ') : null,
  };
}

/** Basis where nothing could be predicted. */
export const noColourBasis = (reason: string): Basis => ({
  model: 'none',
  assumptions: [],
  source,
  range: 'needs a colour law and at least two colour anchors',
  doubt: reason,
});

const aboutMolarMass = (law: KineticLaw) =>
  ('kind' in law && law.kind === 'scission') || /molar mass|molecular weight|scission|chain/i.test(law.observed);

const remedy = 'Measure L*a*b* of strands held for known times at a known temperature and enter them as anchors.';

/** Why a material without a colour law has no colour prediction. */
export function noLawReason(material: ColouredMaterial): string {
  if (material.colourLaw !== null)
    return `The colour law ${material.colourLaw} is not among the degradation laws of ${material.name}.`;
  if (material.degradation.length > 0 && material.degradation.every(aboutMolarMass))
    return (
      `For ${material.name} only the loss of molar mass is known: it tells how melt thins and parts weaken, ` +
      `not whether they discolour. ${remedy}`
    );
  if (material.degradation.length > 0 && material.colourAnchors.length > 1)
    return (
      `No degradation law of ${material.name} is tied to colour, though its colours are there. ` +
      'Choose the change that drives them: Granulate, “Colour follows”.'
    );
  return `No degradation law of ${material.name} is tied to colour. ${remedy}`;
}

/** Why a material with fewer than two anchors has no colour prediction. */
export const noAnchorsReason = (material: ColouredMaterial): string =>
  `${material.name} has a law for its discolouration but fewer than two colour anchors. ${remedy}`;

const percent = (share: number) => `${(100 * share).toPrecision(2)} %`;

/** Doubts about the anchors. */
export function colourDoubts(path: ColourPath, beyondShare: number): string[] {
  const doubts: string[] = [];
  if (path.first > 0) doubts.push(`The first anchor has extent ${path.first}; its colour is taken as fresh.`);
  if (beyondShare > 0)
    doubts.push(
      `${percent(beyondShare)} of the output passes the last anchor (extent ${path.last}); its colour is held there.`,
    );
  return doubts;
}
