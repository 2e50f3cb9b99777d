/**
 * Converts a tag and its issues into what the page draws. Pure. The engine's y runs up and the page's runs down; every
 * y is negated here and nowhere else. Coordinates are rounded to 0.001 mm: a hundredth of a pixel at the strongest
 * useful zoom.
 */

import { innerPoint } from '../geometry/inner-point.ts';
import { area, boundsOf, boxCentre, centroid, contains, ringArea } from '../geometry/measure.ts';
import { simplified } from '../geometry/simplify.ts';
import type { Bounds, Line, Point, Region, Ring } from '../geometry/types.ts';
import type { FaultPlace, Issue, YamlPath } from '../core/issue.ts';
import type { AcceptedIssue } from '../engine/severity.ts';
import type { Stock } from '../spec/model.ts';
import type { Ghost } from '../tag/tag.ts';
import { isGrainUpright } from '../tag/grain-direction.ts';
import { areasIn } from '../tag/open-lines.ts';
import { coloursOf } from '../tag/operation-colours.ts';
import type { Mark, Piece, PlacedHanger, Tag } from '../tag/tag.ts';
import { areasOf } from './areas.ts';

import type {
  PathData,
  Scene,
  SceneAccepted,
  SceneBounds,
  SceneGhost,
  SceneGrip,
  SceneHanger,
  ScenePart,
  ScenePiece,
  ScenePin,
  ScenePlace,
  ScenePoint,
  SceneShape,
  SceneSheet,
} from '../protocol/preview.ts';
import { ids } from './scene-ids.ts';

/**
 * Largest deviation of the drawing from the outline, in mm; measurements on it stay right to 0.01 mm. Every point costs
 * time on its way to the page and each time it is painted, and a third of them are not needed.
 */
const drawnWithinMm = 0.005;

/** Offset in the spec's text at which a path stands. */
type SourceOf = (path: YamlPath) => number;

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

export function pinsOf(issues: readonly Issue[], lineOf: (offset: number) => number): ScenePin[] {
  const names = pinIds(issues);
  return issues.map((issue, index) => {
    return {
      id: names[index]!,
      code: issue.code,
      severity: issue.severity,
      message: issue.message,
      ...(issue.piece !== undefined && { piece: issue.piece }),
      // An issue of another row has no place on this tag.
      points: issue.row === undefined ? (issue.points ?? []).map(flipped) : [],
      ...(issue.row === undefined && issue.places && { others: issue.places.slice(1).map(placeScene) }),
      ...(issue.row !== undefined && { row: issue.row }),
      ...(issue.width !== undefined && { width: issue.width }),
      ...(issue.angle !== undefined && { angle: issue.angle }),
      line: lineOf(issue.range.start),
      source: issue.range.start,
    };
  });
}

function placeScene({ points, width }: FaultPlace): ScenePlace {
  return { points: points.map(flipped), ...(width !== undefined && { width }) };
}

export function acceptedOf(accepted: readonly AcceptedIssue[], lineOf: (offset: number) => number): SceneAccepted[] {
  const names = pinIds(accepted);
  return accepted.map(({ code, message, reason, range }, index) => {
    return { id: names[index]!, code, message, reason, line: lineOf(range.start), source: range.start };
  });
}

/** Pin ids: the n-th issue of one kind at one path keeps its pin from one computation to the next. */
export function pinIds(issues: readonly Issue[]): string[] {
  const seen = new Map<string, number>();
  return issues.map(({ code, path }) => {
    const kind = `${code}@${path.join('/')}`;
    const nth = seen.get(kind) ?? 0;
    seen.set(kind, nth + 1);
    return `${kind}#${nth}`;
  });
}

/** Closed rings as SVG path data, kept short: it is built, sent and parsed at every keystroke. */
export function pathData(region: Region, withinMm = drawnWithinMm): PathData {
  return simplified(region, withinMm).map(ringData).join('');
}

function ringData(ring: Ring): PathData {
  return `${stepsAlong(ring)}z`;
}

/** Open lines as SVG path data. */
/** Of a score: its lines, and the outlines of its areas. */
export function scoreData(mark: Mark, withinMm?: number): PathData {
  return lineData(mark.lines ?? []) + pathData(areasIn(mark), withinMm);
}

function lineData(lines: readonly Line[]): PathData {
  return lines.map(stepsAlong).join('');
}

/** Steps from point to point, counted in whole thousandths of a mm so that rounding errors do not add up. */
function stepsAlong(ring: Line): PathData {
  let [x, y] = [0, 0];
  let data = '';
  ring.forEach((point, index) => {
    const [toX, toY] = [Math.round(point.x * 1000), Math.round(-point.y * 1000)];
    data += `${index === 0 ? 'M' : index === 1 ? 'l' : ' '}${shortDecimal(toX - x)} ${shortDecimal(toY - y)}`;
    [x, y] = [toX, toY];
  });
  return data;
}

/** Decimals of every thousandth, precomputed: printing a fraction is many times slower than printing an integer. */
const fractions = Array.from({ length: 1000 }, (_, thousandths) => `${thousandths / 1000}`.slice(1));

/** Prints thousandths of a mm in mm, without a 0 before the decimal point. */
function shortDecimal(thousandths: number): string {
  const size = Math.abs(thousandths);
  const fraction = fractions[size % 1000]!;
  const whole = Math.trunc(size / 1000);
  return `${thousandths < 0 ? '-' : ''}${whole > 0 || fraction === '' ? whole : ''}${fraction}`;
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
      areas: areasOf(piece, pathData, sourceOf),
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
  return all.map(({ mark, index }, nth) => ({
    id: ids.mark(piece.id, index),
    label: all.length > 1 ? `${word} ${nth + 1}` : word,
    operation,
    data: mark.operation === 'score' ? scoreData(mark) : pathData(mark.region),
    source: sourceOf(mark.path),
  }));
}

/** Each hole belongs to whatever made it: a hanger, a cut-out, or a shape of the body with a hole of its own. */
function innerParts(piece: Piece, holes: readonly Ring[], sourceOf: SourceOf): ScenePart[] {
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

const rounded = (mm: number): number => Math.round(mm * 1000) / 1000;
// `0 -` instead of a minus sign, so that −0 never reaches a message.
export const flipped = ({ x, y }: Point): ScenePoint => [rounded(x), rounded(0 - y)];
const boundsScene = (b: Bounds): SceneBounds => [b.minX, 0 - b.maxY, b.maxX, 0 - b.minY];

function joinedBounds(a: SceneBounds, b: SceneBounds): SceneBounds {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])];
}
