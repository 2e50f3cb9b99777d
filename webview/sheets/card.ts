/** What is selected, in words, and what can be done with it. */

import type { Units } from '../../src/core/units.ts';
import { byId, html } from '../common/dom.ts';
import type { PieceAt } from './drawing.ts';
import { orderText, pieceSize, placeText } from './words.ts';

export interface CardHost {
  reveal(): void;
  close(): void;
}

export class Card {
  private readonly element = byId('card');

  constructor(private readonly host: CardHost) {}

  show(at: PieceAt | undefined, units: Units): void {
    this.element.hidden = at === undefined;
    if (!at) return;
    const { piece, place } = at;
    const facts = [orderText(piece), pieceSize(piece, units)].filter((text) => text !== '').join(' · ');
    this.element.replaceChildren(
      html('h2', {}, `${piece.number} · ${piece.name}`),
      html('p', {}, facts),
      html('p', { class: 'quiet' }, placeText(piece, place.sheet, units)),
      html(
        'div',
        { class: 'actions' },
        this.button('Show in Text', 'Where this piece comes from (Enter)', () => {
          this.host.reveal();
        }),
        this.button('Close', 'Select nothing (Escape)', () => {
          this.host.close();
        }),
      ),
    );
  }

  private button(text: string, title: string, pressed: () => void): HTMLButtonElement {
    const button = html('button', { type: 'button', title }, text);
    button.addEventListener('click', pressed);
    return button;
  }
}
