/** The layout that was kept and the one there is now, figure by figure. */

import type { LayoutFigure } from '../../src/protocol/sheets.ts';
import { byId, html } from '../common/dom.ts';
import { differenceText, figureText } from './words.ts';

export class Comparison {
  private readonly element = byId('compared');
  private shown = '';

  /** `now`: empty as long as the layout is looked for. Returns what differs, in a sentence; empty if that is not known yet, or nothing is compared. */
  show(kept: readonly LayoutFigure[], now: readonly LayoutFigure[]): string {
    this.element.hidden = kept.length === 0;
    const key = JSON.stringify([kept, now]);
    if (key === this.shown) return '';
    this.shown = key;
    const names = [...new Set([...kept, ...now].map(({ name }) => name))];
    const of = (figures: readonly LayoutFigure[], name: string) => figures.find((each) => each.name === name);
    const rows = names.map((name) => ({ name, before: of(kept, name), after: of(now, name) }));
    const lacking = now.length === 0 ? '…' : '–';
    const head = ['Figure', 'Kept', 'Now', 'Difference'].map((text) => html('th', { scope: 'col' }, text));
    this.element.replaceChildren(
      html('caption', {}, 'Kept and now'),
      html('thead', {}, html('tr', {}, ...head)),
      html(
        'tbody',
        {},
        ...rows.map(({ name, before, after }) =>
          html(
            'tr',
            {},
            html('th', { scope: 'row' }, name),
            html('td', {}, before ? figureText(before) : '–'),
            html('td', {}, after ? figureText(after) : lacking),
            html('td', {}, before && after ? differenceText(before, after) : lacking),
          ),
        ),
      ),
    );
    if (kept.length === 0 || now.length === 0) return '';
    const changes = rows.flatMap(({ name, before, after }) => {
      const isSame = before && after && figureText(before) === figureText(after);
      return !before || !after || isSame ? [] : [`${name} ${figureText(after)} instead of ${figureText(before)}`];
    });
    return changes.length === 0 ? 'No figure differs from the layout that you kept.' : `${changes.join(', ')}.`;
  }
}
