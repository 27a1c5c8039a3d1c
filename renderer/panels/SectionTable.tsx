/** The screw's sections side by side in the order of the axis: one column per section, one row per value. */

import { memo, useState } from 'react';
import type { SectionInput } from '../../core/index.ts';
import { explain, NumberInput } from '../fields/NumberField.tsx';
import { type FieldSpec, unitText } from '../fields/spec.ts';
import { useNumberEdit } from '../fields/useNumberEdit.ts';
import { useLook } from '../look.ts';
import { setSectionKind } from '../store/edits.ts';
import { type Path, pathKey } from '../store/path.ts';
import { applyEdit } from '../store/project.ts';
import { sectionFields, text } from '../strings.ts';
import { useDesk } from './desk.ts';
import { EndsRow, SectionTotals, SplitAt } from './sections/SectionFoot.tsx';
import { HeadRow, NameRow, onSectionKey } from './sections/SectionHead.tsx';
import { type SectionDesk, sectionName } from './sections/sectionActs.ts';
import { TableIssues } from './TableIssues.tsx';

const words = text.describe;

interface CellProps {
  readonly path: Path;
  readonly spec: FieldSpec;
  readonly locked: boolean;
  readonly label: string;
  readonly index: number;
}

const sameCell = (a: CellProps, b: CellProps): boolean =>
  a.spec === b.spec && a.locked === b.locked && a.label === b.label && pathKey(a.path) === pathKey(b.path);

/** Follows its own number, so an edit of another one need not draw it anew. */
const Cell = memo(function CellNow(props: CellProps) {
  const { index, ...field } = props;
  const edit = useNumberEdit(props.path, props.spec);
  return (
    <td data-section={index} onPointerEnter={() => explain(props.path, props.spec.label, props.spec.help, props.spec)}>
      <NumberInput {...field} edit={edit} disabled={props.locked} describedBy="section-issues" />
    </td>
  );
}, sameCell);

function ValueRow({ spec, list }: { readonly spec: FieldSpec; readonly list: Path }) {
  const { revision, locked } = useDesk();
  const look = useLook();
  return (
    <tr>
      <th scope="row">
        {spec.label} <span className="unit">{unitText(spec.unit, look)}</span>
      </th>
      {revision.screw.sections.map((section, index) =>
        spec.key in section ? (
          <Cell
            // biome-ignore lint/suspicious/noArrayIndexKey: sections have no identity but their place
            key={index}
            path={[...list, index, spec.key]}
            label={`${sectionName(index)}, ${spec.label}`}
            {...{ spec, locked, index }}
          />
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: sections have no identity but their place
          <td key={index} className="none">
            –
          </td>
        ),
      )}
    </tr>
  );
}

function KindRow() {
  const { revision, locked } = useDesk();
  return (
    <tr>
      <th scope="row">{words.kind}</th>
      {revision.screw.sections.map((section, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sections have no identity but their place
        <td key={index} data-section={index}>
          <select
            aria-label={`${sectionName(index)}, ${words.kind}`}
            value={section.kind}
            disabled={locked}
            onChange={(event) =>
              applyEdit(setSectionKind(revision.id, index, event.target.value as SectionInput['kind']), {
                label: `${sectionName(index)}, ${words.kind}`,
              })
            }
          >
            <option value="flighted">{words.kinds.flighted}</option>
            <option value="plain">{words.kinds.plain}</option>
          </select>
        </td>
      ))}
    </tr>
  );
}

/** Where an issue stands, below the list of sections: a value, a whole section, or all of them. */
export function issuePlace([index, key]: Path): string {
  if (typeof index !== 'number') return `${words.section}s`;
  const spec = sectionFields.find((candidate) => candidate.key === key);
  return spec ? `${sectionName(index)}, ${spec.label}` : sectionName(index);
}

/** The table of sections, with the issues of its cells, the totals and the place of a cut below. */
export function SectionTable() {
  const { root, revision, locked } = useDesk();
  const [splitting, splitAt] = useState<number | null>(null);
  const list = [...root, 'screw', 'sections'];
  const desk: SectionDesk = { revision, list, locked, splitAt };
  return (
    <>
      <div className="section-scroll">
        <table className="sections" onKeyDown={(event) => onSectionKey(event, desk)}>
          <thead>
            <HeadRow desk={desk} />
          </thead>
          <tbody>
            <NameRow desk={desk} />
            <KindRow />
            {sectionFields.map((spec) => (
              <ValueRow key={spec.key} {...{ spec, list }} />
            ))}
            <EndsRow desk={desk} />
          </tbody>
        </table>
      </div>
      <SectionTotals desk={desk} />
      {splitting !== null && revision.screw.sections[splitting] && !locked && (
        <SplitAt key={splitting} desk={desk} index={splitting} close={() => splitAt(null)} />
      )}
      <TableIssues list={list} id="section-issues" place={issuePlace} />
    </>
  );
}
