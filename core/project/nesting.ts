/** How deep a JSON text goes, before it is parsed: engines take seconds over millions of open brackets. */

const [quote, backslash] = [34, 92];
const opening = new Set([91, 123]);
const closing = new Set([93, 125]);

/**
 * Whether objects and lists of a text are nested no deeper than told; texts in quotes do not count.
 * @param text JSON, or anything else
 * @param deepest levels, >= 1
 */
export function nestsWithin(text: string, deepest: number): boolean {
  let depth = 0;
  let inText = false;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (inText) {
      if (code === backslash) i++;
      else if (code === quote) inText = false;
    } else if (code === quote) inText = true;
    else if (opening.has(code)) {
      depth++;
      if (depth > deepest) return false;
    } else if (closing.has(code)) depth--;
  }
  return true;
}
