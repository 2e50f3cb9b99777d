/** How far a placed shape is off centre on its target, by each centring rule. */

import { isWithin } from '../../core/values.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { CentreRule } from '../../spec/shape-model.ts';
import { centreOf } from '../../tag/made-shape.ts';
import type { MadeShape } from '../../tag/made-shape.ts';
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
  const lines = rules.map(([rule, words]) => {
    return `- \`${rule}\`, ${words}: ${offsetsText(made, { region: target }, rule, tag)}`;
  });
  return `Off the middle:\n\n${lines.join('\n')}`;
}

function isAbout(key: string | number | undefined): boolean {
  return key === 'place' || key === 'fit';
}

function offsetsText(made: MadeShape, target: MadeShape, rule: CentreRule, { units }: Tag): string {
  const own = centreOf(made, rule);
  const targetCentre = centreOf(target, rule);
  if (!own || !targetCentre) return 'unknown';
  const [x, y] = [own.x - targetCentre.x, own.y - targetCentre.y];
  const offsetsInWords = [
    ...(Math.abs(x) < middleMm ? [] : [`${shortLength(Math.abs(x), units)} ${x < 0 ? 'left' : 'right'}`]),
    ...(Math.abs(y) < middleMm ? [] : [`${shortLength(Math.abs(y), units)} ${y < 0 ? 'down' : 'up'}`]),
  ];
  return offsetsInWords.length === 0 ? 'in the middle' : offsetsInWords.join(', ');
}
