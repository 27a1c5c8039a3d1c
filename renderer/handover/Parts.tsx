/** The dialog's content: kinds on the left; revision, options and outcome of the chosen one on the right. */

import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { type Project, startValues } from '../../core/index.ts';
import { goToRefused } from '../fields/refused.ts';
import { useJob } from '../solve/job.ts';
import { evaluationStore } from '../store/evaluation.ts';
import { useProject } from '../store/project.ts';
import { handoverText as words } from '../strings/handover.ts';
import { today } from '../today.ts';
import { KindList } from './KindList.tsx';
import { OptionsForm } from './OptionsForm.tsx';
import { Outcome } from './Outcome.tsx';
import { Stops } from './Stops.tsx';
import { Subjects } from './Subjects.tsx';
import type { HandoverAnswer, HandoverAsk, HandoverKind } from './solve/protocol.ts';
import { startHandoverWorker } from './startWorker.ts';
import { type HandoverState, useHandover } from './store.ts';
import '../styles/handover.css';

const askKinds: HandoverAsk = { kind: 'kinds' };

type Writing = Extract<HandoverAsk, { readonly kind: 'write' }>;

/** Chosen revisions that the project still has; the active one where none is. */
function revisionsFor(kind: HandoverKind, { revisionIds }: HandoverState, project: Project): readonly string[] {
  const known = revisionIds.filter((id) => project.revisions.some((revision) => revision.id === id));
  if (known.length === 0) return [project.activeRevision];
  return kind.several ? known : known.slice(0, 1);
}

function askFor(kind: HandoverKind, choices: HandoverState, project: Project): Writing {
  const { solved } = evaluationStore.getState();
  return {
    kind: 'write',
    moduleId: kind.id,
    project,
    revisionIds: revisionsFor(kind, choices, project),
    values: { ...startValues(kind), ...choices.values[kind.id] },
    date: today(),
    known: solved ? [solved] : [],
  };
}

/** Whether two askings are for the same files. */
const isSame = (a: Writing, b: Writing): boolean =>
  a.moduleId === b.moduleId &&
  a.project === b.project &&
  JSON.stringify([a.revisionIds, a.values]) === JSON.stringify([b.revisionIds, b.values]);

function Kind({ kind }: { readonly kind: HandoverKind }) {
  const project = useProject();
  const choices = useHandover((state) => state);
  const wanted = useMemo(() => askFor(kind, choices, project), [kind, choices, project]);
  const [ask, setAsk] = useState<Writing | null>(null);
  const heard = useJob<HandoverAnswer>(startHandoverWorker, ask);
  const running = heard.state === 'running';
  const old = ask !== null && !isSame(ask, wanted);
  return (
    <section className="handover-right" aria-label={kind.label}>
      <p>{kind.help}</p>
      <Subjects kind={kind} chosen={wanted.revisionIds} />
      {kind.needs === 'design' && <Stops revisionIds={wanted.revisionIds} />}
      <OptionsForm kind={kind} values={wanted.values} />
      <div className="handover-acts">
        <Button
          className="tool strong"
          isPending={running}
          onPress={({ target }) => goToRefused(target) || setAsk({ ...wanted })}
        >
          {ask === null ? words.prepare : words.prepareAgain}
        </Button>
        {running && (
          <Button className="tool" onPress={heard.stop}>
            {words.cancel}
          </Button>
        )}
        <span className="quiet">{words.needs[kind.needs]}</span>
      </div>
      <Outcome kind={kind} heard={heard} old={old} />
    </section>
  );
}

/** Everything inside the frame. */
export default function Parts() {
  const { answers, state, fault } = useJob<HandoverAnswer>(startHandoverWorker, askKinds);
  const chosen = useHandover(({ kindId }) => kindId);
  const told = answers.find((answer) => answer.kind === 'kinds');
  const kinds = told?.kind === 'kinds' ? told.kinds : [];
  const kind = kinds.find(({ id }) => id === chosen) ?? kinds[0];
  if (state === 'fault') return <p className="issue">{`${words.fault}: ${fault}`}</p>;
  if (!kind) return <p className="quiet">{words.loading}</p>;
  return (
    <div className="handover">
      <KindList kinds={kinds} chosen={kind.id} />
      <Kind key={kind.id} kind={kind} />
    </div>
  );
}
