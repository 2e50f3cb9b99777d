/** Reads several lines of lettering in one shape. */

import type { YamlPath } from '../../core/issue.ts';
import { isEmptyIn } from '../batch/batch.ts';
import type { Generator, TextLine, Shape, StrokesGenerator, TextGenerator } from '../model/shape-model.ts';
import type { Problems } from './problems.ts';
import { reportOutlines, reportWidths } from './read-strokes.ts';
import { reportEmpty, reportGaps } from './empty-cells.ts';
import { evenlyOf } from './evenly.ts';
import { readFont, readSpacing, reportRoom, sizesByFont } from './read-text.ts';
import { isSingleLine } from './single-line.ts';
import type { LineList, ShapeSpec } from '../types.generated.ts';

type LineSpec = Exclude<LineList[number], string>;

/** The lines with their keys; the schema check leaves holes in lists. */
function writtenLines(spec: ShapeSpec): (LineSpec | undefined)[] {
  const list: readonly (LineList[number] | undefined)[] = spec.lines as LineList;
  return [...list].map((line) => (typeof line === 'string' ? { text: line } : line));
}

export function readLines(spec: ShapeSpec, path: YamlPath, problems: Problems): Generator | undefined {
  const size = sizesByFont(spec, path, problems, ['x_height', 'cap_height']);
  const gap = problems.length(spec.gap, [...path, 'gap'], 'distance');
  const read = writtenLines(spec).map(
    (line, index) => line && readLine(line, spec, [...path, 'lines', index], problems),
  );
  const lines = read.flatMap((line) => (line === undefined || line === 'left out' ? [] : line));
  if (lines.length === 0) {
    if (read.length > 0 && read.every((line) => line === 'left out')) {
      problems.error('bad-value', [...path, 'lines'], 'All lines are optional, and all are empty here.');
    }
    return undefined;
  }
  tellRound(spec, path, problems);
  if (lines.some(({ shape }) => shape.generator.kind === 'strokes')) reportWidths(spec, path, problems);
  return {
    kind: 'lines',
    shapes: lines.map(({ shape }) => shape),
    lines: lines.map(({ share, align, arc }) => ({ share, align, ...(arc ? { arc } : {}) })),
    ...(gap === undefined ? {} : { gap }),
    ...(size === undefined ? {} : { size }),
  };
}

function readLine(
  line: LineSpec,
  whole: ShapeSpec,
  path: YamlPath,
  problems: Problems,
): (TextLine & { readonly shape: Shape }) | 'left out' | undefined {
  const written = line.text as string | undefined;
  if (written === undefined) return undefined;
  const at = [...path, 'text'];
  if (line.optional && isEmptyIn(written, problems.row?.row, problems.row?.batch.columns ?? [])) return 'left out';
  const text = problems.filled(written, at);
  if (text === undefined) return undefined;
  if (text.trim() === '') {
    reportEmpty(written, at, problems);
    return undefined;
  }
  reportGaps(written, problems);
  const { font = whole.font, weight = whole.weight, italic = whole.italic, features = whole.features } = line;
  const isOpen = isSingleLine(font);
  if (line.room_for) reportRoom(whole, [...path, 'room_for'], problems);
  if (isOpen) reportOutlines(line, path, problems);
  const generator: TextGenerator | StrokesGenerator = {
    ...(isOpen ? { kind: 'strokes' as const } : readFont({ font, weight, italic }, path, problems)),
    ...readSpacing({ letter_spacing: line.letter_spacing, ...(isOpen ? {} : { features }) }, path, problems),
    text,
    align: 'center',
    ...(whole.align === 'baseline' ? { evenly: evenlyOf(written, text, problems, line.room_for) } : {}),
  };
  const align = line.align ?? (whole.align === 'baseline' ? undefined : whole.align) ?? 'center';
  return {
    shape: { path: problems.inSpec(path), generator, modifiers: { corners: 'round' } },
    share: line.share ?? 1,
    align,
    ...(line.arc ? { arc: line.arc } : {}),
  };
}

/** What does not go with lines that run round. */
function tellRound(spec: ShapeSpec, path: YamlPath, problems: Problems): void {
  const say = (at: YamlPath, message: string) => {
    problems.error('bad-value', at, message, { range: problems.source.keyRange(at) });
  };
  const taken = new Set<string>();
  for (const [index, line] of writtenLines(spec).entries()) {
    if (!line?.arc) continue;
    const at = [...path, 'lines', index];
    if (taken.has(line.arc)) say([...at, 'arc'], `Another line has the ${line.arc} already.`);
    taken.add(line.arc);
    if (line.align !== undefined)
      say([...at, 'align'], 'A line on an arc has its middle at the top or at the bottom; leave out “align”.');
    const written = line.text as string | undefined;
    if (written !== undefined && /[\n\v\f\r\u0085\u2028\u2029]/.test(written.trim()))
      say([...at, 'text'], 'A line on an arc is a single line.');
  }
  if (taken.size > 0 && spec.fit && spec.place)
    say([...path, 'place'], 'Lines on arcs run along the edge of what they are fitted into; leave out “place”.');
}
