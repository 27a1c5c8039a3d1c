/** Screws to start from, sized for the open revision and drawn from their sections. */

import { Button } from 'react-aria-components';
import {
  type Material,
  type Revision,
  screwRoom,
  type TemplateId,
  type TemplateScrew,
  templateIds,
  templateScrew,
} from '../../../core/index.ts';
import { showNumber } from '../../fields/quantity.ts';
import { unitText } from '../../fields/spec.ts';
import { useLook } from '../../look.ts';
import { useView } from '../../store/view.ts';
import { templateText as words } from '../../strings/templates.ts';
import { DialogFrame } from '../DialogFrame.tsx';
import { useDesk } from '../desk.ts';
import { ScrewDrawing } from './ScrewDrawing.tsx';
import { branchWith, openFits, putIn } from './takeOver.ts';
import { useLength } from './useLength.ts';

/** Roots, lead and length in one line. */
function Facts({ screw }: { readonly screw: TemplateScrew }) {
  const look = useLook();
  const show = (mm: number) => showNumber(mm, 'mm', look);
  const roots = screw.sections.flatMap((s) => [s.rootDiameterStartMm, s.rootDiameterEndMm]);
  const distinct = roots.filter((root, index) => root !== roots[index - 1]);
  const first = screw.sections.find((section) => section.kind === 'flighted');
  const total = screw.sections.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  return (
    <p className="template-facts">
      {words.facts.roots} {distinct.map(show).join(' → ')}; {words.facts.lead} {show(first?.leadStartMm ?? 0)};{' '}
      {words.facts.length} {show(Number(total.toFixed(3)))} {unitText('mm', look)}
    </p>
  );
}

function Card({ id, material }: { readonly id: TemplateId; readonly material: Material }) {
  const { project, revision, locked } = useDesk();
  const length = useLength();
  const { barrel } = revision;
  const screw = templateScrew(id, screwRoom(revision, material, openFits(project)));
  const { title, note } = words.kinds[id];
  return (
    <li className="template-card" aria-label={title}>
      <h3>{title}</h3>
      <p className="quiet">{note}</p>
      <ScrewDrawing
        screw={screw}
        boreMm={barrel.boreDiameterMm}
        barrelLengthMm={barrel.lengthMm}
        clearanceMm={revision.screw.radialClearanceMm}
        label={words.drawing(title)}
      />
      <Facts screw={screw} />
      {screw.tooCoarse && <p className="template-warn">{words.tooCoarse(length(material.grain.d90Mm.value))}</p>}
      <div className="acts">
        <Button className="tool" isDisabled={locked} onPress={() => putIn(screw, title)}>
          <span title={locked ? words.lockedHelp : title}>{words.use(revision.id)}</span>
        </Button>
        <Button className="tool" onPress={() => branchWith(screw, title)}>
          {words.branch}
        </Button>
      </div>
    </li>
  );
}

function Rules() {
  return (
    <details className="template-rules">
      <summary>{words.rules}</summary>
      <ul>
        {words.ruleList.map(([rule, source]) => (
          <li key={rule}>
            {rule}. <span className="quiet">{source}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}

function List({ revision, material }: { readonly revision: Revision; readonly material: Material }) {
  const length = useLength();
  const { boreDiameterMm, lengthMm } = revision.barrel;
  return (
    <>
      <p className="quiet">
        {words.help(length(boreDiameterMm), length(lengthMm), length(material.grain.d90Mm.value))} {words.keeps}
      </p>
      <ul className="template-cards">
        {templateIds.map((id) => (
          <Card key={id} {...{ id, material }} />
        ))}
      </ul>
      <Rules />
    </>
  );
}

function Content() {
  const { project, revision } = useDesk();
  const material = project.materials.find(({ id }) => id === revision.materialId) ?? project.materials[0];
  return material ? <List {...{ revision, material }} /> : null;
}

/** The dialog. */
export function Templates() {
  const open = useView((state) => state.dialog === 'templates');
  return (
    <DialogFrame id="templates" title={words.title} wide>
      {open && <Content />}
    </DialogFrame>
  );
}
