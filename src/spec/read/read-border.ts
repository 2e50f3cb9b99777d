/** Reads borders: one line along an outline, or two. */

import type { YamlPath } from '../../core/issue.ts';
import type { BorderGenerator, ShapeNames } from '../model/shape-model.ts';
import type { Problems } from './problems.ts';
import type { BorderSpec } from '../types.generated.ts';

/** Default inset, in mm: looks good on a tag the size of a hand; our own judgement. */
const usualInsetMm = 2;

/** Least distance to an opening, in mm: a nearer line looks like a slip of the beam; our own judgement. */
const leastClearMm = 1;

/** Least gap of a border that is double and says no more, in mm: less looks like one line; our own judgement. */
const leastGapMm = 1;

/** As much of the distance from openings stays where more would take a pointed corner off; what is asked for stays whole. Our own judgement. */
const yieldingShare = 0.75;

/** For a line that should run so far outside the shape. */
function outside(of: BorderSpec['of'], inset: BorderSpec['inset']): string {
  const by = String(inset).replace(/^\s*-\s*/, '');
  return typeof of === 'string' ? `; outside it is “of: {around: ${of}, by: ${by}}, inset: 0”` : '';
}

/** The border; `undefined` if a length or the shape is not valid, which has been reported. */
export function readBorder(
  written: BorderSpec | string,
  path: YamlPath,
  problems: Problems,
  shapes: ShapeNames,
): BorderGenerator | undefined {
  const at = (...keys: string[]) => [...path, ...keys];
  const isName = typeof written === 'string';
  const spec: BorderSpec = isName ? { of: written } : written;
  const shape = shapes.byRef(spec.of, isName ? path : at('of'));
  const inset = problems.length(spec.inset, at('inset'), 'distance', outside(spec.of, spec.inset)) ?? usualInsetMm;
  const width = spec.width === undefined ? 0 : problems.length(spec.width, at('width'), 'size');
  const asked = problems.length(spec.clear, at('clear'), 'distance');
  const clear = asked ?? Math.max(inset, leastClearMm);
  const leastClear = asked ?? Math.max(yieldingShare * clear, leastClearMm);
  const radius = problems.length(spec.radius, at('radius'), 'distance') ?? 0;
  const clip = problems.length(spec.clip, at('clip'), 'distance') ?? 0;
  if (spec.radius !== undefined && spec.clip !== undefined) {
    const range = problems.source.keyRange(at('clip'));
    problems.error('bad-value', at('clip'), 'Corners are rounded or cut off: give radius or clip.', { range });
  }
  const second = width === undefined ? undefined : readSecond(spec.double, width, at('double'), problems);
  if (!shape || width === undefined) return undefined;
  return {
    kind: 'border',
    shape,
    inset,
    lines: [{ from: 0, to: width }, ...(second ? [second] : [])],
    radius,
    clip,
    clear,
    leastClear,
  };
}

function readSecond(
  double: BorderSpec['double'],
  first: number,
  path: YamlPath,
  problems: Problems,
): BorderGenerator['lines'][number] | undefined {
  if (double === undefined) return undefined;
  if (double === true) return secondLine(Math.max(first, leastGapMm), first, first);
  const isGroup = typeof double === 'object';
  const gap = problems.length(isGroup ? double.gap : double, isGroup ? [...path, 'gap'] : path, 'size');
  const width = isGroup ? problems.length(double.width, [...path, 'width'], 'size') : first;
  if (isGroup && double.width !== undefined && first === 0) {
    const range = problems.source.keyRange([...path, 'width']);
    const message = 'The first line has no width, so the second has none either.';
    problems.error('bad-value', [...path, 'width'], message, { range });
  }
  return gap === undefined ? undefined : secondLine(gap, first, width ?? first);
}

function secondLine(gap: number, first: number, width: number): BorderGenerator['lines'][number] {
  return { from: first + gap, to: first + gap + width };
}
