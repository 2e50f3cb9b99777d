/** Every text on a piece and how it is made there: cut free, cut through, engraved or scored. */

import type { Region } from '../../geometry/types.ts';
import { stockOf } from '../../tag/by-stock.ts';
import type { Lettering } from '../../tag/lettering/letters.ts';
import type { Piece, Source, Tag } from '../../tag/tag.ts';
import type { Cover } from './covered-letters.ts';
import type { Remainder } from './cut-away.ts';
import { beamWidthOf } from './beam.ts';

export interface LetteringOn {
  readonly lettering: Lettering;
  readonly use: 'cut' | 'engrave' | 'score';
  readonly making: { readonly beam: number; readonly over: number };
  /**
   * Set if the text is made together with something else: what it must stand out from, and whether it is part of that
   * or left out of it.
   */
  readonly ground?: Ground;
  /** For letters that are not openings. */
  readonly kept?: Remainder;
  /** For letters that are cut free: what else the body is made of. */
  readonly covers?: readonly Cover[];
}

export interface Ground {
  readonly of: 'body' | 'cut' | 'engrave' | 'score';
  /** The lettering as made by itself. */
  readonly shape: Region;
  /** Everything that is cut free, or marked, together with it. */
  readonly region: Region;
  /** Whether the letters are openings in the region. */
  readonly isOpening: boolean;
}

export function letteringOn(piece: Piece, tag: Tag): LetteringOn[] {
  const stock = stockOf(piece, tag);
  const { output } = tag;
  const found: LetteringOn[] = [];
  const loose = output.compensate ? 0 : stock.kerf / 2;
  const cut = piece.sources.flatMap((other) => (other.use === 'cut' ? [other.region] : []));
  for (const source of piece.sources) {
    const { use, region, lettering = [] } = source;
    for (const each of lettering) {
      const isOpening = (use === 'cut') !== (each.as === 'opening');
      const among = piece.sources.filter((other) => other.use === use);
      const isAlone = each.shape === undefined && among.length === 1;
      const whole = use === 'body' ? piece.body : among.flatMap((other) => [...other.region]);
      const ground = isAlone
        ? {}
        : { ground: { of: use, shape: each.shape ?? region, region: whole, isOpening: each.as === 'opening' } };
      found.push({
        lettering: each,
        use: 'cut',
        making: { beam: stock.kerf, over: isOpening ? loose : -loose },
        ...ground,
        ...keptOf(each, region, use === 'body' ? cut : []),
        ...(use === 'body' && each.as === 'material' && !isAlone ? { covers: coversOf(each, source, among) } : {}),
      });
    }
  }
  for (const { operation, region, lettering = [] } of piece.marks) {
    for (const each of lettering) {
      const ground =
        each.shape === undefined
          ? {}
          : { ground: { of: operation, shape: each.shape, region, isOpening: each.as === 'opening' } };
      const making = { beam: beamWidthOf(stock), over: 0 };
      found.push({ lettering: each, use: operation, making, ...ground, ...keptOf(each, region, []) });
    }
  }
  return found;
}

function coversOf({ shape }: Lettering, own: Source, all: readonly Source[]): Cover[] {
  return all
    .filter((source) => source !== own || shape !== undefined)
    .map((source) => ({
      region: source.region,
      ...(source !== own && source.shape.name !== undefined ? { name: source.shape.name } : {}),
    }));
}

function keptOf({ as, shape }: Lettering, region: Region, cuts: readonly Region[]): Pick<LetteringOn, 'kept'> {
  return as === 'opening' ? {} : { kept: { shape: shape ?? region, region, cuts } };
}
