// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { parseProject, predict, present, validateDesign } from '../../../core/index.ts';
import { Figures } from '../../../renderer/panels/Figures.tsx';
import { Findings } from '../../../renderer/panels/Findings.tsx';
import { forgetOpen, openAtFirst, setGroupsOpen } from '../../../renderer/panels/figuresOpen.ts';
import { PrintSide } from '../../../renderer/panels/PrintSide.tsx';
import { Verdict } from '../../../renderer/panels/Verdict.tsx';
import { useChosenCurve } from '../../../renderer/plots/chosenCurve.ts';
import { clearEvaluation, evaluationStore } from '../../../renderer/store/evaluation.ts';
import { loadProject } from '../../../renderer/store/project.ts';
import { viewStore } from '../../../renderer/store/view.ts';
import { text } from '../../../renderer/strings.ts';

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
const prediction = predict(design.value, { curvePoints: 0, warmUp: true });
const presentation = present(prediction, design.value);

beforeEach(() => {
  clearEvaluation();
  forgetOpen();
  loadProject(project, { handle: null, name: 'demo.json' });
  evaluationStore.setState({ prediction, presentation });
});
afterEach(cleanup);

/** Which curve is asked for, in words. */
function Chosen() {
  const { id, asked } = useChosenCurve();
  return <p>{`${id} ${asked}`}</p>;
}

const group = (id: string) => document.querySelector<HTMLDetailsElement>(`[data-group="${id}"]`);

test('few groups are open at first; what was closed stays closed in the next prediction', () => {
  const { unmount } = render(<Figures />);
  const open = () =>
    [...document.querySelectorAll<HTMLDetailsElement>('details[open]')].map((one) => one.dataset.group);
  expect(open()).toEqual(openAtFirst);
  expect(group('print')).toBeNull();
  expect(group('warmUp')?.querySelector('dl')).toBeNull();
  fireEvent.click(screen.getByRole('button', { name: text.figures.closeAll }));
  unmount();
  render(<Figures />);
  expect(open()).toEqual([]);
});

test('a group leads to its curve', () => {
  setGroupsOpen(openAtFirst, false);
  setGroupsOpen(['warmUp'], true);
  render(<Figures />);
  fireEvent.click(screen.getByRole('button', { name: new RegExp(text.figures.curve) }));
  render(<Chosen />);
  expect(screen.getByText('warmUp 1')).toBeTruthy();
});

test('a question mark tells model, inputs, range and source; an input’s part leads to its fields', () => {
  render(<Figures />);
  fireEvent.click(screen.getByRole('button', { name: `${text.figures.rests}: Melt output` }));
  const said = group('output')?.querySelector('.basis');
  expect(said?.textContent).toContain(prediction.output.basis.model);
  expect(said?.textContent).toContain(prediction.output.basis.source);
  expect(said?.textContent).toContain('Flight clearance');
  fireEvent.click(within(said as HTMLElement).getByRole('button', { name: text.parts.barrel }));
  expect(viewStore.getState().part).toBe('barrel');
});

test('each capacity says what it rests on and what it is made from', () => {
  render(<Verdict prediction={prediction} />);
  fireEvent.click(screen.getByRole('button', { name: `${text.figures.rests}: ${text.verdict.capacities.heater}` }));
  const said = document.querySelector('.capacity .basis')?.textContent;
  expect(said).toContain(prediction.heat.basis.model);
  expect(said).toContain('Heater power');
});

test('cautions stand below the rest, closed, and open to two sentences', () => {
  const { findings } = prediction;
  render(<Findings findings={findings} />);
  const heads = screen.getAllByRole('button', { expanded: false }).filter((one) => one.className === 'caution-head');
  const cautions = findings.filter(({ severity }) => severity === 'caution');
  expect(heads.length).toBe(cautions.length);
  for (const head of heads) expect(head.textContent).toMatch(/^◆Caution: [A-Z][a-z ]+: /);
  const items = [...document.querySelectorAll('.finding')];
  expect(items.slice(-cautions.length).every((item) => item.classList.contains('standing'))).toBe(true);
  fireEvent.click(heads[0] as HTMLElement);
  expect(screen.getByText(cautions[0]?.why ?? '?', { exact: false })).toBeTruthy();
});

test('the print side copies a number of the controller as it is typed there, and all with their names', async () => {
  const copied: string[] = [];
  vi.stubGlobal('navigator', { clipboard: { writeText: async (said: string) => copied.push(said) } });
  render(<PrintSide prediction={prediction} />);
  const label = 'Motor steps per mm³';
  fireEvent.click(screen.getByRole('button', { name: text.printSide.copyOne(label) }));
  fireEvent.click(screen.getByRole('button', { name: text.printSide.copyAll }));
  vi.unstubAllGlobals();
  await screen.findByText(text.printSide.copied(text.printSide.topics.controller));
  expect(Number(copied[0])).toBeCloseTo(prediction.print.stepsPerVolume * 1e-9, 2);
  expect(copied[1]).toMatch(new RegExp(`^${label}: .* steps/mm³\\nE steps per mm`));
});

test('chips of the print side follow margin, strand and stress', () => {
  const print = {
    ...prediction.print,
    margin: 0.5,
    strand: { ...prediction.print.strand, verdict: 'drips' as const },
    crack: { ...prediction.print.crack, verdict: 'exceeds' as const },
  };
  render(<PrintSide prediction={{ ...prediction, print }} />);
  const chips = [...document.querySelectorAll('.print-chip.bad')].map((chip) => chip.textContent);
  const { margin, strand, crack } = text.printSide;
  expect(chips).toEqual([`▲ ${margin.bad}, 0.5×`, `▲ ${strand.drips}`, `▲ ${crack.exceeds}`]);
});

test('the head says what was asked where the drive holds the screw down', () => {
  const speed = () => document.querySelector('.big')?.textContent;
  const { unmount } = render(<Verdict prediction={prediction} />);
  expect(speed()).toMatch(/10 rpm$/);
  unmount();
  const asked = { ...project, process: { ...project.process, screwSpeedRpm: 900 } };
  loadProject(asked, { handle: null, name: 'demo.json' });
  evaluationStore.setState({ prediction, presentation, stale: false });
  render(<Verdict prediction={prediction} />);
  expect(speed()).toMatch(/10 of 900 rpm asked$/);
});
