/** Lines that enclose nothing, alone or beside areas in one shape. */

import { difference, intersection, offset, union } from '../geometry/clipper.ts';
import { clippedLines } from '../geometry/clip-lines.ts';
import { strokeMm, strokesAlong } from '../geometry/strokes.ts';
import type { Line, Region } from '../geometry/types.ts';
import type { YamlPath } from '../core/issue.ts';

/** A text of single strokes. */
export interface StrokeText {
  readonly path: YamlPath;
  readonly text: string;
  /** Of its small letters or, if it has none, of its capitals, in mm. */
  readonly height: number;
}

export interface Drawn {
  readonly region: Region;
  /** Lines in it that enclose nothing; `region` then includes what the beam burns along them. */
  readonly lines?: readonly Line[];
  /** The areas in it besides these lines; absent if there are none. */
  readonly filled?: Region;
  /** The texts among these lines. */
  readonly strokeTexts?: readonly StrokeText[];
}

/** What is drawn as an area, without the lines. */
export function areasIn({ region, lines, filled = [] }: Drawn): Region {
  return lines ? filled : region;
}

/** Areas and lines as one shape. */
export function drawnTogether(filled: Region, lines: readonly Line[], texts: readonly StrokeText[] = []): Drawn {
  if (lines.length === 0) return { region: filled };
  const burnt = strokesAlong(lines, strokeMm);
  const drawn = texts.length > 0 ? { lines, strokeTexts: texts } : { lines };
  return filled.length === 0 ? { region: burnt, ...drawn } : { region: union([filled, burnt]), ...drawn, filled };
}

/** All of it grown by half the width that the beam burns along lines. */
export function grownByBeam(shape: Drawn): Region {
  return union([offset(areasIn(shape), strokeMm / 2), strokesAlong(shape.lines ?? [], strokeMm)]);
}

/** All shapes together: lines stay lines, even where they cross an area. */
export function unionOf(shapes: readonly Drawn[]): Drawn {
  return drawnTogether(union(shapes.map(areasIn)), linesOf(shapes), strokeTextsOf(shapes));
}

/** The first shape less the others. Lines end at the others; what is taken off along a line is as wide as the beam. */
export function differenceOf([first, ...others]: readonly Drawn[]): Drawn {
  if (!first) return { region: [] };
  const taken = others.map(({ region }) => region);
  const lines = first.lines?.length ? clippedLines(first.lines, union(taken), 'outside') : [];
  return drawnTogether(difference(areasIn(first), taken), lines, strokeTextsOf([first]));
}

/** What the shapes share. Of lines, it is the stretches inside the areas of all others. */
export function intersectionOf(shapes: readonly Drawn[]): Drawn {
  const lines = shapes.flatMap(({ lines: own = [] }, index) => {
    const others = shapes.filter((_, other) => other !== index).map(areasIn);
    return others.reduce<readonly Line[]>((left, area) => clippedLines(left, area, 'inside'), own);
  });
  const [filled = [], ...rest] = shapes.map(areasIn);
  return drawnTogether(
    rest.reduce((shared, area) => intersection(shared, area), filled),
    lines,
    strokeTextsOf(shapes),
  );
}

export function strokeTextsOf(shapes: readonly Drawn[]): readonly StrokeText[] {
  return shapes.flatMap(({ strokeTexts = [] }) => strokeTexts);
}

function linesOf(shapes: readonly Drawn[]): readonly Line[] {
  return shapes.flatMap(({ lines = [] }) => lines);
}
