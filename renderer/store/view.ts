/** How things are looked at: camera, selection, theme, open parts. Never saved with the project, never undone. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { DecimalSign, UnitSystem } from '../../core/index.ts';
import type { FieldSpec } from '../fields/spec.ts';
import type { Path } from './path.ts';

/** Parts of the description, in the order in which a head is thought through. */
export const partIds = [
  'granulate',
  'screw',
  'tip',
  'barrel',
  'nozzle',
  'hopper',
  'drive',
  'running',
  'print',
] as const;
/** One part of the description. */
export type PartId = (typeof partIds)[number];

/** Stretch of the machine that the camera can be sent to. */
export type Place = 'whole' | 'feed' | 'screw' | 'outlet';

/** A position on the axis, m; with `near`, a point at radius r above it and how much around it is to be seen. */
export interface Position {
  readonly z: number;
  readonly near?: { readonly r: number; readonly around: number };
}

/** What the help line explains; place and spec where it is a number of the project. */
export interface HelpFor {
  readonly key: string;
  readonly label: string;
  readonly help: string;
  readonly path?: Path;
  readonly spec?: FieldSpec;
}

/** Ways to colour the window; `contrast` is light on black with strong lines. */
const themes = ['light', 'dark', 'contrast'] as const;
/** One of them. */
export type Theme = (typeof themes)[number];

/** What the view remembers. */
export interface ViewState {
  readonly part: PartId;
  readonly theme: Theme;
  /** how the head is seen: as a solid, or drawn with its dimensions */
  readonly seeing: 'solid' | 'drawing';
  readonly barrel: 'cutaway' | 'clear' | 'hidden';
  /** section plane through the machine: off, or its offset as a share of the barrel's outer radius, -1 to 1 */
  readonly section: number | null;
  readonly turning: boolean;
  /** a request to move the camera; the counter makes repeats count */
  readonly flight: { readonly to: Place | Position; readonly count: number };
  /** marked axial position, m, where it came from, and the number of the dead spot if it is one's */
  readonly mark: { readonly z: number; readonly label: string; readonly spot?: number } | null;
  /** axial position under the pointer in any plot or drawing, m */
  readonly hoverZ: number | null;
  /** what the help line explains: a field's path key, or null */
  readonly helpFor: HelpFor | null;
  /** whether lengths are shown in millimetres or inches; never stored in a project */
  readonly units: UnitSystem;
  /** decimal sign of this computer's language */
  readonly decimal: DecimalSign;
  readonly dialog:
    | 'none'
    | 'revisions'
    | 'compare'
    | 'bench'
    | 'fit'
    | 'colour'
    | 'doubt'
    | 'commands'
    | 'examples'
    | 'search'
    | 'handover'
    | 'templates'
    | 'new'
    | 'discard'
    | 'recovery'
    | 'conflict'
    | 'faults'
    | 'recent'
    | 'handbook'
    | 'evidence'
    | 'about';
  /** a sentence about the last save, open or fault; kind decides its colour and icon */
  readonly notice: { readonly kind: 'good' | 'bad'; readonly text: string } | null;
}

const themeKey = 'augerwright.theme';

function firstTheme(): Theme {
  const stored = globalThis.localStorage?.getItem(themeKey);
  const kept = themes.find((theme) => theme === stored);
  if (kept) return kept;
  const wants = (query: string) => globalThis.matchMedia?.(query).matches ?? false;
  if (wants('(prefers-contrast: more)')) return 'contrast';
  return wants('(prefers-color-scheme: dark)') ? 'dark' : 'light';
}

const unitsKey = 'augerwright.units';

const firstUnits = (): UnitSystem => (globalThis.localStorage?.getItem(unitsKey) === 'inch' ? 'inch' : 'metric');

/** The decimal sign of a language; the point where its numbers have another sign than point or comma. */
export function decimalOf(language: string | undefined): DecimalSign {
  const parts = new Intl.NumberFormat(language, { numberingSystem: 'latn' }).formatToParts(1.5);
  return parts.find(({ type }) => type === 'decimal')?.value === ',' ? ',' : '.';
}

/** Outside React: read with getState, change with setView. */
export const viewStore = createStore<ViewState>(() => ({
  part: 'screw',
  theme: firstTheme(),
  seeing: 'solid',
  units: firstUnits(),
  decimal: decimalOf(globalThis.navigator?.language),
  barrel: 'cutaway',
  section: null,
  turning: false,
  flight: { to: 'whole', count: 0 },
  mark: null,
  hoverZ: null,
  helpFor: null,
  dialog: 'none',
  notice: null,
}));

/** Picks a part of the view state inside a view. */
export const useView = <T>(pick: (state: ViewState) => T): T => useStore(viewStore, pick);

/** Changes some of the view. */
export const setView = (change: Partial<ViewState>): void => viewStore.setState(change);

/** Sends the camera to a place. */
export function flyTo(to: Place | Position): void {
  viewStore.setState(({ flight }) => ({ flight: { to, count: flight.count + 1 } }));
}

/** Marks an axial position (m) in every linked view and sends the camera there. */
export function showPosition(z: number, label: string): void {
  setView({ mark: { z, label } });
  flyTo({ z });
}

/** The theme after the present one. */
const nextTheme = (): Theme => themes[(themes.indexOf(viewStore.getState().theme) + 1) % themes.length] ?? 'light';

/** Goes on to the next theme and remembers it on this machine. */
export function toggleTheme(): void {
  const theme = nextTheme();
  globalThis.localStorage?.setItem(themeKey, theme);
  setView({ theme });
}

/** Shows lengths in millimetres or inches from now on, and remembers it on this machine. */
export function chooseUnits(units: UnitSystem): void {
  globalThis.localStorage?.setItem(unitsKey, units);
  setView({ units });
}
