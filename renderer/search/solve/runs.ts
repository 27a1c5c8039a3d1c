/** Sweeps and goal seeks over a pool of workers, told as they go. */

import {
  type Evaluated,
  type SeekResult,
  type SeekSpec,
  type SensitivityRow,
  type SweepPlan,
  seekGoal,
  seekResult,
  sensitivityCandidates,
  sensitivityRows,
} from '../../../core/index.ts';
import type { Pool } from './pool.ts';

/** How many of the best a search confirms by solved fields. */
const confirmed = 3;

/** What is heard of a goal seek. */
export interface SeekNews {
  readonly phase: 'present' | 'global' | 'local' | 'confirming';
  /** designs evaluated in this phase's account, of how many at most */
  readonly done: number;
  readonly of: number;
  /** by formulas */
  readonly result: SeekResult | null;
  /** the best few again, by solved fields; null until there are any */
  readonly solved: SeekResult | null;
}

/** Runs a sweep; `hear` gets each design with its place. */
export async function runSweep(
  pool: Pool,
  plan: SweepPlan,
  fields: Evaluated['fields'],
  hear: (design: Evaluated, index: number) => void,
): Promise<void> {
  await pool.evaluate(plan.candidates, fields, hear);
}

/** The best few and the present design by solved fields, ranked anew. */
async function confirm(
  pool: Pool,
  spec: SeekSpec,
  result: SeekResult,
  hear: (news: Pick<SeekNews, 'done' | 'of' | 'solved'>) => void,
): Promise<void> {
  const best = result.candidates.slice(0, confirmed).map(({ design }) => design.changes);
  if (best.length === 0) return;
  const all = [[], ...best];
  let done = 0;
  hear({ done, of: all.length, solved: null });
  const [base, ...designs] = await pool.evaluate(all, 'solved', () => {
    hear({ done: ++done, of: all.length, solved: null });
  });
  if (base) hear({ done, of: all.length, solved: seekResult(spec, base, designs) });
}

/**
 * Runs a goal seek. What was heard last stands where it is stopped by ending the pool.
 * @param solve whether the best few are confirmed by solved fields
 */
export async function runSeek(
  pool: Pool,
  spec: SeekSpec,
  solve: boolean,
  hear: (news: SeekNews) => void,
): Promise<void> {
  let news: SeekNews = { phase: 'present', done: 0, of: spec.budget, result: null, solved: null };
  const tell = (more: Partial<SeekNews>) => {
    news = { ...news, ...more };
    hear(news);
  };
  tell({});
  const [base] = await pool.evaluate([[]], 'formula');
  if (!base) return;
  const found: Evaluated[] = [];
  const seek = seekGoal(spec, base);
  for (let next = seek.next(); !next.done; ) {
    const { candidates, phase } = next.value;
    const before = found.length;
    let done = 0;
    const batch = await pool.evaluate(candidates, 'formula', () => tell({ phase, done: before + ++done }));
    found.push(...batch);
    tell({ phase, done: found.length, result: seekResult(spec, base, found) });
    next = seek.next(batch);
  }
  const result = seekResult(spec, base, found);
  tell({ result });
  if (solve) await confirm(pool, spec, result, (more) => tell({ phase: 'confirming', ...more }));
}

/** What a maker's step on each varied input does to a candidate, by formulas against the candidate by formulas. */
export async function runSensitivity(
  pool: Pool,
  spec: SeekSpec,
  design: Evaluated,
): Promise<readonly SensitivityRow[]> {
  const asked = [design.changes, ...sensitivityCandidates(spec, design)];
  const [here, ...around] = await pool.evaluate(asked, 'formula');
  return here ? sensitivityRows(spec, here, around) : [];
}
