/**
 * The panel below the drawing. By itself it is closed while all is well and shows the problems where there are some, as high
 * as they need; what someone opened or closed stays. It follows a change of the text only once that has rested: the drawing
 * would jump while one types.
 */

import type { SceneMessage } from '../../../src/protocol/preview.ts';
import { byId, setAttribute } from '../../common/dom.ts';
import type { DockChoice } from '../state.ts';

type Shows = 'nothing' | 'problems' | 'all';

const restMs = 1000;

export function showsOf(choice: DockChoice, problems: number): Shows {
  if (choice === 'open') return 'all';
  return choice === 'auto' && problems > 0 ? 'problems' : 'nothing';
}

/** What a press makes of it: all, or one line. Closed while all is well it may open by itself. */
export function pressed(choice: DockChoice, problems: number): DockChoice {
  if (choice !== 'open') return 'open';
  return problems > 0 ? 'closed' : 'auto';
}

export class Dock {
  private readonly element = byId('dock');
  private choice: DockChoice | undefined;
  private problems: number | undefined;
  private timer: number | undefined;

  /** `changed`: it shows more or less than before; whether all. */
  constructor(private readonly changed: (isOpen: boolean) => void) {
    // What is opened in it is meant to be read; the event does not bubble.
    const opened = (): void => {
      this.settle();
    };
    this.element.addEventListener('toggle', opened, { capture: true });
  }

  patch(choice: DockChoice, { pins, trying }: SceneMessage): void {
    // While the hand moves something, all else stays.
    if (trying) return;
    const isFirst = this.problems === undefined;
    const isWished = choice !== this.choice;
    [this.choice, this.problems] = [choice, pins.length];
    if (isFirst || isWished) this.settle();
    else this.settleSoon();
  }

  /** What it shows may have grown or shrunk. */
  settleSoon(): void {
    window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => {
      this.settle();
    }, restMs);
  }

  settle(): void {
    if (this.choice === undefined) return;
    window.clearTimeout(this.timer);
    const shows = showsOf(this.choice, this.problems ?? 0);
    setAttribute(this.element, 'data-shows', shows);
    // The keyboard must not be lost with it.
    if (shows === 'nothing' && this.element.contains(document.activeElement)) byId('summary').focus();
    this.element.hidden = shows === 'nothing';
    // As high as it needs, within what the style sheet allows; then it stays so.
    this.element.style.height = '';
    if (shows !== 'nothing') this.element.style.height = `${this.element.offsetHeight}px`;
    this.changed(shows === 'all');
  }
}
