/** Message in place of a spec that is gone, with a button to show one that is open. */

import type { GoneMessage } from '../../../src/protocol/preview.ts';
import { byId, setText } from '../../common/dom.ts';

export class GoneNotice {
  private readonly element = byId('gone');
  private readonly text = this.element.querySelector('p')!;
  private readonly button = this.element.querySelector('button')!;

  constructor(showOther: () => void) {
    this.button.addEventListener('click', showOther);
  }

  /** Hides everything else on the page and makes it unreachable. */
  show({ source, fileName, other }: GoneMessage): string {
    const what = source.startsWith('untitled:') ? 'was closed without being saved' : 'is no longer there';
    const text = `${fileName} ${what}, so there is nothing left to draw.`;
    setText(this.text, text);
    setText(this.button, `Show ${other ?? ''}`);
    this.button.hidden = other === undefined;
    this.toggle(true);
    return text;
  }

  hide(): void {
    this.toggle(false);
  }

  private toggle(isGone: boolean): void {
    this.element.hidden = !isGone;
    document.body.classList.toggle('is-gone', isGone);
  }
}
