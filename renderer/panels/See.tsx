/** The middle: the machine in three dimensions, and what happens along its axis. */

import { lazy, Suspense } from 'react';
import { Drawing } from '../drawing/Drawing.tsx';
import { SeeSwitch } from '../drawing/DrawingTools.tsx';
import { Axial } from '../plots/Axial.tsx';
import { canDraw } from '../scene/canDraw.ts';
import { useMeltShown } from '../scene/openPlanes.ts';
import { SceneCards } from '../scene/SceneCards.tsx';
import { ViewTools } from '../scene/ViewTools.tsx';
import { useEvaluation } from '../store/evaluation.ts';
import { useView } from '../store/view.ts';
import { text } from '../strings.ts';
import { MeltLegend } from './MeltLegend.tsx';
import { MeltNeeds } from './MeltPanel.tsx';

// Three-dimensional drawing is most of the program's code; the rest of the window need not wait for it.
const Scene = lazy(() => import('../scene/Scene.tsx'));

/** The legend while melt is painted. */
function Legend() {
  const shown = useMeltShown();
  const mean = useEvaluation((state) => state.solved?.fields?.meanTime ?? null);
  const old = useEvaluation((state) => state.solvedOld);
  if (!shown) return null;
  return mean === null ? (
    <div className="melt-legend">
      <MeltNeeds />
    </div>
  ) : (
    <MeltLegend {...{ mean, old }} />
  );
}

function View() {
  return (
    <>
      <ViewTools />
      <div className="scene-box">
        <Suspense fallback={<p className="scene-waiting">{text.loading}</p>}>
          <Scene />
        </Suspense>
        <SceneCards />
        <Legend />
      </div>
    </>
  );
}

/** View and axial plots. */
export function See() {
  const drawing = useView((state) => state.seeing === 'drawing');
  const look = drawing ? 'drawn' : canDraw() ? '' : 'flat';
  const solid = canDraw() ? <View /> : <p className="no-view">{text.see.noWebgl}</p>;
  return (
    <section className={`pane see ${look}`} aria-label={text.see.title}>
      <SeeSwitch />
      {drawing ? <Drawing /> : solid}
      <Axial />
    </section>
  );
}
