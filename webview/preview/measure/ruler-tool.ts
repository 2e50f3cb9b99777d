/** Ruler tool: measures between two points, each snapping to a corner, a centre or an edge of the drawing. */

import type { Arranged } from '../scene/arrange.ts';
import { caliper, pair } from './caliper.ts';
import { setAttribute, setText, svg } from '../../common/dom.ts';
import { measuredText } from '../../../src/core/units.ts';
import type { Units } from '../../../src/core/units.ts';
import { isPlain } from '../../common/keys.ts';
import { cornersOf, nearestOf, nearestOnEdges, ringsOf, type SnapPoint, type Rings } from '../scene/outline-points.ts';
import { toScreen, toWorld, type Size, type Viewport, type XY } from '../../common/camera/viewport.ts';

export interface RulerHost {
  arranged(): Arranged | undefined;
  hiddenPieces(): readonly string[];
  view(): Viewport;
  size(): Size;
  units(): Units;
  say(text: string): void;
  /** It must be redrawn. */
  changed(): void;
  /** It was switched on or off. */
  toggled(isOn: boolean): void;
}

const cornerPx = 9;
const edgePx = 7;
/** Step of the arrow keys in px, without and with Shift. */
const keyPx = { fine: 1, coarse: 10 } as const;

interface OutlinePoints {
  readonly of: Arranged;
  readonly rings: Rings;
  readonly corners: readonly XY[];
  readonly centres: readonly XY[];
}

export class RulerTool {
  readonly element = svg('g', { class: 'ruler-tool', 'aria-hidden': 'true' });
  private readonly casing = svg('path', { class: 'casing' });
  private readonly line = svg('path', { class: 'line' });
  private readonly spot = svg('path', { class: 'spot' });
  private readonly text = svg('text', { 'text-anchor': 'middle' });
  private isOn = false;
  private outlines: OutlinePoints | undefined;
  /** Both ends in mm; the second follows the pointer until it is set. */
  private from: XY | undefined;
  private to: XY | undefined;
  private isSet = false;
  private spotAt: SnapPoint | undefined;

  constructor(
    private readonly stage: HTMLElement,
    private readonly host: RulerHost,
  ) {
    this.element.append(this.casing, this.line, this.spot, this.text);
    stage.addEventListener('pointermove', (event) => {
      if (this.isOn) this.pointAt(this.placeOf(event));
    });
    const take = (event: MouseEvent): void => {
      if (!this.isOn || (event.target as Element).closest('button')) return;
      event.stopImmediatePropagation();
      if (event.type === 'click') this.set();
    };
    // Before anything else that a press or click would do.
    for (const name of ['pointerdown', 'click'] as const) stage.addEventListener(name, take, { capture: true });
    const press = (event: KeyboardEvent): void => {
      if (isPlain(event, 'm')) this.toggle();
      else if (this.isOn && event.key === 'Escape') this.putBack();
      else if (!this.isOn || !this.steer(event)) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    };
    document.addEventListener('keydown', press, { capture: true });
  }

  toggle(): void {
    this.isOn = !this.isOn;
    this.forget();
    this.stage.classList.toggle('measuring', this.isOn);
    this.host.toggled(this.isOn);
    if (this.isOn) {
      this.stage.focus();
      this.host.say('Ruler. Click two points, or move with the arrow keys and set each with Enter. Escape closes it.');
    }
    this.host.changed();
  }

  follow(view: Viewport, stage: Size): void {
    const onScreen = (point: XY): XY => toScreen(view, stage, point);
    const spot = this.spotAt && onScreen(this.spotAt.at);
    setAttribute(this.spot, 'd', spot ? spotPath(spot, this.spotAt!.kind) : '');
    const ends = this.from && this.to ? [onScreen(this.from), onScreen(this.to)] : [];
    const [a, b] = ends;
    const path = a && b ? caliper(a, b) : '';
    for (const each of [this.casing, this.line]) setAttribute(each, 'd', path);
    this.text.classList.toggle('hidden', !a || !b);
    if (!a || !b) return;
    setText(this.text, this.words());
    setAttribute(this.text, 'x', ((a[0] + b[0]) / 2).toFixed(1));
    setAttribute(this.text, 'y', (Math.min(a[1], b[1]) - 10).toFixed(1));
  }

  /** Clears the measurement first; a second time, switches the ruler off. */
  private putBack(): void {
    if (!this.from) {
      this.toggle();
      return;
    }
    this.forget();
    this.host.changed();
  }

  private forget(): void {
    this.from = this.to = this.spotAt = undefined;
    this.isSet = false;
  }

  private placeOf({ clientX, clientY }: MouseEvent): XY {
    const { left, top } = this.stage.getBoundingClientRect();
    return toWorld(this.host.view(), this.host.size(), [clientX - left, clientY - top]);
  }

  private pointAt(place: XY): void {
    this.spotAt = this.find(place) ?? { at: place, kind: 'edge' };
    if (this.from && !this.isSet) this.to = this.spotAt.at;
    this.host.changed();
  }

  private set(): void {
    if (!this.spotAt) return;
    if (this.from && !this.isSet) {
      this.isSet = true;
      this.host.say(this.words());
    } else {
      [this.from, this.to, this.isSet] = [this.spotAt.at, this.spotAt.at, false];
    }
    this.host.changed();
  }

  private steer(event: KeyboardEvent): boolean {
    if (event.target !== this.stage) return false;
    if (event.key === 'Enter') {
      if (this.spotAt) this.pointAt(this.spotAt.at);
      this.set();
      return true;
    }
    const ways: Readonly<Record<string, XY>> = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowUp: [0, -1],
      ArrowDown: [0, 1],
    };
    const way = ways[event.key];
    if (!way || event.ctrlKey || event.metaKey || event.altKey) return false;
    const step = event.shiftKey ? keyPx.coarse : keyPx.fine;
    const view = this.host.view();
    const [x, y] = this.spotAt?.at ?? [view.x, view.y];
    // The point snaps only when it is set; snapping at every step would never let it leave.
    this.spotAt = { at: [x + (way[0] * step) / view.scale, y + (way[1] * step) / view.scale], kind: 'edge' };
    if (this.from && !this.isSet) this.to = this.spotAt.at;
    this.host.changed();
    return true;
  }

  /** A corner or centre first; else the edge, where it is nearest to the start of the measurement. */
  private find(place: XY): SnapPoint | undefined {
    const outlines = this.current();
    if (!outlines) return undefined;
    const mm = (px: number): number => px / this.host.view().scale;
    const centre = nearestOf(outlines.centres, place, mm(cornerPx));
    if (centre) return { at: centre, kind: 'centre' };
    const corner = nearestOf(outlines.corners, place, mm(cornerPx));
    if (corner) return { at: corner, kind: 'corner' };
    const isSecond = this.from !== undefined && !this.isSet;
    const square = isSecond ? nearestOnEdges(outlines.rings, place, mm(edgePx), this.from) : undefined;
    if (square) return { at: square, kind: 'square' };
    const edge = nearestOnEdges(outlines.rings, place, mm(edgePx));
    return edge && { at: edge, kind: 'edge' };
  }

  private current(): OutlinePoints | undefined {
    const arranged = this.host.arranged();
    if (!arranged || this.outlines?.of === arranged) return this.outlines;
    const shown = arranged.order.filter(({ id }) => !this.host.hiddenPieces().includes(id));
    const rings = shown.flatMap(({ id, parts }) =>
      parts.flatMap(({ data }) => ringsOf(data, arranged.offsets.get(id)!)),
    );
    const centres = shown.flatMap(({ id, hangers }) => {
      const [dx, dy] = arranged.offsets.get(id)!;
      return hangers.map(({ centre: [x, y] }): XY => [x + dx, y + dy]);
    });
    this.outlines = { of: arranged, rings, corners: cornersOf(rings), centres };
    return this.outlines;
  }

  private words(): string {
    const [[ax, ay], [bx, by]] = [this.from!, this.to!];
    const units = this.host.units();
    const [dx, dy] = [Math.abs(bx - ax), Math.abs(by - ay)];
    const straight = Math.min(dx, dy) < 0.005;
    const parts = straight ? '' : ` (${measuredText(dx, units)} across, ${measuredText(dy, units)} down)`;
    return `${measuredText(Math.hypot(dx, dy), units)}${parts}`;
  }
}

/**
 * Marker around the snap point: four diagonal ticks for a corner, four straight ones for a centre, two strokes along an
 * edge; the point itself stays visible.
 */
function spotPath(point: XY, kind: SnapPoint['kind']): string {
  const at = pair(point);
  if (kind === 'corner') return `M${at}m-8 -8l5 5m6 0l5 -5m0 16l-5 -5m-6 0l-5 5`;
  if (kind === 'centre') return `M${at}m0 -9v6m0 6v6m-9 -9h6m6 0h6`;
  return `M${at}m-7 -3h14m-14 6h14`;
}
