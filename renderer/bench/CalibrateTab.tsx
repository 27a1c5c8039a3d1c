/** Calibration from trials: which factors, which trials, what was found, what becomes of it. */

import { Button } from 'react-aria-components';
import type { Project, Revision, Trial } from '../../core/index.ts';
import { CheckField } from '../fields/CheckField.tsx';
import { useDesk } from '../panels/desk.ts';
import { benchText } from '../strings/bench.ts';
import { CalibrationNote } from './CalibrationNote.tsx';
import { FitChoices } from './FitChoices.tsx';
import { FitReport } from './FitReport.tsx';
import { KeptCalibrations } from './KeptCalibrations.tsx';
import type { FactorName } from './names.ts';
import { RunBar } from './RunBar.tsx';
import { findFactors, isOld, useRuns } from './runs.ts';
import { type BenchState, setBench, useBench } from './store.ts';

const words = benchText.calibrate;

/** Trials that a calibration of a revision may use: the same granulate, and the same machine where wished. */
const trialsFor = (project: Project, revision: Revision, scope: BenchState['scope']): readonly Trial[] =>
  project.benchLog.filter(
    ({ materialId, revisionId }) =>
      materialId === revision.materialId && (scope === 'material' || revisionId === revision.id),
  );

function FactorChoice() {
  const chosen = useBench((state) => state.factors);
  const names = Object.keys(benchText.factors) as FactorName[];
  const switched = (name: FactorName, on: boolean) =>
    setBench({ factors: names.filter((each) => (each === name ? on : chosen.includes(each))) });
  return (
    <fieldset>
      <legend>{words.which}</legend>
      {names.map((name) => (
        <div key={name} className="factor-choice" title={benchText.factors[name].help}>
          <CheckField
            label={benchText.factors[name].label}
            checked={chosen.includes(name)}
            onChange={(on) => switched(name, on)}
          />
          <span className="quiet">{benchText.factors[name].help}</span>
        </div>
      ))}
    </fieldset>
  );
}

function ScopeChoice() {
  const { project, revision } = useDesk();
  const scope = useBench((state) => state.scope);
  return (
    <fieldset>
      <legend>{words.trials}</legend>
      {(['material', 'revision'] as const).map((each) => {
        const trials = trialsFor(project, revision, each);
        const out = trials.filter(({ excluded }) => excluded).length;
        return (
          <label key={each} className="check">
            <input type="radio" name="scope" checked={scope === each} onChange={() => setBench({ scope: each })} />{' '}
            {words.scopes[each]} <span className="quiet">({words.usable(trials.length - out, out)})</span>
          </label>
        );
      })}
    </fieldset>
  );
}

function Setup({ trials, revision }: { readonly trials: readonly Trial[]; readonly revision: Revision }) {
  const factors = useBench((state) => state.factors);
  const start = () =>
    findFactors(
      revision.id,
      trials.map(({ id }) => id),
      factors,
    );
  return (
    <>
      <p>{words.intro(revision.id)}</p>
      <div className="fit-setup">
        <FactorChoice />
        <ScopeChoice />
      </div>
      <RunBar kind="fit" label={words.run} disabled={factors.length === 0 || trials.length === 0} start={start} />
      {factors.length === 0 && <p className="issue">{words.choose}</p>}
    </>
  );
}

/** The part of the bench log. */
export function CalibrateTab() {
  const { project, revision } = useDesk();
  const scope = useBench((state) => state.scope);
  const found = useRuns(({ fit }) => fit);
  const some = trialsFor(project, revision, 'material').some(({ excluded }) => !excluded);
  return (
    <>
      <CalibrationNote />
      {some ? (
        <Setup trials={trialsFor(project, revision, scope)} revision={revision} />
      ) : (
        <div className="bench-empty">
          <p>{words.none}</p>
          <Button className="link" onPress={() => setBench({ tab: 'trials' })}>
            {benchText.tabs.trials}
          </Button>
        </div>
      )}
      {found && (
        <>
          {isOld(found.from, project) && <p className="bench-old">▲ {words.old}</p>}
          <FitReport fit={found.fit} />
          <FitChoices key={found.fit.evaluations} found={found} />
        </>
      )}
      <KeptCalibrations />
    </>
  );
}
