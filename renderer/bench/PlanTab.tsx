/** The trials that would tell most, and the sheet to take to the bench. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import {
  formatNumber,
  formatQuantity,
  type ObservationKind,
  type PlannedTrial,
  type Project,
} from '../../core/index.ts';
import { getBridge } from '../bridge.ts';
import { CheckField } from '../fields/CheckField.tsx';
import { useDesk } from '../panels/desk.ts';
import { benchText } from '../strings/bench.ts';
import { today } from '../today.ts';
import { errorText } from './figures.ts';
import { HeadRow } from './HeadRow.tsx';
import { PrintedSheet } from './PrintedSheet.tsx';
import { RunBar } from './RunBar.tsx';
import { isOld, type Kept, predictsAlike, proposeTrials, useRuns } from './runs.ts';
import { setBench } from './store.ts';
import { draftOf } from './trialDraft.ts';
import { freshTrialId } from './trials.ts';

const words = benchText.plan;
const kinds = ['rate', 'torque', 'colour'] as const;

/** Half the width of a 95 % range of a normal distribution, in standard deviations. */
const half95 = 1.96;

const doubt = (spread: number): string => errorText(half95 * spread);

function enterResult(project: Project, { trial }: PlannedTrial): void {
  const draft = draftOf({ ...trial, id: freshTrialId(project), date: today() });
  setBench({ tab: 'trials', draft: { ...draft, of: null, texts: { ...draft.texts, grams: '' } } });
}

function Row({
  plan,
  index,
  project,
}: {
  readonly plan: PlannedTrial;
  readonly index: number;
  readonly project: Project;
}) {
  const { trial, expected, spreadBefore, spreadAfter, reason } = plan;
  return (
    <tr>
      <th scope="row">{index + 1}</th>
      <td className="num">{formatNumber(trial.screwSpeedRpm, 3)} rpm</td>
      <td className="num">{trial.setTempsC.map((value) => formatNumber(value, 4)).join(' / ')}</td>
      <td className="num">{trial.seconds} s</td>
      <td className="num">
        {formatQuantity(expected.massFlow, 'g/min', 2)}
        {expected.torque !== null && `, ${formatQuantity(expected.torque, 'N·m', 2)}`}
      </td>
      <td className="num nowrap">{words.fromTo(doubt(spreadBefore), doubt(spreadAfter))}</td>
      <td className="words">{reason}</td>
      <td>
        <Button className="tool small" onPress={() => enterResult(project, plan)}>
          {words.enter}
        </Button>
      </td>
    </tr>
  );
}

function Proposed({ found, project }: { readonly found: Kept<'plan'>; readonly project: Project }) {
  const { plan, revisionId } = found;
  const heads = [words.no, words.speed, words.temps, words.collect, words.expected, words.narrows, words.why, ''];
  if (plan.trials.length === 0) return <p className="issue">{words.nothing}</p>;
  return (
    <>
      <table className="bench-table" data-testid="plan">
        <HeadRow heads={heads} />
        <tbody>
          {plan.trials.map((each, index) => (
            <Row key={each.trial.id} plan={each} index={index} project={project} />
          ))}
        </tbody>
      </table>
      <p className="quiet">
        {words.doubtHelp} {words.looked(plan.candidates, plan.dropped.length)}
      </p>
      <div className="bench-tools">
        <Button className="tool strong" onPress={() => window.print()}>
          {words.print}
        </Button>
        {getBridge().host === 'electron' && (
          <Button className="tool" onPress={() => void getBridge().printReport('trial-sheet.pdf')}>
            {words.pdf}
          </Button>
        )}
        <span className="quiet">{words.sheetHelp}</span>
      </div>
      <PrintedSheet {...{ project, revisionId, plans: plan.trials }} />
    </>
  );
}

function Dropped({ plan }: Kept<'plan'>) {
  if (plan.dropped.length === 0) return null;
  return (
    <details>
      <summary>{words.dropped}</summary>
      <ul>
        {plan.dropped.map(({ trialId, reason }) => (
          <li key={trialId}>
            {trialId}: {reason}
          </li>
        ))}
      </ul>
    </details>
  );
}

function Setup() {
  const { project, revision } = useDesk();
  const [measure, setMeasure] = useState<readonly ObservationKind[]>(['rate', 'torque']);
  const [count, setCount] = useState(4);
  const found = useRuns(({ fit }) => fit);
  const usable = found && found.revisionId === revision.id && predictsAlike(found.from, project) ? found.fit : null;
  const basis = usable ? 'fit' : revision.calibrationId === undefined ? 'none' : 'stored';
  return (
    <>
      <p>
        {words.intro(revision.id)} {words.basis[basis]}
      </p>
      <div className="bench-tools">
        <span>{words.measure}:</span>
        {kinds.map((kind) => (
          <CheckField
            key={kind}
            label={words.kinds[kind]}
            checked={measure.includes(kind)}
            onChange={(on) => setMeasure(kinds.filter((each) => (each === kind ? on : measure.includes(each))))}
          />
        ))}
        <label className="check">
          {words.count}{' '}
          <select value={count} onChange={({ target }) => setCount(Number(target.value))}>
            {[1, 2, 3, 4, 5, 6, 8, 10].map((n) => (
              <option key={n}>{n}</option>
            ))}
          </select>
        </label>
        <RunBar
          kind="plan"
          label={words.run}
          disabled={measure.length === 0}
          start={() => proposeTrials(revision.id, { date: today(), kinds: measure, count }, usable)}
        />
      </div>
    </>
  );
}

/** The part of the bench log. */
export function PlanTab() {
  const { project } = useDesk();
  const found = useRuns(({ plan }) => plan);
  return (
    <>
      <Setup />
      {!found && <p className="quiet">{words.none}</p>}
      {found && isOld(found.from, project) && <p className="bench-old">▲ {words.old}</p>}
      {found && <Proposed found={found} project={project} />}
      {found && <Dropped {...found} />}
    </>
  );
}
