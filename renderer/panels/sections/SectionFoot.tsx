/** Below the section table: where sections end, how long they are together, open joints, and the place of a cut. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import { lookQuantity, toSi } from '../../../core/index.ts';
import { showNumber } from '../../fields/quantity.ts';
import { goToRefused } from '../../fields/refused.ts';
import { unitText } from '../../fields/spec.ts';
import { TypedNumber } from '../../fields/TypedNumber.tsx';
import { useLook } from '../../look.ts';
import { joinEnds, openJoints, shortestMm, splitSectionAt } from '../../store/sectionEdits.ts';
import { editText } from '../../strings/editing.ts';
import { text } from '../../strings.ts';
import { applyListEdit } from '../desk.ts';
import { actOn, type SectionDesk, sectionName } from './sectionActs.ts';

const words = editText.sections;

/** Distances from the start of the bore at which the sections end, mm. */
function endsOf(lengths: readonly number[]): number[] {
  let end = 0;
  return lengths.map((length) => {
    end += length;
    return Number(end.toFixed(6));
  });
}

/** Where each section ends. */
export function EndsRow({ desk }: { readonly desk: SectionDesk }) {
  const look = useLook();
  const ends = endsOf(desk.revision.screw.sections.map(({ lengthMm }) => lengthMm));
  return (
    <tr className="section-ends">
      <th scope="row" title={words.endsHelp}>
        {words.ends} <span className="unit">{unitText('mm', look)}</span>
      </th>
      {ends.map((end, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sections have no identity but their place
        <td key={index}>{showNumber(end, 'mm', look)}</td>
      ))}
    </tr>
  );
}

/** All sections against the barrel, and the button that joins them. */
export function SectionTotals({ desk }: { readonly desk: SectionDesk }) {
  const look = useLook();
  const { screw, barrel, id } = desk.revision;
  const total = endsOf(screw.sections.map(({ lengthMm }) => lengthMm)).at(-1) ?? 0;
  const shown = (mm: number) => lookQuantity(toSi(mm, 'mm'), 'mm', 5, look);
  const rest = barrel.lengthMm - total;
  const open = openJoints(screw.sections);
  return (
    <div className="section-totals">
      <span className={rest < 0 ? 'over' : ''}>
        {words.total(shown(total), shown(barrel.lengthMm))},{' '}
        {rest < 0 ? words.over(shown(-rest)) : words.left(shown(rest))}
      </span>
      {open > 0 && <span className="quiet">{words.steps(open)}</span>}
      <Button
        className="tool"
        isDisabled={desk.locked || open === 0}
        onPress={() => applyListEdit(desk.list, words.join, joinEnds(id))}
      >
        <span title={open > 0 ? words.joinHelp : words.joined}>{words.join}</span>
      </Button>
    </div>
  );
}

/** Asks where a section is to be cut. */
export function SplitAt(props: { readonly desk: SectionDesk; readonly index: number; close(): void }) {
  const { desk, index, close } = props;
  const look = useLook();
  const lengthMm = desk.revision.screw.sections[index]?.lengthMm ?? 0;
  const [at, setAt] = useState(lengthMm / 2);
  const inside = (mm: number) => mm >= shortestMm && lengthMm - mm >= shortestMm;
  const refusal = words.splitOutside(lookQuantity(toSi(lengthMm, 'mm'), 'mm', 5, look));
  const cut = (button: Element) => {
    if (goToRefused(button)) return;
    actOn(desk, index, words.split, splitSectionAt(desk.revision.id, index, at));
    close();
  };
  return (
    <fieldset className="split-at">
      <legend>{words.splitTitle(sectionName(index))}</legend>
      <TypedNumber
        label={words.distance}
        value={at}
        unit="mm"
        refuse={(mm) => (inside(mm) ? null : refusal)}
        take={setAt}
      />
      <Button className="tool" isDisabled={!inside(at)} onPress={({ target }) => cut(target)}>
        {words.split}
      </Button>
      <Button className="tool" onPress={close}>
        {text.actions.cancel}
      </Button>
    </fieldset>
  );
}
