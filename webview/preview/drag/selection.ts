/** The selection as drawn: its outline, a frame around it, handles for its size, and the lines it snaps to. */

import type { SceneGrip } from '../../../src/protocol/scene.ts';
import type { Arranged } from '../scene/arrange.ts';
import { setAttribute, svg } from '../../common/dom.ts';
import type { DragController } from './drag-controller.ts';
import { ahead, ontoBox, type Axis } from './growth.ts';
import { HeldWords } from './held-words.ts';
import { KeyedList, type ItemView } from '../../common/keyed.ts';
import type { SnapLine } from './snapping.ts';
import {
  joinedBox,
  moved,
  toScreen,
  type Box,
  type Size,
  type Viewport,
  type XY,
} from '../../common/camera/viewport.ts';

/** Half the side of a handle, and the gap between outline and frame, in px. */
const handlePx = 4.5;
const framePx = 5;

interface HeldOutline {
  readonly id: string;
  readonly data: string;
  readonly at: XY;
}

export class Selection {
  /** In mm, among the pieces. */
  readonly world = svg('g', { class: 'selection' });
  /** In px, on top of everything. */
  readonly overlay = svg('g', { class: 'selection-frame' });
  private readonly outlines = new KeyedList<HeldOutline, OutlineView>(this.world, () => new OutlineView());
  private readonly frame = svg('rect', { class: 'frame' });
  /** Keeps the frame visible on dark wood. */
  private readonly casing = svg('rect', { class: 'frame-casing' });
  private readonly guides = svg('path', { class: 'guide' });
  private readonly handles = {
    width: svg('rect', { class: 'handle', 'data-axis': 'width', rx: '1.5' }),
    height: svg('rect', { class: 'handle', 'data-axis': 'height', rx: '1.5' }),
  };
  private grip: SceneGrip | undefined;
  private shown: readonly HeldOutline[] = [];
  private readonly words = new HeldWords();
  private lines: readonly SnapLine[] = [];
  /** Bounds when the change began, and where the hand has them ahead of the drawing. */
  private before: Box | undefined;
  private ahead: Box | undefined;

  constructor() {
    this.overlay.append(
      this.guides,
      this.casing,
      this.frame,
      this.handles.width,
      this.handles.height,
      this.words.element,
    );
  }

  /** A change begins. */
  begin(): void {
    this.before = this.box();
  }

  draw(drag: DragController, arranged: Arranged, hidden: readonly string[]): void {
    const { grip, shift, lines } = drag;
    this.grip = grip;
    this.lines = lines;
    this.shown = grip ? outlinesOf(grip, arranged, hidden, shift) : [];
    this.outlines.patch(this.shown);
    this.lead(drag.growth);
    // Only now, because the text includes the drawn size.
    this.words.set(drag.words ?? grip?.label ?? '');
  }

  /** While its size is changed, the outline is stretched to where the hand is. */
  private lead(growth: DragController['growth']): void {
    const box = this.box();
    this.ahead = growth && box && ahead(growth.axis, this.before ?? box, box, growth.by);
    if (box && this.ahead) setAttribute(this.world, 'transform', ontoBox(box, this.ahead));
    else this.world.removeAttribute('transform');
  }

  /** Size of one of its uses; all have the same. */
  sizeOf(axis: Axis): number | undefined {
    const [first] = this.shown;
    return first && this.outlines.get(first.id)!.element.getBBox()[axis];
  }

  /** Bounds of all of it as drawn, in mm; `undefined` if nothing is selected. */
  box(): Box | undefined {
    const boxes = this.shown.map(({ id, at }): Box => {
      const { x, y, width, height } = this.outlines.get(id)!.element.getBBox();
      return moved([x, y, x + width, y + height], at);
    });
    return boxes.length > 0 ? boxes.reduce(joinedBox) : undefined;
  }

  /** Returns the space that its label takes. */
  follow(view: Viewport, stage: Size): Box[] {
    const box = this.ahead ?? this.box();
    this.overlay.classList.toggle('hidden', !box);
    if (!box) return [];
    const [left, top] = toScreen(view, stage, [box[0], box[1]]);
    const [right, bottom] = toScreen(view, stage, [box[2], box[3]]);
    for (const rect of [this.casing, this.frame]) {
      setRect(rect, left - framePx, top - framePx, right - left + 2 * framePx, bottom - top + 2 * framePx);
    }
    const spots = {
      width: [right + framePx, (top + bottom) / 2],
      height: [(left + right) / 2, bottom + framePx],
    } as const;
    for (const axis of ['width', 'height'] as const) {
      const [x, y] = spots[axis];
      this.handles[axis].classList.toggle('hidden', !this.grip?.axes.includes(axis));
      setRect(this.handles[axis], x - handlePx, y - handlePx, 2 * handlePx, 2 * handlePx);
    }
    // Below the frame, because sizes of hangers are above them.
    const taken = this.words.follow([left - framePx, bottom + framePx + 18], stage);
    const path = this.lines.map(({ along, at }) => {
      const [x, y] = toScreen(view, stage, [at, at]);
      return along === 'x' ? `M${x.toFixed(1)} 0V${stage.height}` : `M0 ${y.toFixed(1)}H${stage.width}`;
    });
    setAttribute(this.guides, 'd', path.join(''));
    return [taken];
  }
}

class OutlineView implements ItemView<HeldOutline> {
  readonly element = svg('path');

  update({ data, at: [x, y] }: HeldOutline): void {
    setAttribute(this.element, 'd', data);
    this.element.style.translate = `${x}px ${y}px`;
  }
}

/** Outlines of its visible parts: holes in a shape move with it and are already in its own outline. */
function outlinesOf(
  { parts }: SceneGrip,
  { order, offsets }: Arranged,
  hidden: readonly string[],
  shift: XY,
): HeldOutline[] {
  return order
    .filter((piece) => !hidden.includes(piece.id))
    .flatMap((piece) => {
      const [dx, dy] = offsets.get(piece.id)!;
      const own = new Set(piece.parts.filter(({ operation }) => operation === 'cut-inner').map(({ id }) => id));
      const all = [...piece.shapes, ...piece.hangers, ...piece.parts, ...piece.areas].filter(({ id }) =>
        parts.includes(id),
      );
      const others = all.filter(({ id }) => !own.has(id));
      return (others.length > 0 ? others : all).map(({ id, data }) => ({
        id,
        data,
        at: [dx + shift[0], dy + shift[1]] as const,
      }));
    });
}

function setRect(rect: SVGRectElement, x: number, y: number, width: number, height: number): void {
  for (const [name, value] of Object.entries({ x, y, width, height })) setAttribute(rect, name, value.toFixed(1));
}
