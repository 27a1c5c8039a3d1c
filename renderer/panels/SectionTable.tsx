/** The screw's sections side by side in the order of the axis: one column per section, one row per value. */

import type { SectionInput } from '../../core/index.ts';
import { IssueText } from '../fields/IssueText.tsx';
import { explain, NumberInput } from '../fields/NumberField.tsx';
import { type FieldSpec, unitText } from '../fields/spec.ts';
import { useNumberEdit } from '../fields/useNumberEdit.ts';
import { useDrafts } from '../store/drafts.ts';
import {
  addSection,
  duplicateSection,
  moveSection,
  removeSection,
  setSectionKind,
  splitSection,
} from '../store/edits.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { isWithin, type Path, pathKey } from '../store/path.ts';
import { applyEdit } from '../store/project.ts';
import { sectionFields, text } from '../strings.ts';
import { applyListEdit, useDesk } from './desk.ts';
import { EntryTools } from './EntryTools.tsx';

const words = text.describe;
const sectionName = (index: number): string => `${words.section} ${index + 1}`;

function Cell(props: {
  readonly path: Path;
  readonly spec: FieldSpec;
  readonly locked: boolean;
  readonly label: string;
}) {
  const edit = useNumberEdit(props.path, props.spec);
  return (
    <td onPointerEnter={() => explain(props.path, props.spec.label, props.spec.help)}>
      <NumberInput {...props} edit={edit} disabled={props.locked} describedBy="section-issues" />
    </td>
  );
}

function ValueRow({ spec, list }: { readonly spec: FieldSpec; readonly list: Path }) {
  const { revision, locked } = useDesk();
  return (
    <tr>
      <th scope="row">
        {spec.label} <span className="unit">{unitText(spec.unit)}</span>
      </th>
      {revision.screw.sections.map((section, index) =>
        spec.key in section ? (
          <Cell
            // biome-ignore lint/suspicious/noArrayIndexKey: sections have no identity but their place
            key={index}
            path={[...list, index, spec.key]}
            label={`${sectionName(index)}, ${spec.label}`}
            {...{ spec, locked }}
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

function toolsFor(id: string, list: Path, index: number, count: number, locked: boolean) {
  const act = (label: string, change: Parameters<typeof applyListEdit>[2]) => () => applyListEdit(list, label, change);
  const { actions } = text;
  return [
    {
      label: actions.earlier,

      disabled: locked || index === 0,
      act: act(actions.earlier, moveSection(id, index, -1)),
    },
    {
      label: actions.later,

      disabled: locked || index === count - 1,
      act: act(actions.later, moveSection(id, index, 1)),
    },
    { label: actions.split, disabled: locked, act: act(actions.split, splitSection(id, index)) },
    { label: actions.duplicate, disabled: locked, act: act(actions.duplicate, duplicateSection(id, index)) },
    { label: actions.add, disabled: locked, act: act(actions.add, addSection(id, index)) },
    {
      label: actions.remove,

      disabled: locked || count < 2,
      act: act(actions.remove, removeSection(id, index)),
    },
  ];
}

function HeadRow({ list }: { readonly list: Path }) {
  const { revision, locked } = useDesk();
  const { sections } = revision.screw;
  return (
    <tr>
      <th scope="col" className="corner">
        {words.section}
      </th>
      {sections.map((section, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sections have no identity but their place
        <th key={index} scope="col">
          <span className="section-head">
            <span className="section-name" title={section.name}>
              {index + 1} {section.name ?? ''}
            </span>
            <EntryTools
              entry={sectionName(index)}
              tools={toolsFor(revision.id, list, index, sections.length, locked)}
            />
          </span>
        </th>
      ))}
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
        <td key={index}>
          <select
            aria-label={`${sectionName(index)}, ${words.kind}`}
            value={section.kind}
            disabled={locked}
            onChange={(event) =>
              applyEdit(setSectionKind(revision.id, index, event.target.value as SectionInput['kind']), {
                label: words.kind,
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

function SectionIssues({ list }: { readonly list: Path }) {
  const drafts = Object.values(useDrafts()).flatMap((draft) =>
    draft.issue ? [{ ...draft.issue, path: draft.path }] : [],
  );
  const found = useEvaluation((state) => state.issues);
  const issues = [...drafts, ...found].filter((issue) => isWithin(issue.path, list));
  return (
    <div id="section-issues">
      {issues.map((issue) => {
        const place = issuePlace(issue.path.slice(list.length));
        return <IssueText key={pathKey(issue.path) + issue.code} issue={issue} place={place} />;
      })}
    </div>
  );
}

/** The table of sections, with the issues of its cells below. */
export function SectionTable() {
  const { root } = useDesk();
  const list = [...root, 'screw', 'sections'];
  return (
    <>
      <div className="section-scroll">
        <table className="sections">
          <thead>
            <HeadRow list={list} />
          </thead>
          <tbody>
            <KindRow />
            {sectionFields.map((spec) => (
              <ValueRow key={spec.key} {...{ spec, list }} />
            ))}
          </tbody>
        </table>
      </div>
      <SectionIssues list={list} />
    </>
  );
}
