/** The middle: the machine in three dimensions, and what happens along its axis. */

import { Axial } from '../plots/Axial.tsx';
import { Scene } from '../scene/Scene.tsx';
import { ViewTools } from '../scene/ViewTools.tsx';
import { text } from '../strings.ts';

/** View and axial plots. */
export function See() {
  return (
    <section className="pane see" aria-label={text.see.title}>
      <ViewTools />
      <div className="scene-box">
        <Scene />
      </div>
      <Axial />
    </section>
  );
}
