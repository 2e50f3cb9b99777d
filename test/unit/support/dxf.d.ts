/** What the tests use of the package named dxf. */

declare module 'dxf' {
  interface Vertex {
    readonly x: number;
    readonly y: number;
    readonly bulge?: number;
  }

  export function parseString(text: string): {
    readonly header: { readonly insUnits: number; readonly extMax: { readonly x: number; readonly y: number } };
    readonly tables: {
      readonly layers: Readonly<Record<string, { readonly name: string; readonly lineWeightEnum: string }>>;
    };
    readonly entities: readonly {
      readonly type: string;
      readonly layer: string;
      readonly closed: boolean;
      readonly vertices: readonly Vertex[];
    }[];
  };
}

declare module 'dxf/lib/util/createArcForLWPolyline.js' {
  /** Points on the arc between two vertices, both left out, at multiples of `resolution` degrees. */
  export default function createArcForLWPolyline(
    from: readonly [number, number],
    to: readonly [number, number],
    bulge: number,
    resolution: number,
  ): [number, number][];
}
