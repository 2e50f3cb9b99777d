/**
 * A stock of the workshop's file that a tag relies on where nothing of it was measured: one word, with the test piece that would
 * settle it. Stocks written in place are left alone: who writes one has other things on the mind.
 */

import { findNarrow } from '../geometry/necks.ts';
import type { Finding } from '../core/issue.ts';
import { mm } from '../core/figures.ts';
import type { Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { engravedHeights, usualXHeightMm } from './hard-to-read.ts';
import { perRegion } from './per-region.ts';
import { stockPath } from './stock-path.ts';

/** So many times as wide as may be, or as high, and a tag no longer relies on it. Our own judgement. */
const nearLimit = 1.3;

export const notMeasured: Check = (tag) => {
  const { name } = tag.stock;
  if (name === undefined) return [];
  const told = kerf(tag, name) ?? web(tag, name) ?? lettering(tag, name);
  return told === undefined ? [] : [{ code: 'not-measured', severity: 'info', path: stockPath(tag.pieces), ...told }];
};

type Told = Pick<Finding, 'message'> & Partial<Pick<Finding, 'piece' | 'points' | 'width'>>;

function kerf({ stock, output }: Tag, name: string): Told | undefined {
  if (stock.says?.kerf !== false || !output.compensate) return undefined;
  return {
    message: `“${name}” has no kerf yet: parts come out smaller, and holes larger, by what the beam removes. Cut a kerf test to find it.`,
  };
}

const narrowOf = perRegion((region, width) => findNarrow(region, width).necks);

function web({ stock, pieces }: Tag, name: string): Told | undefined {
  if (stock.says?.minWeb !== false) return undefined;
  const { minWeb } = stock;
  const necks = pieces
    // What is glued on something is carried by it.
    .filter(({ glueTo }) => glueTo === undefined)
    .flatMap((piece) => narrowOf(piece.region, nearLimit * minWeb).map((neck) => ({ piece, neck })));
  const [first] = necks.sort((a, b) => a.neck.width - b.neck.width);
  // What is narrower is told by the check of the place itself.
  if (!first || first.neck.width < minWeb) return undefined;
  const { piece, neck } = first;
  return {
    piece: piece.id,
    points: neck.ends,
    width: neck.width,
    message: `The narrowest place is ${mm(neck.width)}; the minimum of ${mm(minWeb)} for “${name}” is only a default. Cut a web comb to find your own.`,
  };
}

function lettering(tag: Tag, name: string): Told | undefined {
  if (tag.stock.minXHeight !== undefined) return undefined;
  const height = Math.min(...engravedHeights(tag));
  if (height < usualXHeightMm || height > nearLimit * usualXHeightMm) return undefined;
  return {
    message: `Engraved letters are ${mm(height)} high; the minimum of ${mm(usualXHeightMm)} for “${name}” is only a default. Cut an engraving ladder to find your own.`,
  };
}
