/** Strength, bearing and walls in the machine-readable verdict. */

import type { DriveLoad } from '../prediction/types.ts';
import { orNull, rounded, shown } from './shown.ts';

type Maybe = number | null;

/** Strength as the headless command prints it. Null where unknown or nothing moves. */
export interface StrengthJson {
  readonly torqueParts_Nm: {
    readonly solids: Maybe;
    readonly film: Maybe;
    readonly channel: Maybe;
    readonly clearance: Maybe;
    readonly tip: Maybe;
  };
  readonly torquePullout_Nm: number;
  readonly motorMargin: Maybe;
  readonly fullSteps_per_s: number;
  readonly microsteps_per_s: number;
  /** every place that carries torque, from the shank on */
  readonly roots: readonly {
    readonly kind: string;
    readonly z_mm: number;
    readonly diameter_mm: number;
    readonly fillet_mm: Maybe;
    readonly factor: number;
    readonly running_MPa: number;
    readonly full_MPa: number;
    readonly margin: Maybe;
  }[];
  readonly weakest: { readonly kind: string; readonly z_mm: number; readonly margin: Maybe };
  readonly twistFull_deg: number;
  readonly thrustBlocked_N: number;
  readonly bucklingFree_N: number;
  readonly bucklingHeld_N: number;
  readonly bearing: {
    readonly staticMargin: Maybe;
    readonly staticMarginBlocked: Maybe;
    readonly life_h: Maybe;
  } | null;
  readonly walls: readonly { readonly part: string; readonly hoop_MPa: number; readonly equivalent_MPa: number }[];
  readonly mostPressure_MPa: number;
  readonly pressureLimit_MPa: Maybe;
}

const megapascal = (value: number) => shown(value, 'MPa');

const rootJson = (place: DriveLoad['roots'][number]): StrengthJson['roots'][number] => ({
  kind: place.kind,
  z_mm: shown(place.z, 'mm'),
  diameter_mm: shown(place.diameter, 'mm'),
  fillet_mm: orNull(place.fillet, (value) => shown(value, 'mm')),
  factor: rounded(place.factor),
  running_MPa: megapascal(place.running),
  full_MPa: megapascal(place.full),
  margin: orNull(place.margin),
});

/** Writes what strength adds to the drive's figures. */
export function strengthJson(drive: DriveLoad, flows: boolean): StrengthJson {
  const moving = (value: number | null): Maybe => (flows ? orNull(value) : null);
  const { parts, worstRoot, bearing } = drive;
  return {
    torqueParts_Nm: {
      solids: moving(parts.solids),
      film: moving(parts.film),
      channel: moving(parts.channel),
      clearance: moving(parts.clearance),
      tip: moving(parts.tip),
    },
    torquePullout_Nm: rounded(drive.torquePullout),
    motorMargin: moving(drive.motorMargin),
    fullSteps_per_s: rounded(drive.stepping.fullSteps),
    microsteps_per_s: rounded(drive.stepping.microsteps),
    roots: drive.roots.map(rootJson),
    weakest: { kind: worstRoot.kind, z_mm: shown(worstRoot.z, 'mm'), margin: orNull(worstRoot.margin) },
    twistFull_deg: shown(drive.twistFull, '°'),
    thrustBlocked_N: rounded(drive.thrustBlocked),
    bucklingFree_N: rounded(drive.bucklingFree),
    bucklingHeld_N: rounded(drive.bucklingHeld),
    bearing: bearing && {
      staticMargin: orNull(bearing.staticMargin),
      staticMarginBlocked: orNull(bearing.staticMarginBlocked),
      life_h: orNull(bearing.lifeTime, (value) => shown(value, 'h')),
    },
    walls: drive.walls.map(({ part, hoop, equivalent }) => ({
      part,
      hoop_MPa: megapascal(hoop),
      equivalent_MPa: megapascal(equivalent),
    })),
    mostPressure_MPa: megapascal(drive.mostPressure),
    pressureLimit_MPa: orNull(drive.pressureLimit, megapascal),
  };
}
