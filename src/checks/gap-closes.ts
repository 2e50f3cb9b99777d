/**
 * Gaps narrower than the beam takes. Each edge is cut half a kerf outside itself, so the two cuts of such a gap overlap: the gap
 * is not there on the finished piece, and what it was to part stays joined or burns into one.
 */

import { closeEdges } from '../geometry/close-edges.ts';
import type { ClosePlace } from '../geometry/close-edges.ts';
import type { Finding, YamlPath } from '../issue.ts';
import type { Piece } from '../tag/tag.ts';
import { byCause } from './by-cause.ts';
import type { Check } from './check.ts';
import { mm } from '../spec/figures.ts';
import { perRegion } from './per-region.ts';
import { isSpeck } from './speck.ts';

/** What an outline may be off by, in mm: a gap this much below the kerf is as wide as it. */
const slackMm = 0.005;

/** Listed one by one up to here; the rest of a text that is set too close is one more finding. */
const mostListed = 5;

export const gapCloses: Check = ({ pieces, stock }) =>
  stock.kerf > 0 ? pieces.flatMap((piece) => closingGaps(piece, stock.kerf)) : [];

/** Where outlines meet, no gap is left to close: that is a weak bridge. */
const gapsIn = perRegion((region, kerf) =>
  closeEdges(
    region.filter((ring) => !isSpeck(ring, kerf)),
    kerf - slackMm,
    'gap',
  ).filter(({ width }) => width > 0),
);

function closingGaps(piece: Piece, kerf: number): Finding[] {
  return byCause(piece, gapsIn(piece.region, kerf), ({ ends }) => ends).flatMap(({ path, found }) => {
    const rest = found.slice(mostListed);
    const [first] = rest;
    return [
      ...found.slice(0, mostListed).map((gap) => finding(piece, path, gap, oneGap(gap, kerf))),
      ...(first ? [finding(piece, path, first, moreGaps(rest, kerf))] : []),
    ];
  });
}

function oneGap({ width, length }: ClosePlace, kerf: number): string {
  const run = length >= 1 ? ` along ${mm(length, 0)}` : '';
  return `The gap here is ${mm(width)}${run}, less than the kerf of ${mm(kerf)}: it is not cut, and its edges stay joined or burn into one.`;
}

function moreGaps(gaps: readonly ClosePlace[], kerf: number): string {
  const what = gaps.length === 1 ? 'One more gap, of' : `${gaps.length} more gaps, the narrowest of`;
  return `${what} ${mm(gaps[0]!.width)}, less than the kerf of ${mm(kerf)}: none is cut.`;
}

function finding(piece: Piece, path: YamlPath, { ends, width }: ClosePlace, message: string): Finding {
  return { code: 'gap-closes', severity: 'warning', piece: piece.id, path, points: ends, width, message };
}
