/**
 * A button that opens a menu, by the pattern “menu button” of the ARIA Authoring Practices: Enter, Space and the arrow keys
 * open it, arrows, Home, End and letters move in it, Escape closes it and gives the focus back. What is checked there stays
 * open, as one seldom sets one thing alone.
 */

import { html, setAttribute } from './dom.ts';
import { menuIndex } from './roving.ts';

export interface MenuItem {
  readonly label: string;
  /** A word or two more, quieter. */
  readonly hint?: string;
  /** The key that does the same. */
  readonly key?: string;
  readonly picture?: Element;
  /** Given: it is switched on and off, and the menu stays open. */
  readonly checked?: boolean;
  readonly run: () => void;
}

const gapPx = 3;

export class MenuButton {
  private readonly items = html('div', { role: 'menu' });
  private readonly note = html('p', { class: 'note' });
  private readonly element = html('div', { class: 'menu', hidden: '' }, this.items, this.note);

  /** `noteOf`: what is said below the items, if anything. */
  constructor(
    private readonly button: HTMLElement,
    name: string,
    private readonly list: () => readonly MenuItem[],
    private readonly noteOf: () => string = () => '',
  ) {
    this.items.id = `${button.id}-menu`;
    this.items.setAttribute('aria-label', name);
    for (const [key, value] of Object.entries({ haspopup: 'menu', expanded: 'false', controls: this.items.id })) {
      button.setAttribute(`aria-${key}`, value);
    }
    // In the same landmark, and not in the toolbar, whose arrow keys are its own.
    button.closest('header')!.append(this.element);
    button.addEventListener('click', () => {
      if (this.isOpen) this.close(true);
      else this.open(0);
    });
    button.addEventListener('keydown', (event) => {
      if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
      this.open(event.key === 'ArrowDown' ? 0 : -1);
      event.preventDefault();
      event.stopPropagation();
    });
    this.element.addEventListener('keydown', (event) => {
      this.steer(event);
    });
    // The button itself closes it by its click.
    const isBeside = (target: Node): boolean => !this.element.contains(target) && !button.contains(target);
    this.element.addEventListener('focusout', ({ relatedTarget }) => {
      if (relatedTarget instanceof Node && isBeside(relatedTarget)) this.close(false);
    });
    const beside = ({ target }: PointerEvent): void => {
      if (isBeside(target as Node)) this.close(false);
    };
    document.addEventListener('pointerdown', beside, { capture: true });
    window.addEventListener('blur', () => {
      this.close(false);
    });
    window.addEventListener('resize', () => {
      this.close(false);
    });
  }

  get isOpen(): boolean {
    return !this.element.hidden;
  }

  /** What is checked may have changed by a key. */
  refresh(): void {
    if (!this.isOpen) return;
    const at = this.buttons().indexOf(document.activeElement as HTMLElement);
    this.fill();
    if (at >= 0) this.buttons()[at]?.focus();
  }

  private open(at: 0 | -1): void {
    this.fill();
    this.element.hidden = false;
    setAttribute(this.button, 'aria-expanded', 'true');
    this.place();
    this.buttons().at(at)?.focus();
  }

  private close(returnFocus: boolean): void {
    if (!this.isOpen) return;
    this.element.hidden = true;
    setAttribute(this.button, 'aria-expanded', 'false');
    if (returnFocus) this.button.focus();
  }

  private fill(): void {
    const items = this.list();
    this.element.classList.toggle(
      'checks',
      items.some(({ checked }) => checked !== undefined),
    );
    this.items.replaceChildren(...items.map((item) => this.row(item)));
    this.note.textContent = this.noteOf();
    this.note.hidden = this.note.textContent === '';
  }

  private row({ label, hint, key, picture, checked, run }: MenuItem): HTMLElement {
    const isCheck = checked !== undefined;
    const row = html(
      'button',
      {
        type: 'button',
        role: isCheck ? 'menuitemcheckbox' : 'menuitem',
        tabindex: '-1',
        ...(isCheck && { 'aria-checked': `${checked}` }),
        ...(key !== undefined && { 'aria-keyshortcuts': key }),
      },
      html('span', { class: 'tick', 'aria-hidden': 'true' }, checked === true ? '✓' : ''),
      ...(picture ? [picture] : []),
      html('span', { class: 'label' }, label),
      ...(hint === undefined ? [] : [html('span', { class: 'hint' }, hint)]),
      ...(key === undefined ? [] : [html('kbd', { 'aria-hidden': 'true' }, key)]),
    );
    row.addEventListener('click', () => {
      if (isCheck) {
        run();
        this.refresh();
        return;
      }
      this.close(true);
      run();
    });
    return row;
  }

  private buttons(): HTMLElement[] {
    return [...this.items.querySelectorAll<HTMLElement>('button')];
  }

  private steer(event: KeyboardEvent): void {
    const { key } = event;
    const all = this.buttons();
    const at = all.indexOf(document.activeElement as HTMLElement);
    const to = menuIndex(key, at, all.length) ?? (isLetter(event) ? startingWith(all, at, key) : undefined);
    if (to !== undefined) all[to]!.focus();
    // Tab goes on from the button.
    if (key === 'Escape' || key === 'Tab') this.close(true);
    if (key !== 'Tab' && (to !== undefined || key === 'Escape' || isLetter(event))) event.preventDefault();
    // The page's own letters are not meant.
    event.stopPropagation();
  }

  /** Under the button, as far to the left as it must. */
  private place(): void {
    const { left, bottom } = this.button.getBoundingClientRect();
    const x = Math.max(gapPx, Math.min(left, window.innerWidth - this.element.offsetWidth - gapPx));
    const y = Math.round(bottom + gapPx);
    this.element.style.translate = `${Math.round(x)}px ${y}px`;
    this.element.style.maxHeight = `${window.innerHeight - y - gapPx}px`;
  }
}

function isLetter({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean {
  return key.length === 1 && key !== ' ' && !ctrlKey && !metaKey && !altKey;
}

/** The next one that begins with it. */
function startingWith(all: readonly HTMLElement[], at: number, letter: string): number | undefined {
  const order = all.map((_, step) => (at + 1 + step) % all.length);
  return order.find((index) =>
    all[index]!.querySelector('.label')!.textContent.toLowerCase().startsWith(letter.toLowerCase()),
  );
}
