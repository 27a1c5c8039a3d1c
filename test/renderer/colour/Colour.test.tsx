// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { parseProject, predict, validateDesign } from '../../../core/index.ts';
import { Colour } from '../../../renderer/colour/Colour.tsx';
import { labText } from '../../../renderer/colour/Swatches.tsx';
import { keptText } from '../../../renderer/colour/Sweeps.tsx';
import { colourAnswers } from '../../../renderer/solve/colourJob.ts';
import { clearEvaluation, evaluationStore } from '../../../renderer/store/evaluation.ts';
import { loadProject } from '../../../renderer/store/project.ts';
import { setView, viewStore } from '../../../renderer/store/view.ts';
import { colourText } from '../../../renderer/strings/colour.ts';
import { predictColour } from '../../helpers/predictColour.ts';

// Charts ask for the screen's pixel ratio when they are loaded, which this stand-in for a browser cannot say.
vi.hoisted(() => {
  const answer = { matches: false, addEventListener: () => undefined, removeEventListener: () => undefined };
  // nor does it have names of styles to escape, which dialogs ask for
  Object.assign(globalThis, { matchMedia: () => answer, CSS: { escape: (name: string) => name } });
});

// a canvas is not there to draw on
vi.mock('../../../renderer/plots/Chart.tsx', () => ({
  Chart: ({ label, data }: { label: string; data: readonly unknown[][] }) => (
    <div role="img" aria-label={label} data-points={data[0]?.length} />
  ),
  axis: () => ({}),
  curveHeight: 1,
}));

/** Workers that were started, with what they were asked; tests answer for them. */
const workers = vi.hoisted(
  () => [] as { asked: { kind: string }[]; ended: boolean; onmessage: ((event: { data: unknown }) => void) | null }[],
);
vi.mock('../../../renderer/solve/startJobs.ts', () => ({
  startColourWorker: () => {
    const worker = {
      asked: [] as { kind: string }[],
      ended: false,
      onmessage: null,
      onerror: null,
      postMessage: (ask: { kind: string }) => worker.asked.push(ask),
      terminate: () => {
        worker.ended = true;
      },
    };
    workers.push(worker);
    return worker;
  },
}));

const parsed = parseProject(demoText);
if (!parsed.ok) throw new Error('the demo does not open');
const project = parsed.value;
const design = validateDesign(project, 'C');
if (!design.ok) throw new Error('the demo is refused');
const prediction = predict(design.value, { curvePoints: 0 });

beforeEach(() => {
  workers.length = 0;
  clearEvaluation();
  loadProject(project, { handle: null, name: 'demo.json' });
  setView({ dialog: 'colour' });
});
afterEach(cleanup);

/** A section by its name; quicker than by its role in this stand-in for a browser. */
const section = (name: string) => screen.getByLabelText(name, { selector: 'section' });

const asking = (kind: string) => workers.find(({ asked, ended }) => asked[0]?.kind === kind && !ended);

test('swatches, parts and laws of the latest prediction are shown, and a stop ends the worker', () => {
  evaluationStore.setState({ prediction });
  render(<Colour />);
  for (const name of Object.values(colourText.swatches)) expect(screen.getAllByText(name).length).toBeGreaterThan(0);
  const origin = section(colourText.origin);
  expect(origin.querySelectorAll('tr').length).toBeGreaterThan(prediction.colour.origin.length);
  const laws = section(colourText.laws.title);
  expect(laws.querySelectorAll('tr').length).toBe(1 + prediction.colour.laws.length);
  const sweeps = asking('sweeps');
  expect(sweeps?.asked).toMatchObject([{ revisionId: 'C', fields: 'formula' }]);
  // the other revisions wait for the charts
  expect(asking('speeds')).toBeUndefined();
  fireEvent.click(screen.getByText(colourText.stop));
  expect(sweeps?.ended).toBe(true);
  expect(asking('speeds')?.asked).toMatchObject([{ revisionIds: ['A', 'B', 'C'], speeds: [0.015, 0.03, 0.045] }]);
});

test('where no colour law exists it says what is missing and what can be told', () => {
  const colour = predictColour({ ...design.value.material, colourLaw: null }, prediction.residence, 460);
  evaluationStore.setState({ prediction: { ...prediction, colour } });
  render(<Colour />);
  const missing = section(colourText.missing);
  expect(missing.textContent).toMatch(/No degradation law .* is tied to colour/);
  expect(missing.textContent).toMatch(/Melt stays .* on average/);
  expect(asking('sweeps')).toBeUndefined();
});

test('a refused description is not called one that is being renewed, and Escape closes where the focus was lost', () => {
  const issue = { path: [], code: 'x', message: 'No.', remedy: '' };
  const colour = { ...prediction.colour, labMean: null, reason: 'Not measured.' };
  evaluationStore.setState({ prediction: { ...prediction, colour }, stale: true, issues: [issue] });
  render(<Colour />);
  expect(screen.getByText(colourText.refused)).toBeTruthy();
  expect(screen.queryByText(colourText.stale)).toBeNull();
  (document.activeElement as HTMLElement).blur();
  fireEvent.keyDown(document.body, { key: 'Tab' });
  expect(document.activeElement?.closest('.dialog-body')).not.toBeNull();
  (document.activeElement as HTMLElement).blur();
  fireEvent.keyDown(document.body, { key: 'Escape' });
  expect(viewStore.getState().dialog).toBe('none');
});

test('a job tells of the design as set first, and of a change-over at once', () => {
  const stream = colourAnswers({ kind: 'sweeps', project, revisionId: 'C', fields: 'formula' });
  const first = stream.next().value;
  expect(first).toMatchObject({
    kind: 'sweeps',
    fields: 'formula',
    speed: { points: [{}] },
    temperature: { points: [{}] },
  });
  const { residence, output, colour } = prediction;
  const labNew = colour.labFresh ?? [0, 0, 0];
  const ask = { kind: 'change', residence, massFlow: output.massFlow, labOld: [30, 5, 5], labNew, aim: 1 } as const;
  expect([...colourAnswers(ask)]).toMatchObject([{ kind: 'change', change: { aim: 1 } }]);
  // no limit is read between the few places that are there
  evaluationStore.setState({ prediction });
  render(<Colour />);
  act(() => asking('sweeps')?.onmessage?.({ data: first }));
  expect(screen.getAllByText(colourText.keptLater)).toHaveLength(2);
  expect([...colourAnswers({ kind: 'sweeps', project, revisionId: 'none', fields: 'formula' })]).toMatchObject([
    { kind: 'refused' },
  ]);
});

test('where a limit is crossed is said in words', () => {
  expect(labText([89.71, 5.4e-6, -2e-5])).toBe('89.7 / 0 / 0');
  expect(keptText(null, 'mm/s')).toBe(colourText.kept.nowhere);
  expect(keptText({ from: null, to: null }, 'mm/s')).toBe(colourText.kept.all);
  expect(keptText({ from: 0.0125, to: null }, 'mm/s')).toMatch(/^from 12.5 mm\/s on$/);
  expect(keptText({ from: null, to: 473.15 }, '°C')).toMatch(/^up to 200 °C$/);
});
