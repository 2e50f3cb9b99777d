/** Every check, in the order in which findings on the same line are listed. */

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
import { acrossGrain } from './across-grain.ts';
import { sticksOut } from './sticks-out.ts';
import { unsafeMaterial } from './unsafe-material.ts';
import { weakBridges } from './weak-bridge.ts';

/** A check that judges each piece by itself, with the stock that the piece is cut from. */
function byEach(check: Check): Check {
  const each: Check = (tag) => byStock(tag).flatMap(check);
  // Measurements identify checks by their names.
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
  sticksOut,
  offCentre,
  hangsAskew,
  byEach(acrossGrain),
  byEach(notMeasured),
  notFilled,
];

/** `isEnough` is asked once there is more than before; after a yes no further check is run. */
export async function runChecks(
  tag: Tag,
  checkpoint: () => Promise<void>,
  isEnough: (found: readonly Finding[]) => boolean = () => false,
): Promise<Finding[]> {
  const findings: Finding[] = [];
  for (const check of checks) {
    const found = check(tag);
    findings.push(...found);
    if (found.length > 0 && isEnough(findings)) break;
    await checkpoint();
  }
  return [...withoutPlaceholders(findings, tag)];
}
