/** Lengths and sizes of sheets as they are typed into a question. */

import { longestMm, parseLength } from '../../core/length.ts';

/** `unit`: that of a bare number. */
export function withUnit(typed: string, unit = 'mm'): string {
  const text = typed.trim();
  return text === '' || /[a-z]$/.test(text) ? text : `${text} ${unit}`;
}

/** `most`: in mm. */
export function problemOfLength(text: string, most: number): string | undefined {
  const result = parseLength(text.trim(), 'mm');
  if ('problem' in result) return result.problem;
  return result.mm > 0 && result.mm <= most ? undefined : `Enter a length above 0, at most ${most} mm.`;
}

/** Width and height of a size such as `600 × 300 mm`: each with its unit, that of the last one if it has none. */
export function sidesOf(text: string): readonly string[] {
  const parts = text.split(/[x×,]/i);
  const unit = /[a-z]+(?=\s*$)/.exec(parts.at(-1)!)?.[0] ?? 'mm';
  return parts.map((side) => withUnit(side, unit));
}

export function problemOfSize(text: string): string | undefined {
  const sides = sidesOf(text);
  if (sides.length !== 2) return 'Enter width × height, such as 600 × 300 mm.';
  return sides.map((side) => problemOfLength(side, longestMm)).find((problem) => problem !== undefined);
}
