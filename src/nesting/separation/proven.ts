/**
 * Verifies that parts do not overlap, by the winding number of the convolution (`no-fit-polygon.ts`) or by their envelopes where
 * they lie, rather than by the boundary that the separation uses, so that an error in either is noticed.
 */

import { NoFitPolygon } from '../no-fit-polygon.ts';
import type { WorkBudget } from '../work-budget.ts';
import { envelopesApart } from '../envelopes/envelope.ts';
import type { Envelope } from '../envelopes/envelope.ts';
import { turned } from '../orientation.ts';
import type { Turn } from '../orientation.ts';
import type { PartPose } from './sheet-filling.ts';

/** Depth in mm from which an overlap counts. Each outline is thinned by as much. */
const overlapMm = 2e-6;

let sections = new Float64Array(1024);

/** Fixed parts may overlap one another. */
export async function areApart(
  sheet: readonly PartPose[],
  fixed: readonly PartPose[],
  budget: WorkBudget,
): Promise<boolean> {
  for (const [i, one] of sheet.entries()) {
    const a = one.mover.outline(one.turn);
    for (const other of [...fixed, ...sheet.slice(0, i)]) {
      const b = other.mover.outline(other.turn);
      // Position of the lower left corners.
      const x = one.x - a.width / 2 - (other.x - b.width / 2);
      const y = one.y - a.height / 2 - (other.y - b.height / 2);
      if (x + a.bounds.minX >= b.bounds.maxX || x + a.bounds.maxX <= b.bounds.minX) continue;
      if (y + a.bounds.minY >= b.bounds.maxY || y + a.bounds.maxY <= b.bounds.minY) continue;
      const further = ((one.turn - other.turn + 4) % 4) as Turn;
      const isApart =
        further % 2 === 0 && other.mover.envelope && one.mover.envelope
          ? areEnvelopesApart(other, other.mover.envelope(0), one, one.mover.envelope(further))
          : !isInside(new NoFitPolygon(b, a), x, y);
      if (!isApart) return false;
    }
    if (budget.isDue || i % 8 === 0) await budget.pause();
  }
  return true;
}

function isInside(noFit: NoFitPolygon, x: number, y: number): boolean {
  if (noFit.size > sections.length) sections = new Float64Array(2 * noFit.size);
  const count = noFit.sectionsAt(y, 0, sections, 0);
  for (let i = 0; i < count; i += 2) {
    if (x > sections[i]! + overlapMm && x < sections[i + 1]! - overlapMm) return true;
  }
  return false;
}

/** In the frame of the first as drawn; the envelope of the other is as turned in that. */
function areEnvelopesApart(one: PartPose, own: Envelope, other: PartPose, others: Envelope): boolean {
  const way = turned({ x: other.x - one.x, y: other.y - one.y }, ((4 - one.turn) % 4) as Turn);
  return envelopesApart(own, others, way.x, way.y);
}
