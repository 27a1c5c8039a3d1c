import { strFromU8, unzipSync } from 'fflate';
import { JSDOM } from 'jsdom';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { describe, expect, test } from 'vitest';
import { meshDeviation } from '../../../core/handover/mesh/deviation.ts';
import { stlModule, threeMfModule } from '../../../core/handover/mesh/meshModules.ts';
import { exactVolume, meshWithin, partIds } from '../../../core/handover/mesh/part.ts';
import { thinPlaces } from '../../../core/handover/mesh/thinPlaces.ts';
import { handoverSource, runHandover } from '../../../core/handover/run.ts';
import type { HandoverModule } from '../../../core/handover/types.ts';
import { exampleNames, expectOk, loadDesign, loadExample } from '../../helpers/projects.ts';
import { solidTools } from './tools.ts';

async function handedOver(module: HandoverModule, values: Record<string, unknown>, name = 'demo') {
  const project = loadExample(name);
  const none = () => Promise.reject(new Error('meshes need no prediction'));
  const source = expectOk(await handoverSource(module, project, [project.activeRevision], '2026-05-04', none));
  return runHandover(module, source, { tolerance: 0.2, ...values }, solidTools);
}

/** Volume enclosed by loose triangles, by the divergence theorem. */
function volumeOf(p: ArrayLike<number>): number {
  let sum = 0;
  for (let t = 0; t < p.length; t += 9) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = Array.from({ length: 9 }, (_, i) => p[t + i] ?? Number.NaN) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    sum += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return sum / 6;
}

test.each(exampleNames)('parts of %s lie within the allowed deviation', (name) => {
  const design = loadDesign(name);
  for (const part of partIds) expect(meshWithin(design, part, 2e-4).deviation).toBeLessThanOrEqual(2e-4);
});

test('a smaller deviation takes more triangles, which lie nearer', () => {
  const design = loadDesign('demo');
  const [fine, coarse] = [meshWithin(design, 'screw', 6e-5), meshWithin(design, 'screw', 2e-4)];
  expect(fine.mesh.indices.length).toBeGreaterThan(coarse.mesh.indices.length);
  expect(meshDeviation(design, 'screw', fine.mesh)).toBeLessThan(meshDeviation(design, 'screw', coarse.mesh));
});

test('a mesh that is moved off the true surface is found out', () => {
  const design = loadDesign('demo');
  const { mesh } = meshWithin(design, 'screw', 1e-4);
  const swollen = { ...mesh, positions: mesh.positions.map((value, i) => (i % 3 < 2 ? value * 1.05 : value)) };
  expect(meshDeviation(design, 'screw', swollen)).toBeGreaterThan(2e-4);
});

describe('STL', () => {
  test('is read back by another reader with the volume of the formulas, millimetres in the heading', async () => {
    const files = expectOk(await handedOver(stlModule, { part: 'all' }));
    expect(files.map(({ name }) => name.replace(/^.*-/, ''))).toEqual(['screw.stl', 'barrel.stl', 'nozzle.stl']);
    for (const [i, { bytes }] of files.entries()) {
      const heading = strFromU8(bytes.slice(0, 80), true);
      // a long name of the project is cut off, what tells the design apart is not
      expect(heading).toMatch(/^unit mm, design [0-9a-f]{12}, invented, revision \w+, /);
      const geometry = new STLLoader().parse(
        bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer,
      );
      const exact = 1e9 * exactVolume(loadDesign('demo'), partIds[i] ?? 'screw');
      expect(volumeOf(geometry.attributes.position?.array ?? []) / exact).toBeCloseTo(1, 5);
    }
  });
});

/** Objects of a 3MF file, read with an XML parser that did not write it. */
function read3mf(bytes: Uint8Array) {
  const entries = unzipSync(bytes);
  expect(Object.keys(entries)).toContain('[Content_Types].xml');
  const relations = strFromU8(entries['_rels/.rels'] ?? new Uint8Array());
  const target = /Target="\/([^"]+)"/.exec(relations)?.[1] ?? '';
  const { window } = new JSDOM('');
  const xml = new window.DOMParser().parseFromString(strFromU8(entries[target] ?? new Uint8Array()), 'application/xml');
  const model = xml.documentElement;
  const objects = [...model.getElementsByTagName('object')].map((object) => {
    const points = [...object.getElementsByTagName('vertex')].map((v) =>
      ['x', 'y', 'z'].map((a) => Number(v.getAttribute(a))),
    );
    const corners = [...object.getElementsByTagName('triangle')].flatMap((t) =>
      ['v1', 'v2', 'v3'].map((a) => Number(t.getAttribute(a))),
    );
    return { name: object.getAttribute('name'), points, corners };
  });
  const metadata = [...model.getElementsByTagName('metadata')].map((m) => [m.getAttribute('name'), m.textContent]);
  return {
    unit: model.getAttribute('unit'),
    objects,
    metadata: Object.fromEntries(metadata) as Record<string, string>,
  };
}

test('3MF holds all bodies in millimetres with names, origin and closed shells', async () => {
  const [file] = expectOk(await handedOver(threeMfModule, { part: 'nozzle', tolerance: 0.5 }));
  const { unit, objects, metadata } = read3mf(file?.bytes ?? new Uint8Array());
  expect(unit).toBe('millimeter');
  expect(metadata.Title).toContain(loadExample('demo').name);
  expect(metadata.Description).toContain('invented');
  expect(objects.map(({ name }) => name)).toEqual(['nozzle']);
  for (const { points, corners } of objects) {
    const exact = 1e9 * exactVolume(loadDesign('demo'), 'nozzle');
    expect(volumeOf(corners.flatMap((corner) => points[corner] ?? [])) / exact).toBeCloseTo(1, 4);
    const edges = new Set(corners.map((corner, c) => `${corner}>${corners[c % 3 === 2 ? c - 2 : c + 1]}`));
    expect(edges.size).toBe(corners.length);
    expect([...edges].every((edge) => edges.has(edge.split('>').reverse().join('>')))).toBe(true);
  }
});

describe('shapes for making', () => {
  const factOf = (facts: readonly { label: string; text: string }[], label: string) =>
    facts.find((fact) => fact.label === label)?.text ?? '';

  test('run-outs and grooves take metal off and stay closed', async () => {
    const [file] = expectOk(await handedOver(stlModule, { runout: 3, reliefWidth: 2, reliefDepth: 0.4 }));
    const taken = Number(factOf(file?.facts ?? [], 'screw: taken off').split(' ')[0]);
    expect(taken).toBeGreaterThan(5);
    expect(file?.cautions?.join(' ')).toContain('prediction');
  });

  test('a split body is two halves of the whole, standing on the bed, with pin holes', async () => {
    const split = { part: 'nozzle', split: 'lengthwise', onBed: true, pinDiameter: 1.5, pinDepth: 2 };
    const [file] = expectOk(await handedOver(threeMfModule, split));
    const { objects } = read3mf(file?.bytes ?? new Uint8Array());
    expect(objects.map(({ name }) => name)).toEqual(['nozzle-half-1', 'nozzle-half-2']);
    const volumes = objects.map(({ points, corners }) => volumeOf(corners.flatMap((corner) => points[corner] ?? [])));
    const hole = Math.PI * 0.75 ** 2 * (2 * 2);
    const missing = 1e9 * exactVolume(loadDesign('demo'), 'nozzle') - volumes.reduce((sum, volume) => sum + volume, 0);
    expect([2, 4]).toContain(Math.round(missing / hole));
    expect(missing / hole).toBeCloseTo(Math.round(missing / hole), 1);
    for (const { points } of objects) expect(Math.min(...points.map((point) => point[2] ?? -1))).toBeCloseTo(0, 4);
    expect(file?.cautions?.join(' ')).toContain('food');
  });

  // demo's barrel, wall 7 mm, has a neck of 1.5 mm from 44 to 58 mm; 0.8 mm stay round a pin
  test.each([
    [51, 'options.pinDiameter'],
    [60, 'options.pinDepth'],
    [90, null],
  ])('pins of a barrel cut across at %d mm keep clear of its neck', async (splitAt, place) => {
    const values = { part: 'barrel', split: 'across', splitAt, pinDiameter: 1.5, pinDepth: 2 };
    const made = await handedOver(stlModule, values);
    expect(made.ok ? null : made.issues[0]?.path.slice(-2).join('.')).toBe(place);
  });

  test('a screw cut across has both pieces and the holes of the pins', async () => {
    const files = expectOk(await handedOver(stlModule, { split: 'across', splitAt: 60, onBed: true }));
    expect(files.map(({ name }) => name.slice(name.indexOf('screw')))).toEqual(['screw-front.stl', 'screw-rear.stl']);
    const volumes = files.map(({ bytes }) =>
      volumeOf(new STLLoader().parse(bytes.slice().buffer).attributes.position?.array ?? []),
    );
    const whole = 1e9 * exactVolume(loadDesign('demo'), 'screw');
    const holes = whole - volumes.reduce((sum, volume) => sum + volume, 0);
    expect(holes / (Math.PI * 1 ** 2 * 8)).toBeCloseTo(Math.round(holes / (Math.PI * 8)), 1);
    expect(holes).toBeGreaterThan(20);
  });

  test.each([
    [{ pinDiameter: 19, split: 'lengthwise' }, 'options.pinDiameter'],
    [{ pinDepth: 40, split: 'lengthwise' }, 'options.pinDepth'],
    [{ split: 'across', splitAt: 2500 }, 'options.splitAt'],
    [{ flat: 10 }, 'options.flat'],
    [{ reliefWidth: 2, reliefDepth: 5 }, 'options.reliefDepth'],
    [{ tolerance: -1 }, 'stl.tolerance'],
    [{ part: 'wing' }, 'stl.part'],
  ])('%j is refused by name, value and range', async (values, place) => {
    const refused = await handedOver(stlModule, values);
    const issue = refused.ok ? null : refused.issues[0];
    expect(issue?.path.join('.')).toContain(place);
    expect(issue?.allowed).toMatch(/\d|screw/);
    expect(issue?.value).toBeDefined();
  });

  test('thin places are told by name, and only those', () => {
    const design = loadDesign('demo');
    expect(thinPlaces(design, 'screw', 1e-6)).toEqual([]);
    expect(thinPlaces(design, 'barrel', 1).join()).toContain('wall of the barrel: 7 mm');
    expect(thinPlaces(design, 'screw', 1).length).toBeGreaterThan(thinPlaces(design, 'screw', 3e-3).length);
  });

  test('a thin neck and thin webs beside the feed opening are told', async () => {
    const [file] = expectOk(await handedOver(stlModule, { part: 'barrel', minWall: 1.6 }));
    expect(file?.cautions?.join()).toContain(
      'Thinner than 1.6 mm: wall of the heat break’s neck from 44 mm to 58 mm: 1.5 mm',
    );
    const { barrel } = loadDesign('demo');
    const opening = (start: number, length: number) => ({
      ...loadDesign('demo'),
      barrel: { ...barrel, heatBreak: null, feedOpening: { start, length, width: 8e-3 } },
    });
    expect(thinPlaces(opening(1e-3, 10e-3), 'barrel', 2e-3)).toEqual([
      'web from the barrel’s start to the feed opening: 1 mm',
    ]);
    expect(thinPlaces(opening(20e-3, barrel.length - 21e-3), 'barrel', 2e-3)).toEqual([
      'web from the feed opening to the barrel’s end: 1 mm',
    ]);
    expect(thinPlaces(opening(0, 10e-3), 'barrel', 2e-3)).toEqual([]);
  });
});
