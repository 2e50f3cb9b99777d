/** Openings that the tie does not go through. */

import { tightestOpening } from '../spec/model/tie.ts';
import type { Finding } from '../core/issue.ts';
import type { Tie } from '../spec/model/workshop-model.ts';
import type { Piece, PlacedHanger } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { mm } from '../core/figures.ts';
import { oncePerRow } from './measures/once-per-row.ts';
import { slackOf } from './measures/slack.ts';
import { measuredOn } from '../spec/model/measured-values.ts';

export const holeTooSmall: Check = ({ tie, pieces }) =>
  tie ? pieces.flatMap((piece) => oncePerRow(piece, (hanger) => tooSmall(hanger, piece, tie))) : [];

function tooSmall(hanger: PlacedHanger, { id }: Piece, tie: Tie): Finding[] {
  // A keyhole hangs on a nail.
  if (hanger.kind === 'keyhole') return [];
  // Twine goes doubled through the narrow side; a ribbon lies flat along a slot and gathers in a round hole.
  const flat = tie.kind === 'ribbon' && hanger.kind === 'slot';
  const needed = flat ? tie.size : tightestOpening(tie);
  const has = flat ? hanger.openingLength : hanger.openingSize;
  if (has >= needed - slackOf(needed)) return [];
  const what = { twine: 'twine, doubled,', ribbon: 'ribbon', 'split ring': 'split ring' }[tie.kind];
  return [
    {
      code: 'hole-too-small',
      severity: 'warning',
      piece: id,
      path: hanger.path,
      points: [hanger.centre],
      width: has,
      message: `The ${hanger.kind === 'slot' ? 'slot' : 'hole'} is ${mm(has)}; ${tie.kind === 'split ring' ? 'a ' : ''}${mm(tie.size)} ${what} needs ${mm(needed)}${flat ? '' : measuredOn(tie.openingOn)}.`,
    },
  ];
}
