/** Static HTML shell of the list of samples. */

import { pageShell } from '../common/page-shell.ts';
import type { PageSources } from '../common/page-shell.ts';

export function samplesHtml(sources: PageSources): string {
  return pageShell(sources, { title: 'Tag samples', body });
}

const body = `<main>
  <input id="filter" type="search" placeholder="Filter" aria-label="Filter samples" autocomplete="off" spellcheck="false">
  <ul id="samples" aria-label="Tag samples"></ul>
  <p id="none" role="status" hidden>No samples match.</p>
</main>`;
