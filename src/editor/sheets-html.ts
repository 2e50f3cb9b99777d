/** The view of sheets: a page that is only looked at, without scripts. What is on it was drawn, so no text of a spec is in it. */

import { escaped } from './escaped.ts';
import type { Fact } from '../output/takes-facts.ts';
import { pageSvg } from '../output/page-svg.ts';
import type { Page } from '../output/page.ts';

export type Shown =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'nothing'; readonly why: string }
  | { readonly kind: 'sheets'; readonly page: Page; readonly facts: readonly Fact[] };

export interface SheetsShell {
  readonly cspSource: string;
  readonly styleUri: string;
  /** Which spec a click on the link is about. */
  readonly source: string;
}

export function sheetsHtml(shown: Shown, { cspSource, styleUri, source }: SheetsShell): string {
  const policy = `default-src 'none'; style-src ${cspSource}`;
  const target = encodeURIComponent(JSON.stringify([source]));
  const link = `<a href="command:tagwright.exportSheets?${target}">Export these sheets…</a>`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escaped(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${escaped(styleUri)}">
<title>Sheets</title>
</head>
<body>
${shown.kind === 'sheets' ? `<p>${link}</p>` : ''}
<main>${contents(shown)}</main>
</body>
</html>`;
}

function contents(shown: Shown): string {
  switch (shown.kind) {
    case 'waiting':
      return '<p>Laying out…</p>';
    case 'nothing':
      return `<p>${escaped(shown.why)}</p>`;
    case 'sheets': {
      const said = shown.facts.map(({ name, value }) => `${name}: ${value}`).join('. ');
      return `<div class="paper" role="img" aria-label="${escaped(said)}">${pageSvg(shown.page)}</div>`;
    }
  }
}
