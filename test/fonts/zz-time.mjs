// src/geometry/affine.ts
var identity = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };
function translation(x, y) {
  return { ...identity, e: x, f: y };
}
function scaling(x, y, about) {
  return { a: x, b: 0, c: 0, d: y, e: about.x * (1 - x), f: about.y * (1 - y) };
}
function rotation(degrees2, about) {
  const angle = -degrees2 * Math.PI / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return {
    a: cos,
    b: sin,
    c: -sin,
    d: cos,
    e: about.x - cos * about.x + sin * about.y,
    f: about.y - sin * about.x - cos * about.y
  };
}
function applyTo({ x, y }, m) {
  return { x: m.a * x + m.c * y + m.e, y: m.b * x + m.d * y + m.f };
}
function applyToVector({ x, y }, { a, b, c, d }) {
  return { x: a * x + c * y, y: b * x + d * y };
}
function transform(region, m) {
  const mirrored = m.a * m.d - m.b * m.c < 0;
  return region.map((ring) => {
    const mapped2 = ring.map((point) => applyTo(point, m));
    return mirrored ? mapped2.reverse() : mapped2;
  });
}
function chain(first, then) {
  return {
    a: then.a * first.a + then.c * first.b,
    b: then.b * first.a + then.d * first.b,
    c: then.a * first.c + then.c * first.d,
    d: then.b * first.c + then.d * first.d,
    e: then.a * first.e + then.c * first.f + then.e,
    f: then.b * first.e + then.d * first.f + then.f
  };
}

// src/geometry/clipper.ts
import ClipperLib from "clipper-lib";

// src/geometry/measure.ts
function ringArea(ring) {
  let twice = 0;
  let previous = ring[ring.length - 1];
  for (const point of ring) {
    twice += previous.x * point.y - point.x * previous.y;
    previous = point;
  }
  return twice / 2;
}
function area(region) {
  return region.reduce((sum, ring) => sum + ringArea(ring), 0);
}
function perimeter(region) {
  let sum = 0;
  for (const ring of region) {
    let previous = ring[ring.length - 1];
    for (const point of ring) {
      sum += Math.hypot(point.x - previous.x, point.y - previous.y);
      previous = point;
    }
  }
  return sum;
}
function boundsOf(region) {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const ring of region) {
    for (const { x, y } of ring) {
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  return minX > maxX ? void 0 : { minX, minY, maxX, maxY };
}
function boxCentre(bounds) {
  return { x: (bounds.minX + bounds.maxX) / 2, y: (bounds.minY + bounds.maxY) / 2 };
}
function centroid(region) {
  const bounds = boundsOf(region);
  if (!bounds) return void 0;
  const origin2 = boxCentre(bounds);
  let twiceArea2 = 0;
  let sumX = 0;
  let sumY = 0;
  for (const ring of region) {
    let previous = ring[ring.length - 1];
    for (const point of ring) {
      const ax = previous.x - origin2.x;
      const ay = previous.y - origin2.y;
      const bx = point.x - origin2.x;
      const by = point.y - origin2.y;
      const cross3 = ax * by - bx * ay;
      twiceArea2 += cross3;
      sumX += (ax + bx) * cross3;
      sumY += (ay + by) * cross3;
      previous = point;
    }
  }
  if (twiceArea2 === 0) return void 0;
  return { x: origin2.x + sumX / (3 * twiceArea2), y: origin2.y + sumY / (3 * twiceArea2) };
}
function contains(region, point) {
  let inside4 = false;
  for (const ring of region) {
    let previous = ring[ring.length - 1];
    for (const current of ring) {
      if (current.y > point.y !== previous.y > point.y) {
        const x = current.x + (point.y - current.y) * (previous.x - current.x) / (previous.y - current.y);
        if (point.x < x) inside4 = !inside4;
      }
      previous = current;
    }
  }
  return inside4;
}

// src/geometry/near-groups.ts
import Flatbush from "flatbush";
function nearGroups(rings, reach) {
  const boxes = rings.map((ring) => boundsOf([ring]));
  const solid = rings.filter((_, index2) => boxes[index2]);
  if (solid.length < 2) return [solid];
  const index = new Flatbush(solid.length);
  const known3 = boxes.filter((box) => box !== void 0);
  for (const { minX, minY, maxX, maxY } of known3) index.add(minX, minY, maxX, maxY);
  index.finish();
  const groups2 = [];
  const taken = /* @__PURE__ */ new Set();
  for (let first = 0; first < solid.length; first++) {
    if (taken.has(first)) continue;
    taken.add(first);
    const members2 = [first];
    for (const member of members2) {
      const { minX, minY, maxX, maxY } = known3[member];
      for (const near of index.search(minX - reach, minY - reach, maxX + reach, maxY + reach)) {
        if (taken.has(near)) continue;
        taken.add(near);
        members2.push(near);
      }
    }
    groups2.push(members2.sort((a, b) => a - b).map((member) => solid[member]));
  }
  return groups2;
}

// src/geometry/raw-offset.ts
var miterLimit = 4;
var slightMm = 5e-4;
var samePointMm = 1e-5;
function rawOffset(region, how) {
  return region.map((ring) => besideRing(distinct(ring), how)).filter((ring) => ring.length > 2);
}
function distinct(ring) {
  const points = [];
  let last = ring[ring.length - 1];
  for (const point of ring) {
    if (Math.hypot(point.x - last.x, point.y - last.y) < samePointMm) continue;
    points.push(point);
    last = point;
  }
  return points;
}
function besideRing(ring, { delta, corners, arcTolerance }) {
  const line = [];
  if (ring.length < 3) return line;
  const reach = Math.abs(delta);
  const arcStep = 2 * Math.acos(1 - Math.min(arcTolerance, reach / 4) / reach);
  const tangentStep = 2 * Math.acos(reach / (reach + arcTolerance));
  const before = ring[ring.length - 2];
  let corner = ring[ring.length - 1];
  let length = Math.hypot(corner.x - before.x, corner.y - before.y);
  let [kx, ky] = [(corner.y - before.y) / length, (before.x - corner.x) / length];
  for (const after of ring) {
    const { x, y } = corner;
    const nextLength = Math.hypot(after.x - x, after.y - y);
    const jx = (after.y - y) / nextLength;
    const jy = (x - after.x) / nextLength;
    const sine2 = kx * jy - ky * jx;
    const cosine2 = kx * jx + ky * jy;
    const isConcave = sine2 * delta < 0;
    const turn3 = Math.atan2(Math.abs(sine2), cosine2) * Math.sign(delta);
    const overlap2 = reach * Math.abs(sine2) / (1 + cosine2);
    const isOnePoint = isConcave ? overlap2 <= Math.min(length, nextLength) / 2 : corners === "miter" ? 1 + cosine2 >= 2 / miterLimit ** 2 : reach * (Math.sqrt(2 / (1 + cosine2)) - 1) <= slightMm;
    if (isOnePoint) {
      const q = delta / (1 + cosine2);
      line.push({ x: x + (kx + jx) * q, y: y + (ky + jy) * q });
    } else if (isConcave) {
      line.push({ x: x + kx * delta, y: y + ky * delta }, corner, { x: x + jx * delta, y: y + jy * delta });
    } else if (corners === "round") {
      const start = Math.atan2(ky, kx);
      const steps2 = Math.ceil(Math.abs(turn3) / arcStep);
      for (let step = 0; step <= steps2; step++) {
        const angle = start + turn3 * step / steps2;
        line.push({ x: x + Math.cos(angle) * delta, y: y + Math.sin(angle) * delta });
      }
    } else if (corners === "tangent") {
      const steps2 = Math.ceil(Math.abs(turn3) / tangentStep);
      const start = Math.atan2(ky, kx) + turn3 / steps2 / 2;
      const radius = delta / Math.cos(turn3 / steps2 / 2);
      for (let step = 0; step < steps2; step++) {
        const angle = start + turn3 * step / steps2;
        line.push({ x: x + Math.cos(angle) * radius, y: y + Math.sin(angle) * radius });
      }
    } else {
      const across2 = Math.tan(turn3 / 4);
      line.push(
        { x: x + delta * (kx - ky * across2), y: y + delta * (ky + kx * across2) },
        { x: x + delta * (jx + jy * across2), y: y + delta * (jy - jx * across2) }
      );
    }
    [corner, length, kx, ky] = [after, nextLength, jx, jy];
  }
  return line;
}

// src/geometry/clipper.ts
var { Clipper, PolyType, ClipType, PolyFillType } = ClipperLib;
var unitsPerMm = 1e5;
var arcToleranceMm = 2e-3;
function sweepOver(rings) {
  const box = boundsOf(rings);
  if (!box) return { turned: false };
  let alongX = 0;
  let alongY = 0;
  for (const ring of rings) {
    let previous = ring[ring.length - 1];
    for (const point of ring) {
      alongX += Math.abs(point.x - previous.x);
      alongY += Math.abs(point.y - previous.y);
      previous = point;
    }
  }
  return { turned: alongX * (box.maxY - box.minY) < alongY * (box.maxX - box.minX) };
}
function refuseNonNumbers(rings) {
  for (const ring of rings) {
    for (const { x, y } of ring) {
      if (!Number.isFinite(x) || !Number.isFinite(y)) throw new RangeError("A coordinate is not a number.");
    }
  }
}
function toPaths(rings, { turned: turned2 }) {
  refuseNonNumbers(rings);
  const paths = [];
  for (const ring of rings) {
    const path = [];
    for (const point of ring) {
      const X = Math.round(point.x * unitsPerMm);
      const Y = Math.round(point.y * unitsPerMm);
      path.push(turned2 ? { X: 0 - Y, Y: X } : { X, Y });
    }
    if (path.length > 2) paths.push(path);
  }
  return paths;
}
function toRegion(paths, { turned: turned2 }) {
  return Clipper.CleanPolygons(paths).filter((path) => path.length > 2).map(
    (path) => path.map(
      ({ X, Y }) => turned2 ? { x: Y / unitsPerMm, y: (0 - X) / unitsPerMm } : { x: X / unitsPerMm, y: Y / unitsPerMm }
    )
  );
}
function guarded(action) {
  try {
    return action();
  } catch (error) {
    if (error instanceof RangeError) throw error;
    throw new RangeError("The outline could not be computed.", { cause: error });
  }
}
function combine(type, subject, clip2, rule = PolyFillType.pftNonZero) {
  const sweep = sweepOver([...subject, ...clip2]);
  const [subjects, clips] = [toPaths(subject, sweep), toPaths(clip2, sweep)];
  return guarded(() => {
    const clipper = new Clipper();
    clipper.AddPaths(subjects, PolyType.ptSubject, true);
    if (clips.length > 0) clipper.AddPaths(clips, PolyType.ptClip, true);
    const solution = [];
    clipper.Execute(type, solution, rule, PolyFillType.pftNonZero);
    return toRegion(solution, sweep);
  });
}
function apart(rings, reachMm3, work) {
  const groups2 = nearGroups(rings, reachMm3);
  return groups2.length === 1 ? work(groups2[0]) : groups2.flatMap((group) => [...work(group)]);
}
function normalise(rings, rule = "nonzero") {
  const fill = rule === "nonzero" ? PolyFillType.pftNonZero : PolyFillType.pftEvenOdd;
  return apart(rings, 0, (group) => combine(ClipType.ctUnion, group, [], fill));
}
function union(regions2) {
  return regions2.length === 1 ? regions2[0] : normalise(regions2.flat());
}
function difference(rings, others2) {
  return combine(ClipType.ctDifference, rings, others2.flat());
}
function intersection(a, b) {
  return combine(ClipType.ctIntersection, a, b);
}
function offset(region, deltaMm, corners = "round", arcTolerance = arcToleranceMm) {
  if (!Number.isFinite(deltaMm)) throw new RangeError("An offset is not a number.");
  if (deltaMm === 0 || region.length === 0) return region;
  refuseNonNumbers(region);
  const how = { delta: deltaMm, corners, arcTolerance };
  return apart(rawOffset(region, how), 0, (group) => combine(ClipType.ctUnion, group, [], PolyFillType.pftPositive));
}

// src/geometry/edge-index.ts
import Flatbush2 from "flatbush";
var rayMm = 1e4;
var EdgeIndex = class {
  #from = [];
  #to = [];
  #index;
  constructor(region) {
    for (const ring of region) {
      let previous = ring[ring.length - 1];
      for (const point of ring) {
        this.#from.push(previous);
        this.#to.push(point);
        previous = point;
      }
    }
    if (this.#from.length === 0) return;
    this.#index = new Flatbush2(this.#from.length);
    this.#from.forEach((from, edge) => {
      const to = this.#to[edge];
      this.#index.add(Math.min(from.x, to.x), Math.min(from.y, to.y), Math.max(from.x, to.x), Math.max(from.y, to.y));
    });
    this.#index.finish();
  }
  /** Whether the ray from a point in a unit direction crosses any edge. */
  crossedBy(from, direction) {
    const far = { x: from.x + direction.x * rayMm, y: from.y + direction.y * rayMm };
    const boxes = this.#index?.search(
      Math.min(from.x, far.x),
      Math.min(from.y, far.y),
      Math.max(from.x, far.x),
      Math.max(from.y, far.y)
    );
    return (boxes ?? []).some((edge) => {
      const a = sideOf2(this.#from[edge]);
      const b = sideOf2(this.#to[edge]);
      if (a.across > 0 === b.across > 0) return false;
      return a.along + a.across / (a.across - b.across) * (b.along - a.along) > 0;
    });
    function sideOf2({ x, y }) {
      const dx = x - from.x;
      const dy = y - from.y;
      return { along: dx * direction.x + dy * direction.y, across: dx * direction.y - dy * direction.x };
    }
  }
  /** What `contains` in `measure.ts` says of the region, and by the same sum, looking only at edges level with the point. */
  contains({ x, y }) {
    let isInside = false;
    for (const edge of this.#index?.search(x, y, this.#index.maxX, y) ?? []) {
      const from = this.#from[edge];
      const to = this.#to[edge];
      if (to.y > y === from.y > y) continue;
      if (x < to.x + (y - to.y) * (from.x - to.x) / (from.y - to.y)) isInside = !isInside;
    }
    return isInside;
  }
  /** Edges whose boxes touch the square of half-width `reach` round a point, as [from, to]. */
  near({ x, y }, reach) {
    const found = this.#index?.search(x - reach, y - reach, x + reach, y + reach) ?? [];
    return found.map((edge) => [this.#from[edge], this.#to[edge]]);
  }
};
function circleCrossings(edges, centre, radius) {
  const angles = [];
  for (const [from, to] of edges) {
    const dx = to.x - from.x;
    const dy = to.y - from.y;
    const fx = from.x - centre.x;
    const fy = from.y - centre.y;
    const a = dx * dx + dy * dy;
    const b = fx * dx + fy * dy;
    const c = fx * fx + fy * fy - radius * radius;
    const discriminant = b * b - a * c;
    if (a === 0 || discriminant <= 0) continue;
    const root = Math.sqrt(discriminant);
    for (const t of [(-b - root) / a, (-b + root) / a]) {
      if (t >= 0 && t < 1) angles.push(Math.atan2(fy + t * dy, fx + t * dx));
    }
  }
  return angles.sort((p, q) => p - q);
}

// src/geometry/linear-program.ts
var tiny = 1e-12;
var rounding = 1e-9;
var mostAtATime = 60;
function furthest(goal, conditions, reach) {
  const taken = [];
  for (; ; ) {
    const best = solve(goal, taken, reach);
    if (!best) return void 0;
    let missed;
    let most4 = rounding;
    for (const condition of conditions) {
      const miss = condition.least - dot(condition.normal, best);
      if (miss > most4) [most4, missed] = [miss, condition];
    }
    if (!missed) return best;
    if (taken.length >= mostAtATime) return void 0;
    taken.push(missed);
  }
}
function solve(goal, conditions, reach) {
  if (goal.length === 1) return onLine(goal[0], conditions, reach[0]);
  let best = goal.map((value, i) => value >= 0 ? reach[i] : -reach[i]);
  for (const [i, { normal, least }] of conditions.entries()) {
    if (dot(normal, best) >= least - tiny) continue;
    const on = normal.reduce((at2, value, k) => Math.abs(value) > Math.abs(normal[at2]) ? k : at2, 0);
    const divisor = normal[on];
    if (Math.abs(divisor) < tiny) {
      if (least > rounding) return void 0;
      continue;
    }
    const without2 = (values) => values.map((value, k) => value - values[on] / divisor * normal[k]).filter((_, k) => k !== on);
    const onEdge3 = (condition) => ({
      normal: without2(condition.normal),
      least: condition.least - condition.normal[on] / divisor * least
    });
    const own = [1, -1].map((value) => ({ normal: normal.map((_, k) => k === on ? value : 0), least: -reach[on] }));
    const found = solve(
      without2(goal),
      [...own, ...conditions.slice(0, i)].map(onEdge3),
      reach.filter((_, k) => k !== on)
    );
    if (!found) return void 0;
    const others2 = [...found.slice(0, on), 0, ...found.slice(on)];
    best = others2.with(on, (least - dot(normal, others2)) / divisor);
  }
  return best;
}
function onLine(goal, conditions, reach) {
  let [low, high] = [-reach, reach];
  for (const { normal, least } of conditions) {
    const value = normal[0];
    if (Math.abs(value) < tiny) {
      if (least > rounding) return void 0;
    } else if (value > 0) low = Math.max(low, least / value);
    else high = Math.min(high, least / value);
  }
  if (low > high + rounding) return void 0;
  return [goal >= 0 ? high : low];
}
function dot(a, b) {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

// src/tag/fit/contacts.ts
var Outline = class {
  points;
  solids;
  /** From the origin to its furthest point. */
  radius;
  #boxes;
  #edges;
  constructor({ solids, points }) {
    this.solids = solids;
    this.points = points;
    this.#boxes = solids.map((solid) => boundsOf(solid));
    this.radius = this.points.reduce((most4, { x, y }) => Math.max(most4, Math.hypot(x, y)), 0);
  }
  get edges() {
    return this.#edges ??= new EdgeIndex(this.solids.flat());
  }
  contains(point) {
    return this.solids.some((solid, index) => isIn(this.#boxes[index], point, 0) && contains(solid, point));
  }
  isBeside(point, reach) {
    return this.#boxes.some((box) => isIn(box, point, reach));
  }
};
function isIn({ minX, minY, maxX, maxY }, { x, y }, reach) {
  return x >= minX - reach && x <= maxX + reach && y >= minY - reach && y <= maxY + reach;
}
var steps = 14;
var stillMm = 1e-4;
var outMm = 2e-4;
var shortestMm = 0.01;
function largestNear(search, from) {
  const { radius } = search.outline;
  let { step } = search;
  let at2 = from;
  let best;
  for (let round3 = 0; round3 < steps; round3++) {
    const contacts = contactsOf(search, at2, 1.5 * step);
    const out = outOf(contacts);
    if (out < outMm && (!best || at2.scale > best.scale)) best = at2;
    const move = bestMove(contacts, search, step) ?? [-1.5 * Math.max(out, stillMm), 0, 0];
    const [grown4 = 0, x = 0, y = 0] = move;
    at2 = { scale: at2.scale + grown4 / radius, x: at2.x + x, y: at2.y + y };
    if (at2.scale <= 0) break;
    const moved3 = Math.max(Math.abs(grown4), Math.abs(x), Math.abs(y));
    if (moved3 < stillMm && out < outMm) break;
    if (moved3 < 0.9 * step || round3 > 2) step = Math.max(step / 2.5, Math.min(moved3, step), shortestMm);
  }
  return best ?? shrunk(search, at2);
}
var clearingSteps = 10;
function clearestNear(search, from) {
  let { step } = search;
  let best = { at: from, clear: clearOf(search, from) };
  for (let round3 = 0; round3 < clearingSteps; round3++) {
    const { at: at2, clear } = best;
    const contacts = contactsOf(search, at2, clear + 2 * step);
    const conditions = contacts.map(({ free, gap }) => {
      return { normal: [-1, free.x, free.y], least: clear - gap };
    });
    const [, x = 0, y = 0] = furthest([1, 0, 0], conditions, [step, step, search.free === "all" ? step : 0]) ?? [];
    const moved3 = { ...at2, x: at2.x + x, y: at2.y + y };
    const found = { at: moved3, clear: clearOf(search, moved3) };
    if (found.clear > clear + stillMm) best = found;
    else if (step < shortestMm * 4) break;
    else step /= 3;
  }
  return best;
}
function clearOf(search, at2) {
  for (let reach = 2; ; reach *= 2) {
    const clear = contactsOf(search, at2, reach).reduce((least, { gap }) => Math.min(least, gap), Infinity);
    if (clear < Infinity || reach > farthestMm) return clear;
  }
}
var outOf = (contacts) => contacts.reduce((most4, { gap }) => Math.max(most4, -gap), 0);
function bestMove(contacts, { free, outline }, step) {
  const unknowns = { all: 3, "along x": 2, size: 1 }[free];
  const conditions = contacts.map(({ own, free: way, gap }) => {
    const normal = [(way.x * own.x + way.y * own.y) / outline.radius, way.x, way.y];
    return { normal: normal.slice(0, unknowns), least: -gap };
  });
  return furthest([1, 0, 0].slice(0, unknowns), conditions, Array(unknowns).fill(step));
}
function shrunk(search, from) {
  let at2 = from;
  for (let round3 = 0; round3 < 6 && at2.scale > 0; round3++) {
    const out = outOf(contactsOf(search, at2, 0.5));
    if (out < outMm) return at2;
    at2 = { ...at2, scale: at2.scale - 2 * out / search.outline.radius };
  }
  return void 0;
}
function contactsOf({ outline, walls, field }, { scale, x, y }, reach) {
  const contacts = [];
  const { edges } = walls;
  for (const own of outline.points) {
    const here = { x: x + scale * own.x, y: y + scale * own.y };
    if (field.at(here.x, here.y) > reach + field.step) continue;
    for (const contact of contactsOfPoint(here, edges, reach, edges.contains(here), 1))
      contacts.push({ ...contact, own });
  }
  const far = reach / scale;
  for (const corner of walls.corners) {
    const there = { x: (corner.x - x) / scale, y: (corner.y - y) / scale };
    if (!outline.isBeside(there, far)) continue;
    for (const { free, gap } of contactsOfPoint(there, outline.edges, far, !outline.contains(there), -1)) {
      const own = { x: there.x - free.x * gap, y: there.y - free.y * gap };
      contacts.push({ own, free: { x: -free.x, y: -free.y }, gap: gap * scale });
    }
  }
  return contacts;
}
function contactsOfPoint(point, edges, reach, isFree, side3) {
  for (let within2 = reach; ; within2 *= 2) {
    const found = edges.near(point, within2).map(([from, to]) => besideEdge(point, from, to, side3));
    if (isFree) return found.filter(({ gap }) => gap <= within2);
    const nearest4 = found.reduce((best, each) => each.gap < best.gap ? each : best, nowhere);
    if (nearest4.gap < onEdgeMm) return [nearest4];
    if (nearest4.gap <= within2 || within2 > farthestMm) {
      const { free, gap } = nearest4;
      return gap < Infinity ? [{ free: { x: -free.x, y: -free.y }, gap: -gap }] : [];
    }
  }
}
var nowhere = { free: { x: 0, y: 0 }, gap: Infinity };
var onEdgeMm = 1e-7;
var farthestMm = 1e3;
function besideEdge(point, from, to, side3) {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = dx * dx + dy * dy || 1;
  const share = Math.min(1, Math.max(0, ((point.x - from.x) * dx + (point.y - from.y) * dy) / length));
  const away = { x: point.x - from.x - share * dx, y: point.y - from.y - share * dy };
  const gap = Math.hypot(away.x, away.y);
  const turned2 = side3 / Math.sqrt(length);
  return { free: gap > onEdgeMm ? { x: away.x / gap, y: away.y / gap } : { x: -dy * turned2, y: dx * turned2 }, gap };
}

// src/geometry/distance-field.ts
var stepsAlong = 110;
var padSteps = 2;
var DistanceField = class {
  /** Of the grid, in mm. */
  step;
  box;
  #columns;
  #rows;
  #minX;
  #minY;
  #values;
  /** A region that has an area. */
  constructor(region) {
    this.box = boundsOf(region);
    const { minX, minY, maxX, maxY } = this.box;
    this.step = Math.max(maxX - minX, maxY - minY) / stepsAlong;
    this.#minX = minX - padSteps * this.step;
    this.#minY = minY - padSteps * this.step;
    this.#columns = Math.ceil((maxX - minX) / this.step) + 2 * padSteps + 1;
    this.#rows = Math.ceil((maxY - minY) / this.step) + 2 * padSteps + 1;
    const edges = edgesOf(region);
    const nearest4 = this.#nearestEdges(edges);
    this.#values = this.#distances(edges, nearest4);
  }
  /** In mm, positive inside. Between the points of the grid it is off by a small share of a step, at corners by a quarter of one. */
  at(x, y) {
    const { minX, minY, maxX, maxY } = this.box;
    const outX = x < minX ? minX - x : x > maxX ? x - maxX : 0;
    const outY = y < minY ? minY - y : y > maxY ? y - maxY : 0;
    if (outX > this.step || outY > this.step) return -Math.hypot(outX, outY);
    const column = (x - this.#minX) / this.step;
    const row2 = (y - this.#minY) / this.step;
    const [left, below3] = [Math.floor(column), Math.floor(row2)];
    const [u, v] = [column - left, row2 - below3];
    const index = below3 * this.#columns + left;
    const values = this.#values;
    const lower = values[index] * (1 - u) + values[index + 1] * u;
    const upper = values[index + this.#columns] * (1 - u) + values[index + this.#columns + 1] * u;
    return lower * (1 - v) + upper * v;
  }
  /**
   * Of each point of the grid the edge that is nearest, or as good as: beside the outline it is looked for, and from there handed
   * on from point to point, twice over the grid and back (Danielsson 1980).
   */
  #nearestEdges(edges) {
    const [columns3, rows] = [this.#columns, this.#rows];
    const nearest4 = new Int32Array(columns3 * rows).fill(-1);
    const best = new Float64Array(columns3 * rows).fill(Infinity);
    const offer = (column, row2, edge) => {
      if (edge < 0 || column < 0 || row2 < 0 || column >= columns3 || row2 >= rows) return;
      const index = row2 * columns3 + column;
      if (nearest4[index] === edge) return;
      const squared = squaredDistance(edges, edge, this.#minX + column * this.step, this.#minY + row2 * this.step);
      if (squared >= best[index]) return;
      best[index] = squared;
      nearest4[index] = edge;
    };
    for (let edge = 0; edge < edges.length / 4; edge++) {
      const [fromX, fromY, toX, toY] = edges.subarray(4 * edge, 4 * edge + 4);
      const pieces = Math.ceil(2 * Math.hypot(toX - fromX, toY - fromY) / this.step) || 1;
      for (let piece = 0; piece <= pieces; piece++) {
        const column = Math.floor((fromX + (toX - fromX) * piece / pieces - this.#minX) / this.step);
        const row2 = Math.floor((fromY + (toY - fromY) * piece / pieces - this.#minY) / this.step);
        for (let i = 0; i < 4; i++) offer(column + (i & 1), row2 + (i >> 1), edge);
      }
    }
    for (let row2 = 0; row2 < rows; row2++) {
      for (let column = 0; column < columns3; column++) this.#handOn(nearest4, offer, column, row2, -1);
    }
    for (let row2 = rows - 1; row2 >= 0; row2--) {
      for (let column = columns3 - 1; column >= 0; column--) this.#handOn(nearest4, offer, column, row2, 1);
    }
    return nearest4;
  }
  /** To a point, from the four beside it on the side that the sweep comes from; and along the row against the sweep. */
  #handOn(nearest4, offer, column, row2, from) {
    const at2 = (x, y) => x < 0 || y < 0 || x >= this.#columns || y >= this.#rows ? -1 : nearest4[y * this.#columns + x];
    offer(column, row2, at2(column + from, row2));
    for (const beside of [-1, 0, 1]) offer(column, row2, at2(column + beside, row2 + from));
    offer(column + from, row2, at2(column, row2));
  }
  #distances(edges, nearest4) {
    const values = new Float64Array(nearest4.length);
    for (let row2 = 0; row2 < this.#rows; row2++) {
      const y = this.#minY + row2 * this.step;
      const crossings4 = crossingsAt(edges, y);
      let passed = 0;
      for (let column = 0; column < this.#columns; column++) {
        const x = this.#minX + column * this.step;
        while (passed < crossings4.length && crossings4[passed] <= x) passed++;
        const index = row2 * this.#columns + column;
        const distance5 = Math.sqrt(squaredDistance(edges, nearest4[index], x, y));
        values[index] = passed % 2 === 1 ? distance5 : -distance5;
      }
    }
    return values;
  }
};
function edgesOf(region) {
  const edges = new Float64Array(4 * region.reduce((sum, ring) => sum + ring.length, 0));
  let at2 = 0;
  for (const ring of region) {
    let from = ring[ring.length - 1];
    for (const to of ring) {
      edges[at2++] = from.x;
      edges[at2++] = from.y;
      edges[at2++] = to.x;
      edges[at2++] = to.y;
      from = to;
    }
  }
  return edges;
}
function crossingsAt(edges, y) {
  const found = [];
  for (let at2 = 0; at2 < edges.length; at2 += 4) {
    const [fromY, toY] = [edges[at2 + 1], edges[at2 + 3]];
    if (fromY > y === toY > y) continue;
    found.push(edges[at2] + (y - fromY) / (toY - fromY) * (edges[at2 + 2] - edges[at2]));
  }
  return Float64Array.from(found).sort();
}
function squaredDistance(edges, edge, x, y) {
  const fromX = edges[4 * edge];
  const fromY = edges[4 * edge + 1];
  const alongX = edges[4 * edge + 2] - fromX;
  const alongY = edges[4 * edge + 3] - fromY;
  const length = alongX * alongX + alongY * alongY;
  const share = length === 0 ? 0 : ((x - fromX) * alongX + (y - fromY) * alongY) / length;
  const held = share < 0 ? 0 : share > 1 ? 1 : share;
  const dx = x - fromX - held * alongX;
  const dy = y - fromY - held * alongY;
  return dx * dx + dy * dy;
}

// src/geometry/parts.ts
function partsOf(region) {
  const measured2 = region.flatMap((ring) => {
    const area2 = ringArea(ring);
    const bounds = boundsOf([ring]);
    return bounds && area2 !== 0 ? [{ ring, area: area2, bounds }] : [];
  });
  const outers = measured2.filter(({ area: area2 }) => area2 > 0).sort((a, b) => a.area - b.area);
  const islands = new Map(outers.map((outer) => [outer, { rings: [outer.ring], area: outer.area }]));
  for (const hole of measured2) {
    if (hole.area > 0) continue;
    const owner = outers.find((outer) => outer.area >= -hole.area && holds(outer, hole));
    const island = owner && islands.get(owner);
    if (!island) continue;
    island.rings.push(hole.ring);
    island.area += hole.area;
  }
  return measured2.flatMap((ring) => islands.get(ring) ?? []).sort((a, b) => b.area - a.area).map(({ rings }) => rings);
}
function holds(outer, hole) {
  const { bounds: o } = outer;
  const { bounds: h } = hole;
  if (h.minX < o.minX || h.maxX > o.maxX || h.minY < o.minY || h.maxY > o.maxY) return false;
  for (const [i, p] of hole.ring.entries()) {
    const side3 = sideOf(outer.ring, p);
    if (side3 !== 0) return side3 > 0;
    const q = hole.ring[(i + 1) % hole.ring.length];
    const middle2 = sideOf(outer.ring, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
    if (middle2 !== 0) return middle2 > 0;
  }
  return true;
}
function sideOf(ring, p) {
  let inside4 = false;
  let a = ring[ring.length - 1];
  for (const b of ring) {
    if (a.y > p.y !== b.y > p.y) {
      const cross3 = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
      if (cross3 === 0) return 0;
      if (cross3 > 0 === b.y > a.y) inside4 = !inside4;
    } else if (a.y === p.y && b.y === p.y ? (p.x - a.x) * (p.x - b.x) <= 0 : b.x === p.x && b.y === p.y) {
      return 0;
    }
    a = b;
  }
  return inside4 ? 1 : -1;
}

// src/geometry/pole.ts
import polylabel from "polylabel";
function poleOf(region, precisionMm2 = 0.01) {
  const [part] = partsOf(region);
  if (!part) return void 0;
  const [x, y] = polylabel(
    part.map((ring) => ring.map((point) => [point.x, point.y])),
    precisionMm2
  );
  return x === void 0 || y === void 0 ? void 0 : { x, y };
}

// src/geometry/simplify.ts
import simplify from "simplify-js";
function simplified(region, tolerance) {
  return region.map((ring) => simplifiedRing(ring, tolerance)).filter((ring) => ring.length > 2);
}
function simplifiedRing(ring, tolerance) {
  return simplify([...ring, ring[0]], tolerance, true).slice(0, -1);
}

// src/tag/asked-width.ts
function ofStrips(strips, width) {
  return strips.map((strip2) => ({ region: [strip2], width }));
}
function ofBar({ kind }, region) {
  const box = kind === "rectangle" ? boundsOf(region) : void 0;
  return box ? [{ region, width: Math.min(box.maxX - box.minX, box.maxY - box.minY) }] : [];
}
function mapAsked(asked, affine) {
  return asked.map(({ region, width }) => ({ region: transform(region, affine), width }));
}
function thinned(asked, by) {
  return asked.map(({ region, width }) => ({ region: offset(region, -by / 2), width: width - by }));
}

// src/tag/made-shape.ts
function mapSolid(solid, affine) {
  const { asked, band, arcCentre, lettering: lettering3, parts, shoulders } = solid;
  const upright = affine.b === 0 && affine.c === 0 && affine.d > 0;
  return {
    region: transform(solid.region, affine),
    ...parts ? { parts: new Map([...parts].map(([name, region]) => [name, transform(region, affine)])) } : {},
    ...shoulders ? { shoulders: shoulders.map((each) => ({ ...each, region: transform(each.region, affine) })) } : {},
    ...lettering3 ? { lettering: lettering3.map((each) => each.mapped(affine)) } : {},
    ...arcCentre ? { arcCentre: applyTo(arcCentre, affine) } : {},
    ...asked ? { asked: mapAsked(asked, affine) } : {},
    ...band && upright ? { band: { baseline: affine.d * band.baseline + affine.f, top: affine.d * band.top + affine.f } } : {}
  };
}
var gravityShare = 0.35;
function centreOf({ region, band, arcCentre }, rule) {
  const bounds = boundsOf(region);
  if (!bounds) return void 0;
  const box = boxCentre(bounds);
  const mass = centroid(region) ?? box;
  const bandMiddle = band && (band.baseline + band.top) / 2;
  switch (rule) {
    case "box":
      return box;
    case "mass":
      return mass;
    case "x-height":
      return { x: box.x, y: bandMiddle ?? box.y };
    case "eye": {
      if (arcCentre) return arcCentre;
      const y = bandMiddle === void 0 ? (box.y + mass.y) / 2 : gravityShare * mass.y + (1 - gravityShare) * bandMiddle;
      return { x: (box.x + mass.x) / 2, y };
    }
  }
}

// src/tag/fit/room.ts
var closeMm = 2e-3;
var roughMm = 0.03;
var mostParts = 3;
var Walls = class {
  region;
  /** Corners that point into the room, and points of what stands in it. */
  corners;
  #edges;
  constructor(region, offMm) {
    this.region = simplified(region, offMm);
    this.corners = this.region.flatMap((ring) => ring.filter((_, index) => turnsBack(ring, index)));
  }
  get edges() {
    return this.#edges ??= new EdgeIndex(this.region);
  }
};
var RoomPart = class {
  box;
  walls;
  rough;
  #field;
  constructor(region) {
    this.walls = new Walls(region, closeMm);
    this.rough = new Walls(region, roughMm);
    this.box = boundsOf(this.walls.region);
  }
  get field() {
    return this.#field ??= new DistanceField(this.rough.region);
  }
};
function roomIn(target, margin, obstacles, by) {
  const inner = offset(target, -margin);
  const region = obstacles.length === 0 || inner.length === 0 ? inner : difference(inner, [obstacles]);
  const parts = partsOf(region).slice(0, mostParts).map((part) => new RoomPart(part));
  const centre = centreOf({ region: target }, by);
  return { region, parts, centre: centre && contains(region, centre) ? centre : poleOf(region) };
}
function turnsBack(ring, index) {
  const before = ring[(index + ring.length - 1) % ring.length];
  const here = ring[index];
  const after = ring[(index + 1) % ring.length];
  return (here.x - before.x) * (after.y - here.y) - (here.y - before.y) * (after.x - here.x) < 0;
}

// src/tag/fit/search.ts
var worthwhile = 1.001;
var smallest = 0.03;
var firstSquares = 10;
var mostSquares = 160;
var fieldError = 0.25;
var rounds = 24;
function samplesOf(points, box) {
  const values = new Float64Array(3 * points.length);
  points.forEach(({ x, y }, i) => values.set([x, y, Math.hypot(x, y)], 3 * i));
  return { values, box };
}
function promisingPlaces(samples, part, atLeast2, raise, y) {
  const { box } = samples;
  const most4 = mostIn(part, samples);
  if (!(most4 > atLeast2)) return [];
  const reach = (low2, high2, from, to) => [
    Math.min(low2 - atLeast2 * from, low2 - most4 * from),
    Math.max(high2 - atLeast2 * to, high2 - most4 * to)
  ];
  const [left, right] = reach(part.box.minX, part.box.maxX, box.minX, box.maxX);
  const [low, high] = y === void 0 ? reach(part.box.minY, part.box.maxY, box.minY, box.maxY) : [y, y];
  const side3 = Math.max(right - left, high - low) / firstSquares;
  const error = fieldError * part.field.step;
  let wanted = atLeast2 * worthwhile;
  const bound = (x, at2, half2) => {
    const slack = error + (y === void 0 ? half2 * Math.SQRT2 : half2);
    return { x, y: at2, half: half2, scale: largestAt(samples, part, x, at2, slack, most4, wanted) };
  };
  let squares = [];
  for (let i = 0; i < Math.max(1, Math.ceil((right - left) / side3)); i++) {
    for (let j = 0; j < Math.max(1, Math.ceil((high - low) / side3)); j++) {
      squares.push(bound(left + (i + 0.5) * side3, y ?? low + (j + 0.5) * side3, side3 / 2));
    }
  }
  const least = smallest * Math.min(box.maxX - box.minX, box.maxY - box.minY) * most4;
  let half = side3 / 2;
  for (; ; ) {
    squares = squares.filter(({ scale }) => scale > wanted).sort((a, b) => b.scale - a.scale).slice(0, mostSquares);
    if (half <= least || squares.length === 0) return squares;
    wanted = Math.max(wanted, raise(squares[0]) * worthwhile);
    half /= 2;
    squares = squares.filter(({ scale }) => scale > wanted).flatMap(
      ({ x, y: at2 }) => (y === void 0 ? quarters : halves).map(({ x: dx, y: dy }) => bound(x + dx * half, at2 + dy * half, half))
    );
  }
}
function mostIn({ box: { minX, minY, maxX, maxY } }, { box }) {
  return Math.min((maxX - minX) / (box.maxX - box.minX), (maxY - minY) / (box.maxY - box.minY));
}
var quarters = [
  { x: -1, y: -1 },
  { x: 1, y: -1 },
  { x: -1, y: 1 },
  { x: 1, y: 1 }
];
var halves = [
  { x: -1, y: 0 },
  { x: 1, y: 0 }
];
function largestAt({ values }, { field }, x, y, slack, most4, least) {
  let scale = most4;
  for (let round3 = 0; round3 < rounds; round3++) {
    let next = scale;
    for (let i = 0; i < values.length; i += 3) {
      const out = -slack - field.at(x + scale * values[i], y + scale * values[i + 1]);
      if (out <= 0) continue;
      next = Math.min(next, scale - out / values[i + 2]);
      if (next < least) return 0;
    }
    if (next > scale * 0.9995) return next;
    scale = next;
  }
  return scale;
}

// src/tag/fit/settle.ts
var rounds2 = 3;
var touchingMm = 1e-4;
var middleMm = 5e-3;
function settling(points, rings, walls, centre, only) {
  const shift = { x: 0, y: 0 };
  const toMiddle = (along2, across2) => {
    const { back, forth } = wayOf(points, rings, walls, shift, along2, across2);
    if (!Number.isFinite(back + forth)) return 0;
    const [low, high] = extent(points, along2);
    const middle2 = (low + high + forth - back) / 2;
    return Math.min(forth, Math.max(-back, middle2 - centre[along2]));
  };
  for (let round3 = 0; round3 < rounds2; round3++) {
    const x = toMiddle("x", "y");
    shift.x += x;
    const y = only ? 0 : toMiddle("y", "x");
    shift.y += y;
    if (Math.max(Math.abs(x), Math.abs(y)) < middleMm) break;
  }
  return shift;
}
function extent(points, along2) {
  let [low, high] = [Infinity, -Infinity];
  for (const point of points) {
    low = Math.min(low, point[along2]);
    high = Math.max(high, point[along2]);
  }
  return [low, high];
}
function wayOf(points, rings, { region, corners }, shift, along2, across2) {
  let [back, forth] = [Infinity, Infinity];
  const meet2 = (distance5, way) => {
    if (way > 0 && distance5 > -touchingMm) forth = Math.min(forth, Math.max(0, distance5 - touchingMm));
    if (way < 0 && distance5 < touchingMm) back = Math.min(back, Math.max(0, -distance5 - touchingMm));
  };
  const moved3 = { along: shift[along2], across: shift[across2] };
  eachLevel(points, region, along2, across2, moved3, meet2);
  eachLevel(corners, rings, along2, across2, { along: -moved3.along, across: -moved3.across }, (distance5, way) => {
    meet2(-distance5, way);
  });
  return { back, forth };
}
function eachLevel(points, edges, along2, across2, moved3, found) {
  const levels = points.map((point) => ({ at: point[across2] + moved3.across, place: point[along2] + moved3.along }));
  levels.sort((a, b) => a.at - b.at);
  for (const ring of edges) {
    let from = ring[ring.length - 1];
    for (const to of ring) {
      const [low, high] = from[across2] < to[across2] ? [from[across2], to[across2]] : [to[across2], from[across2]];
      if (low < high) {
        const way = to[across2] > from[across2] === (along2 === "x") ? 1 : -1;
        const slope = (to[along2] - from[along2]) / (to[across2] - from[across2]);
        for (let i = firstFrom(levels, low); i < levels.length && levels[i].at < high; i++) {
          found(from[along2] + slope * (levels[i].at - from[across2]) - levels[i].place, way);
        }
      }
      from = to;
    }
  }
}
function firstFrom(levels, low) {
  let [start, end] = [0, levels.length];
  while (start < end) {
    const middle2 = start + end >> 1;
    if (levels[middle2].at < low) start = middle2 + 1;
    else end = middle2;
  }
  return start;
}

// src/tag/fit/silhouette.ts
var columns = 64;
function silhouetteOf({ region, band, lettering: lettering3 }, about, closeMm5) {
  const moved3 = translation(-about.x, -about.y);
  const isLettering3 = lettering3 !== void 0 && lettering3.length > 0;
  const seen = isLettering3 ? region.filter((ring) => ringArea(ring) > 0) : region;
  const outline = transform(simplified(seen, closeMm5), moved3);
  if (!isLettering3) return { solids: [outline], points: outline.flat() };
  const letters = outline.map((ring) => [ring]);
  const filling = band && fillingOf(outline, { baseline: band.baseline - about.y, top: band.top - about.y });
  if (!filling) return { solids: letters, points: outline.flat() };
  const points = outline.flat().filter((point) => !filling.hides(point));
  return { solids: [...letters, ...filling.rings.map((ring) => [ring])], points };
}
function fillingOf(letters, band) {
  const box = boundsOf(letters);
  if (!box) return void 0;
  const { low, high } = profiles(letters, box);
  const width = (box.maxX - box.minX) / columns;
  const inner = (values, pick) => values.map((value, i) => pick(value, values[Math.max(0, i - 1)], values[Math.min(columns - 1, i + 1)]));
  const lows = inner(low, Math.max);
  const highs = inner(high, Math.min);
  const inked = Array.from(lows.keys()).filter((i) => lows[i] < highs[i]);
  if (inked.length < 2) return void 0;
  const x = (i) => box.minX + (i + 0.5) * width;
  const ring = [
    ...inked.map((i) => ({ x: x(i), y: lows[i] })),
    ...inked.toReversed().map((i) => ({ x: x(i), y: highs[i] }))
  ];
  return {
    rings: [simplified([ring], width / 4)[0] ?? ring, ...lineOf(letters, band)],
    hides: (point) => {
      const i = Math.floor((point.x - box.minX) / width);
      return i > 0 && i < columns - 1 && point.y > lows[i] && point.y < highs[i];
    }
  };
}
var withinBand = 0.04;
function lineOf(letters, { baseline, top }) {
  const within2 = withinBand * (top - baseline);
  const ends = [baseline + within2, top - within2].map((y) => endsAt(letters, y));
  const [foot, head] = ends;
  return foot && head ? [[foot[0], foot[1], head[1], head[0]]] : [];
}
function endsAt(letters, y) {
  let [low, high] = [Infinity, -Infinity];
  for (const ring of letters) {
    let from = ring[ring.length - 1];
    for (const to of ring) {
      if (from.y > y !== to.y > y) {
        const x = from.x + (y - from.y) / (to.y - from.y) * (to.x - from.x);
        low = Math.min(low, x);
        high = Math.max(high, x);
      }
      from = to;
    }
  }
  return low < high ? [
    { x: low, y },
    { x: high, y }
  ] : void 0;
}
function profiles(letters, box) {
  const low = new Float64Array(columns).fill(Infinity);
  const high = new Float64Array(columns).fill(-Infinity);
  const width = (box.maxX - box.minX) / columns;
  for (const ring of letters) {
    let from = ring[ring.length - 1];
    for (const to of ring) {
      const [a, b] = from.x < to.x ? [from, to] : [to, from];
      const last = Math.min(columns - 1, Math.floor((b.x - box.minX) / width));
      for (let i = Math.max(0, Math.floor((a.x - box.minX) / width)); i <= last; i++) {
        for (const edge of [box.minX + i * width, box.minX + (i + 1) * width]) {
          const at2 = Math.min(b.x, Math.max(a.x, edge));
          const y = b.x === a.x ? a.y : a.y + (at2 - a.x) / (b.x - a.x) * (b.y - a.y);
          low[i] = Math.min(low[i], y);
          high[i] = Math.max(high[i], y);
        }
      }
      from = to;
    }
  }
  return { low, high };
}

// src/tag/fit/fit.ts
var worthLeaving = 1.001;
var forMoving = 0.9998;
var keptClear = 0.85;
var touchingMm2 = 0.01;
var stillMm2 = 0.03;
var mostTried = 12;
var closeMm2 = 3e-3;
var roughMm2 = 0.03;
var sampleColumns = 32;
var sampleRows = 14;
var firstStep = 1.5;
var lastStep = 0.1;
var nearShare = 0.06;
function largestFit(solid, origin2, room, { most: most4 = Infinity } = {}) {
  if (solid.region.length === 0 || !room.centre) return void 0;
  const fitting = new Fitting(solid, origin2);
  const inMiddle = fitting.inMiddle(room);
  let best = inMiddle;
  for (const part of room.parts) best = fitting.bestIn(part, best);
  if (!best) return void 0;
  if (inMiddle && best.placement.scale < inMiddle.placement.scale * worthLeaving) best = inMiddle;
  const { scale } = best.placement;
  return fitting.settled({ ...best, placement: { ...best.placement, scale: Math.min(most4, scale) } }, scale > most4);
}
var Fitting = class {
  #close;
  #rough;
  #samples;
  constructor(solid, own) {
    this.#close = new Outline(silhouetteOf(solid, own, closeMm2));
    this.#rough = new Outline(silhouetteOf(solid, own, roughMm2));
    this.#samples = samplesOf(outermost(this.#rough.points), boundsOf(this.#close.solids.flat()));
  }
  /** Where the middle of the room to the eye is, if it goes in there. */
  inMiddle({ parts, centre }) {
    const part = parts.find(({ walls }) => contains(walls.region, centre));
    if (!part) return void 0;
    const scale = largestAt(this.#samples, part, centre.x, centre.y, 0, mostIn(part, this.#samples), 0);
    const place = { ...centre, scale };
    const placement = this.#closely(part, this.#roughly(part, place, "size") ?? place, "size");
    return placement && { placement, part };
  }
  /** What is known, or what is better in that part of the room. */
  bestIn(part, known3) {
    const bar2 = known3?.placement.scale ?? 1e-4;
    let best = { scale: bar2, x: 0, y: 0 };
    const tried = [];
    const attempt = (place) => {
      tried.push(place);
      const found = this.#roughly(part, place, "all");
      if (found && found.scale > best.scale) best = found;
      return best.scale;
    };
    for (const place of promisingPlaces(this.#samples, part, bar2, attempt)) {
      if (place.scale <= best.scale * worthLeaving || tried.length >= mostTried) break;
      const near = nearShare * this.#close.radius * place.scale;
      if (!tried.some(({ x, y }) => Math.hypot(x - place.x, y - place.y) < near)) attempt(place);
    }
    const placement = best.scale > bar2 ? this.#closely(part, best, "all") : void 0;
    return placement && placement.scale > bar2 ? { placement, part } : known3;
  }
  #roughly({ rough, field }, place, free) {
    return largestNear({ outline: this.#rough, walls: rough, field, free, step: firstStep }, place);
  }
  #closely({ walls, field }, place, free) {
    return largestNear({ outline: this.#close, walls, field, free, step: lastStep }, place);
  }
  /** As far from everything as it can be, and in the middle of what way it has left. */
  settled({ placement, part }, isRoomy) {
    const { rough, field, walls } = part;
    const { at: at2, clear } = isRoomy ? clearestNear({ outline: this.#rough, walls: rough, field, free: "all", step: firstStep }, placement) : { at: { ...placement, scale: placement.scale * forMoving }, clear: 0 };
    const placed2 = { a: at2.scale, b: 0, c: 0, d: at2.scale, e: at2.x, f: at2.y };
    const points = transform([this.#close.points], placed2)[0];
    const rings = transform(this.#close.solids.flat(), placed2);
    const kept = clear < Infinity ? keptClear * clear : 0;
    const around4 = kept > touchingMm2 ? new Walls(offset(walls.region, -kept, "miter"), 0) : walls;
    const shift = settling(points, rings, around4, at2);
    const isStill = !isRoomy && Math.hypot(shift.x, shift.y) < stillMm2;
    return isStill ? placement : { ...at2, x: at2.x + shift.x, y: at2.y + shift.y };
  }
};
function outermost(points) {
  const box = boundsOf([points]);
  const chosen2 = /* @__PURE__ */ new Set();
  const sides = [
    { along: "x", across: "y", low: box.minX, high: box.maxX, count: sampleColumns },
    { along: "y", across: "x", low: box.minY, high: box.maxY, count: sampleRows }
  ];
  for (const { along: along2, across: across2, low, high, count } of sides) {
    const ends = Array(count).fill(void 0);
    for (const point of points) {
      const at2 = Math.min(count - 1, Math.floor((point[along2] - low) / (high - low) * count));
      const [least, most4] = ends[at2] ?? [point, point];
      ends[at2] = [point[across2] < least[across2] ? point : least, point[across2] > most4[across2] ? point : most4];
    }
    for (const point of ends.flatMap((pair) => pair ?? [])) chosen2.add(point);
  }
  return [...chosen2];
}

// src/geometry/inner-point.ts
function innerPoint(ring) {
  const { minY, maxY } = boundsOf([ring]);
  const y = (minY + maxY) / 2;
  const crossings4 = [];
  let previous = ring.at(-1);
  for (const point of ring) {
    if (point.y > y !== previous.y > y) {
      crossings4.push(point.x + (y - point.y) * (previous.x - point.x) / (previous.y - point.y));
    }
    previous = point;
  }
  crossings4.sort((a, b) => a - b);
  let inside4 = { x: ring[0].x, width: -1 };
  for (let index = 0; index + 1 < crossings4.length; index += 2) {
    const [from, to] = [crossings4[index], crossings4[index + 1]];
    if (to - from > inside4.width) inside4 = { x: (from + to) / 2, width: to - from };
  }
  return { x: inside4.x, y };
}

// src/checks/along.ts
var stepMm = 1;
function along(ring, share) {
  return ring.flatMap((from, index) => {
    const to = ring[(index + 1) % ring.length];
    const steps2 = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / stepMm));
    return Array.from({ length: steps2 }, (_, step) => ({
      x: from.x + (to.x - from.x) * (step + share) / steps2,
      y: from.y + (to.y - from.y) * (step + share) / steps2
    }));
  });
}

// src/checks/blame.ts
var hangerReachMm = 0.05;
function isAt({ opening, lug }, points) {
  const outlines = [opening, lug ?? []];
  return points.some((point) => outlines.some((outline) => distanceTo(outline, point) < hangerReachMm));
}
function hangerAt({ hangers }, points) {
  return hangers.find((hanger) => isAt(hanger, points));
}
function blame(piece, ...points) {
  const hanger = hangerAt(piece, points);
  if (hanger) return hanger.path;
  const at2 = {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length
  };
  let nearest4 = piece.path;
  let least = Infinity;
  for (const { region, path } of piece.sources) {
    const distance5 = distanceTo(region, at2);
    if (distance5 < least - 1e-6) {
      least = distance5;
      nearest4 = path;
    }
  }
  return nearest4;
}
function distanceTo(region, point) {
  let least = Infinity;
  for (const ring of region) {
    let from = ring[ring.length - 1];
    for (const to of ring) {
      least = Math.min(least, distanceToSegment(point, from, to));
      from = to;
    }
  }
  return least;
}
function distanceToSegment({ x, y }, from, to) {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / length));
  return Math.sqrt((from.x + t * dx - x) ** 2 + (from.y + t * dy - y) ** 2);
}

// src/core/units.ts
var mmPerInch = 25.4;

// src/core/figures.ts
var open = "\uE000";
var close = "\uE001";
function mm(length, digits = 2) {
  return `${open}${length} ${digits} length${close}`;
}
function limit(length) {
  return `${open}${length} 2 limit${close}`;
}
function mm2(area2, digits = 0) {
  return `${open}${area2} ${digits} area${close}`;
}
function mmByMm(width, height, digits = 2) {
  return `${mm(width, digits)} \xD7 ${mm(height, digits)}`;
}
var figure = new RegExp(`${open}(\\S+) (\\d) (length|limit|area)${close}`, "g");
function inUnits(message, units2) {
  const written = message.replace(figure, (_, value, digits, kind) => {
    const { text, sign: sign2 } = units2 === "mm" ? inMm(Number(value), Number(digits), kind) : inInches(Number(value), Number(digits), kind);
    return `${kind === "limit" ? String(Number(text)) : text} ${sign2}`;
  });
  return written.replace(/(\d) (mm|in) (×|→) (?=[\d.]+ \2)/g, "$1 $3 ");
}
function inMm(value, digits, kind) {
  return { text: value.toFixed(digits), sign: kind === "area" ? "mm\xB2" : "mm" };
}
function inInches(value, digits, kind) {
  return kind === "area" ? { text: (value / mmPerInch ** 2).toFixed(digits + 3), sign: "in\xB2" } : { text: (value / mmPerInch).toFixed(digits + 1), sign: "in" };
}

// src/checks/origin.ts
function originOf(shape) {
  return shape.generator.kind === "from" ? originOf(shape.generator.shape) : shape;
}
function isMadeFromSame(shape, { sources: sources2 }, made) {
  const origin2 = originOf(shape);
  const paths = sources2.map(({ path }) => path.join("/"));
  return [...made.keys()].some((other) => originOf(other) === origin2 && paths.includes(other.path.join("/")));
}
function isLettering({ generator }) {
  switch (generator.kind) {
    case "text":
      return true;
    case "from":
      return isLettering(generator.shape);
    case "union":
      return generator.shapes.some(isLettering);
    case "difference":
    case "intersection":
      return generator.shapes[0] !== void 0 && isLettering(generator.shapes[0]);
    default:
      return false;
  }
}
function calledOf({ name, generator }) {
  if (name !== void 0) return `\u201C${name}\u201D`;
  if (generator.kind === "from") return calledOf(generator.shape);
  return generator.kind === "text" ? `\u201C${generator.text}\u201D` : void 0;
}

// src/checks/per-region.ts
function perRegion(compute) {
  const known3 = /* @__PURE__ */ new WeakMap();
  return (region, width = 0) => {
    const before = known3.get(region);
    if (before?.width === width) return before.result;
    const result = compute(region, width);
    known3.set(region, { width, result });
    return result;
  };
}

// src/checks/remembered.ts
function remembered(compare3) {
  const known3 = /* @__PURE__ */ new WeakMap();
  return (a, b) => {
    const ofA = known3.get(a) ?? /* @__PURE__ */ new WeakMap();
    known3.set(a, ofA);
    const before = ofA.get(b);
    if (before) return before.result;
    const result = compare3(a, b);
    ofA.set(b, { result });
    return result;
  };
}

// src/checks/cut-off-body.ts
var nothingMm2 = 0.02;
var sameLineMm = 0.05;
var misplacedShare = 0.8;
var shallowMm = 2;
var toleranceMm = 0.01;
var cutOffBody = ({ pieces }) => pieces.flatMap((piece) => {
  const cuts = piece.sources.filter(({ use }) => use === "cut");
  return cuts.flatMap((cut) => {
    const fault = faultOf(cut, piece, cuts);
    if (!fault) return [];
    const finding5 = {
      code: "cut-off-body",
      severity: "warning",
      piece: piece.id,
      path: cut.entry,
      ...fault
    };
    return [finding5];
  });
});
function faultOf(cut, piece, cuts) {
  const box = boundsOf(cut.region);
  if (!box) return void 0;
  const name = calledOf(cut.shape) ?? "A shape";
  const lugs = piece.hangers.flatMap(({ lug }) => lug ? [lug] : []);
  const off = without(beyond(cut.region, piece.body), lugs);
  const whole2 = area(simply(cut.region));
  const share = area(off) / whole2;
  const outline = [...outersOf(piece.body), ...lugs.flat()];
  if (area(off) > whole2 - nothingMm2) {
    const gap = Math.min(...cut.region.flat().map((point) => distanceTo(outline, point)));
    return { points: [boxCentre(box)], message: `${name} cuts nothing: it lies ${mm(gap)} beside \u201C${piece.title}\u201D.` };
  }
  const within2 = openingRound(cut, piece, cuts, lugs);
  if (within2) return { points: [boxCentre(box)], message: `${name} cuts nothing: it lies entirely inside ${within2}.` };
  if (isDrawn(cut.shape)) return lost(name, without(outside(cut.region, piece.body), lugs), piece, outline);
  if (share <= misplacedShare) return void 0;
  const bite = deepest(intersection(cut.region, outline), outline);
  if (!bite || bite.depth >= shallowMm) return void 0;
  const message = `${name} barely touches \u201C${piece.title}\u201D: ${Math.round(100 * share)} % of it lies beyond the edge, and it cuts only ${mm(bite.depth)} deep.`;
  return { points: [bite.point], message };
}
function lost(name, off, piece, outline) {
  const parts = partsOf(off).map((part) => ({ part, box: boundsOf(part), size: area(part) })).filter(({ part }) => (deepest(part, piece.body)?.depth ?? 0) > sameLineMm).sort((a, b) => b.size - a.size);
  const [largest2] = parts;
  if (!largest2) return void 0;
  const { minX, minY, maxX, maxY } = largest2.box;
  const size = mmByMm(maxX - minX, maxY - minY);
  const places = parts.length === 1 ? size : `${parts.length} places, the largest ${size}`;
  const point = innerPoint(largest2.part[0]);
  const isInside = contains(outline, point);
  const where2 = isInside ? "into an opening" : "beyond the edge";
  const then = isInside ? "part of it is lost" : "part of it is lost, and the edge is open there";
  return { points: [point], message: `${name} is cut ${where2} of \u201C${piece.title}\u201D (${places}): ${then}.` };
}
function openingRound(cut, piece, cuts, lugs) {
  const at2 = cuts.indexOf(cut);
  const own = area(cut.region);
  const inBody = lugs.length === 0 ? inside(cut.region, piece.body) : intersection(cut.region, union([piece.body, ...lugs]));
  if (area(inBody) < nothingMm2) return "an opening of the body";
  const others2 = cuts.filter((other, index) => {
    const size = area(other.region);
    return other !== cut && (index < at2 ? size > own - nothingMm2 : size > own + nothingMm2);
  });
  const openings = [
    ...others2.map(({ region, shape }) => ({ region, what: `the cut ${calledOf(shape) ?? "beside it"}` })),
    ...piece.hangers.map(({ opening, kind }) => ({
      region: opening,
      what: kind === "ring" ? "the hole of the ring" : `the ${kind} for the tie`
    }))
  ];
  return openings.find(({ region }) => area(difference(inBody, [region])) < nothingMm2)?.what;
}
function isDrawn(shape) {
  const seen = /* @__PURE__ */ new Set();
  const waiting = [shape];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    const { generator } = next;
    if (generator.kind === "text" || generator.kind === "drawing") return true;
    if (generator.kind === "from") waiting.push(generator.shape);
    if (generator.kind === "union" || generator.kind === "intersection") waiting.push(...generator.shapes);
    if (generator.kind === "difference") waiting.push(...generator.shapes.slice(0, 1));
  }
  return false;
}
function deepest(region, outline) {
  return region.flatMap((ring) => along(ring, 0)).map((point) => ({ depth: distanceTo(outline, point), point })).reduce((a, b) => a && a.depth >= b.depth ? a : b, void 0);
}
function outersOf(region) {
  return region.filter((ring) => ringArea(ring) > 0);
}
function without(region, others2) {
  return region.length > 0 && others2.length > 0 ? difference(region, others2) : region;
}
var simplyWithin = perRegion(simplified);
var simply = (region) => simplyWithin(region, toleranceMm);
var beyond = remembered((cut, body) => difference(simply(cut), [outersOf(simply(body))]));
var outside = remembered((cut, body) => difference(simply(cut), [simply(body)]));
var inside = remembered((cut, body) => intersection(simply(cut), simply(body)));

// src/geometry/close-edges/edges.ts
var leastEdgeMm = 1e-7;
function edgesOf2(region, reversed) {
  const size = region.reduce((sum, ring) => sum + ring.length, 0);
  const array = () => new Float64Array(size);
  const [x, y, dx, dy, length, before, swept] = [array(), array(), array(), array(), array(), array(), array()];
  const ringOf = new Int32Array(size);
  const rings = [];
  let count = 0;
  for (const ring of region) {
    const origin2 = ring[0];
    if (!origin2) continue;
    let arc2 = 0;
    let area2 = 0;
    for (let k = 0; k < ring.length; k++) {
      const from = ring[reversed ? (ring.length - k) % ring.length : k];
      const to = ring[reversed ? ring.length - k - 1 : (k + 1) % ring.length];
      const long = Math.hypot(to.x - from.x, to.y - from.y);
      if (long < leastEdgeMm) continue;
      x[count] = from.x;
      y[count] = from.y;
      dx[count] = (to.x - from.x) / long;
      dy[count] = (to.y - from.y) / long;
      length[count] = long;
      ringOf[count] = rings.length;
      before[count] = arc2;
      swept[count] = area2;
      arc2 += long;
      area2 += (from.x - origin2.x) * (to.y - origin2.y) - (to.x - origin2.x) * (from.y - origin2.y);
      count++;
    }
    rings.push({ x: origin2.x, y: origin2.y, length: arc2, swept: area2 });
  }
  return { count, x, y, dx, dy, length, ring: ringOf, before, swept, rings };
}
function placeOn(edges, edge, along2) {
  const x = edges.x[edge] + along2 * edges.dx[edge];
  const y = edges.y[edge] + along2 * edges.dy[edge];
  return { edge, along: along2, x, y };
}
function nearestOn(edges, edge, { x, y }) {
  const along2 = (x - edges.x[edge]) * edges.dx[edge] + (y - edges.y[edge]) * edges.dy[edge];
  return placeOn(edges, edge, Math.min(edges.length[edge], Math.max(0, along2)));
}
function walk(edges, from, to) {
  const ring = edges.rings[edges.ring[from.edge]];
  let length = edges.before[to.edge] + to.along - edges.before[from.edge] - from.along;
  let twice = sweptTo(edges, to, ring) - sweptTo(edges, from, ring);
  if (length < -leastEdgeMm) {
    length += ring.length;
    twice += ring.swept;
  }
  twice += (to.x - ring.x) * (from.y - ring.y) - (from.x - ring.x) * (to.y - ring.y);
  return { length, right: -twice / 2 };
}
function sweptTo(edges, { edge, x, y }, ring) {
  return edges.swept[edge] + (edges.x[edge] - ring.x) * (y - ring.y) - (x - ring.x) * (edges.y[edge] - ring.y);
}

// src/geometry/close-edges/pairs.ts
import Flatbush3 from "flatbush";
var facingCosine = -0.02;
var touchingMm3 = 1e-4;
var roundingMm = 1e-7;
var cornerReaches = 12;
var leastFullness = 0.65;
var narrowShare = 0.7;
var mostLooks = 2e6;
var mostPairs = 3e4;
function facingPairs(edges, reach) {
  if (edges.count === 0) return [];
  const index = indexOf(edges);
  const pairs = [];
  let looks = 0;
  let judged2 = 0;
  const blocked = (p, q) => {
    return index.collides(Math.min(p.x, q.x), Math.min(p.y, q.y), Math.max(p.x, q.x), Math.max(p.y, q.y), (edge) => {
      looks++;
      return edge !== p.edge && edge !== q.edge && crosses(edges, edge, p, q);
    });
  };
  const isTooMuch = () => looks >= mostLooks || judged2 >= mostPairs;
  for (let i = 0; i < edges.count && !isTooMuch(); i++) {
    const [minX, maxX] = span(edges.x[i], edges.dx[i] * edges.length[i]);
    const [minY, maxY] = span(edges.y[i], edges.dy[i] * edges.length[i]);
    index.search(minX - reach, minY - reach, maxX + reach, maxY + reach, (j) => {
      looks++;
      if (j <= i || isTooMuch() || !mayFace(edges, i, j, reach)) return false;
      judged2++;
      const pair = judge(edges, i, j, reach, blocked);
      if (pair) pairs.push(pair);
      return false;
    });
  }
  return pairs;
}
function indexOf(edges) {
  const index = new Flatbush3(edges.count);
  for (let i = 0; i < edges.count; i++) {
    const [minX, maxX] = span(edges.x[i], edges.dx[i] * edges.length[i]);
    const [minY, maxY] = span(edges.y[i], edges.dy[i] * edges.length[i]);
    index.add(minX, minY, maxX, maxY);
  }
  index.finish();
  return index;
}
function span(from, by) {
  return by < 0 ? [from + by, from] : [from, from + by];
}
function mayFace(edges, i, j, reach) {
  if (edges.dx[i] * edges.dx[j] + edges.dy[i] * edges.dy[j] > facingCosine) return false;
  if (!isInFront(edges, i, j, reach) || !isInFront(edges, j, i, reach)) return false;
  const ring = edges.ring[i];
  if (ring !== edges.ring[j]) return true;
  const far = edges.before[j] + edges.length[j] - edges.before[i];
  const round3 = edges.rings[ring].length - (edges.before[j] - edges.before[i] - edges.length[i]);
  return Math.min(far, round3) >= cornerReaches * reach;
}
function isInFront(edges, i, j, reach) {
  const x = edges.x[j] - edges.x[i];
  const y = edges.y[j] - edges.y[i];
  const start = x * edges.dy[i] - y * edges.dx[i];
  const end = start + edges.length[j] * (edges.dx[j] * edges.dy[i] - edges.dy[j] * edges.dx[i]);
  return Math.max(start, end) > -touchingMm3 && Math.min(start, end) < reach;
}
function judge(edges, i, j, reach, blocked) {
  const onI = within(edges, i, j, reach);
  const onJ = onI && within(edges, j, i, reach);
  if (!onJ) return void 0;
  let best;
  let width = reach;
  for (const share of [0, 1, 0.5]) {
    for (const swap of [false, true]) {
      const [edge, other, [start, end]] = swap ? [j, i, onJ] : [i, j, onI];
      const p = placeOn(edges, edge, start + share * (end - start));
      const q = nearestOn(edges, other, p);
      const distance5 = Math.hypot(q.x - p.x, q.y - p.y);
      if (distance5 >= (best ? Math.min(reach, width + (share === 0.5 ? touchingMm3 : -roundingMm)) : reach)) continue;
      if (!isGap(edges, p, q, distance5, reach) || distance5 > touchingMm3 && blocked(p, q)) continue;
      best = [p, q];
      width = Math.min(width, distance5);
    }
  }
  if (!best) return void 0;
  return {
    width: width > touchingMm3 ? width : 0,
    ends: best,
    stretches: [stretchOf(edges, i, onI), stretchOf(edges, j, onJ)]
  };
}
function stretchOf(edges, edge, [start, end]) {
  return { ring: edges.ring[edge], start: edges.before[edge] + start, end: edges.before[edge] + end };
}
function within(edges, i, j, reach) {
  const [ux, uy] = [edges.dx[i], edges.dy[i]];
  const [vx, vy] = [edges.dx[j], edges.dy[j]];
  const [x, y] = [edges.x[j] - edges.x[i], edges.y[j] - edges.y[i]];
  let start = Infinity;
  let end = -Infinity;
  for (const along2 of [0, edges.length[j]]) {
    const [cx, cy] = [x + along2 * vx, y + along2 * vy];
    const across2 = cx * uy - cy * ux;
    const half = reach * reach - across2 * across2;
    if (half < 0) continue;
    const middle2 = cx * ux + cy * uy;
    start = Math.min(start, middle2 - Math.sqrt(half));
    end = Math.max(end, middle2 + Math.sqrt(half));
  }
  const beside = between(-(x * vx + y * vy), ux * vx + uy * vy, 0, edges.length[j]);
  const near = between(y * vx - x * vy, ux * vy - uy * vx, -reach, reach);
  const first = Math.max(beside[0], near[0]);
  const last = Math.min(beside[1], near[1]);
  if (first <= last) {
    start = Math.min(start, first);
    end = Math.max(end, last);
  }
  start = Math.max(0, start);
  end = Math.min(edges.length[i], end);
  return start <= end ? [start, end] : void 0;
}
function between(at2, slope, low, high) {
  if (slope === 0) return at2 >= low && at2 <= high ? [-Infinity, Infinity] : [Infinity, -Infinity];
  const a = (low - at2) / slope;
  const b = (high - at2) / slope;
  return a < b ? [a, b] : [b, a];
}
function isGap(edges, p, q, distance5, reach) {
  if (distance5 > touchingMm3 && !(leaves(edges, p, q) && leaves(edges, q, p))) return false;
  if (edges.ring[p.edge] !== edges.ring[q.edge]) return true;
  const ways = [walk(edges, p, q), walk(edges, q, p)];
  if (ways.some(({ length }) => length < cornerReaches * reach)) return false;
  const behind2 = ways.filter(({ right }) => right > 0);
  if (behind2.length === 2 && isNarrow(edges, p, reach)) return true;
  return behind2.length > 0 && behind2.every(({ length, right }) => right >= leastFullness * distance5 * length / 2);
}
function isNarrow({ rings, ring }, { edge }, reach) {
  const { swept, length } = rings[ring[edge]];
  return Math.abs(swept) < narrowShare * reach * length;
}
function leaves(edges, p, q) {
  return (q.x - p.x) * edges.dy[p.edge] - (q.y - p.y) * edges.dx[p.edge] > 0;
}
function crosses(edges, edge, p, q) {
  const [dx, dy] = [edges.dx[edge], edges.dy[edge]];
  const side3 = (place) => (place.x - edges.x[edge]) * dy - (place.y - edges.y[edge]) * dx;
  const [a, b] = [side3(p), side3(q)];
  if (Math.abs(a) < touchingMm3 / 10 || Math.abs(b) < touchingMm3 / 10 || a > 0 === b > 0) return false;
  const share = a / (a - b);
  const x = p.x + share * (q.x - p.x) - edges.x[edge];
  const y = p.y + share * (q.y - p.y) - edges.y[edge];
  const along2 = x * dx + y * dy;
  return along2 >= 0 && along2 <= edges.length[edge];
}

// src/geometry/close-edges.ts
function closeEdges(region, reach, side3) {
  if (!(reach > 0) || !Number.isFinite(reach)) return [];
  const edges = edgesOf2(region, side3 === "material");
  const pairs = facingPairs(edges, reach);
  const places = joined(
    pairs,
    edges.rings.map(({ length }) => length),
    reach
  );
  return places.sort((a, b) => a.width - b.width || compare(a.ends[0], b.ends[0]) || compare(a.ends[1], b.ends[1]));
}
function joined(pairs, ringLengths, slack) {
  const leader = pairs.map((_, index) => index);
  const find2 = (index) => {
    while (leader[index] !== index) index = leader[index] = leader[leader[index]];
    return index;
  };
  const runs = runsOf(pairs, ringLengths, slack);
  for (const { members: members2 } of runs) for (const member of members2) leader[find2(member)] = find2(members2[0]);
  const places = /* @__PURE__ */ new Map();
  pairs.forEach((pair, index) => {
    const place = places.get(find2(index));
    if (!place) places.set(find2(index), { best: pair, length: 0 });
    else if (isBefore(pair, place.best)) place.best = pair;
  });
  for (const { members: members2, length } of runs) places.get(find2(members2[0])).length += length / 2;
  return [...places.values()].map(({ best, length }) => {
    const [a, b] = best.ends.map(({ x, y }) => ({ x, y }));
    return { width: best.width, ends: compare(a, b) <= 0 ? [a, b] : [b, a], length };
  });
}
var evenMm = 1e-4;
function isBefore(a, b) {
  if (Math.abs(a.width - b.width) > evenMm) return a.width < b.width;
  return lengthOf(a) > lengthOf(b);
}
function lengthOf({ stretches: [a, b] }) {
  return a.end - a.start + b.end - b.start;
}
function runsOf(pairs, ringLengths, slack) {
  const stretches = pairs.flatMap((pair, member) => pair.stretches.map((stretch3) => ({ ...stretch3, member })));
  stretches.sort((a, b) => a.ring - b.ring || a.start - b.start);
  const runs = [];
  let first = { ring: -1, start: 0, run: -1 };
  let end = 0;
  const close2 = () => {
    const last = runs.length - 1;
    if (last <= first.run || first.start + ringLengths[first.ring] - end > slack) return;
    const { members: members2, length } = runs.pop();
    runs[first.run].members.push(...members2);
    runs[first.run].length += length;
  };
  for (const { ring, start, end: stop, member } of stretches) {
    if (ring !== first.ring) {
      if (first.ring >= 0) close2();
      first = { ring, start, run: runs.length };
      runs.push({ members: [], length: 0 });
      end = start;
    } else if (start > end + slack) {
      runs.push({ members: [], length: 0 });
      end = start;
    }
    const run2 = runs[runs.length - 1];
    run2.members.push(member);
    run2.length += Math.max(0, stop - Math.max(end, start));
    end = Math.max(end, stop);
  }
  if (first.ring >= 0) close2();
  return runs;
}
var compare = (a, b) => a.x - b.x || a.y - b.y;

// src/checks/fine-mark.ts
var finestMm = 0.2;
var worthTellingMm = 3;
var fineMarks = ({ pieces, stock }) => pieces.flatMap((piece) => piece.marks.flatMap((mark) => fineMark(piece, mark, Math.max(stock.kerf, finestMm))));
var strokesIn = perRegion((region, width) => closeEdges(region, width, "material"));
var gapsIn = perRegion((region, width) => closeEdges(region, width, "gap"));
function fineMark(piece, { operation, region, path }, finest) {
  const strokes = strokesIn(region, finest);
  const gaps = gapsIn(region, finest);
  const groups2 = operation === "engrave" ? [strokes, gaps] : [[...strokes, ...gaps]];
  const telling = groups2.filter((places) => lengthOf2(places) > worthTellingMm);
  if (telling.length === 0) return [];
  const { width, ends } = narrowest(telling.flat());
  const told2 = telling.map((places) => {
    const figures2 = `${mm(narrowest(places).width)} at the narrowest, ${mm(lengthOf2(places), 0)} long in total`;
    if (operation === "score") return `score lines too close together, ${figures2}, burn together`;
    return places === strokes ? `strokes ${figures2}` : `gaps ${figures2}, which fill in`;
  });
  return [
    {
      code: "fine-mark",
      severity: "info",
      piece: piece.id,
      path,
      points: ends,
      width,
      message: `Finer than the beam can draw (${mm(finest)}): ${told2.join("; ")}.`
    }
  ];
}
function lengthOf2(places) {
  return places.reduce((sum, { length }) => sum + length, 0);
}
function narrowest(places) {
  return places.reduce((least, place) => place.width < least.width ? place : least);
}

// src/checks/by-cause.ts
var mostBlamed = 60;
function byCause(piece, places, pointsOf) {
  const causes = /* @__PURE__ */ new Map();
  let first;
  for (const [index, place] of places.entries()) {
    if (first && index >= mostBlamed) {
      first.found.push(place);
      continue;
    }
    const path = blame(piece, ...pointsOf(place));
    const cause = causes.get(path.join("/")) ?? { path, found: [] };
    causes.set(path.join("/"), cause);
    cause.found.push(place);
    first ??= cause;
  }
  return [...causes.values()];
}
function seenAt(places) {
  const [worst] = places;
  return { ...worst, ...places.length > 1 ? { places } : {} };
}

// src/spec/measured-values.ts
var mostMm = { thickness: 50, kerf: 2, min_web: 20, min_x_height: 20, hatch: 2, opening: 50 };
var dated = ["kerf", "min_web", "min_x_height", "hatch", "engrave"];
function isDated(key) {
  return dated.some((each) => each === key);
}
function isDay(text) {
  const day = /* @__PURE__ */ new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}
function measuredOn(day) {
  return day === void 0 ? "" : `, measured on ${day}`;
}

// src/checks/speck.ts
var speckMm = 0.8;
var specks = ({ pieces, stock }) => pieces.flatMap((piece) => specksOf(piece, stock.kerf));
var specksIn = perRegion(
  (region, kerf2) => region.filter((ring) => isSpeck(ring, kerf2)).sort((a, b) => across(b) - across(a))
);
function specksOf(piece, kerf2) {
  const rings = specksIn(piece.region, kerf2).filter((ring) => counts(ring, piece));
  return byCause(piece, rings, ([point]) => [point]).map(({ path, found }) => {
    const [largest2] = found;
    const width = across(largest2);
    return {
      code: "speck",
      severity: "warning",
      piece: piece.id,
      path,
      points: [boxCentre(boundsOf([largest2]))],
      width,
      message: messageOf(found, width)
    };
  });
}
function counts(ring, { hangers, parts }) {
  return ringArea(ring) > 0 ? parts === "many" : !hangers.some(({ centre }) => contains([ring], centre));
}
function isSpeck(ring, kerf2) {
  const size = across(ring);
  return size < speckMm || size < cornerReaches * kerf2 && ringArea(ring) < 0 && isNarrower(ring, kerf2);
}
function isNarrower(hole, width) {
  const inside4 = [hole.toReversed()];
  return -2 * ringArea(hole) < width * perimeter(inside4) && offset(inside4, -width / 2).length === 0;
}
function across(ring) {
  const { minX, minY, maxX, maxY } = boundsOf([ring]);
  return Math.max(maxX - minX, maxY - minY);
}
function messageOf(rings, size) {
  const holes = rings.filter((ring) => ringArea(ring) < 0).length;
  const one = rings.length === 1;
  const what = one ? `A ${holes ? "hole" : "part"} only ${mm(size)} across` : `${[counted(holes, "hole"), counted(rings.length - holes, "part")].filter(Boolean).join(" and ")}, the largest only ${mm(size)} across,`;
  const fate2 = holes === rings.length ? "" : ` or ${one ? "falls" : "fall"} through the bed`;
  return `${what} ${one ? "burns" : "burn"} out${fate2}; \u201Ctidy\u201D removes what is smaller than the size you give it.`;
}
function counted(count, noun) {
  return count === 0 ? "" : `${count} ${noun}${count === 1 ? "" : "s"}`;
}

// src/checks/gap-closes.ts
var slackMm = 5e-3;
var gapCloses = ({ pieces, stock }) => stock.kerf > 0 ? pieces.flatMap((piece) => closingGaps(piece, stock)) : [];
var worthTellingMm2 = 1;
var onLineMm = 1e-3;
var gapsIn2 = perRegion(
  (region, kerf2) => closeEdges(
    region.filter((ring) => !isSpeck(ring, kerf2)),
    kerf2 - slackMm,
    "gap"
  ).filter((gap) => gap.width > 0 && (gap.length >= worthTellingMm2 || partsOutlines(region, gap)))
);
function partsOutlines(region, { ends }) {
  return !region.some((ring) => ends.every((end) => distanceTo([ring], end) < onLineMm));
}
function closingGaps(piece, { kerf: kerf2, measuredOn: days }) {
  const told2 = `the kerf of ${mm(kerf2)}${measuredOn(days?.kerf)}`;
  return byCause(piece, gapsIn2(piece.region, kerf2), ({ ends }) => ends).map(({ path, found }) => ({
    code: "gap-closes",
    severity: "warning",
    piece: piece.id,
    path,
    ...seenAt(found.map(({ ends, width }) => ({ points: ends, width }))),
    minimum: kerf2,
    message: found.length === 1 ? oneGap(found[0], told2) : manyGaps(found, told2)
  }));
}
function oneGap({ width, length }, kerf2) {
  const run2 = length >= 1 ? ` along ${mm(length, 0)}` : "";
  return `The gap here is ${mm(width)}${run2}, less than ${kerf2}: it will not come out, and its edges stay joined or burn together.`;
}
function manyGaps(gaps, kerf2) {
  return `${gaps.length} gaps are narrower than ${kerf2}; the narrowest is ${mm(gaps[0].width)}. None of them will come out: their edges stay joined or burn together.`;
}

// src/tag/glued.ts
function below({ glueTo }, pieces) {
  const chain3 = [];
  let next = glueTo;
  while (next !== void 0) {
    const under = pieces.find(({ id }) => id === next);
    if (!under || chain3.includes(under)) break;
    chain3.push(under);
    next = under.glueTo;
  }
  return chain3;
}
function bottomOf(piece, pieces) {
  return below(piece, pieces).at(-1) ?? piece;
}

// src/checks/lettering-on.ts
function letteringOn(piece, { stock, output }) {
  const found = [];
  const loose = output.compensate ? 0 : stock.kerf / 2;
  const cut = piece.sources.flatMap((other) => other.use === "cut" ? [other.region] : []);
  for (const { use, region, lettering: lettering3 = [] } of piece.sources) {
    for (const each of lettering3) {
      const isOpening = use === "cut" !== (each.as === "opening");
      const among = piece.sources.filter((other) => other.use === use);
      const isAlone = each.shape === void 0 && among.length === 1;
      const whole2 = use === "body" ? piece.body : among.flatMap((other) => [...other.region]);
      const ground = isAlone ? {} : { ground: { of: use, shape: each.shape ?? region, region: whole2, isOpening: each.as === "opening" } };
      found.push({
        lettering: each,
        use: "cut",
        making: { beam: stock.kerf, over: isOpening ? loose : -loose },
        ...ground,
        ...keptOf(each, region, use === "body" ? cut : [])
      });
    }
  }
  for (const { operation, region, lettering: lettering3 = [] } of piece.marks) {
    for (const each of lettering3) {
      const ground = each.shape === void 0 ? {} : { ground: { of: operation, shape: each.shape, region, isOpening: each.as === "opening" } };
      const making = { beam: spotOf(stock), over: 0 };
      found.push({ lettering: each, use: operation, making, ...ground, ...keptOf(each, region, []) });
    }
  }
  return found;
}
function keptOf({ as, shape }, region, cuts) {
  return as === "opening" ? {} : { kept: { shape: shape ?? region, region, cuts } };
}
function spotOf({ kerf: kerf2, kerfs }) {
  return Math.max(kerfs && kerfs.engrave > 0 ? kerfs.engrave : kerf2, finestMm);
}

// src/geometry/union-perimeter.ts
function unionPerimeter(regions2) {
  const boxed = regions2.flatMap((region) => {
    const box = boundsOf(region);
    return box ? [{ region, box }] : [];
  });
  boxed.sort((a, b) => a.box.minX - b.box.minX);
  const near = boxed.map(() => []);
  boxed.forEach((a, index) => {
    for (let k = index + 1; k < boxed.length && boxed[k].box.minX <= a.box.maxX; k++) {
      const b = boxed[k];
      if (b.box.minY > a.box.maxY || b.box.maxY < a.box.minY) continue;
      near[index].push(b);
      near[k].push(a);
    }
  });
  return boxed.reduce((sum, { region, box }, index) => {
    const others2 = near[index].map((other) => new Cover(other, box));
    return sum + perimeter(region) - covered(region, others2);
  }, 0);
}
function covered(region, others2) {
  if (others2.length === 0) return 0;
  let length = 0;
  for (const ring of region) {
    for (const other of others2) other.jump();
    let from = ring[ring.length - 1];
    for (const to of ring) {
      const stretches = [];
      for (const other of others2) other.along(from, to, stretches);
      if (stretches.length > 0) length += Math.hypot(to.x - from.x, to.y - from.y) * lengthOf3(stretches);
      from = to;
    }
  }
  return length;
}
function lengthOf3(stretches) {
  if (stretches.length > 1) stretches.sort(([a], [b]) => a - b);
  let sum = 0;
  let end = 0;
  for (const [from, to] of stretches) {
    sum += Math.max(0, to - Math.max(from, end));
    end = Math.max(end, to);
  }
  return sum;
}
var Cover = class {
  #region;
  #box;
  /** From x, from y, to x, to y of each edge that reaches into the box of the outline. */
  #edges = [];
  /** Whether the end of the last edge was inside, where that is known. */
  #isInside;
  constructor({ region, box }, outline) {
    this.#region = region;
    this.#box = box;
    for (const ring of region) {
      let from = ring[ring.length - 1];
      for (const to of ring) {
        if (areMet(from, to, outline)) this.#edges.push(from.x, from.y, to.x, to.y);
        from = to;
      }
    }
  }
  /** The next edge begins elsewhere. */
  jump() {
    this.#isInside = void 0;
  }
  /** Adds the stretches of an edge that are inside, as shares of its length. */
  along(from, to, stretches) {
    if (!areMet(from, to, this.#box)) {
      this.#isInside = false;
      return;
    }
    const crossings4 = this.#crossings(from, to);
    if (crossings4.length === 0) {
      this.#isInside ??= this.#holds(from, to, 0.5);
      if (this.#isInside) stretches.push([0, 1]);
      return;
    }
    crossings4.sort((p, q) => p - q);
    crossings4.push(1);
    let start = 0;
    for (const end of crossings4) {
      this.#isInside = this.#holds(from, to, (start + end) / 2);
      if (this.#isInside) stretches.push([start, end]);
      start = end;
    }
  }
  #holds(from, to, share) {
    return contains(this.#region, { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) });
  }
  #crossings(from, to) {
    const [minX, maxX] = from.x < to.x ? [from.x, to.x] : [to.x, from.x];
    const [minY, maxY] = from.y < to.y ? [from.y, to.y] : [to.y, from.y];
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const edges = this.#edges;
    const found = [];
    for (let k = 0; k < edges.length; k += 4) {
      const ax = edges[k];
      const ay = edges[k + 1];
      const bx = edges[k + 2];
      const by = edges[k + 3];
      if (ax > maxX && bx > maxX) continue;
      if (ax < minX && bx < minX) continue;
      if (ay > maxY && by > maxY) continue;
      if (ay < minY && by < minY) continue;
      if (dx * (ay - from.y) > dy * (ax - from.x) === dx * (by - from.y) > dy * (bx - from.x)) continue;
      const sideFrom = (bx - ax) * (from.y - ay) - (by - ay) * (from.x - ax);
      const sideTo = (bx - ax) * (to.y - ay) - (by - ay) * (to.x - ax);
      if (sideFrom > 0 === sideTo > 0) continue;
      found.push(sideFrom / (sideFrom - sideTo));
    }
    return found;
  }
};
function areMet(a, b, { minX, minY, maxX, maxY }) {
  return (a.x >= minX || b.x >= minX) && (a.x <= maxX || b.x <= maxX) && (a.y >= minY || b.y >= minY) && (a.y <= maxY || b.y <= maxY);
}

// src/checks/clearance.ts
function clearance(a, b, reach) {
  const [boxA, boxB] = [boundsOf(a), boundsOf(b)];
  if (!boxA || !boxB) return Infinity;
  const edgesOfB = edgesIn(b, boxA, reach);
  if (edgesOfB.length === 0) return Infinity;
  let least = reach;
  for (const edge of edgesIn(a, boxB, reach)) {
    for (const other of edgesOfB) {
      if (areApart(edge, other, least)) continue;
      if (cross(edge, other)) return 0;
      least = Math.min(
        least,
        distanceToSegment(edge[0], ...other),
        distanceToSegment(edge[1], ...other),
        distanceToSegment(other[0], ...edge),
        distanceToSegment(other[1], ...edge)
      );
    }
  }
  return least < reach ? least : Infinity;
}
function alongside(a, b, reach, step) {
  const [boxA, boxB] = [boundsOf(a), boundsOf(b)];
  if (!boxA || !boxB) return 0;
  const edges = edgesIn(b, boxA, reach);
  if (edges.length === 0) return 0;
  let length = 0;
  for (const edge of edgesIn(a, boxB, reach)) {
    const [from, to] = edge;
    const whole2 = Math.hypot(to.x - from.x, to.y - from.y);
    const pieces = Math.ceil(whole2 / step);
    const facing2 = edges.filter((other) => !areApart(edge, other, reach));
    for (let i = 0; i < pieces; i++) {
      const t = (i + 0.5) / pieces;
      const at2 = { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
      const isNear3 = facing2.some((other) => distanceToSegment(at2, ...other) < reach);
      if (isNear3 || isIn2(boxB, at2) && contains(b, at2)) length += whole2 / pieces;
    }
  }
  return length;
}
function isIn2({ minX, minY, maxX, maxY }, { x, y }) {
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}
function edgesIn(region, box, reach) {
  const edges = [];
  for (const ring of region) {
    let from = ring[ring.length - 1];
    for (const to of ring) {
      if (Math.max(from.x, to.x) > box.minX - reach && Math.min(from.x, to.x) < box.maxX + reach && Math.max(from.y, to.y) > box.minY - reach && Math.min(from.y, to.y) < box.maxY + reach)
        edges.push([from, to]);
      from = to;
    }
  }
  return edges;
}
function areApart([a, b], [c, d], reach) {
  return Math.min(a.x, b.x) - Math.max(c.x, d.x) > reach || Math.min(c.x, d.x) - Math.max(a.x, b.x) > reach || Math.min(a.y, b.y) - Math.max(c.y, d.y) > reach || Math.min(c.y, d.y) - Math.max(a.y, b.y) > reach;
}
function cross([a, b], [c, d]) {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
function side(from, to, { x, y }) {
  return (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
}

// src/checks/closeness.ts
var touchingShare = 5e-3;
var jointShare = 0.03;
var slidJoint = 0.5;
var stepShare = 0.1;
function closeness(letters, reaches) {
  const { xHeight, slid } = reaches;
  const known3 = /* @__PURE__ */ new Map();
  let [apart4, merged2, length, within2] = [0, 0, 0, 0];
  for (const [index, next] of letters.entries()) {
    const letter = letters[index - 1];
    if (!letter) continue;
    const key = keyOf(letter, next, xHeight);
    const pair = known3.get(key) ?? pairOf(letter, next, reaches);
    known3.set(key, pair);
    const isApart = pair.isApart && !slid;
    if (isApart) apart4++;
    if (isApart && pair.isJoined) merged2++;
    if (next.opens) continue;
    within2++;
    length += pair.length;
  }
  return { neighbours: { apart: apart4, merged: merged2 }, crowded: length / Math.max(1, within2) };
}
function keyOf(letter, next, xHeight) {
  const away = [next.at.x - letter.at.x, next.at.y - letter.at.y, next.spaced?.x ?? 0, next.spaced?.y ?? 0];
  return [letter.like, next.like, ...away.map((mm3) => Math.round(1e4 * mm3 / xHeight))].join(" ");
}
function pairOf({ outline: before }, next, { xHeight, reach, slid }) {
  const touching2 = touchingShare * xHeight;
  const near = Math.max(reach, touching2);
  const { outline, spaced } = next;
  const natural = spaced ? transform(outline, translation(-spaced.x, -spaced.y)) : outline;
  const gap = clearance(before, outline, near);
  const isApart = (spaced ? clearance(before, natural, near) : gap) >= touching2;
  if (gap >= near) return { isApart, isJoined: false, length: 0 };
  const step = stepShare * xHeight;
  const joint2 = alongside(before, natural, Math.min(near, jointShare * xHeight), step);
  const meant = slid ? Math.min(joint2, slidJoint * xHeight) : joint2;
  const length = Math.min(1, Math.max(0, alongside(before, outline, near, step) - meant) / xHeight);
  return { isApart, isJoined: true, length };
}

// src/tag/marks-above.ts
var markFrom = 0.6;
function marksAbove(letter) {
  const parts = partsOf(letter);
  if (parts.length < 2) return [];
  const { minY, maxY } = boundsOf(letter);
  return parts.filter((part) => boundsOf(part).minY > minY + markFrom * (maxY - minY));
}

// src/checks/fused-marks.ts
var lookAround = 3;
var touchingShare2 = 5e-3;
function fusedMarks(letters, { xHeight, reach }) {
  let [drawn, fused] = [0, 0];
  const touching2 = touchingShare2 * xHeight;
  const near = Math.max(reach, touching2);
  letters.forEach(({ region, asSet }, index) => {
    if (!asSet) return;
    const [marks3, set] = [marksAbove(region), marksAbove(asSet)];
    drawn += marks3.length;
    const others2 = letters.filter((_, k) => k !== index && Math.abs(k - index) <= lookAround);
    fused += marks3.filter(
      (mark, k) => others2.some((other) => {
        if (clearance(mark, other.region, near) >= near) return false;
        return !set[k] || !other.asSet || clearance(set[k], other.asSet, touching2) >= touching2;
      })
    ).length;
  });
  return { drawn, fused };
}

// src/checks/letter-loss.ts
var outlineShare = 6e-3;
var counterShare = 4e-3;
var openShare = 0.06;
function letterLosses(letters, xHeight, reach) {
  const known3 = /* @__PURE__ */ new Map();
  return letters.map(({ text, region }) => {
    const { minX, minY, maxX, maxY } = boundsOf(region);
    const size = [maxX - minX, maxY - minY].map((each) => Math.round(each / xHeight * 1e4));
    const points = region.map((ring) => ring.length);
    const key = [text, ...size, ...points].join(" ");
    const before = known3.get(key);
    const at2 = { x: minX, y: minY };
    if (before) {
      const shift = translation(minX - before.at.x, minY - before.at.y);
      const { outline, grown: grown4 } = before;
      return { ...before, at: at2, outline: transform(outline, shift), grown: transform(grown4, shift) };
    }
    const loss = { ...lossOf(region, xHeight, reach), like: known3.size, at: at2 };
    known3.set(key, loss);
    return loss;
  });
}
function lossOf(region, xHeight, { grow, thin }) {
  const tolerance = outlineShare * xHeight;
  const outline = simplified(region, tolerance);
  const ink = area(outline);
  const grown4 = grow > 0 ? offset(outline, grow, "round", tolerance) : outline;
  const core = thin > 0 ? offset(outline, -thin, "round", tolerance) : outline;
  const left = thin > 0 ? offset(core, thin, "round", tolerance) : outline;
  const counters = outline.filter((ring) => -ringArea(ring) > counterShare * xHeight * xHeight);
  const holes = grown4.filter((ring) => ringArea(ring) < 0);
  return {
    counters: {
      drawn: counters.length,
      open: grow > 0 ? counters.filter((counter) => isOpen(counter, holes)).length : counters.length
    },
    gone: ink > 0 ? Math.max(0, ink - area(left)) / ink : 0,
    fallen: thin > 0 ? Math.max(0, partsOf(core).length - partsOf(outline).length) : 0,
    stem: 2 * ink / Math.max(perimeter(outline), 1e-9),
    outline,
    grown: grown4
  };
}
function isOpen(counter, holes) {
  const least = -openShare * ringArea(counter);
  return holes.some((hole) => -ringArea(hole) > least && contains([counter], hole[0]));
}

// src/checks/readability.ts
var weights = {
  /** Share of the ink that goes. */
  gone: 32.02,
  /** Thickness of the strokes as they are made, in heights of the small letters as they are made. */
  bold: 9.59,
  /**
   * Length of the outline that is left, as a share of that of the letters by themselves, times the logarithm of how many they
   * are: more letters help the reader to guess a word for as long as each of them has an outline of its own.
   */
  outline: -4.47,
  /** Growth beyond `farShare`, in x-heights: by then every letter has the outline of a disc, however thin its strokes were. */
  far: 11.07
};
var atNothing = 0.665;
var [fewest, most] = [3, 7];
var farShare = 0.2;
var wholeShare = 0.97;
var doubtful = 0;
var unlikely = 1;
var lumpCrowded = 0.99;
var muchGone = 0.12;
function isPlainlySpoiled(read) {
  return areAllClosed(read) || isLump(read) || read.gone >= muchGone || read.marks.fused > 0;
}
function isBlob(read) {
  return areAllClosed(read) && isLump(read);
}
function areAllClosed({ counters }) {
  return counters.drawn >= 2 && counters.open === 0;
}
function isLump({ crowded: crowded2 }) {
  return crowded2 >= lumpCrowded;
}
function readability(lettering3, { beam, over = 0 }) {
  const { xHeight, slid } = lettering3;
  const letters = lettering3.letters.filter(({ text }) => /[\p{L}\p{N}]/u.test(text));
  if (letters.length === 0 || !(xHeight > 0)) return void 0;
  const by = lettering3.grow + over;
  const grow = Math.max(0, by + beam / 2);
  const losses = letterLosses(letters, xHeight, { grow, thin: Math.max(0, -by) });
  const n = letters.length;
  const sum = (of) => losses.reduce((all, loss) => all + of(loss), 0);
  const left = unionPerimeter(losses.map(({ grown: grown4 }) => grown4));
  const outlineLeft = left / sum(({ outline }) => perimeter(outline));
  const figures2 = {
    gone: sum(({ gone }) => gone) / n,
    bold: (sum(({ stem }) => stem) / n + 2 * grow) / (xHeight + 2 * grow),
    outline: outlineLeft * Math.log(Math.min(Math.max(n, fewest), most)),
    far: Math.max(0, grow / xHeight - farShare)
  };
  const doubt = Object.keys(weights).reduce(
    (all, key) => all + weights[key] * figures2[key],
    atNothing
  );
  const isWhole = outlineLeft > wholeShare && figures2.gone < 5e-3 && figures2.far === 0;
  const standing2 = losses.map(({ like, at: at2, outline }, index) => {
    const { spaced, opens = false } = letters[index];
    return { like, at: at2, outline, spaced, opens };
  });
  return {
    ...closeness(standing2, { xHeight, reach: 2 * grow, slid }),
    letters: n,
    counters: { drawn: sum(({ counters }) => counters.drawn), open: sum(({ counters }) => counters.open) },
    marks: fusedMarks(letters, { xHeight, reach: 2 * grow }),
    gone: figures2.gone,
    fallen: sum(({ fallen }) => fallen),
    height: heightOf(letters, xHeight),
    figures: figures2,
    doubt: isWhole ? Math.min(doubt, doubtful) : doubt
  };
}
function heightOf(letters, xHeight) {
  if (letters.some(({ text }) => /\p{Ll}/u.test(text))) return xHeight;
  return letters.reduce((most4, { region }) => {
    const { minY, maxY } = boundsOf(region);
    return Math.max(most4, maxY - minY);
  }, 0);
}

// src/checks/buried.ts
var seamShare = 0.12;
var toleranceShare = 0.01;
function buried(lettering3, { shape, region, isOpening }) {
  const covered3 = seamCovered(shape, region)(lettering3.xHeight);
  return isOpening ? 1 - covered3 : covered3;
}
var seamCovered = remembered((shape, region) => {
  let known3;
  return (xHeight) => known3 ??= shareOfSeam(shape, region, xHeight);
});
function shareOfSeam(shape, region, xHeight) {
  const tolerance = toleranceShare * xHeight;
  const coarse = simplified(shape, tolerance);
  const seam = difference(offset(coarse, seamShare * xHeight, "round", tolerance), [coarse]);
  const whole2 = area(seam);
  return whole2 > 0 ? area(intersection(seam, simplified(region, tolerance))) / whole2 : 0;
}

// src/checks/cut-away.ts
var missingShare = 0.4;
var toleranceShare2 = 0.01;
function cutAway({ letters, xHeight }, { shape, region, cuts }) {
  const missing2 = [
    ...shape === region ? [] : outside2(shape, region),
    ...cuts.flatMap((cut) => [...inside2(shape, cut)])
  ];
  if (missing2.length === 0) return [];
  const coarse = simplified(missing2, toleranceShare2 * xHeight);
  return letters.filter(({ region: ink }) => area(intersection(ink, coarse)) > missingShare * area(ink));
}
var outside2 = remembered((shape, region) => difference(shape, [region]));
var inside2 = remembered(intersection);

// src/checks/hard-to-read.ts
var smallest2 = { engrave: [1.2, 0.8], score: [2, 1.2], cut: [3, 2] };
var slackMm2 = 0.01;
var halfBuried = 0.5;
var whollyBuried = 0.75;
var fewMissing = 0.2;
var hardToRead = (tag) => {
  const found = [];
  for (const uses of usesOf(tag).values()) {
    const verdicts = uses.map(({ on, piece }) => ({ on, piece, verdict: judged(on, tag.stock) }));
    if (verdicts.some(({ verdict }) => !verdict)) continue;
    const least = verdicts.find(({ verdict }) => verdict.severity === "info") ?? verdicts[0];
    found.push(findingOf(least.on, least.verdict, least.piece, tag));
  }
  return found;
};
function usesOf(tag) {
  const uses = /* @__PURE__ */ new Map();
  for (const piece of tag.pieces) {
    const bottom = bottomOf(piece, tag.pieces);
    for (const on of letteringOn(piece, tag)) {
      const key = JSON.stringify([bottom.id, on.lettering.path]);
      uses.set(key, [...uses.get(key) ?? [], { on, piece }]);
    }
  }
  return uses;
}
function findingOf({ lettering: lettering3 }, verdict, piece, tag) {
  const { path } = lettering3;
  const shape = [...tag.made.keys()].find((other) => other.path.join("/") === path.join("/"));
  return {
    code: "hard-to-read",
    severity: verdict.severity,
    piece: piece.id,
    path: verdict.byGrowth ? growthOf(shape, path) : path,
    points: [middleOf(lettering3)],
    message: `${quoted(shape, lettering3)} ${verdict.message}`
  };
}
var fate = {
  body: "it runs into the rest of the piece",
  cut: "what surrounds it is cut away as well",
  engrave: "what surrounds it is engraved as well",
  score: "what surrounds it is scored as well"
};
function judged(each, stock) {
  const { lettering: lettering3, use, making, ground } = each;
  const hidden = ground ? buried(lettering3, ground) : 0;
  if (hidden > halfBuried) {
    const [severity2, verb] = hidden > whollyBuried ? ["warning", "cannot be seen"] : ["info", "is half hidden"];
    return { severity: severity2, message: `${verb}: ${fate[each.ground.of]}.`, byGrowth: false };
  }
  const missing2 = each.kept ? cutAway(lettering3, each.kept).length : 0;
  if (missing2 > 0) return incomplete(missing2, lettering3.letters.length);
  const read = figures(lettering3, making.beam, making.over);
  if (!read) return void 0;
  const byGrowth = Math.abs(lettering3.grow) > making.beam / 2;
  if (read.doubt > doubtful || isPlainlySpoiled(read)) {
    const severity2 = read.doubt > (isBlob(read) ? doubtful : unlikely) ? "warning" : "info";
    const isSpaced = lettering3.letters.some(({ spaced }) => spaced);
    const cause = byGrowth || isSpaced ? "" : ` at this size, with a beam ${mm(making.beam)} wide`;
    const verb = severity2 === "warning" ? "is" : "may be";
    return { severity: severity2, message: `${verb} hard to read: ${lost2(read)}${cause}.`, byGrowth };
  }
  const measured2 = use === "engrave" ? stock.minXHeight : void 0;
  const [usual2, least] = measured2 === void 0 ? smallest2[use] : [measured2, measured2];
  if (read.height >= usual2 - slackMm2) return void 0;
  const basis = measured2 === void 0 ? " (rule of thumb, no source)" : measuredOn(stock.measuredOn?.min_x_height);
  const what = { engrave: "engraving", score: "scoring", cut: "cutting" }[use];
  const severity = read.height < least - slackMm2 ? "warning" : "info";
  const message = `is too small for ${what}: its letters are ${mm(read.height)} high; minimum ${mm(usual2)}${basis}.`;
  return { severity, message, byGrowth: false };
}
function incomplete(missing2, of) {
  const severity = missing2 < fewMissing * of ? "info" : "warning";
  const verb = missing2 === 1 ? "is" : "are";
  const message = missing2 === of ? "is cut away." : `is incomplete: ${missing2} of its ${of} letters ${verb} cut away.`;
  return { severity, message, byGrowth: false };
}
var known = /* @__PURE__ */ new WeakMap();
function figures(lettering3, beam, over) {
  const key = `${beam} ${over}`;
  const before = known.get(lettering3);
  if (before?.key === key) return before.read;
  const read = readability(lettering3, { beam, over });
  known.set(lettering3, { key, read });
  return read;
}
function lost2({ counters, neighbours: neighbours2, marks: marks3, gone, fallen, crowded: crowded2 }) {
  const closed3 = counters.drawn - counters.open;
  const found = [
    ...fallen > 0 ? ["the letters fall apart"] : gone > 0.02 ? ["thin strokes are gone"] : [],
    ...closed3 > 0 ? [closedCounters(closed3, counters.drawn)] : [],
    ...marks3.fused > 0 ? [fusedMarks2(marks3.fused)] : [],
    ...neighbours2.merged > 0 || crowded2 > 0.3 ? [runTogether(neighbours2)] : []
  ];
  if (found.length === 0) return "the bays of its letters fill in";
  return [found.slice(0, -1).join(", "), found.at(-1)].filter(Boolean).join(" and ");
}
function fusedMarks2(fused) {
  return fused === 1 ? "a dot or accent runs into the next letter" : `${fused} dots or accents run into other letters`;
}
function closedCounters(closed3, drawn) {
  if (closed3 < drawn) return `${closed3} of ${drawn} counters ${closed3 === 1 ? "is" : "are"} closed`;
  if (drawn > 2) return `all ${drawn} counters are closed`;
  return drawn === 1 ? "its counter is closed" : "both counters are closed";
}
function runTogether({ apart: apart4, merged: merged2 }) {
  if (merged2 === 0 || 2 * merged2 >= apart4) return "the letters run together";
  return merged2 === 1 ? "two letters run together" : "some letters run together";
}
function growthOf(shape, path) {
  return shape?.modifiers.grow === void 0 ? path : [...path, "grow"];
}
var usualXHeightMm = smallest2.engrave[0];
function engravedHeights(tag) {
  return tag.pieces.flatMap(
    (piece) => letteringOn(piece, tag).filter(({ use }) => use === "engrave").flatMap(({ lettering: lettering3, making }) => figures(lettering3, making.beam, making.over)?.height ?? [])
  );
}
var mostQuoted = 24;
function quoted(shape, { letters }) {
  const text = shape?.generator.kind === "text" ? shape.generator.text : letters.map((each) => each.text).join("");
  const line = Array.from(text.replace(/\s+/g, " ").trim());
  return `\u201C${line.length > mostQuoted ? `${line.slice(0, mostQuoted - 1).join("")}\u2026` : line.join("")}\u201D`;
}
function middleOf({ letters }) {
  const all = letters.flatMap(({ region }) => [...region]);
  return boxCentre(boundsOf(all) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 });
}

// src/geometry/necks/triangulation.ts
import Delaunator from "delaunator";
var onEdge = 2;
var nextEdge = (e) => e % 3 === 2 ? e - 2 : e + 1;
var previousEdge = (e) => e % 3 === 0 ? e + 2 : e - 1;
var Triangulation = class {
  starts;
  /** The same edge in the neighbouring triangle, or −1 on the hull. */
  twins;
  /** How far the winding number inside the edge's triangle exceeds that beyond the edge. */
  steps;
  /** Some half-edge that starts at the vertex, or −1. */
  #edgeAt;
  xs;
  ys;
  /** The points must differ from each other. */
  constructor(xs, ys) {
    this.xs = xs;
    this.ys = ys;
    const coordinates = new Float64Array(xs.length * 2);
    for (let i = 0; i < xs.length; i += 1) {
      coordinates[2 * i] = ys[i];
      coordinates[2 * i + 1] = xs[i];
    }
    const { triangles, halfedges } = new Delaunator(coordinates);
    this.starts = triangles;
    this.twins = halfedges;
    this.steps = new Int8Array(triangles.length);
    this.#edgeAt = new Int32Array(xs.length).fill(-1);
    for (let e = 0; e < triangles.length; e += 1) this.#edgeAt[triangles[e]] = e;
  }
  /** Twice the signed area of a, b, c: positive where c is on the left of a → b. Exact for neighbouring points. */
  turn(a, b, c) {
    const { xs, ys } = this;
    return (xs[b] - xs[a]) * (ys[c] - ys[a]) - (ys[b] - ys[a]) * (xs[c] - xs[a]);
  }
  /** All half-edges that start at the vertex, in either sense of rotation where the hull interrupts it. */
  *edgesFrom(vertex) {
    const first = this.#edgeAt[vertex];
    if (first < 0) return;
    let e = first;
    do {
      yield e;
      e = this.twins[previousEdge(e)];
    } while (e >= 0 && e !== first);
    if (e === first) return;
    for (e = this.twins[first]; e >= 0; e = this.twins[e]) {
      e = nextEdge(e);
      yield e;
    }
  }
  /** The half-edge from a to b, or −1. */
  find(a, b) {
    const first = this.#edgeAt[a];
    if (first < 0) return -1;
    let e = first;
    do {
      if (this.starts[nextEdge(e)] === b) return e;
      e = this.twins[previousEdge(e)];
    } while (e >= 0 && e !== first);
    if (e === first) return -1;
    for (e = this.twins[first]; e >= 0; e = this.twins[e]) {
      e = nextEdge(e);
      if (this.starts[nextEdge(e)] === b) return e;
    }
    return -1;
  }
  /**
   * Makes a → b an edge (or a chain of edges, where vertices lie on it) with material on its left. An edge that would cross an
   * earlier one, which no valid region has, is left out.
   */
  addBoundary(a, b) {
    let from = a;
    for (let rounds5 = 0; from !== b && rounds5 < this.xs.length; rounds5 += 1) {
      const reached = this.#connect(from, b);
      if (reached < 0) return;
      this.#mark(from, reached);
      from = reached;
    }
  }
  #mark(a, b) {
    const there = this.find(a, b);
    const back = this.find(b, a);
    if (there >= 0) this.steps[there] += 1;
    if (back >= 0) this.steps[back] -= 1;
  }
  /** Makes an edge from a towards b, as far as the first vertex that lies on the way; that vertex, or −1 if there is no way. */
  #connect(a, b) {
    if (this.find(a, b) >= 0 || this.find(b, a) >= 0) return b;
    let across2 = -1;
    for (const e of this.edgesFrom(a)) {
      const right = this.starts[nextEdge(e)];
      const left = this.starts[previousEdge(e)];
      if (this.#liesOn(a, b, right)) return right;
      if (this.#liesOn(a, b, left)) return left;
      if (this.turn(a, b, right) < 0 && this.turn(a, b, left) > 0) across2 = nextEdge(e);
    }
    const crossed2 = [];
    while (crossed2.length < this.starts.length) {
      const beyond4 = across2 < 0 ? -1 : this.twins[across2];
      if (beyond4 < 0 || this.steps[across2] !== 0) return -1;
      crossed2.push([this.starts[across2], this.starts[beyond4]]);
      const apex = this.starts[previousEdge(beyond4)];
      if (apex === b || this.#liesOn(a, b, apex)) {
        return this.#clearWay(a, apex, crossed2) ? apex : -1;
      }
      across2 = this.turn(a, b, apex) > 0 ? nextEdge(beyond4) : previousEdge(beyond4);
    }
    return -1;
  }
  #liesOn(a, b, v) {
    const { xs, ys } = this;
    const dx = xs[b] - xs[a];
    const dy = ys[b] - ys[a];
    const square = dx * dx + dy * dy;
    const along2 = dx * (xs[v] - xs[a]) + dy * (ys[v] - ys[a]);
    return along2 > 0 && along2 < square && this.turn(a, b, v) ** 2 <= onEdge * onEdge * square;
  }
  /** Flips the crossed edges until a–b is an edge, then makes the new edges Delaunay again as far as constraints allow. */
  #clearWay(a, b, crossed2) {
    const made = [];
    const limit2 = 100 + 10 * crossed2.length ** 2;
    let head = 0;
    for (; head < crossed2.length && head < limit2; head += 1) {
      const [u, v] = crossed2[head];
      const e = this.find(u, v);
      const twin = e < 0 ? -1 : this.twins[e];
      if (twin < 0) return false;
      const p = this.starts[previousEdge(e)];
      const q = this.starts[previousEdge(twin)];
      if (this.turn(p, q, u) * this.turn(p, q, v) >= 0) {
        crossed2.push([u, v]);
        continue;
      }
      this.#flip(e);
      const touches = p === a || p === b || q === a || q === b;
      if (!touches && this.turn(a, b, p) * this.turn(a, b, q) < 0) crossed2.push([p, q]);
      else made.push([p, q]);
    }
    if (head < crossed2.length) return false;
    for (let pass = 0, changed = true; changed && pass < 20; pass += 1) {
      changed = false;
      for (const pair of made) {
        const [u, v] = pair;
        const e = this.find(u, v);
        if (e < 0 || u === a && v === b || u === b && v === a) continue;
        const twin = this.twins[e];
        if (twin < 0 || this.steps[e] !== 0 || !this.#encroached(e, twin)) continue;
        pair[0] = this.starts[previousEdge(e)];
        pair[1] = this.starts[previousEdge(twin)];
        this.#flip(e);
        changed = true;
      }
    }
    return true;
  }
  /** Whether the apex beyond the edge lies in the circumcircle of the edge's triangle, and the two triangles are convex. */
  #encroached(e, twin) {
    const { xs, ys, starts } = this;
    const d = starts[previousEdge(twin)];
    const c = starts[previousEdge(e)];
    const u = starts[e];
    const v = starts[twin];
    if (this.turn(c, d, u) * this.turn(c, d, v) >= 0) return false;
    const ax = xs[u] - xs[d];
    const ay = ys[u] - ys[d];
    const bx = xs[v] - xs[d];
    const by = ys[v] - ys[d];
    const cx = xs[c] - xs[d];
    const cy = ys[c] - ys[d];
    const a2 = ax * ax + ay * ay;
    const b2 = bx * bx + by * by;
    const c2 = cx * cx + cy * cy;
    const determinant = ax * (by * c2 - b2 * cy) - ay * (bx * c2 - b2 * cx) + a2 * (bx * cy - by * cx);
    return determinant > 1e-12 * (a2 + b2 + c2) ** 2;
  }
  /** Replaces the diagonal of the two triangles at the edge by the other one. */
  #flip(e) {
    const { starts, twins, steps: steps2 } = this;
    const f = twins[e];
    const er = previousEdge(e);
    const fl = previousEdge(f);
    const top = starts[er];
    const bottom = starts[fl];
    const beyondFl = twins[fl];
    const beyondEr = twins[er];
    starts[e] = bottom;
    starts[f] = top;
    this.#link(e, beyondFl);
    this.#link(f, beyondEr);
    this.#link(er, fl);
    steps2[e] = steps2[fl];
    steps2[f] = steps2[er];
    steps2[er] = 0;
    steps2[fl] = 0;
    for (const edge of [e, nextEdge(e), er, f, nextEdge(f), fl]) this.#edgeAt[starts[edge]] = edge;
  }
  #link(e, f) {
    this.twins[e] = f;
    if (f >= 0) this.twins[f] = e;
  }
};

// src/geometry/necks/lengths.ts
var distance = (x, y) => Math.sqrt(x * x + y * y);
function edgeLength(mesh, e) {
  const a = mesh.starts[e];
  const b = mesh.starts[nextEdge(e)];
  return distance(mesh.xs[a] - mesh.xs[b], mesh.ys[a] - mesh.ys[b]);
}
var apexOf = (mesh, e) => mesh.starts[previousEdge(e)];
function acuteness(mesh, e) {
  const { xs, ys } = mesh;
  const a = mesh.starts[e];
  const b = mesh.starts[nextEdge(e)];
  const c = apexOf(mesh, e);
  return (xs[a] - xs[c]) * (xs[b] - xs[c]) + (ys[a] - ys[c]) * (ys[b] - ys[c]);
}
function heightOn(mesh, boundaryEdge) {
  const { xs, ys, starts } = mesh;
  const a = starts[boundaryEdge];
  const b = starts[nextEdge(boundaryEdge)];
  const c = starts[previousEdge(boundaryEdge)];
  const dx = xs[b] - xs[a];
  const dy = ys[b] - ys[a];
  const t = Math.min(1, Math.max(0, ((xs[c] - xs[a]) * dx + (ys[c] - ys[a]) * dy) / (dx * dx + dy * dy)));
  return distance(xs[c] - xs[a] - t * dx, ys[c] - ys[a] - t * dy);
}
function midpoint({ xs, ys, starts }, e) {
  const a = starts[e];
  const b = starts[nextEdge(e)];
  return [(xs[a] + xs[b]) / 2, (ys[a] + ys[b]) / 2];
}
function midpointDistance(mesh, e, f) {
  const [ax, ay] = midpoint(mesh, e);
  const [bx, by] = midpoint(mesh, f);
  return distance(ax - bx, ay - by);
}
function arcOver({ starts, ring, along: along2, ringLengths }, e) {
  const a = starts[e];
  const b = starts[nextEdge(e)];
  if (ring[a] !== ring[b]) return Infinity;
  const way = Math.abs(along2[a] - along2[b]);
  return Math.min(way, ringLengths[ring[a]] - way);
}
function areaOf({ xs, ys, starts }, t) {
  const [a, b, c] = [starts[3 * t], starts[3 * t + 1], starts[3 * t + 2]];
  return Math.abs((xs[b] - xs[a]) * (ys[c] - ys[a]) - (ys[b] - ys[a]) * (xs[c] - xs[a])) / 2;
}

// src/geometry/necks/clean.ts
var gridPerMm = 1e5;
var debris = 10;
var speckArea = 1e6;
var speckThickness = 50;
var turn = 0.618;
var cosine = Math.cos(turn);
var sine = Math.sin(turn);
function toGrid(region) {
  return region.filter((ring) => ring.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).map((ring) => ({
    xs: ring.map(({ x, y }) => Math.round((cosine * x - sine * y) * gridPerMm)),
    ys: ring.map(({ x, y }) => Math.round((sine * x + cosine * y) * gridPerMm))
  }));
}
function fromGrid([x, y]) {
  return { x: (cosine * x + sine * y) / gridPerMm, y: (cosine * y - sine * x) / gridPerMm };
}
function cleanRings(rings) {
  return rings.map(cleanRing).filter((ring) => ring.xs.length >= 3 && !isSpeck2(ring));
}
function cleanRing(ring) {
  let { xs, ys } = ring;
  for (let pass = 0; pass < 8 && xs.length >= 3; pass += 1) {
    const before = xs.length;
    const seam = pass === 0 ? 0 : before >> 1;
    ({ xs, ys } = withoutDebris(rotated(xs, seam), rotated(ys, seam)));
    if (pass > 0 && xs.length === before) break;
  }
  return { xs, ys };
}
var rotated = (values, by) => [...values.slice(by), ...values.slice(0, by)];
function withoutDebris(xs, ys) {
  const kx = [];
  const ky = [];
  for (let i = 0; i < xs.length; i += 1) {
    const x = xs[i];
    const y = ys[i];
    for (; ; ) {
      const n = kx.length;
      if (n > 0 && distance(x - kx[n - 1], y - ky[n - 1]) < debris) break;
      if (n > 1 && isSpike(kx[n - 2], ky[n - 2], kx[n - 1], ky[n - 1], x, y)) {
        kx.pop();
        ky.pop();
        continue;
      }
      kx.push(x);
      ky.push(y);
      break;
    }
  }
  return { xs: kx, ys: ky };
}
function isSpike(ax, ay, bx, by, cx, cy) {
  const ux = bx - ax;
  const uy = by - ay;
  const vx = cx - bx;
  const vy = cy - by;
  if (ux * vx + uy * vy >= 0) return false;
  const cross3 = Math.abs(ux * vy - uy * vx);
  return cross3 < debris * Math.max(distance(ux, uy), distance(vx, vy));
}
function isSpeck2({ xs, ys }) {
  let twiceArea2 = 0;
  let outline = 0;
  let j = xs.length - 1;
  for (let i = 0; i < xs.length; i += 1) {
    const ax = xs[j] - xs[0];
    const ay = ys[j] - ys[0];
    const bx = xs[i] - xs[0];
    const by = ys[i] - ys[0];
    twiceArea2 += ax * by - bx * ay;
    outline += distance(bx - ax, by - ay);
    j = i;
  }
  const area2 = Math.abs(twiceArea2) / 2;
  return area2 < speckArea || area2 < speckThickness / 2 * outline;
}

// src/geometry/necks/mesh.ts
var triangleOf = (e) => e / 3 | 0;

// src/geometry/necks/cuts.ts
function judgeCuts(mesh, radius, cuts) {
  const { portionOf, portions } = portionsBetween(mesh, radius, cuts);
  const links = portions.map(() => []);
  const result = cuts.map(({ sides }, cut) => {
    const a = portionOf[sides[0]];
    const b = portionOf[sides[1]];
    links[a].push({ cut, to: b });
    if (a !== b) links[b].push({ cut, to: a });
    return { parts: false, sides: [portions[a], portions[b]] };
  });
  const ranks = new Int32Array(portions.length).fill(-1);
  for (let root = 0; root < portions.length; root += 1) {
    if (ranks[root] >= 0) continue;
    for (const { cut, portion, beyond: beyond4, rest } of bridgesFrom(root, links, portions, ranks)) {
      const isFirst = portionOf[cuts[cut].sides[0]] === portion;
      result[cut] = { parts: true, sides: isFirst ? [beyond4, rest] : [rest, beyond4] };
    }
  }
  return result;
}
function bridgesFrom(root, links, portions, ranks) {
  const visits = depthFirst(root, links, ranks);
  const lowest2 = visits.map(
    ({ portion, cut }, i) => links[portion].reduce((low, link) => link.cut === cut ? low : Math.min(low, ranks[link.to]), i)
  );
  const area2 = visits.map(({ portion }) => portions[portion].area);
  const radius = visits.map(({ portion }) => portions[portion].radius);
  const size = visits.map(() => 1);
  const radiusFrom = [...radius, 0];
  for (let i = visits.length - 1; i > 0; i -= 1) {
    const { parent } = visits[i];
    lowest2[parent] = Math.min(lowest2[parent], lowest2[i]);
    area2[parent] += area2[i];
    radius[parent] = Math.max(radius[parent], radius[i]);
    size[parent] += size[i];
    radiusFrom[i] = Math.max(radiusFrom[i], radiusFrom[i + 1]);
  }
  const bridges = [];
  let radiusBefore = 0;
  for (const [i, { cut, portion }] of visits.entries()) {
    if (i > 0 && lowest2[i] === i) {
      const beyond4 = { area: area2[i], radius: radius[i] };
      const rest = { area: area2[0] - beyond4.area, radius: Math.max(radiusBefore, radiusFrom[i + size[i]]) };
      bridges.push({ cut, portion, beyond: beyond4, rest });
    }
    radiusBefore = Math.max(radiusBefore, portions[portion].radius);
  }
  return bridges;
}
function depthFirst(root, links, ranks) {
  const visits = [];
  const stack = [{ portion: root, cut: -1, parent: -1 }];
  for (let visit3 = stack.pop(); visit3; visit3 = stack.pop()) {
    if (ranks[visit3.portion] >= 0) continue;
    const parent = visits.length;
    ranks[visit3.portion] = parent;
    visits.push(visit3);
    for (const { cut, to } of links[visit3.portion]) if (ranks[to] < 0) stack.push({ portion: to, cut, parent });
  }
  return visits;
}
function portionsBetween(mesh, radius, cuts) {
  const isCut = new Uint8Array(mesh.starts.length);
  for (const { chord } of cuts) {
    if (chord === void 0) continue;
    isCut[chord] = 1;
    isCut[mesh.twins[chord]] = 1;
  }
  const portionOf = new Int32Array(mesh.inside.length).fill(-1);
  const portions = [];
  for (let first = 0; first < portionOf.length; first += 1) {
    if (!mesh.inside[first] || portionOf[first] >= 0) continue;
    const id = portions.length;
    let area2 = 0;
    let widest = 0;
    portionOf[first] = id;
    const stack = [first];
    for (let t = stack.pop(); t !== void 0; t = stack.pop()) {
      area2 += areaOf(mesh, t);
      widest = Math.max(widest, radius[t]);
      for (let e = 3 * t; e < 3 * t + 3; e += 1) {
        if (!mesh.isChord[e] || isCut[e]) continue;
        const neighbour = triangleOf(mesh.twins[e]);
        if (portionOf[neighbour] >= 0) continue;
        portionOf[neighbour] = id;
        stack.push(neighbour);
      }
    }
    portions.push({ area: area2, radius: widest });
  }
  return { portionOf, portions };
}

// src/geometry/necks/outlines.ts
function hasBuriedVertex(mesh) {
  const { starts, inside: inside4 } = mesh;
  const onOutline = new Uint8Array(mesh.xs.length);
  for (let e = 0; e < starts.length; e += 1) if (isOutline(mesh, e)) onOutline[starts[e]] = 1;
  for (let e = 0; e < starts.length; e += 1) if (inside4[triangleOf(e)] && !onOutline[starts[e]]) return true;
  return false;
}
function outlinesOf(mesh) {
  const rings = [];
  const seen = new Uint8Array(mesh.starts.length);
  for (let first = 0; first < mesh.starts.length; first += 1) {
    if (seen[first] || !isOutline(mesh, first)) continue;
    const xs = [];
    const ys = [];
    for (let e = first; !seen[e]; ) {
      seen[e] = 1;
      xs.push(mesh.xs[mesh.starts[e]]);
      ys.push(mesh.ys[mesh.starts[e]]);
      e = nextEdge(e);
      while (mesh.isChord[e]) e = nextEdge(mesh.twins[e]);
    }
    rings.push({ xs, ys });
  }
  return rings;
}
var isOutline = (mesh, e) => mesh.inside[triangleOf(e)] === 1 && mesh.isChord[e] === 0;

// src/geometry/necks/build-mesh.ts
function buildMesh(rings, spacing) {
  const mesh = triangulate(cleanRings(rings), spacing);
  return mesh && hasBuriedVertex(mesh) ? triangulate(cleanRings(outlinesOf(mesh)), spacing) : mesh;
}
function triangulate(rings, spacing) {
  const { xs, ys, chains } = sample(rings, spacing);
  if (xs.length < 3) return void 0;
  const triangulation = new Triangulation(xs, ys);
  const { starts, twins } = triangulation;
  if (starts.length === 0) return void 0;
  for (const chain3 of chains) {
    let a = chain3[chain3.length - 1];
    for (const b of chain3) {
      if (a !== b) triangulation.addBoundary(a, b);
      a = b;
    }
  }
  const inside4 = insideOf(triangulation);
  const isChord = new Uint8Array(starts.length);
  for (let e = 0; e < starts.length; e += 1) {
    const twin = twins[e];
    isChord[e] = twin >= 0 && inside4[triangleOf(e)] & inside4[triangleOf(twin)] ? 1 : 0;
  }
  const meetings2 = meetingsOf(starts, inside4, isChord, xs.length);
  return { xs, ys, starts, twins, inside: inside4, isChord, meetings: meetings2, ...neighbours(xs, ys, chains, meetings2) };
}
function sample(rings, spacing) {
  const px = [];
  const py = [];
  const chains = [];
  for (const { xs: xs2, ys: ys2 } of rings) {
    const chain3 = [];
    for (let i = 0; i < xs2.length; i += 1) {
      const j = i + 1 === xs2.length ? 0 : i + 1;
      const dx = xs2[j] - xs2[i];
      const dy = ys2[j] - ys2[i];
      const steps2 = Math.max(1, Math.ceil(Math.sqrt(dx * dx + dy * dy) / spacing));
      for (let k = 0; k < steps2; k += 1) {
        chain3.push(px.length);
        px.push(xs2[i] + Math.round(dx * k / steps2));
        py.push(ys2[i] + Math.round(dy * k / steps2));
      }
    }
    chains.push(chain3);
  }
  const { ids: ids2, xs, ys } = merged(px, py);
  for (const chain3 of chains) for (let i = 0; i < chain3.length; i += 1) chain3[i] = ids2[chain3[i]];
  return { xs, ys, chains };
}
function merged(px, py) {
  let size = 16;
  while (size < px.length * 2) size *= 2;
  const table = new Int32Array(size).fill(-1);
  const ids2 = new Int32Array(px.length);
  const xs = new Float64Array(px.length);
  const ys = new Float64Array(px.length);
  let count = 0;
  for (let i = 0; i < px.length; i += 1) {
    const x = px[i];
    const y = py[i];
    let slot2 = (Math.imul(x | 0, 2654435761) ^ Math.imul(y | 0, 2246822507)) >>> 0;
    slot2 = (slot2 ^ slot2 >>> 15) & size - 1;
    while (table[slot2] >= 0 && (xs[table[slot2]] !== x || ys[table[slot2]] !== y)) slot2 = slot2 + 1 & size - 1;
    if (table[slot2] < 0) {
      table[slot2] = count;
      xs[count] = x;
      ys[count] = y;
      count += 1;
    }
    ids2[i] = table[slot2];
  }
  return { ids: ids2, xs: xs.slice(0, count), ys: ys.slice(0, count) };
}
function insideOf({ starts, twins, steps: steps2 }) {
  const count = starts.length / 3;
  const winding = new Int32Array(count);
  const seen = new Uint8Array(count);
  const stack = [];
  for (let e = 0; e < starts.length; e += 1) {
    const triangle = triangleOf(e);
    if (twins[e] >= 0 || seen[triangle]) continue;
    winding[triangle] = steps2[e];
    seen[triangle] = 1;
    stack.push(triangle);
    while (stack.length > 0) {
      const t = stack.pop();
      for (let f = 3 * t; f < 3 * t + 3; f += 1) {
        if (twins[f] < 0) continue;
        const neighbour = triangleOf(twins[f]);
        if (seen[neighbour]) continue;
        winding[neighbour] = winding[t] - steps2[f];
        seen[neighbour] = 1;
        stack.push(neighbour);
      }
    }
  }
  const inside4 = new Uint8Array(count);
  for (let t = 0; t < count; t += 1) inside4[t] = winding[t] > 0 ? 1 : 0;
  return inside4;
}
function meetingsOf(starts, inside4, isChord, vertices) {
  const leaving = new Uint8Array(vertices);
  const found = [];
  for (let e = 0; e < starts.length; e += 1) {
    if (isChord[e] || !inside4[triangleOf(e)]) continue;
    const vertex = starts[e];
    leaving[vertex] += 1;
    if (leaving[vertex] === 2) found.push(vertex);
  }
  return found;
}
function neighbours(xs, ys, chains, meetings2) {
  const next = new Int32Array(xs.length).fill(-1);
  const previous = new Int32Array(xs.length).fill(-1);
  const ring = new Int32Array(xs.length).fill(-1);
  const along2 = new Float64Array(xs.length);
  const ringLengths = [];
  for (const [r, chain3] of chains.entries()) {
    let length = 0;
    let v = chain3[chain3.length - 1];
    for (const w of chain3) {
      if (w === v) continue;
      next[v] = w;
      previous[w] = v;
      length += distance(xs[w] - xs[v], ys[w] - ys[v]);
      ring[w] = r;
      along2[w] = length;
      v = w;
    }
    ringLengths.push(length);
  }
  for (const v of meetings2) {
    next[v] = -1;
    previous[v] = -1;
  }
  return { next, previous, ring, along: along2, ringLengths };
}

// src/geometry/necks/paths.ts
var endArc = 3;
var neck = 1.02;
var alike = 2e-3;
var taper = 1.3;
function longestFreePath(mesh, thinness, triangles) {
  const { thin, core, thinChord } = thinness;
  const isPruned = (t) => thin[t] === 1 && core[t] === 0;
  let best;
  let some = -1;
  for (const t of triangles) {
    if (!isPruned(t)) continue;
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      if (!thinChord[e]) continue;
      some = e;
      if (isPruned(triangleOf(mesh.twins[e]))) continue;
      const walk3 = walkFrom(mesh, thinness, e);
      if (!best || walk3.length > best.length) best = walk3;
    }
  }
  if (best) return { steps: stepsOf(mesh, best), length: best.length, attached: true };
  if (some < 0) return void 0;
  const ahead = walkFrom(mesh, thinness, some);
  const behind2 = walkFrom(mesh, thinness, mesh.twins[some]);
  const end = (ahead.length > behind2.length ? ahead : behind2).last;
  const whole2 = walkFrom(mesh, thinness, mesh.twins[end]);
  return { steps: stepsOf(mesh, whole2), length: whole2.length, attached: false };
}
function freeEnds(mesh, thinness) {
  const { thin, core, thinChord } = thinness;
  const ends = [];
  for (let e = 0; e < thinChord.length; e += 1) {
    const t = triangleOf(e);
    if (!thinChord[e] || !thin[t] || core[t]) continue;
    const before = triangleOf(mesh.twins[e]);
    if (thin[before] && !core[before]) continue;
    const walk3 = walkFrom(mesh, thinness, e);
    const vertex = apexOf(mesh, walk3.last);
    const [x, y] = midpoint(mesh, walk3.last);
    const length = distance(mesh.xs[vertex] - x, mesh.ys[vertex] - y);
    const last = { chord: walk3.last, width: edgeLength(mesh, walk3.last) / 2, length };
    const steps2 = [...stepsOf(mesh, walk3), last];
    ends.push({ vertex, path: { steps: steps2, length: walk3.length + length, attached: true } });
  }
  return ends;
}
function walkFrom(mesh, { thin, core, thinChord }, start) {
  const entered = [start];
  const before = [-1];
  const lengths = [0];
  let index = 0;
  for (let i = 0; i < entered.length; i += 1) {
    const e = entered[i];
    const t = triangleOf(e);
    for (let f = 3 * t; f < 3 * t + 3; f += 1) {
      if (f === e || !thinChord[f]) continue;
      const twin = mesh.twins[f];
      const neighbour = triangleOf(twin);
      if (!thin[neighbour] || core[neighbour]) continue;
      const length = lengths[i] + midpointDistance(mesh, e, f);
      if (length > lengths[index]) index = entered.length;
      entered.push(twin);
      before.push(i);
      lengths.push(length);
    }
  }
  return { entered, before, last: entered[index], index, length: lengths[index] };
}
function stepsOf(mesh, { entered, before, index }) {
  const steps2 = [];
  for (let i = index; before[i] >= 0; i = before[i]) {
    const chord = mesh.twins[entered[i]];
    const entry = entered[before[i]];
    const third = 9 * triangleOf(entry) + 3 - entry - chord;
    const width = mesh.isChord[third] ? Math.min(edgeLength(mesh, entry), edgeLength(mesh, chord)) : heightOn(mesh, third);
    steps2.push({ chord, width, length: midpointDistance(mesh, entry, chord) });
  }
  return steps2.reverse();
}
function evenLength({ steps: steps2 }) {
  const median = medianWidth(steps2);
  return steps2.reduce((sum, { width, length }) => {
    return width > 4 / 3 * median || width < 3 / 4 * median ? sum : sum + length;
  }, 0);
}
function gaugeOf(mesh, { steps: all }) {
  const from = all.findIndex(({ chord }) => !isAtEnd(mesh, chord));
  if (from < 0) return void 0;
  const steps2 = all.slice(from, all.findLastIndex(({ chord }) => !isAtEnd(mesh, chord)) + 1);
  const widestAfter = steps2.map(({ width }) => width);
  for (let i = steps2.length - 2; i >= 0; i -= 1) widestAfter[i] = Math.max(widestAfter[i], widestAfter[i + 1]);
  let widestBefore = 0;
  let least = Infinity;
  for (const [i, { width }] of steps2.entries()) {
    if (width < least && neck * width < Math.min(widestBefore, widestAfter[i])) least = width;
    widestBefore = Math.max(widestBefore, width);
  }
  const isNeck = least < Infinity;
  return { chord: mostCentral(steps2, isNeck ? least : medianWidth(steps2)).chord, isNeck };
}
function mostCentral(steps2, width) {
  const middle2 = steps2.reduce((sum, { length }) => sum + length, 0) / 2;
  let best = steps2[0];
  let nearest4 = Infinity;
  let passed = 0;
  for (const step of steps2) {
    const off = Math.abs(passed + step.length / 2 - middle2);
    passed += step.length;
    if (Math.abs(step.width - width) > alike * width || off >= nearest4) continue;
    nearest4 = off;
    best = step;
  }
  return best;
}
function isTaper({ steps: steps2, length }) {
  return widthAt(steps2, length / 4) > taper * widthAt(steps2, 3 * length / 4);
}
function widthAt(steps2, way) {
  let passed = 0;
  return steps2.find((step) => (passed += step.length) >= way)?.width ?? 0;
}
function medianWidth(steps2) {
  const sorted = steps2.toSorted((a, b) => a.width - b.width);
  const half = steps2.reduce((sum, { length: length2 }) => sum + length2, 0) / 2;
  let length = 0;
  return sorted.find((step) => (length += step.length) >= half)?.width ?? 0;
}
var isAtEnd = (mesh, chord) => arcOver(mesh, chord) < endArc * edgeLength(mesh, chord);

// src/geometry/necks/runs.ts
var strokeLength = 3;
var nearlyConstant = 1.5;
var webLength = 8;
var freeLength = 4;
var partLength = 1;
function findRuns(mesh, thinness, width) {
  const { thin, thinChord, coreChord } = thinness;
  const runs = [];
  const seen = new Uint8Array(thin.length);
  for (let first = 0; first < thin.length; first += 1) {
    if (!thin[first] || seen[first]) continue;
    seen[first] = 1;
    const triangles = [first];
    for (let i = 0; i < triangles.length; i += 1) {
      const t = triangles[i];
      for (let e = 3 * t; e < 3 * t + 3; e += 1) {
        if (!thinChord[e]) continue;
        const neighbour = triangleOf(mesh.twins[e]);
        if (!thin[neighbour] || seen[neighbour]) continue;
        seen[neighbour] = 1;
        triangles.push(neighbour);
      }
    }
    runs.push(...runsOf2(mesh, thinness, triangles, width));
  }
  for (let e = 0; e < coreChord.length; e += 1) {
    const twin = mesh.twins[e];
    if (coreChord[e] && e < twin && !thin[triangleOf(e)] && !thin[triangleOf(twin)]) {
      runs.push({ kind: "join", chord: e, length: 0, follow: true });
    }
  }
  return runs;
}
function runsOf2(mesh, thinness, triangles, width) {
  const core = triangles.filter((t) => thinness.core[t]);
  const free = longestFreePath(mesh, thinness, triangles);
  const freeStroke = free && freeStrokeIn(mesh, free, width);
  if (core.length > 0) {
    const whole3 = measureCore(mesh, thinness, core);
    const isStroke = freeStroke !== void 0 || whole3.contacts === 0 || whole3.evenLength > strokeLength * width || whole3.isWeb && whole3.length > webLength * width;
    if (!isStroke) return branchesOf(mesh, thinness, core);
    return [{ kind: "stroke", chord: whole3.chord, length: whole3.length + (freeStroke?.length ?? 0), follow: true }];
  }
  if (free?.attached !== false) return freeStroke ? [freeStroke] : [];
  const whole2 = free.length > partLength * width && strokeAlong(mesh, free);
  return whole2 ? [whole2] : [];
}
function freeStrokeIn(mesh, path, width) {
  const isEven = evenLength(path) > freeLength * width && !isTaper(path);
  return isEven ? strokeAlong(mesh, path) : void 0;
}
function strokeAlong(mesh, path) {
  const gauge = gaugeOf(mesh, path);
  return gauge && { kind: "stroke", chord: gauge.chord, length: path.length, follow: gauge.isNeck };
}
function linkOf(mesh, { coreChord }, t) {
  const chords = [];
  let width = Infinity;
  let chord = -1;
  for (let e = 3 * t; e < 3 * t + 3; e += 1) {
    if (!coreChord[e]) continue;
    chords.push(e);
    if (edgeLength(mesh, e) < width) {
      width = edgeLength(mesh, e);
      chord = e;
    }
  }
  for (let e = 3 * t; e < 3 * t + 3; e += 1) if (!mesh.isChord[e]) width = Math.min(width, heightOn(mesh, e));
  const [a, b, c] = chords;
  let length = midpointDistance(mesh, a, b);
  if (c !== void 0) length = (length + midpointDistance(mesh, b, c) + midpointDistance(mesh, c, a)) / 2;
  return { chords, length, width, chord };
}
function measureCore(mesh, thinness, core) {
  const links = core.map((t) => linkOf(mesh, thinness, t));
  const least = links.reduce((best, link) => link.width < best.width ? link : best);
  let length = 0;
  let evenLength2 = 0;
  let contacts = 0;
  let junctions = 0;
  for (const link of links) {
    length += link.length;
    if (link.width <= nearlyConstant * least.width) evenLength2 += link.length;
    if (link.chords.length > 2) junctions += 1;
    for (const e of link.chords) if (!thinness.core[triangleOf(mesh.twins[e])]) contacts += 1;
  }
  return {
    chord: mostCentral2(mesh, links, least.width),
    length,
    evenLength: evenLength2,
    contacts,
    isWeb: junctions > 0 || contacts > 2
  };
}
function mostCentral2(mesh, links, width) {
  const chords = links.filter((link) => link.width <= (1 + alike) * width).map(({ chord }) => chord);
  const middles = chords.map((chord) => midpoint(mesh, chord));
  const x = middles.reduce((sum, middle2) => sum + middle2[0], 0) / middles.length;
  const y = middles.reduce((sum, middle2) => sum + middle2[1], 0) / middles.length;
  let best = -1;
  let least = Infinity;
  for (const [i, middle2] of middles.entries()) {
    const away = distance(middle2[0] - x, middle2[1] - y);
    if (away >= least) continue;
    least = away;
    best = chords[i];
  }
  return best;
}
var clearing = 1.02;
function forkAt(mesh, { radius }, entry) {
  const onward = Math.max(edgeLength(mesh, nextEdge(entry)), edgeLength(mesh, previousEdge(entry)));
  return { onward, room: acuteness(mesh, entry) > 0 ? 2 * radius[triangleOf(entry)] : edgeLength(mesh, entry) };
}
function branchesOf(mesh, thinness, core) {
  const seen = /* @__PURE__ */ new Set();
  const runs = [];
  for (const t of core) {
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      if (!thinness.coreChord[e] || seen.has(e)) continue;
      let chord = e;
      let width = edgeLength(mesh, e);
      let length = 0;
      const forks = [];
      for (const direction of [e, mesh.twins[e]]) {
        let entry = direction;
        for (; ; ) {
          seen.add(entry);
          seen.add(mesh.twins[entry]);
          const triangle = triangleOf(entry);
          if (!thinness.core[triangle]) break;
          const link = linkOf(mesh, thinness, triangle);
          if (link.chords.length !== 2) {
            forks.push(forkAt(mesh, thinness, entry));
            break;
          }
          if (link.width < width) ({ width, chord } = link);
          length += link.length;
          const exit = link.chords[0] === entry ? link.chords[1] : link.chords[0];
          if (seen.has(exit)) break;
          entry = mesh.twins[exit];
        }
      }
      const onlyNarrows = forks.some(({ onward, room }) => onward <= width && room < clearing * width);
      if (!onlyNarrows) runs.push({ kind: "join", chord, length, follow: true });
    }
  }
  return runs;
}

// src/geometry/necks/samples.ts
var lookAround2 = 3;
var lookFar = 10;
function sampleBeyond(mesh, radius, { chord }, side3, width) {
  const blocked = chord === void 0 ? -1 : mesh.twins[chord];
  const seen = /* @__PURE__ */ new Set([side3]);
  const queue = [side3];
  let best = side3;
  let firstThick;
  for (let i = 0; i < queue.length; i += 1) {
    const t = queue[i];
    if (apart2(mesh, firstThick ?? side3, t) > (firstThick === void 0 ? lookFar : lookAround2) * width) continue;
    if (radius[t] > radius[best]) best = t;
    if (2 * radius[t] >= width) firstThick ??= t;
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      if (!mesh.isChord[e] || e === chord || e === blocked) continue;
      const neighbour = triangleOf(mesh.twins[e]);
      if (seen.has(neighbour)) continue;
      seen.add(neighbour);
      queue.push(neighbour);
    }
  }
  return radius[best] > 0 ? circumcentre(mesh, best) : centroid2(mesh, best);
}
function apart2(mesh, s, t) {
  const [ax, ay] = centroid2(mesh, s);
  const [bx, by] = centroid2(mesh, t);
  return distance(ax - bx, ay - by);
}
function centroid2({ xs, ys, starts }, t) {
  const [a, b, c] = [starts[3 * t], starts[3 * t + 1], starts[3 * t + 2]];
  return [(xs[a] + xs[b] + xs[c]) / 3, (ys[a] + ys[b] + ys[c]) / 3];
}
function circumcentre({ xs, ys, starts }, t) {
  const [a, b, c] = [starts[3 * t], starts[3 * t + 1], starts[3 * t + 2]];
  const bx = xs[b] - xs[a];
  const by = ys[b] - ys[a];
  const cx = xs[c] - xs[a];
  const cy = ys[c] - ys[a];
  const twice = 2 * (bx * cy - by * cx);
  const b2 = bx * bx + by * by;
  const c2 = cx * cx + cy * cy;
  return [xs[a] + (cy * b2 - by * c2) / twice, ys[a] + (bx * c2 - cx * b2) / twice];
}

// src/geometry/necks/thin.ts
var waist = 1.15;
var knob = 1.03;
var maxRounds = 12;
function findThin(mesh, width) {
  const triangles = mesh.inside.length;
  const radius = radii(mesh);
  const thin = new Uint8Array(triangles);
  for (let t = 0; t < triangles; t += 1) thin[t] = mesh.inside[t] && 2 * radius[t] < width ? 1 : 0;
  const thinChord = new Uint8Array(mesh.starts.length);
  for (let e = 0; e < mesh.starts.length; e += 1) {
    if (mesh.isChord[e] && (thin[triangleOf(e)] || thin[triangleOf(mesh.twins[e])] || isWaist(mesh, e, width)))
      thinChord[e] = 1;
  }
  const thinness = {
    thin,
    thinChord,
    radius,
    core: new Uint8Array(triangles),
    coreChord: new Uint8Array(mesh.starts.length)
  };
  prune(mesh, thinness);
  for (let round3 = 0; round3 < maxRounds && absorbBodies(mesh, thinness, width); round3 += 1) prune(mesh, thinness);
  return thinness;
}
function radii(mesh) {
  const { xs, ys, starts, inside: inside4, isChord } = mesh;
  const radius = new Float64Array(inside4.length);
  for (let t = 0; t < inside4.length; t += 1) {
    if (!inside4[t]) continue;
    const e = 3 * t;
    const [a, b, c] = [starts[e], starts[e + 1], starts[e + 2]];
    const twiceArea2 = (xs[b] - xs[a]) * (ys[c] - ys[a]) - (ys[b] - ys[a]) * (xs[c] - xs[a]);
    if (twiceArea2 <= 0) continue;
    if (!isChord[e] && acuteness(mesh, e) < 0) continue;
    if (!isChord[e + 1] && acuteness(mesh, e + 1) < 0) continue;
    if (!isChord[e + 2] && acuteness(mesh, e + 2) < 0) continue;
    radius[t] = edgeLength(mesh, e) * edgeLength(mesh, e + 1) * edgeLength(mesh, e + 2) / (2 * twiceArea2);
  }
  return radius;
}
function isWaist(mesh, e, width) {
  return edgeLength(mesh, e) < width && acuteness(mesh, e) > 0 && acuteness(mesh, mesh.twins[e]) > 0;
}
function prune(mesh, { thin, thinChord, core, coreChord }) {
  core.set(thin);
  coreChord.set(thinChord);
  const links = new Uint8Array(thin.length);
  const leaves2 = [];
  for (let t = 0; t < thin.length; t += 1) {
    if (!thin[t]) continue;
    links[t] = thinChord[3 * t] + thinChord[3 * t + 1] + thinChord[3 * t + 2];
    if (links[t] < 2) leaves2.push(t);
  }
  for (let t = leaves2.pop(); t !== void 0; t = leaves2.pop()) {
    core[t] = 0;
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      if (!coreChord[e]) continue;
      const twin = mesh.twins[e];
      coreChord[e] = 0;
      coreChord[twin] = 0;
      const neighbour = triangleOf(twin);
      links[neighbour] -= 1;
      if (core[neighbour] && links[neighbour] === 1) leaves2.push(neighbour);
    }
  }
}
function absorbBodies(mesh, thinness, width) {
  const bodies = bodiesOf(mesh, thinness).filter(({ contacts }) => contacts > 0);
  const ends = bodies.filter((body) => body.area < width * width || body.contacts === 1 && body.ratio < knob);
  const absorbed = ends.length > 0 ? ends : bodies.filter(({ contacts, ratio }) => contacts > 1 && ratio < waist);
  for (const { triangles } of absorbed) {
    for (const t of triangles) {
      thinness.thin[t] = 1;
      for (let e = 3 * t; e < 3 * t + 3; e += 1) {
        if (!mesh.isChord[e]) continue;
        thinness.thinChord[e] = 1;
        thinness.thinChord[mesh.twins[e]] = 1;
      }
    }
  }
  return absorbed.length > 0;
}
function bodiesOf(mesh, thinness) {
  const { thin, core, coreChord, radius } = thinness;
  const widths = coreWidths(mesh, thinness);
  const seen = new Uint8Array(thin.length);
  const bodies = [];
  for (let first = 0; first < thin.length; first += 1) {
    if (!mesh.inside[first] || thin[first] || seen[first]) continue;
    const triangles = [first];
    seen[first] = 1;
    let thickArea = 0;
    let tipArea = 0;
    let widest = 0;
    let contacts = 0;
    let narrowest2 = Infinity;
    for (let i = 0; i < triangles.length; i += 1) {
      const t = triangles[i];
      if (thin[t]) tipArea += areaOf(mesh, t);
      else thickArea += areaOf(mesh, t);
      widest = Math.max(widest, 2 * radius[t]);
      for (let e = 3 * t; e < 3 * t + 3; e += 1) {
        if (!mesh.isChord[e]) continue;
        const neighbour = triangleOf(mesh.twins[e]);
        if (coreChord[e]) {
          contacts += 1;
          narrowest2 = Math.min(narrowest2, widths[e]);
        } else if (!seen[neighbour] && !core[neighbour]) {
          seen[neighbour] = 1;
          triangles.push(neighbour);
        }
      }
    }
    const area2 = contacts > 1 ? thickArea : thickArea + tipArea;
    bodies.push({ triangles, area: area2, contacts, ratio: widest / narrowest2 });
  }
  return bodies;
}
function coreWidths(mesh, { core, coreChord }) {
  const widths = new Float64Array(coreChord.length);
  for (let first = 0; first < coreChord.length; first += 1) {
    if (!coreChord[first] || widths[first] > 0) continue;
    const edges = [first, mesh.twins[first]];
    widths[first] = Infinity;
    widths[edges[1]] = Infinity;
    let least = edgeLength(mesh, first);
    for (let i = 0; i < edges.length; i += 1) {
      const t = triangleOf(edges[i]);
      if (!core[t]) continue;
      for (let e = 3 * t; e < 3 * t + 3; e += 1) {
        if (!mesh.isChord[e]) least = Math.min(least, heightOn(mesh, e));
        if (!coreChord[e] || widths[e] > 0) continue;
        least = Math.min(least, edgeLength(mesh, e));
        widths[e] = Infinity;
        widths[mesh.twins[e]] = Infinity;
        edges.push(e, mesh.twins[e]);
      }
    }
    for (const e of edges) widths[e] = least;
  }
  return widths;
}

// src/geometry/necks/widths.ts
var maxMoves = 4;
var maxVertices = 400;
function exactWidth(mesh, chord, spacing, follow) {
  let a = mesh.starts[chord];
  let b = mesh.starts[nextEdge(chord)];
  const limit2 = Math.min(follow ? 1.5 * spacing : spacing / 2, arcOver(mesh, chord) / 4);
  let best = { ...between2(placeOf(mesh, a), placeOf(mesh, b)), a, b };
  for (let moves = 0; moves <= (follow ? maxMoves : 0); moves += 1) {
    const found = nearest(stretch(mesh, a, limit2), stretch(mesh, b, limit2));
    if (!found || found.width >= best.width || !isAcrossMaterial(mesh, chord, found)) break;
    best = found;
    if (found.a === a && found.b === b) break;
    ({ a, b } = found);
  }
  return best;
}
var placeOf = ({ xs, ys }, vertex) => [xs[vertex], ys[vertex]];
var between2 = (a, b) => ({ width: distance(a[0] - b[0], a[1] - b[1]), ends: [a, b] });
function isAcrossMaterial(mesh, chord, { ends: [p, q], width }) {
  const { xs, ys, starts, twins, isChord } = mesh;
  const a = placeBetween(p, q, 0.01);
  const b = placeBetween(p, q, 0.99);
  const from = triangleOf(chord);
  const seen = /* @__PURE__ */ new Set([from]);
  for (const t of seen) {
    for (let e = 3 * t; e < 3 * t + 3; e += 1) {
      const u = starts[e];
      const v = starts[nextEdge(e)];
      const first = [xs[u], ys[u]];
      const second = [xs[v], ys[v]];
      if (!isChord[e]) {
        if (turn2(first, second, a) * turn2(first, second, b) < 0 && turn2(a, b, first) * turn2(a, b, second) < 0)
          return false;
      } else if (seen.size < maxVertices && (isNear(p, first, 2 * width) || isNear(p, second, 2 * width))) {
        seen.add(triangleOf(twins[e]));
      }
    }
  }
  return true;
}
var placeBetween = (p, q, t) => [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])];
var turn2 = (a, b, c) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
var isNear = (a, b, within2) => distance(a[0] - b[0], a[1] - b[1]) <= within2;
function stretch(mesh, vertex, limit2) {
  const centre = { x: mesh.xs[vertex], y: mesh.ys[vertex], vertex };
  return [...oneWay(mesh, centre, limit2, mesh.previous).reverse(), centre, ...oneWay(mesh, centre, limit2, mesh.next)];
}
function oneWay({ xs, ys }, from, limit2, towards) {
  const knots = [];
  let at2 = from;
  let left = limit2;
  while (left > 1 && knots.length < maxVertices) {
    const vertex = towards[at2.vertex];
    if (vertex < 0 || vertex === from.vertex || towards[vertex] < 0) break;
    const dx = xs[vertex] - at2.x;
    const dy = ys[vertex] - at2.y;
    const length = distance(dx, dy);
    const part = Math.min(1, left / length);
    at2 = { x: at2.x + part * dx, y: at2.y + part * dy, vertex };
    knots.push(at2);
    left -= length;
  }
  return knots;
}
function nearest(first, second) {
  const one = knotToStretch(first, second);
  const other = knotToStretch(second, first);
  if (one && !(other && other.width < one.width)) return one;
  return other && { width: other.width, a: other.b, b: other.a, ends: [other.ends[1], other.ends[0]] };
}
function knotToStretch(knots, line) {
  let square = Infinity;
  let found;
  for (const knot of knots) {
    for (let i = 1; i < line.length; i += 1) {
      const a = line[i - 1];
      const b = line[i];
      const dx = b.x - a.x;
      const dy = b.y - a.y;
      const ux = knot.x - a.x;
      const uy = knot.y - a.y;
      if (dx * uy - dy * ux <= 0) continue;
      const along2 = Math.min(1, Math.max(0, (ux * dx + uy * dy) / (dx * dx + dy * dy)));
      const offset2 = (ux - along2 * dx) ** 2 + (uy - along2 * dy) ** 2;
      if (offset2 >= square) continue;
      square = offset2;
      const foot = [a.x + along2 * dx, a.y + along2 * dy];
      found = { ...between2([knot.x, knot.y], foot), a: knot.vertex, b: along2 < 0.5 ? a.vertex : b.vertex };
    }
  }
  return found;
}

// src/geometry/necks.ts
var pointsPerWidth = 5;
var maxPoints = 5e4;
var wider = 1.03;
var findNecks = (region, minWeb) => findNarrow(region, minWeb).necks;
function findNarrow(region, minWeb) {
  if (!(minWeb > 0) || !Number.isFinite(minWeb)) return { necks: [], tips: [] };
  const noise = Math.min(0.01, minWeb / 50);
  const width = (minWeb - noise / 2) * gridPerMm;
  const spacing = Math.max(1, width / pointsPerWidth, perimeter(region) * gridPerMm / maxPoints);
  const mesh = buildMesh(toGrid(region), spacing);
  if (!mesh) return { necks: [], tips: [] };
  const thinness = findThin(mesh, width);
  const found = [...measureRuns(mesh, findRuns(mesh, thinness, width), spacing), ...meetings(mesh)].filter(
    (place) => place.width < (minWeb - noise) * gridPerMm
  );
  const partings = judgeCuts(mesh, thinness.radius, found);
  const necks = [];
  for (const [i, place] of found.entries()) {
    const { parts, sides } = partings[i];
    const isPart = sides.every((side3) => side3.area >= width * width && 2 * side3.radius >= wider * place.width);
    if (place.kind === "join" && parts && !isPart) continue;
    const swap = sides[1].area > sides[0].area;
    const samples = place.sides.map((side3) => fromGrid(sampleBeyond(mesh, thinness.radius, place, side3, width)));
    const areas = sides.map((side3) => side3.area / gridPerMm ** 2);
    necks.push({
      kind: place.kind === "stroke" ? "stroke" : parts ? "bridge" : "loop",
      width: place.width / gridPerMm,
      ends: inOrder(fromGrid(place.ends[0]), fromGrid(place.ends[1])),
      length: place.length / gridPerMm,
      areas: swap ? [areas[1], areas[0]] : [areas[0], areas[1]],
      samples: swap ? [samples[1], samples[0]] : [samples[0], samples[1]]
    });
  }
  necks.sort((a, b) => a.width - b.width || compare2(a.ends[0], b.ends[0]) || compare2(a.ends[1], b.ends[1]));
  return { necks, tips: freeEnds(mesh, thinness).map((end) => tipOf(mesh, end)) };
}
function tipOf({ xs, ys }, { vertex, path }) {
  let before = 0;
  const widths = path.steps.toReversed().map(({ width, length }) => {
    const middle2 = before + length / 2;
    before += length;
    return { before: middle2 / gridPerMm, width: width / gridPerMm };
  });
  return { at: fromGrid([xs[vertex], ys[vertex]]), widths };
}
function measureRuns(mesh, runs, spacing) {
  const places = /* @__PURE__ */ new Map();
  for (const { kind, chord, length, follow } of runs) {
    const measured2 = exactWidth(mesh, chord, spacing, follow);
    const twin = mesh.twins[chord];
    const key = measured2.ends.map((end) => end.join()).sort().join();
    if (places.has(key)) continue;
    places.set(key, { ...measured2, kind, length, chord, sides: [triangleOf(chord), triangleOf(twin)] });
  }
  return [...places.values()];
}
function meetings(mesh) {
  const sectors = new Map(mesh.meetings.map((vertex) => [vertex, []]));
  for (let e = 0; e < mesh.starts.length; e += 1) {
    if (mesh.inside[triangleOf(e)] && !mesh.isChord[e]) sectors.get(mesh.starts[e])?.push(triangleOf(e));
  }
  return [...sectors].flatMap(([vertex, triangles]) => {
    const at2 = [mesh.xs[vertex], mesh.ys[vertex]];
    return triangles.slice(1).map((triangle, i) => {
      return { kind: "join", width: 0, ends: [at2, at2], length: 0, sides: [triangles[i], triangle] };
    });
  });
}
var compare2 = (a, b) => a.x - b.x || a.y - b.y;
var inOrder = (a, b) => compare2(a, b) <= 0 ? [a, b] : [b, a];

// src/checks/thin-places.ts
var narrowOf = perRegion(findNarrow);
var onOutlineMm = 0.05;
var slackMm3 = 0.01;
function limitOf({ glueTo, hangers }, { minWeb, leastWeb }) {
  return glueTo === void 0 || hangers.length > 0 ? minWeb : leastWeb;
}
function thinPlaces(piece, stock, where2) {
  const wantedHanger = where2 === "elsewhere" ? void 0 : where2;
  const limit2 = limitOf(piece, stock);
  const asked = askedOf(piece, limit2);
  return narrowOf(piece.region, limit2).necks.filter((neck2) => hangerAt(piece, neck2.ends) === wantedHanger).map((neck2) => {
    const width = askedWidthOf(neck2, asked);
    return { ...neck2, minimum: width === void 0 ? limit2 : Math.max(width, stock.leastWeb) };
  }).filter(({ width, minimum }) => width < minimum - Math.min(slackMm3, minimum / 50));
}
function tipsOf(piece, stock) {
  return narrowOf(piece.region, limitOf(piece, stock)).tips;
}
function askedOf({ asked = [], hangers }, limit2) {
  const drawn = asked.filter(({ width }) => width < limit2);
  const walls = hangers.flatMap(
    ({ opening, lug, wall }) => lug && wall !== void 0 && wall < limit2 ? [{ opening, lug, wall }] : []
  );
  const lengths = [
    ...drawn.map(({ region, width }) => perimeter(region) / 2 + width),
    ...walls.map(({ lug, wall }) => perimeter(lug) + wall)
  ];
  return { drawn, walls, longest: lengths.reduce((sum, length) => sum + length, 0) };
}
function isOn(outline, point) {
  const { minX, minY, maxX, maxY } = boundsOf(outline);
  const isNear3 = point.x > minX - onOutlineMm && point.x < maxX + onOutlineMm && point.y > minY - onOutlineMm && point.y < maxY + onOutlineMm;
  return isNear3 && distanceTo(outline, point) < onOutlineMm;
}
function askedWidthOf({ ends, length }, { drawn, walls, longest: longest2 }) {
  if (length > longest2) return void 0;
  const [from, to] = ends.map((end) => drawn.filter(({ region }) => isOn(region, end)));
  const strips = from.length > 0 && to.length > 0 ? [...from, ...to] : [];
  const rings = walls.filter(
    ({ opening, lug }) => [opening, lug].every((outline) => ends.some((end) => isOn(outline, end)))
  );
  const widths = [...strips.map(({ width }) => width), ...rings.map(({ wall }) => wall)];
  return widths.length > 0 ? Math.min(...widths) : void 0;
}
function byMinimum(places) {
  const groups2 = /* @__PURE__ */ new Map();
  for (const place of places) {
    const group = groups2.get(place.minimum);
    if (group) group.push(place);
    else groups2.set(place.minimum, [place]);
  }
  return [...groups2.values()];
}
function placeOf2({ ends, width }) {
  return { points: ends, width };
}
function theMinimum(minimum, { minWeb, measuredOn: days }) {
  const isMeasured = minimum === minWeb && days?.min_web !== void 0;
  return `${mm(minimum)}${isMeasured ? `, the minimum${measuredOn(days.min_web).slice(1)}` : ""}`;
}
function atLeast(minimum, { minWeb, measuredOn: days }) {
  return `minimum ${mm(minimum)}${minimum === minWeb ? measuredOn(days?.min_web) : ""}`;
}

// src/checks/hanger-weak.ts
var onHoleMm = 0.05;
var touchingMm22 = 0.02;
var hangerWeak = ({ pieces, stock }) => pieces.flatMap(
  (piece) => piece.hangers.flatMap(
    (hanger) => hanger.lug ? [...looseRing(piece, hanger, hanger.lug), ...weakPlaces(piece, hanger, stock)] : []
  )
);
function weakPlaces(piece, hanger, stock) {
  return byMinimum(thinPlaces(piece, stock, hanger)).map((necks) => {
    const { minimum } = necks[0];
    return {
      code: "hanger-weak",
      severity: "warning",
      piece: piece.id,
      path: hanger.path,
      ...seenAt(necks.map(placeOf2)),
      minimum,
      message: messageOf2(necks, hanger, stock)
    };
  });
}
function messageOf2(necks, { opening }, stock) {
  const { ends, width, minimum } = necks[0];
  const isWall = ends.some((end) => distanceTo(opening, end) < onHoleMm);
  if (necks.length > 1) {
    const which = isWall ? "the wall around its hole" : "where it joins the body";
    return `Weak ring: ${necks.length} places are narrower than ${theMinimum(minimum, stock)}; the narrowest, ${which}, is ${mm(width)}.`;
  }
  const told2 = isWall ? `the wall around its hole is only ${mm(width)}` : `only ${mm(width)} of material joins it to the body here`;
  return `Weak ring: ${told2}; ${atLeast(minimum, stock)}.`;
}
function looseRing({ id, parts, body }, { path, centre }, lug) {
  if (parts === "one" || shared(lug, body) > touchingMm22) return [];
  const message = "The ring is joined to nothing and falls out.";
  return [{ code: "hanger-weak", severity: "error", piece: id, path, points: [centre], message }];
}
var shared = remembered((lug, body) => area(intersection(lug, body)));

// src/tag/hanger/direction.ts
var diagonal = Math.SQRT1_2;
var anchors = {
  top: { x: 0, y: 1 },
  bottom: { x: 0, y: -1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
  "top-left": { x: -diagonal, y: diagonal },
  "top-right": { x: diagonal, y: diagonal },
  "bottom-left": { x: -diagonal, y: -diagonal },
  "bottom-right": { x: diagonal, y: -diagonal }
};
function directionOf(at2) {
  if (at2.kind === "anchor") return anchors[at2.anchor];
  const angle = at2.degrees * Math.PI / 180;
  return { x: Math.sin(angle), y: Math.cos(angle) };
}
function aimFrom(from, { minX, minY, maxX, maxY }, at2) {
  const diagonally = directionOf(at2);
  if (at2.kind === "degrees" || diagonally.x === 0 || diagonally.y === 0) return diagonally;
  const x = (diagonally.x > 0 ? maxX : minX) - from.x;
  const y = (diagonally.y > 0 ? maxY : minY) - from.y;
  const length = Math.hypot(x, y);
  return length > 0 ? { x: x / length, y: y / length } : diagonally;
}
function tiltDegrees({ x, y }, direction) {
  return Math.abs(Math.atan2(x * direction.y - y * direction.x, x * direction.x + y * direction.y) * (180 / Math.PI));
}
function furthestOnRay(region, from, direction) {
  let furthest2 = -Infinity;
  for (const ring of region) {
    let previous = ring[ring.length - 1];
    for (const point of ring) {
      const a = across2(previous);
      const b = across2(point);
      if (a > 0 !== b > 0)
        furthest2 = Math.max(furthest2, along2(previous) + a / (a - b) * (along2(point) - along2(previous)));
      previous = point;
    }
  }
  return furthest2 > 0 ? { x: from.x + furthest2 * direction.x, y: from.y + furthest2 * direction.y } : void 0;
  function across2({ x, y }) {
    return (x - from.x) * direction.y - (y - from.y) * direction.x;
  }
  function along2({ x, y }) {
    return (x - from.x) * direction.x + (y - from.y) * direction.y;
  }
}

// src/checks/assembly.ts
function assemblyOf(piece, pieces) {
  const bottom = bottomOf(piece, pieces);
  return pieces.filter((other) => bottomOf(other, pieces) === bottom);
}
function gluedOver(piece, pieces) {
  return pieces.filter((other) => below(other, pieces).includes(piece));
}
function balanceOf(pieces) {
  let [sum, x, y] = [0, 0, 0];
  for (const { region } of pieces) {
    const own = area(region);
    const centre = centroid(region);
    if (!centre) continue;
    sum += own;
    x += own * centre.x;
    y += own * centre.y;
  }
  return sum > 0 ? { x: x / sum, y: y / sum } : void 0;
}

// src/checks/hangs-askew.ts
var seenDegrees = 3;
var chosenDegrees = 6;
var meantDegrees = 20;
var leastLeverMm = 1;
var hangsAskew = ({ pieces, tie }) => hung(pieces).flatMap((each) => askew(each, tie));
function hung(pieces) {
  return pieces.flatMap((piece) => {
    if (piece.hangers.length === 0) return [];
    const all = assemblyOf(piece, pieces);
    const balance = balanceOf(all);
    const carries = all.find(({ hangers }) => hangers.length > 0) === piece;
    return carries && balance ? [{ piece: piece.id, hangers: piece.hangers, balance }] : [];
  });
}
function askew({ piece, hangers, balance }, tie) {
  const [first, second] = hangers;
  const tilt = second ? betweenTwo(first, second, balance) : onOne(first, balance, tie);
  if (!tilt || Math.abs(tilt.clockwise) <= (hasChosenPlace(tilt.hanger) ? chosenDegrees : seenDegrees)) return [];
  const angle = Math.abs(tilt.clockwise);
  const turned2 = `turned ${Math.round(angle)}\xB0 ${tilt.clockwise > 0 ? "clockwise" : "counter-clockwise"}`;
  return [
    {
      code: "hangs-askew",
      severity: "info",
      piece,
      path: tilt.hanger.path,
      points: [tilt.from, balance],
      angle,
      message: `Hangs askew, ${turned2}: ${tilt.because}.`
    }
  ];
}
function hasChosenPlace({ kind, at: at2 }) {
  return kind === "ring" && at2.kind !== "point";
}
function onOne(hanger, balance, tie) {
  const lever = minus(hanger.centre, balance);
  const up = meantUp(hanger.at, lever);
  return up && Math.hypot(lever.x, lever.y) >= leastLeverMm ? tiltOf(hanger, balance, up, tie) : void 0;
}
function tiltOf(hanger, balance, up, tie) {
  const { centre, kind, openingLength, openingSize } = hanger;
  const lever = minus(centre, balance);
  const isFlat = kind === "slot" && tie?.kind !== "twine";
  const level = isFlat ? (openingLength - openingSize) / 2 : 0;
  const sideways = cross2(up, lever);
  const beside = Math.sign(sideways) * Math.max(0, Math.abs(sideways) - level);
  const length = Math.hypot(lever.x, lever.y) || 1;
  const reach = openingSize / 2 / length;
  return {
    hanger,
    clockwise: degrees(Math.atan2(beside, dot2(up, lever))),
    from: { x: centre.x + reach * lever.x, y: centre.y + reach * lever.y },
    because: reasonOf(up, sideways, kind)
  };
}
function betweenTwo(first, second, balance) {
  const chord = minus(second.centre, first.centre);
  const middle2 = { x: (first.centre.x + second.centre.x) / 2, y: (first.centre.y + second.centre.y) / 2 };
  const length = Math.hypot(chord.x, chord.y);
  if (length < (first.openingLength + second.openingLength) / 2) return onOne(first, balance, void 0);
  const across2 = { x: -chord.y / length, y: chord.x / length };
  const above = dot2(minus(middle2, balance), across2);
  if (Math.abs(chord.y) > Math.abs(chord.x) && Math.abs(above) < leastLeverMm)
    return onOne(first.centre.y > second.centre.y ? first : second, balance, void 0);
  const outwards = above < 0 ? { x: -across2.x, y: -across2.y } : across2;
  const up = nearestSide(Math.abs(above) < leastLeverMm && outwards.y < 0 ? across2 : outwards);
  if (!up) return void 0;
  const beyond4 = dot2(minus(balance, first.centre), chord) / length;
  if (beyond4 < 0 || beyond4 > length) return tiltOf(beyond4 < 0 ? first : second, balance, up, void 0);
  const right = { x: up.y, y: -up.x };
  const rise = dot2(chord, up) * Math.sign(dot2(chord, right));
  return {
    hanger: second,
    clockwise: degrees(Math.atan2(rise, Math.abs(dot2(chord, right)))),
    from: middle2,
    because: `its two openings are ${mm(Math.abs(rise))} off level`
  };
}
function meantUp(at2, lever) {
  switch (at2.kind) {
    case "degrees":
      return directionOf(at2);
    case "anchor":
      return at2.anchor.includes("-") ? void 0 : directionOf(at2);
    case "auto":
    case "point":
      return nearestSide(lever);
  }
}
function nearestSide({ x, y }) {
  const isUpright2 = Math.abs(y) >= Math.abs(x);
  const off = degrees(isUpright2 ? Math.atan2(Math.abs(x), Math.abs(y)) : Math.atan2(Math.abs(y), Math.abs(x)));
  if (off > meantDegrees) return void 0;
  return isUpright2 ? { x: 0, y: Math.sign(y) } : { x: Math.sign(x), y: 0 };
}
function reasonOf(up, sideways, kind) {
  const off = mm(Math.abs(sideways));
  const [x, y] = [up.y * sideways, -up.x * sideways];
  if (Math.abs(x) >= Math.abs(y)) return `it balances ${off} ${x > 0 ? "right" : "left"} of the ${kind}`;
  return `the ${kind} is ${off} too ${y > 0 ? "low" : "high"} on the drawing`;
}
function minus(a, b) {
  return { x: a.x - b.x, y: a.y - b.y };
}
function dot2(a, b) {
  return a.x * b.x + a.y * b.y;
}
function cross2(a, b) {
  return a.x * b.y - a.y * b.x;
}
function degrees(radians) {
  return radians * 180 / Math.PI;
}

// src/spec/tie.ts
var leastOpeningMm = 2.8;
var leastRingWallMm = 1.78;
var slotOpeningMm = 3;
var slotEaseMm = 1;
function comfortableOpening(tie) {
  if (!tie) return leastOpeningMm;
  if (tie.opening !== void 0) return tie.opening;
  return Math.max(leastOpeningMm, tie.kind === "twine" ? 2 * tie.size : tie.size / 2);
}
function tightestOpening(tie) {
  if (tie.opening !== void 0) return tie.opening;
  return tie.kind === "twine" ? 1.5 * tie.size : 0.4 * tie.size;
}
var usualTwineMm = 1.5;
var flatRibbonMm = 1;
function strandOf(tie, isSlot) {
  if (!tie) return usualTwineMm;
  if (tie.kind === "twine") return tie.size;
  return isSlot ? flatRibbonMm : tightestOpening(tie) / 2;
}

// src/checks/hole-beside-marks.ts
var slipMm = 1;
var accentGap = 0.2;
var smallestAccent = 0.15;
var largestAccent = 0.5;
function besidesOf(piece, pieces, hanger) {
  const marks3 = piece.marks.flatMap(
    ({ operation, region, lettering: lettering3 = [], shape }) => operation === "engrave" || lettering3.length > 0 ? [{ region, lettering: lettering3, name: named(shape.name, "engraving") }] : []
  );
  const cuts = piece.sources.flatMap(
    ({ use, lettering: lettering3 = [], region, shape }) => lettering3.filter(({ as }) => as === "opening" !== (use === "cut")).map((each) => ({ region: each.shape ?? region, lettering: [each], name: named(shape.name, "lettering") }))
  );
  const glued = gluedOver(piece, pieces).flatMap(({ region, sources: sources2, title }) => {
    const lettering3 = sources2.flatMap(({ use, lettering: own = [] }) => use === "body" ? own : []);
    return lettering3.length > 0 ? [{ region, lettering: lettering3, name: `\u201C${title}\u201D` }] : [];
  });
  return [...marks3, ...cuts, ...glued].filter((each) => !surrounds(each, hanger));
}
function surrounds({ region, lettering: lettering3 }, { centre }) {
  if (hasLetters(lettering3)) return false;
  return contains(region, centre) || region.some((ring) => ringArea(ring) < 0 && contains([ring], centre));
}
function hasLetters(lettering3 = []) {
  return lettering3.some(({ as }) => as === "material");
}
function nearness(hanger, { region, lettering: lettering3 }) {
  const width = gapTo(hanger.opening, region);
  if (width < slipMm) return { width, isAccent: false };
  const above = hanger.kind === "slot" ? void 0 : accentAbove(hanger, lettering3);
  return above === void 0 ? void 0 : { width: above, isAccent: true };
}
function accentAbove({ centre, openingSize }, lettering3) {
  for (const { letters, grow } of lettering3) {
    for (const { region } of letters) {
      const box = boundsOf(region);
      if (!box || centre.x < box.minX || centre.x > box.maxX) continue;
      const height = box.maxY - box.minY + 2 * grow;
      const gap = centre.y - openingSize / 2 - (box.maxY + grow);
      const isAsLarge = openingSize > smallestAccent * height && openingSize < largestAccent * height;
      if (isAsLarge && gap > 0 && gap < accentGap * height) return gap;
    }
  }
  return void 0;
}
function named(name, otherwise) {
  return name === void 0 ? `the ${otherwise}` : `\u201C${name}\u201D`;
}
var gapTo = remembered((opening, region) => clearance(opening, region, slipMm));

// src/checks/line-within.ts
function lineWithin(line, field) {
  const box = boundsOf(field);
  let length = 0;
  let at2;
  if (!box) return { length };
  for (const ring of line) {
    let from = ring[ring.length - 1];
    for (const to of ring) {
      const isBeside2 = Math.max(from.x, to.x) < box.minX || Math.min(from.x, to.x) > box.maxX || Math.max(from.y, to.y) < box.minY || Math.min(from.y, to.y) > box.maxY;
      const cuts = isBeside2 ? [] : [0, ...crossings(from, to, field), 1];
      for (let i = 1; i < cuts.length; i++) {
        const [start, end] = [cuts[i - 1], cuts[i]];
        const middle2 = between3(from, to, (start + end) / 2);
        if (start === end || !contains(field, middle2)) continue;
        length += (end - start) * Math.hypot(to.x - from.x, to.y - from.y);
        at2 ??= middle2;
      }
      from = to;
    }
  }
  return at2 ? { length, at: at2 } : { length };
}
function crossings(from, to, field) {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const shares2 = [];
  for (const ring of field) {
    let a = ring[ring.length - 1];
    for (const b of ring) {
      const [ex, ey] = [b.x - a.x, b.y - a.y];
      const across2 = dx * ey - dy * ex;
      const share = ((a.x - from.x) * ey - (a.y - from.y) * ex) / across2;
      const along2 = ((a.x - from.x) * dy - (a.y - from.y) * dx) / across2;
      if (across2 !== 0 && share > 0 && share < 1 && along2 >= 0 && along2 < 1) shares2.push(share);
      a = b;
    }
  }
  return shares2.sort((a, b) => a - b);
}
function between3(from, to, share) {
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}

// src/checks/room-for-tie.ts
var aheadShare = 0.5;
function clearances(opening, glued, towards, reach) {
  const edges = edgesOf3(glued, 0);
  const box = boundsOf(opening);
  const near = edges.near(boxCentre(box), Math.max(box.maxX - box.minX, box.maxY - box.minY) / 2 + reach);
  const found = {};
  const note = (on, at2) => {
    const width = Math.hypot(on.x - at2.x, on.y - at2.y);
    if (width > reach) return;
    const along2 = (at2.x - on.x) * towards.x + (at2.y - on.y) * towards.y;
    const isAhead = along2 >= aheadShare * width * Math.hypot(towards.x, towards.y);
    const side3 = isAhead ? "ahead" : "behind";
    if (width < (found[side3]?.width ?? Infinity)) found[side3] = { width, ends: [on, at2] };
  };
  const rim = opening.flatMap(
    (ring) => ring.map((to, index) => [ring[(index + ring.length - 1) % ring.length], to])
  );
  for (const [from, to] of near) {
    rim.forEach(([previous, corner], index) => {
      const t = footOn(corner, from, to);
      const foot = between4(from, to, t);
      const next = rim[(index + 1) % rim.length][1];
      if (t > 0 && t < 1 && !isToward(corner, foot, previous) && !isToward(corner, foot, next)) note(corner, foot);
    });
    for (const corner of [from, to]) {
      const edge = rim.reduce((a, b) => distanceToSegment(corner, ...b) < distanceToSegment(corner, ...a) ? b : a);
      note(between4(...edge, Math.min(1, Math.max(0, footOn(corner, ...edge)))), corner);
    }
  }
  return found;
}
function hasOwnHole(glued, opening, centre, reach) {
  const hole = glued.find((ring) => ringArea(ring) < 0 && contains([ring], centre));
  const size = hole && boundsOf([hole]);
  const own = boundsOf(opening);
  if (!size) return false;
  return [size.maxX - own.maxX, own.minX - size.minX, size.maxY - own.maxY, own.minY - size.minY].every(
    (gap) => gap <= reach
  );
}
function footOn({ x, y }, from, to) {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = dx * dx + dy * dy;
  return length === 0 ? 0 : ((x - from.x) * dx + (y - from.y) * dy) / length;
}
function isToward(from, to, other) {
  return (to.x - from.x) * (other.x - from.x) + (to.y - from.y) * (other.y - from.y) > 0;
}
function between4(from, to, t) {
  return { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
}
var edgesOf3 = perRegion((region) => new EdgeIndex(region));

// src/checks/hole-blocked.ts
var surrounding = 0.98;
var elsewhere = 0.5;
var slackMm4 = 0.01;
var touchingMm23 = 0.02;
var touchingMm4 = 0.05;
var holeBlocked = (tag) => tag.pieces.flatMap((piece) => piece.hangers.flatMap((hanger) => blockedHole(hanger, piece, tag)));
function blockedHole(hanger, piece, { pieces, tie }) {
  const findings = [];
  const report = (severity, overlap2, message) => {
    const box = boundsOf(overlap2);
    const covered3 = area(overlap2);
    if (!box || covered3 < touchingMm23) return;
    findings.push({
      code: "hole-blocked",
      severity,
      piece: piece.id,
      path: hanger.path,
      points: [boxCentre(box)],
      message: `${message} (${mm2(covered3, 1)}).`
    });
  };
  if (hanger.kind === "ring" && !((hanger.sink ?? 0) > 0)) {
    const bite = shared2(hanger.opening, piece.body);
    if (area(bite) > area(hanger.opening) / 2)
      report("warning", bite, "The hole of the ring is cut mostly out of the body");
  }
  for (const mark of piece.marks) {
    if (mark.operation === "score") {
      const { length, at: at2 } = scored(hanger.opening, mark.region);
      if (!at2) continue;
      findings.push({
        code: "hole-blocked",
        severity: "warning",
        piece: piece.id,
        path: hanger.path,
        points: [at2],
        message: `A score line runs across the hole (${mm(length, 1)} of it).`
      });
      continue;
    }
    const crossed2 = shared2(hanger.opening, mark.region);
    const isWithin = area(crossed2) > surrounding * area(hanger.opening);
    if (isWithin && !hasLetters(mark.lettering)) continue;
    report("warning", crossed2, "Engraving runs across the hole");
  }
  const over = gluedOver(piece, pieces);
  const towards = over.length > 0 ? pullOf(hanger, piece, pieces) : { x: 0, y: 0 };
  for (const other of over) {
    const covered3 = shared2(hanger.opening, other.region);
    report("error", covered3, `\u201C${other.title}\u201D, glued on, covers the hole`);
    if (area(covered3) < touchingMm23) findings.push(...tooNear(hanger, other, towards, tie, piece));
  }
  return findings.length > 0 ? findings : looksLikeASlip(hanger, piece, pieces);
}
function looksLikeASlip(hanger, piece, pieces) {
  const { kind, path, centre } = hanger;
  if (kind === "ring") return [];
  const near = besidesOf(piece, pieces, hanger).flatMap(({ name: name2, ...beside }) => {
    if (area(shared2(hanger.opening, beside.region)) >= touchingMm23) return [];
    const found = nearness(hanger, { name: name2, ...beside });
    return found ? [{ ...found, name: name2 }] : [];
  });
  const [worst] = near.sort((a, b) => a.width - b.width);
  if (!worst) return [];
  const { width, isAccent, name } = worst;
  const what = kind === "slot" ? "slot" : "hole";
  const message = isAccent ? `The hole stands ${mm(width)} above a letter of ${name} and reads as its accent.` : `${width < slackMm4 ? "No room" : `Only ${mm(width)}`} between the ${what} and ${name}: it looks like a mistake; minimum ${mm(slipMm)}.`;
  return [{ code: "hole-blocked", severity: "info", piece: piece.id, path, points: [centre], width, message }];
}
var scored = remembered((opening, line) => lineWithin(line, offset(opening, -touchingMm4)));
function tooNear(hanger, glued, towards, tie, { id, body }) {
  const { opening, centre, kind, path } = hanger;
  const strand = strandOf(tie, kind === "slot");
  if (hasOwnHole(glued.region, opening, centre, strand)) return [];
  const isOnBody = kind === "ring" && area(beyond2(glued.region, body)) < touchingMm23;
  const { ahead, behind: behind2 } = clearances(opening, glued.region, towards, strand);
  const narrow = [
    ...ahead && ahead.width < strand - slackMm4 ? [{ ...ahead, minimum: strand }] : [],
    ...behind2 && !isOnBody && behind2.width < elsewhere * strand - slackMm4 ? [{ ...behind2, minimum: elsewhere * strand }] : []
  ];
  const touching2 = shared2(opening, glued.region)[0]?.[0];
  if (touching2 && !isOnBody) narrow.push({ width: 0, minimum: elsewhere * strand, ends: [touching2, touching2] });
  const [worst] = narrow.sort((a, b) => a.width - a.minimum - (b.width - b.minimum));
  if (!worst) return [];
  const { width, minimum, ends } = worst;
  const what = tie?.kind === "ribbon" ? `${mm(tie.size)} ribbon` : `${mm(strand)} twine`;
  const room = width < slackMm4 ? "No room" : `Only ${mm(width)}`;
  const message = `${room} between the ${kind === "slot" ? "slot" : "hole"} and \u201C${glued.title}\u201D, glued on; minimum ${mm(minimum)} for ${what}.`;
  return [{ code: "hole-blocked", severity: "warning", piece: id, path, points: ends, width, minimum, message }];
}
function pullOf({ centre }, piece, pieces) {
  const balance = balanceOf(assemblyOf(piece, pieces)) ?? centre;
  return { x: centre.x - balance.x, y: centre.y - balance.y };
}
var shared2 = remembered((opening, other) => intersection(opening, other));
var beyond2 = remembered((region, body) => difference(region, [body]));

// src/checks/joined-opening.ts
var touchingMm24 = 0.02;
var ownShare = 0.05;
var wholly = 0.98;
function stateOf(piece, hanger) {
  const { opening, centre } = hanger;
  const hole = piece.region.find((ring) => ringArea(ring) < 0 && contains([ring], centre));
  const own = area(opening);
  if (hole && -ringArea(hole) <= (1 + ownShare) * own) return "closed";
  const other = hole && largest(othersOf(piece, hanger), opening);
  if (other) return other.isLater ? "told" : runsInto(other.what, other.shared, own);
  const missing2 = hanger.lug ? 0 : own - sharedArea(opening, piece.body);
  if (missing2 > own - touchingMm24) return "beside";
  if (!hole) return "open";
  return hanger.lug ? "closed" : runsInto("an opening of the body", missing2, own);
}
function runsInto(what, shared4, own) {
  return { what, shared: shared4, isWhole: shared4 > wholly * own };
}
function othersOf({ sources: sources2, hangers }, own) {
  const cuts = sources2.filter(({ use }) => use === "cut");
  const at2 = hangers.indexOf(own);
  return [
    ...cuts.map(({ region, shape }) => ({
      region,
      what: shape.name === void 0 ? "a shape that is cut out" : `the cut \u201C${shape.name}\u201D`
    })),
    ...hangers.flatMap(
      ({ kind, opening }, index) => index === at2 ? [] : { region: opening, what: `the other ${kind}`, isLater: index > at2 }
    )
  ];
}
function largest(others2, opening) {
  return others2.map((other) => ({ ...other, shared: sharedArea(opening, other.region) })).filter(({ shared: shared4 }) => shared4 > 0).sort((a, b) => b.shared - a.shared)[0];
}
var sharedArea = remembered((opening, other) => area(intersection(opening, other)));

// src/checks/hole-near-edge.ts
var holeNearEdge = ({ pieces, stock }) => pieces.flatMap(
  (piece) => piece.hangers.flatMap((hanger) => [
    ...notClosed(piece, hanger),
    // The wall of a ring is `hanger-weak`.
    ...hanger.kind === "ring" ? [] : nearEdges(piece, hanger, stock)
  ])
);
function notClosed(piece, hanger) {
  const { kind, path, centre } = hanger;
  const what = kind === "ring" ? "hole of the ring" : kind;
  const message = faultOf2(stateOf(piece, hanger), what);
  if (message === void 0) return [];
  return [{ code: "hole-near-edge", severity: "error", piece: piece.id, path, points: [centre], message }];
}
function faultOf2(state, hole) {
  switch (state) {
    case "closed":
    case "told":
      return void 0;
    case "beside":
      return `The ${hole} lies beside the body: there is nothing for the tie to hold on to.`;
    case "open":
      return `The ${hole} is open to the edge: the tie slips out.`;
    default:
      return state.isWhole ? `The ${hole} runs into another opening: it lies entirely inside ${state.what}, so there is no separate hole.` : `The ${hole} runs into another opening: it shares ${mm2(state.shared, 2)} with ${state.what}, and the tie slips into that.`;
  }
}
function nearEdges(piece, hanger, stock) {
  return byMinimum(thinPlaces(piece, stock, hanger)).map((necks) => {
    const { minimum } = necks[0];
    return {
      code: "hole-near-edge",
      severity: "warning",
      piece: piece.id,
      path: hanger.path,
      ...seenAt(necks.map(placeOf2)),
      minimum,
      message: `${nearness2(necks, hanger)}; ${atLeast(minimum, stock)}.`
    };
  });
}
function nearness2(necks, { kind }) {
  const least = mm(necks[0].width);
  return necks.length === 1 ? `Only ${least} of material is left between the ${kind} and an edge` : `The ${kind} is too close to an edge in ${necks.length} places: only ${least} of material is left at the narrowest`;
}

// src/checks/hole-too-small.ts
var slackMm5 = 0.01;
var holeTooSmall = ({ tie, pieces }) => {
  if (!tie) return [];
  const hung2 = pieces.flatMap(({ id, hangers }) => hangers.map((hanger) => ({ id, hanger })));
  return hung2.flatMap(({ id, hanger }) => {
    const flat = tie.kind === "ribbon" && hanger.kind === "slot";
    const needed = flat ? tie.size : tightestOpening(tie);
    const has = flat ? hanger.openingLength : hanger.openingSize;
    if (has >= needed - slackMm5) return [];
    const what = tie.kind === "twine" ? `${mm(tie.size)} twine, doubled,` : `${mm(tie.size)} ribbon`;
    return [
      {
        code: "hole-too-small",
        severity: "warning",
        piece: id,
        path: hanger.path,
        points: [hanger.centre],
        width: has,
        message: `The ${hanger.kind === "slot" ? "slot" : "hole"} is ${mm(has)}; ${what} needs ${mm(needed)}${flat ? "" : measuredOn(tie.openingOn)}.`
      }
    ];
  });
};

// src/checks/loose-part.ts
var mostCounted = 6;
var looseParts = ({ pieces }) => pieces.flatMap((piece) => piece.parts === "many" ? [] : loosePartsOf(piece));
function loosePartsOf(piece) {
  const parts = partsOf(piece.region);
  const held = parts.find((part) => holds2(part, piece)) ?? parts[0];
  const loose = parts.filter((part) => part !== held);
  if (loose.length > mostCounted) {
    const message = `\u201C${piece.title}\u201D falls into ${parts.length} parts. Join them, put them on a backing, or keep them apart with \u201Cparts: many\u201D.`;
    return [finding(piece, blame(piece, onEdge2(loose[0])), loose, message)];
  }
  return byCause(piece, loose, (part) => [onEdge2(part)]).map(
    ({ path, found }) => finding(piece, path, found, messageOf3(found, piece))
  );
}
function messageOf3(parts, piece) {
  const { title } = piece;
  const box = boundsOf(parts[0]);
  const size = mmByMm(box.maxX - box.minX, box.maxY - box.minY, 1);
  const ways = waysOut(piece, parts.length === 1 ? "it" : "them");
  return parts.length === 1 ? `A part of \u201C${title}\u201D (${size}, ${mm2(area(parts[0]), 1)}) is joined to nothing and falls out. ${ways}` : `${parts.length} parts of \u201C${title}\u201D, the largest ${size}, are joined to nothing and fall out. ${ways}`;
}
function waysOut({ sources: sources2 }, them) {
  const isLettered = sources2.some(({ use, shape }) => use === "body" && isLettering(shape));
  const keys = isLettered ? "\u201Coverlap\u201D, \u201Cstraps\u201D or \u201Cbridges\u201D" : "\u201Cstraps\u201D or \u201Cbridges\u201D";
  return `Join ${them} with ${keys}, or keep ${them} apart with \u201Cparts: many\u201D.`;
}
function holds2(part, { hangers }) {
  return hangers.some(({ centre }) => part.some((ring) => contains([ring], centre)));
}
function finding(piece, path, parts, message) {
  const places = parts.map((part) => ({ points: [inside3(part)] }));
  return { code: "loose-part", severity: "error", piece: piece.id, path, ...seenAt(places), message };
}
var onEdge2 = (part) => part[0][0];
function inside3(part) {
  const middle2 = boxCentre(boundsOf(part));
  return contains(part, middle2) ? middle2 : onEdge2(part);
}

// src/checks/crossed.ts
function isCrossed(ring, edges) {
  const box = boundsOf([ring]);
  const middle2 = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const reach = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 2;
  if (edges.near(middle2, reach).length === 0) return false;
  return ring.some((from, index) => {
    const to = ring[(index + 1) % ring.length];
    const half = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    return edges.near(half, Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y)) / 2).length > 0;
  });
}

// src/checks/mark-off-body.ts
var sameLineMm2 = 0.05;
var toleranceMm2 = 0.01;
var markOffBody = ({ pieces }) => pieces.flatMap((piece) => piece.marks.flatMap((mark) => offBody(mark, piece)));
function offBody({ region, operation, path }, piece) {
  const opening = piece.hangers.flatMap((hanger) => [...hanger.opening]);
  const [largest2, ...others2] = beyond3(region, piece.region).filter(
    ({ edge }) => edge.some((point) => !contains(opening, point))
  );
  if (!largest2) return [];
  const what = operation === "engrave" ? "Engraving" : "A score line";
  const outers = piece.region.filter((ring) => ringArea(ring) > 0);
  const where2 = contains(outers, largest2.edge[0]) ? "into an opening" : "beyond the edge";
  const box = boundsOf(largest2.part);
  const size = mmByMm(box.maxX - box.minX, box.maxY - box.minY);
  const places = others2.length === 0 ? size : `${others2.length + 1} places, the largest ${size}`;
  const inner = innerPoint(largest2.part[0]);
  return [
    {
      code: "mark-off-body",
      severity: "warning",
      piece: piece.id,
      path,
      points: [contains(largest2.part, inner) ? inner : largest2.edge[0]],
      message: `${what} runs ${where2} of \u201C${piece.title}\u201D (${places}).`
    }
  ];
}
var beyond3 = remembered((mark, region) => {
  const edges = new EdgeIndex(region);
  if (mark.every((ring) => edges.contains(ring[0]) && !isCrossed(ring, edges))) return [];
  const parts = partsOf(difference(simplified(mark, toleranceMm2), [simplified(region, toleranceMm2)]));
  if (parts.length === 0) return [];
  const isOff = (point) => edges.near(point, sameLineMm2).every(([from, to]) => distanceToSegment(point, from, to) > sameLineMm2);
  return parts.map((part) => ({ part, edge: part.flatMap((ring) => along(ring, 0.5)).filter(isOff) })).filter(({ edge }) => edge.length > 0);
});

// src/geometry/length-inside.ts
function stretchesInside(lines, region) {
  const box = boundsOf(region);
  if (!box) return [];
  const edges = new EdgeIndex(region);
  return lines.flatMap((ring) => {
    const own = boundsOf([ring]);
    const isNear3 = own && own.minX < box.maxX && own.maxX > box.minX && own.minY < box.maxY && own.maxY > box.minY;
    return isNear3 ? runsOf3(ring, edges) : [];
  });
}
function runsOf3(ring, edges) {
  const runs = [];
  let isInside = edges.contains(ring[0]);
  const startsInside = isInside;
  let run2 = isInside ? [ring[0]] : void 0;
  for (const [index, from] of ring.entries()) {
    const to = ring[(index + 1) % ring.length];
    for (const share of crossings2(from, to, edges)) {
      const at2 = { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
      if (isInside) runs.push([...run2, at2]);
      isInside = !isInside;
      run2 = isInside ? [at2] : void 0;
    }
    run2?.push(to);
  }
  if (run2) {
    const [first] = startsInside ? runs : [];
    if (first) runs[0] = [...run2, ...first];
    else runs.push(run2);
  }
  return runs.map(stretchAlong);
}
function crossings2(from, to, edges) {
  const middle2 = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const reach = Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y)) / 2;
  const shares2 = [];
  for (const [a, b] of edges.near(middle2, reach)) {
    const [sideA, sideB] = [side2(from, to, a), side2(from, to, b)];
    if (sideA > 0 === sideB > 0) continue;
    const [sideFrom, sideTo] = [side2(a, b, from), side2(a, b, to)];
    if (sideFrom > 0 === sideTo > 0) continue;
    shares2.push(sideFrom / (sideFrom - sideTo));
  }
  return shares2.sort((p, q) => p - q);
}
function side2(a, b, { x, y }) {
  return (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
}
function stretchAlong(points) {
  const steps2 = points.slice(1).map((to, index) => Math.hypot(to.x - points[index].x, to.y - points[index].y));
  const length = steps2.reduce((sum, step) => sum + step, 0);
  let left = length / 2;
  for (const [index, step] of steps2.entries()) {
    if (step > 0 && left <= step) {
      const [from, to] = [points[index], points[index + 1]];
      const share = left / step;
      return { length, middle: { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) } };
    }
    left -= step;
  }
  return { length, middle: points[0] };
}

// src/checks/overlap.ts
var hairMm = 0.2;
var seenMm2 = 0.5;
var swallowedShare = 0.98;
var toleranceMm3 = 0.01;
var precisionMm = 0.01;
var overlapsOf = remembered(
  (a, b) => doBoxesMeet(a, b) ? beyondAHair(intersection(simply2(a, b), simply2(b, a))) : []
);
function uncovered(region, covers2) {
  return covers2.reduce((rest, cover) => doBoxesMeet(rest, cover) ? less(rest, cover) : rest, region);
}
var less = remembered((region, cover) => difference(region, [cover]));
var beyondAHair = perRegion((region) => {
  const deep = partsOf(region).flatMap((part) => {
    const shared4 = area(part);
    if (shared4 < Math.PI / 4 * hairMm ** 2) return [];
    return isDeep(part, shared4) ? [{ region: part, area: shared4 }] : [];
  });
  return areaOfAll(deep) > seenMm2 ? deep : [];
});
function isDeep(part, areaMm2) {
  if (part.length === 1 && 2 * areaMm2 / perimeter(part) > hairMm) return true;
  const point = poleOf(part, precisionMm);
  return point !== void 0 && 2 * (distanceTo(part, point) + precisionMm / 2) > hairMm;
}
function middleOf2({ region }) {
  return middleIn(region);
}
var middleIn = perRegion((region) => poleOf(region, precisionMm) ?? region[0][0]);
function areaOfAll(overlaps) {
  return overlaps.reduce((sum, overlap2) => sum + overlap2.area, 0);
}
function doBoxesMeet(a, b) {
  const [one, other] = [boxOf(a), boxOf(b)];
  if (!one || !other) return false;
  return one.minX < other.maxX && other.minX < one.maxX && one.minY < other.maxY && other.minY < one.maxY;
}
var boxOf = perRegion((region) => boundsOf(region));
var simplyWithin2 = perRegion(simplified);
function simply2(region, other) {
  return simplyWithin2(region, toleranceMm3).filter((ring) => doBoxesMeet([ring], other));
}

// src/checks/marks-overlap.ts
var seenMm = 1;
var marksOverlap = (tag) => tag.pieces.flatMap((piece) => overlapsOn(piece, tag));
function overlapsOn(piece, { pieces }) {
  const { marks: marks3 } = piece;
  const covers2 = pieces.filter(({ glueTo }) => glueTo === piece.id).map(({ region }) => region);
  return marks3.flatMap(
    (later, index) => marks3.slice(0, index).flatMap((earlier) => {
      const told2 = collisionOf(earlier, later, covers2);
      if (!told2) return [];
      const { point, message, isGrave } = told2;
      const severity = isGrave ? "warning" : "info";
      return [{ code: "marks-overlap", severity, piece: piece.id, path: later.path, points: [point], message }];
    })
  );
}
function collisionOf(earlier, later, covers2) {
  if (later.operation === "engrave") return bothEngraved(earlier, later, covers2);
  if (originOf(earlier.shape) === originOf(later.shape)) return void 0;
  if (earlier.operation === "engrave") return crossed(earlier, later, covers2);
  if (isLettering(earlier.shape)) return crossed(earlier, later, covers2);
  return isLettering(later.shape) ? crossed(later, earlier, covers2) : void 0;
}
function bothEngraved(earlier, later, covers2) {
  const all = overlapsOf(earlier.region, later.region);
  const seen = covers2.length === 0 ? all : all.flatMap(({ region }) => beyondAHair(uncovered(region, covers2)));
  const [largest2, ...others2] = seen.toSorted((a, b) => b.area - a.area);
  if (!largest2) return void 0;
  const point = middleOf2(largest2);
  const [inner, outer] = area(later.region) <= area(earlier.region) ? [later, earlier] : [earlier, later];
  if (areaOfAll(all) > swallowedShare * area(inner.region)) {
    const message2 = `${begun(inner.shape)} lies entirely inside ${named2(outer.shape)}: dark on dark, it will not be seen.`;
    return { point, message: message2, isGrave: true };
  }
  const figures2 = `${mm2(areaOfAll(seen), 1)}${others2.length > 0 ? ` in ${others2.length + 1} places` : ""}`;
  const message = `${begun(later.shape)} lies over ${named2(earlier.shape)} (${figures2}): engraved together, they merge.`;
  return { point, message, isGrave: isLettering(earlier.shape) || isLettering(later.shape) };
}
function crossed(under, line, covers2) {
  const within2 = linesWithin(line.region, under.region);
  if (lengthOf4(within2) <= seenMm) return void 0;
  const seen = covers2.length === 0 ? within2 : runsInside(line.region, uncovered(deepOf(under.region), covers2));
  const length = lengthOf4(seen);
  if (length <= seenMm) return void 0;
  const longest2 = seen.reduce((a, b) => b.length > a.length ? b : a);
  const figures2 = `${mm(length, 1)}${seen.length > 1 ? ` in ${seen.length} places` : ""}`;
  const what = under.operation === "engrave" ? "the engraving of" : "the letters of";
  const message = `The score line of ${named2(line.shape)} runs through ${what} ${named2(under.shape)} (${figures2}).`;
  return { point: longest2.middle, message, isGrave: true };
}
var lengthOf4 = (stretches) => stretches.reduce((sum, { length }) => sum + length, 0);
var linesWithin = remembered(
  (line, under) => doBoxesMeet(line, under) ? runsInside(line, deepOf(under)) : []
);
var runsInside = remembered(stretchesInside);
var thinnedBy = perRegion((region, hair) => offset(region, -hair / 2));
var deepOf = (region) => thinnedBy(region, hairMm);
var named2 = (shape) => calledOf(shape) ?? "another mark";
var begun = (shape) => calledOf(shape) ?? "This mark";

// src/checks/not-measured.ts
var nearLimit = 1.3;
var notMeasured = (tag) => {
  const { name } = tag.stock;
  if (name === void 0) return [];
  const told2 = kerf(tag, name) ?? web(tag, name) ?? lettering(tag, name);
  return told2 === void 0 ? [] : [{ code: "not-measured", severity: "info", path: ["stock"], ...told2 }];
};
function kerf({ stock, output }, name) {
  if (stock.says?.kerf !== false || !output.compensate) return void 0;
  return {
    message: `\u201C${name}\u201D has no kerf yet: parts come out smaller, and holes larger, by what the beam removes. Cut a kerf test to find it.`
  };
}
var narrowOf2 = perRegion((region, width) => findNarrow(region, width).necks);
function web({ stock, pieces }, name) {
  if (stock.says?.minWeb !== false) return void 0;
  const { minWeb } = stock;
  const necks = pieces.filter(({ glueTo }) => glueTo === void 0).flatMap((piece2) => narrowOf2(piece2.region, nearLimit * minWeb).map((neck3) => ({ piece: piece2, neck: neck3 })));
  const [first] = necks.sort((a, b) => a.neck.width - b.neck.width);
  if (!first || first.neck.width < minWeb) return void 0;
  const { piece, neck: neck2 } = first;
  return {
    piece: piece.id,
    points: neck2.ends,
    width: neck2.width,
    message: `The narrowest place is ${mm(neck2.width)}; the minimum of ${mm(minWeb)} for \u201C${name}\u201D is only a default. Cut a web comb to find your own.`
  };
}
function lettering(tag, name) {
  if (tag.stock.minXHeight !== void 0) return void 0;
  const height = Math.min(...engravedHeights(tag));
  if (height < usualXHeightMm || height > nearLimit * usualXHeightMm) return void 0;
  return {
    message: `Engraved letters are ${mm(height)} high; the minimum of ${mm(usualXHeightMm)} for \u201C${name}\u201D is only a default. Cut an engraving ladder to find your own.`
  };
}

// src/checks/bearing.ts
var toleranceMm4 = 5e-3;
var bearingsOf = remembered((glued, carrier) => {
  const edges = new EdgeIndex(carrier);
  const holes = carrier.filter((ring) => ringArea(ring) < 0);
  let outline;
  return partsOf(glued).map((part) => {
    const at2 = part[0][0];
    const liesWithin = edges.contains(at2) && !part.some((ring) => isCrossed(ring, edges));
    if (liesWithin && !holes.some((hole) => doBoxesMeet([hole], part)))
      return { part, share: 1, isWithin: true, overhang: 0, at: at2 };
    outline ??= normalise(carrier.filter((ring) => ringArea(ring) > 0));
    return measured(simplified(part, toleranceMm4), part, carrier, outline);
  });
});
function measured(simple, part, carrier, outline) {
  const share = area(intersection(simple, carrier)) / area(simple);
  const beyond4 = difference(simple, [outline]);
  let overhang = 0;
  let at2 = part[0][0];
  for (const point of beyond4.flatMap((ring) => along(ring, 0))) {
    const distance5 = distanceTo(outline, point);
    if (distance5 <= overhang) continue;
    overhang = distance5;
    at2 = point;
  }
  return { part, share, isWithin: area(beyond4) < 0.5 * area(simple), overhang, at: at2 };
}

// src/checks/layers.ts
function areLevel(a, b, pieces) {
  const [underA, underB] = [below(a, pieces), below(b, pieces)];
  return underA.length > 0 && underA.length === underB.length && underA.at(-1) === underB.at(-1);
}

// src/checks/off-backing.ts
var seenMm3 = 0.3;
var heldShare = 0.05;
var offBacking = (tag) => tag.pieces.flatMap((piece) => offBackingOf(piece, tag));
function offBackingOf(piece, { pieces }) {
  const carrier = pieces.find(({ id }) => id === piece.glueTo);
  if (!carrier) return [];
  let bearings = bearingsOf(piece.region, carrier.region);
  if (bearings.some((bearing) => isUnheld(bearing) || overhangs(bearing))) {
    const others2 = pieces.filter((other) => other !== carrier && areLevel(other, carrier, pieces));
    if (others2.length > 0) bearings = bearingsOf(piece.region, union([carrier, ...others2].map(({ region }) => region)));
  }
  const unheld = bearings.filter(isUnheld);
  const over = bearings.filter((bearing) => !isUnheld(bearing) && overhangs(bearing));
  const names = { piece, carrier, all: bearings };
  return [
    ...unheld.length > 0 ? [finding2(piece, "error", middleOf3(unheld[0]), unheldMessage(unheld, names))] : [],
    ...over.length > 0 ? [overhanging(over, names)] : []
  ];
}
var isUnheld = ({ share }) => share < heldShare;
var overhangs = ({ overhang }) => overhang > seenMm3;
function finding2(piece, severity, point, message, width) {
  const at2 = width === void 0 ? {} : { width };
  return { code: "off-backing", severity, piece: piece.id, path: blame(piece, point), points: [point], ...at2, message };
}
function unheldMessage(unheld, names) {
  const { carrier, piece, all } = names;
  const [largest2] = unheld;
  const nothing = "there is nothing to glue them to";
  if (unheld.length === all.length && all.length > 1)
    return all.length === 2 ? `Neither part of \u201C${piece.title}\u201D lies on \u201C${carrier.title}\u201D: ${nothing}.` : `None of the ${all.length} parts of \u201C${piece.title}\u201D lies on \u201C${carrier.title}\u201D: ${nothing}.`;
  if (unheld.length > 1) {
    const numbers2 = unheld.map((each) => numberOf(each, all)).sort((a, b) => a - b);
    return `${unheld.length} of the ${all.length} parts of \u201C${piece.title}\u201D (from the left: ${listed(numbers2)}) do not lie on \u201C${carrier.title}\u201D: ${nothing}.`;
  }
  const { part, share, isWithin } = largest2;
  const on = share * area(part);
  const what = begun2(largest2, names);
  if (on >= 0.05) return `${what} has only ${mm2(on, 1)} on \u201C${carrier.title}\u201D: too little to glue.`;
  return `${what} lies ${isWithin ? "over an opening of" : "beside"} \u201C${carrier.title}\u201D: there is nothing to glue it to.`;
}
function overhanging(over, names) {
  const { carrier, piece, all } = names;
  const farthest = over.reduce((a, b) => b.overhang > a.overhang ? b : a);
  const { overhang, at: at2 } = farthest;
  const message = over.length === 1 ? `${begun2(farthest, names)} overhangs \u201C${carrier.title}\u201D by ${mm(overhang)}.` : `${partsOf2(over, names)} overhang \u201C${carrier.title}\u201D, by up to ${mm(overhang)} (part ${numberOf(farthest, all)} from the left).`;
  return finding2(piece, "warning", at2, message, overhang);
}
function begun2(bearing, { piece, all }) {
  return all.length === 1 ? `\u201C${piece.title}\u201D` : `The ${ordinal(numberOf(bearing, all), all.length)} part of \u201C${piece.title}\u201D${inTheMiddle(bearing, all)}`;
}
function inTheMiddle(bearing, all) {
  const number = numberOf(bearing, all);
  return number === 1 || number === all.length ? "" : ", from the left,";
}
function ordinal(number, of) {
  if (of === 2) return number === 1 ? "left" : "right";
  if (number === of) return "last";
  if (number === 1) return "first";
  const ends = { 1: "st", 2: "nd", 3: "rd" };
  const isTeen = number % 100 > 10 && number % 100 < 14;
  return `${number}${(isTeen ? void 0 : ends[number % 10]) ?? "th"}`;
}
function partsOf2(over, { piece, all }) {
  if (over.length < all.length) return `${over.length} of the ${all.length} parts of \u201C${piece.title}\u201D`;
  return all.length === 2 ? `Both parts of \u201C${piece.title}\u201D` : `All ${all.length} parts of \u201C${piece.title}\u201D`;
}
function numberOf(bearing, all) {
  const leftOf2 = ({ part }) => boundsOf(part).minX;
  return all.toSorted((a, b) => leftOf2(a) - leftOf2(b)).indexOf(bearing) + 1;
}
var mostNamed = 5;
function listed(numbers2) {
  const named3 = numbers2.slice(0, mostNamed).join(", ");
  return numbers2.length > mostNamed ? `${named3} \u2026` : named3;
}
function middleOf3({ part }) {
  return boxCentre(boundsOf(part));
}

// src/checks/off-centre.ts
var seenMm4 = 0.5;
var seenShare = 0.02;
var offCentre = ({ made }) => [...made].flatMap(([shape, solid]) => visiblyOff(shape, solid, made));
function visiblyOff({ modifiers, path }, solid, made) {
  const { place } = modifiers;
  if (place?.by !== "box" || place.at !== "center" || modifiers.nudge) return [];
  const target = made.get(place.shape);
  const region = place.part === void 0 ? target?.region : target?.parts?.get(place.part);
  const box = region && boundsOf(region);
  const goal = region && centreOf({ region }, "eye");
  const seen = centreOf(solid, "eye");
  if (!box || !goal || !seen) return [];
  const least = Math.max(seenMm4, seenShare * Math.min(box.maxX - box.minX, box.maxY - box.minY));
  const across2 = seen.x - goal.x;
  const up = seen.y - goal.y;
  const off = [
    ...Math.abs(across2) < least ? [] : [`${mm(Math.abs(across2))} too far ${across2 < 0 ? "left" : "right"}`],
    ...Math.abs(up) < least ? [] : [`${mm(Math.abs(up))} too ${up < 0 ? "low" : "high"}`]
  ];
  if (off.length === 0) return [];
  return [
    {
      code: "off-centre",
      severity: "info",
      path: [...path, "place"],
      points: [seen],
      message: `Centred by its box, this looks ${off.join(" and ")}; \u201Cby: eye\u201D corrects it.`
    }
  ];
}

// src/checks/hidden-below.ts
var mostlyShare = 2 / 3;
function hiddenMarks(piece, under, made) {
  return under.marks.flatMap((mark) => {
    if (isMadeFromSame(mark.shape, piece, made)) return [];
    const overlaps = overlapsOf(mark.region, piece.region);
    const [largest2] = overlaps;
    if (!largest2) return [];
    const share = areaOfAll(overlaps) / area(mark.region);
    const isWhole = share > swallowedShare;
    const letters = isLettering(mark.shape);
    const what = `${calledOf(mark.shape) ?? "a mark"} on \u201C${under.title}\u201D`;
    if (isWhole && !letters) return [];
    if (isWhole) {
      const message = `\u201C${piece.title}\u201D covers all of ${what}. For an assembly mark, that is fine.`;
      return [{ isGrave: false, point: middleOf2(largest2), message }];
    }
    const isOrnament = share <= mostlyShare || mark.operation === "score" || goesRound(mark.region, piece.region);
    if (!letters && isOrnament) return [];
    const percent = Math.round(100 * share);
    return [{ isGrave: true, point: middleOf2(largest2), message: `\u201C${piece.title}\u201D covers ${percent} % of ${what}.` }];
  });
}
var goesRound = remembered((mark, piece) => {
  const outers = mark.filter((ring) => ringArea(ring) > 0);
  return difference(piece, [outers]).length === 0;
});
function hiddenOpenings(piece, under) {
  const found = openingsOf(under.region).filter((opening) => !under.hangers.some(({ centre }) => contains(opening, centre))).filter((opening, _, all) => !isOfPattern(opening, all)).map((opening) => covered2(opening, piece.region)).filter((each) => each !== void 0);
  const whole2 = found.filter(({ isWhole }) => isWhole);
  const partly = found.filter(({ isWhole }) => !isWhole);
  return [...told(partly, `\u201C${piece.title}\u201D reaches into`, under), ...told(whole2, `\u201C${piece.title}\u201D covers`, under)];
}
var patternCount = 6;
var patternSlack = 0.1;
function isOfPattern(opening, all) {
  const size = area(opening);
  return all.filter((other) => Math.abs(area(other) - size) < patternSlack * size).length >= patternCount;
}
function told(found, words3, under) {
  if (found.length === 0) return [];
  const largest2 = found.reduce((a, b) => b.area > a.area ? b : a);
  const what = found.length === 1 ? "an opening" : `${found.length} openings`;
  const most4 = found.length === 1 ? "" : "up to ";
  const message = `${words3} ${what} of \u201C${under.title}\u201D (${most4}${mm2(largest2.area, 1)}).`;
  return [{ isGrave: true, point: largest2.point, message }];
}
var covered2 = remembered((opening, piece) => {
  const overlaps = overlapsOf(opening, piece);
  const [largest2] = overlaps;
  if (!largest2) return void 0;
  const edge = along(opening[0], 0.5);
  const isOnEdge = (point) => contains(piece, point);
  if (!edge.some(isOnEdge)) return void 0;
  const isWhole = areaOfAll(overlaps) > swallowedShare * area(opening);
  if (!isWhole && (edge.every(isOnEdge) || isSpanned(opening, piece))) return void 0;
  return { isWhole, area: areaOfAll(overlaps), point: middleOf2(largest2) };
});
function isSpanned(opening, piece) {
  const across2 = partsOf(piece).filter((part) => overlapsOf(opening, part).length > 0);
  return area(opening) > area(across2.flat()) && beyondAHair(difference(opening, [piece])).length > 1;
}
var openingsOf = perRegion(
  (region) => region.filter((ring) => ringArea(ring) < 0).map((ring) => [[...ring].reverse()])
);

// src/checks/pieces-overlap.ts
var piecesOverlap = (tag) => tag.pieces.flatMap((piece, index) => [...collisions(piece, index, tag), ...hidings(piece, tag)]);
function collisions(piece, index, { pieces }) {
  return pieces.slice(0, index).flatMap((other) => {
    if (!areLevel(piece, other, pieces)) return [];
    const overlaps = overlapsOf(other.region, piece.region);
    const [largest2] = overlaps;
    if (!largest2) return [];
    const where2 = overlaps.length > 1 ? ` in ${overlaps.length} places` : "";
    const message = `\u201C${piece.title}\u201D and \u201C${other.title}\u201D are in the same layer and overlap (${mm2(areaOfAll(overlaps), 1)}${where2}): they cannot both lie flat.`;
    return [finding3(piece, "error", middleOf2(largest2), message)];
  });
}
function hidings(piece, { pieces, made }) {
  return below(piece, pieces).flatMap(
    (under) => [...hiddenMarks(piece, under, made), ...hiddenOpenings(piece, under)].map(
      ({ isGrave, point, message }) => finding3(piece, isGrave ? "warning" : "info", point, message)
    )
  );
}
function finding3(piece, severity, point, message) {
  return { code: "pieces-overlap", severity, piece: piece.id, path: blame(piece, point), points: [point], message };
}

// src/checks/beyond.ts
var meantMm = 1;
var hiddenMm = 0.1;
var reachMm = 1.25 * meantMm;
var hiddenReachMm = 1.25 * hiddenMm;
var onLineMm2 = 1e-3;
var toleranceMm5 = 2e-3;
var distancesBeyond = remembered((score, on) => {
  const outline = simplified(on, toleranceMm5);
  const edges = new EdgeIndex(outline);
  return score.map((ring) => {
    let previous;
    return along(simplified([ring], toleranceMm5)[0] ?? ring, 0).map((point) => {
      let distance5 = distanceWithin(hiddenReachMm, edges, point);
      if (distance5 < onLineMm2) {
        previous = void 0;
        return { point, beyond: 0 };
      }
      const isInside = previous ? previous.isInside !== isCrossed2(edges, previous.point, point) : contains(outline, point);
      previous = { point, isInside };
      if (isInside) return { point, beyond: -distance5 };
      if (distance5 === hiddenReachMm) distance5 = distanceWithin(reachMm, edges, point);
      return { point, beyond: distance5 };
    });
  });
});
function distanceWithin(reach, edges, point) {
  return edges.near(point, reach).reduce((least, [from, to]) => Math.min(least, distanceToSegment(point, from, to)), reach);
}
function isCrossed2(edges, from, to) {
  const middle2 = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const reach = Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y)) / 2;
  return edges.near(middle2, reach).filter(([a, b]) => {
    if (leftOf(from, to, a) === leftOf(from, to, b)) return false;
    return leftOf(a, b, from) !== leftOf(a, b, to);
  }).length % 2 === 1;
}
function leftOf(from, to, { x, y }) {
  return (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x) > 0;
}

// src/checks/score-shows.ts
var scoreShows = (tag) => tag.pieces.flatMap((piece) => shownScores(piece, tag));
function shownScores(piece, { pieces, made }) {
  const glued = pieces.filter(({ glueTo }) => glueTo === piece.id);
  const scores = piece.marks.filter(({ operation }) => operation === "score");
  if (glued.length === 0) return [];
  return scores.flatMap((mark) => {
    const shown3 = farthestShown(mark, glued, made);
    return shown3 ? [finding4(mark, piece, shown3)] : [];
  });
}
function finding4({ path }, piece, { point, beyond: beyond4, on }) {
  const far = beyond4 > meantMm;
  let told2 = "runs right along the edge of";
  if (far) told2 = `runs more than ${mm(meantMm)} outside`;
  else if (beyond4 > 0.01) told2 = `runs up to ${mm(beyond4)} outside`;
  return {
    code: "score-shows",
    severity: "warning",
    piece: piece.id,
    path,
    points: [point],
    ...far ? {} : { width: Math.max(beyond4, 0) },
    message: `This score line ${told2} \u201C${on.title}\u201D, which is glued over it, and will show. Move it half a millimetre inside to hide it.`
  };
}
function farthestShown({ region, shape }, glued, made) {
  const relations = glued.map((on) => ({ on, lines: distancesBeyond(region, on.region) }));
  const touching2 = region.flatMap((ring, index) => {
    const line = relations[0].lines[index].map(({ point }, at2) => {
      const all = relations.map(({ on, lines }) => ({ point, beyond: lines[index][at2].beyond, on }));
      return all.reduce((a, b) => b.beyond < a.beyond ? b : a);
    });
    const farthest2 = line.reduce(farther);
    const crosses2 = line.some(({ beyond: beyond4 }) => beyond4 <= 0);
    return crosses2 || farthest2.beyond <= meantMm && surrounds2(ring, glued) ? [farthest2] : [];
  });
  if (touching2.length === 0) return void 0;
  const farthest = touching2.reduce(farther);
  if (farthest.beyond <= -hiddenMm) return void 0;
  const isMeant = farthest.beyond <= meantMm || glued.some((on) => isCopy(shape, on, made));
  return isMeant ? farthest : void 0;
}
var farther = (a, b) => b.beyond > a.beyond ? b : a;
function surrounds2(line, glued) {
  return glued.some(({ region }) => region.some(([corner]) => contains([line], corner)));
}
function isCopy(drawn, piece, made) {
  return !drawn.modifiers.nudge && isMadeFromSame(drawn, piece, made);
}

// src/checks/sharp-point.ts
var thinMm = 0.8;
var thinKerfs = 4;
var longMm = 2.5;
var sharpPoints = ({ pieces, stock }) => pieces.flatMap((piece) => piece.glueTo === void 0 ? sharpPointsOf(piece, stock) : []);
function sharpPointsOf(piece, stock) {
  const { kerf: kerf2, minWeb } = stock;
  const thin = Math.min(Math.max(thinMm, thinKerfs * kerf2), minWeb);
  const points = tipsOf(piece, stock).map((tip) => ({ at: tip.at, length: lengthBelow(tip, thin) })).filter(({ length }) => length > longMm).sort((a, b) => b.length - a.length);
  if (points.length === 0) return [];
  const strokes = thinPlaces(piece, stock, "elsewhere").filter(({ kind }) => kind === "stroke");
  const thinShapes = new Set(byCause(piece, strokes, ({ ends }) => ends).map(({ path }) => path.join("/")));
  return byCause(piece, points, ({ at: at2 }) => [at2]).filter(({ path }) => !thinShapes.has(path.join("/"))).map(({ path, found }) => {
    const [longest2] = found;
    const length = mm(longest2.length, 1);
    const message = found.length === 1 ? `This point is thinner than ${mm(thin)} over its last ${length}: it burns away or breaks off, and it pricks.` : `${found.length} points are thinner than ${mm(thin)} over up to ${length}: they burn away or break off, and they prick.`;
    return { code: "sharp-point", severity: "warning", piece: piece.id, path, points: [longest2.at], message };
  });
}
var longestStep = 1.2;
function lengthBelow({ widths }, thin) {
  let last = { before: 0, width: 0 };
  for (const at2 of widths) {
    if (at2.width >= thin)
      return last.before + (thin - last.width) / (at2.width - last.width) * (at2.before - last.before);
    last = at2;
  }
  return last.before * Math.min(thin / last.width, longestStep);
}

// src/checks/shoulder-shows.ts
var seenMm22 = 0.05;
var shoulderShows = ({ made }) => [...made].flatMap(
  ([shape, { shoulders }]) => (
    // A copy has the shoulders of its stack, which has told them.
    shape.generator.kind === "stack" && shoulders ? shoulders.flatMap((shoulder) => shown(shoulder, shape)) : []
  )
);
function shown({ name, region, hidingLap: hidingLap2 }, { path }) {
  const [largest2] = partsOf(region);
  if (!largest2 || area(largest2) < seenMm22) return [];
  const remedy = hidingLap2 === void 0 ? "no lap hides them; make one of the two wider, or its corners sharper" : `a lap of ${mm(hidingLap2)} hides them`;
  return [
    {
      code: "shoulder-shows",
      severity: "warning",
      path: [...path, "stack"],
      points: [innerPoint(largest2[0])],
      ...hidingLap2 === void 0 ? {} : { width: hidingLap2 },
      message: `Corners poke out where \u201C${name}\u201D joins the shape before it; ${remedy}.`
    }
  ];
}

// src/checks/letter-at.ts
var reachMm2 = 2;
function letterAt({ sources: sources2 }, ends) {
  const at2 = {
    x: ends.reduce((sum, { x }) => sum + x, 0) / ends.length,
    y: ends.reduce((sum, { y }) => sum + y, 0) / ends.length
  };
  let nearest4;
  let least = reachMm2;
  for (const { letters } of sources2.flatMap(({ lettering: lettering3 = [] }) => lettering3)) {
    if (letters.length < 2) continue;
    for (const letter of letters) {
      const { minX, minY, maxX, maxY } = boundsOf(letter.region);
      if (at2.x < minX - least || at2.x > maxX + least || at2.y < minY - least || at2.y > maxY + least) continue;
      const distance5 = contains(letter.region, at2) ? 0 : distanceTo(letter.region, at2);
      if (distance5 >= least) continue;
      least = distance5;
      nearest4 = letter;
    }
  }
  return nearest4 ? ` at \u201C${nearest4.text}\u201D` : "";
}

// src/checks/thin-stroke.ts
var thinStrokes = ({ pieces, stock }) => pieces.flatMap((piece) => {
  const strokes = thinPlaces(piece, stock, "elsewhere").filter(({ kind }) => kind === "stroke");
  return byMinimum(strokes).flatMap((alike2) => thinStrokesOf(piece, alike2, stock));
});
function thinStrokesOf(piece, strokes, stock) {
  return byCause(piece, strokes, ({ ends }) => ends).map(({ path, found }) => {
    const { minimum } = found[0];
    return {
      code: "thin-stroke",
      severity: "warning",
      piece: piece.id,
      path,
      ...seenAt(found.map(placeOf2)),
      minimum,
      message: messageOf4(found, piece, stock)
    };
  });
}
function messageOf4(necks, piece, stock) {
  const { width, ends, minimum } = necks[0];
  const length = mm(
    necks.reduce((sum, neck2) => sum + neck2.length, 0),
    0
  );
  const narrowest2 = `${mm(width)} at the narrowest${letterAt(piece, ends)}`;
  return necks.length === 1 ? `Thin stroke: ${length} long and ${narrowest2}; ${atLeast(minimum, stock)}.` : `Thin strokes: ${necks.length} of them, ${length} in all and ${narrowest2}; ${atLeast(minimum, stock)}.`;
}

// src/checks/exceeds-sheet.ts
var slackMm6 = 0.01;
var playMm = 0.05;
var exceedsSheet = ({ sheet, stock, pieces }) => {
  if (!sheet) return [];
  const room = { width: sheet.width - 2 * sheet.margin, height: sheet.height - 2 * sheet.margin };
  const free = { width: room.width - stock.kerf + slackMm6, height: room.height - stock.kerf + slackMm6 };
  return pieces.flatMap(({ id, title, region, path }) => {
    const box = boundsOf(region);
    if (!box || fits(region, box, free)) return [];
    const takes = sizeOf({ width: box.maxX - box.minX + stock.kerf, height: box.maxY - box.minY + stock.kerf });
    return [
      {
        code: "exceeds-sheet",
        severity: "error",
        piece: id,
        path,
        message: `\u201C${title}\u201D does not fit the sheet in any rotation: ${stock.kerf > 0 ? "with the kerf it" : "it"} needs ${takes}, and there is room for ${sizeOf(room)}.`
      }
    ];
  });
};
function sizeOf({ width, height }) {
  return mmByMm(width, height);
}
function fits(region, box, free) {
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  if (width <= free.width && height <= free.height) return true;
  if (height <= free.width && width <= free.height) return true;
  return fitsTurned(region, free);
}
function fitsTurned(region, free) {
  const known3 = turned.get(region);
  if (known3?.width === free.width && known3.height === free.height) return known3.fits;
  const box = boundsOf(region);
  const reach = Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
  const hull = hullOf(region);
  const result = fitsFlush(hull, free) || fitsWithin(hull, free, reach, 0, Math.PI);
  turned.set(region, { ...free, fits: result });
  return result;
}
var turned = /* @__PURE__ */ new WeakMap();
function fitsFlush(hull, free) {
  return hull.some((from, index) => {
    const to = hull[(index + 1) % hull.length];
    const angle = Math.atan2(to.y - from.y, to.x - from.x);
    return missingAt(hull, free, angle) <= 0 || missingAt(hull, free, angle + Math.PI / 2) <= 0;
  });
}
function fitsWithin(points, free, reach, from, to) {
  const middle2 = (from + to) / 2;
  const missing2 = missingAt(points, free, middle2);
  if (missing2 <= 0) return true;
  const change = reach * (to - from) / 2;
  if (missing2 > change || change < playMm) return false;
  return fitsWithin(points, free, reach, from, middle2) || fitsWithin(points, free, reach, middle2, to);
}
function missingAt(points, free, angle) {
  return Math.max(span2(points, angle) - free.width, span2(points, angle + Math.PI / 2) - free.height);
}
function span2(points, angle) {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  let low = Infinity;
  let high = -Infinity;
  for (const { x, y } of points) {
    const along2 = x * cos + y * sin;
    if (along2 < low) low = along2;
    if (along2 > high) high = along2;
  }
  return high - low;
}
function hullOf(region) {
  const points = region.flat().sort((a, b) => a.x - b.x || a.y - b.y);
  return [...chain2(points), ...chain2(points.reverse())];
}
function chain2(points) {
  const kept = [];
  for (const point of points) {
    while (kept.length > 1 && !turnsLeft(kept.at(-2), kept.at(-1), point)) kept.pop();
    kept.push(point);
  }
  return kept;
}
function turnsLeft(a, b, c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) > 0;
}

// src/checks/unsafe-words.ts
var unsafe = (why, ...names) => ({ words: whole(names.join("|")), why });
function whole(words3, flags = "u") {
  return new RegExp(`(?<!\\p{L})(${words3})(?!\\p{L})`, flags);
}
var unsafeMaterials = [
  unsafe(
    "is PVC or polyurethane more often than not: cutting it gives off hydrogen chloride or hydrogen cyanide, which harm lungs and machine",
    "(faux|artificial|imitation|synthetic|fake|vegan|pu) leather|leatherette|leather imitation|pleather",
    "kunstleder|lederimitat|simili ?cuir|cuir (synth\xE9tique|artificiel|v\xE9gan)|faux cuir",
    "cuero (sint\xE9tico|artificial|vegano)|polipiel|similpelle|ecopelle|finta pelle|kunstleer|nepleer|imitatieleer|couro sint\xE9tico"
  ),
  unsafe(
    "is or may be PVC or another halogenated plastic: cutting it gives off hydrogen chloride, which harms lungs and machine",
    "u ?pvc|c?pvc|pvdc|poly ?vinyl ?chloride|(poly ?)?vinyl(?! (acetate|alcohol))|chlorinated|chloride|halogenated",
    "(poly ?)?chloropren(e|o)?|neopren(e|o)?|n\xE9opr\xE8ne|polychloropr\xE8ne|chloropren ?kautschuk",
    "polyvinylchlorid[e]?|vinylfolie|polychlorure de vinyle|chlorure de polyvinyle|vinyle",
    "(poli)?cloruro de (poli)?vinilo|vinilo|cloruro di polivinile|polivinilcloruro|vinile|policloreto de vinil[ao]"
  ),
  unsafe(
    "gives off poisonous fluorine compounds",
    "ptfe|pvdf|etfe|fep|polytetrafluoro?ethylene?|fluoropolymers?|teflon",
    "polyt\xE9trafluoro\xE9thyl\xE8ne|politetrafluoroetilen[oe]|fluorpolymere?|fluoropolym(\xE8re|ero)s?"
  ),
  unsafe(
    "burns and chars instead of cutting, with harmful smoke",
    "poly ?carbonates?|polycarbonaat|polycarbonat|policarbonato|lexan|makrolon"
  ),
  unsafe(
    "melts, catches fire easily and gives off hydrogen cyanide",
    "abs|acrylonitrile butadi(e|\xE8)ne st(y|yr|i)r?(e|\xE8)ne|acrylnitril butadien styrol",
    "acrilonitrilo butadieno estireno|acrilonitrile butadiene stirene|acrylonitril butadieen styreen"
  ),
  unsafe(
    "gives off hydrogen cyanide and isocyanates, which harm the lungs",
    "polyurethanes?(?! (varnish|lacquer|finish|sealer))|polyurethan|polyurethaan|polyur\xE9thane|poliuretano|pu (foam|schaum)|tpu"
  ),
  unsafe(
    "catches fire at once, melts and drips burning",
    "(expanded|extruded) poly ?(styrene|propylene)|poly ?(styrene|propylene) foam|eps|xps|epp|styrofoam|depron|foam ?(core|board)",
    "polystyrol ?(hart ?)?schaum|polypropylen ?schaum|styropor|polystyr\xE8ne (expans\xE9|extrud\xE9)|polypropyl\xE8ne expans\xE9",
    "poliestireno (expandido|extruido)|polipropileno expandido|polistirolo( espanso)?|polistirene espanso|piepschuim"
  ),
  unsafe(
    "melts, catches fire and fouls the bed",
    "hdpe|pe hd|high density polyethylene|polyethylen hoher dichte|poly\xE9thyl\xE8ne haute densit\xE9",
    "polietileno de alta densidad|polietilene ad alta densit\xE0|polyethyleen met hoge dichtheid"
  ),
  unsafe(
    "gives off chromium compounds, which harm lungs and skin",
    "chrom(e|ium) ?(tanned|tan|leather)|chrom(e|ium) tanned leather|chromgegerbt\\p{L}*|chromleder",
    "tann(\xE9|age|\xE9e) au chrome|curtid[oa] al cromo|conciat[oa] al cromo|chroomgelooid"
  ),
  unsafe(
    "gives off harmful dust and fumes",
    "carbon ?fib(er|re)s?|cfrp|cfk|carbonfasern?|kohle(nstoff)?fasern?|fibres? de carbone|fibra d[ei] carbon(o|io)|koolstofvezel"
  ),
  unsafe(
    "gives off harmful fumes from its resin, and glass dust",
    "epoxy|epoxies|fr ?4(?!\\d)|g ?10(?!\\d)|glass ?fib(er|re)s?|fib(er|re) ?glass|gfrp|grp|gfk|pcb|circuit boards?",
    "epoxid(harz)?|\xE9poxy|epoxi|epossidic[ao]|glasfasern?|leiterplatten?|fibres? de verre|fibra de vidrio|fibra di vetro|vetroresina|glasvezel"
  ),
  unsafe(
    "gives off formaldehyde, phenol or hydrogen cyanide from its resin",
    "melamine?|m\xE9lamin(e|\xE9)|melamina|melaminharz|hpl|high pressure laminate|schichtstoff\\p{L}*|hartpapier|bakelite?|formica|resopal",
    "phenolic (laminate|board|sheet|panel|paper|film)|phenol formaldehyde board|stratifi\xE9"
  ),
  unsafe(
    "holds wood preservative: its smoke and dust are poisonous",
    "(pressure|chemically) ?treated|(?<!(heat|thermally|oil) )treated (wood|timber|lumber|pine)|tanali[sz]ed|creosoted?",
    "(kessel)?druckimpr\xE4gniert\\p{L}*|trait\xE9(e|s)? en autoclave|bois trait\xE9|madera tratada|legno trattato|ge\xEFmpregneerd hout"
  ),
  unsafe(
    "may hold lead or other metals, or PVC: do not cut it unless you know the paint",
    "(old|unknown|lead) paint|(?<!(acrylic|based|milk|chalk) )painted (wood|timber|lumber|pine|oak|plywood|mdf|board)(?! (with|in) )",
    "alter anstrich|unbekannte[rn]? (farbe|lack)|peinture (inconnue|ancienne)|pintura desconocida|vernice sconosciuta"
  )
];

// src/checks/unsafe-material.ts
var thing = `${unsafeMaterials.map(({ words: words3 }) => words3.source).join("|")}|\\p{L}+`;
var listed2 = `(${thing})( n?(or|oder|ou|und|and|y|o|e|of|en) (${thing}))*`;
var denied = whole(
  `(${thing}) (free|frei\\p{L}*|vrije?)(?! (of|from|standing))|(no|non|not|without|free (of|from)|ohne|keine?|sans|sin|senza|zonder) (any )?${listed2}`,
  "gu"
);
var unsafeMaterial = ({ stock }) => {
  const why = dangerOf(stock.material ?? "");
  if (why === void 0) return [];
  return [
    {
      code: "unsafe-material",
      severity: "error",
      path: ["stock", "material"],
      message: `Do not laser cut this: \u201C${stock.material}\u201D ${why}. If you are not sure what a sheet is, do not cut it; your machine\u2019s manual and your supplier\u2019s data sheet say more.`
    }
  ];
};
function dangerOf(material) {
  const name = material.normalize("NFKC").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, " ");
  const plain2 = name.replace(denied, " ");
  return unsafeMaterials.find(({ words: words3 }) => words3.test(plain2))?.why;
}

// src/checks/weak-bridge.ts
var weakBridges = ({ pieces, stock }) => pieces.flatMap((piece) => {
  const necks = thinPlaces(piece, stock, "elsewhere").filter(({ kind }) => kind !== "stroke");
  return byMinimum(necks).flatMap((alike2) => weakBridgesOf(piece, alike2, stock));
});
function weakBridgesOf(piece, necks, stock) {
  return byCause(piece, necks, ({ ends }) => ends).map(({ path, found }) => {
    const { minimum } = found[0];
    return {
      code: "weak-bridge",
      severity: "warning",
      piece: piece.id,
      path,
      ...seenAt(found.map(placeOf2)),
      minimum,
      message: found.length === 1 ? oneNeck(found[0], piece, stock) : manyNecks(found, piece, stock)
    };
  });
}
function oneNeck({ kind, width, areas, ends, minimum }, piece, stock) {
  const at2 = letterAt(piece, ends);
  const told2 = kind === "bridge" ? `Weak bridge${at2}: only ${mm(width)} of material joins parts of ${mm2(areas[0])} and ${mm2(areas[1])}` : `Weak wall${at2}: only ${mm(width)} of material between two edges`;
  return `${told2}; ${atLeast(minimum, stock)}.`;
}
function manyNecks(necks, piece, stock) {
  const { width, ends, minimum } = necks[0];
  const bridges = necks.filter(({ kind }) => kind === "bridge").length;
  const counts2 = [counted2(bridges, "bridge"), counted2(necks.length - bridges, "wall")].filter((each) => each !== "");
  const at2 = letterAt(piece, ends);
  return `${counts2.join(" and ")} are narrower than ${theMinimum(minimum, stock)}; the narrowest${at2} is ${mm(width)}.${lettersOf(necks, piece)}`;
}
var mostLocated = 24;
function lettersOf(necks, piece) {
  if (necks.length > mostLocated) return "";
  const counts2 = /* @__PURE__ */ new Map();
  for (const { ends } of necks) {
    const letter = letterAt(piece, ends).replace(" at ", "");
    if (letter !== "") counts2.set(letter, (counts2.get(letter) ?? 0) + 1);
  }
  const told2 = [...counts2].map(([letter, count]) => count > 1 ? `${letter} (${count})` : letter);
  if (told2.length < 2) return "";
  return ` At ${told2.slice(0, -1).join(", ")} and ${told2.at(-1)}.`;
}
function counted2(count, noun) {
  return count === 0 ? "" : `${count} ${noun}${count === 1 ? "" : "s"}`;
}

// src/checks/all.ts
var checks = [
  unsafeMaterial,
  looseParts,
  exceedsSheet,
  weakBridges,
  thinStrokes,
  hangerWeak,
  holeNearEdge,
  holeBlocked,
  holeTooSmall,
  sharpPoints,
  gapCloses,
  specks,
  markOffBody,
  marksOverlap,
  cutOffBody,
  hardToRead,
  fineMarks,
  offBacking,
  piecesOverlap,
  scoreShows,
  shoulderShows,
  offCentre,
  hangsAskew,
  notMeasured
];
async function runChecks(tag, checkpoint) {
  const findings = [];
  for (const check of checks) {
    findings.push(...check(tag));
    await checkpoint();
  }
  return findings;
}

// src/core/issue-kinds.ts
var issueKinds = {
  "yaml-syntax": { about: "text", severity: "error", summary: "The text is not YAML." },
  "file-too-large": { about: "text", severity: "error", summary: "The file is too large for a spec." },
  "not-a-spec": { about: "text", severity: "error", summary: "The text is not a tag spec." },
  "unknown-key": { about: "text", severity: "error", summary: "A key that does not exist." },
  "missing-key": { about: "text", severity: "error", summary: "A required key is missing." },
  "bad-value": { about: "text", severity: "error", summary: "A value that does not fit its key." },
  "bad-length": { about: "text", severity: "error", summary: "A length that cannot be read or used." },
  "unknown-shape": { about: "text", severity: "error", summary: "No shape of that name." },
  "unknown-piece": { about: "text", severity: "error", summary: "No piece of that name." },
  "unknown-hanger": { about: "text", severity: "error", summary: "No hanger of that name." },
  "unknown-name": {
    about: "text",
    severity: "error",
    summary: "No stock, tie or column of that name."
  },
  "name-clash": { about: "text", severity: "error", summary: "Two files define the same name." },
  cycle: { about: "text", severity: "error", summary: "A shape made from itself, or a piece glued on itself." },
  "odd-comment": { about: "making", severity: "info", summary: "An \u201Caccept\u201D comment that has no effect." },
  "bad-file": { about: "resources", severity: "error", summary: "A file that cannot be read or used." },
  "empty-shape": { about: "resources", severity: "error", summary: "Nothing is left of a shape." },
  "unknown-font": { about: "resources", severity: "error", summary: "No font of that name." },
  "bad-font": { about: "resources", severity: "error", summary: "A font that cannot be used." },
  "missing-glyph": { about: "resources", severity: "error", summary: "A letter that the font does not have." },
  "loose-part": { about: "making", severity: "error", summary: "A part is joined to nothing and falls out." },
  "weak-bridge": { about: "making", severity: "warning", summary: "A bridge or wall narrower than min_web." },
  "thin-stroke": { about: "making", severity: "warning", summary: "A long stroke narrower than min_web." },
  "hanger-weak": {
    about: "making",
    severity: "warning",
    summary: "A ring whose joint or wall is narrower than min_web."
  },
  "hole-near-edge": {
    about: "making",
    severity: "warning",
    summary: "A hanger\u2019s hole too close to an edge, or open to it."
  },
  "hole-too-small": { about: "making", severity: "warning", summary: "The tie does not fit through the hole." },
  "hole-blocked": { about: "making", severity: "warning", summary: "Something is in the way of the tie." },
  speck: { about: "making", severity: "warning", summary: "A hole or part so small that it burns out or is lost." },
  "gap-closes": { about: "making", severity: "warning", summary: "A gap narrower than the kerf." },
  "sharp-point": { about: "making", severity: "warning", summary: "A point so thin that it burns away or breaks off." },
  "off-backing": {
    about: "making",
    severity: "warning",
    summary: "A glued piece that overhangs its backing, or touches nothing."
  },
  "pieces-overlap": {
    about: "making",
    severity: "warning",
    summary: "Glued pieces that overlap, or hide something that should be seen."
  },
  "shoulder-shows": { about: "making", severity: "warning", summary: "A corner of a stacked shape pokes out." },
  "score-shows": {
    about: "making",
    severity: "warning",
    summary: "A placement line that the glued piece does not hide."
  },
  "mark-off-body": { about: "making", severity: "warning", summary: "Engraving or scoring that runs off the edge." },
  "marks-overlap": { about: "making", severity: "warning", summary: "Marks on one piece that overlap." },
  "hard-to-read": { about: "making", severity: "warning", summary: "Lettering that will be hard to read." },
  "fine-mark": { about: "making", severity: "info", summary: "Engraved detail finer than the beam can draw." },
  "off-centre": { about: "making", severity: "info", summary: "Centred by the ruler, but not to the eye." },
  "not-drawn": {
    about: "making",
    severity: "warning",
    summary: "Part of a drawing is left out of the shape."
  },
  "cut-off-body": {
    about: "making",
    severity: "warning",
    summary: "A cut that misses the piece or runs off its edge."
  },
  "hangs-askew": { about: "making", severity: "info", summary: "The tag hangs at a different angle than intended." },
  "not-measured": {
    about: "making",
    severity: "info",
    summary: "A stock of the workshop that lacks a measurement this tag relies on."
  },
  "exceeds-sheet": { about: "making", severity: "error", summary: "A piece that does not fit the sheet." },
  "renamed-key": { about: "making", severity: "info", summary: "A key that has a new name." },
  "other-style": { about: "making", severity: "info", summary: "A font that lacks the weight or italic asked for." },
  "font-restricted": {
    about: "making",
    severity: "info",
    summary: "A font marked as not for embedding."
  },
  "unsafe-material": { about: "making", severity: "error", summary: "A material that must not be laser cut." }
};
var issueCodes = Object.keys(issueKinds);
var oldCodes = /* @__PURE__ */ new Map([
  ["too-big", "file-too-large"],
  ["too-large", "exceeds-sheet"]
]);
function currentCode(code) {
  return oldCodes.get(code) ?? code;
}
function isIssueCode(text) {
  return Object.hasOwn(issueKinds, text);
}

// src/core/issue.ts
var severityRank = { info: 0, warning: 1, error: 2 };
function applied(text, edits) {
  const ordered = [...edits].sort((a, b) => b.range.start - a.range.start);
  return ordered.reduce(
    (result, { range, text: insert }) => result.slice(0, range.start) + insert + result.slice(range.end),
    text
  );
}
function inOrder2(issues) {
  return [...issues].sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end);
}

// src/spec/suggest.ts
import { distance as distance2 } from "fastest-levenshtein";
function nearest2(word, known3) {
  const wanted = word.toLowerCase();
  const furthest2 = Math.max(1, Math.floor(wanted.length / 3));
  return known3.map((candidate) => ({ candidate, steps: slips(wanted, candidate.toLowerCase()) })).filter(
    ({ candidate, steps: steps2 }) => steps2 <= furthest2 || wanted.length > 2 && candidate.toLowerCase().startsWith(wanted)
  ).sort((a, b) => a.steps - b.steps || (a.candidate < b.candidate ? -1 : 1)).slice(0, 3).map(({ candidate }) => candidate);
}
function slips(wanted, candidate) {
  for (let at2 = 0; at2 + 1 < wanted.length; at2 += 1) {
    if (wanted.slice(0, at2) + wanted[at2 + 1] + wanted[at2] + wanted.slice(at2 + 2) === candidate) return 1;
  }
  return distance2(wanted, candidate);
}
function didYouMean(suggestions) {
  return suggestions.length === 0 ? "" : ` Did you mean ${suggestions.map((word) => `\u201C${word}\u201D`).join(" or ")}?`;
}

// src/engine/severity.ts
function canBeSilenced(code) {
  return issueKinds[code].about === "making";
}
function judge2(found, source, comments2, severities, complete) {
  const accepted = [];
  const rest = [];
  const used = /* @__PURE__ */ new Set();
  for (const issue of found) {
    const comment = canBeSilenced(issue.code) ? acceptedBy(issue, source, comments2) : void 0;
    if (comment) {
      used.add(useOf(comment, issue.code));
      accepted.push({ ...issue, reason: comment.reason });
    } else rest.push(issue);
  }
  const odd = comments2.flatMap((comment) => oddities(comment, (code) => complete && !used.has(useOf(comment, code))));
  return { issues: inOrder2([...rest, ...odd].flatMap((issue) => weighed(issue, severities))), accepted };
}
function acceptedBy(issue, source, comments2) {
  if (comments2.length === 0) return void 0;
  const lines = [source.range(issue.path).start, source.keyRange(issue.path).start, issue.range.start].map(
    (offset2) => source.position(offset2).line
  );
  return comments2.find(
    ({ codes, reason: reason2, line }) => reason2 !== "" && codes.some(({ code }) => currentCode(code) === issue.code) && lines.includes(source.position(line).line)
  );
}
function useOf({ range }, code) {
  return `${range.start} ${currentCode(code)}`;
}
function oddities({ codes, reason: reason2, range }, isIdle) {
  const odd = (at2, message, extra = {}) => {
    return {
      code: "odd-comment",
      severity: issueKinds["odd-comment"].severity,
      path: [],
      range: at2,
      message,
      ...extra
    };
  };
  const issues = [];
  if (codes.length === 0)
    issues.push(odd(range, "Name the problem to accept, as in \u201C# accept weak-bridge: it lies flat\u201D."));
  for (const { code: written, range: at2 } of codes) {
    const code = currentCode(written);
    if (code !== written) issues.push(odd(at2, `\u201C${written}\u201D is now called \u201C${code}\u201D.`, { suggestions: [code] }));
    if (!isIssueCode(code)) {
      const suggestions = nearest2(code, issueCodes);
      issues.push(odd(at2, `There is no problem called \u201C${code}\u201D.${didYouMean(suggestions)}`, { suggestions }));
    } else if (!canBeSilenced(code))
      issues.push(odd(at2, `\u201C${code}\u201D cannot be accepted: the tag, or part of it, cannot be made.`));
    else if (reason2 !== "" && isIdle(code))
      issues.push(odd(at2, `\u201C${code}\u201D no longer occurs on this line; remove the comment.`));
  }
  if (codes.length > 0 && reason2 === "")
    issues.push(odd(range, "Add a reason after a colon; until then the problem still counts."));
  return issues;
}
function weighed(issue, severities) {
  const severity = severities[issue.code];
  const isGrave = severityRank[issue.severity] > severityRank[issueKinds[issue.code].severity];
  if (severity === void 0 || isGrave && severity !== "error") return [issue];
  if (severity === "off") return canBeSilenced(issue.code) ? [] : [issue];
  return [{ ...issue, severity }];
}

// src/spec/tokens.ts
import { Lexer } from "yaml";
var notInText = /* @__PURE__ */ new Set(["", "", ""]);
var plainFollows = "";
function tokensOf(text) {
  const tokens = [];
  let start = 0;
  let plain2 = false;
  for (const token of new Lexer().lex(text)) {
    if (notInText.has(token)) {
      plain2 = token === plainFollows;
      continue;
    }
    tokens.push({ start, text: token, kind: plain2 ? "plain" : kindOf(token) });
    start += token.length;
    plain2 = false;
  }
  return tokens;
}
function kindOf(token) {
  if (token.startsWith("#")) return "comment";
  if (token.startsWith('"') || token.startsWith("'")) return "quoted";
  return token.trim() === "" ? "space" : "mark";
}

// src/spec/accept-comments.ts
var form = /^#\s*accept(?=[\s:,]|$)([^:]*)(?::\s*(.*))?$/;
function acceptComments(text) {
  if (!/#\s*accept/.test(text)) return [];
  return tokensOf(text).flatMap(({ start, text: comment, kind }) => {
    const match = kind === "comment" ? form.exec(comment) : null;
    if (!match) return [];
    const [, listed4 = "", reason2 = ""] = match;
    const listedAt = start + comment.indexOf(listed4, comment.indexOf("accept") + "accept".length);
    const codes = [...listed4.matchAll(/[^\s,]+/g)].map(({ 0: code, index }) => {
      return { code, range: { start: listedAt + index, end: listedAt + index + code.length } };
    });
    const range = { start, end: start + comment.length };
    return [{ range, codes, reason: reason2.trim(), line: lineSpokenOf(text, start) }];
  });
}
function lineSpokenOf(text, comment) {
  const lineStart = text.lastIndexOf("\n", comment - 1) + 1;
  if (text.slice(lineStart, comment).trim() !== "") return lineStart;
  let at2 = text.indexOf("\n", comment) + 1;
  while (at2 > 0) {
    const end = text.indexOf("\n", at2);
    const line = text.slice(at2, end < 0 ? void 0 : end).trim();
    if (line !== "" && !line.startsWith("#")) return at2;
    if (end < 0) break;
    at2 = end + 1;
  }
  return text.length;
}

// src/core/values.ts
function isGroup(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
function valueAt(root, path) {
  return path.reduce((value, step) => {
    return typeof value === "object" && value !== null && Object.hasOwn(value, step) ? value[step] : void 0;
  }, root);
}

// src/spec/batch.ts
var nameColumn = "name";
var marks = /\{\{|\}\}|\{([^{}]*)\}/g;
function filled(text, { cells }, tellMissing) {
  const missing2 = [];
  const whole2 = text.replace(marks, (mark, asked) => {
    if (asked === void 0) return mark.charAt(0);
    const column = asked.trim();
    const cell = cells.get(column);
    if (cell === void 0) missing2.push(column);
    return cell ?? mark;
  });
  for (const column of missing2) tellMissing(column);
  return missing2.length === 0 ? whole2 : void 0;
}

// src/spec/read-batch.ts
var mostRows = 500;
function readBatch({ batch: spec, title = "" }, table, problems) {
  if (spec === void 0) return void 0;
  const rows = typeof spec === "string" ? rowsOfTable(table) : rowsOfList(spec, problems.source);
  if (rows.length > mostRows) {
    problems.error("bad-value", ["batch"], `A batch has at most ${mostRows} rows; this one has ${rows.length}.`);
    return void 0;
  }
  const columns3 = new Set(rows.flatMap(({ cells }) => [...cells.keys()]));
  return rows.length === 0 ? void 0 : { columns: [...columns3], title: titleOfAll(title, rows), rows };
}
function rowsOfTable(table) {
  return (table?.rows ?? []).map(({ cells, line }, index) => ({
    label: cells[0] || `row ${index + 1}`,
    cells: new Map(table.header.map((column, at2) => [column, cells[at2]])),
    path: ["batch"],
    line
  }));
}
function rowsOfList(list, source) {
  return [...list].flatMap((row2, index) => {
    if (row2 === void 0) return [];
    const path = ["batch", index];
    const written = typeof row2 === "object" ? Object.entries(row2).map(([column, cell]) => ({ column, cell, at: [...path, column] })) : [{ column: nameColumn, cell: row2, at: path }];
    const cells = new Map(written.map(({ column, cell, at: at2 }) => [column, textOf(cell, at2, source)]));
    const [first] = cells.values();
    return [{ label: first?.trim() || `row ${index + 1}`, cells, path }];
  });
}
function textOf(cell, path, source) {
  return typeof cell === "string" ? cell : source.written?.(path) ?? String(cell);
}
var aside = /\s*\((?<!\{)\{[^{}]*\}\)|(?:\s*[,;:·]|\s+[–—-])\s*(?<!\{)\{[^{}]*\}(?=\s*$)|^\s*(?<!\{)\{[^{}]*\}\s*[,;:·–—-]\s*/g;
function titleOfAll(title, rows) {
  let rest = title.trim().replace(/\s+/g, " ");
  for (let before = ""; before !== rest; ) {
    before = rest;
    rest = rest.replace(aside, "");
  }
  rest = rest.replace(/(?<!\{)\{[^{}]*\}/g, "\u2026").replace(/\{\{|\}\}/g, (mark) => mark.charAt(0)).trim();
  if (/[\p{L}\p{N}]/u.test(rest)) return rest;
  const [first] = rows;
  return rows.length > 1 ? `${first.label} and ${rows.length - 1} more` : first.label;
}

// src/core/length.ts
var mmPer = { mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72, px: 25.4 / 96 };
var longestMm = 3e3;
var pattern = /^([+-]?)(?:(\d+(?:\.\d+)?|\.\d+)|(?:(\d+) +)?(\d+)\/(\d+))\s*(mm|cm|in|pt|px)?$/;
function parseLength(value, units2) {
  if (typeof value === "number") return bounded(value * mmPer[units2], String(value));
  const match = pattern.exec(value.trim());
  if (!match)
    return { problem: `\u201C${clip(value)}\u201D is not a length. Write a number with a unit, such as 3 mm or 1/4 in.` };
  const [, sign2, decimal, whole2, numerator, denominator, unit] = match;
  const size = decimal === void 0 ? Number(whole2 ?? 0) + Number(numerator) / Number(denominator) : Number(decimal);
  const factor = mmPer[unit ?? units2];
  return bounded((sign2 === "-" ? -size : size) * factor, value.trim());
}
function bounded(mm3, written) {
  if (!Number.isFinite(mm3)) return { problem: `\u201C${clip(written)}\u201D is not a number.` };
  if (Math.abs(mm3) > longestMm)
    return { problem: `${clip(written)} is more than ${longestMm / 1e3} m; check the unit.` };
  return { mm: mm3 };
}
function clip(text, most4 = 40) {
  const characters = Array.from(text);
  return characters.length > most4 ? `${characters.slice(0, most4 - 1).join("")}\u2026` : text;
}

// src/spec/stack-members.ts
var StackMembers = class {
  #shapes;
  #pieces;
  #stacks = /* @__PURE__ */ new Map();
  #bodies = /* @__PURE__ */ new Set();
  #reached = /* @__PURE__ */ new Map();
  constructor(shapes, pieces) {
    this.#shapes = shapes;
    this.#pieces = pieces;
    for (const [name, spec] of Object.entries(shapes)) this.#note(name, spec);
    for (const [piece, spec] of Object.entries(pieces)) {
      bodyOf(spec).forEach((ref, index) => {
        if (typeof ref === "string") this.#bodies.add(ref);
        else if (ref) this.#note({ piece, index }, ref);
      });
    }
  }
  #note(ref, spec) {
    for (const member of new Set(namesIn(spec.stack?.shapes)))
      this.#stacks.set(member, [...this.#stacks.get(member) ?? [], ref]);
  }
  /** The stacks that have a member of this name: those with a name, and those written in the body of a piece. */
  stacksWith(member) {
    return this.#stacks.get(member) ?? [];
  }
  /** Whether a piece is made of the shape itself, beside any stack: then it lies where it lies by itself. */
  isBody(name) {
    return this.#bodies.has(name);
  }
  /** Whether a stack is made from, or placed by, a shape of the file. */
  leadsTo(stack, name) {
    const reached = this.#reached.get(stack) ?? this.#allThatMakes(this.written(stack));
    this.#reached.set(stack, reached);
    return reached.has(name);
  }
  written(stack) {
    return typeof stack === "string" ? stack : bodyOf(this.#pieces[stack.piece])[stack.index];
  }
  #allThatMakes(from) {
    const seen = /* @__PURE__ */ new Set();
    const waiting = [from];
    for (let ref = waiting.pop(); ref !== void 0; ref = waiting.pop()) {
      if (typeof ref !== "string") waiting.push(...madeFrom(ref));
      else if (!seen.has(ref)) {
        seen.add(ref);
        if (Object.hasOwn(this.#shapes, ref)) waiting.push(...madeFrom(this.#shapes[ref]));
      }
    }
    return seen;
  }
};
function madeFrom(spec) {
  const lists = [spec.stack?.shapes, spec.union, spec.difference, spec.intersection];
  const refs = [
    ...lists.flatMap((list) => list ? [...list] : []),
    spec.around,
    spec.from,
    spec.fit?.in,
    spec.place?.on
  ];
  return refs.filter((ref) => ref !== void 0);
}
function bodyOf({ body }) {
  const list = body;
  return list ? [...list] : [];
}
function namesIn(list) {
  return list ? list.filter((name) => name !== void 0) : [];
}
function placesInBody(on, body) {
  const part = on.name;
  if (part === void 0 || body.some(({ shape }) => shape === on)) return [{ shape: on }];
  const found = body.flatMap(({ shape }) => stacksIn(shape, on).map(() => ({ shape, part })));
  return found.length > 0 ? found : [{ shape: on }];
}
function stacksIn(shape, member) {
  const seen = /* @__PURE__ */ new Set();
  const waiting = [shape];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    waiting.push(...keptMembers(next));
  }
  return [...seen].filter(({ generator }) => generator.kind === "stack" && generator.shapes.includes(member));
}
function keptMembers({ generator }) {
  switch (generator.kind) {
    case "stack":
    case "union":
    case "intersection":
      return generator.shapes;
    case "difference":
      return generator.shapes.slice(0, 1);
    case "from":
      return [generator.shape];
    default:
      return [];
  }
}

// src/spec/read-pieces.ts
function readPieces(scope, workshop) {
  const { shapes, problems } = scope;
  const pieces = scope.spec.pieces ?? {};
  const ids2 = Object.keys(pieces);
  const readOne = hangerReader(scope, workshop);
  return ids2.map((id) => {
    const spec = pieces[id];
    const path = ["pieces", id];
    const list = (key) => readEntries(spec[key], [...path, key], shapes);
    if (spec.glue_to !== void 0) checkGlue(spec.glue_to, id, ids2, [...path, "glue_to"], problems);
    const size = readWholeSize(spec, path, problems);
    const body = list("body");
    const hangers = readHangers(spec.hanger, [...path, "hanger"], readOne);
    return {
      id,
      title: problems.filled(spec.title ?? id, [...path, "title"]) ?? id,
      path,
      body,
      cut: list("cut"),
      score: list("score"),
      engrave: list("engrave"),
      ...size ? { size } : {},
      hangers: hangers.map(({ hanger, path: at2 }) => onMember(hanger, body, at2, problems)),
      parts: spec.parts ?? "one",
      ...spec.glue_to === void 0 ? {} : { glueTo: spec.glue_to }
    };
  });
}
function readWholeSize(spec, path, problems) {
  const width = problems.length(spec.width, [...path, "width"], "size");
  const height = problems.length(spec.height, [...path, "height"], "size");
  const side3 = spec.width === void 0 ? "height" : "width";
  const fault = (message) => {
    problems.error("bad-value", [...path, side3], message, { range: problems.source.keyRange([...path, side3]) });
  };
  if (spec.width !== void 0 && spec.height !== void 0) {
    fault("A piece keeps its proportions: give its width or its height.");
  }
  const mm3 = width ?? height;
  if (mm3 !== void 0 && spec.glue_to !== void 0) {
    fault("A piece that is glued on has the size of what it is glued to; give that one a size.");
  }
  return mm3 === void 0 ? void 0 : { side: side3, mm: mm3 };
}
function readEntries(list, path, shapes) {
  const written = list ?? [];
  return [...written].flatMap((ref, index) => {
    const shape = ref === void 0 ? void 0 : shapes.byRef(ref, [...path, index]);
    return shape ? [{ shape, path: [...path, index] }] : [];
  });
}
function checkGlue(target, id, ids2, path, problems) {
  if (target === id) problems.error("cycle", path, "A piece cannot be glued on itself.");
  else if (!problems.wrote(["pieces", target])) {
    const suggestions = nearest2(target, ids2);
    problems.error("unknown-piece", path, `There is no piece \u201C${target}\u201D.${didYouMean(suggestions)}`, { suggestions });
  }
}
function hangerReader(scope, workshop) {
  const read = /* @__PURE__ */ new Map();
  const readAll = (owner) => {
    if (read.has(owner)) return;
    const named3 = Object.entries(owner.spec.hangers ?? {});
    read.set(owner, new Map(named3.map(([name, spec]) => [name, readHanger(spec, ["hangers", name], owner, workshop)])));
    owner.uses.forEach(readAll);
  };
  readAll(scope);
  return (ref, path) => {
    if (typeof ref !== "string") return readHanger(ref, path, scope, workshop);
    const owner = scope.require("hangers", ref, path);
    return owner && read.get(owner)?.get(ref);
  };
}
function readHangers(spec, path, read) {
  if (spec === void 0) return [];
  const written = Array.isArray(spec) ? [...spec] : [spec];
  return written.flatMap((ref, index) => {
    const at2 = Array.isArray(spec) ? [...path, index] : path;
    const hanger = ref === void 0 ? void 0 : read(ref, at2);
    return hanger ? [{ hanger, path: at2 }] : [];
  });
}
function onMember(hanger, body, path, problems) {
  if (!hanger.on) return hanger;
  const [on, ...others2] = placesInBody(hanger.on.shape, body);
  const name = hanger.on.shape.name ?? "";
  if (others2.length > 0) {
    const message = `\u201C${name}\u201D is a member of more than one stack in this body. Use a copy in one of them: \u201C${name}2: {from: ${name}}\u201D.`;
    problems.error("bad-value", path, message);
  }
  return { ...hanger, on };
}
function readHanger(spec, path, { shapes, problems }, { stock, tie }) {
  const kind = ["ring", "hole", "slot"].find((key) => spec[key] !== void 0);
  if (!kind) return void 0;
  const here = [...path, kind];
  const common = spec[kind];
  const length = (key, sign2) => problems.length(common[key], [...here, key], sign2);
  const on = common.on === void 0 ? void 0 : shapes.byName(common.on, [...here, "on"]);
  const base = {
    path: problems.inSpec(here),
    ...on ? { on: { shape: on } } : {},
    at: readPlace(common.at, kind, [...here, "at"], problems),
    nudge: problems.nudge(common.nudge, [...here, "nudge"]) ?? { x: 0, y: 0 }
  };
  const opening = length(kind === "slot" ? "width" : "diameter", "size");
  const inset = length("inset", "distance") ?? 2 * stock.hangerWeb;
  switch (kind) {
    case "ring":
      return {
        ...base,
        kind,
        opening: opening ?? comfortableOpening(tie),
        wall: length("wall", "size") ?? Math.max(leastRingWallMm, stock.hangerWeb),
        sink: length("sink", "signed") ?? 0
      };
    case "hole":
      return { ...base, kind, opening: opening ?? comfortableOpening(tie), inset };
    case "slot": {
      const across2 = opening ?? slotOpeningMm;
      const ribbon = tie?.kind === "ribbon" ? tie.size : 10;
      const long = length("length", "size") ?? ribbon + slotEaseMm;
      if (long < across2) problems.error("bad-length", [...here, "length"], "A slot is at least as long as it is wide.");
      return { ...base, kind, opening: across2, inset, length: long };
    }
  }
}
function readPlace(at2, kind, path, problems) {
  if (at2 === void 0) return kind === "ring" ? { kind: "auto" } : { kind: "anchor", anchor: "top" };
  if (at2 === "auto") return { kind: "auto" };
  if (typeof at2 === "string") return { kind: "anchor", anchor: at2 };
  if (typeof at2 === "number") return { kind: "degrees", degrees: at2 };
  return { kind: "point", offset: problems.nudge(at2, path) ?? { x: 0, y: 0 } };
}

// src/spec/rates.ts
var mmPer2 = { mm: 1, cm: 10, m: 1e3, in: 25.4 };
var pattern2 = /^(\d+(?:\.\d+)?|\.\d+)\s*(mm|cm|m|in)\s*\/\s*(s2|s²|s|min)$/;
var most2 = { speed: 2e4, acceleration: 2e5 };
function parseRate(written, kind) {
  const example = kind === "speed" ? "12 mm/s or 0.5 in/s" : "1500 mm/s2";
  const problem2 = `\u201C${clip(String(written))}\u201D is not ${kind === "speed" ? "a speed" : "an acceleration"}. Write a number with a unit, such as ${example}.`;
  const match = pattern2.exec(String(written).trim());
  if (!match) return { problem: problem2 };
  const [, figure2, length, time] = match;
  const perSecond = time === "min" ? 1 / 60 : 1;
  if (kind === "acceleration" !== (time === "s2" || time === "s\xB2")) return { problem: problem2 };
  return bounded2(Number(figure2) * mmPer2[length] * perSecond, kind, problem2);
}
function bounded2(value, kind, problem2) {
  return value > 0 && value <= most2[kind] ? { value } : { problem: problem2 };
}

// src/spec/read-machine.ts
var usual = { travel: 200, acceleration: 1e3, cornerJump: 5, hatch: 0.1 };
function readMachine(layers, name) {
  if (layers.length === 0) return void 0;
  const read = layers.map(readLayer);
  const first = (key) => read.find((layer) => layer[key] !== void 0)?.[key];
  const [cut, score, engrave] = [first("cut"), first("score"), first("engrave")];
  const power = Object.assign({}, ...read.map((layer) => layer.power ?? {}).reverse());
  return {
    ...name === void 0 ? {} : { name },
    ...cut === void 0 ? {} : { cut },
    ...score === void 0 ? {} : { score },
    ...engrave === void 0 ? {} : { engrave },
    travel: first("travel") ?? usual.travel,
    acceleration: first("acceleration") ?? usual.acceleration,
    cornerJump: first("cornerJump") ?? usual.cornerJump,
    hatch: first("hatch") ?? usual.hatch,
    passes: Object.assign(
      { cut: 1, score: 1, engrave: 1 },
      ...read.map((layer) => layer.passes ?? {}).reverse()
    ),
    ...Object.keys(power).length === 0 ? {} : { power }
  };
}
function readLayer({ spec, path, problems }) {
  const rate = (key) => {
    const written = spec[key];
    if (written === void 0) return void 0;
    const result = parseRate(written, key === "acceleration" ? "acceleration" : "speed");
    if ("value" in result) return result.value;
    problems.error("bad-value", [...path, key], result.problem);
    return void 0;
  };
  return {
    cut: rate("cut"),
    score: rate("score"),
    engrave: rate("engrave"),
    travel: rate("travel"),
    acceleration: rate("acceleration"),
    cornerJump: rate("corner_jump"),
    hatch: problems.measured(spec.hatch, [...path, "hatch"], "hatch"),
    passes: spec.passes,
    power: spec.power && Object.fromEntries(Object.entries(spec.power).map(([key, value]) => [key, String(value)]))
  };
}

// src/spec/read-output.ts
var tabWidthMm = 0.5;
var pictureWidth = 1600;
function readOutput({ spec: { output }, problems }) {
  const tabs = readTabs(output?.tabs, problems);
  const style = (key) => {
    const { color, line_width, layer } = output?.[key] ?? {};
    const lineWidth = problems.length(line_width, ["output", key, "line_width"], "size");
    return {
      ...color === void 0 ? {} : { color: color.toUpperCase() },
      ...lineWidth === void 0 ? {} : { lineWidth },
      ...layer === void 0 ? {} : { layer }
    };
  };
  return {
    compensate: output?.compensate ?? true,
    ...output?.engrave_layers === "each" ? { engraveEach: true } : {},
    ...tabs ? { tabs } : {},
    pictureWidth: output?.picture_width ?? pictureWidth,
    styles: {
      engrave: style("engrave"),
      score: style("score"),
      "cut-inner": style("cut_inner"),
      "cut-outer": style("cut_outer")
    }
  };
}
function readTabs(tabs, problems) {
  if (tabs === void 0) return void 0;
  const { count, width } = typeof tabs === "number" ? { count: tabs, width: void 0 } : tabs;
  const across2 = problems.length(width, ["output", "tabs", "width"], "size") ?? tabWidthMm;
  return count > 0 ? { count, width: across2 } : void 0;
}

// src/spec/material-words.ts
function wordsOf(text) {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}

// src/spec/min-web-defaults.ts
var practice = "rule of thumb, no source";
var judgement = "our own judgement";
var row = (material, names, [web2, least], basis, isRigid = true) => ({
  material,
  names: names === "" ? [] : names.split(" ").map((name) => name.split("+")),
  web: web2,
  least,
  isRigid,
  basis
});
var unnamed = row("anything else", "", [1.5, 0.8], practice);
var plywood = "plywood, also \u201Cbirch\u201D alone";
var solidWood = "solid wood and veneer, across the grain";
var webDefaults = [
  row(plywood, "ply plywood", [1.5, 0.8], practice),
  row("MDF, HDF, hardboard", "mdf hdf hardboard fibreboard fiberboard", [1.5, 0.8], judgement),
  row(solidWood, "solid+birch paper+birch silver+birch yellow+birch birch+veneer", [2, 1], judgement),
  row("bamboo", "bamboo", [1.5, 0.8], judgement),
  row("acrylic and other brittle plastic", "acrylic pmma polystyrene styrene mirror glass", [2, 1], judgement),
  row(
    "card, paper",
    "card cardboard cardstock paper paperboard greyboard grayboard pasteboard",
    [1, 0.5],
    judgement,
    false
  ),
  row("cork", "cork", [3, 1.5], judgement, false),
  row("felt", "felt", [3, 1.5], judgement, false),
  row("leather", "leather leatherette hide suede", [2, 1], judgement, false),
  row(
    solidWood,
    "wood hardwood softwood timber lumber veneer alder ash aspen balsa basswood beech boxwood cedar cherry chestnut elm fir hazel hickory hornbeam larch lime linden mahogany maple oak olive padauk pear pine plum poplar rowan sapele spruce sycamore teak tulipwood walnut willow yew",
    [2, 1],
    judgement
  ),
  row(plywood, "birch", [1.5, 0.8], practice),
  unnamed
];
var thinSheetMm = 2;
var mostWidening = 1.5;
function webDefaultOf(material) {
  const named3 = wordsOf(material ?? "");
  return webDefaults.find(({ names }) => names.some((name) => name.every((word) => named3.includes(word)))) ?? unnamed;
}
function defaultMinWeb(material, thickness) {
  const { web: web2, isRigid } = webDefaultOf(material);
  if (!isRigid || thickness === void 0 || thickness >= thinSheetMm) return web2;
  return Math.round(10 * web2 * Math.min(Math.sqrt(thinSheetMm / thickness), mostWidening)) / 10;
}

// src/spec/forces.ts
var gravity = 9.80665;
var pound = 0.45359237 * gravity;
var newtonsPer = { N: 1, kN: 1e3, kg: gravity, g: gravity / 1e3, lb: pound, oz: pound / 16 };
var most3 = 1e4;
var pattern3 = /^(\d+(?:\.\d+)?|\.\d+)\s*(N|kN|kg|g|lb|oz)?$/;
function parseForce(written) {
  const match = pattern3.exec(String(written).trim());
  const said = `\u201C${clip(String(written))}\u201D`;
  if (!match)
    return { problem: `${said} is not a pull. Write newtons, such as 42 N, or what hung on it, such as 4.3 kg.` };
  const [, figure2, unit = "N"] = match;
  const newtons = Number(figure2) * newtonsPer[unit];
  if (newtons === 0) return { problem: `${said} is no pull at all. Write the pull at which it broke.` };
  return newtons > most3 ? { problem: `${said} is more than a ton of pull; check the unit.` } : { newtons };
}

// src/spec/read-measured.ts
var credible = { least: 0.05, most: 400 };
function readMeasured(spec, thickness, path, problems) {
  const { breaks_at: written, neck: width } = spec ?? {};
  const neck2 = problems.length(width, [...path, "neck"], "size");
  if (written === void 0) return void 0;
  const force = parseForce(written);
  if ("problem" in force) {
    problems.error("bad-value", [...path, "breaks_at"], force.problem);
    return void 0;
  }
  if (neck2 === void 0) return void 0;
  const { newtons } = force;
  const strength = thickness === void 0 ? void 0 : newtons / (neck2 * thickness);
  if (strength !== void 0 && (strength < credible.least || strength > credible.most)) {
    const than = strength > credible.most ? "more" : "less";
    const told2 = `${Number(newtons.toPrecision(3))} N on a neck of ${mmByMm(neck2, thickness)} is ${Number(strength.toPrecision(2))} MPa, ${than} than any sheet bears`;
    problems.error("bad-value", [...path, "breaks_at"], `${told2}. Check the pull, its unit and the width of the neck.`);
    return void 0;
  }
  return { breaksAt: newtons, neck: neck2 };
}

// src/spec/read-stock.ts
var stoutWebMm = 3;
var defaultStock = { kerf: 0, ...readWebs({ kerf: 0 }) };
function readStock({ problems }, spec, path, name) {
  const { material, density, caution, look } = spec;
  const thickness = problems.measured(spec.thickness, [...path, "thickness"], "thickness");
  const written = problems.measured(spec.min_web, [...path, "min_web"], "min_web");
  const minXHeight = problems.measured(spec.min_x_height, [...path, "min_x_height"], "min_x_height");
  const kerf2 = readKerf(spec.kerf, [...path, "kerf"], problems);
  const measured2 = readMeasured(spec.measured, thickness, [...path, "measured"], problems);
  const measuredOn2 = readDays(spec, path, problems);
  tellContradictions(kerf2.kerf, written, path, problems);
  const { amount, per, currency } = spec.price ?? {};
  return {
    ...name === void 0 ? {} : { name },
    ...material === void 0 ? {} : { material },
    ...thickness === void 0 ? {} : { thickness },
    ...kerf2,
    ...readWebs({ material, thickness, written, kerf: kerf2.kerf, isMeasured: measuredOn2?.min_web !== void 0 }),
    ...minXHeight === void 0 ? {} : { minXHeight },
    ...density === void 0 ? {} : { density },
    ...measured2 ? { measured: measured2 } : {},
    ...amount === void 0 || per === void 0 ? {} : { price: { amount, per, ...currency === void 0 ? {} : { currency } } },
    ...caution === void 0 || caution.trim() === "" ? {} : { caution: caution.trim() },
    ...look === void 0 ? {} : { look },
    ...measuredOn2 === void 0 ? {} : { measuredOn: measuredOn2 },
    says: { kerf: spec.kerf !== void 0, minWeb: spec.min_web !== void 0 }
  };
}
function readWebs({
  material,
  thickness,
  written,
  kerf: kerf2,
  isMeasured
}) {
  const minWeb = written ?? defaultMinWeb(material, thickness);
  return {
    minWeb,
    leastWeb: Math.min(minWeb, Math.max(webDefaultOf(material).least, kerf2)),
    hangerWeb: (isMeasured ? void 0 : written) ?? Math.max(minWeb, Math.min(thickness ?? 0, stoutWebMm))
  };
}
function readKerf(kerf2, path, problems) {
  if (typeof kerf2 !== "object") return { kerf: problems.measured(kerf2, path, "kerf", "distance") ?? 0 };
  const read = (key) => problems.measured(kerf2[key], [...path, key], "kerf", "distance");
  const [outer, inner, engrave] = [read("outer"), read("inner"), read("engrave") ?? 0];
  const kerfs = { outer: outer ?? inner ?? 0, inner: inner ?? outer ?? 0, engrave };
  return { kerf: Math.max(kerfs.outer, kerfs.inner), kerfs };
}
function tellContradictions(kerf2, minWeb, path, problems) {
  if (path[0] !== "stocks" || minWeb === void 0 || minWeb >= kerf2) return;
  const message = `\u201Cmin_web\u201D is ${mm(minWeb)}, less than the kerf of ${mm(kerf2)}: one of the two is wrong.`;
  problems.error("bad-length", [...path, "min_web"], message);
}
function readDays(spec, path, problems) {
  const { measured_on: days, machine } = spec;
  if (days === void 0) return void 0;
  const values = {
    kerf: spec.kerf,
    min_web: spec.min_web,
    min_x_height: spec.min_x_height,
    hatch: machine?.hatch,
    engrave: machine?.engrave
  };
  for (const [key, day] of Object.entries(days)) {
    const place = [...path, "measured_on", key];
    if (!isDay(day)) problems.error("bad-value", place, `There is no day ${day}.`);
    else if (values[key] === void 0 && !problems.wrote(valuePath(path, key)))
      problems.error("missing-key", place, `\u201Cmeasured_on\u201D has a day for \u201C${key}\u201D, but this stock has no \u201C${key}\u201D.`);
  }
  return days;
}
function valuePath(path, key) {
  return key === "hatch" || key === "engrave" ? [...path, "machine", key] : [...path, key];
}

// src/spec/near-files.ts
function nearFiles(name, beside) {
  const folder2 = name.slice(0, Math.max(name.lastIndexOf("/"), name.lastIndexOf("\\")) + 1);
  const ending = /\.[^.]+$/.exec(name)?.[0].toLowerCase() ?? "";
  const kin = beside.filter((each) => each.toLowerCase().endsWith(ending));
  const near = nearest2(name.slice(folder2.length), kin);
  const found = near.length > 0 || kin.length !== 1 ? near : kin;
  return found.map((each) => folder2 + each);
}

// src/spec/source.ts
import { isAlias as isAlias2, isCollection, isMap as isMap3, isPair, isScalar as isScalar3, isSeq as isSeq3, LineCounter, parseDocument, visit } from "yaml";

// src/spec/yaml-messages.ts
var sentences = {
  ALIAS_PROPS: "A * stands alone: nothing goes before it.",
  BAD_COLLECTION_TYPE: "A ! and a word do not fit what follows; leave them out.",
  BAD_DIRECTIVE: "A line that starts with % does not belong here.",
  BAD_PROP_ORDER: "A & or ! goes before the value it belongs to.",
  BLOCK_IN_FLOW: "Between brackets, a list or group needs brackets of its own.",
  KEY_OVER_1024_CHARS: "A key is too long; is a colon or a quote missing?",
  MULTIPLE_ANCHORS: "A value can have only one name after &.",
  MULTIPLE_TAGS: "A value can have only one word after !.",
  NON_STRING_KEY: "A key must be a word.",
  TAG_RESOLVE_FAILED: "A ! and a word have no meaning here; leave them out.",
  BLOCK_AS_IMPLICIT_KEY: "One colon too many, or a line that is indented too far: one line holds one key and its value.",
  MULTILINE_IMPLICIT_KEY: "This line is indented further than the one it belongs with.",
  TAB_AS_INDENT: "Lines are indented with spaces here, not with tabs.",
  DUPLICATE_KEY: "This key appears twice; keep one of them.",
  BAD_SCALAR_START: "A value that starts with this character needs quotes.",
  MULTIPLE_DOCS: "Three dashes start a second document; a tag spec has only one.",
  BAD_DQ_ESCAPE: "A backslash in double quotes must be written twice; in single quotes once is enough.",
  BAD_ALIAS: "A * refers to something named with & earlier, and there is nothing of that name."
};
function yamlMessage({ code, message }) {
  if (code in sentences) return sentences[code];
  if (code === "MISSING_CHAR" && /quote/.test(message)) return `The closing quote is missing: ${quoteOf(message)}.`;
  if (code === "MISSING_CHAR" && /followed by map values/.test(message)) return "A colon and a value are missing here.";
  if (code === "BAD_INDENT" && /end with a ([}\]])/.test(message)) {
    return `A closing ${message.at(-1) ?? ""} is missing, or too far left.`;
  }
  if (code === "UNEXPECTED_TOKEN") {
    const sign2 = /"([^"]+)"$/.exec(message)?.[1] ?? "";
    return sign2 === "" ? "There is a character here that does not belong." : `There is a ${clip(sign2)} here that does not belong.`;
  }
  return code === "BAD_INDENT" ? "This line is indented too little or too far." : "Something is missing here, or does not belong.";
}
function quoteOf(message) {
  return message.includes("'") ? "'" : '"';
}

// src/spec/tree.ts
import { isAlias, isMap, isScalar, isSeq } from "yaml";
function toTree(node) {
  const range = rangeOf(node);
  if (!range) return void 0;
  if (isScalar(node)) {
    if (range.end === range.start) return void 0;
    const quoted3 = node.type !== void 0 && node.type !== "PLAIN";
    return { kind: "scalar", range, value: node.value, quoted: quoted3 };
  }
  if (isMap(node)) {
    const entries = node.items.flatMap((pair) => {
      const key = toTree(pair.key);
      const value = toTree(pair.value);
      return key?.kind === "scalar" ? [{ key, ...value ? { value } : {} }] : [];
    });
    return { kind: "map", range, flow: node.flow === true, entries };
  }
  if (isSeq(node)) return { kind: "list", range, flow: node.flow === true, items: node.items.map(toTree) };
  return isAlias(node) ? { kind: "alias", range } : void 0;
}
function rangeOf(node) {
  const range = node?.range;
  return range ? { start: range[0], end: range[1] } : void 0;
}

// src/spec/renamed-keys.ts
import { isMap as isMap2, isScalar as isScalar2, isSeq as isSeq2 } from "yaml";
var renamedKeys = [
  { old: "opening", key: "diameter", groups: ["ring", "hole"] },
  { old: "opening", key: "width", groups: ["slot"] },
  { old: "interval", key: "hatch", groups: ["machine"] },
  { old: "corner", key: "corner_jump", groups: ["machine"] },
  { old: "cut", key: "clip", groups: ["label"] }
];
function groupName(path) {
  return path.length === 2 ? void 0 : String(path.at(-1));
}
function renameKeys(node, path = []) {
  if (isSeq2(node)) return node.items.flatMap((item, index) => renameKeys(item, [...path, index]));
  if (!isMap2(node)) return [];
  const group = groupName(path);
  const isThere = (name) => node.items.some(({ key }) => isScalar2(key) && key.value === name);
  return node.items.flatMap(({ key, value }) => {
    if (!isScalar2(key)) return [];
    const renamed2 = group === void 0 ? void 0 : renamedKeys.find(({ old, key: now, groups: groups2 }) => old === key.value && groups2.includes(group) && !isThere(now));
    if (renamed2) key.value = renamed2.key;
    const here = [...path, String(key.value)];
    const found = renameKeys(value, here);
    if (!renamed2 || !key.range) return found;
    const [start, end] = key.range;
    return [{ old: renamed2.old, key: renamed2.key, path: here, range: { start, end } }, ...found];
  });
}

// src/spec/source.ts
var longestSpec = 5e5;
var mostAliases = 200;
var mostErrors = 20;
var yamlOptions = { prettyErrors: false, resolveKnownTags: false, logLevel: "error" };
var deepest2 = 200;
var SpecSource = class {
  text;
  /** The plain value, or `undefined` where the text is no YAML. */
  value;
  issues;
  /** Keys that have a new name; `value` and `tree` have the new ones. */
  oldKeys = [];
  #document;
  #lines = new LineCounter();
  constructor(text) {
    this.text = text;
    if (text.length > longestSpec) {
      const size = `${(text.length / 1e6).toFixed(1)} million characters`;
      this.issues = [
        this.#issue("file-too-large", `This file has ${size}; a tag spec has at most half a million.`, 0, 0)
      ];
      return;
    }
    let document;
    try {
      document = withoutStacks(() => parseDocument(text, { ...yamlOptions, lineCounter: this.#lines }));
    } catch {
      this.issues = [this.#tooDeep()];
      return;
    }
    this.#document = document;
    const issues = document.errors.slice(0, mostErrors).map((error) => {
      const start = Math.min(error.pos[0], text.length);
      return this.#issue("yaml-syntax", yamlMessage(error), start, Math.max(error.pos[1], start + 1));
    });
    try {
      const odd = groupAsKey(document);
      if (odd) {
        const message = "A group cannot be a key; is a closing bracket missing?";
        this.issues = [this.#issue("yaml-syntax", message, odd.start, odd.start + 1), ...issues];
        return;
      }
      if (document.errors.length === 0) this.oldKeys = renameKeys(document.contents);
      const value = document.toJS({ maxAliasCount: mostAliases });
      if (isDeeper(value, deepest2)) issues.splice(0, issues.length, this.#tooDeep());
      else this.value = value;
    } catch (error) {
      const reason2 = error instanceof Error ? error.message : String(error);
      const unknown = /^Unresolved alias.*: (.+)$/.exec(reason2)?.[1];
      const start = unknown === void 0 ? -1 : text.indexOf(`*${unknown}`);
      issues.push(
        start < 0 ? this.#issue(
          "yaml-syntax",
          "What & and * stand for cannot be put in here; write it out instead.",
          0,
          this.#firstLineEnd()
        ) : this.#issue("yaml-syntax", sentences.BAD_ALIAS, start, start + unknown.length + 1)
      );
    }
    this.issues = issues;
  }
  /** Whether what the parser stumbles over first is a key that is there twice. */
  get hasKeyTwice() {
    return this.#document?.errors[0]?.code === "DUPLICATE_KEY";
  }
  /** What is written, as far as it could be made out; `undefined` where `value` is. */
  get tree() {
    return this.value === void 0 ? void 0 : toTree(this.#document?.contents);
  }
  /** 1-based line and column of an offset, columns in UTF-16 units as editors count them. */
  position(offset2) {
    if (this.#lines.lineStarts.length === 0) return { line: 1, column: offset2 + 1 };
    const { line, col } = this.#lines.linePos(offset2);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  }
  /** Where the value at `path` stands; where it has none, its key; else the nearest thing above it that stands somewhere. */
  range(path) {
    for (let length = path.length; length >= 0; length--) {
      const found = this.#find(path.slice(0, length));
      const range = nodeRange(found.value) ?? nodeRange(found.key);
      if (range) return this.#shown(range);
    }
    return { start: 0, end: this.#firstLineEnd() };
  }
  /** Where the key of the last step of `path` stands; without one, the first line of what stands there. */
  keyRange(path) {
    const key = nodeRange(this.#find(path).key);
    if (key) return this.#shown(key);
    const { start, end } = this.range(path);
    return { start, end: start + /^[^\r\n]*/.exec(this.text.slice(start, end))[0].length };
  }
  /** A plain value without quotes as it is written, such as `007`, which is the number 7. */
  written(path) {
    const { value } = this.#find(path);
    return isScalar3(value) ? value.source : void 0;
  }
  /**
   * The smallest edit that gives the map at `path` this key and value: the old value is replaced, or an entry is added in the
   * style of the others, comments and line ends untouched. `undefined` where there is no map.
   */
  setKey(path, key, text) {
    let { value: map } = this.#find(path);
    if (isAlias2(map)) map = map.resolve(this.#document);
    if (!isMap3(map) || !map.range) return void 0;
    const old = nodeRange(this.#find([...path, key]).value);
    if (old) return { range: this.#shown(old), text };
    const last = map.items.at(-1);
    const entry = `${key}: ${text}`;
    if (!last) return map.flow ? { range: at(map.range[0] + 1), text: entry } : void 0;
    const end = nodeRange(last.value)?.end ?? nodeRange(last.key)?.end;
    const first = nodeRange(map.items[0]?.key);
    if (end === void 0 || !first) return void 0;
    if (map.flow) return { range: at(end), text: `, ${entry}` };
    const content = this.#shown({ start: first.start, end }).end;
    const lineEnd = /\r?\n|$/.exec(this.text.slice(content));
    const newLine = this.text.includes("\r\n") ? "\r\n" : "\n";
    const indent = " ".repeat(this.position(first.start).column - 1);
    return { range: at(content + lineEnd.index), text: `${newLine}${indent}${entry}` };
  }
  /** The path of the innermost value whose text, key included, holds the offset. */
  pathAt(offset2) {
    const path = [];
    let node = this.#document?.contents;
    for (; ; ) {
      if (isMap3(node)) {
        const pair = node.items.find((item) => covers(item.key, item.value, offset2));
        if (!pair || !isScalar3(pair.key)) return path;
        path.push(String(pair.key.value));
        node = pair.value;
      } else if (isSeq3(node)) {
        const index = node.items.findIndex((item) => covers(item, item, offset2));
        if (index < 0) return path;
        path.push(index);
        node = node.items[index];
      } else {
        return path;
      }
    }
  }
  #find(path) {
    let key;
    let value = this.#document?.contents;
    for (const step of path) {
      if (isAlias2(value)) value = value.resolve(this.#document);
      if (isMap3(value)) {
        const pair = value.items.find((item) => isScalar3(item.key) && String(item.key.value) === String(step));
        key = pair?.key;
        value = pair?.value;
      } else if (isSeq3(value) && typeof step === "number") {
        key = void 0;
        value = value.items[step];
        if (isPair(value)) value = value.value;
      } else {
        return { key: void 0, value: void 0 };
      }
    }
    return { key, value };
  }
  /** A block's range without the line ends and comments that YAML counts to it. */
  #shown({ start, end }) {
    const trimmed = this.text.slice(start, end).trimEnd().length;
    return { start, end: start + Math.max(trimmed, 1) };
  }
  #firstLineEnd() {
    const end = this.text.search(/\r?\n/);
    return end < 0 ? this.text.length : end;
  }
  #tooDeep() {
    const message = `Values in this file are nested more than ${deepest2} deep.`;
    return this.#issue("yaml-syntax", message, 0, this.#firstLineEnd());
  }
  #issue(code, message, start, end) {
    return {
      code,
      severity: "error",
      message,
      path: [],
      range: { start, end: Math.min(end, Math.max(this.text.length, 1)) }
    };
  }
};
function groupAsKey(document) {
  let found;
  visit(document, {
    Pair: (_, { key }) => {
      if (!isCollection(key)) return void 0;
      found = nodeRange(key) ?? { start: 0, end: 1 };
      return visit.BREAK;
    }
  });
  return found;
}
function at(offset2) {
  return { start: offset2, end: offset2 };
}
function nodeRange(node) {
  const range = node?.range;
  return range && range[1] > range[0] ? { start: range[0], end: range[1] } : void 0;
}
function covers(first, last, offset2) {
  const start = first?.range?.[0];
  const end = last?.range?.[2] ?? first?.range?.[2];
  return start !== void 0 && end !== void 0 && start <= offset2 && offset2 < end;
}
function isDeeper(value, most4) {
  let level = /* @__PURE__ */ new Set([value]);
  for (let depth = 0; level.size > 0; depth++) {
    if (depth > most4) return true;
    const next = /* @__PURE__ */ new Set();
    for (const each of level) {
      if (typeof each !== "object" || each === null) continue;
      for (const inner of Object.values(each)) if (typeof inner === "object" && inner !== null) next.add(inner);
    }
    level = next;
  }
  return false;
}
function withoutStacks(action) {
  const { stackTraceLimit } = Error;
  Error.stackTraceLimit = 0;
  try {
    return action();
  } finally {
    Error.stackTraceLimit = stackTraceLimit;
  }
}

// src/spec/table.ts
import Papa from "papaparse";
function parseTable(text) {
  if (text.includes("\uFFFD")) return { problem: "is not UTF-8 text; save it as CSV UTF-8." };
  const plain2 = text.replace(/^\ufeff/, "");
  const { data, errors } = Papa.parse(plain2, { delimiter: delimiterOf(plain2) });
  const open3 = errors.find(({ type }) => type === "Quotes");
  if (open3) return { problem: `has a quotation mark that is never closed, in or after row ${(open3.row ?? 0) + 1}.` };
  const [first, ...rest] = numbered(data);
  const header = (first?.cells ?? []).map((name) => name.trim());
  while (header.at(-1) === "") header.pop();
  if (header.length === 0) return { problem: "is empty; its first line should name the columns." };
  const bad = header.find((name, index) => name === "" || /[{}]/.test(name) || header.indexOf(name) !== index);
  if (bad !== void 0) {
    const why = bad === "" ? "a column without a name" : /[{}]/.test(bad) ? `a brace in \u201C${bad}\u201D` : `two columns \u201C${bad}\u201D`;
    return { problem: `has ${why} in its first line.` };
  }
  const rows = rest.filter(({ cells }) => cells.some((cell) => cell.trim() !== ""));
  if (rows.length === 0) return { problem: "has no rows below the column names." };
  return {
    header,
    rows: rows.map(({ cells, line }) => ({ line, cells: header.map((_, i) => (cells[i] ?? "").trim()) }))
  };
}
function delimiterOf(text) {
  const columns3 = (delimiter) => Papa.parse(text, { delimiter, preview: 1 }).data[0]?.length ?? 0;
  return [",", ";", "	"].reduce((a, b) => columns3(b) > columns3(a) ? b : a);
}
function numbered(data) {
  let line = 1;
  return data.map((cells) => {
    const row2 = { cells, line };
    line += 1 + cells.reduce((breaks, cell) => breaks + (cell.match(/\r\n|\r|\n/g)?.length ?? 0), 0);
    return row2;
  });
}

// src/spec/used-files.ts
var noUses = { used: [], issues: [], files: [] };
var mostFiles = 50;
async function loadUses(source, { read, locate, beside }) {
  const issues = [];
  const files = /* @__PURE__ */ new Set();
  const sources2 = /* @__PURE__ */ new Map();
  let count = 0;
  const fault = (code, path, message, suggestions = []) => {
    const told2 = message + didYouMean(suggestions);
    issues.push({ code, severity: "error", path, range: source.range(path), message: told2, suggestions });
  };
  const notThere = async (name, file, path) => {
    const names = await beside?.(file).catch(() => []) ?? [];
    fault("bad-file", path, `\u201C${clip(name)}\u201D cannot be found or read.`, nearFiles(name, names));
  };
  async function load2(name, path, chain3) {
    const file = locate(name);
    if (file === void 0) {
      fault("bad-file", path, `\u201C${clip(name)}\u201D is not inside the spec's folder.`);
      return void 0;
    }
    files.add(file);
    if (chain3.includes(name)) {
      fault("cycle", path, `\u201C${clip(name)}\u201D uses itself: ${[...chain3.slice(chain3.indexOf(name)), name].join(" \u2192 ")}.`);
      return void 0;
    }
    if (++count > mostFiles) {
      if (count === mostFiles + 1) fault("bad-value", path, `More than ${mostFiles} files are used.`);
      return void 0;
    }
    try {
      const used2 = sources2.get(file) ?? new SpecSource(await read(file));
      sources2.set(file, used2);
      const uses = await all(used2, folderOf(name), () => path, [...chain3, name]);
      return { name, file, path, source: used2, uses };
    } catch {
      await notThere(name, file, path);
      return void 0;
    }
  }
  async function all(from, folder2, pathOf2, chain3) {
    const found = [];
    for (const { name, index } of usesOf2(from)) {
      const file = await load2(joined2(folder2, name), pathOf2(index), chain3);
      if (file) found.push(file);
    }
    return found;
  }
  async function loadTable(name) {
    const path = ["batch"];
    const file = locate(name);
    if (file === void 0) {
      fault("bad-file", path, `\u201C${clip(name)}\u201D is not inside the spec's folder.`);
      return void 0;
    }
    files.add(file);
    const text = await read(file).catch(() => void 0);
    if (text === void 0) {
      await notThere(name, file, path);
      return void 0;
    }
    const table2 = parseTable(text);
    if (!("problem" in table2)) return table2;
    fault("bad-file", path, `\u201C${clip(name)}\u201D ${table2.problem}`);
    return void 0;
  }
  const used = await all(source, "", (index) => index === void 0 ? ["use"] : ["use", index], []);
  const tableFile = valueUnder(source, "batch");
  const table = typeof tableFile === "string" ? await loadTable(tableFile) : void 0;
  return { used, ...table ? { table } : {}, issues, files: [...files] };
}
function valueUnder({ value }, key) {
  return typeof value === "object" && value !== null ? value[key] : void 0;
}
function usesOf2(source) {
  const use = valueUnder(source, "use");
  const list = Array.isArray(use) ? use.map((name, index) => ({ name, index })) : [{ name: use, index: void 0 }];
  return list.flatMap(({ name, index }) => typeof name === "string" ? [{ name, index }] : []);
}
function folderOf(name) {
  return name.slice(0, name.lastIndexOf("/") + 1);
}
function joined2(folder2, name) {
  const plain2 = name.replace(/^(\.\/)+/, "");
  return /^([a-z]:)?[\\/]/i.test(name) ? name : folder2 + plain2;
}

// src/spec/problems.ts
var Problems = class {
  issues = [];
  source;
  units;
  /** Where the spec asks for the file that this is about; nothing for the spec itself. Paths here are those of the file. */
  base;
  /** The row that is read, in a spec with a batch, and the problems of the file that has it. */
  row;
  /** Of the file, as seen from that of the spec, with its slash. */
  #folder;
  constructor(source, units2, base = [], folder2 = "") {
    this.source = source;
    this.units = units2;
    this.base = base;
    this.#folder = folder2;
  }
  /** A path of this file as what is made of it carries it: in the spec it stands where the file is asked for. */
  inSpec(path) {
    return this.base.length === 0 ? path : [...this.base, ...path];
  }
  /** A file that is named here, as seen from the folder of the spec. */
  beside(file) {
    return joined2(this.#folder, file);
  }
  error(code, path, message, extra = {}) {
    this.issues.push({
      code,
      severity: "error",
      path,
      // What is missing has no place of its own: its group's key is marked, not all that is in it.
      range: code === "missing-key" ? this.source.keyRange(path) : this.source.range(path),
      message: inUnits(message, this.units),
      ...extra
    });
  }
  /** What the text at `path` says in the row of the batch that is read; the text itself where there is no batch. */
  filled(text, path) {
    return this.row ? filled(text, this.row.row, (column) => {
      this.#tellMissing(this.row, column, path);
    }) : text;
  }
  /** A row that lacks a cell, or a text that asks for a column there is not. */
  #tellMissing({ batch: { columns: columns3 }, row: row2, problems }, column, path) {
    if (columns3.includes(column)) {
      problems.error("missing-key", row2.path, `\u201C${clip(row2.label)}\u201D has no \u201C${clip(column)}\u201D.`);
      return;
    }
    const suggestions = nearest2(column, columns3);
    const hint = didYouMean(suggestions) || ` Columns: ${columns3.map((each) => `{${each}}`).join(", ")}.`;
    this.error("unknown-name", path, `There is no column \u201C${clip(column)}\u201D in the batch.${hint}`);
  }
  /** The keys that the text has there, also those that do not exist. */
  keysAt(path) {
    const value = this.#valueAt(path);
    return typeof value === "object" && value !== null ? Object.keys(value) : [];
  }
  /** Whether the text has a value there, also one that did not fit and was taken out after being reported. */
  wrote(path) {
    const parent = this.#valueAt(path.slice(0, -1));
    return typeof parent === "object" && parent !== null && Object.hasOwn(parent, path.at(-1));
  }
  #valueAt(path) {
    return path.reduce(
      (at2, step) => typeof at2 === "object" && at2 !== null && Object.hasOwn(at2, step) ? at2[step] : void 0,
      this.source.value
    );
  }
  /** The length in mm; `undefined` where none is written, and also, with an issue, where it is no good. */
  length(value, path, sign2) {
    if (value === void 0) return void 0;
    const result = parseLength(value, this.units);
    if ("problem" in result) {
      this.error("bad-length", path, result.problem);
      return void 0;
    }
    if (sign2 === "size" && result.mm <= 0) {
      this.error("bad-length", path, `${naming(path)} must be more than 0.`);
      return void 0;
    }
    if (sign2 === "distance" && result.mm < 0) {
      this.error("bad-length", path, `${naming(path)} cannot be less than 0.`);
      return void 0;
    }
    return result.mm;
  }
  /** A length that a maker measures, as `length`; one that no bench would give is a slip, and told. */
  measured(value, path, what, sign2 = "size") {
    const length = this.length(value, path, sign2);
    if (length === void 0 || length <= mostMm[what]) return length;
    const message = `${naming(path)} is ${mm(length)}, more than any ${plainWords[what]} here (${limit(mostMm[what])}); check the figure and its unit.`;
    this.error("bad-length", path, message);
    return void 0;
  }
  /** Up and right count positive. */
  nudge(value, path) {
    if (!value) return void 0;
    const step = (key) => this.length(value[key], [...path, key], "signed") ?? 0;
    return { x: step("right") - step("left"), y: step("up") - step("down") };
  }
};
var plainWords = {
  thickness: "sheet",
  kerf: "kerf",
  min_web: "web",
  min_x_height: "engraved letter",
  hatch: "distance of engraved lines",
  opening: "hole for a tie"
};
function naming(path) {
  return `\u201C${String(path.findLast((step) => typeof step === "string"))}\u201D`;
}

// src/spec/stock-on-machine.ts
function readStockOn({ owner, spec, path }, machine, name) {
  const base = readStock(owner, spec, path, name);
  for (const [each, over2] of Object.entries(spec.machines ?? {})) {
    const place = [...path, "machines", each];
    owner.require("machines", each, place, { range: owner.problems.source.keyRange(place) });
    tellContradiction(owner, place, base, readStock(owner, over2, place));
  }
  const over = machine === void 0 ? void 0 : spec.machines?.[machine];
  if (!over) return base;
  const { source, units: units2, base: within2 } = owner.problems;
  return readStock({ problems: new Problems(source, units2, within2) }, onMachine(spec, over), path, name);
}
function stockMachineLayers({ owner, spec, path }, machine) {
  const over = machine === void 0 ? void 0 : spec.machines?.[machine]?.machine;
  const { problems } = owner;
  return [
    ...over ? [{ spec: over, path: [...path, "machines", machine, "machine"], problems }] : [],
    ...spec.machine ? [{ spec: spec.machine, path: [...path, "machine"], problems }] : []
  ];
}
function readOtherMachines({ owner: { problems }, spec, path }, chosen2) {
  for (const [name, over] of Object.entries(spec.machines ?? {})) {
    if (name === chosen2 || !over.machine) continue;
    readMachine([{ spec: over.machine, path: [...path, "machines", name, "machine"], problems }]);
  }
}
function onMachine(spec, over) {
  const own = { ...over, ...over.machine };
  const days = Object.entries(spec.measured_on ?? {}).filter(([key]) => !(isDated(key) && own[key] !== void 0));
  const measuredOn2 = { ...Object.fromEntries(days), ...over.measured_on };
  const merged2 = {
    ...spec,
    ...over,
    machine: { ...spec.machine, ...over.machine },
    measured_on: measuredOn2
  };
  if (Object.keys(measuredOn2).length === 0) delete merged2.measured_on;
  return merged2;
}
function tellContradiction({ problems }, place, base, over) {
  const hasKerf = over.says?.kerf === true;
  if (hasKerf === over.says?.minWeb || !(hasKerf ? base.says?.minWeb : base.says?.kerf)) return;
  const [beam, web2] = hasKerf ? [over.kerf, base.minWeb] : [base.kerf, over.minWeb];
  if (web2 >= beam) return;
  const message = `\u201Cmin_web\u201D is ${mm(web2)}, less than the kerf of ${mm(beam)}: one of the two is wrong.`;
  problems.error("bad-length", [...place, hasKerf ? "kerf" : "min_web"], message);
}

// src/spec/read-workshop.ts
function readWorkshop(scope) {
  for (const { owner, name: name2, spec } of members(scope, "stocks")) {
    const place = { owner, spec, path: ["stocks", name2] };
    readStockOn(place, void 0);
    readMachine(stockMachineLayers(place, void 0));
    readOtherMachines(place, void 0);
  }
  for (const { owner, name: name2, spec } of members(scope, "ties")) readTie(owner, spec, ["ties", name2]);
  const stock = chosen(scope, "stock", "stocks");
  const tie = chosen(scope, "tie", "ties");
  const sheet = giver(scope, "sheet");
  const machine = giver(scope, "machine");
  const machineName = typeof machine?.spec.machine === "string" ? machine.spec.machine : void 0;
  for (const [name2, spec] of Object.entries(scope.spec.machines ?? {}))
    if (name2 !== machineName) readMachine([{ spec, path: ["machines", name2], problems: scope.problems }]);
  const [, name] = stock?.path ?? [];
  const read = stock ? readStockOn(stock, machineName, name === void 0 ? void 0 : String(name)) : defaultStock;
  if (stock) readOtherMachines(stock, machineName);
  if (stock && read.price?.per === "sheet" && !sheet) {
    const message = "A price per sheet needs the size of a sheet: \u201Csheet\u201D.";
    stock.owner.problems.error("missing-key", [...stock.path, "price", "per"], message);
  }
  return {
    stock: read,
    tie: tie && readTie(tie.owner, tie.spec, tie.path),
    sheet: sheet && readSheet(sheet),
    machine: readMachine(machineLayers(scope, machine, stock), machineName),
    output: readOutput(giver(scope, "output") ?? scope)
  };
}
function machineLayers(scope, giver2, stock) {
  const machine = giver2?.spec.machine;
  const name = typeof machine === "string" ? machine : void 0;
  const ofStock = stock ? stockMachineLayers(stock, name) : [];
  if (!giver2 || machine === void 0) return ofStock;
  if (typeof machine !== "string") {
    const whole2 = { spec: machine, path: ["machine"], problems: giver2.problems };
    return giver2 === scope ? [whole2, ...ofStock] : [...ofStock, whole2];
  }
  const owner = giver2.require("machines", machine, ["machine"]);
  const spec = owner?.spec.machines?.[machine];
  return owner && spec ? [...ofStock, { spec, path: ["machines", machine], problems: owner.problems }] : ofStock;
}
function giver(scope, key) {
  if (scope.spec[key] !== void 0) return scope;
  const givers = scope.uses.flatMap((used) => giver(used, key) ?? []);
  const sources2 = new Set(givers.map(({ problems }) => problems.source));
  if (sources2.size > 1) {
    const message = `Several of the used files set \u201C${key}\u201D; set it in this file too, so that it is clear which counts.`;
    scope.problems.error("name-clash", ["use"], message);
  }
  return givers[0];
}
function chosen(scope, key, group) {
  const from = giver(scope, key);
  const value = from?.spec[key];
  if (!from || value === void 0) return void 0;
  if (typeof value !== "string") return { owner: from, spec: value, path: [key] };
  const owner = from.require(group, value, [key]);
  const spec = owner?.spec[group]?.[value];
  return owner && spec && { owner, spec, path: [group, value] };
}
function members(scope, group) {
  const own = Object.entries(scope.spec[group] ?? {}).filter(
    ([name]) => scope.spec[group === "stocks" ? "stock" : "tie"] !== name
  );
  return own.map(([name, spec]) => ({ owner: scope, name, spec }));
}
function readTie({ problems }, spec, path) {
  const kinds2 = ["twine", "ribbon"].filter((kind2) => problems.wrote([...path, kind2]));
  const [kind] = kinds2;
  if (!kind) problems.error("missing-key", path, "A tie needs \u201Ctwine\u201D or \u201Cribbon\u201D.");
  if (kinds2.length > 1) problems.error("bad-value", path, "A tie is either \u201Ctwine\u201D or \u201Cribbon\u201D, not both.");
  const size = kind && problems.length(spec[kind], [...path, kind], "size");
  const opening = problems.measured(spec.opening, [...path, "opening"], "opening");
  const openingOn = spec.measured_on;
  const day = [...path, "measured_on"];
  if (openingOn !== void 0 && !isDay(openingOn)) problems.error("bad-value", day, `There is no day ${openingOn}.`);
  else if (openingOn !== void 0 && !problems.wrote([...path, "opening"]))
    problems.error("missing-key", day, "\u201Cmeasured_on\u201D is the day of \u201Copening\u201D, which this tie does not have.");
  if (kind === "twine" && size !== void 0 && opening !== void 0 && opening < size)
    problems.error(
      "bad-length",
      [...path, "opening"],
      `\u201Copening\u201D is ${mm(opening)}, less than the twine of ${mm(size)}: one of the two is wrong.`
    );
  if (!kind || size === void 0) return void 0;
  return {
    kind,
    size,
    ...opening === void 0 ? {} : { opening },
    ...opening === void 0 || openingOn === void 0 ? {} : { openingOn }
  };
}
var usualGapMm = 2;
function readSheet({ spec: { sheet }, problems }) {
  const written = sheet?.size ?? [];
  const side3 = (index) => problems.length(written[index], ["sheet", "size", index], "size");
  const [width, height] = [side3(0), side3(1)];
  const margin = problems.length(sheet?.margin, ["sheet", "margin"], "distance") ?? 0;
  const gap = problems.length(sheet?.gap, ["sheet", "gap"], "distance") ?? usualGapMm;
  if (width === void 0 || height === void 0) return void 0;
  if (2 * margin >= Math.min(width, height)) {
    problems.error("bad-length", ["sheet", "margin"], "The margins leave nothing of the sheet.");
  }
  return { width, height, margin, gap, turn: sheet?.turn ?? "half", copies: sheet?.copies ?? 1 };
}

// src/spec/read-plates.ts
var usualExponent = 2.5;
var usualRoof = 1 / 3;
var usualCut = 1 / 4;
var usualBite = 1 / 5;
var heartProportion = (1.5 * Math.SQRT1_2 + 0.5) / (Math.SQRT1_2 + 1);
function readRectangle(spec, path, problems) {
  const [width, height] = readSize(spec.rectangle, [...path, "rectangle"], problems);
  const radius = problems.length(spec.radius, [...path, "radius"], "distance") ?? 0;
  if (!width || !height) return void 0;
  atMost(radius, Math.min(width, height) / 2, "half the shorter side", [...path, "radius"], problems);
  return { kind: "rectangle", width, height, radius };
}
function readEllipse(value, path, problems) {
  const [width, height] = Array.isArray(value) ? readSize(value, path, problems) : Array(2).fill(problems.length(value, path, "size"));
  return width && height ? { kind: "ellipse", width, height } : void 0;
}
function readPolygon(spec, path, problems) {
  const { sides, points } = spec;
  if (sides === void 0 === (points === void 0)) {
    problems.error("bad-value", path, "A polygon needs either sides and across, or points.");
    return void 0;
  }
  if (points) {
    const read = points.flatMap((pair, index) => {
      const right = problems.length(pair[0], [...path, "points", index, 0], "signed");
      const down = problems.length(pair[1], [...path, "points", index, 1], "signed");
      return right === void 0 || down === void 0 ? [] : [{ x: right, y: -down }];
    });
    return { kind: "points", points: read };
  }
  const across2 = problems.length(spec.across, [...path, "across"], "size");
  if (spec.across === void 0) problems.error("missing-key", path, "\u201Cpolygon\u201D needs \u201Cacross\u201D beside \u201Csides\u201D.");
  return across2 === void 0 ? void 0 : { kind: "regular", sides, across: across2 };
}
function readArrow(arrow2, path, problems) {
  const at2 = (key) => [...path, key];
  const length = problems.length(arrow2.length, at2("length"), "size");
  const width = problems.length(arrow2.width, at2("width"), "size");
  const head = problems.length(arrow2.head, at2("head"), "size") ?? width;
  const notch = problems.length(arrow2.notch, at2("notch"), "size") ?? (width ?? 0) / 2;
  if (!length || !width || !head) return void 0;
  if (head < width) problems.error("bad-length", at2("head"), "The head cannot be narrower than the shaft.");
  const tipDegrees = arrow2.tip ?? 90;
  const tail = arrow2.tail ?? "straight";
  const point = head / 2 / Math.tan(tipDegrees * Math.PI / 360);
  const taken = point + (tail === "straight" ? 0 : notch);
  if (taken >= length) {
    const message = `The tip and the tail alone are ${mm(taken, 1)}; the arrow must be longer.`;
    problems.error("bad-length", at2("length"), message);
  }
  return { kind: "arrow", length, width, head, tipDegrees, tail, notch };
}
function readOval(oval2, path, problems) {
  const [width, height] = readSize(oval2.size, [...path, "size"], problems);
  return width && height ? { kind: "oval", width, height, exponent: oval2.exponent ?? usualExponent } : void 0;
}
function readHeart(value, path, problems) {
  if (Array.isArray(value)) {
    const [width2, height] = readSize(value, path, problems);
    return width2 && height ? { kind: "heart", width: width2, height } : void 0;
  }
  const width = problems.length(value, path, "size");
  return width === void 0 ? void 0 : { kind: "heart", width, height: width * heartProportion };
}
function readHouse(house2, path, problems) {
  const [width, height] = readSize(house2.size, [...path, "size"], problems);
  const roof = problems.length(house2.roof, [...path, "roof"], "size");
  const eaves = problems.length(house2.eaves, [...path, "eaves"], "distance") ?? 0;
  if (!width || !height) return void 0;
  lessThan(roof ?? 0, height, "the height", [...path, "roof"], problems);
  lessThan(eaves, width / 2, "half the width", [...path, "eaves"], problems);
  return { kind: "house", width, height, roof: roof ?? height * usualRoof, eaves };
}
function readLabel(label2, path, problems) {
  const [width, height] = readSize(label2.size, [...path, "size"], problems);
  const cut = problems.length(label2.clip, [...path, "clip"], "size");
  if (!width || !height) return void 0;
  const end = label2.end ?? "left";
  const [across2, along2] = end === "left" || end === "right" ? [height, width] : [width, height];
  const most4 = Math.min(across2 / 2, along2);
  atMost(cut ?? 0, most4, most4 === along2 ? "the length" : "half the end", [...path, "clip"], problems);
  return { kind: "label", width, height, cut: cut ?? Math.min(across2 * usualCut, along2), end };
}
function readTicket(ticket2, path, problems) {
  const [width, height] = readSize(ticket2.size, [...path, "size"], problems);
  const bite = problems.length(ticket2.bite, [...path, "bite"], "size");
  if (!width || !height) return void 0;
  const shorter = Math.min(width, height);
  lessThan(bite ?? 0, shorter / 2, "half the shorter side", [...path, "bite"], problems);
  return { kind: "ticket", width, height, bite: bite ?? shorter * usualBite };
}
var fewestLobes = 2;
var mostLobes = 200;
function readScallops(spec, path, problems) {
  const rectangular = spec.size !== void 0 && spec.lobe !== void 0;
  const round3 = spec.across !== void 0 && spec.lobes !== void 0;
  const written = ["size", "lobe", "across", "lobes"].filter((key) => problems.wrote([...path, key]));
  if (written.length !== 2 || rectangular === round3) {
    const faulty = written.some((key) => spec[key] === void 0);
    if (!faulty) problems.error("bad-value", path, "Scallops need either size and lobe, or across and lobes.");
    return void 0;
  }
  if (round3) {
    const across2 = problems.length(spec.across, [...path, "across"], "size");
    return across2 === void 0 ? void 0 : { kind: "scalloped-disc", across: across2, lobes: spec.lobes };
  }
  const [width, height] = readSize(spec.size, [...path, "size"], problems);
  const lobe = problems.length(spec.lobe, [...path, "lobe"], "size");
  if (!width || !height || !lobe) return void 0;
  const [columns3, rows] = [Math.round(width / lobe), Math.round(height / lobe)];
  if (Math.min(columns3, rows) < fewestLobes)
    problems.error("bad-length", [...path, "lobe"], "Not even two lobes of this width fit along the shorter side.");
  if (Math.max(columns3, rows) > mostLobes)
    problems.error("bad-length", [...path, "lobe"], `More than ${mostLobes} lobes would fit along a side.`);
  return { kind: "scalloped-rectangle", width, height, columns: columns3, rows };
}
function readSize(size, path, problems) {
  return size.map((value, index) => problems.length(value, [...path, index], "size"));
}
function atMost(length, most4, what, path, problems) {
  if (length <= most4) return;
  const suggestions = most4 > 0.01 ? [`${Math.floor(most4 * 100) / 100} mm`] : [];
  const message = `\u201C${String(path.at(-1))}\u201D can be at most ${what}, ${limit(most4)}.`;
  problems.error("bad-length", path, message, { suggestions });
}
function lessThan(length, bound, what, path, problems) {
  if (length >= bound)
    problems.error("bad-length", path, `\u201C${String(path.at(-1))}\u201D must be less than ${what}, ${limit(bound)}.`);
}

// src/text/font-files.ts
function isFontFile(font2) {
  return /\.(ttf|otf|ttc|otc|woff2?)$/i.test(font2);
}
var maxFontBytes = 64 * 1024 * 1024;

// src/spec/read-text.ts
var defaultFont = "Nunito";
var fontSizes = { size: "em", cap_height: "capitals", x_height: "small letters" };
var fontSizeKeys = Object.keys(fontSizes);
var outlineSizes = ["width", "height", "fit"];
function readText(spec, path, problems) {
  const at2 = (key) => [...path, key];
  const text = problems.filled(spec.text, at2("text"));
  if (text?.trim() === "") tellEmpty(spec.text, at2("text"), problems);
  const size = readFontSize(spec, path, problems);
  const arc2 = spec.arc && readArc(spec, path, problems);
  const overlap2 = readOverlap(spec, at2("overlap"), problems);
  if (text === void 0 || spec.arc && !arc2) return void 0;
  return {
    kind: "text",
    text,
    font: isFontFile(spec.font ?? "") ? problems.beside(spec.font) : spec.font ?? defaultFont,
    weight: spec.weight ?? 400,
    weightAsked: spec.weight !== void 0,
    italic: spec.italic ?? false,
    ...size === void 0 ? {} : { size },
    ...arc2 ? { arc: arc2 } : {},
    letterSpacingMm: problems.length(spec.letter_spacing, at2("letter_spacing"), "signed") ?? 0,
    ...overlap2 === void 0 ? {} : { overlap: overlap2 },
    ...spec.line_height === void 0 ? {} : { lineHeight: spec.line_height },
    align: spec.align ?? "center",
    features: spec.features ?? {}
  };
}
function tellEmpty(written, path, problems) {
  const filling = written.trim() === "" ? void 0 : problems.row;
  if (!filling) problems.error("bad-value", path, "The text is empty.");
  else {
    const { label: label2, line, path: row2 } = filling.row;
    const where2 = line === void 0 ? "" : `, line ${line} of its file`;
    filling.problems.error("bad-value", row2, `${clip(written)} is empty in \u201C${clip(label2)}\u201D${where2}.`);
  }
}
function readFontSize(spec, path, problems) {
  const written = fontSizeKeys.filter((key) => problems.wrote([...path, key]));
  const others2 = outlineSizes.filter((key) => problems.wrote([...path, key]));
  const [first, second] = written;
  if (!first && others2.length === 0) {
    problems.error("missing-key", path, "This text has no size: add width, height or x_height.");
  }
  const rival = second ?? others2[0];
  if (first && rival) {
    problems.error("bad-value", [...path, first], `\u201C${first}\u201D and \u201C${rival}\u201D both set the size; keep one.`, {
      range: problems.source.keyRange([...path, first])
    });
    return void 0;
  }
  const mm3 = first && problems.length(spec[first], [...path, first], "size");
  return mm3 === void 0 ? void 0 : { of: fontSizes[first], mm: mm3 };
}
function readOverlap(spec, path, problems) {
  const rival = ["width", "height"].find((key) => spec[key] !== void 0);
  if (spec.overlap !== void 0 && spec.arc?.radius !== void 0 && rival) {
    problems.error(
      "bad-value",
      path,
      `\u201Coverlap\u201D changes the ${rival}, and so the circle; give \u201Cx_height\u201D or \u201Csize\u201D instead of \u201C${rival}\u201D, or \u201Csweep\u201D instead of the radius.`,
      { range: problems.source.keyRange(path) }
    );
    return void 0;
  }
  return problems.length(spec.overlap, path, "size");
}
function readArc(spec, path, problems) {
  const { radius, sweep, at: at2 = "top" } = spec.arc;
  const arcPath = [...path, "arc"];
  const written = ["radius", "sweep"].filter((key) => problems.wrote([...arcPath, key]));
  if (written.length !== 1) {
    problems.error("bad-value", arcPath, "An arc needs either a radius or a sweep in degrees.");
    return void 0;
  }
  if (sweep !== void 0) return { at: at2, sweep };
  const mm3 = problems.length(radius, [...arcPath, "radius"], "size");
  if (mm3 === void 0) return void 0;
  if (spec.fit || spec.width !== void 0 && spec.height !== void 0) {
    const rival = spec.fit ? "\u201Cfit\u201D changes" : "\u201Cwidth\u201D and \u201Cheight\u201D together stretch";
    problems.error(
      "bad-value",
      [...arcPath, "radius"],
      `${rival} the circle too; give \u201Csweep\u201D instead of its radius.`,
      {
        range: problems.source.keyRange([...arcPath, "radius"])
      }
    );
    return void 0;
  }
  return { at: at2, radius: mm3 };
}

// src/spec/read-generator.ts
var generators = {
  text: [
    ...["font", "weight", "italic", "features", "letter_spacing", "overlap", "line_height", "align"],
    ...["size", "cap_height", "x_height", "arc"]
  ],
  rectangle: ["radius"],
  ellipse: [],
  polygon: [],
  arrow: [],
  oval: [],
  heart: [],
  house: [],
  label: [],
  ticket: [],
  scallops: [],
  stack: [],
  path: [],
  drawing: [],
  around: ["by", "holes", "bays"],
  union: [],
  difference: [],
  intersection: [],
  from: []
};
var generatorKeys = Object.keys(generators);
function generatorKeyOf(spec, path, problems) {
  const present = generatorKeys.filter((key2) => spec[key2] !== void 0);
  if (present.length !== 1) {
    const intended = generatorKeys.filter((key2) => problems.wrote([...path, key2]));
    if (present.length === 0 && (intended.length > 0 || misspelt(path, problems))) return void 0;
    const message = present.length === 0 ? `A shape needs one of ${generatorKeys.join(", ")}.` : `A shape has one of ${present.join(", ")}, not several; use union to put shapes together.`;
    problems.error(present.length === 0 ? "missing-key" : "bad-value", path, message);
    return void 0;
  }
  const key = present[0];
  for (const [other, companions] of Object.entries(generators)) {
    if (other === key) continue;
    for (const companion of companions) {
      if (spec[companion] === void 0) continue;
      const range = problems.source.keyRange([...path, companion]);
      problems.error(
        "bad-value",
        [...path, companion],
        `\u201C${companion}\u201D goes with ${other}, but this shape is a ${key}.`,
        { range }
      );
    }
  }
  return key;
}
function misspelt(path, problems) {
  return problems.keysAt(path).some((key) => nearest2(key, generatorKeys).length > 0);
}
function readGenerator(key, spec, path, problems, shapes) {
  const at2 = (...steps2) => [...path, ...steps2];
  switch (key) {
    case "text":
      return readText(spec, path, problems);
    case "rectangle":
      return readRectangle(spec, path, problems);
    case "ellipse":
      return readEllipse(spec.ellipse, at2("ellipse"), problems);
    case "polygon":
      return readPolygon(spec.polygon, at2("polygon"), problems);
    case "arrow":
      return readArrow(spec.arrow, at2("arrow"), problems);
    case "oval":
      return readOval(spec.oval, at2("oval"), problems);
    case "heart":
      return readHeart(spec.heart, at2("heart"), problems);
    case "house":
      return readHouse(spec.house, at2("house"), problems);
    case "label":
      return readLabel(spec.label, at2("label"), problems);
    case "ticket":
      return readTicket(spec.ticket, at2("ticket"), problems);
    case "scallops":
      return readScallops(spec.scallops, at2("scallops"), problems);
    case "stack": {
      const stack = spec.stack;
      const members2 = readList(stack.shapes, at2("stack", "shapes"), shapes);
      const lap = problems.length(stack.lap, at2("stack", "lap"), "distance");
      return {
        kind: "stack",
        shapes: members2,
        towards: stack.towards ?? "down",
        ...lap === void 0 ? {} : { lap }
      };
    }
    case "path":
      return { kind: "path", data: spec.path, mmPerUnit: problems.units === "in" ? mmPerInch : 1 };
    case "drawing":
      return { kind: "drawing", file: problems.beside(spec.drawing) };
    case "around": {
      const shape = shapes.byRef(spec.around, at2("around"));
      const by = problems.length(spec.by, at2("by"), "distance");
      const corners = spec.corners ?? "round";
      const bays = problems.length(spec.bays, at2("bays"), "distance") ?? (corners === "round" ? by : 0);
      if (spec.by === void 0)
        problems.error("missing-key", path, "\u201Caround\u201D needs \u201Cby\u201D: the distance of the outline.");
      if (!shape || by === void 0 || bays === void 0) return void 0;
      return { kind: "around", shape, by, corners, keepHoles: spec.holes === "keep", bays };
    }
    case "union":
    case "difference":
    case "intersection":
      return { kind: key, shapes: readList(spec[key], at2(key), shapes) };
    case "from": {
      const shape = shapes.byRef(spec.from, at2("from"));
      return shape && { kind: "from", shape };
    }
  }
}
function readList(refs, path, shapes) {
  const written = refs;
  return [...written].flatMap((ref, index) => ref === void 0 ? [] : shapes.byRef(ref, [...path, index]) ?? []);
}

// src/spec/read-modifiers.ts
function readModifiers(spec, path, problems, shapes) {
  const length = (key, sign2) => {
    const value = problems.length(spec[key], [...path, key], sign2);
    return value === void 0 ? {} : { [key]: value };
  };
  const fitTarget = spec.fit && readTarget(spec.fit.in, spec.fit.part, [...path, "fit"], "in", problems, shapes);
  const placeTarget = spec.place && readTarget(spec.place.on, spec.place.part, [...path, "place"], "on", problems, shapes);
  const margin = (value, key) => problems.length(value, [...path, key, "margin"], "distance") ?? 0;
  const nudge = problems.nudge(spec.nudge, [...path, "nudge"]);
  const bridges = readBridges(spec.bridges, [...path, "bridges"], problems);
  if (fitTarget && (spec.width !== void 0 || spec.height !== void 0)) {
    problems.error("bad-value", [...path, "fit"], "\u201Cfit\u201D sets the size itself; leave out width and height.", {
      range: problems.source.keyRange([...path, "fit"])
    });
  }
  return {
    ...length("tidy", "distance"),
    ...length("grow", "signed"),
    corners: spec.corners ?? "round",
    ...length("width", "size"),
    ...length("height", "size"),
    ...fitTarget ? { fit: { ...fitTarget, ...readFit(spec, [...path, "fit"], problems) } } : {},
    ...length("straps", "size"),
    ...bridges ? { bridges } : {},
    ...spec.rotate === void 0 ? {} : { rotate: spec.rotate },
    ...spec.mirror === void 0 ? {} : { mirror: spec.mirror },
    ...placeTarget ? {
      place: {
        ...placeTarget,
        at: spec.place.at ?? "center",
        margin: margin(spec.place.margin, "place"),
        by: spec.place.by ?? "eye"
      }
    } : {},
    ...nudge ? { nudge } : {}
  };
}
function readFit(spec, path, problems) {
  const { margin, clear, at_most: most4 } = spec.fit;
  const edge = problems.length(margin, [...path, "margin"], "distance") ?? 0;
  const atMost2 = (key) => {
    const at2 = [...path, "at_most", key];
    if (most4?.[key] === void 0) return void 0;
    if (key !== "width" && spec.text === void 0) {
      problems.error("bad-value", at2, `\u201C${key}\u201D goes with text; give \u201Cwidth\u201D.`, {
        range: problems.source.keyRange(at2)
      });
      return void 0;
    }
    return problems.length(most4[key], at2, "size");
  };
  const [small, capitals, width] = [atMost2("x_height"), atMost2("cap_height"), atMost2("width")];
  return {
    margin: edge,
    clear: problems.length(clear, [...path, "clear"], "distance") ?? edge,
    ...most4 ? {
      atMost: {
        ...small === void 0 ? {} : { "small letters": small },
        ...capitals === void 0 ? {} : { capitals },
        ...width === void 0 ? {} : { width }
      }
    } : {}
  };
}
function readBridges(spec, path, problems) {
  if (spec === void 0) return void 0;
  if (typeof spec !== "object") {
    const width2 = problems.length(spec, path, "size");
    return width2 === void 0 ? void 0 : { width: width2, sides: ["top", "bottom"] };
  }
  const width = problems.length(spec.width, [...path, "width"], "size");
  return width === void 0 ? void 0 : { width, sides: (spec.at ?? "top-bottom").split("-") };
}
function readTarget(name, part, path, key, problems, shapes) {
  if (part === void 0) return shapes.placed(name, [...path, key]);
  const shape = shapes.byName(name, [...path, key]);
  if (!shape) return void 0;
  const members2 = shape.generator.kind === "stack" ? shape.generator.shapes.map((member) => member.name) : [];
  if (members2.includes(part)) return { shape, part };
  const suggestions = nearest2(part, members2);
  const message = members2.length === 0 ? `\u201C${name}\u201D is not a stack and has no parts.` : `\u201C${name}\u201D has no part \u201C${part}\u201D.${didYouMean(suggestions)}`;
  problems.error("unknown-shape", [...path, "part"], message, { suggestions });
  return void 0;
}

// src/spec/read-shapes.ts
var deepest3 = 200;
var ShapeReader = class {
  #specs;
  #members;
  #problems;
  /** `undefined`: was tried, and its problem has been told. */
  #done = /* @__PURE__ */ new Map();
  /** Shapes written in place, by the place: whoever comes to one again gets the same. */
  #inPlace = /* @__PURE__ */ new Map();
  #underWay = [];
  #scope;
  #depth = 0;
  constructor(spec, problems, scope) {
    this.#specs = spec.shapes ?? {};
    this.#members = new StackMembers(this.#specs, problems.base.length === 0 ? spec.pieces ?? {} : {});
    this.#problems = problems;
    this.#scope = scope;
  }
  /** All named shapes that can be read, those of used files first. */
  all() {
    const shapes = new Map(this.#scope.uses.flatMap((used) => [...used.shapes.all()]));
    for (const name of Object.keys(this.#specs)) {
      const shape = this.#named(name);
      if (shape) shapes.set(name, shape);
    }
    return shapes;
  }
  /** The shape of that name; an issue at `path` where there is none. */
  byName(name, path) {
    if (Object.hasOwn(this.#specs, name)) {
      const loop = this.#underWay.indexOf(name);
      if (loop < 0) return this.#named(name);
      const round3 = [...this.#underWay.slice(loop), name].join(" \u2192 ");
      this.#problems.error("cycle", path, `\u201C${name}\u201D is made from itself: ${round3}.`);
      return void 0;
    }
    const owner = this.#scope.require("shapes", name, path);
    return owner?.shapes.byName(name, path);
  }
  /** A name or a shape written in place. */
  byRef(ref, path) {
    if (typeof ref === "string") return this.byName(ref, path);
    const place = JSON.stringify(path);
    if (!this.#inPlace.has(place)) this.#inPlace.set(place, this.#read(ref, path, void 0));
    return this.#inPlace.get(place);
  }
  /**
   * What is meant by putting something on the shape of that name, or into it: a member of a stack where the stack has put it.
   * One that is a body by itself as well is meant by itself, and so is one whose stack is made from what is put on it.
   */
  placed(name, path) {
    const shape = this.byName(name, path);
    if (!shape || this.#members.isBody(name)) return shape && { shape };
    const putting = this.#underWay.at(-1);
    const stacks = this.#stacksWith(name).filter(
      ({ reader, ref }) => reader !== this || putting === void 0 || !this.#members.leadsTo(ref, putting)
    );
    if (stacks.length > 1) {
      const names = stacks.flatMap(({ ref }) => typeof ref === "string" ? [ref] : []);
      const which = names.length > 0 ? names.map((each) => `\u201C${each}\u201D`).join(" and ") : "several";
      const example = `on: ${names[0] ?? "plate"}, part: ${name}`;
      this.#problems.error(
        "bad-value",
        path,
        `\u201C${name}\u201D is a member of more than one stack: ${which}. Say where: {${example}}.`
      );
      return void 0;
    }
    const [only] = stacks;
    const stack = only && only.reader.#stack(only.ref, path);
    return stack ? { shape: stack, part: name } : { shape };
  }
  /** Those of this file and, for a name of another, those of that file. */
  #stacksWith(name) {
    const own = this.#members.stacksWith(name).map((ref) => ({ reader: this, ref }));
    if (Object.hasOwn(this.#specs, name)) return own;
    const owner = this.#scope.owner("shapes", name)?.shapes;
    return owner && owner !== this ? [...own, ...owner.#stacksWith(name)] : own;
  }
  #stack(ref, path) {
    if (typeof ref === "string") return this.byName(ref, path);
    return this.byRef(this.#members.written(ref), ["pieces", ref.piece, "body", ref.index]);
  }
  #named(name) {
    if (this.#done.has(name)) return this.#done.get(name);
    this.#underWay.push(name);
    const shape = this.#read(this.#specs[name], ["shapes", name], name);
    this.#underWay.pop();
    this.#done.set(name, shape);
    return shape;
  }
  #read(spec, path, name) {
    if (this.#depth >= deepest3) {
      this.#problems.error("bad-value", path, `Shapes are nested more than ${deepest3} deep here.`);
      return void 0;
    }
    this.#depth++;
    try {
      const key = generatorKeyOf(spec, path, this.#problems);
      const before = this.#problems.issues.length;
      const generator = key && readGenerator(key, spec, path, this.#problems, this);
      const modifiers = readModifiers(spec, path, this.#problems, this);
      const clean = this.#problems.issues.length === before;
      if (!generator || !clean) return void 0;
      return { ...name === void 0 ? {} : { name }, path: this.#problems.inSpec(path), generator, modifiers };
    } finally {
      this.#depth--;
    }
  }
};

// src/spec/validate.generated.mjs
var __getOwnPropNames = Object.getOwnPropertyNames;
var __commonJS = (cb, mod) => function __require() {
  try {
    return mod || (0, cb[__getOwnPropNames(cb)[0]])((mod = { exports: {} }).exports, mod), mod.exports;
  } catch (e) {
    throw mod = 0, e;
  }
};
var require_ucs2length = __commonJS({
  "node_modules/ajv/dist/runtime/ucs2length.js"(exports) {
    "use strict";
    Object.defineProperty(exports, "__esModule", { value: true });
    function ucs2length(str) {
      const len = str.length;
      let length = 0;
      let pos = 0;
      let value;
      while (pos < len) {
        length++;
        value = str.charCodeAt(pos++);
        if (value >= 55296 && value <= 56319 && pos < len) {
          value = str.charCodeAt(pos);
          if ((value & 64512) === 56320)
            pos++;
        }
      }
      return length;
    }
    exports.default = ucs2length;
    ucs2length.code = 'require("ajv/dist/runtime/ucs2length").default';
  }
});
var stdin_default = validate10;
var schema11 = { "$schema": "http://json-schema.org/draft-07/schema#", "$id": "https://tagwright.invalid/schemas/tag.schema.json", "title": "TagSpec", "description": "A hang tag: the stock it is cut from, the tie it hangs on, the shapes it is made of and the pieces that are cut free.", "type": "object", "additionalProperties": false, "required": ["tagwright", "pieces"], "properties": { "tagwright": { "const": 1, "description": "Version of the spec language. Always 1." }, "title": { "type": "string", "maxLength": 200, "description": "What the tag is called in lists, files and proofs.", "examples": ["Seed-jar tag"] }, "units": { "enum": ["mm", "in"], "default": "mm", "description": "Unit of lengths written as bare numbers." }, "use": { "description": "Files beside the spec that bring what many specs share: stocks, ties, hangers and shapes.", "anyOf": [{ "$ref": "#/definitions/specFile" }, { "type": "array", "minItems": 1, "maxItems": 20, "items": { "$ref": "#/definitions/specFile" } }] }, "stock": { "description": "The sheet the tag is cut from, or the name of one under `stocks`.", "anyOf": [{ "$ref": "#/definitions/stockName" }, { "$ref": "#/definitions/stock" }] }, "stocks": { "type": "object", "description": "Named stocks, for a file that many specs use.", "propertyNames": { "pattern": "^[A-Za-z][A-Za-z0-9_-]*$" }, "additionalProperties": { "$ref": "#/definitions/stock" } }, "tie": { "description": "What the tag hangs on, or the name of a tie under `ties`.", "anyOf": [{ "$ref": "#/definitions/tieName" }, { "$ref": "#/definitions/tie" }] }, "ties": { "type": "object", "description": "Named ties, for a file that many specs use.", "propertyNames": { "pattern": "^[A-Za-z][A-Za-z0-9_-]*$" }, "additionalProperties": { "$ref": "#/definitions/tie" } }, "batch": { "$ref": "#/definitions/batch", "examples": [["Sorrel", "Borage", "Lovage"]] }, "sheet": { "$ref": "#/definitions/sheet", "examples": [{ "size": ["600 mm", "400 mm"], "margin": "5 mm" }] }, "machine": { "description": "How fast your machine works, for the time estimate; or the name of one under `machines`: the values that a stock has for it then count.", "anyOf": [{ "$ref": "#/definitions/machineName" }, { "$ref": "#/definitions/machine" }], "examples": [{ "cut": "12 mm/s", "score": "60 mm/s", "engrave": "250 mm/s", "acceleration": "1500 mm/s2" }] }, "machines": { "type": "object", "description": "Named machines, for a workshop with more than one.", "propertyNames": { "pattern": "^[A-Za-z][A-Za-z0-9_-]*$" }, "additionalProperties": { "$ref": "#/definitions/machine" } }, "output": { "$ref": "#/definitions/output", "examples": [{ "tabs": 2 }] }, "hangers": { "type": "object", "description": "Named hangers, for several pieces or several specs.", "propertyNames": { "pattern": "^[A-Za-z][A-Za-z0-9_-]*$" }, "additionalProperties": { "$ref": "#/definitions/hanger" } }, "shapes": { "type": "object", "description": "Named shapes. Each has one generator (text, rectangle, around \u2026), then modifiers (grow, width, place \u2026).", "propertyNames": { "pattern": "^[A-Za-z][A-Za-z0-9_-]*$" }, "additionalProperties": { "$ref": "#/definitions/shape" } }, "pieces": { "type": "object", "minProperties": 1, "description": "What the laser cuts free of the sheet.", "propertyNames": { "pattern": "^[A-Za-z][A-Za-z0-9_-]*$" }, "additionalProperties": { "$ref": "#/definitions/piece" } } }, "definitions": { "length": { "title": "Length", "description": "A finished length: a bare number in `units`, or a number with its unit such as 3 mm, 0.25 in, 1/4 in, 12 pt.", "type": ["number", "string"] }, "size": { "title": "Size", "description": "[width, height].", "type": "array", "items": [{ "$ref": "#/definitions/length" }, { "$ref": "#/definitions/length" }], "minItems": 2, "maxItems": 2, "examples": [["60 mm", "30 mm"]] }, "stockName": { "title": "StockName", "description": "The name of a stock.", "type": "string" }, "machineName": { "title": "MachineName", "description": "The name of a machine.", "type": "string" }, "tieName": { "title": "TieName", "description": "The name of a tie.", "type": "string" }, "hangerName": { "title": "HangerName", "description": "The name of a hanger.", "type": "string" }, "specFile": { "title": "SpecFile", "description": "The path of a spec beside this one.", "type": "string", "maxLength": 500 }, "shapeName": { "title": "ShapeName", "description": "The name of a shape.", "type": "string" }, "partName": { "title": "PartName", "description": "The name of a member of a stack.", "type": "string" }, "pieceName": { "title": "PieceName", "description": "The name of a piece.", "type": "string" }, "fontName": { "title": "FontName", "description": "A family name, or the path of a font file beside the spec.", "type": "string" }, "drawingFile": { "title": "DrawingFile", "description": "The path of an SVG file beside the spec.", "type": "string" }, "nudge": { "title": "Nudge", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "Moves the shape by hand: up, down, left, right.", "properties": { "up": { "$ref": "#/definitions/length", "examples": ["1 mm"] }, "down": { "$ref": "#/definitions/length", "examples": ["1 mm"] }, "left": { "$ref": "#/definitions/length", "examples": ["1 mm"] }, "right": { "$ref": "#/definitions/length", "examples": ["1 mm"] } }, "examples": [{ "up": "1 mm" }] }, "anchor": { "title": "Anchor", "enum": ["center", "top", "bottom", "left", "right", "top-left", "top-right", "bottom-left", "bottom-right"], "description": "A side, a corner or the centre." }, "corners": { "title": "CornerStyle", "enum": ["round", "miter", "bevel"], "default": "round", "description": "How corners are made when an outline is grown: rounded, kept sharp, or cut off." }, "place": { "title": "PlaceSpec", "type": "object", "additionalProperties": false, "required": ["on"], "description": "Puts the shape on another.", "properties": { "on": { "$ref": "#/definitions/shapeName", "description": "Name of the shape to put it on; a member of a stack counts where the stack puts it." }, "part": { "$ref": "#/definitions/partName", "description": "Only this member of a stack counts, such as the body without its neck." }, "at": { "$ref": "#/definitions/anchor", "default": "center" }, "margin": { "$ref": "#/definitions/length", "description": "Distance kept from the side or corner named in `at`.", "examples": ["3 mm"] }, "by": { "enum": ["box", "mass", "eye", "x-height"], "default": "eye", "description": "What is centred. box: the ruler's middle. mass: the centre of gravity. eye: what looks centred. x-height: the band of the small letters." } } }, "fit": { "title": "FitSpec", "type": "object", "additionalProperties": false, "required": ["in"], "description": "Makes the shape as large as will go anywhere inside another, less a margin and clear of what else is there.", "properties": { "in": { "$ref": "#/definitions/shapeName", "description": "Name of the shape to fill; a member of a stack counts where the stack puts it." }, "part": { "$ref": "#/definitions/partName", "description": "Only this member of a stack counts." }, "margin": { "$ref": "#/definitions/length", "default": 0, "description": "Material left free along the edge.", "examples": ["2 mm"] }, "clear": { "$ref": "#/definitions/length", "description": "Distance kept from the hangers and the cuts of the piece, and from its other marks; of two that are fitted, the one that comes first in the piece has the first choice. Default: the margin.", "examples": ["2 mm"] }, "at_most": { "title": "AtMost", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "Makes it no larger than this: smaller where there is no room, such as for a long name.", "properties": { "x_height": { "$ref": "#/definitions/length", "description": "For text: height of its small letters, as in `x_height`.", "examples": ["8 mm"] }, "cap_height": { "$ref": "#/definitions/length", "description": "For text: height of its capitals, as in `cap_height`.", "examples": ["12 mm"] }, "width": { "$ref": "#/definitions/length", "description": "Finished width.", "examples": ["50 mm"] } }, "examples": [{ "x_height": "8 mm" }] } } }, "shapeOrName": { "title": "ShapeOrName", "description": "The name of a shape, or a shape written in place.", "anyOf": [{ "$ref": "#/definitions/shapeName" }, { "$ref": "#/definitions/shape" }] }, "shapeList": { "title": "ShapeList", "type": "array", "minItems": 1, "items": { "$ref": "#/definitions/shapeOrName" } }, "shape": { "title": "ShapeSpec", "type": "object", "additionalProperties": false, "description": "One generator, then modifiers. Modifiers apply in a fixed order: tidy, grow, width/height, fit, straps, bridges, rotate, mirror, place, nudge.", "properties": { "text": { "type": "string", "maxLength": 300, "description": "Generator: lettering. A line break starts a new line. With a `batch`, {column} is replaced by the cell of each row.", "examples": ["Sorrel"] }, "font": { "$ref": "#/definitions/fontName", "description": "For text: a family name, or the path of a font file beside the spec.", "examples": ["Pacifico"] }, "weight": { "type": "integer", "minimum": 1, "maximum": 1e3, "default": 400, "description": "For text: 400 is regular, 700 bold.", "examples": [800] }, "italic": { "type": "boolean", "default": false, "description": "For text.", "examples": [true] }, "size": { "$ref": "#/definitions/length", "description": "For text: the em, as in CSS font-size. Leave it out and say width, height, cap_height or x_height instead to ask for a finished size.", "examples": ["24 mm"] }, "cap_height": { "$ref": "#/definitions/length", "description": "For text: finished height of its capitals, growth included. The font says how high they are, or else its H is measured.", "examples": ["12 mm"] }, "x_height": { "$ref": "#/definitions/length", "description": "For text: finished height of its small letters without their stems, growth included. The font says how high they are, or else its x is measured.", "examples": ["8 mm"] }, "arc": { "title": "ArcSpec", "type": "object", "additionalProperties": false, "description": "For text: sets it on a circle, by its radius or by the part of the circle that it takes. The middle of the circle is where the middle of a straight text would be, and what `place` centres `by: eye`.", "examples": [{ "radius": "30 mm", "at": "top" }], "properties": { "radius": { "$ref": "#/definitions/length", "description": "Radius of the circle that the letters stand on, before any growth.", "examples": ["30 mm"] }, "sweep": { "type": "number", "minimum": 1, "maximum": 360, "description": "Degrees of the circle that the text takes. The radius follows from its size.", "examples": [180] }, "at": { "enum": ["top", "bottom"], "default": "top", "description": "top: outside the circle, over the top. bottom: inside it, along the bottom, so that it reads from left to right too." } } }, "letter_spacing": { "$ref": "#/definitions/length", "description": "For text: space added between letters; negative makes them touch. Measured at the final size.", "examples": ["-0.3 mm"] }, "overlap": { "$ref": "#/definitions/length", "description": "For text: slides its letters together until they overlap and hold as one part. It is how far two letters may lap over each other at most; they go no further than their joint needs. Dots and accents are lowered and held by posts as wide as `min_web`, words are joined along the baseline. `grow` goes with it: sizes such as `width` or `x_height` are then those of the letters before growth, so that growing never shrinks them (`fit` includes the growth).", "examples": ["0.6 mm"] }, "line_height": { "type": "number", "exclusiveMinimum": 0, "maximum": 10, "description": "For text: distance between lines, as a multiple of the em.", "examples": [1.2] }, "align": { "enum": ["left", "center", "right"], "default": "center", "description": "For text of several lines." }, "features": { "type": "object", "additionalProperties": { "type": "boolean" }, "propertyNames": { "pattern": "^[A-Za-z0-9]{4}$" }, "description": "For text: OpenType features to switch on or off, such as {swsh: true, liga: false}.", "examples": [{ "swsh": true }] }, "rectangle": { "$ref": "#/definitions/size", "description": "Generator: a rectangle [width, height], with `radius` for round corners.", "examples": [["80 mm", "40 mm"]] }, "radius": { "$ref": "#/definitions/length", "default": 0, "description": "For rectangle: the radius of its corners.", "examples": ["4 mm"] }, "ellipse": { "description": "Generator: an ellipse [width, height], or a circle by its diameter.", "anyOf": [{ "$ref": "#/definitions/size" }, { "$ref": "#/definitions/length" }], "examples": [["50 mm", "30 mm"]] }, "polygon": { "title": "PolygonSpec", "type": "object", "additionalProperties": false, "description": "Generator: a regular polygon ({sides, across}) or one by its points, [right, down] as in SVG.", "properties": { "sides": { "type": "integer", "minimum": 3, "maximum": 120, "examples": [6], "description": "How many sides a regular polygon has." }, "across": { "$ref": "#/definitions/length", "description": "Diameter of the circle through the corners.", "examples": ["40 mm"] }, "points": { "type": "array", "minItems": 3, "maxItems": 5e3, "items": { "$ref": "#/definitions/size" }, "examples": [[["0 mm", "0 mm"], ["40 mm", "0 mm"], ["20 mm", "30 mm"]]], "description": "The corners in order, each [right, down]." } }, "examples": [{ "sides": 6, "across": "40 mm" }] }, "arrow": { "title": "ArrowSpec", "type": "object", "additionalProperties": false, "required": ["length", "width"], "description": "Generator: an arrow pointing right.", "properties": { "length": { "$ref": "#/definitions/length", "description": "From tip to tail.", "examples": ["90 mm"] }, "width": { "$ref": "#/definitions/length", "description": "Width of the shaft.", "examples": ["20 mm"] }, "head": { "$ref": "#/definitions/length", "description": "Width across the head. Default: the width of the shaft.", "examples": ["34 mm"] }, "tip": { "type": "number", "exclusiveMinimum": 10, "exclusiveMaximum": 175, "default": 90, "description": "Angle of the tip in degrees.", "examples": [75] }, "tail": { "enum": ["straight", "notched", "forked", "pointed"], "default": "straight", "description": "straight: cut square. notched: a V cut into it. forked: a V whose two points spread as wide as the head. pointed: drawn to a point." }, "notch": { "$ref": "#/definitions/length", "description": "How deep the V of the tail is, or how far it is drawn to a point. Default: half the width of the shaft.", "examples": ["6 mm"] } }, "examples": [{ "length": "90 mm", "width": "20 mm", "head": "34 mm" }] }, "oval": { "title": "OvalSpec", "type": "object", "additionalProperties": false, "required": ["size"], "description": "Generator: a superellipse, |2x/width|^e + |2y/height|^e = 1: fuller than an ellipse, softer than a rectangle.", "properties": { "size": { "$ref": "#/definitions/size" }, "exponent": { "type": "number", "minimum": 2, "maximum": 10, "default": 2.5, "description": "2 is an ellipse; the higher, the nearer to a rectangle.", "examples": [3] } }, "examples": [{ "size": ["60 mm", "40 mm"] }] }, "heart": { "description": "Generator: a heart [width, height], or by its width alone: a square on its corner with a half disc on each of its upper sides.", "anyOf": [{ "$ref": "#/definitions/size" }, { "$ref": "#/definitions/length" }], "examples": [["50 mm", "46 mm"]] }, "house": { "title": "HouseSpec", "type": "object", "additionalProperties": false, "required": ["size"], "description": "Generator: the front of a house: walls under a gable.", "properties": { "size": { "$ref": "#/definitions/size", "description": "[width, height] of the whole house, roof and eaves included." }, "roof": { "$ref": "#/definitions/length", "description": "Height of the gable. Default: a third of the whole height.", "examples": ["20 mm"] }, "eaves": { "$ref": "#/definitions/length", "default": 0, "description": "How far the roof overhangs the walls on each side.", "examples": ["2 mm"] } }, "examples": [{ "size": ["44 mm", "60 mm"] }] }, "label": { "title": "LabelSpec", "type": "object", "additionalProperties": false, "required": ["size"], "description": "Generator: a luggage label: a rectangle with both corners of one end clipped at 45\xB0.", "properties": { "size": { "$ref": "#/definitions/size" }, "clip": { "$ref": "#/definitions/length", "description": "How much of either side each clipped corner takes. Default: a quarter of the clipped end.", "examples": ["9 mm"] }, "end": { "enum": ["top", "bottom", "left", "right"], "default": "left", "description": "The end whose corners are clipped." } }, "examples": [{ "size": ["80 mm", "36 mm"] }] }, "ticket": { "title": "TicketSpec", "type": "object", "additionalProperties": false, "required": ["size"], "description": "Generator: a rectangle with a quarter of a disc bitten out of each corner.", "properties": { "size": { "$ref": "#/definitions/size" }, "bite": { "$ref": "#/definitions/length", "description": "Radius of the bites. Default: a fifth of the shorter side.", "examples": ["6 mm"] } }, "examples": [{ "size": ["80 mm", "36 mm"] }] }, "scallops": { "title": "ScallopsSpec", "type": "object", "additionalProperties": false, "description": "Generator: a plate edged with equal round lobes: a rectangle ({size, lobe}) or a round one ({across, lobes}).", "properties": { "size": { "$ref": "#/definitions/size", "description": "[width, height] of a rectangle, lobes included." }, "lobe": { "$ref": "#/definitions/length", "description": "For size: width of a lobe, about; as many as fit along a side share it evenly.", "examples": ["8 mm"] }, "across": { "$ref": "#/definitions/length", "description": "Diameter of a round one, lobes included; one lobe is at the top.", "examples": ["50 mm"] }, "lobes": { "type": "integer", "minimum": 5, "maximum": 120, "description": "For across: how many lobes.", "examples": [14] } }, "examples": [{ "across": "50 mm", "lobes": 14 }] }, "stack": { "title": "StackSpec", "type": "object", "additionalProperties": false, "required": ["shapes"], "description": "Generator: shapes set one after the other on an axis, each lapped over the one before so that no shoulder pokes out.", "properties": { "shapes": { "type": "array", "minItems": 1, "items": { "$ref": "#/definitions/shapeName" }, "description": "Names, in order." }, "towards": { "enum": ["down", "up", "left", "right"], "default": "down", "description": "Which way the shapes follow one another." }, "lap": { "$ref": "#/definitions/length", "description": "How far each goes into the one before. Default: as far as hides the narrower one's corners.", "examples": ["4 mm"] } } }, "path": { "type": "string", "description": "Generator: SVG path data in the spec's units, y down, filled by the non-zero rule.", "examples": ["M0 0 C10 -20 30 -20 40 0 C30 20 10 20 0 0 Z"] }, "drawing": { "$ref": "#/definitions/drawingFile", "description": "Generator: the path of an SVG file beside the spec.", "examples": ["leaf.svg"] }, "around": { "$ref": "#/definitions/shapeOrName", "description": "Generator: an outline at the distance `by` from another shape." }, "by": { "$ref": "#/definitions/length", "description": "For around: the distance.", "examples": ["6 mm"] }, "holes": { "enum": ["fill", "keep"], "default": "fill", "description": "For around: whether holes are filled." }, "bays": { "$ref": "#/definitions/length", "description": "For around: bays, slits and kept holes narrower than this are closed. Default: those narrower than `by` where corners are round, else none.", "examples": ["2 mm"] }, "union": { "$ref": "#/definitions/shapeList", "description": "Generator: all of the shapes together." }, "difference": { "$ref": "#/definitions/shapeList", "description": "Generator: the first shape less all the others." }, "intersection": { "$ref": "#/definitions/shapeList", "description": "Generator: what the shapes share." }, "from": { "$ref": "#/definitions/shapeOrName", "description": "Generator: a copy of another shape, to modify." }, "tidy": { "$ref": "#/definitions/length", "description": "Removes specks and pin-holes smaller than this across.", "examples": ["0.5 mm"] }, "grow": { "$ref": "#/definitions/length", "description": "Thickens all round by this much; negative thins.", "examples": ["0.5 mm"] }, "corners": { "$ref": "#/definitions/corners" }, "width": { "$ref": "#/definitions/length", "description": "Finished width. Height follows in proportion unless it is given too.", "examples": ["60 mm"] }, "height": { "$ref": "#/definitions/length", "description": "Finished height. Width follows in proportion unless it is given too.", "examples": ["30 mm"] }, "fit": { "$ref": "#/definitions/fit" }, "straps": { "$ref": "#/definitions/length", "description": "Joins the separate parts of the shape, such as the dot of an i to its stem, by straps of this width.", "examples": ["1.5 mm"] }, "bridges": { "title": "Bridges", "description": "For a shape that is cut through a plate: the width of bridges left standing across its strokes, which hold the counters of letters.", "anyOf": [{ "$ref": "#/definitions/length" }, { "type": "object", "additionalProperties": false, "required": ["width"], "properties": { "width": { "$ref": "#/definitions/length", "description": "Width of each bridge.", "examples": ["1.5 mm"] }, "at": { "enum": ["top-bottom", "left-right", "top", "bottom", "left", "right"], "default": "top-bottom", "description": "On which sides of each counter there is a bridge." } } }], "examples": ["1.5 mm"] }, "rotate": { "type": "number", "minimum": -360, "maximum": 360, "description": "Degrees, clockwise as in CSS.", "examples": [5] }, "mirror": { "enum": ["left-right", "up-down"], "description": "Mirrors the shape." }, "place": { "$ref": "#/definitions/place" }, "nudge": { "$ref": "#/definitions/nudge" } } }, "stock": { "title": "StockSpec", "type": "object", "additionalProperties": false, "description": "The sheet the tag is cut from.", "properties": { "material": { "type": "string", "maxLength": 100, "description": "Such as birch plywood, basswood, acrylic.", "examples": ["birch plywood"] }, "thickness": { "$ref": "#/definitions/length", "description": "Measured thickness of the sheet.", "examples": ["3 mm"] }, "kerf": { "$ref": "#/definitions/kerf" }, "machine": { "$ref": "#/definitions/machine", "description": "How the machine works this stock: what is given here counts before a `machine` of a file under `use`, and after the spec's own.", "examples": [{ "cut": "12 mm/s", "engrave": "250 mm/s", "hatch": "0.1 mm", "power": { "cut": "80 %" } }] }, "machines": { "type": "object", "minProperties": 1, "description": "What is different on a machine of `machines`, by its name. It counts where a spec names that machine.", "propertyNames": { "pattern": "^[A-Za-z][A-Za-z0-9_-]*$" }, "additionalProperties": { "$ref": "#/definitions/stockOnMachine" } }, "min_x_height": { "$ref": "#/definitions/length", "description": "Smallest height of small letters that can be read when engraved on this stock; the engraving ladder finds it. Default: 1.2 mm (rule of thumb, no source).", "examples": ["1.2 mm"] }, "caution": { "type": "string", "maxLength": 300, "description": "What the bench should be reminded of with this stock; it stands on the job sheet under Safety.", "examples": ["Peel the film off one side only, and watch for flare-ups."] }, "look": { "title": "StockLookSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "How this stock looks in the preview and on proofs, where its name does not say it.", "properties": { "color": { "title": "Colour", "type": "string", "pattern": "^#[0-9A-Fa-f]{6}$", "description": 'Of its face, such as "#E9D2A6" (in quotes: # begins a comment).' }, "grain": { "enum": ["left-right", "up-down", "none"], "description": "Which way the grain runs." }, "engraving": { "enum": ["dark", "light"], "description": "Whether engraving comes out darker than the face, or lighter." } }, "examples": [{ "color": "#E9D2A6", "grain": "left-right", "engraving": "dark" }] }, "measured_on": { "$ref": "#/definitions/measuredOn" }, "density": { "type": "number", "exclusiveMinimum": 0, "maximum": 25e3, "description": "In kg/m\xB3, for the weight. Default: the published figure for the material, where there is one." }, "price": { "title": "PriceSpec", "type": "object", "additionalProperties": false, "required": ["amount", "per"], "description": "What the stock costs, such as {amount: 4.20, per: sheet, currency: EUR}.", "properties": { "amount": { "type": "number", "minimum": 0, "maximum": 1e6 }, "per": { "enum": ["sheet", "m2", "ft2"], "description": "A whole sheet (of the `size` in `sheet`), a square metre or a square foot." }, "currency": { "type": "string", "maxLength": 10, "description": "Written after amounts, exactly as here." } } }, "measured": { "title": "MeasuredSpec", "type": "object", "additionalProperties": false, "required": ["breaks_at", "neck"], "description": "A strip of this stock that you pulled until it broke. It counts before any published strength. Of solid wood, break one across the grain: that is the weaker way.", "properties": { "breaks_at": { "title": "Force", "type": ["number", "string"], "description": "The pull at which it broke: 42 N, or what hung on it, such as 4.3 kg or 9 lb. A bare number is in N.", "examples": ["42 N", "4.3 kg"] }, "neck": { "$ref": "#/definitions/length", "description": "How wide the strip was where it broke.", "examples": ["2.0 mm"] } }, "examples": [{ "breaks_at": "42 N", "neck": "2.0 mm" }] }, "min_web": { "$ref": "#/definitions/length", "description": "Narrowest width of material that you rely on. Default: by the material, 1.5 mm for plywood, 2 mm for solid wood and acrylic; more for sheet under 2 mm.", "examples": ["1.5 mm"] } }, "examples": [{ "material": "birch plywood", "thickness": "3 mm", "kerf": "0.16 mm" }] }, "date": { "title": "DateText", "type": "string", "pattern": "^\\d{4}-\\d{2}-\\d{2}$", "description": "A day, as year-month-day." }, "power": { "title": "Power", "description": "As it is set on the machine by hand, such as 80 %.", "type": ["string", "number"], "maxLength": 40 }, "rate": { "title": "Rate", "description": "A speed such as 12 mm/s, 900 mm/min or 0.5 in/s, or an acceleration such as 1500 mm/s2.", "type": ["number", "string"] }, "passes": { "title": "Passes", "type": "integer", "minimum": 1, "maximum": 50, "default": 1 }, "kerf": { "title": "KerfSpec", "default": 0, "description": "Width the beam removes, measured on your machine with this stock; by operation where it differs.", "examples": ["0.16 mm", { "outer": "0.16 mm", "inner": "0.14 mm", "engrave": "0.1 mm" }], "anyOf": [{ "$ref": "#/definitions/length" }, { "title": "KerfByOperation", "type": "object", "additionalProperties": false, "minProperties": 1, "properties": { "outer": { "$ref": "#/definitions/length", "description": "Along outer cuts." }, "inner": { "$ref": "#/definitions/length", "description": "Along holes and openings. Default: as `outer`." }, "engrave": { "$ref": "#/definitions/length", "description": "Width of the engraved line: areas are drawn smaller by half of it all round, so that they come out at their size." } } }] }, "measuredOn": { "title": "MeasuredOnSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "When values of this stock were measured, as year-month-day. Entering a measurement writes it.", "properties": { "kerf": { "$ref": "#/definitions/date" }, "min_web": { "$ref": "#/definitions/date" }, "min_x_height": { "$ref": "#/definitions/date" }, "hatch": { "$ref": "#/definitions/date" }, "engrave": { "$ref": "#/definitions/date" } }, "examples": [{ "kerf": "2026-03-14" }] }, "stockOnMachine": { "title": "StockOnMachineSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "What is different about a stock on one machine, by the keys of the stock.", "properties": { "kerf": { "$ref": "#/definitions/kerf" }, "min_web": { "$ref": "#/definitions/length", "description": "Narrowest width of material that comes out whole on this machine.", "examples": ["1.5 mm"] }, "min_x_height": { "$ref": "#/definitions/length", "description": "Smallest height of small letters that can be read when this machine engraves them.", "examples": ["1.2 mm"] }, "machine": { "$ref": "#/definitions/machine", "description": "How this machine works the stock.", "examples": [{ "cut": "8 mm/s", "engrave": "180 mm/s" }] }, "measured_on": { "$ref": "#/definitions/measuredOn" } }, "examples": [{ "kerf": "0.22 mm" }] }, "machine": { "title": "MachineSpec", "type": "object", "additionalProperties": false, "description": "How fast your machine works this stock, for the time estimate.", "properties": { "cut": { "$ref": "#/definitions/rate", "description": "Speed of cutting." }, "score": { "$ref": "#/definitions/rate", "description": "Speed of scoring." }, "engrave": { "$ref": "#/definitions/rate", "description": "Speed along the lines of an engraved area." }, "travel": { "$ref": "#/definitions/rate", "description": "Speed with the beam off. Default: 200 mm/s (rule of thumb, no source)." }, "acceleration": { "$ref": "#/definitions/rate", "description": "How fast the head gains and loses speed. Default: 1000 mm/s2 (rule of thumb, no source)." }, "corner_jump": { "$ref": "#/definitions/rate", "description": "The largest sudden change of velocity at a corner; the head slows until it turns no harder. Default: 5 mm/s (rule of thumb, no source)." }, "hatch": { "$ref": "#/definitions/length", "description": "Distance between the lines of an engraved area. Default: 0.1 mm (rule of thumb, no source)." }, "passes": { "title": "PassesSpec", "type": "object", "additionalProperties": false, "description": "How many times each operation goes over its paths. Default: once.", "properties": { "cut": { "$ref": "#/definitions/passes" }, "score": { "$ref": "#/definitions/passes" }, "engrave": { "$ref": "#/definitions/passes" } } }, "power": { "title": "PowerSpec", "type": "object", "additionalProperties": false, "description": "What you set by hand for each operation. It is printed on the job sheet and reckoned with nowhere.", "properties": { "cut": { "$ref": "#/definitions/power" }, "score": { "$ref": "#/definitions/power" }, "engrave": { "$ref": "#/definitions/power" } }, "examples": [{ "cut": "80 %", "engrave": "30 %" }] } } }, "lineStyle": { "title": "LineStyleSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "properties": { "color": { "title": "Colour", "type": "string", "pattern": "^#[0-9A-Fa-f]{6}$", "description": `As your machine's driver expects it, such as "#0072B2" (in quotes: # begins a comment).` }, "line_width": { "$ref": "#/definitions/length", "default": "0.1 mm", "description": "How wide lines are drawn; the machine follows their middle." }, "layer": { "type": "string", "minLength": 1, "maxLength": 60, "pattern": '^[^ <>/\\\\":;?*|=`,\\u0000-\\u001f]([^<>/\\\\":;?*|=`,\\u0000-\\u001f]*[^ <>/\\\\":;?*|=`,\\u0000-\\u001f])?$', "description": "Name of the layer in DXF files and of the group in SVG files." } } }, "output": { "title": "OutputSpec", "type": "object", "additionalProperties": false, "description": "How files for the machine and the customer are written.", "properties": { "compensate": { "type": "boolean", "default": true, "description": "false: cuts run on the drawn line and the part comes out half a kerf smaller all round; the checks then judge what is left." }, "tabs": { "description": "Small bridges left uncut to hold each part in the sheet: how many, or {count, width}.", "anyOf": [{ "type": "integer", "minimum": 0, "maximum": 20 }, { "title": "TabsSpec", "type": "object", "additionalProperties": false, "required": ["count"], "properties": { "count": { "type": "integer", "minimum": 0, "maximum": 20 }, "width": { "$ref": "#/definitions/length", "description": "Width of each. Default: 0.5 mm (rule of thumb, no source)." } } }] }, "picture_width": { "type": "integer", "minimum": 100, "maximum": 8e3, "default": 1600, "description": "Width of the proof picture (PNG) in pixels." }, "engrave_layers": { "enum": ["one", "each"], "default": "one", "description": "one: all that is engraved is on one layer. each: every entry of a piece's `engrave` is on a layer of its own, named after its shape and in a colour of its own, so that each can be given its own power and speed." }, "engrave": { "$ref": "#/definitions/lineStyle", "description": "How engraved areas are drawn." }, "score": { "$ref": "#/definitions/lineStyle", "description": "How scored lines are drawn." }, "cut_inner": { "$ref": "#/definitions/lineStyle", "description": "How cuts that come first are drawn: holes and openings." }, "cut_outer": { "$ref": "#/definitions/lineStyle", "description": "How the cuts that free the parts are drawn." } } }, "sheet": { "title": "SheetSpec", "type": "object", "additionalProperties": false, "required": ["size"], "description": "The sheets you have: a piece that does not fit one is an error, and tags are laid out on them.", "properties": { "size": { "$ref": "#/definitions/size", "description": "[width, height] of a sheet.", "examples": [["600 mm", "400 mm"]] }, "margin": { "$ref": "#/definitions/length", "default": 0, "description": "Left free along every edge, for clamps and warp.", "examples": ["5 mm"] }, "gap": { "$ref": "#/definitions/length", "default": "2 mm", "description": "Material left between two pieces.", "examples": ["3 mm"] }, "turn": { "enum": ["never", "half", "quarter"], "default": "half", "description": "How pieces may be turned to pack closer. half: upside down, so that the grain keeps its direction. quarter: on their side as well. never: not at all." }, "copies": { "type": "integer", "minimum": 1, "maximum": 200, "default": 1, "description": "How many of each tag are laid out.", "examples": [12] } } }, "batch": { "title": "BatchSpec", "description": "The same tag for a list: names, or rows of cells by column, written here or in a CSV file beside the spec. In a text or a title, {column} is replaced by the row's cell; in a list of names the column is {name}.", "anyOf": [{ "$ref": "#/definitions/tableFile" }, { "$ref": "#/definitions/rows" }] }, "tableFile": { "title": "TableFile", "description": "The path of a CSV file beside the spec; its first line names the columns.", "type": "string", "maxLength": 500 }, "rows": { "title": "Rows", "type": "array", "minItems": 1, "maxItems": 500, "items": { "anyOf": [{ "$ref": "#/definitions/rowName" }, { "$ref": "#/definitions/row" }] } }, "rowName": { "title": "RowName", "description": "Replaces {name}.", "type": ["string", "number"] }, "row": { "title": "Row", "description": "The cells of a row, each by its column.", "type": "object", "minProperties": 1, "additionalProperties": { "type": ["string", "number"], "description": "Replaces {column} in this row." } }, "tie": { "title": "TieSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "What the tag hangs on: {twine: diameter} or {ribbon: width}.", "properties": { "twine": { "$ref": "#/definitions/length", "description": "Diameter of the twine.", "examples": ["2 mm"] }, "ribbon": { "$ref": "#/definitions/length", "description": "Width of the ribbon.", "examples": ["10 mm"] }, "opening": { "$ref": "#/definitions/length", "description": "Smallest round hole that it goes through doubled; the hole comb finds it. Default: by a rule of thumb.", "examples": ["3.5 mm"] }, "measured_on": { "$ref": "#/definitions/date", "description": "When `opening` was measured." } }, "examples": [{ "twine": "2 mm" }] }, "hangerPlace": { "title": "HangerPlace", "description": "A side, `auto` (the strongest clear place), an angle in degrees (0 is the top, clockwise), or a point from the centre such as {right: 10 mm, up: 5 mm}.", "anyOf": [{ "enum": ["auto", "top", "bottom", "left", "right", "top-left", "top-right", "bottom-left", "bottom-right"] }, { "type": "number", "minimum": -360, "maximum": 360 }, { "$ref": "#/definitions/nudge" }] }, "hanger": { "title": "HangerSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "maxProperties": 1, "description": "What the tie goes through: a ring (a lug outside the body), a hole (inside it) or a slot (for ribbon).", "properties": { "ring": { "title": "RingSpec", "type": "object", "additionalProperties": false, "properties": { "on": { "$ref": "#/definitions/shapeName", "description": "Name of the shape it is joined to, or of a member of a stack in the body; default: the whole body." }, "at": { "$ref": "#/definitions/hangerPlace", "default": "auto" }, "diameter": { "$ref": "#/definitions/length", "description": "Diameter of the hole. Default: what the tie needs.", "examples": ["4 mm"] }, "wall": { "$ref": "#/definitions/length", "description": "Material around the hole. Default: min_web if written, else the thickness of the sheet up to 3 mm; at least 1.78 mm.", "examples": ["2 mm"] }, "sink": { "$ref": "#/definitions/length", "default": 0, "description": "How much deeper the ring is set into the body.", "examples": ["0.5 mm"] }, "nudge": { "$ref": "#/definitions/nudge" } }, "description": "A lug outside the body with a round hole. With `at: auto` it goes where it is joined best and hangs straightest.", "examples": [{ "at": "top" }] }, "hole": { "title": "HoleSpec", "type": "object", "additionalProperties": false, "properties": { "on": { "$ref": "#/definitions/shapeName", "description": "Name of the shape whose side `at` means, or of a member of a stack in the body; default: the whole body." }, "at": { "$ref": "#/definitions/hangerPlace", "default": "top" }, "diameter": { "$ref": "#/definitions/length", "description": "Diameter of the hole. Default: what the tie needs.", "examples": ["4 mm"] }, "inset": { "$ref": "#/definitions/length", "description": "Material between the hole and the edge. Default: twice min_web if written, else twice the thickness of the sheet, up to 6 mm.", "examples": ["3 mm"] }, "nudge": { "$ref": "#/definitions/nudge" } }, "description": "A round hole inside the body.", "examples": [{ "at": "top" }] }, "slot": { "title": "SlotSpec", "type": "object", "additionalProperties": false, "properties": { "on": { "$ref": "#/definitions/shapeName", "description": "Name of the shape whose side `at` means, or of a member of a stack in the body; default: the whole body." }, "at": { "$ref": "#/definitions/hangerPlace", "default": "top" }, "length": { "$ref": "#/definitions/length", "description": "Long side. Default: the ribbon's width and 1 mm.", "examples": ["12 mm"] }, "width": { "$ref": "#/definitions/length", "description": "Short side. Default: 3 mm.", "examples": ["3 mm"] }, "inset": { "$ref": "#/definitions/length", "description": "Material between the slot and the edge. Default: twice min_web if written, else twice the thickness of the sheet, up to 6 mm.", "examples": ["3 mm"] }, "nudge": { "$ref": "#/definitions/nudge" } }, "description": "A slot inside the body, for ribbon, set across the pull.", "examples": [{ "at": "top" }] } }, "examples": [{ "ring": { "at": "auto" } }] }, "hangerOrName": { "title": "HangerOrName", "description": "A hanger, or the name of one under `hangers`.", "anyOf": [{ "$ref": "#/definitions/hangerName" }, { "$ref": "#/definitions/hanger" }] }, "piece": { "title": "PieceSpec", "type": "object", "additionalProperties": false, "required": ["body"], "description": "One thing that is cut free of the sheet.", "properties": { "title": { "type": "string", "maxLength": 200, "description": "What the piece is called. Default: its key.", "examples": ["Backing"] }, "body": { "$ref": "#/definitions/shapeList", "description": "Shapes united to make the piece." }, "cut": { "$ref": "#/definitions/shapeList", "description": "Openings cut through the piece." }, "score": { "$ref": "#/definitions/shapeList", "description": "Outlines the beam draws on the surface." }, "engrave": { "$ref": "#/definitions/shapeList", "description": "Areas the beam darkens or hollows." }, "hanger": { "description": "What the tie goes through: a hanger, the name of one, or a list of two between which the piece hangs level.", "anyOf": [{ "$ref": "#/definitions/hangerOrName" }, { "type": "array", "minItems": 1, "maxItems": 2, "items": { "$ref": "#/definitions/hangerOrName" } }] }, "width": { "$ref": "#/definitions/length", "description": "Finished width of the whole piece, its ring included. Everything is scaled but the hole and its wall." }, "height": { "$ref": "#/definitions/length", "description": "Finished height of the whole piece, its ring included; give this or the width." }, "parts": { "enum": ["one", "many"], "default": "one", "description": "many: the piece is meant to have separate parts, such as letters glued on one by one." }, "glue_to": { "$ref": "#/definitions/pieceName", "description": "The piece this one is glued on." } } } } };
var schema12 = { "title": "SpecFile", "description": "The path of a spec beside this one.", "type": "string", "maxLength": 500 };
var schema14 = { "title": "StockName", "description": "The name of a stock.", "type": "string" };
var schema48 = { "title": "TieName", "description": "The name of a tie.", "type": "string" };
var schema65 = { "title": "MachineName", "description": "The name of a machine.", "type": "string" };
var func2 = Object.prototype.hasOwnProperty;
var func3 = require_ucs2length().default;
var schema15 = { "title": "StockSpec", "type": "object", "additionalProperties": false, "description": "The sheet the tag is cut from.", "properties": { "material": { "type": "string", "maxLength": 100, "description": "Such as birch plywood, basswood, acrylic.", "examples": ["birch plywood"] }, "thickness": { "$ref": "#/definitions/length", "description": "Measured thickness of the sheet.", "examples": ["3 mm"] }, "kerf": { "$ref": "#/definitions/kerf" }, "machine": { "$ref": "#/definitions/machine", "description": "How the machine works this stock: what is given here counts before a `machine` of a file under `use`, and after the spec's own.", "examples": [{ "cut": "12 mm/s", "engrave": "250 mm/s", "hatch": "0.1 mm", "power": { "cut": "80 %" } }] }, "machines": { "type": "object", "minProperties": 1, "description": "What is different on a machine of `machines`, by its name. It counts where a spec names that machine.", "propertyNames": { "pattern": "^[A-Za-z][A-Za-z0-9_-]*$" }, "additionalProperties": { "$ref": "#/definitions/stockOnMachine" } }, "min_x_height": { "$ref": "#/definitions/length", "description": "Smallest height of small letters that can be read when engraved on this stock; the engraving ladder finds it. Default: 1.2 mm (rule of thumb, no source).", "examples": ["1.2 mm"] }, "caution": { "type": "string", "maxLength": 300, "description": "What the bench should be reminded of with this stock; it stands on the job sheet under Safety.", "examples": ["Peel the film off one side only, and watch for flare-ups."] }, "look": { "title": "StockLookSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "How this stock looks in the preview and on proofs, where its name does not say it.", "properties": { "color": { "title": "Colour", "type": "string", "pattern": "^#[0-9A-Fa-f]{6}$", "description": 'Of its face, such as "#E9D2A6" (in quotes: # begins a comment).' }, "grain": { "enum": ["left-right", "up-down", "none"], "description": "Which way the grain runs." }, "engraving": { "enum": ["dark", "light"], "description": "Whether engraving comes out darker than the face, or lighter." } }, "examples": [{ "color": "#E9D2A6", "grain": "left-right", "engraving": "dark" }] }, "measured_on": { "$ref": "#/definitions/measuredOn" }, "density": { "type": "number", "exclusiveMinimum": 0, "maximum": 25e3, "description": "In kg/m\xB3, for the weight. Default: the published figure for the material, where there is one." }, "price": { "title": "PriceSpec", "type": "object", "additionalProperties": false, "required": ["amount", "per"], "description": "What the stock costs, such as {amount: 4.20, per: sheet, currency: EUR}.", "properties": { "amount": { "type": "number", "minimum": 0, "maximum": 1e6 }, "per": { "enum": ["sheet", "m2", "ft2"], "description": "A whole sheet (of the `size` in `sheet`), a square metre or a square foot." }, "currency": { "type": "string", "maxLength": 10, "description": "Written after amounts, exactly as here." } } }, "measured": { "title": "MeasuredSpec", "type": "object", "additionalProperties": false, "required": ["breaks_at", "neck"], "description": "A strip of this stock that you pulled until it broke. It counts before any published strength. Of solid wood, break one across the grain: that is the weaker way.", "properties": { "breaks_at": { "title": "Force", "type": ["number", "string"], "description": "The pull at which it broke: 42 N, or what hung on it, such as 4.3 kg or 9 lb. A bare number is in N.", "examples": ["42 N", "4.3 kg"] }, "neck": { "$ref": "#/definitions/length", "description": "How wide the strip was where it broke.", "examples": ["2.0 mm"] } }, "examples": [{ "breaks_at": "42 N", "neck": "2.0 mm" }] }, "min_web": { "$ref": "#/definitions/length", "description": "Narrowest width of material that you rely on. Default: by the material, 1.5 mm for plywood, 2 mm for solid wood and acrylic; more for sheet under 2 mm.", "examples": ["1.5 mm"] } }, "examples": [{ "material": "birch plywood", "thickness": "3 mm", "kerf": "0.16 mm" }] };
var schema16 = { "title": "Length", "description": "A finished length: a bare number in `units`, or a number with its unit such as 3 mm, 0.25 in, 1/4 in, 12 pt.", "type": ["number", "string"] };
var schema17 = { "title": "KerfSpec", "default": 0, "description": "Width the beam removes, measured on your machine with this stock; by operation where it differs.", "examples": ["0.16 mm", { "outer": "0.16 mm", "inner": "0.14 mm", "engrave": "0.1 mm" }], "anyOf": [{ "$ref": "#/definitions/length" }, { "title": "KerfByOperation", "type": "object", "additionalProperties": false, "minProperties": 1, "properties": { "outer": { "$ref": "#/definitions/length", "description": "Along outer cuts." }, "inner": { "$ref": "#/definitions/length", "description": "Along holes and openings. Default: as `outer`." }, "engrave": { "$ref": "#/definitions/length", "description": "Width of the engraved line: areas are drawn smaller by half of it all round, so that they come out at their size." } } }] };
function validate12(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  const _errs0 = errors;
  let valid0 = false;
  const _errs1 = errors;
  if (!(typeof data == "number" && isFinite(data)) && typeof data !== "string") {
    const err0 = { instancePath, schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data };
    if (vErrors === null) {
      vErrors = [err0];
    } else {
      vErrors.push(err0);
    }
    errors++;
  }
  var _valid0 = _errs1 === errors;
  valid0 = valid0 || _valid0;
  if (!valid0) {
    const _errs4 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (Object.keys(data).length < 1) {
        const err1 = { instancePath, schemaPath: "#/anyOf/1/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema17.anyOf[1], data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
      for (const key0 in data) {
        if (!(key0 === "outer" || key0 === "inner" || key0 === "engrave")) {
          const err2 = { instancePath, schemaPath: "#/anyOf/1/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema17.anyOf[1], data };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      }
      if (data.outer !== void 0) {
        let data0 = data.outer;
        if (!(typeof data0 == "number" && isFinite(data0)) && typeof data0 !== "string") {
          const err3 = { instancePath: instancePath + "/outer", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data0 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      }
      if (data.inner !== void 0) {
        let data1 = data.inner;
        if (!(typeof data1 == "number" && isFinite(data1)) && typeof data1 !== "string") {
          const err4 = { instancePath: instancePath + "/inner", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      }
      if (data.engrave !== void 0) {
        let data2 = data.engrave;
        if (!(typeof data2 == "number" && isFinite(data2)) && typeof data2 !== "string") {
          const err5 = { instancePath: instancePath + "/engrave", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data2 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      }
    } else {
      const err6 = { instancePath, schemaPath: "#/anyOf/1/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema17.anyOf[1].type, parentSchema: schema17.anyOf[1], data };
      if (vErrors === null) {
        vErrors = [err6];
      } else {
        vErrors.push(err6);
      }
      errors++;
    }
    var _valid0 = _errs4 === errors;
    valid0 = valid0 || _valid0;
  }
  if (!valid0) {
    const err7 = { instancePath, schemaPath: "#/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema17.anyOf, parentSchema: schema17, data };
    if (vErrors === null) {
      vErrors = [err7];
    } else {
      vErrors.push(err7);
    }
    errors++;
  } else {
    errors = _errs0;
    if (vErrors !== null) {
      if (_errs0) {
        vErrors.length = _errs0;
      } else {
        vErrors = null;
      }
    }
  }
  validate12.errors = vErrors;
  return errors === 0;
}
var schema22 = { "title": "MachineSpec", "type": "object", "additionalProperties": false, "description": "How fast your machine works this stock, for the time estimate.", "properties": { "cut": { "$ref": "#/definitions/rate", "description": "Speed of cutting." }, "score": { "$ref": "#/definitions/rate", "description": "Speed of scoring." }, "engrave": { "$ref": "#/definitions/rate", "description": "Speed along the lines of an engraved area." }, "travel": { "$ref": "#/definitions/rate", "description": "Speed with the beam off. Default: 200 mm/s (rule of thumb, no source)." }, "acceleration": { "$ref": "#/definitions/rate", "description": "How fast the head gains and loses speed. Default: 1000 mm/s2 (rule of thumb, no source)." }, "corner_jump": { "$ref": "#/definitions/rate", "description": "The largest sudden change of velocity at a corner; the head slows until it turns no harder. Default: 5 mm/s (rule of thumb, no source)." }, "hatch": { "$ref": "#/definitions/length", "description": "Distance between the lines of an engraved area. Default: 0.1 mm (rule of thumb, no source)." }, "passes": { "title": "PassesSpec", "type": "object", "additionalProperties": false, "description": "How many times each operation goes over its paths. Default: once.", "properties": { "cut": { "$ref": "#/definitions/passes" }, "score": { "$ref": "#/definitions/passes" }, "engrave": { "$ref": "#/definitions/passes" } } }, "power": { "title": "PowerSpec", "type": "object", "additionalProperties": false, "description": "What you set by hand for each operation. It is printed on the job sheet and reckoned with nowhere.", "properties": { "cut": { "$ref": "#/definitions/power" }, "score": { "$ref": "#/definitions/power" }, "engrave": { "$ref": "#/definitions/power" } }, "examples": [{ "cut": "80 %", "engrave": "30 %" }] } } };
var schema23 = { "title": "Rate", "description": "A speed such as 12 mm/s, 900 mm/min or 0.5 in/s, or an acceleration such as 1500 mm/s2.", "type": ["number", "string"] };
var schema30 = { "title": "Passes", "type": "integer", "minimum": 1, "maximum": 50, "default": 1 };
var schema33 = { "title": "Power", "description": "As it is set on the machine by hand, such as 80 %.", "type": ["string", "number"], "maxLength": 40 };
function validate14(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!func2.call(schema22.properties, key0)) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema22, data };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.cut !== void 0) {
      let data0 = data.cut;
      if (!(typeof data0 == "number" && isFinite(data0)) && typeof data0 !== "string") {
        const err1 = { instancePath: instancePath + "/cut", schemaPath: "#/definitions/rate/type", keyword: "type", params: { type: schema23.type }, message: "must be number,string", schema: schema23.type, parentSchema: schema23, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.score !== void 0) {
      let data1 = data.score;
      if (!(typeof data1 == "number" && isFinite(data1)) && typeof data1 !== "string") {
        const err2 = { instancePath: instancePath + "/score", schemaPath: "#/definitions/rate/type", keyword: "type", params: { type: schema23.type }, message: "must be number,string", schema: schema23.type, parentSchema: schema23, data: data1 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.engrave !== void 0) {
      let data2 = data.engrave;
      if (!(typeof data2 == "number" && isFinite(data2)) && typeof data2 !== "string") {
        const err3 = { instancePath: instancePath + "/engrave", schemaPath: "#/definitions/rate/type", keyword: "type", params: { type: schema23.type }, message: "must be number,string", schema: schema23.type, parentSchema: schema23, data: data2 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.travel !== void 0) {
      let data3 = data.travel;
      if (!(typeof data3 == "number" && isFinite(data3)) && typeof data3 !== "string") {
        const err4 = { instancePath: instancePath + "/travel", schemaPath: "#/definitions/rate/type", keyword: "type", params: { type: schema23.type }, message: "must be number,string", schema: schema23.type, parentSchema: schema23, data: data3 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.acceleration !== void 0) {
      let data4 = data.acceleration;
      if (!(typeof data4 == "number" && isFinite(data4)) && typeof data4 !== "string") {
        const err5 = { instancePath: instancePath + "/acceleration", schemaPath: "#/definitions/rate/type", keyword: "type", params: { type: schema23.type }, message: "must be number,string", schema: schema23.type, parentSchema: schema23, data: data4 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.corner_jump !== void 0) {
      let data5 = data.corner_jump;
      if (!(typeof data5 == "number" && isFinite(data5)) && typeof data5 !== "string") {
        const err6 = { instancePath: instancePath + "/corner_jump", schemaPath: "#/definitions/rate/type", keyword: "type", params: { type: schema23.type }, message: "must be number,string", schema: schema23.type, parentSchema: schema23, data: data5 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.hatch !== void 0) {
      let data6 = data.hatch;
      if (!(typeof data6 == "number" && isFinite(data6)) && typeof data6 !== "string") {
        const err7 = { instancePath: instancePath + "/hatch", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data6 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.passes !== void 0) {
      let data7 = data.passes;
      if (data7 && typeof data7 == "object" && !Array.isArray(data7)) {
        for (const key1 in data7) {
          if (!(key1 === "cut" || key1 === "score" || key1 === "engrave")) {
            const err8 = { instancePath: instancePath + "/passes", schemaPath: "#/properties/passes/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema22.properties.passes, data: data7 };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
        }
        if (data7.cut !== void 0) {
          let data8 = data7.cut;
          if (!(typeof data8 == "number" && (!(data8 % 1) && !isNaN(data8)) && isFinite(data8))) {
            const err9 = { instancePath: instancePath + "/passes/cut", schemaPath: "#/definitions/passes/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema30.type, parentSchema: schema30, data: data8 };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
          if (typeof data8 == "number" && isFinite(data8)) {
            if (data8 > 50 || isNaN(data8)) {
              const err10 = { instancePath: instancePath + "/passes/cut", schemaPath: "#/definitions/passes/maximum", keyword: "maximum", params: { comparison: "<=", limit: 50 }, message: "must be <= 50", schema: 50, parentSchema: schema30, data: data8 };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
            if (data8 < 1 || isNaN(data8)) {
              const err11 = { instancePath: instancePath + "/passes/cut", schemaPath: "#/definitions/passes/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1", schema: 1, parentSchema: schema30, data: data8 };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
            }
          }
        }
        if (data7.score !== void 0) {
          let data9 = data7.score;
          if (!(typeof data9 == "number" && (!(data9 % 1) && !isNaN(data9)) && isFinite(data9))) {
            const err12 = { instancePath: instancePath + "/passes/score", schemaPath: "#/definitions/passes/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema30.type, parentSchema: schema30, data: data9 };
            if (vErrors === null) {
              vErrors = [err12];
            } else {
              vErrors.push(err12);
            }
            errors++;
          }
          if (typeof data9 == "number" && isFinite(data9)) {
            if (data9 > 50 || isNaN(data9)) {
              const err13 = { instancePath: instancePath + "/passes/score", schemaPath: "#/definitions/passes/maximum", keyword: "maximum", params: { comparison: "<=", limit: 50 }, message: "must be <= 50", schema: 50, parentSchema: schema30, data: data9 };
              if (vErrors === null) {
                vErrors = [err13];
              } else {
                vErrors.push(err13);
              }
              errors++;
            }
            if (data9 < 1 || isNaN(data9)) {
              const err14 = { instancePath: instancePath + "/passes/score", schemaPath: "#/definitions/passes/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1", schema: 1, parentSchema: schema30, data: data9 };
              if (vErrors === null) {
                vErrors = [err14];
              } else {
                vErrors.push(err14);
              }
              errors++;
            }
          }
        }
        if (data7.engrave !== void 0) {
          let data10 = data7.engrave;
          if (!(typeof data10 == "number" && (!(data10 % 1) && !isNaN(data10)) && isFinite(data10))) {
            const err15 = { instancePath: instancePath + "/passes/engrave", schemaPath: "#/definitions/passes/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema30.type, parentSchema: schema30, data: data10 };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
          if (typeof data10 == "number" && isFinite(data10)) {
            if (data10 > 50 || isNaN(data10)) {
              const err16 = { instancePath: instancePath + "/passes/engrave", schemaPath: "#/definitions/passes/maximum", keyword: "maximum", params: { comparison: "<=", limit: 50 }, message: "must be <= 50", schema: 50, parentSchema: schema30, data: data10 };
              if (vErrors === null) {
                vErrors = [err16];
              } else {
                vErrors.push(err16);
              }
              errors++;
            }
            if (data10 < 1 || isNaN(data10)) {
              const err17 = { instancePath: instancePath + "/passes/engrave", schemaPath: "#/definitions/passes/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1", schema: 1, parentSchema: schema30, data: data10 };
              if (vErrors === null) {
                vErrors = [err17];
              } else {
                vErrors.push(err17);
              }
              errors++;
            }
          }
        }
      } else {
        const err18 = { instancePath: instancePath + "/passes", schemaPath: "#/properties/passes/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema22.properties.passes.type, parentSchema: schema22.properties.passes, data: data7 };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
    if (data.power !== void 0) {
      let data11 = data.power;
      if (data11 && typeof data11 == "object" && !Array.isArray(data11)) {
        for (const key2 in data11) {
          if (!(key2 === "cut" || key2 === "score" || key2 === "engrave")) {
            const err19 = { instancePath: instancePath + "/power", schemaPath: "#/properties/power/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 }, message: "must NOT have additional properties", schema: false, parentSchema: schema22.properties.power, data: data11 };
            if (vErrors === null) {
              vErrors = [err19];
            } else {
              vErrors.push(err19);
            }
            errors++;
          }
        }
        if (data11.cut !== void 0) {
          let data12 = data11.cut;
          if (typeof data12 !== "string" && !(typeof data12 == "number" && isFinite(data12))) {
            const err20 = { instancePath: instancePath + "/power/cut", schemaPath: "#/definitions/power/type", keyword: "type", params: { type: schema33.type }, message: "must be string,number", schema: schema33.type, parentSchema: schema33, data: data12 };
            if (vErrors === null) {
              vErrors = [err20];
            } else {
              vErrors.push(err20);
            }
            errors++;
          }
          if (typeof data12 === "string") {
            if (func3(data12) > 40) {
              const err21 = { instancePath: instancePath + "/power/cut", schemaPath: "#/definitions/power/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema33, data: data12 };
              if (vErrors === null) {
                vErrors = [err21];
              } else {
                vErrors.push(err21);
              }
              errors++;
            }
          }
        }
        if (data11.score !== void 0) {
          let data13 = data11.score;
          if (typeof data13 !== "string" && !(typeof data13 == "number" && isFinite(data13))) {
            const err22 = { instancePath: instancePath + "/power/score", schemaPath: "#/definitions/power/type", keyword: "type", params: { type: schema33.type }, message: "must be string,number", schema: schema33.type, parentSchema: schema33, data: data13 };
            if (vErrors === null) {
              vErrors = [err22];
            } else {
              vErrors.push(err22);
            }
            errors++;
          }
          if (typeof data13 === "string") {
            if (func3(data13) > 40) {
              const err23 = { instancePath: instancePath + "/power/score", schemaPath: "#/definitions/power/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema33, data: data13 };
              if (vErrors === null) {
                vErrors = [err23];
              } else {
                vErrors.push(err23);
              }
              errors++;
            }
          }
        }
        if (data11.engrave !== void 0) {
          let data14 = data11.engrave;
          if (typeof data14 !== "string" && !(typeof data14 == "number" && isFinite(data14))) {
            const err24 = { instancePath: instancePath + "/power/engrave", schemaPath: "#/definitions/power/type", keyword: "type", params: { type: schema33.type }, message: "must be string,number", schema: schema33.type, parentSchema: schema33, data: data14 };
            if (vErrors === null) {
              vErrors = [err24];
            } else {
              vErrors.push(err24);
            }
            errors++;
          }
          if (typeof data14 === "string") {
            if (func3(data14) > 40) {
              const err25 = { instancePath: instancePath + "/power/engrave", schemaPath: "#/definitions/power/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema33, data: data14 };
              if (vErrors === null) {
                vErrors = [err25];
              } else {
                vErrors.push(err25);
              }
              errors++;
            }
          }
        }
      } else {
        const err26 = { instancePath: instancePath + "/power", schemaPath: "#/properties/power/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema22.properties.power.type, parentSchema: schema22.properties.power, data: data11 };
        if (vErrors === null) {
          vErrors = [err26];
        } else {
          vErrors.push(err26);
        }
        errors++;
      }
    }
  } else {
    const err27 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema22.type, parentSchema: schema22, data };
    if (vErrors === null) {
      vErrors = [err27];
    } else {
      vErrors.push(err27);
    }
    errors++;
  }
  validate14.errors = vErrors;
  return errors === 0;
}
var schema36 = { "title": "StockOnMachineSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "What is different about a stock on one machine, by the keys of the stock.", "properties": { "kerf": { "$ref": "#/definitions/kerf" }, "min_web": { "$ref": "#/definitions/length", "description": "Narrowest width of material that comes out whole on this machine.", "examples": ["1.5 mm"] }, "min_x_height": { "$ref": "#/definitions/length", "description": "Smallest height of small letters that can be read when this machine engraves them.", "examples": ["1.2 mm"] }, "machine": { "$ref": "#/definitions/machine", "description": "How this machine works the stock.", "examples": [{ "cut": "8 mm/s", "engrave": "180 mm/s" }] }, "measured_on": { "$ref": "#/definitions/measuredOn" } }, "examples": [{ "kerf": "0.22 mm" }] };
var schema39 = { "title": "MeasuredOnSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "When values of this stock were measured, as year-month-day. Entering a measurement writes it.", "properties": { "kerf": { "$ref": "#/definitions/date" }, "min_web": { "$ref": "#/definitions/date" }, "min_x_height": { "$ref": "#/definitions/date" }, "hatch": { "$ref": "#/definitions/date" }, "engrave": { "$ref": "#/definitions/date" } }, "examples": [{ "kerf": "2026-03-14" }] };
var schema40 = { "title": "DateText", "type": "string", "pattern": "^\\d{4}-\\d{2}-\\d{2}$", "description": "A day, as year-month-day." };
var pattern1 = new RegExp("^\\d{4}-\\d{2}-\\d{2}$", "u");
function validate19(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (Object.keys(data).length < 1) {
      const err0 = { instancePath, schemaPath: "#/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema39, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "kerf" || key0 === "min_web" || key0 === "min_x_height" || key0 === "hatch" || key0 === "engrave")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema39, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.kerf !== void 0) {
      let data0 = data.kerf;
      if (typeof data0 === "string") {
        if (!pattern1.test(data0)) {
          const err2 = { instancePath: instancePath + "/kerf", schemaPath: "#/definitions/date/pattern", keyword: "pattern", params: { pattern: "^\\d{4}-\\d{2}-\\d{2}$" }, message: 'must match pattern "^\\d{4}-\\d{2}-\\d{2}$"', schema: "^\\d{4}-\\d{2}-\\d{2}$", parentSchema: schema40, data: data0 };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/kerf", schemaPath: "#/definitions/date/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema40.type, parentSchema: schema40, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.min_web !== void 0) {
      let data1 = data.min_web;
      if (typeof data1 === "string") {
        if (!pattern1.test(data1)) {
          const err4 = { instancePath: instancePath + "/min_web", schemaPath: "#/definitions/date/pattern", keyword: "pattern", params: { pattern: "^\\d{4}-\\d{2}-\\d{2}$" }, message: 'must match pattern "^\\d{4}-\\d{2}-\\d{2}$"', schema: "^\\d{4}-\\d{2}-\\d{2}$", parentSchema: schema40, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/min_web", schemaPath: "#/definitions/date/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema40.type, parentSchema: schema40, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.min_x_height !== void 0) {
      let data2 = data.min_x_height;
      if (typeof data2 === "string") {
        if (!pattern1.test(data2)) {
          const err6 = { instancePath: instancePath + "/min_x_height", schemaPath: "#/definitions/date/pattern", keyword: "pattern", params: { pattern: "^\\d{4}-\\d{2}-\\d{2}$" }, message: 'must match pattern "^\\d{4}-\\d{2}-\\d{2}$"', schema: "^\\d{4}-\\d{2}-\\d{2}$", parentSchema: schema40, data: data2 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      } else {
        const err7 = { instancePath: instancePath + "/min_x_height", schemaPath: "#/definitions/date/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema40.type, parentSchema: schema40, data: data2 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.hatch !== void 0) {
      let data3 = data.hatch;
      if (typeof data3 === "string") {
        if (!pattern1.test(data3)) {
          const err8 = { instancePath: instancePath + "/hatch", schemaPath: "#/definitions/date/pattern", keyword: "pattern", params: { pattern: "^\\d{4}-\\d{2}-\\d{2}$" }, message: 'must match pattern "^\\d{4}-\\d{2}-\\d{2}$"', schema: "^\\d{4}-\\d{2}-\\d{2}$", parentSchema: schema40, data: data3 };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      } else {
        const err9 = { instancePath: instancePath + "/hatch", schemaPath: "#/definitions/date/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema40.type, parentSchema: schema40, data: data3 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.engrave !== void 0) {
      let data4 = data.engrave;
      if (typeof data4 === "string") {
        if (!pattern1.test(data4)) {
          const err10 = { instancePath: instancePath + "/engrave", schemaPath: "#/definitions/date/pattern", keyword: "pattern", params: { pattern: "^\\d{4}-\\d{2}-\\d{2}$" }, message: 'must match pattern "^\\d{4}-\\d{2}-\\d{2}$"', schema: "^\\d{4}-\\d{2}-\\d{2}$", parentSchema: schema40, data: data4 };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      } else {
        const err11 = { instancePath: instancePath + "/engrave", schemaPath: "#/definitions/date/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema40.type, parentSchema: schema40, data: data4 };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
  } else {
    const err12 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema39.type, parentSchema: schema39, data };
    if (vErrors === null) {
      vErrors = [err12];
    } else {
      vErrors.push(err12);
    }
    errors++;
  }
  validate19.errors = vErrors;
  return errors === 0;
}
function validate16(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (Object.keys(data).length < 1) {
      const err0 = { instancePath, schemaPath: "#/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema36, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "kerf" || key0 === "min_web" || key0 === "min_x_height" || key0 === "machine" || key0 === "measured_on")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema36, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.kerf !== void 0) {
      if (!validate12(data.kerf, { instancePath: instancePath + "/kerf", parentData: data, parentDataProperty: "kerf", rootData })) {
        vErrors = vErrors === null ? validate12.errors : vErrors.concat(validate12.errors);
        errors = vErrors.length;
      }
    }
    if (data.min_web !== void 0) {
      let data1 = data.min_web;
      if (!(typeof data1 == "number" && isFinite(data1)) && typeof data1 !== "string") {
        const err2 = { instancePath: instancePath + "/min_web", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data1 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.min_x_height !== void 0) {
      let data2 = data.min_x_height;
      if (!(typeof data2 == "number" && isFinite(data2)) && typeof data2 !== "string") {
        const err3 = { instancePath: instancePath + "/min_x_height", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data2 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.machine !== void 0) {
      if (!validate14(data.machine, { instancePath: instancePath + "/machine", parentData: data, parentDataProperty: "machine", rootData })) {
        vErrors = vErrors === null ? validate14.errors : vErrors.concat(validate14.errors);
        errors = vErrors.length;
      }
    }
    if (data.measured_on !== void 0) {
      if (!validate19(data.measured_on, { instancePath: instancePath + "/measured_on", parentData: data, parentDataProperty: "measured_on", rootData })) {
        vErrors = vErrors === null ? validate19.errors : vErrors.concat(validate19.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err4 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema36.type, parentSchema: schema36, data };
    if (vErrors === null) {
      vErrors = [err4];
    } else {
      vErrors.push(err4);
    }
    errors++;
  }
  validate16.errors = vErrors;
  return errors === 0;
}
var pattern0 = new RegExp("^[A-Za-z][A-Za-z0-9_-]*$", "u");
var pattern6 = new RegExp("^#[0-9A-Fa-f]{6}$", "u");
function validate11(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!func2.call(schema15.properties, key0)) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema15, data };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.material !== void 0) {
      let data0 = data.material;
      if (typeof data0 === "string") {
        if (func3(data0) > 100) {
          const err1 = { instancePath: instancePath + "/material", schemaPath: "#/properties/material/maxLength", keyword: "maxLength", params: { limit: 100 }, message: "must NOT have more than 100 characters", schema: 100, parentSchema: schema15.properties.material, data: data0 };
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
      } else {
        const err2 = { instancePath: instancePath + "/material", schemaPath: "#/properties/material/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema15.properties.material.type, parentSchema: schema15.properties.material, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.thickness !== void 0) {
      let data1 = data.thickness;
      if (!(typeof data1 == "number" && isFinite(data1)) && typeof data1 !== "string") {
        const err3 = { instancePath: instancePath + "/thickness", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data1 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.kerf !== void 0) {
      if (!validate12(data.kerf, { instancePath: instancePath + "/kerf", parentData: data, parentDataProperty: "kerf", rootData })) {
        vErrors = vErrors === null ? validate12.errors : vErrors.concat(validate12.errors);
        errors = vErrors.length;
      }
    }
    if (data.machine !== void 0) {
      if (!validate14(data.machine, { instancePath: instancePath + "/machine", parentData: data, parentDataProperty: "machine", rootData })) {
        vErrors = vErrors === null ? validate14.errors : vErrors.concat(validate14.errors);
        errors = vErrors.length;
      }
    }
    if (data.machines !== void 0) {
      let data4 = data.machines;
      if (data4 && typeof data4 == "object" && !Array.isArray(data4)) {
        if (Object.keys(data4).length < 1) {
          const err4 = { instancePath: instancePath + "/machines", schemaPath: "#/properties/machines/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema15.properties.machines, data: data4 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
        for (const key1 in data4) {
          const _errs11 = errors;
          if (typeof key1 === "string") {
            if (!pattern0.test(key1)) {
              const err5 = { instancePath: instancePath + "/machines", schemaPath: "#/properties/machines/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" }, message: 'must match pattern "^[A-Za-z][A-Za-z0-9_-]*$"', schema: "^[A-Za-z][A-Za-z0-9_-]*$", parentSchema: schema15.properties.machines.propertyNames, data: key1, propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
            }
          }
          var valid2 = _errs11 === errors;
          if (!valid2) {
            const err6 = { instancePath: instancePath + "/machines", schemaPath: "#/properties/machines/propertyNames", keyword: "propertyNames", params: { propertyName: key1 }, message: "property name must be valid", schema: schema15.properties.machines.propertyNames, parentSchema: schema15.properties.machines, data: data4 };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
        }
        for (const key2 in data4) {
          if (!validate16(data4[key2], { instancePath: instancePath + "/machines/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data4, parentDataProperty: key2, rootData })) {
            vErrors = vErrors === null ? validate16.errors : vErrors.concat(validate16.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err7 = { instancePath: instancePath + "/machines", schemaPath: "#/properties/machines/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema15.properties.machines.type, parentSchema: schema15.properties.machines, data: data4 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.min_x_height !== void 0) {
      let data6 = data.min_x_height;
      if (!(typeof data6 == "number" && isFinite(data6)) && typeof data6 !== "string") {
        const err8 = { instancePath: instancePath + "/min_x_height", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data6 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.caution !== void 0) {
      let data7 = data.caution;
      if (typeof data7 === "string") {
        if (func3(data7) > 300) {
          const err9 = { instancePath: instancePath + "/caution", schemaPath: "#/properties/caution/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema15.properties.caution, data: data7 };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/caution", schemaPath: "#/properties/caution/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema15.properties.caution.type, parentSchema: schema15.properties.caution, data: data7 };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.look !== void 0) {
      let data8 = data.look;
      if (data8 && typeof data8 == "object" && !Array.isArray(data8)) {
        if (Object.keys(data8).length < 1) {
          const err11 = { instancePath: instancePath + "/look", schemaPath: "#/properties/look/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema15.properties.look, data: data8 };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
        for (const key3 in data8) {
          if (!(key3 === "color" || key3 === "grain" || key3 === "engraving")) {
            const err12 = { instancePath: instancePath + "/look", schemaPath: "#/properties/look/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties", schema: false, parentSchema: schema15.properties.look, data: data8 };
            if (vErrors === null) {
              vErrors = [err12];
            } else {
              vErrors.push(err12);
            }
            errors++;
          }
        }
        if (data8.color !== void 0) {
          let data9 = data8.color;
          if (typeof data9 === "string") {
            if (!pattern6.test(data9)) {
              const err13 = { instancePath: instancePath + "/look/color", schemaPath: "#/properties/look/properties/color/pattern", keyword: "pattern", params: { pattern: "^#[0-9A-Fa-f]{6}$" }, message: 'must match pattern "^#[0-9A-Fa-f]{6}$"', schema: "^#[0-9A-Fa-f]{6}$", parentSchema: schema15.properties.look.properties.color, data: data9 };
              if (vErrors === null) {
                vErrors = [err13];
              } else {
                vErrors.push(err13);
              }
              errors++;
            }
          } else {
            const err14 = { instancePath: instancePath + "/look/color", schemaPath: "#/properties/look/properties/color/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema15.properties.look.properties.color.type, parentSchema: schema15.properties.look.properties.color, data: data9 };
            if (vErrors === null) {
              vErrors = [err14];
            } else {
              vErrors.push(err14);
            }
            errors++;
          }
        }
        if (data8.grain !== void 0) {
          let data10 = data8.grain;
          if (!(data10 === "left-right" || data10 === "up-down" || data10 === "none")) {
            const err15 = { instancePath: instancePath + "/look/grain", schemaPath: "#/properties/look/properties/grain/enum", keyword: "enum", params: { allowedValues: schema15.properties.look.properties.grain.enum }, message: "must be equal to one of the allowed values", schema: schema15.properties.look.properties.grain.enum, parentSchema: schema15.properties.look.properties.grain, data: data10 };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
        }
        if (data8.engraving !== void 0) {
          let data11 = data8.engraving;
          if (!(data11 === "dark" || data11 === "light")) {
            const err16 = { instancePath: instancePath + "/look/engraving", schemaPath: "#/properties/look/properties/engraving/enum", keyword: "enum", params: { allowedValues: schema15.properties.look.properties.engraving.enum }, message: "must be equal to one of the allowed values", schema: schema15.properties.look.properties.engraving.enum, parentSchema: schema15.properties.look.properties.engraving, data: data11 };
            if (vErrors === null) {
              vErrors = [err16];
            } else {
              vErrors.push(err16);
            }
            errors++;
          }
        }
      } else {
        const err17 = { instancePath: instancePath + "/look", schemaPath: "#/properties/look/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema15.properties.look.type, parentSchema: schema15.properties.look, data: data8 };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
    if (data.measured_on !== void 0) {
      if (!validate19(data.measured_on, { instancePath: instancePath + "/measured_on", parentData: data, parentDataProperty: "measured_on", rootData })) {
        vErrors = vErrors === null ? validate19.errors : vErrors.concat(validate19.errors);
        errors = vErrors.length;
      }
    }
    if (data.density !== void 0) {
      let data13 = data.density;
      if (typeof data13 == "number" && isFinite(data13)) {
        if (data13 > 25e3 || isNaN(data13)) {
          const err18 = { instancePath: instancePath + "/density", schemaPath: "#/properties/density/maximum", keyword: "maximum", params: { comparison: "<=", limit: 25e3 }, message: "must be <= 25000", schema: 25e3, parentSchema: schema15.properties.density, data: data13 };
          if (vErrors === null) {
            vErrors = [err18];
          } else {
            vErrors.push(err18);
          }
          errors++;
        }
        if (data13 <= 0 || isNaN(data13)) {
          const err19 = { instancePath: instancePath + "/density", schemaPath: "#/properties/density/exclusiveMinimum", keyword: "exclusiveMinimum", params: { comparison: ">", limit: 0 }, message: "must be > 0", schema: 0, parentSchema: schema15.properties.density, data: data13 };
          if (vErrors === null) {
            vErrors = [err19];
          } else {
            vErrors.push(err19);
          }
          errors++;
        }
      } else {
        const err20 = { instancePath: instancePath + "/density", schemaPath: "#/properties/density/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema15.properties.density.type, parentSchema: schema15.properties.density, data: data13 };
        if (vErrors === null) {
          vErrors = [err20];
        } else {
          vErrors.push(err20);
        }
        errors++;
      }
    }
    if (data.price !== void 0) {
      let data14 = data.price;
      if (data14 && typeof data14 == "object" && !Array.isArray(data14)) {
        if (data14.amount === void 0) {
          const err21 = { instancePath: instancePath + "/price", schemaPath: "#/properties/price/required", keyword: "required", params: { missingProperty: "amount" }, message: "must have required property 'amount'", schema: schema15.properties.price.required, parentSchema: schema15.properties.price, data: data14 };
          if (vErrors === null) {
            vErrors = [err21];
          } else {
            vErrors.push(err21);
          }
          errors++;
        }
        if (data14.per === void 0) {
          const err22 = { instancePath: instancePath + "/price", schemaPath: "#/properties/price/required", keyword: "required", params: { missingProperty: "per" }, message: "must have required property 'per'", schema: schema15.properties.price.required, parentSchema: schema15.properties.price, data: data14 };
          if (vErrors === null) {
            vErrors = [err22];
          } else {
            vErrors.push(err22);
          }
          errors++;
        }
        for (const key4 in data14) {
          if (!(key4 === "amount" || key4 === "per" || key4 === "currency")) {
            const err23 = { instancePath: instancePath + "/price", schemaPath: "#/properties/price/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key4 }, message: "must NOT have additional properties", schema: false, parentSchema: schema15.properties.price, data: data14 };
            if (vErrors === null) {
              vErrors = [err23];
            } else {
              vErrors.push(err23);
            }
            errors++;
          }
        }
        if (data14.amount !== void 0) {
          let data15 = data14.amount;
          if (typeof data15 == "number" && isFinite(data15)) {
            if (data15 > 1e6 || isNaN(data15)) {
              const err24 = { instancePath: instancePath + "/price/amount", schemaPath: "#/properties/price/properties/amount/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e6 }, message: "must be <= 1000000", schema: 1e6, parentSchema: schema15.properties.price.properties.amount, data: data15 };
              if (vErrors === null) {
                vErrors = [err24];
              } else {
                vErrors.push(err24);
              }
              errors++;
            }
            if (data15 < 0 || isNaN(data15)) {
              const err25 = { instancePath: instancePath + "/price/amount", schemaPath: "#/properties/price/properties/amount/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema15.properties.price.properties.amount, data: data15 };
              if (vErrors === null) {
                vErrors = [err25];
              } else {
                vErrors.push(err25);
              }
              errors++;
            }
          } else {
            const err26 = { instancePath: instancePath + "/price/amount", schemaPath: "#/properties/price/properties/amount/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema15.properties.price.properties.amount.type, parentSchema: schema15.properties.price.properties.amount, data: data15 };
            if (vErrors === null) {
              vErrors = [err26];
            } else {
              vErrors.push(err26);
            }
            errors++;
          }
        }
        if (data14.per !== void 0) {
          let data16 = data14.per;
          if (!(data16 === "sheet" || data16 === "m2" || data16 === "ft2")) {
            const err27 = { instancePath: instancePath + "/price/per", schemaPath: "#/properties/price/properties/per/enum", keyword: "enum", params: { allowedValues: schema15.properties.price.properties.per.enum }, message: "must be equal to one of the allowed values", schema: schema15.properties.price.properties.per.enum, parentSchema: schema15.properties.price.properties.per, data: data16 };
            if (vErrors === null) {
              vErrors = [err27];
            } else {
              vErrors.push(err27);
            }
            errors++;
          }
        }
        if (data14.currency !== void 0) {
          let data17 = data14.currency;
          if (typeof data17 === "string") {
            if (func3(data17) > 10) {
              const err28 = { instancePath: instancePath + "/price/currency", schemaPath: "#/properties/price/properties/currency/maxLength", keyword: "maxLength", params: { limit: 10 }, message: "must NOT have more than 10 characters", schema: 10, parentSchema: schema15.properties.price.properties.currency, data: data17 };
              if (vErrors === null) {
                vErrors = [err28];
              } else {
                vErrors.push(err28);
              }
              errors++;
            }
          } else {
            const err29 = { instancePath: instancePath + "/price/currency", schemaPath: "#/properties/price/properties/currency/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema15.properties.price.properties.currency.type, parentSchema: schema15.properties.price.properties.currency, data: data17 };
            if (vErrors === null) {
              vErrors = [err29];
            } else {
              vErrors.push(err29);
            }
            errors++;
          }
        }
      } else {
        const err30 = { instancePath: instancePath + "/price", schemaPath: "#/properties/price/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema15.properties.price.type, parentSchema: schema15.properties.price, data: data14 };
        if (vErrors === null) {
          vErrors = [err30];
        } else {
          vErrors.push(err30);
        }
        errors++;
      }
    }
    if (data.measured !== void 0) {
      let data18 = data.measured;
      if (data18 && typeof data18 == "object" && !Array.isArray(data18)) {
        if (data18.breaks_at === void 0) {
          const err31 = { instancePath: instancePath + "/measured", schemaPath: "#/properties/measured/required", keyword: "required", params: { missingProperty: "breaks_at" }, message: "must have required property 'breaks_at'", schema: schema15.properties.measured.required, parentSchema: schema15.properties.measured, data: data18 };
          if (vErrors === null) {
            vErrors = [err31];
          } else {
            vErrors.push(err31);
          }
          errors++;
        }
        if (data18.neck === void 0) {
          const err32 = { instancePath: instancePath + "/measured", schemaPath: "#/properties/measured/required", keyword: "required", params: { missingProperty: "neck" }, message: "must have required property 'neck'", schema: schema15.properties.measured.required, parentSchema: schema15.properties.measured, data: data18 };
          if (vErrors === null) {
            vErrors = [err32];
          } else {
            vErrors.push(err32);
          }
          errors++;
        }
        for (const key5 in data18) {
          if (!(key5 === "breaks_at" || key5 === "neck")) {
            const err33 = { instancePath: instancePath + "/measured", schemaPath: "#/properties/measured/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key5 }, message: "must NOT have additional properties", schema: false, parentSchema: schema15.properties.measured, data: data18 };
            if (vErrors === null) {
              vErrors = [err33];
            } else {
              vErrors.push(err33);
            }
            errors++;
          }
        }
        if (data18.breaks_at !== void 0) {
          let data19 = data18.breaks_at;
          if (!(typeof data19 == "number" && isFinite(data19)) && typeof data19 !== "string") {
            const err34 = { instancePath: instancePath + "/measured/breaks_at", schemaPath: "#/properties/measured/properties/breaks_at/type", keyword: "type", params: { type: schema15.properties.measured.properties.breaks_at.type }, message: "must be number,string", schema: schema15.properties.measured.properties.breaks_at.type, parentSchema: schema15.properties.measured.properties.breaks_at, data: data19 };
            if (vErrors === null) {
              vErrors = [err34];
            } else {
              vErrors.push(err34);
            }
            errors++;
          }
        }
        if (data18.neck !== void 0) {
          let data20 = data18.neck;
          if (!(typeof data20 == "number" && isFinite(data20)) && typeof data20 !== "string") {
            const err35 = { instancePath: instancePath + "/measured/neck", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data20 };
            if (vErrors === null) {
              vErrors = [err35];
            } else {
              vErrors.push(err35);
            }
            errors++;
          }
        }
      } else {
        const err36 = { instancePath: instancePath + "/measured", schemaPath: "#/properties/measured/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema15.properties.measured.type, parentSchema: schema15.properties.measured, data: data18 };
        if (vErrors === null) {
          vErrors = [err36];
        } else {
          vErrors.push(err36);
        }
        errors++;
      }
    }
    if (data.min_web !== void 0) {
      let data21 = data.min_web;
      if (!(typeof data21 == "number" && isFinite(data21)) && typeof data21 !== "string") {
        const err37 = { instancePath: instancePath + "/min_web", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data21 };
        if (vErrors === null) {
          vErrors = [err37];
        } else {
          vErrors.push(err37);
        }
        errors++;
      }
    }
  } else {
    const err38 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema15.type, parentSchema: schema15, data };
    if (vErrors === null) {
      vErrors = [err38];
    } else {
      vErrors.push(err38);
    }
    errors++;
  }
  validate11.errors = vErrors;
  return errors === 0;
}
var schema49 = { "title": "TieSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "What the tag hangs on: {twine: diameter} or {ribbon: width}.", "properties": { "twine": { "$ref": "#/definitions/length", "description": "Diameter of the twine.", "examples": ["2 mm"] }, "ribbon": { "$ref": "#/definitions/length", "description": "Width of the ribbon.", "examples": ["10 mm"] }, "opening": { "$ref": "#/definitions/length", "description": "Smallest round hole that it goes through doubled; the hole comb finds it. Default: by a rule of thumb.", "examples": ["3.5 mm"] }, "measured_on": { "$ref": "#/definitions/date", "description": "When `opening` was measured." } }, "examples": [{ "twine": "2 mm" }] };
function validate25(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (Object.keys(data).length < 1) {
      const err0 = { instancePath, schemaPath: "#/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema49, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "twine" || key0 === "ribbon" || key0 === "opening" || key0 === "measured_on")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema49, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.twine !== void 0) {
      let data0 = data.twine;
      if (!(typeof data0 == "number" && isFinite(data0)) && typeof data0 !== "string") {
        const err2 = { instancePath: instancePath + "/twine", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.ribbon !== void 0) {
      let data1 = data.ribbon;
      if (!(typeof data1 == "number" && isFinite(data1)) && typeof data1 !== "string") {
        const err3 = { instancePath: instancePath + "/ribbon", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data1 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.opening !== void 0) {
      let data2 = data.opening;
      if (!(typeof data2 == "number" && isFinite(data2)) && typeof data2 !== "string") {
        const err4 = { instancePath: instancePath + "/opening", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data2 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.measured_on !== void 0) {
      let data3 = data.measured_on;
      if (typeof data3 === "string") {
        if (!pattern1.test(data3)) {
          const err5 = { instancePath: instancePath + "/measured_on", schemaPath: "#/definitions/date/pattern", keyword: "pattern", params: { pattern: "^\\d{4}-\\d{2}-\\d{2}$" }, message: 'must match pattern "^\\d{4}-\\d{2}-\\d{2}$"', schema: "^\\d{4}-\\d{2}-\\d{2}$", parentSchema: schema40, data: data3 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/measured_on", schemaPath: "#/definitions/date/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema40.type, parentSchema: schema40, data: data3 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
  } else {
    const err7 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema49.type, parentSchema: schema49, data };
    if (vErrors === null) {
      vErrors = [err7];
    } else {
      vErrors.push(err7);
    }
    errors++;
  }
  validate25.errors = vErrors;
  return errors === 0;
}
var schema54 = { "title": "BatchSpec", "description": "The same tag for a list: names, or rows of cells by column, written here or in a CSV file beside the spec. In a text or a title, {column} is replaced by the row's cell; in a list of names the column is {name}.", "anyOf": [{ "$ref": "#/definitions/tableFile" }, { "$ref": "#/definitions/rows" }] };
var schema55 = { "title": "TableFile", "description": "The path of a CSV file beside the spec; its first line names the columns.", "type": "string", "maxLength": 500 };
var schema56 = { "title": "Rows", "type": "array", "minItems": 1, "maxItems": 500, "items": { "anyOf": [{ "$ref": "#/definitions/rowName" }, { "$ref": "#/definitions/row" }] } };
var schema57 = { "title": "RowName", "description": "Replaces {name}.", "type": ["string", "number"] };
var schema58 = { "title": "Row", "description": "The cells of a row, each by its column.", "type": "object", "minProperties": 1, "additionalProperties": { "type": ["string", "number"], "description": "Replaces {column} in this row." } };
function validate29(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (Array.isArray(data)) {
    if (data.length > 500) {
      const err0 = { instancePath, schemaPath: "#/maxItems", keyword: "maxItems", params: { limit: 500 }, message: "must NOT have more than 500 items", schema: 500, parentSchema: schema56, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.length < 1) {
      const err1 = { instancePath, schemaPath: "#/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema56, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    const len0 = data.length;
    for (let i0 = 0; i0 < len0; i0++) {
      let data0 = data[i0];
      const _errs2 = errors;
      let valid2 = false;
      const _errs3 = errors;
      if (typeof data0 !== "string" && !(typeof data0 == "number" && isFinite(data0))) {
        const err2 = { instancePath: instancePath + "/" + i0, schemaPath: "#/definitions/rowName/type", keyword: "type", params: { type: schema57.type }, message: "must be string,number", schema: schema57.type, parentSchema: schema57, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
      var _valid0 = _errs3 === errors;
      valid2 = valid2 || _valid0;
      if (!valid2) {
        const _errs6 = errors;
        if (data0 && typeof data0 == "object" && !Array.isArray(data0)) {
          if (Object.keys(data0).length < 1) {
            const err3 = { instancePath: instancePath + "/" + i0, schemaPath: "#/definitions/row/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema58, data: data0 };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
          for (const key0 in data0) {
            let data1 = data0[key0];
            if (typeof data1 !== "string" && !(typeof data1 == "number" && isFinite(data1))) {
              const err4 = { instancePath: instancePath + "/" + i0 + "/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/definitions/row/additionalProperties/type", keyword: "type", params: { type: schema58.additionalProperties.type }, message: "must be string,number", schema: schema58.additionalProperties.type, parentSchema: schema58.additionalProperties, data: data1 };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
          }
        } else {
          const err5 = { instancePath: instancePath + "/" + i0, schemaPath: "#/definitions/row/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema58.type, parentSchema: schema58, data: data0 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        var _valid0 = _errs6 === errors;
        valid2 = valid2 || _valid0;
      }
      if (!valid2) {
        const err6 = { instancePath: instancePath + "/" + i0, schemaPath: "#/items/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema56.items.anyOf, parentSchema: schema56.items, data: data0 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      } else {
        errors = _errs2;
        if (vErrors !== null) {
          if (_errs2) {
            vErrors.length = _errs2;
          } else {
            vErrors = null;
          }
        }
      }
    }
  } else {
    const err7 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema56.type, parentSchema: schema56, data };
    if (vErrors === null) {
      vErrors = [err7];
    } else {
      vErrors.push(err7);
    }
    errors++;
  }
  validate29.errors = vErrors;
  return errors === 0;
}
function validate28(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  const _errs0 = errors;
  let valid0 = false;
  const _errs1 = errors;
  if (typeof data === "string") {
    if (func3(data) > 500) {
      const err0 = { instancePath, schemaPath: "#/definitions/tableFile/maxLength", keyword: "maxLength", params: { limit: 500 }, message: "must NOT have more than 500 characters", schema: 500, parentSchema: schema55, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
  } else {
    const err1 = { instancePath, schemaPath: "#/definitions/tableFile/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema55.type, parentSchema: schema55, data };
    if (vErrors === null) {
      vErrors = [err1];
    } else {
      vErrors.push(err1);
    }
    errors++;
  }
  var _valid0 = _errs1 === errors;
  valid0 = valid0 || _valid0;
  if (!valid0) {
    const _errs4 = errors;
    if (!validate29(data, { instancePath, parentData, parentDataProperty, rootData })) {
      vErrors = vErrors === null ? validate29.errors : vErrors.concat(validate29.errors);
      errors = vErrors.length;
    }
    var _valid0 = _errs4 === errors;
    valid0 = valid0 || _valid0;
  }
  if (!valid0) {
    const err2 = { instancePath, schemaPath: "#/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema54.anyOf, parentSchema: schema54, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  } else {
    errors = _errs0;
    if (vErrors !== null) {
      if (_errs0) {
        vErrors.length = _errs0;
      } else {
        vErrors = null;
      }
    }
  }
  validate28.errors = vErrors;
  return errors === 0;
}
var schema59 = { "title": "SheetSpec", "type": "object", "additionalProperties": false, "required": ["size"], "description": "The sheets you have: a piece that does not fit one is an error, and tags are laid out on them.", "properties": { "size": { "$ref": "#/definitions/size", "description": "[width, height] of a sheet.", "examples": [["600 mm", "400 mm"]] }, "margin": { "$ref": "#/definitions/length", "default": 0, "description": "Left free along every edge, for clamps and warp.", "examples": ["5 mm"] }, "gap": { "$ref": "#/definitions/length", "default": "2 mm", "description": "Material left between two pieces.", "examples": ["3 mm"] }, "turn": { "enum": ["never", "half", "quarter"], "default": "half", "description": "How pieces may be turned to pack closer. half: upside down, so that the grain keeps its direction. quarter: on their side as well. never: not at all." }, "copies": { "type": "integer", "minimum": 1, "maximum": 200, "default": 1, "description": "How many of each tag are laid out.", "examples": [12] } } };
var schema60 = { "title": "Size", "description": "[width, height].", "type": "array", "items": [{ "$ref": "#/definitions/length" }, { "$ref": "#/definitions/length" }], "minItems": 2, "maxItems": 2, "examples": [["60 mm", "30 mm"]] };
function validate33(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (Array.isArray(data)) {
    if (data.length > 2) {
      const err0 = { instancePath, schemaPath: "#/maxItems", keyword: "maxItems", params: { limit: 2 }, message: "must NOT have more than 2 items", schema: 2, parentSchema: schema60, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.length < 2) {
      const err1 = { instancePath, schemaPath: "#/minItems", keyword: "minItems", params: { limit: 2 }, message: "must NOT have fewer than 2 items", schema: 2, parentSchema: schema60, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    const len0 = data.length;
    if (len0 > 0) {
      let data0 = data[0];
      if (!(typeof data0 == "number" && isFinite(data0)) && typeof data0 !== "string") {
        const err2 = { instancePath: instancePath + "/0", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (len0 > 1) {
      let data1 = data[1];
      if (!(typeof data1 == "number" && isFinite(data1)) && typeof data1 !== "string") {
        const err3 = { instancePath: instancePath + "/1", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data1 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
  } else {
    const err4 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema60.type, parentSchema: schema60, data };
    if (vErrors === null) {
      vErrors = [err4];
    } else {
      vErrors.push(err4);
    }
    errors++;
  }
  validate33.errors = vErrors;
  return errors === 0;
}
function validate32(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.size === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "size" }, message: "must have required property 'size'", schema: schema59.required, parentSchema: schema59, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "size" || key0 === "margin" || key0 === "gap" || key0 === "turn" || key0 === "copies")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema59, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.size !== void 0) {
      if (!validate33(data.size, { instancePath: instancePath + "/size", parentData: data, parentDataProperty: "size", rootData })) {
        vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
        errors = vErrors.length;
      }
    }
    if (data.margin !== void 0) {
      let data1 = data.margin;
      if (!(typeof data1 == "number" && isFinite(data1)) && typeof data1 !== "string") {
        const err2 = { instancePath: instancePath + "/margin", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data1 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.gap !== void 0) {
      let data2 = data.gap;
      if (!(typeof data2 == "number" && isFinite(data2)) && typeof data2 !== "string") {
        const err3 = { instancePath: instancePath + "/gap", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data2 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.turn !== void 0) {
      let data3 = data.turn;
      if (!(data3 === "never" || data3 === "half" || data3 === "quarter")) {
        const err4 = { instancePath: instancePath + "/turn", schemaPath: "#/properties/turn/enum", keyword: "enum", params: { allowedValues: schema59.properties.turn.enum }, message: "must be equal to one of the allowed values", schema: schema59.properties.turn.enum, parentSchema: schema59.properties.turn, data: data3 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.copies !== void 0) {
      let data4 = data.copies;
      if (!(typeof data4 == "number" && (!(data4 % 1) && !isNaN(data4)) && isFinite(data4))) {
        const err5 = { instancePath: instancePath + "/copies", schemaPath: "#/properties/copies/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema59.properties.copies.type, parentSchema: schema59.properties.copies, data: data4 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
      if (typeof data4 == "number" && isFinite(data4)) {
        if (data4 > 200 || isNaN(data4)) {
          const err6 = { instancePath: instancePath + "/copies", schemaPath: "#/properties/copies/maximum", keyword: "maximum", params: { comparison: "<=", limit: 200 }, message: "must be <= 200", schema: 200, parentSchema: schema59.properties.copies, data: data4 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
        if (data4 < 1 || isNaN(data4)) {
          const err7 = { instancePath: instancePath + "/copies", schemaPath: "#/properties/copies/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1", schema: 1, parentSchema: schema59.properties.copies, data: data4 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      }
    }
  } else {
    const err8 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema59.type, parentSchema: schema59, data };
    if (vErrors === null) {
      vErrors = [err8];
    } else {
      vErrors.push(err8);
    }
    errors++;
  }
  validate32.errors = vErrors;
  return errors === 0;
}
var schema66 = { "title": "OutputSpec", "type": "object", "additionalProperties": false, "description": "How files for the machine and the customer are written.", "properties": { "compensate": { "type": "boolean", "default": true, "description": "false: cuts run on the drawn line and the part comes out half a kerf smaller all round; the checks then judge what is left." }, "tabs": { "description": "Small bridges left uncut to hold each part in the sheet: how many, or {count, width}.", "anyOf": [{ "type": "integer", "minimum": 0, "maximum": 20 }, { "title": "TabsSpec", "type": "object", "additionalProperties": false, "required": ["count"], "properties": { "count": { "type": "integer", "minimum": 0, "maximum": 20 }, "width": { "$ref": "#/definitions/length", "description": "Width of each. Default: 0.5 mm (rule of thumb, no source)." } } }] }, "picture_width": { "type": "integer", "minimum": 100, "maximum": 8e3, "default": 1600, "description": "Width of the proof picture (PNG) in pixels." }, "engrave_layers": { "enum": ["one", "each"], "default": "one", "description": "one: all that is engraved is on one layer. each: every entry of a piece's `engrave` is on a layer of its own, named after its shape and in a colour of its own, so that each can be given its own power and speed." }, "engrave": { "$ref": "#/definitions/lineStyle", "description": "How engraved areas are drawn." }, "score": { "$ref": "#/definitions/lineStyle", "description": "How scored lines are drawn." }, "cut_inner": { "$ref": "#/definitions/lineStyle", "description": "How cuts that come first are drawn: holes and openings." }, "cut_outer": { "$ref": "#/definitions/lineStyle", "description": "How the cuts that free the parts are drawn." } } };
var schema68 = { "title": "LineStyleSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "properties": { "color": { "title": "Colour", "type": "string", "pattern": "^#[0-9A-Fa-f]{6}$", "description": `As your machine's driver expects it, such as "#0072B2" (in quotes: # begins a comment).` }, "line_width": { "$ref": "#/definitions/length", "default": "0.1 mm", "description": "How wide lines are drawn; the machine follows their middle." }, "layer": { "type": "string", "minLength": 1, "maxLength": 60, "pattern": '^[^ <>/\\\\":;?*|=`,\\u0000-\\u001f]([^<>/\\\\":;?*|=`,\\u0000-\\u001f]*[^ <>/\\\\":;?*|=`,\\u0000-\\u001f])?$', "description": "Name of the layer in DXF files and of the group in SVG files." } } };
var pattern12 = new RegExp('^[^ <>/\\\\":;?*|=`,\\u0000-\\u001f]([^<>/\\\\":;?*|=`,\\u0000-\\u001f]*[^ <>/\\\\":;?*|=`,\\u0000-\\u001f])?$', "u");
function validate39(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (Object.keys(data).length < 1) {
      const err0 = { instancePath, schemaPath: "#/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema68, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "color" || key0 === "line_width" || key0 === "layer")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema68, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.color !== void 0) {
      let data0 = data.color;
      if (typeof data0 === "string") {
        if (!pattern6.test(data0)) {
          const err2 = { instancePath: instancePath + "/color", schemaPath: "#/properties/color/pattern", keyword: "pattern", params: { pattern: "^#[0-9A-Fa-f]{6}$" }, message: 'must match pattern "^#[0-9A-Fa-f]{6}$"', schema: "^#[0-9A-Fa-f]{6}$", parentSchema: schema68.properties.color, data: data0 };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/color", schemaPath: "#/properties/color/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema68.properties.color.type, parentSchema: schema68.properties.color, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.line_width !== void 0) {
      let data1 = data.line_width;
      if (!(typeof data1 == "number" && isFinite(data1)) && typeof data1 !== "string") {
        const err4 = { instancePath: instancePath + "/line_width", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data1 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.layer !== void 0) {
      let data2 = data.layer;
      if (typeof data2 === "string") {
        if (func3(data2) > 60) {
          const err5 = { instancePath: instancePath + "/layer", schemaPath: "#/properties/layer/maxLength", keyword: "maxLength", params: { limit: 60 }, message: "must NOT have more than 60 characters", schema: 60, parentSchema: schema68.properties.layer, data: data2 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        if (func3(data2) < 1) {
          const err6 = { instancePath: instancePath + "/layer", schemaPath: "#/properties/layer/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema68.properties.layer, data: data2 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
        if (!pattern12.test(data2)) {
          const err7 = { instancePath: instancePath + "/layer", schemaPath: "#/properties/layer/pattern", keyword: "pattern", params: { pattern: '^[^ <>/\\\\":;?*|=`,\\u0000-\\u001f]([^<>/\\\\":;?*|=`,\\u0000-\\u001f]*[^ <>/\\\\":;?*|=`,\\u0000-\\u001f])?$' }, message: 'must match pattern "^[^ <>/\\\\":;?*|=`,\\u0000-\\u001f]([^<>/\\\\":;?*|=`,\\u0000-\\u001f]*[^ <>/\\\\":;?*|=`,\\u0000-\\u001f])?$"', schema: '^[^ <>/\\\\":;?*|=`,\\u0000-\\u001f]([^<>/\\\\":;?*|=`,\\u0000-\\u001f]*[^ <>/\\\\":;?*|=`,\\u0000-\\u001f])?$', parentSchema: schema68.properties.layer, data: data2 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/layer", schemaPath: "#/properties/layer/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema68.properties.layer.type, parentSchema: schema68.properties.layer, data: data2 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
  } else {
    const err9 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema68.type, parentSchema: schema68, data };
    if (vErrors === null) {
      vErrors = [err9];
    } else {
      vErrors.push(err9);
    }
    errors++;
  }
  validate39.errors = vErrors;
  return errors === 0;
}
function validate38(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "compensate" || key0 === "tabs" || key0 === "picture_width" || key0 === "engrave_layers" || key0 === "engrave" || key0 === "score" || key0 === "cut_inner" || key0 === "cut_outer")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema66, data };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.compensate !== void 0) {
      let data0 = data.compensate;
      if (typeof data0 !== "boolean") {
        const err1 = { instancePath: instancePath + "/compensate", schemaPath: "#/properties/compensate/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema66.properties.compensate.type, parentSchema: schema66.properties.compensate, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.tabs !== void 0) {
      let data1 = data.tabs;
      const _errs5 = errors;
      let valid1 = false;
      const _errs6 = errors;
      if (!(typeof data1 == "number" && (!(data1 % 1) && !isNaN(data1)) && isFinite(data1))) {
        const err2 = { instancePath: instancePath + "/tabs", schemaPath: "#/properties/tabs/anyOf/0/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema66.properties.tabs.anyOf[0].type, parentSchema: schema66.properties.tabs.anyOf[0], data: data1 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
      if (typeof data1 == "number" && isFinite(data1)) {
        if (data1 > 20 || isNaN(data1)) {
          const err3 = { instancePath: instancePath + "/tabs", schemaPath: "#/properties/tabs/anyOf/0/maximum", keyword: "maximum", params: { comparison: "<=", limit: 20 }, message: "must be <= 20", schema: 20, parentSchema: schema66.properties.tabs.anyOf[0], data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        if (data1 < 0 || isNaN(data1)) {
          const err4 = { instancePath: instancePath + "/tabs", schemaPath: "#/properties/tabs/anyOf/0/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema66.properties.tabs.anyOf[0], data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      }
      var _valid0 = _errs6 === errors;
      valid1 = valid1 || _valid0;
      if (!valid1) {
        const _errs8 = errors;
        if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
          if (data1.count === void 0) {
            const err5 = { instancePath: instancePath + "/tabs", schemaPath: "#/properties/tabs/anyOf/1/required", keyword: "required", params: { missingProperty: "count" }, message: "must have required property 'count'", schema: schema66.properties.tabs.anyOf[1].required, parentSchema: schema66.properties.tabs.anyOf[1], data: data1 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
          for (const key1 in data1) {
            if (!(key1 === "count" || key1 === "width")) {
              const err6 = { instancePath: instancePath + "/tabs", schemaPath: "#/properties/tabs/anyOf/1/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema66.properties.tabs.anyOf[1], data: data1 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
          }
          if (data1.count !== void 0) {
            let data2 = data1.count;
            if (!(typeof data2 == "number" && (!(data2 % 1) && !isNaN(data2)) && isFinite(data2))) {
              const err7 = { instancePath: instancePath + "/tabs/count", schemaPath: "#/properties/tabs/anyOf/1/properties/count/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema66.properties.tabs.anyOf[1].properties.count.type, parentSchema: schema66.properties.tabs.anyOf[1].properties.count, data: data2 };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
            if (typeof data2 == "number" && isFinite(data2)) {
              if (data2 > 20 || isNaN(data2)) {
                const err8 = { instancePath: instancePath + "/tabs/count", schemaPath: "#/properties/tabs/anyOf/1/properties/count/maximum", keyword: "maximum", params: { comparison: "<=", limit: 20 }, message: "must be <= 20", schema: 20, parentSchema: schema66.properties.tabs.anyOf[1].properties.count, data: data2 };
                if (vErrors === null) {
                  vErrors = [err8];
                } else {
                  vErrors.push(err8);
                }
                errors++;
              }
              if (data2 < 0 || isNaN(data2)) {
                const err9 = { instancePath: instancePath + "/tabs/count", schemaPath: "#/properties/tabs/anyOf/1/properties/count/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema66.properties.tabs.anyOf[1].properties.count, data: data2 };
                if (vErrors === null) {
                  vErrors = [err9];
                } else {
                  vErrors.push(err9);
                }
                errors++;
              }
            }
          }
          if (data1.width !== void 0) {
            let data3 = data1.width;
            if (!(typeof data3 == "number" && isFinite(data3)) && typeof data3 !== "string") {
              const err10 = { instancePath: instancePath + "/tabs/width", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data3 };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
          }
        } else {
          const err11 = { instancePath: instancePath + "/tabs", schemaPath: "#/properties/tabs/anyOf/1/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema66.properties.tabs.anyOf[1].type, parentSchema: schema66.properties.tabs.anyOf[1], data: data1 };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
        var _valid0 = _errs8 === errors;
        valid1 = valid1 || _valid0;
      }
      if (!valid1) {
        const err12 = { instancePath: instancePath + "/tabs", schemaPath: "#/properties/tabs/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema66.properties.tabs.anyOf, parentSchema: schema66.properties.tabs, data: data1 };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      } else {
        errors = _errs5;
        if (vErrors !== null) {
          if (_errs5) {
            vErrors.length = _errs5;
          } else {
            vErrors = null;
          }
        }
      }
    }
    if (data.picture_width !== void 0) {
      let data4 = data.picture_width;
      if (!(typeof data4 == "number" && (!(data4 % 1) && !isNaN(data4)) && isFinite(data4))) {
        const err13 = { instancePath: instancePath + "/picture_width", schemaPath: "#/properties/picture_width/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema66.properties.picture_width.type, parentSchema: schema66.properties.picture_width, data: data4 };
        if (vErrors === null) {
          vErrors = [err13];
        } else {
          vErrors.push(err13);
        }
        errors++;
      }
      if (typeof data4 == "number" && isFinite(data4)) {
        if (data4 > 8e3 || isNaN(data4)) {
          const err14 = { instancePath: instancePath + "/picture_width", schemaPath: "#/properties/picture_width/maximum", keyword: "maximum", params: { comparison: "<=", limit: 8e3 }, message: "must be <= 8000", schema: 8e3, parentSchema: schema66.properties.picture_width, data: data4 };
          if (vErrors === null) {
            vErrors = [err14];
          } else {
            vErrors.push(err14);
          }
          errors++;
        }
        if (data4 < 100 || isNaN(data4)) {
          const err15 = { instancePath: instancePath + "/picture_width", schemaPath: "#/properties/picture_width/minimum", keyword: "minimum", params: { comparison: ">=", limit: 100 }, message: "must be >= 100", schema: 100, parentSchema: schema66.properties.picture_width, data: data4 };
          if (vErrors === null) {
            vErrors = [err15];
          } else {
            vErrors.push(err15);
          }
          errors++;
        }
      }
    }
    if (data.engrave_layers !== void 0) {
      let data5 = data.engrave_layers;
      if (!(data5 === "one" || data5 === "each")) {
        const err16 = { instancePath: instancePath + "/engrave_layers", schemaPath: "#/properties/engrave_layers/enum", keyword: "enum", params: { allowedValues: schema66.properties.engrave_layers.enum }, message: "must be equal to one of the allowed values", schema: schema66.properties.engrave_layers.enum, parentSchema: schema66.properties.engrave_layers, data: data5 };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
    }
    if (data.engrave !== void 0) {
      if (!validate39(data.engrave, { instancePath: instancePath + "/engrave", parentData: data, parentDataProperty: "engrave", rootData })) {
        vErrors = vErrors === null ? validate39.errors : vErrors.concat(validate39.errors);
        errors = vErrors.length;
      }
    }
    if (data.score !== void 0) {
      if (!validate39(data.score, { instancePath: instancePath + "/score", parentData: data, parentDataProperty: "score", rootData })) {
        vErrors = vErrors === null ? validate39.errors : vErrors.concat(validate39.errors);
        errors = vErrors.length;
      }
    }
    if (data.cut_inner !== void 0) {
      if (!validate39(data.cut_inner, { instancePath: instancePath + "/cut_inner", parentData: data, parentDataProperty: "cut_inner", rootData })) {
        vErrors = vErrors === null ? validate39.errors : vErrors.concat(validate39.errors);
        errors = vErrors.length;
      }
    }
    if (data.cut_outer !== void 0) {
      if (!validate39(data.cut_outer, { instancePath: instancePath + "/cut_outer", parentData: data, parentDataProperty: "cut_outer", rootData })) {
        vErrors = vErrors === null ? validate39.errors : vErrors.concat(validate39.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err17 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema66.type, parentSchema: schema66, data };
    if (vErrors === null) {
      vErrors = [err17];
    } else {
      vErrors.push(err17);
    }
    errors++;
  }
  validate38.errors = vErrors;
  return errors === 0;
}
var schema70 = { "title": "HangerSpec", "type": "object", "additionalProperties": false, "minProperties": 1, "maxProperties": 1, "description": "What the tie goes through: a ring (a lug outside the body), a hole (inside it) or a slot (for ribbon).", "properties": { "ring": { "title": "RingSpec", "type": "object", "additionalProperties": false, "properties": { "on": { "$ref": "#/definitions/shapeName", "description": "Name of the shape it is joined to, or of a member of a stack in the body; default: the whole body." }, "at": { "$ref": "#/definitions/hangerPlace", "default": "auto" }, "diameter": { "$ref": "#/definitions/length", "description": "Diameter of the hole. Default: what the tie needs.", "examples": ["4 mm"] }, "wall": { "$ref": "#/definitions/length", "description": "Material around the hole. Default: min_web if written, else the thickness of the sheet up to 3 mm; at least 1.78 mm.", "examples": ["2 mm"] }, "sink": { "$ref": "#/definitions/length", "default": 0, "description": "How much deeper the ring is set into the body.", "examples": ["0.5 mm"] }, "nudge": { "$ref": "#/definitions/nudge" } }, "description": "A lug outside the body with a round hole. With `at: auto` it goes where it is joined best and hangs straightest.", "examples": [{ "at": "top" }] }, "hole": { "title": "HoleSpec", "type": "object", "additionalProperties": false, "properties": { "on": { "$ref": "#/definitions/shapeName", "description": "Name of the shape whose side `at` means, or of a member of a stack in the body; default: the whole body." }, "at": { "$ref": "#/definitions/hangerPlace", "default": "top" }, "diameter": { "$ref": "#/definitions/length", "description": "Diameter of the hole. Default: what the tie needs.", "examples": ["4 mm"] }, "inset": { "$ref": "#/definitions/length", "description": "Material between the hole and the edge. Default: twice min_web if written, else twice the thickness of the sheet, up to 6 mm.", "examples": ["3 mm"] }, "nudge": { "$ref": "#/definitions/nudge" } }, "description": "A round hole inside the body.", "examples": [{ "at": "top" }] }, "slot": { "title": "SlotSpec", "type": "object", "additionalProperties": false, "properties": { "on": { "$ref": "#/definitions/shapeName", "description": "Name of the shape whose side `at` means, or of a member of a stack in the body; default: the whole body." }, "at": { "$ref": "#/definitions/hangerPlace", "default": "top" }, "length": { "$ref": "#/definitions/length", "description": "Long side. Default: the ribbon's width and 1 mm.", "examples": ["12 mm"] }, "width": { "$ref": "#/definitions/length", "description": "Short side. Default: 3 mm.", "examples": ["3 mm"] }, "inset": { "$ref": "#/definitions/length", "description": "Material between the slot and the edge. Default: twice min_web if written, else twice the thickness of the sheet, up to 6 mm.", "examples": ["3 mm"] }, "nudge": { "$ref": "#/definitions/nudge" } }, "description": "A slot inside the body, for ribbon, set across the pull.", "examples": [{ "at": "top" }] } }, "examples": [{ "ring": { "at": "auto" } }] };
var schema71 = { "title": "ShapeName", "description": "The name of a shape.", "type": "string" };
var schema72 = { "title": "HangerPlace", "description": "A side, `auto` (the strongest clear place), an angle in degrees (0 is the top, clockwise), or a point from the centre such as {right: 10 mm, up: 5 mm}.", "anyOf": [{ "enum": ["auto", "top", "bottom", "left", "right", "top-left", "top-right", "bottom-left", "bottom-right"] }, { "type": "number", "minimum": -360, "maximum": 360 }, { "$ref": "#/definitions/nudge" }] };
var schema73 = { "title": "Nudge", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "Moves the shape by hand: up, down, left, right.", "properties": { "up": { "$ref": "#/definitions/length", "examples": ["1 mm"] }, "down": { "$ref": "#/definitions/length", "examples": ["1 mm"] }, "left": { "$ref": "#/definitions/length", "examples": ["1 mm"] }, "right": { "$ref": "#/definitions/length", "examples": ["1 mm"] } }, "examples": [{ "up": "1 mm" }] };
function validate47(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (Object.keys(data).length < 1) {
      const err0 = { instancePath, schemaPath: "#/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema73, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "up" || key0 === "down" || key0 === "left" || key0 === "right")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema73, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.up !== void 0) {
      let data0 = data.up;
      if (!(typeof data0 == "number" && isFinite(data0)) && typeof data0 !== "string") {
        const err2 = { instancePath: instancePath + "/up", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.down !== void 0) {
      let data1 = data.down;
      if (!(typeof data1 == "number" && isFinite(data1)) && typeof data1 !== "string") {
        const err3 = { instancePath: instancePath + "/down", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data1 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.left !== void 0) {
      let data2 = data.left;
      if (!(typeof data2 == "number" && isFinite(data2)) && typeof data2 !== "string") {
        const err4 = { instancePath: instancePath + "/left", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data2 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.right !== void 0) {
      let data3 = data.right;
      if (!(typeof data3 == "number" && isFinite(data3)) && typeof data3 !== "string") {
        const err5 = { instancePath: instancePath + "/right", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data3 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
  } else {
    const err6 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema73.type, parentSchema: schema73, data };
    if (vErrors === null) {
      vErrors = [err6];
    } else {
      vErrors.push(err6);
    }
    errors++;
  }
  validate47.errors = vErrors;
  return errors === 0;
}
function validate46(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  const _errs0 = errors;
  let valid0 = false;
  const _errs1 = errors;
  if (!(data === "auto" || data === "top" || data === "bottom" || data === "left" || data === "right" || data === "top-left" || data === "top-right" || data === "bottom-left" || data === "bottom-right")) {
    const err0 = { instancePath, schemaPath: "#/anyOf/0/enum", keyword: "enum", params: { allowedValues: schema72.anyOf[0].enum }, message: "must be equal to one of the allowed values", schema: schema72.anyOf[0].enum, parentSchema: schema72.anyOf[0], data };
    if (vErrors === null) {
      vErrors = [err0];
    } else {
      vErrors.push(err0);
    }
    errors++;
  }
  var _valid0 = _errs1 === errors;
  valid0 = valid0 || _valid0;
  if (!valid0) {
    const _errs2 = errors;
    if (typeof data == "number" && isFinite(data)) {
      if (data > 360 || isNaN(data)) {
        const err1 = { instancePath, schemaPath: "#/anyOf/1/maximum", keyword: "maximum", params: { comparison: "<=", limit: 360 }, message: "must be <= 360", schema: 360, parentSchema: schema72.anyOf[1], data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
      if (data < -360 || isNaN(data)) {
        const err2 = { instancePath, schemaPath: "#/anyOf/1/minimum", keyword: "minimum", params: { comparison: ">=", limit: -360 }, message: "must be >= -360", schema: -360, parentSchema: schema72.anyOf[1], data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    } else {
      const err3 = { instancePath, schemaPath: "#/anyOf/1/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema72.anyOf[1].type, parentSchema: schema72.anyOf[1], data };
      if (vErrors === null) {
        vErrors = [err3];
      } else {
        vErrors.push(err3);
      }
      errors++;
    }
    var _valid0 = _errs2 === errors;
    valid0 = valid0 || _valid0;
    if (!valid0) {
      const _errs4 = errors;
      if (!validate47(data, { instancePath, parentData, parentDataProperty, rootData })) {
        vErrors = vErrors === null ? validate47.errors : vErrors.concat(validate47.errors);
        errors = vErrors.length;
      }
      var _valid0 = _errs4 === errors;
      valid0 = valid0 || _valid0;
    }
  }
  if (!valid0) {
    const err4 = { instancePath, schemaPath: "#/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema72.anyOf, parentSchema: schema72, data };
    if (vErrors === null) {
      vErrors = [err4];
    } else {
      vErrors.push(err4);
    }
    errors++;
  } else {
    errors = _errs0;
    if (vErrors !== null) {
      if (_errs0) {
        vErrors.length = _errs0;
      } else {
        vErrors = null;
      }
    }
  }
  validate46.errors = vErrors;
  return errors === 0;
}
function validate45(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (Object.keys(data).length > 1) {
      const err0 = { instancePath, schemaPath: "#/maxProperties", keyword: "maxProperties", params: { limit: 1 }, message: "must NOT have more than 1 properties", schema: 1, parentSchema: schema70, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (Object.keys(data).length < 1) {
      const err1 = { instancePath, schemaPath: "#/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema70, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "ring" || key0 === "hole" || key0 === "slot")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema70, data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.ring !== void 0) {
      let data0 = data.ring;
      if (data0 && typeof data0 == "object" && !Array.isArray(data0)) {
        for (const key1 in data0) {
          if (!(key1 === "on" || key1 === "at" || key1 === "diameter" || key1 === "wall" || key1 === "sink" || key1 === "nudge")) {
            const err3 = { instancePath: instancePath + "/ring", schemaPath: "#/properties/ring/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema70.properties.ring, data: data0 };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
        }
        if (data0.on !== void 0) {
          let data1 = data0.on;
          if (typeof data1 !== "string") {
            const err4 = { instancePath: instancePath + "/ring/on", schemaPath: "#/definitions/shapeName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema71.type, parentSchema: schema71, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data0.at !== void 0) {
          if (!validate46(data0.at, { instancePath: instancePath + "/ring/at", parentData: data0, parentDataProperty: "at", rootData })) {
            vErrors = vErrors === null ? validate46.errors : vErrors.concat(validate46.errors);
            errors = vErrors.length;
          }
        }
        if (data0.diameter !== void 0) {
          let data3 = data0.diameter;
          if (!(typeof data3 == "number" && isFinite(data3)) && typeof data3 !== "string") {
            const err5 = { instancePath: instancePath + "/ring/diameter", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data3 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
        if (data0.wall !== void 0) {
          let data4 = data0.wall;
          if (!(typeof data4 == "number" && isFinite(data4)) && typeof data4 !== "string") {
            const err6 = { instancePath: instancePath + "/ring/wall", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data4 };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
        }
        if (data0.sink !== void 0) {
          let data5 = data0.sink;
          if (!(typeof data5 == "number" && isFinite(data5)) && typeof data5 !== "string") {
            const err7 = { instancePath: instancePath + "/ring/sink", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data5 };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
        }
        if (data0.nudge !== void 0) {
          if (!validate47(data0.nudge, { instancePath: instancePath + "/ring/nudge", parentData: data0, parentDataProperty: "nudge", rootData })) {
            vErrors = vErrors === null ? validate47.errors : vErrors.concat(validate47.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err8 = { instancePath: instancePath + "/ring", schemaPath: "#/properties/ring/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema70.properties.ring.type, parentSchema: schema70.properties.ring, data: data0 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.hole !== void 0) {
      let data7 = data.hole;
      if (data7 && typeof data7 == "object" && !Array.isArray(data7)) {
        for (const key2 in data7) {
          if (!(key2 === "on" || key2 === "at" || key2 === "diameter" || key2 === "inset" || key2 === "nudge")) {
            const err9 = { instancePath: instancePath + "/hole", schemaPath: "#/properties/hole/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 }, message: "must NOT have additional properties", schema: false, parentSchema: schema70.properties.hole, data: data7 };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
        }
        if (data7.on !== void 0) {
          let data8 = data7.on;
          if (typeof data8 !== "string") {
            const err10 = { instancePath: instancePath + "/hole/on", schemaPath: "#/definitions/shapeName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema71.type, parentSchema: schema71, data: data8 };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
        }
        if (data7.at !== void 0) {
          if (!validate46(data7.at, { instancePath: instancePath + "/hole/at", parentData: data7, parentDataProperty: "at", rootData })) {
            vErrors = vErrors === null ? validate46.errors : vErrors.concat(validate46.errors);
            errors = vErrors.length;
          }
        }
        if (data7.diameter !== void 0) {
          let data10 = data7.diameter;
          if (!(typeof data10 == "number" && isFinite(data10)) && typeof data10 !== "string") {
            const err11 = { instancePath: instancePath + "/hole/diameter", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data10 };
            if (vErrors === null) {
              vErrors = [err11];
            } else {
              vErrors.push(err11);
            }
            errors++;
          }
        }
        if (data7.inset !== void 0) {
          let data11 = data7.inset;
          if (!(typeof data11 == "number" && isFinite(data11)) && typeof data11 !== "string") {
            const err12 = { instancePath: instancePath + "/hole/inset", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data11 };
            if (vErrors === null) {
              vErrors = [err12];
            } else {
              vErrors.push(err12);
            }
            errors++;
          }
        }
        if (data7.nudge !== void 0) {
          if (!validate47(data7.nudge, { instancePath: instancePath + "/hole/nudge", parentData: data7, parentDataProperty: "nudge", rootData })) {
            vErrors = vErrors === null ? validate47.errors : vErrors.concat(validate47.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err13 = { instancePath: instancePath + "/hole", schemaPath: "#/properties/hole/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema70.properties.hole.type, parentSchema: schema70.properties.hole, data: data7 };
        if (vErrors === null) {
          vErrors = [err13];
        } else {
          vErrors.push(err13);
        }
        errors++;
      }
    }
    if (data.slot !== void 0) {
      let data13 = data.slot;
      if (data13 && typeof data13 == "object" && !Array.isArray(data13)) {
        for (const key3 in data13) {
          if (!(key3 === "on" || key3 === "at" || key3 === "length" || key3 === "width" || key3 === "inset" || key3 === "nudge")) {
            const err14 = { instancePath: instancePath + "/slot", schemaPath: "#/properties/slot/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties", schema: false, parentSchema: schema70.properties.slot, data: data13 };
            if (vErrors === null) {
              vErrors = [err14];
            } else {
              vErrors.push(err14);
            }
            errors++;
          }
        }
        if (data13.on !== void 0) {
          let data14 = data13.on;
          if (typeof data14 !== "string") {
            const err15 = { instancePath: instancePath + "/slot/on", schemaPath: "#/definitions/shapeName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema71.type, parentSchema: schema71, data: data14 };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
        }
        if (data13.at !== void 0) {
          if (!validate46(data13.at, { instancePath: instancePath + "/slot/at", parentData: data13, parentDataProperty: "at", rootData })) {
            vErrors = vErrors === null ? validate46.errors : vErrors.concat(validate46.errors);
            errors = vErrors.length;
          }
        }
        if (data13.length !== void 0) {
          let data16 = data13.length;
          if (!(typeof data16 == "number" && isFinite(data16)) && typeof data16 !== "string") {
            const err16 = { instancePath: instancePath + "/slot/length", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data16 };
            if (vErrors === null) {
              vErrors = [err16];
            } else {
              vErrors.push(err16);
            }
            errors++;
          }
        }
        if (data13.width !== void 0) {
          let data17 = data13.width;
          if (!(typeof data17 == "number" && isFinite(data17)) && typeof data17 !== "string") {
            const err17 = { instancePath: instancePath + "/slot/width", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data17 };
            if (vErrors === null) {
              vErrors = [err17];
            } else {
              vErrors.push(err17);
            }
            errors++;
          }
        }
        if (data13.inset !== void 0) {
          let data18 = data13.inset;
          if (!(typeof data18 == "number" && isFinite(data18)) && typeof data18 !== "string") {
            const err18 = { instancePath: instancePath + "/slot/inset", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data18 };
            if (vErrors === null) {
              vErrors = [err18];
            } else {
              vErrors.push(err18);
            }
            errors++;
          }
        }
        if (data13.nudge !== void 0) {
          if (!validate47(data13.nudge, { instancePath: instancePath + "/slot/nudge", parentData: data13, parentDataProperty: "nudge", rootData })) {
            vErrors = vErrors === null ? validate47.errors : vErrors.concat(validate47.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err19 = { instancePath: instancePath + "/slot", schemaPath: "#/properties/slot/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema70.properties.slot.type, parentSchema: schema70.properties.slot, data: data13 };
        if (vErrors === null) {
          vErrors = [err19];
        } else {
          vErrors.push(err19);
        }
        errors++;
      }
    }
  } else {
    const err20 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema70.type, parentSchema: schema70, data };
    if (vErrors === null) {
      vErrors = [err20];
    } else {
      vErrors.push(err20);
    }
    errors++;
  }
  validate45.errors = vErrors;
  return errors === 0;
}
var schema88 = { "title": "ShapeSpec", "type": "object", "additionalProperties": false, "description": "One generator, then modifiers. Modifiers apply in a fixed order: tidy, grow, width/height, fit, straps, bridges, rotate, mirror, place, nudge.", "properties": { "text": { "type": "string", "maxLength": 300, "description": "Generator: lettering. A line break starts a new line. With a `batch`, {column} is replaced by the cell of each row.", "examples": ["Sorrel"] }, "font": { "$ref": "#/definitions/fontName", "description": "For text: a family name, or the path of a font file beside the spec.", "examples": ["Pacifico"] }, "weight": { "type": "integer", "minimum": 1, "maximum": 1e3, "default": 400, "description": "For text: 400 is regular, 700 bold.", "examples": [800] }, "italic": { "type": "boolean", "default": false, "description": "For text.", "examples": [true] }, "size": { "$ref": "#/definitions/length", "description": "For text: the em, as in CSS font-size. Leave it out and say width, height, cap_height or x_height instead to ask for a finished size.", "examples": ["24 mm"] }, "cap_height": { "$ref": "#/definitions/length", "description": "For text: finished height of its capitals, growth included. The font says how high they are, or else its H is measured.", "examples": ["12 mm"] }, "x_height": { "$ref": "#/definitions/length", "description": "For text: finished height of its small letters without their stems, growth included. The font says how high they are, or else its x is measured.", "examples": ["8 mm"] }, "arc": { "title": "ArcSpec", "type": "object", "additionalProperties": false, "description": "For text: sets it on a circle, by its radius or by the part of the circle that it takes. The middle of the circle is where the middle of a straight text would be, and what `place` centres `by: eye`.", "examples": [{ "radius": "30 mm", "at": "top" }], "properties": { "radius": { "$ref": "#/definitions/length", "description": "Radius of the circle that the letters stand on, before any growth.", "examples": ["30 mm"] }, "sweep": { "type": "number", "minimum": 1, "maximum": 360, "description": "Degrees of the circle that the text takes. The radius follows from its size.", "examples": [180] }, "at": { "enum": ["top", "bottom"], "default": "top", "description": "top: outside the circle, over the top. bottom: inside it, along the bottom, so that it reads from left to right too." } } }, "letter_spacing": { "$ref": "#/definitions/length", "description": "For text: space added between letters; negative makes them touch. Measured at the final size.", "examples": ["-0.3 mm"] }, "overlap": { "$ref": "#/definitions/length", "description": "For text: slides its letters together until they overlap and hold as one part. It is how far two letters may lap over each other at most; they go no further than their joint needs. Dots and accents are lowered and held by posts as wide as `min_web`, words are joined along the baseline. `grow` goes with it: sizes such as `width` or `x_height` are then those of the letters before growth, so that growing never shrinks them (`fit` includes the growth).", "examples": ["0.6 mm"] }, "line_height": { "type": "number", "exclusiveMinimum": 0, "maximum": 10, "description": "For text: distance between lines, as a multiple of the em.", "examples": [1.2] }, "align": { "enum": ["left", "center", "right"], "default": "center", "description": "For text of several lines." }, "features": { "type": "object", "additionalProperties": { "type": "boolean" }, "propertyNames": { "pattern": "^[A-Za-z0-9]{4}$" }, "description": "For text: OpenType features to switch on or off, such as {swsh: true, liga: false}.", "examples": [{ "swsh": true }] }, "rectangle": { "$ref": "#/definitions/size", "description": "Generator: a rectangle [width, height], with `radius` for round corners.", "examples": [["80 mm", "40 mm"]] }, "radius": { "$ref": "#/definitions/length", "default": 0, "description": "For rectangle: the radius of its corners.", "examples": ["4 mm"] }, "ellipse": { "description": "Generator: an ellipse [width, height], or a circle by its diameter.", "anyOf": [{ "$ref": "#/definitions/size" }, { "$ref": "#/definitions/length" }], "examples": [["50 mm", "30 mm"]] }, "polygon": { "title": "PolygonSpec", "type": "object", "additionalProperties": false, "description": "Generator: a regular polygon ({sides, across}) or one by its points, [right, down] as in SVG.", "properties": { "sides": { "type": "integer", "minimum": 3, "maximum": 120, "examples": [6], "description": "How many sides a regular polygon has." }, "across": { "$ref": "#/definitions/length", "description": "Diameter of the circle through the corners.", "examples": ["40 mm"] }, "points": { "type": "array", "minItems": 3, "maxItems": 5e3, "items": { "$ref": "#/definitions/size" }, "examples": [[["0 mm", "0 mm"], ["40 mm", "0 mm"], ["20 mm", "30 mm"]]], "description": "The corners in order, each [right, down]." } }, "examples": [{ "sides": 6, "across": "40 mm" }] }, "arrow": { "title": "ArrowSpec", "type": "object", "additionalProperties": false, "required": ["length", "width"], "description": "Generator: an arrow pointing right.", "properties": { "length": { "$ref": "#/definitions/length", "description": "From tip to tail.", "examples": ["90 mm"] }, "width": { "$ref": "#/definitions/length", "description": "Width of the shaft.", "examples": ["20 mm"] }, "head": { "$ref": "#/definitions/length", "description": "Width across the head. Default: the width of the shaft.", "examples": ["34 mm"] }, "tip": { "type": "number", "exclusiveMinimum": 10, "exclusiveMaximum": 175, "default": 90, "description": "Angle of the tip in degrees.", "examples": [75] }, "tail": { "enum": ["straight", "notched", "forked", "pointed"], "default": "straight", "description": "straight: cut square. notched: a V cut into it. forked: a V whose two points spread as wide as the head. pointed: drawn to a point." }, "notch": { "$ref": "#/definitions/length", "description": "How deep the V of the tail is, or how far it is drawn to a point. Default: half the width of the shaft.", "examples": ["6 mm"] } }, "examples": [{ "length": "90 mm", "width": "20 mm", "head": "34 mm" }] }, "oval": { "title": "OvalSpec", "type": "object", "additionalProperties": false, "required": ["size"], "description": "Generator: a superellipse, |2x/width|^e + |2y/height|^e = 1: fuller than an ellipse, softer than a rectangle.", "properties": { "size": { "$ref": "#/definitions/size" }, "exponent": { "type": "number", "minimum": 2, "maximum": 10, "default": 2.5, "description": "2 is an ellipse; the higher, the nearer to a rectangle.", "examples": [3] } }, "examples": [{ "size": ["60 mm", "40 mm"] }] }, "heart": { "description": "Generator: a heart [width, height], or by its width alone: a square on its corner with a half disc on each of its upper sides.", "anyOf": [{ "$ref": "#/definitions/size" }, { "$ref": "#/definitions/length" }], "examples": [["50 mm", "46 mm"]] }, "house": { "title": "HouseSpec", "type": "object", "additionalProperties": false, "required": ["size"], "description": "Generator: the front of a house: walls under a gable.", "properties": { "size": { "$ref": "#/definitions/size", "description": "[width, height] of the whole house, roof and eaves included." }, "roof": { "$ref": "#/definitions/length", "description": "Height of the gable. Default: a third of the whole height.", "examples": ["20 mm"] }, "eaves": { "$ref": "#/definitions/length", "default": 0, "description": "How far the roof overhangs the walls on each side.", "examples": ["2 mm"] } }, "examples": [{ "size": ["44 mm", "60 mm"] }] }, "label": { "title": "LabelSpec", "type": "object", "additionalProperties": false, "required": ["size"], "description": "Generator: a luggage label: a rectangle with both corners of one end clipped at 45\xB0.", "properties": { "size": { "$ref": "#/definitions/size" }, "clip": { "$ref": "#/definitions/length", "description": "How much of either side each clipped corner takes. Default: a quarter of the clipped end.", "examples": ["9 mm"] }, "end": { "enum": ["top", "bottom", "left", "right"], "default": "left", "description": "The end whose corners are clipped." } }, "examples": [{ "size": ["80 mm", "36 mm"] }] }, "ticket": { "title": "TicketSpec", "type": "object", "additionalProperties": false, "required": ["size"], "description": "Generator: a rectangle with a quarter of a disc bitten out of each corner.", "properties": { "size": { "$ref": "#/definitions/size" }, "bite": { "$ref": "#/definitions/length", "description": "Radius of the bites. Default: a fifth of the shorter side.", "examples": ["6 mm"] } }, "examples": [{ "size": ["80 mm", "36 mm"] }] }, "scallops": { "title": "ScallopsSpec", "type": "object", "additionalProperties": false, "description": "Generator: a plate edged with equal round lobes: a rectangle ({size, lobe}) or a round one ({across, lobes}).", "properties": { "size": { "$ref": "#/definitions/size", "description": "[width, height] of a rectangle, lobes included." }, "lobe": { "$ref": "#/definitions/length", "description": "For size: width of a lobe, about; as many as fit along a side share it evenly.", "examples": ["8 mm"] }, "across": { "$ref": "#/definitions/length", "description": "Diameter of a round one, lobes included; one lobe is at the top.", "examples": ["50 mm"] }, "lobes": { "type": "integer", "minimum": 5, "maximum": 120, "description": "For across: how many lobes.", "examples": [14] } }, "examples": [{ "across": "50 mm", "lobes": 14 }] }, "stack": { "title": "StackSpec", "type": "object", "additionalProperties": false, "required": ["shapes"], "description": "Generator: shapes set one after the other on an axis, each lapped over the one before so that no shoulder pokes out.", "properties": { "shapes": { "type": "array", "minItems": 1, "items": { "$ref": "#/definitions/shapeName" }, "description": "Names, in order." }, "towards": { "enum": ["down", "up", "left", "right"], "default": "down", "description": "Which way the shapes follow one another." }, "lap": { "$ref": "#/definitions/length", "description": "How far each goes into the one before. Default: as far as hides the narrower one's corners.", "examples": ["4 mm"] } } }, "path": { "type": "string", "description": "Generator: SVG path data in the spec's units, y down, filled by the non-zero rule.", "examples": ["M0 0 C10 -20 30 -20 40 0 C30 20 10 20 0 0 Z"] }, "drawing": { "$ref": "#/definitions/drawingFile", "description": "Generator: the path of an SVG file beside the spec.", "examples": ["leaf.svg"] }, "around": { "$ref": "#/definitions/shapeOrName", "description": "Generator: an outline at the distance `by` from another shape." }, "by": { "$ref": "#/definitions/length", "description": "For around: the distance.", "examples": ["6 mm"] }, "holes": { "enum": ["fill", "keep"], "default": "fill", "description": "For around: whether holes are filled." }, "bays": { "$ref": "#/definitions/length", "description": "For around: bays, slits and kept holes narrower than this are closed. Default: those narrower than `by` where corners are round, else none.", "examples": ["2 mm"] }, "union": { "$ref": "#/definitions/shapeList", "description": "Generator: all of the shapes together." }, "difference": { "$ref": "#/definitions/shapeList", "description": "Generator: the first shape less all the others." }, "intersection": { "$ref": "#/definitions/shapeList", "description": "Generator: what the shapes share." }, "from": { "$ref": "#/definitions/shapeOrName", "description": "Generator: a copy of another shape, to modify." }, "tidy": { "$ref": "#/definitions/length", "description": "Removes specks and pin-holes smaller than this across.", "examples": ["0.5 mm"] }, "grow": { "$ref": "#/definitions/length", "description": "Thickens all round by this much; negative thins.", "examples": ["0.5 mm"] }, "corners": { "$ref": "#/definitions/corners" }, "width": { "$ref": "#/definitions/length", "description": "Finished width. Height follows in proportion unless it is given too.", "examples": ["60 mm"] }, "height": { "$ref": "#/definitions/length", "description": "Finished height. Width follows in proportion unless it is given too.", "examples": ["30 mm"] }, "fit": { "$ref": "#/definitions/fit" }, "straps": { "$ref": "#/definitions/length", "description": "Joins the separate parts of the shape, such as the dot of an i to its stem, by straps of this width.", "examples": ["1.5 mm"] }, "bridges": { "title": "Bridges", "description": "For a shape that is cut through a plate: the width of bridges left standing across its strokes, which hold the counters of letters.", "anyOf": [{ "$ref": "#/definitions/length" }, { "type": "object", "additionalProperties": false, "required": ["width"], "properties": { "width": { "$ref": "#/definitions/length", "description": "Width of each bridge.", "examples": ["1.5 mm"] }, "at": { "enum": ["top-bottom", "left-right", "top", "bottom", "left", "right"], "default": "top-bottom", "description": "On which sides of each counter there is a bridge." } } }], "examples": ["1.5 mm"] }, "rotate": { "type": "number", "minimum": -360, "maximum": 360, "description": "Degrees, clockwise as in CSS.", "examples": [5] }, "mirror": { "enum": ["left-right", "up-down"], "description": "Mirrors the shape." }, "place": { "$ref": "#/definitions/place" }, "nudge": { "$ref": "#/definitions/nudge" } } };
var schema89 = { "title": "FontName", "description": "A family name, or the path of a font file beside the spec.", "type": "string" };
var schema112 = { "title": "DrawingFile", "description": "The path of an SVG file beside the spec.", "type": "string" };
var schema120 = { "title": "CornerStyle", "enum": ["round", "miter", "bevel"], "default": "round", "description": "How corners are made when an outline is grown: rounded, kept sharp, or cut off." };
var pattern15 = new RegExp("^[A-Za-z0-9]{4}$", "u");
var schema113 = { "title": "ShapeOrName", "description": "The name of a shape, or a shape written in place.", "anyOf": [{ "$ref": "#/definitions/shapeName" }, { "$ref": "#/definitions/shape" }] };
var wrapper0 = { validate: validate56 };
function validate66(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  const _errs0 = errors;
  let valid0 = false;
  const _errs1 = errors;
  if (typeof data !== "string") {
    const err0 = { instancePath, schemaPath: "#/definitions/shapeName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema71.type, parentSchema: schema71, data };
    if (vErrors === null) {
      vErrors = [err0];
    } else {
      vErrors.push(err0);
    }
    errors++;
  }
  var _valid0 = _errs1 === errors;
  valid0 = valid0 || _valid0;
  if (!valid0) {
    const _errs4 = errors;
    if (!wrapper0.validate(data, { instancePath, parentData, parentDataProperty, rootData })) {
      vErrors = vErrors === null ? wrapper0.validate.errors : vErrors.concat(wrapper0.validate.errors);
      errors = vErrors.length;
    }
    var _valid0 = _errs4 === errors;
    valid0 = valid0 || _valid0;
  }
  if (!valid0) {
    const err1 = { instancePath, schemaPath: "#/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema113.anyOf, parentSchema: schema113, data };
    if (vErrors === null) {
      vErrors = [err1];
    } else {
      vErrors.push(err1);
    }
    errors++;
  } else {
    errors = _errs0;
    if (vErrors !== null) {
      if (_errs0) {
        vErrors.length = _errs0;
      } else {
        vErrors = null;
      }
    }
  }
  validate66.errors = vErrors;
  return errors === 0;
}
var schema117 = { "title": "ShapeList", "type": "array", "minItems": 1, "items": { "$ref": "#/definitions/shapeOrName" } };
function validate68(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (Array.isArray(data)) {
    if (data.length < 1) {
      const err0 = { instancePath, schemaPath: "#/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema117, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    const len0 = data.length;
    for (let i0 = 0; i0 < len0; i0++) {
      if (!validate66(data[i0], { instancePath: instancePath + "/" + i0, parentData: data, parentDataProperty: i0, rootData })) {
        vErrors = vErrors === null ? validate66.errors : vErrors.concat(validate66.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err1 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema117.type, parentSchema: schema117, data };
    if (vErrors === null) {
      vErrors = [err1];
    } else {
      vErrors.push(err1);
    }
    errors++;
  }
  validate68.errors = vErrors;
  return errors === 0;
}
var schema123 = { "title": "FitSpec", "type": "object", "additionalProperties": false, "required": ["in"], "description": "Makes the shape as large as will go anywhere inside another, less a margin and clear of what else is there.", "properties": { "in": { "$ref": "#/definitions/shapeName", "description": "Name of the shape to fill; a member of a stack counts where the stack puts it." }, "part": { "$ref": "#/definitions/partName", "description": "Only this member of a stack counts." }, "margin": { "$ref": "#/definitions/length", "default": 0, "description": "Material left free along the edge.", "examples": ["2 mm"] }, "clear": { "$ref": "#/definitions/length", "description": "Distance kept from the hangers and the cuts of the piece, and from its other marks; of two that are fitted, the one that comes first in the piece has the first choice. Default: the margin.", "examples": ["2 mm"] }, "at_most": { "title": "AtMost", "type": "object", "additionalProperties": false, "minProperties": 1, "description": "Makes it no larger than this: smaller where there is no room, such as for a long name.", "properties": { "x_height": { "$ref": "#/definitions/length", "description": "For text: height of its small letters, as in `x_height`.", "examples": ["8 mm"] }, "cap_height": { "$ref": "#/definitions/length", "description": "For text: height of its capitals, as in `cap_height`.", "examples": ["12 mm"] }, "width": { "$ref": "#/definitions/length", "description": "Finished width.", "examples": ["50 mm"] } }, "examples": [{ "x_height": "8 mm" }] } } };
var schema125 = { "title": "PartName", "description": "The name of a member of a stack.", "type": "string" };
function validate74(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.in === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "in" }, message: "must have required property 'in'", schema: schema123.required, parentSchema: schema123, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "in" || key0 === "part" || key0 === "margin" || key0 === "clear" || key0 === "at_most")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema123, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.in !== void 0) {
      let data0 = data.in;
      if (typeof data0 !== "string") {
        const err2 = { instancePath: instancePath + "/in", schemaPath: "#/definitions/shapeName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema71.type, parentSchema: schema71, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.part !== void 0) {
      let data1 = data.part;
      if (typeof data1 !== "string") {
        const err3 = { instancePath: instancePath + "/part", schemaPath: "#/definitions/partName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema125.type, parentSchema: schema125, data: data1 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.margin !== void 0) {
      let data2 = data.margin;
      if (!(typeof data2 == "number" && isFinite(data2)) && typeof data2 !== "string") {
        const err4 = { instancePath: instancePath + "/margin", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data2 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.clear !== void 0) {
      let data3 = data.clear;
      if (!(typeof data3 == "number" && isFinite(data3)) && typeof data3 !== "string") {
        const err5 = { instancePath: instancePath + "/clear", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data3 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.at_most !== void 0) {
      let data4 = data.at_most;
      if (data4 && typeof data4 == "object" && !Array.isArray(data4)) {
        if (Object.keys(data4).length < 1) {
          const err6 = { instancePath: instancePath + "/at_most", schemaPath: "#/properties/at_most/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema123.properties.at_most, data: data4 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
        for (const key1 in data4) {
          if (!(key1 === "x_height" || key1 === "cap_height" || key1 === "width")) {
            const err7 = { instancePath: instancePath + "/at_most", schemaPath: "#/properties/at_most/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema123.properties.at_most, data: data4 };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
        }
        if (data4.x_height !== void 0) {
          let data5 = data4.x_height;
          if (!(typeof data5 == "number" && isFinite(data5)) && typeof data5 !== "string") {
            const err8 = { instancePath: instancePath + "/at_most/x_height", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data5 };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
        }
        if (data4.cap_height !== void 0) {
          let data6 = data4.cap_height;
          if (!(typeof data6 == "number" && isFinite(data6)) && typeof data6 !== "string") {
            const err9 = { instancePath: instancePath + "/at_most/cap_height", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data6 };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
        }
        if (data4.width !== void 0) {
          let data7 = data4.width;
          if (!(typeof data7 == "number" && isFinite(data7)) && typeof data7 !== "string") {
            const err10 = { instancePath: instancePath + "/at_most/width", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data7 };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
        }
      } else {
        const err11 = { instancePath: instancePath + "/at_most", schemaPath: "#/properties/at_most/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema123.properties.at_most.type, parentSchema: schema123.properties.at_most, data: data4 };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
  } else {
    const err12 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema123.type, parentSchema: schema123, data };
    if (vErrors === null) {
      vErrors = [err12];
    } else {
      vErrors.push(err12);
    }
    errors++;
  }
  validate74.errors = vErrors;
  return errors === 0;
}
var schema134 = { "title": "PlaceSpec", "type": "object", "additionalProperties": false, "required": ["on"], "description": "Puts the shape on another.", "properties": { "on": { "$ref": "#/definitions/shapeName", "description": "Name of the shape to put it on; a member of a stack counts where the stack puts it." }, "part": { "$ref": "#/definitions/partName", "description": "Only this member of a stack counts, such as the body without its neck." }, "at": { "$ref": "#/definitions/anchor", "default": "center" }, "margin": { "$ref": "#/definitions/length", "description": "Distance kept from the side or corner named in `at`.", "examples": ["3 mm"] }, "by": { "enum": ["box", "mass", "eye", "x-height"], "default": "eye", "description": "What is centred. box: the ruler's middle. mass: the centre of gravity. eye: what looks centred. x-height: the band of the small letters." } } };
var schema137 = { "title": "Anchor", "enum": ["center", "top", "bottom", "left", "right", "top-left", "top-right", "bottom-left", "bottom-right"], "description": "A side, a corner or the centre." };
function validate76(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.on === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "on" }, message: "must have required property 'on'", schema: schema134.required, parentSchema: schema134, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "on" || key0 === "part" || key0 === "at" || key0 === "margin" || key0 === "by")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema134, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.on !== void 0) {
      let data0 = data.on;
      if (typeof data0 !== "string") {
        const err2 = { instancePath: instancePath + "/on", schemaPath: "#/definitions/shapeName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema71.type, parentSchema: schema71, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.part !== void 0) {
      let data1 = data.part;
      if (typeof data1 !== "string") {
        const err3 = { instancePath: instancePath + "/part", schemaPath: "#/definitions/partName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema125.type, parentSchema: schema125, data: data1 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.at !== void 0) {
      let data2 = data.at;
      if (!(data2 === "center" || data2 === "top" || data2 === "bottom" || data2 === "left" || data2 === "right" || data2 === "top-left" || data2 === "top-right" || data2 === "bottom-left" || data2 === "bottom-right")) {
        const err4 = { instancePath: instancePath + "/at", schemaPath: "#/definitions/anchor/enum", keyword: "enum", params: { allowedValues: schema137.enum }, message: "must be equal to one of the allowed values", schema: schema137.enum, parentSchema: schema137, data: data2 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.margin !== void 0) {
      let data3 = data.margin;
      if (!(typeof data3 == "number" && isFinite(data3)) && typeof data3 !== "string") {
        const err5 = { instancePath: instancePath + "/margin", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data3 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.by !== void 0) {
      let data4 = data.by;
      if (!(data4 === "box" || data4 === "mass" || data4 === "eye" || data4 === "x-height")) {
        const err6 = { instancePath: instancePath + "/by", schemaPath: "#/properties/by/enum", keyword: "enum", params: { allowedValues: schema134.properties.by.enum }, message: "must be equal to one of the allowed values", schema: schema134.properties.by.enum, parentSchema: schema134.properties.by, data: data4 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
  } else {
    const err7 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema134.type, parentSchema: schema134, data };
    if (vErrors === null) {
      vErrors = [err7];
    } else {
      vErrors.push(err7);
    }
    errors++;
  }
  validate76.errors = vErrors;
  return errors === 0;
}
function validate56(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!func2.call(schema88.properties, key0)) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema88, data };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.text !== void 0) {
      let data0 = data.text;
      if (typeof data0 === "string") {
        if (func3(data0) > 300) {
          const err1 = { instancePath: instancePath + "/text", schemaPath: "#/properties/text/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema88.properties.text, data: data0 };
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
      } else {
        const err2 = { instancePath: instancePath + "/text", schemaPath: "#/properties/text/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema88.properties.text.type, parentSchema: schema88.properties.text, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.font !== void 0) {
      let data1 = data.font;
      if (typeof data1 !== "string") {
        const err3 = { instancePath: instancePath + "/font", schemaPath: "#/definitions/fontName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema89.type, parentSchema: schema89, data: data1 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.weight !== void 0) {
      let data2 = data.weight;
      if (!(typeof data2 == "number" && (!(data2 % 1) && !isNaN(data2)) && isFinite(data2))) {
        const err4 = { instancePath: instancePath + "/weight", schemaPath: "#/properties/weight/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema88.properties.weight.type, parentSchema: schema88.properties.weight, data: data2 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
      if (typeof data2 == "number" && isFinite(data2)) {
        if (data2 > 1e3 || isNaN(data2)) {
          const err5 = { instancePath: instancePath + "/weight", schemaPath: "#/properties/weight/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema88.properties.weight, data: data2 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        if (data2 < 1 || isNaN(data2)) {
          const err6 = { instancePath: instancePath + "/weight", schemaPath: "#/properties/weight/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1", schema: 1, parentSchema: schema88.properties.weight, data: data2 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      }
    }
    if (data.italic !== void 0) {
      let data3 = data.italic;
      if (typeof data3 !== "boolean") {
        const err7 = { instancePath: instancePath + "/italic", schemaPath: "#/properties/italic/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema88.properties.italic.type, parentSchema: schema88.properties.italic, data: data3 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.size !== void 0) {
      let data4 = data.size;
      if (!(typeof data4 == "number" && isFinite(data4)) && typeof data4 !== "string") {
        const err8 = { instancePath: instancePath + "/size", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data4 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.cap_height !== void 0) {
      let data5 = data.cap_height;
      if (!(typeof data5 == "number" && isFinite(data5)) && typeof data5 !== "string") {
        const err9 = { instancePath: instancePath + "/cap_height", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data5 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.x_height !== void 0) {
      let data6 = data.x_height;
      if (!(typeof data6 == "number" && isFinite(data6)) && typeof data6 !== "string") {
        const err10 = { instancePath: instancePath + "/x_height", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data6 };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.arc !== void 0) {
      let data7 = data.arc;
      if (data7 && typeof data7 == "object" && !Array.isArray(data7)) {
        for (const key1 in data7) {
          if (!(key1 === "radius" || key1 === "sweep" || key1 === "at")) {
            const err11 = { instancePath: instancePath + "/arc", schemaPath: "#/properties/arc/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema88.properties.arc, data: data7 };
            if (vErrors === null) {
              vErrors = [err11];
            } else {
              vErrors.push(err11);
            }
            errors++;
          }
        }
        if (data7.radius !== void 0) {
          let data8 = data7.radius;
          if (!(typeof data8 == "number" && isFinite(data8)) && typeof data8 !== "string") {
            const err12 = { instancePath: instancePath + "/arc/radius", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data8 };
            if (vErrors === null) {
              vErrors = [err12];
            } else {
              vErrors.push(err12);
            }
            errors++;
          }
        }
        if (data7.sweep !== void 0) {
          let data9 = data7.sweep;
          if (typeof data9 == "number" && isFinite(data9)) {
            if (data9 > 360 || isNaN(data9)) {
              const err13 = { instancePath: instancePath + "/arc/sweep", schemaPath: "#/properties/arc/properties/sweep/maximum", keyword: "maximum", params: { comparison: "<=", limit: 360 }, message: "must be <= 360", schema: 360, parentSchema: schema88.properties.arc.properties.sweep, data: data9 };
              if (vErrors === null) {
                vErrors = [err13];
              } else {
                vErrors.push(err13);
              }
              errors++;
            }
            if (data9 < 1 || isNaN(data9)) {
              const err14 = { instancePath: instancePath + "/arc/sweep", schemaPath: "#/properties/arc/properties/sweep/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1", schema: 1, parentSchema: schema88.properties.arc.properties.sweep, data: data9 };
              if (vErrors === null) {
                vErrors = [err14];
              } else {
                vErrors.push(err14);
              }
              errors++;
            }
          } else {
            const err15 = { instancePath: instancePath + "/arc/sweep", schemaPath: "#/properties/arc/properties/sweep/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema88.properties.arc.properties.sweep.type, parentSchema: schema88.properties.arc.properties.sweep, data: data9 };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
        }
        if (data7.at !== void 0) {
          let data10 = data7.at;
          if (!(data10 === "top" || data10 === "bottom")) {
            const err16 = { instancePath: instancePath + "/arc/at", schemaPath: "#/properties/arc/properties/at/enum", keyword: "enum", params: { allowedValues: schema88.properties.arc.properties.at.enum }, message: "must be equal to one of the allowed values", schema: schema88.properties.arc.properties.at.enum, parentSchema: schema88.properties.arc.properties.at, data: data10 };
            if (vErrors === null) {
              vErrors = [err16];
            } else {
              vErrors.push(err16);
            }
            errors++;
          }
        }
      } else {
        const err17 = { instancePath: instancePath + "/arc", schemaPath: "#/properties/arc/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.properties.arc.type, parentSchema: schema88.properties.arc, data: data7 };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
    if (data.letter_spacing !== void 0) {
      let data11 = data.letter_spacing;
      if (!(typeof data11 == "number" && isFinite(data11)) && typeof data11 !== "string") {
        const err18 = { instancePath: instancePath + "/letter_spacing", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data11 };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
    if (data.overlap !== void 0) {
      let data12 = data.overlap;
      if (!(typeof data12 == "number" && isFinite(data12)) && typeof data12 !== "string") {
        const err19 = { instancePath: instancePath + "/overlap", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data12 };
        if (vErrors === null) {
          vErrors = [err19];
        } else {
          vErrors.push(err19);
        }
        errors++;
      }
    }
    if (data.line_height !== void 0) {
      let data13 = data.line_height;
      if (typeof data13 == "number" && isFinite(data13)) {
        if (data13 > 10 || isNaN(data13)) {
          const err20 = { instancePath: instancePath + "/line_height", schemaPath: "#/properties/line_height/maximum", keyword: "maximum", params: { comparison: "<=", limit: 10 }, message: "must be <= 10", schema: 10, parentSchema: schema88.properties.line_height, data: data13 };
          if (vErrors === null) {
            vErrors = [err20];
          } else {
            vErrors.push(err20);
          }
          errors++;
        }
        if (data13 <= 0 || isNaN(data13)) {
          const err21 = { instancePath: instancePath + "/line_height", schemaPath: "#/properties/line_height/exclusiveMinimum", keyword: "exclusiveMinimum", params: { comparison: ">", limit: 0 }, message: "must be > 0", schema: 0, parentSchema: schema88.properties.line_height, data: data13 };
          if (vErrors === null) {
            vErrors = [err21];
          } else {
            vErrors.push(err21);
          }
          errors++;
        }
      } else {
        const err22 = { instancePath: instancePath + "/line_height", schemaPath: "#/properties/line_height/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema88.properties.line_height.type, parentSchema: schema88.properties.line_height, data: data13 };
        if (vErrors === null) {
          vErrors = [err22];
        } else {
          vErrors.push(err22);
        }
        errors++;
      }
    }
    if (data.align !== void 0) {
      let data14 = data.align;
      if (!(data14 === "left" || data14 === "center" || data14 === "right")) {
        const err23 = { instancePath: instancePath + "/align", schemaPath: "#/properties/align/enum", keyword: "enum", params: { allowedValues: schema88.properties.align.enum }, message: "must be equal to one of the allowed values", schema: schema88.properties.align.enum, parentSchema: schema88.properties.align, data: data14 };
        if (vErrors === null) {
          vErrors = [err23];
        } else {
          vErrors.push(err23);
        }
        errors++;
      }
    }
    if (data.features !== void 0) {
      let data15 = data.features;
      if (data15 && typeof data15 == "object" && !Array.isArray(data15)) {
        for (const key2 in data15) {
          const _errs40 = errors;
          if (typeof key2 === "string") {
            if (!pattern15.test(key2)) {
              const err24 = { instancePath: instancePath + "/features", schemaPath: "#/properties/features/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9]{4}$" }, message: 'must match pattern "^[A-Za-z0-9]{4}$"', schema: "^[A-Za-z0-9]{4}$", parentSchema: schema88.properties.features.propertyNames, data: key2, propertyName: key2 };
              if (vErrors === null) {
                vErrors = [err24];
              } else {
                vErrors.push(err24);
              }
              errors++;
            }
          }
          var valid9 = _errs40 === errors;
          if (!valid9) {
            const err25 = { instancePath: instancePath + "/features", schemaPath: "#/properties/features/propertyNames", keyword: "propertyNames", params: { propertyName: key2 }, message: "property name must be valid", schema: schema88.properties.features.propertyNames, parentSchema: schema88.properties.features, data: data15 };
            if (vErrors === null) {
              vErrors = [err25];
            } else {
              vErrors.push(err25);
            }
            errors++;
          }
        }
        for (const key3 in data15) {
          let data16 = data15[key3];
          if (typeof data16 !== "boolean") {
            const err26 = { instancePath: instancePath + "/features/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/features/additionalProperties/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema88.properties.features.additionalProperties.type, parentSchema: schema88.properties.features.additionalProperties, data: data16 };
            if (vErrors === null) {
              vErrors = [err26];
            } else {
              vErrors.push(err26);
            }
            errors++;
          }
        }
      } else {
        const err27 = { instancePath: instancePath + "/features", schemaPath: "#/properties/features/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.properties.features.type, parentSchema: schema88.properties.features, data: data15 };
        if (vErrors === null) {
          vErrors = [err27];
        } else {
          vErrors.push(err27);
        }
        errors++;
      }
    }
    if (data.rectangle !== void 0) {
      if (!validate33(data.rectangle, { instancePath: instancePath + "/rectangle", parentData: data, parentDataProperty: "rectangle", rootData })) {
        vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
        errors = vErrors.length;
      }
    }
    if (data.radius !== void 0) {
      let data18 = data.radius;
      if (!(typeof data18 == "number" && isFinite(data18)) && typeof data18 !== "string") {
        const err28 = { instancePath: instancePath + "/radius", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data18 };
        if (vErrors === null) {
          vErrors = [err28];
        } else {
          vErrors.push(err28);
        }
        errors++;
      }
    }
    if (data.ellipse !== void 0) {
      let data19 = data.ellipse;
      const _errs49 = errors;
      let valid12 = false;
      const _errs50 = errors;
      if (!validate33(data19, { instancePath: instancePath + "/ellipse", parentData: data, parentDataProperty: "ellipse", rootData })) {
        vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
        errors = vErrors.length;
      }
      var _valid0 = _errs50 === errors;
      valid12 = valid12 || _valid0;
      if (!valid12) {
        const _errs51 = errors;
        if (!(typeof data19 == "number" && isFinite(data19)) && typeof data19 !== "string") {
          const err29 = { instancePath: instancePath + "/ellipse", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data19 };
          if (vErrors === null) {
            vErrors = [err29];
          } else {
            vErrors.push(err29);
          }
          errors++;
        }
        var _valid0 = _errs51 === errors;
        valid12 = valid12 || _valid0;
      }
      if (!valid12) {
        const err30 = { instancePath: instancePath + "/ellipse", schemaPath: "#/properties/ellipse/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema88.properties.ellipse.anyOf, parentSchema: schema88.properties.ellipse, data: data19 };
        if (vErrors === null) {
          vErrors = [err30];
        } else {
          vErrors.push(err30);
        }
        errors++;
      } else {
        errors = _errs49;
        if (vErrors !== null) {
          if (_errs49) {
            vErrors.length = _errs49;
          } else {
            vErrors = null;
          }
        }
      }
    }
    if (data.polygon !== void 0) {
      let data20 = data.polygon;
      if (data20 && typeof data20 == "object" && !Array.isArray(data20)) {
        for (const key4 in data20) {
          if (!(key4 === "sides" || key4 === "across" || key4 === "points")) {
            const err31 = { instancePath: instancePath + "/polygon", schemaPath: "#/properties/polygon/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key4 }, message: "must NOT have additional properties", schema: false, parentSchema: schema88.properties.polygon, data: data20 };
            if (vErrors === null) {
              vErrors = [err31];
            } else {
              vErrors.push(err31);
            }
            errors++;
          }
        }
        if (data20.sides !== void 0) {
          let data21 = data20.sides;
          if (!(typeof data21 == "number" && (!(data21 % 1) && !isNaN(data21)) && isFinite(data21))) {
            const err32 = { instancePath: instancePath + "/polygon/sides", schemaPath: "#/properties/polygon/properties/sides/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema88.properties.polygon.properties.sides.type, parentSchema: schema88.properties.polygon.properties.sides, data: data21 };
            if (vErrors === null) {
              vErrors = [err32];
            } else {
              vErrors.push(err32);
            }
            errors++;
          }
          if (typeof data21 == "number" && isFinite(data21)) {
            if (data21 > 120 || isNaN(data21)) {
              const err33 = { instancePath: instancePath + "/polygon/sides", schemaPath: "#/properties/polygon/properties/sides/maximum", keyword: "maximum", params: { comparison: "<=", limit: 120 }, message: "must be <= 120", schema: 120, parentSchema: schema88.properties.polygon.properties.sides, data: data21 };
              if (vErrors === null) {
                vErrors = [err33];
              } else {
                vErrors.push(err33);
              }
              errors++;
            }
            if (data21 < 3 || isNaN(data21)) {
              const err34 = { instancePath: instancePath + "/polygon/sides", schemaPath: "#/properties/polygon/properties/sides/minimum", keyword: "minimum", params: { comparison: ">=", limit: 3 }, message: "must be >= 3", schema: 3, parentSchema: schema88.properties.polygon.properties.sides, data: data21 };
              if (vErrors === null) {
                vErrors = [err34];
              } else {
                vErrors.push(err34);
              }
              errors++;
            }
          }
        }
        if (data20.across !== void 0) {
          let data22 = data20.across;
          if (!(typeof data22 == "number" && isFinite(data22)) && typeof data22 !== "string") {
            const err35 = { instancePath: instancePath + "/polygon/across", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data22 };
            if (vErrors === null) {
              vErrors = [err35];
            } else {
              vErrors.push(err35);
            }
            errors++;
          }
        }
        if (data20.points !== void 0) {
          let data23 = data20.points;
          if (Array.isArray(data23)) {
            if (data23.length > 5e3) {
              const err36 = { instancePath: instancePath + "/polygon/points", schemaPath: "#/properties/polygon/properties/points/maxItems", keyword: "maxItems", params: { limit: 5e3 }, message: "must NOT have more than 5000 items", schema: 5e3, parentSchema: schema88.properties.polygon.properties.points, data: data23 };
              if (vErrors === null) {
                vErrors = [err36];
              } else {
                vErrors.push(err36);
              }
              errors++;
            }
            if (data23.length < 3) {
              const err37 = { instancePath: instancePath + "/polygon/points", schemaPath: "#/properties/polygon/properties/points/minItems", keyword: "minItems", params: { limit: 3 }, message: "must NOT have fewer than 3 items", schema: 3, parentSchema: schema88.properties.polygon.properties.points, data: data23 };
              if (vErrors === null) {
                vErrors = [err37];
              } else {
                vErrors.push(err37);
              }
              errors++;
            }
            const len0 = data23.length;
            for (let i0 = 0; i0 < len0; i0++) {
              if (!validate33(data23[i0], { instancePath: instancePath + "/polygon/points/" + i0, parentData: data23, parentDataProperty: i0, rootData })) {
                vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
                errors = vErrors.length;
              }
            }
          } else {
            const err38 = { instancePath: instancePath + "/polygon/points", schemaPath: "#/properties/polygon/properties/points/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema88.properties.polygon.properties.points.type, parentSchema: schema88.properties.polygon.properties.points, data: data23 };
            if (vErrors === null) {
              vErrors = [err38];
            } else {
              vErrors.push(err38);
            }
            errors++;
          }
        }
      } else {
        const err39 = { instancePath: instancePath + "/polygon", schemaPath: "#/properties/polygon/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.properties.polygon.type, parentSchema: schema88.properties.polygon, data: data20 };
        if (vErrors === null) {
          vErrors = [err39];
        } else {
          vErrors.push(err39);
        }
        errors++;
      }
    }
    if (data.arrow !== void 0) {
      let data25 = data.arrow;
      if (data25 && typeof data25 == "object" && !Array.isArray(data25)) {
        if (data25.length === void 0) {
          const err40 = { instancePath: instancePath + "/arrow", schemaPath: "#/properties/arrow/required", keyword: "required", params: { missingProperty: "length" }, message: "must have required property 'length'", schema: schema88.properties.arrow.required, parentSchema: schema88.properties.arrow, data: data25 };
          if (vErrors === null) {
            vErrors = [err40];
          } else {
            vErrors.push(err40);
          }
          errors++;
        }
        if (data25.width === void 0) {
          const err41 = { instancePath: instancePath + "/arrow", schemaPath: "#/properties/arrow/required", keyword: "required", params: { missingProperty: "width" }, message: "must have required property 'width'", schema: schema88.properties.arrow.required, parentSchema: schema88.properties.arrow, data: data25 };
          if (vErrors === null) {
            vErrors = [err41];
          } else {
            vErrors.push(err41);
          }
          errors++;
        }
        for (const key5 in data25) {
          if (!(key5 === "length" || key5 === "width" || key5 === "head" || key5 === "tip" || key5 === "tail" || key5 === "notch")) {
            const err42 = { instancePath: instancePath + "/arrow", schemaPath: "#/properties/arrow/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key5 }, message: "must NOT have additional properties", schema: false, parentSchema: schema88.properties.arrow, data: data25 };
            if (vErrors === null) {
              vErrors = [err42];
            } else {
              vErrors.push(err42);
            }
            errors++;
          }
        }
        if (data25.length !== void 0) {
          let data26 = data25.length;
          if (!(typeof data26 == "number" && isFinite(data26)) && typeof data26 !== "string") {
            const err43 = { instancePath: instancePath + "/arrow/length", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data26 };
            if (vErrors === null) {
              vErrors = [err43];
            } else {
              vErrors.push(err43);
            }
            errors++;
          }
        }
        if (data25.width !== void 0) {
          let data27 = data25.width;
          if (!(typeof data27 == "number" && isFinite(data27)) && typeof data27 !== "string") {
            const err44 = { instancePath: instancePath + "/arrow/width", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data27 };
            if (vErrors === null) {
              vErrors = [err44];
            } else {
              vErrors.push(err44);
            }
            errors++;
          }
        }
        if (data25.head !== void 0) {
          let data28 = data25.head;
          if (!(typeof data28 == "number" && isFinite(data28)) && typeof data28 !== "string") {
            const err45 = { instancePath: instancePath + "/arrow/head", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data28 };
            if (vErrors === null) {
              vErrors = [err45];
            } else {
              vErrors.push(err45);
            }
            errors++;
          }
        }
        if (data25.tip !== void 0) {
          let data29 = data25.tip;
          if (typeof data29 == "number" && isFinite(data29)) {
            if (data29 >= 175 || isNaN(data29)) {
              const err46 = { instancePath: instancePath + "/arrow/tip", schemaPath: "#/properties/arrow/properties/tip/exclusiveMaximum", keyword: "exclusiveMaximum", params: { comparison: "<", limit: 175 }, message: "must be < 175", schema: 175, parentSchema: schema88.properties.arrow.properties.tip, data: data29 };
              if (vErrors === null) {
                vErrors = [err46];
              } else {
                vErrors.push(err46);
              }
              errors++;
            }
            if (data29 <= 10 || isNaN(data29)) {
              const err47 = { instancePath: instancePath + "/arrow/tip", schemaPath: "#/properties/arrow/properties/tip/exclusiveMinimum", keyword: "exclusiveMinimum", params: { comparison: ">", limit: 10 }, message: "must be > 10", schema: 10, parentSchema: schema88.properties.arrow.properties.tip, data: data29 };
              if (vErrors === null) {
                vErrors = [err47];
              } else {
                vErrors.push(err47);
              }
              errors++;
            }
          } else {
            const err48 = { instancePath: instancePath + "/arrow/tip", schemaPath: "#/properties/arrow/properties/tip/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema88.properties.arrow.properties.tip.type, parentSchema: schema88.properties.arrow.properties.tip, data: data29 };
            if (vErrors === null) {
              vErrors = [err48];
            } else {
              vErrors.push(err48);
            }
            errors++;
          }
        }
        if (data25.tail !== void 0) {
          let data30 = data25.tail;
          if (!(data30 === "straight" || data30 === "notched" || data30 === "forked" || data30 === "pointed")) {
            const err49 = { instancePath: instancePath + "/arrow/tail", schemaPath: "#/properties/arrow/properties/tail/enum", keyword: "enum", params: { allowedValues: schema88.properties.arrow.properties.tail.enum }, message: "must be equal to one of the allowed values", schema: schema88.properties.arrow.properties.tail.enum, parentSchema: schema88.properties.arrow.properties.tail, data: data30 };
            if (vErrors === null) {
              vErrors = [err49];
            } else {
              vErrors.push(err49);
            }
            errors++;
          }
        }
        if (data25.notch !== void 0) {
          let data31 = data25.notch;
          if (!(typeof data31 == "number" && isFinite(data31)) && typeof data31 !== "string") {
            const err50 = { instancePath: instancePath + "/arrow/notch", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data31 };
            if (vErrors === null) {
              vErrors = [err50];
            } else {
              vErrors.push(err50);
            }
            errors++;
          }
        }
      } else {
        const err51 = { instancePath: instancePath + "/arrow", schemaPath: "#/properties/arrow/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.properties.arrow.type, parentSchema: schema88.properties.arrow, data: data25 };
        if (vErrors === null) {
          vErrors = [err51];
        } else {
          vErrors.push(err51);
        }
        errors++;
      }
    }
    if (data.oval !== void 0) {
      let data32 = data.oval;
      if (data32 && typeof data32 == "object" && !Array.isArray(data32)) {
        if (data32.size === void 0) {
          const err52 = { instancePath: instancePath + "/oval", schemaPath: "#/properties/oval/required", keyword: "required", params: { missingProperty: "size" }, message: "must have required property 'size'", schema: schema88.properties.oval.required, parentSchema: schema88.properties.oval, data: data32 };
          if (vErrors === null) {
            vErrors = [err52];
          } else {
            vErrors.push(err52);
          }
          errors++;
        }
        for (const key6 in data32) {
          if (!(key6 === "size" || key6 === "exponent")) {
            const err53 = { instancePath: instancePath + "/oval", schemaPath: "#/properties/oval/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key6 }, message: "must NOT have additional properties", schema: false, parentSchema: schema88.properties.oval, data: data32 };
            if (vErrors === null) {
              vErrors = [err53];
            } else {
              vErrors.push(err53);
            }
            errors++;
          }
        }
        if (data32.size !== void 0) {
          if (!validate33(data32.size, { instancePath: instancePath + "/oval/size", parentData: data32, parentDataProperty: "size", rootData })) {
            vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
            errors = vErrors.length;
          }
        }
        if (data32.exponent !== void 0) {
          let data34 = data32.exponent;
          if (typeof data34 == "number" && isFinite(data34)) {
            if (data34 > 10 || isNaN(data34)) {
              const err54 = { instancePath: instancePath + "/oval/exponent", schemaPath: "#/properties/oval/properties/exponent/maximum", keyword: "maximum", params: { comparison: "<=", limit: 10 }, message: "must be <= 10", schema: 10, parentSchema: schema88.properties.oval.properties.exponent, data: data34 };
              if (vErrors === null) {
                vErrors = [err54];
              } else {
                vErrors.push(err54);
              }
              errors++;
            }
            if (data34 < 2 || isNaN(data34)) {
              const err55 = { instancePath: instancePath + "/oval/exponent", schemaPath: "#/properties/oval/properties/exponent/minimum", keyword: "minimum", params: { comparison: ">=", limit: 2 }, message: "must be >= 2", schema: 2, parentSchema: schema88.properties.oval.properties.exponent, data: data34 };
              if (vErrors === null) {
                vErrors = [err55];
              } else {
                vErrors.push(err55);
              }
              errors++;
            }
          } else {
            const err56 = { instancePath: instancePath + "/oval/exponent", schemaPath: "#/properties/oval/properties/exponent/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema88.properties.oval.properties.exponent.type, parentSchema: schema88.properties.oval.properties.exponent, data: data34 };
            if (vErrors === null) {
              vErrors = [err56];
            } else {
              vErrors.push(err56);
            }
            errors++;
          }
        }
      } else {
        const err57 = { instancePath: instancePath + "/oval", schemaPath: "#/properties/oval/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.properties.oval.type, parentSchema: schema88.properties.oval, data: data32 };
        if (vErrors === null) {
          vErrors = [err57];
        } else {
          vErrors.push(err57);
        }
        errors++;
      }
    }
    if (data.heart !== void 0) {
      let data35 = data.heart;
      const _errs90 = errors;
      let valid24 = false;
      const _errs91 = errors;
      if (!validate33(data35, { instancePath: instancePath + "/heart", parentData: data, parentDataProperty: "heart", rootData })) {
        vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
        errors = vErrors.length;
      }
      var _valid1 = _errs91 === errors;
      valid24 = valid24 || _valid1;
      if (!valid24) {
        const _errs92 = errors;
        if (!(typeof data35 == "number" && isFinite(data35)) && typeof data35 !== "string") {
          const err58 = { instancePath: instancePath + "/heart", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data35 };
          if (vErrors === null) {
            vErrors = [err58];
          } else {
            vErrors.push(err58);
          }
          errors++;
        }
        var _valid1 = _errs92 === errors;
        valid24 = valid24 || _valid1;
      }
      if (!valid24) {
        const err59 = { instancePath: instancePath + "/heart", schemaPath: "#/properties/heart/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema88.properties.heart.anyOf, parentSchema: schema88.properties.heart, data: data35 };
        if (vErrors === null) {
          vErrors = [err59];
        } else {
          vErrors.push(err59);
        }
        errors++;
      } else {
        errors = _errs90;
        if (vErrors !== null) {
          if (_errs90) {
            vErrors.length = _errs90;
          } else {
            vErrors = null;
          }
        }
      }
    }
    if (data.house !== void 0) {
      let data36 = data.house;
      if (data36 && typeof data36 == "object" && !Array.isArray(data36)) {
        if (data36.size === void 0) {
          const err60 = { instancePath: instancePath + "/house", schemaPath: "#/properties/house/required", keyword: "required", params: { missingProperty: "size" }, message: "must have required property 'size'", schema: schema88.properties.house.required, parentSchema: schema88.properties.house, data: data36 };
          if (vErrors === null) {
            vErrors = [err60];
          } else {
            vErrors.push(err60);
          }
          errors++;
        }
        for (const key7 in data36) {
          if (!(key7 === "size" || key7 === "roof" || key7 === "eaves")) {
            const err61 = { instancePath: instancePath + "/house", schemaPath: "#/properties/house/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key7 }, message: "must NOT have additional properties", schema: false, parentSchema: schema88.properties.house, data: data36 };
            if (vErrors === null) {
              vErrors = [err61];
            } else {
              vErrors.push(err61);
            }
            errors++;
          }
        }
        if (data36.size !== void 0) {
          if (!validate33(data36.size, { instancePath: instancePath + "/house/size", parentData: data36, parentDataProperty: "size", rootData })) {
            vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
            errors = vErrors.length;
          }
        }
        if (data36.roof !== void 0) {
          let data38 = data36.roof;
          if (!(typeof data38 == "number" && isFinite(data38)) && typeof data38 !== "string") {
            const err62 = { instancePath: instancePath + "/house/roof", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data38 };
            if (vErrors === null) {
              vErrors = [err62];
            } else {
              vErrors.push(err62);
            }
            errors++;
          }
        }
        if (data36.eaves !== void 0) {
          let data39 = data36.eaves;
          if (!(typeof data39 == "number" && isFinite(data39)) && typeof data39 !== "string") {
            const err63 = { instancePath: instancePath + "/house/eaves", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data39 };
            if (vErrors === null) {
              vErrors = [err63];
            } else {
              vErrors.push(err63);
            }
            errors++;
          }
        }
      } else {
        const err64 = { instancePath: instancePath + "/house", schemaPath: "#/properties/house/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.properties.house.type, parentSchema: schema88.properties.house, data: data36 };
        if (vErrors === null) {
          vErrors = [err64];
        } else {
          vErrors.push(err64);
        }
        errors++;
      }
    }
    if (data.label !== void 0) {
      let data40 = data.label;
      if (data40 && typeof data40 == "object" && !Array.isArray(data40)) {
        if (data40.size === void 0) {
          const err65 = { instancePath: instancePath + "/label", schemaPath: "#/properties/label/required", keyword: "required", params: { missingProperty: "size" }, message: "must have required property 'size'", schema: schema88.properties.label.required, parentSchema: schema88.properties.label, data: data40 };
          if (vErrors === null) {
            vErrors = [err65];
          } else {
            vErrors.push(err65);
          }
          errors++;
        }
        for (const key8 in data40) {
          if (!(key8 === "size" || key8 === "clip" || key8 === "end")) {
            const err66 = { instancePath: instancePath + "/label", schemaPath: "#/properties/label/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key8 }, message: "must NOT have additional properties", schema: false, parentSchema: schema88.properties.label, data: data40 };
            if (vErrors === null) {
              vErrors = [err66];
            } else {
              vErrors.push(err66);
            }
            errors++;
          }
        }
        if (data40.size !== void 0) {
          if (!validate33(data40.size, { instancePath: instancePath + "/label/size", parentData: data40, parentDataProperty: "size", rootData })) {
            vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
            errors = vErrors.length;
          }
        }
        if (data40.clip !== void 0) {
          let data42 = data40.clip;
          if (!(typeof data42 == "number" && isFinite(data42)) && typeof data42 !== "string") {
            const err67 = { instancePath: instancePath + "/label/clip", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data42 };
            if (vErrors === null) {
              vErrors = [err67];
            } else {
              vErrors.push(err67);
            }
            errors++;
          }
        }
        if (data40.end !== void 0) {
          let data43 = data40.end;
          if (!(data43 === "top" || data43 === "bottom" || data43 === "left" || data43 === "right")) {
            const err68 = { instancePath: instancePath + "/label/end", schemaPath: "#/properties/label/properties/end/enum", keyword: "enum", params: { allowedValues: schema88.properties.label.properties.end.enum }, message: "must be equal to one of the allowed values", schema: schema88.properties.label.properties.end.enum, parentSchema: schema88.properties.label.properties.end, data: data43 };
            if (vErrors === null) {
              vErrors = [err68];
            } else {
              vErrors.push(err68);
            }
            errors++;
          }
        }
      } else {
        const err69 = { instancePath: instancePath + "/label", schemaPath: "#/properties/label/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.properties.label.type, parentSchema: schema88.properties.label, data: data40 };
        if (vErrors === null) {
          vErrors = [err69];
        } else {
          vErrors.push(err69);
        }
        errors++;
      }
    }
    if (data.ticket !== void 0) {
      let data44 = data.ticket;
      if (data44 && typeof data44 == "object" && !Array.isArray(data44)) {
        if (data44.size === void 0) {
          const err70 = { instancePath: instancePath + "/ticket", schemaPath: "#/properties/ticket/required", keyword: "required", params: { missingProperty: "size" }, message: "must have required property 'size'", schema: schema88.properties.ticket.required, parentSchema: schema88.properties.ticket, data: data44 };
          if (vErrors === null) {
            vErrors = [err70];
          } else {
            vErrors.push(err70);
          }
          errors++;
        }
        for (const key9 in data44) {
          if (!(key9 === "size" || key9 === "bite")) {
            const err71 = { instancePath: instancePath + "/ticket", schemaPath: "#/properties/ticket/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key9 }, message: "must NOT have additional properties", schema: false, parentSchema: schema88.properties.ticket, data: data44 };
            if (vErrors === null) {
              vErrors = [err71];
            } else {
              vErrors.push(err71);
            }
            errors++;
          }
        }
        if (data44.size !== void 0) {
          if (!validate33(data44.size, { instancePath: instancePath + "/ticket/size", parentData: data44, parentDataProperty: "size", rootData })) {
            vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
            errors = vErrors.length;
          }
        }
        if (data44.bite !== void 0) {
          let data46 = data44.bite;
          if (!(typeof data46 == "number" && isFinite(data46)) && typeof data46 !== "string") {
            const err72 = { instancePath: instancePath + "/ticket/bite", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data46 };
            if (vErrors === null) {
              vErrors = [err72];
            } else {
              vErrors.push(err72);
            }
            errors++;
          }
        }
      } else {
        const err73 = { instancePath: instancePath + "/ticket", schemaPath: "#/properties/ticket/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.properties.ticket.type, parentSchema: schema88.properties.ticket, data: data44 };
        if (vErrors === null) {
          vErrors = [err73];
        } else {
          vErrors.push(err73);
        }
        errors++;
      }
    }
    if (data.scallops !== void 0) {
      let data47 = data.scallops;
      if (data47 && typeof data47 == "object" && !Array.isArray(data47)) {
        for (const key10 in data47) {
          if (!(key10 === "size" || key10 === "lobe" || key10 === "across" || key10 === "lobes")) {
            const err74 = { instancePath: instancePath + "/scallops", schemaPath: "#/properties/scallops/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key10 }, message: "must NOT have additional properties", schema: false, parentSchema: schema88.properties.scallops, data: data47 };
            if (vErrors === null) {
              vErrors = [err74];
            } else {
              vErrors.push(err74);
            }
            errors++;
          }
        }
        if (data47.size !== void 0) {
          if (!validate33(data47.size, { instancePath: instancePath + "/scallops/size", parentData: data47, parentDataProperty: "size", rootData })) {
            vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
            errors = vErrors.length;
          }
        }
        if (data47.lobe !== void 0) {
          let data49 = data47.lobe;
          if (!(typeof data49 == "number" && isFinite(data49)) && typeof data49 !== "string") {
            const err75 = { instancePath: instancePath + "/scallops/lobe", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data49 };
            if (vErrors === null) {
              vErrors = [err75];
            } else {
              vErrors.push(err75);
            }
            errors++;
          }
        }
        if (data47.across !== void 0) {
          let data50 = data47.across;
          if (!(typeof data50 == "number" && isFinite(data50)) && typeof data50 !== "string") {
            const err76 = { instancePath: instancePath + "/scallops/across", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data50 };
            if (vErrors === null) {
              vErrors = [err76];
            } else {
              vErrors.push(err76);
            }
            errors++;
          }
        }
        if (data47.lobes !== void 0) {
          let data51 = data47.lobes;
          if (!(typeof data51 == "number" && (!(data51 % 1) && !isNaN(data51)) && isFinite(data51))) {
            const err77 = { instancePath: instancePath + "/scallops/lobes", schemaPath: "#/properties/scallops/properties/lobes/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema88.properties.scallops.properties.lobes.type, parentSchema: schema88.properties.scallops.properties.lobes, data: data51 };
            if (vErrors === null) {
              vErrors = [err77];
            } else {
              vErrors.push(err77);
            }
            errors++;
          }
          if (typeof data51 == "number" && isFinite(data51)) {
            if (data51 > 120 || isNaN(data51)) {
              const err78 = { instancePath: instancePath + "/scallops/lobes", schemaPath: "#/properties/scallops/properties/lobes/maximum", keyword: "maximum", params: { comparison: "<=", limit: 120 }, message: "must be <= 120", schema: 120, parentSchema: schema88.properties.scallops.properties.lobes, data: data51 };
              if (vErrors === null) {
                vErrors = [err78];
              } else {
                vErrors.push(err78);
              }
              errors++;
            }
            if (data51 < 5 || isNaN(data51)) {
              const err79 = { instancePath: instancePath + "/scallops/lobes", schemaPath: "#/properties/scallops/properties/lobes/minimum", keyword: "minimum", params: { comparison: ">=", limit: 5 }, message: "must be >= 5", schema: 5, parentSchema: schema88.properties.scallops.properties.lobes, data: data51 };
              if (vErrors === null) {
                vErrors = [err79];
              } else {
                vErrors.push(err79);
              }
              errors++;
            }
          }
        }
      } else {
        const err80 = { instancePath: instancePath + "/scallops", schemaPath: "#/properties/scallops/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.properties.scallops.type, parentSchema: schema88.properties.scallops, data: data47 };
        if (vErrors === null) {
          vErrors = [err80];
        } else {
          vErrors.push(err80);
        }
        errors++;
      }
    }
    if (data.stack !== void 0) {
      let data52 = data.stack;
      if (data52 && typeof data52 == "object" && !Array.isArray(data52)) {
        if (data52.shapes === void 0) {
          const err81 = { instancePath: instancePath + "/stack", schemaPath: "#/properties/stack/required", keyword: "required", params: { missingProperty: "shapes" }, message: "must have required property 'shapes'", schema: schema88.properties.stack.required, parentSchema: schema88.properties.stack, data: data52 };
          if (vErrors === null) {
            vErrors = [err81];
          } else {
            vErrors.push(err81);
          }
          errors++;
        }
        for (const key11 in data52) {
          if (!(key11 === "shapes" || key11 === "towards" || key11 === "lap")) {
            const err82 = { instancePath: instancePath + "/stack", schemaPath: "#/properties/stack/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key11 }, message: "must NOT have additional properties", schema: false, parentSchema: schema88.properties.stack, data: data52 };
            if (vErrors === null) {
              vErrors = [err82];
            } else {
              vErrors.push(err82);
            }
            errors++;
          }
        }
        if (data52.shapes !== void 0) {
          let data53 = data52.shapes;
          if (Array.isArray(data53)) {
            if (data53.length < 1) {
              const err83 = { instancePath: instancePath + "/stack/shapes", schemaPath: "#/properties/stack/properties/shapes/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema88.properties.stack.properties.shapes, data: data53 };
              if (vErrors === null) {
                vErrors = [err83];
              } else {
                vErrors.push(err83);
              }
              errors++;
            }
            const len1 = data53.length;
            for (let i1 = 0; i1 < len1; i1++) {
              let data54 = data53[i1];
              if (typeof data54 !== "string") {
                const err84 = { instancePath: instancePath + "/stack/shapes/" + i1, schemaPath: "#/definitions/shapeName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema71.type, parentSchema: schema71, data: data54 };
                if (vErrors === null) {
                  vErrors = [err84];
                } else {
                  vErrors.push(err84);
                }
                errors++;
              }
            }
          } else {
            const err85 = { instancePath: instancePath + "/stack/shapes", schemaPath: "#/properties/stack/properties/shapes/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema88.properties.stack.properties.shapes.type, parentSchema: schema88.properties.stack.properties.shapes, data: data53 };
            if (vErrors === null) {
              vErrors = [err85];
            } else {
              vErrors.push(err85);
            }
            errors++;
          }
        }
        if (data52.towards !== void 0) {
          let data55 = data52.towards;
          if (!(data55 === "down" || data55 === "up" || data55 === "left" || data55 === "right")) {
            const err86 = { instancePath: instancePath + "/stack/towards", schemaPath: "#/properties/stack/properties/towards/enum", keyword: "enum", params: { allowedValues: schema88.properties.stack.properties.towards.enum }, message: "must be equal to one of the allowed values", schema: schema88.properties.stack.properties.towards.enum, parentSchema: schema88.properties.stack.properties.towards, data: data55 };
            if (vErrors === null) {
              vErrors = [err86];
            } else {
              vErrors.push(err86);
            }
            errors++;
          }
        }
        if (data52.lap !== void 0) {
          let data56 = data52.lap;
          if (!(typeof data56 == "number" && isFinite(data56)) && typeof data56 !== "string") {
            const err87 = { instancePath: instancePath + "/stack/lap", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data56 };
            if (vErrors === null) {
              vErrors = [err87];
            } else {
              vErrors.push(err87);
            }
            errors++;
          }
        }
      } else {
        const err88 = { instancePath: instancePath + "/stack", schemaPath: "#/properties/stack/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.properties.stack.type, parentSchema: schema88.properties.stack, data: data52 };
        if (vErrors === null) {
          vErrors = [err88];
        } else {
          vErrors.push(err88);
        }
        errors++;
      }
    }
    if (data.path !== void 0) {
      let data57 = data.path;
      if (typeof data57 !== "string") {
        const err89 = { instancePath: instancePath + "/path", schemaPath: "#/properties/path/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema88.properties.path.type, parentSchema: schema88.properties.path, data: data57 };
        if (vErrors === null) {
          vErrors = [err89];
        } else {
          vErrors.push(err89);
        }
        errors++;
      }
    }
    if (data.drawing !== void 0) {
      let data58 = data.drawing;
      if (typeof data58 !== "string") {
        const err90 = { instancePath: instancePath + "/drawing", schemaPath: "#/definitions/drawingFile/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema112.type, parentSchema: schema112, data: data58 };
        if (vErrors === null) {
          vErrors = [err90];
        } else {
          vErrors.push(err90);
        }
        errors++;
      }
    }
    if (data.around !== void 0) {
      if (!validate66(data.around, { instancePath: instancePath + "/around", parentData: data, parentDataProperty: "around", rootData })) {
        vErrors = vErrors === null ? validate66.errors : vErrors.concat(validate66.errors);
        errors = vErrors.length;
      }
    }
    if (data.by !== void 0) {
      let data60 = data.by;
      if (!(typeof data60 == "number" && isFinite(data60)) && typeof data60 !== "string") {
        const err91 = { instancePath: instancePath + "/by", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data60 };
        if (vErrors === null) {
          vErrors = [err91];
        } else {
          vErrors.push(err91);
        }
        errors++;
      }
    }
    if (data.holes !== void 0) {
      let data61 = data.holes;
      if (!(data61 === "fill" || data61 === "keep")) {
        const err92 = { instancePath: instancePath + "/holes", schemaPath: "#/properties/holes/enum", keyword: "enum", params: { allowedValues: schema88.properties.holes.enum }, message: "must be equal to one of the allowed values", schema: schema88.properties.holes.enum, parentSchema: schema88.properties.holes, data: data61 };
        if (vErrors === null) {
          vErrors = [err92];
        } else {
          vErrors.push(err92);
        }
        errors++;
      }
    }
    if (data.bays !== void 0) {
      let data62 = data.bays;
      if (!(typeof data62 == "number" && isFinite(data62)) && typeof data62 !== "string") {
        const err93 = { instancePath: instancePath + "/bays", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data62 };
        if (vErrors === null) {
          vErrors = [err93];
        } else {
          vErrors.push(err93);
        }
        errors++;
      }
    }
    if (data.union !== void 0) {
      if (!validate68(data.union, { instancePath: instancePath + "/union", parentData: data, parentDataProperty: "union", rootData })) {
        vErrors = vErrors === null ? validate68.errors : vErrors.concat(validate68.errors);
        errors = vErrors.length;
      }
    }
    if (data.difference !== void 0) {
      if (!validate68(data.difference, { instancePath: instancePath + "/difference", parentData: data, parentDataProperty: "difference", rootData })) {
        vErrors = vErrors === null ? validate68.errors : vErrors.concat(validate68.errors);
        errors = vErrors.length;
      }
    }
    if (data.intersection !== void 0) {
      if (!validate68(data.intersection, { instancePath: instancePath + "/intersection", parentData: data, parentDataProperty: "intersection", rootData })) {
        vErrors = vErrors === null ? validate68.errors : vErrors.concat(validate68.errors);
        errors = vErrors.length;
      }
    }
    if (data.from !== void 0) {
      if (!validate66(data.from, { instancePath: instancePath + "/from", parentData: data, parentDataProperty: "from", rootData })) {
        vErrors = vErrors === null ? validate66.errors : vErrors.concat(validate66.errors);
        errors = vErrors.length;
      }
    }
    if (data.tidy !== void 0) {
      let data67 = data.tidy;
      if (!(typeof data67 == "number" && isFinite(data67)) && typeof data67 !== "string") {
        const err94 = { instancePath: instancePath + "/tidy", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data67 };
        if (vErrors === null) {
          vErrors = [err94];
        } else {
          vErrors.push(err94);
        }
        errors++;
      }
    }
    if (data.grow !== void 0) {
      let data68 = data.grow;
      if (!(typeof data68 == "number" && isFinite(data68)) && typeof data68 !== "string") {
        const err95 = { instancePath: instancePath + "/grow", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data68 };
        if (vErrors === null) {
          vErrors = [err95];
        } else {
          vErrors.push(err95);
        }
        errors++;
      }
    }
    if (data.corners !== void 0) {
      let data69 = data.corners;
      if (!(data69 === "round" || data69 === "miter" || data69 === "bevel")) {
        const err96 = { instancePath: instancePath + "/corners", schemaPath: "#/definitions/corners/enum", keyword: "enum", params: { allowedValues: schema120.enum }, message: "must be equal to one of the allowed values", schema: schema120.enum, parentSchema: schema120, data: data69 };
        if (vErrors === null) {
          vErrors = [err96];
        } else {
          vErrors.push(err96);
        }
        errors++;
      }
    }
    if (data.width !== void 0) {
      let data70 = data.width;
      if (!(typeof data70 == "number" && isFinite(data70)) && typeof data70 !== "string") {
        const err97 = { instancePath: instancePath + "/width", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data70 };
        if (vErrors === null) {
          vErrors = [err97];
        } else {
          vErrors.push(err97);
        }
        errors++;
      }
    }
    if (data.height !== void 0) {
      let data71 = data.height;
      if (!(typeof data71 == "number" && isFinite(data71)) && typeof data71 !== "string") {
        const err98 = { instancePath: instancePath + "/height", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data71 };
        if (vErrors === null) {
          vErrors = [err98];
        } else {
          vErrors.push(err98);
        }
        errors++;
      }
    }
    if (data.fit !== void 0) {
      if (!validate74(data.fit, { instancePath: instancePath + "/fit", parentData: data, parentDataProperty: "fit", rootData })) {
        vErrors = vErrors === null ? validate74.errors : vErrors.concat(validate74.errors);
        errors = vErrors.length;
      }
    }
    if (data.straps !== void 0) {
      let data73 = data.straps;
      if (!(typeof data73 == "number" && isFinite(data73)) && typeof data73 !== "string") {
        const err99 = { instancePath: instancePath + "/straps", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data73 };
        if (vErrors === null) {
          vErrors = [err99];
        } else {
          vErrors.push(err99);
        }
        errors++;
      }
    }
    if (data.bridges !== void 0) {
      let data74 = data.bridges;
      const _errs180 = errors;
      let valid50 = false;
      const _errs181 = errors;
      if (!(typeof data74 == "number" && isFinite(data74)) && typeof data74 !== "string") {
        const err100 = { instancePath: instancePath + "/bridges", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data74 };
        if (vErrors === null) {
          vErrors = [err100];
        } else {
          vErrors.push(err100);
        }
        errors++;
      }
      var _valid2 = _errs181 === errors;
      valid50 = valid50 || _valid2;
      if (!valid50) {
        const _errs184 = errors;
        if (data74 && typeof data74 == "object" && !Array.isArray(data74)) {
          if (data74.width === void 0) {
            const err101 = { instancePath: instancePath + "/bridges", schemaPath: "#/properties/bridges/anyOf/1/required", keyword: "required", params: { missingProperty: "width" }, message: "must have required property 'width'", schema: schema88.properties.bridges.anyOf[1].required, parentSchema: schema88.properties.bridges.anyOf[1], data: data74 };
            if (vErrors === null) {
              vErrors = [err101];
            } else {
              vErrors.push(err101);
            }
            errors++;
          }
          for (const key12 in data74) {
            if (!(key12 === "width" || key12 === "at")) {
              const err102 = { instancePath: instancePath + "/bridges", schemaPath: "#/properties/bridges/anyOf/1/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key12 }, message: "must NOT have additional properties", schema: false, parentSchema: schema88.properties.bridges.anyOf[1], data: data74 };
              if (vErrors === null) {
                vErrors = [err102];
              } else {
                vErrors.push(err102);
              }
              errors++;
            }
          }
          if (data74.width !== void 0) {
            let data75 = data74.width;
            if (!(typeof data75 == "number" && isFinite(data75)) && typeof data75 !== "string") {
              const err103 = { instancePath: instancePath + "/bridges/width", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data75 };
              if (vErrors === null) {
                vErrors = [err103];
              } else {
                vErrors.push(err103);
              }
              errors++;
            }
          }
          if (data74.at !== void 0) {
            let data76 = data74.at;
            if (!(data76 === "top-bottom" || data76 === "left-right" || data76 === "top" || data76 === "bottom" || data76 === "left" || data76 === "right")) {
              const err104 = { instancePath: instancePath + "/bridges/at", schemaPath: "#/properties/bridges/anyOf/1/properties/at/enum", keyword: "enum", params: { allowedValues: schema88.properties.bridges.anyOf[1].properties.at.enum }, message: "must be equal to one of the allowed values", schema: schema88.properties.bridges.anyOf[1].properties.at.enum, parentSchema: schema88.properties.bridges.anyOf[1].properties.at, data: data76 };
              if (vErrors === null) {
                vErrors = [err104];
              } else {
                vErrors.push(err104);
              }
              errors++;
            }
          }
        } else {
          const err105 = { instancePath: instancePath + "/bridges", schemaPath: "#/properties/bridges/anyOf/1/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.properties.bridges.anyOf[1].type, parentSchema: schema88.properties.bridges.anyOf[1], data: data74 };
          if (vErrors === null) {
            vErrors = [err105];
          } else {
            vErrors.push(err105);
          }
          errors++;
        }
        var _valid2 = _errs184 === errors;
        valid50 = valid50 || _valid2;
      }
      if (!valid50) {
        const err106 = { instancePath: instancePath + "/bridges", schemaPath: "#/properties/bridges/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema88.properties.bridges.anyOf, parentSchema: schema88.properties.bridges, data: data74 };
        if (vErrors === null) {
          vErrors = [err106];
        } else {
          vErrors.push(err106);
        }
        errors++;
      } else {
        errors = _errs180;
        if (vErrors !== null) {
          if (_errs180) {
            vErrors.length = _errs180;
          } else {
            vErrors = null;
          }
        }
      }
    }
    if (data.rotate !== void 0) {
      let data77 = data.rotate;
      if (typeof data77 == "number" && isFinite(data77)) {
        if (data77 > 360 || isNaN(data77)) {
          const err107 = { instancePath: instancePath + "/rotate", schemaPath: "#/properties/rotate/maximum", keyword: "maximum", params: { comparison: "<=", limit: 360 }, message: "must be <= 360", schema: 360, parentSchema: schema88.properties.rotate, data: data77 };
          if (vErrors === null) {
            vErrors = [err107];
          } else {
            vErrors.push(err107);
          }
          errors++;
        }
        if (data77 < -360 || isNaN(data77)) {
          const err108 = { instancePath: instancePath + "/rotate", schemaPath: "#/properties/rotate/minimum", keyword: "minimum", params: { comparison: ">=", limit: -360 }, message: "must be >= -360", schema: -360, parentSchema: schema88.properties.rotate, data: data77 };
          if (vErrors === null) {
            vErrors = [err108];
          } else {
            vErrors.push(err108);
          }
          errors++;
        }
      } else {
        const err109 = { instancePath: instancePath + "/rotate", schemaPath: "#/properties/rotate/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema88.properties.rotate.type, parentSchema: schema88.properties.rotate, data: data77 };
        if (vErrors === null) {
          vErrors = [err109];
        } else {
          vErrors.push(err109);
        }
        errors++;
      }
    }
    if (data.mirror !== void 0) {
      let data78 = data.mirror;
      if (!(data78 === "left-right" || data78 === "up-down")) {
        const err110 = { instancePath: instancePath + "/mirror", schemaPath: "#/properties/mirror/enum", keyword: "enum", params: { allowedValues: schema88.properties.mirror.enum }, message: "must be equal to one of the allowed values", schema: schema88.properties.mirror.enum, parentSchema: schema88.properties.mirror, data: data78 };
        if (vErrors === null) {
          vErrors = [err110];
        } else {
          vErrors.push(err110);
        }
        errors++;
      }
    }
    if (data.place !== void 0) {
      if (!validate76(data.place, { instancePath: instancePath + "/place", parentData: data, parentDataProperty: "place", rootData })) {
        vErrors = vErrors === null ? validate76.errors : vErrors.concat(validate76.errors);
        errors = vErrors.length;
      }
    }
    if (data.nudge !== void 0) {
      if (!validate47(data.nudge, { instancePath: instancePath + "/nudge", parentData: data, parentDataProperty: "nudge", rootData })) {
        vErrors = vErrors === null ? validate47.errors : vErrors.concat(validate47.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err111 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema88.type, parentSchema: schema88, data };
    if (vErrors === null) {
      vErrors = [err111];
    } else {
      vErrors.push(err111);
    }
    errors++;
  }
  validate56.errors = vErrors;
  return errors === 0;
}
var schema139 = { "title": "PieceSpec", "type": "object", "additionalProperties": false, "required": ["body"], "description": "One thing that is cut free of the sheet.", "properties": { "title": { "type": "string", "maxLength": 200, "description": "What the piece is called. Default: its key.", "examples": ["Backing"] }, "body": { "$ref": "#/definitions/shapeList", "description": "Shapes united to make the piece." }, "cut": { "$ref": "#/definitions/shapeList", "description": "Openings cut through the piece." }, "score": { "$ref": "#/definitions/shapeList", "description": "Outlines the beam draws on the surface." }, "engrave": { "$ref": "#/definitions/shapeList", "description": "Areas the beam darkens or hollows." }, "hanger": { "description": "What the tie goes through: a hanger, the name of one, or a list of two between which the piece hangs level.", "anyOf": [{ "$ref": "#/definitions/hangerOrName" }, { "type": "array", "minItems": 1, "maxItems": 2, "items": { "$ref": "#/definitions/hangerOrName" } }] }, "width": { "$ref": "#/definitions/length", "description": "Finished width of the whole piece, its ring included. Everything is scaled but the hole and its wall." }, "height": { "$ref": "#/definitions/length", "description": "Finished height of the whole piece, its ring included; give this or the width." }, "parts": { "enum": ["one", "many"], "default": "one", "description": "many: the piece is meant to have separate parts, such as letters glued on one by one." }, "glue_to": { "$ref": "#/definitions/pieceName", "description": "The piece this one is glued on." } } };
var schema144 = { "title": "PieceName", "description": "The name of a piece.", "type": "string" };
var schema140 = { "title": "HangerOrName", "description": "A hanger, or the name of one under `hangers`.", "anyOf": [{ "$ref": "#/definitions/hangerName" }, { "$ref": "#/definitions/hanger" }] };
var schema141 = { "title": "HangerName", "description": "The name of a hanger.", "type": "string" };
function validate85(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  const _errs0 = errors;
  let valid0 = false;
  const _errs1 = errors;
  if (typeof data !== "string") {
    const err0 = { instancePath, schemaPath: "#/definitions/hangerName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema141.type, parentSchema: schema141, data };
    if (vErrors === null) {
      vErrors = [err0];
    } else {
      vErrors.push(err0);
    }
    errors++;
  }
  var _valid0 = _errs1 === errors;
  valid0 = valid0 || _valid0;
  if (!valid0) {
    const _errs4 = errors;
    if (!validate45(data, { instancePath, parentData, parentDataProperty, rootData })) {
      vErrors = vErrors === null ? validate45.errors : vErrors.concat(validate45.errors);
      errors = vErrors.length;
    }
    var _valid0 = _errs4 === errors;
    valid0 = valid0 || _valid0;
  }
  if (!valid0) {
    const err1 = { instancePath, schemaPath: "#/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema140.anyOf, parentSchema: schema140, data };
    if (vErrors === null) {
      vErrors = [err1];
    } else {
      vErrors.push(err1);
    }
    errors++;
  } else {
    errors = _errs0;
    if (vErrors !== null) {
      if (_errs0) {
        vErrors.length = _errs0;
      } else {
        vErrors = null;
      }
    }
  }
  validate85.errors = vErrors;
  return errors === 0;
}
function validate80(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.body === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "body" }, message: "must have required property 'body'", schema: schema139.required, parentSchema: schema139, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func2.call(schema139.properties, key0)) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema139, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.title !== void 0) {
      let data0 = data.title;
      if (typeof data0 === "string") {
        if (func3(data0) > 200) {
          const err2 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema139.properties.title, data: data0 };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema139.properties.title.type, parentSchema: schema139.properties.title, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.body !== void 0) {
      if (!validate68(data.body, { instancePath: instancePath + "/body", parentData: data, parentDataProperty: "body", rootData })) {
        vErrors = vErrors === null ? validate68.errors : vErrors.concat(validate68.errors);
        errors = vErrors.length;
      }
    }
    if (data.cut !== void 0) {
      if (!validate68(data.cut, { instancePath: instancePath + "/cut", parentData: data, parentDataProperty: "cut", rootData })) {
        vErrors = vErrors === null ? validate68.errors : vErrors.concat(validate68.errors);
        errors = vErrors.length;
      }
    }
    if (data.score !== void 0) {
      if (!validate68(data.score, { instancePath: instancePath + "/score", parentData: data, parentDataProperty: "score", rootData })) {
        vErrors = vErrors === null ? validate68.errors : vErrors.concat(validate68.errors);
        errors = vErrors.length;
      }
    }
    if (data.engrave !== void 0) {
      if (!validate68(data.engrave, { instancePath: instancePath + "/engrave", parentData: data, parentDataProperty: "engrave", rootData })) {
        vErrors = vErrors === null ? validate68.errors : vErrors.concat(validate68.errors);
        errors = vErrors.length;
      }
    }
    if (data.hanger !== void 0) {
      let data5 = data.hanger;
      const _errs9 = errors;
      let valid1 = false;
      const _errs10 = errors;
      if (!validate85(data5, { instancePath: instancePath + "/hanger", parentData: data, parentDataProperty: "hanger", rootData })) {
        vErrors = vErrors === null ? validate85.errors : vErrors.concat(validate85.errors);
        errors = vErrors.length;
      }
      var _valid0 = _errs10 === errors;
      valid1 = valid1 || _valid0;
      if (!valid1) {
        const _errs11 = errors;
        if (Array.isArray(data5)) {
          if (data5.length > 2) {
            const err4 = { instancePath: instancePath + "/hanger", schemaPath: "#/properties/hanger/anyOf/1/maxItems", keyword: "maxItems", params: { limit: 2 }, message: "must NOT have more than 2 items", schema: 2, parentSchema: schema139.properties.hanger.anyOf[1], data: data5 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
          if (data5.length < 1) {
            const err5 = { instancePath: instancePath + "/hanger", schemaPath: "#/properties/hanger/anyOf/1/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema139.properties.hanger.anyOf[1], data: data5 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
          const len0 = data5.length;
          for (let i0 = 0; i0 < len0; i0++) {
            if (!validate85(data5[i0], { instancePath: instancePath + "/hanger/" + i0, parentData: data5, parentDataProperty: i0, rootData })) {
              vErrors = vErrors === null ? validate85.errors : vErrors.concat(validate85.errors);
              errors = vErrors.length;
            }
          }
        } else {
          const err6 = { instancePath: instancePath + "/hanger", schemaPath: "#/properties/hanger/anyOf/1/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema139.properties.hanger.anyOf[1].type, parentSchema: schema139.properties.hanger.anyOf[1], data: data5 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
        var _valid0 = _errs11 === errors;
        valid1 = valid1 || _valid0;
      }
      if (!valid1) {
        const err7 = { instancePath: instancePath + "/hanger", schemaPath: "#/properties/hanger/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema139.properties.hanger.anyOf, parentSchema: schema139.properties.hanger, data: data5 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      } else {
        errors = _errs9;
        if (vErrors !== null) {
          if (_errs9) {
            vErrors.length = _errs9;
          } else {
            vErrors = null;
          }
        }
      }
    }
    if (data.width !== void 0) {
      let data7 = data.width;
      if (!(typeof data7 == "number" && isFinite(data7)) && typeof data7 !== "string") {
        const err8 = { instancePath: instancePath + "/width", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data7 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.height !== void 0) {
      let data8 = data.height;
      if (!(typeof data8 == "number" && isFinite(data8)) && typeof data8 !== "string") {
        const err9 = { instancePath: instancePath + "/height", schemaPath: "#/definitions/length/type", keyword: "type", params: { type: schema16.type }, message: "must be number,string", schema: schema16.type, parentSchema: schema16, data: data8 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.parts !== void 0) {
      let data9 = data.parts;
      if (!(data9 === "one" || data9 === "many")) {
        const err10 = { instancePath: instancePath + "/parts", schemaPath: "#/properties/parts/enum", keyword: "enum", params: { allowedValues: schema139.properties.parts.enum }, message: "must be equal to one of the allowed values", schema: schema139.properties.parts.enum, parentSchema: schema139.properties.parts, data: data9 };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.glue_to !== void 0) {
      let data10 = data.glue_to;
      if (typeof data10 !== "string") {
        const err11 = { instancePath: instancePath + "/glue_to", schemaPath: "#/definitions/pieceName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema144.type, parentSchema: schema144, data: data10 };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
  } else {
    const err12 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema139.type, parentSchema: schema139, data };
    if (vErrors === null) {
      vErrors = [err12];
    } else {
      vErrors.push(err12);
    }
    errors++;
  }
  validate80.errors = vErrors;
  return errors === 0;
}
function validate10(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  ;
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.tagwright === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "tagwright" }, message: "must have required property 'tagwright'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.pieces === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "pieces" }, message: "must have required property 'pieces'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func2.call(schema11.properties, key0)) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11, data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.tagwright !== void 0) {
      let data0 = data.tagwright;
      if (1 !== data0) {
        const err3 = { instancePath: instancePath + "/tagwright", schemaPath: "#/properties/tagwright/const", keyword: "const", params: { allowedValue: 1 }, message: "must be equal to constant", schema: 1, parentSchema: schema11.properties.tagwright, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.title !== void 0) {
      let data1 = data.title;
      if (typeof data1 === "string") {
        if (func3(data1) > 200) {
          const err4 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.title, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.title.type, parentSchema: schema11.properties.title, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.units !== void 0) {
      let data2 = data.units;
      if (!(data2 === "mm" || data2 === "in")) {
        const err6 = { instancePath: instancePath + "/units", schemaPath: "#/properties/units/enum", keyword: "enum", params: { allowedValues: schema11.properties.units.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.units.enum, parentSchema: schema11.properties.units, data: data2 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.use !== void 0) {
      let data3 = data.use;
      const _errs7 = errors;
      let valid1 = false;
      const _errs8 = errors;
      if (typeof data3 === "string") {
        if (func3(data3) > 500) {
          const err7 = { instancePath: instancePath + "/use", schemaPath: "#/definitions/specFile/maxLength", keyword: "maxLength", params: { limit: 500 }, message: "must NOT have more than 500 characters", schema: 500, parentSchema: schema12, data: data3 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/use", schemaPath: "#/definitions/specFile/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data3 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
      var _valid0 = _errs8 === errors;
      valid1 = valid1 || _valid0;
      if (!valid1) {
        const _errs11 = errors;
        if (Array.isArray(data3)) {
          if (data3.length > 20) {
            const err9 = { instancePath: instancePath + "/use", schemaPath: "#/properties/use/anyOf/1/maxItems", keyword: "maxItems", params: { limit: 20 }, message: "must NOT have more than 20 items", schema: 20, parentSchema: schema11.properties.use.anyOf[1], data: data3 };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
          if (data3.length < 1) {
            const err10 = { instancePath: instancePath + "/use", schemaPath: "#/properties/use/anyOf/1/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema11.properties.use.anyOf[1], data: data3 };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
          const len0 = data3.length;
          for (let i0 = 0; i0 < len0; i0++) {
            let data4 = data3[i0];
            if (typeof data4 === "string") {
              if (func3(data4) > 500) {
                const err11 = { instancePath: instancePath + "/use/" + i0, schemaPath: "#/definitions/specFile/maxLength", keyword: "maxLength", params: { limit: 500 }, message: "must NOT have more than 500 characters", schema: 500, parentSchema: schema12, data: data4 };
                if (vErrors === null) {
                  vErrors = [err11];
                } else {
                  vErrors.push(err11);
                }
                errors++;
              }
            } else {
              const err12 = { instancePath: instancePath + "/use/" + i0, schemaPath: "#/definitions/specFile/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data4 };
              if (vErrors === null) {
                vErrors = [err12];
              } else {
                vErrors.push(err12);
              }
              errors++;
            }
          }
        } else {
          const err13 = { instancePath: instancePath + "/use", schemaPath: "#/properties/use/anyOf/1/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.use.anyOf[1].type, parentSchema: schema11.properties.use.anyOf[1], data: data3 };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
        var _valid0 = _errs11 === errors;
        valid1 = valid1 || _valid0;
      }
      if (!valid1) {
        const err14 = { instancePath: instancePath + "/use", schemaPath: "#/properties/use/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema11.properties.use.anyOf, parentSchema: schema11.properties.use, data: data3 };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      } else {
        errors = _errs7;
        if (vErrors !== null) {
          if (_errs7) {
            vErrors.length = _errs7;
          } else {
            vErrors = null;
          }
        }
      }
    }
    if (data.stock !== void 0) {
      let data5 = data.stock;
      const _errs17 = errors;
      let valid6 = false;
      const _errs18 = errors;
      if (typeof data5 !== "string") {
        const err15 = { instancePath: instancePath + "/stock", schemaPath: "#/definitions/stockName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema14.type, parentSchema: schema14, data: data5 };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
      var _valid1 = _errs18 === errors;
      valid6 = valid6 || _valid1;
      if (!valid6) {
        const _errs21 = errors;
        if (!validate11(data5, { instancePath: instancePath + "/stock", parentData: data, parentDataProperty: "stock", rootData })) {
          vErrors = vErrors === null ? validate11.errors : vErrors.concat(validate11.errors);
          errors = vErrors.length;
        }
        var _valid1 = _errs21 === errors;
        valid6 = valid6 || _valid1;
      }
      if (!valid6) {
        const err16 = { instancePath: instancePath + "/stock", schemaPath: "#/properties/stock/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema11.properties.stock.anyOf, parentSchema: schema11.properties.stock, data: data5 };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      } else {
        errors = _errs17;
        if (vErrors !== null) {
          if (_errs17) {
            vErrors.length = _errs17;
          } else {
            vErrors = null;
          }
        }
      }
    }
    if (data.stocks !== void 0) {
      let data6 = data.stocks;
      if (data6 && typeof data6 == "object" && !Array.isArray(data6)) {
        for (const key1 in data6) {
          const _errs24 = errors;
          if (typeof key1 === "string") {
            if (!pattern0.test(key1)) {
              const err17 = { instancePath: instancePath + "/stocks", schemaPath: "#/properties/stocks/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" }, message: 'must match pattern "^[A-Za-z][A-Za-z0-9_-]*$"', schema: "^[A-Za-z][A-Za-z0-9_-]*$", parentSchema: schema11.properties.stocks.propertyNames, data: key1, propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err17];
              } else {
                vErrors.push(err17);
              }
              errors++;
            }
          }
          var valid8 = _errs24 === errors;
          if (!valid8) {
            const err18 = { instancePath: instancePath + "/stocks", schemaPath: "#/properties/stocks/propertyNames", keyword: "propertyNames", params: { propertyName: key1 }, message: "property name must be valid", schema: schema11.properties.stocks.propertyNames, parentSchema: schema11.properties.stocks, data: data6 };
            if (vErrors === null) {
              vErrors = [err18];
            } else {
              vErrors.push(err18);
            }
            errors++;
          }
        }
        for (const key2 in data6) {
          if (!validate11(data6[key2], { instancePath: instancePath + "/stocks/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data6, parentDataProperty: key2, rootData })) {
            vErrors = vErrors === null ? validate11.errors : vErrors.concat(validate11.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err19 = { instancePath: instancePath + "/stocks", schemaPath: "#/properties/stocks/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.stocks.type, parentSchema: schema11.properties.stocks, data: data6 };
        if (vErrors === null) {
          vErrors = [err19];
        } else {
          vErrors.push(err19);
        }
        errors++;
      }
    }
    if (data.tie !== void 0) {
      let data8 = data.tie;
      const _errs28 = errors;
      let valid10 = false;
      const _errs29 = errors;
      if (typeof data8 !== "string") {
        const err20 = { instancePath: instancePath + "/tie", schemaPath: "#/definitions/tieName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema48.type, parentSchema: schema48, data: data8 };
        if (vErrors === null) {
          vErrors = [err20];
        } else {
          vErrors.push(err20);
        }
        errors++;
      }
      var _valid2 = _errs29 === errors;
      valid10 = valid10 || _valid2;
      if (!valid10) {
        const _errs32 = errors;
        if (!validate25(data8, { instancePath: instancePath + "/tie", parentData: data, parentDataProperty: "tie", rootData })) {
          vErrors = vErrors === null ? validate25.errors : vErrors.concat(validate25.errors);
          errors = vErrors.length;
        }
        var _valid2 = _errs32 === errors;
        valid10 = valid10 || _valid2;
      }
      if (!valid10) {
        const err21 = { instancePath: instancePath + "/tie", schemaPath: "#/properties/tie/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema11.properties.tie.anyOf, parentSchema: schema11.properties.tie, data: data8 };
        if (vErrors === null) {
          vErrors = [err21];
        } else {
          vErrors.push(err21);
        }
        errors++;
      } else {
        errors = _errs28;
        if (vErrors !== null) {
          if (_errs28) {
            vErrors.length = _errs28;
          } else {
            vErrors = null;
          }
        }
      }
    }
    if (data.ties !== void 0) {
      let data9 = data.ties;
      if (data9 && typeof data9 == "object" && !Array.isArray(data9)) {
        for (const key3 in data9) {
          const _errs35 = errors;
          if (typeof key3 === "string") {
            if (!pattern0.test(key3)) {
              const err22 = { instancePath: instancePath + "/ties", schemaPath: "#/properties/ties/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" }, message: 'must match pattern "^[A-Za-z][A-Za-z0-9_-]*$"', schema: "^[A-Za-z][A-Za-z0-9_-]*$", parentSchema: schema11.properties.ties.propertyNames, data: key3, propertyName: key3 };
              if (vErrors === null) {
                vErrors = [err22];
              } else {
                vErrors.push(err22);
              }
              errors++;
            }
          }
          var valid12 = _errs35 === errors;
          if (!valid12) {
            const err23 = { instancePath: instancePath + "/ties", schemaPath: "#/properties/ties/propertyNames", keyword: "propertyNames", params: { propertyName: key3 }, message: "property name must be valid", schema: schema11.properties.ties.propertyNames, parentSchema: schema11.properties.ties, data: data9 };
            if (vErrors === null) {
              vErrors = [err23];
            } else {
              vErrors.push(err23);
            }
            errors++;
          }
        }
        for (const key4 in data9) {
          if (!validate25(data9[key4], { instancePath: instancePath + "/ties/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data9, parentDataProperty: key4, rootData })) {
            vErrors = vErrors === null ? validate25.errors : vErrors.concat(validate25.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err24 = { instancePath: instancePath + "/ties", schemaPath: "#/properties/ties/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.ties.type, parentSchema: schema11.properties.ties, data: data9 };
        if (vErrors === null) {
          vErrors = [err24];
        } else {
          vErrors.push(err24);
        }
        errors++;
      }
    }
    if (data.batch !== void 0) {
      if (!validate28(data.batch, { instancePath: instancePath + "/batch", parentData: data, parentDataProperty: "batch", rootData })) {
        vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
        errors = vErrors.length;
      }
    }
    if (data.sheet !== void 0) {
      if (!validate32(data.sheet, { instancePath: instancePath + "/sheet", parentData: data, parentDataProperty: "sheet", rootData })) {
        vErrors = vErrors === null ? validate32.errors : vErrors.concat(validate32.errors);
        errors = vErrors.length;
      }
    }
    if (data.machine !== void 0) {
      let data13 = data.machine;
      const _errs41 = errors;
      let valid14 = false;
      const _errs42 = errors;
      if (typeof data13 !== "string") {
        const err25 = { instancePath: instancePath + "/machine", schemaPath: "#/definitions/machineName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema65.type, parentSchema: schema65, data: data13 };
        if (vErrors === null) {
          vErrors = [err25];
        } else {
          vErrors.push(err25);
        }
        errors++;
      }
      var _valid3 = _errs42 === errors;
      valid14 = valid14 || _valid3;
      if (!valid14) {
        const _errs45 = errors;
        if (!validate14(data13, { instancePath: instancePath + "/machine", parentData: data, parentDataProperty: "machine", rootData })) {
          vErrors = vErrors === null ? validate14.errors : vErrors.concat(validate14.errors);
          errors = vErrors.length;
        }
        var _valid3 = _errs45 === errors;
        valid14 = valid14 || _valid3;
      }
      if (!valid14) {
        const err26 = { instancePath: instancePath + "/machine", schemaPath: "#/properties/machine/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema11.properties.machine.anyOf, parentSchema: schema11.properties.machine, data: data13 };
        if (vErrors === null) {
          vErrors = [err26];
        } else {
          vErrors.push(err26);
        }
        errors++;
      } else {
        errors = _errs41;
        if (vErrors !== null) {
          if (_errs41) {
            vErrors.length = _errs41;
          } else {
            vErrors = null;
          }
        }
      }
    }
    if (data.machines !== void 0) {
      let data14 = data.machines;
      if (data14 && typeof data14 == "object" && !Array.isArray(data14)) {
        for (const key5 in data14) {
          const _errs48 = errors;
          if (typeof key5 === "string") {
            if (!pattern0.test(key5)) {
              const err27 = { instancePath: instancePath + "/machines", schemaPath: "#/properties/machines/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" }, message: 'must match pattern "^[A-Za-z][A-Za-z0-9_-]*$"', schema: "^[A-Za-z][A-Za-z0-9_-]*$", parentSchema: schema11.properties.machines.propertyNames, data: key5, propertyName: key5 };
              if (vErrors === null) {
                vErrors = [err27];
              } else {
                vErrors.push(err27);
              }
              errors++;
            }
          }
          var valid16 = _errs48 === errors;
          if (!valid16) {
            const err28 = { instancePath: instancePath + "/machines", schemaPath: "#/properties/machines/propertyNames", keyword: "propertyNames", params: { propertyName: key5 }, message: "property name must be valid", schema: schema11.properties.machines.propertyNames, parentSchema: schema11.properties.machines, data: data14 };
            if (vErrors === null) {
              vErrors = [err28];
            } else {
              vErrors.push(err28);
            }
            errors++;
          }
        }
        for (const key6 in data14) {
          if (!validate14(data14[key6], { instancePath: instancePath + "/machines/" + key6.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data14, parentDataProperty: key6, rootData })) {
            vErrors = vErrors === null ? validate14.errors : vErrors.concat(validate14.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err29 = { instancePath: instancePath + "/machines", schemaPath: "#/properties/machines/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.machines.type, parentSchema: schema11.properties.machines, data: data14 };
        if (vErrors === null) {
          vErrors = [err29];
        } else {
          vErrors.push(err29);
        }
        errors++;
      }
    }
    if (data.output !== void 0) {
      if (!validate38(data.output, { instancePath: instancePath + "/output", parentData: data, parentDataProperty: "output", rootData })) {
        vErrors = vErrors === null ? validate38.errors : vErrors.concat(validate38.errors);
        errors = vErrors.length;
      }
    }
    if (data.hangers !== void 0) {
      let data17 = data.hangers;
      if (data17 && typeof data17 == "object" && !Array.isArray(data17)) {
        for (const key7 in data17) {
          const _errs54 = errors;
          if (typeof key7 === "string") {
            if (!pattern0.test(key7)) {
              const err30 = { instancePath: instancePath + "/hangers", schemaPath: "#/properties/hangers/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" }, message: 'must match pattern "^[A-Za-z][A-Za-z0-9_-]*$"', schema: "^[A-Za-z][A-Za-z0-9_-]*$", parentSchema: schema11.properties.hangers.propertyNames, data: key7, propertyName: key7 };
              if (vErrors === null) {
                vErrors = [err30];
              } else {
                vErrors.push(err30);
              }
              errors++;
            }
          }
          var valid18 = _errs54 === errors;
          if (!valid18) {
            const err31 = { instancePath: instancePath + "/hangers", schemaPath: "#/properties/hangers/propertyNames", keyword: "propertyNames", params: { propertyName: key7 }, message: "property name must be valid", schema: schema11.properties.hangers.propertyNames, parentSchema: schema11.properties.hangers, data: data17 };
            if (vErrors === null) {
              vErrors = [err31];
            } else {
              vErrors.push(err31);
            }
            errors++;
          }
        }
        for (const key8 in data17) {
          if (!validate45(data17[key8], { instancePath: instancePath + "/hangers/" + key8.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data17, parentDataProperty: key8, rootData })) {
            vErrors = vErrors === null ? validate45.errors : vErrors.concat(validate45.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err32 = { instancePath: instancePath + "/hangers", schemaPath: "#/properties/hangers/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.hangers.type, parentSchema: schema11.properties.hangers, data: data17 };
        if (vErrors === null) {
          vErrors = [err32];
        } else {
          vErrors.push(err32);
        }
        errors++;
      }
    }
    if (data.shapes !== void 0) {
      let data19 = data.shapes;
      if (data19 && typeof data19 == "object" && !Array.isArray(data19)) {
        for (const key9 in data19) {
          const _errs59 = errors;
          if (typeof key9 === "string") {
            if (!pattern0.test(key9)) {
              const err33 = { instancePath: instancePath + "/shapes", schemaPath: "#/properties/shapes/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" }, message: 'must match pattern "^[A-Za-z][A-Za-z0-9_-]*$"', schema: "^[A-Za-z][A-Za-z0-9_-]*$", parentSchema: schema11.properties.shapes.propertyNames, data: key9, propertyName: key9 };
              if (vErrors === null) {
                vErrors = [err33];
              } else {
                vErrors.push(err33);
              }
              errors++;
            }
          }
          var valid20 = _errs59 === errors;
          if (!valid20) {
            const err34 = { instancePath: instancePath + "/shapes", schemaPath: "#/properties/shapes/propertyNames", keyword: "propertyNames", params: { propertyName: key9 }, message: "property name must be valid", schema: schema11.properties.shapes.propertyNames, parentSchema: schema11.properties.shapes, data: data19 };
            if (vErrors === null) {
              vErrors = [err34];
            } else {
              vErrors.push(err34);
            }
            errors++;
          }
        }
        for (const key10 in data19) {
          if (!validate56(data19[key10], { instancePath: instancePath + "/shapes/" + key10.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data19, parentDataProperty: key10, rootData })) {
            vErrors = vErrors === null ? validate56.errors : vErrors.concat(validate56.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err35 = { instancePath: instancePath + "/shapes", schemaPath: "#/properties/shapes/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.shapes.type, parentSchema: schema11.properties.shapes, data: data19 };
        if (vErrors === null) {
          vErrors = [err35];
        } else {
          vErrors.push(err35);
        }
        errors++;
      }
    }
    if (data.pieces !== void 0) {
      let data21 = data.pieces;
      if (data21 && typeof data21 == "object" && !Array.isArray(data21)) {
        if (Object.keys(data21).length < 1) {
          const err36 = { instancePath: instancePath + "/pieces", schemaPath: "#/properties/pieces/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema11.properties.pieces, data: data21 };
          if (vErrors === null) {
            vErrors = [err36];
          } else {
            vErrors.push(err36);
          }
          errors++;
        }
        for (const key11 in data21) {
          const _errs64 = errors;
          if (typeof key11 === "string") {
            if (!pattern0.test(key11)) {
              const err37 = { instancePath: instancePath + "/pieces", schemaPath: "#/properties/pieces/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" }, message: 'must match pattern "^[A-Za-z][A-Za-z0-9_-]*$"', schema: "^[A-Za-z][A-Za-z0-9_-]*$", parentSchema: schema11.properties.pieces.propertyNames, data: key11, propertyName: key11 };
              if (vErrors === null) {
                vErrors = [err37];
              } else {
                vErrors.push(err37);
              }
              errors++;
            }
          }
          var valid22 = _errs64 === errors;
          if (!valid22) {
            const err38 = { instancePath: instancePath + "/pieces", schemaPath: "#/properties/pieces/propertyNames", keyword: "propertyNames", params: { propertyName: key11 }, message: "property name must be valid", schema: schema11.properties.pieces.propertyNames, parentSchema: schema11.properties.pieces, data: data21 };
            if (vErrors === null) {
              vErrors = [err38];
            } else {
              vErrors.push(err38);
            }
            errors++;
          }
        }
        for (const key12 in data21) {
          if (!validate80(data21[key12], { instancePath: instancePath + "/pieces/" + key12.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data21, parentDataProperty: key12, rootData })) {
            vErrors = vErrors === null ? validate80.errors : vErrors.concat(validate80.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err39 = { instancePath: instancePath + "/pieces", schemaPath: "#/properties/pieces/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.pieces.type, parentSchema: schema11.properties.pieces, data: data21 };
        if (vErrors === null) {
          vErrors = [err39];
        } else {
          vErrors.push(err39);
        }
        errors++;
      }
    }
  } else {
    const err40 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.type, parentSchema: schema11, data };
    if (vErrors === null) {
      vErrors = [err40];
    } else {
      vErrors.push(err40);
    }
    errors++;
  }
  validate10.errors = vErrors;
  return errors === 0;
}

// src/spec/schema-issues.ts
var mostNamed2 = 14;
function checkAgainstSchema(source) {
  const value = structuredClone(source.value);
  let errors = complaintsOf(value);
  if (readAsText(value, errors, source)) errors = complaintsOf(value);
  const issues = [];
  const seen = /* @__PURE__ */ new Set();
  for (const error of errors) {
    const path = pathOf(error);
    const place = `${error.keyword === "required" ? String(error.params["missingProperty"]) : ""}@${path.join("/")}`;
    if (seen.has(place)) continue;
    seen.add(place);
    issues.push(toIssue(error, path, source, valueAt(source.value, path)));
  }
  for (let faulty = errors; removeAll(value, faulty.map(pathOf)); ) faulty = complaintsOf(value);
  return { issues, value };
}
function readAsText(root, errors, source) {
  let changed = false;
  for (const error of errors) {
    if (error.keyword !== "type" || error.params["type"] !== "string") continue;
    const path = pathOf(error);
    const found = valueAt(root, path);
    if (typeof found !== "number" && typeof found !== "boolean") continue;
    const parent = valueAt(root, path.slice(0, -1));
    parent[path.at(-1)] = source.written?.(path) ?? String(found);
    changed = true;
  }
  return changed;
}
function complaintsOf(value) {
  return stdin_default(value) ? [] : relevant(stdin_default.errors ?? [], value);
}
function removeAll(root, paths) {
  const removed2 = paths.sort(deepestLast).reverse().map((path) => remove(root, path));
  return removed2.includes(true);
}
function relevant(errors, value) {
  const choices = errors.filter((error) => error.keyword === "anyOf");
  const choicePaths = new Set(choices.map((error) => error.instancePath));
  const kept = errors.filter((error) => {
    if (error.keyword === "anyOf" || error.keyword === "propertyNames") return error.keyword === "propertyNames";
    if (error.params["propertyName"] !== void 0) return false;
    if (!choicePaths.has(error.instancePath)) return true;
    const found = valueAt(value, toPath(error.instancePath));
    const mismatch = error.keyword === "type" || error.keyword === "enum";
    return typeof found === "object" && found !== null && !mismatch;
  });
  const isInner = (path, outer) => path.startsWith(`${outer}/`);
  const described2 = choices.filter(({ parentSchema }) => parentSchema?.description !== void 0);
  const speaking = described2.length > 0 ? described2 : choices;
  const unanswered = speaking.filter(
    ({ instancePath }) => !kept.some((error) => error.instancePath === instancePath || isInner(error.instancePath, instancePath)) && !speaking.some((other) => isInner(other.instancePath, instancePath))
  );
  return [...kept, ...unanswered];
}
function toIssue(error, path, source, found) {
  const name = path.length === 0 ? "the spec" : `\u201C${clip(String(path.at(-1)))}\u201D`;
  const base = { severity: "error", path, range: source.range(path) };
  const params = error.params;
  switch (error.keyword) {
    case "additionalProperties": {
      const key = String(params["additionalProperty"]);
      const known3 = Object.keys(error.parentSchema?.properties ?? {});
      const suggestions = nearest2(key, known3);
      const hint = didYouMean(suggestions) || (known3.length <= mostNamed2 ? ` Allowed here: ${known3.join(", ")}.` : "");
      return {
        ...base,
        code: "unknown-key",
        message: `Unknown key \u201C${clip(key)}\u201D.${hint}`,
        range: source.keyRange(path),
        suggestions
      };
    }
    case "required": {
      const key = String(params["missingProperty"]);
      const message = key === "tagwright" ? "A tag spec starts with the line \u201Ctagwright: 1\u201D." : `${capital(name)} needs \u201C${key}\u201D.`;
      return {
        ...base,
        code: key === "tagwright" ? "not-a-spec" : "missing-key",
        message,
        range: source.keyRange(path)
      };
    }
    case "propertyNames":
      return {
        ...base,
        code: "bad-value",
        range: source.keyRange(path),
        message: `${capital(name)} cannot be a name: start with a letter, then use letters, digits, - and _.`
      };
    case "enum": {
      const allowed = params["allowedValues"].map(String);
      const suggestions = typeof found === "string" ? nearest2(found, allowed) : [];
      return {
        ...base,
        code: "bad-value",
        message: `${capital(name)} is one of ${allowed.join(", ")}.${didYouMean(suggestions)}`,
        suggestions
      };
    }
    default:
      if (found === null)
        return {
          ...base,
          code: "bad-value",
          range: source.keyRange(path),
          message: `${capital(name)} has no value yet.`
        };
      return { ...base, code: "bad-value", ...described(error, capital(name), found) };
  }
}
function described(error, name, found) {
  const quoted3 = error.keyword === "type" && error.params["type"] === "string" ? placeholderOf(found) : void 0;
  if (quoted3 === void 0) return { message: `${name} ${expectation(error)}` };
  return { message: `${name} needs quotes, because YAML reads braces as a group: ${quoted3}.`, suggestions: [quoted3] };
}
function placeholderOf(found) {
  if (typeof found !== "object" || found === null) return void 0;
  const [entry, ...more] = Object.entries(found);
  return entry?.[1] === null && more.length === 0 ? `"{${entry[0]}}"` : void 0;
}
function expectation({ keyword, params, parentSchema }) {
  const limit2 = String(params["limit"]);
  switch (keyword) {
    case "const":
      return `must be ${String(params["allowedValue"])}.`;
    case "type":
      return `should be ${kinds(params["type"])}${keysOf(params["type"], parentSchema?.properties)}.`;
    case "pattern":
      return patterned(String(params["pattern"]));
    case "maxLength":
      return `may have at most ${limit2} characters.`;
    case "minItems":
      return `needs at least ${limit2} entries.`;
    case "maxItems":
      return `may have at most ${limit2} entries.`;
    case "minProperties":
      return "needs at least one entry.";
    case "maxProperties":
      return "takes only one of its keys.";
    case "minimum":
    case "maximum":
    case "exclusiveMinimum":
    case "exclusiveMaximum":
      return `must be ${String(params["comparison"])} ${limit2}.`;
    default:
      return parentSchema?.description === void 0 ? "has a value that does not fit here." : `has a value that does not fit. It is: ${firstSentence(parentSchema.description)}`;
  }
}
function patterned(pattern4) {
  if (pattern4.startsWith("^#")) return 'should be a colour such as "#0072B2", in quotes.';
  if (pattern4.startsWith("^\\d{4}-")) return "should be a day such as 2026-03-14.";
  return "has a character that is not allowed here.";
}
function firstSentence(description) {
  return /^.*?\.(?= |$)/s.exec(description.replace(/^Generator: /, ""))?.[0] ?? description;
}
function keysOf(type, properties) {
  const keys = Object.keys(properties ?? {});
  if (type !== "object" || keys.length === 0) return "";
  return keys.length <= mostNamed2 ? `: ${keys.join(", ")}` : ", such as {ellipse: 30 mm}";
}
function kinds(type) {
  const names = {
    object: "a group of keys",
    array: "a list",
    string: "text",
    number: "a number",
    integer: "a whole number",
    boolean: "true or false"
  };
  return (Array.isArray(type) ? type : [type]).map((kind) => names[String(kind)] ?? String(kind)).join(" or ");
}
function pathOf(error) {
  const base = toPath(error.instancePath);
  if (error.keyword === "additionalProperties") return [...base, String(error.params["additionalProperty"])];
  if (error.keyword === "propertyNames") return [...base, String(error.params["propertyName"])];
  return base;
}
function toPath(pointer) {
  return pointer === "" ? [] : pointer.slice(1).split("/").map(decode).map((step) => /^\d+$/.test(step) ? Number(step) : step);
}
function decode(step) {
  return step.replaceAll("~1", "/").replaceAll("~0", "~");
}
function deepestLast(a, b) {
  if (a.length !== b.length) return a.length - b.length;
  const [lastA, lastB] = [a.at(-1), b.at(-1)];
  return typeof lastA === "number" && typeof lastB === "number" ? lastA - lastB : 0;
}
function remove(root, path) {
  const parent = valueAt(root, path.slice(0, -1));
  const last = path.at(-1);
  if (last === void 0 || typeof parent !== "object" || parent === null || !Object.hasOwn(parent, last)) return false;
  delete parent[last];
  return true;
}
function capital(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

// src/spec/scope.ts
var groups = ["shapes", "hangers", "stocks", "ties", "machines"];
var words = { shapes: "shape", hangers: "hanger", stocks: "stock", ties: "tie", machines: "machine" };
var unknownCodes = {
  shapes: "unknown-shape",
  hangers: "unknown-hanger",
  stocks: "unknown-name",
  ties: "unknown-name",
  machines: "unknown-name"
};
var Scope = class _Scope {
  spec;
  problems;
  shapes;
  uses;
  #schemaIssues;
  #name;
  #file;
  /** The third: of a used file, its name, where it lies and where the spec asks for it; nothing for the spec itself. */
  constructor(source, used, { name = "", path: base = [], file = "" } = {}) {
    this.#name = name;
    this.#file = file;
    this.uses = used.map((each) => new _Scope(each.source, each.uses, each));
    const { value, issues } = checkAgainstSchema(source);
    this.#schemaIssues = base.length === 0 ? issues : issues.filter(
      ({ code, path, message }) => !(code === "missing-key" && path.length === 0 && /pieces/.test(message))
    );
    this.spec = isGroup2(value) ? value : {};
    this.problems = new Problems(source, this.spec.units ?? "mm", base, folderOf(name));
    this.shapes = new ShapeReader(this.spec, this.problems, this);
  }
  /** Has texts, those of used files too, say what they say in this row. */
  readRow(batch, row2, problems = this.problems) {
    this.problems.row = { batch, row: row2, problems };
    for (const used of this.uses) used.readRow(batch, row2, problems);
  }
  /** Everything that is wrong here and in the used files, at its place in the spec itself. */
  issues(spec) {
    const own = this.#own();
    const told2 = this.problems.base.length === 0 ? own : own.map((issue) => this.#asSeenFrom(spec, issue));
    return [...told2, ...this.uses.flatMap((used) => used.issues(spec))];
  }
  /** What is wrong in each used file, at its place there. */
  inUsed() {
    return this.uses.flatMap((used) => [
      { file: used.#file, source: used.problems.source, issues: used.#own() },
      ...used.inUsed()
    ]);
  }
  /** Of this file alone, at its place in it. */
  #own() {
    const { source } = this.problems;
    return source.issues.length > 0 ? source.issues.slice(0, 1) : [...this.#schemaIssues, ...this.problems.issues];
  }
  #asSeenFrom(spec, { code, severity, message, range }) {
    const { source, base } = this.problems;
    const { line } = source.position(range.start);
    return { code, severity, path: base, range: spec.range(base), message: `${this.#name}, line ${line}: ${message}` };
  }
  /** The scope that defines a name, this one first. */
  owner(group, name) {
    if (Object.hasOwn(this.spec[group] ?? {}, name)) return this;
    for (const used of this.uses) {
      const owner = used.owner(group, name);
      if (owner) return owner;
    }
    return void 0;
  }
  /** As `owner`; where there is none, a problem at `path`, or where `extra` has it, that names the nearest there are. */
  require(group, name, path, extra = {}) {
    const owner = this.owner(group, name);
    if (owner || this.#wrote(group, name)) return owner;
    const suggestions = nearest2(name, this.#names(group));
    const message = `There is no ${words[group]} \u201C${name}\u201D.${didYouMean(suggestions)}`;
    this.problems.error(unknownCodes[group], path, message, { suggestions, ...extra });
    return void 0;
  }
  /** Tells of names that more than one file defines: nobody could say which is meant. */
  checkClashes() {
    for (const group of groups) {
      const owners = /* @__PURE__ */ new Map();
      for (const used of this.uses.flatMap((scope) => scope.#withUses())) {
        for (const name of Object.keys(used.spec[group] ?? {})) {
          const other = Object.hasOwn(this.spec[group] ?? {}, name) ? this : owners.get(name);
          owners.set(name, used);
          if (!other || other.problems.source === used.problems.source) continue;
          const path = other === this ? [group, name] : used.problems.base;
          const where2 = other === this ? used.#name : `both ${other.#name} and ${used.#name}`;
          const range = other === this ? this.problems.source.keyRange(path) : this.problems.source.range(path);
          this.problems.error(
            "name-clash",
            path,
            `There is ${other === this ? "also a" : "a"} ${words[group]} \u201C${name}\u201D in ${where2}.`,
            {
              range
            }
          );
        }
      }
    }
  }
  #withUses() {
    return [this, ...this.uses.flatMap((used) => used.#withUses())];
  }
  #names(group) {
    return this.#withUses().flatMap((scope) => Object.keys(scope.spec[group] ?? {}));
  }
  #wrote(group, name) {
    return this.#withUses().some(({ problems }) => problems.wrote([group, name]));
  }
};
function isGroup2(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

// schemas/tag.schema.json
var tag_schema_default = {
  $schema: "http://json-schema.org/draft-07/schema#",
  $id: "https://tagwright.invalid/schemas/tag.schema.json",
  title: "TagSpec",
  description: "A hang tag: the stock it is cut from, the tie it hangs on, the shapes it is made of and the pieces that are cut free.",
  type: "object",
  additionalProperties: false,
  required: ["tagwright", "pieces"],
  properties: {
    tagwright: { const: 1, description: "Version of the spec language. Always 1." },
    title: {
      type: "string",
      maxLength: 200,
      description: "What the tag is called in lists, files and proofs.",
      examples: ["Seed-jar tag"]
    },
    units: {
      enum: ["mm", "in"],
      default: "mm",
      description: "Unit of lengths written as bare numbers."
    },
    use: {
      description: "Files beside the spec that bring what many specs share: stocks, ties, hangers and shapes.",
      anyOf: [
        { $ref: "#/definitions/specFile" },
        { type: "array", minItems: 1, maxItems: 20, items: { $ref: "#/definitions/specFile" } }
      ]
    },
    stock: {
      description: "The sheet the tag is cut from, or the name of one under `stocks`.",
      anyOf: [{ $ref: "#/definitions/stockName" }, { $ref: "#/definitions/stock" }]
    },
    stocks: {
      type: "object",
      description: "Named stocks, for a file that many specs use.",
      propertyNames: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" },
      additionalProperties: { $ref: "#/definitions/stock" }
    },
    tie: {
      description: "What the tag hangs on, or the name of a tie under `ties`.",
      anyOf: [{ $ref: "#/definitions/tieName" }, { $ref: "#/definitions/tie" }]
    },
    ties: {
      type: "object",
      description: "Named ties, for a file that many specs use.",
      propertyNames: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" },
      additionalProperties: { $ref: "#/definitions/tie" }
    },
    batch: {
      $ref: "#/definitions/batch",
      examples: [["Sorrel", "Borage", "Lovage"]]
    },
    sheet: { $ref: "#/definitions/sheet", examples: [{ size: ["600 mm", "400 mm"], margin: "5 mm" }] },
    machine: {
      description: "How fast your machine works, for the time estimate; or the name of one under `machines`: the values that a stock has for it then count.",
      anyOf: [{ $ref: "#/definitions/machineName" }, { $ref: "#/definitions/machine" }],
      examples: [{ cut: "12 mm/s", score: "60 mm/s", engrave: "250 mm/s", acceleration: "1500 mm/s2" }]
    },
    machines: {
      type: "object",
      description: "Named machines, for a workshop with more than one.",
      propertyNames: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" },
      additionalProperties: { $ref: "#/definitions/machine" }
    },
    output: { $ref: "#/definitions/output", examples: [{ tabs: 2 }] },
    hangers: {
      type: "object",
      description: "Named hangers, for several pieces or several specs.",
      propertyNames: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" },
      additionalProperties: { $ref: "#/definitions/hanger" }
    },
    shapes: {
      type: "object",
      description: "Named shapes. Each has one generator (text, rectangle, around \u2026), then modifiers (grow, width, place \u2026).",
      propertyNames: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" },
      additionalProperties: { $ref: "#/definitions/shape" }
    },
    pieces: {
      type: "object",
      minProperties: 1,
      description: "What the laser cuts free of the sheet.",
      propertyNames: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" },
      additionalProperties: { $ref: "#/definitions/piece" }
    }
  },
  definitions: {
    length: {
      title: "Length",
      description: "A finished length: a bare number in `units`, or a number with its unit such as 3 mm, 0.25 in, 1/4 in, 12 pt.",
      type: ["number", "string"]
    },
    size: {
      title: "Size",
      description: "[width, height].",
      type: "array",
      items: [{ $ref: "#/definitions/length" }, { $ref: "#/definitions/length" }],
      minItems: 2,
      maxItems: 2,
      examples: [["60 mm", "30 mm"]]
    },
    stockName: { title: "StockName", description: "The name of a stock.", type: "string" },
    machineName: { title: "MachineName", description: "The name of a machine.", type: "string" },
    tieName: { title: "TieName", description: "The name of a tie.", type: "string" },
    hangerName: { title: "HangerName", description: "The name of a hanger.", type: "string" },
    specFile: {
      title: "SpecFile",
      description: "The path of a spec beside this one.",
      type: "string",
      maxLength: 500
    },
    shapeName: { title: "ShapeName", description: "The name of a shape.", type: "string" },
    partName: { title: "PartName", description: "The name of a member of a stack.", type: "string" },
    pieceName: { title: "PieceName", description: "The name of a piece.", type: "string" },
    fontName: {
      title: "FontName",
      description: "A family name, or the path of a font file beside the spec.",
      type: "string"
    },
    drawingFile: {
      title: "DrawingFile",
      description: "The path of an SVG file beside the spec.",
      type: "string"
    },
    nudge: {
      title: "Nudge",
      type: "object",
      additionalProperties: false,
      minProperties: 1,
      description: "Moves the shape by hand: up, down, left, right.",
      properties: {
        up: { $ref: "#/definitions/length", examples: ["1 mm"] },
        down: { $ref: "#/definitions/length", examples: ["1 mm"] },
        left: { $ref: "#/definitions/length", examples: ["1 mm"] },
        right: { $ref: "#/definitions/length", examples: ["1 mm"] }
      },
      examples: [{ up: "1 mm" }]
    },
    anchor: {
      title: "Anchor",
      enum: ["center", "top", "bottom", "left", "right", "top-left", "top-right", "bottom-left", "bottom-right"],
      description: "A side, a corner or the centre."
    },
    corners: {
      title: "CornerStyle",
      enum: ["round", "miter", "bevel"],
      default: "round",
      description: "How corners are made when an outline is grown: rounded, kept sharp, or cut off."
    },
    place: {
      title: "PlaceSpec",
      type: "object",
      additionalProperties: false,
      required: ["on"],
      description: "Puts the shape on another.",
      properties: {
        on: {
          $ref: "#/definitions/shapeName",
          description: "Name of the shape to put it on; a member of a stack counts where the stack puts it."
        },
        part: {
          $ref: "#/definitions/partName",
          description: "Only this member of a stack counts, such as the body without its neck."
        },
        at: { $ref: "#/definitions/anchor", default: "center" },
        margin: {
          $ref: "#/definitions/length",
          description: "Distance kept from the side or corner named in `at`.",
          examples: ["3 mm"]
        },
        by: {
          enum: ["box", "mass", "eye", "x-height"],
          default: "eye",
          description: "What is centred. box: the ruler's middle. mass: the centre of gravity. eye: what looks centred. x-height: the band of the small letters."
        }
      }
    },
    fit: {
      title: "FitSpec",
      type: "object",
      additionalProperties: false,
      required: ["in"],
      description: "Makes the shape as large as will go anywhere inside another, less a margin and clear of what else is there.",
      properties: {
        in: {
          $ref: "#/definitions/shapeName",
          description: "Name of the shape to fill; a member of a stack counts where the stack puts it."
        },
        part: { $ref: "#/definitions/partName", description: "Only this member of a stack counts." },
        margin: {
          $ref: "#/definitions/length",
          default: 0,
          description: "Material left free along the edge.",
          examples: ["2 mm"]
        },
        clear: {
          $ref: "#/definitions/length",
          description: "Distance kept from the hangers and the cuts of the piece, and from its other marks; of two that are fitted, the one that comes first in the piece has the first choice. Default: the margin.",
          examples: ["2 mm"]
        },
        at_most: {
          title: "AtMost",
          type: "object",
          additionalProperties: false,
          minProperties: 1,
          description: "Makes it no larger than this: smaller where there is no room, such as for a long name.",
          properties: {
            x_height: {
              $ref: "#/definitions/length",
              description: "For text: height of its small letters, as in `x_height`.",
              examples: ["8 mm"]
            },
            cap_height: {
              $ref: "#/definitions/length",
              description: "For text: height of its capitals, as in `cap_height`.",
              examples: ["12 mm"]
            },
            width: { $ref: "#/definitions/length", description: "Finished width.", examples: ["50 mm"] }
          },
          examples: [{ x_height: "8 mm" }]
        }
      }
    },
    shapeOrName: {
      title: "ShapeOrName",
      description: "The name of a shape, or a shape written in place.",
      anyOf: [{ $ref: "#/definitions/shapeName" }, { $ref: "#/definitions/shape" }]
    },
    shapeList: {
      title: "ShapeList",
      type: "array",
      minItems: 1,
      items: { $ref: "#/definitions/shapeOrName" }
    },
    shape: {
      title: "ShapeSpec",
      type: "object",
      additionalProperties: false,
      description: "One generator, then modifiers. Modifiers apply in a fixed order: tidy, grow, width/height, fit, straps, bridges, rotate, mirror, place, nudge.",
      properties: {
        text: {
          type: "string",
          maxLength: 300,
          description: "Generator: lettering. A line break starts a new line. With a `batch`, {column} is replaced by the cell of each row.",
          examples: ["Sorrel"]
        },
        font: {
          $ref: "#/definitions/fontName",
          description: "For text: a family name, or the path of a font file beside the spec.",
          examples: ["Pacifico"]
        },
        weight: {
          type: "integer",
          minimum: 1,
          maximum: 1e3,
          default: 400,
          description: "For text: 400 is regular, 700 bold.",
          examples: [800]
        },
        italic: { type: "boolean", default: false, description: "For text.", examples: [true] },
        size: {
          $ref: "#/definitions/length",
          description: "For text: the em, as in CSS font-size. Leave it out and say width, height, cap_height or x_height instead to ask for a finished size.",
          examples: ["24 mm"]
        },
        cap_height: {
          $ref: "#/definitions/length",
          description: "For text: finished height of its capitals, growth included. The font says how high they are, or else its H is measured.",
          examples: ["12 mm"]
        },
        x_height: {
          $ref: "#/definitions/length",
          description: "For text: finished height of its small letters without their stems, growth included. The font says how high they are, or else its x is measured.",
          examples: ["8 mm"]
        },
        arc: {
          title: "ArcSpec",
          type: "object",
          additionalProperties: false,
          description: "For text: sets it on a circle, by its radius or by the part of the circle that it takes. The middle of the circle is where the middle of a straight text would be, and what `place` centres `by: eye`.",
          examples: [{ radius: "30 mm", at: "top" }],
          properties: {
            radius: {
              $ref: "#/definitions/length",
              description: "Radius of the circle that the letters stand on, before any growth.",
              examples: ["30 mm"]
            },
            sweep: {
              type: "number",
              minimum: 1,
              maximum: 360,
              description: "Degrees of the circle that the text takes. The radius follows from its size.",
              examples: [180]
            },
            at: {
              enum: ["top", "bottom"],
              default: "top",
              description: "top: outside the circle, over the top. bottom: inside it, along the bottom, so that it reads from left to right too."
            }
          }
        },
        letter_spacing: {
          $ref: "#/definitions/length",
          description: "For text: space added between letters; negative makes them touch. Measured at the final size.",
          examples: ["-0.3 mm"]
        },
        overlap: {
          $ref: "#/definitions/length",
          description: "For text: slides its letters together until they overlap and hold as one part. It is how far two letters may lap over each other at most; they go no further than their joint needs. Dots and accents are lowered and held by posts as wide as `min_web`, words are joined along the baseline. `grow` goes with it: sizes such as `width` or `x_height` are then those of the letters before growth, so that growing never shrinks them (`fit` includes the growth).",
          examples: ["0.6 mm"]
        },
        line_height: {
          type: "number",
          exclusiveMinimum: 0,
          maximum: 10,
          description: "For text: distance between lines, as a multiple of the em.",
          examples: [1.2]
        },
        align: {
          enum: ["left", "center", "right"],
          default: "center",
          description: "For text of several lines."
        },
        features: {
          type: "object",
          additionalProperties: { type: "boolean" },
          propertyNames: { pattern: "^[A-Za-z0-9]{4}$" },
          description: "For text: OpenType features to switch on or off, such as {swsh: true, liga: false}.",
          examples: [{ swsh: true }]
        },
        rectangle: {
          $ref: "#/definitions/size",
          description: "Generator: a rectangle [width, height], with `radius` for round corners.",
          examples: [["80 mm", "40 mm"]]
        },
        radius: {
          $ref: "#/definitions/length",
          default: 0,
          description: "For rectangle: the radius of its corners.",
          examples: ["4 mm"]
        },
        ellipse: {
          description: "Generator: an ellipse [width, height], or a circle by its diameter.",
          anyOf: [{ $ref: "#/definitions/size" }, { $ref: "#/definitions/length" }],
          examples: [["50 mm", "30 mm"]]
        },
        polygon: {
          title: "PolygonSpec",
          type: "object",
          additionalProperties: false,
          description: "Generator: a regular polygon ({sides, across}) or one by its points, [right, down] as in SVG.",
          properties: {
            sides: {
              type: "integer",
              minimum: 3,
              maximum: 120,
              examples: [6],
              description: "How many sides a regular polygon has."
            },
            across: {
              $ref: "#/definitions/length",
              description: "Diameter of the circle through the corners.",
              examples: ["40 mm"]
            },
            points: {
              type: "array",
              minItems: 3,
              maxItems: 5e3,
              items: { $ref: "#/definitions/size" },
              examples: [
                [
                  ["0 mm", "0 mm"],
                  ["40 mm", "0 mm"],
                  ["20 mm", "30 mm"]
                ]
              ],
              description: "The corners in order, each [right, down]."
            }
          },
          examples: [{ sides: 6, across: "40 mm" }]
        },
        arrow: {
          title: "ArrowSpec",
          type: "object",
          additionalProperties: false,
          required: ["length", "width"],
          description: "Generator: an arrow pointing right.",
          properties: {
            length: { $ref: "#/definitions/length", description: "From tip to tail.", examples: ["90 mm"] },
            width: { $ref: "#/definitions/length", description: "Width of the shaft.", examples: ["20 mm"] },
            head: {
              $ref: "#/definitions/length",
              description: "Width across the head. Default: the width of the shaft.",
              examples: ["34 mm"]
            },
            tip: {
              type: "number",
              exclusiveMinimum: 10,
              exclusiveMaximum: 175,
              default: 90,
              description: "Angle of the tip in degrees.",
              examples: [75]
            },
            tail: {
              enum: ["straight", "notched", "forked", "pointed"],
              default: "straight",
              description: "straight: cut square. notched: a V cut into it. forked: a V whose two points spread as wide as the head. pointed: drawn to a point."
            },
            notch: {
              $ref: "#/definitions/length",
              description: "How deep the V of the tail is, or how far it is drawn to a point. Default: half the width of the shaft.",
              examples: ["6 mm"]
            }
          },
          examples: [{ length: "90 mm", width: "20 mm", head: "34 mm" }]
        },
        oval: {
          title: "OvalSpec",
          type: "object",
          additionalProperties: false,
          required: ["size"],
          description: "Generator: a superellipse, |2x/width|^e + |2y/height|^e = 1: fuller than an ellipse, softer than a rectangle.",
          properties: {
            size: { $ref: "#/definitions/size" },
            exponent: {
              type: "number",
              minimum: 2,
              maximum: 10,
              default: 2.5,
              description: "2 is an ellipse; the higher, the nearer to a rectangle.",
              examples: [3]
            }
          },
          examples: [{ size: ["60 mm", "40 mm"] }]
        },
        heart: {
          description: "Generator: a heart [width, height], or by its width alone: a square on its corner with a half disc on each of its upper sides.",
          anyOf: [{ $ref: "#/definitions/size" }, { $ref: "#/definitions/length" }],
          examples: [["50 mm", "46 mm"]]
        },
        house: {
          title: "HouseSpec",
          type: "object",
          additionalProperties: false,
          required: ["size"],
          description: "Generator: the front of a house: walls under a gable.",
          properties: {
            size: {
              $ref: "#/definitions/size",
              description: "[width, height] of the whole house, roof and eaves included."
            },
            roof: {
              $ref: "#/definitions/length",
              description: "Height of the gable. Default: a third of the whole height.",
              examples: ["20 mm"]
            },
            eaves: {
              $ref: "#/definitions/length",
              default: 0,
              description: "How far the roof overhangs the walls on each side.",
              examples: ["2 mm"]
            }
          },
          examples: [{ size: ["44 mm", "60 mm"] }]
        },
        label: {
          title: "LabelSpec",
          type: "object",
          additionalProperties: false,
          required: ["size"],
          description: "Generator: a luggage label: a rectangle with both corners of one end clipped at 45\xB0.",
          properties: {
            size: { $ref: "#/definitions/size" },
            clip: {
              $ref: "#/definitions/length",
              description: "How much of either side each clipped corner takes. Default: a quarter of the clipped end.",
              examples: ["9 mm"]
            },
            end: {
              enum: ["top", "bottom", "left", "right"],
              default: "left",
              description: "The end whose corners are clipped."
            }
          },
          examples: [{ size: ["80 mm", "36 mm"] }]
        },
        ticket: {
          title: "TicketSpec",
          type: "object",
          additionalProperties: false,
          required: ["size"],
          description: "Generator: a rectangle with a quarter of a disc bitten out of each corner.",
          properties: {
            size: { $ref: "#/definitions/size" },
            bite: {
              $ref: "#/definitions/length",
              description: "Radius of the bites. Default: a fifth of the shorter side.",
              examples: ["6 mm"]
            }
          },
          examples: [{ size: ["80 mm", "36 mm"] }]
        },
        scallops: {
          title: "ScallopsSpec",
          type: "object",
          additionalProperties: false,
          description: "Generator: a plate edged with equal round lobes: a rectangle ({size, lobe}) or a round one ({across, lobes}).",
          properties: {
            size: { $ref: "#/definitions/size", description: "[width, height] of a rectangle, lobes included." },
            lobe: {
              $ref: "#/definitions/length",
              description: "For size: width of a lobe, about; as many as fit along a side share it evenly.",
              examples: ["8 mm"]
            },
            across: {
              $ref: "#/definitions/length",
              description: "Diameter of a round one, lobes included; one lobe is at the top.",
              examples: ["50 mm"]
            },
            lobes: {
              type: "integer",
              minimum: 5,
              maximum: 120,
              description: "For across: how many lobes.",
              examples: [14]
            }
          },
          examples: [{ across: "50 mm", lobes: 14 }]
        },
        stack: {
          title: "StackSpec",
          type: "object",
          additionalProperties: false,
          required: ["shapes"],
          description: "Generator: shapes set one after the other on an axis, each lapped over the one before so that no shoulder pokes out.",
          properties: {
            shapes: {
              type: "array",
              minItems: 1,
              items: { $ref: "#/definitions/shapeName" },
              description: "Names, in order."
            },
            towards: {
              enum: ["down", "up", "left", "right"],
              default: "down",
              description: "Which way the shapes follow one another."
            },
            lap: {
              $ref: "#/definitions/length",
              description: "How far each goes into the one before. Default: as far as hides the narrower one's corners.",
              examples: ["4 mm"]
            }
          }
        },
        path: {
          type: "string",
          description: "Generator: SVG path data in the spec's units, y down, filled by the non-zero rule.",
          examples: ["M0 0 C10 -20 30 -20 40 0 C30 20 10 20 0 0 Z"]
        },
        drawing: {
          $ref: "#/definitions/drawingFile",
          description: "Generator: the path of an SVG file beside the spec.",
          examples: ["leaf.svg"]
        },
        around: {
          $ref: "#/definitions/shapeOrName",
          description: "Generator: an outline at the distance `by` from another shape."
        },
        by: { $ref: "#/definitions/length", description: "For around: the distance.", examples: ["6 mm"] },
        holes: {
          enum: ["fill", "keep"],
          default: "fill",
          description: "For around: whether holes are filled."
        },
        bays: {
          $ref: "#/definitions/length",
          description: "For around: bays, slits and kept holes narrower than this are closed. Default: those narrower than `by` where corners are round, else none.",
          examples: ["2 mm"]
        },
        union: { $ref: "#/definitions/shapeList", description: "Generator: all of the shapes together." },
        difference: {
          $ref: "#/definitions/shapeList",
          description: "Generator: the first shape less all the others."
        },
        intersection: { $ref: "#/definitions/shapeList", description: "Generator: what the shapes share." },
        from: {
          $ref: "#/definitions/shapeOrName",
          description: "Generator: a copy of another shape, to modify."
        },
        tidy: {
          $ref: "#/definitions/length",
          description: "Removes specks and pin-holes smaller than this across.",
          examples: ["0.5 mm"]
        },
        grow: {
          $ref: "#/definitions/length",
          description: "Thickens all round by this much; negative thins.",
          examples: ["0.5 mm"]
        },
        corners: { $ref: "#/definitions/corners" },
        width: {
          $ref: "#/definitions/length",
          description: "Finished width. Height follows in proportion unless it is given too.",
          examples: ["60 mm"]
        },
        height: {
          $ref: "#/definitions/length",
          description: "Finished height. Width follows in proportion unless it is given too.",
          examples: ["30 mm"]
        },
        fit: { $ref: "#/definitions/fit" },
        straps: {
          $ref: "#/definitions/length",
          description: "Joins the separate parts of the shape, such as the dot of an i to its stem, by straps of this width.",
          examples: ["1.5 mm"]
        },
        bridges: {
          title: "Bridges",
          description: "For a shape that is cut through a plate: the width of bridges left standing across its strokes, which hold the counters of letters.",
          anyOf: [
            { $ref: "#/definitions/length" },
            {
              type: "object",
              additionalProperties: false,
              required: ["width"],
              properties: {
                width: {
                  $ref: "#/definitions/length",
                  description: "Width of each bridge.",
                  examples: ["1.5 mm"]
                },
                at: {
                  enum: ["top-bottom", "left-right", "top", "bottom", "left", "right"],
                  default: "top-bottom",
                  description: "On which sides of each counter there is a bridge."
                }
              }
            }
          ],
          examples: ["1.5 mm"]
        },
        rotate: {
          type: "number",
          minimum: -360,
          maximum: 360,
          description: "Degrees, clockwise as in CSS.",
          examples: [5]
        },
        mirror: { enum: ["left-right", "up-down"], description: "Mirrors the shape." },
        place: { $ref: "#/definitions/place" },
        nudge: { $ref: "#/definitions/nudge" }
      }
    },
    stock: {
      title: "StockSpec",
      type: "object",
      additionalProperties: false,
      description: "The sheet the tag is cut from.",
      properties: {
        material: {
          type: "string",
          maxLength: 100,
          description: "Such as birch plywood, basswood, acrylic.",
          examples: ["birch plywood"]
        },
        thickness: {
          $ref: "#/definitions/length",
          description: "Measured thickness of the sheet.",
          examples: ["3 mm"]
        },
        kerf: { $ref: "#/definitions/kerf" },
        machine: {
          $ref: "#/definitions/machine",
          description: "How the machine works this stock: what is given here counts before a `machine` of a file under `use`, and after the spec's own.",
          examples: [{ cut: "12 mm/s", engrave: "250 mm/s", hatch: "0.1 mm", power: { cut: "80 %" } }]
        },
        machines: {
          type: "object",
          minProperties: 1,
          description: "What is different on a machine of `machines`, by its name. It counts where a spec names that machine.",
          propertyNames: { pattern: "^[A-Za-z][A-Za-z0-9_-]*$" },
          additionalProperties: { $ref: "#/definitions/stockOnMachine" }
        },
        min_x_height: {
          $ref: "#/definitions/length",
          description: "Smallest height of small letters that can be read when engraved on this stock; the engraving ladder finds it. Default: 1.2 mm (rule of thumb, no source).",
          examples: ["1.2 mm"]
        },
        caution: {
          type: "string",
          maxLength: 300,
          description: "What the bench should be reminded of with this stock; it stands on the job sheet under Safety.",
          examples: ["Peel the film off one side only, and watch for flare-ups."]
        },
        look: {
          title: "StockLookSpec",
          type: "object",
          additionalProperties: false,
          minProperties: 1,
          description: "How this stock looks in the preview and on proofs, where its name does not say it.",
          properties: {
            color: {
              title: "Colour",
              type: "string",
              pattern: "^#[0-9A-Fa-f]{6}$",
              description: 'Of its face, such as "#E9D2A6" (in quotes: # begins a comment).'
            },
            grain: {
              enum: ["left-right", "up-down", "none"],
              description: "Which way the grain runs."
            },
            engraving: {
              enum: ["dark", "light"],
              description: "Whether engraving comes out darker than the face, or lighter."
            }
          },
          examples: [{ color: "#E9D2A6", grain: "left-right", engraving: "dark" }]
        },
        measured_on: { $ref: "#/definitions/measuredOn" },
        density: {
          type: "number",
          exclusiveMinimum: 0,
          maximum: 25e3,
          description: "In kg/m\xB3, for the weight. Default: the published figure for the material, where there is one."
        },
        price: {
          title: "PriceSpec",
          type: "object",
          additionalProperties: false,
          required: ["amount", "per"],
          description: "What the stock costs, such as {amount: 4.20, per: sheet, currency: EUR}.",
          properties: {
            amount: { type: "number", minimum: 0, maximum: 1e6 },
            per: {
              enum: ["sheet", "m2", "ft2"],
              description: "A whole sheet (of the `size` in `sheet`), a square metre or a square foot."
            },
            currency: { type: "string", maxLength: 10, description: "Written after amounts, exactly as here." }
          }
        },
        measured: {
          title: "MeasuredSpec",
          type: "object",
          additionalProperties: false,
          required: ["breaks_at", "neck"],
          description: "A strip of this stock that you pulled until it broke. It counts before any published strength. Of solid wood, break one across the grain: that is the weaker way.",
          properties: {
            breaks_at: {
              title: "Force",
              type: ["number", "string"],
              description: "The pull at which it broke: 42 N, or what hung on it, such as 4.3 kg or 9 lb. A bare number is in N.",
              examples: ["42 N", "4.3 kg"]
            },
            neck: {
              $ref: "#/definitions/length",
              description: "How wide the strip was where it broke.",
              examples: ["2.0 mm"]
            }
          },
          examples: [{ breaks_at: "42 N", neck: "2.0 mm" }]
        },
        min_web: {
          $ref: "#/definitions/length",
          description: "Narrowest width of material that you rely on. Default: by the material, 1.5 mm for plywood, 2 mm for solid wood and acrylic; more for sheet under 2 mm.",
          examples: ["1.5 mm"]
        }
      },
      examples: [{ material: "birch plywood", thickness: "3 mm", kerf: "0.16 mm" }]
    },
    date: {
      title: "DateText",
      type: "string",
      pattern: "^\\d{4}-\\d{2}-\\d{2}$",
      description: "A day, as year-month-day."
    },
    power: {
      title: "Power",
      description: "As it is set on the machine by hand, such as 80 %.",
      type: ["string", "number"],
      maxLength: 40
    },
    rate: {
      title: "Rate",
      description: "A speed such as 12 mm/s, 900 mm/min or 0.5 in/s, or an acceleration such as 1500 mm/s2.",
      type: ["number", "string"]
    },
    passes: { title: "Passes", type: "integer", minimum: 1, maximum: 50, default: 1 },
    kerf: {
      title: "KerfSpec",
      default: 0,
      description: "Width the beam removes, measured on your machine with this stock; by operation where it differs.",
      examples: ["0.16 mm", { outer: "0.16 mm", inner: "0.14 mm", engrave: "0.1 mm" }],
      anyOf: [
        { $ref: "#/definitions/length" },
        {
          title: "KerfByOperation",
          type: "object",
          additionalProperties: false,
          minProperties: 1,
          properties: {
            outer: { $ref: "#/definitions/length", description: "Along outer cuts." },
            inner: {
              $ref: "#/definitions/length",
              description: "Along holes and openings. Default: as `outer`."
            },
            engrave: {
              $ref: "#/definitions/length",
              description: "Width of the engraved line: areas are drawn smaller by half of it all round, so that they come out at their size."
            }
          }
        }
      ]
    },
    measuredOn: {
      title: "MeasuredOnSpec",
      type: "object",
      additionalProperties: false,
      minProperties: 1,
      description: "When values of this stock were measured, as year-month-day. Entering a measurement writes it.",
      properties: {
        kerf: { $ref: "#/definitions/date" },
        min_web: { $ref: "#/definitions/date" },
        min_x_height: { $ref: "#/definitions/date" },
        hatch: { $ref: "#/definitions/date" },
        engrave: { $ref: "#/definitions/date" }
      },
      examples: [{ kerf: "2026-03-14" }]
    },
    stockOnMachine: {
      title: "StockOnMachineSpec",
      type: "object",
      additionalProperties: false,
      minProperties: 1,
      description: "What is different about a stock on one machine, by the keys of the stock.",
      properties: {
        kerf: { $ref: "#/definitions/kerf" },
        min_web: {
          $ref: "#/definitions/length",
          description: "Narrowest width of material that comes out whole on this machine.",
          examples: ["1.5 mm"]
        },
        min_x_height: {
          $ref: "#/definitions/length",
          description: "Smallest height of small letters that can be read when this machine engraves them.",
          examples: ["1.2 mm"]
        },
        machine: {
          $ref: "#/definitions/machine",
          description: "How this machine works the stock.",
          examples: [{ cut: "8 mm/s", engrave: "180 mm/s" }]
        },
        measured_on: { $ref: "#/definitions/measuredOn" }
      },
      examples: [{ kerf: "0.22 mm" }]
    },
    machine: {
      title: "MachineSpec",
      type: "object",
      additionalProperties: false,
      description: "How fast your machine works this stock, for the time estimate.",
      properties: {
        cut: { $ref: "#/definitions/rate", description: "Speed of cutting." },
        score: { $ref: "#/definitions/rate", description: "Speed of scoring." },
        engrave: { $ref: "#/definitions/rate", description: "Speed along the lines of an engraved area." },
        travel: {
          $ref: "#/definitions/rate",
          description: "Speed with the beam off. Default: 200 mm/s (rule of thumb, no source)."
        },
        acceleration: {
          $ref: "#/definitions/rate",
          description: "How fast the head gains and loses speed. Default: 1000 mm/s2 (rule of thumb, no source)."
        },
        corner_jump: {
          $ref: "#/definitions/rate",
          description: "The largest sudden change of velocity at a corner; the head slows until it turns no harder. Default: 5 mm/s (rule of thumb, no source)."
        },
        hatch: {
          $ref: "#/definitions/length",
          description: "Distance between the lines of an engraved area. Default: 0.1 mm (rule of thumb, no source)."
        },
        passes: {
          title: "PassesSpec",
          type: "object",
          additionalProperties: false,
          description: "How many times each operation goes over its paths. Default: once.",
          properties: {
            cut: { $ref: "#/definitions/passes" },
            score: { $ref: "#/definitions/passes" },
            engrave: { $ref: "#/definitions/passes" }
          }
        },
        power: {
          title: "PowerSpec",
          type: "object",
          additionalProperties: false,
          description: "What you set by hand for each operation. It is printed on the job sheet and reckoned with nowhere.",
          properties: {
            cut: { $ref: "#/definitions/power" },
            score: { $ref: "#/definitions/power" },
            engrave: { $ref: "#/definitions/power" }
          },
          examples: [{ cut: "80 %", engrave: "30 %" }]
        }
      }
    },
    lineStyle: {
      title: "LineStyleSpec",
      type: "object",
      additionalProperties: false,
      minProperties: 1,
      properties: {
        color: {
          title: "Colour",
          type: "string",
          pattern: "^#[0-9A-Fa-f]{6}$",
          description: `As your machine's driver expects it, such as "#0072B2" (in quotes: # begins a comment).`
        },
        line_width: {
          $ref: "#/definitions/length",
          default: "0.1 mm",
          description: "How wide lines are drawn; the machine follows their middle."
        },
        layer: {
          type: "string",
          minLength: 1,
          maxLength: 60,
          pattern: '^[^ <>/\\\\":;?*|=`,\\u0000-\\u001f]([^<>/\\\\":;?*|=`,\\u0000-\\u001f]*[^ <>/\\\\":;?*|=`,\\u0000-\\u001f])?$',
          description: "Name of the layer in DXF files and of the group in SVG files."
        }
      }
    },
    output: {
      title: "OutputSpec",
      type: "object",
      additionalProperties: false,
      description: "How files for the machine and the customer are written.",
      properties: {
        compensate: {
          type: "boolean",
          default: true,
          description: "false: cuts run on the drawn line and the part comes out half a kerf smaller all round; the checks then judge what is left."
        },
        tabs: {
          description: "Small bridges left uncut to hold each part in the sheet: how many, or {count, width}.",
          anyOf: [
            { type: "integer", minimum: 0, maximum: 20 },
            {
              title: "TabsSpec",
              type: "object",
              additionalProperties: false,
              required: ["count"],
              properties: {
                count: { type: "integer", minimum: 0, maximum: 20 },
                width: {
                  $ref: "#/definitions/length",
                  description: "Width of each. Default: 0.5 mm (rule of thumb, no source)."
                }
              }
            }
          ]
        },
        picture_width: {
          type: "integer",
          minimum: 100,
          maximum: 8e3,
          default: 1600,
          description: "Width of the proof picture (PNG) in pixels."
        },
        engrave_layers: {
          enum: ["one", "each"],
          default: "one",
          description: "one: all that is engraved is on one layer. each: every entry of a piece's `engrave` is on a layer of its own, named after its shape and in a colour of its own, so that each can be given its own power and speed."
        },
        engrave: { $ref: "#/definitions/lineStyle", description: "How engraved areas are drawn." },
        score: { $ref: "#/definitions/lineStyle", description: "How scored lines are drawn." },
        cut_inner: {
          $ref: "#/definitions/lineStyle",
          description: "How cuts that come first are drawn: holes and openings."
        },
        cut_outer: { $ref: "#/definitions/lineStyle", description: "How the cuts that free the parts are drawn." }
      }
    },
    sheet: {
      title: "SheetSpec",
      type: "object",
      additionalProperties: false,
      required: ["size"],
      description: "The sheets you have: a piece that does not fit one is an error, and tags are laid out on them.",
      properties: {
        size: {
          $ref: "#/definitions/size",
          description: "[width, height] of a sheet.",
          examples: [["600 mm", "400 mm"]]
        },
        margin: {
          $ref: "#/definitions/length",
          default: 0,
          description: "Left free along every edge, for clamps and warp.",
          examples: ["5 mm"]
        },
        gap: {
          $ref: "#/definitions/length",
          default: "2 mm",
          description: "Material left between two pieces.",
          examples: ["3 mm"]
        },
        turn: {
          enum: ["never", "half", "quarter"],
          default: "half",
          description: "How pieces may be turned to pack closer. half: upside down, so that the grain keeps its direction. quarter: on their side as well. never: not at all."
        },
        copies: {
          type: "integer",
          minimum: 1,
          maximum: 200,
          default: 1,
          description: "How many of each tag are laid out.",
          examples: [12]
        }
      }
    },
    batch: {
      title: "BatchSpec",
      description: "The same tag for a list: names, or rows of cells by column, written here or in a CSV file beside the spec. In a text or a title, {column} is replaced by the row's cell; in a list of names the column is {name}.",
      anyOf: [{ $ref: "#/definitions/tableFile" }, { $ref: "#/definitions/rows" }]
    },
    tableFile: {
      title: "TableFile",
      description: "The path of a CSV file beside the spec; its first line names the columns.",
      type: "string",
      maxLength: 500
    },
    rows: {
      title: "Rows",
      type: "array",
      minItems: 1,
      maxItems: 500,
      items: { anyOf: [{ $ref: "#/definitions/rowName" }, { $ref: "#/definitions/row" }] }
    },
    rowName: { title: "RowName", description: "Replaces {name}.", type: ["string", "number"] },
    row: {
      title: "Row",
      description: "The cells of a row, each by its column.",
      type: "object",
      minProperties: 1,
      additionalProperties: { type: ["string", "number"], description: "Replaces {column} in this row." }
    },
    tie: {
      title: "TieSpec",
      type: "object",
      additionalProperties: false,
      minProperties: 1,
      description: "What the tag hangs on: {twine: diameter} or {ribbon: width}.",
      properties: {
        twine: { $ref: "#/definitions/length", description: "Diameter of the twine.", examples: ["2 mm"] },
        ribbon: { $ref: "#/definitions/length", description: "Width of the ribbon.", examples: ["10 mm"] },
        opening: {
          $ref: "#/definitions/length",
          description: "Smallest round hole that it goes through doubled; the hole comb finds it. Default: by a rule of thumb.",
          examples: ["3.5 mm"]
        },
        measured_on: { $ref: "#/definitions/date", description: "When `opening` was measured." }
      },
      examples: [{ twine: "2 mm" }]
    },
    hangerPlace: {
      title: "HangerPlace",
      description: "A side, `auto` (the strongest clear place), an angle in degrees (0 is the top, clockwise), or a point from the centre such as {right: 10 mm, up: 5 mm}.",
      anyOf: [
        { enum: ["auto", "top", "bottom", "left", "right", "top-left", "top-right", "bottom-left", "bottom-right"] },
        { type: "number", minimum: -360, maximum: 360 },
        { $ref: "#/definitions/nudge" }
      ]
    },
    hanger: {
      title: "HangerSpec",
      type: "object",
      additionalProperties: false,
      minProperties: 1,
      maxProperties: 1,
      description: "What the tie goes through: a ring (a lug outside the body), a hole (inside it) or a slot (for ribbon).",
      properties: {
        ring: {
          title: "RingSpec",
          type: "object",
          additionalProperties: false,
          properties: {
            on: {
              $ref: "#/definitions/shapeName",
              description: "Name of the shape it is joined to, or of a member of a stack in the body; default: the whole body."
            },
            at: { $ref: "#/definitions/hangerPlace", default: "auto" },
            diameter: {
              $ref: "#/definitions/length",
              description: "Diameter of the hole. Default: what the tie needs.",
              examples: ["4 mm"]
            },
            wall: {
              $ref: "#/definitions/length",
              description: "Material around the hole. Default: min_web if written, else the thickness of the sheet up to 3 mm; at least 1.78 mm.",
              examples: ["2 mm"]
            },
            sink: {
              $ref: "#/definitions/length",
              default: 0,
              description: "How much deeper the ring is set into the body.",
              examples: ["0.5 mm"]
            },
            nudge: { $ref: "#/definitions/nudge" }
          },
          description: "A lug outside the body with a round hole. With `at: auto` it goes where it is joined best and hangs straightest.",
          examples: [{ at: "top" }]
        },
        hole: {
          title: "HoleSpec",
          type: "object",
          additionalProperties: false,
          properties: {
            on: {
              $ref: "#/definitions/shapeName",
              description: "Name of the shape whose side `at` means, or of a member of a stack in the body; default: the whole body."
            },
            at: { $ref: "#/definitions/hangerPlace", default: "top" },
            diameter: {
              $ref: "#/definitions/length",
              description: "Diameter of the hole. Default: what the tie needs.",
              examples: ["4 mm"]
            },
            inset: {
              $ref: "#/definitions/length",
              description: "Material between the hole and the edge. Default: twice min_web if written, else twice the thickness of the sheet, up to 6 mm.",
              examples: ["3 mm"]
            },
            nudge: { $ref: "#/definitions/nudge" }
          },
          description: "A round hole inside the body.",
          examples: [{ at: "top" }]
        },
        slot: {
          title: "SlotSpec",
          type: "object",
          additionalProperties: false,
          properties: {
            on: {
              $ref: "#/definitions/shapeName",
              description: "Name of the shape whose side `at` means, or of a member of a stack in the body; default: the whole body."
            },
            at: { $ref: "#/definitions/hangerPlace", default: "top" },
            length: {
              $ref: "#/definitions/length",
              description: "Long side. Default: the ribbon's width and 1 mm.",
              examples: ["12 mm"]
            },
            width: {
              $ref: "#/definitions/length",
              description: "Short side. Default: 3 mm.",
              examples: ["3 mm"]
            },
            inset: {
              $ref: "#/definitions/length",
              description: "Material between the slot and the edge. Default: twice min_web if written, else twice the thickness of the sheet, up to 6 mm.",
              examples: ["3 mm"]
            },
            nudge: { $ref: "#/definitions/nudge" }
          },
          description: "A slot inside the body, for ribbon, set across the pull.",
          examples: [{ at: "top" }]
        }
      },
      examples: [{ ring: { at: "auto" } }]
    },
    hangerOrName: {
      title: "HangerOrName",
      description: "A hanger, or the name of one under `hangers`.",
      anyOf: [{ $ref: "#/definitions/hangerName" }, { $ref: "#/definitions/hanger" }]
    },
    piece: {
      title: "PieceSpec",
      type: "object",
      additionalProperties: false,
      required: ["body"],
      description: "One thing that is cut free of the sheet.",
      properties: {
        title: {
          type: "string",
          maxLength: 200,
          description: "What the piece is called. Default: its key.",
          examples: ["Backing"]
        },
        body: { $ref: "#/definitions/shapeList", description: "Shapes united to make the piece." },
        cut: { $ref: "#/definitions/shapeList", description: "Openings cut through the piece." },
        score: { $ref: "#/definitions/shapeList", description: "Outlines the beam draws on the surface." },
        engrave: { $ref: "#/definitions/shapeList", description: "Areas the beam darkens or hollows." },
        hanger: {
          description: "What the tie goes through: a hanger, the name of one, or a list of two between which the piece hangs level.",
          anyOf: [
            { $ref: "#/definitions/hangerOrName" },
            { type: "array", minItems: 1, maxItems: 2, items: { $ref: "#/definitions/hangerOrName" } }
          ]
        },
        width: {
          $ref: "#/definitions/length",
          description: "Finished width of the whole piece, its ring included. Everything is scaled but the hole and its wall."
        },
        height: {
          $ref: "#/definitions/length",
          description: "Finished height of the whole piece, its ring included; give this or the width."
        },
        parts: {
          enum: ["one", "many"],
          default: "one",
          description: "many: the piece is meant to have separate parts, such as letters glued on one by one."
        },
        glue_to: { $ref: "#/definitions/pieceName", description: "The piece this one is glued on." }
      }
    }
  }
};

// src/spec/known-keys.ts
var knownKeys = new Set(keysIn(tag_schema_default));
function keysIn(node) {
  if (typeof node !== "object" || node === null) return [];
  return Object.entries(node).flatMap(([name, inner]) => [
    ...name === "properties" && typeof inner === "object" && inner !== null ? Object.keys(inner) : [],
    ...name === "examples" ? [] : keysIn(inner)
  ]);
}

// src/spec/slips/repair.ts
function insertion(at2, text) {
  return { range: { start: at2, end: at2 }, text };
}
function replacement(start, end, text) {
  return { range: { start, end }, text };
}
function sign(at2) {
  return { start: at2, end: at2 + 1 };
}
function quoted2(text) {
  return `\u201C${clip(text)}\u201D`;
}
function inQuotes(text) {
  return /["\\]/.test(text) && !text.includes("'") ? `'${text}'` : JSON.stringify(text);
}

// src/spec/slips/quotes.ts
function quoteRepairs(text, line) {
  return [
    ...unclosed(text, line),
    ...splitKeys(text, line),
    ...valuesOf(text, line).flatMap((value) => unquoted(text, value))
  ];
}
function valuesOf(text, line) {
  const whole2 = text.slice(line.start, line.end);
  const starts = [...whole2.matchAll(/(^\s*(?:-\s+)?|[{,[]\s*)([A-Za-z][\w-]*):\s+(?=\S)/g)];
  return starts.flatMap(({ index, 0: lead, 1: before = "", 2: key = "" }, at2) => {
    const start = index + lead.length;
    const next = starts.slice(at2 + 1).find(({ 1: mark = "", 2: other = "" }) => mark.includes(",") && knownKeys.has(other));
    const flow = /[{,[]/.test(before);
    const ends = flow && next ? [next.index] : [];
    if (!next || !flow) {
      const content = whole2.trimEnd();
      ends.push(content.length);
      for (let closers = content.length; flow && /[}\]]/.test(content[closers - 1] ?? ""); closers--)
        ends.push(closers - 1);
      if (line.contentEnd - line.start > start) ends.push(line.contentEnd - line.start);
    }
    return [...new Set(ends)].map((end) => {
      const value = whole2.slice(start, end).trimEnd();
      return { start: line.start + start, end: line.start + start + value.length, key };
    });
  });
}
function unquoted(text, { start, end, key }) {
  const value = text.slice(start, end);
  if (value === "" || /^(["'])(?:(?!\1).)*\1$/.test(value)) return [];
  const inner = bare(value);
  return [
    {
      slip: { start, end },
      message: reason(value, inner),
      title: "Put in quotes",
      edits: [replacement(start, end, inQuotes(inner))],
      rarity: (isLettering2(key) ? 2 : 4) + (value.startsWith("#") || /[{}]/.test(value) ? 0 : 1)
    }
  ];
}
function isLettering2(key) {
  return ["text", "title", "name", "material"].includes(key);
}
function bare(value) {
  const whole2 = /^(["'])(.*)\1$/.exec(value);
  return whole2 ? whole2[2].replace(/\\(?=")/g, "") : value;
}
function reason(value, inner) {
  const shown3 = quoted2(inQuotes(inner)).slice(1, -1);
  if (value.startsWith("#")) return `\u201C#\u201D starts a comment, so this text is empty. Put it in quotes: ${shown3}.`;
  if (/^["']/.test(value)) {
    return inner === value ? `A text that starts with a quote needs quotes around all of it: ${shown3}.` : `The quote inside this text ends it too early. Put the other kind around it: ${shown3}.`;
  }
  if (/[{}[\]]/.test(value)) return `A text with brackets in it needs quotes: ${shown3}.`;
  if (/: |:$/.test(value)) return `A text with a colon in it needs quotes: ${shown3}.`;
  if (/^[^\w\s]/.test(value)) return `A text that starts with \u201C${Array.from(value)[0]}\u201D needs quotes: ${shown3}.`;
  return `This text needs quotes: ${shown3}.`;
}
function unclosed(text, line) {
  const at2 = line.signs.quote;
  if (at2 === void 0) return [];
  const mark = text[at2];
  const rest = text.slice(at2, line.end).trimEnd();
  const ends = [];
  const next = /\s*,\s*([A-Za-z][\w-]*):\s/g;
  for (const { index, 1: key = "" } of rest.matchAll(next)) if (knownKeys.has(key)) ends.push(index);
  const comment = rest.search(/\s+#/);
  if (comment > 0) ends.push(comment);
  ends.push(rest.length);
  for (let end = rest.length; end > 1 && /[}\]]/.test(rest[end - 1]); end--) ends.push(end - 1);
  for (const { index } of rest.matchAll(/\s*,/g)) ends.push(index);
  const other = /["']$/.exec(rest)?.[0];
  return [
    ...other !== void 0 && other !== mark && rest.length > 1 ? [
      {
        slip: sign(at2 + rest.length - 1),
        message: `A text that starts with ${mark} must end with ${mark}, not with ${other}.`,
        title: `Change to ${mark}`,
        edits: [replacement(at2 + rest.length - 1, at2 + rest.length, mark)],
        rarity: 0.5
      }
    ] : [],
    ...[...new Set(ends)].map((end) => ({
      slip: sign(at2),
      message: `This quote is never closed: put ${mark} after ${quoted2(/[^\s,]*$/.exec(rest.slice(1, end))[0])}.`,
      title: "Close the quote",
      edits: [insertion(at2 + end, mark)],
      rarity: 1
    })),
    {
      slip: sign(at2),
      message: "This quote is never closed.",
      title: "Remove the quote",
      edits: [replacement(at2, at2 + 1, "")],
      rarity: 4
    }
  ];
}
function splitKeys(text, line) {
  const found = /^([A-Za-z][\w-]*:\s.*?)(\s*[,;]\s*|\s+)([A-Za-z][\w-]*):\s/.exec(line.content);
  if (!found || !knownKeys.has(found[3]) || /[{[]/.test(found[1])) return [];
  const at2 = line.start + line.indent + found[1].length;
  const indent = text.slice(line.start, line.start + line.indent);
  const end = at2 + found[2].length;
  return [
    {
      slip: { start: end, end: end + found[3].length },
      message: `${quoted2(found[3])} is a separate key: put it on its own line.`,
      title: `Put \u201C${found[3]}\u201D on its own line`,
      edits: [replacement(at2, end, `
${indent}`)],
      rarity: 2
    }
  ];
}
function backslashRepairs(text, line) {
  const whole2 = text.slice(line.start, line.end);
  return [...whole2.matchAll(/"(?:[^"\\]|\\.)*"/g)].flatMap(({ index, 0: found }) => {
    const inner = found.slice(1, -1);
    if (!/\\[^"\\/0abefnrtvNLPxuU_ ]/.test(inner)) return [];
    const start = line.start + index;
    const single = inner.includes("'") ? `"${inner.replaceAll("\\", "\\\\")}"` : `'${inner}'`;
    return [
      {
        slip: { start, end: start + found.length },
        message: `In double quotes, a backslash starts an escape. Single quotes keep it as it is: ${quoted2(single).slice(1, -1)}.`,
        title: inner.includes("'") ? "Double the backslashes" : "Put in single quotes",
        edits: [replacement(start, start + found.length, single)],
        rarity: 0
      }
    ];
  });
}

// src/spec/slips/indents.ts
var usualStep = 2;
var mostMoved = 200;
function indentRepairs(lines, line) {
  if (line.content === "") return [];
  const rest = lines.slice(line.number + 1);
  const groups2 = [
    [line],
    [line, ...whileFilled(rest, ({ indent }) => indent > line.indent)],
    [line, ...whileFilled(rest, ({ indent }) => indent >= line.indent)]
  ];
  const sizes2 = /* @__PURE__ */ new Set();
  const distinct2 = groups2.filter(({ length }) => length <= mostMoved && !sizes2.has(length) && sizes2.add(length));
  return distinct2.flatMap(
    (group) => targetsFor(lines, line).map((target) => moved(lines, group, target - line.indent, target))
  );
}
function whileFilled(lines, fits2) {
  const filled2 = lines.filter(({ content }) => content !== "");
  const end = filled2.findIndex((line) => !fits2(line));
  return end < 0 ? filled2 : filled2.slice(0, end);
}
function targetsFor(lines, { number, indent }) {
  const above = lines.slice(0, number).filter(({ content }) => content !== "");
  const below3 = lines.slice(number + 1).find(({ content }) => content !== "");
  const targets = /* @__PURE__ */ new Set([0]);
  let least = Infinity;
  for (const line of [...above].reverse()) {
    if (line.indent >= least) continue;
    least = line.indent;
    targets.add(line.indent);
    if (/:$/.test(line.content)) targets.add(line.indent + usualStep);
  }
  if (below3) targets.add(below3.indent);
  targets.delete(indent);
  return [...targets].sort((a, b) => Math.abs(a - indent) - Math.abs(b - indent) || b - a);
}
function moved(lines, group, by, target) {
  const [first] = group;
  const parent = lines.slice(0, first.number).findLast(({ content, indent }) => content !== "" && indent < target);
  const key = /^(?:-\s+)?([^:]*)/.exec(first.content)[1].trim();
  const start = first.start + first.indent;
  const spaces2 = `${Math.abs(by)} space${Math.abs(by) === 1 ? "" : "s"}`;
  const under = by > 0 && parent ? quoted2(/^[^:]*/.exec(parent.content)[0]) : void 0;
  return {
    slip: { start, end: start + Math.max(1, key.length) },
    message: by > 0 ? `${quoted2(key)} is ${spaces2} too far left${under ? `: it belongs under ${under}` : ""}.` : `${quoted2(key)} is ${spaces2} too deep.`,
    title: under ? `Indent under ${under}` : `Move it ${spaces2} to the ${by > 0 ? "right" : "left"}`,
    edits: group.map((each) => {
      const at2 = each.start;
      return replacement(at2, at2 + each.indent, " ".repeat(Math.max(0, each.indent + by)));
    }),
    rarity: 2 + (Math.abs(by) > usualStep ? 1 : 0) + (group.length - 1) / 20
  };
}
function blankRepairs(text, lines) {
  const odd = lines.filter(({ start, indent }) => /[^ ]/.test(text.slice(start, start + indent)));
  const [first] = odd;
  if (!first) return [];
  const tab = text.slice(first.start, first.start + first.indent).includes("	");
  const widths = tab ? [usualStep, 4, 8] : [1];
  return widths.map((width) => ({
    slip: { start: first.start, end: first.start + first.indent },
    message: tab ? "Lines are indented with spaces here, not with tabs." : "This line is indented with a special space, as copied from a web page.",
    title: "Indent with spaces",
    edits: odd.map(({ start, indent }) => {
      const blanks = text.slice(start, start + indent);
      return replacement(start, start + indent, blanks.replaceAll("	", " ".repeat(width)).replace(/[^ ]/g, " "));
    }),
    rarity: 0
  }));
}

// src/spec/slips/lines.ts
var closing = { "{": "}", "[": "]" };
var longestLine = 500;
var mostOpen = 12;
function isByHand({ start, end, signs }) {
  return end - start <= longestLine && signs.open.length <= mostOpen;
}
function linesOf(text) {
  const lines = [];
  let start = 0;
  for (const whole2 of text.split("\n")) {
    const line = whole2.replace(/\r$/, "");
    const indent = /^[\s\u00a0]*/.exec(line)[0].length;
    const { end, signs } = scanned(line, start);
    const content = line.slice(indent, Math.max(indent, end)).trimEnd();
    lines.push({
      number: lines.length,
      start,
      end: start + line.length,
      indent,
      contentEnd: start + indent + content.length,
      content,
      signs
    });
    start += whole2.length + 1;
  }
  return lines;
}
function scanned(line, start) {
  const open3 = [];
  const stray2 = [];
  const wrong = [];
  const commas2 = [];
  let begins = true;
  for (let index = 0; index < line.length; index++) {
    const sign2 = line[index];
    const at2 = start + index;
    if (sign2 === "#" && (index === 0 || /\s/.test(line[index - 1])))
      return { end: index, signs: { open: open3, stray: stray2, wrong, commas: commas2 } };
    if (/\s/.test(sign2)) continue;
    if (begins && (sign2 === '"' || sign2 === "'")) {
      const close2 = closeOf(line, index);
      if (close2 === void 0) return { end: line.length, signs: { open: open3, stray: stray2, wrong, commas: commas2, quote: at2 } };
      index = close2;
      begins = false;
    } else if (sign2 in closing && (begins || open3.length > 0)) {
      open3.push({ at: at2, sign: sign2 });
      begins = true;
    } else if (sign2 === "}" || sign2 === "]") {
      const opener = open3.at(-1);
      if (!opener) stray2.push({ at: at2, sign: sign2 });
      else {
        open3.pop();
        if (closing[opener.sign] !== sign2) wrong.push({ at: at2, sign: sign2, opener });
      }
      begins = false;
    } else {
      if (sign2 === "," && open3.length > 0) commas2.push(at2);
      const parts = (sign2 === ":" || sign2 === "-") && /\s|$/.test(line[index + 1] ?? "");
      begins = sign2 === "," && open3.length > 0 || sign2 === ":" && parts || sign2 === "-" && begins && parts;
    }
  }
  return { end: line.length, signs: { open: open3, stray: stray2, wrong, commas: commas2 } };
}
function closeOf(line, from) {
  const pattern4 = line[from] === '"' ? /"(?:[^"\\]|\\.)*"/y : /'(?:[^']|'')*'/y;
  pattern4.lastIndex = from;
  const match = pattern4.exec(line);
  return match ? from + match[0].length - 1 : void 0;
}

// src/spec/slips/brackets.ts
function bracketRepairs(text, line, until) {
  return [
    ...unclosed2(text, line, until),
    ...mismatched(text, line),
    ...stray(text, line),
    ...round(text, line),
    ...opened(text, line),
    ...commas(text, line)
  ];
}
function unclosed2(text, line, until) {
  const { open: open3, commas: parts } = line.signs;
  if (open3.length === 0) return [];
  const inner = open3.at(-1);
  const all = [...open3].reverse().map((each) => closing[each.sign]).join("");
  const ends = [line.contentEnd, ...until.number > line.number ? [until.contentEnd] : []];
  const repairs = ends.map((end) => closed(all, open3.length > 1 ? open3[0] : inner, end, text));
  for (const comma of [...parts].reverse()) {
    if (comma > inner.at && open3.length > 0) repairs.push(closed(closing[inner.sign], inner, comma, text));
  }
  for (const each of open3) {
    repairs.push(removed(each, `This \u201C${each.sign}\u201D is never closed.`));
  }
  return repairs;
}
function closed(signs, opener, at2, text) {
  const trail = /,\s*$/.exec(text.slice(opener.at, at2))?.[0].length ?? 0;
  return {
    slip: sign(opener.at),
    message: `This \u201C${opener.sign}\u201D is never closed: \u201C${signs}\u201D is missing${signs.length > 1 ? "" : ` ${where(text, at2)}`}.`,
    title: `Add \u201C${signs}\u201D`,
    edits: [trail > 0 ? replacement(at2 - trail, at2, signs) : insertion(at2, signs)],
    rarity: 1
  };
}
function where(text, at2) {
  const before = /[^\s,{}[\]]+$/.exec(text.slice(0, at2))?.[0];
  return before === void 0 ? "at the end" : `after ${quoted2(before)}`;
}
function removed({ at: at2, sign: mark }, message) {
  return { slip: sign(at2), message, title: `Remove \u201C${mark}\u201D`, edits: [replacement(at2, at2 + 1, "")], rarity: 2.5 };
}
function mismatched(text, { signs: { wrong, commas: parts } }) {
  return wrong.flatMap(({ at: at2, sign: mark, opener }) => {
    const wanted = closing[opener.sign];
    return [
      ...[at2, ...parts.filter((comma) => comma > opener.at && comma < at2)].map(
        (place) => closed(wanted, opener, place, text)
      ),
      {
        slip: sign(at2),
        message: `\u201C${opener.sign}\u201D is closed with \u201C${wanted}\u201D, not with \u201C${mark}\u201D.`,
        title: `Change to \u201C${wanted}\u201D`,
        edits: [replacement(at2, at2 + 1, wanted)],
        rarity: 1
      },
      {
        slip: sign(opener.at),
        message: `This should be \u201C${mark === "}" ? "{" : "["}\u201D: it is closed with \u201C${mark}\u201D.`,
        title: `Change to \u201C${mark === "}" ? "{" : "["}\u201D`,
        edits: [replacement(opener.at, opener.at + 1, mark === "}" ? "{" : "[")],
        rarity: 2
      }
    ];
  });
}
function stray(text, line) {
  return [...line.signs.stray, ...line.signs.wrong].flatMap((each) => {
    const opener = each.sign === "}" ? "{" : "[";
    const starts = [...text.slice(line.start, each.at).matchAll(/[A-Za-z][\w-]*:\s+/g)].map(
      ({ index, 0: match }) => line.start + index + match.length
    );
    return [
      ...starts.reverse().map((at2) => ({
        slip: sign(each.at),
        message: `This \u201C${each.sign}\u201D closes nothing: \u201C${opener}\u201D is missing before ${quoted2(/[^\s,]*/.exec(text.slice(at2))[0])}.`,
        title: `Add \u201C${opener}\u201D`,
        edits: [insertion(at2, opener)],
        rarity: 1
      })),
      removed(each, `This \u201C${each.sign}\u201D closes nothing.`)
    ];
  });
}
function round(text, line) {
  const within2 = text.slice(line.start, line.contentEnd);
  return [...within2.matchAll(/[([]([^()[\]]*)[)\]]/g)].flatMap(({ index, 0: found, 1: inner = "" }) => {
    if (!/[()]/.test(found)) return [];
    const at2 = line.start + index;
    return [
      {
        slip: { start: at2, end: at2 + found.length },
        message: `A list goes in square brackets: ${quoted2(`[${inner}]`)}.`,
        title: "Change to square brackets",
        edits: [replacement(at2, at2 + found.length, `[${inner}]`)],
        rarity: 1
      }
    ];
  });
}
function opened(text, line) {
  const found = /^(?:-\s+)?[A-Za-z][\w-]*:\s+(?=([A-Za-z][\w-]*):\s|-\s)/.exec(line.content);
  if (!found) return [];
  const at2 = line.start + line.indent + found[0].length;
  const value = text.slice(at2, line.contentEnd);
  if (found[1] === void 0) {
    const item = value.replace(/^-\s+/, "");
    return [
      {
        slip: { start: at2, end: line.contentEnd },
        message: `A list on one line goes in square brackets: ${quoted2(`[${item}]`)}.`,
        title: "Put in brackets",
        edits: [replacement(at2, line.contentEnd, `[${item}]`)],
        rarity: 1
      }
    ];
  }
  if (!knownKeys.has(found[1])) return [];
  return [
    {
      slip: { start: at2, end: line.contentEnd },
      message: `Keys on the line of their group go in braces: ${quoted2(`{${value}}`)}.`,
      title: "Put in braces",
      edits: [insertion(at2, "{"), insertion(line.contentEnd, "}")],
      rarity: 2
    }
  ];
}
function commas(text, line) {
  const within2 = text.slice(line.start, line.contentEnd);
  const repairs = [];
  for (const match of within2.matchAll(/([^\s,;{[])(\s*;\s*|\s+)(?=([A-Za-z][\w-]*):(?:\s|$))/g)) {
    const [, , gap = "", key = ""] = match;
    const at2 = line.start + match.index + 1;
    const before = within2.slice(0, match.index + 1);
    if (!knownKeys.has(key) || before.endsWith(":") || !/[{[]/.test(before)) continue;
    const semicolon = gap.includes(";");
    repairs.push({
      slip: { start: at2 + gap.length, end: at2 + gap.length + key.length },
      message: semicolon ? `Between brackets, keys are separated by commas, not by \u201C;\u201D.` : `A comma is missing before ${quoted2(key)}.`,
      title: semicolon ? "Change to a comma" : "Add a comma",
      edits: [replacement(at2, at2 + gap.length, ", ")],
      rarity: 1
    });
  }
  for (const { index, 0: found } of within2.matchAll(/,(?:\s*,)+/g)) {
    const at2 = line.start + index;
    repairs.push({
      slip: { start: at2, end: at2 + found.length },
      message: "There is one comma too many.",
      title: "Remove the comma",
      edits: [replacement(at2 + 1, at2 + found.length, "")],
      rarity: 1
    });
  }
  return repairs;
}

// src/spec/slips/colons.ts
function colonRepairs(text, line, next) {
  return [...spaces(line), ...others(line), ...wide(text, line), ...betweenBrackets(line), ...missing(line, next)];
}
function spaces({ content, start, indent }) {
  return [...content.matchAll(/(^|[{[,]\s*|^-\s+)([A-Za-z][\w-]*):(?=[^\s:/\\])/g)].flatMap((match) => {
    const key = match[2];
    const at2 = start + indent + match.index + match[1].length + key.length;
    return [
      {
        slip: { start: at2 - key.length, end: at2 + 1 },
        message: `A space is missing after \u201C${key}:\u201D.`,
        title: "Add a space",
        edits: [insertion(at2 + 1, " ")],
        rarity: knownKeys.has(key) ? 1 : 2
      }
    ];
  });
}
function betweenBrackets({ content, start, indent }) {
  return [...content.matchAll(/([{,]\s*)([A-Za-z][\w-]*)(\s*[;=])?(?=\s+[^\s:,}\]][^:,}\]]*[,}])/g)].flatMap(
    (match) => {
      const key = match[2];
      const at2 = start + indent + match.index + match[1].length;
      if (!knownKeys.has(key)) return [];
      const mark = match[3];
      if (mark !== void 0) {
        const end = at2 + key.length + mark.length;
        return [
          {
            slip: { start: at2, end },
            message: `A colon stands between a key and its value, not ${quoted2(mark.trim())}.`,
            title: `Change \u201C${mark.trim()}\u201D to a colon`,
            edits: [replacement(at2 + key.length, end, ":")],
            rarity: 1
          }
        ];
      }
      return [
        {
          slip: { start: at2, end: at2 + key.length },
          message: `A colon is missing after \u201C${key}\u201D.`,
          title: "Add a colon",
          edits: [insertion(at2 + key.length, ":")],
          rarity: 1
        }
      ];
    }
  );
}
function others({ content, start, indent }) {
  const found = /^((?:-\s+)?)([A-Za-z][\w-]*)(\s*[=;]\s*|\s+:\s*(?=\S))/.exec(content);
  if (!found || /^\s+:\s/.test(found[3]) && !knownKeys.has(found[2])) return [];
  const [, dash = "", key = "", mark = ""] = found;
  const at2 = start + indent + dash.length + key.length;
  const rest = content.slice(found[0].length);
  return [
    {
      slip: { start: at2 - key.length, end: at2 + mark.length },
      message: `A colon stands between a key and its value, not ${quoted2(mark.trim())}: \u201C${key}: ${rest.slice(0, 30)}\u201D.`.replace(
        ": \u201D",
        ":\u201D"
      ),
      title: `Change \u201C${mark.trim()}\u201D to a colon`,
      edits: [replacement(at2, at2 + mark.length, rest === "" ? ":" : ": ")],
      rarity: 1
    }
  ];
}
function wide(text, { start, end }) {
  const index = text.slice(start, end).search(/[：︰]/);
  if (index < 0) return [];
  const at2 = start + index;
  return [
    {
      slip: sign(at2),
      message: "This is the wide colon of another keyboard; a key needs the plain one, then a space.",
      title: "Change to a plain colon",
      edits: [replacement(at2, at2 + 1, /\s/.test(text[at2 + 1] ?? " ") ? ":" : ": ")],
      rarity: 0
    }
  ];
}
function missing({ content, start, indent }, next) {
  const found = /^((?:-\s+)?)([A-Za-z][\w-]*)(\s+[^\s:].*)?$/.exec(content);
  if (!found || /[\w)\]}'"]:(\s|$)/.test(found[3] ?? "")) return [];
  const [, dash = "", key = "", value] = found;
  const opens = value === void 0 && next !== void 0 && next.indent > indent;
  if (!opens && !knownKeys.has(key)) return [];
  const at2 = start + indent + dash.length + key.length;
  return [
    {
      slip: { start: at2 - key.length, end: at2 },
      message: `A colon is missing after ${quoted2(key)}.`,
      title: "Add a colon",
      edits: [insertion(at2, ":")],
      rarity: 1
    }
  ];
}

// src/spec/slips/dashes.ts
function dashRepairs(lines, line) {
  const above = lines.slice(0, line.number).findLast(({ content }) => content !== "");
  const start = line.start + line.indent;
  const slip = { start, end: line.contentEnd };
  if (/^-[^\s-]/.test(line.content)) {
    return [
      {
        slip,
        message: "A space is missing after the dash.",
        title: "Add a space",
        edits: [insertion(start + 1, " ")],
        rarity: 1
      }
    ];
  }
  if (line.content === "---") {
    return [
      {
        slip,
        message: "Three dashes start a second document; a tag spec has only one.",
        title: "Remove the dashes",
        edits: [replacement(start, line.contentEnd, "")],
        rarity: 0
      }
    ];
  }
  const dashed = /^-\s+(?=[A-Za-z][\w-]*:)/.exec(line.content);
  if (dashed && above && !above.content.startsWith("-")) {
    return [
      {
        slip: { start, end: start + 1 },
        message: "A key in a group has no dash.",
        title: "Remove the dash",
        edits: [replacement(line.start, start + dashed[0].length, " ".repeat(above.indent))],
        rarity: 1.5
      }
    ];
  }
  if (!above || !/^-\s/.test(above.content) || line.content === "" || /^-(\s|$)/.test(line.content)) return [];
  return [
    {
      slip,
      message: `Each entry of this list starts with a dash: ${quoted2(`- ${line.content}`)}.`,
      title: "Add a dash",
      edits: [insertion(start, "- ")],
      rarity: 1
    }
  ];
}
function dashedGroupRepairs({ message, range }, lines) {
  const first = lines.find(({ start, end }) => start <= range.start && range.start <= end);
  if (!/group of keys/.test(message) || !first || !/^-\s+[A-Za-z]/.test(first.content)) return [];
  const dashed = lines.filter(
    ({ start, indent, content }) => start >= first.start && start < range.end && indent === first.indent && /^-\s/.test(content)
  );
  return ["", "  "].map((instead) => ({
    slip: { start: range.start, end: range.start + 1 },
    message: "Entries with names need no dashes.",
    title: dashed.length > 1 ? "Remove the dashes" : "Remove the dash",
    edits: dashed.map(({ start, indent, content }) => {
      const at2 = start + indent;
      return replacement(at2, at2 + /^-\s+/.exec(content)[0].length, instead);
    }),
    rarity: 1
  }));
}

// src/spec/slips/duplicates.ts
function duplicateRepairs(text, lines, at2) {
  const line = lines.find(({ start, end }) => start <= at2 && at2 <= end);
  if (!line) return [];
  const key = /^[^\s:]*/.exec(text.slice(at2))[0];
  const slip = { start: at2, end: at2 + key.length };
  if (at2 !== line.start + line.indent) return betweenBrackets2(text, line, at2, key);
  const first = lines.slice(0, line.number).findLast(({ content, indent }) => indent === line.indent && content.startsWith(`${key}:`));
  if (!first) return [];
  const [one, two] = [blockOf(lines, first), blockOf(lines, line)];
  const message = `\u201C${key}\u201D appears twice (first on line ${first.number + 1}); keep one.`;
  if (one.length > 1 && two.length > 1) {
    const body = two.slice(1).map(({ start, end }) => text.slice(start, end));
    const newLine = text.includes("\r\n") ? "\r\n" : "\n";
    return [
      {
        slip,
        message: `\u201C${key}\u201D appears twice (first on line ${first.number + 1}); put everything under one.`,
        title: `Move these lines under the first \u201C${key}\u201D`,
        edits: [
          replacement(one.at(-1).end, one.at(-1).end, body.map((each) => `${newLine}${each}`).join("")),
          removal(text, two)
        ],
        rarity: 0
      }
    ];
  }
  return [two, one].map((block, index) => ({
    slip,
    message,
    title: `Remove ${shown2(block[0].content, index === 0 ? "this" : "the first")}`,
    edits: [removal(text, block)],
    rarity: index
  }));
}
function shown2(content, which) {
  return content.length > 40 ? `${which} one` : `${which} one, ${quoted2(content)}`;
}
function blockOf(lines, first) {
  const rest = lines.slice(first.number + 1);
  const end = rest.findIndex(({ content, indent }) => content !== "" && indent <= first.indent);
  const block = [first, ...rest.slice(0, end < 0 ? rest.length : end)];
  while (block.at(-1).content === "") block.pop();
  return block;
}
function removal(text, block) {
  const { end } = block.at(-1);
  const after = /^\r?\n/.exec(text.slice(end))?.[0].length ?? 0;
  return replacement(block[0].start, end + after, "");
}
function betweenBrackets2(text, { start }, at2, key) {
  const entry = /^[^,{}[\]]*/.exec(text.slice(at2))[0];
  const lead = /,\s*$/.exec(text.slice(start, at2))?.[0].length;
  if (lead === void 0) return [];
  return [
    {
      slip: { start: at2, end: at2 + key.length },
      message: `\u201C${key}\u201D appears twice between these brackets; keep one.`,
      title: `Remove ${shown2(entry.trim(), "this")}`,
      edits: [replacement(at2 - lead, at2 + entry.trimEnd().length, "")],
      rarity: 0
    }
  ];
}

// src/spec/slips/find-slip.ts
var mostRead = 1e5;
var mostTried2 = 36;
var mostGroups = 400;
var mostBetter = 22;
var linesAbove = 6;
var linesBelow = 2;
var mostOpenLines = 8;
function slipOf(source, read) {
  const [stumble] = source.issues;
  const now = { faults: source.issues.length, firstFault: stumble.range.start, problems: 0 };
  const found = bestRepairs(source, stumble, now, read);
  const [best] = found;
  if (!best) return stumble;
  const repairs = found.map(({ title, edits }) => ({ title, edits }));
  return { ...stumble, range: best.slip, message: best.message, repairs };
}
function bestRepairs(source, stumble, now, read) {
  const { text } = source;
  const tried = (repair) => read(applied(text, repair.edits));
  const lines = linesOf(text);
  if (source.hasKeyTwice) {
    return duplicateRepairs(text, lines, stumble.range.start).filter((repair) => isBetter(tried(repair), now));
  }
  let budget = triesFor(text, mostTried2);
  if (budget === 0) return [];
  let best;
  for (const repair of candidatesFor(text, lines, stumble)) {
    if (budget-- <= 0) break;
    const reading2 = tried(repair);
    if (!isBetter(reading2, best?.reading ?? now)) continue;
    if (reading2.faults === 0 && best?.reading.faults !== 0) budget = Math.min(budget, mostBetter);
    best = { repair, reading: reading2 };
    if (reading2.faults === 0 && reading2.problems === 0) break;
  }
  return best ? [best.repair] : [];
}
function triesFor(text, most4) {
  if ((text.match(/[{[]/g)?.length ?? 0) > mostGroups) return 0;
  return Math.min(most4, Math.floor(mostRead / Math.max(text.length, 1)));
}
function isBetter(a, b) {
  if (a.faults === 0 !== (b.faults === 0)) return a.faults === 0;
  if (a.faults === 0) return a.problems < b.problems;
  return a.faults < b.faults && a.firstFault >= b.firstFault;
}
function candidatesFor(text, lines, stumble) {
  const at2 = Math.min(stumble.range.start, text.length);
  const number = Math.max(
    0,
    lines.findLastIndex(({ start }) => start <= at2)
  );
  const near = nearLines(lines, number);
  const repairs = near.flatMap(
    (line, distance5) => repairsOf(text, lines, line).map((repair) => ({
      repair,
      order: repair.rarity + distance5 / 100 - (isAt2(repair, at2) ? atStumble : 0)
    }))
  );
  const sorted = repairs.sort((a, b) => a.order - b.order).map(({ repair }) => repair);
  return [...blankRepairs(text, lines), ...sorted];
}
var atStumble = 1.6;
function isAt2({ slip }, offset2) {
  return slip.start === offset2 || slip.end - slip.start === 1 && slip.end === offset2;
}
function nearLines(lines, number) {
  const filled2 = lines.filter((line) => line.content !== "" && isByHand(line));
  const above = filled2.filter((line) => line.number <= number).slice(-linesAbove).reverse();
  const below3 = filled2.filter((line) => line.number > number).slice(0, linesBelow);
  const open3 = filled2.filter(({ number: other, signs }) => other <= number && (signs.quote !== void 0 || signs.open.length > 0)).slice(-mostOpenLines).reverse();
  return [.../* @__PURE__ */ new Set([...above.slice(0, 2), ...open3, ...above, ...below3])];
}
function repairsOf(text, lines, line) {
  const rest = lines.slice(line.number + 1);
  const next = rest.find(({ content }) => content !== "");
  const foreign = rest.findIndex(({ content, indent }) => content !== "" && indent <= line.indent);
  const inside4 = rest.slice(0, foreign < 0 ? rest.length : foreign).filter(({ content }) => content !== "");
  return [
    ...colonRepairs(text, line, next),
    ...backslashRepairs(text, line),
    ...bracketRepairs(text, line, inside4.at(-1) ?? line),
    ...quoteRepairs(text, line),
    ...dashRepairs(lines, line),
    ...indentRepairs(lines, line)
  ];
}

// src/spec/slips/first-piece.ts
var madeFrom2 = ["around", "from", "union", "difference", "intersection", "stack"];
function firstPiece(spec) {
  const shapes = groupAt(spec, "shapes");
  const names = Object.keys(shapes);
  const used = new Set(names.flatMap((name) => namesMadeFrom(shapes[name])));
  const tops = names.filter((name) => !used.has(name));
  if (tops.length === 0) return void 0;
  const isPut = (name) => isGroup(shapes[name]) && ("place" in shapes[name] || "fit" in shapes[name]);
  const isLettering3 = (name) => isGroup(shapes[name]) && "text" in shapes[name];
  const free = tops.filter((name) => !isPut(name));
  const plates = free.filter((name) => !isLettering3(name));
  const carried = tops.map((name) => carrierOf(shapes[name])).find((name) => name !== void 0 && Object.hasOwn(shapes, name));
  const body = [plates, free, carried === void 0 ? tops : [carried]].find((list) => list.length > 0);
  const marks3 = tops.filter((name) => !body.includes(name));
  return ["tag:", `  body: [${body.join(", ")}]`, ...marks3.length > 0 ? [`  engrave: [${marks3.join(", ")}]`] : []];
}
function namesMadeFrom(shape) {
  if (!isGroup(shape)) return [];
  return madeFrom2.flatMap((key) => stringsIn(shape[key]));
}
function stringsIn(value) {
  if (typeof value === "string") return [value];
  if (Array.isArray(value)) return value.flatMap(stringsIn);
  return isGroup(value) ? Object.values(value).flatMap(stringsIn) : [];
}
function carrierOf(shape) {
  const on = groupAt(shape, "place")["on"] ?? groupAt(shape, "fit")["in"];
  return typeof on === "string" ? on : void 0;
}
function groupAt(value, key) {
  const inner = isGroup(value) ? value[key] : void 0;
  return isGroup(inner) ? inner : {};
}

// src/spec/slips/missing-keys.ts
var firstValues = {
  by: "3 mm",
  length: "90 mm",
  width: "60 mm",
  size: "[600 mm, 400 mm]",
  sheet: "{size: [600 mm, 400 mm]}",
  count: "2"
};
function missingKeyRepairs(issue, source) {
  const { code, message, range, path } = issue;
  const repair = (title, edit) => edit ? [{ slip: range, message, title, edits: [edit], rarity: 2 }] : [];
  if (code === "not-a-spec" && source.value !== null && source.value !== void 0) {
    return repair("Add \u201Ctagwright: 1\u201D", insertion(firstLine(source.text), "tagwright: 1\n"));
  }
  if (code === "bad-value" && path.join() === "pieces") return repair("Add a piece", filledPieces(source));
  if (code !== "missing-key") return [];
  const wanted = /“([^”]+)”[^“”]*$/.exec(message.split(":")[0])?.[1];
  if (wanted === "pieces" && path.length === 0) return repair("Add a piece", addedPiece(source));
  const at2 = /sheet/.test(message) && wanted === "sheet" ? [] : path;
  const key = message.startsWith("This text has no size") ? "width" : wanted;
  const value = key !== void 0 && Object.hasOwn(firstValues, key) ? firstValues[key] : void 0;
  if (key === void 0 || value === void 0) return [];
  return repair(`Add ${quoted2(`${key}: ${value}`)}`, source.setKey(at2, key, value));
}
function firstLine(text) {
  return /^(?:[ \t]*(?:#.*)?\r?\n)*/.exec(text)[0].length;
}
function addedPiece({ text, value }) {
  const piece = firstPiece(value);
  if (!piece) return void 0;
  const end = text.trimEnd().length;
  const newLine = text.includes("\r\n") ? "\r\n" : "\n";
  return {
    range: { start: end, end: text.length },
    text: ["", "", "pieces:", ...piece.map((line) => `  ${line}`), ""].join(newLine)
  };
}
function filledPieces({ text, value }) {
  const piece = firstPiece(value);
  if (!piece) return void 0;
  const found = /^pieces:[^\S\n]*(?:#.*)?$/m.exec(text);
  if (!found) return void 0;
  return insertion(found.index + found[0].trimEnd().length, piece.map((line) => `
  ${line}`).join(""));
}

// src/spec/slips/entries.ts
function entryRange(source, path) {
  const [key, value] = [source.keyRange(path), source.range(path)];
  return value.start > key.end ? { start: key.start, end: value.end } : void 0;
}
function writtenValue(source, path) {
  const { start, end } = source.range(path);
  const text = source.text.slice(start, end);
  return entryRange(source, path) && !text.includes("\n") ? text : void 0;
}
function takenOut({ text }, { start, end }) {
  const [before, after] = [text.slice(0, start), text.slice(end)];
  const comma = /,[^\S\n]*$/.exec(before)?.[0].length;
  const next = /^[^\S\n]*,\s*/.exec(after)?.[0].length;
  const indent = /(?:^|\n)([^\S\n]*)$/.exec(before)?.[1].length;
  const lineEnd = /^[^\S\n]*(?:\r?\n|$)/.exec(after)?.[0].length;
  if (comma !== void 0) return { range: { start: start - comma, end }, text: "" };
  if (next !== void 0) return { range: { start, end: end + next }, text: "" };
  if (indent === void 0 || lineEnd === void 0) return void 0;
  return { range: { start: start - indent, end: end + lineEnd }, text: "" };
}

// src/spec/slips/moved-keys.ts
var otherNames = {
  circle: ["ellipse"],
  disc: ["ellipse"],
  round: ["ellipse"],
  rect: ["rectangle"],
  square: ["rectangle"],
  outline: ["around", "score"],
  contour: ["around", "score"],
  offset: ["grow", "by"],
  opening: ["diameter", "width"],
  diameter: ["ellipse", "across", "twine", "radius", "width"],
  hole: ["hanger"],
  words: ["text"],
  name: ["text", "title"],
  label: ["title", "text"],
  letters: ["text"],
  colour: ["color"],
  typeface: ["font"],
  family: ["font"],
  angle: ["rotate"],
  flip: ["mirror"],
  position: ["place"],
  align_to: ["place"],
  cut_out: ["cut"],
  etch: ["engrave"],
  burn: ["engrave"],
  line: ["score"],
  holes: ["cut", "hanger"],
  shape: ["shapes", "body"],
  piece: ["pieces"],
  names: ["batch"],
  list: ["batch"],
  wood: ["material"],
  depth: ["thickness"],
  spacing: ["letter_spacing"],
  svg: ["drawing"],
  image: ["drawing"],
  picture: ["drawing"],
  file: ["drawing"],
  corner: ["radius"],
  corner_radius: ["radius"],
  rounded: ["radius"],
  string: ["twine"],
  cord: ["twine"]
};
var homes = {
  kerf: "stock",
  material: "stock",
  thickness: "stock",
  min_web: "stock",
  density: "stock",
  price: "stock",
  twine: "tie",
  ribbon: "tie",
  ring: "hanger",
  hole: "hanger",
  slot: "hanger",
  tabs: "output"
};
function movedKeyRepairs(issue, source) {
  const key = issue.path.at(-1);
  if (issue.code !== "unknown-key" || typeof key !== "string") return [];
  return [
    ...bold(issue, key, source),
    ...renamed(issue, key),
    ...moved2(issue, key, source),
    ...begun3(issue, key, source)
  ];
}
function bold({ path, range }, key, source) {
  const entry = key === "bold" ? entryRange(source, path) : void 0;
  if (!entry) return [];
  return [
    {
      slip: range,
      message: "Bold is a weight here: \u201Cweight: 700\u201D.",
      title: "Change to \u201Cweight: 700\u201D",
      edits: [replacement(entry.start, entry.end, "weight: 700")],
      rarity: 1
    }
  ];
}
function renamed({ range }, key) {
  return (Object.hasOwn(otherNames, key) ? otherNames[key] : []).map((name) => ({
    slip: range,
    message: `Unknown key \u201C${key}\u201D; here it is \u201C${name}\u201D.`,
    title: `Change to \u201C${name}\u201D`,
    edits: [replacement(range.start, range.end, name)],
    rarity: 1,
    explains: true
  }));
}
function moved2({ path, range }, key, source) {
  const home = path.slice(0, -1);
  const entry = entryRange(source, path);
  const taken = entry && takenOut(source, entry);
  const written = writtenValue(source, path);
  if (!taken || written === void 0) return [];
  return [...groupsWithin(source.value, home), ...home.length > 0 ? [home.slice(0, -1)] : []].flatMap(
    (goal) => {
      const put = source.setKey(goal, key, written);
      const name = goal.findLast((step) => typeof step === "string") ?? "the top of the spec";
      return put && !overlap(put, taken) ? [
        {
          slip: range,
          message: `\u201C${key}\u201D belongs in ${quoted2(name)}.`,
          title: `Move it into ${quoted2(name)}`,
          edits: [taken, put],
          rarity: 1,
          explains: true
        }
      ] : [];
    }
  );
}
function overlap(a, b) {
  return a.range.start < b.range.end && b.range.start < a.range.end;
}
function begun3({ path, range }, key, source) {
  const home = Object.hasOwn(homes, key) ? homes[key] : void 0;
  const entry = entryRange(source, path);
  if (home === void 0 || !entry || writtenValue(source, path) === void 0) return [];
  return [
    {
      slip: range,
      message: `\u201C${key}\u201D belongs in \u201C${home}\u201D.`,
      title: `Put it in \u201C${home}\u201D`,
      edits: [insertion(entry.start, `${home}: {`), insertion(entry.end, "}")],
      rarity: 1
    }
  ];
}
var mostGroups2 = 8;
function groupsWithin(root, path) {
  const value = path.reduce((at2, step) => at2[step], root);
  const children = (of, at2) => typeof of !== "object" || of === null || Array.isArray(of) ? [] : Object.entries(of).flatMap(
    ([key, inner]) => typeof inner === "object" && inner !== null && !Array.isArray(inner) ? [[...at2, key]] : []
  );
  const near = children(value, path);
  const further = near.flatMap((at2) => children(value[String(at2.at(-1))], at2));
  return [...near, ...further].slice(0, mostGroups2);
}

// src/spec/slips/value-forms.ts
function valueRepairs(issue, source, line) {
  return [
    ...decimalCommas(source.text, line),
    ...comments(issue, source.text, line),
    ...roundBrackets(source.text, line),
    ...wrapped(issue, source),
    ...sizes(issue, source),
    ...yesAndNo(issue, source),
    ...units(issue, source),
    ...columns2(issue, source)
  ];
}
function decimalCommas(text, { start, contentEnd }) {
  return [
    ...text.slice(start, contentEnd).matchAll(/(?<![\w.,])(\d+),(\d+)(?=\s*(?:mm|cm|in|pt|px)?\s*(?:$|[,}\]"'])|\s*(?:mm|cm|in|pt|px)\b)/g)
  ].map(({ index, 0: figure2, 1: whole2 = "", 2: fraction = "" }) => {
    const at2 = start + index;
    return {
      slip: { start: at2, end: at2 + figure2.length },
      message: `Decimals are written with a point here: ${whole2}.${fraction}, not ${figure2}.`,
      title: `Change to ${whole2}.${fraction}`,
      edits: [replacement(at2 + whole2.length, at2 + whole2.length + 1, ".")],
      rarity: 0
    };
  });
}
function comments({ code, range }, text, line) {
  const rest = text.slice(range.end, line.end);
  const found = /^\s*:\s+([#!&].*?)\s*$/.exec(rest);
  if (code !== "bad-value" || !found) return [];
  const value = found[1];
  const start = range.end + rest.indexOf(value);
  return [
    {
      slip: { start, end: start + value.length },
      message: value.startsWith("#") ? `\u201C#\u201D starts a comment, so this text is empty. Put it in quotes: ${inQuotes(value)}.` : `A text that starts with \u201C${value[0]}\u201D needs quotes: ${inQuotes(value)}.`,
      title: "Put in quotes",
      edits: [replacement(start, start + value.length, inQuotes(value))],
      rarity: 0
    }
  ];
}
function roundBrackets(text, { start, contentEnd }) {
  return [...text.slice(start, contentEnd).matchAll(/\(([^()]*)\)/g)].map(({ index, 0: found, 1: inner = "" }) => {
    const at2 = start + index;
    return {
      slip: { start: at2, end: at2 + found.length },
      message: `A list goes in square brackets: ${quoted2(`[${inner}]`)}.`,
      title: "Change to square brackets",
      edits: [replacement(at2, at2 + found.length, `[${inner}]`)],
      rarity: 1
    };
  });
}
var firstKeys = {
  place: ["on"],
  fit: ["in"],
  tie: ["twine", "ribbon"],
  arc: ["radius"],
  stock: ["material", "thickness"],
  polygon: ["sides"],
  ring: ["at"],
  hole: ["at"],
  slot: ["at"],
  sheet: ["size"]
};
function wrapped(issue, source) {
  const key = issue.path.findLast((step) => typeof step === "string");
  const { start, end } = issue.range;
  const value = source.text.slice(start, end);
  if (key === void 0 || value === "" || value.includes("\n") || value.startsWith("{")) return [];
  const put = (text, message, title) => ({
    slip: { start, end },
    message,
    title,
    edits: [replacement(start, end, text)],
    rarity: 1
  });
  if (["ring", "hole", "slot"].includes(value)) {
    const text = `{${value}: {at: ${value === "ring" ? "auto" : "top"}}}`;
    return [put(text, `A ${value} is written as a group: ${quoted2(text)}.`, `Change to ${quoted2(text)}`)];
  }
  const groups2 = (Object.hasOwn(firstKeys, key) ? firstKeys[key] : []).map((first) => {
    const text = `{${first}: ${value}}`;
    return put(text, `\u201C${key}\u201D is a group of keys: ${quoted2(text)}.`, `Change to ${quoted2(text)}`);
  });
  const list = `[${value}]`;
  const isList = /should be a list/.test(issue.message) && !value.startsWith("[");
  return [
    ...groups2,
    ...isList ? [put(list, `\u201C${key}\u201D is a list, in square brackets: ${quoted2(list)}.`, "Put in brackets")] : []
  ];
}
var longestSizes = 60;
function sizes({ range, message }, source) {
  if (!/list|entries|length|fit/.test(message)) return [];
  const value = source.text.slice(range.start, range.end);
  if (value.length > longestSizes || value.includes("\n")) return [];
  const alone = /^[\d.]+\s*(?:mm|cm|in|pt|px)?$/.test(value) && /should be a list/.test(message);
  if (alone) {
    const square = `[${value}, ${value}]`;
    return [
      {
        slip: range,
        message: `Width and height are a list of two: ${quoted2(square)} for a square.`,
        title: `Change to ${quoted2(square)}`,
        edits: [replacement(range.start, range.end, square)],
        rarity: 0
      }
    ];
  }
  const found = /^\[?\s*([\d.]+)\s*(mm|cm|in|pt|px)?(?:\s*[x×*]\s*|\s+(?:by\s+)?)([\d.]+)\s*(mm|cm|in|pt|px)?\s*\]?$/i.exec(value);
  if (!found) return [];
  const [, width = "", ofWidth, height = "", ofHeight] = found;
  const unit = ofHeight ?? ofWidth;
  const length = (figure2, own) => unit === void 0 ? figure2 : `${figure2} ${own ?? unit}`;
  const text = `[${length(width, ofWidth)}, ${length(height, ofHeight)}]`;
  return [
    {
      slip: range,
      message: `Width and height are a list of two: ${quoted2(text)}.`,
      title: `Change to ${quoted2(text)}`,
      edits: [replacement(range.start, range.end, text)],
      rarity: 0
    }
  ];
}
function yesAndNo({ range, message }, { text }) {
  if (!/true or false/.test(message)) return [];
  const value = text.slice(range.start, range.end);
  const meant = /^["']?(?:yes|on|y|true)["']?$/i.test(value) ? "true" : "false";
  if (meant === "false" && !/^["']?(?:no|off|n|false)["']?$/i.test(value)) return [];
  return [
    {
      slip: range,
      message: `Yes is written \u201Ctrue\u201D here, and no \u201Cfalse\u201D.`,
      title: `Change to ${meant}`,
      edits: [replacement(range.start, range.end, meant)],
      rarity: 0
    }
  ];
}
var unitWords = [
  [/^(?:mm|millimet(?:er|re)s?|mms)$/i, "mm"],
  [/^(?:cm|centimet(?:er|re)s?|cms)$/i, "cm"],
  [/^(?:in|inch|inches|ins|"|″)$/i, "in"],
  [/^(?:pt|pts|points?)$/i, "pt"]
];
function units({ code, range }, { text }) {
  const value = text.slice(range.start, range.end).replace(/^(['"])(.*)\1$/, "$2");
  const found = code === "bad-length" ? /^([\d./ ]*\d)\s*(.+)$/.exec(value.trim()) : null;
  const unit = unitWords.find(([words3]) => words3.test(found?.[2]?.replace(/\.$/, "") ?? ""))?.[1];
  if (!found || !unit) return [];
  const length = `${found[1].trim()} ${unit}`;
  return [
    {
      slip: range,
      message: `A length is a number with mm, cm, in, pt or px: ${length}.`,
      title: `Change to ${length}`,
      edits: [replacement(range.start, range.end, length)],
      rarity: 0
    }
  ];
}
function columns2({ code, range, message }, { text }) {
  const found = code === "unknown-name" ? /^There is no column “([^”]+)” in the batch\.(.*)$/.exec(message) : null;
  const at2 = found ? text.slice(range.start, range.end).indexOf(`{${found[1]}}`) : -1;
  if (!found || at2 < 0) return [];
  const start = range.start + at2;
  return [...found[2].matchAll(/“([^”]+)”|\{([^}]+)\}/g)].map(({ 1: near, 2: listed4 }) => {
    const column = `{${near ?? listed4 ?? ""}}`;
    return {
      slip: { start, end: start + found[1].length + 2 },
      message,
      title: `Change to ${column}`,
      edits: [replacement(start, start + found[1].length + 2, column)],
      rarity: 1
    };
  });
}

// src/spec/slips/misread.ts
var mostTried3 = 40;
var mostIssues = 8;
var mostOffered = 3;
function oneForEachSlip(source, issues, read) {
  const cures = curesFor(source, issues, read);
  const told2 = /* @__PURE__ */ new Map();
  const covered3 = /* @__PURE__ */ new Set();
  for (const cure of [...cures].sort((a, b) => a.left - b.left)) {
    if (covered3.has(cure.issue)) continue;
    told2.set(cure.issue, inWords(cure, cures, issues.length));
    for (const each of cure.gone) covered3.add(each);
  }
  return issues.flatMap((issue) => told2.get(issue) ?? (covered3.has(issue) ? [] : issue));
}
function curesFor(source, issues, read) {
  let budget = issues.length > mostIssues ? 0 : triesFor(source.text, mostTried3);
  if (budget === 0) return [];
  const lines = linesOf(source.text);
  const cures = [];
  for (const issue of inOrder2(issues)) {
    const before = cures.length;
    const isWhole = () => cures.slice(before).some(({ left }) => left === 0);
    for (const attempt of attemptsFor(issue, source, lines)) {
      if (isWhole() && (attempt.repair !== void 0 || cures.length - before >= mostOffered)) break;
      if (budget-- <= 0) return cures;
      const after = read(applied(source.text, attempt.change.edits));
      if (!after || after.length > issues.length) continue;
      if (after.length === issues.length && !explains(attempt.repair, issue, after)) continue;
      const gone = goneOf(issues, after);
      const brings = after.length - (issues.length - gone.size);
      if (!gone.has(issue) || brings > 0 && (attempt.repair?.rarity ?? 0) >= 2) continue;
      cures.push({ ...attempt, issue, left: after.length, gone });
    }
  }
  return cures;
}
function explains(repair, issue, after) {
  const key = issue.path.at(-1);
  return repair?.explains === true && !after.some(({ code, path }) => code === issue.code && path.at(-1) === key);
}
function inWords({ issue, repair, left }, cures, before) {
  if (!repair) return issue;
  const repairs = cures.filter(
    (cure) => cure.left < before && cure.issue === issue && cure.left === left && cure.repair?.message === repair.message
  ).slice(0, mostOffered).map(({ change }) => change);
  return { ...issue, range: repair.slip, message: repair.message, suggestions: [], repairs };
}
function goneOf(before, after) {
  const left = after.map(wordsOf2);
  return new Set(
    before.filter((issue) => {
      const at2 = left.indexOf(wordsOf2(issue));
      if (at2 >= 0) left.splice(at2, 1);
      return at2 < 0;
    })
  );
}
function wordsOf2({ code, message }) {
  return `${code} ${message}`;
}
function attemptsFor(issue, source, lines) {
  const own = (issue.suggestions ?? []).map((text) => ({ title: "", edits: [{ range: issue.range, text }] }));
  return [
    ...[...own, ...issue.repairs ?? []].map((change) => ({ change })),
    ...repairsFor(issue, source, lines).map((repair) => ({
      change: { title: repair.title, edits: repair.edits },
      repair
    }))
  ];
}
function repairsFor(issue, source, lines) {
  const line = lines.findLast(({ start }) => start <= issue.range.start);
  if (!line || !isByHand(line)) return [];
  const next = lines.slice(line.number + 1).find(({ content }) => content !== "");
  return [
    ...valueRepairs(issue, source, line),
    ...missingKeyRepairs(issue, source),
    ...movedKeyRepairs(issue, source),
    ...colonRepairs(source.text, line, next),
    ...dashedGroupRepairs(issue, lines),
    ...dashRepairs(lines, line),
    ...line.signs.stray.length > 0 ? bracketRepairs(source.text, line, line) : [],
    ...indentRepairs(lines, line)
  ];
}

// src/spec/parse.ts
function parseSpec(spec, uses = noUses, row2 = 0) {
  const source = typeof spec === "string" ? new SpecSource(spec) : spec;
  if (source.issues.some((issue) => issue.code !== "yaml-syntax")) return { source, issues: source.issues, row: 0 };
  if (source.issues.length > 0) return { source, issues: [slipOf(source, (text) => reading(text, uses, row2))], row: 0 };
  const read = readSpec(source, uses, row2);
  const renamed2 = source.oldKeys.map(renamedKey);
  if (read.issues.length === 0) return { source, ...read, issues: renamed2 };
  const issues = oneForEachSlip(source, read.issues, (text) => {
    const changed = new SpecSource(text);
    return changed.issues.length > 0 ? void 0 : readSpec(changed, uses, row2).issues;
  });
  return { source, ...read, issues: [...issues, ...renamed2] };
}
function reading(text, uses, row2) {
  const source = new SpecSource(text);
  const [first] = source.issues;
  const problems = first ? 0 : readSpec(source, uses, row2).issues.length;
  return { faults: source.issues.length, firstFault: first?.range.start ?? text.length, problems };
}
function readSpec(source, uses, wanted = 0) {
  if (!isGroup(source.value)) return { issues: [notASpec(source)], row: 0 };
  const scope = new Scope(source, uses.used);
  scope.checkClashes();
  const batch = readBatch(scope.spec, uses.table, scope.problems);
  const row2 = batch ? Math.min(wanted, batch.rows.length - 1) : 0;
  if (batch) scope.readRow(batch, batch.rows[row2]);
  const workshop = readWorkshop(scope);
  const shapes = scope.shapes.all();
  const pieces = readPieces(scope, workshop);
  const title = titleOf(scope, batch?.rows[row2], [...shapes.values()]);
  const found = scope.issues(source);
  const issues = [
    ...uses.issues,
    ...isPartial(uses) ? found.filter(({ code }) => !code.startsWith("unknown-") || code === "unknown-key") : found
  ];
  const read = { issues, row: row2, inUsed: scope.inUsed(), ...batch ? { batch } : {} };
  if (!issues.every((issue) => isUnbegun(issue, source.value))) return read;
  const { stock, tie, sheet, machine, output } = workshop;
  return {
    ...read,
    model: {
      title,
      units: scope.problems.units,
      stock,
      ...tie ? { tie } : {},
      ...sheet ? { sheet } : {},
      ...machine ? { machine } : {},
      output,
      shapes,
      pieces
    }
  };
}
function readShared(source, uses = noUses) {
  if (source.issues.length > 0) return source.issues;
  if (!isGroup(source.value)) return [notASpec(source)];
  const scope = new Scope(source, uses.used);
  scope.checkClashes();
  readWorkshop(scope);
  scope.shapes.all();
  return [...uses.issues, ...scope.issues(source)].filter((issue) => !isUnbegun(issue, source.value));
}
function isUnbegun({ code, path, message }, spec) {
  if (path.length === 0) return code === "missing-key" && /“pieces”/.test(message);
  const [first, , key] = path;
  if (first !== "pieces" || path.length > 3 || path.length === 3 && key !== "body") return false;
  const value = valueAt(spec, path);
  return value == null || Array.isArray(value) && value.length === 0;
}
function isPartial({ used, issues }) {
  const isBroken = (file) => file.source.issues.length > 0 || file.uses.some(isBroken);
  return issues.some(({ path }) => path[0] === "use") || used.some(isBroken);
}
var untitled = "Untitled tag";
function titleOf({ spec, problems }, row2, shapes) {
  const title = spec.title === void 0 ? wordsOf3(shapes) : problems.filled(spec.title, ["title"]) ?? spec.title;
  const isTold = spec.title === void 0 ? row2 && title.includes(row2.label) : title !== spec.title;
  return row2 && !isTold ? `${title} \xB7 ${row2.label}` : title;
}
var longestTitle = 60;
function wordsOf3(shapes) {
  const texts = shapes.flatMap(({ generator }) => generator.kind === "text" ? [generator.text] : []);
  const words3 = [...new Set(texts.map((text) => text.trim().replace(/\s+/g, " ")))].filter((text) => text !== "");
  return clip(words3.join(", "), longestTitle) || untitled;
}
function renamedKey({ old, key, path, range }) {
  return {
    code: "renamed-key",
    severity: issueKinds["renamed-key"].severity,
    path,
    range,
    message: `\u201C${old}\u201D is now called \u201C${key}\u201D. The old name works in this version only.`,
    repairs: [{ title: `Rename to \u201C${key}\u201D`, edits: [{ range, text: key }] }]
  };
}
function notASpec(source) {
  const message = "This is not a tag spec yet. Start with \u201Ctagwright: 1\u201D, then shapes and pieces.";
  return { code: "not-a-spec", severity: "error", path: [], range: source.range([]), message };
}

// src/text/content-hash.ts
function contentHash(parts) {
  let a = 3735928559;
  let b = 1103547991;
  const take = (value) => {
    a = Math.imul(a ^ value, 2654435761);
    b = Math.imul(b ^ value, 1597334677);
  };
  for (const part of parts) {
    for (const byte of part) take(byte);
    take(part.length);
  }
  return [stir(a, b), stir(b, a)].map((half) => half.toString(16).padStart(8, "0")).join("");
}
function stir(half, other) {
  const mixed = Math.imul(half ^ half >>> 16, 2246822507) ^ Math.imul(other ^ other >>> 13, 3266489909);
  return (mixed ^ mixed >>> 16) >>> 0;
}

// src/text/embedding.ts
function embeddingInWords({ embedding, wholeOnly, picturesOnly }) {
  const limits = [
    ...wholeOnly ? ["only whole, not in part"] : [],
    ...picturesOnly ? ["only as pictures of its letters"] : []
  ];
  const limited = limits.length > 0 && embedding !== "restricted" ? ` (${limits.join("; ")})` : "";
  return `${embedding === void 0 ? "does not say whether it may be embedded in files" : words2[embedding]}${limited}`;
}
var words2 = {
  installable: "may be embedded in files, and installed from them",
  editable: "may be embedded in files that are viewed, printed and edited",
  "preview-and-print": "may be embedded in files that are viewed and printed, not edited",
  restricted: "may not be embedded in files without its maker\u2019s permission"
};

// src/tag/fonts-used.ts
function fontsUsed(settings) {
  const faces = new Map(settings.map(({ face: face2 }) => [face2.id, face2]));
  return [...faces.values()].map((face2) => {
    const { family, style, weight, italic, licence } = face2;
    const paths = settings.filter((each) => each.face.id === face2.id).map(({ shape }) => shape.path);
    return { family, style, weight, italic, licence, embedding: embeddingInWords(licence), paths };
  });
}
function fontFindings(settings) {
  const told2 = /* @__PURE__ */ new Set();
  return settings.flatMap((setting) => {
    const findings = otherStyle(setting);
    const { face: face2, shape } = setting;
    if (face2.licence.embedding === "restricted" && !told2.has(face2.id)) {
      told2.add(face2.id);
      const message = `According to its file, the font ${face2.family} ${embeddingInWords(face2.licence)}. Cut letters contain no font, but read its licence before you sell files made with it.`;
      findings.push({ code: "font-restricted", severity: "info", path: [...shape.path, "font"], message });
    }
    return findings;
  });
}
function otherStyle({ shape, text, face: face2 }) {
  const found = (key, message, taken) => ({
    code: "other-style",
    severity: "info",
    path: [...shape.path, key],
    message,
    suggestions: [taken]
  });
  const findings = [];
  if (text.weightAsked && face2.weight !== text.weight) {
    const message = `${face2.family} has no weight ${text.weight}; its ${face2.weight} was used instead.`;
    findings.push(found("weight", message, String(face2.weight)));
  }
  if (text.italic && !face2.italic)
    findings.push(found("italic", `${face2.family} has no italic; its upright letters were used instead.`, "false"));
  return findings;
}

// src/tag/left-out.ts
var nouns = {
  line: ["line without a fill", "lines without a fill"],
  thickness: ["thick stroke", "thick strokes"],
  text: ["text", "texts"],
  picture: ["picture", "pictures"],
  clip: ["clipping path", "clipping paths"],
  mask: ["mask", "masks"],
  pattern: ["pattern", "patterns"],
  filter: ["filter", "filters"],
  marker: ["marker on a line", "markers on lines"],
  copy: ["copy of something that is not in the file", "copies of something that is not in the file"]
};
function leftOutFindings(file, leftOut, path) {
  const told2 = Object.keys(nouns).flatMap((kind) => {
    const count = leftOut[kind] ?? 0;
    return count === 0 ? [] : [`${count} ${nouns[kind][count === 1 ? 0 : 1]}`];
  });
  const total = Object.entries(leftOut).reduce((sum, [kind, count]) => kind === "white" ? sum : sum + count, 0);
  const white = leftOut.white ?? 0;
  const sentences2 = [
    ...told2.length === 0 ? [] : [`${listed3(told2)} in \u201C${file}\u201D ${total === 1 ? "is" : "are"} left out: only filled shapes are used.`],
    ...white === 0 ? [] : [
      `${white} white ${white === 1 ? "shape" : "shapes"} in \u201C${file}\u201D ${white === 1 ? "counts" : "count"} as filled: colours are ignored.`
    ]
  ];
  if (sentences2.length === 0) return [];
  return [{ code: "not-drawn", severity: "warning", path, message: sentences2.join(" ") }];
}
function listed3(items) {
  return items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
}

// src/tag/svg-drawing.ts
import { XMLParser } from "fast-xml-parser";

// src/tag/svg-path.ts
import svgpath from "svgpath";
var mostCommands = 5e4;
function plain(problem2) {
  const [, place] = /\(at pos (\d+)\)$/.exec(problem2) ?? [];
  const where2 = place === void 0 ? "" : ` at character ${Number(place) + 1}`;
  if (/string should start/.test(problem2)) return "it must start with M or m";
  if (/bad command/.test(problem2)) return `there is an unknown command${where2}`;
  if (/missed param/.test(problem2)) return `a number is missing${where2}`;
  if (/arc flag/.test(problem2)) return `the flag of an arc${where2} must be 0 or 1`;
  return `there is a bad number${where2}`;
}
function parseSvgPath(data, mmPerUnit2, transforms = []) {
  let path = svgpath(data);
  const problem2 = path.err;
  if (problem2) return { problem: plain(problem2) };
  path = path.abs().unshort().unarc();
  for (const transform2 of transforms) path = path.transform(transform2);
  path = path.scale(mmPerUnit2, -mmPerUnit2);
  const curves = [];
  let failed;
  let at2 = { x: 0, y: 0 };
  let start = at2;
  path.iterate((segment) => {
    const [letter, ...n] = segment;
    if (curves.length >= mostCommands) failed = `it has more than ${mostCommands} commands`;
    else if (!n.every(Number.isFinite)) failed = "a coordinate is not a number";
    if (failed) return;
    switch (letter) {
      case "M":
        at2 = start = { x: n[0], y: n[1] };
        curves.push({ type: "M", ...at2 });
        break;
      case "L":
        at2 = { x: n[0], y: n[1] };
        curves.push({ type: "L", ...at2 });
        break;
      case "H":
        at2 = { x: n[0], y: at2.y };
        curves.push({ type: "L", ...at2 });
        break;
      case "V":
        at2 = { x: at2.x, y: n[0] };
        curves.push({ type: "L", ...at2 });
        break;
      case "Q":
        at2 = { x: n[2], y: n[3] };
        curves.push({ type: "Q", x1: n[0], y1: n[1], ...at2 });
        break;
      case "C":
        at2 = { x: n[4], y: n[5] };
        curves.push({ type: "C", x1: n[0], y1: n[1], x2: n[2], y2: n[3], ...at2 });
        break;
      case "Z":
        at2 = start;
        curves.push({ type: "Z" });
        break;
      default:
        failed = `there is an unknown command ${letter}`;
    }
  });
  return failed === void 0 ? { curves } : { problem: failed };
}

// src/tag/svg-shapes.ts
var pxPer = {
  "": 1,
  px: 1,
  pt: 96 / 72,
  pc: 16,
  mm: 96 / 25.4,
  cm: 96 / 2.54,
  in: 96,
  em: 16,
  ex: 8
};
function userUnits(written, whole2) {
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z]*|%)\s*$/i.exec(written ?? "");
  if (!match) return 0;
  const [, figure2, unit = ""] = match;
  const scale = unit === "%" ? whole2 / 100 : pxPer[unit.toLowerCase()] ?? 0;
  return Number(figure2) * scale;
}
function shapeData(tag, attributes, viewport) {
  const diagonal2 = Math.hypot(viewport.width, viewport.height) / Math.SQRT2;
  const along2 = (name) => userUnits(attributes[name], viewport.width);
  const down = (name) => userUnits(attributes[name], viewport.height);
  switch (tag) {
    case "path":
      return attributes["d"];
    case "rect": {
      const [x, y, w, h] = [along2("x"), down("y"), along2("width"), down("height")];
      if (w <= 0 || h <= 0) return void 0;
      const rx = Math.min(along2("rx") || down("ry"), w / 2);
      const ry = Math.min(down("ry") || along2("rx"), h / 2);
      if (rx <= 0 || ry <= 0) return `M${x} ${y}h${w}v${h}h${-w}z`;
      const arc2 = (dx, dy) => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
      return `M${x + rx} ${y}h${w - 2 * rx}${arc2(rx, ry)}v${h - 2 * ry}${arc2(-rx, ry)}h${2 * rx - w}${arc2(-rx, -ry)}v${2 * ry - h}${arc2(rx, -ry)}z`;
    }
    case "line":
      return `M${along2("x1")} ${down("y1")}L${along2("x2")} ${down("y2")}`;
    case "circle": {
      const r = userUnits(attributes["r"], diagonal2);
      return round2(along2("cx"), down("cy"), r, r);
    }
    case "ellipse":
      return round2(along2("cx"), down("cy"), along2("rx"), down("ry"));
    case "polygon":
    case "polyline": {
      const points = attributes["points"]?.trim();
      return points ? `M${points}${tag === "polygon" ? "z" : ""}` : void 0;
    }
    default:
      return void 0;
  }
}
function round2(cx, cy, rx, ry) {
  if (rx <= 0 || ry <= 0) return void 0;
  const at2 = (eighth) => `${cx + rx * Math.cos(eighth * Math.PI / 4)} ${cy + ry * Math.sin(eighth * Math.PI / 4)}`;
  const arcs = [1, 2, 3, 4, 5, 6, 7, 8].map((eighth) => `A${rx} ${ry} 0 0 1 ${at2(eighth)}`);
  return `M${at2(0)}${arcs.join("")}z`;
}

// src/tag/svg-left-out.ts
var thickShare = 0.01;
var closedMm = 0.01;
var elements = { text: "text", image: "picture", foreignObject: "picture" };
var effects = {
  "clip-path": "clip",
  mask: "mask",
  filter: "filter"
};
var LeftOutCounter = class {
  #counts = /* @__PURE__ */ new Map();
  #viewport;
  #tagOfId;
  #white = 0;
  #coloured = 0;
  /** `tagOfId`: the element that has an id, by its tag. */
  constructor(viewport, tagOfId) {
    this.#viewport = viewport;
    this.#tagOfId = tagOfId;
  }
  count(kind) {
    this.#counts.set(kind, (this.#counts.get(kind) ?? 0) + 1);
  }
  counted() {
    return {
      ...Object.fromEntries(this.#counts),
      ...this.#white > 0 && this.#coloured > 0 ? { white: this.#white } : {}
    };
  }
  /** Whether an element is none that a shape is made of. */
  isLeftOut(tag, isHidden) {
    const kind = elements[tag];
    if (kind === void 0) return false;
    if (!isHidden) this.count(kind);
    return true;
  }
  /** What an element has done to it, and its content, that is passed over. */
  effects(property) {
    for (const [name, kind] of Object.entries(effects)) if (isSet(property(name))) this.count(kind);
    if (["marker", "marker-start", "marker-mid", "marker-end"].some((name) => isSet(property(name))))
      this.count("marker");
  }
  paintOf(property, inherited) {
    const said = (name, before) => {
      const value = property(name);
      return value === void 0 || value === "inherit" ? before : value;
    };
    return {
      fill: said("fill", inherited.fill),
      stroke: said("stroke", inherited.stroke),
      strokeWidth: said("stroke-width", inherited.strokeWidth)
    };
  }
  /**
   * What of an outline is to be filled. Closed outlines are, also if only their line is drawn: that is how outlines to be cut
   * come. Open ones are lines unless they have a fill; what is painted in no way is not there.
   */
  filled(curves, paint, transforms) {
    const isFilled = !isNone(paint.fill);
    const isStroked = !isNone(paint.stroke) && userUnits(paint.strokeWidth, 1) > 0;
    if (!isFilled && !isStroked) return [];
    if (isFilled && !isStroked) {
      this.#fillOf(paint);
      return curves;
    }
    const outlines = outlinesIn(curves);
    const kept = outlines.filter((outline) => enclosesArea(outline) && (isFilled || isClosed(outline)));
    if (isStroked && kept.length < outlines.length) this.count("line");
    if (kept.length === 0) return [];
    if (isStroked && this.#isThick(paint, transforms)) this.count("thickness");
    this.#fillOf(paint);
    return kept.flat();
  }
  /** Colours and patterns do not count. */
  #fillOf({ fill }) {
    if (this.#tagOfId(/^url\(["']?#([^"')]+)/.exec(fill)?.[1] ?? "") === "pattern") this.count("pattern");
    if (/^(?:white|#fff(?:fff)?)$/i.test(fill)) this.#white += 1;
    else this.#coloured += 1;
  }
  #isThick({ strokeWidth }, transforms) {
    const side3 = Math.max(this.#viewport.width, this.#viewport.height);
    if (side3 === 0) return false;
    const width = userUnits(strokeWidth, side3) * scaleOf(transforms);
    return width > thickShare * side3;
  }
};
var isNone = (paint) => paint === "none" || paint === "transparent";
var isSet = (value) => value !== void 0 && value !== "none" && value !== "";
function scaleOf(transforms) {
  const unit = parseSvgPath("M0 0L1 0L0 1", 1, transforms);
  if ("problem" in unit) return 1;
  const [origin2, right, down] = unit.curves;
  if (origin2?.type !== "M" || right?.type !== "L" || down?.type !== "L") return 1;
  const area2 = (right.x - origin2.x) * (down.y - origin2.y) - (right.y - origin2.y) * (down.x - origin2.x);
  return Math.sqrt(Math.abs(area2));
}
function outlinesIn(curves) {
  const outlines = [];
  let outline = [];
  for (const command of curves) {
    if (command.type === "M" && outline.length > 0) {
      outlines.push(outline);
      outline = [];
    }
    outline.push(command);
  }
  return outline.length > 0 ? [...outlines, outline] : outlines;
}
function isClosed(outline) {
  const [first] = outline;
  const last = outline.at(-1);
  if (!first || !last || first.type !== "M") return true;
  return last.type === "Z" || Math.hypot(last.x - first.x, last.y - first.y) < closedMm;
}
function enclosesArea(outline) {
  const drawn = outline.filter(({ type }) => type !== "M" && type !== "Z");
  return drawn.length > 1 || drawn.some(({ type }) => type !== "L");
}

// src/tag/svg-style.ts
function parseStyleSheet(css) {
  const rules = /* @__PURE__ */ new Map();
  for (const rule of withoutComments(css).split("}")) {
    const brace = rule.lastIndexOf("{");
    if (brace < 0) continue;
    const declarations = declarationsIn(rule.slice(brace + 1));
    const selectors = rule.slice(0, brace).split(",");
    for (const selector of selectors.map((each) => each.trim())) {
      if (/^[.#]?[\w-]+$/.test(selector)) rules.set(selector, { ...rules.get(selector), ...declarations });
    }
  }
  return rules;
}
function withoutComments(css) {
  const [first = "", ...rest] = css.split("/*");
  return first + rest.map((part) => part.includes("*/") ? part.slice(part.indexOf("*/") + 2) : "").join("");
}
function declarationsIn(style) {
  const found = {};
  for (const declaration of style.split(";")) {
    const colon = declaration.indexOf(":");
    if (colon < 0) continue;
    const value = declaration.slice(colon + 1).replace("!important", "");
    found[declaration.slice(0, colon).trim()] = value.trim();
  }
  return found;
}
function propertiesOf(tag, attributes, sheet) {
  const own = attributes["style"] === void 0 ? {} : declarationsIn(attributes["style"]);
  const classes = attributes["class"]?.trim().split(/\s+/) ?? [];
  const selectors = [`#${attributes["id"] ?? ""}`, ...classes.map((name) => `.${name}`).reverse(), tag];
  return (name) => own[name] ?? selectors.map((selector) => sheet.get(selector)?.[name]).find((value) => value !== void 0) ?? attributes[name];
}

// src/tag/svg-drawing.ts
var largestDrawing = 2e6;
var deepest4 = 100;
var mostShapes = 5e3;
var mostCommands2 = 2e5;
var mostElements = 5e4;
function parseSvgDrawing(svg) {
  if (svg.length > largestDrawing) return { problem: "is larger than two million characters" };
  const parser = new XMLParser({
    preserveOrder: true,
    ignoreAttributes: false,
    attributeNamePrefix: "",
    processEntities: false,
    parseAttributeValue: false
  });
  let nodes;
  try {
    nodes = parser.parse(svg);
  } catch (error) {
    if (error instanceof Error && /nested/i.test(error.message)) return { problem: "is nested too deeply" };
    return { problem: "is damaged or cut short: save it again in your drawing program" };
  }
  const root = nodes.find((node) => tagOf(node) === "svg");
  if (!root) return { problem: "is not an SVG drawing" };
  try {
    return new Reader(root).read();
  } catch (error) {
    if (error instanceof Refusal) return { problem: error.message };
    throw error;
  }
}
var Refusal = class extends Error {
};
var undrawn = /* @__PURE__ */ new Set([
  ...["defs", "symbol", "clipPath", "mask", "marker", "pattern", "filter", "linearGradient", "radialGradient"],
  ...["style", "script", "metadata", "title", "desc"]
]);
var Reader = class {
  #root;
  #scale;
  #viewport;
  #named = /* @__PURE__ */ new Map();
  #shapes = [];
  #sheet;
  #leftOut;
  #elements = 0;
  #commands = 0;
  constructor(root) {
    this.#root = root;
    const attributes = attributesOf(root);
    this.#viewport = viewportOf(attributes);
    this.#scale = mmPerUnit(attributes, this.#viewport);
    const css = [];
    this.#index(childrenOf(root), 0, css);
    this.#sheet = parseStyleSheet(css.join("\n"));
    this.#leftOut = new LeftOutCounter(this.#viewport, (id) => tagOf(this.#named.get(id) ?? {}));
  }
  read() {
    const properties = propertiesOf("svg", attributesOf(this.#root), this.#sheet);
    const paint = this.#leftOut.paintOf(properties, { fill: "black", stroke: "none", strokeWidth: "1" });
    this.#children(this.#root, { transforms: [], rule: "nonzero", paint, depth: 0 });
    const leftOut = this.#leftOut.counted();
    if (this.#shapes.length > 0) return { shapes: this.#shapes, leftOut };
    return {
      problem: leftOut.line ? "has only lines without a fill, and only filled shapes are used" : "has no paths or shapes"
    };
  }
  /** Elements by their names; style sheets are put into `css`. */
  #index(nodes, depth, css) {
    if (depth > deepest4) throw new Refusal(`is nested more than ${deepest4} deep`);
    for (const node of nodes) {
      const { id } = attributesOf(node);
      if (id !== void 0 && !this.#named.has(id)) this.#named.set(id, node);
      if (tagOf(node) === "style") css.push(...childrenOf(node).map(textOf2));
      this.#index(childrenOf(node), depth + 1, css);
    }
  }
  #children(node, inherited) {
    for (const child of childrenOf(node)) this.#element(child, inherited);
  }
  #element(node, inherited) {
    if (++this.#elements > mostElements) throw new Refusal(`has more than ${mostElements} elements`);
    if (inherited.depth > deepest4) throw new Refusal(`is nested more than ${deepest4} deep`);
    const tag = tagOf(node);
    if (tag === void 0 || undrawn.has(tag)) return;
    const attributes = attributesOf(node);
    const property = propertiesOf(tag, attributes, this.#sheet);
    if (property("display") === "none") return;
    const isHidden = property("visibility") === "hidden";
    if (this.#leftOut.isLeftOut(tag, isHidden)) return;
    this.#leftOut.effects(property);
    const ruled = property("fill-rule");
    const own = {
      transforms: [...ownTransforms(tag, attributes, this.#viewport), ...inherited.transforms],
      rule: ruled === "evenodd" || ruled === "nonzero" ? ruled : inherited.rule,
      paint: this.#leftOut.paintOf(property, inherited.paint),
      depth: inherited.depth + 1
    };
    if (tag === "use") {
      const target = this.#named.get((attributes["href"] ?? attributes["xlink:href"] ?? "").replace(/^#/, ""));
      if (target && tagOf(target) === "symbol") {
        const into = fitted(attributesOf(target), attributes, this.#viewport);
        this.#children(target, { ...own, transforms: [...into, ...own.transforms] });
      } else if (target) this.#element(target, own);
      else this.#leftOut.count("copy");
      return;
    }
    const data = isHidden ? void 0 : shapeData(tag, attributes, this.#viewport);
    if (data !== void 0) this.#shape(data, own);
    this.#children(node, own);
  }
  #shape(data, { transforms, rule, paint }) {
    if (this.#shapes.length >= mostShapes) throw new Refusal(`has more than ${mostShapes} shapes`);
    const result = parseSvgPath(data, this.#scale, transforms);
    if ("problem" in result) throw new Refusal(`has a faulty path: ${result.problem}`);
    this.#commands += result.curves.length;
    if (this.#commands > mostCommands2) throw new Refusal(`has more than ${mostCommands2} lines and curves`);
    const curves = this.#leftOut.filled(result.curves, paint, transforms);
    if (curves.length > 0) this.#shapes.push({ curves, rule });
  }
};
function tagOf(node) {
  return Object.keys(node).find((key) => key !== ":@")?.replace(/^svg:/, "");
}
function textOf2(node) {
  const text = node["#text"];
  return typeof text === "string" ? text : "";
}
function attributesOf(node) {
  return node[":@"] ?? {};
}
function childrenOf(node) {
  const key = Object.keys(node).find((each) => each !== ":@");
  const children = key === void 0 ? void 0 : node[key];
  return Array.isArray(children) ? children : [];
}
function ownTransforms(tag, attributes, viewport) {
  const { transform: transform2 } = attributes;
  const own = transform2 === void 0 ? [] : [transform2];
  if (tag !== "use" && tag !== "svg") return own;
  const x = userUnits(attributes["x"], viewport.width);
  const y = userUnits(attributes["y"], viewport.height);
  const into = tag === "svg" ? fitted(attributes, attributes, viewport) : [];
  return [...into, `translate(${x} ${y})`, ...own];
}
function fitted({ viewBox }, box, viewport) {
  const [x = 0, y = 0, width = 0, height = 0] = numbers(viewBox);
  if (!(width > 0 && height > 0)) return [];
  const boxWidth = userUnits(box["width"] ?? "100%", viewport.width);
  const boxHeight = userUnits(box["height"] ?? "100%", viewport.height);
  const scale = Math.min(boxWidth / width, boxHeight / height);
  const [left, top] = [(boxWidth - scale * width) / 2, (boxHeight - scale * height) / 2];
  return [`translate(${-x} ${-y})`, `scale(${scale})`, `translate(${left} ${top})`];
}
function numbers(list = "") {
  return list.trim().split(/[\s,]+/).map(Number);
}
function viewportOf(attributes) {
  const [, , width = 0, height = 0] = numbers(attributes["viewBox"]);
  if (width > 0 && height > 0) return { width, height, given: true };
  return { width: userUnits(attributes["width"], 0), height: userUnits(attributes["height"], 0), given: false };
}
var mmPerPx = 25.4 / 96;
function mmPerUnit(attributes, { width, height, given }) {
  if (!given) return mmPerPx;
  const along2 = (written, units2) => {
    const px = written?.trim().endsWith("%") ? 0 : userUnits(written, 0);
    return px > 0 ? [px * mmPerPx / units2] : [];
  };
  const scales = [...along2(attributes["width"], width), ...along2(attributes["height"], height)];
  return scales.length > 0 ? Math.min(...scales) : mmPerPx;
}

// src/tag/load.ts
async function loadFiles(model, loading2) {
  const settings = [];
  const drawings = /* @__PURE__ */ new Map();
  const findings = [];
  const files = /* @__PURE__ */ new Set();
  const locate = (relative) => {
    const path = loading2.locate(relative);
    if (path !== void 0) files.add(path);
    return path;
  };
  for (const shape of everyShape(model)) {
    const { generator } = shape;
    if (generator.kind === "text") {
      const isFile = isFontFile(generator.font);
      const file = isFile ? locate(generator.font) : void 0;
      const path = [...shape.path, "font"];
      if (isFile && file === void 0) {
        findings.push(outside3(path, generator.font));
        continue;
      }
      const { weight, italic } = generator;
      const answer = await loading2.library.load(
        file === void 0 ? { family: generator.font, weight, italic } : { file, weight, italic }
      );
      if ("face" in answer) settings.push({ shape, text: generator, face: answer.face });
      else
        findings.push({
          code: answer.problem.kind,
          severity: "error",
          path,
          message: answer.problem.message + didYouMean(answer.problem.suggestions),
          suggestions: answer.problem.suggestions
        });
    } else if (generator.kind === "drawing") {
      const path = [...shape.path, "drawing"];
      const known3 = drawings.get(generator.file);
      if (known3) {
        findings.push(...leftOutFindings(generator.file, known3.leftOut, path));
        continue;
      }
      const file = locate(generator.file);
      const result = file === void 0 ? outside3(path, generator.file) : await loadDrawing(file, generator.file, path, loading2);
      if ("code" in result) findings.push(result);
      else {
        drawings.set(generator.file, result);
        findings.push(...leftOutFindings(generator.file, result.leftOut, path));
      }
    }
  }
  return {
    fonts: new Map(settings.map(({ text, face: face2 }) => [text, face2])),
    drawings,
    findings: [...findings, ...fontFindings(settings)],
    fontsUsed: fontsUsed(settings),
    files: [...files]
  };
}
function outside3(path, name) {
  return { code: "bad-file", severity: "error", path, message: `\u201C${name}\u201D is not inside the spec's folder.` };
}
async function loadDrawing(file, name, path, loading2) {
  const fault = (message) => ({ code: "bad-file", severity: "error", path, message });
  let bytes;
  try {
    bytes = await loading2.read(file);
  } catch {
    const suggestions = nearFiles(name, await loading2.beside(file).catch(() => []));
    return { ...fault(`The drawing \u201C${name}\u201D cannot be found or read.${didYouMean(suggestions)}`), suggestions };
  }
  const parsed = parseSvgDrawing(new TextDecoder().decode(bytes));
  if ("problem" in parsed) return fault(`The drawing \u201C${name}\u201D ${parsed.problem}.`);
  return { id: contentHash([bytes]), ...parsed };
}
function everyShape(model) {
  const found = /* @__PURE__ */ new Set();
  for (const shape of model.shapes.values()) visit2(shape, found);
  for (const piece of model.pieces) for (const shape of shapesOf(piece)) found.add(shape);
  return found;
}
function shapesOf({ body, cut, score, engrave, hangers }) {
  const found = /* @__PURE__ */ new Set();
  for (const { shape } of [...body, ...cut, ...score, ...engrave]) visit2(shape, found);
  for (const { on } of hangers) if (on) visit2(on.shape, found);
  return found;
}
function behind(shape) {
  const found = /* @__PURE__ */ new Set();
  visit2(shape, found);
  return found;
}
function visit2(shape, found) {
  if (found.has(shape)) return;
  found.add(shape);
  const { generator, modifiers } = shape;
  if ("shapes" in generator) for (const each of generator.shapes) visit2(each, found);
  if ("shape" in generator) visit2(generator.shape, found);
  if (modifiers.fit) visit2(modifiers.fit.shape, found);
  if (modifiers.place) visit2(modifiers.place.shape, found);
}

// src/tag/around-fitted.ts
var Neighbourhood = class {
  #pieces;
  /** Fitted shapes, each with its rank. */
  #ranks = /* @__PURE__ */ new Map();
  #behind = /* @__PURE__ */ new Map();
  constructor({ pieces }) {
    this.#pieces = pieces;
    for (const piece of pieces) {
      for (const { entry } of marksOf(piece, pieces)) {
        for (const shape of this.#partsOf(entry.shape)) {
          if (shape.modifiers.fit && !this.#ranks.has(shape)) this.#ranks.set(shape, this.#ranks.size);
        }
      }
    }
  }
  of(shape) {
    const rank = this.#ranks.get(shape);
    if (rank === void 0) return { entries: [], hung: [] };
    const room = this.#all(shape.modifiers.fit.shape);
    const isEarlier = (other) => [...this.#all(other)].every((each) => (this.#ranks.get(each) ?? -1) < rank);
    const entries = [];
    const hung2 = [];
    for (const base of this.#basesOf(shape)) {
      const layers = this.#pieces.filter((piece) => bottomOf(piece, this.#pieces) === base);
      for (const neighbour of layers.flatMap((piece) => marksOf(piece, this.#pieces))) {
        if (isEarlier(neighbour.entry.shape) && !room.has(neighbour.entry.shape)) entries.push(neighbour);
      }
      const hangsOn = [...base.body.map((entry) => entry.shape), ...base.hangers.flatMap(({ on }) => on?.shape ?? [])];
      if (hangsOn.every(isEarlier)) hung2.push(base);
    }
    return { entries, hung: hung2 };
  }
  /** The pieces that carry it. */
  #basesOf(shape) {
    const having = this.#pieces.filter(
      (piece) => marksOf(piece, this.#pieces).some(({ entry }) => this.#partsOf(entry.shape).has(shape))
    );
    return new Set(having.map((piece) => bottomOf(piece, this.#pieces)));
  }
  /** The shape with all that it is made from, put on or fitted into. */
  #all(shape) {
    const known3 = this.#behind.get(shape) ?? behind(shape);
    this.#behind.set(shape, known3);
    return known3;
  }
  /** The shape with all that it is made from. */
  #partsOf(shape) {
    const found = /* @__PURE__ */ new Set();
    const waiting = [shape];
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      if (found.has(next)) continue;
      found.add(next);
      const { generator } = next;
      if ("shapes" in generator) waiting.push(...generator.shapes.toReversed());
      if ("shape" in generator) waiting.push(generator.shape);
    }
    return found;
  }
};
function marksOf(piece, pieces) {
  const body = bottomOf(piece, pieces) === piece ? [] : piece.body;
  return [
    ...[...body, ...piece.cut, ...piece.engrave].map((entry) => ({ piece, entry, isLine: false })),
    ...piece.score.map((entry) => ({ piece, entry, isLine: true }))
  ];
}

// src/geometry/bridges.ts
var pastMm = 0.05;
function bridged(region, width, sides) {
  const holes = region.filter((ring) => ringArea(ring) < 0);
  const strips = holes.flatMap((hole) => sides.flatMap((side3) => strokeStrip(region, hole, width, side3)));
  return { region: strips.length > 0 ? difference(region, [strips]) : region, strips };
}
function strokeStrip(region, hole, width, side3) {
  const upright = side3 === "top" || side3 === "bottom";
  const sign2 = side3 === "top" || side3 === "right" ? 1 : -1;
  const turn3 = ({ x, y }) => upright ? { x: sign2 * y, y: x } : { x: sign2 * x, y };
  const rings = region.map((ring2) => ring2.map(turn3));
  const turned2 = hole.map(turn3);
  const box = boundsOf([turned2]);
  const middle2 = innerPoint(turned2).y;
  const ends = [-width / 2, 0, width / 2].map((aside2) => strokeEnd(rings, turned2, middle2 + aside2));
  const end = Math.max(...ends.filter((each) => each !== void 0));
  if (!Number.isFinite(end)) return [];
  const start = Math.min(...[-width / 2, 0, width / 2].map((aside2) => lastInside(turned2, middle2 + aside2) ?? box.maxX)) - pastMm;
  const back = (along2, aside2) => upright ? { x: aside2, y: sign2 * along2 } : { x: sign2 * along2, y: aside2 };
  const [low, high] = [middle2 - width / 2, middle2 + width / 2];
  const ring = [back(start, low), back(end + pastMm, low), back(end + pastMm, high), back(start, high)];
  return [ringArea(ring) < 0 ? ring.reverse() : ring];
}
function strokeEnd(rings, hole, y) {
  const from = lastInside(hole, y);
  if (from === void 0) return void 0;
  const beyond4 = rings.flatMap((ring) => crossings3(ring, y)).filter((x) => x > from + 1e-6);
  return beyond4.length > 0 ? Math.min(...beyond4) : void 0;
}
function lastInside(hole, y) {
  const xs = crossings3(hole, y);
  return xs.length > 0 ? Math.max(...xs) : void 0;
}
function crossings3(ring, y) {
  const found = [];
  let previous = ring[ring.length - 1];
  for (const point of ring) {
    if (point.y > y !== previous.y > y)
      found.push(point.x + (y - point.y) * (previous.x - point.x) / (previous.y - point.y));
    previous = point;
  }
  return found;
}

// src/geometry/straps.ts
var seekToleranceMm = 0.02;
var sidewaysCost = 2;
function strapped(region, width) {
  const strips = strapsFor(region, width);
  return strips.length === 0 ? { region, strips } : { region: union([region, ...strips.map((each) => [each])]), strips };
}
function strapsFor(region, width) {
  const parts = partsOf(region);
  if (parts.length < 2) return [];
  const outlines = parts.map((part) => simplified([part[0]], seekToleranceMm)[0] ?? part[0]);
  const strips = [];
  const joined3 = /* @__PURE__ */ new Set([0]);
  const nearest4 = outlines.map((outline) => shortestBetween(outlines[0], outline));
  while (joined3.size < parts.length) {
    let next = -1;
    for (let i = 0; i < parts.length; i += 1) {
      if (!joined3.has(i) && (next < 0 || costOf(nearest4[i]) < costOf(nearest4[next]))) next = i;
    }
    joined3.add(next);
    strips.push(strip(nearest4[next], width));
    for (let i = 0; i < parts.length; i += 1) {
      if (joined3.has(i)) continue;
      const gap = shortestBetween(outlines[next], outlines[i]);
      if (costOf(gap) < costOf(nearest4[i])) nearest4[i] = gap;
    }
  }
  return strips;
}
function costOf({ from, to }) {
  return Math.hypot(sidewaysCost * (to.x - from.x), to.y - from.y);
}
function strip({ from, to, length }, width) {
  const along2 = length > 0 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x: 0, y: 1 };
  const half = width / 2;
  const corner = (end, ahead, aside2) => ({
    x: end.x + along2.x * ahead - along2.y * aside2,
    y: end.y + along2.y * ahead + along2.x * aside2
  });
  return [corner(from, -half, -half), corner(to, half, -half), corner(to, half, half), corner(from, -half, half)];
}
var evenMm2 = 0.02;
function shortestBetween(a, b) {
  const back = fromCorners(b, a).map(({ from: from2, to: to2, length: length2 }) => ({ from: to2, to: from2, length: length2 }));
  const all = [...fromCorners(a, b), ...back];
  const shortest = all.reduce((best, gap) => gap.length < best.length ? gap : best);
  const even2 = all.filter(({ length: length2 }) => length2 < shortest.length + evenMm2);
  const from = middleOf4(even2.map((gap) => gap.from));
  const to = middleOf4(even2.map((gap) => gap.to));
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const onBoth = nearestOn2(a, from).length < evenMm2 && nearestOn2(b, to).length < evenMm2;
  return onBoth && length < shortest.length + evenMm2 ? { from, to, length } : shortest;
}
function middleOf4(points) {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
}
function fromCorners(corners, outline) {
  return corners.map((from) => nearestOn2(outline, from));
}
function nearestOn2(outline, from) {
  let best = { from, to: outline[0], length: Infinity };
  let start = outline[outline.length - 1];
  for (const end of outline) {
    const dx = end.x - start.x;
    const dy = end.y - start.y;
    const squared = dx * dx + dy * dy;
    const t = squared === 0 ? 0 : ((from.x - start.x) * dx + (from.y - start.y) * dy) / squared;
    const clamped = Math.min(1, Math.max(0, t));
    const to = { x: start.x + clamped * dx, y: start.y + clamped * dy };
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length < best.length) best = { from, to, length };
    start = end;
  }
  return best;
}

// src/tag/fit/scale.ts
var growthStep = 1.02;
var closeShare = 2e-4;
var touchingMm25 = 1e-3;
function largestScale(shape, shapeCentre, room, centre) {
  const seen = seenScale(shape, shapeCentre, room, centre);
  if (seen === 0 || allSeen(room, centre)) return seen;
  const fits2 = (scale) => {
    const move = {
      a: scale,
      b: 0,
      c: 0,
      d: scale,
      e: centre.x - scale * shapeCentre.x,
      f: centre.y - scale * shapeCentre.y
    };
    return area(difference(transform(shape, move), [room])) < touchingMm25;
  };
  let low = seen;
  let high = seen * growthStep;
  while (fits2(high)) {
    low = high;
    high *= growthStep;
  }
  while (high / low > 1 + closeShare) {
    const middle2 = Math.sqrt(low * high);
    if (fits2(middle2)) low = middle2;
    else high = middle2;
  }
  return low;
}
function allSeen(room, centre) {
  const [ring, ...others2] = room;
  if (!ring || others2.length > 0) return false;
  return ring.every((from, index) => {
    const to = ring[(index + 1) % ring.length];
    return (from.x - centre.x) * (to.y - centre.y) - (from.y - centre.y) * (to.x - centre.x) >= 0;
  });
}
function seenScale(shape, shapeCentre, room, centre) {
  const outline = shape.map((ring) => ring.map(({ x, y }) => ({ x: x - shapeCentre.x, y: y - shapeCentre.y })));
  const walls = room.map((ring) => ring.map(({ x, y }) => ({ x: x - centre.x, y: y - centre.y })));
  let scale = Infinity;
  for (const corner of outline.flat()) scale = Math.min(scale, nearestCrossing(corner, walls));
  for (const corner of walls.flat()) {
    const reach = furthestCrossing(corner, outline);
    if (reach > 0) scale = Math.min(scale, 1 / reach);
  }
  return Number.isFinite(scale) ? scale : 0;
}
function nearestCrossing(ray, region) {
  let nearest4 = Infinity;
  eachCrossing(ray, region, (at2) => nearest4 = Math.min(nearest4, at2));
  return nearest4;
}
function furthestCrossing(ray, region) {
  let furthest2 = 0;
  eachCrossing(ray, region, (at2) => furthest2 = Math.max(furthest2, at2));
  return furthest2;
}
function eachCrossing(ray, region, found) {
  for (const ring of region) {
    let from = ring[ring.length - 1];
    let fromSide = ray.x * from.y - ray.y * from.x;
    for (const to of ring) {
      const toSide = ray.x * to.y - ray.y * to.x;
      if (fromSide > 0 !== toSide > 0) {
        const share = fromSide / (fromSide - toSide);
        const x = from.x + share * (to.x - from.x);
        const y = from.y + share * (to.y - from.y);
        const t = (x * ray.x + y * ray.y) / (ray.x * ray.x + ray.y * ray.y);
        if (t >= 0) found(t);
      }
      from = to;
      fromSide = toSide;
    }
  }
}

// src/tag/fit/fitted.ts
var regrowths = 2;
async function fitted2(outline, fitting) {
  const { modifiers, rooms, most: most4, sized, checkpoint } = fitting;
  const box = boundsOf(rooms.free.region);
  if (!outline.bounds || !box) return void 0;
  const guess = (box.maxX - box.minX) / Math.max(outline.bounds.maxX - outline.bounds.minX, 1e-9);
  const turned2 = mapSolid(await outline.at(guess, guess, checkpoint), turning(modifiers, { x: 0, y: 0 }));
  let found = find(turned2, rooms.free, fitting, most4 / guess, modifiers.grow ?? 0);
  if (!found) return void 0;
  let scale = guess * found.scale;
  let solid = await sized(scale);
  await checkpoint();
  for (let round3 = 0; (modifiers.grow || outline.changes) && round3 < regrowths; round3++) {
    const again = find(turnedSolid(solid, modifiers), rooms.outer, fitting, most4 / scale, 0);
    if (!again) break;
    found = again;
    scale *= again.scale;
    solid = await sized(scale);
    await checkpoint();
  }
  if (modifiers.place) return { solid };
  const bounds = boundsOf(solid.region);
  if (!bounds) return void 0;
  const turn3 = turning(modifiers, boxCentre(bounds));
  const middle2 = centreOf(mapSolid(solid, turn3), "eye");
  return { solid, move: chain(turn3, translation(found.x - middle2.x, found.y - middle2.y)) };
}
function find(turned2, room, { modifiers, goal }, most4, toGrow) {
  const { place } = modifiers;
  const own = centreOf(turned2, place?.by ?? "eye");
  if (!own) return void 0;
  if (!place || !goal) return largestFit(turned2, own, room, { most: most4 });
  const pin = pinned(turned2, own, goal, modifiers, toGrow);
  if (!pin || !contains(room.region, pin.at)) return void 0;
  const scale = Math.min(most4, largestScale(turned2.region, pin.own, room.region, pin.at));
  return scale > 0 ? { scale, ...pin.at } : void 0;
}
var offEdgeMm = 1e-3;
function pinned(turned2, own, { target, margin }, { place, fit }, toGrow) {
  const box = boundsOf(turned2.region);
  const frame2 = boundsOf(target.region);
  const centre = centreOf({ region: target.region }, place.by);
  if (!box || !frame2 || !centre) return void 0;
  const inset = Math.max(margin, fit.margin) + toGrow + offEdgeMm;
  const { at: at2 } = place;
  const x = at2.includes("left") ? [box.minX, frame2.minX + inset] : at2.includes("right") ? [box.maxX, frame2.maxX - inset] : [own.x, centre.x];
  const y = at2.includes("bottom") ? [box.minY, frame2.minY + inset] : at2.includes("top") ? [box.maxY, frame2.maxY - inset] : [own.y, centre.y];
  return { own: { x: x[0], y: y[0] }, at: { x: x[1], y: y[1] } };
}
function turnedSolid(solid, modifiers) {
  const bounds = boundsOf(solid.region);
  return bounds ? mapSolid(solid, turning(modifiers, boxCentre(bounds))) : solid;
}
function turning({ rotate, mirror }, about) {
  const turn3 = rotate === void 0 ? identity : rotation(rotate, about);
  if (!mirror) return turn3;
  return chain(turn3, mirror === "left-right" ? scaling(-1, 1, about) : scaling(1, -1, about));
}

// src/tag/fit/no-room.ts
var leastMm2 = 1e-3;
var halvings = 14;
function noRoom({ shape, part, margin, clear }, target, around4 = [], grow) {
  const name = `\u201C${part ?? shape.name ?? "the shape"}\u201D`;
  const isRoom = (less2) => {
    const inner = offset(target, -Math.max(0, margin + grow - less2));
    const kept2 = offset(around4, Math.max(0, clear + grow - less2));
    return area(difference(inner, [kept2])) > leastMm2;
  };
  let [low, high] = [0, Math.max(margin, clear) + grow];
  if (isRoom(low))
    return `This shape goes into ${name} at no size where it is put; leave out \u201Cplace\u201D, or put it elsewhere.`;
  if (!isRoom(high))
    return `There is no room left in ${name}: the other marks and openings of the piece take all of it.`;
  for (let i = 0; i < halvings; i++) {
    const middle2 = (low + high) / 2;
    if (isRoom(middle2)) high = middle2;
    else low = middle2;
  }
  const kept = [
    ...margin > 0 ? [`a margin of ${mm(margin)}`] : [],
    ...around4.length > 0 && clear > 0 ? [`${mm(clear)} clear of what else is there`] : [],
    ...grow > 0 ? [`${mm(grow)} of growth`] : []
  ].join(" and ");
  return `There is no room in ${name}: with ${kept} it is more than ${mm(2 * low)} too narrow.`;
}

// src/tag/around.ts
var sourceToleranceMm = 5e-3;
var nextToleranceMm = 2e-3;
var firstMm = 2;
var farMm = 2 * firstMm;
function around(region, { by, corners, keepHoles, bays }) {
  const source = simplified(keepHoles ? region : withoutHoles(region), sourceToleranceMm);
  const radius = bays / 2;
  let grown4;
  if (corners === "round") grown4 = closed2(grownFar(source, by + radius), radius);
  else {
    const followed = offset(source, by, corners);
    grown4 = radius > 0 ? closed2(offset(simplified(followed, sourceToleranceMm), radius), radius) : followed;
  }
  return keepHoles ? grown4 : withoutHoles(grown4);
}
function grownFar(region, by) {
  if (by <= farMm) return offset(region, by);
  return offset(simplified(offset(region, firstMm), nextToleranceMm), by - firstMm);
}
function closed2(wide2, radius) {
  return radius > 0 ? offset(simplified(wide2, sourceToleranceMm), -radius) : wide2;
}
function withoutHoles(region) {
  return normalise(region.filter((ring) => ringArea(ring) > 0));
}

// src/geometry/curves.ts
var flatteningToleranceMm = 2e-3;
function flatten(path, options = {}) {
  const tolerance = options.tolerance ?? flatteningToleranceMm;
  if (!(tolerance > 0)) throw new RangeError(`Flattening tolerance must be above 0, not ${tolerance}.`);
  const rings = [];
  let ring = [];
  let start = { x: 0, y: 0 };
  let at2 = start;
  const add = (point) => {
    if (!Number.isFinite(point.x) || !Number.isFinite(point.y)) {
      throw new RangeError("An outline has a coordinate that is not a number.");
    }
    const last = ring.at(-1);
    if (last?.x !== point.x || last.y !== point.y) ring.push(point);
    at2 = point;
  };
  const finish = () => {
    const first = ring[0];
    const last = ring.at(-1);
    if (ring.length > 1 && first.x === last.x && first.y === last.y) ring.pop();
    if (ring.length > 2) rings.push(ring);
    ring = [];
    at2 = start;
  };
  for (const command of options.affine ? transformCurves(path, options.affine) : path) {
    if (command.type === "Z") {
      finish();
      continue;
    }
    if (command.type === "M") {
      finish();
      start = { x: command.x, y: command.y };
    } else if (ring.length === 0) {
      add(start);
    }
    switch (command.type) {
      case "M":
      case "L":
        add({ x: command.x, y: command.y });
        break;
      case "Q": {
        const from = at2;
        const steps2 = quadraticSteps(from, command, tolerance);
        for (let i = 1; i < steps2; i++) add(quadraticAt(from, command, i / steps2));
        add({ x: command.x, y: command.y });
        break;
      }
      case "C": {
        const from = at2;
        const steps2 = cubicSteps(from, command, tolerance);
        for (let i = 1; i < steps2; i++) add(cubicAt(from, command, i / steps2));
        add({ x: command.x, y: command.y });
        break;
      }
    }
  }
  finish();
  return rings;
}
var maxSteps = 1e5;
function stepCount(exact) {
  if (!(exact <= maxSteps)) throw new RangeError("An outline has a curve that is too large to draw.");
  return Math.max(1, Math.ceil(exact));
}
function quadraticSteps(from, c, tolerance) {
  const bend = Math.hypot(from.x - 2 * c.x1 + c.x, from.y - 2 * c.y1 + c.y);
  return stepCount(Math.sqrt(bend / (4 * tolerance)));
}
function cubicSteps(from, c, tolerance) {
  const bend = Math.max(
    Math.hypot(from.x - 2 * c.x1 + c.x2, from.y - 2 * c.y1 + c.y2),
    Math.hypot(c.x1 - 2 * c.x2 + c.x, c.y1 - 2 * c.y2 + c.y)
  );
  return stepCount(Math.sqrt(0.75 * bend / tolerance));
}
function quadraticAt(from, c, t) {
  const s = 1 - t;
  return {
    x: s * s * from.x + 2 * s * t * c.x1 + t * t * c.x,
    y: s * s * from.y + 2 * s * t * c.y1 + t * t * c.y
  };
}
function cubicAt(from, c, t) {
  const s = 1 - t;
  return {
    x: s * s * s * from.x + 3 * s * s * t * c.x1 + 3 * s * t * t * c.x2 + t * t * t * c.x,
    y: s * s * s * from.y + 3 * s * s * t * c.y1 + 3 * s * t * t * c.y2 + t * t * t * c.y
  };
}
function transformCurves(path, m) {
  const mapX = (x, y) => m.a * x + m.c * y + m.e;
  const mapY = (x, y) => m.b * x + m.d * y + m.f;
  return path.map((c) => {
    switch (c.type) {
      case "M":
      case "L":
        return { type: c.type, x: mapX(c.x, c.y), y: mapY(c.x, c.y) };
      case "Q":
        return { type: "Q", x1: mapX(c.x1, c.y1), y1: mapY(c.x1, c.y1), x: mapX(c.x, c.y), y: mapY(c.x, c.y) };
      case "C":
        return {
          type: "C",
          x1: mapX(c.x1, c.y1),
          y1: mapY(c.x1, c.y1),
          x2: mapX(c.x2, c.y2),
          y2: mapY(c.x2, c.y2),
          x: mapX(c.x, c.y),
          y: mapY(c.x, c.y)
        };
      case "Z":
        return c;
    }
  });
}
function reverseCurves(path) {
  const out = [];
  let contour = [];
  const finish = () => {
    const last = contour.at(-1);
    if (!last) return;
    out.push({ type: "M", x: last.x, y: last.y });
    for (let i = contour.length - 1; i > 0; i--) {
      const command = contour[i];
      const { x, y } = contour[i - 1];
      if (command.type === "Q") out.push({ type: "Q", x1: command.x1, y1: command.y1, x, y });
      else if (command.type === "C") {
        out.push({ type: "C", x1: command.x2, y1: command.y2, x2: command.x1, y2: command.y1, x, y });
      } else out.push({ type: "L", x, y });
    }
    out.push({ type: "Z" });
    contour = [];
  };
  let start = { x: 0, y: 0 };
  for (const command of path) {
    if (command.type === "M" || command.type === "Z") finish();
    if (command.type === "Z") continue;
    if (command.type === "M") start = command;
    else if (contour.length === 0) contour.push({ type: "M", x: start.x, y: start.y });
    contour.push(command);
  }
  finish();
  return out;
}
function curveBounds(path) {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  let start = { x: 0, y: 0 };
  let at2 = start;
  const addX = (x) => {
    minX = Math.min(minX, x);
    maxX = Math.max(maxX, x);
  };
  const addY = (y) => {
    minY = Math.min(minY, y);
    maxY = Math.max(maxY, y);
  };
  for (const c of path) {
    if (c.type === "Z") {
      at2 = start;
      continue;
    }
    if (c.type === "M") start = c;
    else {
      for (const x of extrema(at2.x, c, "x")) addX(x);
      for (const y of extrema(at2.y, c, "y")) addY(y);
    }
    at2 = c;
  }
  return minX <= maxX && minY <= maxY ? { minX, minY, maxX, maxY } : void 0;
}
function extrema(p0, c, axis) {
  const values = [p0, c[axis]];
  if (c.type === "Q") {
    const p1 = axis === "x" ? c.x1 : c.y1;
    const p2 = c[axis];
    const t = (p0 - p1) / (p0 - 2 * p1 + p2);
    if (t > 0 && t < 1) values.push((1 - t) * (1 - t) * p0 + 2 * (1 - t) * t * p1 + t * t * p2);
  } else if (c.type === "C") {
    const p1 = axis === "x" ? c.x1 : c.y1;
    const p2 = axis === "x" ? c.x2 : c.y2;
    const p3 = c[axis];
    for (const t of unitRoots(p3 - 3 * p2 + 3 * p1 - p0, 2 * (p0 - 2 * p1 + p2), p1 - p0)) {
      const s = 1 - t;
      values.push(s * s * s * p0 + 3 * s * s * t * p1 + 3 * s * t * t * p2 + t * t * t * p3);
    }
  }
  return values;
}
function unitRoots(a, b, c) {
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return [];
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant));
  return [q / a, c / q].filter((t) => t > 0 && t < 1);
}

// src/text/arc.ts
var keptAt = { top: 1 / 2, bottom: 1 / 4 };
var fullTurn = 2 * Math.PI * (1 + 1e-9);
function bendText(layout, align, { at: at2, radius }) {
  const outwards = at2 === "top" ? 1 : -1;
  const kept = outwards * keptAt[at2] * layout.xHeight;
  const share = { left: 0, center: 0.5, right: 1 }[align];
  const anchor = share * layout.advance;
  const anchorAngle = (share - 0.5) * layout.advance / (radius + kept);
  const ends = lineEnds(layout);
  const glyphs = [];
  const turns2 = [];
  for (const glyph of layout.glyphs) {
    const circle2 = radius + outwards * glyph.baselinePoint.y;
    const spaced = circle2 + kept;
    if (!(Math.min(circle2, spaced) > 0)) return { problem: "no-room" };
    const { start, end } = ends.get(glyph.line);
    if (end - start > fullTurn * spaced) return { problem: "overlap" };
    const angle = anchorAngle + (glyph.baselinePoint.x - anchor) / spaced;
    const upright = translation(-glyph.baselinePoint.x, -glyph.baselinePoint.y + outwards * circle2);
    const turn3 = rotation(outwards * angle * 180 / Math.PI, { x: 0, y: 0 });
    glyphs.push(transformCurves(glyph.curves, chain(upright, turn3)));
    turns2.push(turn3);
  }
  return { curves: glyphs.flatMap((glyph) => glyph), glyphs, turns: turns2 };
}
function radiusForSweep(layout, at2, radians) {
  return layout.advance / radians - (at2 === "top" ? 1 : -1) * keptAt[at2] * layout.xHeight;
}
function lineEnds({ glyphs }) {
  const ends = /* @__PURE__ */ new Map();
  for (const { line, x, advance } of glyphs) {
    const known3 = ends.get(line) ?? { start: Infinity, end: -Infinity };
    ends.set(line, { start: Math.min(known3.start, x), end: Math.max(known3.end, x + advance) });
  }
  return ends;
}

// src/text/itemise.ts
import bidiFactory from "bidi-js";
var rightToLeft = /[\u0590-\u08ff\u200f\u202b\u202e\u2067\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;
var graphemes = new Intl.Segmenter("en", { granularity: "grapheme" });
var bidi;
function levelsOf(text) {
  bidi ??= bidiFactory();
  return bidi.getEmbeddingLevels(text).levels;
}
function itemise(line, covers2) {
  let text = "";
  const origin2 = [];
  const letters = [];
  for (const { segment, index } of graphemes.segment(line)) {
    const { form: form2, missing: missing2 } = chooseForm(segment, covers2);
    if (form2 === "") continue;
    letters.push({ start: text.length, missing: missing2, script: scriptOf(form2) });
    for (let i = 0; i < form2.length; i++) origin2.push(index);
    text += form2;
  }
  origin2.push(line.length);
  const levels = rightToLeft.test(text) ? levelsOf(text) : void 0;
  const runs = [];
  letters.forEach(({ start, missing: missing2, script }, i) => {
    const end = letters[i + 1]?.start ?? text.length;
    const level = levels?.[start] ?? 0;
    const last = runs.at(-1);
    const sameScript = !last?.script || !script || last.script === script;
    if (last && !last.missing && !missing2 && last.level === level && sameScript) {
      last.end = end;
      last.script ??= script;
    } else {
      runs.push({ start, end, missing: missing2, level, script });
    }
  });
  return { text, origin: origin2, runs: visualOrder(runs) };
}
function chooseForm(grapheme, covers2) {
  if (/\p{Surrogate}/u.test(grapheme)) return { form: "\uFFFD", missing: true };
  const clean = grapheme.replaceAll("	", " ").replace(/\p{Cc}/gu, "");
  const form2 = [clean.normalize("NFC"), clean.normalize("NFD")].find(
    (candidate) => Array.from(candidate).every((char) => {
      if (/\p{Default_Ignorable_Code_Point}/u.test(char)) return true;
      return covers2(/\p{Zs}/u.test(char) ? 32 : char.codePointAt(0));
    })
  );
  return { form: form2 ?? clean, missing: form2 === void 0 };
}
var scripts = [
  ...["Latin", "Greek", "Cyrillic", "Armenian", "Georgian", "Hebrew", "Arabic", "Syriac", "Thaana", "Nko"],
  ...["Devanagari", "Bengali", "Gurmukhi", "Gujarati", "Oriya", "Tamil", "Telugu", "Kannada", "Malayalam", "Sinhala"],
  ...["Thai", "Lao", "Tibetan", "Myanmar", "Khmer", "Ethiopic", "Cherokee", "Hangul", "Hiragana", "Katakana", "Han"]
].map((name) => ({ name, letter: new RegExp(`\\p{Script=${name}}`, "u") }));
function scriptOf(text) {
  return scripts.find(({ letter }) => letter.test(text))?.name;
}
function visualOrder(runs) {
  const ordered = [...runs];
  const highest = runs.reduce((level, run2) => Math.max(level, run2.level), 0);
  for (let level = highest; level > 0; level--) {
    for (let start = 0; start < ordered.length; start++) {
      let end = start;
      while (end < ordered.length && ordered[end].level >= level) end++;
      if (end - start > 1) ordered.splice(start, end - start, ...ordered.slice(start, end).reverse());
      start = end;
    }
  }
  return ordered;
}

// src/text/layout.ts
var visible = /[\p{L}\p{N}\p{P}\p{S}](?<!\p{Default_Ignorable_Code_Point})/u;
var lineBreak = /\r\n|[\n\v\f\r\u0085\u2028\u2029]/g;
function layoutText(face2, spec) {
  const lines = splitLines(spec.text).map((line) => setLine(face2, spec, line));
  const advance = lines.reduce((widest, line) => Math.max(widest, line.advance), 0);
  const lineHeight = spec.lineHeight ?? face2.lineHeight;
  const glyphs = lines.flatMap((line, number) => {
    const shift = { left: 0, center: 0.5, right: 1 }[spec.align] * (advance - line.advance);
    return line.glyphs.map((glyph) => {
      const x = glyph.x + shift;
      const y = glyph.y - number * lineHeight;
      return {
        ...glyph,
        line: number,
        x,
        y,
        baselinePoint: { x: glyph.baselineX + shift, y: -number * lineHeight },
        curves: transformCurves(glyph.outline, { a: 1, b: 0, c: 0, d: 1, e: x, f: y })
      };
    });
  });
  return {
    curves: glyphs.flatMap((glyph) => glyph.curves),
    glyphs,
    advance,
    lineCount: lines.length,
    ascender: face2.ascender,
    descender: face2.descender,
    xHeight: face2.xHeight,
    capHeight: face2.capHeight,
    missing: lines.flatMap((line) => line.missing).sort((a, b) => a.index - b.index)
  };
}
function splitLines(text) {
  const lines = [];
  let index = 0;
  for (const match of [...text.matchAll(lineBreak), void 0]) {
    lines.push({ text: text.slice(index, match?.index).trimEnd(), index });
    if (match) index = match.index + match[0].length;
  }
  return lines;
}
function setLine(face2, spec, line) {
  const { text, origin: origin2, runs } = itemise(line.text, (codePoint) => face2.covers(codePoint));
  const letterSpacing = spec.letterSpacing ?? 0;
  const features = featureValues(spec, letterSpacing);
  const glyphs = [];
  const missing2 = [];
  const source = (start, end) => line.text.slice(origin2[start], origin2[end]);
  const em = (units2) => units2 / face2.unitsPerEm;
  let pen = 0;
  for (const run2 of runs) {
    if (run2.missing) {
      missing2.push({ text: source(run2.start, run2.end), index: line.index + origin2[run2.start] });
      pen += em(face2.advanceOf(0)) + letterSpacing;
      continue;
    }
    const { start, end, level } = run2;
    const shaped = face2.shape({ text, start, end, rightToLeft: level % 2 === 1, features });
    const clusterEnds = endsOfClusters(shaped, end);
    let drawn = false;
    let letter = [];
    let letterStart = pen;
    shaped.forEach(({ id, cluster, advance: advance2, dx, dy }, i) => {
      const letters = source(cluster, clusterEnds.get(cluster));
      const outline = id === 0 ? [] : face2.outline(id);
      letter.push({ id, text: letters, x: pen + em(dx), y: em(dy), advance: em(advance2), outline });
      pen += em(advance2);
      drawn ||= outline.length > 0;
      if (shaped[i + 1]?.cluster === cluster) return;
      const baselineX = (letterStart + pen) / 2;
      glyphs.push(...letter.map((glyph) => ({ ...glyph, baselineX })));
      letter = [];
      pen += letterSpacing;
      letterStart = pen;
      if (!drawn && visible.test(letters)) missing2.push({ text: letters, index: line.index + origin2[cluster] });
      drawn = false;
    });
  }
  const advance = runs.length > 0 ? pen - letterSpacing : 0;
  return { glyphs, advance: Math.max(0, advance), missing: missing2 };
}
function featureValues(spec, letterSpacing) {
  const values = new Map(
    letterSpacing === 0 ? [] : [
      ["liga", 0],
      ["clig", 0]
    ]
  );
  for (const [tag, value] of Object.entries(spec.features ?? {})) {
    if (/^[\x20-\x7e]{4}$/.test(tag)) values.set(tag, Number(value));
  }
  return values;
}
function endsOfClusters(shaped, runEnd) {
  const starts = [...new Set(shaped.map((glyph) => glyph.cluster))].sort((a, b) => a - b);
  return new Map(starts.map((start, i) => [start, starts[i + 1] ?? runEnd]));
}

// src/tag/lettering.ts
var spacingRounds = 4;
var largestEm = 64;
var arcRounds = 32;
function dependsOnSize({ letterSpacingMm, arc: arc2 }) {
  return letterSpacingMm !== 0 || arc2 !== void 0 && "radius" in arc2;
}
function emOf(face2, { size }, { grow = 0 }) {
  if (!size) return void 0;
  if (size.of === "em") return size.mm;
  return (size.mm - 2 * grow) / (size.of === "capitals" ? face2.capHeight : face2.xHeight);
}
function setText(face2, text, size) {
  const { arc: arc2 } = text;
  if (arc2 && "radius" in arc2) return setOnCircle(face2, text, arc2, size);
  let set = setAt(face2, text, Infinity);
  if (text.letterSpacingMm === 0 || "problem" in set) return set;
  const em = emOf(face2, text, size);
  for (let round3 = 0; round3 < spacingRounds; round3++) {
    const mmPerEm = em ?? emBySpan(set.curves, size);
    if (!(mmPerEm > 0)) return set;
    set = setAt(face2, text, mmPerEm);
    if ("problem" in set) return set;
  }
  return set;
}
function setAt(face2, text, mmPerEm) {
  const letterSpacing = text.letterSpacingMm / mmPerEm;
  const layout = layoutText(face2, {
    text: text.text,
    letterSpacing,
    align: text.align,
    features: text.features,
    ...text.lineHeight === void 0 ? {} : { lineHeight: text.lineHeight }
  });
  const { curves, missing: missing2, glyphs } = layout;
  if (!text.arc) {
    const letters = lettersOf2(
      glyphs,
      glyphs.map((glyph) => glyph.curves),
      letterSpacing
    );
    return { curves, letters, missing: missing2, band: letterBand(layout) };
  }
  const { at: at2 } = text.arc;
  const radius = "radius" in text.arc ? text.arc.radius / mmPerEm : radiusForSweep(layout, at2, text.arc.sweep * Math.PI / 180);
  const bent = bendText(layout, text.align, { at: at2, radius });
  if ("curves" in bent) {
    return {
      curves: bent.curves,
      letters: lettersOf2(glyphs, bent.glyphs, letterSpacing, bent.turns),
      missing: missing2,
      arc: { at: at2, radius }
    };
  }
  const key = "radius" in text.arc ? "radius" : "sweep";
  const problem2 = bent.problem === "no-room" ? "The circle is too small for letters of this size, or for this many lines." : `The text goes around its circle more than once; ${key === "radius" ? "use a larger radius or smaller letters" : "use a smaller sweep"}.`;
  return { at: ["arc", key], problem: problem2 };
}
function setOnCircle(face2, text, { radius }, size) {
  const em = emOf(face2, text, size);
  if (em !== void 0) return setAt(face2, text, em);
  const key = size.width === void 0 ? "height" : "width";
  const goal = size[key] - 2 * (size.grow ?? 0);
  let [low, high] = [0, largestEm * radius];
  let best;
  for (let round3 = 0; round3 < arcRounds; round3++) {
    const middle2 = (low + high) / 2;
    const set = setAt(face2, text, middle2);
    const span4 = "problem" in set ? Infinity : middle2 * spanOf(set.curves, key);
    if (span4 > goal) high = middle2;
    else {
      low = middle2;
      if (!("problem" in set)) best = { set, span: span4 };
    }
  }
  if (best && best.span > goal * (1 - 1e-4)) return best.set;
  const most4 = mm((best?.span ?? 0) + 2 * (size.grow ?? 0), 1);
  return { at: [key], problem: `On this circle the text cannot reach this ${key}: maximum ${most4}.` };
}
function emBySpan(curves, size) {
  const key = size.width === void 0 ? "height" : "width";
  const mm3 = size[key];
  return mm3 === void 0 ? 0 : (mm3 - 2 * (size.grow ?? 0)) / spanOf(curves, key);
}
function spanOf(curves, key) {
  const bounds = curveBounds(curves);
  if (!bounds) return 0;
  return key === "width" ? bounds.maxX - bounds.minX : bounds.maxY - bounds.minY;
}
function lettersOf2(glyphs, curves, letterSpacing, turns2) {
  const groups2 = [];
  for (const [index, { text, baselinePoint, line }] of glyphs.entries()) {
    const before = glyphs[index - 1];
    const isSame = before?.baselinePoint.x === baselinePoint.x && before.line === line && before.text === text;
    if (isSame) groups2.at(-1).push(index);
    else groups2.push([index]);
  }
  return groups2.map((group) => {
    const own = group.map((index) => glyphs[index]);
    const { text, line, baselinePoint } = own[0];
    const along2 = { x: letterSpacing, y: 0 };
    return {
      text,
      line,
      baseline: baselinePoint.y,
      curves: group.flatMap((index) => curves[index]),
      ...turns2 ? {} : { drawn: glyphsTogether(own) },
      ...letterSpacing === 0 ? {} : { spaced: turns2 ? applyToVector(along2, turns2[group[0]]) : along2 }
    };
  });
}
var evenEm = 1e-6;
function glyphsTogether(glyphs) {
  const [first] = glyphs;
  const even2 = (em) => Math.round(em / evenEm) * evenEm;
  const places = glyphs.map(({ x, y }) => ({ x: even2(x - first.x), y: even2(y - first.baselinePoint.y) }));
  return {
    key: glyphs.map(({ id }, index) => [id, places[index].x, places[index].y].join()).join(" "),
    curves: glyphs.flatMap(({ outline }, index) => {
      const { x, y } = places[index];
      return x === 0 && y === 0 ? outline : transformCurves(outline, { a: 1, b: 0, c: 0, d: 1, e: x, f: y });
    }),
    origin: { x: first.x, y: first.baselinePoint.y }
  };
}
function letterBand({ glyphs, xHeight, capHeight }) {
  const inked = glyphs.filter((glyph) => /\S/.test(glyph.text));
  const baselines = inked.length > 0 ? inked.map((glyph) => glyph.y) : [0];
  const hasSmall = inked.some((glyph) => /\p{Ll}/u.test(glyph.text));
  return { baseline: lowest(baselines), top: -lowest(baselines.map((y) => -y)) + (hasSmall ? xHeight : capHeight) };
}
function lowest(values) {
  return values.reduce((least, value) => Math.min(least, value));
}

// src/tag/letters.ts
var Lettering = class _Lettering {
  path;
  xHeight;
  grow;
  as;
  slid;
  #makeLetters;
  #makeShape;
  #letters;
  #shape;
  /** `makeShape`: left out while the solid it belongs to is nothing but this lettering. */
  constructor({ path, xHeight, grow, as, slid = false }, makeLetters, makeShape) {
    this.path = path;
    this.xHeight = xHeight;
    this.grow = grow;
    this.as = as;
    this.slid = slid;
    this.#makeLetters = makeLetters;
    this.#makeShape = makeShape;
  }
  /**
   * As the font draws them, at the final size and where they stand, before growth, bridges and straps. Those without ink are
   * left out.
   */
  get letters() {
    return this.#letters ??= this.#makeLetters();
  }
  /** What its own shape has become, with growth, bridges and straps; `undefined` where that is all there is in the solid. */
  get shape() {
    return this.#shape ??= this.#makeShape?.();
  }
  /** Moved, turned or scaled. */
  mapped(affine) {
    const scale = Math.sqrt(Math.abs(affine.a * affine.d - affine.b * affine.c));
    return this.#changed(
      { xHeight: this.xHeight * Math.hypot(affine.c, affine.d), grow: this.grow * scale },
      () => this.letters.map(({ region, spaced, asSet, ...letter }) => ({
        ...letter,
        region: transform(region, affine),
        ...asSet ? { asSet: transform(asSet, affine) } : {},
        ...spaced ? { spaced: applyToVector(spaced, affine) } : {}
      })),
      (shape) => transform(shape, affine)
    );
  }
  /** With the solid it belongs to grown, or thinned where `by` is negative. */
  grown(by, corners) {
    if (by === 0) return this;
    return this.#changed({ grow: this.grow + by }, void 0, (shape) => offset(shape, by, corners));
  }
  /** As a member of something larger, in which it is no longer alone: its solid was `region`. */
  within(region) {
    return this.#makeShape ? this : new _Lettering(
      this,
      () => this.letters,
      () => region
    );
  }
  /** Where what it belongs to is cut out of something else. */
  cutOut() {
    return this.#changed({ as: this.as === "material" ? "opening" : "material" });
  }
  #changed(about, letters = () => this.letters, change = (shape) => shape) {
    const { path, xHeight, grow, as, slid } = this;
    return new _Lettering(
      { path, xHeight, grow, as, slid, ...about },
      letters,
      this.#makeShape ? () => change(this.shape) : void 0
    );
  }
};
function flattenLetters(letters, affine) {
  return letters.flatMap((letter, index) => {
    const { text, line, spaced } = letter;
    const region = flattened(letter, affine);
    if (region.length === 0) return [];
    const before = letters[index - 1];
    const opens = before?.line !== line || /^\s+$/u.test(before.text);
    return [{ text, region, opens, ...spaced ? { spaced: applyToVector(spaced, affine) } : {} }];
  });
}
var smoothTimes = 1.25;
var known2 = /* @__PURE__ */ new WeakMap();
function flattened(letter, affine) {
  const before = known2.get(letter);
  const [x, y] = before ? [affine.a / before.affine.a, affine.d / before.affine.d] : [0, 0];
  if (before && isUpright(affine) && isNearOne(x) && isNearOne(y)) {
    const { e, f } = before.affine;
    return transform(before.region, { a: x, b: 0, c: 0, d: y, e: affine.e - x * e, f: affine.f - y * f });
  }
  const region = normalise(flatten(letter.curves, { affine }));
  if (isUpright(affine)) known2.set(letter, { affine, region });
  return region;
}
function isUpright({ b, c }) {
  return b === 0 && c === 0;
}
function isNearOne(times) {
  return times > 1 / smoothTimes && times < smoothTimes;
}

// src/tag/outline.ts
function solidOutline(solid) {
  const bounds = boundsOf(solid.region);
  return {
    bounds,
    at: (x, y) => bounds && (x !== 1 || y !== 1) ? mapSolid(solid, scaling(x, y, boxCentre(bounds))) : solid
  };
}
function drawnOutline(shapes) {
  return curveOutline(
    shapes.flatMap(({ curves }) => [...curves]),
    (centre) => centre,
    () => ({}),
    void 0,
    (affine) => union(shapes.map(({ curves, rule }) => normalise(flatten(curves, { affine }), rule)))
  );
}
function centredOutline({ curves, ...letters }, band) {
  return curveOutline(
    curves,
    () => ({ x: 0, y: 0 }),
    (toY) => ({ band: { baseline: toY(band.baseline), top: toY(band.top) } }),
    letters
  );
}
function hubbedOutline({ curves, ...letters }) {
  return curveOutline(
    curves,
    (centre, scaleX, scaleY) => ({ x: centre.x * scaleX, y: centre.y * scaleY }),
    () => ({ arcCentre: { x: 0, y: 0 } }),
    letters
  );
}
function letteringAt({ letters, xHeight, path }, affine) {
  const about = { path, xHeight: xHeight * affine.d, grow: 0, as: "material" };
  return new Lettering(about, () => flattenLetters(letters, affine));
}
function curveOutline(curves, goal, more, lettering3, fill = (affine) => normalise(flatten(curves, { affine }))) {
  const bounds = curveBounds(curves);
  const centre = bounds ? boxCentre(bounds) : { x: 0, y: 0 };
  return {
    bounds,
    at: (scaleX, scaleY) => {
      const to = goal(centre, scaleX, scaleY);
      const affine = { a: scaleX, b: 0, c: 0, d: scaleY, e: to.x - centre.x * scaleX, f: to.y - centre.y * scaleY };
      return {
        region: fill(affine),
        ...more((y) => y * scaleY + affine.f),
        ...lettering3 ? { lettering: [letteringAt(lettering3, affine)] } : {}
      };
    }
  };
}

// src/tag/overlap/runs.ts
var mostLines = 4e3;
function rowsOf(region, pitch) {
  return runsOf4(
    region,
    pitch,
    ({ x }) => x,
    ({ y }) => y
  );
}
function columnsOf(region, pitch) {
  return runsOf4(
    region,
    pitch,
    ({ y }) => y,
    ({ x }) => x
  );
}
function lineAt({ first, lines }, k) {
  return lines[k - first] ?? [];
}
function movedRuns({ pitch, first, lines }, across2, along2) {
  return {
    pitch,
    first: first + across2,
    lines: along2 === 0 ? lines : lines.map((line) => line.map((at2) => at2 + along2))
  };
}
function nearest3(one, other) {
  let least = Infinity;
  one.lines.forEach((own, index) => {
    const line = lineAt(other, one.first + index);
    for (let i = 0; i < own.length; i += 2) {
      for (let j = 0; j < line.length; j += 2) {
        least = Math.min(least, Math.max(line[j] - own[i + 1], own[i] - line[j + 1]));
      }
    }
  });
  return least;
}
function runsOf4(region, pitch, along2, across2) {
  let low = Infinity;
  let high = -Infinity;
  for (const ring of region) {
    for (const point of ring) {
      low = Math.min(low, across2(point));
      high = Math.max(high, across2(point));
    }
  }
  if (low > high) return { pitch, first: 0, lines: [] };
  const first = Math.ceil(low / pitch - 0.5);
  const last = Math.min(Math.floor(high / pitch - 0.5), first + mostLines);
  const lines = Array.from({ length: Math.max(0, last - first + 1) }, () => []);
  for (const ring of region) {
    let a = ring[ring.length - 1];
    for (const b of ring) {
      const [ya, yb] = [across2(a), across2(b)];
      const from = Math.ceil(Math.min(ya, yb) / pitch - 0.5);
      const to = Math.ceil(Math.max(ya, yb) / pitch - 0.5);
      for (let k = Math.max(from, first); k < to && k <= last; k++) {
        const t = ((k + 0.5) * pitch - ya) / (yb - ya);
        lines[k - first].push(along2(a) + t * (along2(b) - along2(a)));
      }
      a = b;
    }
  }
  for (const line of lines) line.sort((p, q) => p - q);
  return { pitch, first, lines };
}

// src/tag/overlap/post.ts
var ease = 1.06;
var asideCost = 0.2;
var outsideCost = 1.5;
function bestPost(upper, lower, width, prefer) {
  const { pitch } = upper;
  const count = Math.max(1, Math.round(width / pitch));
  const first = Math.min(upper.first, lower.first) - count;
  const last = Math.max(upper.first + upper.lines.length, lower.first + lower.lines.length);
  const columns3 = Array.from(
    { length: last - first + 1 },
    (_, k) => facing(lineAt(upper, first + k), lineAt(lower, first + k))
  );
  let best;
  for (let start = 0; start + count <= columns3.length; start++) {
    let [covered3, bottom, top, gap] = [0, Infinity, -Infinity, Infinity];
    for (let k = start; k < start + count; k++) {
      const column = columns3[k];
      if (!column) continue;
      covered3 += 1;
      bottom = Math.min(bottom, column.to);
      top = Math.max(top, column.from);
      gap = Math.min(gap, column.from - column.to);
    }
    if (covered3 === 0) continue;
    const x = (first + start + count / 2) * pitch;
    const outside4 = (count - covered3) * pitch;
    const sink = Math.sqrt(Math.max(0, width ** 2 - (width - outside4) ** 2));
    const cost = top - bottom + asideCost * Math.abs(x - prefer) + outsideCost * outside4;
    if (!best || cost < best.cost) best = { x, bottom: bottom - sink, top: top + sink, gap, cost };
  }
  return best;
}
function facing(upper, lower) {
  let best;
  for (let i = 0; i < upper.length; i += 2) {
    const [start, end] = [upper[i], upper[i + 1]];
    for (let j = 0; j < lower.length; j += 2) {
      const to = lower[j + 1];
      if (start + end <= lower[j] + to) continue;
      if (!best || start - to < best.from - best.to) best = { from: start, to };
    }
  }
  return best;
}
function clearance2(upper, lower) {
  let least = Infinity;
  upper.lines.forEach((runs, index) => {
    const pair = facing(runs, lineAt(lower, upper.first + index));
    if (pair) least = Math.min(least, pair.from - pair.to);
  });
  return least;
}

// src/tag/overlap/shares.ts
var shares = {
  /** The most a letter comes nearer for a joint, beside what it laps. */
  reach: 0.22,
  /** The same in a script, whose letters join by themselves or lean: one that is moved falls out of its rhythm, and along its neighbour. */
  scriptReach: 0.06,
  /** How far a sign that hangs high comes, in any face, and a mark that is to touch an arm. */
  highReach: 0.22,
  /** The same for what would otherwise take a longer bar than this. */
  farReach: 0.6,
  longBar: 0.55,
  /** A joint longer than this makes one stroke of two stems. */
  stem: 0.5,
  /** What two stems keep between them instead. */
  stemGap: 0.12,
  /** What a mark keeps from the letter before. */
  markGap: 0.14,
  /** What two words keep between them. */
  wordGap: 0.5,
  /** What two letters keep between them below an apostrophe. */
  signGap: 0.2,
  /** The longest post between an arm and what is below it. */
  post: 0.3,
  /** Letters are tried at places so far apart. */
  step: 1 / 80
};

// src/tag/overlap/marks.ts
var markGap = 0.13;
var besideGap = 0.12;
var asideReach = 0.2;
var pairGap = 0.5;
var asideCost2 = 0.8;
var crowdedCost = 4;
var crowded = { reach: 0.4, step: 0.033, levels: [1, 0.5, 0] };
var mostLean = 0.7;
var topShare = 0.06;
function gapTo2(beside, { rows, columns: columns3 }, move) {
  const { pitch } = rows;
  return beside.reduce((least, { rows: otherRows, columns: otherColumns, at: at2 }) => {
    const [x, y] = [move.x - at2.x, move.y - at2.y];
    const alongRows = nearest3(movedRuns(rows, Math.round(y / pitch), x), otherRows);
    return Math.min(least, alongRows, nearest3(movedRuns(columns3, Math.round(x / pitch), y), otherColumns));
  }, Infinity);
}
function placeMarks(base, marks3, measures, beside = []) {
  const placed2 = /* @__PURE__ */ new Map();
  let below3 = base;
  for (const group of byLevel(marks3)) {
    const own = placeGroup(below3, group, measures, beside);
    group.forEach((mark, index) => placed2.set(mark, own[index]));
    below3 = [...below3, ...own.flatMap(({ region }) => [...region])];
  }
  return marks3.map((mark) => placed2.get(mark));
}
function byLevel(marks3) {
  const groups2 = [];
  for (const mark of marks3) {
    const box = boundsOf(mark);
    const level = groups2.find((group) => {
      const shared4 = Math.min(box.maxY, group.box.maxY) - Math.max(box.minY, group.box.minY);
      return shared4 > Math.min(box.maxY - box.minY, group.box.maxY - group.box.minY) / 2;
    });
    if (level) level.members.push(mark);
    else groups2.push({ box, members: [mark] });
  }
  return groups2.map(({ members: members2 }) => members2.sort((a, b) => boundsOf(a).minX - boundsOf(b).minX));
}
function placeGroup(base, marks3, measures, beside) {
  const { pitch, xHeight } = measures;
  const columns3 = columnsOf(base, pitch);
  const own = marks3.map((mark) => columnsOf(mark, pitch));
  const baseBox = boundsOf(base);
  const box = boundsOf(marks3.flat());
  const above = box.minY + box.maxY > baseBox.minY + baseBox.maxY;
  const gaps = own.map((mark) => above ? clearance2(mark, columns3) : clearance2(columns3, mark));
  const nearestGap = Math.min(...gaps);
  const level = Number.isFinite(nearestGap) ? nearestGap : Math.max(box.minY - baseBox.maxY, baseBox.minY - box.maxY);
  const whole2 = (above ? -1 : 1) * Math.max(0, level - markGap * xHeight);
  const lean = above ? leanOf(base, box, measures) : 0;
  const lines = marks3.map((mark, index) => ({
    rows: beside.length > 0 ? rowsOf(mark, pitch) : own[index],
    columns: own[index]
  }));
  const lacking = (moves) => {
    if (beside.length === 0) return 0;
    const gap = Math.min(...moves.map((move, index) => gapTo2(beside, lines[index], move)));
    return crowdedCost * Math.max(0, shares.markGap * xHeight - gap);
  };
  let best;
  for (const share of beside.length > 0 ? crowded.levels : [1]) {
    const dy = share * whole2;
    const along2 = Math.round(lean * dy / pitch);
    const pair = above && own.length === 2 ? onOnePost(marks3, columns3, { along: along2, dy }, measures) : void 0;
    if (pair) {
      const cost = pair.cost + lacking(pair.marks.map(({ move }) => move));
      if (!best || cost < best.cost) best = { ...pair, cost };
    }
    for (const aside2 of asides(own, measures, beside.length > 0)) {
      const shift = aside2.map((each) => each + along2);
      const moves = shift.map((each) => ({ x: each * pitch, y: dy }));
      let cost = aside2.reduce((sum, each) => sum + asideCost2 * Math.abs(each) * pitch, lacking(moves));
      if (best && cost >= best.cost) continue;
      const posts = own.map(
        (mark, index) => postFor(
          movedRuns(mark, shift[index], dy),
          columns3,
          above,
          measures,
          middleX(marks3[index]) + shift[index] * pitch
        )
      );
      cost += posts.reduce((sum, post) => sum + (post?.cost ?? xHeight), 0);
      if (best && cost >= best.cost) continue;
      best = {
        cost,
        marks: marks3.map((mark, index) => {
          const [move, post] = [moves[index], posts[index]];
          return { move, region: transform(mark, translation(move.x, move.y)), ...post ? { post } : {} };
        })
      };
    }
  }
  return best.marks;
}
function leanOf(base, mark, { pitch, xHeight }) {
  const rows = rowsOf(base, pitch);
  const top = (rows.first + rows.lines.length) * pitch;
  const ends = rows.lines.slice(-Math.max(1, Math.round(topShare * xHeight / pitch))).flat();
  const up = (mark.minY + mark.maxY) / 2 - top;
  if (ends.length === 0 || up <= 0) return 0;
  const aside2 = (mark.minX + mark.maxX) / 2 - (Math.min(...ends) + Math.max(...ends)) / 2;
  return Math.max(-mostLean, Math.min(mostLean, aside2 / up));
}
function onOnePost(marks3, columns3, { along: along2, dy }, { pitch, web: web2, xHeight }) {
  const [left, right] = marks3.map((mark) => boundsOf(mark));
  const gap = right.minX - left.maxX;
  const inwards = Math.max(0, Math.round((gap - pairGap * web2) / 2 / pitch));
  const level = Math.min(left.minY + left.maxY, right.minY + right.maxY) / 2 + dy;
  let best;
  const reach = Math.round(asideReach * xHeight / pitch);
  for (let aside2 = -reach; aside2 <= reach; aside2++) {
    const x = (left.maxX + right.minX) / 2 + (along2 + aside2) * pitch;
    const count = Math.round(ease * web2 / pitch);
    const first = Math.round(x / pitch - count / 2);
    const tops = Array.from({ length: count }, (_, k) => lineAt(columns3, first + k).at(-1)).filter(
      (top) => top !== void 0
    );
    const [low, high] = [Math.min(...tops), Math.max(...tops)];
    if (tops.length < count || high > level) continue;
    const cost = 2 * (level - low) + asideCost2 * Math.abs(aside2) * pitch + 2 * asideCost2 * inwards * pitch;
    if (best && cost >= best.cost) continue;
    const post = { x, bottom: low, top: level, gap: level - high, cost };
    best = {
      cost,
      marks: marks3.map((mark, index) => {
        const move = { x: (along2 + aside2 + (index === 0 ? inwards : -inwards)) * pitch, y: dy };
        return { move, region: transform(mark, translation(move.x, move.y)), ...index === 0 ? { post } : {} };
      })
    };
  }
  return best;
}
function postFor(mark, base, above, { web: web2 }, x) {
  return above ? bestPost(mark, base, web2, x) : bestPost(base, mark, web2, x);
}
function middleX(region) {
  const box = boundsOf(region);
  return (box.minX + box.maxX) / 2;
}
function asides(marks3, { pitch, xHeight }, isCrowded) {
  if (marks3.length === 1) {
    const step = isCrowded ? Math.max(1, Math.round(crowded.step * xHeight / pitch)) : 1;
    const count = Math.round((isCrowded ? crowded.reach : asideReach) * xHeight / pitch / step);
    return Array.from({ length: count + 1 }, (_, k) => k === 0 ? [[0]] : [[-k * step], [k * step]]).flat();
  }
  if (marks3.length !== 2) return [marks3.map(() => 0)];
  const [left, right] = marks3;
  const room = (right.first - left.first - left.lines.length) * pitch - besideGap * xHeight;
  const reach = Math.max(0, Math.floor(room / 2 / pitch));
  return Array.from({ length: reach + 1 }, (_, k) => [k, -k]);
}

// src/tag/overlap/bodies.ts
var coarseMm = 0.02;
function shapeOf(part, measures) {
  const base = grown(part.base, measures);
  const grownMarks = part.marks.map((mark) => grown(mark, measures));
  const marks3 = placeMarks(base, grownMarks, measures);
  const { pitch } = measures;
  const placed2 = marks3.flatMap(({ region }) => [...region]);
  return {
    part,
    base,
    grownMarks,
    marks: marks3,
    rows: rowsOf(base, pitch),
    columns: columnsOf(base, pitch),
    markRows: rowsOf(placed2, pitch),
    markColumns: columnsOf(placed2, pitch)
  };
}
function grown(region, { grow }) {
  return offset(simplified(region, coarseMm), grow, "round", coarseMm);
}
function movedRegion(region, { x, y }) {
  return x === 0 && y === 0 ? region : transform(region, translation(x, y));
}

// src/tag/overlap/circle.ts
var longestEdgeMm = 0.5;
function onCircle({ at: at2, radius }, mmPerEm) {
  const outwards = at2 === "top" ? 1 : -1;
  const mm3 = radius * mmPerEm;
  return {
    // At the top the angle runs clockwise from straight above, at the bottom the other way from straight below.
    straight: (region) => mapped(region, ({ x, y }) => {
      const angle = Math.atan2(x, outwards * y);
      return { x: angle * mm3, y: outwards * (Math.hypot(x, y) - mm3) };
    }),
    bent: (region) => mapped(divided(region), ({ x, y }) => {
      const distance5 = mm3 + outwards * y;
      const angle = x / mm3;
      return { x: distance5 * Math.sin(angle), y: outwards * distance5 * Math.cos(angle) };
    })
  };
}
function mapped(region, map) {
  return region.map((ring) => ring.map(map));
}
function divided(region) {
  return region.map(
    (ring) => ring.flatMap((from, index) => {
      const to = ring[(index + 1) % ring.length];
      const count = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / longestEdgeMm));
      return Array.from({ length: count }, (_, k) => ({
        x: from.x + k / count * (to.x - from.x),
        y: from.y + k / count * (to.y - from.y)
      }));
    })
  );
}

// src/tag/overlap/crowded.ts
var lookAround3 = 3;
var farShare2 = 0.8;
function uncrowded(bodies, stands, measures) {
  const { xHeight } = measures;
  return bodies.map((body, index) => {
    if (body.marks.length === 0) return body.marks;
    const near = around2(
      body.marks.flatMap(({ region }) => [...region]),
      farShare2 * xHeight
    );
    const beside = bodies.flatMap((other, k) => {
      if (k === index || Math.abs(k - index) > lookAround3) return [];
      const at2 = { x: stands[k].x - stands[index].x, y: stands[k].y - stands[index].y };
      return besideOf(other, at2).filter(({ box }) => meets(box, at2, near));
    });
    const gap = gapTo2(beside, { rows: body.markRows, columns: body.markColumns }, { x: 0, y: 0 });
    if (gap >= shares.markGap * xHeight) return body.marks;
    return placeMarks(body.base, body.grownMarks, measures, beside);
  });
}
function besideOf(body, at2) {
  const base = { rows: body.rows, columns: body.columns, at: at2, box: boundsOf(body.base) };
  if (body.marks.length === 0) return [base];
  const box = boundsOf(body.marks.flatMap(({ region }) => [...region]));
  return [base, { rows: body.markRows, columns: body.markColumns, at: at2, box }];
}
function around2(region, by) {
  const { minX, minY, maxX, maxY } = boundsOf(region);
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}
function meets(box, { x, y }, other) {
  return box.minX + x < other.maxX && box.maxX + x > other.minX && box.minY + y < other.maxY && box.maxY + y > other.minY;
}

// src/tag/overlap/bars.ts
function postBar({ x, bottom, top }, { web: web2, grow }) {
  const half = ease * web2 / 2;
  const sink = web2 / 4 + grow / 2;
  return bar(x - half, bottom - sink, x + half, top + sink);
}
var below2 = 0.5;
function footBar(profile, shift, { web: web2, pitch }) {
  const rows = Array.from({ length: Math.max(1, Math.round(web2 / pitch)) }, (_, k) => k - profile.first);
  const facing2 = rows.filter((row2) => Number.isFinite(profile.gaps[row2] ?? Infinity));
  if (facing2.length === 0) return void 0;
  const ends = facing2.map((row2) => profile.edges[row2]);
  const starts = facing2.map((row2) => profile.edges[row2] + profile.gaps[row2] - shift);
  const left = Math.max(Math.min(...ends), Math.max(...ends) - 2 * web2);
  const right = Math.min(Math.max(...starts), Math.min(...starts) + 2 * web2);
  const sink = web2 / 2;
  const region = bar(left - sink, -below2 * web2, right + sink, (ease - below2) * web2);
  return { region, length: Math.min(...starts) - Math.max(...ends) };
}
function bar(left, bottom, right, top) {
  return [
    [
      { x: left, y: bottom },
      { x: right, y: bottom },
      { x: right, y: top },
      { x: left, y: top }
    ]
  ];
}

// src/tag/overlap/profile.ts
var strokeShare = 0.7;
function profileOf(left, right) {
  const { pitch, first, lines } = right.rows;
  const gaps = [];
  const edges = [];
  const depths = [];
  lines.forEach((runs, index) => {
    let gap = Infinity;
    let edge = 0;
    let depth = Infinity;
    for (const { rows, dx } of left) {
      const line = lineAt(rows, first + index);
      for (let i = 0; i < line.length; i += 2) {
        const [from, to] = [line[i] + dx, line[i + 1] + dx];
        for (let j = 0; j < runs.length; j += 2) {
          const [start, end] = [runs[j] + right.dx, runs[j + 1] + right.dx];
          if (from + to > start + end || start - to >= gap) continue;
          gap = start - to;
          edge = to;
          depth = Math.min(
            i > 0 ? strokeShare * (to - from) : Infinity,
            j + 2 < runs.length ? strokeShare * (end - start) : Infinity
          );
        }
      }
    }
    gaps.push(gap);
    edges.push(edge);
    depths.push(depth);
  });
  return { pitch, first, gaps, edges, depths };
}
function touching({ gaps }) {
  return gaps.reduce((least, gap) => Math.min(least, gap), Infinity);
}
function contactAt({ pitch, first, gaps, edges }, shift) {
  let best;
  let from = -1;
  for (let row2 = 0; row2 <= gaps.length; row2++) {
    const meets3 = row2 < gaps.length && gaps[row2] < shift;
    if (meets3 && from < 0) from = row2;
    if (meets3 || from < 0) continue;
    const chord = Math.hypot((row2 - from) * pitch, edges[row2 - 1] - edges[from]);
    if (!best || chord > best.chord) best = { from: first + from, to: first + row2 - 1, chord };
    from = -1;
  }
  return best;
}
function sparesStrokes({ gaps, depths }, shift) {
  return gaps.every((gap, row2) => shift - gap <= depths[row2]);
}

// src/tag/overlap/meet.ts
var worthwhile2 = 0.4;
var mostSteps = 60;
var jointShare2 = 0.5;
function keptApart(profile, share, { xHeight }) {
  const gap = touching(profile);
  if (!Number.isFinite(gap)) return { shift: 0, joint: "none" };
  return { shift: Math.max(0, gap - share * xHeight), joint: gap < 0 ? "met" : "bar" };
}
function markRoom(left, body, start, { xHeight }) {
  const marks3 = left.filter((each) => each.body.marks.length > 0);
  if (body.marks.length === 0 && marks3.length === 0) return Infinity;
  const bases = left.map(({ body: { rows }, dx }) => ({ rows, dx }));
  const theirs = marks3.map(({ body: { markRows }, dx }) => ({ rows: markRows, dx }));
  const ahead = touching(profileOf([...bases, ...theirs], { rows: body.markRows, dx: start }));
  const behind2 = touching(profileOf(theirs, { rows: body.rows, dx: start }));
  return Math.max(0, Math.min(ahead, behind2) - shares.markGap * xHeight);
}
function meet(profile, measures, { oneLetter, room }) {
  const { xHeight, web: web2, overlap: overlap2 } = measures;
  const enough = jointShare2 * web2;
  const gap = touching(profile);
  if (gap > room) return { shift: 0, joint: "none" };
  const start = Math.max(0, gap);
  const step = Math.max(shares.step * xHeight, overlap2 / mostSteps);
  let best;
  for (let lap = 0; lap <= overlap2 + 1e-9; lap += step) {
    const shift2 = start + lap;
    const contact2 = contactAt(profile, shift2 + 1e-6);
    if (!contact2) continue;
    if (best && !sparesStrokes(profile, shift2)) break;
    const worth = Math.min(contact2.chord, enough) - worthwhile2 * lap;
    if (!best || worth > best.worth) best = { shift: shift2, contact: contact2, worth };
    if (contact2.chord >= enough) break;
  }
  if (!best) return { shift: start, joint: "none" };
  const { shift, contact } = best;
  const length = (contact.to - contact.from + 1) * measures.pitch;
  if (!oneLetter && gap > 0 && length > shares.stem * xHeight)
    return { shift: Math.max(0, gap - shares.stemGap * xHeight), joint: "bar", touch: shift };
  return { shift, joint: "met" };
}

// src/tag/overlap/hung.ts
function roundSign(bodies, stands, waiting, standing2, measures) {
  const sign2 = bodies[waiting];
  const before = bodies[waiting - 1];
  const tall = touching(profileOf([{ rows: sign2.rows, dx: stands[waiting].x }], standing2));
  const low = profileOf([{ rows: before.rows, dx: stands[waiting - 1].x }], standing2);
  const room = keptApart(low, shares.signGap, measures);
  if (!(tall < shares.highReach * measures.xHeight)) return room;
  return { shift: Math.max(0, Math.min(tall, room.shift)), joint: room.joint };
}
function hang(bodies, stands, index, measures) {
  const { xHeight, web: web2 } = measures;
  const sign2 = bodies[index];
  const at2 = stands[index];
  const next = bodies[index + 1];
  const gap = next ? touching(profileOf([{ rows: sign2.rows, dx: at2.x }], { rows: next.rows, dx: stands[index + 1].x })) : Infinity;
  if (gap < shares.highReach * xHeight) return { stand: { x: at2.x + gap + web2 / 8, y: 0 } };
  const neighbours2 = [index - 1, index + 1].flatMap(
    (k) => bodies[k] ? [movedRegion(bodies[k].base, stands[k])] : []
  );
  const [placed2] = placeMarks(union(neighbours2), [movedRegion(sign2.base, at2)], measures);
  return { stand: { x: at2.x + placed2.move.x, y: placed2.move.y }, ...placed2.post ? { post: placed2.post } : {} };
}

// src/tag/overlap/reach.ts
function reachFor({ left, body, start, reach }, profile, measures) {
  const { xHeight, web: web2 } = measures;
  const standing2 = left.map(({ body: { rows }, dx }) => ({ rows, dx }));
  const room = markRoom(left, body, start, measures);
  const limits = (share) => ({ oneLetter: false, room: Math.min(share * xHeight, room) });
  const near = touching(profile) - 2 * shares.stemGap * xHeight;
  const shift = Math.max(0, Math.min(near, reach, room));
  const columns3 = Math.round((start - shift) / measures.pitch);
  let best;
  for (const { body: other, dx } of left) {
    const own = movedRuns(body.columns, columns3, 0);
    const theirs = movedRuns(other.columns, Math.round(dx / measures.pitch), 0);
    const edge = (own.first + 1) * measures.pitch + web2;
    for (const post of [bestPost(theirs, own, web2, edge), bestPost(own, theirs, web2, edge)]) {
      if (post && post.gap >= 0 && (!best || post.cost < best.cost)) best = post;
    }
  }
  if (best && best.gap < shares.post * xHeight) return { shift, joint: best };
  const foot = footBar(profile, shift, measures);
  if (foot && foot.length <= shares.longBar * xHeight) return { shift, joint: "bar" };
  const nearer = meet(profile, measures, limits(shares.farReach));
  if (nearer.joint !== "none") return nearer;
  const touchedByMark = profileOf(standing2, { rows: body.markRows, dx: start });
  const byMark = meet(touchedByMark, measures, { oneLetter: false, room: shares.highReach * xHeight });
  if (byMark.joint === "met") return byMark;
  return { shift, joint: foot ? "bar" : "none" };
}

// src/tag/overlap/slant.ts
var steepest = 45;
function slantOf(letters) {
  const edges = [];
  let whole2 = 0;
  for (const ring of letters.flat()) {
    let from = ring[ring.length - 1];
    for (const to of ring) {
      const [dx, dy] = to.y > from.y ? [to.x - from.x, to.y - from.y] : [from.x - to.x, from.y - to.y];
      from = to;
      const angle = Math.atan2(dx, dy) * 180 / Math.PI;
      if (dy === 0 || Math.abs(angle) > steepest) continue;
      const length = Math.hypot(dx, dy);
      edges.push({ angle, length });
      whole2 += length;
    }
  }
  edges.sort((a, b) => a.angle - b.angle);
  let passed = 0;
  return edges.find(({ length }) => 2 * (passed += length) >= whole2)?.angle ?? 0;
}

// src/tag/overlap/slide.ts
var lookBack = 4;
function slideLine(bodies, measures) {
  const reach = (isScript(bodies) ? shares.scriptReach : shares.reach) * measures.xHeight;
  const baselinePoints = [];
  const joints = [];
  let waiting;
  bodies.forEach((body, index) => {
    if (index === 0) {
      baselinePoints.push({ x: body.at.x, y: 0 });
      if (body.part.hung) waiting = index;
      return;
    }
    const before = Array.from({ length: Math.min(index, lookBack) }, (_, k) => index - 1 - k);
    const placed2 = before.map((k) => ({ body: bodies[k], dx: baselinePoints[k].x }));
    const left = placed2.map(({ body: { rows }, dx }) => ({ rows, dx }));
    const last = bodies[index - 1];
    const start = baselinePoints[index - 1].x + body.at.x - last.at.x;
    const isOneLetter = body.index === last.index;
    const profile = profileOf(left, { rows: body.rows, dx: start });
    const join2 = body.afterGap ? keptApart(profile, shares.wordGap, measures) : waiting !== void 0 && waiting > 0 ? roundSign(bodies, baselinePoints, waiting, { rows: body.rows, dx: start }, measures) : meet(profile, measures, {
      oneLetter: isOneLetter,
      room: Math.min(markRoom(placed2, body, start, measures), reach)
    });
    let { shift, joint: joint2, touch } = join2;
    if (joint2 === "none" && body.part.hung) waiting = index;
    else if (joint2 === "none" && !isOneLetter) {
      const along2 = { left: placed2, body, start, reach };
      ({ shift, joint: joint2, touch } = reachFor(along2, profile, measures));
    }
    const foot = joint2 === "bar" ? footBar(profile, shift, measures) : void 0;
    if (touch !== void 0 && !(foot && foot.length <= shares.longBar * measures.xHeight)) shift = touch;
    else if (foot) joints.push(foot.region);
    baselinePoints.push({ x: start - shift, y: 0 });
    if (typeof joint2 === "object") joints.push(postBar(joint2, measures));
    if (waiting !== void 0 && (waiting < index || index === bodies.length - 1)) {
      const { stand, post } = hang(bodies, baselinePoints, waiting, measures);
      baselinePoints[waiting] = stand;
      if (post) joints.push(postBar(post, measures));
      waiting = void 0;
    }
  });
  return { baselinePoints, joints };
}
var uprightTo = 8;
function isScript(bodies) {
  return areJoined(bodies) || Math.abs(slantOf(bodies.map(({ base }) => base))) > uprightTo;
}
function areJoined(bodies) {
  const gaps = bodies.slice(1).map((body, index) => {
    const before = bodies[index];
    return touching(profileOf([{ rows: before.rows, dx: before.at.x }], { rows: body.rows, dx: body.at.x }));
  });
  return 2 * gaps.filter((gap) => gap < 0).length >= Math.max(1, gaps.length);
}

// src/tag/overlap/slits.ts
var slitMm = 1;
var nearlyClosedMm = 4 * coarseMm;
var ownShare2 = 0.4;
function slitsOf(whole2, letters, { grow }) {
  const around4 = [-1, 1].flatMap(
    (side3) => fills(offset(whole2, side3 * nearlyClosedMm / 2, "round", coarseMm), letters, nearlyClosedMm, side3 > 0)
  );
  return [...fills(whole2, letters, grow > 0 ? coarseMm : 2 * coarseMm), ...around4];
}
function fills(whole2, letters, by, isClosed2 = false) {
  return whole2.flatMap((ring) => {
    if (ringArea(ring) >= 0) return [];
    const hole = [[...ring].reverse()];
    if (offset(hole, -slitMm / 2, "round", coarseMm).length > 0 || isOwn(ring, letters, isClosed2)) return [];
    return offset(hole, by, "miter");
  });
}
function isOwn(hole, letters, isClosed2) {
  const lost3 = isClosed2 ? perimeter([hole]) * nearlyClosedMm / 2 : 0;
  const middle2 = poleOf([[...hole].reverse()], 0.05);
  if (!middle2) return false;
  return letters.some(
    (letter) => letter.some(
      (each) => ringArea(each) < 0 && ringArea(hole) - lost3 < ownShare2 * ringArea(each) && contains([each], middle2)
    )
  );
}

// src/geometry/clip-to-box.ts
function clippedToBox(rings, { minX, minY, maxX, maxY }) {
  return rings.flatMap((ring) => {
    let left = ring;
    left = clipped(left, (p) => p.x - minX);
    left = clipped(left, (p) => maxX - p.x);
    left = clipped(left, (p) => p.y - minY);
    left = clipped(left, (p) => maxY - p.y);
    return left.length > 2 ? [left] : [];
  });
}
function clipped(ring, depth) {
  const last = ring[ring.length - 1];
  if (!last || ring.every((point) => depth(point) >= 0)) return ring;
  const kept = [];
  let [from, fromDepth] = [last, depth(last)];
  for (const to of ring) {
    const toDepth = depth(to);
    if (fromDepth >= 0 !== toDepth >= 0) {
      const t = fromDepth / (fromDepth - toDepth);
      kept.push({ x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) });
    }
    if (toDepth >= 0) kept.push(to);
    [from, fromDepth] = [to, toDepth];
  }
  return kept;
}

// src/tag/overlap/wedges.ts
var wedgeMm = 0.3;
var leastArea = 0.01;
function wedgesOf(whole2, letters) {
  const boxes = letters.map((letter) => boundsOf(letter));
  return placesOf(letters).flatMap((each) => {
    const place = widened(each, wedgeMm);
    const near = normalise(clippedToBox(whole2, widened(place, 2 * wedgeMm)));
    const closed3 = offset(offset(near, wedgeMm / 2, "round", coarseMm), -wedgeMm / 2, "round", coarseMm);
    const filled2 = clippedToBox(difference(closed3, [near]), place);
    return partsOf(normalise(filled2)).flatMap((part) => {
      if (area(part) < leastArea) return [];
      const wedge = offset(part, coarseMm, "miter");
      const box = boundsOf(wedge);
      const touched = letters.filter((letter, index) => {
        const other = boxes[index];
        return box && other && meets2(box, other) && intersection(wedge, letter).length > 0;
      });
      return touched.length > 1 ? [wedge] : [];
    });
  });
}
function placesOf(letters) {
  const boxes = letters.map((letter) => boundsOf(letter));
  const places = [];
  boxes.forEach((a, index) => {
    for (const [other, b] of boxes.slice(index + 1).entries()) {
      const shared4 = a && b && overlapOf(widened(a, wedgeMm), widened(b, wedgeMm));
      if (!shared4) continue;
      const edges = edgesIn2(letters[index + 1 + other], shared4);
      for (const edge of edgesIn2(letters[index], shared4)) {
        for (const facing2 of edges) {
          const place = overlapOf(edge, facing2);
          if (place) addPlace(places, place);
        }
      }
    }
  });
  return places;
}
function addPlace(places, place) {
  let whole2 = place;
  for (let index = 0; index < places.length; index++) {
    const other = places[index];
    if (!meets2(other, whole2)) continue;
    whole2 = around3(other, whole2);
    places.splice(index, 1);
    index = -1;
  }
  places.push(whole2);
}
function edgesIn2(region, box) {
  return region.flatMap((ring) => {
    let from = ring[ring.length - 1];
    return ring.flatMap((to) => {
      const edge = boundsOf([[from, to]]);
      from = to;
      return meets2(edge, box) ? [widened(edge, wedgeMm / 2)] : [];
    });
  });
}
function overlapOf(a, b) {
  if (!meets2(a, b)) return void 0;
  return {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY)
  };
}
function around3(a, b) {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY)
  };
}
function widened({ minX, minY, maxX, maxY }, by) {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}
function meets2(a, b) {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}

// src/tag/overlap/weld.ts
var longest = { joint: 1, own: 0.5 };
var slight = { lack: 0.1, longest: 2 };
var ease2 = 1.15;
var onMm = 0.06;
function beadsFor(whole2, shapes, { web: web2 }) {
  const boxes = shapes.map((shape) => boundsOf(shape));
  const onShape = (index, at2) => {
    const box = boxes[index];
    if (!box || at2.x < box.minX - onMm || at2.x > box.maxX + onMm || at2.y < box.minY - onMm || at2.y > box.maxY + onMm)
      return false;
    return shapes[index].some((ring) => isNear2(ring, at2));
  };
  return findNecks(whole2, web2).filter((neck2) => {
    if (neck2.length <= longest.own * web2) return true;
    if (neck2.width >= (1 - slight.lack) * web2 && neck2.length <= slight.longest * web2) return true;
    return neck2.length <= longest.joint * web2 && isJoint(neck2, shapes.length, onShape);
  }).map((neck2) => beadAt(neck2, web2));
}
function isJoint({ ends: [a, b] }, count, onShape) {
  let both = 0;
  let either = 0;
  for (let index = 0; index < count; index++) {
    const [atA, atB] = [onShape(index, a), onShape(index, b)];
    if (atA && atB) both += 1;
    if (atA || atB) either += 1;
  }
  return both !== 1 || either > 1;
}
function isNear2(ring, { x, y }) {
  let from = ring[ring.length - 1];
  for (const to of ring) {
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const t = Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy || 1)));
    if (Math.hypot(from.x + t * dx - x, from.y + t * dy - y) < onMm) return true;
    from = to;
  }
  return false;
}
function beadAt({ ends: [a, b], width, length }, web2) {
  const [cx, cy] = [(a.x + b.x) / 2, (a.y + b.y) / 2];
  const [ux, uy] = width > 1e-6 ? [-(b.y - a.y) / width, (b.x - a.x) / width] : [1, 0];
  const half = length / 2 + coarseMm;
  const core = [
    [
      { x: cx - half * ux, y: cy - half * uy },
      { x: cx + coarseMm * uy, y: cy - coarseMm * ux },
      { x: cx + half * ux, y: cy + half * uy },
      { x: cx - coarseMm * uy, y: cy + coarseMm * ux }
    ]
  ];
  return offset(core, ease2 * web2 / 2, "round", coarseMm);
}

// src/tag/overlap/join.ts
var leastBarMm = 0.1;
async function joinLetters(bodies, measures, checkpoint) {
  const stands = [];
  const joints = [];
  const placed2 = [];
  for (const line of byLine(bodies)) {
    const baseline = line[0].at.y;
    const slid = slideLine(line, measures);
    placed2.push(...uncrowded(line, slid.baselinePoints, measures));
    stands.push(...slid.baselinePoints.map(({ x, y }) => ({ x, y: y + baseline })));
    joints.push(...slid.joints.map((joint2) => movedRegion(joint2, { x: 0, y: baseline })));
    await checkpoint();
  }
  const grown4 = [];
  bodies.forEach(({ base }, index) => {
    const at2 = stands[index];
    const marks3 = placed2[index];
    grown4.push(movedRegion(base, at2), ...marks3.map(({ region }) => movedRegion(region, at2)));
    for (const { post } of marks3) if (post) joints.push(movedRegion(postBar(post, measures), at2));
  });
  let whole2 = union([...grown4, ...joints]);
  const add = async (more) => {
    await checkpoint();
    if (more.length === 0) return;
    whole2 = union([whole2, ...more]);
    await checkpoint();
  };
  const straps = strapsFor(whole2, measures.web).map((strap) => [strap]);
  await add(straps);
  joints.push(...straps);
  const wedges = wedgesOf(whole2, grown4);
  await add(wedges);
  const beads = beadsFor(whole2, [...grown4, ...joints, ...wedges], measures);
  await add(beads);
  joints.push(...beads);
  const slits = slitsOf(whole2, grown4, measures);
  return {
    letters: bodies.map(
      ({ part }, index) => [part.base, ...part.marks.map((mark, k) => movedRegion(mark, placed2[index][k].move))].flatMap((each) => [
        ...movedRegion(each, stands[index])
      ])
    ),
    joints: [...joints.flatMap((joint2) => thinned2(joint2, measures)), ...wedges.flat(), ...slits]
  };
}
function byLine(bodies) {
  const lines = /* @__PURE__ */ new Map();
  for (const body of bodies) {
    const line = lines.get(body.line);
    if (line) line.push(body);
    else lines.set(body.line, [body]);
  }
  return [...lines.values()];
}
function thinned2(joint2, { grow }) {
  const box = boundsOf(joint2);
  if (!box || grow === 0) return joint2;
  const inset = (from, to) => Math.min(grow, Math.max(0, (to - from - leastBarMm) / 2));
  const x = inset(box.minX, box.maxX);
  const y = inset(box.minY, box.maxY);
  return offset(joint2, -Math.min(x, y), "miter");
}

// src/tag/overlap/letters.ts
var hungFrom = 0.6;
var standing = { below: 0.25, tall: 0.6 };
function letterParts(text, ink, xHeight) {
  const parts = partsOf(ink).map((region) => ({ region, box: boundsOf(region) }));
  const [largest2, ...others2] = parts;
  if (!largest2) return [];
  const bases = [largest2];
  const marks3 = [];
  for (const part of others2) {
    const isBase = isBeside(part.box, largest2.box) || isStanding(part.box, xHeight);
    (isBase ? bases : marks3).push(part);
  }
  bases.sort((a, b) => middle(a.box) - middle(b.box));
  return bases.map(({ region, box }, place) => {
    const own = marks3.filter((mark) => nearestOf(bases, mark.box) === place);
    return {
      base: region,
      marks: own.sort((a, b) => distance3(a.box, box) - distance3(b.box, box)).map((mark) => mark.region),
      hung: box.minY > hungFrom * xHeight && /^[\p{P}\p{S}]+$/u.test(text)
    };
  });
}
function isBeside(part, base) {
  const level = Math.min(part.maxY, base.maxY) - Math.max(part.minY, base.minY);
  const lower = Math.min(part.maxY - part.minY, base.maxY - base.minY);
  const room = 0.2 * (part.maxX - part.minX);
  return level > lower / 2 && (part.minX > base.maxX - room || part.maxX < base.minX + room);
}
function isStanding({ minY, maxY }, xHeight) {
  return minY < standing.below * xHeight && maxY > standing.tall * xHeight;
}
function nearestOf(bases, mark) {
  const gaps = bases.map(({ box }) => Math.abs(middle(box) - middle(mark)));
  return gaps.indexOf(Math.min(...gaps));
}
function distance3(a, b) {
  return Math.max(a.minY - b.maxY, b.minY - a.maxY);
}
function middle({ minX, maxX }) {
  return (minX + maxX) / 2;
}

// src/tag/overlap/measures.ts
function pitchFor(xHeight, web2) {
  return Math.max(Math.min(xHeight / 60, web2 / 6), xHeight / 240);
}

// src/tag/overlap/outline.ts
function slidOutline(drawn, slide, making) {
  const outline = outlineOf(drawn, slide, making);
  return { ...outline, ungrown: slide.grow > 0 ? outlineOf(drawn, { ...slide, grow: 0 }, making) : outline };
}
function outlineOf(drawn, slide, making) {
  const { curves, letters, band, arc: arc2, path } = drawn;
  return {
    bounds: curveBounds(curves),
    at: async (scaleX, scaleY, checkpoint) => {
      const xHeight = drawn.xHeight * scaleY;
      const measures = { ...slide, grow: Math.max(0, slide.grow), xHeight, pitch: pitchFor(xHeight, slide.web) };
      const bend = arc2 && onCircle(arc2, scaleY);
      const bodies = await bodiesOf2(letters, { scaleX, scaleY, measures, bend, making }, checkpoint);
      const joined3 = await joinLetters(bodies, measures, checkpoint);
      const bent = (region) => bend ? bend.bent(region) : region;
      const whole2 = letters.flatMap(({ text, line }, index) => {
        const own = joined3.letters.filter((_, k) => bodies[k].index === index).flat();
        if (own.length === 0) return [];
        const asSet = bodies.filter((body) => body.index === index).flatMap(setRegion);
        const opens = isAfterGap(letters, index) || inkBefore(letters, index) !== line;
        return [{ text, region: bent(own), opens, asSet: bent(asSet) }];
      });
      const about = { path, xHeight, grow: 0, as: "material", slid: true };
      const solid = {
        region: union([...whole2.map(({ region }) => region), bent(joined3.joints)]),
        lettering: [new Lettering(about, () => whole2)],
        ...band ? { band: { baseline: band.baseline * scaleY, top: band.top * scaleY } } : {},
        ...bend ? { arcCentre: { x: 0, y: 0 } } : {}
      };
      const box = boundsOf(solid.region);
      if (!box || bend) return solid;
      const centre = boxCentre(box);
      return mapSolid(solid, translation(-centre.x, -centre.y));
    }
  };
}
function setRegion({ part, at: at2 }) {
  return movedRegion([part.base, ...part.marks].flat(), at2);
}
async function bodiesOf2(letters, { scaleX, scaleY, measures, bend, making }, checkpoint) {
  const bodies = [];
  const affine = { a: scaleX, b: 0, c: 0, d: scaleY, e: 0, f: 0 };
  const shapesOf2 = (text, ink) => letterParts(text, ink, measures.xHeight).map((part) => shapeOf(part, measures));
  for (const [index, { text, line, baseline, curves, drawn }] of letters.entries()) {
    if (curves.length === 0) continue;
    let at2 = { x: 0, y: baseline * scaleY };
    let shapes;
    if (drawn && !bend) {
      at2 = { x: drawn.origin.x * scaleX, y: drawn.origin.y * scaleY };
      const inputs = [making.font, drawn.key, text, scaleX, scaleY, measures];
      const make = () => shapesOf2(text, normalise(flatten(drawn.curves, { affine })));
      shapes = making.cache.get("sliding letter", inputs, make).value;
    } else {
      const ink = normalise(flatten(curves, { affine }));
      shapes = shapesOf2(text, movedRegion(bend ? bend.straight(ink) : ink, { x: 0, y: -at2.y }));
    }
    const afterGap = isAfterGap(letters, index);
    bodies.push(...shapes.map((shape, k) => ({ ...shape, index, line, afterGap: afterGap && k === 0, at: at2 })));
    await checkpoint();
  }
  return bodies;
}
function isAfterGap(letters, index) {
  const before = letters[index - 1];
  return before?.line === letters[index].line && /^\s+$/u.test(before.text);
}
function inkBefore(letters, index) {
  return letters.slice(0, index).findLast(({ curves }) => curves.length > 0)?.line;
}

// src/tag/arcs.ts
function chordsFor(radius, tolerance = flatteningToleranceMm) {
  const chords = Math.PI / Math.acos(Math.max(1 - tolerance / radius, -1));
  return Math.max(8, 4 * Math.ceil(chords / 4));
}
function arc(centre, rx, ry, from, to, steps2) {
  return Array.from({ length: steps2 + 1 }, (_, index) => {
    const angle = from + (to - from) * index / steps2;
    return { x: centre.x + rx * Math.cos(angle), y: centre.y + ry * Math.sin(angle) };
  });
}
function withoutRepeats(ring) {
  return ring.filter((point, index) => {
    const previous = ring[(index + ring.length - 1) % ring.length];
    return Math.hypot(point.x - previous.x, point.y - previous.y) > 1e-9;
  });
}

// src/tag/named-plates.ts
var quarter = Math.PI / 2;
function namedPlate(plate) {
  switch (plate.kind) {
    case "oval":
      return oval(plate.width / 2, plate.height / 2, plate.exponent);
    case "heart":
      return heart(plate.width, plate.height);
    case "house":
      return house(plate);
    case "label":
      return label(plate);
    case "ticket":
      return ticket(plate.width / 2, plate.height / 2, plate.bite);
    case "scalloped-rectangle":
      return scallopedRectangle(plate);
    case "scalloped-disc":
      return scallopedDisc(plate.across / 2, plate.lobes);
  }
}
function oval(a, b, exponent) {
  const power = 2 / exponent;
  const at2 = (t) => ({
    x: a * Math.max(0, Math.cos(t)) ** power,
    y: b * Math.max(0, Math.sin(t)) ** power
  });
  const near = flatteningToleranceMm / 2;
  const between5 = (from, to, depth) => {
    const middle2 = (from + to) / 2;
    if (depth >= 14 || depth >= 3 && distanceToChord(at2(middle2), at2(from), at2(to)) <= near) return [];
    return [...between5(from, middle2, depth + 1), at2(middle2), ...between5(middle2, to, depth + 1)];
  };
  const first = [{ x: a, y: 0 }, ...between5(0, quarter, 0)];
  const upper = [
    ...first,
    { x: 0, y: b },
    ...first.slice(1).reverse().map(({ x, y }) => ({ x: -x, y }))
  ];
  return [
    ...upper,
    { x: -a, y: 0 },
    ...upper.slice(1).reverse().map(({ x, y }) => ({ x, y: -y }))
  ];
}
function distanceToChord(point, from, to) {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return Math.abs((point.x - from.x) * dy - (point.y - from.y) * dx) / Math.max(Math.hypot(dx, dy), 1e-12);
}
function heart(width, height) {
  const centre = Math.SQRT1_2 / 2;
  const [right, top, bottom] = [centre + 0.5, centre + 0.5, -Math.SQRT1_2];
  const [scaleX, scaleY] = [width / (2 * right), height / (top - bottom)];
  const steps2 = chordsFor(Math.max(scaleX, scaleY) / 2);
  const lobe = arc({ x: centre, y: centre }, 0.5, 0.5, -quarter / 2, 1.5 * quarter, steps2);
  const mirrored = lobe.map(({ x, y }) => ({ x: -x, y })).reverse();
  const ring = [{ x: 0, y: bottom }, ...lobe, ...mirrored];
  return withoutRepeats(ring.map(({ x, y }) => ({ x: x * scaleX, y: (y - (top + bottom) / 2) * scaleY })));
}
function house({ width, height, roof, eaves }) {
  const [bottom, under, wall] = [-height / 2, height / 2 - roof, width / 2 - eaves];
  return withoutRepeats([
    { x: -wall, y: bottom },
    { x: wall, y: bottom },
    { x: wall, y: under },
    { x: width / 2, y: under },
    { x: 0, y: height / 2 },
    { x: -width / 2, y: under },
    { x: -wall, y: under }
  ]);
}
function label({ width, height, cut, end }) {
  const [x, y] = [width / 2, height / 2];
  const corners = [
    { x: 1, y: 1, ends: ["top", "right"] },
    { x: -1, y: 1, ends: ["top", "left"] },
    { x: -1, y: -1, ends: ["bottom", "left"] },
    { x: 1, y: -1, ends: ["bottom", "right"] }
  ];
  const ring = corners.flatMap((corner, index) => {
    const upright = { x: corner.x * x, y: corner.y * (y - cut) };
    const level = { x: corner.x * (x - cut), y: corner.y * y };
    if (!corner.ends.includes(end)) return [{ x: corner.x * x, y: corner.y * y }];
    return index % 2 === 0 ? [upright, level] : [level, upright];
  });
  return withoutRepeats(ring);
}
function ticket(x, y, bite) {
  const corners = [
    { x, y },
    { x: -x, y },
    { x: -x, y: -y },
    { x, y: -y }
  ];
  const steps2 = chordsFor(bite) / 4;
  return corners.flatMap(
    (corner, index) => arc(corner, bite, bite, (index + 3) * quarter, (index + 2) * quarter, steps2)
  );
}
function scallopedRectangle(plate) {
  const { width, height, columns: columns3, rows } = plate;
  const [rx, ry] = [width / columns3 / 2, height / rows / 2];
  const steps2 = chordsFor(Math.max(rx, ry)) / 4;
  const ring = [];
  for (const [index, lobes] of [rows, columns3, rows, columns3].entries()) {
    const along2 = { x: Math.cos((index + 1) * quarter), y: Math.sin((index + 1) * quarter) };
    const start = cornerLobe(index, width / 2 - rx, height / 2 - ry);
    const out = index * quarter;
    ring.push(...arc(start, rx, ry, out - 2 * quarter, out + quarter, 3 * steps2));
    for (let lobe = 1; lobe < lobes - 1; lobe++) {
      const centre = { x: start.x + along2.x * 2 * rx * lobe, y: start.y + along2.y * 2 * ry * lobe };
      ring.push(...arc(centre, rx, ry, out - quarter, out + quarter, 2 * steps2));
    }
  }
  return withoutRepeats(ring);
}
function cornerLobe(side3, x, y) {
  return { x: side3 === 0 || side3 === 1 ? x : -x, y: side3 === 1 || side3 === 2 ? y : -y };
}
function scallopedDisc(radius, lobes) {
  const half = Math.PI / lobes;
  const toCorner = radius / (Math.cos(half) + Math.sin(half));
  const lobe = toCorner * Math.sin(half);
  const steps2 = chordsFor(lobe) / 2;
  const ring = Array.from({ length: lobes }, (_, index) => {
    const out = quarter + index * 2 * half;
    const apothem = toCorner * Math.cos(half);
    const centre = { x: apothem * Math.cos(out), y: apothem * Math.sin(out) };
    return arc(centre, lobe, lobe, out - quarter, out + quarter, steps2);
  });
  return withoutRepeats(ring.flat());
}

// src/tag/plates.ts
function makePlate(plate) {
  switch (plate.kind) {
    case "rectangle":
      return [roundedRectangle(plate.width, plate.height, plate.radius)];
    case "ellipse":
      return [ellipse(plate.width / 2, plate.height / 2)];
    case "regular":
      return [regularPolygon(plate.sides, plate.across / 2)];
    case "points":
      return normalise([plate.points]);
    case "arrow":
      return [arrow(plate)];
    default:
      return [namedPlate(plate)];
  }
}
function ellipse(rx, ry, centre = { x: 0, y: 0 }) {
  const chords = chordsFor(Math.max(rx, ry));
  return arc(centre, rx, ry, 0, 2 * Math.PI, chords).slice(0, chords);
}
function circle(centre, radius) {
  return ellipse(radius, radius, centre);
}
function roundedRectangle(width, height, radius) {
  const x = width / 2 - radius;
  const y = height / 2 - radius;
  const corners = [
    { x, y },
    { x: -x, y },
    { x: -x, y: -y },
    { x, y: -y }
  ];
  if (radius === 0) return corners;
  const steps2 = chordsFor(radius) / 4;
  const quarter2 = Math.PI / 2;
  const ring = corners.flatMap(
    (corner, index) => arc(corner, radius, radius, index * quarter2, (index + 1) * quarter2, steps2)
  );
  return withoutRepeats(ring);
}
function regularPolygon(sides, radius) {
  return arc({ x: 0, y: 0 }, radius, radius, Math.PI / 2, 5 * Math.PI / 2, sides).slice(0, sides);
}
function arrow({ length, width, head, tipDegrees, tail, notch }) {
  const tip = length / 2;
  const shoulder = tip - head / 2 / Math.tan(tipDegrees * Math.PI / 360);
  const end = -length / 2;
  const half = width / 2;
  const upper = [{ x: shoulder, y: head / 2 }];
  if (head > width) upper.push({ x: shoulder, y: half });
  if (tail === "forked") upper.push({ x: end + notch, y: half }, { x: end, y: head / 2 });
  else upper.push({ x: tail === "pointed" ? end + notch : end, y: half });
  const middle2 = tail === "straight" ? [] : [{ x: tail === "pointed" ? end : end + notch, y: 0 }];
  const lower = upper.map(({ x, y }) => ({ x, y: -y })).reverse();
  return [{ x: tip, y: 0 }, ...upper, ...middle2, ...lower];
}

// src/tag/stack.ts
var lapSteps = 20;
var shownAreaMm2 = 1e-4;
var mostEndShare = 0.45;
function makeStack(members2, towards, lap) {
  const placed2 = [];
  const shoulders = [];
  const parts = /* @__PURE__ */ new Map();
  const put = (name, solid, region) => {
    placed2.push({ name, region });
    const move = shiftBetween(solid.region, region);
    for (const [inner, part] of solid.parts ?? []) parts.set(inner, transform(part, move));
    parts.set(name, region);
  };
  for (const { name, solid } of members2) {
    const { region } = solid;
    const previous = placed2.at(-1);
    if (!boundsOf(region)) continue;
    if (!previous) {
      put(name, solid, abutted(region, void 0, towards, 0));
      continue;
    }
    const poking = shoulderOf(previous.region, region, towards);
    const hiding = lap === void 0 || shows(poking(lap)) ? hidingLap(previous.region, region, towards) : lap;
    const overlap2 = lap ?? hiding;
    const lapped = abutted(region, boundsOf(previous.region), towards, overlap2);
    if (shows(poking(overlap2)) && hasCorners(previous.region, region, towards)) {
      const notches = notchesBeside(poking(overlap2), previous.region, lapped, towards);
      shoulders.push({ name, region: notches, ...shows(poking(hiding)) ? {} : { hidingLap: hiding } });
    }
    put(name, solid, lapped);
  }
  const whole2 = union(placed2.map(({ region }) => region));
  const bounds = boundsOf(whole2);
  if (!bounds) return { region: [] };
  const centre = boxCentre(bounds);
  const shift = translation(-centre.x, -centre.y);
  return {
    region: transform(whole2, shift),
    parts: new Map([...parts].map(([name, region]) => [name, transform(region, shift)])),
    ...shoulders.length > 0 ? { shoulders: shoulders.map((each) => ({ ...each, region: transform(each.region, shift) })) } : {}
  };
}
function abutted(region, previous, towards, lap) {
  const bounds = boundsOf(region);
  const centre = boxCentre(bounds);
  if (!previous) return transform(region, translation(-centre.x, -centre.y));
  const middle2 = boxCentre(previous);
  switch (towards) {
    case "down":
      return transform(region, translation(middle2.x - centre.x, previous.minY + lap - bounds.maxY));
    case "up":
      return transform(region, translation(middle2.x - centre.x, previous.maxY - lap - bounds.minY));
    case "left":
      return transform(region, translation(previous.minX + lap - bounds.maxX, middle2.y - centre.y));
    case "right":
      return transform(region, translation(previous.maxX - lap - bounds.minX, middle2.y - centre.y));
  }
}
function shiftBetween(from, to) {
  const before = boundsOf(from);
  const after = boundsOf(to);
  return translation(after.minX - before.minX, after.minY - before.minY);
}
function hidingLap(previous, next, towards) {
  const poking = shoulderOf(previous, next, towards);
  let low = 0;
  let high = Math.min(depthOf(boundsOf(previous), towards), depthOf(boundsOf(next), towards)) / 2;
  for (let step = 0; step < lapSteps; step++) {
    const middle2 = (low + high) / 2;
    if (shows(poking(middle2))) low = middle2;
    else high = middle2;
  }
  return high;
}
function shoulderOf(previous, next, towards) {
  const before = boundsOf(previous);
  const isNarrower2 = nextIsNarrower(previous, next, towards);
  return (lap) => {
    const placed2 = abutted(next, before, towards, lap);
    const [end, wide2] = isNarrower2 ? [endOf(placed2, opposite[towards]), previous] : [endOf(previous, towards), placed2];
    return difference(end, [wide2]);
  };
}
function nextIsNarrower(previous, next, towards) {
  const span4 = ({ minX, maxX, minY, maxY }) => isVertical(towards) ? maxX - minX : maxY - minY;
  return span4(boundsOf(next)) <= span4(boundsOf(previous));
}
function hasCorners(previous, next, towards) {
  const isNarrower2 = nextIsNarrower(previous, next, towards);
  const [narrower, side3] = isNarrower2 ? [next, opposite[towards]] : [previous, towards];
  const end = boundsOf(endOf(narrower, side3));
  return end !== void 0 && depthOf(end, towards) < mostEndShare * depthOf(boundsOf(narrower), towards);
}
function notchesBeside(shown3, previous, next, towards) {
  const along2 = boundsOf(shown3);
  const across2 = boundsOf(nextIsNarrower(previous, next, towards) ? next : previous);
  const strip2 = isVertical(towards) ? { ...across2, minY: along2.minY, maxY: along2.maxY } : { ...across2, minX: along2.minX, maxX: along2.maxX };
  return difference([boxRing(strip2)], [previous, next]);
}
function isVertical(towards) {
  return towards === "down" || towards === "up";
}
function depthOf({ minX, maxX, minY, maxY }, towards) {
  return isVertical(towards) ? maxY - minY : maxX - minX;
}
function shows(shoulder) {
  return area(shoulder) > shownAreaMm2;
}
var opposite = { down: "up", up: "down", left: "right", right: "left" };
function endOf(region, side3) {
  const bounds = boundsOf(region);
  const vertical = isVertical(side3);
  const sign2 = side3 === "up" || side3 === "right" ? 1 : -1;
  const widest = region.flat().filter(({ x, y }) => {
    const [across2, low, high] = vertical ? [x, bounds.minX, bounds.maxX] : [y, bounds.minY, bounds.maxY];
    return across2 - low < 1e-3 || high - across2 < 1e-3;
  });
  const line = sign2 * Math.max(...widest.map(({ x, y }) => sign2 * (vertical ? y : x)));
  const far = {
    ...bounds,
    ...{ down: { maxY: line }, up: { minY: line }, left: { maxX: line }, right: { minX: line } }[side3]
  };
  return intersection(region, [boxRing(far)]);
}
function boxRing({ minX, minY, maxX, maxY }) {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY }
  ];
}

// src/tag/generate.ts
async function generate(shape, resources, make) {
  const { cache } = resources;
  const { generator } = shape;
  switch (generator.kind) {
    case "text":
      return lettering2(shape, generator, resources);
    case "rectangle":
    case "ellipse":
    case "regular":
    case "points":
    case "arrow":
    case "oval":
    case "heart":
    case "house":
    case "label":
    case "ticket":
    case "scalloped-rectangle":
    case "scalloped-disc":
      return cache.get("plate", generator, () => solidOutline({ region: makePlate(generator) }));
    case "path": {
      const parsed = cache.get("path", generator, () => parseSvgPath(generator.data, generator.mmPerUnit));
      const { value } = parsed;
      if ("curves" in value)
        return cache.get("drawn path", parsed.id, () => drawnOutline([{ curves: value.curves, rule: "nonzero" }]));
      const message = `This is not valid SVG path data: ${value.problem}.`;
      resources.report({ code: "bad-value", severity: "error", path: [...shape.path, "path"], message });
      return void 0;
    }
    case "drawing": {
      const drawing = resources.drawing(generator.file);
      return drawing && cache.get("drawing", drawing.id, () => drawnOutline(drawing.shapes));
    }
    case "from": {
      const made = await make(generator.shape);
      return cache.get("from", made.id, () => solidOutline(made.value));
    }
    case "around": {
      const made = await make(generator.shape);
      const { by, corners, keepHoles, bays } = generator;
      return cache.get(
        "around",
        [made.id, by, corners, keepHoles, bays],
        () => solidOutline({ region: around(made.value.region, generator) })
      );
    }
    case "stack": {
      const members2 = [];
      for (const member of generator.shapes) members2.push({ name: member.name, made: await make(member) });
      const inputs = [members2.map(({ name, made }) => [name, made.id]), generator.towards, generator.lap];
      return cache.get("stack", inputs, () => {
        const solids = members2.map(({ name, made }) => ({ name, solid: made.value }));
        const stack = makeStack(solids, generator.towards, generator.lap);
        const lettering3 = members2.flatMap(({ name, made }) => stacked(made.value, stack.parts?.get(name)));
        return solidOutline({ ...stack, ...withLettering(lettering3) });
      });
    }
    case "union":
    case "difference":
    case "intersection": {
      const made = [];
      for (const each of generator.shapes) made.push(await make(each));
      const inputs = made.map(({ id }) => id);
      const { kind } = generator;
      return cache.get(kind, inputs, () => {
        const regions2 = made.map(({ value }) => value.region);
        const lettering3 = made.flatMap(
          ({ value }, index) => letteringWithin(value).map((each) => kind === "difference" && index > 0 ? each.cutOut() : each)
        );
        const asked = made.flatMap(({ value }) => value.asked ?? []);
        const kept = kind === "difference" ? made.slice(0, 1) : made;
        const parts = new Map(kept.flatMap(({ value }) => [...value.parts ?? []]));
        return solidOutline({
          region: combined(kind, regions2),
          asked,
          ...parts.size > 0 ? { parts } : {},
          ...withLettering(lettering3)
        });
      });
    }
  }
}
function lettering2({ path, modifiers }, text, resources) {
  const { cache } = resources;
  const face2 = resources.font(text);
  if (!face2) return void 0;
  const sized = text.overlap === void 0 ? modifiers : { ...modifiers, grow: 0 };
  const { width, height, grow } = sized;
  const em = emOf(face2, text, sized);
  if (em !== void 0 && !(em > 0)) {
    const message = "The growth alone takes up this height; make it taller, or grow less.";
    const key = text.size.of === "capitals" ? "cap_height" : "x_height";
    resources.report({ code: "bad-length", severity: "error", path: [...path, key], message });
    return void 0;
  }
  const { size, ...look } = text;
  const atSize = dependsOnSize(text) ? [size, width, height, grow] : void 0;
  const set = cache.get("layout", [face2.id, look, atSize], () => setText(face2, text, sized));
  const { value } = set;
  if ("problem" in value) {
    resources.report({ code: "bad-length", severity: "error", path: [...path, ...value.at], message: value.problem });
    return void 0;
  }
  const missing2 = [...new Set(value.missing.map(({ text: letters }) => `\u201C${letters}\u201D`))];
  if (missing2.length > 0) {
    const message = `The font ${face2.family} has no ${missing2.join(", no ")}.`;
    resources.report({ code: "missing-glyph", severity: "error", path: [...path, "text"], message });
  }
  const { overlap: overlap2 } = text;
  const slide = overlap2 && { overlap: overlap2, web: resources.minWeb, grow: modifiers.grow ?? 0 };
  const isSpacedWhenFitted = modifiers.fit !== void 0 && text.letterSpacingMm !== 0;
  return cache.get("lettering", [set.id, em, slide, path, isSpacedWhenFitted], () => {
    const outlineOf2 = (known3) => {
      const drawn = { ...known3, xHeight: face2.xHeight, path };
      if (slide) return slidOutline(drawn, slide, { cache, font: face2.id });
      return known3.band ? centredOutline(drawn, known3.band) : hubbedOutline(drawn);
    };
    return {
      ...isSpacedWhenFitted ? respaced(outlineOf2(value), (mmPerEm) => setAt(face2, text, mmPerEm), outlineOf2) : outlineOf2(value),
      ...em === void 0 ? {} : { ownScale: em }
    };
  });
}
function respaced(natural, setFor, outlineOf2) {
  return {
    ...natural,
    changes: true,
    at: (scaleX, scaleY, checkpoint) => {
      const set = setFor(scaleY);
      return ("problem" in set ? natural : outlineOf2(set)).at(scaleX, scaleY, checkpoint);
    }
  };
}
function letteringWithin({ region, lettering: lettering3 = [] }) {
  return lettering3.map((each) => each.within(region));
}
function stacked(solid, placed2) {
  const from = boundsOf(solid.region);
  const to = placed2 && boundsOf(placed2);
  if (!from || !to) return [];
  const shift = translation(to.minX - from.minX, to.minY - from.minY);
  return letteringWithin(solid).map((each) => each.mapped(shift));
}
function withLettering(lettering3) {
  return lettering3.length > 0 ? { lettering: lettering3 } : {};
}
function combined(kind, regions2) {
  const [first = [], ...rest] = regions2;
  if (kind === "union") return union(regions2);
  if (kind === "difference") return difference(first, rest);
  return rest.reduce((shared4, region) => intersection(shared4, region), first);
}

// src/tag/place.ts
function placing(solid, target, at2, margin, by, middle2) {
  const box = boundsOf(solid.region);
  const frame2 = boundsOf(target.region);
  const from = centreOf(solid, by);
  const to = middle2 ?? centreOf({ region: target.region }, by);
  if (!box || !frame2 || !from || !to) return translation(0, 0);
  let x = to.x - from.x;
  let y = to.y - from.y;
  if (at2.includes("left")) x = frame2.minX + margin - box.minX;
  if (at2.includes("right")) x = frame2.maxX - margin - box.maxX;
  if (at2.includes("bottom")) y = frame2.minY + margin - box.minY;
  if (at2.includes("top")) y = frame2.maxY - margin - box.maxY;
  return translation(x, y);
}

// src/tag/size.ts
var closeMm3 = 0.05;
var rounds3 = 6;
async function sizeAndGrow(outline, sizing, checkpoint) {
  const { bounds, ungrown } = outline;
  if (!bounds) return { region: [] };
  if (ungrown) return slidAndGrown(outline, ungrown, sizing, checkpoint);
  const { width, height, grow = 0 } = sizing;
  const natural = { width: bounds.maxX - bounds.minX, height: bounds.maxY - bounds.minY };
  let scaleX = width === void 0 ? sizing.scale : (width - 2 * grow) / natural.width;
  let scaleY = height === void 0 ? sizing.scale : (height - 2 * grow) / natural.height;
  if (width !== void 0 && height === void 0) scaleY = scaleX;
  if (height !== void 0 && width === void 0) scaleX = scaleY;
  let solid = { region: [] };
  for (let round3 = 0; round3 < rounds3; round3++) {
    if (!(scaleX > 0 && scaleY > 0 && Number.isFinite(scaleX) && Number.isFinite(scaleY))) return { region: [] };
    const made = await outline.at(scaleX, scaleY, checkpoint);
    const region = offset(tidied(made.region, sizing.tidy), grow, sizing.corners);
    const lettering3 = made.lettering?.map((each) => each.grown(grow, sizing.corners));
    solid = { ...made, region, ...lettering3 ? { lettering: lettering3 } : {} };
    const box = boundsOf(region);
    if (!box || grow === 0) break;
    let lackX = width === void 0 ? 0 : width - spanX(box);
    let lackY = height === void 0 ? 0 : height - spanY(box);
    if (width === void 0) lackX = lackY * spanX(box) / spanY(box);
    if (height === void 0) lackY = lackX * spanY(box) / spanX(box);
    if (Math.abs(lackX) < closeMm3 && Math.abs(lackY) < closeMm3) {
      return mapSolid(solid, scaling(1 + lackX / spanX(box), 1 + lackY / spanY(box), boxCentre(box)));
    }
    scaleX += lackX / natural.width;
    scaleY += lackY / natural.height;
  }
  return solid;
}
async function slidAndGrown(outline, ungrown, sizing, checkpoint) {
  const { tidy, grow = 0, corners, width, height } = sizing;
  const natural = outline.bounds;
  const guessX = width === void 0 ? void 0 : width / spanX(natural);
  const guessY = height === void 0 ? guessX : height / spanY(natural);
  let scaleX = guessX ?? guessY ?? sizing.scale;
  let scaleY = guessY ?? sizing.scale;
  let [restX, restY] = [1, 1];
  for (let round3 = 0; round3 < rounds3 && guessY !== void 0; round3++) {
    const { region: region2 } = await ungrown.at(scaleX, scaleY, checkpoint);
    const box = boundsOf(tidied(region2, tidy));
    if (!box) return { region: [] };
    restX = width === void 0 ? height / spanY(box) : width / spanX(box);
    restY = height === void 0 ? restX : height / spanY(box);
    const off = Math.max(Math.abs(restX - 1) * spanX(box), Math.abs(restY - 1) * spanY(box));
    if (!Number.isFinite(off)) return { region: [] };
    if (off < closeMm3) break;
    [scaleX, scaleY, restX, restY] = [scaleX * restX, scaleY * restY, 1, 1];
  }
  if (!(scaleX > 0 && scaleY > 0)) return { region: [] };
  const made = await outline.at(scaleX, scaleY, checkpoint);
  const sized = restX === 1 && restY === 1 ? made : mapSolid(made, scaling(restX, restY, { x: 0, y: 0 }));
  const region = withoutSlivers(offset(tidied(sized.region, tidy), grow, corners), sized);
  const lettering3 = sized.lettering?.map((each) => each.grown(grow, corners));
  return { ...sized, region, ...lettering3 ? { lettering: lettering3 } : {} };
}
var sliver = { mm: 0.1, xHeights: 0.02 };
function withoutSlivers(region, { lettering: lettering3 = [] }) {
  return tidied(region, Math.min(sliver.mm, ...lettering3.map(({ xHeight }) => sliver.xHeights * xHeight)));
}
function spanX(box) {
  return box.maxX - box.minX;
}
function spanY(box) {
  return box.maxY - box.minY;
}
function tidied(region, least) {
  if (!least) return region;
  return region.filter((ring) => {
    const box = boundsOf([ring]);
    return box && Math.abs(ringArea(ring)) > 0 && Math.max(spanX(box), spanY(box)) >= least;
  });
}

// src/tag/evaluate.ts
var Evaluator = class {
  #resources;
  #made = /* @__PURE__ */ new Map();
  #around;
  /** @param around What a fitted shape keeps clear of. */
  constructor(resources, around4) {
    this.#resources = resources;
    this.#around = around4;
  }
  /** All that has been made so far. */
  get made() {
    return new Map([...this.#made].map(([shape, { value }]) => [shape, value]));
  }
  /** The finished solid of a shape; an empty one has been reported. */
  async make(shape) {
    const known3 = this.#made.get(shape);
    if (known3) return known3;
    const made = await this.#attempt(shape);
    this.#made.set(shape, made ?? this.#nothing());
    if (made?.value.region.length === 0) this.#reportEmpty(shape);
    return made ?? this.#nothing();
  }
  /** `undefined` where it cannot be made, which has been reported. */
  async #attempt(shape) {
    try {
      const outline = await generate(shape, this.#resources, (each) => this.make(each));
      await this.#resources.checkpoint();
      const made = outline && await this.#finished(shape, outline);
      await this.#resources.checkpoint();
      return made;
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      const message = `This shape cannot be made: ${error.message}`;
      this.#resources.report({ code: "bad-value", severity: "error", path: shape.path, message });
      return void 0;
    }
  }
  async #finished(shape, outline) {
    const { fit, nudge } = shape.modifiers;
    if (!fit) return this.#placed(shape, this.#held(shape, await this.#sized(shape, outline)));
    const found = await this.#fitted(shape, outline);
    if (!found.value) return this.#nothing();
    const { cache } = this.#resources;
    const { solid, move } = found.value;
    const held = this.#held(
      shape,
      cache.get("fitted shape", found.id, () => solid)
    );
    if (!move) return this.#placed(shape, held);
    return cache.get(
      "put",
      [held.id, found.id, nudge],
      () => mapSolid(held.value, nudge ? chain(move, translation(nudge.x, nudge.y)) : move)
    );
  }
  #nothing() {
    return this.#resources.cache.get("nothing", 0, () => ({ region: [] }));
  }
  async #sized({ modifiers }, outline) {
    const { tidy, grow, corners, width, height } = modifiers;
    const sizing = { scale: outline.value.ownScale ?? 1, tidy, grow, corners, width, height };
    const { cache, checkpoint } = this.#resources;
    return cache.getLater("sized", [outline.id, sizing], () => sizeAndGrow(outline.value, sizing, checkpoint));
  }
  /** `undefined` where there is no room, which has been reported. */
  async #fitted(shape, outline) {
    const { modifiers, path } = shape;
    const { tidy, grow, corners, rotate, mirror, place } = modifiers;
    const fit = modifiers.fit;
    const { cache, checkpoint } = this.#resources;
    const target = await this.target(fit);
    const goal = place && await this.target(place);
    const around4 = await this.#around(shape);
    const { margin, clear } = fit;
    const room = (more) => cache.get(
      "room",
      [target.id, margin + more, around4?.id, clear + more, place?.by],
      () => roomIn(target.value.region, margin + more, grown2(around4?.value, clear + more), place?.by ?? "eye")
    );
    const [free, outer] = [room(grow ?? 0), room(0)];
    const most4 = largestScaleOf(shape, outline.value, this.#resources);
    const sizing = { tidy, grow, corners };
    const inputs = [outline.id, sizing, free.id, outer.id, most4, rotate, mirror, place?.at, place?.margin, goal?.id];
    const found = await cache.getLater(
      "fitted",
      inputs,
      () => fitted2(outline.value, {
        modifiers,
        rooms: { free: free.value, outer: outer.value },
        most: most4,
        goal: goal && { target: goal.value, margin: place.margin },
        sized: (scale) => sizeAndGrow(outline.value, { ...sizing, scale }, checkpoint),
        checkpoint
      })
    );
    if (!found.value && outline.value.bounds && target.value.region.length > 0) {
      this.#resources.report({
        code: "empty-shape",
        severity: "error",
        path: [...path, "fit"],
        message: noRoom(fit, target.value.region, around4?.value, grow ?? 0)
      });
    }
    return found;
  }
  /** Straps between its parts and bridges across its strokes, as wide as they are asked for whatever the size. */
  #held({ generator, modifiers: { straps, bridges } }, sized) {
    const bar2 = ofBar(generator, sized.value.region);
    if (straps === void 0 && !bridges && bar2.length === 0) return sized;
    return this.#resources.cache.get("held", [sized.id, straps, bridges], () => {
      const { region, asked = [] } = sized.value;
      const joined3 = straps === void 0 ? { region, strips: [] } : strapped(region, straps);
      const held = bridges ? bridged(joined3.region, bridges.width, bridges.sides) : { ...joined3, strips: [] };
      return {
        ...sized.value,
        region: held.region,
        asked: [
          ...asked,
          ...bar2,
          ...ofStrips(joined3.strips, straps ?? 0),
          ...ofStrips(held.strips, bridges?.width ?? 0)
        ]
      };
    });
  }
  async #placed({ modifiers }, sized) {
    const { rotate, mirror, place, nudge } = modifiers;
    const target = place && await this.target(place);
    if (rotate === void 0 && !mirror && !target && !nudge) return sized;
    const aim = target && [target.id, place.at, place.margin, place.by];
    return this.#resources.cache.get("placed", [sized.id, rotate, mirror, aim, nudge], () => {
      const bounds = boundsOf(sized.value.region);
      let solid = bounds ? mapSolid(sized.value, turning(modifiers, boxCentre(bounds))) : sized.value;
      if (target) solid = mapSolid(solid, placing(solid, target.value, place.at, place.margin, place.by));
      return nudge ? mapSolid(solid, translation(nudge.x, nudge.y)) : solid;
    });
  }
  /** What the target is made as: the shape, or its member where it stands in it. */
  async target({ shape, part }) {
    const made = await this.make(shape);
    if (part === void 0) return made;
    return this.#resources.cache.get("part", [made.id, part], () => ({ region: made.value.parts?.get(part) ?? [] }));
  }
  /** Only where the shape itself is to blame: what it is made from has reported its own emptiness. */
  #reportEmpty({ generator, modifiers, path }) {
    const sources2 = "shapes" in generator ? generator.shapes : "shape" in generator ? [generator.shape] : [];
    if (sources2.length > 0 && sources2.every((source) => this.#made.get(source)?.value.region.length === 0)) return;
    const { fit, grow = 0, width, height } = modifiers;
    if (fit) return;
    let reason2 = "has no area";
    if (grow < 0) reason2 = "is thinned away to nothing";
    else if (grow > 0 && Math.min(width ?? Infinity, height ?? Infinity) <= 2 * grow)
      reason2 = "cannot be grown that much and stay that small";
    this.#resources.report({ code: "empty-shape", severity: "error", path, message: `This shape ${reason2}.` });
  }
};
function grown2(region, by) {
  return region ? offset(region, by) : [];
}
function largestScaleOf({ generator, modifiers }, { bounds }, resources) {
  const { fit, grow = 0 } = modifiers;
  const { width, ...heights } = fit?.atMost ?? {};
  const face2 = generator.kind === "text" ? resources.font(generator) : void 0;
  const own = generator.kind === "text" && generator.overlap !== void 0 ? 0 : grow;
  const scales = ["capitals", "small letters"].flatMap((of) => {
    const mm3 = heights[of];
    return face2 && mm3 !== void 0 && generator.kind === "text" ? emOf(face2, { ...generator, size: { of, mm: mm3 } }, { grow: own }) ?? [] : [];
  });
  if (width !== void 0 && bounds) scales.push((width - 2 * grow) / (bounds.maxX - bounds.minX));
  return Math.min(Infinity, ...scales);
}

// src/tag/uncompensated.ts
function kerfOf({ kerf: kerf2, kerfs }) {
  return kerfs ?? { outer: kerf2, inner: kerf2 };
}
function offsetByKind(region, { outer, inner }) {
  if (outer === inner) return offset(region, outer);
  const parts = partsOf(region).map(([outline, ...holes]) => {
    const openings = holes.map((ring) => [...ring].reverse());
    return difference(offset([outline], outer), [offset(openings, -inner)]);
  });
  return union(parts);
}
function cutOnTheLine(pieces, stock, { report }) {
  const { outer, inner } = kerfOf(stock);
  if (outer === 0 && inner === 0) return pieces;
  return pieces.flatMap((piece) => {
    const region = offsetByKind(piece.region, { outer: -outer / 2, inner: -inner / 2 });
    if (region.length === 0) {
      const message = `Cut on the line, nothing is left of \u201C${piece.title}\u201D: it is no wider than the kerf.`;
      report({ code: "empty-shape", severity: "error", path: ["output", "compensate"], message });
      return [];
    }
    const hangers = piece.hangers.map((hanger) => ({
      ...hanger,
      opening: offset(hanger.opening, inner / 2),
      openingSize: hanger.openingSize + inner,
      openingLength: hanger.openingLength + inner,
      ...hanger.wall === void 0 ? {} : { wall: hanger.wall - (outer + inner) / 2 }
    }));
    const asked = thinned(piece.asked ?? [], Math.max(outer, inner));
    return [{ ...piece, region, cutLine: piece.region, asked, hangers }];
  });
}

// src/tag/hanger/inside.ts
function placeInside(on, at2, reach, inset) {
  const bounds = boundsOf(on);
  const balance = centroid(on);
  if (!bounds || !balance) return void 0;
  if (at2.kind === "point") {
    const middle2 = boxCentre(bounds);
    return { x: middle2.x + at2.offset.x, y: middle2.y + at2.offset.y };
  }
  const wide2 = bounds.maxX - bounds.minX > bounds.maxY - bounds.minY;
  const place = at2.kind === "auto" ? { kind: "anchor", anchor: wide2 ? "left" : "top" } : at2;
  const room = offset(on, -(inset + reach), "miter");
  const roomBounds = boundsOf(room);
  if (!roomBounds) return void 0;
  const direction = aimFrom(balance, roomBounds, place);
  const straight = furthestOnRay(room, balance, direction);
  return straight ?? cornerTowards(room, balance, direction);
}
function cornerTowards(region, from, direction) {
  let best;
  let least = Infinity;
  for (const point of region.flat()) {
    const tilt = tiltDegrees({ x: point.x - from.x, y: point.y - from.y }, direction);
    if (tilt < least) {
      least = tilt;
      best = point;
    }
  }
  return best;
}

// src/tag/hanger/reading.ts
var markCost = 0.4;
var letterCost = 0.3;
var onLine2 = 0.25;
var smallestLetter = 0.6;
var largestLetter = 1.6;
var smallLetters = 1.1;
var noReading = { marks: [], lines: [] };
function readingOf(solids) {
  return { marks: solids.flatMap(marksOf2), lines: solids.flatMap(linesOf2) };
}
function marksOf2({ lettering: lettering3 = [] }) {
  return lettering3.flatMap(
    ({ letters, grow }) => letters.flatMap(({ region }) => marksAbove(region).map((mark) => grown3(boundsOf(mark), grow)))
  );
}
function linesOf2({ band, lettering: lettering3 = [], region }) {
  const box = boundsOf(region);
  const [only, ...others2] = lettering3;
  if (!band || !box || !only || others2.length > 0) return [];
  const xHeight = band.top - band.baseline;
  if (xHeight > smallLetters * only.xHeight) return [];
  const capital2 = /^\p{Lu}/u.test(only.letters[0]?.text ?? "") ? 1 : 0;
  return [{ ...box, baseline: band.baseline, xHeight, capital: capital2 }];
}
function grown3({ minX, minY, maxX, maxY }, by) {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}
function scaledReading({ marks: marks3, lines }, factor) {
  const scaled = (figures2) => Object.fromEntries(Object.entries(figures2).map(([key, value]) => [key, value * factor]));
  return { marks: marks3.map(scaled), lines: lines.map((line) => ({ ...scaled(line), capital: line.capital })) };
}
function misreading({ marks: marks3, lines }, { x, y }, { hole, wall }) {
  const radius = hole + wall;
  const isBesideMark = marks3.some(({ minX, minY, maxX, maxY }) => {
    const away = Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY));
    return away < 2 * radius;
  });
  if (isBesideMark) return markCost;
  const costs = lines.map(({ minX, maxX, baseline, xHeight, capital: capital2 }) => {
    const stands = y - hole - (baseline + xHeight);
    if (x > minX && x < maxX && Math.abs(stands) < onLine2 * xHeight) return markCost;
    if (y < baseline + radius) return markCost;
    const isBefore2 = capital2 > 0 && x < (minX + maxX) / 2;
    const isBeside2 = y > baseline && y < baseline + xHeight && !isBefore2;
    const share = 2 * radius / xHeight;
    return isBeside2 && share > smallestLetter && share < largestLetter ? letterCost : 0;
  });
  return Math.max(0, ...costs);
}

// src/tag/hanger/ring.ts
var stepMm2 = 1;
var refineMm = 0.1;
var refined = 4;
var tiltCost = 1 / 60;
var sideCost = 0.1;
var even = 1e-3;
var barAllowance = 1;
var parallelShare = 0.1;
var hiddenCost = 3;
var blockedCost = 10;
var trackToleranceMm = 0.01;
function placeRing(on, whole2, at2, size, reading2) {
  const bounds = boundsOf(on);
  const balance = centroid(whole2);
  if (!bounds || !balance) return void 0;
  if (at2.kind === "point") {
    const middle2 = boxCentre(bounds);
    return { x: middle2.x + at2.offset.x, y: middle2.y + at2.offset.y };
  }
  const edges = new EdgeIndex(whole2);
  const directions = at2.kind === "auto" ? autoDirections : [{ direction: aimFrom(balance, bounds, at2), cost: 0 }];
  const costOf2 = (centre) => {
    const hang2 = { x: centre.x - balance.x, y: centre.y - balance.y };
    const costs = directions.map(({ direction, cost }) => {
      const hidden = edges.crossedBy(centre, direction) ? hiddenCost : 0;
      return cost + hidden + tiltDegrees(hang2, direction) * tiltCost;
    });
    return Math.min(...costs);
  };
  const judge3 = (centre, cost) => {
    const joined3 = Math.min(joint(centre, size.hole + size.wall, edges) / (size.hole + size.wall), 1);
    const blocked = isBlocked(centre, size, edges) ? blockedCost : 0;
    return { centre, score: joined3 - cost - blocked - misreading(reading2, centre, size) };
  };
  const outer = on.filter((ring) => ringArea(ring) > 0);
  const track = offset(simplified(outer, trackToleranceMm), size.hole - size.sink);
  const outlines = track.filter((ring) => ringArea(ring) > 0);
  const steps2 = outlines.flatMap((ring) => walk2(ring, stepMm2)).map((step) => ({ ...step, cost: costOf2(step.point), gain: refiningGain(step.point, balance) }));
  steps2.sort((a, b) => a.cost - a.gain - (b.cost - b.gain));
  const found = [];
  let leading = -Infinity;
  for (const { point, ring, along: along2, cost, gain } of steps2) {
    if (1 - cost + gain < leading) break;
    const candidate = { ...judge3(point, cost), ring, along: along2, gain };
    found.push(candidate);
    leading = Math.max(leading, candidate.score);
  }
  let best = [...found].sort(better)[0];
  found.sort((a, b) => b.score + b.gain - (a.score + a.gain) || better(a, b));
  for (const { ring, along: along2 } of apart3(found).slice(0, refined)) {
    for (const { point } of walk2(ring, refineMm, along2 - stepMm2, along2 + stepMm2)) {
      const candidate = judge3(point, costOf2(point));
      if (!best || better(candidate, best) < 0) best = candidate;
    }
  }
  for (const { direction } of directions) {
    const point = furthestOnRay(outlines, balance, direction);
    const candidate = point && judge3(point, costOf2(point));
    if (!candidate || !best) continue;
    if (candidate.score >= best.score - even) best = candidate;
    else if (candidate.score >= best.score - barAllowance && isEndOfSameBar(candidate.centre, best.centre, size, edges))
      best = { ...candidate, score: best.score };
  }
  return best?.centre;
}
function isEndOfSameBar(centre, other, { hole, wall }, edges) {
  const radius = hole + wall;
  if (Math.hypot(other.x - centre.x, other.y - centre.y) > radius) return false;
  const width = joint(centre, radius, edges);
  return width > 0 && width < radius && Math.abs(joint(centre, radius + hole, edges) - width) < parallelShare * width;
}
function refiningGain(point, balance) {
  return tiltCost * Math.atan2(stepMm2, Math.hypot(point.x - balance.x, point.y - balance.y)) * (180 / Math.PI);
}
function apart3(sorted) {
  const kept = [];
  for (const each of sorted) {
    const { x, y } = each.centre;
    if (kept.every(({ centre }) => Math.hypot(centre.x - x, centre.y - y) > 2 * stepMm2)) kept.push(each);
  }
  return kept;
}
var autoDirections = [
  { direction: { x: 0, y: 1 }, cost: 0 },
  { direction: { x: -1, y: 0 }, cost: sideCost },
  { direction: { x: 1, y: 0 }, cost: sideCost }
];
function better(a, b) {
  const difference2 = b.score - a.score;
  if (Math.abs(difference2) > 1e-6) return difference2;
  return b.centre.y - a.centre.y || a.centre.x - b.centre.x;
}
function joint(centre, radius, edges) {
  const angles = circleCrossings(edges.near(centre, radius), centre, radius);
  if (angles.length < 2) return 0;
  let longest2 = 0;
  angles.forEach((from, index) => {
    const to = index + 1 < angles.length ? angles[index + 1] : angles[0] + 2 * Math.PI;
    const middle2 = (from + to) / 2;
    const chord = 2 * radius * Math.sin(Math.min((to - from) / 2, Math.PI / 2));
    if (chord <= longest2) return;
    if (edges.contains({ x: centre.x + radius * Math.cos(middle2), y: centre.y + radius * Math.sin(middle2) }))
      longest2 = chord;
  });
  return longest2;
}
function isBlocked(centre, { hole, sink }, edges) {
  const clear = hole - Math.max(sink, 0) - 0.02;
  if (clear <= 0) return false;
  return circleCrossings(edges.near(centre, clear), centre, clear).length > 0 || sink <= 0 && edges.contains(centre);
}
function walk2(ring, step, from = 0, to) {
  const steps2 = [];
  const starts = [];
  let total = 0;
  ring.forEach((point, index) => {
    starts.push(total);
    const next = ring[(index + 1) % ring.length];
    total += Math.hypot(next.x - point.x, next.y - point.y);
  });
  for (let along2 = from; along2 < (to ?? total); along2 += step) {
    const wrapped2 = (along2 % total + total) % total;
    const index = Math.max(upperBound(starts, wrapped2) - 1, 0);
    const a = ring[index];
    const b = ring[(index + 1) % ring.length];
    const edge = Math.hypot(b.x - a.x, b.y - a.y);
    const t = edge === 0 ? 0 : (wrapped2 - starts[index]) / edge;
    steps2.push({ point: { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }, ring, along: along2 });
  }
  return steps2;
}
function upperBound(sorted, value) {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle2 = low + high >> 1;
    if (sorted[middle2] <= value) low = middle2 + 1;
    else high = middle2;
  }
  return low;
}

// src/tag/hanger/hanger.ts
function placeHanger(hanger, on, whole2, reading2) {
  const { kind, path, at: at2, opening } = hanger;
  const radius = opening / 2;
  switch (kind) {
    case "ring": {
      const size = { hole: radius, wall: hanger.wall, sink: hanger.sink };
      const centre = nudged(placeRing(on, whole2, hanger.at, size, reading2), hanger.nudge);
      if (!centre) return void 0;
      const lug = [circle(centre, radius + hanger.wall)];
      return {
        kind,
        path,
        at: at2,
        centre,
        opening: [circle(centre, radius)],
        openingSize: opening,
        openingLength: opening,
        lug,
        wall: hanger.wall,
        sink: hanger.sink
      };
    }
    case "hole": {
      const centre = nudged(placeInside(on, hanger.at, radius, hanger.inset), hanger.nudge);
      if (!centre) return void 0;
      return {
        kind,
        path,
        at: at2,
        centre,
        opening: [circle(centre, radius)],
        openingSize: opening,
        openingLength: opening
      };
    }
    case "slot": {
      const centre = nudged(placeInside(on, hanger.at, radius, hanger.inset), hanger.nudge);
      if (!centre) return void 0;
      return {
        kind,
        path,
        at: at2,
        centre,
        opening: slot(hanger, centre),
        openingSize: opening,
        openingLength: hanger.length
      };
    }
  }
}
function nudged(point, by) {
  return point && { x: point.x + by.x, y: point.y + by.y };
}
function slot({ at: at2, length, opening }, centre) {
  const flat = transform([roundedRectangle(length, opening, opening / 2)], translation(centre.x, centre.y));
  if (at2.kind === "point" || at2.kind === "auto") return flat;
  const { x, y } = directionOf(at2);
  return transform(flat, rotation(Math.atan2(x, y) * 180 / Math.PI, centre));
}

// src/tag/whole-size.ts
var closeMm4 = 2e-3;
var rounds4 = 12;
var origin = { x: 0, y: 0 };
function scaledBy(factor) {
  return factor === 1 ? identity : scaling(factor, factor, origin);
}
function wholeScale(body, hang2, { side: side3, mm: mm3 }) {
  const natural = span3(boundsOf(body), side3);
  if (!(natural > 0)) return void 0;
  let factor = mm3 / natural;
  for (let round3 = 0; round3 < rounds4; round3++) {
    const lugs = hang2(factor).map(({ lug }) => lug ?? []);
    const whole2 = [transform(body, scaledBy(factor)), ...lugs].flat();
    const lack = mm3 - span3(boundsOf(whole2), side3);
    if (Math.abs(lack) < closeMm4) return factor;
    factor += lack / natural;
    if (!(factor > 0)) return void 0;
  }
  return void 0;
}
function span3(box, side3) {
  if (!box) return 0;
  return side3 === "width" ? box.maxX - box.minX : box.maxY - box.minY;
}

// src/tag/build.ts
async function buildTag(model, resources) {
  const builder = new PieceBuilder(model, resources);
  for (const shape of model.shapes.values()) await builder.evaluator.make(shape);
  const pieces = [];
  for (const piece of model.pieces) {
    const built = await builder.build(piece);
    if (built) pieces.push(built);
    await resources.checkpoint();
  }
  const { title, units: units2, stock, tie, sheet, machine, output } = model;
  const { made } = builder.evaluator;
  return {
    title,
    units: units2,
    stock,
    ...tie ? { tie } : {},
    ...sheet ? { sheet } : {},
    ...machine ? { machine } : {},
    output,
    made,
    pieces: output.compensate ? pieces : cutOnTheLine(pieces, stock, resources)
  };
}
var PieceBuilder = class {
  evaluator;
  #model;
  #resources;
  #neighbourhood;
  constructor(model, resources) {
    this.#model = model;
    this.#resources = resources;
    this.#neighbourhood = new Neighbourhood(model);
    this.evaluator = new Evaluator(resources, (shape) => this.#around(shape));
  }
  /** `undefined` where the body has no material, which its shapes have reported. */
  async build(model) {
    const { cache } = this.#resources;
    const { factor, heedsReading } = await this.#scaleOf(model);
    const make = (entries) => this.#makeAll(entries, factor);
    const bodies = await make(model.body);
    const cuts = await make(model.cut);
    const body = this.#united(bodies);
    if (body.value.length === 0) return void 0;
    const hung2 = [];
    for (const hanger of model.hangers) {
      const placed2 = await this.#hang(hanger, body, heedsReading ? bodies : [], factor);
      if (!placed2.value) this.#noRoom(hanger);
      hung2.push(placed2);
    }
    const hangers = hung2.flatMap(({ value }) => value ?? []);
    const inputs = [body.id, ids(cuts), hung2.map(({ id: id2 }) => id2)];
    const region = cache.get("piece", inputs, () => finished(body.value, regions(cuts), hangers));
    const asked = await this.#asked([...model.body, ...model.cut], factor);
    const { id, title, path, parts, glueTo } = model;
    return {
      id,
      title,
      path,
      region: region.value,
      body: body.value,
      sources: [...sources("body", bodies), ...sources("cut", cuts)],
      marks: [...marks2("engrave", await make(model.engrave)), ...marks2("score", await make(model.score))],
      asked,
      hangers,
      parts,
      ...glueTo === void 0 ? {} : { glueTo }
    };
  }
  /** What a fitted shape keeps clear of, at the size that shapes have before their piece is scaled. */
  async #around(shape) {
    const { entries, hung: hung2 } = this.#neighbourhood.of(shape);
    const { cache } = this.#resources;
    const stages = [];
    for (const { entry, isLine } of entries) {
      const { id, value } = await this.evaluator.target(entry);
      stages.push(cache.get("in the way", [id, isLine], () => isLine ? lineOf2(value.region) : value.region));
    }
    for (const piece of hung2) {
      const { factor, heedsReading } = await this.#scaleOf(piece);
      const bodies = await this.#makeAll(piece.body, factor);
      const body = this.#united(bodies);
      for (const hanger of piece.hangers) {
        const { id, value } = await this.#hang(hanger, body, heedsReading ? bodies : [], factor);
        if (value)
          stages.push(
            cache.get("hanger in the way", [id, factor], () => transform(value.opening, scaledBy(1 / factor)))
          );
      }
    }
    if (stages.length === 0) return void 0;
    return cache.get(
      "around",
      stages.map(({ id }) => id),
      () => union(stages.map(({ value }) => value))
    );
  }
  /** By how much the shapes of a piece are scaled, so that the piece, or what it is glued to, has the size asked for. */
  async #scaleOf(piece) {
    const { size, path, body, hangers } = bottomOf(piece, this.#model.pieces);
    if (!size) return { factor: 1, heedsReading: true };
    const bodies = await this.#makeAll(body, 1);
    const united = this.#united(bodies);
    const read = readingOf(bodies.map(({ stage }) => stage.value));
    const on = [];
    const plain2 = [];
    for (const { on: target, ...hanger } of hangers) {
      const made = target && await this.evaluator.target(target);
      on.push(made?.value.region);
      plain2.push([hanger, made?.id]);
    }
    const inputs = [united.id, plain2, size];
    const found = this.#resources.cache.get("whole size", inputs, () => {
      for (const reading2 of [read, noReading]) {
        const factor = wholeScale(
          united.value,
          (tried) => {
            const scaled = transform(united.value, scaledBy(tried));
            return hangers.flatMap((hanger, index) => {
              const joined3 = on[index] && transform(on[index], scaledBy(tried));
              return placeHanger(hanger, joined3 ?? scaled, scaled, scaledReading(reading2, tried)) ?? [];
            });
          },
          size
        );
        if (factor !== void 0) return { factor, heedsReading: reading2 === read };
      }
      return void 0;
    });
    if (found.value === void 0 && united.value.length > 0) {
      const message = `No size of the shapes makes the whole piece ${mm(size.mm)} ${size.side === "width" ? "wide" : "high"}.`;
      this.#resources.report({ code: "empty-shape", severity: "error", path: [...path, size.side], message });
    }
    return found.value ?? { factor: 1, heedsReading: true };
  }
  async #makeAll(entries, factor) {
    const made = [];
    for (const entry of entries) made.push({ stage: await this.#scaled(entry, factor), entry });
    return made;
  }
  async #asked(entries, factor) {
    const asked = [];
    for (const { shape } of entries) asked.push(...(await this.evaluator.make(shape)).value.asked ?? []);
    return factor === 1 ? asked : mapAsked(asked, scaledBy(factor));
  }
  async #scaled(target, factor) {
    const { cache } = this.#resources;
    const made = await this.evaluator.target(target);
    return cache.get(
      "in piece",
      [made.id, factor],
      () => factor === 1 ? made.value : mapSolid(made.value, scaledBy(factor))
    );
  }
  #united(bodies) {
    return this.#resources.cache.get("body", ids(bodies), () => union(regions(bodies)));
  }
  async #hang(hanger, body, bodies, factor) {
    const { on, ...rest } = hanger;
    const joined3 = on && await this.#scaled(on, factor);
    return this.#resources.cache.get("hanger", [body.id, joined3?.id, ids(bodies), rest], () => {
      const reading2 = readingOf(bodies.map(({ stage }) => stage.value));
      return placeHanger(hanger, joined3?.value.region ?? body.value, body.value, reading2);
    });
  }
  #noRoom({ kind, path }) {
    const message = `There is no room for the ${kind} here; make the body larger or the ${kind} smaller.`;
    this.#resources.report({ code: "empty-shape", severity: "error", path, message });
  }
};
var lineMm = 0.01;
function lineOf2(region) {
  return difference(offset(region, lineMm), [offset(region, -lineMm)]);
}
var ids = (made) => made.map(({ stage }) => stage.id);
var regions = (made) => made.map(({ stage }) => stage.value.region);
function finished(body, cuts, hangers) {
  const openings = [...cuts, ...hangers.map(({ opening }) => opening)];
  const lugs = hangers.flatMap(({ lug }) => lug ?? []);
  return openings.length > 0 ? difference([...body, ...lugs], openings) : body;
}
function sources(use, made) {
  return made.map(({ stage, entry: { shape, path } }) => {
    return { use, ...drawnOf(stage.value), shape, entry: path, path: shape.path };
  });
}
function marks2(operation, made) {
  return made.map(({ stage, entry }) => ({
    operation,
    ...drawnOf(stage.value),
    shape: entry.shape,
    path: entry.path
  }));
}
function drawnOf({ region, lettering: lettering3 }) {
  return { region, ...lettering3 ? { lettering: lettering3 } : {} };
}

// src/tag/cache.ts
var StageCache = class {
  #stages = /* @__PURE__ */ new Map();
  #most;
  #nextId = 1;
  /** Keeps the `most` results used last; a tag has some tens of stages. */
  constructor(most4 = 2e3) {
    this.#most = most4;
  }
  /** The stage of this kind made from these inputs, computed only when it is not at hand. `inputs` must be plain data. */
  get(kind, inputs, compute) {
    const key = keyOf2(kind, inputs);
    return this.#known(key) ?? this.#keep(key, compute());
  }
  /** The same where computing takes turns, and may be stopped: then nothing is kept. */
  async getLater(kind, inputs, compute) {
    const key = keyOf2(kind, inputs);
    return this.#known(key) ?? this.#keep(key, await compute());
  }
  #known(key) {
    const known3 = this.#stages.get(key);
    if (!known3) return void 0;
    this.#stages.delete(key);
    this.#stages.set(key, known3);
    return known3;
  }
  #keep(key, value) {
    const stage = { id: this.#nextId++, value };
    this.#stages.set(key, stage);
    if (this.#stages.size > this.#most) this.#stages.delete(this.#stages.keys().next().value);
    return stage;
  }
};
function keyOf2(kind, inputs) {
  return `${kind} ${JSON.stringify(inputs)}`;
}

// src/tag/ghosts.ts
function unusedShapes(model, { made }) {
  const used = /* @__PURE__ */ new Set();
  for (const piece of model.pieces) for (const shape of shapesOf(piece)) used.add(shape);
  return [...model.shapes].flatMap(([name, shape]) => {
    const region = made.get(shape)?.region ?? [];
    return used.has(shape) || region.length === 0 ? [] : [{ path: shape.path, name, region, why: "unused" }];
  });
}
function lackingShapes(tag, whole2) {
  return whole2.pieces.flatMap((piece) => {
    const real = tag.pieces.find(({ id }) => id === piece.id);
    const made = new Set(real && drawnParts(real).map(({ shape }) => shape.path.join("/")));
    return drawnParts(piece).filter(({ shape }) => !made.has(shape.path.join("/"))).map(({ shape: { path }, region }) => ({ path, name: nameOf(path), region, why: "lacking" }));
  });
}
function drawnParts({ sources: sources2, marks: marks3 }) {
  return [...sources2, ...marks3].filter(({ region }) => region.length > 0);
}
function nameOf(path) {
  const last = path.at(-1);
  return typeof last === "string" ? last : "shape";
}

// src/tag/stand-ins.ts
var plainFamily = "Nunito";
var frameSvg = '<svg width="30mm" height="30mm" viewBox="0 0 30 30"><path d="M0 0H30V30H0ZM2 2V28H28V2Z"/></svg>';
async function standIns(model, loaded, library) {
  const fonts = new Map(loaded.fonts);
  const drawings = new Map(loaded.drawings);
  for (const { generator } of everyShape(model)) {
    if (generator.kind === "text" && !fonts.has(generator)) {
      const { weight, italic } = generator;
      const answer = await library.load({ family: plainFamily, weight, italic });
      if ("face" in answer) fonts.set(generator, answer.face);
    } else if (generator.kind === "drawing" && !drawings.has(generator.file)) drawings.set(generator.file, frame());
  }
  const isWhole = fonts.size === loaded.fonts.size && drawings.size === loaded.drawings.size;
  return isWhole ? void 0 : { ...loaded, fonts, drawings };
}
function frame() {
  const drawing = parseSvgDrawing(frameSvg);
  return { id: "stand-in", shapes: [], leftOut: {}, ..."problem" in drawing ? {} : drawing };
}

// src/text/font-library.ts
import { distance as distance4 } from "fastest-levenshtein";

// src/text/bundled-fonts.ts
var bundledFonts = [
  // Heavy slab letters: initials and short words that hold without any thickening.
  font("Alfa Slab One", "alfa-slab-one", [face(400, "400Regular/AlfaSlabOne_400Regular.ttf")]),
  // A thin pen script: pretty, and weak wherever the pen lifts.
  font("Great Vibes", "great-vibes", [face(400, "400Regular/GreatVibes_400Regular.ttf")]),
  // A friendly sans whose strokes are strong enough to cut.
  font("Nunito", "nunito", [
    face(600, "600SemiBold/Nunito_600SemiBold.ttf"),
    face(800, "800ExtraBold/Nunito_800ExtraBold.ttf")
  ]),
  // A round brush script whose letters join.
  font("Pacifico", "pacifico", [face(400, "400Regular/Pacifico_400Regular.ttf")])
];
function bundledFileName({ file }) {
  return file.slice(file.lastIndexOf("/") + 1);
}
function font(family, slug, faces) {
  return {
    family,
    package: `@expo-google-fonts/${slug}`,
    licence: "LICENSE_FONT",
    licenceFile: `${slug}-OFL.txt`,
    faces
  };
}
function face(weight, file) {
  return { weight, italic: false, file };
}

// src/text/bad-font.ts
var BadFontError = class extends Error {
};

// src/text/sfnt.ts
import { Unzlib } from "fflate";

// src/text/woff2.ts
var maxUnpackedMb = 30;
var headerBytes = 48;
var maxTables = 128;
var namedTable = 63;
var glyf = 10;
var loca = 11;
function isWoff2(bytes) {
  return [119, 79, 70, 50].every((byte, i) => bytes[i] === byte);
}
async function unpackWoff2(bytes) {
  if (Math.max(bytes.length, unpackedBytes(bytes)) > maxUnpackedMb * 1024 * 1024)
    throw new BadFontError(`is larger than ${maxUnpackedMb} MB once unpacked: use its TTF or OTF file instead`);
  const { default: decompress2 } = await import("wawoff2/decompress.js");
  try {
    return await decompress2(bytes);
  } catch {
    throw new BadFontError("is damaged: it cannot be unpacked");
  }
}
function unpackedBytes(bytes) {
  if (bytes.length < headerBytes) throw new BadFontError("is cut short");
  const data = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const count = data.getUint16(12);
  if (count === 0 || count > maxTables) throw new BadFontError("is damaged: its table of contents makes no sense");
  let at2 = headerBytes;
  const byte = () => {
    const value = bytes[at2++];
    if (value === void 0) throw new BadFontError("is cut short");
    return value;
  };
  const length = () => {
    let value = 0;
    for (let i = 0; i < 5; i++) {
      const next = byte();
      value = value * 128 + (next & 127);
      if (next < 128) return value;
    }
    throw new BadFontError("is damaged: its table of contents makes no sense");
  };
  let [packed, plain2] = [0, data.getUint32(16)];
  for (let i = 0; i < count; i++) {
    const flags = byte();
    const table = flags & 63;
    if (table === namedTable) at2 += 4;
    const original = length();
    const transformed = table === glyf || table === loca ? flags >> 6 !== 3 : flags >> 6 !== 0;
    packed += transformed ? length() : original;
    plain2 = Math.max(plain2, original);
  }
  return Math.max(packed, plain2);
}

// src/text/sfnt.ts
var headerBytes2 = 12;
var recordBytes = 16;
var woffHeaderBytes = 44;
var woffRecordBytes = 20;
var maxTables2 = 128;
var maxFaces = 256;
async function unpacked(bytes) {
  return isWoff2(bytes) ? await unpackWoff2(bytes) : bytes;
}
function readTables(bytes, index = 0) {
  if (bytes.length > maxFontBytes) throw new BadFontError("is larger than 64 MB");
  const signature = readSignature(bytes);
  if (signature === "wOFF") return inflateWoff(bytes);
  const offsets = signature === "ttcf" ? faceOffsets(bytes) : [0];
  const offset2 = offsets[index];
  if (offset2 === void 0) throw new BadFontError(`has no face number ${index + 1}`);
  const tables = /* @__PURE__ */ new Map();
  for (const { tag, offset: start, length } of tableRecords(view(bytes, offset2))) {
    tables.set(tag, stretch2(bytes, start, length));
  }
  return tables;
}
async function scanTables(read, tags) {
  const start = await read(0, headerBytes2 + maxFaces * 4);
  if (isWoff2(start)) {
    const whole2 = await unpackWoff2(await read(0, maxFontBytes + 1));
    return scanTables((from, to) => Promise.resolve(whole2.subarray(from, to)), tags);
  }
  const signature = readSignature(start);
  if (signature === "wOFF") return [readTables(await read(0, maxFontBytes + 1))];
  const faces = [];
  for (const offset2 of signature === "ttcf" ? faceOffsets(start) : [0]) {
    const directory = await read(offset2, offset2 + headerBytes2 + maxTables2 * recordBytes);
    const tables = /* @__PURE__ */ new Map();
    for (const record of tableRecords(view(directory))) {
      if (!tags.has(record.tag)) continue;
      tables.set(record.tag, stretch2(await read(record.offset, record.offset + record.length), 0, record.length));
    }
    faces.push(tables);
  }
  return faces;
}
function writeSfnt(tables) {
  const chosen2 = [...tables].sort(([a], [b]) => a < b ? -1 : 1);
  const padded = (length) => length + 3 & ~3;
  let offset2 = headerBytes2 + chosen2.length * recordBytes;
  const out = new Uint8Array(chosen2.reduce((sum, [, table]) => sum + padded(table.length), offset2));
  const header = view(out);
  header.setUint32(0, tables.has("CFF ") || tables.has("CFF2") ? 1330926671 : 65536);
  header.setUint16(4, chosen2.length);
  chosen2.forEach(([tag, table], i) => {
    const at2 = headerBytes2 + i * recordBytes;
    for (let j = 0; j < 4; j++) out[at2 + j] = tag.charCodeAt(j);
    header.setUint32(at2 + 8, offset2);
    header.setUint32(at2 + 12, table.length);
    out.set(table, offset2);
    offset2 += padded(table.length);
  });
  return out;
}
function view(bytes, offset2 = 0) {
  if (offset2 > bytes.length) throw new BadFontError("is cut short");
  return new DataView(bytes.buffer, bytes.byteOffset + offset2, bytes.length - offset2);
}
function readSignature(bytes) {
  if (bytes.length === 0) throw new BadFontError("is an empty file");
  const tag = String.fromCharCode(...bytes.subarray(0, 4));
  switch (tag) {
    case "\0\0\0":
    case "true":
    case "OTTO":
      return "sfnt";
    case "ttcf":
    case "wOFF":
      return tag;
    case "PK":
      throw new BadFontError("is a ZIP archive: unpack it and use the font file inside");
  }
  if (/^\s*</.test(new TextDecoder("latin1").decode(bytes.subarray(0, 64)))) {
    throw new BadFontError("is a web page or a drawing, not a font file");
  }
  throw new BadFontError("is not a font file (TTF, OTF, TTC, OTC, WOFF or WOFF2)");
}
function tableRecords(directory) {
  if (directory.byteLength < headerBytes2) throw new BadFontError("is cut short");
  const count = directory.getUint16(4);
  if (count === 0 || count > maxTables2) throw new BadFontError("is damaged: its table of contents makes no sense");
  if (directory.byteLength < headerBytes2 + count * recordBytes) throw new BadFontError("is cut short");
  return Array.from({ length: count }, (_, i) => {
    const at2 = headerBytes2 + i * recordBytes;
    return {
      tag: readTag(directory, at2),
      offset: directory.getUint32(at2 + 8),
      length: directory.getUint32(at2 + 12)
    };
  });
}
function faceOffsets(bytes) {
  const header = view(bytes);
  if (header.byteLength < headerBytes2) throw new BadFontError("is cut short");
  const count = header.getUint32(8);
  if (count === 0 || count > maxFaces) throw new BadFontError("is damaged: its list of faces makes no sense");
  if (header.byteLength < headerBytes2 + count * 4) throw new BadFontError("is cut short");
  return Array.from({ length: count }, (_, i) => header.getUint32(headerBytes2 + i * 4));
}
function inflateWoff(bytes) {
  const header = view(bytes);
  if (header.byteLength < woffHeaderBytes) throw new BadFontError("is cut short");
  const count = header.getUint16(12);
  if (header.byteLength < woffHeaderBytes + count * woffRecordBytes) throw new BadFontError("is cut short");
  const tables = /* @__PURE__ */ new Map();
  let total = 0;
  for (let i = 0; i < count; i++) {
    const at2 = woffHeaderBytes + i * woffRecordBytes;
    const compressed = stretch2(bytes, header.getUint32(at2 + 4), header.getUint32(at2 + 8));
    const length = header.getUint32(at2 + 12);
    total += length;
    if (total > maxFontBytes) throw new BadFontError("is larger than 64 MB once unpacked");
    tables.set(readTag(header, at2), compressed.length < length ? inflate(compressed, length) : compressed);
  }
  return tables;
}
function inflate(compressed, length) {
  const pieceBytes = 16 * 1024;
  const out = new Uint8Array(length);
  let filled2 = 0;
  const inflater = new Unzlib((piece) => {
    if (filled2 + piece.length > length) throw new BadFontError("is damaged: a table is longer than it says");
    out.set(piece, filled2);
    filled2 += piece.length;
  });
  try {
    for (let at2 = 0; at2 < compressed.length; at2 += pieceBytes) {
      inflater.push(compressed.subarray(at2, at2 + pieceBytes), at2 + pieceBytes >= compressed.length);
    }
  } catch (error) {
    if (error instanceof BadFontError) throw error;
    throw new BadFontError("is damaged: it cannot be unpacked");
  }
  if (filled2 < length) throw new BadFontError("is damaged: it cannot be unpacked");
  return out;
}
function stretch2(bytes, offset2, length) {
  if (offset2 + length > bytes.length) throw new BadFontError("is cut short");
  return bytes.subarray(offset2, offset2 + length);
}
function readTag(data, at2) {
  return String.fromCharCode(data.getUint8(at2), data.getUint8(at2 + 1), data.getUint8(at2 + 2), data.getUint8(at2 + 3));
}

// src/text/font-description.ts
var descriptiveTables = /* @__PURE__ */ new Set(["name", "OS/2", "head", "fvar"]);
function describeFont(tables) {
  return guarded2(() => {
    const names = readNames(tables.get("name"));
    const os2 = tableView(tables, "OS/2");
    const selection = os2 && os2.byteLength >= 64 ? os2.getUint16(62) : 0;
    const style = names.best(17) ?? names.best(2) ?? "";
    const weightAxis = readAxis(tables, "wght");
    const families = [.../* @__PURE__ */ new Set([...names.all(16), ...names.all(1)])];
    return {
      family: names.best(16) ?? names.best(1) ?? "",
      families,
      style,
      weight: clampWeight(os2 && os2.byteLength >= 6 ? os2.getUint16(4) : 400),
      italic: (selection & 1) !== 0 || (selection & 1 << 9) !== 0 || /italic|oblique/i.test(style),
      width: os2 && os2.byteLength >= 8 ? os2.getUint16(6) : 5,
      ...weightAxis && { weightAxis },
      licence: readLicence(names, os2)
    };
  });
}
function readMetrics(tables) {
  return guarded2(() => {
    const head = tableView(tables, "head");
    const hhea = tableView(tables, "hhea");
    if (!head || !hhea) throw new BadFontError("lacks the tables that say how large it is");
    const unitsPerEm = head.getUint16(18);
    if (unitsPerEm < 16 || unitsPerEm > 16384) throw new BadFontError("is damaged: its unit makes no sense");
    const os2 = tableView(tables, "OS/2");
    const typographic = os2 && os2.byteLength >= 74 && (os2.getUint16(62) & 1 << 7) !== 0;
    const lines = typographic ? { ascender: os2.getInt16(68), descender: os2.getInt16(70), lineGap: os2.getInt16(72) } : { ascender: hhea.getInt16(4), descender: hhea.getInt16(6), lineGap: hhea.getInt16(8) };
    const heights = os2 && os2.byteLength >= 90 && os2.getUint16(0) >= 2;
    const xHeight = heights ? os2.getInt16(86) : 0;
    const capHeight = heights ? os2.getInt16(88) : 0;
    return { unitsPerEm, ...lines, ...xHeight > 0 && { xHeight }, ...capHeight > 0 && { capHeight } };
  });
}
function readLicence(names, os2) {
  const copyright = names.best(0);
  const text = names.best(13);
  const url = names.best(14);
  const fsType = os2 && os2.byteLength >= 10 ? os2.getUint16(8) : void 0;
  return {
    ...copyright && { copyright },
    ...text && { text },
    ...url && { url },
    ...fsType !== void 0 && { embedding: embeddingRights(fsType) },
    ...fsType !== void 0 && (fsType & 1 << 8) !== 0 && { wholeOnly: true },
    ...fsType !== void 0 && (fsType & 1 << 9) !== 0 && { picturesOnly: true }
  };
}
function embeddingRights(fsType) {
  if (fsType & 8) return "editable";
  if (fsType & 4) return "preview-and-print";
  return fsType & 2 ? "restricted" : "installable";
}
function readNames(table) {
  const found = [];
  if (table && table.length >= 6) {
    const data = view(table);
    const count = data.getUint16(2);
    const strings = data.getUint16(4);
    for (let i = 0; i < count && 18 + i * 12 <= table.length; i++) {
      const at2 = 6 + i * 12;
      const platform2 = data.getUint16(at2);
      const language = data.getUint16(at2 + 4);
      const id = data.getUint16(at2 + 6);
      const start = strings + data.getUint16(at2 + 10);
      const bytes = table.subarray(start, start + data.getUint16(at2 + 8));
      const text = new TextDecoder(platform2 === 1 ? "macintosh" : "utf-16be").decode(bytes).trim();
      const english = platform2 === 3 ? language === 1033 : language === 0;
      if (text) found.push({ id, english, text });
    }
  }
  const all = (id) => found.filter((name) => name.id === id).map((name) => name.text);
  return { all, best: (id) => found.find((name) => name.id === id && name.english)?.text ?? all(id)[0] };
}
function readAxis(tables, tag) {
  const fvar = tableView(tables, "fvar");
  if (!fvar || fvar.byteLength < 16) return void 0;
  const start = fvar.getUint16(4);
  const size = fvar.getUint16(10);
  for (let i = 0; i < fvar.getUint16(8); i++) {
    const at2 = start + i * size;
    if (String.fromCharCode(...[0, 1, 2, 3].map((j) => fvar.getUint8(at2 + j))) !== tag) continue;
    return { min: fvar.getInt32(at2 + 4) / 65536, max: fvar.getInt32(at2 + 12) / 65536 };
  }
  return void 0;
}
function tableView(tables, tag) {
  const table = tables.get(tag);
  return table && view(table);
}
function clampWeight(weight) {
  return weight >= 1 && weight <= 9 ? weight * 100 : Math.min(Math.max(weight, 1), 1e3);
}
function guarded2(read) {
  try {
    return read();
  } catch (error) {
    if (error instanceof RangeError) throw new BadFontError("is damaged: one of its tables is too short");
    throw error;
  }
}

// src/text/harfbuzz.ts
var contextLength = 8;
var loading;
async function openShaper(sfnt, variations, wasm) {
  loading ??= load(wasm);
  const hb = await loading;
  const font2 = new hb.Font(new hb.Face(new hb.Blob(sfnt)));
  const axes = Object.entries(variations);
  if (axes.length > 0) font2.setVariations(axes.map(([tag, value]) => new hb.Variation(tag, value)));
  const buffer = new hb.Buffer();
  return {
    covers: (codePoint) => (font2.nominalGlyph(codePoint) ?? 0) !== 0,
    advanceOf: (glyph) => font2.glyphHAdvance(glyph),
    outlineOf: (glyph) => font2.glyphToJson(glyph).map(curveCommand),
    shape({ text, start, end, rightToLeft: rightToLeft2, features }) {
      const from = Math.max(0, start - contextLength);
      buffer.reset();
      buffer.addText(text.slice(from, end + contextLength), start - from, end - start);
      buffer.setDirection(rightToLeft2 ? hb.Direction.RTL : hb.Direction.LTR);
      buffer.guessSegmentProperties();
      hb.shape(
        font2,
        buffer,
        [...features].map(([tag, value]) => new hb.Feature(tag, value))
      );
      const positions = buffer.getGlyphPositions();
      return buffer.getGlyphInfos().map(({ codepoint, cluster }, i) => {
        const { xAdvance, xOffset, yOffset } = positions[i];
        return { id: codepoint, cluster: cluster + from, advance: xAdvance, dx: xOffset, dy: yOffset };
      });
    }
  };
}
async function load(wasm) {
  const library = await import("harfbuzzjs");
  if (wasm) await library.setUp?.(await wasm());
  return library;
}
function curveCommand({ type, values }) {
  const [a, b, c, d, e, f] = values;
  switch (type) {
    case "M":
    case "L":
      return { type, x: a, y: b };
    case "Q":
      return { type, x1: a, y1: b, x: c, y: d };
    case "C":
      return { type, x1: a, y1: b, x2: c, y2: d, x: e, y: f };
    default:
      return { type: "Z" };
  }
}

// src/text/opentype.ts
var outlineTables = /* @__PURE__ */ new Set([
  ...["head", "hhea", "hmtx", "maxp", "name", "cmap", "post"],
  ...["loca", "glyf"]
]);
async function openOutlines(tables) {
  if (!tables.has("glyf") || tables.has("fvar")) return void 0;
  const { parse } = await import("opentype.js/dist/opentype.mjs");
  try {
    const wanted = new Map([...tables].filter(([tag]) => outlineTables.has(tag)));
    const { glyphs } = parse(writeSfnt(wanted).buffer, { lowMemory: true });
    return (id) => {
      try {
        return glyphs.get(id).path.commands;
      } catch {
        return void 0;
      }
    };
  } catch {
    return void 0;
  }
}

// src/text/font-face.ts
function faceId({ bytes, index, variations }) {
  return contentHash([bytes, new TextEncoder().encode(JSON.stringify([index, variations]))]);
}
var outlineTables2 = ["glyf", "CFF ", "CFF2"];
async function openFace(source, shaperWasm) {
  const tables = readTables(await unpacked(source.bytes), source.index);
  if (!outlineTables2.some((tag) => tables.has(tag)))
    throw new BadFontError("has no outlines, only pictures of its letters");
  const { family, style, weight, italic, licence } = describeFont(tables);
  const metrics = readMetrics(tables);
  const em = (units2) => units2 / metrics.unitsPerEm;
  const shaper = await openShaper(writeSfnt(tables), source.variations, shaperWasm);
  const outlines = await openOutlines(tables);
  const outline = scaledOutlines((glyph) => outlines?.(glyph) ?? shaper.outlineOf(glyph), em(1));
  const measured2 = (letter) => {
    if (!shaper.covers(letter.codePointAt(0))) return void 0;
    const [glyph] = shaper.shape({ text: letter, start: 0, end: 1, rightToLeft: false, features: /* @__PURE__ */ new Map() });
    return curveBounds(outline(glyph.id))?.maxY;
  };
  const ascender = em(metrics.ascender);
  const descender = em(metrics.descender);
  return {
    ...shaper,
    id: faceId(source),
    family,
    style,
    weight: source.variations["wght"] ?? weight,
    italic,
    licence,
    unitsPerEm: metrics.unitsPerEm,
    ascender,
    descender,
    lineHeight: ascender - descender + em(metrics.lineGap),
    // Neither said nor to be measured: what CSS assumes (CSS Values 4, units `ex` and `cap`).
    xHeight: metrics.xHeight === void 0 ? measured2("x") ?? 0.5 : em(metrics.xHeight),
    capHeight: metrics.capHeight === void 0 ? measured2("H") ?? ascender : em(metrics.capHeight),
    outline
  };
}
function scaledOutlines(read, scale) {
  const cache = /* @__PURE__ */ new Map();
  return (glyph) => {
    let outline = cache.get(glyph);
    if (!outline) {
      outline = counterClockwise(transformCurves(read(glyph), { a: scale, b: 0, c: 0, d: scale, e: 0, f: 0 }));
      cache.set(glyph, outline);
    }
    return outline;
  };
}
function counterClockwise(path) {
  const area2 = flatten(path, { tolerance: 1e-3 }).reduce((sum, ring) => sum + twiceArea(ring), 0);
  return area2 < 0 ? reverseCurves(path) : path;
}
function twiceArea(ring) {
  return ring.reduce((sum, point, i) => {
    const next = ring[(i + 1) % ring.length];
    return sum + point.x * next.y - next.x * point.y;
  }, 0);
}

// src/text/font-match.ts
function nearestStyle(faces, wanted) {
  const offNormal = (face2) => Math.abs((face2.width ?? 5) - 5);
  const width = faces.reduce((least, face2) => Math.min(least, offNormal(face2)), Infinity);
  const normal = faces.filter((face2) => offNormal(face2) === width);
  const slanted = normal.filter((face2) => face2.italic === wanted.italic);
  const candidates = slanted.length > 0 ? slanted : normal;
  let best;
  for (const face2 of candidates) {
    if (!best || weightRank(face2, wanted.weight) < weightRank(best, wanted.weight)) best = face2;
  }
  return best;
}
function weightWithin({ weight }, wanted) {
  return typeof weight === "number" ? weight : Math.min(Math.max(wanted, weight.min), weight.max);
}
function weightRank(face2, wanted) {
  const weight = weightWithin(face2, wanted);
  const distance5 = Math.abs(weight - wanted);
  if (distance5 === 0) return 0;
  const lighter = weight < wanted;
  if (wanted >= 400 && wanted <= 500) {
    if (!lighter && weight <= 500) return distance5;
    return distance5 + (lighter ? 1e3 : 2e3);
  }
  return distance5 + (lighter === wanted < 400 ? 0 : 1e3);
}

// src/text/style-names.ts
var weights2 = [
  [/ (?:thin|hairline)$/i, 100],
  [/ (?:extra|ultra)[ -]?light$/i, 200],
  [/ light$/i, 300],
  [/ (?:regular|normal|book)$/i, 400],
  [/ medium$/i, 500],
  [/ (?:semi|demi)[ -]?bold$/i, 600],
  [/ (?:extra|ultra)[ -]?bold$/i, 800],
  [/ bold$/i, 700],
  [/ (?:black|heavy)$/i, 900]
];
function styleInName(name) {
  const upright = name.trim().replace(/ (?:italic|oblique)$/i, "");
  const found = weights2.find(([words3]) => words3.test(upright));
  const family = found ? upright.replace(found[0], "") : upright;
  if (family === name.trim() || family === "") return void 0;
  return { family, ...found ? { weight: found[1] } : {}, ...upright === name.trim() ? {} : { italic: true } };
}

// src/text/system-fonts.ts
var readsAtOnce = 8;
async function indexSystemFonts(files) {
  const paths = [...await files.systemFonts()].sort();
  const found = [];
  let next = 0;
  const worker = async () => {
    while (next < paths.length) {
      const i = next++;
      found[i] = await facesOf(files, paths[i]).catch(() => []);
    }
  };
  await Promise.all(Array.from({ length: readsAtOnce }, worker));
  const byName = /* @__PURE__ */ new Map();
  for (const face2 of found.flat()) {
    for (const name of face2.names) {
      const key = name.toLowerCase();
      byName.set(key, [...byName.get(key) ?? [], face2]);
    }
  }
  const families = [...new Set(found.flat().map((face2) => face2.family))].sort((a, b) => a.localeCompare(b, "en"));
  return { byName, families };
}
async function facesOf(files, path) {
  const read = (start, end) => files.read(path, { start, end });
  return (await scanTables(read, descriptiveTables)).map((tables, index) => {
    const { family, families, weight, weightAxis, italic, width } = describeFont(tables);
    return { path, index, family, names: families, weight: weightAxis ?? weight, italic, width };
  }).filter(({ family }) => family !== "" && !family.startsWith("."));
}

// src/text/font-library.ts
var FontLibrary = class {
  #files;
  #system;
  #families = /* @__PURE__ */ new Map();
  /** By content, so that the same bytes are opened once. Faces stay open for the life of the library. */
  #faces = /* @__PURE__ */ new Map();
  constructor(files) {
    this.#files = files;
  }
  load(query) {
    if ("file" in query) return this.#openFile(query);
    const key = JSON.stringify([query.family.trim().toLowerCase(), query.weight, query.italic]);
    let answer = this.#families.get(key);
    if (!answer) {
      answer = this.#openFamily(query);
      this.#families.set(key, answer);
    }
    return answer;
  }
  /** Every family that can be asked for by name, bundled ones first. */
  async families() {
    const { families } = await this.#systemFonts();
    return [.../* @__PURE__ */ new Set([...bundledFonts.map((font2) => font2.family), ...families])];
  }
  /** What is installed on the computer; read once, which may take a second where there are many. */
  installed() {
    return this.#systemFonts();
  }
  /** Forgets what is installed, for when that may have changed. */
  refresh() {
    this.#system = void 0;
    this.#families.clear();
  }
  async #openFamily(query) {
    const name = query.family.trim().toLowerCase();
    const bundled = bundledFonts.find((font2) => font2.family.toLowerCase() === name);
    const bundledFace = bundled && nearestStyle(bundled.faces, query);
    if (bundledFace) {
      return this.#open(() => this.#files.bundled(bundledFileName(bundledFace)), bundled.family);
    }
    const { byName } = await this.#systemFonts();
    const face2 = nearestStyle(byName.get(name) ?? [], query);
    if (!face2) {
      const families = await this.families();
      const styled = styleInName(query.family);
      if (styled && families.some((family) => family.toLowerCase() === styled.family.toLowerCase()))
        return problem("unknown-font", `\u201C${query.family}\u201D is \u201C${styled.family}\u201D with ${styleWords(styled)}.`);
      const suggestions = similarNames(query.family, families);
      return problem(
        "unknown-font",
        `There is no font \u201C${query.family}\u201D among those bundled or installed.`,
        suggestions
      );
    }
    return this.#open(
      () => this.#files.read(face2.path),
      face2.family,
      () => Promise.resolve({ index: face2.index, variations: variationsFor(face2, query.weight) })
    );
  }
  #openFile(query) {
    const label2 = query.file.split(/[/\\]/).at(-1);
    return this.#open(
      () => this.#files.read(query.file),
      label2,
      async (bytes) => {
        const face2 = nearestStyle(await stylesIn(bytes), query);
        return { index: face2.index, variations: variationsFor(face2, query.weight) };
      }
    );
  }
  async #open(read, label2, choose = () => Promise.resolve({ index: 0, variations: {} })) {
    let bytes;
    try {
      bytes = await read();
    } catch {
      return problem("bad-font", `The font \u201C${label2}\u201D cannot be found or read.`);
    }
    try {
      const plain2 = await unpacked(bytes);
      const source = { bytes: plain2, ...await choose(plain2) };
      const id = faceId(source);
      let face2 = this.#faces.get(id);
      if (!face2) {
        face2 = openFace(source, this.#files.shaperWasm);
        this.#faces.set(id, face2);
      }
      return { face: await face2 };
    } catch (error) {
      const fault = error instanceof BadFontError ? error.message : "cannot be used";
      return problem("bad-font", `The font \u201C${label2}\u201D ${fault}.`);
    }
  }
  #systemFonts() {
    this.#system ??= indexSystemFonts(this.#files).catch(() => ({ byName: /* @__PURE__ */ new Map(), families: [] }));
    return this.#system;
  }
};
async function stylesIn(bytes) {
  const read = (start, end) => Promise.resolve(bytes.subarray(start, end));
  return (await scanTables(read, descriptiveTables)).map((tables, index) => {
    const { weight, weightAxis, italic, width } = describeFont(tables);
    return { index, weight: weightAxis ?? weight, italic, width };
  });
}
function variationsFor(style, weight) {
  return typeof style.weight === "number" ? {} : { wght: weightWithin(style, weight) };
}
function problem(kind, message, suggestions = []) {
  return { problem: { kind, message, suggestions } };
}
function styleWords({ weight, italic }) {
  return [...weight === void 0 ? [] : [`\u201Cweight: ${weight}\u201D`], ...italic ? ["\u201Citalic: true\u201D"] : []].join(
    " and "
  );
}
function similarNames(wanted, names) {
  const target = wanted.trim().toLowerCase();
  return names.map((name) => {
    const lower = name.toLowerCase();
    return { name, steps: target !== "" && lower.startsWith(target) ? 1 : distance4(target, lower) };
  }).filter(({ steps: steps2 }) => steps2 <= Math.max(2, target.length / 3)).sort((a, b) => a.steps - b.steps).slice(0, 3).map(({ name }) => name);
}

// src/engine/engine.ts
var turnMs = 10;
var Engine = class {
  fonts;
  #files;
  #cache = new StageCache();
  constructor(files) {
    this.#files = files;
    this.fonts = new FontLibrary(files);
  }
  /**
   * Never throws for what a spec says; rejects only with the signal's reason once that is aborted.
   */
  async compute(text, { locate, row: wanted = 0, signal, severities = {} }) {
    const clock = new Clock();
    const checkpoint = turns(signal);
    const unread = new SpecSource(text);
    const uses = await loadUses(unread, { read: (path) => this.#readText(path), locate, beside: this.#beside });
    signal?.throwIfAborted();
    const { source, model, issues, ...batched } = parseSpec(unread, uses, wanted);
    clock.lap("read");
    const comments2 = acceptComments(text);
    if (!model) {
      const judged3 = judge2(issues, source, comments2, severities, false);
      return { source, ...batched, ...judged3, fonts: [], uses, files: uses.files, timings: clock.laps };
    }
    const loaded = await loadFiles(model, {
      library: this.fonts,
      read: (path) => this.#files.read(path),
      beside: this.#beside,
      locate
    });
    await checkpoint();
    clock.lap("load");
    const findings = [];
    const made = await this.#build(model, loaded, (finding5) => findings.push(finding5), checkpoint);
    const lacking = await this.#lacking(model, loaded, made, checkpoint);
    const tag = { ...made, ghosts: [...unusedShapes(model, made), ...lacking] };
    findings.unshift(...loaded.findings.map((finding5) => pinned2(finding5, lacking)));
    clock.lap("make");
    findings.push(...await runChecks(tag, checkpoint));
    clock.lap("check");
    const complete = (batched.batch?.rows.length ?? 1) === 1 && findings.every(({ code }) => issueKinds[code].about === "making");
    const judged2 = judge2([...issues, ...placed(findings, source, tag.units)], source, comments2, severities, complete);
    const files = [...uses.files, ...loaded.files];
    return { source, ...batched, tag, model, ...judged2, fonts: loaded.fontsUsed, uses, files, timings: clock.laps };
  }
  /** What is wrong with a file that specs use, without any of them. */
  async checkShared(text, locate) {
    const source = new SpecSource(text);
    const uses = await loadUses(source, { read: (path) => this.#readText(path), locate, beside: this.#beside });
    return { source, issues: readShared(source, uses) };
  }
  #beside = (path) => this.#files.beside?.(path) ?? Promise.resolve([]);
  async #readText(path) {
    return new TextDecoder().decode(await this.#files.read(path));
  }
  /** Shapes whose fonts or drawings cannot be had, as they would lie on the tag. */
  async #lacking(model, loaded, made, checkpoint) {
    const whole2 = await standIns(model, loaded, this.fonts);
    return whole2 ? lackingShapes(made, await this.#build(model, whole2, () => void 0, checkpoint)) : [];
  }
  #build(model, loaded, report, checkpoint) {
    return buildTag(model, {
      cache: this.#cache,
      minWeb: model.stock.minWeb,
      font: (text) => loaded.fonts.get(text),
      drawing: (file) => loaded.drawings.get(file),
      report,
      checkpoint
    });
  }
};
function pinned2(finding5, lacking) {
  const own = lacking.find(({ path }) => path.join("/") === finding5.path.slice(0, path.length).join("/"));
  const ghost = own ?? lacking[0];
  const bounds = ghost && boundsOf(ghost.region);
  return finding5.severity === "error" && bounds ? { ...finding5, points: [boxCentre(bounds)] } : finding5;
}
function placed(findings, source, units2) {
  return findings.map((finding5) => ({
    ...finding5,
    message: inUnits(finding5.message, units2),
    range: source.range(finding5.path)
  }));
}
function turns(signal) {
  let started = performance.now();
  return async () => {
    signal?.throwIfAborted();
    if (performance.now() - started < turnMs) return;
    await new Promise((resolve) => setTimeout(resolve, 0));
    started = performance.now();
    signal?.throwIfAborted();
  };
}
var Clock = class {
  laps = { read: 0, load: 0, make: 0, check: 0, total: 0 };
  #start = performance.now();
  #last = this.#start;
  lap(name) {
    const now = performance.now();
    this.laps[name] = now - this.#last;
    this.laps.total = now - this.#start;
    this.#last = now;
  }
};

// test/fonts/font-files.ts
import { readFile as readFile2 } from "node:fs/promises";
import decompress from "wawoff2/decompress.js";

// src/text/node-font-files.ts
import { open as open2, readdir, readFile } from "node:fs/promises";
import { homedir, platform } from "node:os";
import { dirname, extname, join } from "node:path";
var fontExtensions = /* @__PURE__ */ new Set([".ttf", ".otf", ".ttc", ".otc", ".woff", ".woff2"]);
var maxDepth = 6;
var maxFonts = 1e4;
function nodeFontFiles(bundledFolder) {
  return { ...nodeInstalledFonts, bundled: (name) => readFile(join(bundledFolder, name)) };
}
var nodeInstalledFonts = {
  read: (path, stretch3) => readStretch(path, stretch3?.start ?? 0, stretch3?.end ?? maxFontBytes + 1),
  beside: (path) => readdir(dirname(path)),
  async systemFonts() {
    const paths = [];
    for (const folder2 of systemFontFolders()) await collectFonts(folder2, 0, paths);
    return paths;
  }
};
function systemFontFolders() {
  const home = homedir();
  if (platform() === "win32") {
    return [
      join(process.env["WINDIR"] ?? "C:\\Windows", "Fonts"),
      join(process.env["LOCALAPPDATA"] ?? join(home, "AppData", "Local"), "Microsoft", "Windows", "Fonts")
    ];
  }
  if (platform() === "darwin") return ["/Library/Fonts", join(home, "Library", "Fonts"), "/System/Library/Fonts"];
  return [
    join(home, ".fonts"),
    join(process.env["XDG_DATA_HOME"] ?? join(home, ".local", "share"), "fonts"),
    "/usr/local/share/fonts",
    "/usr/share/fonts"
  ];
}
async function collectFonts(folder2, depth, into) {
  const entries = await readdir(folder2, { withFileTypes: true }).catch(() => []);
  for (const entry of entries) {
    if (into.length >= maxFonts) return;
    const path = join(folder2, entry.name);
    if (fontExtensions.has(extname(entry.name).toLowerCase())) {
      if (entry.isFile() || entry.isSymbolicLink()) into.push(path);
    } else if ((entry.isDirectory() || entry.isSymbolicLink()) && depth < maxDepth) {
      await collectFonts(path, depth + 1, into);
    }
  }
}
async function readStretch(path, start, end) {
  const file = await open2(path);
  try {
    const { size } = await file.stat();
    const bytes = new Uint8Array(Math.max(0, Math.min(end, size) - start));
    let filled2 = 0;
    while (filled2 < bytes.length) {
      const { bytesRead } = await file.read(bytes, filled2, bytes.length - filled2, start + filled2);
      if (bytesRead === 0) break;
      filled2 += bytesRead;
    }
    return bytes.subarray(0, filled2);
  } finally {
    await file.close();
  }
}

// test/fonts/font-files.ts
var modules = new URL("../../node_modules/", import.meta.url);
function packagedFontFiles() {
  return {
    ...nodeFontFiles(""),
    bundled: (name) => {
      for (const font2 of bundledFonts) {
        const face2 = font2.faces.find((each) => bundledFileName(each) === name);
        if (face2) return readFile2(new URL(`${font2.package}/${face2.file}`, modules));
      }
      throw new Error(`No package has ${name}.`);
    },
    systemFonts: () => Promise.resolve([])
  };
}

// test/unit/support/engine.ts
var folder = "/specs/";
function newEngine(beside = {}) {
  return new Engine({
    ...packagedFontFiles(),
    beside: () => Promise.resolve(Object.keys(beside)),
    read: (path, stretch3) => {
      const content = beside[path.slice(folder.length)];
      if (content === void 0) return Promise.reject(new Error(`${path} does not exist`));
      const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
      return Promise.resolve(stretch3 ? bytes.subarray(stretch3.start, stretch3.end) : bytes);
    }
  });
}
var shared3 = newEngine();

// zz-time.mts
var eng = newEngine();
async function run(plate, word, font2, margin = 4, obst = "") {
  const spec = `tagwright: 1
shapes:
  plate: ${plate}
  word: {text: ${word}, font: ${font2}, x_height: 6, nudge: {up: 0}}
${obst ? `  ob: ${obst}
` : ""}pieces:
  a: {body: [plate], engrave: [word]${obst ? ", cut: [ob]" : ""}}
`;
  const r = await eng.compute(spec, { locate: () => void 0 });
  if (!r.tag) {
    console.log(r.issues);
    return;
  }
  const get = (n) => [...r.tag.made].find(([s]) => s.name === n)[1];
  const solid = get("word"), target = get("plate").region;
  const times = [];
  let res, room;
  for (let i = 0; i < 60; i++) {
    if (i < 2 || i === 3) {
      const t2 = performance.now();
      room = roomIn(target, margin, obst ? get("ob").region : [], "eye");
      room.parts.forEach((p) => {
        p.field;
        p.walls.edges;
        p.rough.edges;
      });
      times.push("room " + (performance.now() - t2).toFixed(1));
    }
    const t = process.cpuUsage().user / 1e3;
    res = largestFit(solid, centreOf(solid, "eye"), room);
    times.push(process.cpuUsage().user / 1e3 - t);
  }
  const own = centreOf(solid, "eye");
  const placed2 = transform(solid.region, { a: res.scale, b: 0, c: 0, d: res.scale, e: res.x - res.scale * own.x, f: res.y - res.scale * own.y });
  const b = boundsOf(placed2);
  console.log(plate, word, "wide", (b.maxX - b.minX).toFixed(2), "eye at", res.x.toFixed(2), res.y.toFixed(2), "box c", boxCentre(b), "room c", room.centre, "outside", area(difference(placed2, [room.region])).toExponential(1), "median", times.filter((t) => typeof t === "number").slice(20).sort((a, b2) => a - b2)[20].toFixed(1));
}
await run("{heart: 60}", "Rosemary", "Pacifico");
await run("{heart: 60}", "Sweet Cicely", "Pacifico");
await run("{rectangle: [86,34]}", "Sweet Cicely", "Pacifico", 2, "{ellipse: 8, nudge: {left: 36}}");
await run("{rectangle: [86,34]}", "Kale", "Nunito", 2, "{ellipse: 8, nudge: {left: 36}}");
await run("{ellipse: [86,34]}", "Kale", "Nunito", 2, "{ellipse: 6, nudge: {left: 10, up: 5}}");
await run("{polygon: {points: [[0, 0], [60, 0], [60, 15], [30, 15], [30, 40], [0, 40]]}}", "HI", "Nunito", 2);
await run('{path: "M0 -40 L9 -12 L38 -12 L15 5 L24 32 L0 15 L-24 32 L-15 5 L-38 -12 L-9 -12 Z"}', "Oat", "Pacifico", 2);
