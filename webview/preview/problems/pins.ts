/**
 * Pins: problems at their places, with a bar across the width in question, a leader to both its ends, and a focusable
 * label.
 */

import type { ScenePin } from '../../../src/protocol/scene.ts';
import type { Arranged } from '../scene/arrange.ts';
import { caliper, pair } from '../measure/caliper.ts';
import { html, setAttribute, setText, svg } from '../../common/dom.ts';
import { measuredText } from '../../../src/core/units.ts';
import type { Units } from '../../../src/core/units.ts';
import { setSeverity, severityIcon } from '../../common/icons.ts';
import { KeyedList, type ItemView } from '../../common/keyed.ts';
import type { PlacedLabel } from '../measure/placed-labels.ts';
import type { LineSegment, SpotLabel } from '../measure/label-places.ts';
import { plumbEnds, plumbFoot, plumbLine } from '../measure/plumb.ts';
import { textWidth } from '../../common/text-width.ts';
import {
  joinedBox,
  moved,
  toScreen,
  type Box,
  type Size,
  type Viewport,
  type XY,
} from '../../common/camera/viewport.ts';

/** Size of a label without a number, in px. */
const iconSize: Size = { width: 18, height: 18 };
const fontPx = 11;
/** Icon, gaps and borders, in px; as in overlay.css. */
const besidePx = 28;
/** Largest share of the stage that labels with numbers may cover. */
const mostCover = 0.08;
const labelAreaPx = 70 * 18;
/** Limit on pins; nobody reads more of them on a drawing, and the list has all problems. */
const maxPins = 60;

/** One place of a problem. */
interface PinSpot {
  /** For the worst place, the problem's own id. */
  readonly id: string;
  readonly pin: ScenePin;
  readonly points: readonly XY[];
  readonly width?: number;
}

export class Pins {
  readonly marks = svg('g', { class: 'pin-marks' });
  private readonly markList = new KeyedList<PinSpot, MarkView>(this.marks, () => new MarkView());
  private readonly labelList: KeyedList<PinSpot, LabelView>;
  private shown: readonly PinSpot[] = [];
  private ends: ReadonlyMap<string, readonly XY[]> = new Map();
  /** Labels of the pins on the stage, in the order of the list. */
  wanted: readonly SpotLabel[] = [];
  /** Marks that labels must not hide. */
  drawnMarks: readonly LineSegment[] = [];
  private units: Units = 'mm';

  constructor(private readonly labels: HTMLElement) {
    this.labelList = new KeyedList<PinSpot, LabelView>(labels, () => new LabelView(() => this.units));
  }

  patch(pins: readonly ScenePin[], hidden: readonly string[], units: Units): void {
    this.units = units;
    const isShown = ({ piece }: ScenePin): boolean => piece === undefined || !hidden.includes(piece);
    const spots = pins.filter(isShown).flatMap(spotsOf);
    this.shown = spots.filter(({ points }) => points.length > 0).slice(0, maxPins);
    this.markList.patch(this.shown);
    this.labelList.patch(this.shown);
  }

  /** Computes the present positions, the labels to place and the marks to keep clear. */
  lookAt(arranged: Arranged, view: Viewport, stage: Size): void {
    this.ends = new Map(this.shown.map((spot) => [spot.id, endsOf(spot, arranged, view, stage)]));
    const seen = this.shown
      .map((spot) => ({ spot, at: spotOf(spot.pin, this.ends.get(spot.id)!) }))
      .filter(({ at: [x, y] }) => x >= 0 && y >= 0 && x <= stage.width && y <= stage.height);
    const isCrowded = seen.length * labelAreaPx > mostCover * stage.width * stage.height;
    this.labels.classList.toggle('crowded', isCrowded);
    const [minX, minY, maxX, maxY] = arranged.bounds;
    const centre = toScreen(view, stage, [(minX + maxX) / 2, (minY + maxY) / 2]);
    this.wanted = seen.map(({ spot: { id }, at }): SpotLabel => {
      const size = isCrowded ? iconSize : this.labelList.get(id)!.size();
      const outwards = Math.atan2(at[1] - centre[1], at[0] - centre[0]);
      return { id, at, size, from: 0, outwards, isVital: true, least: iconSize };
    });
    this.drawnMarks = seen.flatMap(({ spot: { id, pin }, at }) => marksOf(pin, this.ends.get(id)!, at));
  }

  draw(placed: ReadonlyMap<string, PlacedLabel>): void {
    for (const { id } of this.shown) {
      const place = placed.get(id);
      const from = place?.lines[0]![1];
      this.labelList.get(id)!.moveTo(place && [place.box[0], place.box[1]], place?.isLeast === true);
      this.markList.get(id)!.draw(from && this.ends.get(id)!, from);
    }
  }

  /** Ids of all pinned places in the order of the list, including those out of view. */
  get ids(): readonly string[] {
    return this.shown.map(({ id }) => id);
  }

  /** The label, which can take the focus only while its spot is on the stage. */
  label(id: string): HTMLElement | undefined {
    return this.labelList.get(id)?.element;
  }

  /** Bounds of the spot as drawn, in mm. */
  box(id: string, { offsets }: Arranged): Box | undefined {
    const spot = this.shown.find((each) => each.id === id);
    return spot?.points
      .map(([x, y]): Box => moved([x, y, x, y], offsets.get(spot.pin.piece ?? '') ?? [0, 0]))
      .reduce((a, b) => joinedBox(a, b));
  }

  /** Highlights every place of the problem that the pointer or focus is on in the list. */
  heat(problem: string | undefined): void {
    for (const { id, pin } of this.shown) {
      this.labelList.get(id)!.element.classList.toggle('hot', pin.id === problem);
      this.markList.get(id)!.element.classList.toggle('hot', pin.id === problem);
    }
  }
}

function spotsOf(pin: ScenePin): PinSpot[] {
  const { id, points, width, others = [] } = pin;
  const worst = { id, pin, points, ...(width !== undefined && { width }) };
  return [worst, ...others.map((place, index) => ({ id: `${id}+${index + 1}`, pin, ...place }))];
}

class MarkView implements ItemView<PinSpot> {
  private readonly wedge = svg('path', { class: 'wedge' });
  private readonly casing = svg('path', { class: 'casing' });
  private readonly bar = svg('path', { class: 'bar' });
  readonly element = svg('g', { class: 'pin-mark' }, this.wedge, this.casing, this.bar);
  private isPlumb = false;

  update({ pin }: PinSpot): void {
    this.isPlumb = hangsOn(pin);
    this.element.classList.toggle('plumb', this.isPlumb);
    setAttribute(this.element, 'data-severity', pin.severity);
  }

  /** Without a place for the label there is nothing to draw. */
  draw(ends: readonly XY[] | undefined, from: XY | undefined): void {
    this.element.classList.toggle('hidden', !ends || !from);
    if (!ends || !from) return;
    const feet = this.isPlumb ? plumbFoot(ends[0]!) : ends;
    setAttribute(this.wedge, 'd', `M${pair(from)}L${feet.map(pair).join('L')}Z`);
    this.element.classList.toggle('slight', !this.isPlumb && isSlight(ends));
    const bar = this.isPlumb ? plumbLine(ends[0]!, ends[1]!) : barPath(ends);
    setAttribute(this.casing, 'd', bar);
    setAttribute(this.bar, 'd', bar);
  }
}

class LabelView implements ItemView<PinSpot> {
  private readonly icon = severityIcon('warning');
  private readonly width = html('span');
  readonly element = html('button', { type: 'button', class: 'pin' }, this.icon, this.width);

  constructor(private readonly units: () => Units) {}

  update({ id, pin, width }: PinSpot): void {
    const figure = figureOf(pin, width, this.units());
    setText(this.width, figure);
    setSeverity(this.icon, pin.severity);
    setAttribute(this.element, 'data-severity', pin.severity);
    setAttribute(this.element, 'data-pin', pin.id);
    setAttribute(this.element, 'data-spot', id);
    setAttribute(this.element, 'data-offset', `${pin.source}`);
    setAttribute(this.element, 'aria-label', `${pin.severity}: ${pin.message} Line ${pin.line}.`);
  }

  /** Computed, not measured, because it may be in its short form just now. */
  size(): Size {
    const figure = this.width.textContent;
    return figure === ''
      ? iconSize
      : { width: Math.ceil(textWidth(figure, fontPx)) + besidePx, height: iconSize.height };
  }

  /** `isShort`: without its number. */
  moveTo(place: XY | undefined, isShort: boolean): void {
    this.element.classList.toggle('short', isShort);
    this.element.classList.toggle('away', !place);
    if (place) this.element.style.translate = `${Math.round(place[0])}px ${Math.round(place[1])}px`;
  }
}

function endsOf({ pin, points }: PinSpot, arranged: Arranged, view: Viewport, stage: Size): XY[] {
  const [dx, dy] = (pin.piece === undefined ? undefined : arranged.offsets.get(pin.piece)) ?? [0, 0];
  return points.map(([x, y]) => toScreen(view, stage, [x + dx, y + dy]));
}

/** For an angle, the two points are the point of support and the centre of gravity. */
function hangsOn({ angle, points }: ScenePin): boolean {
  return angle !== undefined && points.length === 2;
}

/** An angle in whole degrees, or a width; empty if the problem has neither. */
function figureOf({ angle }: ScenePin, width: number | undefined, units: Units): string {
  if (angle !== undefined) return `${Math.round(angle)}°`;
  return width === undefined ? '' : measuredText(width, units);
}

/** The point that the label belongs to. */
function spotOf(pin: ScenePin, ends: readonly XY[]): XY {
  return hangsOn(pin) ? ends[0]! : meanPoint(ends);
}

function meanPoint(ends: readonly XY[]): XY {
  const sum = ends.reduce(([ax, ay], [x, y]) => [ax + x, ay + y], [0, 0]);
  return [sum[0] / ends.length, sum[1] / ends.length];
}

/** Radius around a spot that no label may hide, in px. */
const spotPx = 6;

/** A cross on the spot, and the bar or the plumb line. */
function marksOf(pin: ScenePin, ends: readonly XY[], [x, y]: XY): LineSegment[] {
  const cross: LineSegment[] = [
    [
      [x - spotPx, y],
      [x + spotPx, y],
    ],
    [
      [x, y - spotPx],
      [x, y + spotPx],
    ],
  ];
  const [a, b] = ends;
  if (!a || !b) return cross;
  return [...cross, hangsOn(pin) ? plumbEnds(a, b) : [a, b]];
}

/** A bar with a tick across each end, like a caliper; a dot if there is only one point. */
function barPath(ends: readonly XY[]): string {
  const [a, b] = ends;
  if (!a) return '';
  if (!b) return `M${a[0] - 0.01} ${a[1]}h.02`;
  return isSlight(ends) ? caliper(a, b, 2) : caliper(a, b);
}

/** Length below which a bar and its ticks, in px, would hide what they are on, such as the stroke of a small word. */
const slightPx = 3;

function isSlight([a, b]: readonly XY[]): boolean {
  return a !== undefined && b !== undefined && Math.hypot(b[0] - a[0], b[1] - a[1]) < slightPx;
}
