/** Reads codes: their text and size. */

import type { YamlPath } from '../../core/issue.ts';
import { reportEmpty, reportIncompleteCode } from './empty-cells.ts';
import type { CodeGenerator } from '../model/shape-model.ts';
import type { Problems } from './problems.ts';
import type { ShapeSpec } from '../types.generated.ts';

/** The code; `undefined` if it has no text or a length is not valid, which has been reported. */
export function readCode(spec: ShapeSpec, path: YamlPath, problems: Problems): CodeGenerator | undefined {
  const at = (key: keyof ShapeSpec) => [...path, key];
  const text = problems.filled(spec.code!, at('code'));
  if (text?.trim() === '') reportEmpty(spec.code!, at('code'), problems, 'The code says nothing.');
  else reportIncompleteCode(spec.code!, problems);
  const size = problems.length(spec.size, at('size'), 'size');
  const sizes = (['size', 'width', 'height', 'fit'] as const).filter((key) => problems.wrote(at(key)));
  if (sizes.length === 0) problems.error('missing-key', path, '“code” needs “size”, the side of its square.');
  if (sizes.includes('size') && sizes.length > 1) {
    const other = sizes.find((key) => key !== 'size')!;
    const message = `“${other}” sets the size too; leave one of the two out.`;
    problems.error('bad-value', at('size'), message, { range: problems.source.keyRange(at('size')) });
  }
  if (text === undefined) return undefined;
  return { kind: 'code', text, correction: spec.correction ?? 'medium', ...(size === undefined ? {} : { size }) };
}
