/** A letter as square cells, a grid of so many high: those with ink, those of its bays and those of its counters. */

import { transform, translation } from '../../geometry/affine.ts';
import { boundsOf, contains, ringArea } from '../../geometry/measure.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';
import { rowsOf } from '../overlap/runs.ts';

/** Coordinates of the middles of cells: x, y, x, y, … */
export interface LetterCells {
  readonly ink: readonly number[];
  /** What has ink to its left and to its right, counters included; beside a letter that is open there, as C and E are, a ring is in nobody's way. */
  readonly bays: readonly number[];
  readonly counters: readonly number[];
}

const rows = 24;

const made = new WeakMap<Region, LetterCells>();

export function cellsOf(letter: Region): LetterCells {
  const cells = made.get(letter) ?? madeCells(letter);
  made.set(letter, cells);
  return cells;
}

/** The share of cells whose middles lie within a circle. */
export function shareWithin(cells: readonly number[], { x, y }: Point, radius: number, least = 0): number {
  let within = 0;
  for (let i = 0; i < cells.length; i += 2)
    if ((cells[i]! - x) ** 2 + (cells[i + 1]! - y) ** 2 < radius * radius) within += 2;
  return within === 0 ? 0 : within / Math.max(cells.length, least);
}

/** Whether some cell lies within a window. */
export function hasAny(cells: readonly number[], { minX, minY, maxX, maxY }: Bounds): boolean {
  for (let i = 0; i < cells.length; i += 2) {
    const x = cells[i]!;
    const y = cells[i + 1]!;
    if (x > minX && x < maxX && y > minY && y < maxY) return true;
  }
  return false;
}

/** Whether in each row that a window spans some cell lies within it; `box` is that of the letter, which must span it too. */
export function fillsRows(cells: readonly number[], box: Bounds, window: Bounds): boolean {
  if (window.minY < box.minY || window.maxY > box.maxY) return false;
  const side = (box.maxY - box.minY) / rows;
  const rowAt = (y: number): number => Math.min(rows - 1, Math.floor((y - box.minY) / side));
  const filled = Array.from({ length: rows }, () => false);
  for (let i = 0; i < cells.length; i += 2)
    if (cells[i]! > window.minX && cells[i]! < window.maxX) filled[rowAt(cells[i + 1]!)] = true;
  return filled.slice(rowAt(window.minY), rowAt(window.maxY) + 1).every((isFilled) => isFilled);
}

/** The share of their height or width that a letter loses with the cells within a circle. */
export function lostWithin(cells: readonly number[], { x, y }: Point, radius: number): number {
  const all = [Infinity, -Infinity, Infinity, -Infinity];
  const left = [...all];
  const widen = (box: number[], i: number): void => {
    box[0] = Math.min(box[0]!, cells[i]!);
    box[1] = Math.max(box[1]!, cells[i]!);
    box[2] = Math.min(box[2]!, cells[i + 1]!);
    box[3] = Math.max(box[3]!, cells[i + 1]!);
  };
  for (let i = 0; i < cells.length; i += 2) {
    widen(all, i);
    if ((cells[i]! - x) ** 2 + (cells[i + 1]! - y) ** 2 >= radius * radius) widen(left, i);
  }
  const lost = (low: number): number =>
    1 - (left[low + 1]! - left[low]!) / Math.max(all[low + 1]! - all[low]!, Number.EPSILON);
  return Math.max(0, lost(0), lost(2));
}

function madeCells(letter: Region): LetterCells {
  const { minX, minY, maxX, maxY } = boundsOf(letter)!;
  const side = (maxY - minY) / rows;
  const columns = Math.max(1, Math.ceil((maxX - minX) / side));
  const middleX = (column: number): number => minX + (column + 0.5) * side;
  const middleY = (row: number): number => minY + (row + 0.5) * side;
  const isInk = rowsOf(transform(letter, translation(0, -minY)), side).lines.map((xs) => {
    let passed = 0;
    return Array.from({ length: columns }, (_, column) => {
      while (passed < xs.length && xs[passed]! < middleX(column)) passed++;
      return passed % 2 === 1;
    });
  });
  const holes = letter.filter((ring) => ringArea(ring) < 0);
  const [ink, bays, counters]: [number[], number[], number[]] = [[], [], []];
  isInk.forEach((row, at) => {
    const [left, right] = [row.indexOf(true), row.lastIndexOf(true)];
    row.forEach((isBlack, column) => {
      const cell = { x: middleX(column), y: middleY(at) };
      if (isBlack) ink.push(cell.x, cell.y);
      if (isBlack || column < left || column > right) return;
      bays.push(cell.x, cell.y);
      if (holes.some((hole) => contains([hole], cell))) counters.push(cell.x, cell.y);
    });
  });
  return { ink, bays, counters };
}
