/** The nearest place where an opening is clear of edges, of other openings and of what is glued on. */

import { gluedOver } from '../../checks/assembly.ts';
import { distanceToSegment } from '../../checks/blame.ts';
import { difference } from '../../geometry/clipper.ts';
import { EdgeIndex } from '../../geometry/edge-index.ts';
import type { Point } from '../../geometry/types.ts';
import { strandOf } from '../../spec/tie.ts';
import type { Candidate, Case, Remedy } from '../candidate.ts';
import { samePath } from '../candidate.ts';
import { hangerAt } from './hanger.ts';
import { nudging } from './moving.ts';

/** Places are looked for on circles so far apart, in so many directions, up to this distance, in mm. */
const stepMm = 0.5;
const directions = 16;
const farthestMm = 25;

/** So many of the nearest are tried. */
const most = 3;

export function clearOfAll(at: Case): Remedy[] {
  const hanger = hangerAt(at);
  const { piece, tag, issue } = at;
  const placed = piece?.hangers.find(({ path }) => samePath(path, issue.path));
  if (!piece || !placed || !hanger || hanger.kind === 'ring') return [];
  const openings = piece.hangers.filter((each) => each !== placed).map(({ opening }) => opening);
  const cuts = piece.sources.filter(({ use }) => use === 'cut').map(({ region }) => region);
  const glued = gluedOver(piece, tag.pieces).map(({ region }) => region);
  const free = new EdgeIndex(difference(piece.body, [...openings, ...cuts, ...glued]));
  const strand = glued.length > 0 ? strandOf(tag.tie, hanger.kind === 'slot') : 0;
  const clear = placed.openingLength / 2 + Math.max(tag.stock.minWeb, strand) + stepMm / 10;
  const isClear = (centre: Point) => free.contains(centre) && !isNear(free, centre, clear);
  const candidates: Candidate[] = [];
  for (let far = stepMm; far <= farthestMm && candidates.length < most; far += stepMm) {
    for (let turn = 0; turn < directions; turn++) {
      const angle = Math.PI / 2 + (turn * 2 * Math.PI) / directions;
      const move = { x: far * Math.cos(angle), y: far * Math.sin(angle) };
      if (!isClear({ x: placed.centre.x + move.x, y: placed.centre.y + move.y })) continue;
      candidates.push(...nudging(at, hanger.path, hanger.nudge, move));
    }
  }
  return [{ words: `Move the ${hanger.kind} to where it is clear`, candidates: candidates.slice(0, most) }];
}

function isNear(edges: EdgeIndex, centre: Point, reach: number): boolean {
  return edges.near(centre, reach).some(([from, to]) => distanceToSegment(centre, from, to) < reach);
}
