/** The view of sheets as a page. Sheets are drawn; what is said of them is text, and never markup. */

import { listed } from '../../core/names.ts';
import type { SheetSize } from '../../edits/sheet-size.ts';
import { sheetSizeText } from '../../edits/sheet-size.ts';
import { mostNames } from '../../export/in-words.ts';
import { pageSvg } from '../../export/page-svg.ts';
import type { Page } from '../../export/page.ts';
import type { Fact } from '../../export/takes-facts.ts';
import type { Units } from '../../core/units.ts';
import { escaped } from '../common/escape-html.ts';
import { pageShell } from '../common/page-shell.ts';
import type { PageSources } from '../common/page-shell.ts';
import type { FromSheetsPage } from '../../protocol/sheets.ts';

export type Shown =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'nothing'; readonly why: string }
  /** The spec does not say how large its sheets are. */
  | { readonly kind: 'sizes'; readonly sizes: readonly SheetSize[]; readonly units: Units }
  | {
      readonly kind: 'sheets';
      readonly title: string;
      readonly page: Page;
      readonly facts: readonly Fact[];
      readonly problems: readonly SheetProblem[];
      /** What stands above them; “Do not cut yet” unless said. */
      readonly warning?: string;
    };

/** Something that keeps tags from being cut. */
export interface SheetProblem {
  /** Tags of the batch that have it; none where there is only one tag. */
  readonly labels: readonly string[];
  readonly message: string;
  readonly line: number;
  readonly offset: number;
  readonly row: number;
}

export function sheetsHtml(shown: Shown, sources: PageSources): string {
  return pageShell(sources, { title: 'Sheets', body: `<main>${contents(shown)}</main>` });
}

function contents(shown: Shown): string {
  switch (shown.kind) {
    case 'waiting':
      return '<p role="status">Laying out…</p>';
    case 'nothing':
      return `<p>${escaped(shown.why)}</p>`;
    case 'sizes':
      return sizes(shown);
    case 'sheets': {
      const { title, page, facts, problems, warning } = shown;
      const said = facts.map(({ name, value }) => `${name}: ${value}`).join('. ');
      return [
        `<header><h1>${escaped(title)}</h1>${button('Export These Sheets…', { type: 'export' }, 'main')}</header>`,
        problemList(problems, warning),
        `<div class="paper" role="img" aria-label="${escaped(said)}">${pageSvg(page)}</div>`,
        `<dl>${facts.map(({ name, value }) => `<div><dt>${escaped(name)}</dt><dd>${escaped(value)}</dd></div>`).join('')}</dl>`,
      ].join('\n');
    }
  }
}

function sizes({ sizes: offered, units }: Extract<Shown, { kind: 'sizes' }>): string {
  const buttons = offered.map((size) => button(sheetSizeText(size, units), { type: 'size', ...size }));
  const other = 'or write another: <code>sheet: {size: [600 mm, 400 mm]}</code>';
  return [
    '<h1>How large are your sheets?</h1>',
    '<p>Choosing a size adds it to the spec; Undo removes it again.</p>',
    `<p class="sizes">${buttons.join(' ')}</p>`,
    `<p>${buttons.length > 0 ? `Choose one, ${other}.` : `The largest piece fits none of the common sizes; ${other.replace('or write another', 'write yours')}.`}</p>`,
  ].join('\n');
}

function problemList(problems: readonly SheetProblem[], warning = 'Do not cut yet'): string {
  if (problems.length === 0) return '';
  const items = problems.map(({ labels, message, line, offset, row }) => {
    const who = labels.length > 0 ? `<strong>${escaped(listed(labels, mostNames))}:</strong> ` : '';
    return `<li>${who}${escaped(message)} ${button(`Line ${line}`, { type: 'show', offset, row }, 'line')}</li>`;
  });
  return `<section class="problems"><h2>${escaped(warning)}</h2><ul>${items.join('')}</ul></section>`;
}

function button(text: string, message: FromSheetsPage, look = 'plain'): string {
  return `<button type="button" class="${look}" data-message="${escaped(JSON.stringify(message))}">${escaped(text)}</button>`;
}
