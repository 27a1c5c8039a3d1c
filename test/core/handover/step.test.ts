import occtImport, { type ImportedMesh } from 'occt-import-js';
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { barrelMesh } from '../../../core/geometry/barrelMesh.ts';
import { handoverSource, runHandover } from '../../../core/handover/run.ts';
import { buildPart, type PartBody } from '../../../core/handover/step/bodies.ts';
import { flatRegions } from '../../../core/handover/step/junction.ts';
import type { BrepKernel } from '../../../core/handover/step/kernel.ts';
import { circleOutline } from '../../../core/handover/step/outline.ts';
import { measureBody } from '../../../core/handover/step/sewn.ts';
import { cubicAt, cubicFit } from '../../../core/handover/step/splines.ts';
import { readStep, stepText, withHead, writeStep } from '../../../core/handover/step/stepFile.ts';
import { faultOf, stepModule } from '../../../core/handover/step/stepModule.ts';
import { kinks } from '../../../core/handover/step/zones.ts';
import type { HandoverTools } from '../../../core/handover/types.ts';
import { brepKernel } from '../../../electron/services/brepKernel.ts';
import { plainGlue } from '../../../renderer/kernelGlue.ts';
import { meshVolume as solidVolume } from '../../helpers/meshFacts.ts';
import { expectOk, loadDesign, loadExample } from '../../helpers/projects.ts';
import { designOf, flighted, plain, tip } from '../geometry/designs.ts';

const mm = 1e-3;
const kernel = async () => (await brepKernel()) as BrepKernel;
const none = () => Promise.reject(new Error('not wanted in this test'));
const tools: HandoverTools = { solids: none, brep: brepKernel, pdf: none };

async function handedOver(values: Record<string, unknown>, using = tools) {
  const project = loadExample('demo');
  const source = expectOk(await handoverSource(stepModule, project, [project.activeRevision], '2026-05-04', none));
  return runHandover(stepModule, source, values, using);
}

/** Volume by the divergence theorem of indexed triangles. */
function meshVolume({ attributes, index }: ImportedMesh): number {
  const p = attributes.position.array;
  let sum = 0;
  for (let t = 0; t < index.array.length; t += 3) {
    const [a = 0, b = 0, c = 0] = [0, 1, 2].map((k) => 3 * (index.array[t + k] as number));
    const at = (i: number) => p[i] as number;
    sum += at(a) * (at(b + 1) * at(c + 2) - at(b + 2) * at(c + 1));
    sum += at(a + 1) * (at(b + 2) * at(c) - at(b) * at(c + 2));
    sum += at(a + 2) * (at(b) * at(c + 1) - at(b + 1) * at(c));
  }
  return sum / 6;
}

test('all parts are three valid solids of the volumes of geometry, also for another reader', async () => {
  const [file] = expectOk(await handedOver({ part: 'all', schema: 'AP214' }));
  const bytes = file?.bytes ?? new Uint8Array();
  const text = new TextDecoder().decode(bytes);
  expect(text).toContain('AUTOMOTIVE_DESIGN');
  expect(text).toMatch(/FILE_NAME\('[^']+\.step','2026-05-04T00:00:00'/);
  expect([...text.matchAll(/PRODUCT\('[^']*, (\w+)'/g)].map(([, part]) => part)).toEqual(['screw', 'barrel', 'nozzle']);
  const off = file?.facts.filter(({ label }) => label.endsWith('relative difference')).map((fact) => Number(fact.text));
  expect(off).toHaveLength(3);
  for (const each of off ?? []) expect(Math.abs(each)).toBeLessThan(2e-5);

  const other = await occtImport();
  const read = other.ReadStepFile(bytes, {
    linearUnit: 'millimeter',
    linearDeflectionType: 'absolute_value',
    linearDeflection: 0.05,
    angularDeflection: 0.3,
  });
  expect(read.success).toBe(true);
  const geometry = file?.facts.filter(({ label }) => label.endsWith('volume by geometry')) ?? [];
  const volumes = geometry.map((fact) => Number.parseFloat(fact.text.replace(/[^\d.]/g, '')));
  expect(read.meshes).toHaveLength(3);
  // chords cut round surfaces short by less than a hundredth
  for (const [i, mesh] of read.meshes.entries()) {
    const share = meshVolume(mesh) / (volumes[i] ?? Number.NaN);
    expect(share).toBeGreaterThan(0.99);
    expect(share).toBeLessThan(1.01);
  }
});

test('the barrel has its neck: pi L (R² - r²) less than a plain tube, in the kernel, the mesh and the formula', async () => {
  const design = loadDesign('demo', 'C');
  const { boreDiameter, outerDiameter, heatBreak } = design.barrel;
  const [R, r] = [outerDiameter / 2, boreDiameter / 2 + (heatBreak?.wall ?? 0)];
  const off = Math.PI * (heatBreak?.length ?? 0) * (R ** 2 - r ** 2);
  expect(1e9 * off).toBeCloseTo(5443, 0);
  const plainBarrel = { ...design, barrel: { ...design.barrel, heatBreak: null } };
  const kit = await kernel();
  const volumes = [plainBarrel, design].map((each) => {
    const { shape, analyticVolume } = buildPart(kit, each, 'barrel') as PartBody;
    const { volumes: solids, valid } = measureBody(kit, shape);
    expect([solids.length, valid]).toEqual([1, true]);
    const mesh = barrelMesh(each, { aroundCount: 64, ringsPerTurn: 48 }, 0);
    return [solids[0] as number, analyticVolume, solidVolume(mesh)] as const;
  });
  const [before = [0, 0, 0], after = [0, 0, 0]] = volumes;
  for (const k of [0, 1, 2] as const) expect((before[k] - after[k]) / off).toBeCloseTo(1, 4);
});

test.each([
  ['at the feed end', 0, 4],
  ['over the end of the feed opening', 14, 20],
  ['round the feed opening', 2, 30],
  ['up to the far end', 80, 16],
])('a neck %s is one valid solid of its volume', async (_, start, length) => {
  const heatBreak = { start: start * mm, length: length * mm, wall: 1.5 * mm, conductivity: 16 };
  const kit = await kernel();
  const { shape, analyticVolume } = buildPart(kit, designOf({ heatBreak }), 'barrel') as PartBody;
  const { volumes, valid } = measureBody(kit, shape);
  expect([volumes.length, valid]).toEqual([1, true]);
  expect((volumes[0] as number) / analyticVolume).toBeCloseTo(1, 6);
});

/** What the trade makes: each by name. */
const made: readonly (readonly [name: string, design: Design])[] = [
  [
    'two starts, left hand, slanted flanks with fillets, a plain stretch, a ball with a pin',
    designOf({
      hand: 'left',
      sections: [
        flighted({
          length: 20 * mm,
          leadStart: 20 * mm,
          leadEnd: 20 * mm,
          starts: 2,
          flankAngle: 0.15,
          rootFillet: 0.6 * mm,
        }),
        plain({ length: 5 * mm, rootDiameterStart: 9 * mm, rootDiameterEnd: 11 * mm }),
        flighted({ length: 15 * mm, rootDiameterStart: 10 * mm, rootDiameterEnd: 10 * mm }),
      ],
      tip: tip('hemisphere', 0, 3 * mm, 2 * mm),
      shankDiameter: 10 * mm,
      shankLength: 12 * mm,
    }),
  ],
  [
    'a lead that halves while the root grows, flanks that meet, a step, a cone',
    designOf({
      sections: [
        flighted({ length: 40 * mm, leadStart: 20 * mm, leadEnd: 10 * mm, rootDiameterEnd: 12 * mm, flankAngle: 0.9 }),
        flighted({ length: 10 * mm, rootDiameterStart: 8 * mm, rootDiameterEnd: 8 * mm, flightWidth: 2.2 * mm }),
      ],
      tip: tip('cone', 1),
      shankLength: 0,
    }),
  ],
];

describe.each(made)('%s', (_, design) => {
  test('is one valid solid of its volume after reading back', async () => {
    const oc = await kernel();
    const body = buildPart(oc, design, 'screw') as PartBody;
    const read = readStep(oc, writeStep(oc, [{ name: 'screw', shape: body.shape }], 'AP242') as Uint8Array);
    expect(faultOf([body], read)).toBeNull();
    expect(Math.abs((read?.volumes[0] ?? 0) / body.analyticVolume - 1)).toBeLessThan(2e-5);
  });
});

test('a barrel whose feed opening runs out at its end keeps its volume', async () => {
  const oc = await kernel();
  const design = designOf({ feedOpening: { start: 0, length: 12 * mm, width: 9 * mm } });
  const body = buildPart(oc, design, 'barrel') as PartBody;
  expect((measureBody(oc, body.shape).volumes[0] ?? 0) / body.analyticVolume).toBeCloseTo(1, 9);
});

test('a flight is parted where its floor lifts off the root and where its fillet is cut short', () => {
  const smooth = flighted({ rootDiameterEnd: 12 * mm, rootFillet: 0.5 * mm });
  expect(kinks(smooth, 7 * mm)).toEqual([0, smooth.length]);
  const meeting = flighted({ rootDiameterEnd: 12 * mm, flankAngle: 1.2 });
  expect(kinks(meeting, 7 * mm).length).toBeGreaterThan(2);
});

describe('the check', () => {
  const body = { part: 'screw' as const, analyticVolume: 1e-5 };
  const read = { volumes: [1e-5], valid: true, faces: 9 };

  test('passes what is right and refuses by reason', () => {
    expect(faultOf([body], read)).toBeNull();
    expect(faultOf([body], { ...read, volumes: [1.00009e-5] })).toBeNull();
    expect(faultOf([body], { ...read, volumes: [1.00011e-5] })?.message).toContain('off by 0.011 %');
    expect(faultOf([body], { ...read, valid: false })?.message).toContain('not valid');
    expect(faultOf([body], { ...read, volumes: [5e-6, 5e-6] })?.message).toContain('2 solids in place of 1');
    expect(faultOf([body], null)?.message).toContain('read back');
  });

  test('stands between a kernel that throws and the file', async () => {
    const oc = await kernel();
    const broken = new Proxy(oc, {
      get: (target, key) =>
        key === 'BRepBuilderAPI_MakeSolid'
          ? class {
              constructor() {
                throw 4711;
              }
            }
          : Reflect.get(target, key),
    });
    const result = await handedOver({}, { ...tools, brep: () => Promise.resolve(broken) });
    expect(result.ok).toBe(false);
    expect(result.ok ? '' : result.issues[0]?.message).toContain('No STEP file of the screw');
  });
});

test('the area between two circles is one ring, and nothing outside the larger', () => {
  const [ring] = flatRegions(circleOutline(5), circleOutline(4));
  expect(ring?.inner).not.toBeNull();
  expect(flatRegions(circleOutline(4), circleOutline(5))).toEqual([]);
  expect(flatRegions(circleOutline(4), circleOutline(4))).toEqual([]);
});

test('a cubic through points meets them, and a cubic exactly', () => {
  const { poles } = cubicFit(7);
  const cube = (t: number) => 2 - t + 0.3 * t * t - 0.05 * t ** 3;
  const fitted = poles(Float64Array.from({ length: 8 }, (_, i) => cube(i)));
  for (const t of [0, 0.4, 1, 3.7, 6.9, 7]) expect(cubicAt(fitted, t)).toBeCloseTo(cube(t), 12);
});

test('texts in a file are plain and quoted, and the head is ours', () => {
  expect(stepText("Bär's screw \\ 2")).toBe("Bar''s screw / 2");
  expect(stepText('“Größe”')).toBe('"Grosse"');
  const text =
    "FILE_DESCRIPTION(('x'),'2;1');\nFILE_NAME('a',\n'now',(''),(''),'','','');\nPRODUCT('screw 3','screw 3',''";
  const headed = withHead(text, { fileName: 'b.step', description: '$&', date: '2026-05-04' });
  expect(headed).toContain("FILE_DESCRIPTION(('$&'),'2;1');");
  expect(headed).toContain("PRODUCT('screw','screw',''");
  expect(headed).not.toContain('now');
});

test('another version of the kernel’s glue stops the build instead of running against the policy', () => {
  expect(() => plainGlue('b=(new Function(q,n+"}"))')).toThrow('0 places');
});
