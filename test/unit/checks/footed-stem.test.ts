/** By OCR: of the readings of LIAM, LINA, LIZ and OLIVIA in five sans faces a quarter are left once the letters are joined; “KLI” is “KU”. */

import assert from 'node:assert/strict';
import { packagedFont } from '../../fonts/font-files.ts';
import { make, newEngine, specOf } from '../support/engine.ts';

const slugs = ['josefin-sans', 'playfair-display', 'roboto-slab'] as const;
const fonts = slugs.map(async (slug) => [`${slug}.woff`, new Uint8Array(await packagedFont(slug))] as const);
const engine = newEngine(Object.fromEntries(await Promise.all(fonts)));

async function told(text: string, font: string, more = ', overlap: auto') {
  const shapes = [`name: {text: "${text}", font: ${font}, cap_height: 16 mm${more}}`];
  const head = ['stock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}'];
  const { issues } = await make(specOf(shapes, 'body: [name], parts: many', head), engine);
  return issues.filter(({ code }) => code === 'hard-to-read').map(({ severity, message }) => `${severity}: ${message}`);
}

describe('A capital I at the foot of an L', () => {
  for (const font of ['Nunito', 'josefin-sans.woff'])
    it(`reads as a “U” with it: ${font}`, async () => {
      for (const text of ['LIAM', 'OLIVIA'])
        assert.deepEqual(await told(text, font), [
          `info: “${text}” may be hard to read: the foot of the “L” runs on to the “I”, and “LI” reads as a “U”. Engraved, or with letters glued to a backing, its letters stand apart.`,
        ]);
      assert.deepEqual(await told('LIAM', font, ''), []);
    });

  it('is an I where it has serifs, and a small i has a dot', async () => {
    for (const font of ['playfair-display.woff', 'roboto-slab.woff', 'Alfa Slab One'])
      assert.deepEqual(await told('LIAM', font), [], font);
    assert.deepEqual(await told('Liam', 'Nunito'), []);
    assert.deepEqual(await told('LARA', 'Nunito'), []);
    // The E before it is read, and by it the L.
    for (const text of ['FELIX', 'AMELIA', 'ELLIE']) assert.deepEqual(await told(text, 'Nunito'), [], text);
  });
});
