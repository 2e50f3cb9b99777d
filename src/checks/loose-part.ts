/**
 * Parts that fall out of a piece: dots of letters, letters that do not touch, counters of letters cut through a plate.
 */

import { capitalised } from '../core/names.ts';
import { samePath } from '../core/values.ts';
import { intersection } from '../geometry/clipper.ts';
import { area, boundsOf, boxCentre, boxesOverlap, contains, ringArea } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import type { Point, Region } from '../geometry/types.ts';
import type { Finding, YamlPath } from '../core/issue.ts';
import { rowsOf } from '../tag/overlap/runs.ts';
import type { Piece, Source, Tag } from '../tag/tag.ts';
import { wholeShapesOf } from '../tag/whole-shapes.ts';
import { mm2, mmByMm } from '../core/figures.ts';
import { blame } from './measures/blame.ts';
import { byCause, locationOf } from './measures/by-cause.ts';
import type { Check } from './check.ts';
import { isLettering } from './measures/origin.ts';

/** Most parts counted individually; a text whose letters all fall apart is reported as a whole. */
const mostCounted = 6;

/** A stick that meets less than this share of what it carries on its piece carries something that is not there. */
const carriedShare = 0.5;

export const looseParts: Check = ({ pieces, made }) =>
  pieces.flatMap((piece) =>
    piece.parts === 'many' ? [] : [...emptySticks(piece, made), ...loosePartsOf(piece, pieces)],
  );

/** Sticks whose load is not on their piece. */
function emptySticks(piece: Piece, made: Tag['made']): Finding[] {
  return piece.sources.flatMap(({ use, shape }): Finding[] => {
    if (use !== 'body' || shape.generator.kind !== 'stick') return [];
    const { shape: load } = shape.generator;
    const carried = made.get(load)?.region ?? [];
    if (carried.length === 0 || area(intersection(carried, piece.body)) >= carriedShare * area(carried)) return [];
    const message = `The stick carries “${load.name ?? 'a shape'}”, which is not on “${piece.title}”: it needs to be in “body” too.`;
    return [
      {
        code: 'loose-part',
        severity: 'error',
        piece: piece.id,
        path: [...shape.path, 'stick', 'carries'],
        points: [boxCentre(boundsOf(carried)!)],
        message,
      },
    ];
  });
}

/** One finding for each shape to blame, at its largest part. */
function loosePartsOf(piece: Piece, all: readonly Piece[]): Finding[] {
  const parts = partsOf(piece.region);
  const held = parts.find((part) => isHeld(part, piece)) ?? parts[0];
  const loose = parts.filter((part) => part !== held);
  if (loose.length > mostCounted) {
    const ways =
      piece.glueTo === undefined
        ? 'Join them, put them on a backing, or keep them apart with “parts: many”.'
        : 'Join them, or glue each by itself with “parts: many”.';
    const message = `“${piece.title}” falls into ${parts.length} parts. ${ways}`;
    return [loosePartFinding(piece, blame(piece, onEdge(loose[0]!)), loose, message)];
  }
  return byCause(piece, loose, (part) => [onEdge(part)]).map(({ path, found }) =>
    loosePartFinding(piece, path, found, messageOf(found, piece, path, all)),
  );
}

function messageOf(parts: readonly Region[], piece: Piece, path: YamlPath, all: readonly Piece[]): string {
  const { title } = piece;
  const box = boundsOf(parts[0]!)!;
  const size = mmByMm(box.maxX - box.minX, box.maxY - box.minY, 1);
  const shapes = parts.length === 1 ? wholeShapesOf(parts[0]!, piece) : [];
  const ways =
    shapes.length > 0
      ? `Move it until it overlaps the rest, or ${apart(piece, 'it')}.`
      : waysOut(piece, path, parts.length === 1 ? 'it' : 'them', all);
  const name = lettersOf(parts[0]!, piece) ?? shapeInWords(shapes);
  if (parts.length === 1) {
    const what = name === undefined ? `A part of “${title}”` : `${capitalised(name)} of “${title}”`;
    return `${what} (${size}, ${mm2(area(parts[0]!), 1)}) is joined to nothing and falls out. ${ways}`;
  }
  const largest = name === undefined ? `the largest ${size}` : `the largest of them ${name} (${size})`;
  return `${parts.length} parts of “${title}”, ${largest}, are joined to nothing and fall out. ${ways}`;
}

/** A letter is in a part if this share of it is, as the font draws it. */
const withinShare = 0.5;

/** Number of rows by which that is judged. */
const rowsAsked = 16;

/** A part is of a letter if this share of it is, for growth adds to a dot: of a letter as the font draws it. */
const ofLetterShare = 0.3;

/** Most letters of a part that are quoted; longer ones are no longer found at a glance. */
const mostQuoted = 12;

/** The letters that make a part, the letter that it is part of, or the one whose counter it is; `undefined` if none. */
function lettersOf(part: Region, { sources }: Piece): string | undefined {
  const letters = sources.flatMap(({ lettering = [] }) => lettering.flatMap((each) => each.letters));
  const box = boundsOf(part)!;
  const near = letters.filter(({ region }) => boxesOverlap(boundsOf(region)!, box));
  const within = near.filter(({ region }) => isMostlyIn(region, part));
  const text = within.map((letter) => letter.text).join('');
  if (text !== '') return Array.from(text).length > mostQuoted ? undefined : `the “${text}”`;
  const whole = near.find(({ region }) => area(intersection(region, part)) > ofLetterShare * area(part));
  if (whole) return `a part of the “${whole.text}”`;
  const round = near.find(({ region }) => {
    const inside = region.filter((ring) => ringArea(ring) < 0).map((ring) => ring.toReversed());
    return area(intersection(inside, part)) > withinShare * area(part);
  });
  return round && `the inside of the “${round.text}”`;
}

/** Judged on a few rows, by whether the middle of each stroke that they cross is in the part. */
function isMostlyIn(letter: Region, part: Region): boolean {
  const { minY, maxY } = boundsOf(letter)!;
  const pitch = (maxY - minY) / rowsAsked;
  const { first, lines } = rowsOf(letter, pitch);
  let [inside, whole] = [0, 0];
  for (const [index, line] of lines.entries())
    for (let i = 0; i < line.length; i += 2) {
      const [from, to] = [line[i]!, line[i + 1]!];
      whole += to - from;
      if (contains(part, { x: (from + to) / 2, y: (first + index + 0.5) * pitch })) inside += to - from;
    }
  return inside > withinShare * whole;
}

/** The keys that join parts, as far as they suit what the piece is made of, and the one that leaves them apart. */
function waysOut(piece: Piece, path: YamlPath, them: 'it' | 'them', all: readonly Piece[]): string {
  const { sources } = piece;
  const cut = sources.find(({ use, path: of }) => use === 'cut' && samePath(of, path));
  if (cut) {
    const hold = `hold ${them} with “bridges” across ${cut.shape.name === undefined ? 'what is cut out' : `“${cut.shape.name}”`}`;
    return isPuzzle(cut, all)
      ? `${capitalised(apart(piece, them))}, as in a puzzle, or ${hold}.`
      : `${capitalised(hold)}.`;
  }
  const isLettered = sources.some(({ use, shape }) => use === 'body' && isLettering(shape));
  const keys = isLettered ? '“overlap”, “straps” or “bridges”' : '“straps” or “bridges”';
  return `Join ${them} with ${keys}, or ${apart(piece, them)}.`;
}

/** Whether the letters that are cut out of one piece are cut as another, to be laid in. */
function isPuzzle(cut: Source, all: readonly Piece[]): boolean {
  const letters = cut.lettering?.map(({ path }) => path) ?? [];
  const bodies = all.flatMap(({ sources }) => sources.filter(({ use }) => use === 'body'));
  return bodies.some(({ lettering = [] }) =>
    lettering.some(({ as, path }) => as === 'material' && letters.some((each) => samePath(each, path))),
  );
}

/** The key that leaves parts as they are, in words. */
const apart = ({ glueTo }: Piece, them: 'it' | 'them'): string =>
  `${glueTo === undefined ? `keep ${them} apart` : `glue ${them} on separately`} with “parts: many”`;

function shapeInWords([shape, ...others]: readonly Source[]): string | undefined {
  const name = others.length === 0 ? shape?.shape.name : undefined;
  return name === undefined ? undefined : `“${name}”`;
}

/** Whether the piece hangs by this part, which is then the one that stays. */
function isHeld(part: Region, { hangers }: Piece): boolean {
  return hangers.some(({ centre }) => part.some((ring) => contains([ring], centre)));
}

function loosePartFinding(piece: Piece, path: YamlPath, parts: readonly Region[], message: string): Finding {
  const places = parts.map((part) => ({ points: [pointInside(part)] }));
  return { code: 'loose-part', severity: 'error', piece: piece.id, path, ...locationOf(places), message };
}

const onEdge = (part: Region): Point => part[0]![0]!;

/** A point of the part: its middle, if that is inside it. */
function pointInside(part: Region): Point {
  const middle = boxCentre(boundsOf(part)!);
  return contains(part, middle) ? middle : onEdge(part);
}
