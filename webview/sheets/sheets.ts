/** Entry point of the sheets page: connects messages, state and page. */

import type { FromSheetsPage, ToSheetsPage } from '../../src/protocol/sheets.ts';
import { SheetsPage } from './page.ts';
import { parseState } from './state.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromSheetsPage): void;
  getState(): unknown;
  setState(state: unknown): void;
};

const editor = acquireVsCodeApi();
const page = new SheetsPage(
  {
    send: (message) => {
      editor.postMessage(message);
    },
    save: (state) => {
      editor.setState(state);
    },
  },
  parseState(editor.getState()),
);
window.addEventListener('message', ({ data }: MessageEvent<ToSheetsPage>) => {
  page.receive(data);
});
editor.postMessage({ type: 'ready' });
