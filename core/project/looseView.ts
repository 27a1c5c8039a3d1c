/** Careful reading of data whose shape is not yet known to be right. */

/** A JSON object. */
export type JsonObject = Readonly<Record<string, unknown>>;

/** Whether a value is an object with keys. */
export const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value as an object; empty where it is none. */
export const asObject = (value: unknown): JsonObject => (isObject(value) ? value : {});

/** The value as a list; empty where it is none. */
export const asList = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** The value as a finite number, or NaN, with which every comparison fails. */
export const asNumber = (value: unknown): number =>
  typeof value === 'number' && Number.isFinite(value) ? value : Number.NaN;

/** The value as a text, or undefined. */
export const asText = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);
