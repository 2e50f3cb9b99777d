/** By OCR, in six sans faces: of words that begin with “Il” on bars it reads one in three; with straps, none of “IDA”, “IRIS” and “Till”. */

import assert from 'node:assert/strict';
import { packagedFont } from '../../fonts/font-files.ts';
import { make, newEngine, specOf } from '../support/engine.ts';

const slugs = ['roboto', 'quicksand', 'roboto-slab'] as const;
const fonts = slugs.map(async (slug) => [`${slug}.woff`, new Uint8Array(await packagedFont(slug))] as const);
const engine = newEngine(Object.fromEntries(await Promise.all(fonts)));

async function told(text: string, font: string, more: string) {
  const shapes = [`name: {text: "${text}", font: ${font}.woff, x_height: 12 mm, grow: 0.3 mm, ${more}}`];
  const head = ['stock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}'];
  const { issues } = await make(specOf(shapes, 'body: [name], parts: many', head), engine);
  return issues.filter(({ code }) => code === 'hard-to-read').map(({ severity, message }) => `${severity}: ${message}`);
}

const apart = 'Engraved, or with letters glued to a backing, its letters stand apart.';
const asH = (text: string, stems: string) =>
  `info: “${text}” may be hard to read: “${stems}” is joined halfway up, as the stems of an “H” are. ${apart}`;
const asT = (text: string, stem: string) =>
  `info: “${text}” may be hard to read: what joins the “${stem}” at its top makes a “T” of it. ${apart}`;

describe('Bare stems and what joins them', () => {
  for (const font of ['roboto', 'quicksand'] as const) {
    it(`are told of as an H where it lies halfway up: ${font}`, async () => {
      assert.deepEqual(await told('Ilse', font, 'overlap: auto'), [asH('Ilse', 'Il')]);
      assert.deepEqual(await told('Ilse', font, 'straps: 2 mm'), [asH('Ilse', 'Il')]);
    });

    it(`are told of as a T where it lies at a top: ${font}`, async () => {
      assert.deepEqual(await told('EMIL', font, 'straps: 2 mm'), [asT('EMIL', 'I')]);
      assert.deepEqual(await told('MIMI & LULU', font, 'straps: 2 mm'), [asT('MIMI & LULU', 'I')]);
    });

    it(`are left in peace on bars at their feet, beside an L, as the strokes of another letter and between words: ${font}`, async () => {
      for (const text of ['Ella', 'EMIL', 'PHIL', 'MIMI & LULU', 'HEIDI', 'Hilde'])
        assert.deepEqual(await told(text, font, 'overlap: auto'), [], text);
    });
  }

  it('are told of as a T behind a 1, whose flag is on the other side', async () => {
    assert.deepEqual(await told('2011', 'roboto', 'straps: 2 mm'), [asT('2011', '1')]);
    assert.deepEqual(await told('2014', 'roboto', 'straps: 2 mm'), []);
  });

  it('are left in peace with serifs', async () => {
    for (const text of ['Ilse', 'EMIL', '2011', 'MIMI & LULU'])
      assert.deepEqual(await told(text, 'roboto-slab', 'straps: 2 mm'), [], text);
  });
});
