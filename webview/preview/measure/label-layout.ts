/**
 * Layout of labels beside the drawing: sizes and problems. Pure; screen pixels, y down.
 *
 * Labels are placed greedily, the most important first, each at the cheapest of its places that hides nothing, as in
 * the survey of Christensen, Marks and Shieber, “An Empirical Study of Algorithms for Point-Feature Label Placement”
 * (ACM Transactions on Graphics 14(3), 1995; from memory). Simulated annealing fits a few more on maps with hundreds of
 * labels; here there are seldom twenty, and it matters more that they stay put during zooming and typing: a label
 * leaves its last direction only if that saves more than the cost of moving.
 */

import { type LineLabel, type SpotLabel } from './label-places.ts';
import { PlacedLabels } from './placed-labels.ts';
import type { PlacedLabel, LabelSpace } from './placed-labels.ts';

export type LabelToPlace = SpotLabel | LineLabel;

/** Number of times the whole layout is repeated for the sake of a vital label without a free place. */
const retries = 3;

/**
 * `wanted`: the most important first; labels that find no place are left out. `last`: keys of their previous places.
 */
export function layOut(
  wanted: readonly LabelToPlace[],
  space: LabelSpace,
  last: ReadonlyMap<string, string>,
): Map<string, PlacedLabel> {
  let order = wanted;
  let tried = placedIn(order, space, last);
  let best = tried;
  for (let retry = 0; retry < retries && best.squeezed.length > 0; retry++) {
    // Labels that were squeezed in now choose before others of their kind.
    const first = tried.squeezed;
    const at = order.findIndex(isVital);
    const others = order.filter((label) => !first.includes(label));
    order = [...others.slice(0, at), ...first, ...others.slice(at)];
    tried = placedIn(order, space, last);
    if (tried.squeezed.length < best.squeezed.length) best = tried;
  }
  return best.placed;
}

function isVital(label: LabelToPlace): label is SpotLabel {
  return 'isVital' in label && label.isVital;
}

function placedIn(
  order: readonly LabelToPlace[],
  space: LabelSpace,
  last: ReadonlyMap<string, string>,
): { readonly placed: Map<string, PlacedLabel>; readonly squeezed: readonly LabelToPlace[] } {
  const layout = new PlacedLabels(space);
  const placed = new Map<string, PlacedLabel>();
  const squeezed: LabelToPlace[] = [];
  for (const label of order) {
    const before = last.get(label.id);
    let place = 'places' in label ? layout.onLine(label, before) : layout.inShort(label, before);
    if (!place && isVital(label)) {
      place = layout.leastBad(label, before);
      squeezed.push(label);
    }
    if (!place) continue;
    layout.take(place);
    placed.set(label.id, place);
  }
  return { placed, squeezed };
}
