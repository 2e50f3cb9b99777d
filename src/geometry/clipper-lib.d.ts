/** Types for the parts of clipper-lib 6.4.2 that `clipper.ts` uses; the package ships none. */
declare module 'clipper-lib' {
  export interface IntPoint {
    X: number;
    Y: number;
  }
  export type Path = IntPoint[];
  export type Paths = Path[];

  export class Clipper {
    constructor(options?: number);
    AddPaths(paths: Paths, type: PolyType, closed: boolean): boolean;
    Execute(type: ClipType, solution: Paths, subject: PolyFillType, clip: PolyFillType): boolean;
    StrictlySimple: boolean;
    static CleanPolygons(paths: Paths, distance?: number): Paths;
    static Orientation(path: Path): boolean;
    static Area(path: Path): number;
  }
  export enum PolyType {
    ptSubject,
    ptClip,
  }
  export enum ClipType {
    ctIntersection,
    ctUnion,
    ctDifference,
    ctXor,
  }
  export enum PolyFillType {
    pftEvenOdd,
    pftNonZero,
    pftPositive,
    pftNegative,
  }
}
