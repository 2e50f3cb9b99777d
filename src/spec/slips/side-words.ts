/** Words for sides and corners, in English and the other languages that makers write: `upper left`, `links`, `en haut`. */

import { withoutAccents } from '../../core/names.ts';

type Side = 'top' | 'bottom' | 'left' | 'right' | 'center';

const words: Readonly<Record<Side, readonly string[]>> = {
  top: ['top', 'upper', 'up', 'above', 'oben', 'boven', 'haut', 'arriba', 'superior', 'sopra', 'alto'],
  bottom: ['bottom', 'lower', 'down', 'below', 'unten', 'onder', 'bas', 'abajo', 'inferior', 'sotto', 'basso'],
  left: ['left', 'links', 'gauche', 'izquierda', 'izquierdo', 'sinistra', 'sinistro'],
  right: ['right', 'rechts', 'droite', 'derecha', 'derecho', 'destra', 'destro'],
  center: [
    'center',
    'centre',
    'middle',
    'centred',
    'centered',
    'mitte',
    'mittig',
    'centro',
    'medio',
    'milieu',
    'midden',
    'mezzo',
  ],
};

/** Words between them: `en haut à gauche`, `arriba a la izquierda`. */
const between: ReadonlySet<string> = new Set(['en', 'a', 'la', 'in', 'al', 'der', 'au', 'de', 'op', 'het']);

const sideOf = new Map(Object.entries(words).flatMap(([side, list]) => list.map((word) => [word, side as Side])));

/** Longest first, so that “centre” is not read as “cent” and what is left. */
const inOneWord = new RegExp(
  `${[...sideOf.keys()].sort((a, b) => b.length - a.length).join('|')}|[a-z]+|[^a-z\\s_-]`,
  'g',
);

/** What the words mean here: a side, a corner such as `top-left`, or `center`; `undefined` if they say anything else. */
export function placeIn(text: string): string | undefined {
  const plain = withoutAccents(text.toLowerCase());
  const found = (plain.match(inOneWord) ?? []).filter((word) => !between.has(word)).map((word) => sideOf.get(word));
  if (found.length === 0 || found.includes(undefined)) return undefined;
  const upright = found.find((side) => side === 'top' || side === 'bottom');
  const across = found.find((side) => side === 'left' || side === 'right');
  return [upright, across].filter((side) => side !== undefined).join('-') || 'center';
}
