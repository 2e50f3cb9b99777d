/** Pieces that no sheet of their stock has room for, told once for each piece of a spec, whichever tags it is of. */

import { mmByMm } from '../../core/figures.ts';
import { mostNames } from '../../core/in-words.ts';
import { clip } from '../../core/length.ts';
import { listedQuoted } from '../../core/names.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';

export interface LargePiece {
  readonly spec: string;
  /** Of the tag; empty if the spec has only one. */
  readonly label: string;
  readonly title: string;
  readonly stock: string;
  /** What the beam takes up. */
  readonly region: Region;
  /** Whether there is any sheet. */
  readonly hasRooms: boolean;
}

export class TooLarge {
  readonly #found = new Map<string, LargePiece[]>();

  /** Returns why this one is left out. */
  add(piece: LargePiece): string {
    const key = JSON.stringify([piece.spec, piece.title, piece.stock]);
    const same = this.#found.get(key) ?? [];
    this.#found.set(key, [...same, piece]);
    return inWords([piece]);
  }

  get problems(): { readonly stock: string; readonly message: string }[] {
    return [...this.#found.values()].map((same) => ({ stock: same[0]!.stock, message: inWords(same) }));
  }
}

function inWords(same: readonly LargePiece[]): string {
  const { spec, title, stock, hasRooms } = same[0]!;
  const labels = [...new Set(same.map(({ label }) => clip(label)))].filter((label) => label !== '');
  const what = `“${title}”${labels.length > 0 ? ` of ${listedQuoted(labels, mostNames)}` : ''}`;
  if (!hasRooms)
    return `There is nothing left to cut ${what} (${spec}) from: “${clip(stock)}” has no sheets and no free offcuts.`;
  const sizes = same.map(({ region }) => {
    const { minX, minY, maxX, maxY } = boundsOf(region)!;
    return [maxX - minX, maxY - minY] as const;
  });
  const [width, height] = sizes.reduce((a, b) => (b[0] * b[1] > a[0] * a[1] ? b : a));
  const texts = new Set(sizes.map(([wide, high]) => mmByMm(wide, high, 1)));
  const it = texts.size === 1 ? 'it' : 'the largest';
  return `${what} (${spec}) is too large for every sheet of “${clip(stock)}”: ${it} needs ${mmByMm(width, height, 1)} with the kerf.`;
}
