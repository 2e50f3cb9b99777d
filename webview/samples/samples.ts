/** Page with the list of samples. Text from outside is inserted as text only. */

import type { FromSamplesPage, SampleCard, SamplePicture, ToSamplesPage } from '../../src/protocol/samples.ts';

interface Api {
  postMessage(message: FromSamplesPage): void;
  getState(): unknown;
  setState(state: unknown): void;
}

declare function acquireVsCodeApi(): Api;

const api = acquireVsCodeApi();
const svgNamespace = 'http://www.w3.org/2000/svg';
const list = document.getElementById('samples')!;
const none = document.getElementById('none')!;
const filter = document.getElementById('filter') as HTMLInputElement;

/** The list item of each sample, and the words it is filtered by. */
const cards = new Map<string, { readonly item: HTMLLIElement; readonly words: string; readonly frame: SVGElement }>();

function cardOf({ fileName, title, purpose, isJob = false }: SampleCard): HTMLLIElement {
  const item = document.createElement('li');
  const open = document.createElement('button');
  open.type = 'button';
  open.className = 'open';
  const frame = document.createElementNS(svgNamespace, 'svg');
  frame.setAttribute('class', 'picture');
  frame.setAttribute('aria-hidden', 'true');
  const text = document.createElement('span');
  text.className = 'text';
  text.append(line('title', title), line('purpose', purpose));
  open.append(frame, text);
  open.addEventListener('click', () => {
    api.postMessage({ type: 'open', fileName });
  });
  const insert = document.createElement('button');
  insert.type = 'button';
  insert.className = 'insert';
  insert.append(insertIcon());
  insert.title = 'Add its shapes and pieces to the spec in the editor';
  insert.setAttribute('aria-label', `Insert ${title} into the spec in the editor`);
  insert.addEventListener('click', () => {
    api.postMessage({ type: 'insert', fileName });
  });
  item.append(open, ...(isJob ? [] : [insert]));
  cards.set(fileName, { item, words: `${title} ${purpose}`.toLowerCase(), frame });
  return item;
}

/** A plus on a sheet. */
function insertIcon(): SVGElement {
  const icon = document.createElementNS(svgNamespace, 'svg');
  icon.setAttribute('viewBox', '0 0 16 16');
  icon.setAttribute('aria-hidden', 'true');
  const strokes = document.createElementNS(svgNamespace, 'path');
  strokes.setAttribute('d', 'M3.5 1.5h6l3 3v10h-9zM9.5 1.5v3h3M8 7v5M5.5 9.5h5');
  icon.append(strokes);
  return icon;
}

function line(className: string, text: string): HTMLSpanElement {
  const span = document.createElement('span');
  span.className = className;
  span.textContent = text;
  return span;
}

function draw(frame: SVGElement, { size, paths, look }: SamplePicture): void {
  for (const [part, colour] of Object.entries(look)) frame.style.setProperty(`--${part}`, colour);
  frame.setAttribute('viewBox', `0 0 ${size.width} ${size.height}`);
  frame.replaceChildren(
    ...paths.map(({ use, data }) => {
      const path = document.createElementNS(svgNamespace, 'path');
      path.setAttribute('class', use);
      path.setAttribute('d', data);
      return path;
    }),
  );
}

/** Every typed word must occur, in any order. */
function applyFilter(): void {
  const wanted = filter.value.toLowerCase().split(/\s+/);
  let shown = 0;
  for (const { item, words } of cards.values()) {
    item.hidden = !wanted.every((word) => words.includes(word));
    if (!item.hidden) shown++;
  }
  none.hidden = shown > 0 || cards.size === 0;
  api.setState({ filter: filter.value });
}

window.addEventListener('message', ({ data }: MessageEvent<ToSamplesPage>) => {
  switch (data.type) {
    case 'samples':
      cards.clear();
      list.replaceChildren(...data.samples.map(cardOf));
      applyFilter();
      break;
    case 'picture': {
      const card = cards.get(data.fileName);
      if (card) draw(card.frame, data.picture);
      break;
    }
  }
});

filter.addEventListener('input', applyFilter);
const state = api.getState() as { readonly filter?: unknown } | undefined;
if (typeof state?.filter === 'string') filter.value = state.filter;
api.postMessage({ type: 'ready' });
