/** Toolbar above the drawing: one row at every width, so that the height is left to the drawing. */

import { icon } from '../common/page-icon.ts';

const caret = '<svg class="caret" viewBox="0 0 8 16" aria-hidden="true"><path d="M1 6.5l3 3 3-3"/></svg>';

/** Where there is no room for the words, they are still read aloud and shown as a tooltip. */
const button = (attributes: string, path: string, words: string): string =>
  `<button type="button" ${attributes}>${icon(path)}<span>${words}</span></button>`;

export const toolsHtml = `<div id="tools" role="toolbar" aria-label="Preview tools">
    <div id="arrangement" class="segments" role="group" aria-label="Arrangement" hidden>
      ${button('data-arrangement="assembled" aria-pressed="true" title="Assembled: pieces in place, one on top of another"', 'M1.5 3.5h13v9h-13zM4.5 6h7v4h-7z', 'Assembled')}
      ${button('data-arrangement="exploded" aria-pressed="false" title="Exploded: each layer lifted off the one it is glued on"', 'M4.5 1.5h7v4h-7zM1.5 10.5h13v4h-13zM5 7v2M11 7v2', 'Exploded')}
      ${button('data-arrangement="apart" aria-pressed="false" title="Apart: pieces side by side"', 'M1 4.5h7.5v7H1zM10.5 6H15v4h-4.5z', 'Apart')}
    </div>
    <div id="zoom" class="segments" role="group" aria-label="Zoom">
      <button type="button" data-zoom="out" aria-label="Zoom out" title="Zoom out (−)">${icon('M3 8h10')}</button>
      <button type="button" id="zoom-button" title="Zoom">100&nbsp;%</button>
      <button type="button" data-zoom="in" aria-label="Zoom in" title="Zoom in (+)">${icon('M3 8h10M8 3v10')}</button>
      ${button('data-zoom="fit" title="Fit everything in view (0)"', 'M2 5.5V2h3.5M10.5 2H14v3.5M14 10.5V14h-3.5M5.5 14H2v-3.5', 'Fit')}
    </div>
    <div id="layers" role="group" aria-label="Layers"></div>
    <button type="button" id="layers-button" title="Layers: what to show">${icon('M8 2l6.5 3.5L8 9 1.5 5.5zM2 8.5L8 11.7l6-3.2M2 11.2l6 3.2 6-3.2')}<span>Layers</span>${caret}</button>
    ${button('id="proof" aria-pressed="false" title="Proof: only the finished look, as for a customer (P)"', 'M2 3h12v10H2zM4.5 10l2.5-3 2 2.2 1.3-1.4 1.7 2.2', 'Proof')}
    ${button('id="measure" aria-pressed="false" title="Measure from point to point (M)"', 'M1.5 10.5 10.5 1.5l4 4-9 9zM4 8l1.5 1.5M6.2 5.8l2 2M8.5 3.5 10 5', 'Measure')}
    <button type="button" id="more" aria-label="More" title="More, and the keys (?)">${icon('M3 8h.01M8 8h.01M13 8h.01')}</button>
    <div id="exports" role="group" aria-label="Export">
      ${button('id="export"', 'M8 2v8M4.5 7 8 10.5 11.5 7M2.5 13.5h11', 'Export SVG')}
      <button type="button" id="export-button" aria-label="Other exports" title="Other exports">${caret}</button>
    </div>
  </div>`;
