/** Points that taper to nothing: too thin to survive the beam, over a length that is noticed when it breaks off. */

import { samePath } from '../core/values.ts';
import type { Tip } from '../geometry/necks.ts';
import type { Point } from '../geometry/types.ts';
import type { Finding, YamlPath } from '../core/issue.ts';
import { mm } from '../core/figures.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import type { Piece } from '../tag/tag.ts';
import { byCause } from './measures/by-cause.ts';
import type { Check } from './check.ts';
import { letterNear } from './measures/letter-at.ts';
import { thinPlaces, tipsOf } from './measures/thin-places.ts';

/** A point thinner than this, in mm, or than four kerfs, burns away or breaks off (our own judgement). */
const thinMm = 0.8;
const thinKerfs = 4;

/** A loss of less than this, in mm, is not noticed: the tip of a serif, a corner of 20° (our own judgement). */
const longMm = 2.5;

/** A piece that is glued on is supported to its very points. */
export const sharpPoints: Check = ({ pieces, stock }) =>
  pieces.flatMap((piece) => (piece.glueTo === undefined ? sharpPointsOf(piece, stock) : []));

function sharpPointsOf(piece: Piece, stock: Stock): Finding[] {
  const { kerf, minWeb } = stock;
  const thin = Math.min(Math.max(thinMm, thinKerfs * kerf), minWeb);
  const points = tipsOf(piece, stock)
    .map((tip) => ({ at: tip.at, length: lengthBelow(tip, thin) }))
    .filter(({ length }) => length > longMm)
    .sort((a, b) => b.length - a.length);
  if (points.length === 0) return [];
  // In lettering that is thin all over, the ends need no report of their own.
  const strokes = thinPlaces(piece, stock, 'elsewhere').filter(({ kind }) => kind === 'stroke');
  const thinShapes = new Set(byCause(piece, strokes, ({ ends }) => ends).map(({ path }) => path.join('/')));
  return byCause(piece, points, ({ at }) => [at])
    .filter(({ path }) => !thinShapes.has(path.join('/')))
    .map(({ path, found }) => {
      const [longest] = found;
      const message = messageOf(piece, path, { ...longest!, count: found.length }, thin);
      return { code: 'sharp-point', severity: 'warning', piece: piece.id, path, points: [longest!.at], message };
    });
}

/** Beside what is cut through, the points are those of the piece, and inside it, where they do not prick. */
function messageOf(
  piece: Piece,
  path: YamlPath,
  { at, length, count }: { readonly at: Point; readonly length: number; readonly count: number },
  thin: number,
): string {
  const isOne = count === 1;
  const letter = isOne ? letterNear(piece, [at]) : undefined;
  const cut = piece.sources.find(({ use, path: of }) => use === 'cut' && samePath(of, path));
  const over = `thinner than ${mm(thin)} over ${isOne ? 'its last' : 'up to'} ${mm(length, 1)}`;
  const fate = isOne ? 'it burns away or breaks off' : 'they burn away or break off';
  if (cut) {
    const what = letter ?? cut.shape.name;
    const points = isOne ? 'a point' : `${count} points`;
    return `Beside the cut-out${what === undefined ? '' : ` “${what}”`}, “${piece.title}” runs to ${points} ${over}: ${fate}.`;
  }
  const one = letter === undefined ? 'This point is' : `The point at “${letter}” is`;
  return `${isOne ? one : `${count} points are`} ${over}: ${fate}, and ${isOne ? 'it pricks' : 'they prick'}.`;
}

/** Largest factor by which the length of a point is extrapolated. */
const longestStep = 1.2;

/** Distance before the end at which a point becomes as wide as `thin`, in mm. */
function lengthBelow({ widths }: Tip, thin: number): number {
  let last = { before: 0, width: 0 };
  for (const at of widths) {
    if (at.width >= thin)
      return last.before + ((thin - last.width) / (at.width - last.width)) * (at.before - last.before);
    last = at;
  }
  // The known widths end within a step of that width; beyond them the point is assumed to widen as before.
  return last.before * Math.min(thin / last.width, longestStep);
}
