/**
 * Caution about what must be known before anything hangs from a tag. It is shown until the user confirms having read
 * it; from then on it is in the menu of exports and behind the “i” of its piece.
 */

import type { PieceLoad } from '../../../src/protocol/preview.ts';
import { byId, setText } from '../../common/dom.ts';

export class Cautions {
  private readonly element = byId('caution');
  private readonly words = this.element.querySelector('span')!;
  private readonly read: Set<string>;
  private text = '';

  /** `read`: cautions that were read on this machine. */
  constructor(read: readonly string[], host: { confirmed(caution: string): void }) {
    this.read = new Set(read);
    this.element.querySelector('button')!.addEventListener('click', () => {
      this.read.add(this.text);
      host.confirmed(this.text);
      this.show(false);
      byId('summary').focus();
    });
  }

  get now(): string {
    return this.text;
  }

  patch(loads: readonly PieceLoad[]): void {
    const [first] = loads;
    // If no strength is known, there is no estimate to mention.
    const isEstimated = loads.some(({ caution, rule }) => caution !== rule);
    this.text = first ? `${isEstimated ? 'Strength is an estimate at best. ' : ''}${first.rule}` : '';
    this.show(first !== undefined && !this.read.has(this.text));
  }

  private show(isShown: boolean): void {
    setText(this.words, this.text);
    this.element.hidden = !isShown;
  }
}
