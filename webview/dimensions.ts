/** Dimension lines round each group of pieces and at each hanger, in screen pixels so that they stay crisp at any zoom. */

import type { SceneHanger, ScenePiece, SceneWall } from '../src/preview/protocol.ts';
import type { Arranged } from './arrange.ts';
import { setAttribute, setText, svg } from './dom.ts';
import { crossText, fineText, lengthText, type Units } from './format.ts';
import { KeyedList, type ItemView } from './keyed.ts';
import { caliper } from './caliper.ts';
import { rulerPx } from './rulers.ts';
import { joined, moved, toScreen, type Box, type Size, type Viewport, type XY } from './viewport.ts';

/** Distance of the dimension line from what it measures. */
const offsetPx = 20;
const arrowPx = 5;
/** How far a hanger's figure is from its opening. */
const leaderPx = 30;
/** About the width of a figure's character. */
const charPx = 6.8;
/** Below this a figure would not find room beside its line. */
const minSpanPx = 36;

interface Dimension {
  readonly id: string;
  readonly line: string;
  readonly text: string;
  readonly at: XY;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Degrees. */
  readonly turn: number;
}

export class Dimensions {
  readonly element = svg('g', { class: 'dimensions' });
  private readonly list = new KeyedList<Dimension>(this.element, () => new DimensionView());

  private walls: readonly SceneWall[] = [];

  /** The thinnest wall of each piece. */
  showWalls(walls: readonly SceneWall[]): void {
    this.walls = walls;
  }

  /** Draws them and returns the room they take. */
  follow(arranged: Arranged, hidden: readonly string[], units: Units, view: Viewport, stage: Size): Box[] {
    const all: Dimension[] = [];
    for (const group of arranged.groups) {
      const shown = group.pieces.filter((piece) => !hidden.includes(piece.id));
      if (shown.length === 0) continue;
      all.push(...sizeDimensions(group.pieces[0]!.id, boxOf(shown, arranged), units, view, stage));
      for (const piece of shown) {
        const wall = this.walls.find((each) => each.piece === piece.id);
        if (wall) all.push(wallDimension(wall, piece, arranged, units, view, stage));
        for (const hanger of piece.hangers) all.push(hangerDimension(hanger, piece, arranged, units, view, stage));
      }
    }
    this.list.patch(all);
    return all.map(roomOf);
  }
}

function boxOf(pieces: readonly ScenePiece[], arranged: Arranged): Box {
  return pieces.map(({ id, bounds }) => moved(bounds, arranged.offsets.get(id)!)).reduce(joined);
}

function sizeDimensions(id: string, box: Box, units: Units, view: Viewport, stage: Size): Dimension[] {
  const [left, top] = toScreen(view, stage, [box[0], box[1]]).map(crisp) as [number, number];
  const [right, bottom] = toScreen(view, stage, [box[2], box[3]]).map(crisp) as [number, number];
  const y = bottom + offsetPx;
  const x = right + offsetPx;
  const found: Dimension[] = [];
  const widthText = lengthText(box[2] - box[0], units);
  const heightText = lengthText(box[3] - box[1], units);
  if (right - left >= minSpanPx) {
    const [gapStart, gapEnd] = gap(left, right, widthText);
    found.push({
      id: `${id}/width`,
      line:
        `M${left} ${bottom + 5}V${y + 5}M${right} ${bottom + 5}V${y + 5}M${left} ${y}H${gapStart}M${gapEnd} ${y}H${right}` +
        `M${left + arrowPx} ${y - 3}L${left} ${y}l${arrowPx} 3M${right - arrowPx} ${y - 3}L${right} ${y}l${-arrowPx} 3`,
      text: widthText,
      at: [(left + right) / 2, y],
      anchor: 'middle',
      turn: 0,
    });
  }
  if (bottom - top >= minSpanPx) {
    const [gapStart, gapEnd] = gap(top, bottom, heightText);
    found.push({
      id: `${id}/height`,
      line:
        `M${right + 5} ${top}H${x + 5}M${right + 5} ${bottom}H${x + 5}M${x} ${top}V${gapStart}M${x} ${gapEnd}V${bottom}` +
        `M${x - 3} ${top + arrowPx}L${x} ${top}l3 ${arrowPx}M${x - 3} ${bottom - arrowPx}L${x} ${bottom}l3 ${-arrowPx}`,
      text: heightText,
      at: [x, (top + bottom) / 2],
      anchor: 'middle',
      turn: -90,
    });
  }
  return found;
}

/** Where the line stops for its figure; where there is hardly a line left, all of it is gap. */
function gap(from: number, to: number, text: string): [number, number] {
  const half = Math.min((text.length * charPx) / 2 + 4, (to - from) / 2);
  return [(from + to) / 2 - half, (from + to) / 2 + half];
}

/** The inner width of what the tie goes through, on a leader that points away from the piece's middle. */
function hangerDimension(
  hanger: SceneHanger,
  piece: ScenePiece,
  arranged: Arranged,
  units: Units,
  view: Viewport,
  stage: Size,
): Dimension {
  const [dx, dy] = arranged.offsets.get(piece.id)!;
  const [minX, minY, maxX, maxY] = piece.bounds;
  const [x, y] = toScreen(view, stage, [hanger.centre[0] + dx, hanger.centre[1] + dy]);
  const text =
    hanger.kind === 'slot' ? crossText(hanger.length, hanger.size, units) : `⌀ ${lengthText(hanger.size, units)}`;
  const radius = (hanger.size / 2) * view.scale;
  const fromSide = Math.min(hanger.centre[0] - minX, maxX - hanger.centre[0]);
  const fromEnd = Math.min(hanger.centre[1] - minY, maxY - hanger.centre[1]);
  if (fromSide < fromEnd) {
    // At the left or right the figure stands above: beside it there is seldom room in the panel.
    const up = y - radius - leaderPx;
    return {
      id: hanger.id,
      line: `M${x.toFixed(1)} ${(y - radius).toFixed(1)}V${(up + 9).toFixed(1)}`,
      text,
      at: [x, up],
      anchor: 'middle',
      turn: 0,
    };
  }
  const outwards = hanger.centre[0] <= (minX + maxX) / 2 ? -1 : 1;
  const knee = x + outwards * (radius + leaderPx) * Math.SQRT1_2;
  const side = sideInSight(knee, outwards, text, stage);
  // Leaves the opening at 45° and ends in a short flat stretch under the figure.
  const reach = radius + leaderPx;
  const [startX, startY] = [x + side * radius * Math.SQRT1_2, y - radius * Math.SQRT1_2];
  const [kneeX, kneeY] = [x + side * reach * Math.SQRT1_2, y - reach * Math.SQRT1_2];
  return {
    id: hanger.id,
    line: `M${startX.toFixed(1)} ${startY.toFixed(1)}L${kneeX.toFixed(1)} ${kneeY.toFixed(1)}h${side * 6}`,
    text,
    at: [kneeX + side * 9, kneeY],
    anchor: side < 0 ? 'end' : 'start',
    turn: 0,
  };
}

/** The side on which a figure stands: the one wanted, unless it would be cut off there by the ruler or the edge of the stage. */
function sideInSight(x: number, wanted: -1 | 1, text: string, stage: Size): -1 | 1 {
  const end = x + wanted * (9 + text.length * charPx);
  return end < rulerPx || end > stage.width ? (-wanted as -1 | 1) : wanted;
}

/** A bar across the wall, as a caliper has it, and its figure on a leader away from the piece's middle. */
function wallDimension(
  { points, width }: SceneWall,
  { id, bounds }: ScenePiece,
  { offsets }: Arranged,
  units: Units,
  view: Viewport,
  stage: Size,
): Dimension {
  const [dx, dy] = offsets.get(id)!;
  const onScreen = ([x, y]: XY): XY => toScreen(view, stage, [x + dx, y + dy]);
  const [a, b] = [onScreen(points[0]), onScreen(points[1])];
  const middle: XY = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const centre = onScreen([(bounds[0] + bounds[2]) / 2, (bounds[1] + bounds[3]) / 2]);
  const away = Math.hypot(middle[0] - centre[0], middle[1] - centre[1]) || 1;
  const [x, y] = [
    middle[0] + ((middle[0] - centre[0]) / away) * leaderPx,
    middle[1] + ((middle[1] - centre[1]) / away) * leaderPx,
  ];
  const text = `thinnest ${fineText(width, units)}`;
  const side = sideInSight(x, x < centre[0] ? -1 : 1, text, stage);
  const px = (point: XY): string => `${point[0].toFixed(1)} ${point[1].toFixed(1)}`;
  return {
    id: `${id}/wall`,
    line: `M${px(middle)}L${px([x, y])}h${side * 5}${caliper(a, b)}`,
    text,
    at: [x + side * 8, y],
    anchor: side < 0 ? 'end' : 'start',
    turn: 0,
  };
}

class DimensionView implements ItemView<Dimension> {
  private readonly casing = svg('path', { class: 'casing' });
  private readonly line = svg('path');
  private readonly text = svg('text', { 'dominant-baseline': 'central' });
  readonly element = svg('g', { class: 'dimension' }, this.casing, this.line, this.text);

  update({ line, text, at: [x, y], anchor, turn }: Dimension): void {
    for (const path of [this.casing, this.line]) setAttribute(path, 'd', line);
    setText(this.text, text);
    setAttribute(this.text, 'text-anchor', anchor);
    setAttribute(this.text, 'transform', `translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${turn})`);
  }
}

/** About what the figure covers; labels of warnings keep clear of it. */
function roomOf({ text, at: [x, y], anchor, turn }: Dimension): Box {
  const length = text.length * charPx;
  if (turn !== 0) return [x - 8, y - length / 2, x + 8, y + length / 2];
  const left = anchor === 'middle' ? x - length / 2 : anchor === 'end' ? x - length : x;
  return [left, y - 8, left + length, y + 8];
}

/** To the middle of a pixel, where a hairline is one pixel wide. */
function crisp(px: number): number {
  return Math.round(px) + 0.5;
}
