/** The colour of the extrudate: how far, where from, at which speeds and temperatures, and how it is washed out. */

import type { Prediction, Project } from '../../core/index.ts';
import { DialogFrame } from '../panels/DialogFrame.tsx';
import { useEvaluation } from '../store/evaluation.ts';
import { activeRevision, useProject } from '../store/project.ts';
import { useView } from '../store/view.ts';
import { colourText } from '../strings/colour.ts';
import { ChangingOver } from './ChangingOver.tsx';
import { Laws } from './Laws.tsx';
import { NoColour } from './NoColour.tsx';
import { Origin } from './Origin.tsx';
import { Studies } from './Studies.tsx';
import { Swatches } from './Swatches.tsx';

/** Everything about a prediction's colour. */
function Predicted({ prediction, project }: { readonly prediction: Prediction; readonly project: Project }) {
  const { colour } = prediction;
  const said = colour.labMean !== null;
  return (
    <>
      {said ? (
        <>
          <Swatches prediction={prediction} acceptable={project.process.acceptableDeltaE} />
          <Origin prediction={prediction} />
          <Studies project={project} revisionId={activeRevision(project).id} />
        </>
      ) : (
        <NoColour prediction={prediction} />
      )}
      <ChangingOver prediction={prediction} project={project} />
      <Laws laws={colour.laws} />
    </>
  );
}

function Content() {
  const project = useProject();
  const prediction = useEvaluation((state) => state.prediction);
  const stale = useEvaluation((state) => state.stale);
  const refused = useEvaluation((state) => state.issues.length > 0);
  if (!prediction) return <p className="quiet">{colourText.none}</p>;
  return (
    <div className="colour-room">
      {(stale || refused) && <p className="quiet">{refused ? colourText.refused : colourText.stale}</p>}
      <Predicted {...{ prediction, project }} />
    </div>
  );
}

/** The dialog; it calculates only while it is open. */
export function Colour() {
  const open = useView((state) => state.dialog === 'colour');
  return (
    <DialogFrame id="colour" title={colourText.title} wide>
      {open && <Content />}
    </DialogFrame>
  );
}
