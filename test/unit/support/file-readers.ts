/**
 * DXF and PDF files as others read them: dxf-parser, and the package named dxf; pdfjs-dist. Where they leave curves to us, those
 * are walked by their equations.
 */

import { createRequire } from 'node:module';
import { Bezier } from 'bezier-js';
import { parseString } from 'dxf';
import DxfParser from 'dxf-parser';
import type { Point, Ring } from '../../../src/geometry/types.ts';
import { getDocument, OPS } from './pdfjs.ts';

/** Required, as loaders disagree on what an import of it is. */
const { default: createArcForLWPolyline } = createRequire(import.meta.url)(
  'dxf/lib/util/createArcForLWPolyline.js',
) as typeof import('dxf/lib/util/createArcForLWPolyline.js');

export interface Outline {
  readonly ring: Ring;
  readonly closed: boolean;
}

export interface ReadDxf {
  readonly version: string;
  /** $INSUNITS: 4 is millimetres. */
  readonly units: number;
  /** In the order of the file. */
  readonly outlines: readonly (Outline & { readonly layer: string })[];
  /** #rrggbb. */
  readonly layers: Readonly<Record<string, { readonly color: string }>>;
}

interface Polyline {
  readonly type: string;
  readonly layer: string;
  readonly shape: boolean;
  readonly vertices: readonly { readonly x: number; readonly y: number; readonly bulge?: number }[];
}

export function readDxf(bytes: Uint8Array): ReadDxf {
  const file = new DxfParser().parseSync(dxfText(bytes))!;
  const entities = file.entities as unknown as Polyline[];
  return {
    version: file.header['$ACADVER'] as unknown as string,
    units: file.header['$INSUNITS'] as unknown as number,
    layers: Object.fromEntries(
      Object.values(file.tables.layer.layers).map(({ name, color }) => [
        named(name),
        { color: `#${color.toString(16).padStart(6, '0')}` },
      ]),
    ),
    outlines: entities.map((entity) => {
      if (entity.type !== 'LWPOLYLINE') throw new Error(`There is a ${entity.type}.`);
      return { layer: named(entity.layer), closed: entity.shape, ring: bulged(entity) };
    }),
  };
}

/** By the code page that the file says it is written in; from A0 on, that is Latin-1, and none is written of what is before. */
export function dxfText(bytes: Uint8Array): string {
  const text = Buffer.from(bytes).toString('latin1');
  if (!/\n\$DWGCODEPAGE\n3\nANSI_1252\n/.test(text)) throw new Error('The file is in another code page.');
  if (/[^\n\x20-\x7e\xa0-\xff]/.test(text)) throw new Error('The file holds a control character.');
  return text;
}

/** The format's reference: a backslash, U+ and four hexadecimal figures for a character that the code page lacks. */
function named(name: string): string {
  return name.replace(/\\U\+([\dA-F]{4})/g, (_, unit: string) => String.fromCharCode(parseInt(unit, 16)));
}

export interface ReadDxfToo {
  readonly units: number;
  /** $EXTMAX. */
  readonly extent: Point;
  readonly outlines: ReadDxf['outlines'];
  /** Group 370, in hundredths of a mm, by layer. */
  readonly lineWeights: Readonly<Record<string, number>>;
}

/** By the package named dxf, which also walks the arcs, in steps of so many degrees. */
export function readDxfToo(bytes: Uint8Array, degrees = 0.5): ReadDxfToo {
  const { header, tables, entities } = parseString(dxfText(bytes));
  return {
    units: header.insUnits,
    extent: header.extMax,
    lineWeights: Object.fromEntries(
      Object.values(tables.layers).map(({ name, lineWeightEnum }) => [named(name), Number(lineWeightEnum)]),
    ),
    outlines: entities.map(({ type, layer, closed, vertices }) => {
      if (type !== 'LWPOLYLINE') throw new Error(`There is a ${type}.`);
      const ring = vertices.flatMap((from, i): Point[] => {
        const to = vertices[i + 1] ?? (closed ? vertices[0]! : undefined);
        if (!to || !from.bulge) return [from];
        const between = createArcForLWPolyline([from.x, from.y], [to.x, to.y], from.bulge, degrees);
        return [from, ...between.map(([x, y]) => ({ x, y }))];
      });
      return { layer: named(layer), closed, ring };
    }),
  };
}

/** The format's reference: the bulge is tan(θ/4) of the arc to the next vertex, counter-clockwise positive. */
function bulged({ vertices, shape }: Polyline): Ring {
  const points: Point[] = [];
  vertices.forEach((from, i) => {
    points.push({ x: from.x, y: from.y });
    const to = vertices[i + 1] ?? (shape ? vertices[0]! : undefined);
    if (!to || !from.bulge) return;
    const angle = 4 * Math.atan(from.bulge);
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const radius = Math.hypot(dx, dy) / (2 * Math.sin(angle / 2));
    const away = radius * Math.cos(angle / 2);
    const chord = Math.hypot(dx, dy);
    const [cx, cy] = [(from.x + to.x) / 2 - (away * dy) / chord, (from.y + to.y) / 2 + (away * dx) / chord];
    const first = Math.atan2(from.y - cy, from.x - cx);
    const steps = Math.ceil(Math.abs(angle) / (2 * Math.acos(Math.max(0, 1 - 0.0005 / Math.abs(radius)))));
    for (let k = 1; k < steps; k++) {
      const at = first + (k / steps) * angle;
      points.push({ x: cx + Math.abs(radius) * Math.cos(at), y: cy + Math.abs(radius) * Math.sin(at) });
    }
  });
  return points;
}

interface Painted extends Outline {
  readonly color: string;
  /** In mm, of what is drawn as a line. */
  readonly lineWidth?: number;
}

export interface ReadPage {
  /** In points, 1/72 in. */
  readonly width: number;
  readonly height: number;
  readonly text: string;
}

export interface ReadPdf {
  readonly title: string;
  readonly subject: string;
  readonly pages: readonly ReadPage[];
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const info = (await file.getMetadata()).info as { readonly Title: string; readonly Subject: string };
  const pages: ReadPage[] = [];
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number);
    const [, , width, height] = page.view as [number, number, number, number];
    const { items } = await page.getTextContent();
    pages.push({ width, height, text: items.map((item) => ('str' in item ? item.str : '')).join(' ') });
  }
  await file.destroy();
  return { title: info.Title, subject: info.Subject, pages };
}

/** What is painted on a page, in mm, y up, in its order; it takes much longer to read than the words. `number`: from 1. */
export async function outlinesInPdf(bytes: Uint8Array, number: number): Promise<readonly Painted[]> {
  const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const { fnArray, argsArray } = await (await file.getPage(number)).getOperatorList();
  await file.destroy();
  return outlinesOf(fnArray, argsArray as unknown[][]);
}

function outlinesOf(operators: readonly number[], operands: readonly unknown[][]): Painted[] {
  const found: Painted[] = [];
  const perPoint = 25.4 / 72;
  let state: Graphics = { map: [perPoint, 0, 0, perPoint, 0, 0], fill: '#000000', stroke: '#000000', lineWidth: 1 };
  const saved: Graphics[] = [];
  // A path that only bounds what comes after it ends without being painted.
  operators.forEach((operator, i) => {
    const given = operands[i] ?? [];
    if (operator === OPS.save || operator === OPS.paintFormXObjectBegin) saved.push(state);
    else if (operator === OPS.restore || operator === OPS.paintFormXObjectEnd) state = saved.pop()!;
    if (operator === OPS.transform) state = { ...state, map: concatenated(state.map, given as number[]) };
    else if (operator === OPS.paintFormXObjectBegin && given[0])
      state = { ...state, map: concatenated(state.map, given[0] as number[]) };
    else if (operator === OPS.setLineWidth) state = { ...state, lineWidth: (given[0] as number) * state.map[0]! };
    else if (operator === OPS.setFillRGBColor) state = { ...state, fill: given[0] as string };
    else if (operator === OPS.setStrokeRGBColor) state = { ...state, stroke: given[0] as string };
    else if (operator === OPS.constructPath && given[0] !== OPS.endPath) {
      const { fill, stroke, lineWidth } = state;
      const look = given[0] === OPS.stroke ? { color: stroke, lineWidth } : { color: fill };
      const [numbers] = given[1] as [ArrayLike<number>];
      for (const outline of walkedPath(numbers, state.map)) found.push({ ...outline, ...look });
    }
  });
  return found;
}

/** State of the page's graphics. `map`: from the operands to mm, as a b c d e f. */
interface Graphics {
  readonly map: readonly number[];
  readonly fill: string;
  readonly stroke: string;
  readonly lineWidth: number;
}

function concatenated([a, b, c, d, e, f]: readonly number[], inner: readonly number[]): number[] {
  const [ia, ib, ic, id, ie, jf] = inner as [number, number, number, number, number, number];
  return [
    ...[a! * ia + c! * ib, b! * ia + d! * ib, a! * ic + c! * id, b! * ic + d! * id],
    ...[a! * ie + c! * jf + e!, b! * ie + d! * jf + f!],
  ];
}

/** pdfjs writes a path as numbers: 0 move, 1 line, 2 curve, 4 close, each followed by its coordinates. */
function walkedPath(numbers: ArrayLike<number>, [a, b, c, d, e, f]: readonly number[]): Outline[] {
  const outlines: { ring: Point[]; closed: boolean }[] = [];
  let i = 0;
  const point = (): Point => {
    const [x, y] = [numbers[i++]!, numbers[i++]!];
    return { x: a! * x + c! * y + e!, y: b! * x + d! * y + f! };
  };
  while (i < numbers.length) {
    const command = numbers[i++]!;
    const current = outlines.at(-1);
    if (command === 0) outlines.push({ ring: [point()], closed: false });
    else if (command === 1) current!.ring.push(point());
    else if (command === 2) {
      const corners = [current!.ring.at(-1)!, point(), point(), point()].map(({ x, y }) => ({ x, y }));
      const curve = new Bezier(corners);
      // From corner to corner it is further than along the curve.
      const length = corners
        .slice(1)
        .reduce((sum, { x, y }, k) => sum + Math.hypot(x - corners[k]!.x, y - corners[k]!.y), 0);
      const steps = 6 + Math.ceil(6 * Math.sqrt(length));
      for (let k = 1; k <= steps; k++) {
        const { x, y } = curve.get(k / steps);
        current!.ring.push({ x, y });
      }
    } else if (command === 4) current!.closed = true;
    else throw new Error(`The page has a path command ${command}.`);
  }
  return outlines;
}
