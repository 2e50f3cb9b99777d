/** Hover text for a finished piece. */

import { isWithin } from '../../core/values.ts';
import { stockOf } from '../../tag/by-stock.ts';
import { area } from '../../geometry/measure.ts';
import type { Issue, YamlPath } from '../../core/issue.ts';
import { describeLoad } from '../../strength/describe-load.ts';
import { estimateLoad } from '../../strength/load.ts';
import { estimateOfPiece } from '../../export/job/known-estimates.ts';
import { estimateFacts } from '../../export/words/estimate-facts.ts';
import type { Units } from '../../core/units.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { areaText, counted, sizeText } from '../../core/units.ts';
import { bothLengths } from '../both-lengths.ts';
import { pictureOf } from './picture.ts';
import { escapeMarkdown } from './escape-markdown.ts';
import { countParts, sizeOfRegion } from './sizes.ts';

export function pieceDocs(piece: Piece, tag: Tag, issues: readonly Issue[]): string[] {
  const size = sizeOfRegion(piece.region);
  const head = `**${escapeMarkdown(piece.title)}** – piece`;
  if (!size) return [head, 'Nothing is left of it.'];
  const { units } = tag;
  const { parts, holes } = countParts(piece.region);
  const estimate = estimateOfPiece(tag, piece);
  const facts = [
    `Finished size ${sizeText(size.width, size.height, units)} (${sizeText(size.width, size.height, units === 'mm' ? 'in' : 'mm')})`,
    `${areaText(area(piece.region), units)}, ${counted(parts, 'part')}, ${counted(holes, 'hole')}`,
    weakestPlace(piece, issues, units),
    ...(estimate ? estimateFacts(estimate, units) : []).map(({ name, value }) => `${name}: ${escapeMarkdown(value)}`),
  ];
  const picture = pictureOf(piece.region, { width: 240, height: 120 });
  return [
    head,
    facts
      .filter((fact) => fact !== '')
      .map((fact) => `- ${fact}`)
      .join('\n'),
    picture ? `![](${picture.uri})` : '',
    loadDocs(piece, tag),
  ];
}

/** Kinds of issue whose width is of material that holds the piece together. */
const webs: ReadonlySet<string> = new Set(['weak-bridge', 'thin-stroke', 'hanger-weak']);

function weakestPlace({ id }: Piece, issues: readonly Issue[], units: Units): string {
  const widths = issues.flatMap(({ code, piece, width }) =>
    piece === id && width !== undefined && webs.has(code) ? [width] : [],
  );
  return widths.length > 0 ? `Narrowest place found: ${bothLengths(Math.min(...widths), units)}` : '';
}

/** A link to the guide's page, for an editor that trusts the command; elsewhere plain words. */
const howItIsWorkedOut = `[How it is worked out](command:tagwright.openGuide?${encodeURIComponent('["what-a-hanger-bears"]')})`;

/** The load estimate with its caution; empty for a piece without a hanger. */
export function loadDocs(piece: Piece, tag: Tag): string {
  const estimate = estimateLoad(piece, stockOf(piece, tag));
  if (!estimate) return '';
  const { headline, lines, caution } = describeLoad(estimate, tag.units);
  const isEstimate = estimate.kind === 'bears';
  const parts = [
    `${isEstimate ? '**Load (estimate).** ' : ''}${escapeMarkdown(headline)}.`,
    ...lines.map((line) => `- ${escapeMarkdown(line)}`),
  ];
  return `${parts.join('\n')}\n\n*${escapeMarkdown(caution)}*${isEstimate ? ` ${howItIsWorkedOut}` : ''}`;
}

/** Whether the path is a hanger of the piece, or inside one. */
export function isHangerOf({ hangers }: Piece, path: YamlPath): boolean {
  return hangers.some((hanger) => isWithin(path, hanger.path));
}
