/** Faces sewn to one body, and what is measured of a body. */

import type { BrepKernel, KernelShape } from './kernel.ts';

/** How far apart edges may lie that are one, mm: they agree to rounding, so this is far above, and far below any crest. */
const sewTolerance = 1e-5;

/** Relative accuracy asked of the adaptive integration; the plain one is off by 3e-4 on a long flight. */
const volumeAccuracy = 1e-6;

/** What bodies come to. */
export interface BodyFigures {
  /** of each solid in order, m³ */
  readonly volumes: readonly number[];
  readonly valid: boolean;
  readonly faces: number;
}

/** The parts of one kind in a shape. */
function partsOf(kernel: BrepKernel, shape: KernelShape, kind: unknown): KernelShape[] {
  const found: KernelShape[] = [];
  const explorer = new kernel.TopExp_Explorer(shape, kind);
  for (; explorer.More(); explorer.Next()) found.push(explorer.Current());
  explorer.delete();
  return found;
}

function signedVolume(kernel: BrepKernel, shape: KernelShape): number {
  const sums = new kernel.GProp_GProps();
  kernel.BRepGProp.VolumeProperties(shape, sums, volumeAccuracy, false, false);
  const volume = sums.Mass() * 1e-9;
  sums.delete();
  return volume;
}

/** Volumes, validity and count of faces of a shape in mm. */
export function measureBody(kernel: BrepKernel, shape: KernelShape): BodyFigures {
  const { TopAbs_SOLID, TopAbs_FACE } = kernel.TopAbs_ShapeEnum;
  const checker = new kernel.BRepCheck_Analyzer(shape, true);
  const valid = checker.IsValid();
  checker.delete();
  return {
    volumes: partsOf(kernel, shape, TopAbs_SOLID).map((solid) => signedVolume(kernel, solid)),
    valid,
    faces: partsOf(kernel, shape, TopAbs_FACE).length,
  };
}

/** The body that faces enclose, its outside outward; a sentence where they do not close to one shell. */
export function sewFaces(kernel: BrepKernel, faces: readonly KernelShape[]): KernelShape | string {
  const sewing = new kernel.BRepBuilderAPI_Sewing(sewTolerance);
  for (const face of faces) sewing.Add(face);
  sewing.Perform(new kernel.Message_ProgressRange());
  const [free, multiple] = [sewing.NbFreeEdges(), sewing.NbMultipleEdges()];
  const shells = partsOf(kernel, sewing.SewedShape(), kernel.TopAbs_ShapeEnum.TopAbs_SHELL);
  if (free > 0 || multiple > 0 || shells.length !== 1) {
    return `its faces do not close (${free} open edges, ${multiple} shared by more than two, ${shells.length} shells)`;
  }
  const body = new kernel.BRepBuilderAPI_MakeSolid(kernel.TopoDS.Shell(shells[0] as KernelShape)).Shape();
  return signedVolume(kernel, body) < 0 ? body.Reversed() : body;
}
