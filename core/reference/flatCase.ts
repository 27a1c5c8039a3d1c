/** Case A: straight rectangular channel. */

import { barrelForce, barrelStressAt } from '../flow/field/barrelStress.ts';
import type { FlatSection } from '../flow/field/channelSection.ts';
import { type ChannelState, channelCurve, solveChannelForFlow } from '../flow/field/channelSolver.ts';
import { streamGrid } from '../flow/field/orbitGrid.ts';
import { type PreparedChannel, prepareChannel } from '../flow/field/prepared.ts';
import {
  type CaseEntry,
  closedGradient,
  type Fields,
  fieldsOf,
  lawOf,
  numberOf,
  numberOr,
  type RowOut,
  relativeRow,
} from './caseFormat.ts';

/** Section of an entry of case A or B. */
export function flatSectionOf(inputs: Fields): FlatSection {
  const depth = numberOf(inputs, 'H_m');
  return {
    kind: 'flat',
    depth,
    width: numberOf(inputs, 'W_m'),
    helixAngle: (numberOf(inputs, 'phi_deg') * Math.PI) / 180,
    rootFillet: numberOr(inputs, 'fillet_over_H', 0) * depth,
    flankAngle: 0,
  };
}

/** Rows of one entry: closed-discharge gradient, flow, stream function, dissipation, barrel stress and power with cut-off. */
export function flatCaseRows(entry: CaseEntry): RowOut[] {
  const section = flatSectionOf(entry.inputs);
  const speed = numberOf(entry.inputs, 'V_barrel_m_per_s');
  const law = lawOf(entry.inputs, speed / section.depth);
  const prepared = prepareChannel(section, { coarseness: 0.7 });
  const limit = law.model === 'newtonian' ? 0.01 : 0.02;
  const motion = { barrelSpeed: speed };
  const gradients = entry.rows.map((row) => numberOf(row, 'G_Pa_per_m'));
  const states = channelCurve(prepared, law, motion, gradients, { tolerance: 1e-4 });
  const out: RowOut[] = [];
  const closed = closedGradient(entry.rows, 'G_Pa_per_m');
  if (closed !== null) {
    const got = solveChannelForFlow(prepared, law, motion, 0, { tolerance: 1e-4 });
    out.push(relativeRow('closed-discharge gradient, Pa/m', closed, got.gradient, limit));
  }
  entry.rows.forEach((row, k) => {
    out.push(...stateRows(prepared, states[k], row, limit));
  });
  return out;
}

function stateRows(prepared: PreparedChannel, state: ChannelState, row: Fields, limit: number): RowOut[] {
  const at = `at ${numberOr(row, 'G_fraction_of_closed', Number.NaN)} of closed`;
  const section = prepared.section as FlatSection;
  const drag = (state.motion.barrelSpeed * Math.cos(section.helixAngle) * section.width * section.depth) / 2;
  const flow = numberOf(row, 'Q_m3_per_s');
  // near closed discharge the flow is a small difference; its error is then judged against the drag flow
  const scale = Math.abs(flow) > 0.01 * drag ? flow : drag;
  const out = [relativeRow(`flow ${at}, m3/s`, flow, state.flowRate, limit, scale)];
  const compare = (quantity: string, name: string, got: () => number, bound: number) => {
    if (typeof row[name] === 'number') out.push(relativeRow(`${quantity} ${at}`, row[name], got(), bound));
  };
  compare('stream function extremum', 'stream_extremum_abs_m2_per_s', () => streamExtremum(state), 0.01);
  compare('dissipation, W/m,', 'total_dissipation_W_per_m', () => state.dissipation, 0.02);
  compare('barrel stress down mid-channel, Pa,', 'lid_shear_down_mid_Pa', () => barrelStressAt(state, 1).along, 0.02);
  compare(
    'barrel stress across mid-channel, Pa,',
    'lid_shear_cross_mid_Pa',
    () => barrelStressAt(state, 1).across,
    0.02,
  );
  if (row.lid_power_W_per_m) out.push(...powerRows(state, fieldsOf(row.lid_power_W_per_m, 'lid power'), section, at));
  return out;
}

/** Barrel power without strips at the flanks, 3 %: the stored values are good to about 1 % there. */
function powerRows(state: ChannelState, powers: Fields, section: FlatSection, at: string): RowOut[] {
  const out: RowOut[] = [];
  for (const [key, value] of Object.entries(powers)) {
    const cut = /^cut_([0-9.]+)_H$/.exec(key);
    if (!cut) continue;
    const stored = fieldsOf(value, key);
    const force = barrelForce(state, Number(cut[1]) * section.depth);
    const speed = state.motion.barrelSpeed;
    const down = force.along * speed * Math.cos(section.helixAngle);
    const cross = force.across * speed * Math.sin(section.helixAngle);
    const sum = numberOf(stored, 'down') + numberOf(stored, 'cross');
    out.push(relativeRow(`barrel power beyond ${cut[1]} H, W/m, ${at}`, sum, down + cross, 0.03));
  }
  return out;
}

function streamExtremum(state: ChannelState): number {
  return streamGrid(state, 0.01).stream.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}
