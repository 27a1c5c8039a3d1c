import { expect, test } from 'vitest';
import { figureInputs, predict, present, printTopicIds, printTopicRows } from '../../../core/index.ts';
import * as strings from '../../../renderer/strings.ts';
import { loadDesign } from '../../helpers/projects.ts';

const prediction = predict(loadDesign('demo'), { curvePoints: 0, warmUp: true });
const { groups } = present(prediction);

/** Every label of a field and every word of the description's side, wherever they stand in the strings. */
function labelsIn(value: unknown, found = new Set<string>()): Set<string> {
  if (typeof value === 'string') found.add(value);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, inner] of Object.entries(value)) if (key !== 'help') labelsIn(inner, found);
  }
  return found;
}

test('figures name their inputs as the fields on screen are named, each part once', () => {
  const { text, ...fields } = strings;
  const labels = labelsIn([fields, text.describe]);
  for (const group of groups.filter(({ id }) => id !== 'inputs')) {
    for (const { id } of group.rows) {
      const inputs = figureInputs(group.id, id);
      expect(inputs.length, `${group.id}/${id}`).toBeGreaterThan(0);
      expect(new Set(inputs.map(({ part }) => part)).size).toBe(inputs.length);
      for (const { part, fields: named } of inputs) {
        expect(text.parts).toHaveProperty(part);
        expect(named.filter((label) => !labels.has(label))).toEqual([]);
      }
    }
  }
});

test('every figure of the print side belongs to one topic and says what that rests on', () => {
  const rows = groups.find(({ id }) => id === 'print')?.rows ?? [];
  const listed = printTopicIds.flatMap((topic) => printTopicRows[topic]);
  expect(new Set(listed).size).toBe(listed.length);
  expect(rows.map(({ id }) => id).filter((id) => !listed.includes(id))).toEqual([]);
  // the diameter that is set does not stand twice
  expect(listed.length - rows.length).toBeLessThanOrEqual(1);
  expect(rows.find(({ id }) => id === 'ooze')?.basis?.model).toMatch(/spring/);
  expect(rows.find(({ id }) => id === 'stepsPerMm3')?.basis?.model).toMatch(/per turn/);
});

test('a doubt stands at its own topic', () => {
  const release = { ...prediction.print.release, compressibilityKnown: false };
  const rows = present({ ...prediction, print: { ...prediction.print, release } }).groups.find(
    ({ id }) => id === 'print',
  )?.rows;
  const doubt = (row: string) => rows?.find(({ id }) => id === row)?.basis?.doubt;
  expect(doubt('ooze')).toMatch(/compressibility/);
  expect(doubt('demand')).toBeNull();
});
