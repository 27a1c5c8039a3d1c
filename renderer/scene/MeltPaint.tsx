/** The melt in the opened channel, tip and nozzle, coloured by how long it stays. */

import { useEffect, useMemo } from 'react';
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DataTexture,
  DoubleSide,
  LinearFilter,
  RGBAFormat,
  SRGBColorSpace,
} from 'three';
import { type DwellSection, dwellSection, type Prediction } from '../../core/index.ts';
import type { Painted } from '../store/melt.ts';
import { timeColour, timePlace } from './meltScale.ts';

/** Colours of the scale as a strip, so that they are mixed along the scale and not across it. */
function timeStrip(): DataTexture {
  const count = 256;
  const pixels = new Uint8Array(4 * count);
  for (let i = 0; i < count; i++) {
    const { r, g, b } = new Color(timeColour(i / (count - 1))).getRGB({ r: 0, g: 0, b: 0 }, SRGBColorSpace);
    pixels.set([255 * r, 255 * g, 255 * b, 255], 4 * i);
  }
  const strip = new DataTexture(pixels, count, 1, RGBAFormat);
  strip.colorSpace = SRGBColorSpace;
  strip.magFilter = LinearFilter;
  strip.minFilter = LinearFilter;
  strip.needsUpdate = true;
  return strip;
}

/** Mean time in tip and nozzle, s. */
const headMean = ({ residence }: Prediction): number =>
  residence.parts.reduce((sum, { part, mean }) => (part === 'channel' ? sum : sum + mean), 0);

/** The section in its half-plane, as drawn in the machine's frame (m, axis z). */
function geometryOf(section: DwellSection, azimuth: number, multiples: ArrayLike<number>): BufferGeometry {
  const count = section.z.length;
  const positions = new Float32Array(3 * count);
  const places = new Float32Array(2 * count);
  const [x, y] = [Math.cos(azimuth), Math.sin(azimuth)];
  for (let k = 0; k < count; k++) {
    const r = section.r[k] ?? 0;
    positions.set([r * x, r * y, section.z[k] ?? 0], 3 * k);
    places.set([timePlace(multiples[k] ?? 0), 0.5], 2 * k);
  }
  const made = new BufferGeometry();
  made.setAttribute('position', new BufferAttribute(positions, 3));
  made.setAttribute('uv', new BufferAttribute(places, 2));
  made.setIndex(new BufferAttribute(section.triangles, 1));
  return made;
}

/** What is painted: a solved prediction, the half-planes, the quantity. */
export interface Paint {
  readonly prediction: Prediction;
  /** rad from +x towards +y in the machine's frame */
  readonly azimuths: readonly number[];
  readonly hand: 'right' | 'left';
  readonly painted: Painted;
  /** time that counts as 1 on the scale of ages, s; the prediction's own mean where left out */
  readonly meanTime?: number;
}

function usePainted({ prediction, azimuths, hand, painted, meanTime }: Paint): BufferGeometry[] {
  const list = azimuths.join();
  const made = useMemo(() => {
    const { fields, stations } = prediction;
    if (!fields) return [];
    return list.split(',').flatMap((text) => {
      const azimuth = Number(text);
      return dwellSection(stations, fields, azimuth, hand, headMean(prediction)).map((section) => {
        const multiples =
          painted === 'dwell' ? section.dwell : section.age.map((age) => age / (meanTime ?? fields.meanTime));
        return geometryOf(section, azimuth, multiples);
      });
    });
  }, [prediction, list, hand, painted, meanTime]);
  useEffect(
    () => () => {
      for (const geometry of made) geometry.dispose();
    },
    [made],
  );
  return made;
}

/** Triangles that are painted, for tests. */
const triangleCount = (geometries: readonly BufferGeometry[]): number =>
  geometries.reduce((sum, geometry) => sum + (geometry.index?.count ?? 0) / 3, 0);

/** The painted melt; faint where it was solved for an earlier description. */
export function MeltPaint(props: Paint & { readonly old: boolean; onPainted(triangles: number): void }) {
  const geometries = usePainted(props);
  const strip = useMemo(timeStrip, []);
  const { onPainted } = props;
  useEffect(() => () => strip.dispose(), [strip]);
  useEffect(() => {
    onPainted(triangleCount(geometries));
    return () => onPainted(0);
  }, [geometries, onPainted]);
  return geometries.map((geometry) => (
    <mesh key={geometry.uuid} geometry={geometry} renderOrder={1}>
      <meshBasicMaterial
        map={strip}
        side={DoubleSide}
        toneMapped={false}
        transparent={props.old}
        opacity={props.old ? 0.45 : 1}
      />
    </mesh>
  ));
}
