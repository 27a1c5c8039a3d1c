// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { parseProject, type SampleResult } from '../../../core/index.ts';
import { AddRange } from '../../../renderer/doubt/AddRange.tsx';
import { Answer } from '../../../renderer/doubt/Answer.tsx';
import { Inputs } from '../../../renderer/doubt/Inputs.tsx';
import { doubtDesk } from '../../../renderer/solve/doubtDesk.ts';
import { runStudy, type StudyNews } from '../../../renderer/solve/doubtPool.ts';
import type { DoubtAnswer, DoubtAsk } from '../../../renderer/solve/doubtProtocol.ts';
import type { JobWorker } from '../../../renderer/solve/job.ts';
import { currentProject, loadProject, projectStore, undo } from '../../../renderer/store/project.ts';
import { doubtText } from '../../../renderer/strings/doubt.ts';

// Charts ask for the screen's pixel ratio when they are loaded, which this stand-in for a browser cannot say.
vi.hoisted(() => {
  const answer = { matches: false, addEventListener: () => undefined, removeEventListener: () => undefined };
  Object.assign(globalThis, { matchMedia: () => answer });
});

vi.mock('../../../renderer/plots/Chart.tsx', () => ({
  Chart: ({ label }: { label: string }) => <div role="img" aria-label={label} />,
  axis: () => ({}),
  curveHeight: 1,
}));

const parsed = parseProject(demoText);
if (!parsed.ok) throw new Error('the demo does not open');
const project = parsed.value;

beforeEach(() => loadProject(project, { handle: null, name: 'demo.json' }));
afterEach(cleanup);

function inputsOf(of = project) {
  const answer = doubtDesk()({ kind: 'inputs', project: of, revisionId: 'C' });
  if (answer?.kind !== 'inputs') throw new Error('no inputs');
  return answer;
}

test('any number can be found by words and given a range, kept as one step that can be undone and taken away', () => {
  const { fields } = inputsOf();
  render(<AddRange fields={fields} />);
  fireEvent.change(screen.getByLabelText(doubtText.add.find), { target: { value: 'radial clear' } });
  fireEvent.click(screen.getByText(/^Screw, .*clearance/));
  const low = screen.getByLabelText(doubtText.add.low);
  fireEvent.change(low, { target: { value: '50' } });
  fireEvent.blur(low);
  expect(screen.getByRole('alert').textContent).toBe(doubtText.add.order);
  fireEvent.change(low, { target: { value: '0.01 mm' } });
  fireEvent.blur(low);
  fireEvent.click(screen.getByText(doubtText.add.add));
  const path = currentProject()?.doubts?.[0]?.path ?? '';
  expect(currentProject()?.doubts).toMatchObject([{ path: expect.stringMatching(/learance/), low: 0.01 }]);
  expect(projectStore.getState().history?.past.at(-1)?.label).toMatch(/^State a range of Screw/);
  const { found } = inputsOf(currentProject() ?? project);
  expect(found.inputs.find((input) => input.path === path)).toMatchObject({ from: 'user', low: 0.01, unit: 'mm' });
  cleanup();
  render(<Inputs found={found} own={new Set([path])} />);
  fireEvent.click(screen.getByLabelText(/^Take away the range of Screw/));
  expect(currentProject()?.doubts).toBeUndefined();
  undo();
  expect(currentProject()?.doubts).toHaveLength(1);
});

/** A sample without its prediction, which the tests of core run: every figure follows the first input. */
function drawnSample(index: number): SampleResult {
  const values = Float64Array.from(inputsOf().found.inputs, ({ nominal }, i) => (i === 0 ? nominal + index : nominal));
  const figure = 2 + index / 10;
  const [outputs, curve] = [new Float64Array(10).fill(figure), Float64Array.of(figure, 2 * figure)];
  return { index, values, outputs, curve, speed: Float64Array.of(0.1, 0.2), failure: null };
}

/** A worker that answers in the same thread, a message at a time; it sums up as the real one does. */
function threadWorker(ended: () => void): JobWorker {
  const desk = doubtDesk();
  const answerTo = (ask: DoubtAsk): DoubtAnswer | null =>
    ask.kind === 'run' ? { kind: 'sample', result: drawnSample(ask.index) } : desk(ask);
  const worker: JobWorker = {
    postMessage: (ask) => {
      const answer = answerTo(ask as DoubtAsk);
      if (answer) queueMicrotask(() => worker.onmessage?.({ data: answer } as MessageEvent));
    },
    terminate: ended,
    onmessage: null,
    onerror: null,
  };
  return worker;
}

test('samples are shared among workers, summed up, and shown with the floor of chance and what to measure next', async () => {
  const ended = vi.fn();
  const news: StudyNews[] = [];
  await new Promise<void>((resolve) => {
    runStudy(
      () => threadWorker(ended),
      2,
      { project, revisionId: 'C', samples: 20, seed: 1 },
      (one) => {
        news.push(one);
        if (one.kind === 'done' || one.kind === 'fault') resolve();
      },
    );
  });
  expect(ended).toHaveBeenCalledTimes(2);
  expect(news.at(-1)).toEqual({ kind: 'done' });
  expect(news.filter(({ kind }) => kind === 'progress').at(-1)).toEqual({ kind: 'progress', done: 20 });
  const summary = news.findLast((one) => one.kind === 'summary')?.summary;
  if (!summary) throw new Error('nothing was summed up');
  const next = { path: 'factor.feed', label: 'Feed factor', share: 0.41, outputs: [], how: 'Weigh the output.' };
  const failed = { failed: 1, failures: [{ reason: 'The clearance is too wide.', count: 1 }] };
  render(<Answer summary={{ ...summary, ...failed, measureNext: [next] }} />);
  expect(screen.getByText(/^Measure Feed factor next: it makes 41 % of the spread/)).toBeTruthy();
  expect(screen.getByText(/1 × The clearance is too wide/)).toBeTruthy();
  expect(screen.getByText(/what chance alone reaches/)).toBeTruthy();
  expect(screen.getByText(doubtText.outputs.few)).toBeTruthy();
});

test('a worker that breaks ends the study with its words', () => {
  const news: StudyNews[] = [];
  const workers: JobWorker[] = [];
  const start = () => {
    const worker = { postMessage: () => undefined, terminate: vi.fn(), onmessage: null, onerror: null };
    workers.push(worker);
    return worker;
  };
  runStudy(start, 2, { project, revisionId: 'C', samples: 2, seed: 1 }, (one) => news.push(one));
  workers[1]?.onmessage?.({ data: { kind: 'fault', message: 'out of memory' } } as MessageEvent);
  expect(news).toEqual([{ kind: 'fault', message: 'out of memory' }]);
  for (const worker of workers) expect(worker.terminate).toHaveBeenCalled();
});
