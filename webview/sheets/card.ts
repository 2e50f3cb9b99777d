/** Card with a description of the selected piece and its actions. */

import type { Units } from '../../src/core/units.ts';
import { button, byId, html, setText } from '../common/dom.ts';
import type { PieceAt } from './drawing.ts';
import { orderText, pieceSize, placeText } from './words.ts';

export interface CardHost {
  /** Whether pieces may be pinned. */
  pins(): boolean;
  /** Why they may not; absent if they may. */
  whyNot(): string | undefined;
  pin(): void;
  turn(): void;
  reveal(): void;
  close(): void;
}

export class Card {
  private readonly element = byId('card');
  private readonly facts = html('p', {});
  private readonly place = html('p', { class: 'quiet' });

  /** Height in px that it takes at the edge of the page, also while it is hidden. */
  height = 0;

  constructor(private readonly host: CardHost) {}

  /** Finds its height, as if it told of the piece. */
  measure(at: PieceAt | undefined, units: Units): void {
    const { hidden, style } = this.element;
    if (hidden) {
      style.visibility = 'hidden';
      this.show(at, units);
    }
    this.height = this.element.hidden ? 0 : this.element.offsetHeight + this.element.offsetLeft;
    if (hidden) this.show(undefined, units);
    style.visibility = '';
  }

  /** Puts it at the bottom, or at the top where it would lie on what is below `bottom`, in px. */
  keepOff(bottom: number): void {
    this.element.classList.toggle('above', bottom > this.element.parentElement!.clientHeight - this.height);
  }

  show(at: PieceAt | undefined, units: Units): void {
    this.element.hidden = at === undefined;
    if (!at) return;
    const { piece } = at;
    this.move(at, units);
    const whyNot = this.host.whyNot();
    this.element.replaceChildren(
      html('h2', {}, `${piece.number} · ${piece.name}`),
      this.facts,
      this.place,
      ...(whyNot === undefined ? [] : [html('p', { class: 'instead' }, whyNot)]),
      html(
        'div',
        { class: 'actions' },
        ...(this.host.pins()
          ? [
              button(piece.fixed ? 'Unpin' : 'Pin Here', pinTitle(piece.fixed), () => {
                this.host.pin();
              }),
              button('Turn', 'A quarter turn counter-clockwise (R)', () => {
                this.host.turn();
              }),
            ]
          : []),
        button('Show in Text', 'Where this piece comes from (Enter)', () => {
          this.host.reveal();
        }),
        button('Close', 'Select nothing (Escape)', () => {
          this.host.close();
        }),
      ),
    );
  }

  /** Its size and its place, while it is in the hand. */
  move({ piece, place }: Pick<PieceAt, 'piece' | 'place'>, units: Units): void {
    setText(this.facts, [orderText(piece), pieceSize(piece, units)].filter((text) => text !== '').join(' · '));
    setText(this.place, placeText(piece, place.sheet, units));
  }
}

function pinTitle(isPinned: boolean): string {
  return isPinned
    ? 'Lay it out like the others again (P)'
    : 'Others go round it from now on; drag it, or use the arrow keys, to have it elsewhere (P)';
}
