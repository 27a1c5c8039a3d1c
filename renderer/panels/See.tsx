/** The middle: the machine in three dimensions, and what happens along its axis. */

import { lazy, Suspense } from 'react';
import { Axial } from '../plots/Axial.tsx';
import { canDraw } from '../scene/canDraw.ts';
import { SliceSlider, ViewTools } from '../scene/ViewTools.tsx';
import { text } from '../strings.ts';

// Three-dimensional drawing is most of the program's code; the rest of the window need not wait for it.
const Scene = lazy(() => import('../scene/Scene.tsx'));

function View() {
  return (
    <>
      <ViewTools />
      <div className="scene-box">
        <Suspense fallback={<p className="scene-waiting">{text.loading}</p>}>
          <Scene />
        </Suspense>
        <SliceSlider />
      </div>
    </>
  );
}

/** View and axial plots. */
export function See() {
  return (
    <section className={canDraw() ? 'pane see' : 'pane see flat'} aria-label={text.see.title}>
      {canDraw() ? <View /> : <p className="no-view">{text.see.noWebgl}</p>}
      <Axial />
    </section>
  );
}
