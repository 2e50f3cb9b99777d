/** Placement lines, scored where a piece will be glued on, that the glued piece does not hide. */

import { EdgeIndex } from '../geometry/edge-index.ts';
import { contains } from '../geometry/measure.ts';
import type { Point, Region, Ring } from '../geometry/types.ts';
import type { Finding } from '../issue.ts';
import type { Mark, Piece, Tag } from '../tag/tag.ts';
import { distanceToSegment } from './blame.ts';
import type { Check } from './check.ts';
import { mm } from './check.ts';
import { remembered } from './remembered.ts';

/** A line of which all lies this near to the glued piece is meant for it; others are decoration (our own judgement). */
const meantMm = 2;

/** So far inside the edge a line must lie to be hidden: the beam has a width, and glueing by hand is not exact. */
const hiddenMm = 0.1;

/** Long edges are looked at every so many mm. */
const stepMm = 1;

export const scoreShows: Check = ({ pieces }) => pieces.flatMap((piece) => shownScores(piece, pieces));

function shownScores(piece: Piece, pieces: Tag['pieces']): Finding[] {
  const glued = pieces.filter(({ glueTo }) => glueTo === piece.id);
  const scores = piece.marks.filter(({ operation }) => operation === 'score');
  return glued.flatMap((on) => scores.flatMap((mark) => shownOf(mark, piece, on)));
}

function shownOf({ region, path }: Mark, piece: Piece, on: Piece): Finding[] {
  const worst = farthestShown(region, on.region);
  if (!worst) return [];
  const told =
    worst.beyond > 0.01
      ? `runs up to ${mm(worst.beyond)} outside “${on.title}”, which is glued over it,`
      : `runs along the very edge of “${on.title}”, which is glued over it,`;
  return [
    {
      code: 'score-shows',
      severity: 'warning',
      piece: piece.id,
      path,
      points: [worst.point],
      width: Math.max(worst.beyond, 0),
      message: `This score line ${told} and will be seen. Half a millimetre inside, it is hidden.`,
    },
  ];
}

interface Shown {
  readonly point: Point;
  /** How far outside the glued piece, in mm; negative inside it. */
  readonly beyond: number;
}

const farthestShown = remembered((score, on): Shown | undefined => {
  const edges = new EdgeIndex(on);
  const worst = score.flatMap((ring): Shown[] => {
    const all = along(ring).map((point) => ({ point, beyond: beyond(point, on, edges) }));
    const farthest = all.reduce((a, b) => (b.beyond > a.beyond ? b : a));
    return farthest.beyond <= meantMm && farthest.beyond > -hiddenMm ? [farthest] : [];
  });
  return worst.length === 0 ? undefined : worst.reduce((a, b) => (b.beyond > a.beyond ? b : a));
});

/** Signed distance to the outline, as far as it matters here. */
function beyond(point: Point, region: Region, edges: EdgeIndex): number {
  const reach = 2 * meantMm;
  const distance = edges
    .near(point, reach)
    .reduce((least, [from, to]) => Math.min(least, distanceToSegment(point, from, to)), reach);
  return contains(region, point) ? -distance : distance;
}

/** The points of a ring, with others between them on long edges. */
function along(ring: Ring): Point[] {
  return ring.flatMap((from, index) => {
    const to = ring[(index + 1) % ring.length]!;
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / stepMm));
    return Array.from({ length: steps }, (_, step) => ({
      x: from.x + ((to.x - from.x) * step) / steps,
      y: from.y + ((to.y - from.y) * step) / steps,
    }));
  });
}
