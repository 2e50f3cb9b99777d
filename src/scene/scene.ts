/**
 * Converts a tag into what the page draws. Pure. The engine's y runs up and the page's runs down; every y is negated in
 * `coordinates.ts` and `path-data.ts` and nowhere else.
 */

import { area, boundsOf, boxCentre, centroid, ringArea } from '../geometry/measure.ts';
import type { Stock } from '../spec/model/workshop-model.ts';
import type { Ghost } from '../tag/tag.ts';
import { isGrainUpright } from '../tag/grain-direction.ts';
import { coloursOf } from '../tag/operation-colours.ts';
import type { Mark, Piece, PlacedHanger, Tag } from '../tag/tag.ts';
import { areasOf } from './areas.ts';
import type {
  Scene,
  SceneGhost,
  SceneGrip,
  SceneHanger,
  ScenePart,
  ScenePiece,
  SceneShape,
  SceneSheet,
} from '../protocol/scene.ts';
import { ids } from './scene-ids.ts';
import { pathData, scoreData } from './path-data.ts';
import { innerParts } from './inner-parts.ts';
import type { SourceOf } from './scene-ids.ts';
import { flipped, boundsScene, joinedBounds } from './coordinates.ts';

export function sceneOf(tag: Tag, sourceOf: SourceOf, grips: readonly SceneGrip[] = []): Scene {
  const pieces = tag.pieces.flatMap((piece) => pieceScene(piece, tag, sourceOf));
  const ghosts = tag.ghosts ?? [];
  const boxes = [
    ...pieces.map(({ bounds }) => bounds),
    ...ghosts.flatMap(({ region }) => boundsOf(region) ?? []).map(boundsScene),
  ];
  return {
    title: tag.title,
    units: tag.units,
    ...sheetOf(tag.stock),
    colours: coloursOf(tag.output),
    pieces,
    ghosts: ghosts.map((ghost) => ghostScene(ghost, sourceOf)),
    grips,
    bounds: boxes.reduce(joinedBounds, boxes[0] ?? [0, 0, 0, 0]),
  };
}

function sheetOf({ material, look, thickness }: Stock): SceneSheet {
  return {
    ...(material !== undefined && { material }),
    ...(look !== undefined && { look }),
    ...(thickness !== undefined && { thickness }),
  };
}

function ghostScene({ path, name, region, why }: Ghost, sourceOf: SourceOf): SceneGhost {
  const reason =
    why === 'unused' ? 'not used by any piece yet' : 'drawn with a stand-in: what it needs cannot be found';
  return { id: ids.ghost(path), label: `${name}: ${reason}`, data: pathData(region), source: sourceOf(path) };
}

function pieceScene(piece: Piece, tag: Tag, sourceOf: SourceOf): ScenePiece[] {
  const bounds = boundsOf(piece.region);
  if (!bounds) return [];
  const outers = piece.region.filter((ring) => ringArea(ring) > 0);
  const holes = piece.region.filter((ring) => ringArea(ring) <= 0);
  const source = sourceOf(piece.path);
  return [
    {
      id: piece.id,
      title: piece.title,
      ...(piece.glueTo !== undefined && { glueTo: piece.glueTo }),
      ...(piece.cutFrom && { sheet: sheetOf(piece.cutFrom.stock) }),
      ...(isGrainUpright(piece, tag) && { hasUprightGrain: true as const }),
      shapes: bodyShapes(piece, sourceOf),
      parts: [
        ...markParts(piece, 'engrave', sourceOf),
        ...markParts(piece, 'score', sourceOf),
        ...innerParts(piece, holes, sourceOf),
        { id: ids.outer(piece.id), label: 'Outer cut', operation: 'cut-outer', data: pathData(outers), source },
      ],
      hangers: piece.hangers.map((hanger, index) => hangerScene(hanger, ids.hanger(piece.id, index), sourceOf)),
      areas: areasOf(piece, sourceOf),
      balance: flipped(centroid(piece.region) ?? boxCentre(bounds)),
      bounds: boundsScene(bounds),
      width: bounds.maxX - bounds.minX,
      height: bounds.maxY - bounds.minY,
      partCount: outers.length,
      holeCount: holes.length,
      source,
    },
  ];
}

/** Largest first: where shapes overlap, the smaller one is on top and can be pointed at. */
function bodyShapes(piece: Piece, sourceOf: SourceOf): SceneShape[] {
  const shapes = piece.sources.filter(({ use }) => use === 'body').map((shape, index) => ({ ...shape, index }));
  shapes.sort((a, b) => area(b.region) - area(a.region));
  return shapes.map(({ region, path, lettering = [], index }) => {
    const name = path.at(-1);
    const isLettering = lettering.some(({ as }) => as === 'material');
    return {
      id: ids.shape(piece.id, index),
      label: typeof name === 'string' ? name : 'Shape',
      data: pathData(region),
      source: sourceOf(path),
      ...(isLettering && { isLettering }),
    };
  });
}

function markParts(piece: Piece, operation: Mark['operation'], sourceOf: SourceOf): ScenePart[] {
  const word = operation === 'engrave' ? 'Engraving' : 'Score';
  const all = piece.marks.map((mark, index) => ({ mark, index })).filter(({ mark }) => mark.operation === operation);
  const named = ({ shape }: Mark, nth: number): string =>
    shape.name === undefined ? `${word} ${nth + 1}` : `${word} “${shape.name}”`;
  return all.map(({ mark, index }, nth) => ({
    id: ids.mark(piece.id, index),
    label: all.length > 1 ? named(mark, nth) : word,
    operation,
    data: mark.operation === 'score' ? scoreData(mark) : pathData(mark.region),
    source: sourceOf(mark.path),
  }));
}

function hangerScene(hanger: PlacedHanger, id: string, sourceOf: SourceOf): SceneHanger {
  return {
    id,
    kind: hanger.kind,
    data: pathData(hanger.lug ?? hanger.opening),
    centre: flipped(hanger.centre),
    size: hanger.openingSize,
    length: hanger.openingLength,
    source: sourceOf(hanger.path),
  };
}
