/** Whether a viscosity law makes sense over the processing window. */

import type { Material } from '../project/materialSchema.ts';
import { fromSi, toSi } from '../units.ts';
import { inOrder, named, type Rule } from './checkTypes.ts';
import { hasViscosity, viscosityLawOf } from './rheology.ts';
import { viscosityAt } from './viscosityLaw.ts';

/** Shear rates at which a law is judged, 1/s: slow channel to fine nozzle. */
const probeRates = [0.1, 1, 10, 100, 1000, 10_000] as const;
/** Temperatures of the window at which it is judged. */
const probeShares = [0, 0.25, 0.5, 0.75, 1] as const;
/** Shear rate shown in words, 1/s. */
const shownRate = 10;
const rounding = 1 + 1e-9;

/** Constants of a law that stand in order. */
export function constantRules({ rheology, windowLowC }: Material): readonly Rule[] {
  if (rheology.model === 'carreauYasuda') {
    const fast = named(
      ['rheology', 'infiniteShearViscosityPaS'],
      'viscosity at endless shear rate',
      rheology.infiniteShearViscosityPaS,
      'Pa·s',
    );
    const rest = named(
      ['rheology', 'zeroShearViscosityPaS'],
      'viscosity at rest',
      rheology.zeroShearViscosityPaS,
      'Pa·s',
    );
    return [inOrder(fast, rest, false)];
  }
  if (rheology.model !== 'crossWlf') return [];
  // Below T* the law is held level, so a window that begins under it would not thicken on cooling.
  const limit = named([], 'low end of the processing window', { value: toSi(windowLowC.value, '°C') }, 'K');
  return [inOrder(named(['rheology', 'd2K'], 'reference temperature D2', rheology.d2K, 'K'), limit, true)];
}

const celsius = (kelvin: number): number => Number(fromSi(kelvin, '°C').toFixed(1));

/** Viscosities by temperature (rows) and shear rate. */
function probes(m: Material) {
  const law = viscosityLawOf(m);
  const [low, high] = [toSi(m.windowLowC.value, '°C'), toSi(m.windowHighC.value, '°C')];
  return probeShares.map((share) => {
    const temperature = low + share * (high - low);
    const isothermal = law(temperature, 0);
    return { temperature, at: (rate: number) => viscosityAt(isothermal, rate) };
  });
}

/** The law gives positive numbers that do not rise with temperature nor with shear rate. */
export function viscosityRules(m: Material): readonly Rule[] {
  if (!hasViscosity(m)) return [];
  const rows = probes(m);
  const shown = (row: (typeof rows)[number] | undefined) =>
    row ? `${row.at(shownRate).toPrecision(3)} Pa·s at ${celsius(row.temperature)} °C` : '';
  const sound = rows.every(({ at }) => probeRates.every((rate) => at(rate) > 0 && Number.isFinite(at(rate))));
  const falls = rows.every((row, i) =>
    probeRates.every((rate) => i === 0 || row.at(rate) <= (rows[i - 1]?.at(rate) ?? 0) * rounding),
  );
  const thins = rows.every(({ at }) =>
    probeRates.every((rate, k) => k === 0 || at(rate) <= at(probeRates[k - 1] ?? rate) * rounding),
  );
  const cold = rows[0];
  return [
    {
      holds: sound && falls,
      field: ['rheology'],
      code: 'viscosity-against-temperature',
      message: `The viscosity must be a positive number that does not rise with temperature over the processing window.`,
      value: `at ${shownRate} 1/s ${shown(cold)}, ${shown(rows.at(-1))}`,
      allowed: 'above 0 and falling with temperature',
      remedy: 'Check the constants and units of the viscosity law.',
    },
    {
      holds: !sound || thins,
      field: ['rheology'],
      code: 'viscosity-against-shear',
      message: 'The viscosity must not rise with shear rate.',
      value: cold ? `${cold.at(1).toPrecision(3)} Pa·s at 1 1/s, ${cold.at(1000).toPrecision(3)} Pa·s at 1000 1/s` : '',
      allowed: 'falling or constant: a flow index n of at most 1',
      remedy: 'Check the flow index n and the constants of the viscosity law.',
    },
  ];
}
