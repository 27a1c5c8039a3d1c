/** What every law of a material comes to, in numbers and in words. */

import type { LawOutcome, MolarMassLoss } from '../prediction/types.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { streakShare } from './colourReading.ts';
import type { ColouredMaterial } from './colourTypes.ts';
import { type AgedPart, type ExtentDistribution, extentDistribution } from './extentDistribution.ts';
import { molarMassAfter } from './extentForms.ts';
import { rangeDoubt } from './kinetics.ts';
import { type KineticLaw, nominalCorner, type ScissionLaw } from './laws.ts';

/** Power of molar mass in the melt viscosity above entanglement; from memory, common knowledge of rheology. */
const viscosityPower = 3.4;

/** Molar mass left at extents (scissions per repeat unit). */
export function molarMassLoss(law: ScissionLaw, extentMean: number, extentWorst: number): MolarMassLoss {
  const initial = law.initialMolarMass?.value ?? null;
  const after = (extent: number) => initial && molarMassAfter(initial, law.repeatUnitMass, extent);
  const [mean, worst] = [after(extentMean), after(extentWorst)];
  const share = (mass: number | null) => (mass === null || initial === null ? null : mass / initial);
  const [shareMean, shareWorst] = [share(mean), share(worst)];
  const viscosity = (left: number | null) => (left === null ? null : left ** viscosityPower);
  const halves = (extent: number) => (extent > 0 ? law.repeatUnitMass / extent : null);
  return {
    ...{ initial, mean, worst, shareMean, shareWorst },
    viscosityMean: viscosity(shareMean),
    viscosityWorst: viscosity(shareWorst),
    halvesMean: halves(extentMean),
    halvesWorst: halves(extentWorst),
  };
}

const percent = (share: number) => formatQuantity(share, '%', 2);

function molarMassWords(loss: MolarMassLoss): string {
  const { shareMean, shareWorst, viscosityMean, viscosityWorst, halvesWorst } = loss;
  if (shareMean !== null && shareWorst !== null && viscosityMean !== null && viscosityWorst !== null)
    return (
      `Molar mass (Mn) falls to ${percent(shareMean)} of fresh, in the oldest hundredth to ${percent(shareWorst)}; ` +
      `the melt thins to about ${percent(viscosityMean)} and ${percent(viscosityWorst)} (viscosity as M^3.4, from ` +
      'memory), and parts turn brittle as chains shorten towards entanglement.'
    );
  if (halvesWorst === null) return 'No chains break.';
  return (
    `Breaks enough chains to halve a fresh molar mass (Mn) of ${formatNumber(halvesWorst, 3)} kg/mol in the oldest ` +
    'hundredth; enter the fresh molar mass to see the loss.'
  );
}

function words(law: KineticLaw, loss: MolarMassLoss | null, mean: number, worst: number): string {
  if (loss) return molarMassWords(loss);
  const both = (text: (value: number) => string) => `${text(mean)} on average, ${text(worst)} in the oldest hundredth`;
  if (!('kind' in law) && law.order === 0)
    return `Reaches ${both((value) => formatNumber(value, 3))}, in its own unit.`;
  if ('kind' in law && law.kind === 'twoStep') return `Solid mass lost: ${both(percent)}.`;
  return `${'kind' in law ? 'Of its full course it has run' : 'Used up:'} ${both(percent)}.`;
}

/** Outcome of one law at its stated constants. */
function outcomeOf(
  law: KineticLaw,
  parts: readonly AgedPart[],
  drivesColour: boolean,
  extents: ExtentDistribution,
): LawOutcome {
  const [mean, worst] = [extents.mean, extents.at(streakShare)];
  const loss = 'kind' in law && law.kind === 'scission' ? molarMassLoss(law, mean, worst) : null;
  return {
    id: law.id,
    observed: law.observed,
    kind: 'kind' in law ? law.kind : 'order',
    drivesColour,
    extentMean: mean,
    extentWorst: worst,
    molarMass: loss,
    means: words(law, loss, mean, worst),
    outside: rangeDoubt(
      law,
      parts.flatMap(({ heat }) => heat),
    ).doubt,
  };
}

/**
 * Outcomes of all laws of a material, the one that drives the colour marked.
 * @param parts usable (see partsProblem)
 * @param ofColour extents of the colour law at its stated constants, where they are worked out already
 * Viscosity as M^3.4 holds above the entanglement molar mass, at a constant spread of chain lengths; from memory.
 */
export const lawOutcomes = (
  material: ColouredMaterial,
  parts: readonly AgedPart[],
  ofColour?: ExtentDistribution,
): LawOutcome[] =>
  material.degradation.map((law) => {
    const drives = law.id === material.colourLaw;
    const extents = (drives && ofColour) || extentDistribution(law, parts, nominalCorner);
    return outcomeOf(law, parts, drives, extents);
  });
