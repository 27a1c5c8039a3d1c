/** Numbers and their units on one line. */

/** Units that may follow a number in a sentence, longer ones first where one begins another. */
const units = '%|°C|mm[²³]?|cm[²³]|[MkG]?Pa|m?s|K|W|J|m?N·?m?|rpm|g\\/min|ΔE00|dE00|×';

const between = new RegExp(`(\\d) (?=(?:${units})(?:[\\s.,;:)/²³]|$))`, 'g');

/**
 * A sentence whose numbers are not parted from their units at the end of a line: the space between them becomes one
 * that does not break.
 */
export const heldTogether = (text: string): string => text.replace(between, '$1\u00a0');
