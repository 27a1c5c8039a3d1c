/** The controller's guard against cold extrusion, which refuses to turn an extruder below a temperature. */

import type { Heater } from './heaters.ts';

/** Where that guard usually stands, °C: common practice of printer firmware. */
const usualGuard = 170;

/** A heater swings about its set temperature; so much room is left below it, °C. Own choice. */
const swing = 5;

const isBelow = ({ celsius }: Heater): boolean => celsius - swing < usualGuard;

/**
 * What the guard may be lowered to, and for which heater: the nozzle, which it watches as a rule, else the coolest zone.
 * @returns null where the usual guard leaves room below every heater
 */
export function guardLimit(heaters: readonly Heater[]): { readonly celsius: number; readonly of: Heater } | null {
  const nozzle = heaters[heaters.length - 1];
  const coolest = heaters.reduce((lowest, heater) => (heater.celsius < lowest.celsius ? heater : lowest));
  const of = isBelow(nozzle) ? nozzle : coolest;
  return isBelow(of) ? { celsius: of.celsius - swing, of } : null;
}

/** Told to the person, who decides; null where the usual guard may stay. */
export function guardText(heaters: readonly Heater[]): string | null {
  const limit = guardLimit(heaters);
  if (limit === null) return null;
  const { celsius, of } = limit;
  const where = of === heaters.at(-1) ? 'Its' : `Only if it watches ${of.name} its`;
  return `The guard against cold extrusion usually stands at ${usualGuard} °C, and ${of.name} is set to ${of.celsius} °C. ${where} limit must be lowered by you to ${celsius} °C (M302 S${celsius}), no lower, and set back afterwards; never switch it off.`;
}

/** The command as a remark: nobody's guard is lowered without the person. */
export function guardLines(heaters: readonly Heater[]): readonly string[] {
  const limit = guardLimit(heaters);
  if (limit === null) return [];
  return [
    `; Only where the guard refuses although ${limit.of.name} is at ${limit.of.celsius} C: take the first ; from the next line.`,
    `;M302 S${limit.celsius} ; guard against cold extrusion, usually ${usualGuard} C`,
  ];
}
