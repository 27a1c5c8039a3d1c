/** How numbers are shown in this window: the unit system chosen here, the decimal sign of this computer. */

import { useMemo } from 'react';
import { lookNumber, lookQuantity, type NumberLook, type Unit, type UnitSystem } from '../core/index.ts';
import { nameDraftUnits } from './store/drafts.ts';
import { chooseUnits, useView, viewStore } from './store/view.ts';

/** The look now, outside React. */
export function currentLook(): NumberLook {
  const { units, decimal } = viewStore.getState();
  return { system: units, decimal };
}

/** The look, followed by a view. */
export function useLook(): NumberLook {
  const system = useView((state) => state.units);
  const decimal = useView((state) => state.decimal);
  return useMemo(() => ({ system, decimal }), [system, decimal]);
}

/** A number as this window shows numbers; for views that are drawn anew when the look changes. */
export const formatNumber = (value: number, significantDigits: number): string =>
  lookNumber(value, significantDigits, currentLook());

/** An SI quantity as this window shows it; for views that are drawn anew when the look changes. */
export const formatQuantity = (si: number, unit: Unit, significantDigits = 4): string =>
  lookQuantity(si, unit, significantDigits, currentLook());

/** Shows lengths in millimetres or inches from now on; numbers that wait to be put right keep what they meant. */
export function showUnits(units: UnitSystem): void {
  nameDraftUnits();
  chooseUnits(units);
}

/** The other of millimetres and inches. */
export const otherUnits = (): UnitSystem => (viewStore.getState().units === 'inch' ? 'metric' : 'inch');
