/**
 * Necks held against erosion: as a disc grows from nothing to `minWeb`, at which widths does it find its way barred? Erosion
 * (by Clipper2) knows nothing of chords and triangles, but only tells that a way was barred between two widths, so it is
 * asked at one just below and one just above each neck.
 *
 * Each time a way is barred, the eroded piece falls into one part more, or one hole of it joins another or the outside. So
 * what a neck claims is seen at its own place, and of ways barred anywhere there may be no more than necks were found.
 */

import { area, boundsOf, contains, ringArea } from '../../../src/geometry/measure.ts';
import type { Neck } from '../../../src/geometry/necks.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Point, Region, Ring } from '../../../src/geometry/types.ts';
import { distance } from './distance.ts';
import { Eroded } from './eroded.ts';
import { erode, subtract, unite } from './shapes.ts';

/** Pieces are eroded at multiples of this width (mm) only, so that necks of nearly the same width share the work … */
const step = 0.004;
/** … and no nearer to a neck than this, as Clipper2 makes the arcs of an erosion of chords, to 0.002 mm. */
const clear = 0.006;

/** Necks with nothing between them that is this many times as wide count as one. */
const waist = 1.16;

/** A width agreed on is off by this much at most (mm). */
export const agreement = step + clear;

export interface Comparison {
  /** What erosion denies, in words. */
  readonly disagreements: readonly string[];
  /** Ways barred between bodies or round holes that necks were found for. */
  readonly barred: number;
}

/** Compares the necks of one part of a piece. */
export function compareByErosion(whole: Region, necks: readonly Neck[], minWeb: number): Comparison {
  const part = withoutSpecks(whole);
  const cache = new Map<number, Eroded>();
  const eroded = (level: number): Eroded => {
    const made = cache.get(level) ?? new Eroded(part, level * step);
    cache.set(level, made);
    return made;
  };
  const brackets = necks.map((neck) => ({ neck, below: levelBelow(neck), above: levelAbove(neck) }));
  const top = Math.floor((minWeb - 0.04) / step);
  const levels = [...new Set([0, top, ...brackets.flatMap(({ below, above }) => [below, above])])].sort(
    (a, b) => a - b,
  );
  const bodies = bodiesOf(part, minWeb);
  const disagreements: string[] = [];

  for (const { neck, below, above } of brackets) {
    const denied = denials(part, neck, eroded(below), eroded(above), bodies.large);
    const { kind, width, ends } = neck;
    disagreements.push(...denied.map((denial) => `${kind} of ${width} at ${JSON.stringify(ends)}: ${denial}`));
  }

  // A stroke is one finding for a web of thin runs, of which each may be barred at a width of its own: these do not count.
  const webs = websOf(part, bodies, necks, minWeb);
  const holes = (webs.length > 0 ? partsOf(withoutSpecks(subtract(part, webs))) : [part]).flatMap(
    ([, ...inner]) => inner,
  );
  const ways = (level: number): number => {
    const rest = webs.length > 0 ? new Eroded(subtract(eroded(level).parts.flat(), webs), 0) : eroded(level);
    const joined =
      level === 0 ? holes.length : new Set(holes.map((hole) => rest.holeAt(hole[0]!)).filter(Boolean)).size;
    return joined - new Set(bodies.large.map((body) => rest.partAt(body[0]![0]!))).size;
  };
  const compared = bodies.large.length > 1 || holes.length > 0 ? levels.filter((level) => level <= top) : [];
  const counts = compared.map(ways);
  for (const [i, level] of compared.entries()) {
    if (i === 0) continue;
    const before = compared[i - 1]!;
    const lost = counts[i - 1]! - counts[i]!;
    const found = brackets.filter((b) => b.neck.kind !== 'stroke' && b.below < level && b.above > before).length;
    if (lost <= found) continue;
    disagreements.push(`${lost} ways barred from ${before * step} to ${level * step}, and ${found} necks found`);
  }
  const barred = compared.length > 0 ? counts[0]! - counts.at(-1)! : 0;
  return { disagreements, barred };
}

/** Booleans leave holes of a few thousandths of a mm behind, which would be eroded into large ones. */
const withoutSpecks = (region: Region): Region => region.filter((ring) => Math.abs(ringArea(ring)) > 1e-4);

const levelBelow = ({ width }: Neck): number => Math.max(0, Math.floor((width - clear) / step));
const levelAbove = ({ width }: Neck): number => Math.ceil((width + clear) / step);

/** What a single neck claims and erosion just below and just above its width does not bear out. */
function denials(part: Region, neck: Neck, below: Eroded, above: Eroded, bodies: readonly Region[]): string[] {
  const { kind, width, ends, samples } = neck;
  const middle = between(ends);
  const halves = partsOf(subtract(part, [slit(ends)]));
  if (kind !== 'stroke' && halves.length !== (kind === 'bridge' ? 2 : 1)) return ['cutting it does the contrary'];
  if (kind === 'bridge' && !halves.every((half) => contains(half, samples[0]) !== contains(half, samples[1]))) {
    return ['its samples are on the same side'];
  }
  const isFree = halves.some((half) => !bodies.some((body) => contains(half, body[0]![0]!)));
  if (kind === 'stroke' && halves.length === 2 && isFree) {
    // A run that ends free narrows to its tip: there are no two sides to part, and it is not equally wide from both edges.
    const room = 2 * distance([[middle]], part);
    return Math.abs(room - width) < Math.max(agreement, width / 20) ? [] : [`there is room for a disc of ${room}`];
  }
  const whole = below.partAt(middle);
  if (!whole) return ['a smaller disc does not pass'];
  const isWall = (eroded: Eroded) => eroded.holeAt(ends[0]) !== eroded.holeAt(ends[1]);
  // As long as nothing is eroded, the ends are on the outlines themselves.
  if (kind !== 'bridge' && (below.width > 0 ? isWall(below) : halves.length === 1))
    return isWall(above) ? ['a larger disc does not open it'] : [];
  const sides = partsOf(subtract(whole, [slit(ends)]));
  const isParted = sides.every((side) => above.parts.some((left) => contains(side, left[0]![0]!)));
  return sides.length === 2 && isParted ? [] : ['a larger disc does not part what it joins'];
}

/** A cut from end to end, and a little beyond. */
function slit([p, q]: Neck['ends']): Ring {
  const length = Math.hypot(q.x - p.x, q.y - p.y);
  const [x, y] = [(0.001 * (q.x - p.x)) / length, (0.001 * (q.y - p.y)) / length];
  return [
    { x: p.x - x - y, y: p.y - y + x },
    { x: p.x - x + y, y: p.y - y - x },
    { x: q.x + x + y, y: q.y + y - x },
    { x: q.x + x - y, y: q.y + y + x },
  ];
}

/** What the centre of a disc reaches that is wide enough for the places between to be necks. */
interface Bodies {
  /** So large that nobody would take them for bulges of a stroke. */
  readonly large: readonly Region[];
  readonly small: readonly Region[];
}

function bodiesOf(part: Region, minWeb: number): Bodies {
  const bodies = new Eroded(part, waist * minWeb).parts;
  const radius = (waist * minWeb) / 2;
  const enough = 2 * minWeb ** 2;
  const large = bodies.filter((body) => leastGrown(body, radius) > enough || area(erode(body, -radius)) > enough);
  return { large, small: bodies.filter((body) => !large.includes(body)) };
}

/**
 * The area of a body grown all round is no less than that of a strip of twice the radius along it, with a half disc at each end: most are
 * larger than is asked for already, and growing takes long.
 */
function leastGrown(body: Region, radius: number): number {
  const { minX, minY, maxX, maxY } = boundsOf(body)!;
  return 2 * radius * Math.max(maxX - minX, maxY - minY) + Math.PI * radius ** 2;
}

/** What lies between the large bodies and has a stroke in it. */
function websOf(part: Region, { large, small }: Bodies, necks: readonly Neck[], minWeb: number): Region {
  const strokes = necks.filter(({ kind }) => kind === 'stroke').map(({ ends }) => ends);
  if (strokes.length === 0) return [];
  const grown = (bodies: readonly Region[]) => bodies.flatMap((body) => erode(body, (-waist * minWeb) / 2 - 0.005));
  const thin = subtract(part, grown(large));
  const webs = partsOf(unite(...thin, ...grown(small))).filter((web) =>
    strokes.some((ends) => about(ends, minWeb / 3).some((point) => contains(web, point))),
  );
  // A disc on one side of a stroke may cover the very place where it is narrowest.
  return [...webs.flat(), ...strokes.map(slit)];
}

/** The middle of a neck, and a point on each side of it. */
function about(ends: Neck['ends'], by: number): Point[] {
  const [p, q] = ends;
  const { x, y } = between(ends);
  const share = by / Math.hypot(q.x - p.x, q.y - p.y);
  return [-share, 0, share].map((s) => ({ x: x + s * (q.y - p.y), y: y - s * (q.x - p.x) }));
}

const between = ([p, q]: Neck['ends']): Point => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
