/** Scene ids of everything that the text at a cursor position makes. Pure. */

import { isWithin } from '../core/values.ts';
import type { YamlPath } from '../core/issue.ts';
import type { PieceModel, TagModel } from '../spec/model/model.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import { targetOf } from './areas.ts';
import { entriesOf } from './entries.ts';
import { ids } from './scene-ids.ts';

/**
 * `path` is the innermost value at the cursor. Inside a piece: the entry or hanger around the cursor, else the whole
 * piece. Inside the definition of a shape: everything made from that shape, directly or through others. A shape that
 * only runs around it (an offset or a border) has an outline of its own and lights up only if the shape itself is not
 * on the tag.
 */
export function highlightedIds(model: TagModel, path: YamlPath): string[] {
  const [section, name] = path;
  if (section === 'shapes' && name !== undefined) {
    const entries = model.pieces.flatMap(entriesOf);
    const seen = entries.filter(({ shape }) => isMadeOf(shape, name, false));
    const shown = seen.length > 0 ? seen : entries.filter(({ shape }) => isMadeOf(shape, name, true));
    if (shown.length > 0) return shown.flatMap((entry) => entry.ids);
    const holding = entries.filter(({ shape }) => targetOf(shape)?.name === name);
    // A shape that no piece uses is drawn as a ghost.
    return holding.length > 0 ? holding.map((entry) => ids.area(entry.ids[0]!)) : [ids.ghost(path.slice(0, 2))];
  }
  const hangerIds = hangersAt(model, path);
  if (hangerIds.length > 0) return hangerIds;
  const piece = model.pieces.find((candidate) => isWithin(path, candidate.path));
  if (!piece) return [];
  const entry = entriesOf(piece).find((candidate) => isWithin(path, candidate.path));
  return entry ? entry.ids : wholePiece(piece);
}

/** One hanger definition may hang several pieces. */
function hangersAt({ pieces }: TagModel, path: YamlPath): string[] {
  return pieces.flatMap(({ id, hangers }) =>
    hangers.flatMap((hanger, index) =>
      isWithin(path, hanger.path) ? [ids.hanger(id, index), ids.hangerHole(id, index)] : [],
    ),
  );
}

function wholePiece({ id, body }: PieceModel): string[] {
  return [ids.outer(id), ...body.map((_, index) => ids.shape(id, index))];
}

function isMadeOf(shape: Shape, name: string | number, evenAround: boolean): boolean {
  if (shape.name === name) return true;
  const { generator } = shape;
  if ('shapes' in generator) return generator.shapes.some((part) => isMadeOf(part, name, evenAround));
  if ((generator.kind === 'around' || generator.kind === 'border') && !evenAround) return false;
  return 'shape' in generator && isMadeOf(generator.shape, name, evenAround);
}
