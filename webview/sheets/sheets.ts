/** The page of sheets: buttons that say what they are about. All else on it is only looked at. */

import type { FromSheetsPage } from '../../src/protocol/sheets.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromSheetsPage): void };

const api = acquireVsCodeApi();

document.addEventListener('click', ({ target }) => {
  const message =
    target instanceof Element ? target.closest<HTMLElement>('[data-message]')?.dataset['message'] : undefined;
  // The host looks at it before it does anything.
  if (message !== undefined) api.postMessage(JSON.parse(message) as FromSheetsPage);
});
