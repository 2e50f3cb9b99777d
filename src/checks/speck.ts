/** Holes and parts so small that they burn out, or fall through the bed of the machine and are lost. */

import { cornerReaches } from '../geometry/close-edges.ts';
import { offset } from '../geometry/clipper.ts';
import { boundsOf, boxCentre, contains, perimeter, ringArea } from '../geometry/measure.ts';
import type { Region, Ring } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import { extentOf, speckMm } from '../tag/size.ts';
import type { Piece, Source } from '../tag/tag.ts';
import { distanceTo } from './measures/blame.ts';
import { byCause } from './measures/by-cause.ts';
import type { Check } from './check.ts';
import { mm } from '../core/figures.ts';
import { listedQuoted } from '../core/names.ts';
import { perRegion } from './measures/per-region.ts';

/** Outlines nearer than this are one, in mm. */
const touchingMm = 0.02;

export const specks: Check = ({ pieces, stock }) => pieces.flatMap((piece) => specksOf(piece, stock.kerf));

const specksIn = perRegion((region, kerf) =>
  region.filter((ring) => isSpeck(ring, kerf)).sort((a, b) => extentOf(b) - extentOf(a)),
);

/** One finding for each shape to blame, at its largest speck. */
function specksOf(piece: Piece, kerf: number): Finding[] {
  const rings = specksIn(piece.region, kerf).filter((ring) => isCounted(ring, piece));
  return byCause(piece, rings, ([point]) => [point!]).map(({ path, found }) => {
    const [largest] = found;
    const width = extentOf(largest!);
    return {
      code: 'speck',
      severity: 'warning',
      piece: piece.id,
      path,
      points: [boxCentre(boundsOf([largest!])!)],
      width,
      message: `${messageOf(found, width, kerf)} ${remedyFor(found, piece)}`,
    };
  });
}

/** The hanger's opening is intended, and if the piece should be one part, a small one has fallen out altogether. */
function isCounted(ring: Ring, { hangers, parts }: Piece): boolean {
  return ringArea(ring) > 0 ? parts === 'many' : !hangers.some(({ centre }) => contains([ring], centre));
}

/**
 * Whether a hole or a part is lost: small altogether, or a short hole too narrow for the beam to leave anything open.
 */
export function isSpeck(ring: Ring, kerf: number): boolean {
  const size = extentOf(ring);
  return size < speckMm || (size < cornerReaches * kerf && ringArea(ring) < 0 && isNarrower(ring, kerf));
}

/** Whether a disc of that diameter does not fit into a hole. */
function isNarrower(hole: Ring, width: number): boolean {
  const inside: Region = [hole.toReversed()];
  // The area of a ring never exceeds its length times the radius of the largest disc in it.
  return -2 * ringArea(hole) < width * perimeter(inside) && offset(inside, -width / 2).length === 0;
}

function messageOf(rings: readonly Ring[], size: number, kerf: number): string {
  const holes = rings.filter((ring) => ringArea(ring) < 0).length;
  const one = rings.length === 1;
  // What is longer than a speck is one for being so narrow.
  const isLong = size >= speckMm;
  const narrow = `narrower than the kerf of ${mm(kerf)}`;
  const extent = isLong ? `${mm(size)} long but ${narrow}` : `only ${mm(size)} across`;
  const what = one
    ? `A ${holes ? 'hole' : 'part'} ${extent}`
    : `${[counted(holes, 'hole'), counted(rings.length - holes, 'part')].filter(Boolean).join(' and ')}, the largest ${extent},`;
  const fate = holes === rings.length ? '' : ` or ${one ? 'falls' : 'fall'} through the bed`;
  return `${what} ${one ? 'burns' : 'burn'} out${fate}.`;
}

/** A hole between shapes is in none of them, so `tidy` can only remove it from their union. */
function remedyFor([largest, ...smaller]: readonly Ring[], piece: Piece): string {
  const beside = shapesBeside(largest!, piece);
  if (beside.length < 2) return '“tidy” removes what is smaller than the size you give it.';
  const names = beside.flatMap(({ shape }) => shape.name ?? []);
  const it = smaller.length > 0 ? 'The largest' : 'It';
  if (names.length < beside.length) return `${it} lies between shapes: unite them by “union”, with “tidy”.`;
  const united = `{union: [${names.join(', ')}], tidy: …}`;
  return `${it} lies between ${listedQuoted(names)}: write ${united} for them in “body”.`;
}

/** The shapes between which a hole of the piece lies; none if it is a hole of one of them. */
export function shapesBeside(hole: Ring, { sources }: Piece): Source[] {
  const isOwn = sources.some(({ region }) => region.some((own) => isSame(own, hole)));
  return isOwn ? [] : sources.filter(({ region }) => hole.some((at) => distanceTo(region, at) < touchingMm));
}

/** Whether a shape has the hole of a piece, or is cut through it there. */
function isSame(own: Ring, ring: Ring): boolean {
  const [a, b] = [boundsOf([own])!, boundsOf([ring])!];
  return (['minX', 'minY', 'maxX', 'maxY'] as const).every((side) => Math.abs(a[side] - b[side]) < touchingMm);
}

function counted(count: number, noun: string): string {
  return count === 0 ? '' : `${count} ${noun}${count === 1 ? '' : 's'}`;
}
