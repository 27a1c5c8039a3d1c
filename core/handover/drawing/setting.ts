/** What a drawing is made with: the choices, checked and named. */

import type { Design } from '../../design/types.ts';
import type { Project, Revision } from '../../project/schema.ts';
import { isSmallFormat, type SheetFormat } from './formats.ts';
import type { ToleranceClass } from './generalToleranceTable.ts';
import { large, small } from './lettering.ts';

/** Parts that have sheets of their own. */
export type PartId = 'screw' | 'barrel' | 'nozzle';

/** Choices of one hand-over. */
export interface DrawingSetting {
  readonly project: Project;
  readonly revision: Revision;
  readonly design: Design;
  readonly date: string;
  readonly parts: readonly PartId[];
  readonly format: SheetFormat;
  /** paper mm per mm of the part; null = chosen by the room there is */
  readonly scale: number | null;
  readonly firstAngle: boolean;
  readonly tolerance: ToleranceClass;
  readonly shankFit: string;
  readonly flightFit: string;
  readonly boreFit: string;
  /** µm */
  readonly roughness: {
    readonly general: number;
    readonly channel: number;
    readonly shank: number;
    readonly bore: number;
  };
  readonly owner: string;
  readonly number: string;
  readonly title: string;
  readonly creator: string;
  readonly approval: string;
  readonly status: string;
  readonly language: string;
  readonly barrelMaterial: string;
  readonly nozzleMaterial: string;
}

/** Height of the lettering of dimensions, mm: 2.5 on small sheets, 3.5 on large ones (ISO 3098). */
export const letterHeight = ({ format }: Pick<DrawingSetting, 'format'>): number =>
  isSmallFormat(format) ? small : large;

/** Name of a section in the file, or its number. */
export const sectionName = ({ revision }: DrawingSetting, index: number): string =>
  revision.screw.sections[index]?.name ?? `section ${index + 1}`;
