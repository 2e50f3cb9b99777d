/** Tooltip with the name, order and size of the piece under the pointer. */

import type { Units } from '../../src/core/units.ts';
import { byId, setText } from '../common/dom.ts';
import type { PieceAt } from './drawing.ts';
import { orderText, pieceSize } from './words.ts';

const besidePx = 14;

export class PieceTip {
  private readonly element = byId('tip');
  private on: string | undefined;

  constructor(
    stage: HTMLElement,
    private readonly find: (id: string) => PieceAt | undefined,
    private readonly units: () => Units,
  ) {
    stage.addEventListener('pointermove', (event) => {
      const id = (event.target as Element).closest<SVGElement>('.piece')?.dataset['piece'];
      this.show(event.buttons === 0 && event.pointerType !== 'touch' ? id : undefined);
      if (this.on !== undefined) this.put(stage, event);
    });
    stage.addEventListener('pointerleave', () => {
      this.show(undefined);
    });
  }

  private show(id: string | undefined): void {
    if (id === this.on) return;
    const at = id === undefined ? undefined : this.find(id);
    this.on = at && id;
    this.element.hidden = at === undefined;
    if (!at) return;
    const order = orderText(at.piece);
    setText(
      this.element,
      [
        `${at.piece.number} · ${at.piece.name}`,
        ...(order === '' ? [] : [order]),
        `${pieceSize(at.piece, this.units())}${at.piece.fixed ? ' · pinned' : ''}`,
      ].join('\n'),
    );
  }

  /** Placed within the stage. */
  private put(stage: HTMLElement, { clientX, clientY }: PointerEvent): void {
    const { left, top, right, bottom } = stage.getBoundingClientRect();
    const { offsetWidth, offsetHeight } = this.element;
    const x = clientX + besidePx + offsetWidth > right ? clientX - besidePx - offsetWidth : clientX + besidePx;
    const y = clientY + besidePx + offsetHeight > bottom ? clientY - besidePx - offsetHeight : clientY + besidePx;
    this.element.style.translate = `${Math.max(0, x - left)}px ${Math.max(0, y - top)}px`;
  }
}
