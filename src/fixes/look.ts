/**
 * Measures how differently a tag looks after a change. Lettering is compared letter by letter at one x-height, so that
 * a name that becomes slightly larger, or whose letters move closer, is still the same name; changes to the letters
 * themselves, by growth, straps or another font, count in full.
 */

import { samePath } from '../core/values.ts';
import { scaling, transform, translation } from '../geometry/affine.ts';
import { oncePer } from '../core/once-per.ts';
import { intersection, union } from '../geometry/clipper.ts';
import { area, boundsOf, boxCentre, perimeter } from '../geometry/measure.ts';
import type { Point, Region } from '../geometry/types.ts';
import type { Report } from '../engine/engine.ts';
import type { Letter, Lettering } from '../tag/lettering/letters.ts';
import type { Piece } from '../tag/tag.ts';
import { marksAbove } from '../tag/lettering/marks-above.ts';
import { areOthers, lettersInWords, seenShare } from './letters-in-words.ts';

export interface LookChange {
  /** Area that looks different, as a share of the lettering, or of the piece if no lettering is cut out. */
  readonly share: number;
  /** The same for rings and openings on cut-out lettering: they may move, but at a cost. */
  readonly hangers: number;
  /** Noticeable changes, such as “letters 9 % heavier”. */
  readonly words: readonly string[];
  /** Whether letters of any text have another shape, as the words say of the text that changes most. */
  readonly redraws?: boolean;
}

/**
 * Share of a letter that counts as changed when it moves by its whole x-height relative to the others (our own
 * judgement).
 */
const movedShare = 0.5;

const roundingMm = 1e-4;

export function lookChange(before: Report, after: Report): LookChange {
  const [was, is] = [before.tag?.pieces ?? [], after.tag?.pieces ?? []];
  const changes = was.map((piece) => {
    const same = is.find(({ id }) => id === piece.id);
    return same ? pieceChange(piece, same) : gone;
  });
  const greatest = changes.reduce((a, b) => (b.share + b.hangers > a.share + a.hangers ? b : a), unchanged);
  const redrawn = { ...greatest, ...(changes.some(({ redraws }) => redraws) && { redraws: true }) };
  return is.length === was.length ? redrawn : { ...redrawn, share: Math.max(greatest.share, gone.share) };
}

const unchanged: LookChange = { share: 0, hangers: 0, words: [] };
const gone: LookChange = { share: 1, hangers: 0, words: [] };

function pieceChange(was: Piece, is: Piece): LookChange {
  const letterings = letteringUsesOf(was);
  const changes = letterings.map((use) => {
    const alike = letteringUsesOf(is).filter(
      (other) => samePath(other.lettering.path, use.lettering.path) && other.use === use.use,
    );
    // A clearing round a text is made of the same letters, and is not that text.
    const same = alike.find(({ lettering }) => lettering.as === use.lettering.as) ?? alike[0];
    return same ? letteringChange(use, same) : gone;
  });
  const isCutOut = letterings.some(({ use }) => use === 'body');
  const plate = isCutOut ? 0 : differenceArea(was.region, is.region) / area(was.region);
  return {
    share: Math.max(plate, ...changes.map(({ share }) => share)),
    hangers: isCutOut ? hangerChange(was, is) : 0,
    // Of several texts the one that changes most speaks.
    words: changes.reduce((a, b) => (b.share > a.share ? b : a), unchanged).words,
    ...(changes.some(({ redraws }) => redraws) && { redraws: true }),
  };
}

interface LetteringUse {
  readonly use: string;
  readonly lettering: Lettering;
  /** The finished shape of its letters, and all lettering in that: several lines are one shape. */
  readonly made: Region;
  readonly all: readonly Lettering[];
}

function letteringUsesOf({ sources, marks }: Piece): LetteringUse[] {
  const drawn = [
    ...sources.map(({ use, region, lettering = [] }) => ({ use, region, lettering })),
    ...marks.map(({ operation, region, lettering = [] }) => ({ use: operation, region, lettering })),
  ];
  return drawn.flatMap(({ use, region, lettering }) =>
    lettering.map((each) => ({
      use,
      lettering: each,
      made: each.shape ?? region,
      all: each.shape ? byItself(each) : lettering,
    })),
  );
}

/** The same list each time, so that what is worked out for it is found again. */
const byItself = oncePer((each: Lettering): readonly Lettering[] => [each]);

function letteringChange(was: LetteringUse, is: LetteringUse): LookChange {
  const [from, to] = [was, is].map(({ lettering }) => lettering.letters) as [readonly Letter[], readonly Letter[]];
  const scale = is.lettering.xHeight / was.lettering.xHeight;
  // Another font may join two letters into one.
  if (from.length !== to.length && isSameText(from, to)) return { ...gone, ...asOthers(was, is, scale) };
  if (from.length !== to.length || from.length === 0) return gone;
  const redrawn = redrawnLetters(from, to, scale);
  const [stout, stouter] = [deviation(was), deviation(is)];
  const added = stouter.added - stout.added;
  const lost = stouter.lost - stout.lost;
  const moved = spacingChange(from, to, was.lettering.xHeight, scale);
  const resized = Math.abs(Math.log(scale));
  return {
    hangers: 0,
    ...(redrawn.letters.redrawn.length > 0 && { redraws: true }),
    share: redrawn.share + Math.abs(added) + Math.abs(lost) + movedShare * moved.mean + resized,
    words: lettersInWords({
      of: from.length,
      ...redrawn.letters,
      larger: scale - 1,
      heavier: areOthers(redrawn.letters.redrawn, from.length)
        ? strokeOf(is.made) / strokeOf(was.made) - 1
        : // Letters that grow by more than their strokes do look lighter by that alone.
          resized > Math.abs(added - lost)
          ? 0
          : added - lost,
      spaced: moved.mean > seenShare ? (moved.closer ? 'closer together' : 'further apart') : undefined,
    }),
  };
}

/** Without spaces, which are no letters. */
function isSameText(some: readonly Letter[], others: readonly Letter[]): boolean {
  const [text, other] = [some, others].map((letters) =>
    letters
      .map((letter) => letter.text)
      .join('')
      .replace(/\s/g, ''),
  );
  return text !== '' && text === other;
}

/** What is said of letters that are others altogether. */
function asOthers(was: LetteringUse, is: LetteringUse, scale: number): Pick<LookChange, 'words' | 'redraws'> {
  const redrawn = was.lettering.letters.map(({ text }) => text);
  const heavier = strokeOf(is.made) / strokeOf(was.made) - 1;
  return {
    redraws: true,
    words: lettersInWords({ of: redrawn.length, redrawn, marked: [], larger: scale - 1, heavier }),
  };
}

/** Mean width of strokes, in mm: that of a line which is much longer than wide. */
const strokeOf = oncePer((made: Region): number => (2 * area(made)) / perimeter(made));

/** How much the letters themselves are drawn otherwise, and which: another font, weight or text, or marks that were moved. */
function redrawnLetters(from: readonly Letter[], to: readonly Letter[], scale: number) {
  const letters: { readonly redrawn: string[]; readonly marked: string[] } = { redrawn: [], marked: [] };
  let [whole, changed] = [0, 0];
  from.forEach(({ region, text, baseline }, index) => {
    const [was, is] = [scaled(region, scale), to[index]!.region];
    const isTurned = baseline === undefined && isSameTurned(was, is);
    const [ink, differs] = [area(was), isTurned ? 0 : differenceArea(was, is)];
    whole += ink;
    changed += differs;
    if (differs <= seenShare * ink) return;
    const isMark = differenceArea(withoutMarks(was), withoutMarks(is)) <= seenShare * ink;
    letters[isMark ? 'marked' : 'redrawn'].push(text);
  });
  return { share: changed / whole, letters };
}

/** Whether a letter on an arc is the same one, turned as it stands there: as much ink within as long an outline. */
function isSameTurned(was: Region, is: Region): boolean {
  const isAlike = (a: number, b: number): boolean => Math.abs(a - b) <= seenShare * a;
  return isAlike(area(was), area(is)) && isAlike(perimeter(was), perimeter(is));
}

/** A mark that is sunk into its letter takes nothing of it away. */
function withoutMarks(letter: Region): Region {
  const marks = new Set(marksAbove(letter).flat());
  return marks.size === 0 ? letter : letter.filter((ring) => !marks.has(ring));
}

/** Area that the finished shape adds to the drawn letters, and that it lacks, as shares of them. */
const deviations = oncePer((all: readonly Lettering[]) =>
  oncePer((made: Region) => {
    const drawn = union(all.flatMap(({ letters }) => letters.map(({ region }) => region)));
    const [ink, kept] = [area(drawn), area(intersection(made, drawn))];
    return { added: (area(made) - kept) / ink, lost: (ink - kept) / ink };
  }),
);
const deviation = ({ all, made }: LetteringUse) => deviations(all)(made);

/** Mean change of the letters' positions relative to their predecessors, in x-heights; that of their marks is told by itself. */
function spacingChange(from: readonly Letter[], to: readonly Letter[], xHeight: number, scale: number) {
  const steps = (letters: readonly Letter[], unit: number) =>
    letters.slice(1).map((letter, index) => {
      const [a, b] = [letters[index]!, letter].map(({ region }) => boxCentreOf(withoutMarks(region))) as [Point, Point];
      return { x: (b.x - a.x) / unit, y: (b.y - a.y) / unit };
    });
  const [was, is] = [steps(from, xHeight), steps(to, xHeight * scale)];
  const moves = was.map(({ x, y }, index) => Math.hypot(is[index]!.x - x, is[index]!.y - y));
  const length = (all: readonly Point[]) => all.reduce((sum, { x, y }) => sum + Math.hypot(x, y), 0);
  const mean = moves.length === 0 ? 0 : moves.reduce((sum, move) => sum + move, 0) / moves.length;
  return { mean, closer: length(is) < length(was) };
}

/** Lugs and openings that have moved or grown, as a share of the piece. */
function hangerChange(was: Piece, is: Piece): number {
  const drawn = ({ hangers, region }: Piece) => {
    const at = boxCentreOf(region);
    const shapes = hangers.map(({ lug, opening }) => lug ?? opening);
    return transform(union(shapes), translation(-at.x, -at.y));
  };
  const [from, to] = [drawn(was), drawn(is)];
  return (area(from) + area(to) - 2 * area(intersection(from, to))) / area(was.region);
}

/** Area in mm² in which two regions differ once their box centres are aligned. */
function differenceArea(a: Region, b: Region): number {
  const [from, to] = [boxCentreOf(a), boxCentreOf(b)];
  const laid = transform(a, translation(to.x - from.x, to.y - from.y));
  if (isSame(laid, b)) return 0;
  return area(laid) + area(b) - 2 * area(intersection(laid, b));
}

/** Whether each point is where it is in the other, but for rounding. */
function isSame(a: Region, b: Region): boolean {
  const isNear = (one: Point, other: Point | undefined): boolean =>
    other !== undefined && Math.abs(one.x - other.x) < roundingMm && Math.abs(one.y - other.y) < roundingMm;
  return (
    a.length === b.length &&
    a.every((ring, i) => ring.length === b[i]!.length && ring.every((point, at) => isNear(point, b[i]![at])))
  );
}

function scaled(region: Region, scale: number): Region {
  return scale === 1 ? region : transform(region, scaling(scale, scale, { x: 0, y: 0 }));
}

function boxCentreOf(region: Region): Point {
  const box = boundsOf(region);
  return box ? boxCentre(box) : { x: 0, y: 0 };
}
