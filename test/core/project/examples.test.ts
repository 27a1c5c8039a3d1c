import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { materialSchema } from '../../../core/project/materialSchema.ts';
import { projectSchema } from '../../../core/project/schema.ts';

const folder = (name: string) => new URL(`../../../assets/${name}/`, import.meta.url);
const load = (name: string, file: string): unknown => JSON.parse(readFileSync(new URL(file, folder(name)), 'utf8'));

describe('shipped files fit the schema', () => {
  it.each(readdirSync(folder('examples')))('example %s', (file) => {
    expect(projectSchema.safeParse(load('examples', file)).error?.issues ?? []).toEqual([]);
  });
  it.each(readdirSync(folder('materials')))('material %s', (file) => {
    expect(materialSchema.safeParse(load('materials', file)).error?.issues ?? []).toEqual([]);
  });
});
