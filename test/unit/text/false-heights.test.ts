import assert from 'node:assert/strict';
import { openFace } from '../../../src/text/font-face.ts';
import { bundledFontBytes } from '../../fonts/font-files.ts';
import { withHeights } from '../../fonts/false-heights.ts';

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
});
