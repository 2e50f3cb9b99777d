/** Building blocks for the text of test pieces: a plate, and shapes placed on it by their centres. */

import { yamlText } from '../language/completion/snippets.ts';

/** Offset from the centre of the plate in mm, positive to the right and up. */
export interface PlateOffset {
  readonly right: number;
  readonly up: number;
}

/** Largest test piece, in mm: fits a scrap of 150 × 100 mm with some room for clamps. */
export const largest = { width: 140, height: 92 } as const;

/** Font of all labels: bundled, and bold enough to read on any sheet. */
const labelFont = 'font: Nunito, weight: 800';

/** Height of the digits in labels, in mm; legible on any sheet that a small laser engraves. */
export const labelHeightMm = 2.8;

/** Prints a number without trailing zeros and without a negative zero. */
export function trimmedNumber(mm: number): string {
  return String(Number(mm.toFixed(3)) + 0);
}

export function nudge({ right, up }: PlateOffset): string {
  const along = (grows: string, falls: string, mm: number) =>
    Math.abs(mm) < 5e-4 ? [] : [`${mm > 0 ? grows : falls}: ${trimmedNumber(Math.abs(mm))} mm`];
  return `{${[...along('right', 'left', right), ...along('up', 'down', up)].join(', ') || 'right: 0 mm'}}`;
}

export function rectangle(width: number, height: number, at: PlateOffset): string {
  return `{rectangle: [${trimmedNumber(width)} mm, ${trimmedNumber(height)} mm], nudge: ${nudge(at)}}`;
}

export function disc(diameter: number, at: PlateOffset): string {
  return `{ellipse: ${trimmedNumber(diameter)} mm, nudge: ${nudge(at)}}`;
}

/** Bold text with its box centred at `at`, on a shape named `plate`. */
export function label(text: string, at: PlateOffset, height = labelHeightMm): string {
  const size = `height: ${trimmedNumber(height)} mm, place: {on: plate, by: box}, nudge: ${nudge(at)}`;
  return `{text: ${JSON.stringify(text)}, ${labelFont}, ${size}}`;
}

export interface PieceText {
  readonly title: string;
  /** Instructions, as comment lines. */
  readonly comment: readonly string[];
  /** Lines that state the stock. */
  readonly head: readonly string[];
  readonly output?: string;
  readonly shapes: Readonly<Record<string, string>>;
  /** Lines of the piece, such as `body: [plate]`. */
  readonly piece: readonly string[];
}

export function specText({ title, comment, head, output, shapes, piece }: PieceText): string {
  return [
    ...comment.map((line) => `# ${line}`),
    'tagwright: 1',
    `title: ${yamlText(title)}`,
    ...head,
    ...(output === undefined ? [] : [`output: ${output}`]),
    '',
    'shapes:',
    ...Object.entries(shapes).map(([name, text]) => `  ${name}: ${text}`),
    '',
    'pieces:',
    '  plate:',
    ...piece.map((line) => `    ${line}`),
    '',
  ].join('\n');
}
