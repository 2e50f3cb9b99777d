/** Paths and colours as the content of a PDF page has them. */

import type { CurvePath } from '../../geometry/curves.ts';
import { channels } from '../../look/channels.ts';

/** See ISO 32000-1, table 59. */
export function pathOperators(path: CurvePath): string[] {
  let [x, y] = [0, 0];
  return path.map((command) => {
    if (command.type === 'Z') return 'h';
    const from = { x, y };
    ({ x, y } = command);
    switch (command.type) {
      case 'M':
        return `${pdfNumber(x)} ${pdfNumber(y)} m`;
      case 'L':
        return `${pdfNumber(x)} ${pdfNumber(y)} l`;
      case 'C':
        return `${pdfNumber(command.x1)} ${pdfNumber(command.y1)} ${pdfNumber(command.x2)} ${pdfNumber(command.y2)} ${pdfNumber(x)} ${pdfNumber(y)} c`;
      case 'Q': {
        // Quadratic to cubic: handles two thirds of the way to the control point.
        const toward = (end: number, handle: number) => pdfNumber(end + (2 / 3) * (handle - end));
        const { x1, y1 } = command;
        return `${toward(from.x, x1)} ${toward(from.y, y1)} ${toward(x, x1)} ${toward(y, y1)} ${pdfNumber(x)} ${pdfNumber(y)} c`;
      }
    }
  });
}

/** Rounds to 0.001, as in SVG files: shorter files, and no exponents, which the format does not allow. */
export function pdfNumber(value: number): number {
  return Math.round(value * 1e3) / 1e3 + 0;
}

/** Red, green and blue components, from 0 to 1. */
export function colourOperands(hex: string): string {
  return channels(hex)
    .map((value) => pdfNumber(value / 255))
    .join(' ');
}
