/** What of a piece looks otherwise than it was approved. */

import { limit } from '../../core/figures.ts';
import { listedQuoted } from '../../core/names.ts';
import { transform, translation } from '../../geometry/affine.ts';
import { difference, offset } from '../../geometry/clipper.ts';
import { area } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { poleOf } from '../../geometry/pole.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { sizeWords } from '../../spec/model/tie.ts';
import { approvedPiece, layerOf, layers, middleOf } from '../../tag/approval/approved-piece.ts';
import type { Layer } from '../../tag/approval/approved-piece.ts';
import { polygonsIn } from '../../tag/approval/polygon-path.ts';
import { approvedTie } from '../../tag/approval/approved-tie.ts';
import type { ApprovedPiece, ApprovedTag, ApprovedTie } from '../../tag/approval/read-approval.ts';
import type { Piece, Tag } from '../../tag/tag.ts';

/** Two outlines are the same that are nowhere further apart, in mm: less than a customer sees, more than rounding does. */
const sameWithinMm = 0.05;

/** Most places that are pointed out on one piece. */
const mostPlaces = 4;

export interface Difference {
  /** The end of a sentence that begins with the piece. */
  readonly words: string;
  readonly points: readonly Point[];
}

const layerWords: Readonly<Record<Layer, string>> = {
  outline: 'its outline differs',
  engrave: 'its engraving differs',
  score: 'its scored lines differ',
};

/** `undefined` if nothing a customer sees has changed. */
export function differenceOf(piece: Piece, tag: Tag, was: ApprovedPiece): Difference | undefined {
  const is = approvedPiece(piece, tag);
  const words: string[] = [];
  if (is.material !== was.material || is.thickness !== was.thickness)
    words.push(`it is cut from ${stockWords(is)} instead of ${stockWords(was)}`);
  const spelt = changedWords(is.words, was.words);
  if (spelt) words.push(spelt);
  for (const side of ['width', 'height'] as const)
    if (Math.abs(is[side] - was[side]) > 2 * sameWithinMm)
      words.push(`its ${side} is ${limit(is[side])} instead of ${limit(was[side])}`);
  // Other words, or the same at another size, say already that all of it looks different.
  const isTold = spelt !== undefined || isScaled(is, was);
  const middle = middleOf(piece);
  const toOrigin = translation(-middle.x, -middle.y);
  const points: Point[] = [];
  for (const layer of isTold ? [] : layers) {
    if (is[layer] === was[layer]) continue;
    const places = placesApart(transform(layerOf(piece, layer), toOrigin), polygonsIn(was[layer] ?? ''));
    if (places.length === 0) continue;
    points.push(...places.map(({ x, y }) => ({ x: x + middle.x, y: y + middle.y })));
    words.push(layerWords[layer]);
  }
  return words.length === 0 ? undefined : { words: words.join('; '), points: points.slice(0, mostPlaces) };
}

/** The end of a sentence that begins with the tag. What a tag no longer hangs by shows in its outline; older records do not have it. */
export function changedTie(tag: Tag, { hangs_on: was }: ApprovedTag): string | undefined {
  const is = approvedTie(tag);
  if (!is || !was || (is.kind === was.kind && is.size === was.size)) return undefined;
  return `it hangs on ${tieWords(is)} instead of ${tieWords(was)}`;
}

/** Such as “twine 1.5 mm thick”, as on the proof. */
function tieWords({ kind, size }: ApprovedTie): string {
  if (kind === undefined || size === undefined) return 'what is not named';
  return `${kind === 'split ring' ? 'a split ring' : kind} ${limit(size)} ${sizeWords[kind]}`;
}

/** Such as “birch plywood, 3 mm”. */
function stockWords({ material, thickness }: ApprovedPiece): string {
  const parts = [...(material === undefined ? [] : [material]), ...(thickness === undefined ? [] : [limit(thickness)])];
  return parts.join(', ') || 'no named stock';
}

/** Proportions that differ by less are the same. */
const sameShare = 0.01;

/** Whether it is larger or smaller in the same proportions. */
function isScaled(is: ApprovedPiece, was: ApprovedPiece): boolean {
  const [wide, high] = [is.width / was.width, is.height / was.height];
  return Math.abs(wide - 1) > sameShare && Math.abs(wide - high) < sameShare;
}

function changedWords(is: readonly string[], was: readonly string[]): string | undefined {
  const [come, gone] = [is.filter((each) => !was.includes(each)), was.filter((each) => !is.includes(each))];
  if (come.length > 0 && gone.length > 0) return `it says ${listedQuoted(come)} instead of ${listedQuoted(gone)}`;
  return addedOrGone(come, gone)[0];
}

/** The ends of sentences about what has come and what has gone. */
export function addedOrGone(come: readonly string[], gone: readonly string[]): string[] {
  return [
    ...(come.length > 0 ? [`${listedQuoted(come)} ${come.length === 1 ? 'has' : 'have'} been added`] : []),
    ...(gone.length > 0 ? [`${listedQuoted(gone)} ${gone.length === 1 ? 'is' : 'are'} gone`] : []),
  ];
}

/** The middles of what is in one and not in the other and wider than the tolerance, the largest first. */
function placesApart(is: Region, was: Region): Point[] {
  const apart = [difference(is, [was]), difference(was, [is])];
  const wide = apart.flatMap((each) => partsOf(offset(each, -sameWithinMm / 2)));
  return wide.toSorted((one, other) => area(other) - area(one)).flatMap((part) => poleOf(part) ?? []);
}
