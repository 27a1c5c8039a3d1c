/** Figures that a search shows, limits and improves: those of comparisons, and what makes a design possible. */

import { type ComparedQuantity, comparedQuantities } from '../compare/quantities.ts';
import type { Design, FlightedSection } from '../design/types.ts';
import type { Prediction } from '../prediction/types.ts';

/** One figure. */
export interface SearchFigure extends Omit<ComparedQuantity, 'value'> {
  /** SI, or null where there is no number */
  readonly value: (prediction: Prediction, design: Design) => number | null;
  /** a limit counts as kept where there is no number: nothing is there that could break it */
  readonly noneKeeps?: true;
}

const flighted = (design: Design): readonly FlightedSection[] =>
  design.screw.sections.flatMap((section) => (section.kind === 'flighted' ? [section] : []));

const least = (values: readonly number[]): number | null => (values.length > 0 ? Math.min(...values) : null);

const roots = ({ screw }: Design): readonly number[] =>
  screw.sections.flatMap(({ rootDiameterStart, rootDiameterEnd }) => [rootDiameterStart, rootDiameterEnd]);

const size = (id: string, label: string, value: (design: Design) => number | null): SearchFigure => ({
  id,
  label,
  unit: 'mm',
  better: 'neither',
  modelError: 0,
  value: (_, design) => value(design),
});

const further: readonly SearchFigure[] = [
  {
    id: 'dwellSpread',
    label: 'Spread of residence, t95 over mean',
    unit: '',
    better: 'less',
    modelError: 0.1,
    value: ({ output, residence }) => (output.flows && residence.mean > 0 ? residence.t95 / residence.mean : null),
  },
  {
    id: 'torqueShare',
    label: 'Torque over what stalls the motor',
    unit: '%',
    better: 'less',
    modelError: 0.1,
    value: ({ output, drive }) => (output.flows && drive.torquePullout > 0 ? drive.torque / drive.torquePullout : null),
  },
  {
    id: 'rootMargin',
    label: 'Strength margin of the weakest root',
    unit: '',
    better: 'more',
    modelError: 0.02,
    value: ({ drive }) => drive.worstRoot.margin,
    // a root that nothing loads has no margin to run out of
    noneKeeps: true,
  },
  {
    id: 'unmelted',
    label: 'Not molten at the last flight',
    unit: '%',
    better: 'less',
    modelError: 0.2,
    value: ({ output, melting }) => (output.flows ? melting.engagement.unmelted : null),
  },
  size('smallestRoot', 'Smallest root diameter', (design) => least(roots(design))),
  size('smallestFillet', 'Smallest root fillet', (design) =>
    least(flighted(design).map(({ rootFillet }) => rootFillet)),
  ),
  size('thinnestFlight', 'Narrowest flight', (design) => least(flighted(design).map(({ flightWidth }) => flightWidth))),
];

/** All figures: those of comparisons first, in their order. */
export const searchFigures: readonly SearchFigure[] = [...comparedQuantities, ...further];

/** The figure of an id; throws for an unknown one, which is a fault of the caller. */
export function figureOf(id: string): SearchFigure {
  const found = searchFigures.find((figure) => figure.id === id);
  if (!found) throw new Error(`no figure is called ${id}`);
  return found;
}

/** Figures of a design, SI; what is not finite has no number. */
export function figuresOf(prediction: Prediction, design: Design): Record<string, number | null> {
  return Object.fromEntries(
    searchFigures.map(({ id, value }) => {
      const found = value(prediction, design);
      return [id, found !== null && Number.isFinite(found) ? found : null];
    }),
  );
}
