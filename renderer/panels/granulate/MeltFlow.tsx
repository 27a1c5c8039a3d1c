/** How the melt flows: viscosity law, its move with temperature, where it holds, filler. */

import { Button } from 'react-aria-components';
import {
  type RheologyModel,
  type ShiftKind,
  type Sourced,
  withRheologyModel,
  withShiftKind,
} from '../../../core/index.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { IssueText } from '../../fields/IssueText.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { openFit } from '../../fit/store.ts';
import { removeValue, setValue } from '../../store/edits.ts';
import { useEvaluation } from '../../store/evaluation.ts';
import { changeMaterial } from '../../store/materials.ts';
import { type Path, pathKey } from '../../store/path.ts';
import { applyEdit } from '../../store/project.ts';
import {
  fillerFields,
  rheologyFields,
  rheologyRangeFields,
  shiftFields,
  shiftReferenceField,
  text,
} from '../../strings.ts';
import { applyListEdit } from '../desk.ts';
import { Group } from '../Group.tsx';
import { PartSwitch } from './PartSwitch.tsx';
import { Place } from './places.tsx';
import { SourcedFields } from './SourcedField.tsx';
import { SourcedNumbers } from './SourcedNumber.tsx';
import type { PlacedMaterial } from './useMaterial.ts';
import { ViscosityPlot } from './ViscosityPlot.tsx';

const words = text.describe;
const own = words.granulate;

/** What is wrong with the law as a whole, if anything. */
function LawIssue({ path }: { readonly path: Path }) {
  const key = pathKey(path);
  const issue = useEvaluation((state) => state.issues.find((one) => pathKey(one.path) === key) ?? null);
  return issue && <IssueText issue={issue} />;
}

function Law({ material, root }: PlacedMaterial) {
  const { rheology, id } = material;
  const path = [...root, 'rheology'];
  return (
    <>
      <Place path={path}>
        <ChoiceField
          path={[...path, 'model']}
          label={own.model}
          help={own.modelHelp}
          value={rheology.model}
          options={own.models}
          disabled={false}
          onChoose={(model: RheologyModel) =>
            applyListEdit(
              path,
              `${own.model}: ${own.models[model]}`,
              changeMaterial(id, (one) => withRheologyModel(one, model)),
            )
          }
        />
      </Place>
      <Button className="link" onPress={() => openFit(id)}>
        {own.fitIt}
      </Button>
      <LawIssue path={path} />
      <ViscosityPlot material={material} />
      <SourcedFields root={root} specs={rheologyFields[rheology.model] ?? []} />
    </>
  );
}

function Shift({ material, root }: PlacedMaterial) {
  const { rheology, id } = material;
  if (rheology.model === 'crossWlf') return null;
  const path = [...root, 'rheology', 'shift'];
  const { kind } = rheology.shift;
  return (
    <>
      <ChoiceField
        path={[...path, 'kind']}
        label={own.shift}
        help={own.shiftHelp}
        value={kind}
        options={own.shifts}
        disabled={false}
        onChoose={(next: ShiftKind) =>
          applyListEdit(
            [...root, 'rheology'],
            `${own.shift}: ${own.shifts[next]}`,
            changeMaterial(id, (one) => withShiftKind(one, next)),
          )
        }
      />
      {kind !== 'none' && <SourcedNumbers root={root} specs={[shiftReferenceField]} />}
      <SourcedFields root={root} specs={shiftFields[kind] ?? []} />
    </>
  );
}

function Range({ material, root }: PlacedMaterial) {
  const { rheologyRange } = material;
  if (!rheologyRange) return null;
  const path = [...root, 'rheologyRange', 'source'];
  const statusPath = [...root, 'rheologyRange', 'status'];
  return (
    <>
      <SourcedNumbers root={root} specs={rheologyRangeFields} />
      <TextField
        label={own.rangeSource}
        value={rheologyRange.source}
        required
        maxLength={600}
        onCommit={(source) => applyEdit(setValue(path, source), { label: own.rangeSource })}
      />
      <ChoiceField<Sourced['status'] | ''>
        path={statusPath}
        label={own.rangeStatus}
        help={own.statusHelp}
        value={rheologyRange.status ?? ''}
        options={{ '': own.mixed, ...own.statuses }}
        disabled={false}
        onChoose={(next) =>
          applyEdit(next === '' ? removeValue(statusPath) : setValue(statusPath, next), { label: own.rangeStatus })
        }
      />
    </>
  );
}

/** The group. */
export function MeltFlow(placed: PlacedMaterial) {
  return (
    <Group title={words.rheology}>
      <Law {...placed} />
      <Shift {...placed} />
      <PartSwitch {...placed} part="rheologyRange" />
      <Range {...placed} />
      <PartSwitch {...placed} part="filler" />
      <SourcedFields root={placed.root} specs={fillerFields} />
    </Group>
  );
}
