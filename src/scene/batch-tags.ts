/**
 * The tags of a batch as the strip shows them: a small picture, the size, the number of problems and the gravest
 * severity. Pure.
 */

import { assemblyOf } from '../checks/measures/assembly.ts';
import type { Report } from '../engine/engine.ts';
import { boundsOf } from '../geometry/measure.ts';
import { severityRank } from '../core/issue.ts';
import { pictureOfTag } from '../language/hover/picture.ts';
import type { BatchTag } from '../protocol/preview.ts';

/** In pixels: twice the displayed size, for dense screens. */
const pictureSize = { width: 144, height: 80 };

/**
 * Times the median height from which a tag stands out: next to the others on a string, it looks like another kind of
 * tag. Our own judgement.
 */
const muchTaller = 1.5;

/** @param all Reports of every row, in order. */
export function batchTags(all: readonly Report[]): BatchTag[] {
  return besideOthers(all.map(tagByItself));
}

export type TagByItself = Omit<BatchTag, 'isTall'>;

/** @param tags Tags of every row, in order. */
export function besideOthers(tags: readonly TagByItself[]): BatchTag[] {
  const heights = tags.flatMap(({ height }) => height ?? []).sort((a, b) => a - b);
  // Of two tags, neither can be called “the others”.
  const most = heights.length < 3 ? Infinity : muchTaller * heights[Math.floor(heights.length / 2)]!;
  return tags.map((tag) => ({ ...tag, isTall: (tag.height ?? 0) > most }));
}

export function tagByItself({ tag, issues }: Report): TagByItself {
  const [gravest] = [...issues].sort((a, b) => severityRank[b.severity] - severityRank[a.severity]);
  const isHardToRead = issues.some(({ code }) => code === 'hard-to-read');
  const found = { problems: issues.length, ...(gravest && { severity: gravest.severity }), isHardToRead };
  const first = tag?.pieces[0];
  if (!first) return found;
  const pieces = assemblyOf(first, tag.pieces);
  const bounds = boundsOf(pieces.flatMap(({ region }) => region));
  const picture = pictureOfTag({ ...tag, pieces }, pictureSize);
  if (!bounds || !picture) return found;
  return { ...found, picture, width: bounds.maxX - bounds.minX, height: bounds.maxY - bounds.minY };
}
