/** Problems at their place: a bar across the width in question, a leader to both its ends, and a label one can focus. */

import type { ScenePin } from '../../../src/protocol/preview.ts';
import type { Arranged } from '../scene/arrange.ts';
import { caliper, pair } from '../measure/caliper.ts';
import { html, setAttribute, setText, svg } from '../../common/dom.ts';
import { fineText } from '../../common/format.ts';
import type { Units } from '../../../src/core/units.ts';
import { setSeverity, severityIcon } from '../../common/icons.ts';
import { KeyedList, type ItemView } from '../../common/keyed.ts';
import type { PlacedLabel } from '../measure/label-layout.ts';
import type { Line, SpotLabel } from '../measure/label-places.ts';
import { plumbEnds, plumbFoot, plumbLine } from '../measure/plumb.ts';
import { textWidth } from '../../common/text-width.ts';
import { joined, moved, toScreen, type Box, type Size, type Viewport, type XY } from '../../common/camera/viewport.ts';

/** Of a label without a figure, in px. */
const iconSize: Size = { width: 18, height: 18 };
const fontPx = 11;
/** Icon, gaps and borders, in px: as overlay.css has them. */
const besidePx = 28;
/** Labels with figures may cover this share of the stage. */
const mostCover = 0.08;
const labelAreaPx = 70 * 18;
/** A drawing with more is not read pin by pin; the list has them all. */
const maxPins = 60;

/** One place of a problem. */
interface Spot {
  /** At the worst place it is that of the problem. */
  readonly id: string;
  readonly pin: ScenePin;
  readonly points: readonly XY[];
  readonly width?: number;
}

export class Pins {
  readonly marks = svg('g', { class: 'pin-marks' });
  private readonly markList = new KeyedList<Spot, MarkView>(this.marks, () => new MarkView());
  private readonly labelList: KeyedList<Spot, LabelView>;
  private shown: readonly Spot[] = [];
  private ends: ReadonlyMap<string, readonly XY[]> = new Map();
  /** The labels of what is on the stage, in the order of the text. */
  wanted: readonly SpotLabel[] = [];
  /** What the problems are about. */
  drawnMarks: readonly Line[] = [];
  private units: Units = 'mm';

  constructor(private readonly labels: HTMLElement) {
    this.labelList = new KeyedList<Spot, LabelView>(labels, () => new LabelView(() => this.units));
  }

  patch(pins: readonly ScenePin[], hidden: readonly string[], units: Units): void {
    this.units = units;
    const isShown = ({ piece }: ScenePin): boolean => piece === undefined || !hidden.includes(piece);
    const spots = pins.filter(isShown).flatMap(spotsOf);
    this.shown = spots.filter(({ points }) => points.length > 0).slice(0, maxPins);
    this.markList.patch(this.shown);
    this.labelList.patch(this.shown);
  }

  /** Where everything is now: what is to be placed, and what labels must not hide. */
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

  /** The places that are pinned on the drawing, also those out of view, in the order of the text. */
  get ids(): readonly string[] {
    return this.shown.map(({ id }) => id);
  }

  /** The label; it can take the focus only while its spot is on the stage. */
  label(id: string): HTMLElement | undefined {
    return this.labelList.get(id)?.element;
  }

  /** The box in mm round the spot, where it is drawn now. */
  box(id: string, { offsets }: Arranged): Box | undefined {
    const spot = this.shown.find((each) => each.id === id);
    return spot?.points
      .map(([x, y]): Box => moved([x, y, x, y], offsets.get(spot.pin.piece ?? '') ?? [0, 0]))
      .reduce((a, b) => joined(a, b));
  }

  /** Lights up every place of the problem that the pointer or the keyboard is on in the list. */
  heat(problem: string | undefined): void {
    for (const { id, pin } of this.shown) {
      this.labelList.get(id)!.element.classList.toggle('hot', pin.id === problem);
      this.markList.get(id)!.element.classList.toggle('hot', pin.id === problem);
    }
  }
}

function spotsOf(pin: ScenePin): Spot[] {
  const { id, points, width, others = [] } = pin;
  const worst = { id, pin, points, ...(width !== undefined && { width }) };
  return [worst, ...others.map((place, index) => ({ id: `${id}+${index + 1}`, pin, ...place }))];
}

class MarkView implements ItemView<Spot> {
  private readonly wedge = svg('path', { class: 'wedge' });
  private readonly casing = svg('path', { class: 'casing' });
  private readonly bar = svg('path', { class: 'bar' });
  readonly element = svg('g', { class: 'pin-mark' }, this.wedge, this.casing, this.bar);
  private isPlumb = false;

  update({ pin }: Spot): void {
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
    const bar = this.isPlumb ? plumbLine(ends[0]!, ends[1]!) : barPath(ends);
    setAttribute(this.casing, 'd', bar);
    setAttribute(this.bar, 'd', bar);
  }
}

class LabelView implements ItemView<Spot> {
  private readonly icon = severityIcon('warning');
  private readonly width = html('span');
  readonly element = html('button', { type: 'button', class: 'pin' }, this.icon, this.width);

  constructor(private readonly units: () => Units) {}

  update({ id, pin, width }: Spot): void {
    const figure = figureOf(pin, width, this.units());
    setText(this.width, figure);
    setSeverity(this.icon, pin.severity);
    setAttribute(this.element, 'data-severity', pin.severity);
    setAttribute(this.element, 'data-pin', pin.id);
    setAttribute(this.element, 'data-spot', id);
    setAttribute(this.element, 'data-offset', `${pin.source}`);
    setAttribute(this.element, 'aria-label', `${pin.severity}: ${pin.message} Line ${pin.line}.`);
  }

  /** Worked out and not measured: it may be without its figure just now. */
  size(): Size {
    const figure = this.width.textContent;
    return figure === ''
      ? iconSize
      : { width: Math.ceil(textWidth(figure, fontPx)) + besidePx, height: iconSize.height };
  }

  /** `isShort`: without its figure. */
  moveTo(place: XY | undefined, isShort: boolean): void {
    this.element.classList.toggle('short', isShort);
    this.element.classList.toggle('away', !place);
    if (place) this.element.style.translate = `${Math.round(place[0])}px ${Math.round(place[1])}px`;
  }
}

function endsOf({ pin, points }: Spot, arranged: Arranged, view: Viewport, stage: Size): XY[] {
  const [dx, dy] = (pin.piece === undefined ? undefined : arranged.offsets.get(pin.piece)) ?? [0, 0];
  return points.map(([x, y]) => toScreen(view, stage, [x + dx, y + dy]));
}

/** The two points of an angle are where the tie holds and where the tag balances. */
function hangsOn({ angle, points }: ScenePin): boolean {
  return angle !== undefined && points.length === 2;
}

/** An angle in whole degrees, or a width; nothing where the problem has neither. */
function figureOf({ angle }: ScenePin, width: number | undefined, units: Units): string {
  if (angle !== undefined) return `${Math.round(angle)}°`;
  return width === undefined ? '' : fineText(width, units);
}

/** What the label stands beside. */
function spotOf(pin: ScenePin, ends: readonly XY[]): XY {
  return hangsOn(pin) ? ends[0]! : middleOf(ends);
}

function middleOf(ends: readonly XY[]): XY {
  const sum = ends.reduce(([ax, ay], [x, y]) => [ax + x, ay + y], [0, 0]);
  return [sum[0] / ends.length, sum[1] / ends.length];
}

/** Round a spot that no label may hide, in px. */
const spotPx = 6;

/** A cross on the spot, and the bar or the plumb line. */
function marksOf(pin: ScenePin, ends: readonly XY[], [x, y]: XY): Line[] {
  const cross: Line[] = [
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

/** A bar with a tick across each end, as on a caliper; a dot where there is one point only. */
function barPath(ends: readonly XY[]): string {
  const [a, b] = ends;
  if (!a) return '';
  if (!b) return `M${a[0] - 0.01} ${a[1]}h.02`;
  return caliper(a, b);
}
