/** Every check, in the order in which its findings are listed where they stand on the same line. */

import type { Finding } from '../core/issue.ts';
import { byStock } from '../tag/by-stock.ts';
import type { Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { cutOffBody } from './cut-off-body.ts';
import { fineMarks } from './fine-mark.ts';
import { gapCloses } from './gap-closes.ts';
import { hardToRead } from './hard-to-read.ts';
import { hardToScan } from './hard-to-scan.ts';
import { hangerWeak } from './hanger-weak.ts';
import { hangsAskew } from './hangs-askew.ts';
import { holeBlocked } from './hole-blocked.ts';
import { holeNearEdge } from './hole-near-edge.ts';
import { holeTooSmall } from './hole-too-small.ts';
import { looseParts } from './loose-part.ts';
import { markOffBody } from './mark-off-body.ts';
import { marksOverlap } from './marks-overlap.ts';
import { notFilled, withoutPlaceholders } from './not-filled.ts';
import { notMeasured } from './not-measured.ts';
import { offBacking } from './off-backing.ts';
import { offCentre } from './off-centre.ts';
import { piecesOverlap } from './pieces-overlap.ts';
import { scoreShows } from './score-shows.ts';
import { sharpPoints } from './sharp-point.ts';
import { shoulderShows } from './shoulder-shows.ts';
import { specks } from './speck.ts';
import { thinStrokes } from './thin-stroke.ts';
import { exceedsSheet } from './exceeds-sheet.ts';
import { unsafeMaterial } from './unsafe-material.ts';
import { weakBridges } from './weak-bridge.ts';

/** A check that judges each piece by itself, and by the stock that the piece is cut from. */
function byEach(check: Check): Check {
  const each: Check = (tag) => byStock(tag).flatMap(check);
  // Measurements tell checks by their names.
  return Object.defineProperty(each, 'name', { value: check.name });
}

export const checks: readonly Check[] = [
  byEach(unsafeMaterial),
  looseParts,
  byEach(exceedsSheet),
  byEach(weakBridges),
  byEach(thinStrokes),
  byEach(hangerWeak),
  byEach(holeNearEdge),
  holeBlocked,
  holeTooSmall,
  byEach(sharpPoints),
  byEach(gapCloses),
  byEach(specks),
  markOffBody,
  marksOverlap,
  cutOffBody,
  hardToRead,
  hardToScan,
  byEach(fineMarks),
  offBacking,
  piecesOverlap,
  scoreShows,
  shoulderShows,
  offCentre,
  hangsAskew,
  byEach(notMeasured),
  notFilled,
];

export async function runChecks(tag: Tag, checkpoint: () => Promise<void>): Promise<Finding[]> {
  const findings: Finding[] = [];
  for (const check of checks) {
    findings.push(...check(tag));
    await checkpoint();
  }
  return [...withoutPlaceholders(findings, tag)];
}
