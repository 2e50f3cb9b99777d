/**
 * List of pieces, one row each: visibility, size, and its parts as buttons, so that each can be reached by keyboard.
 */

import type { PieceLoad } from '../../../src/protocol/preview.ts';
import type { Scene, ScenePart, ScenePiece, SceneShape } from '../../../src/protocol/scene.ts';
import { html, setAttribute, setText } from '../../common/dom.ts';
import { partsText, bothSizes } from '../../common/format.ts';
import type { Units } from '../../../src/core/units.ts';
import { aboutIcon, eyeIcon, swatch } from '../../common/icons.ts';
import { KeyedList, type ItemView } from '../../common/keyed.ts';
import { roving } from '../../common/roving.ts';
import type { Layer } from '../state.ts';

interface Row {
  readonly id: string;
  readonly piece: ScenePiece;
  readonly hidden: boolean;
  /** The only piece: its size and counts are those of the whole, which the summary line shows. */
  readonly alone: boolean;
  readonly units: Units;
  readonly load: PieceLoad | undefined;
}

export class PiecesList {
  private readonly rows: KeyedList<Row>;
  private shown: readonly Omit<Row, 'load'>[] = [];
  private loads: readonly PieceLoad[] = [];

  constructor(list: HTMLElement, toggle: (id: string) => void) {
    this.rows = new KeyedList<Row>(list, () => new RowView(toggle));
    roving(list);
  }

  patch(scene: Scene | undefined, hidden: readonly string[]): void {
    const pieces = scene?.pieces ?? [];
    this.shown = pieces.map((piece) => {
      const alone = pieces.length === 1;
      return { id: piece.id, piece, hidden: hidden.includes(piece.id), alone, units: scene!.units };
    });
    this.patchRows();
  }

  /** Loads arrive after their drawing, and stay until others come. */
  showLoads(loads: readonly PieceLoad[]): void {
    this.loads = loads;
    this.patchRows();
  }

  private patchRows(): void {
    this.rows.patch(this.shown.map((row) => ({ ...row, load: this.loads.find(({ piece }) => piece === row.id) })));
  }
}

class RowView implements ItemView<Row> {
  private readonly eye = html('button', { type: 'button', class: 'toggle' }, eyeIcon());
  private readonly name = html('button', { type: 'button', class: 'name' });
  private readonly size = html('span', { class: 'size' });
  private readonly count = html('span', { class: 'count' });
  private readonly load = new LoadView();
  private readonly parts = html('div', { class: 'parts' });
  private readonly partList = new KeyedList<SceneShape | ScenePart>(this.parts, () => new PartButton());
  readonly element = html(
    'li',
    {},
    this.eye,
    html(
      'div',
      { class: 'about' },
      html('div', { class: 'line' }, this.name, this.size, this.count),
      this.parts,
      this.load.element,
    ),
  );

  constructor(toggle: (id: string) => void) {
    this.eye.addEventListener('click', () => {
      toggle(this.eye.dataset['piece']!);
    });
  }

  update({ piece, hidden, alone, units, load }: Row): void {
    this.load.update(load);
    this.element.classList.toggle('is-hidden', hidden);
    setAttribute(this.eye, 'data-piece', piece.id);
    setAttribute(this.eye, 'aria-pressed', `${!hidden}`);
    setAttribute(this.eye, 'aria-label', `Show ${piece.title}`);
    setAttribute(this.eye, 'title', hidden ? 'Show this piece' : 'Hide this piece');
    setText(this.name, piece.title);
    setAttribute(this.name, 'data-offset', `${piece.source}`);
    setAttribute(this.name, 'data-heats', piece.id);
    setText(this.size, alone ? '' : bothSizes(piece.width, piece.height, units));
    setText(this.count, alone ? '' : partsText(piece));
    this.partList.patch([...piece.shapes, ...piece.parts]);
  }
}

/** Load of a piece; the caution and the derivation are behind the “i”. */
class LoadView {
  private readonly headline = html('span');
  private readonly lines = html('ul');
  private readonly caution = html('p', { class: 'caution' });
  readonly element = html(
    'details',
    { class: 'load' },
    html('summary', { title: 'What this is based on, and what it leaves out' }, this.headline, ' ', aboutIcon()),
    this.caution,
    this.lines,
  );

  update(load: PieceLoad | undefined): void {
    this.element.hidden = !load;
    if (!load) return;
    setText(this.headline, load.headline);
    setText(this.caution, load.caution);
    if (this.lines.textContent !== load.lines.join('')) {
      this.lines.replaceChildren(...load.lines.map((line) => html('li', {}, line)));
    }
  }
}

class PartButton implements ItemView<SceneShape | ScenePart> {
  private readonly label = html('span');
  readonly element = html('button', { type: 'button', class: 'part-name' }, this.label);

  update(part: SceneShape | ScenePart): void {
    // A shape is not a path of the beam; it stands for the material.
    const layer: Layer = 'operation' in part ? part.operation : 'finish';
    if (this.element.dataset['swatch'] !== layer) {
      this.element.dataset['swatch'] = layer;
      this.element.replaceChildren(swatch(layer), this.label);
    }
    setText(this.label, part.label);
    setAttribute(this.element, 'data-offset', `${part.source}`);
    setAttribute(this.element, 'data-heats', part.id);
  }
}
