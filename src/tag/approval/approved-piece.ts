/** A piece as a customer sees it on a proof: what is written down when it is approved, and compared later. */

import { union } from '../../geometry/clipper.ts';
import { boundsOf, boxCentre } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { textsOf } from '../../spec/model/shape-model.ts';
import { stockOf } from '../by-stock.ts';
import { withDependencies } from '../load.ts';
import type { Piece, Tag } from '../tag.ts';
import { polygonPath } from './polygon-path.ts';
import type { ApprovedPiece } from './types.generated.ts';

/** What is seen of a piece, each as one area. */
export const layers = ['outline', 'engrave', 'score'] as const;
export type Layer = (typeof layers)[number];

export function layerOf(piece: Piece, layer: Layer): Region {
  if (layer === 'outline') return piece.region;
  const areas = piece.marks.filter(({ operation }) => operation === layer).map(({ region }) => region);
  return areas.length > 1 ? union(areas) : (areas[0] ?? []);
}

export function middleOf({ region }: Pick<Piece, 'region'>): Point {
  const bounds = boundsOf(region);
  return bounds ? boxCentre(bounds) : { x: 0, y: 0 };
}

/** Where the middle of the piece lies does not matter, nor how wide the beam is. */
export function approvedPiece(piece: Piece, tag: Pick<Tag, 'stock'>): ApprovedPiece {
  const middle = middleOf(piece);
  const { minX, minY, maxX, maxY } = boundsOf(piece.region) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  const { thickness, ...stock } = stockOf(piece, tag);
  const material = stock.material?.trim();
  const path = (layer: Layer): string => polygonPath(layerOf(piece, layer), middle);
  const [engrave, score] = [path('engrave'), path('score')];
  return {
    id: piece.id,
    title: piece.title,
    words: wordsOf(piece),
    ...(material ? { material } : {}),
    ...(thickness === undefined ? {} : { thickness: rounded(thickness) }),
    width: rounded(maxX - minX),
    height: rounded(maxY - minY),
    outline: path('outline'),
    ...(engrave === '' ? {} : { engrave }),
    ...(score === '' ? {} : { score }),
  };
}

function rounded(mm: number): number {
  return Number(mm.toFixed(2));
}

/** Each text once. */
function wordsOf({ sources, marks }: Pick<Piece, 'sources' | 'marks'>): string[] {
  const shapes = new Set([...sources, ...marks].flatMap(({ shape }) => [...withDependencies(shape)]));
  return [...new Set([...shapes].flatMap(({ generator }) => textsOf(generator).map(({ text }) => text.trim())))];
}
