/** The help line: what the value under the pointer or the cursor means, what is allowed, and where it is measured. */

import { fieldRange, lookNumber, lookText } from '../../core/index.ts';
import { useLook } from '../look.ts';
import { useProjectState } from '../store/project.ts';
import { type HelpFor, useView } from '../store/view.ts';
import { editText } from '../strings/editing.ts';
import { text } from '../strings.ts';
import { rangeText } from './quantity.ts';
import { Sketch, sketchOf } from './sketches/Sketch.tsx';
import { shownStep, unitText } from './spec.ts';

/** Range and step of a number. */
function Limits({ help }: { readonly help: HelpFor }) {
  const look = useLook();
  const project = useProjectState((state) => state.history?.present);
  const { path, spec } = help;
  if (!path || !spec) return null;
  const range = rangeText(fieldRange(project, path), spec, look);
  const unit = unitText(spec.unit, look);
  return (
    <p className="help-limits">
      {range && (
        <>
          {editText.allowed}: <b>{range}</b>.{' '}
        </>
      )}
      {editText.step(lookNumber(shownStep(spec, look), 3, look), unit && ` ${unit}`)}.
    </p>
  );
}

/** The line; it keeps its height, so that nothing moves under the pointer. */
export function HelpLine() {
  const help = useView((state) => state.helpFor);
  const look = useLook();
  const sketch = help?.path ? sketchOf(help.path) : null;
  return (
    <footer className="help-line">
      {help ? (
        <>
          {sketch && <Sketch name={sketch} label={`${editText.sketch}: ${help.label}`} />}
          <p>
            <b>{help.label}.</b> {lookText(help.help, look)}
          </p>
          <Limits help={help} />
        </>
      ) : (
        <p>{text.describe.helpIdle}</p>
      )}
    </footer>
  );
}
