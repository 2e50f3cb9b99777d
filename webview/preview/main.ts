/** Entry point of the preview's page: connects messages, state and page. */

import type { ToHost } from '../../src/protocol/preview.ts';
import { parseToPage } from './messages.ts';
import { PreviewPage } from './page.ts';
import { parseRemembered } from './remembered.ts';
import { parseState } from './state.ts';

interface EditorApi {
  postMessage(message: ToHost): void;
  getState(): unknown;
  setState(state: unknown): void;
}

declare function acquireVsCodeApi(): EditorApi;

const editor = acquireVsCodeApi();
const { source = '', remembered: json } = document.body.dataset;
const remembered = parseRemembered(json);
// A page that was only hidden has the latest state; a new one starts with the view settings remembered for the file.
const last = parseState(editor.getState(), source);
const state = last ?? { ...parseState({ ...remembered.kept, source }, source)!, follows: remembered.follows };
// At once: a window that reloads before anything is drawn must know what to show.
editor.setState(state);

const page = new PreviewPage(
  {
    send: (message) => {
      editor.postMessage(message);
    },
    save: (changed) => {
      editor.setState(changed);
    },
  },
  state,
  remembered,
);
window.addEventListener('message', (event: MessageEvent<unknown>) => {
  const message = parseToPage(event.data);
  if (message) page.receive(message);
});
editor.postMessage({ type: 'ready' });
