/**
 * Dimension lines around each group of pieces and at each hanger, in screen pixels so that they stay crisp at any zoom.
 */

import type { OutcomePiece, SceneWall } from '../../../src/protocol/preview.ts';
import type { SceneHanger, ScenePiece } from '../../../src/protocol/scene.ts';
import type { Arranged } from '../scene/arrange.ts';
import { setAttribute, setText, svg } from '../../common/dom.ts';
import { lengthText, measuredText, sizeText } from '../../../src/core/units.ts';
import { changedText, isSameLength } from '../../common/format.ts';
import type { Units } from '../../../src/core/units.ts';
import { KeyedList, type ItemView } from '../../common/keyed.ts';
import { caliper, pair } from './caliper.ts';
import { sizePlaces } from './size-lines.ts';
import type { PlacedLabel } from './placed-labels.ts';
import type { LabelToPlace } from './label-layout.ts';
import type { LineSegment, SpotLabel } from './label-places.ts';
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

const fontPx = 12;
const chipPx: Size = { width: 10, height: 17 };
/** Shortest dimension line, in px; a shorter one has no room for its number. */
const minSpanPx = 36;

interface Dimension {
  readonly wanted: LabelToPlace;
  readonly text: string;
  /** The bar across a wall. */
  readonly bar?: LineSegment;
  readonly isUpright?: boolean;
}

interface DrawnDimension extends Dimension {
  readonly id: string;
  readonly placed: PlacedLabel;
}

export class Dimensions {
  readonly element = svg('g', { class: 'dimensions' });
  private readonly list = new KeyedList<DrawnDimension>(this.element, () => new DimensionView());
  private walls: readonly SceneWall[] = [];
  private outcome: readonly OutcomePiece[] | undefined;
  private all: readonly Dimension[] = [];

  /** The thinnest wall of each piece. */
  showWalls(walls: readonly SceneWall[]): void {
    this.walls = walls;
  }

  /** Shows sizes as a fix would leave them; `undefined` ends that. */
  showOutcome(pieces: readonly OutcomePiece[] | undefined): void {
    this.outcome = pieces;
  }

  /** Collects the labels: sizes first, then hangers, then walls. */
  lookAt(arranged: Arranged, hidden: readonly string[], units: Units, view: Viewport, stage: Size): void {
    const sizes: Dimension[] = [];
    const hangers: Dimension[] = [];
    const walls: Dimension[] = [];
    for (const group of arranged.groups) {
      const shown = group.pieces.filter((piece) => !hidden.includes(piece.id));
      if (shown.length === 0) continue;
      const after = this.outcome?.filter(({ id }) => shown.some((piece) => piece.id === id)) ?? [];
      const boxes = [arrangedBox(shown, arranged), arrangedBox(after.length > 0 ? after : shown, arranged)] as const;
      sizes.push(...sizeDimensions(group.pieces[0]!.id, boxes, units, view, stage));
      for (const piece of shown) {
        const onScreen = screenOf(piece, arranged, view, stage);
        const wall = this.walls.find((each) => each.piece === piece.id);
        if (wall) walls.push(wallDimension(wall, piece, onScreen, units));
        for (const hanger of piece.hangers) hangers.push(hangerDimension(hanger, piece, onScreen, units, view.scale));
      }
    }
    this.all = [...sizes, ...hangers, ...walls];
  }

  get sizes(): LabelToPlace[] {
    return this.all.flatMap(({ wanted }) => ('places' in wanted ? [wanted] : []));
  }

  get figures(): LabelToPlace[] {
    return this.all.flatMap(({ wanted }) => ('places' in wanted ? [] : [wanted]));
  }

  get bars(): LineSegment[] {
    return this.all.flatMap(({ bar }) => (bar ? [bar] : []));
  }

  draw(placed: ReadonlyMap<string, PlacedLabel>): void {
    this.list.patch(
      this.all.flatMap((dimension) => {
        const { id } = dimension.wanted;
        const place = placed.get(id);
        return place ? [{ ...dimension, id, placed: place }] : [];
      }),
    );
  }
}

function arrangedBox(pieces: readonly Pick<ScenePiece, 'id' | 'bounds'>[], arranged: Arranged): Box {
  return pieces.map(({ id, bounds }) => moved(bounds, arranged.offsets.get(id)!)).reduce(joinedBox);
}

/** Size of the first box; and of the second, the outcome being shown, if it differs. */
function sizeDimensions(
  id: string,
  [box, after]: readonly [Box, Box],
  units: Units,
  view: Viewport,
  stage: Size,
): Dimension[] {
  const [left, top] = toScreen(view, stage, [box[0], box[1]]).map(crisp) as [number, number];
  const [right, bottom] = toScreen(view, stage, [box[2], box[3]]).map(crisp) as [number, number];
  const found: Dimension[] = [];
  for (const axis of ['width', 'height'] as const) {
    const isUpright = axis === 'height';
    const span = isUpright ? bottom - top : right - left;
    if (span < minSpanPx) continue;
    const [now, then] = [box, after].map((each) => (isUpright ? each[3] - each[1] : each[2] - each[0])) as [
      number,
      number,
    ];
    const text = isSameLength(now, then, units) ? lengthText(now, units) : changedText(now, then, units);
    const { width, height } = chipOf(text);
    const size = isUpright ? { width: height, height: width } : { width, height };
    const places = sizePlaces(axis, [left, top, right, bottom], stage, size);
    found.push({ wanted: { id: `${id}/${axis}`, size, places }, text, isUpright });
  }
  return found;
}

/** Inner width of a hanger's opening. */
function hangerDimension(
  hanger: SceneHanger,
  piece: ScenePiece,
  onScreen: (point: XY) => XY,
  units: Units,
  scale: number,
): Dimension {
  const text =
    hanger.length > hanger.size ? sizeText(hanger.length, hanger.size, units) : `⌀ ${lengthText(hanger.size, units)}`;
  const from = (hanger.size / 2) * scale;
  return { wanted: spotLabel(hanger.id, text, onScreen(hanger.centre), from, piece, onScreen), text };
}

/** A bar across the wall, like a caliper. */
function wallDimension(
  { points, width }: SceneWall,
  piece: ScenePiece,
  onScreen: (point: XY) => XY,
  units: Units,
): Dimension {
  const [a, b] = [onScreen(points[0]), onScreen(points[1])];
  const middle: XY = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const text = `thinnest ${measuredText(width, units)}`;
  return { wanted: spotLabel(`${piece.id}/wall`, text, middle, 0, piece, onScreen), text, bar: [a, b] };
}

/** A label whose leader points away from the piece's centre. */
function spotLabel(
  id: string,
  text: string,
  at: XY,
  from: number,
  { bounds: [minX, minY, maxX, maxY] }: ScenePiece,
  onScreen: (point: XY) => XY,
): SpotLabel {
  const centre = onScreen([(minX + maxX) / 2, (minY + maxY) / 2]);
  const outwards = Math.atan2(at[1] - centre[1], at[0] - centre[0]);
  return { id, size: chipOf(text), at, from, outwards, isVital: false };
}

function screenOf({ id }: ScenePiece, { offsets }: Arranged, view: Viewport, stage: Size): (point: XY) => XY {
  const [dx, dy] = offsets.get(id)!;
  return ([x, y]) => toScreen(view, stage, [x + dx, y + dy]);
}

function chipOf(text: string): Size {
  return { width: Math.ceil(textWidth(text, fontPx)) + chipPx.width, height: chipPx.height };
}

class DimensionView implements ItemView<DrawnDimension> {
  private readonly casing = svg('path', { class: 'casing' });
  private readonly line = svg('path');
  private readonly chip = svg('rect', { class: 'figure-chip', rx: '3' });
  private readonly text = svg('text', { 'dominant-baseline': 'central', 'text-anchor': 'middle' });
  readonly element = svg('g', { class: 'dimension' }, this.casing, this.line, this.chip, this.text);

  update({ wanted, text, bar, isUpright, placed }: DrawnDimension): void {
    const isSize = 'places' in wanted;
    const lines = placed.lines.map(([a, b], index) => (isSize && index === 0 ? arrow(a, b) : `M${pair(a)}L${pair(b)}`));
    const data = lines.join('') + (bar ? caliper(...bar) : '');
    for (const path of [this.casing, this.line]) setAttribute(path, 'd', data);
    const [left, top, right, bottom] = placed.box;
    for (const [name, value] of Object.entries({ x: left, y: top, width: right - left, height: bottom - top })) {
      setAttribute(this.chip, name, value.toFixed(1));
    }
    this.element.classList.toggle('on-material', placed.isOnMaterial);
    setAttribute(this.element, 'data-dimension', wanted.id);
    setText(this.text, text);
    const middle = pair([(left + right) / 2, (top + bottom) / 2]);
    setAttribute(this.text, 'transform', `translate(${middle}) rotate(${isUpright ? -90 : 0})`);
  }
}

const arrowPx = 5;

/** A line with an arrowhead at either end. */
function arrow(a: XY, b: XY): string {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [ux, uy] = [((b[0] - a[0]) / length) * arrowPx, ((b[1] - a[1]) / length) * arrowPx];
  const [nx, ny] = [-uy * 0.6, ux * 0.6];
  const head = ([x, y]: XY, way: 1 | -1): string =>
    `M${pair([x + way * ux + nx, y + way * uy + ny])}L${pair([x, y])}L${pair([x + way * ux - nx, y + way * uy - ny])}`;
  return `M${pair(a)}L${pair(b)}${head(a, 1)}${head(b, -1)}`;
}

/** Rounds to the middle of a pixel, where a hairline is one pixel wide. */
function crisp(px: number): number {
  return Math.round(px) + 0.5;
}
