/** Start, stop, how far, how long yet. */

import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { goToRefused } from '../fields/refused.ts';
import { activeRevision, useProject } from '../store/project.ts';
import { searchText } from '../strings/search.ts';
import { stopSearch } from './acts.ts';
import { shownTime } from './shown.ts';
import { isStale, type RunState } from './store.ts';

const words = searchText.run;

/** How far a run is. */
export interface HowFar {
  readonly done: number;
  readonly of: number;
  readonly phase?: string;
}

/** Designs that have to be done before a time left is more than a guess. */
const enough = 3;

/** Bar and words of a run. */
function Progress({ run, far }: { readonly run: RunState; readonly far: HowFar }) {
  const { done, of, phase } = far;
  const said = [words.progress(done, of), phase].filter(Boolean).join(', ');
  if (run.state === 'fault') return <span className="issue">{`${words.fault} ${run.fault}`}</span>;
  if (run.state === 'stopped') return <span className="quiet">{`${words.stopped} ${words.progress(done, of)}`}</span>;
  if (run.state === 'done') return <span className="quiet">{words.done(done)}</span>;
  const left = ((run.now - run.since) / 1000 / Math.max(1, done)) * (of - done);
  return (
    <>
      <progress value={done / Math.max(1, of)} aria-label={said} />
      <span className="quiet" role="status">
        {said}
        {done >= enough && of > done ? `, ${words.left(shownTime(left))}` : ''}
      </span>
    </>
  );
}

/** The bar; what is set beside the button comes as children. */
export function RunBar(props: {
  readonly run: RunState | null;
  readonly far: HowFar | null;
  readonly label: string;
  readonly problem: string | null;
  start(): void;
  readonly children: ReactNode;
}) {
  const { run, far, label, problem, start, children } = props;
  return (
    <div className="study-bar search-bar">
      {children}
      {run?.state === 'running' ? (
        <Button className="tool" onPress={stopSearch}>
          {words.stop}
        </Button>
      ) : (
        <Button
          className="tool primary"
          isDisabled={problem !== null}
          onPress={({ target }) => goToRefused(target) || start()}
        >
          {label}
        </Button>
      )}
      {run && far ? <Progress run={run} far={far} /> : <span className="quiet">{problem ?? ''}</span>}
    </div>
  );
}

/** Says where results are not of the project as it stands. */
export function Stale({ run }: { readonly run: RunState }) {
  const project = useProject();
  const other = activeRevision(project).id !== run.revisionId;
  if (isStale(run, project)) return <p className="doubt">▲ {words.stale}</p>;
  return other ? <p className="doubt">▲ {words.otherRevision(run.revisionId)}</p> : null;
}
