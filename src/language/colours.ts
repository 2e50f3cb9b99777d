/** Colours written in a spec. */

import type { TextRange } from '../core/issue.ts';
import { channels } from '../look/channels.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { isColour } from './schema.ts';
import { valuesIn } from './values-with-schema.ts';

/** Each channel from 0 to 1. */
export interface Colour {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

export interface WrittenColour {
  readonly range: TextRange;
  readonly colour: Colour;
}

export function coloursIn({ tree }: SpecSource): WrittenColour[] {
  return [...valuesIn(tree)].flatMap(({ node, schemas }): WrittenColour[] => {
    if (node.kind !== 'scalar' || !schemas.some(isColour)) return [];
    const text = String(node.value);
    if (!/^#[0-9a-f]{6}$/i.test(text)) return [];
    const [red, green, blue] = channels(text);
    return [{ range: node.range, colour: { red: red / 255, green: green / 255, blue: blue / 255 } }];
  });
}

/** As written in a spec: quoted, because # starts a comment. */
export function colourText({ red, green, blue }: Colour): string {
  const hex = [red, green, blue].map((channel) =>
    Math.round(channel * 255)
      .toString(16)
      .padStart(2, '0'),
  );
  return `"#${hex.join('').toUpperCase()}"`;
}
