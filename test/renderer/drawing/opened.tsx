/** The drawing opened in a window of a fixed size, and what its tests read off it. */

import { cleanup, render } from '@testing-library/react';
import { afterEach, beforeEach } from 'vitest';
import { Drawing } from '../../../renderer/drawing/Drawing.tsx';
import { resetDrawing } from '../../../renderer/drawing/store.ts';
import { dropDrafts } from '../../../renderer/store/drafts.ts';
import { activeRevision, currentProject, loadProject, projectStore } from '../../../renderer/store/project.ts';
import { setView } from '../../../renderer/store/view.ts';
import { demo } from './examples.ts';

/** Of the window, px. */
export const size = { width: 900, height: 500 };

class FixedObserver {
  constructor(private readonly tell: () => void) {}
  observe(element: Element): void {
    Object.defineProperty(element, 'clientWidth', { value: size.width, configurable: true });
    Object.defineProperty(element, 'clientHeight', { value: size.height, configurable: true });
    this.tell();
  }
  disconnect(): void {}
  unobserve(): void {}
}

/** The open revision. */
export const revision = () => {
  const project = currentProject();
  if (!project) throw new Error('no project');
  return activeRevision(project);
};
/** Of the sections, mm. */
export const lengths = () => revision().screw.sections.map(({ lengthMm }) => lengthMm);
/** Names of the undo steps. */
export const steps = () => projectStore.getState().history?.past.map(({ label }) => label);

/** A handle; found by its mark, as asking for roles and names costs a second among so many. */
export function grip(id: string): Element {
  const found = document.querySelector(`[role="slider"][data-grip="${id}"]`);
  if (!found) throw new Error(`no handle for ${id}`);
  return found;
}
/** The handle at the end of the first section. */
export const border = () => grip('section/0/lengthMm');

/** px per mm of the fitted drawing, read off two handles. */
export function zoomOf(): number {
  const x = (element: Element) => Number(/translate\(([-\d.]+)/.exec(element.getAttribute('transform') ?? '')?.[1]);
  return (x(grip('section/1/lengthMm')) - x(border())) / 55;
}

/** Opens the drawing of a project. */
export function open(project = demo()): void {
  loadProject(project, { handle: null, name: 'demo.json' });
  render(<Drawing />);
}

/** Opens each test of a file on a fresh drawing. */
export function freshDrawings(): void {
  beforeEach(() => {
    globalThis.ResizeObserver = FixedObserver as unknown as typeof ResizeObserver;
    setView({ helpFor: null, part: 'screw', mark: null, hoverZ: null });
    resetDrawing();
  });
  afterEach(() => {
    cleanup();
    dropDrafts([]);
  });
}
