/** The parts joined by necks, as a graph of portions and cuts: the material is cut at all necks at once. */

import { triangleArea } from './lengths.ts';
import type { Mesh } from './mesh.ts';
import { triangleOf } from './mesh.ts';

export interface Cut {
  /** The triangles on both sides. */
  readonly sides: readonly [number, number];
  /** The half-edge that is cut; absent if the sides only meet in a point. */
  readonly chord?: number;
}

export interface CutSide {
  /** Units². */
  readonly area: number;
  /** Radius of the largest inscribed disc, units. */
  readonly radius: number;
}

export interface Parting {
  /** Whether the piece falls in two when this cut alone is made. */
  readonly parts: boolean;
  /** If it does, the two parts; otherwise the portions on both sides of this cut, which may be the same. */
  readonly sides: readonly [CutSide, CutSide];
}

/** A link of the graph: a cut, and the portion across it. */
interface PortionLink {
  readonly cut: number;
  readonly to: number;
}

/** The effect of each cut on its own. Linear in triangles and cuts. */
export function judgeCuts(mesh: Mesh, radius: Float64Array, cuts: readonly Cut[]): Parting[] {
  const { portionOf, portions } = portionsBetween(mesh, radius, cuts);
  const links: PortionLink[][] = portions.map(() => []);
  const result = cuts.map(({ sides }, cut): Parting => {
    const a = portionOf[sides[0]]!;
    const b = portionOf[sides[1]]!;
    links[a]!.push({ cut, to: b });
    if (a !== b) links[b]!.push({ cut, to: a });
    return { parts: false, sides: [portions[a]!, portions[b]!] };
  });
  const ranks = new Int32Array(portions.length).fill(-1);
  for (let root = 0; root < portions.length; root += 1) {
    if (ranks[root]! >= 0) continue;
    for (const { cut, portion, beyond, rest } of bridgesFrom(root, links, portions, ranks)) {
      const isFirst = portionOf[cuts[cut]!.sides[0]] === portion;
      result[cut] = { parts: true, sides: isFirst ? [beyond, rest] : [rest, beyond] };
    }
  }
  return result;
}

interface Bridge {
  readonly cut: number;
  /** The portion next to the cut on the side called `beyond`. */
  readonly portion: number;
  readonly beyond: CutSide;
  readonly rest: CutSide;
}

/** The bridges of one connected part of the graph (R. E. Tarjan, "A note on finding the bridges of a graph", 1974). */
function bridgesFrom(
  root: number,
  links: readonly PortionLink[][],
  portions: readonly CutSide[],
  ranks: Int32Array,
): Bridge[] {
  const visits = depthFirst(root, links, ranks);
  const lowest = visits.map(({ portion, cut }, i) =>
    links[portion]!.reduce((low, link) => (link.cut === cut ? low : Math.min(low, ranks[link.to]!)), i),
  );
  // Everything beyond a bridge follows it contiguously in the order of visit; the rest comes before and after.
  const area = visits.map(({ portion }) => portions[portion]!.area);
  const radius = visits.map(({ portion }) => portions[portion]!.radius);
  const size = visits.map(() => 1);
  const radiusFrom = [...radius, 0];
  for (let i = visits.length - 1; i > 0; i -= 1) {
    const { parent } = visits[i]!;
    lowest[parent] = Math.min(lowest[parent]!, lowest[i]!);
    area[parent]! += area[i]!;
    radius[parent] = Math.max(radius[parent]!, radius[i]!);
    size[parent]! += size[i]!;
    radiusFrom[i] = Math.max(radiusFrom[i]!, radiusFrom[i + 1]!);
  }
  const bridges: Bridge[] = [];
  let radiusBefore = 0;
  for (const [i, { cut, portion }] of visits.entries()) {
    if (i > 0 && lowest[i] === i) {
      const beyond = { area: area[i]!, radius: radius[i]! };
      const rest = { area: area[0]! - beyond.area, radius: Math.max(radiusBefore, radiusFrom[i + size[i]!]!) };
      bridges.push({ cut, portion, beyond, rest });
    }
    radiusBefore = Math.max(radiusBefore, portions[portion]!.radius);
  }
  return bridges;
}

interface PortionVisit {
  readonly portion: number;
  /** The cut by which it was reached, and the index of the visit it was reached from. */
  readonly cut: number;
  readonly parent: number;
}

/** Portions in depth-first order; `ranks` receives the position of each. */
function depthFirst(root: number, links: readonly PortionLink[][], ranks: Int32Array): PortionVisit[] {
  const visits: PortionVisit[] = [];
  const stack: PortionVisit[] = [{ portion: root, cut: -1, parent: -1 }];
  for (let visit = stack.pop(); visit; visit = stack.pop()) {
    if (ranks[visit.portion]! >= 0) continue;
    const parent = visits.length;
    ranks[visit.portion] = parent;
    visits.push(visit);
    for (const { cut, to } of links[visit.portion]!) if (ranks[to]! < 0) stack.push({ portion: to, cut, parent });
  }
  return visits;
}

/** The connected portions of material between the cuts, and the portion that each triangle is in. */
function portionsBetween(mesh: Mesh, radius: Float64Array, cuts: readonly Cut[]) {
  const isCut = new Uint8Array(mesh.starts.length);
  for (const { chord } of cuts) {
    if (chord === undefined) continue;
    isCut[chord] = 1;
    isCut[mesh.twins[chord]!] = 1;
  }
  const portionOf = new Int32Array(mesh.inside.length).fill(-1);
  const portions: CutSide[] = [];
  for (let first = 0; first < portionOf.length; first += 1) {
    if (!mesh.inside[first] || portionOf[first]! >= 0) continue;
    const id = portions.length;
    let area = 0;
    let widest = 0;
    portionOf[first] = id;
    const stack = [first];
    for (let t = stack.pop(); t !== undefined; t = stack.pop()) {
      area += triangleArea(mesh, t);
      widest = Math.max(widest, radius[t]!);
      for (let e = 3 * t; e < 3 * t + 3; e += 1) {
        if (!mesh.isChord[e] || isCut[e]) continue;
        const neighbour = triangleOf(mesh.twins[e]!);
        if (portionOf[neighbour]! >= 0) continue;
        portionOf[neighbour] = id;
        stack.push(neighbour);
      }
    }
    portions.push({ area, radius: widest });
  }
  return { portionOf, portions };
}
