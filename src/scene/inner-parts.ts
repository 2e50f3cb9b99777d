/** The inner cuts of a piece as parts of the scene. */

import { innerPoint } from '../geometry/inner-point.ts';
import { contains, ringArea } from '../geometry/measure.ts';
import type { Ring } from '../geometry/types.ts';
import type { YamlPath } from '../core/issue.ts';
import type { Piece } from '../tag/tag.ts';
import type { ScenePart } from '../protocol/scene.ts';
import { ids } from './scene-ids.ts';
import type { SourceOf } from './scene-ids.ts';
import { pathData } from './path-data.ts';

/** Each hole belongs to whatever made it: a hanger, a cut-out, or a shape of the body with a hole of its own. */
export function innerParts(piece: Piece, holes: readonly Ring[], sourceOf: SourceOf): ScenePart[] {
  const parts = new Map<string, Omit<HoleOwner, 'id'> & { readonly holes: Ring[] }>();
  for (const hole of holes) {
    const owner = ownerOf(hole, piece);
    const part = parts.get(owner.id);
    if (part) part.holes.push(hole);
    else parts.set(owner.id, { ...owner, holes: [hole] });
  }
  const all = [...parts.values()];
  // The owner is named where two parts share a label.
  const ownerSuffix = ({ word, of }: (typeof all)[number]) =>
    of !== undefined && all.filter((other) => other.word === word).length > 1 ? ` ${of}` : '';
  return [...parts].map(([id, part]) => ({
    id,
    label: `${part.holes.length > 1 ? `${part.holes.length} ${part.word.toLowerCase()}s` : part.word}${ownerSuffix(part)}`,
    operation: 'cut-inner',
    data: pathData(part.holes),
    source: sourceOf(part.path),
  }));
}

interface HoleOwner {
  readonly id: string;
  readonly word: string;
  /** The owner's name, for when several parts share the word. */
  readonly of?: string;
  readonly path: YamlPath;
}

function ownerOf(hole: Ring, piece: Piece): HoleOwner {
  const inside = innerPoint(hole);
  const nth = piece.hangers.findIndex(({ opening }) => contains(opening, inside));
  if (nth >= 0) {
    const hanger = piece.hangers[nth]!;
    return {
      id: ids.hangerHole(piece.id, nth),
      word: `Hanger ${hanger.kind === 'ring' ? 'hole' : hanger.kind}`,
      path: hanger.path,
    };
  }
  const cuts = piece.sources.filter(({ use }) => use === 'cut');
  const cut = cuts.findIndex(({ region }) => contains(region, inside));
  if (cut >= 0) return { id: ids.cut(piece.id, cut), word: 'Opening', path: cuts[cut]!.path };
  const bodies = piece.sources.filter(({ use }) => use === 'body');
  const body = bodies.findIndex(({ region }) => region.some((ring) => ringArea(ring) < 0 && contains([ring], inside)));
  if (body >= 0) {
    const { shape, path } = bodies[body]!;
    return {
      id: ids.holes(piece.id, body),
      word: 'Inner cut',
      ...(shape.name === undefined ? {} : { of: `in “${shape.name}”` }),
      path,
    };
  }
  return { id: ids.holes(piece.id, 'between'), word: 'Inner cut', of: 'between shapes', path: piece.path };
}
