/** Counts what cannot be used of a drawing while it is read. */

import { distance } from '../../geometry/measure.ts';
import type { CurvePath } from '../../geometry/curves.ts';
import type { LeftOut, LeftOutKind } from './left-out.ts';
import { parseSvgPath } from './svg-path.ts';
import { userUnits } from './svg-shapes.ts';
import type { SvgViewport } from './svg-shapes.ts';

/** The paint of an element, from its own properties or inherited ones. */
export interface Paint {
  readonly fill: string;
  readonly stroke: string;
  readonly strokeWidth: string;
}

type Property = (name: string) => string | undefined;

/**
 * A stroke is thick, and missed, from this share of the drawing's larger side on; a thinner one only marks the outline
 * (our own judgement).
 */
const thickShare = 0.01;

/** An outline is closed if its ends are this near to each other, in mm. */
const closedMm = 0.01;

const elements: Readonly<Record<string, LeftOutKind>> = { text: 'text', image: 'picture', foreignObject: 'picture' };
const effects: Readonly<Record<string, LeftOutKind>> = {
  'clip-path': 'clip',
  mask: 'mask',
  filter: 'filter',
};

export class LeftOutCounter {
  readonly #counts = new Map<LeftOutKind, number>();
  readonly #viewport: SvgViewport;
  readonly #tagOfId: (id: string) => string | undefined;
  #white = 0;
  #coloured = 0;
  #bare = 0;
  #filled = 0;

  /** `tagOfId` returns the tag of the element with an id. */
  constructor(viewport: SvgViewport, tagOfId: (id: string) => string | undefined) {
    this.#viewport = viewport;
    this.#tagOfId = tagOfId;
  }

  count(kind: LeftOutKind): void {
    this.#counts.set(kind, (this.#counts.get(kind) ?? 0) + 1);
  }

  counted(): LeftOut {
    // If everything is white, that is just the colour it was drawn in.
    return {
      ...Object.fromEntries(this.#counts),
      ...(this.#white > 0 && this.#coloured > 0 ? { white: this.#white } : {}),
      // In a drawing of nothing but outlines, they are what is to be cut.
      ...(this.#bare > 0 && this.#filled > 0 ? { outline: this.#bare } : {}),
    };
  }

  /** Whether an element is of a kind that cannot be a shape. */
  isLeftOut(tag: string, isHidden: boolean): boolean {
    const kind = elements[tag];
    if (kind === undefined) return false;
    if (!isHidden) this.count(kind);
    return true;
  }

  /** Counts effects on an element and its content that are ignored. */
  effects(property: Property): void {
    for (const [name, kind] of Object.entries(effects)) if (isSet(property(name))) this.count(kind);
    if (['marker', 'marker-start', 'marker-mid', 'marker-end'].some((name) => isSet(property(name))))
      this.count('marker');
  }

  paintOf(property: Property, inherited: Paint): Paint {
    const valueOr = (name: string, before: string): string => {
      const value = property(name);
      return value === undefined || value === 'inherit' ? before : value;
    };
    return {
      fill: valueOr('fill', inherited.fill),
      stroke: valueOr('stroke', inherited.stroke),
      strokeWidth: valueOr('stroke-width', inherited.strokeWidth),
    };
  }

  isStroked({ stroke, strokeWidth }: Paint): boolean {
    return !isNone(stroke) && userUnits(strokeWidth, 1) > 0;
  }

  /**
   * The part of an outline to be filled. Closed outlines are, even if only their line is drawn: outlines for cutting
   * come like that. Open ones are lines unless they have a fill; without any paint, nothing is there.
   */
  filled(curves: CurvePath, paint: Paint, transforms: readonly string[]): CurvePath {
    const isFilled = !isNone(paint.fill);
    const isStroked = this.isStroked(paint);
    if (!isFilled && !isStroked) return [];
    if (isFilled && !isStroked) {
      this.#filled += 1;
      this.#fillOf(paint);
      return curves;
    }
    const outlines = outlinesIn(curves);
    const kept = outlines.filter((outline) => enclosesArea(outline) && (isFilled || isClosed(outline)));
    if (isStroked && kept.length < outlines.length) this.count('line');
    if (kept.length === 0) return [];
    if (isFilled) this.#filled += 1;
    if (isStroked && this.#isThick(paint, transforms)) this.count('thickness');
    else if (!isFilled) this.#bare += 1;
    this.#fillOf(paint);
    return kept.flat();
  }

  /** Counts patterns and white fills; other colours do not matter. */
  #fillOf({ fill }: Paint): void {
    if (this.#tagOfId(/^url\(["']?#([^"')]+)/.exec(fill)?.[1] ?? '') === 'pattern') this.count('pattern');
    if (/^(?:white|#fff(?:fff)?)$/i.test(fill)) this.#white += 1;
    else this.#coloured += 1;
  }

  #isThick({ strokeWidth }: Paint, transforms: readonly string[]): boolean {
    const side = Math.max(this.#viewport.width, this.#viewport.height);
    if (side === 0) return false;
    const width = userUnits(strokeWidth, side) * scaleOf(transforms);
    return width > thickShare * side;
  }
}

const isNone = (paint: string): boolean => paint === 'none' || paint === 'transparent';
const isSet = (value: string | undefined): boolean => value !== undefined && value !== 'none' && value !== '';

/** The factor by which transforms enlarge, averaged over both directions. */
function scaleOf(transforms: readonly string[]): number {
  const unit = parseSvgPath('M0 0L1 0L0 1', 1, transforms);
  if ('problem' in unit) return 1;
  const [origin, right, down] = unit.curves;
  if (origin?.type !== 'M' || right?.type !== 'L' || down?.type !== 'L') return 1;
  const area = (right.x - origin.x) * (down.y - origin.y) - (right.y - origin.y) * (down.x - origin.x);
  return Math.sqrt(Math.abs(area));
}

function outlinesIn(curves: CurvePath): CurvePath[] {
  const outlines: CurvePath[] = [];
  let outline: CurvePath[number][] = [];
  for (const command of curves) {
    if (command.type === 'M' && outline.length > 0) {
      outlines.push(outline);
      outline = [];
    }
    outline.push(command);
  }
  return outline.length > 0 ? [...outlines, outline] : outlines;
}

function isClosed(outline: CurvePath): boolean {
  const [first] = outline;
  const last = outline.at(-1);
  if (!first || !last || first.type !== 'M') return true;
  return last.type === 'Z' || distance(last, first) < closedMm;
}

/** Whether an outline encloses an area, unlike a point with one straight line from it. */
function enclosesArea(outline: CurvePath): boolean {
  const drawn = outline.filter(({ type }) => type !== 'M' && type !== 'Z');
  return drawn.length > 1 || drawn.some(({ type }) => type !== 'L');
}
