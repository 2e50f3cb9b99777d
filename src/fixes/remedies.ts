/** What may help against an issue, the way that changes least about the tag first. */

import type { Case, Remedy } from './candidate.ts';
import { setting, settingLengths, shapeAt, valueAt, nameOf } from './candidate.ts';
import { onBacking } from './remedies/backing.ts';
import { clear, furtherIn, strongerRing, wideEnough } from './remedies/hanger.ts';
import { legible } from './remedies/legible.ts';
import { apart, joined, thicker } from './remedies/lettering.ts';
import { coarser, hidden, onBody } from './remedies/marks.ts';
import { smallerPiece } from './remedies/size.ts';
import { bundledFonts } from '../text/bundled-fonts.ts';

export function remediesFor(at: Case): Remedy[] {
  const { issue } = at;
  switch (issue.code) {
    case 'weak-bridge':
    case 'thin-stroke':
      return [...thicker(at), ...onBacking(at)];
    case 'loose-part':
      return [...joined(at), ...onBacking(at)];
    case 'hanger-weak':
      return strongerRing(at);
    case 'hole-near-edge':
      return furtherIn(at);
    case 'hole-blocked':
      return clear(at);
    case 'hole-too-small':
      return wideEnough(at);
    case 'gap-closes':
      return apart(at);
    case 'speck':
      return tidier(at);
    case 'shoulder-shows':
      return deeperLap(at);
    case 'score-shows':
      return hidden(at);
    case 'mark-off-body':
      return onBody(at);
    case 'hard-to-read':
      return legible(at);
    case 'fine-mark':
      return coarser(at);
    case 'off-centre':
      return [{ words: 'Centre it for the eye', candidates: setting(at, issue.path, 'by', 'eye') }];
    case 'too-large':
      return smallerPiece(at);
    case 'missing-glyph':
      return otherFonts(at);
    default:
      return [];
  }
}

/** Specks are dropped with what is as small as the largest of them. */
function tidier(at: Case): Remedy[] {
  const shape = shapeAt(at, at.issue.path);
  if (!shape || at.issue.width === undefined) return [];
  const size = at.issue.width + 0.05;
  return [{ words: `Drop the specks of ${nameOf(shape)}`, candidates: settingLengths(at, shape.path, 'tidy', [size]) }];
}

/** `width` is the lap that hides the shoulders. */
function deeperLap(at: Case): Remedy[] {
  const { path, width } = at.issue;
  if (width === undefined) return [];
  return [
    { words: 'Lap them further', candidates: settingLengths(at, path, 'lap', [width, width + 0.1, width + 0.5]) },
  ];
}

/** The bundled families that have the letters; each is another look, so each is offered for itself. */
function otherFonts(at: Case): Remedy[] {
  const path = at.issue.path.slice(0, -1);
  const now = valueAt(at, [...path, 'font']);
  return bundledFonts
    .map(({ family }) => family)
    .filter((family) => family !== now)
    .map((family) => ({ words: 'Set it in another font', candidates: setting(at, path, 'font', family) }));
}
