/** Every check, in the order in which findings on the same line are listed. */

import type { Finding } from '../core/issue.ts';
import type { IssueCode } from '../core/issue-kinds.ts';
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
import { notAsApproved } from './not-as-approved.ts';
import { notFilled, withoutPlaceholders } from './not-filled.ts';
import { notMeasured } from './not-measured.ts';
import { oddValues } from './odd-value.ts';
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
import { uncutCorners } from './uncut-corners.ts';
import { unsafeMaterial } from './unsafe-material.ts';
import { weakBridges } from './weak-bridge.ts';

/** A check that judges each piece by itself, with the stock that the piece is cut from. */
function byEach(check: Check): Check {
  return (tag) => byStock(tag).flatMap(check);
}

/** Each with the one kind of problem that it finds. */
export const checks: ReadonlyMap<IssueCode, Check> = new Map<IssueCode, Check>([
  ['unsafe-material', byEach(unsafeMaterial)],
  ['odd-value', (tag) => [...byEach(oddValues)(tag), ...uncutCorners(tag)]],
  ['loose-part', looseParts],
  ['exceeds-sheet', byEach(exceedsSheet)],
  ['weak-bridge', byEach(weakBridges)],
  ['thin-stroke', byEach(thinStrokes)],
  ['hanger-weak', byEach(hangerWeak)],
  ['hole-near-edge', byEach(holeNearEdge)],
  ['hole-blocked', holeBlocked],
  ['hole-too-small', holeTooSmall],
  ['sharp-point', byEach(sharpPoints)],
  ['gap-closes', byEach(gapCloses)],
  ['speck', byEach(specks)],
  ['mark-off-body', markOffBody],
  ['marks-overlap', marksOverlap],
  ['cut-off-body', cutOffBody],
  ['hard-to-read', hardToRead],
  ['hard-to-scan', hardToScan],
  ['fine-mark', byEach(fineMarks)],
  ['off-backing', offBacking],
  ['pieces-overlap', piecesOverlap],
  ['score-shows', scoreShows],
  ['shoulder-shows', shoulderShows],
  ['sticks-out', sticksOut],
  ['off-centre', offCentre],
  ['hangs-askew', hangsAskew],
  ['across-grain', byEach(acrossGrain)],
  ['not-measured', byEach(notMeasured)],
  ['not-filled', notFilled],
  ['not-as-approved', notAsApproved],
]);

/** When the checks may stop before the last. */
export interface Enough {
  /** Looked for first. */
  readonly first: IssueCode;
  /** Asked before the first check, and whenever there is more; after a yes no further check is run. */
  readonly of: (found: readonly Finding[]) => boolean;
}

export async function runChecks(tag: Tag, checkpoint: () => Promise<void>, enough?: Enough): Promise<Finding[]> {
  const codes = [...checks.keys()];
  const found = new Map<IssueCode, readonly Finding[]>(codes.map((code) => [code, []]));
  const all = (): Finding[] => [...found.values()].flat();
  if (enough?.of([])) return [];
  for (const code of codes.toSorted((a, b) => Number(b === enough?.first) - Number(a === enough?.first))) {
    const own = checks.get(code)!(tag);
    found.set(code, own);
    if (own.length > 0 && enough?.of(all())) break;
    await checkpoint();
  }
  return [...withoutPlaceholders(all(), tag)];
}
