/** Names of doubtful fields, and how each could be measured. */

const unitEnding =
  /(?<=[a-z0-9])(MmPerS|KJPerMol|JPerKgK|JPerKg|WPerM2K|WPerMK|NPerM|GPerMin|KgM3|KPerPa|PerMK|PerGPa|PerK|PerS|PaSn|PaS|MPa|GPa|Pa|Rpm|Deg|Mm|Nm|C|K|W|S|A)$/;

const words = (key: string): string =>
  key.replace(/([a-z0-9])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);

/**
 * Readable name of a field.
 * @param path text of its place
 * @returns e.g. `Friction on barrel`, `Screw, sections 3, lead start`
 */
export function fieldLabel(path: string): string {
  const parts = path
    .replace(/^material\./, '')
    .split('.')
    .filter((part) => part !== 'value')
    .map((part) => part.replace(/\[(\d+)\]/g, (_, index: string) => ` ${Number(index) + 1}`));
  const text = parts.map((part) => words(part.replace(unitEnding, ''))).join(', ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** First match wins. All common practice. */
const ways: readonly (readonly [RegExp, string])[] = [
  [/factor\.feed|bulkDensity|hopper/, 'Weigh the output at two or three speeds, and a filled cup of granules.'],
  [/friction/i, 'Slide a tray of granules on a plate of the barrel’s metal and read the angle, warm and cold.'],
  [
    /factor\.viscosity|rheology|filler/,
    'Weigh the output and read the torque at two set temperatures, or have the melt flow measured.',
  ],
  [/degradation|colourRate|colourAnchors/, 'Hold strands of known age and temperature against a colour reading.'],
  [/meltDensity/, 'Weigh a known length of strand, or a purge in oil.'],
  [/softening|melting|heatOf|heatCapacity/, 'Have a calorimeter curve taken of the granulate.'],
  [/conductivity/, 'Take a value measured on the filled melt.'],
  [/clearance|Diameter|lead|length|flight/i, 'Measure the part.'],
  [/Temp|C$/, 'Put a thermocouple where the value counts.'],
];

/** How an unknown is measured in a workshop. */
export const howToMeasure = (path: string): string =>
  ways.find(([pattern]) => pattern.test(path))?.[1] ?? 'Measure it, or find a source with a narrower range.';
