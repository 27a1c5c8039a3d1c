import { describe, expect, test } from 'vitest';
import { newtonian, powerLaw } from '../../../core/checks/textbookScrew.ts';
import { conePressureDrop } from '../../../core/flow/cone.ts';
import { createHead, headDrop } from '../../../core/flow/headDrop.ts';
import { type HeadElement, headElements } from '../../../core/flow/headPieces.ts';
import { pipeFlow } from '../../../core/flow/pipe.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { measureGeometry } from '../../../core/geometry/summary.ts';
import { loadDesign } from '../../helpers/projects.ts';

const pipe = (length: number, boreStart: number, boreEnd: number): HeadElement => ({
  kind: 'piece',
  name: 'piece',
  part: 'nozzle',
  segment: 0,
  z: 0,
  length,
  boreStart,
  boreEnd,
  coreStart: 0,
  coreEnd: 0,
});

describe('pieces of the head', () => {
  for (const revision of ['A', 'B', 'C']) {
    test(`${revision}: their volumes add up to those of tip and nozzle`, () => {
      const design = loadDesign('demo', revision);
      const geometry = measureGeometry(design, buildStations(design, 8));
      const frustum = (length: number, a: number, b: number) => (Math.PI * length * (a * a + a * b + b * b)) / 3;
      const volume = headElements(design).reduce((sum, element) => {
        if (element.kind === 'step') return sum;
        const { length, boreStart, boreEnd, coreStart, coreEnd } = element;
        return sum + frustum(length, boreStart, boreEnd) - frustum(length, coreStart, coreEnd);
      }, 0);
      expect(Math.abs(volume / (geometry.tipVolume + geometry.nozzleVolume) - 1)).toBeLessThan(0.01);
    });

    test(`${revision}: they follow each other without gaps, from the screw’s end to the orifice`, () => {
      const design = loadDesign('demo', revision);
      const elements = headElements(design);
      let bore = design.barrel.boreDiameter / 2;
      for (const element of elements) {
        expect(element.kind === 'step' ? element.from : element.boreStart).toBeCloseTo(bore, 9);
        bore = element.kind === 'step' ? element.to : element.boreEnd;
      }
      const last = design.nozzle.segments[design.nozzle.segments.length - 1];
      expect(bore).toBeCloseTo(last.endDiameter / 2, 12);
    });
  }

  test('flat shoulder and ledge of revision A are steps', () => {
    const steps = headElements(loadDesign('demo', 'A')).filter(({ kind }) => kind === 'step');
    expect(steps.length).toBeGreaterThanOrEqual(2);
  });
});

describe('drop of the head', () => {
  const law = powerLaw(4000, 0.4);

  test('is the sum of its pipes and cones, above the pressure outside', () => {
    const head = createHead([pipe(0.01, 0.003, 0.001), pipe(0.004, 0.001, 0.001)]);
    const drop = headDrop(head, () => law, 1, 2e-8, 5e5);
    const expected = conePressureDrop(law, 0.003, 0.001, 0.01, 2e-8) + pipeFlow(law, 0.001, 2e-8).gradient * 0.004;
    expect(drop.total).toBeCloseTo(expected, 6);
    expect(drop.elements.reduce((sum, each) => sum + each.pressureDrop, 0)).toBeCloseTo(drop.total, 6);
    expect(drop.swirlPower).toBe(0);
  });

  test('grows as the flow to the power of the index for a power law', () => {
    const head = createHead([pipe(0.01, 0.003, 0.001)]);
    const at = (flow: number) => headDrop(head, () => law, 0, flow, 0).total;
    expect(Math.log(at(4e-8) / at(1e-8)) / Math.log(4)).toBeCloseTo(0.4, 4);
  });

  test('hands each element the pressure on its downstream side', () => {
    const seen: number[] = [];
    const head = createHead([pipe(0.01, 0.002, 0.002), pipe(0.004, 0.001, 0.001)]);
    const drop = headDrop(
      head,
      (_, pressure) => {
        seen.push(pressure);
        return newtonian(100);
      },
      0,
      1e-8,
      7e5,
    );
    expect(seen[0]).toBe(7e5);
    expect(seen[1]).toBeCloseTo(7e5 + drop.elements[1].pressureDrop, 3);
  });

  test('the turning tip takes power', () => {
    const design = loadDesign('demo', 'C');
    const head = createHead(headElements(design));
    expect(headDrop(head, () => newtonian(500), 0.5, 1e-8, 0).swirlPower).toBeGreaterThan(0);
    expect(headDrop(head, () => newtonian(500), 0, 1e-8, 0).swirlPower).toBe(0);
  });
});
