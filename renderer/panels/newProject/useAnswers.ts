/** The answers of the new-project form, and what is wrong with them. */

import { useState } from 'react';
import { askRanges, type FieldRange, type Material, type NewProjectAsk } from '../../../core/index.ts';
import { rangeText } from '../../fields/quantity.ts';
import type { FieldUnit } from '../../fields/spec.ts';
import { useLook } from '../../look.ts';
import { newText as words } from '../../strings/templates.ts';

/** The numbers that are asked. */
export type Numbers = Pick<NewProjectAsk, 'boreMm' | 'heatedMm' | 'orificeMm' | 'torqueNm' | 'gearRatio'>;

/** Sizes of a small bench head, to begin with; own choice. */
const firstNumbers: Numbers = { boreMm: 16, heatedMm: 128, orificeMm: 1, torqueNm: 1.2, gearRatio: 20 };

/** What may be answered, given the bore. */
function rangesFor(boreMm: number): Readonly<Record<keyof Numbers, FieldRange>> {
  const { heated, orifice, ...fixed } = askRanges;
  const bores = ({ least, most }: { least: number; most: number }): FieldRange => ({
    least: Number((least * boreMm).toPrecision(6)),
    most: Number((most * boreMm).toPrecision(6)),
    whole: false,
  });
  return { ...fixed, heatedMm: bores(heated), orificeMm: bores(orifice) };
}

const outside = (value: number, { least, most }: FieldRange): boolean =>
  value < (least ?? Number.NEGATIVE_INFINITY) || value > (most ?? Number.POSITIVE_INFINITY);

/** The form's state. */
export function useAnswers() {
  const look = useLook();
  const [name, setName] = useState<string>(words.firstName);
  const [numbers, setNumbers] = useState(firstNumbers);
  const [material, setMaterial] = useState<Material | null>(null);
  const [misread, setMisread] = useState<ReadonlySet<string>>(new Set());
  const ranges = rangesFor(numbers.boreMm);
  const inWords = (key: keyof Numbers, unit: FieldUnit) =>
    rangeText(ranges[key], { key, label: key, unit, help: '' }, look);
  const problems = [
    ...(name.trim() === '' ? [words.nameMissing] : []),
    ...(outside(numbers.heatedMm, ranges.heatedMm) ? [words.heatedRange(inWords('heatedMm', 'mm'))] : []),
    ...(outside(numbers.orificeMm, ranges.orificeMm) ? [words.orificeRange(inWords('orificeMm', 'mm'))] : []),
  ];
  return {
    name,
    setName,
    numbers,
    setNumber: (key: keyof Numbers, value: number) => setNumbers((before) => ({ ...before, [key]: value })),
    material,
    setMaterial,
    problems,
    misread: misread.size > 0,
    /** notes whether a field holds text that was not read */
    noteMisread: (key: string, isMisread: boolean) =>
      setMisread((before) => {
        if (before.has(key) === isMisread) return before;
        const after = new Set(before);
        if (isMisread) after.add(key);
        else after.delete(key);
        return after;
      }),
    inWords,
    ranges,
  };
}

/** The answers and what can be done with them. */
export type Answers = ReturnType<typeof useAnswers>;

/** Whether a number may be answered, for the field's own refusal. */
export const refusalOf =
  ({ ranges, inWords }: Answers, key: keyof Numbers, unit: FieldUnit) =>
  (value: number): string | null =>
    outside(value, ranges[key]) ? words.between(inWords(key, unit)) : null;
