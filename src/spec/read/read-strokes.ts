/** Reads lettering of single strokes, and reports what does not go with lines. */

import type { YamlPath } from '../../core/issue.ts';
import type { StrokesGenerator } from '../model/shape-model.ts';
import type { Problems } from './problems.ts';
import { readWording } from './read-text.ts';
import type { ShapeSpec } from '../types.generated.ts';

/** Modifiers that need an area. */
const forAreas = ['tidy', 'grow', 'straps', 'bridges'] as const;

/** Keys of letters with outlines that single strokes do not have. */
const forOutlines = ['weight', 'italic', 'features', 'overlap'] as const;

/** Reports modifiers that do not apply to lines. */
export function reportWidths(spec: ShapeSpec, path: YamlPath, problems: Problems): void {
  for (const key of forAreas) {
    const band = key === 'grow' ? '; “around” makes a band of them' : '';
    reportKeys([key], `is for areas, and lines have no width${band}`, spec, path, problems);
  }
}

/** Reports keys that do not apply to letters of single strokes, of a shape or of one of its lines. */
export function reportOutlines(spec: Partial<ShapeSpec>, path: YamlPath, problems: Problems): void {
  reportKeys(forOutlines, 'does not go with single-line lettering', spec, path, problems);
}

export function readStrokes(spec: ShapeSpec, path: YamlPath, problems: Problems): StrokesGenerator | undefined {
  reportWidths(spec, path, problems);
  reportOutlines(spec, path, problems);
  const wording = readWording(spec, path, problems);
  return wording && { kind: 'strokes', ...wording };
}

function reportKeys(
  keys: readonly (keyof ShapeSpec)[],
  what: string,
  spec: Partial<ShapeSpec>,
  path: YamlPath,
  problems: Problems,
): void {
  for (const key of keys) {
    if (spec[key] === undefined) continue;
    const range = problems.source.keyRange([...path, key]);
    problems.error('bad-value', [...path, key], `“${key}” ${what}.`, { range });
  }
}
