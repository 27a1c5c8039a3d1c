/** What to mind with each file for the controller: what is special here first, then what is usual. */

import type { Prediction } from '../../prediction/types.ts';
import { formatNumber } from '../../units.ts';
import type { HandoverSource } from '../types.ts';
import { guardText } from './coldGuard.ts';
import { directionText } from './direction.ts';
import { type FlowPlan, fastestFeed } from './flowPlan.ts';
import { flowCautions } from './words.ts';

/** Less than this, g, asks for a finer balance than a kitchen's; own choice. */
const lightest = 5;

/** What the granulates of the library say of burns, which the usual cautions of the test say already. */
const saidOfBurns = 'Molten material and hot metal burn; wear gloves and eye protection.';

/** How finely to weigh for one part in a hundred. */
const lightText = (grams: number): string =>
  `The lightest step brings about ${formatNumber(grams, 2)} g: weigh to ${formatNumber(grams / 100, 1)} g, or weigh for longer.`;

/** What the feeds ask of the controller, which slows a move without a word. */
function feedText(plan: FlowPlan): string {
  const { filamentDiameter, printDiameter } = plan;
  const own = filamentDiameter === printDiameter;
  const other = own
    ? ''
    : `Lengths of this test are of a virtual filament of ${filamentDiameter} mm, not the ${formatNumber(printDiameter, 4)} mm of the print settings, so that feeds stay low. `;
  return `${other}The controller must let the extruder move at ${formatNumber(fastestFeed(plan), 3)} mm/s: a lower limit of its own slows the screw silently, and the speeds on the sheet are then wrong.`;
}

function soakTexts({ soak, soakAsked }: FlowPlan, prediction: Prediction | null): string[] {
  if (prediction?.warmUp === null || prediction === null)
    return ['How long the screw takes to warm was not predicted: soak until it surely has.'];
  const minutes = (seconds: number): string => `${formatNumber(seconds / 60, 3)} min`;
  if (soak === soakAsked) return [];
  return [
    `The soak is ${minutes(soak)}, not the ${minutes(soakAsked)} asked for: so long is predicted from hot heaters until the screw may turn.`,
  ];
}

/** What to mind in a flow test, in its head, on its sheet and in the dialogue. */
export function flowTestCautions(
  { subjects: [{ design, prediction }] }: HandoverSource,
  plan: FlowPlan,
): readonly string[] {
  const guard = guardText(plan.heaters);
  return [
    directionText(design),
    ...soakTexts(plan, prediction),
    ...plan.cuts,
    ...(plan.steps[0].grams < lightest ? [lightText(plan.steps[0].grams)] : []),
    feedText(plan),
    ...(guard === null ? [] : [guard]),
    ...flowCautions,
    ...design.material.cautions.filter((text) => text !== saidOfBurns),
  ];
}

/** Why numbers of a design must not be run as they are: its stops, and that nothing flows. */
export function stopCautions({ findings, output }: Prediction): readonly string[] {
  const stops = findings
    .filter(({ severity }) => severity === 'stop')
    .map(({ saw, change }) => `Stop: ${saw} ${change}`);
  return output.flows || stops.length > 0 ? stops : ['Stop: nothing is predicted to come out of the nozzle.'];
}
