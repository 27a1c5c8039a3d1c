/** What an edit of a number is called among the steps that can be undone. */

import type { Path } from '../store/path.ts';
import { text } from '../strings.ts';
import type { FieldSpec } from './spec.ts';

const words = text.describe;

/** Lists whose entries are named by number, by the key they stand under. */
const entryWords: Readonly<Record<string, string>> = {
  sections: words.section,
  zones: words.zone,
  segments: words.piece,
  motorCurve: words.point,
};

/** `Root Ø end` of the third section is `Section 3, Root Ø end`. */
export function stepLabel(path: Path, spec: FieldSpec): string {
  const at = path.findIndex((key) => Object.hasOwn(entryWords, key));
  const index = path[at + 1];
  return at < 0 || typeof index !== 'number'
    ? spec.label
    : `${entryWords[String(path[at])]} ${index + 1}, ${spec.label}`;
}
