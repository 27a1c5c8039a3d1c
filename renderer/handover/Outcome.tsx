/** What came of working a file out: how far it is, why it is refused, or the files with what is worth knowing. */

import { Button, ProgressBar } from 'react-aria-components';
import type { HandoverFile, Issue } from '../../core/index.ts';
import { IssueText } from '../fields/IssueText.tsx';
import { valueName } from '../safekeeping/fieldNames.ts';
import type { Heard } from '../solve/job.ts';
import { handoverText as words } from '../strings/handover.ts';
import { saveFiles } from './save.ts';
import type { HandoverAnswer, HandoverKind } from './solve/protocol.ts';

type Of<K extends HandoverAnswer['kind']> = Extract<HandoverAnswer, { readonly kind: K }>;

const lastOf = <K extends HandoverAnswer['kind']>(answers: readonly HandoverAnswer[], kind: K): Of<K> | undefined =>
  answers.findLast((answer): answer is Of<K> => answer.kind === kind);

function Progress({ done, stage }: { readonly done: number; readonly stage: string }) {
  const percent = Math.round(100 * done);
  return (
    <ProgressBar className="handover-progress" value={percent} aria-label={words.progress}>
      <span className="handover-track">
        <span style={{ width: `${percent}%` }} />
      </span>
      <span className="quiet" role="status">
        {percent} % {stage}
      </span>
    </ProgressBar>
  );
}

function FileCard({ file }: { readonly file: HandoverFile }) {
  return (
    <section className="handover-file">
      <div className="handover-file-head">
        <b>{file.name}</b>
        <Button className="tool strong" aria-label={words.saveNamed(file.name)} onPress={() => saveFiles([file])}>
          {words.save}
        </Button>
      </div>
      <dl>
        {file.facts.map(({ label, text }) => (
          <div key={`${label}-${text}`}>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function Cautions({ files }: { readonly files: readonly HandoverFile[] }) {
  const cautions = [...new Set(files.flatMap(({ cautions: own = [] }) => own))];
  if (cautions.length === 0) return null;
  return (
    <aside className="handover-cautions" aria-label={words.cautions}>
      <h3>
        <span aria-hidden="true">▲</span> {words.cautions}
      </h3>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </aside>
  );
}

function Files({ files, old }: { readonly files: readonly HandoverFile[]; readonly old: boolean }) {
  return (
    <div className={old ? 'handover-files old' : 'handover-files'}>
      <div className="handover-file-head">
        <h3>{words.files}</h3>
        {old && <span className="quiet">{words.changed}</span>}
        {files.length > 1 && (
          <Button className="tool" onPress={() => saveFiles(files)}>
            {words.saveAll(files.length)}
          </Button>
        )}
      </div>
      <Cautions files={files} />
      {files.map((file) => (
        <FileCard key={file.name} file={file} />
      ))}
    </div>
  );
}

/** What the place of an issue is called in the window: a field of the description, or an option of the kind. */
function placeName({ path }: Issue, kind: HandoverKind): string {
  const last = String(path.at(-1) ?? '');
  if (path[0] === 'revisions' || path[0] === 'materials') return valueName(path);
  return kind.options.find(({ id }) => id === last)?.label ?? last;
}

/** What the lower part of the dialog shows. */
interface OutcomeProps {
  readonly kind: HandoverKind;
  readonly heard: Heard<HandoverAnswer>;
  /** options or design have changed since */
  readonly old: boolean;
}

/** The lower part of the dialog. */
export function Outcome({ kind, heard, old }: OutcomeProps) {
  const { answers, state, fault } = heard;
  const refused = lastOf(answers, 'refused');
  const files = lastOf(answers, 'files');
  if (state === 'running') return <Progress {...(lastOf(answers, 'progress') ?? { done: 0, stage: '' })} />;
  if (state === 'stopped') return <p role="status">{words.cancelled}</p>;
  if (state === 'fault') {
    return (
      <p className="issue" role="alert">
        {words.fault}: {fault}
      </p>
    );
  }
  if (refused) {
    return (
      <div className="handover-refused">
        <h3>{words.refused}</h3>
        {refused.issues.slice(0, 8).map((issue) => (
          <IssueText key={`${issue.code}-${issue.path.join('/')}`} issue={issue} place={placeName(issue, kind)} />
        ))}
      </div>
    );
  }
  return files ? <Files files={files.files} old={old} /> : <p className="quiet">{words.waiting}</p>;
}
