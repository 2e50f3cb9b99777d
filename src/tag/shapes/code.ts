/** QR codes (ISO/IEC 18004). The only file that imports qr. */

import encodeQR from 'qr';
import { applyTo, applyToVector } from '../../geometry/affine.ts';
import { difference, normalise } from '../../geometry/clipper.ts';
import { ringArea } from '../../geometry/measure.ts';
import type { Affine, Point, Region, Ring } from '../../geometry/types.ts';
import type { CodeGenerator } from '../../spec/model/shape-model.ts';
import type { AskedWidth } from '../asked-width.ts';
import { bridgesOf } from './code-bridges.ts';

/** Width of the quiet zone round a code, in modules: ISO/IEC 18004:2024, 5.3.8, “quiet zone”. */
export const clearModules = 4;

/** Rows from the top, each from the left; true is dark. */
type Matrix = readonly (readonly boolean[])[];

/** A code at its place. */
export interface Code {
  /** The encoded text. */
  readonly text: string;
  readonly matrix: Matrix;
  /** Its lower left corner, and the vectors along its bottom and left sides. */
  readonly corner: Point;
  readonly right: Point;
  readonly up: Point;
  /** Whether its dark modules are left bare and the area round them is engraved or cut. */
  readonly isLight: boolean;
  /** Width of the bridges between modules that are cut through, in mm. */
  readonly bridges?: number;
}

/** The library's message for a text too long for any code. */
const tooLong = 'Capacity overflow';

/** @throws whatever the library throws for reasons other than the length, which would be our own fault. */
export function encode({
  text,
  correction,
}: CodeGenerator): { readonly matrix: Matrix } | { readonly problem: string } {
  try {
    const framed = encodeQR(text.toWellFormed(), 'raw', { ecc: correction, border: 1 });
    return { matrix: framed.slice(1, -1).map((row) => row.slice(1, -1)) };
  } catch (error) {
    if (!(error instanceof Error) || error.message !== tooLong) throw error;
    return { problem: 'This is too long for a code; shorten it, or choose a lower correction.' };
  }
}

/** The code with its middle on the origin; a module is 1 mm if no size is given. */
export function codeOf(matrix: Matrix, { text, size }: CodeGenerator): { region: Region; codes: Code[] } {
  const side = size ?? matrix.length;
  const code: Code = {
    text,
    matrix,
    corner: { x: -side / 2, y: -side / 2 },
    right: { x: side, y: 0 },
    up: { x: 0, y: side },
    isLight: false,
  };
  return { region: normalise(moduleBars(code)), codes: [code] };
}

export function mapCode(code: Code, affine: Affine): Code {
  return {
    ...code,
    corner: applyTo(code.corner, affine),
    right: applyToVector(code.right, affine),
    up: applyToVector(code.up, affine),
  };
}

/** Side of a module in mm; the shorter one if it is not square. */
export function moduleOf({ matrix, right, up }: Code): number {
  return Math.min(Math.hypot(right.x, right.y), Math.hypot(up.x, up.y)) / matrix.length;
}

/** Width in mm of the quiet zone that a shape needs round it: 0 without a code. */
export function quietZoneOf({ codes = [] }: { readonly codes?: readonly Code[] }): number {
  return Math.max(0, ...codes.map((code) => clearModules * moduleOf(code)));
}

/** The square of a code, with a quiet zone of `clear` modules. */
export function squareOf(code: Code, clear = 0): Ring {
  const count = code.matrix.length;
  return cell(code, -clear, -clear, count + clear, count + clear);
}

/** The code as it is cut through, with bridges of `width` mm to all light parts. Empty if modules are no wider. */
export function withBridges<T extends { readonly region: Region; readonly asked?: readonly AskedWidth[] }>(
  made: T,
  code: Code,
  width: number,
): T & { codes: Code[]; asked: AskedWidth[] } {
  const share = width / moduleOf(code);
  const codes = [{ ...code, bridges: width }];
  if (share >= 1) return { ...made, region: [], codes, asked: [] };
  const count = code.matrix.length;
  const bars = bridgesOf(code.matrix, share).map((ring) =>
    upright(ring.map(([x, y]) => pointAt(code, x / count, 1 - y / count))),
  );
  const asked = bars.map((bar) => ({ region: [bar], width }));
  return { ...made, region: difference(made.region, [bars]), codes, asked: [...(made.asked ?? []), ...asked] };
}

/** All in the same direction, as bars that meet would otherwise cancel out where they overlap. */
function upright(ring: Ring): Ring {
  return ringArea(ring) < 0 ? ring.toReversed() : ring;
}

/** One bar for each run of dark modules in a row. */
function moduleBars(code: Code): Ring[] {
  const count = code.matrix.length;
  return code.matrix.flatMap((row, y) =>
    row.flatMap((isDark, from) => {
      if (!isDark || row[from - 1]) return [];
      const end = row.indexOf(false, from);
      return [cell(code, from, count - 1 - y, end < 0 ? count : end, count - y)];
    }),
  );
}

/** A rectangle given in modules from the lower left corner. */
function cell(code: Code, x1: number, y1: number, x2: number, y2: number): Ring {
  const at = (x: number, y: number): Point => pointAt(code, x / code.matrix.length, y / code.matrix.length);
  return [at(x1, y1), at(x2, y1), at(x2, y2), at(x1, y2)];
}

function pointAt({ corner, right, up }: Code, x: number, y: number): Point {
  return { x: corner.x + x * right.x + y * up.x, y: corner.y + x * right.y + y * up.y };
}
