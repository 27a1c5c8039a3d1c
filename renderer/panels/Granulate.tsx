/** The material: which one this revision runs, its values with source and status. */

import '../styles/granulate.css';
import { grainFields, mechanicalFields, text, thermalFields } from '../strings.ts';
import { Group } from './Group.tsx';
import { About } from './granulate/About.tsx';
import { Cautions } from './granulate/Cautions.tsx';
import { Colours } from './granulate/Colours.tsx';
import { Known } from './granulate/Known.tsx';
import { Laws } from './granulate/Laws.tsx';
import { MaterialList } from './granulate/MaterialList.tsx';
import { MeltFlow } from './granulate/MeltFlow.tsx';
import { PartSwitch } from './granulate/PartSwitch.tsx';
import { SourcedFields } from './granulate/SourcedField.tsx';
import { type PlacedMaterial, useMaterial } from './granulate/useMaterial.ts';

const words = text.describe;

function Values(placed: PlacedMaterial) {
  const { root } = placed;
  return (
    <>
      <Known {...placed} />
      <About {...placed} />
      <MeltFlow {...placed} />
      <Group title={words.grains}>
        <SourcedFields root={root} specs={grainFields} />
        <PartSwitch {...placed} part="angleOfReposeDeg" />
        <PartSwitch {...placed} part="internalFrictionDeg" />
        <PartSwitch {...placed} part="unconfinedStrengthPa" />
      </Group>
      <Group title={words.thermal}>
        <SourcedFields root={root} specs={thermalFields} />
        <PartSwitch {...placed} part="surfaceTensionNPerM" />
        <PartSwitch {...placed} part="meltCompressibilityPerGPa" />
      </Group>
      <Group title={words.mechanical} aside={<PartSwitch {...placed} part="mechanical" />}>
        <SourcedFields root={root} specs={mechanicalFields} />
      </Group>
      <Laws {...placed} />
      <Colours {...placed} />
      <Cautions {...placed} />
    </>
  );
}

/** The material's panel. */
export function Granulate() {
  const placed = useMaterial();
  return (
    <>
      <MaterialList invented={placed?.material.invented === true} />
      {/* A material of its own keeps what was opened in another one shut. */}
      {placed && <Values key={placed.material.id} {...placed} />}
    </>
  );
}
