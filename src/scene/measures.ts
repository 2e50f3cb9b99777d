/** Measures of a drawing, sent to the page once there is time to compute them. Pure. */

import { ringArea } from '../geometry/measure.ts';
import type { Issue } from '../core/issue.ts';
import { thinnestWall } from '../geometry/thinnest-wall.ts';
import { kerfOf, offsetByKind } from '../tag/uncompensated.ts';
import { stockOf } from '../tag/by-stock.ts';
import type { Tag } from '../tag/tag.ts';
import type { SceneCutPath, SceneWall } from '../protocol/preview.ts';
import { flipped } from './coordinates.ts';
import { pathData } from './path-data.ts';

/** First search width for walls, in min_web; there is nearly always one narrower. */
const firstLook = 2;

/** Narrowest walls, for pieces without such a problem; the others have pins that show their widths. */
export function wallsOf(tag: Tag, issues: readonly Issue[]): SceneWall[] {
  const thin = new Set(issues.filter(({ width }) => width !== undefined).map(({ piece }) => piece));
  return tag.pieces.flatMap((piece) => {
    const { id, region } = piece;
    if (thin.has(id)) return [];
    const wall = thinnestWall(region, firstLook * stockOf(piece, tag).minWeb);
    return wall ? [{ piece: id, width: wall.width, points: [flipped(wall.ends[0]), flipped(wall.ends[1])] }] : [];
  });
}

/** Outlines and openings separately: the kerf may differ between the two. */
export function cutPathsOf(tag: Tag): SceneCutPath[] {
  return tag.pieces.flatMap((piece) => {
    const { id, region, cutLine } = piece;
    const { outer, inner } = kerfOf(stockOf(piece, tag));
    const rings = cutLine ?? offsetByKind(region, { outer: outer / 2, inner: inner / 2 });
    const ways = [
      { kerf: outer, cut: rings.filter((ring) => ringArea(ring) > 0) },
      { kerf: inner, cut: rings.filter((ring) => ringArea(ring) < 0) },
    ];
    return ways.flatMap(({ kerf, cut }) => (cut.length > 0 ? [{ piece: id, kerf, data: pathData(cut) }] : []));
  });
}
