/** Progress of a layout, and the actions it allows. */

import type { LayoutState } from '../../src/protocol/sheets.ts';
import { byId, setText } from '../common/dom.ts';

export interface ProgressHost {
  stop(): void;
  again(): void;
  /** Absent if nothing can be pinned. */
  pinAll(): void;
  pins(): boolean;
}

type Doing = 'stop' | 'again' | 'pinAll';
const labels: Readonly<Record<Doing, string>> = { stop: 'Stop', again: 'Continue', pinAll: 'Pin All' };

export class Progress {
  private readonly element = byId('progress');
  private readonly buttons = [...this.element.querySelectorAll('button')];
  private readonly doing: (Doing | undefined)[] = [];

  constructor(private readonly host: ProgressHost) {
    this.buttons.forEach((button, index) => {
      button.addEventListener('click', () => {
        const doing = this.doing[index];
        if (doing) host[doing]();
      });
    });
  }

  show(state: LayoutState | 'busy'): void {
    const pins = this.host.pins();
    const contents: Readonly<Record<typeof state, readonly [text: string, ...doing: Doing[]]>> = {
      busy: ['Laying out…'],
      improving: ['Looking for a better layout…', 'stop'],
      stopped: [
        pins ? 'Stopped. Export cuts these sheets.' : 'Stopped. Files are made from the finished layout.',
        'again',
        ...(pins ? (['pinAll'] as const) : []),
      ],
      done: [''],
    };
    const [text, ...doing] = contents[state];
    // What is hidden is not read aloud when it changes.
    if (text !== '' || this.element.dataset['state'] !== state) setText(byId('doing'), text || 'Laid out.');
    this.element.hidden = state === 'done';
    this.element.dataset['state'] = state;
    setText(this.element.querySelector('span')!, text);
    this.buttons.forEach((button, index) => {
      this.doing[index] = doing[index];
      button.hidden = doing[index] === undefined;
      setText(button, doing[index] ? labels[doing[index]] : '');
    });
  }
}
