/** Labels that have their place, and the best place left for the next. */

import { crosses, overlap } from './edge-grid.ts';
import type { GroundKind } from './obstacles.ts';
import {
  anglesOf,
  boxAbout,
  boxAt,
  leaderTo,
  moveCost,
  nearestTo,
  type LineSegment,
  type LineLabel,
  type SpotLabel,
} from './label-places.ts';
import type { Box, XY } from '../../common/camera/viewport.ts';

export interface PlacedLabel {
  /** Stays the same as long as the label keeps its place. */
  readonly key: string;
  readonly box: Box;
  readonly isOnMaterial: boolean;
  /** There is room only for the short form. */
  readonly isLeast?: boolean;
  /** The leader, or the lines that the label stands on. */
  readonly lines: readonly LineSegment[];
}

export interface LabelSpace {
  /** Labels stay within this box. */
  readonly room: Box;
  readonly under: (box: Box) => GroundKind;
  /** Neither labels nor leaders may cover these. */
  readonly boxes: readonly Box[];
  /** Labels may not hide these, because they are what labels are about. */
  readonly marks: readonly LineSegment[];
}

const clearancePx = 3;
/** Distance from the nearest possible place in a direction to the furthest, in px. */
const reachPx = 300;
const stepPx = 8;
/** Step for sampling leaders, in px: no visible stroke is narrower. */
const leaderStepPx = 5;

/** Costs, in pixels of distance: our own judgement, from looking at the samples. */
const cost = {
  crossing: 60,
  /** For every pixel of a leader over letters or material, which are what the user is looking at. */
  overShape: 2,
  /** For using the short form. */
  less: 90,
  /**
   * For a vital label without a free place: on a letter or an opening, on another label, and for every pixel outside
   * the room.
   */
  overDrawing: 3000,
  overLabel: 6000,
  beyond: 100_000,
} as const;

interface LabelPlacing {
  readonly place: PlacedLabel;
  readonly cost: number;
}

export class PlacedLabels {
  private readonly boxes: Box[];
  private readonly lines: LineSegment[];
  /** Leaders may cross, but are then harder to follow. */
  private readonly leaders: LineSegment[] = [];

  constructor(private readonly space: LabelSpace) {
    this.boxes = [...space.boxes];
    this.lines = [...space.marks];
  }

  take({ box, lines }: PlacedLabel): void {
    this.boxes.push(box);
    this.lines.push(...lines);
    this.leaders.push(...lines);
  }

  onLine({ size, places }: LineLabel, last: string | undefined): PlacedLabel | undefined {
    let best: (PlacedLabel & { readonly cost: number }) | undefined;
    for (const { key, middle, lines, cost: own } of places) {
      const box = boxAbout(middle, size);
      const ground = this.groundFor(box);
      const total = own + (key === last ? 0 : moveCost);
      if (ground !== 'free' || this.areHit(lines) || (best && best.cost <= total)) continue;
      best = { key, box, lines, isOnMaterial: false, cost: total };
    }
    return best;
  }

  /** The full label, or else the short form, which is better than a long leader over letters. */
  inShort(label: SpotLabel, last: string | undefined): PlacedLabel | undefined {
    const whole = this.atSpot(label, last);
    if (!label.least || (whole && whole.cost <= cost.less)) return whole?.place;
    const least = this.atSpot({ ...label, size: label.least }, last);
    if (whole && (!least || whole.cost <= least.cost + cost.less)) return whole.place;
    return least && { ...least.place, isLeast: true };
  }

  /**
   * The nearest place clear of everything, in any direction; a shorter leader makes up for a change of direction.
   * Failing that, one on material.
   */
  atSpot(label: SpotLabel, last: string | undefined): LabelPlacing | undefined {
    const nearest = nearestTo(label);
    const best: Partial<Record<GroundKind, LabelPlacing>> = {};
    const groundAt = (angle: number, radius: number): GroundKind | undefined => {
      const box = boxAt(label, angle, radius);
      const ground = this.groundFor(box);
      return ground === undefined || this.areHit([leaderTo(label, box)]) ? undefined : ground;
    };
    for (const { angle, key, extra } of anglesOf(label, last)) {
      for (let radius = nearest; radius <= nearest + reachPx; radius += stepPx) {
        if (best.free && radius - stepPx + extra >= best.free.cost) break;
        const ground = groundAt(angle, radius);
        if (ground === undefined || ground === 'taken' || (ground === 'material' && best.material)) continue;
        // As near as possible, not in steps, so that a label does not jump during zooming.
        const isGood = (each: number): boolean => groundAt(angle, each) === ground;
        const at = radius === nearest ? radius : lowest(radius - stepPx, radius, isGood);
        const box = boxAt(label, angle, at);
        const leader = leaderTo(label, box);
        const limit = best[ground]?.cost ?? Infinity;
        const bare = at + extra + cost.crossing * this.crossings(leader);
        const total = bare < limit ? bare + cost.overShape * this.overShapePx(leader) : bare;
        const place = { key, box, lines: [leader], isOnMaterial: ground === 'material' };
        if (total < limit) best[ground] = { place, cost: total };
        if (ground === 'free') break;
      }
    }
    return best.free ?? best.material;
  }

  leastBad(label: SpotLabel, last: string | undefined): PlacedLabel {
    let best: LabelPlacing | undefined;
    const nearest = nearestTo(label);
    for (const { angle, key, extra } of anglesOf(label, last)) {
      for (let radius = nearest; radius <= nearest + reachPx; radius += 3 * stepPx) {
        const box = boxAt(label, angle, radius);
        const leader = leaderTo(label, box);
        const ground = this.space.under(box);
        const hit = this.boxes.filter((other) => overlap(grown(box), other)).length + (this.areHit([leader]) ? 1 : 0);
        const worse =
          (ground === 'taken' ? cost.overDrawing : 0) + cost.overLabel * hit + cost.beyond * this.beyond(box);
        const total = radius + extra + worse;
        if (best && best.cost <= total) continue;
        best = { place: { key, box, lines: [leader], isOnMaterial: ground !== 'free' }, cost: total };
      }
    }
    return best!.place;
  }

  /** `undefined` if another label or a line is in the way. */
  private groundFor(box: Box): GroundKind | undefined {
    const { room } = this.space;
    if (box[0] < room[0] || box[1] < room[1] || box[2] > room[2] || box[3] > room[3]) return undefined;
    const wide = grown(box);
    if (this.boxes.some((other) => overlap(wide, other))) return undefined;
    if (this.lines.some(([a, b]) => crosses(a, b, wide))) return undefined;
    return this.space.under(wide);
  }

  private areHit(lines: readonly LineSegment[]): boolean {
    return lines.some(([a, b]) => this.boxes.some((box) => crosses(a, b, box)));
  }

  private crossings([a, b]: LineSegment): number {
    return this.leaders.filter(([c, d]) => areApart(a, b, c, d) && areApart(c, d, a, b)).length;
  }

  /** Length of a leader over letters or material in px, by sampling. */
  private overShapePx([[ax, ay], [bx, by]]: LineSegment): number {
    const steps = Math.ceil(Math.hypot(bx - ax, by - ay) / leaderStepPx);
    let over = 0;
    for (let step = 1; step < steps; step++) {
      const [x, y] = [ax + ((bx - ax) * step) / steps, ay + ((by - ay) * step) / steps];
      if (this.space.under([x - 1, y - 1, x + 1, y + 1]) !== 'free') over += leaderStepPx;
    }
    return over;
  }

  private beyond(box: Box): number {
    const { room } = this.space;
    const over = [room[0] - box[0], room[1] - box[1], box[2] - room[2], box[3] - room[3]];
    return over.reduce((sum, by) => sum + Math.max(by, 0), 0);
  }
}

/** Bisects between a bad and a good value, to half a pixel. */
function lowest(bad: number, good: number, isGood: (value: number) => boolean): number {
  let [low, high] = [bad, good];
  while (high - low > 0.5) {
    const middle = (low + high) / 2;
    if (isGood(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function areApart(a: XY, b: XY, c: XY, d: XY): boolean {
  const side = ([x, y]: XY): number => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
  return side(c) * side(d) < 0;
}

function grown([minX, minY, maxX, maxY]: Box): Box {
  return [minX - clearancePx, minY - clearancePx, maxX + clearancePx, maxY + clearancePx];
}
