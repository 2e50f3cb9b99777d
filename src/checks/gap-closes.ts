/**
 * Gaps narrower than the kerf. Each edge is cut half a kerf outside itself, so the two cuts of such a gap overlap: the
 * gap is missing from the finished piece, and what it should separate stays joined or burns into one.
 */

import { closeEdges } from '../geometry/close-edges.ts';
import type { ClosePlace } from '../geometry/close-edges.ts';
import type { Region } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import type { Piece } from '../tag/tag.ts';
import { distanceTo } from './measures/blame.ts';
import { byCause, locationOf } from './measures/by-cause.ts';
import type { Check } from './check.ts';
import { mm, mmWide } from '../core/figures.ts';
import { measuredOn } from '../spec/model/measured-values.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import { perRegion } from './measures/per-region.ts';
import { isSpeck } from './speck.ts';

/** Tolerance of an outline, in mm: a gap this much below the kerf counts as wide enough. */
const slackMm = 0.005;

export const gapCloses: Check = ({ pieces, stock }) =>
  stock.kerf > 0 ? pieces.flatMap((piece) => closingGaps(piece, stock)) : [];

/** Within one outline, a gap that closes over less than this, in mm, is the end of a wedge (our own judgement). */
const worthTellingMm = 1;

/** A point this near to an outline is on it, in mm. */
const onLineMm = 1e-3;

/** Where outlines meet there is no gap left to close: that is a weak bridge. */
const gapsIn = perRegion((region, kerf) =>
  closeEdges(
    region.filter((ring) => !isSpeck(ring, kerf)),
    kerf - slackMm,
    'gap',
  ).filter((gap) => gap.width > 0 && (gap.length >= worthTellingMm || partsOutlines(region, gap))),
);

function partsOutlines(region: Region, { ends }: ClosePlace): boolean {
  return !region.some((ring) => ends.every((end) => distanceTo([ring], end) < onLineMm));
}

/** One finding for each shape to blame, at its narrowest gap. */
function closingGaps(piece: Piece, { kerf, measuredOn: days }: Stock): Finding[] {
  const cause = `the kerf of ${mm(kerf)}${measuredOn(days?.kerf)}`;
  return byCause(piece, gapsIn(piece.region, kerf), ({ ends }) => ends).map(({ path, found }) => ({
    code: 'gap-closes',
    severity: 'warning',
    piece: piece.id,
    path,
    ...locationOf(found.map(({ ends, width }) => ({ points: ends, width }))),
    minimum: kerf,
    message: found.length === 1 ? oneGap(found[0]!, cause) : manyGaps(found, cause),
  }));
}

function oneGap({ width, length }: ClosePlace, kerf: string): string {
  const run = length >= 1 ? ` along ${mm(length, 0)}` : '';
  return `The gap here is ${mmWide(width)}${run}, less than ${kerf}: it will not come out, and its edges stay joined or burn together.`;
}

function manyGaps(gaps: readonly ClosePlace[], kerf: string): string {
  return `${gaps.length} gaps are narrower than ${kerf}; the narrowest is ${mmWide(gaps[0]!.width)}. None of them will come out: their edges stay joined or burn together.`;
}
