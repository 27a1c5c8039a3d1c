import { beforeAll, describe, expect, test } from 'vitest';
import { buildReport } from '../../../../core/handover/report/buildReport.ts';
import { chart } from '../../../../core/handover/report/chart.ts';
import { dwellBands, dwellPictures } from '../../../../core/handover/report/dwellPicture.ts';
import type { Report } from '../../../../core/handover/report/model.ts';
import { plainText } from '../../../../core/handover/report/plainSigns.ts';
import { bandGrid, bandRectangles } from '../../../../core/handover/report/raster.ts';
import { reportSubjects } from '../../../../core/handover/report/reportModules.ts';
import { linearTicks, logTicks } from '../../../../core/handover/report/ticks.ts';
import type { DwellSection } from '../../../../core/present/dwellSection.ts';
import { flatMap } from '../../../helpers/flatMaps.ts';
import { reportTexts } from '../../../helpers/reportTexts.ts';
import { predictedSource } from '../source.ts';
import { blocksOf, cases, figuresOf, reportOf, reportsOfCases } from './cases.ts';

/** Ids that can be led to, and those that are. */
function ids(report: Report): { there: Set<string>; wanted: string[] } {
  const there = new Set(report.sections.map(({ id }) => id));
  const wanted: string[] = [];
  for (const block of blocksOf(report)) {
    if ('id' in block) there.add(block.id);
    const cells = block.kind === 'table' ? block.rows.flat() : block.kind === 'list' ? block.items : [];
    wanted.push(...cells.flatMap(({ to }) => (to ? [to] : [])));
  }
  return { there, wanted };
}

let reports: Report[] = [];
beforeAll(async () => {
  reports = await reportsOfCases();
});

describe('model', () => {
  test.each(cases.map(([name], i) => [name, i] as const))(
    'of %s holds every part, and links that lead somewhere',
    (_, i) => {
      const report = reports[i];
      const several = i === 1;
      const titles = report.sections.map(({ title }) => title).join('\n');
      for (const wanted of [
        'asked',
        'design',
        'stays long',
        'Colour',
        'Findings',
        'Cautions',
        'sources',
        'Calibration',
        'Models',
        'Method and limits',
        'made from',
      ])
        expect(titles).toContain(wanted);
      expect(titles.includes('Comparison')).toBe(several);
      const { there, wanted } = ids(report);
      expect(wanted.length).toBeGreaterThan(5);
      expect(wanted.filter((id) => !there.has(id))).toEqual([]);
      const all = blocksOf(report).flatMap((block) => ('id' in block ? [block.id] : []));
      expect(all.length).toBe(new Set(all).size);
    },
  );

  test('says in words what figures show, and never NaN or undefined', () => {
    for (const report of reports) {
      const figures = figuresOf(report);
      expect(figures.length).toBeGreaterThan(3);
      for (const { alt } of figures) expect(alt.length).toBeGreaterThan(40);
      expect([...reportTexts(report)].filter((text) => /NaN|undefined|Infinity|\bnull\b|\[object/.test(text))).toEqual(
        [],
      );
    }
  });

  test('tells what is invented, what is not calibrated, and the hash', async () => {
    const source = await predictedSource('demo', ['C']);
    const text = [...reportTexts(reports[0])].join('\n');
    expect(reports[0].notices.join(' ')).toContain('invented');
    expect(text).toContain('Not calibrated');
    expect(text).toContain(source.subjects[0].prediction?.designHash ?? 'no hash');
    for (const finding of source.subjects[0].prediction?.findings ?? []) expect(text).toContain(finding.change);
  });

  test('of nothing flowing says so, and draws no map', () => {
    const text = [...reportTexts(reports[2])].join('\n');
    expect(text).toContain('delivers nothing');
    expect(text).toContain('there is no map');
    expect(figuresOf(reports[2]).some(({ id }) => id.startsWith('map-'))).toBe(false);
  });

  test('tells the calibration with its factors and errors', async () => {
    const source = await predictedSource('demo', ['C']);
    const factor = { value: 1.13, low: 1.05, high: 1.21, fitted: true };
    const held = { value: 1, low: 1, high: 1, fitted: false };
    const factors = { feed: factor, viscosity: held, wallFriction: held, colourRate: held };
    const error = { before: 0.2, after: 0.05, leaveOneOut: null };
    const calibration = { id: 'k', name: 'spring', materialId: 'm', trialIds: ['t1', 't2'], factors, error };
    const [subject] = reportSubjects(source, { from: 'solved', samples: 0 }, () => undefined);
    const report = buildReport(
      [
        {
          ...subject,
          project: { ...subject.project, calibrations: [calibration] },
          prediction: {
            ...subject.prediction,
            calibration: { ...factors, id: 'k', name: 'spring', date: null, materialId: 'm', trials: ['t1', 't2'] },
          },
        },
      ],
      '2026-05-04',
    );
    const text = [...reportTexts(report)].join('\n');
    for (const part of ['1.13', '1.05', '1.21', 'held at 1', 'a factor of 1.22', 'a factor of 1.05', 't1, t2'])
      expect(text).toContain(part);
  });

  test('ranges are those of the samples', async () => {
    const report = await reportOf('demo', ['C'], 3);
    const ranges = blocksOf(report).find((block) => 'id' in block && block.id === 'ranges-table');
    if (ranges?.kind !== 'table') throw new Error('no table of ranges');
    const [, low, nominal, high] = (ranges.rows[0] ?? []).map(({ text }) => Number.parseFloat(text));
    expect(low).toBeLessThanOrEqual(high);
    expect(nominal).toBeGreaterThan(0);
  });
});

test('from the estimate says so, and draws no map', async () => {
  const source = await predictedSource('demo', ['C']);
  const subjects = reportSubjects(source, { from: 'estimate', samples: 0 }, () => undefined);
  const text = [...reportTexts(buildReport(subjects, source.date))].join('\n');
  expect(text).toContain('Formula estimate');
  expect(text).toContain('formulas alone; 8 stations a turn');
});

describe('maps', () => {
  const square: DwellSection = {
    z: Float32Array.of(0, 1, 1, 0),
    r: Float32Array.of(0, 0, 1, 1),
    triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
    age: new Float32Array(4),
    dwell: Float32Array.of(0, 4, 4, 0),
  };
  const grid = { z: [0, 2], r: [0, 1], columns: 40, rows: 10 } as const;

  test('put each cell into the band of its value, and leave out what is no melt', () => {
    const bands = bandGrid([square], grid, (value) => (value <= 2 ? 0 : 1));
    const rows = Array.from({ length: grid.rows }, (_, j) => [
      ...bands.subarray(j * grid.columns, (j + 1) * grid.columns),
    ]);
    for (const row of rows) {
      expect(row.slice(0, 10).every((band) => band === 0)).toBe(true);
      expect(row.slice(10, 20).every((band) => band === 1)).toBe(true);
      expect(row.slice(20).every((band) => band === 255)).toBe(true);
    }
    const [low, high] = bandRectangles(bands, grid, 2, [100, 50, 80, 30]);
    expect([low.length, high.length]).toEqual([10, 10]);
    expect(low[0][0]).toEqual([100, 77]);
    expect(high[9][2][0]).toBeCloseTo(140, 0);
    expect(high[9][0][1]).toBeCloseTo(50, 9);
  });

  test('of solved sections show channel with its dead spots, and no head where none was solved', async () => {
    const source = await predictedSource('demo', ['C']);
    const [{ revision, design, prediction }] = source.subjects;
    if (!prediction) throw new Error('no prediction');
    const channel = [0.1, 0.13, 0.158].map((z) => flatMap(prediction.stations, z, () => 60));
    const spot = {
      part: 'channel',
      where: 'corner',
      z: 0.13,
      r: 0.006,
      zFrom: 0.11,
      zTo: 0.16,
      volume: 1e-8,
      meanAge: 900,
      cause: 'corner',
      remedy: 'Round it.',
    } as const;
    const solved = {
      ...prediction,
      fields: { channel, head: null, meanTime: 100 },
      dead: { ...prediction.dead, spots: [spot] },
    };
    const { channel: drawn, head } = dwellPictures(revision, design, solved);
    expect(head).toBeNull();
    const { shapes, width, height } = drawn?.picture ?? { shapes: [], width: 0, height: 0 };
    const [cells] = shapes.filter((shape) => shape.kind === 'path' && shape.fill === dwellBands[1].colour).slice(1);
    expect(cells?.kind === 'path' && cells.pieces.length).toBeGreaterThan(100);
    expect(
      shapes.some((shape) => shape.kind === 'text' && shape.size === 8 && shape.text === '1' && shape.y < height - 30),
    ).toBe(true);
    for (const shape of shapes) {
      if (shape.kind !== 'path') continue;
      for (const [x, y] of shape.pieces.flat()) expect(x >= 0 && x <= width && y >= 0 && y <= height).toBe(true);
    }
  });
});

describe('ticks and charts', () => {
  test('stand at round numbers', () => {
    expect(linearTicks(0, 1, 5)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
    expect(linearTicks(-3, 46, 5)).toEqual([0, 10, 20, 30, 40]);
    expect(logTicks(8, 1200)).toEqual([10, 30, 100, 300, 1000]);
    expect(logTicks(1, 10)).toEqual([1, 2, 5, 10]);
  });

  test('a curve beyond the range is cut at its bound', () => {
    const curve = { name: 'c', x: [0, 1, 2], y: [0, 10, 0] };
    const { shapes } = chart({ xLabel: 'x', xUnit: '', yLabel: 'y', yUnit: '', curves: [curve], yRange: [0, 5] });
    const drawn = shapes.flatMap((shape) => (shape.kind === 'path' && shape.width === 1.4 ? shape.pieces : []));
    expect(drawn.length).toBe(2);
    const tops = drawn.map((piece) => Math.min(...piece.map(([, y]) => y)));
    expect(tops[0]).toBeCloseTo(tops[1], 9);
  });
});

describe('signs', () => {
  test('no text of an example loses one', () => {
    for (const report of reports)
      for (const text of reportTexts(report)) expect(plainText(text).lost, text).toEqual([]);
  });

  test('are said in words, or told as lost', () => {
    expect(plainText('ΔT ≥ 3 µm²').text).toBe('delta T at least 3 µm²');
    expect(plainText('a\u2009b').text).toBe('a b');
    expect(plainText('č漢')).toEqual({ text: 'c?', lost: ['č', '漢'] });
  });
});
