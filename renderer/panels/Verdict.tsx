/** The answer in one glance: what comes out, what holds it, whether it is enough, and the numbers that decide. */

import { Fragment, type ReactNode, useState } from 'react';
import {
  type Basis,
  type Capacity,
  type CapacityKind,
  type FirstFigures,
  figureInputs,
  fromSi,
  type Prediction,
} from '../../core/index.ts';
import { CalibrationNote } from '../bench/CalibrationNote.tsx';
import { placeOf } from '../handbook/places.ts';
import { formatNumber, formatQuantity } from '../look.ts';
import { pressureText } from '../plots/pressureUnit.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { text } from '../strings.ts';
import { AskButton, DoubtSign, Explanation } from './Explanation.tsx';
import { ScrewSpeedNow } from './ScrewSpeedNow.tsx';

const words = text.verdict;

/** The one that limits comes first, then by what is left. */
const rank = (prediction: FirstFigures, capacity: Capacity): number =>
  capacity.kind === prediction.limit ? -1 : capacity.reserve;

/** Capacities with their reserve as bars; one at a time says what it rests on. */
function Capacities({ prediction }: { readonly prediction: FirstFigures }) {
  const [asked, setAsked] = useState<CapacityKind | null>(null);
  const shown = prediction.capacities
    .filter((capacity) => Number.isFinite(capacity.reserve))
    .sort((a, b) => rank(prediction, a) - rank(prediction, b));
  return (
    <dl className="capacities" aria-label={words.reserve}>
      {shown.map(({ kind, reserve, volumeFlow, basis }) => (
        <div key={kind} className={kind === prediction.limit ? 'capacity limiting' : 'capacity'}>
          <dt title={words.reserve}>
            {kind === prediction.limit && <span aria-hidden="true">▸ </span>}
            {words.capacities[kind]} <DoubtSign doubt={basis.doubt} />
          </dt>
          <dd>
            <span className="bar" aria-hidden="true">
              <span className="bar-fill" style={{ width: `${Math.min(100, (100 * reserve) / 4)}%` }} />
            </span>
            <span className="number-text">{formatQuantity(volumeFlow, 'mm³/s', 3)}</span>
            <span className="number-text reserve">{reserve >= 100 ? '>100' : formatNumber(reserve, 2)}×</span>
            <AskButton
              label={words.capacities[kind]}
              open={asked === kind}
              onPress={() => setAsked(asked === kind ? null : kind)}
            />
          </dd>
          {asked === kind && (
            <dd className="figure-basis">
              <Explanation
                help={words.capacityHelp}
                basis={basis}
                inputs={figureInputs('capacities', kind)}
                place={placeOf('capacities', kind)}
              />
            </dd>
          )}
        </div>
      ))}
    </dl>
  );
}

function Swatch({ prediction }: { readonly prediction: FirstFigures }) {
  const { colour } = prediction;
  if (!colour.srgb || !colour.srgbFresh) return <span className="reason">{colour.reason ?? '–'}</span>;
  return (
    <span className="swatches">
      <svg viewBox="0 0 40 16" aria-hidden="true">
        <rect width="20" height="16" fill={colour.srgbFresh} />
        <rect x="20" width="20" height="16" fill={colour.srgb} />
      </svg>
      {colour.dE00Mean === null ? '–' : formatNumber(colour.dE00Mean, 2)}
      {colour.dE00Worst !== null && ` … ${formatNumber(colour.dE00Worst, 2)}`}
    </span>
  );
}

/** N·m; below a thousandth of one nobody tells thousandths apart. */
const torqueText = (torque: number): string =>
  formatNumber(torque < 0.01 ? Math.round(1000 * torque) / 1000 : torque, 3);

/** One of the numbers that decide: its name, how it reads, what it rests on. */
interface KeyNumber {
  readonly name: string;
  readonly value: ReactNode;
  readonly help: string;
  readonly basis: Basis;
  /** group of figures whose inputs it shares */
  readonly group: string;
  readonly wide?: boolean;
}

function keyNumbers(prediction: FirstFigures): readonly KeyNumber[] {
  const { output, drive, residence, dead, colour } = prediction;
  const flows = output.volumeFlow > 0;
  const torque = `${torqueText(drive.torque)} / ${formatQuantity(drive.torqueUsable, 'N·m', 3)}`;
  const stays = flows ? `${formatNumber(residence.mean, 3)} … ${formatQuantity(residence.t95, 's', 3)}` : '–';
  const lingers = flows ? formatQuantity(dead.fractionOver3, '%', 2) : '–';
  const help = words.keyHelp;
  return [
    {
      name: words.head,
      value: pressureText(output.headPressure),
      help: help.head,
      basis: output.basis,
      group: 'output',
    },
    { name: words.torque, value: torque, help: help.torque, basis: drive.basis, group: 'drive' },
    { name: words.stays, value: stays, help: help.stays, basis: residence.basis, group: 'residence' },
    { name: words.dead, value: lingers, help: help.dead, basis: dead.basis, group: 'residence' },
    {
      ...{ name: words.colour, value: <Swatch prediction={prediction} />, help: help.colour, wide: true },
      ...{ basis: colour.basis, group: 'colour' },
    },
  ];
}

function KeyNumbers({ prediction }: { readonly prediction: FirstFigures }) {
  const [asked, setAsked] = useState<string | null>(null);
  return (
    <dl className="key-numbers">
      {keyNumbers(prediction).map(({ name, value, help, basis, group, wide }) => (
        <Fragment key={name}>
          <div className={wide ? 'key-number wide' : 'key-number'}>
            <dt title={help}>
              {name} <DoubtSign doubt={basis.doubt} />
              <AskButton label={name} open={asked === name} onPress={() => setAsked(asked === name ? null : name)} />
            </dt>
            <dd>{value}</dd>
          </div>
          {asked === name && (
            <div className="key-basis">
              <dt className="unseen">{`${text.figures.rests}: ${name}`}</dt>
              <dd>
                <Explanation help={help} basis={basis} inputs={figureInputs(group, '')} place={placeOf(group, '')} />
              </dd>
            </div>
          )}
        </Fragment>
      ))}
    </dl>
  );
}

/** @param old the prediction is an earlier one: what it said of the print need not hold beside the figures of now */
function Demand({ prediction, old }: { readonly prediction: Prediction; readonly old: boolean }) {
  const { print } = prediction;
  if (old) return <p className="demand earlier">{words.enoughFollows}</p>;
  const enough = print.margin >= 1;
  const rpm =
    print.speedForDemand === null ? words.never : `${words.meetsAt} ${formatQuantity(print.speedForDemand, 'rpm', 3)}`;
  return (
    <p className={`demand ${enough ? 'good' : 'short'}`}>
      <span aria-hidden="true">{enough ? '✓' : '▲'}</span> <b>{enough ? words.enough : words.short}</b>:{' '}
      {formatQuantity(print.demand, 'mm³/s', 3)} {words.asked}, {formatNumber(print.margin, 2)}×; {rpm}
    </p>
  );
}

/** The verdict of the latest prediction. */
export function Verdict({ prediction }: { readonly prediction: Prediction }) {
  const stale = useEvaluation((state) => state.stale);
  const first = useEvaluation((state) => state.first);
  const now = first ?? prediction;
  const { output } = now;
  return (
    <section
      className={stale && !first ? 'verdict stale' : 'verdict'}
      aria-label={words.answer}
      data-output={output.volumeFlow}
      data-first={first !== null}
    >
      <p className="big">
        <output className="big-number" data-testid="output">
          {formatNumber(fromSi(output.volumeFlow, 'mm³/s'), 3)}
        </output>{' '}
        mm³/s <span className="beside">{formatQuantity(output.massFlow, 'g/min', 3)}</span>
        <ScrewSpeedNow speed={output.screwSpeed} />
      </p>
      <p className="limit">{words.limits[now.limit]}</p>
      <Demand prediction={prediction} old={first !== null} />
      <CalibrationNote />
      <Capacities prediction={now} />
      <KeyNumbers prediction={now} />
      {!now.converged && <p className="issue">{words.notConverged}</p>}
    </section>
  );
}
