/** Reads lettering of single strokes, and reports what does not go with lines. */

import type { YamlPath } from '../core/issue.ts';
import type { StrokesGenerator } from './model.ts';
import type { Problems } from './problems.ts';
import { sizesByFont, reportEmpty } from './read-text.ts';
import type { ShapeSpec } from './types.generated.ts';

export { isSingleLine } from './single-line.ts';

/** Modifiers that need an area. */
const forAreas = ['tidy', 'grow', 'straps', 'bridges'] as const;

/** Keys of letters with outlines that single strokes do not have. */
const forOutlines = ['weight', 'italic', 'features', 'overlap', 'letter_spacing', 'arc'] as const;

/** Reports modifiers that do not apply to lines. */
export function reportWidths(spec: ShapeSpec, path: YamlPath, problems: Problems): void {
  reportKeys(forAreas, 'is for areas; lines have no width', spec, path, problems);
}

export function readStrokes(spec: ShapeSpec, path: YamlPath, problems: Problems): StrokesGenerator | undefined {
  const textPath = [...path, 'text'];
  const text = problems.filled(spec.text!, textPath);
  if (text?.trim() === '') reportEmpty(spec.text!, textPath, problems);
  reportWidths(spec, path, problems);
  reportKeys(forOutlines, 'does not go with single-line lettering', spec, path, problems);
  const size = sizesByFont(spec, path, problems);
  if (text === undefined) return undefined;
  return {
    kind: 'strokes',
    text,
    ...(size === undefined ? {} : { size }),
    ...(spec.line_height === undefined ? {} : { lineHeight: spec.line_height }),
    align: spec.align === 'left' || spec.align === 'right' ? spec.align : 'center',
  };
}

function reportKeys(
  keys: readonly (keyof ShapeSpec)[],
  what: string,
  spec: ShapeSpec,
  path: YamlPath,
  problems: Problems,
): void {
  for (const key of keys) {
    if (spec[key] === undefined) continue;
    const range = problems.source.keyRange([...path, key]);
    problems.error('bad-value', [...path, key], `“${key}” ${what}.`, { range });
  }
}
