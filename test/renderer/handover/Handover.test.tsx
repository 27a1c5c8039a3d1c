// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { type HandoverFile, type Prediction, parseProject } from '../../../core/index.ts';
import { setBridge } from '../../../renderer/bridge.ts';
import { Handover } from '../../../renderer/handover/Handover.tsx';
import { perform } from '../../../renderer/handover/solve/desk.ts';
import type { HandoverAnswer, HandoverAsk } from '../../../renderer/handover/solve/protocol.ts';
import { setHandoverWorker } from '../../../renderer/handover/startWorker.ts';
import { openHandover, setHandover } from '../../../renderer/handover/store.ts';
import type { JobEnd, JobWorker } from '../../../renderer/solve/job.ts';
import { clearEvaluation, evaluationStore } from '../../../renderer/store/evaluation.ts';
import { loadProject } from '../../../renderer/store/project.ts';
import { setView, viewStore } from '../../../renderer/store/view.ts';
import { solidTools } from '../../core/handover/tools.ts';
import { memoryBridge } from '../../helpers/memoryBridge.ts';

vi.stubGlobal('CSS', { escape: (name: string) => name });

let ended = 0;
let asked: HandoverAsk[] = [];
let wait: Promise<void> | null = null;

/** A worker that works in this thread, with the solid modeller of tests; `wait` holds writing back. */
function fakeWorker(): JobWorker {
  let gone = false;
  const worker: JobWorker = {
    onmessage: null,
    onerror: null,
    terminate: () => {
      gone = true;
      ended++;
    },
    postMessage: (ask) => {
      asked.push(ask as HandoverAsk);
      void work(ask as HandoverAsk);
    },
  };
  const hear = (data: HandoverAnswer | JobEnd) => {
    if (!gone) worker.onmessage?.({ data } as MessageEvent);
  };
  const work = async (ask: HandoverAsk) => {
    if (ask.kind === 'write') await wait;
    await perform(ask, solidTools, hear);
  };
  return worker;
}

const host = () => memoryBridge({ handle: null, path: null, name: 'demo.json', text: demoText });
let saved: ReturnType<typeof host>['saved'];

beforeEach(async () => {
  const demo = parseProject(demoText);
  if (!demo.ok) throw new Error('the demo is a good project');
  loadProject(demo.value, { handle: null, name: 'demo.json' });
  const memory = host();
  saved = memory.saved;
  setBridge(memory.bridge);
  setHandoverWorker(fakeWorker);
  wait = null;
  ended = 0;
  asked = [];
  setHandover({ values: {} });
  openHandover('stl');
  render(<Handover />);
  await screen.findByRole('radio', { name: /STL/ }, { timeout: 10_000 });
});

afterEach(() => {
  cleanup();
  setBridge(null);
  setView({ dialog: 'none', notice: null });
});

const choose = (label: string, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });
const press = (name: RegExp | string) => fireEvent.click(screen.getByRole('button', { name }));

function type(label: string, value: string): void {
  const field = screen.getByLabelText(label);
  fireEvent.change(field, { target: { value } });
  fireEvent.blur(field);
}

test('options come from the registry; what was worked out is shown before it is saved', async () => {
  choose('Part', 'nozzle');
  type('Deviation allowed', '0.5');
  press('Work it out');
  expect(await screen.findByText('nozzle: triangles', {}, { timeout: 10_000 })).toBeTruthy();
  expect(screen.getByText(/by formula/)).toBeTruthy();
  expect(saved.size).toBe(0);
  press(/^Save .*nozzle\.stl/);
  await waitFor(() => expect(saved.size).toBe(1));
  expect([...saved.values()][0]?.length).toBeGreaterThan(1000);
  expect(viewStore.getState().notice?.kind).toBe('good');
  choose('Part', 'barrel');
  expect(screen.getByText(/have changed since/)).toBeTruthy();
});

test('a value outside the range is refused at its field with the range, and not taken', () => {
  type('Deviation allowed', '7');
  expect(screen.getByRole('alert').textContent).toContain('0.005 to 0.5 mm');
});

test('a refusal names the option; cautions are shown', async () => {
  choose('Part', 'nozzle');
  type('Deviation allowed', '0.5');
  choose('Split', 'lengthwise');
  type('Pin holes, diameter', '15');
  press('Work it out');
  expect((await screen.findByText(/no room for pins/, {}, { timeout: 10_000 })).textContent).toContain(
    'Pin holes, diameter',
  );
  type('Pin holes, diameter', '0');
  press(/again/);
  expect((await screen.findByLabelText('Mind', {}, { timeout: 10_000 })).textContent).toContain('food');
  expect(screen.getByRole('button', { name: 'Save all 2 …' })).toBeTruthy();
});

test('cancelling ends the worker and writes nothing', async () => {
  wait = new Promise(() => undefined);
  press('Work it out');
  const before = ended;
  // a button that is disabled under the finger loses the focus, and Escape no longer closes the dialog
  expect(screen.getByRole('button', { name: /Work it out/ }).hasAttribute('disabled')).toBe(false);
  press('Cancel');
  expect(ended).toBe(before + 1);
  expect(screen.getByText(/Nothing was written/)).toBeTruthy();
});

test('a disk that refuses is told with its path and cause', async () => {
  const issue = {
    path: ['/full/x.stl'],
    code: 'file-enospc',
    message: 'The disk is full.',
    remedy: 'Free some space.',
  };
  setBridge({ ...host().bridge, exportFile: async () => ({ ok: false, issues: [issue] }) });
  const { saveFiles } = await import('../../../renderer/handover/save.ts');
  const file: HandoverFile = { name: 'x.stl', mediaType: 'model/stl', bytes: new Uint8Array(3), facts: [] };
  await saveFiles([file]);
  expect(viewStore.getState().notice).toMatchObject({ kind: 'bad' });
  expect(viewStore.getState().notice?.text).toMatch(/\/full\/x\.stl.*disk is full/);
});

test('a failure at a later file names those that were saved', async () => {
  const issue = {
    path: ['/full/b.stl'],
    code: 'file-enospc',
    message: 'The disk is full.',
    remedy: 'Free some space.',
  };
  const { bridge } = host();
  setBridge({
    ...bridge,
    exportFile: async (name, bytes) =>
      name === 'b.stl' ? { ok: false, issues: [issue] } : bridge.exportFile(name, bytes),
  });
  const { saveFiles } = await import('../../../renderer/handover/save.ts');
  const files = ['a.stl', 'b.stl', 'c.stl'].map((name) => ({
    name,
    mediaType: 'model/stl',
    bytes: new Uint8Array(3),
    facts: [],
  }));
  await saveFiles(files);
  const text = viewStore.getState().notice?.text ?? '';
  expect(text).toMatch(/disk is full.*Saved before it: .*a\.stl/s);
  expect(text).not.toContain('c.stl');
});

test('the date of issue is the local day', () => {
  const zone = process.env.TZ;
  process.env.TZ = 'Pacific/Auckland';
  vi.useFakeTimers({ toFake: ['Date'], now: new Date('2026-03-04T20:00:00Z') });
  try {
    wait = new Promise(() => undefined);
    choose('Part', 'nozzle');
    press('Work it out');
    expect(asked.at(-1)).toMatchObject({ kind: 'write', date: '2026-03-05' });
  } finally {
    vi.useRealTimers();
    process.env.TZ = zone;
  }
});

test('a body of a design that is predicted to fail is told so before it is written', () => {
  const stop = { code: 'grain-blocked', severity: 'stop', where: 'channel', saw: 'The grain does not fit.' };
  act(() => evaluationStore.setState({ prediction: { findings: [stop] } as unknown as Prediction, stale: false }));
  expect(screen.getByLabelText('Findings marked Stop stand against this design').textContent).toContain('does not fit');
  act(() => evaluationStore.setState({ stale: true }));
  expect(screen.queryByLabelText('Findings marked Stop stand against this design')).toBeNull();
  act(clearEvaluation);
});
