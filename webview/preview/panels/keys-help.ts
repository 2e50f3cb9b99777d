/** Dialog with the preview's keyboard shortcuts, opened by `?` and closed by Escape, which returns the focus. */

import { byId, html } from '../../common/dom.ts';
import { isPlain } from '../../common/keys.ts';
import { previewKeys } from './key-list.ts';

export class KeysHelp {
  private readonly dialog = byId('keys') as HTMLDialogElement;

  constructor() {
    this.dialog.querySelector('div')!.append(...previewKeys.map(groupOf));
    document.addEventListener('keydown', (event) => {
      if (!isPlain(event, '?') || document.querySelector('dialog:modal')) return;
      this.show();
      event.preventDefault();
    });
    this.dialog.addEventListener('keydown', (event) => {
      if (isPlain(event, '?')) this.dialog.close();
      // The page's own shortcuts must not apply.
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

function groupOf([title, keys]: (typeof previewKeys)[number]): HTMLElement {
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
