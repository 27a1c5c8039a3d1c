/**
 * The least part of the boundary-representation kernel that is used, as its bindings name it. Lengths mm. Handles of
 * the kernel are opaque here; they live in its own memory until the kernel is dropped, which a writing worker does.
 */

/** Anything that lives in the kernel's memory. */
export interface KernelObject {
  delete(): void;
}

/** A point, mm. */
export interface KernelPoint extends KernelObject {
  SetCoord(x: number, y: number, z: number): void;
}

/** A body, shell, face, wire or edge. */
export interface KernelShape extends KernelObject {
  IsNull(): boolean;
  Reversed(): KernelShape;
}

interface Points extends KernelObject {
  SetValue(row: number, column: number, point: KernelPoint): void;
}

interface Numbers2 extends KernelObject {
  SetValue(row: number, column: number, value: number): void;
}

interface Row<T> extends KernelObject {
  SetValue(index: number, value: T): void;
}

interface Curve extends KernelObject {
  readonly curve?: never;
}

interface Surface extends KernelObject {
  readonly surface?: never;
}

interface Maker extends KernelObject {
  IsDone(): boolean;
  Shape(): KernelShape;
}

interface WireMaker extends Maker {
  Add(edge: KernelShape): void;
  Wire(): KernelShape;
}

interface FaceMaker extends Maker {
  Add(wire: KernelShape): void;
  Face(): KernelShape;
}

interface Sewing extends KernelObject {
  Add(shape: KernelShape): void;
  Perform(range: KernelObject): void;
  SewedShape(): KernelShape;
  NbFreeEdges(): number;
  NbMultipleEdges(): number;
}

interface Explorer extends KernelObject {
  More(): boolean;
  Next(): void;
  Current(): KernelShape;
}

interface StepWriter extends KernelObject {
  Transfer(shape: KernelShape, mode: unknown, whole: boolean, range: KernelObject): unknown;
  Write(path: string): unknown;
}

interface StepReader extends KernelObject {
  ReadFile(path: string): unknown;
  TransferRoots(range: KernelObject): number;
  OneShape(): KernelShape;
}

/** The kernel, set up. */
export interface BrepKernel {
  readonly gp_Pnt: new (x: number, y: number, z: number) => KernelPoint;
  readonly gp_Dir: new (x: number, y: number, z: number) => KernelObject;
  readonly gp_Ax1: new (at: KernelPoint, along: KernelObject) => KernelObject;
  readonly NCollection_Array1_gp_Pnt: new (low: number, high: number) => Row<KernelPoint>;
  readonly NCollection_Array2_gp_Pnt: new (a: number, b: number, c: number, d: number) => Points;
  readonly NCollection_Array2_double: new (a: number, b: number, c: number, d: number) => Numbers2;
  readonly NCollection_Array1_double: new (low: number, high: number) => Row<number>;
  readonly NCollection_Array1_int: new (low: number, high: number) => Row<number>;
  readonly Geom_BSplineCurve: new (
    poles: KernelObject,
    knots: KernelObject,
    multiplicities: KernelObject,
    degree: number,
  ) => Curve;
  readonly Geom_BSplineSurface: new (...parts: unknown[]) => Surface;
  readonly GC_MakeArcOfCircle: new (
    from: KernelPoint,
    by: KernelPoint,
    to: KernelPoint,
  ) => KernelObject & { Value(): Curve };
  readonly BRepBuilderAPI_MakeEdge: new (...parts: unknown[]) => Maker & { Edge(): KernelShape };
  readonly BRepBuilderAPI_MakeWire: new () => WireMaker;
  readonly BRepBuilderAPI_MakeFace: new (...parts: unknown[]) => FaceMaker;
  readonly BRepBuilderAPI_Sewing: new (tolerance: number) => Sewing;
  readonly BRepBuilderAPI_MakeSolid: new (shell: KernelShape) => Maker;
  readonly BRepPrimAPI_MakeRevol: new (shape: KernelShape, axis: KernelObject, angle: number, copy: boolean) => Maker;
  readonly BRepPrimAPI_MakeBox: new (from: KernelPoint, to: KernelPoint) => Maker;
  readonly BRepAlgoAPI_Cut: new (from: KernelShape, tool: KernelShape, range: KernelObject) => Maker;
  readonly TopoDS: { Shell(shape: KernelShape): KernelShape; Wire(shape: KernelShape): KernelShape };
  readonly TopExp_Explorer: new (shape: KernelShape, kind: unknown) => Explorer;
  readonly TopAbs_ShapeEnum: {
    readonly TopAbs_SOLID: unknown;
    readonly TopAbs_SHELL: unknown;
    readonly TopAbs_FACE: unknown;
  };
  readonly GProp_GProps: new () => KernelObject & { Mass(): number };
  readonly BRepGProp: {
    VolumeProperties(
      shape: KernelShape,
      into: KernelObject,
      accuracy: number,
      onlyClosed: boolean,
      skipShared: boolean,
    ): number;
  };
  readonly BRepCheck_Analyzer: new (shape: KernelShape, geometry: boolean) => KernelObject & { IsValid(): boolean };
  readonly STEPControl_Writer: new () => StepWriter;
  readonly STEPControl_Reader: new () => StepReader;
  readonly STEPControl_StepModelType: { readonly STEPControl_AsIs: unknown };
  readonly IFSelect_ReturnStatus: { readonly IFSelect_RetDone: unknown };
  readonly Interface_Static: { SetCVal(name: string, value: string): boolean };
  readonly Message_ProgressRange: new () => KernelObject;
  readonly FS: {
    readFile(path: string): Uint8Array<ArrayBuffer>;
    writeFile(path: string, bytes: Uint8Array): void;
    unlink(path: string): void;
  };
}
