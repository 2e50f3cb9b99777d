/** Keyboard shortcuts of the preview, for the page's own list and for the guide. */

type Keys = readonly (readonly [keys: string, what: string])[];

export const previewKeys: readonly (readonly [title: string, keys: Keys])[] = [
  [
    'View',
    [
      ['Arrows', 'move the drawing'],
      ['+ −', 'zoom in, zoom out; Ctrl or Cmd with the wheel'],
      ['0', 'fit everything'],
      ['1', 'true size'],
      ['P', 'proof'],
      ['Page Down, Page Up', 'next or previous tag of a batch'],
    ],
  ],
  [
    'Problems',
    [
      ['N, Shift+N', 'next or previous problem'],
      ['Z', 'zoom in on it'],
      ['F', 'fixes for it'],
      ['Enter', 'go to its line'],
    ],
  ],
  [
    'Move and size by hand',
    [
      ['S, Shift+S', 'select the next or previous thing to move'],
      ['Arrows', 'move it by 0.1 mm; with Shift by 1 mm'],
      ['Ctrl+Arrows', 'change its size'],
      ['Ctrl+Z, Ctrl+Y', 'undo, redo'],
      ['Esc', 'let go'],
    ],
  ],
  [
    'Measure',
    [
      ['M', 'ruler on or off'],
      ['Arrows', 'move its end; with Shift in larger steps'],
      ['Enter', 'set the end'],
    ],
  ],
];
