import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { materialFileText, parseMaterialText } from '../../../core/project/materialFile.ts';
import { serializeMaterial } from '../../../core/project/serialize.ts';
import { pathText } from '../../../core/result.ts';
import { anyStoredMaterial, pinned } from '../../helpers/arbitraries.ts';
import { codesOf, expectOk, loadMaterial, materialNames } from '../../helpers/projects.ts';

const placesOf = (text: string) => {
  const result = parseMaterialText(text);
  return result.ok ? [] : result.issues.map(({ path, code }) => `${pathText(path)}: ${code}`);
};
const file = (material: unknown, head: object = { format: 'augerwright-material', version: 1 }) =>
  JSON.stringify({ ...head, material });

describe('a material file', () => {
  it.each(materialNames)('%s comes back as it went out, with a header and without', (id) => {
    const material = loadMaterial(id);
    const text = materialFileText(material);
    expect(text.startsWith('{\n  "format": "augerwright-material",\n  "version": 1,\n  "material": {\n    "id"')).toBe(
      true,
    );
    expect(expectOk(parseMaterialText(text))).toEqual(material);
    expect(expectOk(parseMaterialText(serializeMaterial(material)))).toEqual(material);
    expect(text).toBe(`${JSON.stringify(JSON.parse(text), null, 2)}\n`);
  });

  it('of any material comes back, unknown fields kept', () => {
    fc.assert(
      fc.property(anyStoredMaterial, fc.string(), (material, own) => {
        const marked = { ...material, ownField: own };
        expect(expectOk(parseMaterialText(materialFileText(marked)))).toEqual(marked);
      }),
      pinned(40),
    );
  });

  it('with faults names each place below material', () => {
    const pla = loadMaterial('pla');
    pla.windowLowC.value = 1000;
    pla.bulkDensityKgM3.low = 900;
    expect(placesOf(file(pla)).toSorted()).toEqual([
      'material.bulkDensityKgM3.low: range-order',
      'material.windowLowC.value: out-of-range',
    ]);
    expect(placesOf(file({ ...loadMaterial('pla'), colourLaw: 'none' }))).toEqual(['material.colourLaw: unknown-id']);
    expect(placesOf(file(undefined))).toContain('material: missing');
  });

  it('of a wrong law kind says which there are', () => {
    const pla = loadMaterial('pla');
    const text = file({ ...pla, degradation: [{ ...pla.degradation[0], kind: 'magic' }] });
    const result = parseMaterialText(text);
    expect(result.ok ? '' : pathText(result.issues[0]?.path ?? [])).toMatch(/^material\.degradation\[0\]/);
    expect(result.ok ? '' : result.issues[0]?.allowed).toMatch(/"scission".*"twoStep".*"lag"/);
  });

  it('that is none, or newer, or broken is refused with the reason', () => {
    expect(codesOf(parseMaterialText(file({}, { format: 'other' })))).toEqual(['not-a-material']);
    expect(codesOf(parseMaterialText(file({}, { format: 'augerwright-material' })))).toEqual(['bad-version']);
    expect(codesOf(parseMaterialText(file({}, { format: 'augerwright-material', version: 0.5 })))).toEqual([
      'bad-version',
    ]);
    expect(codesOf(parseMaterialText(file({}, { format: 'augerwright-material', version: 99 })))).toEqual([
      'newer-version',
    ]);
    expect(codesOf(parseMaterialText('{"format": '))).toEqual(['bad-json']);
    expect(codesOf(parseMaterialText('[]'))).toEqual(['wrong-type']);
  });

  it('cut or changed anywhere is answered by a result, never an exception', () => {
    const text = materialFileText(loadMaterial('pla'));
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.constantFrom('', '"', '{', '9', 'null', '-', '\u0000'), (at, piece) => {
        const result = parseMaterialText(text.slice(0, at) + piece + text.slice(at + 1));
        if (!result.ok) expect(result.issues.length).toBeGreaterThan(0);
      }),
      pinned(60),
    );
  });
});
