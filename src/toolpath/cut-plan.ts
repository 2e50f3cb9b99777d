/** Cut plan: the paths of all pieces by operation, in working order, compensated for kerf. */

import { translation } from '../geometry/affine.ts';
import { endOf } from '../geometry/contour.ts';
import type { Contour } from '../geometry/contour.ts';
import { fitContours } from '../geometry/fit-contours.ts';
import { innerPoint } from '../geometry/inner-point.ts';
import { boundsOf, contains, ringArea } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import { fitLines, reversed } from '../geometry/strokes.ts';
import type { Bounds, Line, Point, Region, Ring } from '../geometry/types.ts';
import { kerfOf } from '../tag/uncompensated.ts';
import { operations } from '../tag/tag.ts';
import type { Operation, Tag } from '../tag/tag.ts';
import { allPaths, piecePaths, movePaths } from './piece-paths.ts';
import type { PiecePaths } from './piece-paths.ts';
import { shortTour } from './cut-order.ts';
import { beginningAt, startPoints } from './start-points.ts';
import type { StartPoint } from './start-points.ts';
import { withTabs } from './tabs.ts';

/** Gap between the pieces of a tag laid out side by side, in mm. */
const gapMm = 5;

/** Either an engraved area with all its outlines, or one outline, split where tabs interrupt it. */
export interface PlannedPath {
  readonly piece: string;
  /** For engraving: the beam follows the contours instead of filling them. */
  readonly alongLines?: boolean;
  readonly contours: readonly Contour[];
}

export interface PlannedStep {
  readonly operation: Operation;
  /** The engraved layer this is, if each entry has its own. */
  readonly layer?: { readonly name: string; readonly index: number };
  /** In working order. */
  readonly paths: readonly PlannedPath[];
}

export interface CutPlan {
  /** In working order; only operations that the tag has. */
  readonly steps: readonly PlannedStep[];
  /** The page, from 0 to its width and height. */
  readonly bounds: Bounds;
}

/**
 * Plans the tag's pieces side by side, y up, with the lower left corner of all paths at the origin; `undefined` for a
 * tag without material.
 */
export function planCuts(tag: Tag): CutPlan | undefined {
  const { laid, bounds } = sideBySide(tag);
  return bounds && planLaid(laid, bounds, tag);
}

/**
 * Plans pieces where they have been laid. Work inside a part comes before the cut that frees it: engraving and scoring
 * first, then the cuts from the inside out, the outlines of parts last.
 */
export function planLaid(
  laid: readonly PiecePaths[],
  bounds: Bounds,
  { stock, output }: Pick<Tag, 'stock' | 'output'>,
): CutPlan {
  let at: Point = { x: 0, y: 0 };
  const cuts = cutLevels(laid);
  const steps = operations.flatMap((operation): PlannedStep | PlannedStep[] => {
    if (operation === 'engrave' && output.engraveEach) return engravedLayers(laid);
    const paths: PlannedPath[] = [];
    for (const level of levelsOf(operation, laid, cuts)) {
      const lines = operation === 'score' ? laid.flatMap(({ piece, scoreLines }) => stopsAlong(piece, scoreLines)) : [];
      const tour = stopsInOrder([...stopsOf(level), ...lines], at);
      for (const { piece, contour, isPart } of tour) {
        const { tabs } = output;
        paths.push({ piece, contours: tabs && isPart ? withTabs(contour, tabs, kerfOf(stock).outer) : [contour] });
      }
      at = paths.length > 0 ? endOf(paths.at(-1)!.contours.at(-1)!) : at;
    }
    if (operation === 'engrave') {
      for (const { piece, engrave } of laid)
        if (engrave.length > 0) paths.push({ piece, contours: fitContours(engrave) });
      const lines = laid.flatMap(({ piece, engraveLines }) => stopsAlong(piece, engraveLines));
      paths.push(
        ...stopsInOrder(lines, at).map(({ piece, contour }) => ({ piece, contours: [contour], alongLines: true })),
      );
    }
    return { operation, paths };
  });
  return { steps: steps.filter(({ paths }) => paths.length > 0), bounds };
}

/** One step for each layer name, in order of first appearance. */
function engravedLayers(laid: readonly PiecePaths[]): PlannedStep[] {
  const layers = new Map<string, PlannedPath[]>();
  for (const { piece, engraveLayers = [] } of laid)
    for (const { name, region, lines } of engraveLayers) {
      const areas = region.length > 0 ? [{ piece, contours: fitContours(region) }] : [];
      const along = fitLines(lines).map((contour) => ({ piece, contours: [contour], alongLines: true }));
      if (areas.length + along.length > 0) layers.set(name, [...(layers.get(name) ?? []), ...areas, ...along]);
    }
  return [...layers].map(([name, paths], index) => ({ operation: 'engrave', layer: { name, index }, paths }));
}

/** Bounds of the sheet that `planCuts` needs for a tag by itself; `undefined` without material. */
export function extentOf(tag: Tag): Bounds | undefined {
  return sideBySide(tag).bounds;
}

function sideBySide(tag: Tag): { laid: PiecePaths[]; bounds?: Bounds } {
  const laid: PiecePaths[] = [];
  let x = 0;
  let height = 0;
  for (const piece of tag.pieces) {
    const lines = piecePaths(piece, tag);
    // Marks may run beyond the edge; they are kept where they are, and the page is large enough for them.
    const bounds = boundsOf(allPaths(lines));
    if (!bounds) continue;
    laid.push(movePaths(lines, translation(x - bounds.minX, -bounds.minY)));
    x += bounds.maxX - bounds.minX + gapMm;
    height = Math.max(height, bounds.maxY - bounds.minY);
  }
  return laid.length === 0 ? { laid } : { laid, bounds: { minX: 0, minY: 0, maxX: x - gapMm, maxY: height } };
}

/** An outline to be worked, with the part it belongs to. */
interface WorkedOutline {
  readonly piece: string;
  readonly ring: Ring;
  readonly part: Region;
  /** Whether cutting it frees a part. */
  readonly isPart: boolean;
}

/**
 * The outlines of an operation by level: no outline lies inside another of its level, and each level is finished before
 * the next begins.
 */
function levelsOf(
  operation: Operation,
  laid: readonly PiecePaths[],
  cuts: readonly WorkedOutline[][],
): readonly WorkedOutline[][] {
  switch (operation) {
    case 'engrave':
      return [];
    case 'score':
      return [laid.flatMap(({ piece, score }) => score.map((ring) => ({ piece, ring, part: score, isPart: false })))];
    case 'cut-inner':
      return cuts.slice(1).reverse();
    case 'cut-outer':
      return cuts.slice(0, 1);
  }
}

/**
 * Outlines grouped by how many others enclose them, those of other pieces included: whatever lies in an opening is cut
 * before the opening drops out.
 */
function cutLevels(laid: readonly PiecePaths[]): WorkedOutline[][] {
  const measured = laid.flatMap(({ cut }) =>
    cut.map((ring) => ({ ring, size: Math.abs(ringArea(ring)), bounds: boundsOf([ring])! })),
  );
  const levels: WorkedOutline[][] = [];
  for (const { piece, cut } of laid) {
    for (const part of partsOf(cut)) {
      for (const ring of part) {
        const point = innerPoint(ring);
        const size = Math.abs(ringArea(ring));
        const depth = measured.filter(
          (other) => other.size > size && isWithin(point, other.bounds) && contains([other.ring], point),
        ).length;
        const level = levels[depth] ?? [];
        level.push({ piece, ring, part, isPart: ringArea(ring) > 0 });
        levels[depth] = level;
      }
    }
  }
  return Array.from(levels, (level: WorkedOutline[] | undefined) => level ?? []);
}

function isWithin({ x, y }: Point, { minX, minY, maxX, maxY }: Bounds): boolean {
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}

interface PlannedContour {
  readonly piece: string;
  readonly contour: Contour;
  readonly isPart: boolean;
}

/** A path with its possible start points, and its contour from each of them. */
interface PathStop {
  readonly piece: string;
  readonly isPart: boolean;
  readonly points: readonly Point[];
  readonly from: (place: number) => Contour;
}

function stopsOf(outlines: readonly WorkedOutline[]): PathStop[] {
  return outlines.flatMap(({ piece, ring, part, isPart }) => {
    const [contour] = fitContours([ring]);
    if (!contour) return [];
    const places: readonly StartPoint[] = startPoints(contour, part);
    return [
      { piece, isPart, points: places.map(({ at }) => at), from: (at: number) => beginningAt(contour, places[at]!) },
    ];
  });
}

/** An open line may be started from either end. */
function stopsAlong(piece: string, lines: readonly Line[]): PathStop[] {
  return fitLines(lines).map((contour) => ({
    piece,
    isPart: false,
    points: contour.closed ? [contour.start] : [contour.start, endOf(contour)],
    from: (place: number) => (place === 0 ? contour : reversed(contour)),
  }));
}

function stopsInOrder(stops: readonly PathStop[], from: Point): PlannedContour[] {
  return shortTour(stops, from).map(({ stop, point }) => {
    const { piece, isPart, from: begun } = stops[stop]!;
    return { piece, contour: begun(point), isPart };
  });
}
