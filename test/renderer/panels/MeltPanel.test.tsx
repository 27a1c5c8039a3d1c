// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { type DeadSpot, type Prediction, parseProject, predict, validateDesign } from '../../../core/index.ts';
import { DeadSpots } from '../../../renderer/panels/DeadSpots.tsx';
import { MeltPanel } from '../../../renderer/panels/MeltPanel.tsx';
import { clearEvaluation, evaluationStore } from '../../../renderer/store/evaluation.ts';
import { loadProject } from '../../../renderer/store/project.ts';
import { viewStore } from '../../../renderer/store/view.ts';
import { meltText } from '../../../renderer/strings/melt.ts';

// Charts ask for the screen's pixel ratio when they are loaded, which this stand-in for a browser cannot say.
vi.hoisted(() => {
  const answer = { matches: false, addEventListener: () => undefined, removeEventListener: () => undefined };
  Object.assign(globalThis, { matchMedia: () => answer });
});

const parsed = parseProject(demoText);
if (!parsed.ok) throw new Error('the demo does not open');
const project = parsed.value;
const design = validateDesign(project, project.activeRevision);
if (!design.ok) throw new Error('the demo is refused');
const estimate = predict(design.value, { curvePoints: 0 });

beforeEach(() => {
  clearEvaluation();
  loadProject(project, { handle: null, name: 'demo.json' });
});
afterEach(cleanup);

test.each([
  ['being solved', { prediction: estimate, solving: true }, meltText.needs.solving],
  ['stopped', { prediction: estimate, solving: false }, meltText.needs.stopped],
  [
    'no flow',
    { prediction: { ...estimate, output: { ...estimate.output, volumeFlow: 0 } }, solving: false },
    meltText.needs.noFlow,
  ],
  ['refused', { prediction: null, solving: false }, meltText.needs.none],
])('without solved fields the panel says why: %s', (_name, state, said) => {
  evaluationStore.setState(state);
  render(<MeltPanel />);
  expect(screen.getByText(said)).toBeTruthy();
});

const spot: DeadSpot = {
  ...{ part: 'tip', where: 'in front of the screw tip', z: 0.16, zFrom: 0.159, zTo: 0.161, r: 0.001 },
  ...{ volume: 2.5e-9, meanAge: 400, cause: 'tip', remedy: 'Give the screw a conical tip.' },
};
const withSpots = (spots: readonly DeadSpot[]): Prediction => ({ ...estimate, dead: { ...estimate.dead, spots } });

test('a spot shows volume, age in seconds and means, cause and remedy; pressing it goes there', () => {
  const { residence } = withSpots([spot]);
  render(<DeadSpots prediction={{ ...withSpots([spot]), residence: { ...residence, mean: 100 } }} />);
  const button = screen.getByRole('button');
  expect(button.textContent).toMatch(/2.5 mm³.*400 s since melting, 4.* × mean · screw tip.*conical tip/);
  fireEvent.click(button);
  expect(viewStore.getState().mark).toMatchObject({ z: 0.16, spot: 1 });
  expect(button.getAttribute('aria-pressed')).toBe('true');
});

test('no spots is said in words', () => {
  render(<DeadSpots prediction={withSpots([])} />);
  expect(screen.getByText(meltText.spots.none)).toBeTruthy();
});
