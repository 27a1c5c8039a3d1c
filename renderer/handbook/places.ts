/** Where the handbook explains each figure: the one table from quantities to pages. */

/** Page and heading of each group of figures. */
export const groupPlaces: Readonly<Record<string, string>> = {
  output: 'operating-point#balance',
  capacities: 'operating-point#capacities',
  print: 'print#line-and-demand',
  residence: 'residence#distribution',
  colour: 'degradation#colour',
  feeding: 'feed#hopper',
  melting: 'melting#conduction',
  drive: 'drive#torque',
  heat: 'heat#steady-balance',
  coldEnd: 'heat#throat',
  warmUp: 'heat#warming-up',
  nozzle: 'tip#nozzle',
  geometry: 'geometry#equations',
  making: 'hand-over',
};

/** Rows that are explained elsewhere than their group; a key may be the beginning of row ids. */
const rowPlaces: readonly (readonly [group: string, row: RegExp, place: string])[] = [
  ['output', /^leakFlow$/, 'channel#leak-over-the-flight'],
  ['output', /^headPressure$/, 'tip#nozzle'],
  ['capacities', /^(feed|starved)$/, 'feed#plug'],
  ['capacities', /^grainFit$/, 'feed#grain'],
  ['capacities', /^melting$/, 'melting#film'],
  ['capacities', /^heater$/, 'heat#steady-balance'],
  ['capacities', /^torque$/, 'drive#torque'],
  ['residence', /dead|spot|old/i, 'residence#dead-melt'],
  ['feeding', /^(plug|packed|buildable|feedLimited)/, 'feed#plug'],
  ['melting', /^(flightInMelt|unmelted)$/, 'melting#film'],
  ['colour', /^law-/, 'degradation#extent'],
  ['drive', /^(rootShear|weakest|stepFactor|worstShear|rootMargin|twist)/, 'drive#strength'],
  ['drive', /^(thrust|buckling|bearing|wall-|blocked)/, 'drive#thrust-and-walls'],
  ['print', /^(ooze|nozzleShare|release)/, 'print#ooze'],
  ['print', /^(strand|capillary|drip|drop)/, 'print#strand'],
  ['print', /^(setTime|coolingStress|wantedBed)/, 'print#cooling'],
  ['print', /^(steps|pressureTime|fullStep|demandStep)/, 'print#controller'],
];

/** Place of a figure by its group and row. */
export function placeOf(group: string, row: string): string {
  const own = rowPlaces.find(([ofGroup, ids]) => ofGroup === group && ids.test(row));
  return own?.[2] ?? groupPlaces[group] ?? 'index';
}

/** All places that the tables name: a seam for tests, which follow each to its page. */
export const allPlaces: readonly string[] = [...Object.values(groupPlaces), ...rowPlaces.map(([, , place]) => place)];
