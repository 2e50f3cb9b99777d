/** Glued pieces that overhang the piece below, or have nothing under them to be glued to. */

import { union } from '../geometry/clipper.ts';
import { area, boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Point } from '../geometry/types.ts';
import type { Finding } from '../core/issue.ts';
import { mm, mm2 } from '../core/figures.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import { bearingsOf, floorOf, isUnheld } from './measures/bearing.ts';
import type { Bearing } from './measures/bearing.ts';
import { blame } from './measures/blame.ts';
import type { Check } from './check.ts';
import { areLevel } from './measures/layers.ts';

/** Overhang above this, in mm, is visible; less is within the accuracy of glueing by hand (our own judgement). */
const seenMm = 0.3;

export const offBacking: Check = (tag) => tag.pieces.flatMap((piece) => offBackingOf(piece, tag));

function offBackingOf(piece: Piece, tag: Tag): Finding[] {
  const { pieces } = tag;
  const carrier = pieces.find(({ id }) => id === piece.glueTo);
  if (!carrier) return [];
  let bearings = bearingsOf(piece.region, carrier.region);
  if (bearings.some((bearing) => isUnheld(bearing) || overhangs(bearing))) {
    // Pieces level with the carrier support it too.
    const others = pieces.filter((other) => other !== carrier && areLevel(other, carrier, pieces));
    if (others.length > 0) bearings = bearingsOf(piece.region, union([carrier, ...others].map(({ region }) => region)));
  }
  const unheld = bearings.filter(isUnheld);
  const over = bearings.filter((bearing) => !isUnheld(bearing) && overhangs(bearing));
  const names = { piece, carrier, all: bearings, floor: () => floorOf(piece, tag) };
  return [
    ...(unheld.length > 0
      ? [backingFinding(piece, 'error', partCentre(unheld[0]!), unheldMessage(unheld, names))]
      : []),
    ...(over.length > 0 ? [overhangFinding(over, names)] : []),
  ];
}

interface BackingContext {
  readonly piece: Piece;
  readonly carrier: Piece;
  readonly all: readonly Bearing[];
  /** The piece further down on which it lies. */
  readonly floor: () => Piece | undefined;
}

const overhangs = ({ overhang }: Bearing): boolean => overhang > seenMm;

function backingFinding(
  piece: Piece,
  severity: 'error' | 'warning',
  point: Point,
  message: string,
  width?: number,
): Finding {
  const at = width === undefined ? {} : { width };
  return { code: 'off-backing', severity, piece: piece.id, path: blame(piece, point), points: [point], ...at, message };
}

function unheldMessage(unheld: readonly Bearing[], names: BackingContext): string {
  const isInlay = unheld.every(({ isWithin }) => isWithin) && unheld.length === names.all.length;
  if (!isInlay) return unheldInWords(unheld, names);
  const floor = names.floor();
  return `${unheldInWords(unheld, names)} ${floor ? `It lies on “${floor.title}”: let it be glued to that.` : 'To fill an opening it needs a piece below both, and is glued to that.'}`;
}

function unheldInWords(unheld: readonly Bearing[], names: BackingContext): string {
  const { carrier, piece, all } = names;
  const [largest] = unheld;
  const nothing = 'there is nothing to glue them to';
  if (unheld.length === all.length && all.length > 1)
    return all.length === 2
      ? `Neither part of “${piece.title}” lies on “${carrier.title}”: ${nothing}.`
      : `None of the ${all.length} parts of “${piece.title}” lies on “${carrier.title}”: ${nothing}.`;
  if (unheld.length > 1) {
    const numbers = unheld.map((each) => numberOf(each, all)).sort((a, b) => a - b);
    return `${unheld.length} of the ${all.length} parts of “${piece.title}” (from the left: ${numbersInWords(numbers)}) do not lie on “${carrier.title}”: ${nothing}.`;
  }
  const { part, share, isWithin } = largest!;
  const on = share * area(part);
  const what = sentenceStart(largest!, names);
  if (on >= 0.05) return `${what} has only ${mm2(on, 1)} on “${carrier.title}”: too little to glue.`;
  return `${what} lies ${isWithin ? 'over an opening of' : 'beside'} “${carrier.title}”: there is nothing to glue it to.`;
}

function overhangFinding(over: readonly Bearing[], names: BackingContext): Finding {
  const { carrier, piece, all } = names;
  const farthest = over.reduce((a, b) => (b.overhang > a.overhang ? b : a));
  const { overhang, at } = farthest;
  const message =
    over.length === 1
      ? `${sentenceStart(farthest, names)} overhangs “${carrier.title}” by ${mm(overhang)}.`
      : `${partsInWords(over, names)} overhang “${carrier.title}”, by up to ${mm(overhang)} (part ${numberOf(farthest, all)} from the left).`;
  return backingFinding(piece, 'warning', at, message, overhang);
}

function sentenceStart(bearing: Bearing, { piece, all }: BackingContext): string {
  return all.length === 1
    ? `“${piece.title}”`
    : `The ${ordinal(numberOf(bearing, all), all.length)} part of “${piece.title}”${inTheMiddle(bearing, all)}`;
}

function inTheMiddle(bearing: Bearing, all: readonly Bearing[]): string {
  const number = numberOf(bearing, all);
  return number === 1 || number === all.length ? '' : ', from the left,';
}

/** The ends of a row by name, so that nobody has to count. */
function ordinal(number: number, of: number): string {
  if (of === 2) return number === 1 ? 'left' : 'right';
  if (number === of) return 'last';
  if (number === 1) return 'first';
  const ends: Readonly<Record<number, string>> = { 1: 'st', 2: 'nd', 3: 'rd' };
  const isTeen = number % 100 > 10 && number % 100 < 14;
  return `${number}${(isTeen ? undefined : ends[number % 10]) ?? 'th'}`;
}

function partsInWords(over: readonly Bearing[], { piece, all }: BackingContext): string {
  if (over.length < all.length) return `${over.length} of the ${all.length} parts of “${piece.title}”`;
  return all.length === 2 ? `Both parts of “${piece.title}”` : `All ${all.length} parts of “${piece.title}”`;
}

/** Number of the part, counted from the left. */
function numberOf(bearing: Bearing, all: readonly Bearing[]): number {
  const leftOf = ({ part }: Bearing) => boundsOf(part)!.minX;
  return all.toSorted((a, b) => leftOf(a) - leftOf(b)).indexOf(bearing) + 1;
}

/** Most parts named; if there are more, only the first of them. */
const mostNamed = 5;

function numbersInWords(numbers: readonly number[]): string {
  const named = numbers.slice(0, mostNamed).join(', ');
  return numbers.length > mostNamed ? `${named} …` : named;
}

function partCentre({ part }: Bearing): Point {
  return boxCentre(boundsOf(part)!);
}
