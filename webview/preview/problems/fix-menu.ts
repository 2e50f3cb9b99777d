/** Card of a problem: its message, a link to its line, and its fixes. Opened at its pin or its row in the list. */

import type { FixesMessage } from '../../../src/protocol/preview.ts';
import type { ScenePin } from '../../../src/protocol/scene.ts';
import { cardPlace } from './card-place.ts';
import { byId, html, setText } from '../../common/dom.ts';
import type { Box, Size } from '../../common/camera/viewport.ts';
import { menuIndex } from '../../common/roving.ts';

export interface FixMenuActions {
  ask(pin: ScenePin): void;
  make(pin: ScenePin, index: number, title: string): void;
  /** Shows the outcome of a fix; `undefined` ends that. */
  show(pin: ScenePin, index: number | undefined): void;
  /** The drawing of the tag, in px of the window: the card covers as little of it as possible. */
  watched(): Box | undefined;
  reveal(pin: ScenePin): void;
  /** Only for a problem that has a place on the drawing. */
  zoomTo(pin: ScenePin): void;
}

export class FixMenu {
  private readonly element = byId('fix-menu');
  private readonly message = html('p', { id: 'fix-menu-message' });
  private readonly items = html('div', { role: 'menu', 'aria-labelledby': 'fix-menu-message' });
  /** Effect on the sizes. */
  private readonly outcome = html('p', { class: 'outcome-words' });
  /** The fixes offered, and the index of the one shown last. */
  private offered: readonly HTMLElement[] = [];
  private shown: number | undefined;
  private pin: ScenePin | undefined;
  private anchor: HTMLElement | undefined;

  constructor(private readonly actions: FixMenuActions) {
    this.element.append(this.message, this.items, this.outcome);
    this.items.addEventListener('focusin', () => {
      this.showMeant();
    });
    this.items.addEventListener('pointerover', ({ target }) => {
      this.showMeant(target as Node);
    });
    this.items.addEventListener('pointerleave', () => {
      this.showMeant();
    });
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

  /** `focus`: moves the focus into the card; otherwise it stays where it is. */
  open(pin: ScenePin, anchor: HTMLElement, focus: boolean): void {
    this.pin = pin;
    this.anchor = anchor;
    this.element.hidden = false;
    this.wait(pin);
    if (focus) this.focusables()[0]?.focus();
  }

  /** The answer to `ask`; one for another pin is too late. */
  show({ pin: id, titles, accept, inTheWay }: FixesMessage): void {
    const { pin } = this;
    if (!pin || pin.id !== id) return;
    const choice = (title: string, index: number): HTMLElement =>
      this.item(title, index < titles.length ? 'fix' : 'way', () => {
        this.actions.make(pin, index, title);
      });
    this.offered = titles.map(choice);
    this.outcome.hidden = titles.length === 0;
    const found = titles.length > 0 ? this.offered : [note(inTheWay ?? 'No automatic fix found.')];
    this.fill(pin, accept === undefined ? found : [...found, choice(accept, titles.length)]);
    this.showMeant();
  }

  /** The answer to `show`; returns whether the focus is on the fix concerned. */
  describe(index: number, words: string): boolean {
    setText(this.outcome, index === this.shown ? words : '');
    return this.offered[index] === document.activeElement;
  }

  /** Called after a change of the text, when the fixes may no longer apply. */
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
    this.showNothing();
    this.offered = [];
    this.pin = undefined;
    this.anchor = undefined;
    this.element.hidden = true;
    if (returnFocus) anchor?.focus();
  }

  private wait(pin: ScenePin): void {
    if (this.pin) this.showNothing();
    this.offered = [];
    this.outcome.hidden = true;
    this.pin = pin;
    setText(this.message, pin.message);
    const waiting = note('Looking for fixes…');
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

  /** Shows the fix under the pointer, else the one with the focus. */
  private showMeant(pointed?: Node): void {
    const at = (node: Node | null | undefined): number =>
      this.offered.findIndex((item) => node !== undefined && item.contains(node));
    const index = [at(pointed), at(document.activeElement)].find((each) => each >= 0);
    if (index === this.shown || !this.pin) return;
    this.shown = index;
    setText(this.outcome, '');
    this.actions.show(this.pin, index);
  }

  private showNothing(): void {
    setText(this.outcome, '');
    if (this.shown === undefined || !this.pin) return;
    this.shown = undefined;
    this.actions.show(this.pin, undefined);
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
    const to = menuIndex(event.key, at, all.length);
    if (to !== undefined) all[to]!.focus();
    else if (event.key === 'Escape' || event.key === 'Tab') this.close(true);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  private place(): void {
    const { offsetWidth: width, offsetHeight: height } = this.element;
    const at = cardPlace(elementBox(this.anchor!), { width, height }, sizeOfWindow(), this.actions.watched());
    this.element.style.translate = `${Math.round(at[0])}px ${Math.round(at[1])}px`;
  }
}

function elementBox(element: Element): Box {
  const { left, top, right, bottom } = element.getBoundingClientRect();
  return [left, top, right, bottom];
}

function sizeOfWindow(): Size {
  return { width: window.innerWidth, height: window.innerHeight };
}

function note(text: string): HTMLElement {
  return html('div', { role: 'menuitem', 'aria-disabled': 'true', class: 'note' }, text);
}
