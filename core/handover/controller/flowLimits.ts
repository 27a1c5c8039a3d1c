/** How fast a screw may be asked to turn in a first trial: never beyond torque, pressure or a stop of the findings. */

import type { Design } from '../../design/types.ts';
import { interpolateLinear } from '../../math/interpolate.ts';
import type { Prediction } from '../../prediction/types.ts';
import { fail, type Issue, ok, type Result } from '../../result.ts';
import { formatQuantity } from '../../units.ts';

/** Share of usable torque and of the pressure limit that a trial may ask for; own choice, for what a prediction misses. */
export const trialShare = 0.8;

/** The fastest a trial may run, and what ends it. */
export interface FlowLimit {
  /** rev/s */
  readonly highest: number;
  readonly reason: string;
}

const refused = (message: string, remedy: string): Issue => ({
  path: ['design'],
  code: 'flow-test-refused',
  message,
  remedy,
});

/** Why no flow test is written of this design, gravest first; empty where it may run. */
function stops(design: Design, prediction: Prediction): readonly Issue[] {
  const found = prediction.findings
    .filter(({ severity }) => severity === 'stop')
    .map(({ saw, change }) => refused(`A trial would be run against a stop: ${saw}`, change));
  if (!prediction.output.flows && found.length === 0)
    found.push(refused('Nothing is predicted to come out of the nozzle.', 'Mend the design first; see the findings.'));
  if (prediction.warmUp !== null && !Number.isFinite(prediction.warmUp.mayTurn) && found.length === 0)
    found.push(
      refused('The screw is predicted never to be warm enough to turn.', 'Give zones more power; see warming up.'),
    );
  const hottest = Math.max(design.nozzle.setTemperature, ...design.barrel.zones.map(setOf));
  if (hottest > design.material.maxSafe) {
    const most = formatQuantity(design.material.maxSafe, '°C', 4);
    found.push(
      refused(
        `A heater is set to ${formatQuantity(hottest, '°C', 4)}, above ${most}, which is safe for the granulate.`,
        `Set heaters to ${most} or less.`,
      ),
    );
  }
  return found;
}

const setOf = (zone: Design['barrel']['zones'][number]): number => (zone.kind === 'heated' ? zone.setTemperature : 0);

/** Whether torque, pressure and flow at a point of the curve let a trial run there; else why not. */
function boundAt({ barrel }: Design, { curve }: Prediction, i: number): string | null {
  if (!(curve.torque[i] <= trialShare * curve.torqueAvailable[i])) return 'torque of the drive';
  if (barrel.pressureLimit !== null && curve.headPressure[i] > trialShare * barrel.pressureLimit)
    return 'pressure limit of the barrel';
  return curve.volumeFlow[i] > 0 ? null : 'nothing comes out';
}

/**
 * The highest speed of a flow test: up to it, at every predicted speed, torque stays below 0.8 of what the drive may
 * give and pressure below 0.8 of the barrel's limit; never above 1.25 times the speed that the design is set to.
 * @returns issues where the design has a stop, nothing flows, or no speed is left
 */
export function flowLimit(design: Design, prediction: Prediction): Result<FlowLimit> {
  const found = stops(design, prediction);
  if (found.length > 0) return fail(...found);
  const { screwSpeed } = prediction.curve;
  let highest = 0;
  let reason = 'end of the predicted speeds';
  for (let i = 0; i < screwSpeed.length; i++) {
    if (screwSpeed[i] === 0) continue;
    const bound = boundAt(design, prediction, i);
    if (bound !== null) {
      reason = bound;
      break;
    }
    highest = screwSpeed[i];
  }
  const usual = 1.25 * design.process.screwSpeed;
  if (highest > usual) return ok({ highest: usual, reason: 'a quarter above the set speed' });
  if (highest > 0) return ok({ highest, reason });
  return fail(
    refused(
      `No speed leaves enough reserve: ${reason} bounds them all.`,
      'Raise the temperature, gear lower or deepen the channel.',
    ),
  );
}

/** Predicted flow (m³/s) at a speed (rev/s) of a trial. */
export const flowAt = ({ curve }: Prediction, speed: number): number =>
  interpolateLinear([0, ...curve.screwSpeed], [0, ...curve.volumeFlow], speed);
