/** Remedies for an issue, the one that changes the tag least first. */

import type { Case, Remedy } from './candidate.ts';
import { setting, settingLengths, shapeAt, shapeTitle } from './candidate.ts';
import { gluedOnBacking, onBacking } from './remedies/backing.ts';
import { onItsBacking } from './remedies/carried.ts';
import { otherFonts, withMissingLetters } from './remedies/fonts.ts';
import { movedTogether, reachingFrame, strappedInFrame } from './remedies/apart-shapes.ts';
import { unblocked, furtherIn, strongerRing, wideEnough, whereThereIsRoom } from './remedies/hanger.ts';
import { widerHolds } from './remedies/holds.ts';
import { legible } from './remedies/legible.ts';
import { alongGrain } from './remedies/grain.ts';
import { wideGaps, joinedParts, thicker } from './remedies/lettering.ts';
import { overBalance } from './remedies/balance.ts';
import { clearOffLine, clearOfAll, clearOnLine } from './remedies/clear-place.ts';
import { cutOnBody } from './remedies/cuts.ts';
import { loadOnPiece } from './remedies/load.ts';
import { coarserDetail, hiddenLine, onBody } from './remedies/marks.ts';
import { marksApart, piecesApart } from './remedies/overlaps.ts';
import { likelyValue } from './remedies/odd-values.ts';
import { blunter } from './remedies/points.ts';
import { scannable } from './remedies/codes.ts';
import { lineLeftBelow } from './remedies/line-below.ts';
import { smallerPiece } from './remedies/size.ts';
import { withoutSpecks } from './remedies/specks.ts';
import { clearOfCut } from './remedies/windows.ts';
import { withinFrame } from './remedies/within-frame.ts';

export function remediesFor(at: Case): Remedy[] {
  const { issue } = at;
  switch (issue.code) {
    case 'weak-bridge':
    case 'thin-stroke':
      return [
        ...widerHolds(at),
        ...clearOfCut(at),
        ...thicker(at),
        ...onBacking(at),
        ...gluedOnBacking(at),
        ...otherFonts(at, shapeAt(at, issue.path)),
      ];
    case 'loose-part':
      return [
        ...loadOnPiece(at),
        ...strappedInFrame(at),
        ...reachingFrame(at),
        ...movedTogether(at),
        ...joinedParts(at),
        ...onBacking(at),
        ...gluedOnBacking(at),
      ];
    case 'hanger-weak':
      return strongerRing(at);
    case 'hole-near-edge':
      return [...(issue.severity === 'error' ? clearOfAll(at) : []), ...furtherIn(at)];
    case 'hole-blocked':
      // Off the line on which the tag hangs straight, the hole is moved only if the obstacle cannot be.
      return [...clearOnLine(at), ...unblocked(at), ...clearOffLine(at)];
    case 'hole-too-small':
      return wideEnough(at);
    case 'gap-closes':
      return wideGaps(at);
    case 'speck':
      return withoutSpecks(at);
    case 'shoulder-shows':
      return deeperLap(at);
    case 'score-shows':
      return hiddenLine(at);
    case 'mark-off-body':
      return onBody(at);
    case 'cut-off-body':
      return cutOnBody(at);
    case 'marks-overlap':
      return marksApart(at);
    case 'off-backing':
      return onItsBacking(at);
    case 'pieces-overlap':
      return piecesApart(at);
    case 'sticks-out':
      return withinFrame(at);
    case 'sharp-point':
      return blunter(at);
    case 'hard-to-read':
      return legible(at);
    case 'hard-to-scan':
      return scannable(at);
    case 'empty-shape':
      return [...asLines(at), ...whereThereIsRoom(at)];
    case 'fine-mark':
      return coarserDetail(at);
    case 'off-centre':
      if (issue.path.at(-1) !== 'place') return [];
      return [{ words: 'Centre it for the eye', candidates: setting(at, issue.path, 'by', 'eye') }];
    case 'squeezed':
      return lineLeftBelow(at);
    case 'uneven-sizes':
      if (shapeAt(at, issue.path.slice(0, -1))?.modifiers.fit?.sameSize) return [];
      return [
        {
          words: 'Give all the size that every name has room for',
          candidates: setting(at, issue.path, 'same_size', 'true'),
          isChoice: true,
        },
      ];
    case 'uneven-hanging':
      return (['left', 'top', 'right'] as const).map((side) => ({
        words: `Hang all from the ${side}`,
        candidates: setting(at, issue.path, 'at', side),
        isChoice: true,
      }));
    case 'hangs-askew':
      return overBalance(at);
    case 'exceeds-sheet':
      return smallerPiece(at);
    case 'across-grain':
      return alongGrain(at);
    case 'odd-value':
      return likelyValue(at);
    case 'missing-glyph':
      return withMissingLetters(at);
    default:
      return [];
  }
}

/** A path that encloses nothing was meant as lines. */
function asLines(at: Case): Remedy[] {
  const shape = shapeAt(at, at.issue.path);
  if (shape?.generator.kind !== 'path') return [];
  return [
    {
      words: `Keep the strokes of ${shapeTitle(shape)} as lines`,
      candidates: setting(at, shape.path, 'lines', 'true'),
    },
  ];
}

/** `width` is the overlap that hides the shoulders. */
function deeperLap(at: Case): Remedy[] {
  const { path, width } = at.issue;
  if (width === undefined) return [];
  return [
    { words: 'Overlap them more', candidates: settingLengths(at, path, 'lap', [width, width + 0.1, width + 0.5]) },
  ];
}
