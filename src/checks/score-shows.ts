/** Placement lines, scored where a piece will be glued on, that the glued pieces do not hide. */

import { contains } from '../geometry/measure.ts';
import type { Point, Ring } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import type { Mark, Piece, Tag } from '../tag/tag.ts';
import { distancesBeyond, hiddenMm, meantMm } from './measures/beyond.ts';
import type { Check } from './check.ts';
import { isMadeFromSame } from './measures/origin.ts';
import { mm } from '../core/figures.ts';

export const scoreShows: Check = (tag) => tag.pieces.flatMap((piece) => shownScores(piece, tag));

function shownScores(piece: Piece, { pieces, made }: Tag): Finding[] {
  const glued = pieces.filter(({ glueTo }) => glueTo === piece.id);
  const scores = piece.marks.filter(({ operation }) => operation === 'score');
  if (glued.length === 0) return [];
  return scores.flatMap((mark) => {
    const shown = farthestVisible(mark, glued, made);
    return shown ? [scoreFinding(mark, piece, shown)] : [];
  });
}

interface VisibleScore {
  readonly point: Point;
  /**
   * Distance outside all glued pieces, in mm, up to the reach; negative inside one, down to the depth that hides it.
   */
  readonly beyond: number;
  /** The piece that it is outside of, or nearest to. */
  readonly on: Piece;
}

function scoreFinding({ path }: Mark, piece: Piece, { point, beyond, on }: VisibleScore): Finding {
  const far = beyond > meantMm;
  let relation = 'runs right along the edge of';
  if (far) relation = `runs more than ${mm(meantMm)} outside`;
  else if (beyond > 0.01) relation = `runs up to ${mm(beyond)} outside`;
  return {
    code: 'score-shows',
    severity: 'warning',
    piece: piece.id,
    path,
    points: [point],
    ...(far ? {} : { width: Math.max(beyond, 0) }),
    message: `This score line ${relation} “${on.title}”, which is glued over it, and will show. Move it half a millimetre inside to hide it.`,
  };
}

/**
 * The place that shows most, if the mark is a placement line. The mark is judged as a whole, since the counters of a
 * shadow also lie near the letters.
 */
function farthestVisible(
  { region, shape }: Mark,
  glued: readonly Piece[],
  made: Tag['made'],
): VisibleScore | undefined {
  const relations = glued.map((on) => ({ on, lines: distancesBeyond(region, on.region) }));
  const touching = region.flatMap((ring, index): VisibleScore[] => {
    // One glued piece may hide what another does not.
    const line = relations[0]!.lines[index]!.map(({ point }, at): VisibleScore => {
      const all = relations.map(({ on, lines }) => ({ point, beyond: lines[index]![at]!.beyond, on }));
      return all.reduce((a, b) => (b.beyond < a.beyond ? b : a));
    });
    const farthest = line.reduce(farther);
    const crosses = line.some(({ beyond }) => beyond <= 0);
    return crosses || (farthest.beyond <= meantMm && surrounds(ring, glued)) ? [farthest] : [];
  });
  if (touching.length === 0) return undefined;
  const farthest = touching.reduce(farther);
  if (farthest.beyond <= -hiddenMm) return undefined;
  const isMeant = farthest.beyond <= meantMm || glued.some((on) => isCopy(shape, on, made));
  return isMeant ? farthest : undefined;
}

const farther = (a: VisibleScore, b: VisibleScore): VisibleScore => (b.beyond > a.beyond ? b : a);

function surrounds(line: Ring, glued: readonly Piece[]): boolean {
  return glued.some(({ region }) => region.some(([corner]) => contains([line], corner!)));
}

/**
 * Whether the line is drawn from a shape that the glued piece is made of, and is therefore meant for it wherever it is.
 */
function isCopy(drawn: Shape, piece: Piece, made: Tag['made']): boolean {
  // A nudged shape is where its maker wants it: a shadow beside the letters, say.
  return !drawn.modifiers.nudge && isMadeFromSame(drawn, piece, made);
}
