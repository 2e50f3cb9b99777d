/** Fix for `font: Nunito Bold`: the family alone, with its style under the proper keys. */

import type { Report } from '../engine/engine.ts';
import type { Issue, TextChange } from '../core/issue.ts';
import { styleInName } from '../text/style-names.ts';

export function styledFont({ source }: Report, { code, path, range }: Issue): TextChange[] {
  const written = source.text.slice(range.start, range.end).replace(/^(['"])(.*)\1$/, '$2');
  const styled = code === 'unknown-font' && path.at(-1) === 'font' ? styleInName(written) : undefined;
  if (!styled) return [];
  const shape = path.slice(0, -1);
  const { family, weight, italic } = styled;
  const edits = [
    { range, text: /[^\w ]/.test(family) ? JSON.stringify(family) : family },
    ...(weight === undefined ? [] : [source.setKey(shape, 'weight', String(weight))]),
    ...(italic ? [source.setKey(shape, 'italic', 'true')] : []),
  ].filter((edit) => edit !== undefined);
  const style = [...(weight === undefined ? [] : [`weight ${weight}`]), ...(italic ? ['italic'] : [])].join(', ');
  return [{ title: `Change to “${family}”, ${style}`, edits }];
}
