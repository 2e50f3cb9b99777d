/** Reads sticks, which carry a tag in a pot or a cake. */

import type { YamlPath } from '../../core/issue.ts';
import { mm } from '../../core/figures.ts';
import type { ShapeNames, StickGenerator } from '../model/shape-model.ts';
import type { Problems } from './problems.ts';
import type { StickSpec } from '../types.generated.ts';

/** As wide as such sticks are bought; our own judgement, in mm. */
const usualWidthMm = 6;

/** Default length of the point in widths of the stick: goes in easily and does not break; our own judgement. */
const usualPoint = 2;

/** The stick; `undefined` if a length or the shape is not valid, which has been reported. */
export function readStick(
  spec: StickSpec,
  path: YamlPath,
  problems: Problems,
  shapes: ShapeNames,
): StickGenerator | undefined {
  const at = (key: keyof StickSpec) => [...path, key];
  const shape = shapes.byRef(spec.carries, at('carries'));
  const length = problems.length(spec.length, at('length'), 'size');
  const width = spec.width === undefined ? usualWidthMm : problems.length(spec.width, at('width'), 'size');
  const asked = problems.length(spec.point, at('point'), 'distance');
  const lap = problems.length(spec.lap, at('lap'), 'size') ?? width;
  if (!shape || length === undefined || width === undefined || lap === undefined) return undefined;
  if (asked !== undefined && asked > length) {
    problems.error('bad-length', at('point'), `The point cannot be longer than the stick, ${mm(length)}.`);
  }
  const point = asked ?? Math.min(usualPoint * width, length);
  return { kind: 'stick', shape, towards: spec.towards ?? 'down', length, width, point, lap };
}
