/** How complete the library's materials are, in a few words each. */

import { materialCompleteness, parseMaterial } from '../../../core/index.ts';
import { getBridge } from '../../bridge.ts';
import { text } from '../../strings.ts';
import { topicNames } from './topicNames.ts';

const words = text.describe.granulate;

/** A short mark: the worst state, and what it means. */
export interface LibraryMark {
  readonly state: 'known' | 'doubtful' | 'missing';
  readonly words: string;
}

/** The mark of a material's text; null where it cannot be read. */
function markOf(materialText: string): LibraryMark | null {
  const read = parseMaterial(materialText);
  if (!read.ok) return null;
  const topics = materialCompleteness(read.value);
  const missing = topics.filter(({ state }) => state === 'missing').map(({ topic }) => topic);
  if (missing.length > 0) return { state: 'missing', words: words.libraryLacks(topicNames(missing)) };
  const doubtful = new Set(topics.flatMap((topic) => topic.doubtful)).size;
  return { state: doubtful > 0 ? 'doubtful' : 'known', words: words.libraryPredicts(doubtful) };
}

/** Marks of these materials by id; one that cannot be read has none. */
export async function libraryMarks(ids: readonly string[]): Promise<ReadonlyMap<string, LibraryMark>> {
  const found = await Promise.all(
    ids.map(async (id) => {
      const read = await getBridge().readMaterial(id);
      return [id, read.ok ? markOf(read.value.text) : null] as const;
    }),
  );
  return new Map(found.flatMap(([id, mark]) => (mark ? [[id, mark] as const] : [])));
}
