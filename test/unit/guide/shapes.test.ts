import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { shapesSvg } from '../../../src/dev/shape-pictures.ts';
import { shapesPicture } from '../../../src/dev/shapes-picture.ts';

describe('The picture of what generators make', () => {
  it('is what they make now; “npm run shape-pictures” draws it again', async () => {
    const file = join(import.meta.dirname, '../../../src/guide', shapesPicture);
    assert.equal(readFileSync(file, 'utf8').replaceAll('\r\n', '\n'), await shapesSvg());
  });

  it('is a drawing that another program reads', async () => {
    const { width, height } = new Resvg(await shapesSvg());
    assert.deepEqual([width, height], [810, 576]);
  });
});
