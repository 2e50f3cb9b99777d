/** The preview's page: wires messages, state and the page together. */

import type { ToHost } from '../src/preview/protocol.ts';
import { parseToPage } from './messages.ts';
import { Page } from './page.ts';
import { parseState } from './state.ts';

interface EditorApi {
  postMessage(message: ToHost): void;
  getState(): unknown;
  setState(state: unknown): void;
}

declare function acquireVsCodeApi(): EditorApi;

const editor = acquireVsCodeApi();
const state = parseState(editor.getState(), document.body.dataset['source'] ?? '');
// At once: a window that reloads before anything is drawn must know what to show.
editor.setState(state);

const page = new Page(
  {
    send: (message) => {
      editor.postMessage(message);
    },
    save: (changed) => {
      editor.setState(changed);
    },
  },
  state,
);
window.addEventListener('message', (event: MessageEvent<unknown>) => {
  const message = parseToPage(event.data);
  if (message) page.receive(message);
});
editor.postMessage({ type: 'ready' });
