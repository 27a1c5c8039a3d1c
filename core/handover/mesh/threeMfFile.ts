/** 3MF: a zip of the model as XML, unit millimetre, after the 3MF core specification 1.3. */

import { utf8, zipped } from '../bytes.ts';
import type { Body } from './bodies.ts';

const coreSpace = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const packageSpace = 'http://schemas.openxmlformats.org/package/2006';

/** Text between tags or in quotes. */
const escaped = (text: string): string =>
  text
    .replace(/\p{Cc}/gu, ' ')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');

/** A tenth of a micron is finer than any maker holds; more digits are single-precision noise. */
const number = (value: number): string => String(Math.round(1e5 * value) / 1e5);

const typesXml = `<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="${packageSpace}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`;

const relationsXml = `<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="${packageSpace}/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`;

function objectXml({ name, positions, indices }: Body, id: number): string {
  const parts = [`<object id="${id}" type="model" name="${escaped(name)}"><mesh><vertices>`];
  for (let i = 0; i < positions.length; i += 3) {
    parts.push(`<vertex x="${number(positions[i])}" y="${number(positions[i + 1])}" z="${number(positions[i + 2])}"/>`);
  }
  parts.push('</vertices><triangles>');
  for (let t = 0; t < indices.length; t += 3) {
    parts.push(`<triangle v1="${indices[t]}" v2="${indices[t + 1]}" v3="${indices[t + 2]}"/>`);
  }
  parts.push('</triangles></mesh></object>');
  return parts.join('');
}

/** Names of metadata that the core specification knows. */
export type Metadata = Readonly<
  Partial<Record<'Title' | 'Designer' | 'Description' | 'Application' | 'CreationDate', string>>
>;

/** All bodies as the objects of one 3MF file, each placed where it is. */
export function threeMfBytes(bodies: readonly Body[], metadata: Metadata, date: string): Uint8Array {
  const told = Object.entries(metadata).map(([name, text]) => `<metadata name="${name}">${escaped(text)}</metadata>`);
  const items = bodies.map((_, i) => `<item objectid="${i + 1}"/>`);
  const model = [
    `<?xml version="1.0" encoding="UTF-8"?>\n<model unit="millimeter" xml:lang="en" xmlns="${coreSpace}">`,
    ...told,
    '<resources>',
    ...bodies.map((body, i) => objectXml(body, i + 1)),
    '</resources><build>',
    ...items,
    '</build></model>',
  ].join('');
  return zipped(
    [
      ['[Content_Types].xml', utf8(typesXml)],
      ['_rels/.rels', utf8(relationsXml)],
      ['3D/3dmodel.model', utf8(model)],
    ],
    date,
  );
}
