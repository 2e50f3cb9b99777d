/**
 * Tag and issues → what the page draws. Pure. The engine's y runs up and the page's runs down, so every y is negated here
 * and nowhere else. Coordinates are written to 0.001 mm: a hundredth of a pixel at the strongest useful zoom.
 */

import { area, boundsOf, contains, ringArea } from '../geometry/measure.ts';
import type { Bounds, Point, Region, Ring } from '../geometry/types.ts';
import type { Issue, YamlPath } from '../issue.ts';
import type { Mark, Operation, Piece, PlacedHanger, Tag } from '../tag/tag.ts';
import type {
  PathData,
  Scene,
  SceneBounds,
  SceneHanger,
  ScenePart,
  ScenePiece,
  ScenePin,
  ScenePoint,
} from './protocol.ts';

/**
 * Four of the Okabe–Ito colours (M. Okabe and K. Ito, "Color Universal Design", 2008): those that reach a contrast of 3:1 on
 * a white as well as on a dark canvas.
 */
export const operationColours: Readonly<Record<Operation, string>> = {
  engrave: '#CC79A7',
  score: '#D55E00',
  'cut-inner': '#0072B2',
  'cut-outer': '#009E73',
};

/** `sourceOf` gives the offset in the spec's text at which a path stands. */
export function sceneOf(tag: Tag, sourceOf: (path: YamlPath) => number): Scene {
  const pieces = tag.pieces.flatMap((piece) => pieceScene(piece, sourceOf));
  return {
    title: tag.title,
    units: tag.units,
    ...(tag.stock.material !== undefined && { material: tag.stock.material }),
    colours: operationColours,
    pieces,
    bounds: pieces.map((piece) => piece.bounds).reduce(joined, pieces[0]?.bounds ?? [0, 0, 0, 0]),
  };
}

export function pinsOf(issues: readonly Issue[], lineOf: (offset: number) => number): ScenePin[] {
  const seen = new Map<string, number>();
  return issues.map((issue) => {
    // The n-th issue of one kind at one path keeps its pin from one computation to the next.
    const kind = `${issue.code}@${issue.path.join('/')}`;
    const nth = seen.get(kind) ?? 0;
    seen.set(kind, nth + 1);
    return {
      id: `${kind}#${nth}`,
      code: issue.code,
      severity: issue.severity,
      message: issue.message,
      ...(issue.piece !== undefined && { piece: issue.piece }),
      points: (issue.points ?? []).map(flipped),
      ...(issue.width !== undefined && { width: issue.width }),
      line: lineOf(issue.range.start),
      source: issue.range.start,
    };
  });
}

/** The ids in the scene of what stands at these paths. */
export function idsAt(tag: Tag, paths: readonly YamlPath[]): string[] {
  const wanted = new Set(paths.map((path) => path.join('/')));
  const made = (path: YamlPath): boolean => wanted.has(path.join('/'));
  return tag.pieces.flatMap((piece) => [
    ...(made(piece.path) ? [piece.id] : []),
    ...piece.marks.flatMap((mark, index) => (made(mark.path) ? [markId(piece, index)] : [])),
    ...(piece.hanger && made(piece.hanger.path) ? [hangerId(piece), hangerHoleId(piece)] : []),
  ]);
}

/** Closed rings as SVG path data. */
export function pathData(region: Region): PathData {
  return region.map((ring) => `M${ring.map(coordinates).join('L')}Z`).join('');
}

const markId = (piece: Piece, index: number): string => `${piece.id}/mark-${index}`;
const hangerId = (piece: Piece): string => `${piece.id}/hanger`;
const hangerHoleId = (piece: Piece): string => `${piece.id}/hanger-hole`;

function pieceScene(piece: Piece, sourceOf: (path: YamlPath) => number): ScenePiece[] {
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
      solid: pathData(piece.region),
      parts: [
        ...markParts(piece, 'engrave', sourceOf),
        ...markParts(piece, 'score', sourceOf),
        ...innerParts(piece, holes, sourceOf),
        { id: `${piece.id}/cut-outer`, label: 'Outer cut', operation: 'cut-outer', data: pathData(outers), source },
      ],
      ...(piece.hanger && { hanger: hangerScene(piece, piece.hanger, sourceOf) }),
      bounds: boundsScene(bounds),
      width: bounds.maxX - bounds.minX,
      height: bounds.maxY - bounds.minY,
      partCount: outers.length,
      holeCount: holes.length,
      source,
    },
  ];
}

function markParts(piece: Piece, operation: Mark['operation'], sourceOf: (path: YamlPath) => number): ScenePart[] {
  const word = operation === 'engrave' ? 'Engraving' : 'Score';
  const all = piece.marks.map((mark, index) => ({ mark, index })).filter(({ mark }) => mark.operation === operation);
  return all.map(({ mark, index }, nth) => ({
    id: markId(piece, index),
    label: all.length > 1 ? `${word} ${nth + 1}` : word,
    operation,
    data: pathData(mark.region),
    source: sourceOf(mark.path),
  }));
}

/** The hanger's opening apart from the other holes: it has a line of its own in the spec. */
function innerParts(piece: Piece, holes: readonly Ring[], sourceOf: (path: YamlPath) => number): ScenePart[] {
  const hanger = piece.hanger;
  const opening = hanger && holes.filter((hole) => isOpening(hole, hanger));
  const others = holes.filter((hole) => !opening?.includes(hole));
  const parts: ScenePart[] = [];
  if (others.length > 0) {
    parts.push({
      id: `${piece.id}/cut-inner`,
      label: others.length > 1 ? `${others.length} inner cuts` : 'Inner cut',
      operation: 'cut-inner',
      data: pathData(others),
      source: sourceOf(piece.path),
    });
  }
  if (hanger && opening && opening.length > 0) {
    parts.push({
      id: hangerHoleId(piece),
      label: hanger.kind === 'slot' ? 'Hanger slot' : 'Hanger hole',
      operation: 'cut-inner',
      data: pathData(opening),
      source: sourceOf(hanger.path),
    });
  }
  return parts;
}

/** A hole that has run together with another, or into lettering, is no longer the hanger's alone. */
function isOpening(hole: Ring, hanger: PlacedHanger): boolean {
  return contains([hole], hanger.centre) && Math.abs(-ringArea(hole) / area(hanger.opening) - 1) < 0.02;
}

function hangerScene(piece: Piece, hanger: PlacedHanger, sourceOf: (path: YamlPath) => number): SceneHanger {
  return {
    id: hangerId(piece),
    kind: hanger.kind,
    data: pathData(hanger.lug ?? hanger.opening),
    centre: flipped(hanger.centre),
    size: hanger.openingSize,
    length: hanger.openingLength,
    source: sourceOf(hanger.path),
  };
}

const rounded = (mm: number): number => Math.round(mm * 1000) / 1000;
const coordinates = ({ x, y }: Point): string => `${rounded(x)} ${rounded(-y)}`;
// `0 -` and not a sign, so that no −0 reaches a message.
const flipped = ({ x, y }: Point): ScenePoint => [rounded(x), rounded(0 - y)];
const boundsScene = (b: Bounds): SceneBounds => [b.minX, 0 - b.maxY, b.maxX, 0 - b.minY];

function joined(a: SceneBounds, b: SceneBounds): SceneBounds {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])];
}
