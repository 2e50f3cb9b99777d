/**
 * A font of plain blocks with the measures that the README of the Ahem font states (W3C CSS test suites; Ahem itself is in
 * the public domain, but no package carries it): an em of 1000 units, ascent 800, descent 200, `X` a full em square from
 * descent to ascent, `p` the part below the baseline, `É` the part above. Made by opentype.js, with CFF outlines.
 */

import { Font, Glyph, Path } from 'opentype.js/dist/opentype.mjs';

export function blockFont(): Uint8Array {
  const block = (name: string, character: string, bottom: number, top: number): Glyph => {
    const path = new Path();
    path.moveTo(0, bottom);
    path.lineTo(1000, bottom);
    path.lineTo(1000, top);
    path.lineTo(0, top);
    path.close();
    return new Glyph({ name, unicode: character.codePointAt(0)!, advanceWidth: 1000, path });
  };
  const font = new Font({
    familyName: 'Blocks',
    styleName: 'Regular',
    unitsPerEm: 1000,
    ascender: 800,
    descender: -200,
    glyphs: [
      new Glyph({ name: '.notdef', advanceWidth: 1000, path: new Path() }),
      new Glyph({ name: 'space', unicode: 0x20, advanceWidth: 1000, path: new Path() }),
      block('X', 'X', -200, 800),
      block('p', 'p', -200, 0),
      block('Eacute', 'É', 0, 800),
    ],
  });
  return new Uint8Array(font.toArrayBuffer());
}
