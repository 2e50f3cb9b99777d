/** Tooltip with the message of the pin that the pointer or focus is on. */

import type { ScenePin } from '../../../src/protocol/scene.ts';
import { html, setText } from '../../common/dom.ts';

const gapPx = 6;

export class PinTip {
  private readonly message = html('p');
  private readonly origin = html('p', { class: 'origin' });

  constructor(private readonly element: HTMLElement) {
    element.append(this.message, this.origin);
  }

  show(pin: ScenePin, anchor: Element): void {
    setText(this.message, pin.message);
    setText(this.origin, `Line ${pin.line} · ${pin.code} · F: fixes`);
    this.element.hidden = false;
    const room = this.element.parentElement!.getBoundingClientRect();
    const label = anchor.getBoundingClientRect();
    const { offsetWidth: width, offsetHeight: height } = this.element;
    const left = Math.max(4, Math.min(label.left - room.left, room.width - width - 4));
    const below = label.bottom - room.top + gapPx;
    const above = label.top - room.top - gapPx - height;
    const top = below + height <= room.height || above < 0 ? below : above;
    this.element.style.translate = `${Math.round(left)}px ${Math.round(top)}px`;
  }

  hide(): void {
    this.element.hidden = true;
  }
}
