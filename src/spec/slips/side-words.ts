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

function sidesIn(text: string): (Side | undefined)[] {
  const plain = withoutAccents(text.toLowerCase());
  return (plain.match(inOneWord) ?? []).filter((word) => !between.has(word)).map((word) => sideOf.get(word));
}

/** What the words mean where both of two sides may be meant: `top-bottom` or `left-right`, else a side. */
export function sidesMeant(text: string): string | undefined {
  if (/^vertical/i.test(text)) return 'top-bottom';
  if (/^horizontal/i.test(text)) return 'left-right';
  const found = sidesIn(text);
  const has = (side: Side) => found.includes(side);
  if (found.length === 2 && has('top') && has('bottom')) return 'top-bottom';
  if (found.length === 2 && has('left') && has('right')) return 'left-right';
  const [only] = found;
  return found.length === 1 && only !== 'center' ? only : undefined;
}

/** What the words mean here: a side, a corner such as `top-left`, or `center`; `undefined` if they say anything else. */
export function placeIn(text: string): string | undefined {
  const found = sidesIn(text);
  if (found.length === 0 || found.includes(undefined)) return undefined;
  const upright = found.find((side) => side === 'top' || side === 'bottom');
  const across = found.find((side) => side === 'left' || side === 'right');
  return [upright, across].filter((side) => side !== undefined).join('-') || 'center';
}
