import { pair } from './caliper.ts';
import type { XY } from '../../common/camera/viewport.ts';

/** Extension of the line beyond both ends, in px. */
const beyondPx = 22;

/** Radius of the ring that marks the centre of gravity, in px. */
const bobPx = 4;

/** Ends of the line on which a tag hangs: from above its opening to beyond its centre of gravity. */
export function plumbEnds(opening: XY, balance: XY): readonly [XY, XY] {
  const [dx, dy] = [balance[0] - opening[0], balance[1] - opening[1]];
  const length = Math.hypot(dx, dy) || 1;
  const step: XY = [(dx / length) * beyondPx, (dy / length) * beyondPx];
  return [
    [opening[0] - step[0], opening[1] - step[1]],
    [balance[0] + step[0], balance[1] + step[1]],
  ];
}

/** Path data of that line, with the centre of gravity marked. */
export function plumbLine(opening: XY, balance: XY): string {
  const [x, y] = balance;
  if (x === opening[0] && y === opening[1]) return '';
  const [from, to] = plumbEnds(opening, balance);
  const arc = `a${bobPx} ${bobPx} 0 1 0`;
  return `M${pair(from)}L${pair(to)}M${pair([x - bobPx, y])}${arc} ${2 * bobPx} 0${arc} ${-2 * bobPx} 0`;
}

/** End of its label's leader: as wide as the line, so that it covers nothing. */
export function plumbFoot([x, y]: XY): readonly XY[] {
  return [
    [x - 1, y],
    [x + 1, y],
  ];
}
