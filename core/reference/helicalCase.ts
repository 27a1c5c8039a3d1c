/** Case D: helical channel, not unwrapped. */

import type { HelicalSection } from '../flow/field/channelSection.ts';
import { channelCurve, solveChannelForFlow } from '../flow/field/channelSolver.ts';
import { prepareChannel } from '../flow/field/prepared.ts';
import {
  type CaseEntry,
  closedGradient,
  type Fields,
  lawOf,
  numberOf,
  numberOr,
  type RowOut,
  relativeRow,
} from './caseFormat.ts';

function helicalSectionOf(inputs: Fields): HelicalSection {
  return {
    kind: 'helical',
    barrelRadius: numberOf(inputs, 'D_barrel_m') / 2,
    rootRadius: numberOf(inputs, 'D_root_m') / 2,
    lead: numberOf(inputs, 'pitch_m'),
    starts: numberOr(inputs, 'starts', 1),
    flightAxialWidth: numberOf(inputs, 'flight_axial_width_m'),
    flankAngle: 0,
    rootFillet: 0,
  };
}

/** Rows of one entry: closed-discharge gradient and flow. */
export function helicalCaseRows(entry: CaseEntry): RowOut[] {
  const section = helicalSectionOf(entry.inputs);
  const spin = 2 * Math.PI * numberOf(entry.inputs, 'N_rev_per_s');
  const motion = { barrelSpeed: spin * section.barrelRadius };
  const law = lawOf(entry.inputs, spin);
  const prepared = prepareChannel(section, { coarseness: 0.7 });
  const limit = law.model === 'newtonian' ? 0.01 : 0.02;
  const options = { tolerance: 1e-4 };
  const gradients = entry.rows.map((row) => numberOf(row, 'dpdz_axial_Pa_per_m'));
  const states = channelCurve(prepared, law, motion, [...gradients, 0], options);
  const drag = states[gradients.length].flowRate;
  const out: RowOut[] = [];
  const closed = closedGradient(entry.rows, 'dpdz_axial_Pa_per_m');
  if (closed !== null) {
    const got = solveChannelForFlow(prepared, law, motion, 0, options);
    out.push(relativeRow('closed-discharge gradient, Pa/m', closed, got.gradient, limit));
  }
  entry.rows.forEach((row, k) => {
    const flow = numberOf(row, 'Q_m3_per_s');
    const scale = Math.abs(flow) > 0.01 * drag ? flow : drag;
    const at = `at ${numberOr(row, 'G_fraction_of_closed', Number.NaN)} of closed`;
    out.push(relativeRow(`flow ${at}, m3/s`, flow, states[k].flowRate, limit, scale));
  });
  return out;
}
