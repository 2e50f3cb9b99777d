/** What of a stock looks like a slip of the hand: a material that is misspelt, and measures that no laser, sheet, tie or tag has. */

import type { Finding } from '../core/issue.ts';
import { limit, mm } from '../core/figures.ts';
import { boundsOf } from '../geometry/measure.ts';
import { sizeWords } from '../spec/model/tie.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { dangerOf } from './measures/danger.ts';
import { slipInMaterial } from './measures/material-slips.ts';
import { stockPath } from './measures/stock-path.ts';

/** What the beams of lasers cut, in mm: common practice, no source. */
const usualKerf = { least: 0.05, most: 0.5 } as const;

/** Thickness of writing paper, in mm: common practice, no source. */
const paperMm = 0.1;

/** The thickest sheet that small lasers cut through, in mm: common practice, no source. */
const thickestMm = 20;

/** The longest piece that small lasers cut, in mm: common practice, no source; from memory, their beds are 300 to 700 mm wide, few 900. */
const longestPieceMm = 900;

/** Slack for lengths that were inches, in mm. */
const slackMm = 1e-6;

/** The thickest twine, the widest ribbon and the largest split ring that tags are tied with, in mm: common practice, no source. */
const thickestTie = { twine: 6, ribbon: 50, 'split ring': 60 } as const;

export const oddValues: Check = ({ stock, pieces, tie, sheet }): Finding[] => {
  const { kerf, thickness } = stock;
  const [piece] = pieces;
  const at = (key: string) => ({
    code: 'odd-value' as const,
    // A stock with a name is written elsewhere.
    path: stockPath(pieces, stock.name === undefined ? key : undefined),
    ...(piece?.cutFrom ? { piece: piece.id } : {}),
  });
  const findings: Finding[] = [];
  const { material = '' } = stock;
  const slip = dangerOf(material) ? undefined : slipInMaterial(material);
  if (slip)
    findings.push({
      ...at('material'),
      severity: 'info',
      message: `“${slip.written}” looks like ${slip.meant}. Weight, least width and look follow the material’s name.`,
    });
  const isWide = kerf > usualKerf.most + slackMm;
  if (isWide || (kerf > 0 && kerf < usualKerf.least - slackMm)) {
    const likely = likelyKerf(stock);
    const meant = likely === undefined ? 'Cut a kerf test to find it.' : `Was ${mm(likely)} meant?`;
    findings.push({
      ...at('kerf'),
      severity: isWide ? 'warning' : 'info',
      width: kerf,
      message: `The kerf is ${mm(kerf, isWide ? 2 : 3)}; lasers cut about ${limit(usualKerf.least)} to ${limit(usualKerf.most)} wide. ${meant}`,
    });
  }
  if (thickness !== undefined && thickness < paperMm - slackMm)
    findings.push({
      ...at('thickness'),
      severity: 'warning',
      width: thickness,
      message: `The sheet is ${mm(thickness)} thick, and paper is ${mm(paperMm)}; check the number and its unit.`,
    });
  if (thickness !== undefined && thickness > thickestMm + slackMm)
    findings.push({
      ...at('thickness'),
      severity: 'info',
      width: thickness,
      message: `The sheet is ${mm(thickness)} thick, and small lasers cut up to about ${limit(thickestMm)}; check the number and its unit.`,
    });
  if (tie && tie.size > thickestTie[tie.kind] + slackMm)
    findings.push({
      code: 'odd-value',
      severity: 'warning',
      path: ['tie'],
      width: tie.size,
      message: `The ${tie.kind} is ${mm(tie.size)} ${sizeWords[tie.kind]}; tags hang on ${tie.kind === 'split ring' ? 'split rings' : tie.kind} of up to ${limit(thickestTie[tie.kind])}.${tie.kind === 'split ring' ? '' : ' For a split ring, say “split_ring”; for a clip, give the width of the hole it needs: “opening: 5 mm”.'}`,
    });
  // Whoever has told of the sheet is told when a piece does not fit it.
  if (!sheet) findings.push(...pieces.flatMap(oddLength));
  return findings;
};

function oddLength({ id, title, path, region }: Piece): Finding[] {
  const box = boundsOf(region);
  if (!box) return [];
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  const length = Math.max(wide, high);
  if (length <= longestPieceMm + slackMm) return [];
  return [
    {
      code: 'odd-value',
      severity: 'info',
      piece: id,
      path,
      width: length,
      message: `“${title}” is ${mm(length, 0)} ${wide >= high ? 'wide' : 'high'}, and small lasers cut up to about ${limit(longestPieceMm)}; check the numbers and their units. With a “sheet” of that size nothing is said.`,
    },
  ];
}

/** The kerf with its point one place further, if that is one of a laser. */
export function likelyKerf({ kerf }: Tag['stock']): number | undefined {
  const likely = kerf > usualKerf.most ? kerf / 10 : kerf * 10;
  // From 0.06 to 0.1 mm, a kerf is as rare as the one it would stand for.
  return likely >= 2 * usualKerf.least - slackMm && likely <= usualKerf.most + slackMm ? likely : undefined;
}
