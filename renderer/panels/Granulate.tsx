/** The material: which one this revision runs, its values with source and status. */

import type { Material, Sourced } from '../../core/index.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { writeNumber } from '../fields/quantity.ts';
import type { FieldSpec } from '../fields/spec.ts';
import { setValue } from '../store/edits.ts';
import { type Path, valueAt } from '../store/path.ts';
import { applyEdit } from '../store/project.ts';
import {
  degradationFields,
  grainFields,
  mechanicalFields,
  rheologyFields,
  shiftFields,
  text,
  thermalFields,
} from '../strings.ts';
import { pathBelow, useDesk } from './desk.ts';
import { Group } from './Group.tsx';
import { InventedBadge } from './InventedBadge.tsx';

const words = text.describe;

const shown = (bound: number | undefined): string => (bound === undefined ? '…' : writeNumber(bound));

/** One value: number, doubt range, status and source. */
function SourcedField({ root, spec }: { readonly root: Path; readonly spec: FieldSpec }) {
  const { project } = useDesk();
  const path = pathBelow(root, spec.key);
  const stored = valueAt(project, path) as Sourced | undefined;
  if (!stored) return null;
  const range =
    stored.low === undefined && stored.high === undefined
      ? ''
      : ` · ${words.range} ${shown(stored.low)}–${shown(stored.high)}`;
  return (
    <div className="sourced">
      <NumberField path={[...path, 'value']} spec={spec} disabled={false} />
      <p className={`source status-${stored.status.replaceAll(' ', '-')}`}>
        <b>{stored.status}</b>
        {range} · {stored.source}
      </p>
    </div>
  );
}

const SourcedFields = ({ root, specs }: { readonly root: Path; readonly specs: readonly FieldSpec[] }) =>
  specs.map((spec) => <SourcedField key={spec.key} {...{ root, spec }} />);

function Values({ material, root }: { readonly material: Material; readonly root: Path }) {
  const { rheology } = material;
  const shift = rheology.model === 'crossWlf' ? 'none' : rheology.shift.kind;
  return (
    <>
      <Group title={words.rheology}>
        <SourcedFields root={root} specs={rheologyFields[rheology.model] ?? []} />
        <SourcedFields root={root} specs={shiftFields[shift] ?? []} />
      </Group>
      <Group title={words.grains}>
        <SourcedFields root={root} specs={grainFields} />
      </Group>
      <Group title={words.thermal}>
        <SourcedFields root={root} specs={thermalFields} />
      </Group>
      {material.mechanical && (
        <Group title={words.mechanical}>
          <SourcedFields root={root} specs={mechanicalFields} />
        </Group>
      )}
      {material.degradation.map((law, index) => (
        <Group key={law.id} title={`${words.degradation}: ${law.observed}`}>
          <SourcedFields root={[...root, 'degradation', index]} specs={degradationFields} />
        </Group>
      ))}
    </>
  );
}

/** The material's panel. */
export function Granulate() {
  const { project, revision, root, locked } = useDesk();
  const index = project.materials.findIndex((candidate) => candidate.id === revision.materialId);
  const material = project.materials[index];
  const path = pathBelow(root, 'materialId');
  const names = Object.fromEntries(project.materials.map(({ id, name }) => [id, name]));
  return (
    <>
      <Group title={words.material} aside={material?.invented && <InventedBadge />}>
        <ChoiceField
          path={path}
          label={text.parts.granulate}
          help={words.materialHelp}
          value={revision.materialId}
          options={names}
          disabled={locked}
          onChoose={(id) => applyEdit(setValue(path, id), { label: words.material })}
        />
        {material?.note && <p className="quiet">{material.note}</p>}
        <p className="quiet">{words.sharedMaterial}</p>
      </Group>
      {material && <Values material={material} root={['materials', index]} />}
      {material && material.cautions.length > 0 && (
        <Group title={words.cautions}>
          <ul className="cautions">
            {material.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </Group>
      )}
    </>
  );
}
