/** A run of the bench worker: its button, its progress, its way out, its fault. */

import { Button } from 'react-aria-components';
import { benchText } from '../strings/bench.ts';
import { cancelRun, type RunKind, useRuns } from './runs.ts';

const words = benchText.run;

/** One line. */
export function RunBar(props: {
  readonly kind: RunKind;
  readonly label: string;
  readonly disabled?: boolean;
  start(): void;
}) {
  const { kind, label, disabled = false, start } = props;
  const { running, done, of, fault } = useRuns(({ states }) => states[kind]);
  return (
    <div className="run-bar">
      {running ? (
        <>
          <progress aria-label={label} value={done} max={Math.max(1, of)} />
          <span role="status">{of > 0 ? words.predictions(done, of) : words.starting}</span>
          <Button className="tool" onPress={() => cancelRun(kind)}>
            {words.cancel}
          </Button>
        </>
      ) : (
        <Button className="tool strong" isDisabled={disabled} onPress={start}>
          {label}
        </Button>
      )}
      {fault && (
        <p className="issue" role="alert">
          {words.fault} {fault}
        </p>
      )}
    </div>
  );
}
