/** Static HTML shell of the page. It is set once for each panel; everything else arrives by message. */

import { icon } from '../common/page-icon.ts';
import { pageShell } from '../common/page-shell.ts';
import type { PageSources } from '../common/page-shell.ts';

export function sheetsHtml(sources: PageSources): string {
  return pageShell(sources, { title: 'Sheets', body });
}

const body = `<header>
  <div id="tools" role="toolbar" aria-label="Sheets tools">
    <h1 id="title">Sheets</h1>
    <div id="zoom" class="segments" role="group" aria-label="Zoom">
      <button type="button" data-zoom="out" aria-label="Zoom out" title="Zoom out (−)">${icon('M3 8h10')}</button>
      <button type="button" data-zoom="in" aria-label="Zoom in" title="Zoom in (+)">${icon('M3 8h10M8 3v10')}</button>
      <button type="button" data-zoom="fit" title="Fit all sheets in view (0)">${icon('M2 5.5V2h3.5M10.5 2H14v3.5M14 10.5V14h-3.5M5.5 14H2v-3.5')}<span>Fit</span></button>
    </div>
    <div id="compare" class="segments" role="group" aria-label="Layout that is shown" hidden>
      <button type="button" data-shown="kept" aria-pressed="false" title="The layout that you kept">Kept</button>
      <button type="button" data-shown="now" aria-pressed="true" title="The layout as the text is now">Now</button>
    </div>
    <button type="button" id="export" title="Write the cut files of these sheets">${icon('M8 2v8M4.5 7 8 10.5 11.5 7M2.5 13.5h11')}<span>Export…</span></button>
  </div>
</header>
<main>
  <div id="stage" tabindex="0" role="listbox" aria-label="Pieces on the sheets" aria-describedby="how">
    <div id="world"><svg id="drawing" role="presentation"></svg></div>
  </div>
  <p id="how" class="spoken">Arrow keys pan, plus and minus zoom, 0 fits. S goes from one piece to the next, Shift+S back. Enter shows where the piece comes from. <span id="by-hand"></span></p>
  <div id="tip" role="tooltip" hidden></div>
  <div id="card" role="group" aria-label="Selected piece" hidden></div>
  <div id="progress" hidden><span></span><button type="button" hidden></button><button type="button" hidden></button></div>
  <div id="instead" role="status"><p>Laying out…</p></div>
</main>
<footer>
  <button type="button" id="summary" aria-expanded="false" aria-controls="dock" hidden></button>
  <div id="dock" hidden><div id="controls" class="actions" role="group" aria-label="Layout"></div><section class="problems" hidden><h2></h2><ul></ul></section><table id="compared" hidden></table><dl></dl></div>
</footer>
<div id="announcer" role="status" aria-live="polite"></div>
<div id="doing" class="spoken" role="status" aria-live="polite"></div>`;
