/** Beginning, moving and ending a pull, and the same by keys: each pull is one step of undo. */

import { type Issue, lookText, type Project } from '../../core/index.ts';
import { withChanges } from '../fields/check.ts';
import { stepped } from '../fields/quantity.ts';
import { currentLook } from '../look.ts';
import { partOf } from '../panels/partOf.ts';
import { type Path, pathKey } from '../store/path.ts';
import { activeRevision, applyEdit, currentProject } from '../store/project.ts';
import { setView } from '../store/view.ts';
import { drawingText } from '../strings/drawing.ts';
import { limitsOf, within } from './limits.ts';
import { pointAtField } from './pointAtField.ts';
import { snap } from './snapping.ts';
import { drawingStore, opposite, type Pull, setDrawing } from './store.ts';
import { clean, type Dimension, type Manners } from './types.ts';

/** Keys held while pulling. */
export interface Held {
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** Whose value a path is, where it is an entry of a list. */
function ownerOf(path: Path): string {
  const at = path.findIndex((key) => key === 'sections' || key === 'zones' || key === 'segments');
  const number = Number(path[at + 1]) + 1;
  if (at < 0 || Number.isNaN(number)) return '';
  if (path[at] === 'sections') return `${drawingText.section(number, '')}: `;
  return `${path[at] === 'zones' ? drawingText.zone(String(number)) : drawingText.piece(number, '').trim()}: `;
}

/** Why a value is refused, in one sentence with the limit; a neighbour that stands in the way is named. */
export function reasonText(issue: Issue, own: Path): string {
  const allowed = issue.allowed ? ` (${issue.allowed})` : '';
  const owner = issue.code === 'out-of-range' && pathKey(issue.path) !== pathKey(own) ? ownerOf(issue.path) : '';
  return lookText(`${owner}${issue.message.replace(/\.$/, '')}${allowed}.`, currentLook());
}

/** The name of the step in the history. */
export const stepName = ({ owner, spec }: Dimension): string => `${owner}: ${spec.label}`;

/** Whether the open revision may be changed; says so where not. */
export function mayChange(): boolean {
  const project = currentProject();
  const locked = project !== null && activeRevision(project).locked === true;
  if (locked) setDrawing({ notice: drawingText.locked });
  return project !== null && !locked;
}

/** Shows the field of a dimension in the description and its help below, without taking the cursor there. */
export function showField({ path, spec, entry, range }: Dimension): void {
  const part = partOf(path);
  // a derived value has another unit or range than the field that gives way
  const place = range ? {} : { path, spec };
  const helpFor = { key: pathKey(path), label: spec.label, help: spec.help, ...place };
  setView({ ...(part ? { part } : {}), helpFor });
  if (entry) setDrawing({ chosen: entry });
  pointAtField(path);
}

/** Begins a pull; false where the revision is locked. */
export function beginPull(dimension: Dimension, held: Held): boolean {
  const project = currentProject();
  if (!project || !mayChange()) return false;
  const manners = mannersNow(held);
  const limits = limitsOf(project, dimension, manners);
  const pull: Pull = { dimension, project, manners, limits, value: dimension.value, magnet: null, why: null };
  setDrawing({ pull, notice: null, typing: null });
  return true;
}

function mannersNow({ shiftKey }: Held): Manners {
  const { manners } = drawingStore.getState();
  return shiftKey ? opposite(manners) : manners;
}

/** The pull with Shift pressed or let go since it began. */
function withManners(pull: Pull, held: Held): Pull {
  const manners = mannersNow(held);
  if (manners.joined === pull.manners.joined && manners.keepLength === pull.manners.keepLength) return pull;
  return { ...pull, manners, limits: limitsOf(pull.project, pull.dimension, manners) };
}

/**
 * Moves a pull to where the hand is.
 * @param at mm on the grip's axis
 * @param perMm px per mm
 */
export function movePull(at: number, perMm: number, held: Held): void {
  const { pull: before } = drawingStore.getState();
  if (!before) return;
  const pull = withManners(before, held);
  const { dimension, limits } = pull;
  const raw = dimension.valueAt(at);
  const perPixel = (dimension.valueAt(at + 0.01) - raw) / 0.01 / perMm;
  const lengths = currentLook().system === 'inch' ? 'in' : 'mm';
  const unit = dimension.spec.unit === '°' ? '°' : lengths;
  const snapped = snap(raw, { unit, perPixel, fine: held.altKey, magnets: dimension.magnets });
  const kept = within(limits, snapped.value);
  const magnet = kept.value === snapped.value ? snapped.magnet : null;
  if (kept.value === before.value && pull === before && magnet === before.magnet) return;
  setDrawing({ pull: { ...pull, value: kept.value, magnet, why: kept.why && reasonText(kept.why, dimension.path) } });
}

/** Gives the pull up; nothing has changed. */
export const cancelPull = (): void => setDrawing({ pull: null });

/** Ends the pull as one named step. */
export function endPull(): void {
  const { pull } = drawingStore.getState();
  setDrawing({ pull: null });
  if (!pull || pull.value === pull.dimension.value) return;
  const { dimension, value, manners } = pull;
  applyEdit((project) => withChanges(project, dimension.changes(value, manners)), { label: stepName(dimension) });
}

/** The project as it would be if the pull ended now. */
export const pulled = ({ project, dimension, value, manners }: Pull): Project =>
  value === dimension.value ? project : withChanges(project, dimension.changes(value, manners));

/** Gives a dimension a value at once; repeats at the same dimension are one step. Answers why not, or null. */
export function setDimension(dimension: Dimension, value: number, key?: string): string | null {
  const project = currentProject();
  if (!project || !mayChange()) return drawingText.locked;
  const { manners } = drawingStore.getState();
  const kept = within(limitsOf(project, dimension, manners), value);
  if (kept.value !== value) return kept.why ? reasonText(kept.why, dimension.path) : drawingText.outside;
  if (value === dimension.value) return null;
  const step = { label: stepName(dimension), ...(key ? { key } : {}) };
  applyEdit((now) => withChanges(now, dimension.changes(value, manners)), step);
  return null;
}

/** Steps a dimension by keys; at a limit it stops there and says why. */
export function stepDimension(dimension: Dimension, by: number, held: Held): void {
  const project = currentProject();
  if (!project || !mayChange()) return;
  const wanted = clean(stepped(dimension.value, held.altKey ? by / 10 : by, dimension.spec, null, currentLook()));
  const kept = within(limitsOf(project, dimension, drawingStore.getState().manners), wanted);
  setDrawing({ notice: kept.why && reasonText(kept.why, dimension.path) });
  if (kept.value !== dimension.value) setDimension(dimension, kept.value, `drawing/${dimension.id}`);
}
