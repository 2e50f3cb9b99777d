/** The keys of the preview, in a list that `?` opens and Escape closes; the focus goes back to where it was. */

import { byId, html } from '../../common/dom.ts';
import { isPlain } from '../keys.ts';

type Keys = readonly (readonly [keys: string, what: string])[];

const groups: readonly (readonly [title: string, keys: Keys])[] = [
  [
    'View',
    [
      ['Arrows', 'move the drawing'],
      ['+ −', 'zoom in, zoom out; Ctrl or Cmd with the wheel'],
      ['0', 'fit everything'],
      ['1', 'true size'],
      ['P', 'proof'],
      ['Page Down, Page Up', 'next or previous tag of a batch'],
    ],
  ],
  [
    'Problems',
    [
      ['N, Shift+N', 'next or previous problem'],
      ['Z', 'zoom in on it'],
      ['F', 'fixes for it'],
      ['Enter', 'go to its line'],
    ],
  ],
  [
    'Move and size by hand',
    [
      ['S, Shift+S', 'select the next or previous thing to move'],
      ['Arrows', 'move it by 0.1 mm; with Shift by 1 mm'],
      ['Ctrl+Arrows', 'change its size'],
      ['Ctrl+Z, Ctrl+Y', 'undo, redo'],
      ['Esc', 'let go'],
    ],
  ],
  [
    'Measure',
    [
      ['M', 'ruler on or off'],
      ['Arrows', 'move its end; with Shift in larger steps'],
      ['Enter', 'set the end'],
    ],
  ],
];

export class KeysHelp {
  private readonly dialog = byId('keys') as HTMLDialogElement;

  constructor() {
    this.dialog.querySelector('div')!.append(...groups.map(groupOf));
    document.addEventListener('keydown', (event) => {
      if (!isPlain(event, '?') || document.querySelector('dialog:modal')) return;
      this.show();
      event.preventDefault();
    });
    this.dialog.addEventListener('keydown', (event) => {
      if (isPlain(event, '?')) this.dialog.close();
      // The page's own keys are not meant.
      event.stopPropagation();
    });
    this.dialog.addEventListener('click', ({ target }) => {
      if (target === this.dialog) this.dialog.close();
    });
  }

  show(): void {
    this.dialog.showModal();
  }
}

function groupOf([title, keys]: (typeof groups)[number]): HTMLElement {
  const rows = keys.map(([key, what]) =>
    html(
      'div',
      {},
      html('dt', {}, ...key.split(/(, )/).map((part) => (part === ', ' ? part : html('kbd', {}, part)))),
      html('dd', {}, what),
    ),
  );
  return html('section', {}, html('h2', {}, title), html('dl', {}, ...rows));
}
