/** Older files brought to today's shape, one version at a time. */

import { asList, asNumber, asObject, isObject, type JsonObject } from './looseView.ts';
import { projectVersion } from './schema.ts';

/** Renames a speed in rev/s to one in rpm; a value that is no number is carried over for the schema to refuse. */
function toRpm(record: unknown, from: string, to: string): unknown {
  if (!isObject(record) || !Object.hasOwn(record, from)) return record;
  const { [from]: speed, ...rest } = record;
  return { ...rest, [to]: typeof speed === 'number' ? speed * 60 : speed };
}

/** Entry cone and land instead of three numbers. */
function toSegments(nozzle: unknown, boreMm: number): unknown {
  if (!isObject(nozzle) || !Object.hasOwn(nozzle, 'orificeDiameterMm')) return nozzle;
  const { entryAngleDeg, orificeDiameterMm, landLengthMm, ...rest } = nozzle;
  const half = (asNumber(entryAngleDeg) / 2) * (Math.PI / 180);
  const coneMm = (boreMm - asNumber(orificeDiameterMm)) / 2 / Math.tan(half);
  const lengthMm = Number(Math.max(0, coneMm).toFixed(4));
  return {
    segments: [
      { name: 'entry', lengthMm, startDiameterMm: boreMm, endDiameterMm: orificeDiameterMm },
      { name: 'land', lengthMm: landLengthMm, startDiameterMm: orificeDiameterMm, endDiameterMm: orificeDiameterMm },
    ],
    ...rest,
  };
}

/** Changes one key of a record only where it is there. */
const change = (record: JsonObject, key: string, how: (value: unknown) => unknown): JsonObject =>
  Object.hasOwn(record, key) ? { ...record, [key]: how(record[key]) } : record;

function revisionFrom0(item: unknown): unknown {
  if (!isObject(item)) return item;
  const boreMm = asNumber(asObject(item.barrel).boreDiameterMm);
  const withNozzle = change(item, 'nozzle', (nozzle) => toSegments(nozzle, boreMm));
  return change(withNozzle, 'drive', (drive) =>
    isObject(drive)
      ? change(drive, 'motorCurve', (curve) => asList(curve).map((p) => toRpm(p, 'speedRevPerS', 'speedRpm')))
      : drive,
  );
}

/** Version 0, before the first release: speeds in rev/s, nozzle as three numbers, no mark for invented examples. */
function from0(document: JsonObject): JsonObject {
  const start: JsonObject = { invented: false, ...document, version: 1 };
  return (
    [
      ['revisions', (list: unknown) => asList(list).map(revisionFrom0)],
      ['process', (p: unknown) => toRpm(p, 'screwSpeedRevPerS', 'screwSpeedRpm')],
      ['benchLog', (list: unknown) => asList(list).map((t) => toRpm(t, 'screwSpeedRevPerS', 'screwSpeedRpm'))],
    ] as const
  ).reduce<JsonObject>((record, [key, how]) => change(record, key, how), start);
}

/** Step from each old version to the next. */
const steps: readonly ((document: JsonObject) => JsonObject)[] = [from0];

/**
 * Brings an older document to the present version; the input is left as it was.
 * @param document parsed JSON whose `version` is a whole number from 0 to the present one
 * @returns the document in the present shape, to be checked by the schema
 */
export function migrate(document: JsonObject): JsonObject {
  const version = asNumber(document.version);
  return steps.slice(version, projectVersion).reduce((older, step) => step(older), document);
}
