/** SVG files as others read them: path data by svgpath, which turns arcs into curves, and curves by bezier-js. */

import { Bezier } from 'bezier-js';
import svgpath from 'svgpath';
import type { Point, Ring } from '../../../src/geometry/types.ts';

export interface ReadPath {
  readonly piece: string;
  readonly data: string;
  /** In mm, y down as in the file; open where the file leaves them open. */
  readonly outlines: readonly { readonly ring: Ring; readonly closed: boolean }[];
}

/** The paths of a group, in the order of the file. */
export function pathsOf(svg: string, group: string): ReadPath[] {
  const body = new RegExp(`<g id="${group}"[^]*?</g>`).exec(svg)?.[0] ?? '';
  return [...body.matchAll(/<path data-piece="([^"]*)"[^>]*? d="([^"]*)"/g)].map(([, piece, data]) => ({
    piece: piece!,
    data: data!,
    outlines: outlinesOf(data!),
  }));
}

export function ringsOf(paths: readonly ReadPath[]): Ring[] {
  return paths.flatMap(({ outlines }) => outlines.map(({ ring }) => ring));
}

export function outlinesOf(data: string): { ring: Ring; closed: boolean }[] {
  const outlines: { ring: Point[]; closed: boolean }[] = [];
  svgpath(data)
    .abs()
    .unarc()
    .unshort()
    .iterate(([command, ...numbers], _, x, y) => {
      const current = outlines.at(-1);
      if (command === 'M') outlines.push({ ring: [{ x: numbers[0]!, y: numbers[1]! }], closed: false });
      else if (command === 'L') current!.ring.push({ x: numbers[0]!, y: numbers[1]! });
      else if (command === 'C') {
        const curve = new Bezier(x, y, ...(numbers as [number, number, number, number, number, number]));
        const steps = 6 + Math.ceil(6 * Math.sqrt(curve.length()));
        for (let i = 1; i <= steps; i++) {
          const at = curve.get(i / steps);
          current!.ring.push({ x: at.x, y: at.y });
        }
      } else if (command === 'Z') current!.closed = true;
      else throw new Error(`The file has a “${command}”.`);
    });
  return outlines;
}
