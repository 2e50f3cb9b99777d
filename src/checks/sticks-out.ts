/**
 * A name across a frame whose last letter ends just beyond it: one that is meant to reach over does so by more. And what has
 * no room for its margin at the side where it is placed.
 */

import { difference, intersection, offset } from '../geometry/clipper.ts';
import { area, boundsOf, boxesOverlap, ringArea } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import { mm } from '../core/figures.ts';
import { capitalised, listedQuoted } from '../core/names.ts';
import type { Letter } from '../tag/lettering/letters.ts';
import type { Piece, Source, Tag } from '../tag/tag.ts';
import { distanceTo } from './measures/blame.ts';
import type { Check } from './check.ts';
import { offMargin } from './measures/off-margin.ts';
import { nameForMessage } from './measures/origin.ts';
import { perRegion } from './measures/per-region.ts';

/** Sticking out by less than this, in mm, is not seen (our own judgement). */
const seenMm = 0.2;

/** A letter of which more than this share is beyond the frame is meant to be there (our own judgement). */
const meantShare = 1 / 3;

/** Notches that a disc of this radius, in mm, does not go into belong to the frame, such as those between leaves (our own judgement). */
const notchMm = 5;

/** Lettering is across a frame if at least this share of it is in its opening (our own judgement). */
const acrossShare = 0.5;

export const sticksOut: Check = ({ pieces, made }) =>
  pieces.flatMap((piece) => [...outOfFrames(piece, made), ...offMargin(piece, made)]);

function outOfFrames(piece: Piece, made: Tag['made']): Finding[] {
  const bodies = piece.sources.filter(({ use }) => use === 'body').flatMap((source) => unitedOf(source, made));
  return bodies
    .filter(({ lettering = [] }) => lettering.length > 0)
    .flatMap((name) =>
      bodies.filter((frame) => !frame.lettering?.length).flatMap((frame) => outOf(name, frame, piece)),
    );
}

/** A shape that is a piece, or part of one with others. */
type Part = Pick<Source, 'region' | 'lettering' | 'shape' | 'path'>;

/** Of a member of a union at most this share may lie elsewhere, where that is moved or changed as a whole. */
const elsewhereShare = 0.01;

/** What a union is made of, where it has left that in its place. */
function unitedOf(source: Part, made: Tag['made']): Part[] {
  const { generator } = source.shape;
  if (generator.kind !== 'union') return [source];
  const parts = generator.shapes.map((shape): Part => {
    const { region = [], lettering } = made.get(shape) ?? {};
    return { shape, path: shape.path, region, ...(lettering ? { lettering } : {}) };
  });
  const isThere = ({ region }: Part): boolean =>
    region.length > 0 && area(difference(region, [source.region])) < elsewhereShare * area(region);
  return parts.every(isThere) ? parts.flatMap((part) => unitedOf(part, made)) : [source];
}

function outOf({ region, lettering, shape, path }: Part, frame: Part, piece: Piece): Finding[] {
  const inner = frame.region.filter((ring) => ringArea(ring) < 0).map((ring) => ring.toReversed());
  const [box, around] = [boundsOf(region), boundsOf(frame.region)];
  if (inner.length === 0 || !box || !around || !boxesOverlap(box, around)) return [];
  const { outer, seen } = outlineOf(frame.region);
  const beyond = difference(region, [seen]);
  if (beyond.length === 0 || area(intersection(region, inner)) < acrossShare * area(region)) return [];
  const letters = lettering!.flatMap((each) => each.letters);
  if (letters.some((letter) => outside(letter, seen) > meantShare)) return [];
  const depths = beyond.flat().map((point) => ({ point, depth: distanceTo(outer, point) }));
  const farthest = depths.reduce((most, each) => (each.depth > most.depth ? each : most));
  const named = letters.filter((letter) => outside(letter, seen) > 0).map(({ text }) => text);
  const at = named.length > 0 && letters.length > 1 ? ` at ${listedQuoted([...new Set(named)], 3)}` : '';
  const what = capitalised(nameForMessage(shape) ?? 'the lettering');
  const of = nameForMessage(frame.shape) ?? 'its frame';
  return [
    {
      code: 'sticks-out',
      severity: 'info',
      piece: piece.id,
      path,
      points: [farthest.point],
      width: farthest.depth,
      message: `${what} ends ${mm(farthest.depth)} beyond ${of}${at}: it looks like a mistake.`,
    },
  ];
}

/** Its outline without its openings and notches, and that beyond which something is seen. */
const outlineOf = perRegion((frame) => {
  const filled = frame.filter((ring) => ringArea(ring) > 0);
  const outer = offset(offset(filled, notchMm), -notchMm);
  return { outer, seen: offset(outer, seenMm) };
});

/** Share of a letter. */
function outside({ region }: Letter, seen: Region): number {
  return area(difference(region, [seen])) / area(region);
}
