/** The print side, topic by topic: supply, wall, free melt, after a stop, cooling, and what the controller must be told. */

import { type ReactNode, useState } from 'react';
import { Button } from 'react-aria-components';
import {
  formatNumber,
  type Prediction,
  type PresentedRow,
  type PrintTopicId,
  printTopicIds,
  printTopicRows,
} from '../../core/index.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { text } from '../strings.ts';
import { DoubtSign } from './Explanation.tsx';
import { FigureRow } from './FigureRow.tsx';
import { chipOf } from './PrintSideChips.ts';
import { copyText } from './PrintSideCopy.ts';
import { WallPicture } from './PrintSideWall.tsx';
import '../styles/print-side.css';

const words = text.printSide;

/** Figures that are drawn as bars to one scale: what comes out, and what is asked. */
const barred = ['volumeFlow', 'demand', 'meanDemand'];

/** Supply against demand: three bars, then the rest. */
function Supply({ rows }: { readonly rows: readonly PresentedRow[] }) {
  const supply = useEvaluation((state) => state.presentation?.groups.find(({ id }) => id === 'output')?.rows);
  const shown = [...(supply?.filter(({ id }) => id === 'volumeFlow') ?? []), ...rows];
  const most = Math.max(...shown.map(({ id, value }) => (barred.includes(id) ? (value ?? 0) : 0)));
  return (
    <dl>
      {shown.map((row) => {
        const bar = barred.includes(row.id) && most > 0 ? { bar: (row.value ?? 0) / most } : {};
        return <FigureRow key={row.id} group={row.id === 'volumeFlow' ? 'output' : 'print'} row={row} quiet {...bar} />;
      })}
    </dl>
  );
}

/** Copies one number. */
function CopyButton({ row, onCopied }: { readonly row: PresentedRow; onCopied(said: string): void }) {
  const { value } = row;
  if (value === null) return null;
  const number = formatNumber(value, 6);
  const copy = async () => onCopied((await copyText(number)) ? words.copied(number) : words.notCopied);
  return (
    <Button className="tool copy" aria-label={words.copyOne(row.label)} onPress={() => void copy()}>
      <svg viewBox="0 0 12 12" aria-hidden="true">
        <title>{words.copy}</title>
        <rect x="0.5" y="0.5" width="7.5" height="8.5" rx="1" />
        <rect x="3.5" y="3" width="7.5" height="8.5" rx="1" />
      </svg>
    </Button>
  );
}

/** Numbers for the controller, to be copied one by one or all. */
function Controller({ rows }: { readonly rows: readonly PresentedRow[] }) {
  const [said, setSaid] = useState('');
  const all = rows.filter(({ value }) => value !== null).map(({ label, text: shown }) => `${label}: ${shown}`);
  const copyAll = async () =>
    setSaid((await copyText(all.join('\n'))) ? words.copied(words.topics.controller) : words.notCopied);
  return (
    <>
      <p className="quiet small">{words.controllerHelp}</p>
      <dl className="controller">
        {rows.map((row) => (
          <FigureRow key={row.id} group="print" row={row} quiet tools={<CopyButton row={row} onCopied={setSaid} />} />
        ))}
      </dl>
      {all.length > 0 && (
        <p className="copy-all">
          <output className="quiet small">{said}</output>
          <Button className="tool" onPress={() => void copyAll()}>
            {words.copyAll}
          </Button>
        </p>
      )}
    </>
  );
}

const Rows = ({ rows }: { readonly rows: readonly PresentedRow[] }) => (
  <dl>
    {rows.map((row) => (
      <FigureRow key={row.id} group="print" row={row} quiet />
    ))}
  </dl>
);

/** What stands below the heading of a topic. */
function content(topic: PrintTopicId, { print: { line } }: Prediction, rows: readonly PresentedRow[]): ReactNode {
  if (topic === 'demand') return <Supply rows={rows} />;
  if (topic === 'controller') return <Controller rows={rows} />;
  return (
    <>
      {topic === 'line' && <WallPicture passes={line.passes} spacing={line.spacing} />}
      <Rows rows={rows} />
    </>
  );
}

interface TopicProps {
  readonly topic: PrintTopicId;
  readonly prediction: Prediction;
  readonly rows: readonly PresentedRow[];
}

function Topic({ topic, prediction, rows }: TopicProps) {
  const chip = chipOf(prediction.print, topic, prediction.output.flows);
  return (
    <section className="print-topic" aria-label={words.topics[topic]}>
      <header>
        <h3>
          {words.topics[topic]} <DoubtSign doubt={rows[0]?.basis?.doubt} />
        </h3>
        {chip && (
          <span className={`print-chip ${chip.tone}`}>
            <span aria-hidden="true">{words.signs[chip.tone]}</span> {chip.said}
          </span>
        )}
      </header>
      {content(topic, prediction, rows)}
    </section>
  );
}

/** The whole print side of the latest prediction. */
export function PrintSide({ prediction }: { readonly prediction: Prediction }) {
  const rows = useEvaluation((state) => state.presentation?.groups.find(({ id }) => id === 'print')?.rows);
  if (!rows) return null;
  const rowsOf = (topic: PrintTopicId) =>
    printTopicRows[topic].flatMap((id) => rows.find((row) => row.id === id) ?? []);
  return (
    <section className="print-side" aria-label={words.title}>
      <h2>{words.title}</h2>
      {printTopicIds.map((topic) => (
        <Topic key={topic} topic={topic} prediction={prediction} rows={rowsOf(topic)} />
      ))}
    </section>
  );
}
