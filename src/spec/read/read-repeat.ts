/** Reads repeated shapes: in rows, round a circle, along an outline. */

import type { Point } from '../../geometry/types.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { RepeatGenerator, ShapeNames } from '../model/shape-model.ts';
import type { Problems } from './problems.ts';
import type { RepeatSpec } from '../types.generated.ts';

/** More than any tag has, and few enough to draw at each keystroke. */
export const mostCopies = 1000;

const directions: Readonly<Record<'right' | 'left' | 'up' | 'down', Point>> = {
  right: { x: 1, y: 0 },
  left: { x: -1, y: 0 },
  up: { x: 0, y: 1 },
  down: { x: 0, y: -1 },
};

/** The repetition; `undefined` if something is missing or not valid, which has been reported. */
export function readRepeat(
  spec: RepeatSpec,
  path: YamlPath,
  problems: Problems,
  shapes: ShapeNames,
): RepeatGenerator | undefined {
  const at = (...keys: (string | number)[]) => [...path, ...keys];
  const shape = shapes.byRef(spec.shape, at('shape'));
  // Two figures are columns and rows.
  const { along = Array.isArray(spec.count) ? 'grid' : 'right' } = spec;
  const isRow = typeof along === 'string';
  if (spec.upright !== undefined && isRow) {
    const range = problems.source.keyRange(at('upright'));
    const message = '“upright” is for copies that go round a circle or an outline; in a row each is as it was drawn.';
    problems.error('bad-value', at('upright'), message, { range });
  }
  if (isRow) {
    const rows = along === 'grid' ? readGrid(spec, at, problems) : readRow(spec, directions[along], at, problems);
    return shape && rows && { kind: 'repeat', shapes: [shape], along: rows };
  }
  const round = readRound(spec, at, problems);
  if ('circle' in along) {
    const diameter = problems.length(along.circle, at('along', 'circle'), 'size');
    if (!shape || !round || diameter === undefined) return undefined;
    return { kind: 'repeat', shapes: [shape], along: { kind: 'circle', diameter, ...round } };
  }
  const outline = shapes.byRef(along.outline, at('along', 'outline'));
  const inset = problems.length(along.inset, at('along', 'inset'), 'signed') ?? 0;
  if (!shape || !outline || !round) return undefined;
  return { kind: 'repeat', shapes: [shape, outline], along: { kind: 'outline', inset, ...round } };
}

type At = (...keys: (string | number)[]) => YamlPath;
type RepeatRows = Extract<RepeatGenerator['along'], { kind: 'rows' }>;

/** Reads a single figure for count and spacing; pairs are for grids. */
function readOne(spec: RepeatSpec, at: At, problems: Problems): { count?: number; spacing?: number } | undefined {
  const { count, spacing } = spec;
  for (const [key, value] of Object.entries({ count, spacing })) {
    if (!Array.isArray(value)) continue;
    problems.error('bad-value', at(key), `“${key}” is one number here; two go with “along: grid”.`);
    return undefined;
  }
  const length = problems.length(spacing as number | string | undefined, at('spacing'), 'size');
  return {
    ...(count === undefined ? {} : { count: count as number }),
    ...(length === undefined ? {} : { spacing: length }),
  };
}

function readRow(spec: RepeatSpec, towards: Point, at: At, problems: Problems): RepeatRows | undefined {
  const missing = (['count', 'spacing'] as const).filter((key) => !problems.wrote(at(key)));
  if (missing.length > 0) {
    const message = `“repeat” in a row needs ${missing.map((key) => `“${key}”`).join(' and ')}.`;
    problems.error('missing-key', at(), message);
  }
  const one = readOne(spec, at, problems);
  if (one?.count === undefined || one.spacing === undefined) return undefined;
  const across = { x: towards.x * one.spacing, y: towards.y * one.spacing };
  return { kind: 'rows', columns: one.count, rows: 1, across, down: { x: 0, y: 0 } };
}

function readGrid({ count, spacing }: RepeatSpec, at: At, problems: Problems): RepeatRows | undefined {
  const missing = (['count', 'spacing'] as const).filter((key) => !problems.wrote(at(key)));
  if (missing.length > 0)
    problems.error('missing-key', at(), `A grid needs ${missing.map((key) => `“${key}”`).join(' and ')}.`);
  const [columns, rows] = Array.isArray(count) ? count : [count, count];
  const [across, down] = Array.isArray(spacing)
    ? spacing.map((each, index) => problems.length(each, at('spacing', index), 'size'))
    : Array<number | undefined>(2).fill(problems.length(spacing, at('spacing'), 'size'));
  if (!columns || !rows || !across || !down) return undefined;
  if (columns * rows > mostCopies) {
    problems.error('bad-value', at('count'), `These are ${columns * rows} copies; at most ${mostCopies} are made.`);
    return undefined;
  }
  return { kind: 'rows', columns, rows, across: { x: across, y: 0 }, down: { x: 0, y: -down } };
}

function readRound(spec: RepeatSpec, at: At, problems: Problems) {
  if (!problems.wrote(at('count')) && !problems.wrote(at('spacing')))
    problems.error('missing-key', at(), '“repeat” needs “count”, “spacing” or both.');
  const one = readOne(spec, at, problems);
  return one && (one.count ?? one.spacing) !== undefined ? { ...one, upright: spec.upright ?? false } : undefined;
}
