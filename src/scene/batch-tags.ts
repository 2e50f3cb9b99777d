/** What a strip shows of each tag of a batch: a small picture, its size, how many problems it has and how grave. Pure. */

import { assemblyOf } from '../checks/assembly.ts';
import type { Report } from '../engine/engine.ts';
import { boundsOf } from '../geometry/measure.ts';
import { severityRank } from '../core/issue.ts';
import { pictureOfTag } from '../language/hover/picture.ts';
import type { BatchTag } from '../protocol/preview.ts';

/** In pixels, at twice the size they are shown in, for dense screens. */
const pictureSize = { width: 144, height: 80 };

/** Taller than the middle one by so much: side by side on a string, it looks like another kind of tag. Our own judgement. */
const muchTaller = 1.5;

/** `all`: of every row, in order. */
export function batchTags(all: readonly Report[]): BatchTag[] {
  return besideOthers(all.map(tagByItself));
}

export type TagByItself = Omit<BatchTag, 'isTall'>;

/** `tags`: of every row, in order. */
export function besideOthers(tags: readonly TagByItself[]): BatchTag[] {
  const heights = tags.flatMap(({ height }) => height ?? []).sort((a, b) => a - b);
  // Of two neither is “the others”.
  const most = heights.length < 3 ? Infinity : muchTaller * heights[Math.floor(heights.length / 2)]!;
  return tags.map((tag) => ({ ...tag, isTall: (tag.height ?? 0) > most }));
}

export function tagByItself({ tag, issues }: Report): TagByItself {
  const [gravest] = [...issues].sort((a, b) => severityRank[b.severity] - severityRank[a.severity]);
  const found = { problems: issues.length, ...(gravest && { severity: gravest.severity }) };
  const first = tag?.pieces[0];
  if (!first) return found;
  const pieces = assemblyOf(first, tag.pieces);
  const bounds = boundsOf(pieces.flatMap(({ region }) => region));
  const picture = pictureOfTag({ ...tag, pieces }, pictureSize);
  if (!bounds || !picture) return found;
  return { ...found, picture, width: bounds.maxX - bounds.minX, height: bounds.maxY - bounds.minY };
}
