/** The latest prediction and shape of the active revision, and whether they still belong to what is described. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { FirstFigures, Issue, Prediction, Presentation } from '../../core/index.ts';
import type { Answer, Shape } from '../solve/protocol.ts';

/** What is known of the design now. Old results stay until new ones replace them. */
export interface EvaluationState {
  readonly prediction: Prediction | null;
  readonly presentation: Presentation | null;
  /** coarse figures of what is described now, until its estimate is there; they know nothing of other speeds */
  readonly first: FirstFigures | null;
  readonly shape: Shape | null;
  /** why the design as described is refused; empty where it is accepted */
  readonly issues: readonly Issue[];
  /** a run is under way */
  readonly running: boolean;
  /** how far it is, 0 to 1, and at what; null before the first word of it */
  readonly progress: { readonly done: number; readonly stage: string } | null;
  /** fields are being solved after an estimate, and how far that is */
  readonly solving: boolean;
  readonly solveProgress: { readonly done: number; readonly stage: string } | null;
  /** the latest prediction from solved fields, which stays while newer ones are solved, and whether it is an earlier one */
  readonly solved: Prediction | null;
  readonly solvedOld: boolean;
  /** results belong to an earlier description */
  readonly stale: boolean;
  /** the calculation itself broke */
  readonly fault: string | null;
  /** of the latest run, ms */
  readonly tookMs: number | null;
}

const nothing: EvaluationState = {
  prediction: null,
  presentation: null,
  first: null,
  shape: null,
  issues: [],
  running: false,
  progress: null,
  solving: false,
  solveProgress: null,
  solved: null,
  solvedOld: false,
  stale: false,
  fault: null,
  tookMs: null,
};

/** Outside React: read with getState, follow with subscribe. */
export const evaluationStore = createStore<EvaluationState>(() => nothing);

/** Picks a part of the state inside a view. */
export const useEvaluation = <T>(pick: (state: EvaluationState) => T): T => useStore(evaluationStore, pick);

/** Marks what is shown as out of date because a new run was asked for. */
export function markStale(): void {
  evaluationStore.setState((state) => ({
    running: true,
    progress: null,
    solving: false,
    solveProgress: null,
    solvedOld: state.solved !== null,
    stale: state.prediction !== null || state.shape !== null,
  }));
}

/** Forgets everything, as when another project is opened. */
export const clearEvaluation = (): void => evaluationStore.setState(nothing, true);

/** The shape stays, and belongs to the design as it is now. */
function sameShape(designHash: string): Partial<EvaluationState> {
  const { shape } = evaluationStore.getState();
  return { shape: shape && { ...shape, designHash }, issues: [], fault: null };
}

function changeBy(answer: Answer): Partial<EvaluationState> {
  switch (answer.kind) {
    case 'shape':
      return { shape: answer.shape, issues: [], fault: null };
    case 'sameShape':
      return sameShape(answer.designHash);
    case 'first':
      return { first: answer.figures };
    case 'progress':
      return { progress: { done: answer.done, stage: answer.stage } };
    case 'issues':
      return { issues: answer.issues, running: false, first: null, fault: null };
    case 'fault':
      return { fault: answer.message, running: false, first: null };
    case 'givenUp':
      return {};
    case 'prediction': {
      const { prediction, presentation, tookMs } = answer;
      const done = { first: null, running: false, stale: false, fault: null };
      const current = { prediction, presentation, tookMs, issues: [], ...done };
      // where nothing flows there is nothing to solve, and older fields would mislead
      return prediction.output.volumeFlow > 0 ? current : { ...current, solved: null, solvedOld: false };
    }
  }
}

/** Takes one answer of the worker in. */
export const takeAnswer = (answer: Answer): void => evaluationStore.setState(changeBy(answer));

/** Takes first figures in, while the estimate is still being worked out; that tells what is refused or broken. */
export function takeFirst(answer: Answer): void {
  if (answer.kind === 'first' && evaluationStore.getState().stale) evaluationStore.setState(changeBy(answer));
}

/** Notes that fields are being solved. */
export const markSolving = (): void => evaluationStore.setState({ solving: true, solveProgress: null });

/** Notes that solving was given up. */
export const stopSolving = (): void => evaluationStore.setState({ solving: false, solveProgress: null });

function solvedChange(answer: Answer): Partial<EvaluationState> {
  switch (answer.kind) {
    case 'progress':
      return { solveProgress: { done: answer.done, stage: answer.stage } };
    case 'fault':
      return { fault: answer.message, solving: false };
    case 'prediction': {
      const { prediction, presentation, tookMs } = answer;
      return { prediction, presentation, tookMs, solved: prediction, solvedOld: false, solving: false, fault: null };
    }
    default:
      return { solving: answer.kind === 'shape' };
  }
}

/** Takes one answer of the worker that solves fields in. */
export const takeSolved = (answer: Answer): void => evaluationStore.setState(solvedChange(answer));
