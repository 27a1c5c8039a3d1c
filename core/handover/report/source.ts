/** One revision as the report's sections take it. */

import type { Design } from '../../design/types.ts';
import type { DoubtSummary } from '../../doubt/types.ts';
import type { Prediction } from '../../prediction/types.ts';
import type { Presentation } from '../../present/types.ts';
import type { Project, Revision } from '../../project/schema.ts';

/** A predicted revision. */
export interface ReportSubject {
  readonly project: Project;
  readonly revision: Revision;
  readonly design: Design;
  readonly prediction: Prediction;
  readonly presentation: Presentation;
  /** ranges of the figures from those of the inputs; null where they were not asked for */
  readonly doubt: DoubtSummary | null;
  /** before ids and in titles where there are several; empty for one alone */
  readonly prefix: string;
}

/** An id that stays apart from those of other revisions. */
export const idOf = ({ prefix }: Pick<ReportSubject, 'prefix'>, id: string): string =>
  prefix === '' ? id : `${prefix.replace(/[^A-Za-z0-9]+/g, '-')}-${id}`;

/** A title that names the revision where there are several. */
export const titleOf = ({ prefix }: Pick<ReportSubject, 'prefix'>, title: string): string =>
  prefix === '' ? title : `${prefix}: ${title}`;
