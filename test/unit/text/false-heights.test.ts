import assert from 'node:assert/strict';
import { openFace } from '../../../src/text/font-face.ts';
import { bundledFontBytes, packagedFont } from '../../fonts/font-files.ts';
import { withHeights } from '../../fonts/false-heights.ts';
import { makeUnchecked, newEngine, specOf } from '../support/engine.ts';

describe('Heights that a font says of itself', () => {
  const heights = async (xHeight: number, capHeight: number) => {
    const bytes = withHeights(await bundledFontBytes('Nunito', 800), xHeight, capHeight);
    const face = await openFace({ bytes, index: 0, variations: {} });
    return [face.xHeight * face.unitsPerEm, face.capHeight * face.unitsPerEm].map((each) => Math.round(each));
  };

  it('count where its letters have about that height, and give way to the letters where they are far off', async () => {
    const [x, cap] = (await heights(1, 1)) as [number, number];
    // As Nunito draws them.
    assert.ok(x > 480 && x < 510, String(x));
    assert.ok(cap > 700 && cap < 720, String(cap));
    assert.deepEqual(await heights(Math.ceil(x / 1.49), Math.floor(cap * 1.49)), [
      Math.ceil(x / 1.49),
      Math.floor(cap * 1.49),
    ]);
    assert.deepEqual(await heights(Math.floor(x / 1.52), Math.ceil(cap * 1.52)), [x, cap]);
  });

  it('are not believed of a part of a font without those letters, which has the size of the other part', async () => {
    const part = async (subset: string) => new Uint8Array(await packagedFont('pacifico', subset, 400));
    const other = await part('latin-ext');
    const face = await openFace({ bytes: withHeights(other, 55, 0), index: 0, variations: {} });
    assert.ok(!face.covers('x'.codePointAt(0)!));
    assert.equal(face.xHeight, 0.5);
    const sizes: number[] = [];
    for (const ext of [other, withHeights(other, 55, 0), withHeights(other, 900, 0)]) {
      const engine = newEngine({ 'a.woff': await part('latin'), 'b.ttf': ext });
      const spec = specOf(['name: {text: Paweł, font: [a.woff, b.ttf], x_height: 12}'], 'body: [name], parts: many');
      sizes.push((await makeUnchecked(spec, engine)).width);
    }
    assert.ok(sizes[0]! < 90, `${sizes[0]!}`);
    assert.deepEqual(sizes, [sizes[0], sizes[0], sizes[0]]);
  });
});
