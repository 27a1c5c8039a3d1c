/** Mounts the window and starts what runs beside it: keys, host menu, calculation. */

import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { config } from 'zod';
import { App } from './App.tsx';
import { Boundary } from './Boundary.tsx';
import { getBridge } from './bridge.ts';
import { perform } from './commands.ts';
import { followMenu } from './hostMenu.ts';
import { listenToKeys } from './keys.ts';
import { startWindow } from './safekeeping/start.ts';
import { followProject, startSolveWorker } from './solve/follow.ts';
import { isUnsaved, projectStore } from './store/project.ts';
import { viewStore } from './store/view.ts';
import { offerTour } from './tour/store.ts';
import './styles/theme.css';
import './styles/base.css';
import './styles/frame.css';
import './styles/describe.css';
import './styles/materials.css';
import './styles/fields.css';
import './styles/templates.css';
import './styles/tables.css';
import './styles/see.css';
import './styles/axial.css';
import './styles/drawing.css';
import './styles/dimensions.css';
import './styles/plots.css';
import './styles/scene.css';
import './styles/results.css';
import './styles/figures.css';
import './styles/findings.css';
import './styles/melt.css';
import './styles/across.css';
import './styles/dialogs.css';
import './styles/compare.css';
import './styles/compare-views.css';
import './styles/revisions.css';
import './styles/checks.css';
import './styles/colour.css';
import './styles/doubt.css';
import './styles/handbook.css';
import './styles/search.css';
import './styles/bench.css';
import './styles/bench-find.css';
import './styles/bench-photo.css';
import './styles/bench-sheet.css';
import './styles/safekeeping.css';
import './styles/tour.css';
import './styles/narrow.css';
import './styles/contrast.css';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

// The widget library looks for this id before it adds a style element, which the policy refuses; theme.css has its rule.
document.head.append(Object.assign(document.createElement('meta'), { id: 'react-aria-pressable-style' }));

listenToKeys();
getBridge().onCommand(perform);
followMenu();
followProject(startSolveWorker, startSolveWorker);
projectStore.subscribe((state, before) => {
  if (isUnsaved(state) !== isUnsaved(before)) getBridge().setEdited(isUnsaved(state));
});

const root = document.getElementById('root');
if (root) {
  createRoot(root).render(
    <StrictMode>
      <Boundary>
        <App />
      </Boundary>
    </StrictMode>,
  );
}
void startWindow().then(() => {
  // what waits to be decided comes first
  if (viewStore.getState().dialog === 'none') offerTour();
});
