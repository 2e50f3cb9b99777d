/** Static HTML shell of the page. It is set once for each panel; everything else arrives by message. */

import { icon } from '../common/page-icon.ts';
import { pageShell } from '../common/page-shell.ts';
import type { PageSources } from '../common/page-shell.ts';
import { toolsHtml } from './html-tools.ts';

export interface ShellSources extends PageSources {
  readonly nonce: string;
  /** URI of the spec, which the page keeps as its state from the start. */
  readonly source: string;
  /** View settings of the spec and the known screen resolution, as JSON. */
  readonly remembered: string;
}

export function shellHtml({ nonce, source, remembered, ...sources }: ShellSources): string {
  const attributes = { 'data-source': source, 'data-remembered': remembered };
  return pageShell(sources, { title: 'Tag preview', body, attributes, nonce });
}

const body = `<header>
  ${toolsHtml}
  <div id="batch" role="group" aria-label="Tags of the batch" hidden>
    <button type="button" id="batch-previous" aria-label="Previous tag" title="Previous tag (Page Up)">${icon('M10 3 5 8l5 5')}</button>
    <div id="batch-rows" role="listbox" aria-orientation="horizontal" aria-label="Tag that is shown"></div>
    <button type="button" id="batch-next" aria-label="Next tag" title="Next tag (Page Down)">${icon('M6 3l5 5-5 5')}</button>
    <span id="batch-count"></span>
  </div>
</header>
<main>
  <h1 id="title" class="spoken">Tag preview</h1>
  <div id="stage" tabindex="0" role="group" aria-label="Drawing. Arrow keys pan, plus and minus zoom, 0 fits, 1 is true size, N goes from problem to problem, S from one thing that can be moved to the next. Question mark lists all keys.">
    <svg id="drawing" role="img" aria-label="No drawing yet"></svg>
    <div id="pins" role="toolbar" aria-label="Problems on the drawing"></div>
  </div>
  <p id="caption" hidden></p>
  <div id="tip" role="tooltip" hidden></div>
  <div id="fix-menu" hidden></div>
  <div id="banner" hidden><span></span> <button type="button"></button></div>
  <div id="gone" class="in-place" hidden>
    <h2>This tag is closed</h2>
    <p></p>
    <button type="button" hidden></button>
  </div>
  <div id="empty" class="in-place" hidden>
    <h2>Nothing to draw yet</h2>
    <p>The drawing appears here as soon as the spec makes a shape.</p>
    <button type="button" hidden></button>
  </div>
</main>
<footer>
  <div id="caution" role="note" hidden><span></span><button type="button">Got it</button></div>
  <button type="button" id="summary" aria-expanded="false" aria-controls="dock"></button>
  <div id="dock" data-shows="nothing" hidden>
    <section id="problems" aria-labelledby="issues-title"><h2 id="issues-title">Problems</h2><ul id="issues"></ul>
      <details id="accepted" hidden><summary></summary><ul></ul></details></section>
    <section aria-labelledby="pieces-title"><h2 id="pieces-title">Pieces</h2><ul id="pieces"></ul></section>
    <section id="takes" aria-labelledby="takes-title" hidden><h2 id="takes-title">Job estimate</h2><dl></dl></section>
  </div>
</footer>
<dialog id="screen" aria-labelledby="screen-title">
  <h1 id="screen-title">True size on this screen</h1>
  <p id="screen-how"></p>
  <div id="card" aria-hidden="true"></div>
  <label>Width of the outline <input type="range" id="card-width" max="900" step="0.5"></label>
  <p class="fine">The arrow keys make small changes. Bank cards have the size of ISO/IEC 7810, ID-1: 85.60 × 53.98 mm.</p>
  <form method="dialog"><button value="save" class="primary">Keep</button> <button value="forget">Forget</button> <button value="cancel">Cancel</button></form>
</dialog>
<dialog id="keys" aria-labelledby="keys-title">
  <h1 id="keys-title">Keys</h1>
  <div tabindex="0" role="group" aria-labelledby="keys-title"></div>
  <form method="dialog"><button class="primary" autofocus>Close</button></form>
</dialog>
<div id="announcer" role="status" aria-live="polite"></div>`;
