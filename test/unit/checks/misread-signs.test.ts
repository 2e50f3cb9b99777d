/** By eye, on names in fifteen faces. */

import assert from 'node:assert/strict';
import { misreadSignsInWords } from '../../../src/checks/measures/misread-signs.ts';
import { packagedFont } from '../../fonts/font-files.ts';
import { make, newEngine, specOf } from '../support/engine.ts';

const slugs = ['parisienne', 'kaushan-script', 'lobster', 'roboto'] as const;
const fonts = slugs.map(async (slug) => [`${slug}.woff`, new Uint8Array(await packagedFont(slug))] as const);
const engine = newEngine(Object.fromEntries(await Promise.all(fonts)));

async function told(text: string, font: string, more = ', overlap: auto', piece = 'body: [name], parts: many') {
  const shapes = [
    `name: {text: "${text}", font: ${font}.woff, x_height: 12 mm${more}}`,
    'plate: {around: name, by: 4 mm}',
  ];
  const { issues } = await make(specOf(shapes, piece), engine);
  return issues.filter(({ code }) => code === 'hard-to-read').map(({ severity, message }) => `${severity}: ${message}`);
}

describe('An apostrophe that stands over a letter as its accent', () => {
  it('is told of, and how it stands clear', async () => {
    const said =
      "info: “Bee's” may be hard to read: the apostrophe reads as an accent of the “s”. Engraved, or with letters glued to a backing, it stands clear of them.";
    assert.deepEqual(await told("Bee's", 'parisienne'), [said]);
    assert.deepEqual(await told("Bee's", 'parisienne', '', 'body: [plate], engrave: [name]'), []);
    assert.deepEqual(await told("Bee's", 'parisienne', '', 'body: [name], parts: many'), []);
  });

  it('is left in peace before the letter, beside a tall one, and where there is none', async () => {
    for (const font of ['kaushan-script', 'lobster', 'roboto'] as const)
      for (const text of ["Bee's", "Nan's", "O'Neill", 'Bees'])
        assert.deepEqual(await told(text, font), [], `${text}, ${font}`);
  });

  it('is told of with the others', () => {
    const sign = { letter: 's', as: 'part' } as const;
    assert.equal(misreadSignsInWords([sign]), 'the apostrophe reads as a part of the “s”');
    assert.equal(misreadSignsInWords([sign, sign]), 'the apostrophe reads as a part of the “s”, and so does another');
  });
});
