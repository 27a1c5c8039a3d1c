/** What a goal seek has found, in figures and in words. */

import { formatNumber, formatQuantity, type Unit } from '../units.ts';
import { figureOf, searchFigures } from './figures.ts';
import { compareMerit, limitStates, type Merit, meritOf, objectiveScale } from './merit.ts';
import { apart } from './seek.ts';
import type { Candidate, Evaluated, FigureChange, LimitState, SeekResult, SeekSpec } from './types.ts';

/** Candidates listed at most. */
const mostListed = 8;

/** Least distance of two listed candidates: the share of its range that some input has to differ by. */
const leastApart = 0.08;

/** Findings are counted beside the figures. */
const countId = 'grave';

function verdictOf(id: string, before: number | null, value: number | null): FigureChange['verdict'] {
  if (before === null || value === null) return 'unknown';
  if (before === value) return 'same';
  const { modelError, better } = figureOf(id);
  const size = Math.max(Math.abs(before), Math.abs(value));
  if (Math.abs(value - before) < modelError * size) return 'smaller than the model error';
  if (better === 'neither') return 'different';
  return value > before === (better === 'more') ? 'better' : 'worse';
}

/** Figures of a design against those of another; relative changes, and whether they exceed the model's error. */
function figureChanges(base: Evaluated, design: Evaluated): readonly FigureChange[] {
  return searchFigures.map(({ id, label, unit }) => {
    const before = base.figures[id] ?? null;
    const value = design.figures[id] ?? null;
    const change = before !== null && value !== null && before !== 0 ? value / before - 1 : null;
    return { id, label, unit, before, value, change, verdict: verdictOf(id, before, value) };
  });
}

const valuesOf = (spec: SeekSpec, { changes }: Evaluated): readonly number[] =>
  spec.inputs.map(({ input, value }) => changes.find((change) => change.input === input)?.value ?? value);

function endsOf(spec: SeekSpec, design: Evaluated): Candidate['atEnd'] {
  const values = valuesOf(spec, design);
  return spec.inputs.flatMap(({ input, label, low, high, step }, i): Candidate['atEnd'] => {
    const value = values[i] ?? 0;
    if (value - low < step) return [{ input, label, end: 'low' }];
    return high - value < step ? [{ input, label, end: 'high' }] : [];
  });
}

interface Ranked {
  readonly design: Evaluated;
  readonly merit: Merit;
}

/** The best, each apart from those before it. */
function distinct(spec: SeekSpec, ranked: readonly Ranked[]): readonly Ranked[] {
  const chosen: Ranked[] = [];
  for (const one of ranked) {
    if (chosen.length === mostListed || !Number.isFinite(one.merit.beyond)) break;
    const values = valuesOf(spec, one.design);
    if (chosen.every(({ design }) => apart(spec.inputs, values, valuesOf(spec, design)) >= leastApart))
      chosen.push(one);
  }
  return chosen;
}

const shown = (value: number | null, unit: Unit | ''): string =>
  value === null ? 'no number' : unit === '' ? formatNumber(value, 3) : formatQuantity(value, unit, 3);

const inSentence = (label: string): string =>
  /^[A-Z][a-z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;

const limitText = ({ label, sense, bound, unit }: LimitState): string =>
  `${inSentence(label)} ${sense === 'atMost' ? 'at most' : 'at least'} ${shown(bound, unit)}`;

/** Whether a search gives up its objective for its limits, or has found less than there was. */
const keptNow = ({ limits }: SeekSpec, base: Evaluated): string =>
  limitStates(limits, base).every(({ beyond }) => beyond === 0)
    ? 'and the present design keeps all limits'
    : 'but the present design does not keep all limits';

/** What the best candidate gains. */
function gainText(spec: SeekSpec, best: Candidate, base: Evaluated): string {
  const { figure, sense } = spec.objective;
  const { label, unit } = figureOf(figure);
  const found = best.figures.find(({ id }) => id === figure);
  const [before, after] = [base.figures[figure] ?? null, found?.value ?? null];
  const from = shown(before, unit);
  const to = shown(after, unit);
  const head = `${sense === 'least' ? 'Least' : 'Most'} ${inSentence(label)}: ${to}, against ${from} now`;
  if (found?.verdict === 'smaller than the model error')
    return `${head}; the difference is smaller than the model’s error.`;
  if (found?.verdict === 'same') return `${head}: nothing is gained.`;
  const lost = before !== null && after !== null && (sense === 'least' ? after > before : after < before);
  return lost ? `${head}: worse than now, ${keptNow(spec, base)}.` : `${head}.`;
}

/** Which limits and bounds hold the best candidate where it is. */
function bindingText({ limits, atEnd }: Candidate): readonly string[] {
  const binding = limits.filter(({ state }) => state === 'binds').map(limitText);
  const ends = atEnd.map(({ label, end }) => `${inSentence(label)} at its ${end === 'low' ? 'lowest' : 'highest'}`);
  return [
    binding.length > 0 ? `Limits that bind: ${binding.join('; ')}.` : 'No limit binds the first candidate.',
    ...(ends.length > 0 ? [`At the end of its range: ${ends.join('; ')}. A wider range may do better.`] : []),
  ];
}

const missedText = (limit: LimitState): string =>
  limit.beyond === null
    ? `${limitText(limit)} cannot be told, as it has no number`
    : `${limitText(limit)} is missed by ${formatQuantity(limit.beyond, '%', 2)} (${shown(limit.value, limit.unit)})`;

/** Where nothing meets all limits: the one nearest to being met, and by how much each candidate misses. */
function unmetText(first: Candidate | undefined): readonly string[] {
  if (!first) return ['No candidate delivers anything: all were refused or stood still.'];
  const far = ({ beyond }: LimitState) => beyond ?? Number.MAX_VALUE;
  const unmet = first.limits.filter(({ state }) => state === 'unmet').sort((a, b) => far(a) - far(b));
  const missed = unmet.map(missedText);
  const [nearest] = missed;
  const more = missed.length > 1 ? ` Further off: ${missed.slice(1).join('; ')}.` : '';
  return [
    'No candidate meets all limits.',
    `Nearest to being met by the one that misses least: ${nearest ?? 'none'}.${more}`,
  ];
}

function accountOf(spec: SeekSpec, base: Evaluated, candidates: readonly Candidate[]): readonly string[] {
  const [first] = candidates;
  if (!first?.meets) return unmetText(first);
  return [gainText(spec, first, base), ...bindingText(first)];
}

/**
 * Ranks what was evaluated: those that keep all limits by their objective, then the others by how far they are beyond.
 * @param base the present design, evaluated like the candidates
 * @param designs in any order; the result depends on their values alone
 */
export function seekResult(spec: SeekSpec, base: Evaluated, designs: readonly Evaluated[]): SeekResult {
  const scale = objectiveScale(spec, base);
  const merits = designs.map((design) => ({ design, merit: meritOf(spec, scale, design) }));
  const order = (a: Ranked, b: Ranked) =>
    compareMerit(a.merit, b.merit) ||
    valuesOf(spec, a.design).reduce((sign, value, i) => sign || value - (valuesOf(spec, b.design)[i] ?? 0), 0);
  const candidates = distinct(spec, [...merits].sort(order)).map(
    ({ design, merit }, i): Candidate => ({
      design,
      rank: i + 1,
      meets: merit.beyond === 0,
      limits: limitStates(spec.limits, design),
      figures: figureChanges(base, design).filter(({ id }) => id !== countId),
      atEnd: endsOf(spec, design),
    }),
  );
  return {
    evaluated: designs.length,
    holes: designs.filter(({ hole }) => hole !== null).length,
    meeting: merits.filter(({ merit }) => merit.beyond === 0).length,
    base,
    baseLimits: limitStates(spec.limits, base),
    candidates,
    account: accountOf(spec, base, candidates),
  };
}
