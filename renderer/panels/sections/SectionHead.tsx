/** Heads of the section table: number to drag or move by keys, name, and what can be done. */

import { type DragEvent, type KeyboardEvent, useState } from 'react';
import { Button } from 'react-aria-components';
import { TextField } from '../../fields/TextField.tsx';
import { nameSection } from '../../store/sectionEdits.ts';
import { editText } from '../../strings/editing.ts';
import { text } from '../../strings.ts';
import { EntryTools } from '../EntryTools.tsx';
import { actOn, drop, type SectionDesk, sectionName, sectionTools, shift } from './sectionActs.ts';

const words = editText.sections;
const dragType = 'application/x-augerwright-section';

/** Alt with an arrow moves the section that the focus is in; the focus goes with it. */
export function onSectionKey(event: KeyboardEvent<HTMLElement>, desk: SectionDesk): void {
  const by = event.key === 'ArrowLeft' ? -1 : event.key === 'ArrowRight' ? 1 : 0;
  const cell = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-section]') : null;
  if (by === 0 || !event.altKey || !cell) return;
  event.preventDefault();
  const index = Number(cell.dataset.section);
  const row = cell.parentElement;
  const place = [...cell.querySelectorAll('input, select, button')].indexOf(event.target as Element);
  // What is being typed is handed over first: a move drops what is only typed.
  if (event.target instanceof HTMLElement) event.target.blur();
  shift(desk, index, by);
  setTimeout(() => {
    const count = desk.revision.screw.sections.length;
    const there = Math.min(count - 1, Math.max(0, index + by));
    const beside = row?.querySelector(`[data-section="${there}"]`);
    beside?.querySelectorAll<HTMLElement>('input, select, button')[place]?.focus();
  });
}

/** The number, which can be dragged onto another, and two buttons that move the section by one place. */
function Order({ desk, index }: { readonly desk: SectionDesk; readonly index: number }) {
  const last = desk.revision.screw.sections.length - 1;
  const move = (by: -1 | 1, label: string, sign: string) => (
    <Button
      className="tiny"
      aria-label={`${label}: ${sectionName(index)}`}
      isDisabled={desk.locked || (by < 0 ? index === 0 : index === last)}
      onPress={() => shift(desk, index, by)}
    >
      <span title={label} aria-hidden="true">
        {sign}
      </span>
    </Button>
  );
  return (
    <>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the buttons beside do the same for other hands */}
      <span
        className="section-grip"
        draggable={!desk.locked}
        title={words.dragHelp}
        onDragStart={(event) => event.dataTransfer.setData(dragType, String(index))}
      >
        {index + 1}
      </span>
      {move(-1, text.actions.earlier, '◂')}
      {move(1, text.actions.later, '▸')}
    </>
  );
}

function Head({ desk, index }: { readonly desk: SectionDesk; readonly index: number }) {
  const [over, setOver] = useState(false);
  const allow = (event: DragEvent) => {
    if (!event.dataTransfer.types.includes(dragType)) return;
    event.preventDefault();
    setOver(true);
  };
  const take = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const from = event.dataTransfer.getData(dragType);
    if (from !== '') drop(desk, Number(from), index);
  };
  return (
    <th
      scope="col"
      data-section={index}
      className={over ? 'drop' : ''}
      onDragOver={allow}
      onDragLeave={() => setOver(false)}
      onDrop={take}
    >
      <span className="section-head">
        <Order desk={desk} index={index} />
        <EntryTools entry={sectionName(index)} tools={sectionTools(desk, index)} />
      </span>
    </th>
  );
}

/** Heads of all sections. */
export function HeadRow({ desk }: { readonly desk: SectionDesk }) {
  return (
    <tr>
      <th scope="col" className="corner">
        {text.describe.section}
      </th>
      {desk.revision.screw.sections.map((_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sections have no identity but their place
        <Head key={index} {...{ desk, index }} />
      ))}
    </tr>
  );
}

/** Names of all sections, to be typed. */
export function NameRow({ desk }: { readonly desk: SectionDesk }) {
  return (
    <tr>
      <th scope="row">{words.name}</th>
      {desk.revision.screw.sections.map(({ name = '' }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sections have no identity but their place
        <td key={index} data-section={index} title={name}>
          <TextField
            label={words.nameOf(sectionName(index))}
            hideLabel
            value={name}
            disabled={desk.locked}
            placeholder={words.unnamed}
            onCommit={(next) => actOn(desk, index, words.name, nameSection(desk.revision.id, index, next))}
          />
        </td>
      ))}
    </tr>
  );
}
