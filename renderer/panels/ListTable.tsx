/** A short table of numbers, one row per entry: nozzle pieces and motor points. */

import type { ReactNode } from 'react';
import { explain, NumberInput } from '../fields/NumberField.tsx';
import { type FieldSpec, unitText } from '../fields/spec.ts';
import { useNumberEdit } from '../fields/useNumberEdit.ts';
import { copyEntry, dropEntry, swapEntry } from '../store/edits.ts';
import type { Path } from '../store/path.ts';
import { text } from '../strings.ts';
import { applyListEdit } from './desk.ts';
import { type EntryTool, EntryTools } from './EntryTools.tsx';
import { TableIssues } from './TableIssues.tsx';

/** What the table lists and how entries are named. */
export interface ListTableProps {
  readonly list: Path;
  readonly count: number;
  readonly least: number;
  readonly specs: readonly FieldSpec[];
  readonly entryWord: string;
  readonly locked: boolean;
  /** content of the row's head; the entry's number where left out */
  readonly head?: (index: number) => ReactNode;
  /** what can be done with an entry; moving up, copying and removing where left out */
  readonly tools?: (index: number) => readonly EntryTool[];
}

function Cell(props: {
  readonly path: Path;
  readonly spec: FieldSpec;
  readonly locked: boolean;
  readonly label: string;
  readonly issuesId: string;
}) {
  const edit = useNumberEdit(props.path, props.spec);
  return (
    <td onPointerEnter={() => explain(props.path, props.spec.label, props.spec.help, props.spec)}>
      <NumberInput {...props} edit={edit} disabled={props.locked} describedBy={props.issuesId} />
    </td>
  );
}

function toolsFor({ list, count, least, locked }: ListTableProps, index: number) {
  const act = (label: string, change: Parameters<typeof applyListEdit>[2]) => () => applyListEdit(list, label, change);
  const { actions } = text;
  return [
    { label: actions.up, disabled: locked || index === 0, act: act(actions.up, swapEntry(list, index, -1)) },
    { label: actions.duplicate, disabled: locked, act: act(actions.duplicate, copyEntry(list, index)) },
    {
      label: actions.remove,
      disabled: locked || count <= least,
      ...(count <= least ? { note: actions.leastStay(least) } : {}),
      act: act(actions.remove, dropEntry(list, index)),
    },
  ];
}

const issuesId = (list: Path): string => `${list.join('-')}-issues`;

/** Where an issue stands, below the list: a value, a whole entry, or all of them. */
const placeIn =
  ({ entryWord, specs }: ListTableProps) =>
  ([index, key]: Path): string => {
    if (typeof index !== 'number') return entryWord;
    const spec = specs.find((candidate) => candidate.key === key);
    return `${entryWord} ${index + 1}${spec ? `, ${spec.label}` : ''}`;
  };

function Row({ index, ...props }: ListTableProps & { readonly index: number }) {
  const entry = `${props.entryWord} ${index + 1}`;
  return (
    <tr>
      <th scope="row">{props.head?.(index) ?? index + 1}</th>
      {props.specs.map((spec) => (
        <Cell
          key={spec.key}
          path={[...props.list, index, spec.key]}
          spec={spec}
          locked={props.locked}
          label={`${entry}, ${spec.label}`}
          issuesId={issuesId(props.list)}
        />
      ))}
      <td>
        <EntryTools entry={entry} tools={props.tools?.(index) ?? toolsFor(props, index)} />
      </td>
    </tr>
  );
}

/** The table. */
export function ListTable(props: ListTableProps) {
  return (
    <>
      <table className="list">
        <thead>
          <tr>
            <th scope="col">{props.entryWord}</th>
            {props.specs.map((spec) => (
              <th key={spec.key} scope="col">
                {spec.label} <span className="unit">{unitText(spec.unit)}</span>
              </th>
            ))}
            <th scope="col">
              <span className="unseen">{text.actions.more}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: props.count }, (_, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: entries have no identity but their place
            <Row key={index} index={index} {...props} />
          ))}
        </tbody>
      </table>
      <TableIssues list={props.list} id={issuesId(props.list)} place={placeIn(props)} />
    </>
  );
}
