/** What a figure rests on and which fields it is made from, opened by a question mark beside it. */

import { Fragment } from 'react';
import { Button } from 'react-aria-components';
import type { Basis, FigureInput } from '../../core/index.ts';
import { openEvidence, stageOfPlace } from '../checks/store.ts';
import { openHandbook } from '../handbook/store.ts';
import { setView } from '../store/view.ts';
import { checksText } from '../strings/checks.ts';
import { handbookText } from '../strings/handbook.ts';
import { text } from '../strings.ts';

const words = text.figures;

/** Everything that can be said of a figure besides its number. */
export interface ExplanationProps {
  readonly help?: string;
  readonly basis: Basis | null;
  readonly inputs: readonly FigureInput[];
  /** page and heading of the method handbook */
  readonly place: string;
}

/** The fields by part; a part's name leads to it. */
function Inputs({ inputs }: { readonly inputs: readonly FigureInput[] }) {
  return (
    <p>
      <strong>{words.inputs}:</strong>{' '}
      {inputs.map(({ part, fields }, i) => (
        <Fragment key={part}>
          {i > 0 && '; '}
          <Button className="link" onPress={() => setView({ part })}>
            {text.parts[part]}
          </Button>{' '}
          {fields.join(', ')}
        </Fragment>
      ))}
      .
    </p>
  );
}

/** The text. */
export function Explanation({ help, basis, inputs, place }: ExplanationProps) {
  return (
    <div className="basis">
      {help && <p className="basis-help">{help}</p>}
      {basis && (
        <p>
          <strong>{basis.model}.</strong> {basis.assumptions.join(' ')}
        </p>
      )}
      {inputs.length > 0 && <Inputs inputs={inputs} />}
      {basis && (
        <>
          <p>
            <strong>{words.range}:</strong> {basis.range}
          </p>
          <p>
            <strong>{words.from}:</strong> {basis.source}
          </p>
        </>
      )}
      {basis?.doubt && (
        <p className="doubt">
          <span aria-hidden="true">▲</span> {words.doubt}: {basis.doubt}
        </p>
      )}
      <p>
        <Button className="link" onPress={() => openHandbook(place)}>
          {handbookText.howWorkedOut}
        </Button>{' '}
        ·{' '}
        <Button className="link" onPress={() => openEvidence(stageOfPlace(place))}>
          {checksText.ofStage}
        </Button>
      </p>
    </div>
  );
}

/** The question mark that opens it. */
export function AskButton(props: { readonly label: string; readonly open: boolean; onPress(): void }) {
  return (
    <Button
      className="tiny ask"
      aria-expanded={props.open}
      aria-label={`${words.rests}: ${props.label}`}
      onPress={props.onPress}
    >
      <span title={words.rests}>?</span>
    </Button>
  );
}

/** A sign where a figure is doubtful in this case. */
export function DoubtSign({ doubt }: { readonly doubt: string | null | undefined }) {
  if (!doubt) return null;
  return (
    <span className="doubtful" title={`${words.doubt}: ${doubt}`} role="img" aria-label={words.doubt}>
      ▲{' '}
    </span>
  );
}
