/** The one door into core: other folders import from here and nowhere deeper. */

export * from './result.ts';
export { buildStations } from './geometry/stations.ts';
export type { AxialOutline, GeometrySummary, MeshOptions, SolidMesh, Stations } from './geometry/types.ts';
