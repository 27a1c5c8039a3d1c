/** Evaluates reference entries of flow between screw tip and nozzle (case C) with this project's own solver. */

import type { AgeStatistics } from '../flow/tip/ageStatistics.ts';
import { eddyLengthBefore } from '../flow/tip/eddies.ts';
import { contractionProfile, type TipRegion, type TipShape, tipLength } from '../flow/tip/region.ts';
import { ageStatisticsAt, solveTipFully, type TipOptions, type TipSolution } from '../flow/tip/solveTip.ts';
import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { fail, type Issue, issueText, ok, type Result } from '../result.ts';
import type { RowOut } from './caseFormat.ts';

/** One compared quantity; `expected` is NaN where the entry states no value. */
export type TipCaseRow = RowOut;

type Json = Readonly<Record<string, unknown>>;

const DEG = Math.PI / 180;

/** Agreement asked of each quantity: relative, or absolute where marked. */
export const TIP_CASE_LIMITS = { pressureDrop: 0.01, fractionOver3: 0.015, eddyLength: 0.05, outletAge: 0.01 } as const;

function asJson(value: unknown): Json {
  return typeof value === 'object' && value !== null ? (value as Json) : {};
}

function number(json: Json, key: string, issues: Issue[]): number {
  const value = json[key];
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  issues.push({
    ...{ path: ['inputs', key], code: 'reference-number', message: `The entry has no number "${key}".` },
    ...{ value: String(value), allowed: 'a finite number', remedy: 'Complete the reference file.' },
  });
  return Number.NaN;
}

/** `flat`, `hemisphere` or `cone_<full angle>deg`. */
function tipShape(text: unknown, issues: Issue[]): TipShape {
  if (text === 'flat' || text === 'hemisphere') return { kind: text };
  const angle = /^cone_([\d.]+)deg$/.exec(String(text))?.[1];
  if (angle) return { kind: 'cone', includedAngle: Number(angle) * DEG };
  issues.push({
    ...{ path: ['inputs', 'tip'], code: 'reference-tip', message: 'The entry names an unknown tip.' },
    ...{ value: String(text), allowed: 'flat, hemisphere, cone_<angle>deg', remedy: 'Correct the reference file.' },
  });
  return { kind: 'flat' };
}

/** Viscosity law of an entry's `material`: newtonian, power_law, carreau_yasuda or cross. */
function referenceLaw(material: Json, issues: Issue[]): ViscosityLaw {
  const at = (key: string): number => number(material, key, issues);
  switch (material.model) {
    case 'newtonian':
      return { model: 'newtonian', viscosity: at('eta') };
    case 'power_law':
      return { model: 'powerLaw', consistency: at('m'), index: at('n'), regularisingRate: at('reg_shear_rate') };
    case 'carreau_yasuda':
      return {
        ...{ model: 'carreauYasuda', zeroShearViscosity: at('eta0'), timeConstant: at('lambda') },
        ...{ infiniteShearViscosity: Number(material.eta_inf ?? 0), transition: at('a'), index: at('n') },
      };
    case 'cross':
      return { model: 'cross', zeroShearViscosity: at('eta0'), criticalStress: at('tau_star'), index: at('n') };
  }
  issues.push({
    ...{ path: ['inputs', 'material', 'model'], code: 'reference-law', message: 'The entry names an unknown law.' },
    ...{
      value: String(material.model),
      allowed: 'newtonian, power_law, carreau_yasuda, cross',
      remedy: 'Correct the file.',
    },
  });
  return { model: 'newtonian', viscosity: 1 };
}

/** An entry's inputs in the solver's terms. */
interface TipCase {
  readonly region: TipRegion;
  readonly law: ViscosityLaw;
  readonly volumeFlow: number;
}

/** Reads `inputs` of an entry. */
function readTipCase(inputs: unknown): Result<TipCase> {
  const issues: Issue[] = [];
  const json = asJson(inputs);
  const at = (key: string): number => number(json, key, issues);
  const screw = { screwRadius: at('R_root_m'), tip: tipShape(json.tip, issues) };
  const annulusLength = at('annulus_length_m');
  const outer = contractionProfile({
    barrelRadius: at('R_barrel_m'),
    straightLength: annulusLength + tipLength(screw) + at('gap_m'),
    includedAngle: at('contraction_included_angle_deg') * DEG,
    orificeRadius: at('nozzle_diameter_m') / 2,
    landLength: at('land_m'),
  });
  const law = referenceLaw(asJson(json.material), issues);
  const volumeFlow = at('Q_m3_per_s');
  return issues.length > 0 ? fail(...issues) : ok({ region: { ...screw, annulusLength, outer }, law, volumeFlow });
}

function row(quantity: string, expected: unknown, got: number, limit: number, scale: number): TipCaseRow[] {
  if (typeof expected !== 'number') return [];
  const error = (got - expected) / scale;
  return [{ quantity, expected, got, error, limit, pass: Math.abs(error) <= limit }];
}

function flowRows(solution: TipSolution, region: TipRegion, outputs: Json): TipCaseRow[] {
  const { field, system, state } = solution;
  const bore = region.outer[0].r;
  const eddy = eddyLengthBefore(system, state, region.outer[1]);
  const drop = Number(outputs.dp_total_Pa);
  return [
    ...row('dp_total_Pa (relative)', outputs.dp_total_Pa, field.pressureDrop, TIP_CASE_LIMITS.pressureDrop, drop),
    ...row(
      'barrel_corner_eddy_length_m (per bore radius)',
      outputs.barrel_corner_eddy_length_m,
      eddy,
      TIP_CASE_LIMITS.eddyLength,
      bore,
    ),
  ];
}

const pecletOf = (key: string): number => Number(key.replace('age_Pe', ''));

/** Ages of a solved flow at the Peclet number of a key such as `age_Pe1e5`. */
function ageRows(solution: TipSolution, { region, volumeFlow }: TipCase, key: string, expected: Json): TipCaseRow[] {
  return statisticsRows(ageStatisticsAt(solution, region, { volumeFlow }, pecletOf(key)), key, expected);
}

function statisticsRows(statistics: AgeStatistics | undefined, key: string, expected: Json): TipCaseRow[] {
  if (!statistics) return [];
  const over3 = `${key}.vol_frac_age_gt_3 (absolute)`;
  return [
    ...row(over3, expected.vol_frac_age_gt_3, statistics.fractionOver3, TIP_CASE_LIMITS.fractionOver3, 1),
    // the law, not the entry's own outlet age, is the target: outlet mean age = V/Q (Danckwerts 1953)
    ...row(
      `${key}.outlet_age_over_VQ (law)`,
      1,
      statistics.outletMean / statistics.meanTime,
      TIP_CASE_LIMITS.outletAge,
      1,
    ),
  ];
}

function convergenceRow(solution: TipSolution): TipCaseRow {
  const { converged, residual } = solution.field.convergence;
  return { quantity: 'converged', expected: 1, got: converged ? 1 : 0, error: residual, limit: 1e-6, pass: converged };
}

/**
 * Solves one entry and compares every quantity it states.
 * @param entry parsed JSON {inputs, outputs}; lengths m, flow m3/s, any parameters in that format
 * @param options solver options; the ages' Peclet numbers come from the entry
 * @returns rows, or one failing row per issue when the entry cannot be read or solved
 */
export function evaluateTipCase(entry: unknown, options: TipOptions = {}): TipCaseRow[] {
  const outputs = asJson(asJson(entry).outputs);
  const read = readTipCase(asJson(entry).inputs);
  if (!read.ok) return failedRows(read.issues);
  const { region, law, volumeFlow } = read.value;
  const keys = Object.keys(outputs)
    .filter((key) => /^age_Pe[\d.e]+$/.test(key))
    .reverse();
  const first = keys[0] ?? 'age_Pe1e5';
  const solved = solveTipFully(region, law, { volumeFlow }, { ...options, peclet: pecletOf(first) });
  if (!solved.ok) return failedRows(solved.issues);
  return [
    convergenceRow(solved.value),
    ...flowRows(solved.value, region, outputs),
    ...statisticsRows(solved.value.field.statistics, first, asJson(outputs[first])),
    ...keys.slice(1).flatMap((key) => ageRows(solved.value, read.value, key, asJson(outputs[key]))),
  ];
}

function failedRows(issues: readonly Issue[]): TipCaseRow[] {
  return issues.map((issue) => ({
    ...{ quantity: issueText(issue), expected: Number.NaN, got: Number.NaN, error: Number.NaN, limit: 0, pass: false },
  }));
}
