/** Cuts lines off at the outline of a region. */

import { EdgeIndex } from './edge-index.ts';
import { crossings } from './length-inside.ts';
import { lineLength } from './measure.ts';
import type { Line, Point, Region } from './types.ts';

/** Stretches shorter than this, in mm, are what rounding leaves where a line touches the outline. */
const shortestMm = 0.01;

/** The stretches of the lines inside the region, or those outside it, in the order and direction of the lines. */
export function clippedLines(lines: readonly Line[], region: Region, side: 'inside' | 'outside'): Line[] {
  const edges = new EdgeIndex(region);
  return lines.flatMap((line) => {
    const runs = runsOf(line, edges, side === 'inside');
    const [first, last] = [runs[0], runs.at(-1)];
    // A closed line that begins in the middle of a stretch.
    if (first && last && first !== last && isSame(first[0]!, line[0]!) && isSame(last.at(-1)!, line[0]!)) {
      runs.pop();
      runs[0] = [...last, ...first.slice(1)];
    }
    return runs.filter((run) => lineLength(run) > shortestMm);
  });
}

function runsOf(line: Line, edges: EdgeIndex, isInside: boolean): Line[] {
  const runs: Point[][] = [];
  let run: Point[] | undefined;
  for (const [index, to] of line.entries()) {
    const from = line[index - 1];
    if (!from) continue;
    const cuts = [0, ...crossings(from, to, edges), 1];
    for (let i = 1; i < cuts.length; i++) {
      const [start, end] = [cuts[i - 1]!, cuts[i]!];
      if (start === end) continue;
      if (edges.contains(pointAt(from, to, (start + end) / 2)) !== isInside) {
        run = undefined;
        continue;
      }
      if (!run) runs.push((run = [pointAt(from, to, start)]));
      run.push(pointAt(from, to, end));
    }
  }
  return runs;
}

function pointAt(from: Point, to: Point, share: number): Point {
  if (share === 0) return from;
  if (share === 1) return to;
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}

function isSame(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}
