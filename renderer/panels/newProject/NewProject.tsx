/** A new project: a short form, what follows from it, and the first screw drawn. */

import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import {
  issueText,
  newProject,
  type Project,
  parseMaterial,
  screwRoom,
  templateScrew,
  validateDesign,
} from '../../../core/index.ts';
import { getBridge, type MaterialInfo } from '../../bridge.ts';
import type { FieldUnit } from '../../fields/spec.ts';
import { TypedNumber } from '../../fields/TypedNumber.tsx';
import { announce, takeNew } from '../../files.ts';
import { listLibrary } from '../../library.ts';
import { setView, useView } from '../../store/view.ts';
import { newText as words } from '../../strings/templates.ts';
import { text } from '../../strings.ts';
import { today } from '../../today.ts';
import { DialogFrame } from '../DialogFrame.tsx';
import { ScrewDrawing } from '../templates/ScrewDrawing.tsx';
import { useLength } from '../templates/useLength.ts';
import { AssumedTable } from './AssumedTable.tsx';
import { type Answers, type Numbers, refusalOf, useAnswers } from './useAnswers.ts';

/** Granulate to begin with: the commonest of the library. */
const firstMaterial = 'pla';

function Granulate({ answers }: { readonly answers: Answers }) {
  const [listed, setListed] = useState<readonly MaterialInfo[]>([]);
  const { material, setMaterial } = answers;
  const choose = async (id: string) => {
    const read = await getBridge().readMaterial(id);
    const parsed = read.ok ? parseMaterial(read.value.text) : read;
    if (parsed.ok) setMaterial(parsed.value);
    else announce('bad', parsed.issues.map(issueText).join(' '));
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: the library is read once, when the form opens
  useEffect(() => {
    void listLibrary().then((materials) => {
      setListed(materials);
      const first = materials.find(({ id }) => id === firstMaterial) ?? materials[0];
      if (first) void choose(first.id);
    });
  }, []);
  return (
    <>
      <label className="new-row">
        <span>{words.granulate}</span>
        <select value={material?.id ?? ''} onChange={(event) => void choose(event.target.value)}>
          {!material && <option value="">{words.waiting}</option>}
          {listed.map(({ id, title }) => (
            <option key={id} value={id}>
              {title}
            </option>
          ))}
        </select>
      </label>
      {material?.rheology.model === 'unknown' && <p className="template-warn">{words.unknownFlow}</p>}
    </>
  );
}

const asked: readonly (readonly [key: keyof Numbers, label: string, unit: FieldUnit])[] = [
  ['boreMm', words.bore, 'mm'],
  ['heatedMm', words.heated, 'mm'],
  ['orificeMm', words.orifice, 'mm'],
  ['torqueNm', words.torque, 'N·m'],
  ['gearRatio', words.gear, 'ratio'],
];

function Form({ answers }: { readonly answers: Answers }) {
  return (
    <fieldset className="new-form">
      <legend>{words.asked}</legend>
      <label className="new-row">
        <span>{words.name}</span>
        <input
          type="text"
          maxLength={120}
          value={answers.name}
          onChange={(event) => answers.setName(event.target.value)}
        />
      </label>
      {asked.map(([key, label, unit]) => (
        <TypedNumber
          key={key}
          label={label}
          value={answers.numbers[key]}
          unit={unit === 'ratio' ? '' : unit}
          refuse={refusalOf(answers, key, unit)}
          take={(value) => answers.setNumber(key, value)}
          noteProblem={(wrong) => answers.noteMisread(key, wrong)}
        />
      ))}
      <Granulate answers={answers} />
    </fieldset>
  );
}

/** The project of the answers, and what stands against it apart from a viscosity that is not known. */
function made({ name, numbers, material, problems }: Answers): { project: Project | null; faults: readonly string[] } {
  if (!material || problems.length > 0) return { project: null, faults: problems };
  const project = newProject({ ...numbers, name: name.trim(), material, date: today() });
  const checked = validateDesign(project, project.activeRevision);
  const faults = checked.ok ? [] : checked.issues.filter(({ path }) => path.at(-1) !== 'rheology').map(issueText);
  return { project, faults: faults.length > 0 ? [words.refused, ...faults] : [] };
}

/** What a maker should hear before creating: whether the granulate is too coarse for the deepest feed of this bore. */
function Coarse({ project: { materials, revisions } }: { readonly project: Project }) {
  const length = useLength();
  const [material, revision] = [materials[0], revisions[0]];
  if (!material || !revision || !templateScrew('tapered', screwRoom(revision, material, false)).tooCoarse) return null;
  return (
    <p className="template-warn" role="status">
      {words.tooCoarse(length(material.grain.d90Mm.value))}
    </p>
  );
}

function Result({ project }: { readonly project: Project }) {
  const [revision] = project.revisions;
  if (!revision) return null;
  return (
    <section className="new-result">
      <ScrewDrawing
        screw={revision.screw}
        boreMm={revision.barrel.boreDiameterMm}
        barrelLengthMm={revision.barrel.lengthMm}
        clearanceMm={revision.screw.radialClearanceMm}
        label={words.drawing}
      />
      <h3>{words.assumed}</h3>
      <AssumedTable project={project} />
    </section>
  );
}

function Content() {
  const answers = useAnswers();
  const { project, faults } = made(answers);
  const create = () => {
    if (project) takeNew(project, words.created(project.name));
  };
  return (
    <>
      <p className="quiet">{words.help}</p>
      <div className="new-columns">
        <Form answers={answers} />
        {project && <Result project={project} />}
      </div>
      {project && <Coarse project={project} />}
      {faults.map((fault) => (
        <p key={fault} className="issue" role="alert">
          <span aria-hidden="true">✕</span> {fault}
        </p>
      ))}
      <div className="acts">
        <Button className="tool" isDisabled={!project || faults.length > 0 || answers.misread} onPress={create}>
          {words.create}
        </Button>
        <Button className="tool" onPress={() => setView({ dialog: 'none' })}>
          {text.actions.cancel}
        </Button>
      </div>
    </>
  );
}

/** The dialog. */
export function NewProject() {
  const open = useView((state) => state.dialog === 'new');
  return (
    <DialogFrame id="new" title={words.title} wide>
      {open && <Content />}
    </DialogFrame>
  );
}
