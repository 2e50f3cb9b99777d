/** Finds a better place for one part: many places are evaluated roughly, and the best of them refined exactly. */

import type { Board } from './board.ts';
import type { Neighbourhood } from './neighbourhood.ts';
import { way } from './neighbourhood.ts';

/** Number of places that are refined. */
const refined = 3;

/** Number of places for each orientation at the least: anywhere, and nearby. */
const leastAnywhere = 4;
const leastNearby = 3;

/** Radius of nearby places, as a share of the part's size. */
const nearShare = 0.6;
/** Steps of the refinement: the first and the last as shares of the part's size, and the limit on their number. */
const firstStep = 0.04;
const lastStep = 0.0008;
const mostSteps = 22;
/** How far from a place its neighbours are gathered, as a share of the part's size. */
const marginShare = 0.25;

const tops = {
  cost: new Float64Array(refined),
  turn: new Uint8Array(refined),
  x: new Float64Array(refined),
  y: new Float64Array(refined),
};
const best = { cost: 0, turn: 0, x: 0, y: 0 };

export interface PlaceRule {
  readonly random: () => number;
  /** Number of places that are evaluated for a part, shared among its orientations: anywhere on the board (0 for none), and nearby. */
  readonly anywhere: number;
  readonly nearby: number;
}

/** Moves the part to the best place found; it stays if there is none better. */
export function improvePlace(
  board: Board,
  near: Neighbourhood,
  part: number,
  { random, anywhere, nearby }: PlaceRule,
): void {
  const [ownTurn, ownX, ownY] = [board.turns[part]!, board.xs[part]!, board.ys[part]!];
  near.gather(part, ownTurn, ownX, ownY, 0);
  const own = near.cost(ownX, ownY, Infinity);
  if (own === 0) return;
  let found = 0;
  const consider = (turn: number, x: number, y: number): void => {
    const limit = found < refined ? Infinity : tops.cost[refined - 1]!;
    near.gather(part, turn, x, y, 0);
    const cost = near.roughCost(x, y, limit);
    if (!(cost < limit)) return;
    let slot = found < refined ? found++ : refined - 1;
    for (; slot > 0 && tops.cost[slot - 1]! > cost; slot -= 1) {
      tops.cost[slot] = tops.cost[slot - 1]!;
      tops.turn[slot] = tops.turn[slot - 1]!;
      tops.x[slot] = tops.x[slot - 1]!;
      tops.y[slot] = tops.y[slot - 1]!;
    }
    [tops.cost[slot], tops.turn[slot], tops.x[slot], tops.y[slot]] = [cost, turn, x, y];
  };
  const radius = nearShare * board.size(part);
  const turns = board.turnsOf(part);
  const mostAnywhere = anywhere === 0 ? 0 : Math.max(leastAnywhere, anywhere / turns.length);
  const mostNearby = Math.max(leastNearby, nearby / turns.length);
  for (const turn of turns) {
    if (!board.fits(part, turn)) continue;
    const [lowX, lowY] = [board.leastX(part, turn), board.leastY(part, turn)];
    const [spanX, spanY] = [board.mostX(part, turn) - lowX, board.mostY(part, turn) - lowY];
    for (let i = 0; i < mostAnywhere; i += 1) consider(turn, lowX + random() * spanX, lowY + random() * spanY);
    for (let i = 0; i < mostNearby; i += 1) {
      const x = ownX + (2 * random() - 1) * radius;
      const y = ownY + (2 * random() - 1) * radius;
      consider(turn, Math.max(lowX, Math.min(lowX + spanX, x)), Math.max(lowY, Math.min(lowY + spanY, y)));
    }
  }
  [best.cost, best.turn, best.x, best.y] = [own, ownTurn, ownX, ownY];
  closeIn(board, near, part, ownTurn, ownX, ownY, random);
  for (let i = 0; i < found && best.cost > 0; i += 1) {
    closeIn(board, near, part, tops.turn[i]!, tops.x[i]!, tops.y[i]!, random);
  }
  board.put(part, best.turn, best.x, best.y);
}

/**
 * Descends from a place along the ways out and in random directions while the cost decreases; stored in `best` if it is
 * better.
 */
function closeIn(
  board: Board,
  near: Neighbourhood,
  part: number,
  turn: number,
  startX: number,
  startY: number,
  random: () => number,
): void {
  const [lowX, lowY, highX, highY] = [
    board.leastX(part, turn),
    board.leastY(part, turn),
    board.mostX(part, turn),
    board.mostY(part, turn),
  ];
  let [x, y] = [startX, startY];
  const size = board.size(part);
  const margin = marginShare * size;
  let [middleX, middleY] = [x, y];
  near.gather(part, turn, x, y, margin);
  let cost = near.cost(x, y, Infinity);
  let [allX, allY, dearestX, dearestY] = [way.allX, way.allY, way.dearestX, way.dearestY];
  let step = firstStep * size;
  let tries = 0;
  for (let i = 0; i < mostSteps && cost > 0 && step > lastStep * size; i += 1) {
    let dx = dearestX;
    let dy = dearestY;
    if (tries === 1 && (allX !== dearestX || allY !== dearestY)) {
      dx = allX;
      dy = allY;
    } else if (tries > 0) {
      const angle = 2 * Math.PI * random();
      dx = step * Math.cos(angle);
      dy = step * Math.sin(angle);
    }
    const tx = Math.max(lowX, Math.min(highX, x + dx));
    const ty = Math.max(lowY, Math.min(highY, y + dy));
    if (Math.abs(tx - middleX) > margin || Math.abs(ty - middleY) > margin) {
      [middleX, middleY] = [tx, ty];
      near.gather(part, turn, tx, ty, margin);
    }
    const found = near.cost(tx, ty, cost);
    if (found < cost) {
      [x, y, cost] = [tx, ty, found];
      [allX, allY, dearestX, dearestY] = [way.allX, way.allY, way.dearestX, way.dearestY];
      if (tries > 1) step *= 1.1;
      tries = 0;
    } else {
      if (tries > 1) step *= 0.5;
      tries += 1;
    }
  }
  if (cost < best.cost) [best.cost, best.turn, best.x, best.y] = [cost, turn, x, y];
}
