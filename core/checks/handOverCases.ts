/** Files written for the checks of hand-over, and read back by their published layouts. */

import { frameOf, sheetFormats } from '../handover/drawing/formats.ts';
import { sheetDxf } from '../handover/drawing/writeDxf.ts';
import type { Body } from '../handover/mesh/bodies.ts';
import { stlBytes } from '../handover/mesh/stlFile.ts';
import { changeGears } from '../make/changeGears.ts';
import { flightMesh } from './geometryCases.ts';

/** A corner of a cube of 10 mm: four triangles. */
const corner: Body = {
  name: 'corner',
  part: 'screw',
  positions: Float32Array.of(0, 0, 0, 10, 0, 0, 0, 10, 0, 0, 0, 10),
  indices: Uint32Array.of(0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3),
};

/** Bytes of that body's file. */
export const cornerBytes = (): number => stlBytes(corner, 'a corner').length;

/** Volume of a screw's file, mm³: corners of its triangles read from the bytes, each a pyramid to the origin. */
export function volumeOfFile(): number {
  const { positions, indices } = flightMesh();
  const body: Body = { name: 'screw', part: 'screw', positions: positions.map((x) => 1e3 * x), indices };
  const bytes = stlBytes(body, 'a screw');
  const view = new DataView(bytes.buffer);
  let sum = 0;
  for (let at = 84; at < bytes.length; at += 50) {
    const [ax = 0, ay = 0, az = 0, bx = 0, by = 0, bz = 0, cx = 0, cy = 0, cz = 0] = Array.from({ length: 9 }, (_, i) =>
      view.getFloat32(at + 12 + 4 * i, true),
    );
    sum += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return sum / 6;
}

/** Value after a header variable's name and group code in the text of an empty sheet. */
export function headerVariable(name: string): string {
  const format = sheetFormats[0];
  if (!format) throw new Error('no sheet');
  const { width, height } = format;
  const bare = { name: 'sheet', title: 'sheet', width, height, scaleText: '1:1', views: [], entities: [] };
  const lines = sheetDxf({ ...bare, frame: frameOf(format) }).split(/\r?\n/);
  return lines[lines.indexOf(name) + 2] ?? '';
}

/** Wheels from 20 to 120 by fives, with 127. */
const wheels = [...Array.from({ length: 21 }, (_, i) => 20 + 5 * i), 127];

/** A wheel of the train for a lead on a leadscrew, both m. */
export function wheelOf(lead: number, leadscrew: number, which: 'driver' | 'driven'): number {
  const train = changeGears(lead, leadscrew, wheels);
  if (train?.pairs.length !== 1 || train.error !== 0) throw new Error('no exact simple train');
  return train.pairs[0]?.[which === 'driver' ? 0 : 1] ?? Number.NaN;
}

/** A size of a sheet, mm. */
export const sheetWidth = (id: string): number => sheetFormats.find((one) => one.id === id)?.width ?? Number.NaN;
