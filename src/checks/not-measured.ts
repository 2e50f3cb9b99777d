/**
 * A stock from the workshop's file that a tag depends on although nothing of it was measured: one finding, with the
 * test piece that would settle it. Of a stock written in place only a missing kerf is said, once it has a thickness: at that point the maker has other concerns.
 */

import { findNarrow } from '../geometry/necks.ts';
import type { Finding } from '../core/issue.ts';
import { mm } from '../core/figures.ts';
import { capitalised } from '../core/names.ts';
import { isWithin } from '../core/values.ts';
import { unnamed, webDefaultOf } from '../spec/model/min-web-defaults.ts';
import { textsOf } from '../spec/model/shape-model.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import type { Check } from './check.ts';
import { engravedHeights, usualXHeightMm } from './hard-to-read.ts';
import { perRegion } from './measures/per-region.ts';
import { slackOf } from './measures/slack.ts';
import { stockPath } from './measures/stock-path.ts';

/** Beyond this many times the least width or height, a tag no longer depends on it. Our own judgement. */
const nearLimit = 1.3;

/** The same of a width that is known of the material, if not of this sheet: it is a cautious one. Our own judgement. */
const nearKnown = 1.1;

export const notMeasured: Check = (tag) => {
  const { name, thickness } = tag.stock;
  // Without a thickness, it is no sheet yet but a look.
  if (name === undefined && thickness === undefined) return [];
  const notice =
    name === undefined
      ? kerfNotice(tag, 'this stock')
      : (kerfNotice(tag, `“${name}”`) ?? webNotice(tag, name) ?? letteringNotice(tag, name));
  return notice === undefined
    ? []
    : [{ code: 'not-measured', severity: 'info', path: stockPath(tag.pieces), ...notice }];
};

type Notice = Pick<Finding, 'message'> & Partial<Pick<Finding, 'piece' | 'points' | 'width'>>;

/** @param what The stock, in words. */
function kerfNotice({ stock, output }: Tag, what: string): Notice | undefined {
  if (stock.stated?.kerf !== false || !output.compensate) return undefined;
  return {
    message: `${capitalised(what)} has no kerf yet: parts come out smaller, and holes larger, by what the beam removes. Cut a kerf test to find it, or write “kerf: 0”.`,
  };
}

const narrowOf = perRegion((region, width) => findNarrow(region, width).necks);

function webNotice(tag: Tag, name: string): Notice | undefined {
  const { stock, pieces } = tag;
  if (stock.stated?.minWeb !== false) return undefined;
  const { minWeb } = stock;
  const isKnown = webDefaultOf(stock.material) !== unnamed;
  const near = (isKnown ? nearKnown : nearLimit) * minWeb;
  const necks = pieces
    // A piece that is glued onto something is carried by it, and one that is made as wide as needed follows what is measured.
    .filter((piece) => piece.glueTo === undefined && !(isKnown && followsMinWeb(piece, tag)))
    .flatMap((piece) => narrowOf(piece.region, near).map((neck) => ({ piece, neck })));
  const [first] = necks.sort((a, b) => a.neck.width - b.neck.width);
  // Narrower places are reported by their own checks.
  if (!first || first.neck.width < minWeb - slackOf(minWeb)) return undefined;
  const { piece, neck } = first;
  return {
    piece: piece.id,
    points: neck.ends,
    width: neck.width,
    message: `The narrowest place is ${mm(neck.width)}; the minimum of ${mm(minWeb)} for “${name}” is only a default. Cut a web comb to find your own.`,
  };
}

/** Whether letters of the piece slide together, or its shapes grow, until no place is narrower. */
function followsMinWeb({ sources }: Piece, { made }: Tag): boolean {
  const paths = [...made.keys()]
    .filter(({ generator, modifiers }) => modifiers.growAuto || textsOf(generator).some(isOverlappedEnough))
    .map(({ path }) => path);
  const places = sources.flatMap(({ path, lettering = [] }) => [path, ...lettering.map((each) => each.path)]);
  return paths.some((path) => places.some((place) => isWithin(place, path)));
}

function isOverlappedEnough(text: ReturnType<typeof textsOf>[number]): boolean {
  return text.kind === 'text' && text.overlap === 'auto';
}

function letteringNotice(tag: Tag, name: string): Notice | undefined {
  if (tag.stock.minXHeight !== undefined) return undefined;
  const height = Math.min(...engravedHeights(tag));
  if (height < usualXHeightMm || height > nearLimit * usualXHeightMm) return undefined;
  return {
    message: `Engraved letters are ${mm(height)} high; the minimum of ${mm(usualXHeightMm)} for “${name}” is only a default. Cut an engraving ladder to find your own.`,
  };
}
