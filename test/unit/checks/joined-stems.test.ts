/** By OCR, in five light faces: of “Illinois” and “2011” it reads one in ten on bars at their feet, and of “Hill” one in three. */

import assert from 'node:assert/strict';
import { packagedFont } from '../../fonts/font-files.ts';
import { make, newEngine, specOf } from '../support/engine.ts';

const slugs = ['roboto', 'quicksand', 'fredoka', 'josefin-sans', 'roboto-slab'] as const;
const fonts = slugs.map(async (slug) => [`${slug}.woff`, new Uint8Array(await packagedFont(slug))] as const);
const engine = newEngine(Object.fromEntries(await Promise.all(fonts)));

async function told(text: string, font: string, more = ', overlap: auto') {
  const shapes = [`name: {text: "${text}", font: ${font}.woff, x_height: 12 mm${more}}`];
  const head = ['stock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}'];
  const { issues } = await make(specOf(shapes, 'body: [name], parts: many', head), engine);
  return issues.filter(({ code }) => code === 'hard-to-read').map(({ severity, message }) => `${severity}: ${message}`);
}

const said = (text: string, stems: string) =>
  `info: “${text}” may be hard to read: “${stems}” stands on bars at its feet, as the strokes of a “u” do. Engraved, or with letters glued to a backing, its letters stand apart.`;

describe('Bare stems on bars at their feet', () => {
  for (const [text, stems] of [
    ['Illinois', 'Illi'],
    ['2011', '11'],
    ['Hill', 'ill'],
    ['Gill', 'ill'],
    ['TILL', 'ILL'],
  ] as const)
    for (const font of ['roboto', 'quicksand'] as const)
      it(`are told of: ${text} in ${font}`, async () => {
        assert.deepEqual(await told(text, font), [said(text, stems)]);
        assert.deepEqual(await told(text, font, ''), []);
      });

  it('are left in peace where they are few, of other letters, or have serifs', async () => {
    for (const text of ['Nell', 'Milla', 'O’Neill', 'Lily', 'Minimum', '2014'])
      assert.deepEqual(await told(text, 'roboto'), [], text);
    assert.deepEqual(await told('Illinois', 'roboto-slab'), []);
    // Its stems are much wider than a bar is high: OCR reads five of six.
    assert.deepEqual(await told('Gill', 'josefin-sans'), []);
    // With tails they are read in the middle of a word, and not at its end.
    const named = async (name: string) =>
      (
        await make(
          specOf([`name: {text: ${name}, font: Nunito, x_height: 11, overlap: auto}`], 'body: [name], parts: many'),
        )
      ).issues.filter(({ code }) => code === 'hard-to-read');
    assert.equal((await named('William')).length, 0);
    assert.equal((await named('Hill')).length, 1);
  });
});
