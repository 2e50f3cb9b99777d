/**
 * Dock: the panel below the drawing. By default it is closed while there are no problems and otherwise lists them, as
 * high as they need; once the user opens or closes it, it stays that way. It reacts to changes of the text only after a
 * pause, because otherwise the drawing would jump during typing.
 */

import type { SceneMessage } from '../../../src/protocol/preview.ts';
import { byId, setAttribute } from '../../common/dom.ts';
import type { DockChoice } from '../state.ts';

type DockContent = 'nothing' | 'problems' | 'all';

const restMs = 1000;

export function dockContent(choice: DockChoice, problems: number): DockContent {
  if (choice === 'open') return 'all';
  return choice === 'auto' && problems > 0 ? 'problems' : 'nothing';
}

/**
 * The choice after a press: everything, or one line. Without problems, closing returns to the default, which may open
 * it again.
 */
export function choiceAfterPress(choice: DockChoice, problems: number): DockChoice {
  if (choice !== 'open') return 'open';
  return problems > 0 ? 'closed' : 'auto';
}

export class Dock {
  private readonly element = byId('dock');
  private choice: DockChoice | undefined;
  private problems: number | undefined;
  private timer: number | undefined;

  /** `changed`: called when its extent changes, with whether it shows everything. */
  constructor(private readonly changed: (isOpen: boolean) => void) {
    // A section opened inside it is meant to be read, so it makes room; `toggle` does not bubble.
    const opened = (): void => {
      this.settle();
    };
    this.element.addEventListener('toggle', opened, { capture: true });
  }

  patch(choice: DockChoice, { pins, trying }: SceneMessage): void {
    // Nothing else changes during a drag.
    if (trying) return;
    const isFirst = this.problems === undefined;
    const isWished = choice !== this.choice;
    [this.choice, this.problems] = [choice, pins.length];
    if (isFirst || isWished) this.settle();
    else this.settleSoon();
  }

  /** Its contents may have grown or shrunk. */
  settleSoon(): void {
    window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => {
      this.settle();
    }, restMs);
  }

  settle(): void {
    if (this.choice === undefined) return;
    window.clearTimeout(this.timer);
    const shows = dockContent(this.choice, this.problems ?? 0);
    setAttribute(this.element, 'data-shows', shows);
    // The focus must not be lost with it.
    if (shows === 'nothing' && this.element.contains(document.activeElement)) byId('summary').focus();
    this.element.hidden = shows === 'nothing';
    // Takes the height it needs within the limits of the style sheet, and then keeps it.
    this.element.style.height = '';
    if (shows !== 'nothing') this.element.style.height = `${this.element.offsetHeight}px`;
    this.changed(shows === 'all');
  }
}
