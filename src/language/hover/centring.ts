/** How far a placed shape is off centre on its target, by each centring rule. */

import { isWithin } from '../../core/values.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { CentreRule } from '../../spec/model/shape-model.ts';
import { placingMove } from '../../tag/shapes/place.ts';
import type { Tag } from '../../tag/tag.ts';
import { shortLength } from '../../core/units.ts';

const rules: readonly (readonly [CentreRule, string])[] = [
  ['box', 'by the ruler'],
  ['mass', 'by weight'],
  ['eye', 'to the eye'],
  ['x-height', 'by the small letters'],
];

/** Within this distance, in mm, a shape counts as centred. */
const middleMm = 0.01;

/** A Markdown list with one rule on each line; empty if no shape is placed at that path. */
export function centringDocs(path: YamlPath, tag: Tag): string {
  const shape = [...tag.made.keys()].find(
    ({ path: own, modifiers }) =>
      (modifiers.place ?? modifiers.fit) && isWithin(path, own) && isAbout(path[own.length]),
  );
  const placeOrFit = shape && (shape.modifiers.place ?? shape.modifiers.fit);
  const made = shape && tag.made.get(shape);
  const on = placeOrFit && tag.made.get(placeOrFit.shape);
  const target = placeOrFit?.part === undefined ? on?.region : on?.parts?.get(placeOrFit.part);
  if (!made || !target || !boundsOf(target)) return '';
  const isFitted = shape.modifiers.fit !== undefined;
  const lines = rules.map(([rule, words]) => {
    const { e, f } = placingMove(made, { region: target }, 'center', 0, rule, isFitted);
    return `- \`${rule}\`, ${words}: ${offsetsText(-e, -f, tag)}`;
  });
  return `Off the middle:\n\n${lines.join('\n')}`;
}

function isAbout(key: string | number | undefined): boolean {
  return key === 'place' || key === 'fit';
}

function offsetsText(x: number, y: number, { units }: Tag): string {
  const offsetsInWords = [
    ...(Math.abs(x) < middleMm ? [] : [`${shortLength(Math.abs(x), units)} ${x < 0 ? 'left' : 'right'}`]),
    ...(Math.abs(y) < middleMm ? [] : [`${shortLength(Math.abs(y), units)} ${y < 0 ? 'down' : 'up'}`]),
  ];
  return offsetsInWords.length === 0 ? 'in the middle' : offsetsInWords.join(', ');
}
