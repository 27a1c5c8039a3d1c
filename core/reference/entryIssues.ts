/** Whether an entry of a reference file can be solved at all, said before a mesh is tried. */

import { asNumber, asObject, type JsonObject } from '../project/looseView.ts';
import { shortValue } from '../project/schemaIssues.ts';
import type { Issue } from '../result.ts';
import { type EntryRange, type EntryRanges, inputRanges, materialRanges, rowNumbers } from './entryRanges.ts';

type Path = readonly (string | number)[];

/** Most rows of one entry. */
const mostRows = 100;

const issue = (path: Path, code: string, message: string, found: unknown, allowed: string): Issue => {
  const value = shortValue(found);
  return {
    path,
    code,
    message,
    ...(value === undefined ? {} : { value }),
    allowed,
    remedy: 'Correct the reference file.',
  };
};

function rangeFault(fields: JsonObject, name: string, range: EntryRange, path: Path): readonly Issue[] {
  const [least, most, optional] = range;
  const found = Object.hasOwn(fields, name) ? fields[name] : undefined;
  if (found === undefined && optional) return [];
  const number = asNumber(found);
  if (number >= least && number <= most) return [];
  const said = typeof found === 'number' ? `${name} is outside its range.` : `${name} is not a number.`;
  return [issue([...path, name], 'reference-number', said, found, `a number from ${least} to ${most}`)];
}

const rangeFaults = (fields: JsonObject, ranges: EntryRanges, path: Path): readonly Issue[] =>
  Object.entries(ranges).flatMap(([name, range]) => rangeFault(fields, name, range, path));

function materialFaults(found: unknown, path: Path): readonly Issue[] {
  const material = asObject(found);
  const model = Object.hasOwn(material, 'model') ? material.model : undefined;
  const known = typeof model === 'string' && Object.hasOwn(materialRanges, model) ? materialRanges[model] : undefined;
  if (known) return rangeFaults(material, known, path);
  const allowed = Object.keys(materialRanges).join(', ');
  return [issue([...path, 'model'], 'reference-law', 'The entry names no law that is known.', model, allowed)];
}

/** A rule between two numbers of the inputs. */
type Between = readonly [name: string, holds: boolean, allowed: string];

/** Sizes that must fit into each other; only asked where each is in its range. */
function betweenFaults(kind: string, inputs: JsonObject, path: Path): readonly Issue[] {
  const of = (name: string) => asNumber(inputs[name]);
  const slender = 'from 1/200 to 200 times the width';
  const ratio = of('H_m') / of('W_m');
  const starts = Object.hasOwn(inputs, 'starts') ? of('starts') : 1;
  const gap = of('pitch_m') / starts - of('flight_axial_width_m');
  const depth = (of('D_barrel_m') - of('D_root_m')) / 2;
  const flat: readonly Between[] = [['H_m', ratio >= 1 / 200 && ratio <= 200, slender]];
  const rules: Readonly<Record<string, readonly Between[]>> = {
    A: flat,
    B: flat,
    C: [
      ['R_root_m', of('R_root_m') <= 0.99 * of('R_barrel_m'), 'less than the bore’s radius'],
      ['R_root_m', of('R_root_m') >= 0.01 * of('R_barrel_m'), 'at least 1 % of the bore’s radius'],
      ['nozzle_diameter_m', of('nozzle_diameter_m') <= 2 * of('R_barrel_m'), 'at most the bore'],
      ['nozzle_diameter_m', of('nozzle_diameter_m') >= 0.005 * of('R_barrel_m'), 'at least 0.25 % of the bore'],
      ...['gap_m', 'annulus_length_m', 'land_m'].map(
        (name): Between => [name, of(name) <= 100 * of('R_barrel_m'), 'at most 50 bores'],
      ),
    ],
    D: [
      ['D_root_m', depth > 0 && of('D_root_m') >= 0.01 * of('D_barrel_m'), '1 % of the bore to less than the bore'],
      ['flight_axial_width_m', gap > 0, 'less than the lead shared by the starts'],
      [
        'pitch_m',
        !(gap > 0 && depth > 0) || (gap <= 200 * depth && gap >= depth / 200),
        'a channel from 1/200 to 200 times as wide as deep',
      ],
      ['starts', Number.isInteger(starts), 'a whole number'],
    ],
  };
  return (rules[kind] ?? []).flatMap(([name, holds, allowed]) =>
    holds
      ? []
      : [issue([...path, name], 'reference-size', `${name} does not fit the other sizes.`, inputs[name], allowed)],
  );
}

function rowFaults(kind: string, rows: unknown, path: Path): readonly Issue[] {
  const names = rowNumbers[kind];
  if (!names) return [];
  if (!Array.isArray(rows) || rows.length === 0 || rows.length > mostRows)
    return [
      issue(path, 'reference-rows', 'The entry has no rows to compare, or too many.', rows, `1 to ${mostRows} rows`),
    ];
  return rows.flatMap((row, i) =>
    names.flatMap((name) => rangeFault(asObject(row), name, [-1e30, 1e30], [...path, i])),
  );
}

/**
 * What keeps an entry from being solved.
 * @param kind `case` of its file: A, B, C or D
 * @param entry parsed JSON
 * @param path place of the entry in its file
 * @returns one issue per fault: numbers that are missing, not finite or beyond any small screw, sizes that do not fit
 */
export function referenceIssues(kind: string, entry: unknown, path: Path = []): readonly Issue[] {
  const { inputs: given, rows } = asObject(entry);
  const inputs = asObject(given);
  const at = [...path, 'inputs'];
  const ranges = Object.hasOwn(inputRanges, kind) ? inputRanges[kind] : undefined;
  if (!ranges)
    return [issue(path, 'reference-case', 'No solver takes this case.', kind, Object.keys(inputRanges).join(', '))];
  const numbers = rangeFaults(inputs, ranges, at);
  const between = numbers.length === 0 ? betweenFaults(kind, inputs, at) : [];
  const law = materialFaults(inputs.material, [...at, 'material']);
  return [...numbers, ...between, ...law, ...rowFaults(kind, rows, [...path, 'rows'])];
}
