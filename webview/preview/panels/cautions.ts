/**
 * What must be known before anything hangs by a tag. It stands in the open until someone has said that they have read it, and
 * again whenever files are made; at other times it is behind the “i” of the piece that it is about.
 */

import type { PieceLoad } from '../../../src/protocol/preview.ts';
import { byId, setText } from '../../common/dom.ts';

export class Cautions {
  private readonly element = byId('caution');
  private readonly words = this.element.querySelector('span')!;
  private readonly read: Set<string>;
  private text = '';

  /** `read`: those that were read on this machine. */
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
    // Where no strength is known, there is no estimate to speak of.
    const isEstimated = loads.some(({ caution, rule }) => caution !== rule);
    this.text = first ? `${isEstimated ? 'Strength is an estimate at best. ' : ''}${first.rule}` : '';
    this.show(first !== undefined && !this.read.has(this.text));
  }

  /** Files are being made. */
  remind(): void {
    this.show(this.text !== '');
  }

  private show(isShown: boolean): void {
    setText(this.words, this.text);
    this.element.hidden = !isShown;
  }
}
