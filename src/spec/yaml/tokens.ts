/** The text of a spec split into the lexer's tokens. Only the lexer can tell a comment from a `#` in a string. */

import { Lexer } from 'yaml';

export interface SpecToken {
  readonly start: number;
  readonly text: string;
  /** `plain` is text without quotes; `mark` is structure, such as a colon or a bracket. */
  readonly kind: 'plain' | 'quoted' | 'comment' | 'space' | 'mark';
}

/** Marks that the lexer inserts between tokens and that are not in the text; the last announces plain text. */
const notInText = new Set(['\u0002', '\u0018', '\u001f']);
const plainFollows = '\u001f';

/** The tokens in the order of the text, without gaps. */
export function tokensOf(text: string): SpecToken[] {
  const tokens: SpecToken[] = [];
  let start = 0;
  let plain = false;
  for (const token of new Lexer().lex(text)) {
    if (notInText.has(token)) {
      plain = token === plainFollows;
      continue;
    }
    tokens.push({ start, text: token, kind: plain ? 'plain' : kindOf(token) });
    start += token.length;
    plain = false;
  }
  return tokens;
}

function kindOf(token: string): SpecToken['kind'] {
  if (token.startsWith('#')) return 'comment';
  if (token.startsWith('"') || token.startsWith("'")) return 'quoted';
  return token.trim() === '' ? 'space' : 'mark';
}
