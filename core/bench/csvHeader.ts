/** What each column of a table of trials stands for. */

import { type Dimension, parseQuantity } from '../units.ts';
import { headerWords, notSettings } from './csvHeaderWords.ts';
import type { BenchColumn, BenchContext, BenchField } from './csvTypes.ts';

/** What the fields that are quantities measure. */
export const fieldDimensions: Readonly<Partial<Record<BenchField, Dimension>>> = {
  speed: 'rotation',
  tempC: 'temperature',
  seconds: 'time',
  grams: 'mass',
  rate: 'massFlow',
  torque: 'torque',
  current: 'current',
};

/** Answers kept, since the same few texts are asked again and again; emptied when there are many. */
const answers = new Map<string, readonly Dimension[]>();

/** What a text could be a unit of, among what columns measure. */
function dimensionsOf(unit: string): readonly Dimension[] {
  const known = answers.get(unit);
  if (known !== undefined) return known;
  const asked = parseQuantity(`1 ${unit}`, 'mass');
  const unknown = !asked.ok && asked.issues[0].code === 'unknown-unit';
  const found = unknown ? [] : measured.filter((dimension) => parseQuantity(`1 ${unit}`, dimension).ok);
  if (answers.size > 2000) answers.clear();
  answers.set(unit, found);
  return found;
}

/** Whether a text is a unit of a dimension. */
export const isUnitOf = (unit: string, dimension: Dimension): boolean =>
  unit !== '' && unit.length <= 12 && !/^[\s.,+-]|^\d(?!\/)/.test(unit) && dimensionsOf(unit).includes(dimension);

const measured = Object.values(fieldDimensions);
const quantities = Object.entries(fieldDimensions) as readonly (readonly [BenchField, Dimension])[];

/** Header without its unit, tidied; and the unit as written. */
function splitHeader(header: string): { readonly name: string; readonly unit: string } {
  const short = header.slice(0, 120).replace(/_/g, ' ').trim();
  if (quantities.some(([, dimension]) => isUnitOf(short, dimension))) return { name: tidied(short), unit: short };
  const bracketed = /[([{]\s*([^()[\]{}]{1,20})\s*[)\]}]\s*$/.exec(short);
  const told = bracketed ?? /(?:,|\bin\b|\/(?=\s)|\s)\s*([^\s,]{1,12})$/.exec(short);
  const unit = told?.[1].trim() ?? '';
  const isUnit = bracketed !== null || quantities.some(([, dimension]) => isUnitOf(unit, dimension));
  const name = isUnit && told ? short.slice(0, told.index) : short;
  return { name: tidied(name), unit: isUnit ? unit : '' };
}

const tidied = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[_\-–.:#/,;]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

interface Guess {
  readonly field: BenchField | null;
  readonly unit: string;
  readonly confidence: BenchColumn['confidence'];
  readonly reason: string;
}

const nothing = (reason: string): Guess => ({ field: null, unit: '', confidence: 'none', reason });

/** By the unit alone: `rpm`, `[g/min]`, `°C`. */
function byUnit(unit: string): Guess | null {
  const fits = quantities.filter(([, dimension]) => isUnitOf(unit, dimension)).map(([field]) => field);
  return fits.length === 1 ? { field: fits[0], unit, confidence: 'guess', reason: `by its unit ${unit}` } : null;
}

/** A unit that the field cannot have speaks against the field. */
function fitsUnit(field: BenchField, unit: string): boolean {
  const dimension = fieldDimensions[field];
  return unit === '' || dimension === undefined || isUnitOf(unit, dimension);
}

function guessOf(header: string, zones: readonly string[]): Guess {
  const { name, unit } = splitHeader(header);
  if (name === '' && unit === '') return nothing('The column has no heading.');
  const zone = zones.some((each) => name.includes(tidied(each)));
  if (zone && fitsUnit('tempC', unit))
    return { field: 'tempC', unit, confidence: 'sure', reason: 'names a heated zone' };
  const exact = headerWords.find((each) => each.exact.test(name) && fitsUnit(each.field, unit));
  if (exact) {
    return {
      field: exact.field,
      unit,
      confidence: name.length > 1 ? 'sure' : 'likely',
      reason: 'by its heading',
    };
  }
  if (notSettings.test(name) && isUnitOf(unit === '' ? 'K' : unit, 'temperature')) {
    return nothing('A measured temperature is not a setting.');
  }
  const part = headerWords.find((each) => each.part?.test(name) && fitsUnit(each.field, unit));
  if (part) return { field: part.field, unit, confidence: 'likely', reason: 'by a word of its heading' };
  return byUnit(unit) ?? nothing('The heading is not known.');
}

/** Letters that mean colour beside each other and other things alone. */
function letters(headers: readonly string[], guesses: readonly Guess[]): readonly Guess[] {
  const hasL = guesses.some(({ field }) => field === 'labL');
  return guesses.map((guess, i): Guess => {
    const letter = headers[i].trim().replace('*', '');
    if (!/^[aAbB]$/.test(letter) || guess.field === 'labA' || guess.field === 'labB') return guess;
    const field = letter.toLowerCase() === 'a' ? 'labA' : 'labB';
    if (hasL) return { field, unit: '', confidence: 'likely', reason: 'a letter beside L' };
    return letter === 'A' ? { field: 'current', unit: 'A', confidence: 'guess', reason: 'by its unit A' } : guess;
  });
}

const weight = { given: 4, sure: 3, likely: 2, guess: 1, none: 0 } as const;

/** Only temperatures may come twice; the surer column stands for a field, the first of equals. */
function withoutRivals(guesses: readonly Guess[], headers: readonly string[]): readonly Guess[] {
  const best = new Map<BenchField, number>();
  guesses.forEach(({ field, confidence }, i) => {
    const other = field === null ? undefined : best.get(field);
    if (field !== null && (other === undefined || weight[confidence] > weight[guesses[other].confidence]))
      best.set(field, i);
  });
  return guesses.map((guess, i) => {
    if (guess.field === null || guess.field === 'tempC' || best.get(guess.field) === i) return guess;
    return nothing(`The column "${headers[best.get(guess.field) ?? 0].trim()}" is taken for this.`);
  });
}

/** Place of a temperature along the machine: by zone name, then by number, nozzle last, else as they come. */
function placeOf(header: string, zones: readonly string[]): number {
  const name = splitHeader(header).name;
  const zone = zones.findIndex((each) => name.includes(tidied(each)));
  if (zone >= 0) return zone === zones.length - 1 ? 1e6 : zone + 1;
  if (/\b(nozzle|die|duse|duese)\b/.test(name)) return 1e6;
  const number = /(\d{1,3})\b/.exec(name);
  return number ? Number(number[1]) : 1e5;
}

/**
 * What the columns stand for.
 * @param headers first row as text
 * @param context names of zones, to know their temperatures by
 * @param given fields the user chose, by column
 */
export function benchColumns(
  headers: readonly string[],
  context: BenchContext,
  given: readonly (BenchField | null | undefined)[] = [],
): readonly BenchColumn[] {
  const zones = context.revisions.find(({ id }) => id === context.revisionId)?.heated ?? [];
  const guessed = letters(
    headers,
    headers.map((header) => guessOf(header, zones)),
  ).map((guess, i): Guess => {
    const field = given[i];
    return field === undefined
      ? guess
      : { field, unit: splitHeader(headers[i]).unit, confidence: 'given', reason: 'chosen' };
  });
  const chosen = withoutRivals(guessed, headers);
  const temperatures = headers.map((_, i) => i).filter((i) => chosen[i].field === 'tempC');
  temperatures.sort((p, q) => placeOf(headers[p], zones) - placeOf(headers[q], zones) || p - q);
  return chosen.map((guess, index) => {
    const order = temperatures.indexOf(index);
    return { index, header: headers[index].trim(), ...guess, order: order < 0 ? null : order };
  });
}

/** How sure a row is to be the heading: number of columns that it names. */
export const headingScore = (cells: readonly string[], context: BenchContext): number =>
  benchColumns(cells, context).filter(({ field }) => field !== null).length;
