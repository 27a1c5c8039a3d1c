/** Files under assets/: reading them, and rewriting generated ones when UPDATE_ASSETS=1 is set. */

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';

const place = (path: string): URL => new URL(`../../assets/${path}`, import.meta.url);

/** Text of a file under assets/. */
export const assetText = (path: string): string => readFileSync(place(path), 'utf8');

/** Names of the JSON files in a folder under assets/. */
export const assetNames = (folder: string): readonly string[] =>
  readdirSync(place(folder))
    .filter((name) => name.endsWith('.json'))
    .sort();

/** Writes the wanted text first when asked by UPDATE_ASSETS=1; answers with what the file holds. */
export function keptText(path: string, wanted: string): string {
  if (process.env.UPDATE_ASSETS === '1') writeFileSync(place(path), wanted);
  return assetText(path);
}
