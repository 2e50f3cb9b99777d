/** Messages in place of sheets: why there are none, or which sizes they could have. */

import type { ToSheetsPage } from '../../src/protocol/sheets.ts';
import { writtenSize } from '../../src/core/units.ts';
import { button, byId, html } from '../common/dom.ts';

type EmptyState = Extract<ToSheetsPage, { type: 'waiting' | 'nothing' | 'sizes' }>;
type SizeChoice = Extract<ToSheetsPage, { type: 'sizes' }>['sizes'][number];

export function showEmptyState(message: EmptyState, choose: (size: SizeChoice) => void): void {
  byId('instead').replaceChildren(...contents(message, choose));
}

function contents(message: EmptyState, choose: (size: SizeChoice) => void): readonly Element[] {
  if (message.type === 'waiting') return [html('p', {}, 'Laying out…')];
  if (message.type === 'nothing') return [html('p', {}, message.why)];
  const { sizes, units } = message;
  const buttons = sizes.map((size) =>
    button(writtenSize(size.width, size.height, units), '', () => {
      choose(size);
    }),
  );
  const example = html('code', {}, 'sheet: {size: [600 mm, 400 mm]}');
  const lead =
    sizes.length > 0
      ? 'Choose one, or write another: '
      : 'The largest piece fits none of the common sizes; write yours: ';
  return [
    html('h2', {}, 'How large are your sheets?'),
    html('p', {}, 'Choosing a size adds it to the spec; Undo removes it again.'),
    html('p', { class: 'sizes' }, ...buttons),
    html('p', {}, lead, example, '.'),
  ];
}
