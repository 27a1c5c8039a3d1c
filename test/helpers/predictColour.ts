import { predictColourOfParts } from '../../core/age/colour.ts';
import type { ColouredMaterial } from '../../core/age/colourTypes.ts';
import type { HeatSegment } from '../../core/age/lawRun.ts';
import { gaussLegendre } from '../../core/math/gaussLegendre.ts';
import type { ColourPrediction } from '../../core/prediction/types.ts';

/** Ages of what leaves: upper edges of bins, s, and the share of the flux younger than each; the last is 1. */
interface AgeDistribution {
  readonly time: Float64Array;
  readonly cumulative: Float64Array;
}

const rule = gaussLegendre(2);

/** Two Gauss points a bin, the flux being even within it; plug flow is a bin of no width (the same edge twice). */
function atomsOf({ time, cumulative }: AgeDistribution) {
  const shares = [...time.keys()].flatMap((i) => {
    const lower = i === 0 ? 0 : time[i - 1];
    const share = cumulative[i] - (i === 0 ? 0 : cumulative[i - 1]);
    if (share <= 0) return [];
    return [...rule.nodes.keys()].map((k) => ({
      age: lower + (time[i] - lower) * rule.nodes[k],
      share: share * rule.weights[k],
    }));
  });
  return {
    time: Float64Array.from(shares, ({ age }) => age),
    share: Float64Array.from(shares, ({ share }) => share),
    shortest: shares[0]?.age ?? 0,
  };
}

/**
 * Colour where the whole path is one part.
 * @param heat K for all, or the mean passage: melt of any age spends it in these proportions
 */
export function predictColour(
  material: ColouredMaterial,
  ages: AgeDistribution,
  heat: number | readonly HeatSegment[],
): ColourPrediction {
  const passage = typeof heat === 'number' ? [{ duration: 1, temperature: heat }] : heat;
  return predictColourOfParts(material, [{ part: 'whole path', atoms: atomsOf(ages), heat: passage }]);
}
