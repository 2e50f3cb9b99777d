/** Reports what is left out of a drawing, counted, and in words. */

import { listed } from '../../core/names.ts';
import { counted } from '../../core/units.ts';
import type { Finding, YamlPath } from '../../core/issue.ts';
import type { Severity } from '../../core/issue-kinds.ts';
import { flattenLines } from '../../geometry/flatten.ts';
import type { CurvePath } from '../../geometry/curves.ts';
import { distance, ringArea } from '../../geometry/measure.ts';

/** Names of the kinds counted, in the order of the message: singular and plural. */
const nouns = {
  line: ['line without a fill', 'lines without a fill'],
  thickness: ['thick stroke', 'thick strokes'],
  text: ['text', 'texts'],
  picture: ['picture', 'pictures'],
  clip: ['clipping path', 'clipping paths'],
  mask: ['mask', 'masks'],
  pattern: ['pattern', 'patterns'],
  filter: ['filter', 'filters'],
  marker: ['marker on a line', 'markers on lines'],
  copy: ['copy of something that is not in the file', 'copies of something that is not in the file'],
} as const;

export type LeftOutKind = keyof typeof nouns;

/** Number of each; and of white shapes, and outlines without a fill among filled shapes, which count as filled like any other. */
export type LeftOut = Readonly<Partial<Record<LeftOutKind | 'white' | 'outline', number>>>;

/** No findings if the drawing is used as it is. */
export function leftOutFindings(file: string, leftOut: LeftOut, path: YamlPath): Finding[] {
  const counts = (Object.keys(nouns) as LeftOutKind[]).flatMap((kind) => {
    const count = leftOut[kind] ?? 0;
    return count === 0 ? [] : [`${count} ${nouns[kind][count === 1 ? 0 : 1]}`];
  });
  const { white = 0, outline = 0, ...missed } = leftOut;
  const total = Object.values(missed).reduce((sum, count) => sum + count, 0);
  const sentences = [
    ...(counts.length === 0
      ? []
      : [`${listed(counts)} in “${file}” ${total === 1 ? 'is' : 'are'} left out: only filled shapes are used.`]),
    ...(white === 0
      ? []
      : [
          `${white} white ${white === 1 ? 'shape' : 'shapes'} in “${file}” ${white === 1 ? 'counts' : 'count'} as filled: colours are ignored.`,
        ]),
  ];
  return [
    ...(sentences.length === 0 ? [] : [notDrawn('warning', path, sentences.join(' '))]),
    ...(outline === 0 ? [] : [notDrawn('info', path, outlineMessage(outline, file))]),
  ];
}

function notDrawn(severity: Severity, path: YamlPath, message: string): Finding {
  return { code: 'not-drawn', severity, path, message };
}

function outlineMessage(count: number, file: string): string {
  const what = `${counted(count, 'outline')} with a stroke but no fill in “${file}”`;
  return count === 1
    ? `${what} is made solid, like the filled shapes beside it. For a ring, turn the stroke into an outline in your drawing program.`
    : `${what} are made solid, like the filled shapes beside them. For rings, turn the strokes into outlines in your drawing program.`;
}

/** A line of a path encloses nothing if its area is below this, in mm². */
const nothingMm2 = 1e-6;

/**
 * Number of lines in a filled path that enclose nothing, such as the vein of a leaf; 0 if all do, as the shape is then
 * reported as empty.
 */
export function bareLinesIn(curves: CurvePath): number {
  const lines = flattenLines(curves).filter((line) => line.some((point) => distance(point, line[0]!) > 0));
  const bare = lines.filter((line) => Math.abs(ringArea(line)) < nothingMm2);
  return bare.length < lines.length ? bare.length : 0;
}

export function bareLinesFinding(bare: number, path: YamlPath): Finding {
  const [are, enclose, them] = bare === 1 ? ['is', 'encloses', 'it'] : ['are', 'enclose', 'them'];
  const message = `${counted(bare, 'line')} of this path ${are} left out: ${bare === 1 ? 'it' : 'they'} ${enclose} nothing. Another path with “lines: true” beside it draws ${them}.`;
  return { code: 'not-drawn', severity: 'warning', path, message };
}
