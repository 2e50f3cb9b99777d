/**
 * A button that opens a menu, after the pattern “menu button” of the ARIA Authoring Practices: Enter, Space and the
 * arrow keys open it, arrows, Home, End and letters move in it, Escape closes it and returns the focus. Checkable items
 * leave it open, because one seldom changes a single setting.
 */

import { html, setAttribute } from './dom.ts';
import { menuIndex } from './roving.ts';

export interface MenuItem {
  readonly label: string;
  /** A few more words, less prominent. */
  readonly hint?: string;
  /** Keyboard shortcut with the same effect. */
  readonly key?: string;
  readonly picture?: Element;
  /** If given, the item can be checked and unchecked, and the menu stays open. */
  readonly checked?: boolean;
  readonly run: () => void;
}

const gapPx = 3;

export class MenuButton {
  private readonly items = html('div', { role: 'menu' });
  private readonly note = html('p', { class: 'note' });
  private readonly element = html('div', { class: 'menu', hidden: '' }, this.items, this.note);

  /** `noteOf`: text below the items, if any. */
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
    // In the same landmark but outside the toolbar, which handles the arrow keys itself.
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
    // The button closes it by its own click.
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

  /** Checked items may have been changed by a shortcut. */
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
    // Tab continues from the button.
    if (key === 'Escape' || key === 'Tab') this.close(true);
    if (key !== 'Tab' && (to !== undefined || key === 'Escape' || isLetter(event))) event.preventDefault();
    // The page's own shortcuts must not apply.
    event.stopPropagation();
  }

  /** Below the button, moved to the left if it would leave the window. */
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

/** The next item that begins with the letter. */
function startingWith(all: readonly HTMLElement[], at: number, letter: string): number | undefined {
  const order = all.map((_, step) => (at + 1 + step) % all.length);
  return order.find((index) =>
    all[index]!.querySelector('.label')!.textContent.toLowerCase().startsWith(letter.toLowerCase()),
  );
}
