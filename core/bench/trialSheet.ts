/** One page to take to the bench: what to set, what to weigh, where to write it. */

import type { Project } from '../project/schema.ts';
import { formatQuantity } from '../units.ts';
import type { PlannedTrial } from './planTrials.ts';

/** One trial of the sheet. */
interface SheetRow {
  readonly label: string;
  readonly screwSpeed: string;
  readonly heaters: readonly { readonly name: string; readonly temperature: string }[];
  /** how long to run before weighing, and how long to weigh */
  readonly settle: string;
  readonly collect: string;
  /** about what should come, to choose cup and balance */
  readonly expected: string;
  readonly why: string;
  /** names of cells that stay blank */
  readonly blanks: readonly string[];
}

/** The sheet. */
export interface TrialSheet {
  readonly title: string;
  readonly machine: string;
  readonly granulate: string;
  readonly notes: readonly string[];
  readonly rows: readonly SheetRow[];
  readonly cautions: readonly string[];
  /** blank cells for the whole sheet */
  readonly blanks: readonly string[];
}

/** Of any hot, turning machine; common practice. */
const alwaysMind: readonly string[] = [
  'Melt and metal burn: gloves, eye protection, nothing under the nozzle but the cup.',
  'A blocked nozzle holds pressure: never look into it, let it cool or heat it evenly, keep out of its line.',
  'Keep hair and sleeves from the turning screw; unplug before reaching into the hopper.',
  'Run with extraction or fresh air. Local rules and the makers’ data sheets go before this page.',
];

/** Mean residence times that pass before the old melt is out; common practice. */
const settlingTimes = 3;

function settleText({ expected }: PlannedTrial): string {
  if (expected.residence === null) return 'until strand and temperatures are steady';
  const minutes = Math.max(1, Math.ceil((settlingTimes * expected.residence) / 60));
  return `at least ${minutes} min, until strand and temperatures are steady`;
}

function rowOf(plan: PlannedTrial, index: number, heaters: readonly string[]): SheetRow {
  const { trial, expected } = plan;
  const torque = expected.torque === null ? '' : `, ${formatQuantity(expected.torque, 'N·m', 2)}`;
  return {
    label: `${index + 1}`,
    screwSpeed: `${trial.screwSpeedRpm} rpm`,
    heaters: heaters.map((name, i) => ({ name, temperature: `${trial.setTempsC[i]} °C` })),
    settle: settleText(plan),
    collect: `${trial.seconds} s`,
    expected: `about ${formatQuantity(expected.massFlow, 'g/min', 2)}${torque}`,
    why: plan.reason,
    blanks: ['mass, g', 'time, s', 'torque, N·m, or current, A', 'L*', 'a*', 'b*', 'seen'],
  };
}

/**
 * The sheet for planned trials.
 * @param project names of machine, granulate and heaters, and the material's cautions
 * @param revisionId revision that is run
 * @returns texts ready to print, metric; rows empty where nothing is planned
 */
export function trialSheet(project: Project, revisionId: string, plans: readonly PlannedTrial[]): TrialSheet {
  const revision = project.revisions.find(({ id }) => id === revisionId);
  const material = project.materials.find(({ id }) => id === revision?.materialId);
  const zones = (revision?.barrel.zones ?? []).filter(({ kind }) => kind === 'heated');
  const heaters = [...zones.sort((p, q) => p.startMm - q.startMm).map(({ name }) => name), 'nozzle'];
  const invented = project.invented ? ['Machine and figures of this project are invented.'] : [];
  return {
    title: `Trials of ${project.name}`,
    machine: revision ? `${revision.id}: ${revision.name}` : revisionId,
    granulate: material?.name ?? '',
    notes: [
      ...invented,
      'Run the trials in this order. Change one setting, wait, then weigh: tare the cup, cut the strand, start the clock.',
      'Weigh twice where you can. A run that went wrong is worth writing down too.',
    ],
    rows: plans.map((plan, i) => rowOf(plan, i, heaters)),
    cautions: [...alwaysMind, ...(material?.cautions ?? [])],
    blanks: ['date', 'lot', 'granulate dried, h at °C', 'room, °C', 'by'],
  };
}
