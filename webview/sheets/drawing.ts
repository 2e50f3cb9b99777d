/** Draws sheets into the page's SVG and patches them: elements live as long as their ids. */

import type { PieceOnSheet, SheetShape, SheetsScene } from '../../src/protocol/sheets.ts';
import type { Units } from '../../src/core/units.ts';
import type { Box } from '../common/camera/viewport.ts';
import { setAttribute, setText, svg } from '../common/dom.ts';
import { KeyedList } from '../common/keyed.ts';
import type { ItemView } from '../common/keyed.ts';
import type { Draft } from './draft.ts';
import { arranged } from './arrange.ts';
import type { ArrangedSheets, SheetPlace } from './arrange.ts';
import { captionOf, lineHeight } from './captions.ts';
import type { Caption, CaptionLetters } from './captions.ts';
import { sheetText, spokenPiece } from './words.ts';

export interface PieceAt {
  readonly piece: PieceOnSheet;
  readonly place: SheetPlace;
}

interface PieceItem extends PieceAt {
  readonly id: string;
  readonly shape: SheetShape;
  readonly units: Units;
}

interface SheetItem {
  readonly id: string;
  readonly place: SheetPlace;
  readonly units: Units;
  readonly shapes: ReadonlyMap<string, SheetShape>;
}

/** Largest letters of a caption, in px of the screen: from near they need not grow any more. */
const mostLetters: CaptionLetters = { facts: 15, name: 19 };

export class SheetsDrawing {
  private readonly shapes = new Map<string, SheetShape>();
  private readonly defs = svg('defs');
  private readonly all = svg('g');
  private readonly marks = svg('g', { class: 'marks', 'aria-hidden': 'true' });
  private readonly list = new KeyedList<SheetItem, SheetView>(this.all, () => new SheetView());
  private pieces = new Map<string, PieceAt>();
  private highlighted: readonly string[] = [];
  private selected: string | undefined;
  private draft: Draft | undefined;
  private units: Units = 'mm';
  private scale = 1;
  arranged: ArrangedSheets = arranged([], 'mm');

  constructor(private readonly element: SVGElement) {
    element.append(this.defs, this.all, this.marks);
  }

  addShapes(shapes: readonly SheetShape[]): void {
    for (const shape of shapes) {
      this.shapes.set(shape.id, shape);
      this.defs.append(shapeElement(shape));
    }
  }

  draw({ sheets, units }: SheetsScene): void {
    this.arranged = arranged(sheets, units);
    const { places } = this.arranged;
    this.units = units;
    this.pieces = new Map(
      places.flatMap((place) => place.sheet.pieces.map((piece) => [piece.id, { piece, place }] as const)),
    );
    const { shapes } = this;
    this.list.patch(places.map((place) => ({ id: place.sheet.id, place, units, shapes })));
    this.caption();
    this.forget();
    this.mark();
  }

  /** Writes what can be read at the scale, in px for each mm. */
  seenAt(scale: number): void {
    if (scale === this.scale) return;
    this.scale = scale;
    this.caption();
  }

  get(id: string): PieceAt | undefined {
    return this.pieces.get(id);
  }

  /** In reading order. */
  get ids(): readonly string[] {
    return [...this.pieces.keys()];
  }

  shapeOf({ piece }: PieceAt): SheetShape {
    return this.shapes.get(piece.shape)!;
  }

  /** Bounds of a piece as drawn. */
  boxOf({ piece: { box }, place: { x, y } }: PieceAt): Box {
    return [box[0] + x, box[1] + y, box[2] + x, box[3] + y];
  }

  /** Highlights what is at the editor's cursor. */
  light(ids: readonly string[]): void {
    this.highlighted = ids;
    this.mark();
  }

  /** Returns the id of the piece's element, for assistive technology. */
  select(id: string | undefined): string | undefined {
    this.selected = id;
    this.mark();
    return this.elementOf(id)?.id;
  }

  /** Shows a piece at its draft place; its own place is pale meanwhile. */
  hold(draft: Draft | undefined): void {
    const isOther = draft?.piece.id !== this.draft?.piece.id;
    if (isOther) this.elementOf(this.draft?.piece.id)?.classList.remove('lifted');
    this.draft = draft;
    if (isOther) {
      this.elementOf(draft?.piece.id)?.classList.add('lifted');
      this.mark();
    } else if (draft) {
      const transform = transformIn({ piece: { ...draft.piece, matrix: draft.matrix }, place: draft.place });
      for (const element of this.marks.querySelectorAll('.held, .selected'))
        setAttribute(element, 'transform', transform);
    }
  }

  elementOf(id: string | undefined): SVGGElement | undefined {
    const at = id === undefined ? undefined : this.pieces.get(id);
    return at && this.list.get(at.place.sheet.id)?.elementOf(at.piece.id);
  }

  private caption(): void {
    const { places, widest: width, letters: most } = this.arranged;
    const sized = (of: keyof CaptionLetters) => Math.min(most[of], mostLetters[of] / this.scale);
    const letters: CaptionLetters = { facts: sized('facts'), name: sized('name') };
    const sheets = places.map(({ sheet }) => sheet);
    for (const [index, place] of places.entries()) {
      const caption = captionOf(sheets, index, { letters, width, room: place.above, units: this.units });
      this.list.get(place.sheet.id)?.write(place, caption, letters);
    }
  }

  /** Outlines are drawn above everything, so that no neighbour hides them. */
  private mark(): void {
    const { draft } = this;
    const outline = (id: string, look: string): Element[] => {
      const known = this.pieces.get(id);
      if (!known) return [];
      const at =
        draft?.piece.id === id ? { piece: { ...known.piece, matrix: draft.matrix }, place: draft.place } : known;
      const { solid } = this.shapeOf(at);
      return ['casing', 'line'].map((part) =>
        svg('path', { class: `${look} ${part}`, d: solid, transform: transformIn(at) }),
      );
    };
    const { selected } = this;
    const held = draft && this.pieces.has(draft.piece.id) ? [heldPiece(draft)] : [];
    this.marks.replaceChildren(
      ...held,
      ...this.highlighted.flatMap((id) => (id === selected ? [] : outline(id, 'lit'))),
      ...(selected === undefined ? [] : outline(selected, 'selected')),
    );
    for (const element of this.element.querySelectorAll('[aria-selected="true"]'))
      element.setAttribute('aria-selected', 'false');
    this.elementOf(selected)?.setAttribute('aria-selected', 'true');
  }

  /** Marks shapes that are on no sheet any more, because the spec changes while it is being written. */
  private forget(): void {
    const used = new Set([...this.pieces.values()].map(({ piece }) => piece.shape));
    for (const child of [...this.defs.children])
      if (!used.has(child.id.slice(shapePrefix.length))) child.classList.add('unused');
  }
}

const shapePrefix = 'shape-';

function shapeElement({ id, solid, engraved, scored, wood, burn, rim }: SheetShape): Element {
  const body = svg('path', { d: solid, fill: wood, 'fill-rule': 'evenodd', class: 'solid' });
  body.style.setProperty('--rim', rim);
  return svg(
    'g',
    { id: `${shapePrefix}${id}` },
    body,
    ...(engraved === '' ? [] : [svg('path', { d: engraved, fill: burn, 'fill-rule': 'evenodd' })]),
    ...(scored === '' ? [] : [svg('path', { d: scored, fill: 'none', stroke: burn, class: 'scored' })]),
  );
}

function heldPiece({ piece, place, matrix }: Draft): Element {
  const transform = transformIn({ piece: { ...piece, matrix }, place });
  return svg('use', { class: 'held', href: `#${shapePrefix}${piece.shape}`, transform });
}

/** Transform from the shape to the page. */
export function transformIn({ piece: { matrix }, place: { x, y } }: PieceAt): string {
  const [a, b, c, d, e, f] = matrix;
  return `matrix(${[a, b, c, d, e + x, f + y].map((value) => Number(value.toFixed(5))).join(' ')})`;
}

class SheetView implements ItemView<SheetItem> {
  private readonly caption = svg('text', { class: 'caption' });
  private readonly outline = svg('path', { class: 'sheet' });
  private readonly free = svg('rect', { class: 'free' });
  private readonly all = svg('g');
  private readonly list = new KeyedList<PieceItem, SheetPieceView>(this.all, () => new SheetPieceView());
  readonly element = svg('g', { role: 'group' }, this.caption, this.outline, this.free, this.all);

  update({ place, units, shapes }: SheetItem): void {
    const { sheet, x, y } = place;
    setAttribute(this.element, 'aria-label', sheetText(sheet, units));
    setAttribute(this.element, 'data-sheet', sheet.id);
    setAttribute(this.outline, 'd', sheet.outline);
    setAttribute(this.outline, 'transform', `translate(${x} ${y})`);
    const { margin, width, height } = sheet;
    const free = { x: x + margin, y: y + margin, width: width - 2 * margin, height: height - 2 * margin };
    for (const [name, value] of Object.entries(free)) setAttribute(this.free, name, `${value}`);
    this.free.classList.toggle('none', margin === 0);
    this.list.patch(
      sheet.pieces.map((piece) => ({ id: piece.id, piece, place, units, shape: shapes.get(piece.shape)! })),
    );
  }

  elementOf(id: string): SVGGElement | undefined {
    return this.list.get(id)?.element;
  }

  write({ x, y }: SheetPlace, { name, facts }: Caption, letters: CaptionLetters): void {
    const line = (text: string, look: string, at: number, size: number): Element => {
      const tspan = svg('tspan', { class: look, x: `${x}`, y: `${at}`, 'font-size': `${size}` });
      setText(tspan, text);
      return tspan;
    };
    this.caption.replaceChildren(
      line(name, 'name', y - lineHeight(letters, facts.length), letters.name),
      ...facts.map((text, index) =>
        line(text, 'facts', y - lineHeight(letters, facts.length - index - 1), letters.facts),
      ),
    );
  }
}

let count = 0;

class SheetPieceView implements ItemView<PieceItem> {
  private readonly use = svg('use');
  private readonly ground = svg('rect', { class: 'ground' });
  private readonly number = svg('text', { class: 'number' });
  private readonly pin = svg('path', { class: 'pin', d: pinPath });
  readonly element = svg('g', { id: `piece-${++count}`, role: 'option', 'aria-selected': 'false', class: 'piece' });

  constructor() {
    this.element.append(this.use, this.ground, this.number);
  }

  update({ piece, place, shape, units }: PieceItem): void {
    setAttribute(this.element, 'data-piece', piece.id);
    setAttribute(this.element, 'aria-label', spokenPiece(piece, units));
    setAttribute(this.use, 'href', `#${shapePrefix}${shape.id}`);
    setAttribute(this.use, 'transform', transformIn({ piece, place }));
    this.element.classList.toggle('faulty', piece.faulty);
    const { text, box, size } = piece.sign;
    const [left, top] = [box[0] + place.x, box[1] + place.y];
    const [wide, high] = [box[2] - box[0], box[3] - box[1]];
    setText(this.number, text);
    for (const [name, value] of Object.entries({ x: left, y: top, width: wide, height: high, rx: 0.25 * size }))
      setAttribute(this.ground, name, value.toFixed(3));
    for (const [name, value] of Object.entries({ x: left + wide / 2, y: top + 0.8 * high, 'font-size': size }))
      setAttribute(this.number, name, value.toFixed(3));
    if (piece.fixed) {
      const at = `translate(${(left + wide).toFixed(3)} ${top.toFixed(3)}) scale(${(size / 10).toFixed(4)})`;
      setAttribute(this.pin, 'transform', at);
      this.element.append(this.pin);
    } else this.pin.remove();
  }
}

/** A pin seen from the side, with its point at the origin, ten units high. */
const pinPath = 'M0 0 2.2-5H.8L.5-8.6 2-9.6V-10.6H-2.4V-9.6L-.9-8.6-.6-5H-2.2z';
