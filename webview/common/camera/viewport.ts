/**
 * Viewport: the part of the drawing that the stage shows. Pure. World lengths are in mm, screen lengths in CSS pixels
 * from the stage's top left corner; y runs down in both.
 */

import type { Units } from '../../../src/core/units.ts';

export interface Viewport {
  /** World point at the centre of the stage, which stays there when the stage is resized. */
  readonly x: number;
  readonly y: number;
  /** Pixels per mm. */
  readonly scale: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export type XY = readonly [number, number];
export type Box = readonly [minX: number, minY: number, maxX: number, maxY: number];

/** CSS Values: 1 in = 25.4 mm = 96 px. */
export const actualScale = 96 / 25.4;
const minScale = 0.05;
const maxScale = 1000;
/** Largest scale for fitting a very small piece; a larger one shows nothing more. */
const maxFitScale = 20;
/** Margin for dimensions and warnings around what is fitted, in px. */
const fitMarginPx = 56;
/** Between what is fitted and what lies over the stage, in px. */
const coverGapPx = 8;

export function fitted(box: Box, stage: Size): Viewport {
  const [minX, minY, maxX, maxY] = box;
  const margin = marginIn(stage);
  const scale = Math.min(
    (stage.width - 2 * margin) / Math.max(maxX - minX, 1e-3),
    (stage.height - 2 * margin) / Math.max(maxY - minY, 1e-3),
    maxFitScale,
  );
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2, scale: clamp(scale, minScale, maxScale) };
}

function marginIn({ width, height }: Size): number {
  return Math.min(fitMarginPx, width / 6, height / 6);
}

/**
 * As `fitted` into the stage when nothing is open below it, as long as that leaves room for the drawing, which thus stays
 * where it is. `below`: height of what is open, in px.
 */
export function fittedAbove(box: Box, stage: Size, below: number): Viewport {
  const view = fitted(box, { ...stage, height: stage.height + below });
  const steady = { ...view, y: view.y - below / 2 / view.scale };
  const [, bottom] = toScreen(steady, stage, [box[0], box[3]]);
  return bottom + marginIn(stage) <= stage.height ? steady : fitted(box, stage);
}

/** As `fitted`, and clear of what may lie over the bottom of the stage, `cover` px high. */
export function fittedAboveCover(box: Box, stage: Size, cover: number): Viewport {
  const more = clamp(cover + coverGapPx - marginIn(stage), 0, stage.height / 3);
  const view = fitted(box, { ...stage, height: stage.height - more });
  return { ...view, y: view.y + more / 2 / view.scale };
}

/** As `fitted`, in what is left below `top`, in px. */
export function fittedBelow(box: Box, { width, height }: Size, top: number): Viewport {
  const view = fitted(box, { width, height: height - top });
  return { ...view, y: view.y - top / 2 / view.scale };
}

/** Zooms by `factor`, keeping the world point under `at` in place. */
export function zoomedAt(view: Viewport, stage: Size, at: XY, factor: number): Viewport {
  const scale = clamp(view.scale * factor, minScale, maxScale);
  const [x, y] = toWorld(view, stage, at);
  const keep = view.scale / scale;
  return { x: x + (view.x - x) * keep, y: y + (view.y - y) * keep, scale };
}

/** Moves the drawing by `dx`, `dy` pixels, as when it is dragged. */
export function panned(view: Viewport, dx: number, dy: number): Viewport {
  return { ...view, x: view.x - dx / view.scale, y: view.y - dy / view.scale };
}

/** Scrolls as in any page: only where the box extends beyond the stage, and no further than its edge. */
export function scrolled(view: Viewport, stage: Size, box: Box, dx: number, dy: number): Viewport {
  const along = (centre: number, half: number, min: number, max: number, delta: number): number => {
    const lowest = Math.min(min + half, centre);
    const highest = Math.max(max - half, centre);
    // A fitted drawing cannot scroll, even if rounding leaves a fraction of a pixel.
    return (highest - lowest) * view.scale < 1 ? centre : clamp(centre + delta, lowest, highest);
  };
  const margin = fitMarginPx / view.scale;
  const x = along(view.x, stage.width / 2 / view.scale, box[0] - margin, box[2] + margin, dx / view.scale);
  const y = along(view.y, stage.height / 2 / view.scale, box[1] - margin, box[3] + margin, dy / view.scale);
  return { ...view, x, y };
}

/**
 * The smallest move that brings the box into view; a box larger than the stage is centred. Returns the same view if the
 * box is visible.
 */
export function showing(view: Viewport, stage: Size, box: Box): Viewport {
  const [left, top] = toScreen(view, stage, [box[0], box[1]]);
  const [right, bottom] = toScreen(view, stage, [box[2], box[3]]);
  const isSeen = right > 0 && left < stage.width && bottom > 0 && top < stage.height;
  if (isSeen) return view;
  return { ...view, x: (box[0] + box[2]) / 2, y: (box[1] + box[3]) / 2 };
}

export function toScreen(view: Viewport, stage: Size, [x, y]: XY): XY {
  return [stage.width / 2 + (x - view.x) * view.scale, stage.height / 2 + (y - view.y) * view.scale];
}

export function toWorld(view: Viewport, stage: Size, [x, y]: XY): XY {
  return [view.x + (x - stage.width / 2) / view.scale, view.y + (y - stage.height / 2) / view.scale];
}

/** CSS transform of the drawing. */
export function transformOf(view: Viewport, stage: Size): string {
  const [x, y] = toScreen(view, stage, [0, 0]);
  return `translate(${x.toFixed(2)}px, ${y.toFixed(2)}px) scale(${view.scale.toFixed(5)})`;
}

/** Grid spacing in mm: the finest of 1, 10 and 100 mm, or of 0.1, 1 and 10 in, that is not too dense to read. */
export function gridStep(scale: number, units: Units): number {
  const finest = units === 'mm' ? 1 : 2.54;
  return [1, 10, 100].map((times) => times * finest).find((step) => step * scale >= 14) ?? 1000 * finest;
}

export function joinedBox(a: Box, b: Box): Box {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])];
}

export function moved(box: Box, [dx, dy]: XY): Box {
  return [box[0] + dx, box[1] + dy, box[2] + dx, box[3] + dy];
}

export function grown(box: Box, by: number): Box {
  return [box[0] - by, box[1] - by, box[2] + by, box[3] + by];
}

function clamp(value: number, min: number, max: number): number {
  return Math.min(Math.max(value, min), max);
}
