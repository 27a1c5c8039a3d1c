/** What the rules of grain and feed see of the demo's revision C, with parts changed and nothing solved anew. */

import type { Design } from '../../../core/design/types.ts';
import { feedCapacity, feedPlace } from '../../../core/feed/capacity.ts';
import type { FindingContext, FindingRule, Found } from '../../../core/findings/context.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { drivenPoint } from '../../../core/prediction/drivenPoint.ts';
import { createMachine } from '../../../core/prediction/machine.ts';
import { predict } from '../../../core/prediction/predict.ts';
import { demo } from '../feed/made.ts';

const machine = createMachine(demo, 8);

/** The demo as it is. */
export const soundContext: FindingContext = {
  design: demo,
  machine,
  driven: drivenPoint(machine),
  prediction: predict(demo, { curvePoints: 0 }),
};

/** With another design: stations, place and feed follow, the rest stays. */
export function contextOf(design: Design, base: FindingContext = soundContext): FindingContext {
  const stations = buildStations(design, 8);
  const feed = feedPlace(design, stations);
  const { point } = base.driven;
  const capacity = feedCapacity(design, feed, point.screwSpeed);
  return {
    ...base,
    design,
    machine: { ...base.machine, design, stations, feed },
    driven: { ...base.driven, point: { ...point, feed: capacity } },
  };
}

/** What one rule of a list finds. */
export function check(rules: readonly FindingRule[], code: string, context: FindingContext): Found | null {
  const rule = rules.find((each) => each.code === code);
  if (!rule) throw new Error(`no rule ${code}`);
  return rule.check(context);
}
