/** One material value: number at hand; doubt range, status and source behind a line that opens. */

import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Sourced } from '../../../core/index.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { writeNumber } from '../../fields/quantity.ts';
import type { FieldSpec } from '../../fields/spec.ts';
import { TextField } from '../../fields/TextField.tsx';
import { setValue } from '../../store/edits.ts';
import { type Path, valueAt } from '../../store/path.ts';
import { applyEdit } from '../../store/project.ts';
import { text } from '../../strings.ts';
import { pathBelow, useDesk } from '../desk.ts';
import { SourcedNumber } from './SourcedNumber.tsx';

const words = text.describe;
const own = words.granulate;

const shown = (bound: number | undefined): string => (bound === undefined ? '…' : writeNumber(bound));

function rangeText({ low, high }: Sourced): string {
  return low === undefined && high === undefined ? '' : ` · ${words.range} ${shown(low)}–${shown(high)}`;
}

interface Placed {
  readonly path: Path;
  readonly spec: FieldSpec;
}

function Provenance({ path, spec, stored }: Placed & { readonly stored: Sourced }) {
  const end = (word: string): FieldSpec => ({
    ...spec,
    label: `${spec.label}, ${word.toLowerCase()}`,
    help: own.doubtHelp,
    optional: true,
  });
  const statusPath = [...path, 'status'];
  return (
    <div className="provenance">
      <SourcedNumber path={[...path, 'low']} spec={end(own.doubtLow)} />
      <SourcedNumber path={[...path, 'high']} spec={end(own.doubtHigh)} />
      <ChoiceField
        path={statusPath}
        label={words.status}
        help={own.statusHelp}
        value={stored.status}
        options={own.statuses}
        disabled={false}
        onChoose={(status) => applyEdit(setValue(statusPath, status), { label: `${spec.label}, ${words.status}` })}
      />
      <TextField
        label={words.source}
        value={stored.source}
        lines={3}
        required
        maxLength={600}
        onCommit={(source) =>
          applyEdit(setValue([...path, 'source'], source), { label: `${spec.label}, ${words.source}` })
        }
      />
    </div>
  );
}

/** The value at `spec.key` below the root; nothing where the material has none. */
function SourcedField({ root, spec }: { readonly root: Path; readonly spec: FieldSpec }) {
  const { project } = useDesk();
  const [open, setOpen] = useState(false);
  const path = pathBelow(root, spec.key);
  const stored = valueAt(project, path) as Sourced | undefined;
  if (!stored) return null;
  return (
    <div className={open ? 'sourced open' : 'sourced'}>
      <SourcedNumber path={[...path, 'value']} spec={spec} />
      <Button
        className={`source status-${stored.status.replaceAll(' ', '-')}`}
        aria-expanded={open}
        aria-label={`${own.editSource(spec.label)}: ${stored.status}`}
        onPress={() => setOpen(!open)}
      >
        <span aria-hidden="true">{open ? '▾' : '▸'}</span> <b>{own.statuses[stored.status]}</b>
        {rangeText(stored)}
        {!open && ` · ${stored.source}`}
      </Button>
      {open && <Provenance {...{ path, spec, stored }} />}
    </div>
  );
}

/** One sourced value per spec. */
export const SourcedFields = ({ root, specs }: { readonly root: Path; readonly specs: readonly FieldSpec[] }) =>
  specs.map((spec) => <SourcedField key={spec.key} {...{ root, spec }} />);
