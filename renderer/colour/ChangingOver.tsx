/** How an old colour is washed out: share over time, and time and melt until it no longer shows. */

import { useMemo, useState } from 'react';
import type { ChangeMilestone, ChangeOver, Lab, Prediction, Project } from '../../core/index.ts';
import { TypedNumber } from '../fields/TypedNumber.tsx';
import { formatNumber, formatQuantity } from '../look.ts';
import { AskButton, Explanation } from '../panels/Explanation.tsx';
import { Chart, curveHeight } from '../plots/Chart.tsx';
import type { ChangeAsk, ColourAnswer } from '../solve/colourJob.ts';
import { useJob } from '../solve/job.ts';
import { startColourWorker } from '../solve/startJobs.ts';
import { colourText } from '../strings/colour.ts';
import { changeData, changeOptions } from './changePlot.ts';
import { oldColours } from './oldColours.ts';

const words = colourText.change;

function MilestoneRow({ name, milestone }: { readonly name: string; readonly milestone: ChangeMilestone }) {
  const { oldShare, time, mass, reason } = milestone;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{oldShare === null ? '–' : formatQuantity(oldShare, '%', 2)}</td>
      <td>{time === null ? '–' : formatQuantity(time, time >= 600 ? 'min' : 's', 3)}</td>
      <td>{mass === null ? '–' : formatQuantity(mass, 'g', 3)}</td>
      <td className="quiet">{reason}</td>
    </tr>
  );
}

function Washed({ change }: { readonly change: ChangeOver }) {
  const [open, setOpen] = useState(false);
  const data = useMemo(() => changeData(change), [change]);
  const known = change.knownShare;
  return (
    <div className="colour-pair">
      <div>
        <Chart label={words.title} data={data} options={changeOptions} height={curveHeight} />
      </div>
      <div>
        <table className="colour-table">
          <thead>
            <tr>
              <th scope="col">{words.state}</th>
              <th scope="col">{words.left}</th>
              <th scope="col">{words.takes}</th>
              <th scope="col">{words.weighs}</th>
              <th scope="col">
                <span className="unseen">{words.remark}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            <MilestoneRow name={words.to(formatNumber(change.aim, 2))} milestone={change.toColour} />
            <MilestoneRow name={words.to99} milestone={change.to99} />
            <MilestoneRow name={words.to999} milestone={change.to999} />
          </tbody>
        </table>
        <p className="quiet">
          {known < 1 ? words.unknown(formatQuantity(1 - known, '%', 2)) : words.known}{' '}
          <AskButton label={words.title} open={open} onPress={() => setOpen(!open)} />
        </p>
        {open && <Explanation basis={change.basis} inputs={[]} place="residence#distribution" />}
      </div>
    </div>
  );
}

function TypedLab({ lab, take }: { readonly lab: Lab; take(lab: Lab): void }) {
  const names = [words.lightness, words.redness, words.yellowness] as const;
  return names.map((name, i) => (
    <TypedNumber
      key={name}
      label={name}
      unit=""
      value={lab[i]}
      refuse={(value) =>
        i === 0
          ? value >= 0 && value <= 100
            ? null
            : words.badLightness
          : Math.abs(value) <= 128
            ? null
            : words.badHue
      }
      take={(value) => take([i === 0 ? value : lab[0], i === 1 ? value : lab[1], i === 2 ? value : lab[2]])}
    />
  ));
}

/** The section; where the fresh colour is not known it says so. */
export function ChangingOver({ prediction, project }: { readonly prediction: Prediction; readonly project: Project }) {
  const choices = useMemo(() => oldColours(project), [project]);
  const [chosen, choose] = useState(choices[0]?.id ?? 'typed');
  const [typed, setTyped] = useState<Lab>([25, 0, 0]);
  const labNew = prediction.colour.labFresh;
  const labOld = choices.find(({ id }) => id === chosen)?.lab ?? typed;
  const ask = useMemo<ChangeAsk | null>(() => {
    const { residence, output } = prediction;
    if (labNew === null || !output.flows) return null;
    const { time, cumulative } = residence;
    return { kind: 'change', residence: { time, cumulative }, massFlow: output.massFlow, labOld, labNew, aim: 1 };
  }, [prediction, labOld, labNew]);
  const heard = useJob<ColourAnswer>(startColourWorker, ask);
  const change = heard.answers.findLast((answer) => answer.kind === 'change')?.change;
  return (
    <section aria-label={words.title}>
      <h2>{words.title}</h2>
      {labNew === null ? (
        <p>
          {words.nothing}{' '}
          {prediction.output.flows &&
            words.washes(
              formatQuantity(prediction.residence.washout99, 's', 3),
              formatQuantity(prediction.residence.washout999, 's', 3),
            )}
        </p>
      ) : (
        <div className="study-bar">
          <label>
            {words.old}{' '}
            <select value={chosen} onChange={(event) => choose(event.target.value)}>
              {choices.map(({ id, label }) => (
                <option key={id} value={id}>
                  {label}
                </option>
              ))}
              <option value="typed">{words.typed}</option>
            </select>
          </label>
          {chosen === 'typed' && <TypedLab lab={typed} take={setTyped} />}
          <span className="quiet">{words.next}</span>
        </div>
      )}
      {heard.fault && <p className="issue">{heard.fault}</p>}
      {change && <Washed change={change} />}
    </section>
  );
}
