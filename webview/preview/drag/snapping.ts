/**
 * Snapping: something being moved comes to rest on a line through the middle or the centre of gravity of what it
 * belongs to. Pure.
 */

import type { Box, XY } from '../../common/camera/viewport.ts';

export interface SnapLine {
  /** The coordinate that is constant along the line. */
  readonly along: 'x' | 'y';
  /** In mm, in the present drawing. */
  readonly at: number;
  /** `start`: where it would be without any nudge. */
  readonly name: 'middle' | 'balance' | 'start';
}

/** What it has come to rest on: "middle", "level with where it began". */
export function restText(lines: readonly SnapLine[]): string[] {
  const start = lines.filter(({ name }) => name === 'start').map(({ along }) => along);
  const relation = start.length === 2 ? '' : start[0] === 'x' ? 'in line with ' : 'level with ';
  const names = lines.map(({ name }) => (name === 'start' ? `${relation}where it began` : name));
  return [...new Set(names)];
}

export interface Snapped {
  /** Correction of the move, in mm. */
  readonly by: XY;
  /** The lines it now lies on, at most one in each direction. */
  readonly lines: readonly SnapLine[];
}

/** Both lines through a point. */
export function cross([x, y]: XY, name: SnapLine['name']): SnapLine[] {
  return [
    { along: 'x', at: x, name },
    { along: 'y', at: y, name },
  ];
}

export function boxCentre([minX, minY, maxX, maxY]: Box): XY {
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

/** @param reach Distance, in mm, from which a line attracts. The nearest wins; of equally near ones, the first. */
export function snap(centre: XY, lines: readonly SnapLine[], reach: number): Snapped {
  const nearest = (along: 'x' | 'y', from: number): SnapLine | undefined => {
    let best: SnapLine | undefined;
    for (const line of lines) {
      const off = Math.abs(line.at - from);
      if (line.along === along && off <= reach && (!best || off < Math.abs(best.at - from) - 1e-9)) best = line;
    }
    return best;
  };
  const x = nearest('x', centre[0]);
  const y = nearest('y', centre[1]);
  return {
    by: [x ? x.at - centre[0] : 0, y ? y.at - centre[1] : 0],
    lines: [x, y].filter((line) => line !== undefined),
  };
}
