/** Units of stored fields, read off the ends of their names. */

/** Endings, longest first where one ends in another; the lower-case letter before keeps words such as `rpmC` apart. */
const endings: readonly (readonly [ending: string, symbol: string])[] = [
  ['MJPerM3K', 'MJ/(m³·K)'],
  ['coolingWPerM2K', 'W/(m²·K)'],
  ['PerGPa', '1/GPa'],
  ['MmPerS', 'mm/s'],
  ['KJPerMol', 'kJ/mol'],
  ['JPerKgK', 'J/(kg·K)'],
  ['JPerKg', 'J/kg'],
  ['WPerMK', 'W/(m·K)'],
  ['NPerM', 'N/m'],
  ['GPerMin', 'g/min'],
  ['KgM3', 'kg/m³'],
  ['KPerPa', 'K/Pa'],
  ['expansionPerMK', 'µm/(m·K)'],
  ['PerK', '1/K'],
  ['PerS', '1/s'],
  ['PaSn', 'Pa·sⁿ'],
  ['PaS', 'Pa·s'],
  ['MPa', 'MPa'],
  ['GPa', 'GPa'],
  ['Pa', 'Pa'],
  ['Rpm', 'rpm'],
  ['Deg', '°'],
  ['Mm', 'mm'],
  ['Nm', 'N·m'],
  ['LoadN', 'N'],
  ['TempsC', '°C'],
  ['C', '°C'],
  ['K', 'K'],
  ['W', 'W'],
  ['S', 's'],
  ['A', 'A'],
  ['seconds', 's'],
  ['grams', 'g'],
];

/** Keys inside a sourced value whose unit stands in the parent's name. */
const insideSourced = new Set<string | number>(['value', 'low', 'high']);

/**
 * Unit of the field a path leads to.
 * @param path keys and indexes from the document's root
 * @returns display symbol, or '' where the field has no unit
 */
export function fieldUnit(path: readonly (string | number)[]): string {
  const named = path.filter((part) => typeof part === 'string' && !insideSourced.has(part));
  const last = String(named[named.length - 1] ?? '');
  const found = endings.find(
    ([ending]) => last === ending || (last.endsWith(ending) && /[a-z0-9]$/.test(last.slice(0, -ending.length))),
  );
  return found ? found[1] : '';
}
