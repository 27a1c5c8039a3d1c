/** Edits of a stored material's viscosity law as a whole. */

import { switchModel, switchShift } from '../material/switchModel.ts';
import type { Material } from './materialSchema.ts';

/** Name of a viscosity law in a file. */
export type RheologyModel = Material['rheology']['model'];
/** Name of a temperature shift in a file. */
export type ShiftKind = Extract<Material['rheology'], { model: 'newtonian' }>['shift']['kind'];

/** The material with another viscosity law, started as `switchModel` says. */
export const withRheologyModel = (material: Material, model: RheologyModel): Material => ({
  ...material,
  rheology: switchModel(material, model),
});

/** The material with another temperature shift, started as `switchShift` says. */
export const withShiftKind = (material: Material, kind: ShiftKind): Material => ({
  ...material,
  rheology: switchShift(material, kind),
});
