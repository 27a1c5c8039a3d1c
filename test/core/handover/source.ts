/** Sources of hand-over modules with predictions by formulas, which are quick; modules cannot tell. */

import { handoverSource } from '../../../core/handover/run.ts';
import type { HandoverModule, HandoverSource } from '../../../core/handover/types.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Project } from '../../../core/project/schema.ts';
import { expectOk, loadExample } from '../../helpers/projects.ts';

/** A module that wants everything, to make sources for. */
const wanting = { id: 'test', label: 'Test', needs: 'solved', several: true } as unknown as HandoverModule;

const kept = new Map<string, Promise<HandoverSource>>();

/** A source of a project's revisions, predicted by formulas and passed off as solved. */
export async function sourceOf(project: Project, revisionIds: readonly string[]): Promise<HandoverSource> {
  const made = await handoverSource(wanting, project, revisionIds, '2026-05-04', (design) => {
    const prediction = predict(design, { fields: 'formula', curvePoints: 10 });
    return { ...prediction, options: { ...prediction.options, fields: 'solved' as const } };
  });
  return expectOk(made);
}

/** The same of a shipped example, made once a worker. */
export function predictedSource(name: string, revisionIds: readonly string[]): Promise<HandoverSource> {
  const key = `${name} ${revisionIds.join()}`;
  const known = kept.get(key) ?? sourceOf(loadExample(name), revisionIds);
  kept.set(key, known);
  return known;
}
