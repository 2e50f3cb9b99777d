/** The card of a problem: what it says, the way to its line, and what may be done about it. Opened at its pin or its row. */

import type { FixesMessage, ScenePin } from '../src/preview/protocol.ts';
import { byId, html, setText } from './dom.ts';

export interface FixMenuActions {
  ask(pin: ScenePin): void;
  make(pin: ScenePin, index: number, title: string): void;
  reveal(pin: ScenePin): void;
  /** Only for a problem that has a place on the drawing. */
  zoomTo(pin: ScenePin): void;
}

const gapPx = 4;

export class FixMenu {
  private readonly element = byId('fix-menu');
  private readonly message = html('p', { id: 'fix-menu-message' });
  private readonly items = html('div', { role: 'menu', 'aria-labelledby': 'fix-menu-message' });
  private pin: ScenePin | undefined;
  private anchor: HTMLElement | undefined;

  constructor(private readonly actions: FixMenuActions) {
    this.element.append(this.message, this.items);
    this.items.addEventListener('keydown', (event) => {
      this.steer(event);
    });
    this.element.addEventListener('focusout', (event) => {
      if (event.relatedTarget instanceof Node && !this.element.contains(event.relatedTarget)) this.close(false);
    });
    const beside = ({ target }: PointerEvent): void => {
      if (!this.element.contains(target as Node) && !this.anchor?.contains(target as Node)) this.close(false);
    };
    document.addEventListener('pointerdown', beside, { capture: true });
  }

  /** `focus`: the keyboard goes into it; else it stays where it is, and the card waits to be pointed at. */
  open(pin: ScenePin, anchor: HTMLElement, focus: boolean): void {
    this.pin = pin;
    this.anchor = anchor;
    this.element.hidden = false;
    this.wait(pin);
    if (focus) this.focusables()[0]?.focus();
  }

  /** The answer; one for another pin comes too late. */
  show({ pin: id, titles }: FixesMessage): void {
    const { pin } = this;
    if (!pin || pin.id !== id) return;
    const fixes = titles.map((title, index) =>
      this.item(title, 'fix', () => {
        this.actions.make(pin, index, title);
      }),
    );
    this.fill(pin, fixes.length > 0 ? fixes : [note('No automatic fix found.')]);
  }

  /** After a change of the text: what was offered may no longer be true. */
  follow(pins: readonly ScenePin[]): void {
    if (!this.pin) return;
    const now = pins.find(({ id }) => id === this.pin!.id);
    if (now && this.anchor!.isConnected) this.wait(now);
    else this.close(false);
  }

  isFor(pin: ScenePin): boolean {
    return this.pin?.id === pin.id;
  }

  close(returnFocus: boolean): void {
    if (this.element.hidden) return;
    const { anchor } = this;
    this.pin = undefined;
    this.anchor = undefined;
    this.element.hidden = true;
    if (returnFocus) anchor?.focus();
  }

  private wait(pin: ScenePin): void {
    this.pin = pin;
    setText(this.message, pin.message);
    const waiting = note('Trying what may help…');
    waiting.setAttribute('aria-busy', 'true');
    this.fill(pin, [waiting]);
    this.actions.ask(pin);
  }

  private fill(pin: ScenePin, fixes: readonly HTMLElement[]): void {
    const held = this.element.contains(document.activeElement);
    const ways = [
      this.item(`Go to line ${pin.line}`, 'way', () => {
        this.actions.reveal(pin);
      }),
    ];
    if (pin.points.length > 0) {
      ways.push(
        this.item('Zoom in on it', 'way', () => {
          this.actions.zoomTo(pin);
        }),
      );
    }
    this.items.replaceChildren(...fixes, html('div', { role: 'separator' }), ...ways);
    this.place();
    if (held) this.focusables()[0]?.focus();
  }

  private item(title: string, kind: string, run: () => void): HTMLButtonElement {
    const item = html('button', { type: 'button', role: 'menuitem', tabindex: '-1', class: kind }, title);
    item.addEventListener('click', () => {
      this.close(true);
      run();
    });
    return item;
  }

  private focusables(): HTMLElement[] {
    return [...this.items.querySelectorAll<HTMLElement>('button')];
  }

  private steer(event: KeyboardEvent): void {
    const all = this.focusables();
    const at = all.indexOf(document.activeElement as HTMLElement);
    const steps: Readonly<Record<string, number>> = {
      ArrowDown: (at + 1) % all.length,
      ArrowUp: (at - 1 + all.length) % all.length,
      Home: 0,
      End: all.length - 1,
    };
    const to = steps[event.key];
    if (to !== undefined) all[to]!.focus();
    else if (event.key === 'Escape' || event.key === 'Tab') this.close(true);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  /** Below its anchor, or above it where there is more room. */
  private place(): void {
    const { left, top, bottom } = this.anchor!.getBoundingClientRect();
    const { offsetWidth: width, offsetHeight: height } = this.element;
    const x = Math.max(gapPx, Math.min(left, window.innerWidth - width - gapPx));
    const fits = bottom + gapPx + height <= window.innerHeight;
    const y = fits ? bottom + gapPx : Math.max(gapPx, top - gapPx - height);
    this.element.style.translate = `${Math.round(x)}px ${Math.round(y)}px`;
  }
}

function note(text: string): HTMLElement {
  return html('div', { role: 'menuitem', 'aria-disabled': 'true', class: 'note' }, text);
}
