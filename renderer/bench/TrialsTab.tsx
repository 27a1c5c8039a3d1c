/** The table of trials. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import { formatNumber, fromSi, type Project, type Trial, toSi } from '../../core/index.ts';
import { useProject } from '../store/project.ts';
import { benchText } from '../strings/bench.ts';
import { exportTrials } from './exportTrials.ts';
import { setBench, useBench } from './store.ts';
import { TrialForm } from './TrialForm.tsx';
import { draftOf, newDraft } from './trialDraft.ts';
import { removeTrial, takeBack } from './trials.ts';

const words = benchText.trials;
const names = benchText.fields;

/** Rows drawn at first, and by each press on the button for more. */
const rowsAtOnce = 100;

const rateOf = ({ grams, seconds }: Trial): string =>
  formatNumber(fromSi(toSi(grams, 'g') / toSi(seconds, 's'), 'g/min'), 3);

const shown = (value: number | undefined): string => (value === undefined ? '–' : formatNumber(value, 4));

function Acts({ trial }: { readonly trial: Trial }) {
  const edit = (excluded?: true) => {
    const draft = draftOf(trial);
    setBench({ draft: excluded ? { ...draft, excluded, asked: true } : draft });
  };
  const act = (label: string, perform: () => void) => (
    <Button className="tool small" aria-label={`${label}: ${trial.id}`} onPress={perform}>
      {label}
    </Button>
  );
  return (
    <td className="acts">
      {act(words.edit, () => edit())}
      {trial.excluded ? act(words.takeBack, () => takeBack(trial.id)) : act(words.leaveOut, () => edit(true))}
      {act(words.remove, () => removeTrial(trial.id))}
    </td>
  );
}

function Row({ trial, material }: { readonly trial: Trial; readonly material: string }) {
  const { id, date, revisionId, screwSpeedRpm, setTempsC, seconds, grams, torqueNm, lab, note } = trial;
  return (
    <tr className={trial.excluded ? 'left-out' : ''}>
      <th scope="row">{id}</th>
      <td className="nowrap">{date}</td>
      <td>{revisionId}</td>
      <td className="short" title={material}>
        {material}
      </td>
      <td className="num">{shown(screwSpeedRpm)}</td>
      <td className="num">{setTempsC.map((value) => formatNumber(value, 4)).join(' / ')}</td>
      <td className="num">{shown(seconds)}</td>
      <td className="num">{shown(grams)}</td>
      <td className="num strong">{rateOf(trial)}</td>
      <td className="num">{shown(torqueNm)}</td>
      <td className="num">{lab ? lab.map((value) => formatNumber(value, 3)).join(' / ') : '–'}</td>
      <td className="words">
        {trial.excluded && (
          <b>
            ⊘ {words.out}: {trial.excludedWhy ?? '–'}.{' '}
          </b>
        )}
        {note}
      </td>
      <Acts trial={trial} />
    </tr>
  );
}

function Table({ project }: { readonly project: Project }) {
  const [most, setMost] = useState(rowsAtOnce);
  const { benchLog, materials } = project;
  const heads = [
    [words.id],
    [names.date.label],
    [names.revisionId.label],
    [names.materialId.label],
    [names.screwSpeedRpm.label, 'rpm'],
    [words.temps],
    [names.seconds.label, 's'],
    [names.grams.label, 'g'],
    [words.rate],
    [names.torqueNm.label, 'N·m'],
    ['L* / a* / b*'],
    [names.note.label],
    [words.actions],
  ];
  const nameOf = (id: string) => materials.find((material) => material.id === id)?.name ?? id;
  return (
    <div className="bench-scroll">
      <table className="bench-table" data-testid="trials">
        <thead>
          <tr>
            {heads.map(([head, unit]) => (
              <th key={head} scope="col">
                {head}
                {unit && <span className="unit">, {unit}</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {benchLog.slice(0, most).map((trial) => (
            <Row key={trial.id} trial={trial} material={nameOf(trial.materialId)} />
          ))}
        </tbody>
      </table>
      {benchLog.length > most && (
        <Button className="link" onPress={() => setMost(most + rowsAtOnce)}>
          {words.more(benchLog.length - most)}
        </Button>
      )}
    </div>
  );
}

function Tools({ project }: { readonly project: Project }) {
  const [comma, setComma] = useState(false);
  const drafting = useBench((state) => state.draft !== null);
  return (
    <div className="bench-tools">
      <Button className="tool strong" isDisabled={drafting} onPress={() => setBench({ draft: newDraft(project) })}>
        {words.add}
      </Button>
      <span className="spacer" />
      {project.benchLog.length > 0 && (
        <>
          <label className="check">
            <input type="checkbox" checked={comma} onChange={() => setComma(!comma)} /> {words.exportComma}
          </label>
          <Button className="tool" onPress={() => void exportTrials(project, comma)}>
            {words.export}
          </Button>
        </>
      )}
    </div>
  );
}

/** Trials of the project, and the form to add or change one. */
export function TrialsTab() {
  const project = useProject();
  const draft = useBench((state) => state.draft);
  return (
    <>
      <Tools project={project} />
      {draft && <TrialForm key={draft.of ?? 'new'} draft={draft} />}
      {project.benchLog.length > 0 ? (
        <Table project={project} />
      ) : (
        !draft && (
          <div className="bench-empty">
            <p>{words.none}</p>
            <p className="quiet">{words.noneNext}</p>
          </div>
        )
      )}
    </>
  );
}
