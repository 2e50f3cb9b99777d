/**
 * Compaction: moves laid-out parts closer together. The search uses coarser outlines for parts with many corners, which
 * leave gaps; here each part is moved down and to the left until its true outline touches.
 */

import type { Position } from './layout.ts';
import type { PlacedPart } from './partial-layout.ts';
import { dropOnto } from './dropping.ts';
import type { WorkBudget } from './work-budget.ts';
import type { Orientation, Turn } from './orientation.ts';
import { exactOrientations } from './shapes.ts';
import type { NestShape } from './shapes.ts';
import { groupedBy } from '../core/grouped.ts';

/** Number of rounds, and the movement in mm below which they stop early. */
const rounds = 3;
const movedMm = 0.01;

interface CompactedPart {
  readonly laid: PlacedPart;
  readonly isFixed: boolean;
  /** The orientation itself, and turned counter-clockwise by another quarter, so that left becomes down. */
  readonly upright: Orientation;
  readonly sideways: Orientation;
  x: number;
  y: number;
}

/**
 * The same parts on the same sheets in the same orientations, none of them higher or further right. Parts in `fixed` do
 * not move.
 */
export async function compactLayout(
  laid: readonly PlacedPart[],
  fixed: readonly PlacedPart[],
  shapes: readonly (NestShape | undefined)[],
  budget: WorkBudget,
): Promise<PlacedPart[]> {
  const settled = new Set(fixed);
  const compacted = new Map<PlacedPart, Position>();
  for (const on of groupedBy([...laid, ...fixed], ({ sheet }) => sheet).values()) {
    // True outlines are large, so no more than those of a sheet are held.
    const exact = exactOrientations();
    const sheet: CompactedPart[] = [];
    for (const each of on) {
      const shape = shapes[each.part]!;
      const { turn } = each.orientation;
      const sideways = exact(shape, ((turn + 1) % 4) as Turn);
      const isFixed = settled.has(each);
      sheet.push({ laid: each, isFixed, upright: exact(shape, turn), sideways, x: each.x, y: each.y });
      await budget.pause();
    }
    for (let round = 0, moved = Infinity; round < rounds && moved > movedMm; round += 1) {
      moved = Math.max(await moveDown(sheet, budget), await moveLeft(sheet, budget));
    }
    for (const { laid: each, x, y } of sheet) compacted.set(each, { x, y });
  }
  return laid.map((each): PlacedPart => ({ ...each, ...compacted.get(each)! }));
}

/** Returns the longest move, in mm. */
async function moveDown(sheet: readonly CompactedPart[], budget: WorkBudget): Promise<number> {
  let furthest = 0;
  for (const one of [...sheet].sort((a, b) => a.y - b.y || a.x - b.x)) {
    if (one.isFixed) continue;
    let drop = one.y;
    for (const other of sheet) {
      if (other === one) continue;
      drop = Math.min(drop, dropOnto(other.upright, one.upright, one.x - other.x, one.y - other.y));
    }
    one.y -= drop;
    furthest = Math.max(furthest, drop);
    await budget.pause();
  }
  return furthest;
}

async function moveLeft(sheet: readonly CompactedPart[], budget: WorkBudget): Promise<number> {
  let furthest = 0;
  for (const one of [...sheet].sort((a, b) => a.x - b.x || a.y - b.y)) {
    if (one.isFixed) continue;
    let drop = one.x;
    for (const other of sheet) {
      if (other === one) continue;
      // Turned by a quarter, (x, y) becomes (−y, x), so a part's origin is at its upper edge.
      const dx = other.y + other.upright.height - one.y - one.upright.height;
      drop = Math.min(drop, dropOnto(other.sideways, one.sideways, dx, one.x - other.x));
    }
    one.x -= drop;
    furthest = Math.max(furthest, drop);
    await budget.pause();
  }
  return furthest;
}
