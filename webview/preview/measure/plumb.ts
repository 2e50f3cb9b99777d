import { pair } from './caliper.ts';
import type { XY } from '../../common/camera/viewport.ts';

/** How far the line goes on beyond both its ends, in px. */
const beyondPx = 22;

/** The balance is marked by a ring of this radius, in px. */
const bobPx = 4;

/** The line on which a tag hangs: from above its opening to beyond its balance. */
export function plumbEnds(opening: XY, balance: XY): readonly [XY, XY] {
  const [dx, dy] = [balance[0] - opening[0], balance[1] - opening[1]];
  const length = Math.hypot(dx, dy) || 1;
  const step: XY = [(dx / length) * beyondPx, (dy / length) * beyondPx];
  return [
    [opening[0] - step[0], opening[1] - step[1]],
    [balance[0] + step[0], balance[1] + step[1]],
  ];
}

/** Path data of that line, with its balance marked. */
export function plumbLine(opening: XY, balance: XY): string {
  const [x, y] = balance;
  if (x === opening[0] && y === opening[1]) return '';
  const [from, to] = plumbEnds(opening, balance);
  const arc = `a${bobPx} ${bobPx} 0 1 0`;
  return `M${pair(from)}L${pair(to)}M${pair([x - bobPx, y])}${arc} ${2 * bobPx} 0${arc} ${-2 * bobPx} 0`;
}

/** Where the leader of its label ends: as broad as the line, so that it covers nothing. */
export function plumbFoot([x, y]: XY): readonly XY[] {
  return [
    [x - 1, y],
    [x + 1, y],
  ];
}
