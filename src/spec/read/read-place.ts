/** Reads the place of a shape: on another, or beside one. */

import type { YamlPath } from '../../core/issue.ts';
import type { Fit, Modifiers, ShapeNames, Target } from '../model/shape-model.ts';
import type { Problems } from './problems.ts';
import { didYouMean, nearestWords } from '../schema/suggest.ts';
import type { ShapeSpec } from '../types.generated.ts';

/** The side of the other shape, by the key that names it. */
const besides = { above: 'above', below: 'below', left_of: 'left of', right_of: 'right of' } as const;
const besideKeys = Object.keys(besides) as (keyof typeof besides)[];

/** Default gap between shapes that belong together, in mm (our own judgement). */
const usualGapMm = 2;

/** @param fit Of the same shape: at a side of what it is fitted into, it keeps that margin. */
export function readPlace(
  written: ShapeSpec['place'],
  path: YamlPath,
  problems: Problems,
  shapes: ShapeNames,
  fit?: Fit,
): Modifiers['place'] {
  if (written === undefined) return undefined;
  const spec = typeof written === 'string' ? { on: written } : written;
  const goals = (['on', ...besideKeys] as const).filter((key) => problems.wrote([...path, key]));
  const goal = typeof written === 'string' ? 'on' : goals[0];
  const fault = (message: string) => {
    problems.error('bad-value', path, message, { range: problems.source.keyRange(path) });
  };
  if (goal === undefined) fault('“place” needs one of on, above, below, left_of, right_of.');
  else if (goals.length > 1) fault(`“${goals[0]!}” and “${goals[1]!}” both say where it goes; keep one.`);
  const name = goal && spec[goal];
  if (name === undefined) return undefined;
  const by = spec.by ?? 'eye';
  const isOn = goal === 'on';
  for (const key of isOn ? (['gap'] as const) : (['at', 'margin'] as const)) {
    if (spec[key] === undefined) continue;
    const goesWith = isOn ? 'above, below, left_of or right_of' : 'on';
    problems.error('bad-value', [...path, key], `“${key}” goes with ${goesWith}.`, {
      range: problems.source.keyRange([...path, key]),
    });
  }
  const target = readTarget(name, spec.part, path, goal!, problems, shapes);
  if (isOn) {
    const asked = problems.length(spec.margin, [...path, 'margin'], 'distance', pastTheEdge) ?? 0;
    const isSame = fit !== undefined && target?.shape === fit.shape && target.part === fit.part;
    const margin = isSame ? Math.max(asked, fit.margin) : asked;
    return target && { ...target, at: spec.at ?? 'center', margin, by };
  }
  const gap = problems.length(spec.gap, [...path, 'gap'], 'signed');
  const usual = gap === undefined ? { isUsualGap: true as const } : {};
  return target && { ...target, at: besides[goal as keyof typeof besides], margin: gap ?? usualGapMm, by, ...usual };
}

/** For a margin that should take a shape out over the edge. */
const pastTheEdge = '; “nudge” moves it past the edge';

export function readTarget(
  name: string,
  part: string | undefined,
  path: YamlPath,
  key: string,
  problems: Problems,
  shapes: ShapeNames,
): Target | undefined {
  if (part === undefined) return shapes.placed(name, [...path, key]);
  const shape = shapes.byName(name, [...path, key]);
  if (!shape) return undefined;
  const members = shape.generator.kind === 'stack' ? shape.generator.shapes.map((member) => member.name!) : [];
  if (members.includes(part)) return { shape, part };
  const suggestions = nearestWords(part, members);
  const message =
    members.length === 0
      ? `“${name}” is not a stack and has no parts.`
      : `“${name}” has no part “${part}”.${didYouMean(suggestions)}`;
  problems.error('unknown-shape', [...path, 'part'], message, { suggestions });
  return undefined;
}
