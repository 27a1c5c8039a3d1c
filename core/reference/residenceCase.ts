/** Case B: residence times on the orbits of a straight channel with root fillets. */

import { channelCurve } from '../flow/field/channelSolver.ts';
import { streamGrid } from '../flow/field/orbitGrid.ts';
import { prepareChannel } from '../flow/field/prepared.ts';
import { channelOrbits, type Orbits } from '../residence/orbits.ts';
import { cumulativeAt, type OrbitTimes, orbitTimes, shareOlder } from '../residence/orbitTimes.ts';
import {
  absoluteRow,
  type CaseEntry,
  type Fields,
  fieldsOf,
  lawOf,
  numberOf,
  numberOr,
  type RowOut,
  relativeRow,
} from './caseFormat.ts';
import { flatSectionOf } from './flatCase.ts';

/**
 * Shallowest channel with the firm limits. In shallower ones psi is a plateau: stored minima and the steep first part of
 * F are noise of their bins (errors of 0.03 and more are stated), so the dwell at the vortex centre stands in, and F is
 * compared from the mean on with twice the limit.
 */
const FIRM_RATIO = 0.3 - 1e-9;

/** Rows of one entry: flow, shortest dwell, F at its multiples of the mean, area older than 3 times the mean. */
export function residenceCaseRows(entry: CaseEntry): RowOut[] {
  const { inputs } = entry;
  const section = flatSectionOf(inputs);
  const speed = numberOf(inputs, 'V_barrel_m_per_s');
  const law = lawOf(inputs, speed / section.depth);
  const prepared = prepareChannel(section, { coarseness: 0.4 });
  const material = fieldsOf(inputs.material, 'material');
  const index = material.model === 'power_law' ? numberOf(material, 'n') : 1;
  const consistency = numberOr(material, 'm', numberOr(material, 'eta', numberOr(material, 'eta0', Number.NaN)));
  const unit = (consistency * speed ** index) / section.depth ** (index + 1);
  const gradients = entry.rows.map((row) => numberOf(row, 'G_dimensionless') * unit);
  const states = channelCurve(prepared, law, { barrelSpeed: speed }, gradients);
  const firm = section.depth / section.width >= FIRM_RATIO;
  return entry.rows.flatMap((row, k) => {
    const orbits = channelOrbits(streamGrid(states[k], 0.005));
    const flow = states[k].flowRate / (speed * section.depth ** 2);
    const at = `at ${numberOr(row, 'G_fraction_of_closed', Number.NaN)} of closed`;
    const expected = numberOf(row, 'Q_over_V_H2');
    const limit = law.model === 'newtonian' ? 0.01 : 0.02;
    return [relativeRow(`flow ${at}`, expected, flow, limit), ...dwellRows(orbits, row, at, firm)];
  });
}

function dwellRows(orbits: Orbits, row: Fields, at: string, firm: boolean): RowOut[] {
  const times: OrbitTimes = orbitTimes(orbits);
  const out: RowOut[] = [];
  if (firm) out.push(absoluteRow(`shortest dwell ${at}`, numberOf(row, 't_min_over_mean'), times.minimum, 0.02));
  if (typeof row.t_center_over_mean === 'number') {
    out.push(absoluteRow(`dwell at the vortex centre ${at}`, row.t_center_over_mean, times.centre, 0.02));
  }
  for (const [multiple, share] of Object.entries(fieldsOf(row.F, 'F'))) {
    if (typeof share !== 'number' || (!firm && Number(multiple) < 1)) continue;
    out.push(absoluteRow(`F(${multiple}) ${at}`, share, cumulativeAt(times, Number(multiple)), firm ? 0.02 : 0.04));
  }
  const older = numberOf(fieldsOf(row.area_frac_dwell_gt, 'area_frac_dwell_gt'), '3');
  out.push(absoluteRow(`area older than 3 means ${at}`, older, shareOlder(orbits, 3), 0.03));
  return out;
}
