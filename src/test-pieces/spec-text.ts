/** What test pieces are written with: a plate, and shapes put on it by where their middles are. */

import { yamlText } from '../language/completion/snippets.ts';

/** Lengths in mm from the middle of the plate, right and up positive. */
export interface At {
  readonly right: number;
  readonly up: number;
}

/** The largest a test piece is, in mm: it goes on a scrap of 150 × 100 mm with some room for clamps. */
export const largest = { width: 140, height: 92 } as const;

/** The font of all labels: bundled, and bold enough to be read on any sheet. */
const labelFont = 'font: Nunito, weight: 800';

/** How high the figures of labels are, in mm; they are read on all sheets that a small laser engraves. */
export const labelHeightMm = 2.8;

/** Without a 0 that says nothing, and without a sign for nothing. */
export function figure(mm: number): string {
  return String(Number(mm.toFixed(3)) + 0);
}

export function nudge({ right, up }: At): string {
  const along = (grows: string, falls: string, mm: number) =>
    Math.abs(mm) < 5e-4 ? [] : [`${mm > 0 ? grows : falls}: ${figure(Math.abs(mm))} mm`];
  return `{${[...along('right', 'left', right), ...along('up', 'down', up)].join(', ') || 'right: 0 mm'}}`;
}

export function rectangle(width: number, height: number, at: At): string {
  return `{rectangle: [${figure(width)} mm, ${figure(height)} mm], nudge: ${nudge(at)}}`;
}

export function disc(diameter: number, at: At): string {
  return `{ellipse: ${figure(diameter)} mm, nudge: ${nudge(at)}}`;
}

/** In bold figures, its box centred there on a shape that is called `plate`. */
export function label(text: string, at: At, height = labelHeightMm): string {
  const size = `height: ${figure(height)} mm, place: {on: plate, by: box}, nudge: ${nudge(at)}`;
  return `{text: ${JSON.stringify(text)}, ${labelFont}, ${size}}`;
}

export interface PieceText {
  readonly title: string;
  /** What to do with it, as comment lines. */
  readonly comment: readonly string[];
  /** Lines that say what it is cut from. */
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
