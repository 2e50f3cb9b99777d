import assert from 'node:assert/strict';
import { reportsOf } from '../../../src/engine/batch.ts';
import { batchTags } from '../../../src/scene/batch-tags.ts';
import { assertNear, newEngine, report, specOf } from '../support/engine.ts';

/** Plates 40 mm wide of these heights, in mm, as the tags of a batch would be. */
async function plates(...heights: readonly number[]) {
  const specs = heights.map((height) => specOf([`plate: {rectangle: [40 mm, ${height} mm]}`], 'body: [plate]'));
  return batchTags(await Promise.all(specs.map((spec) => report(spec))));
}

describe('What is shown of the tags of a batch', () => {
  it('is a picture and the size of each', async () => {
    const tags = await plates(20, 30);
    for (const [index, height] of [20, 30].entries()) {
      assertNear(tags[index]!.width!, 40, 0.001);
      assertNear(tags[index]!.height!, height, 0.001);
      const { size, paths } = tags[index]!.picture!;
      assert.ok(size.width <= 144 && size.height <= 80);
      assert.equal(paths[0]!.use, 'material');
    }
  });

  it('is of what is glued together: a second tag beside it is another matter', async () => {
    const shapes = [
      'plate: {rectangle: [40 mm, 20 mm]}',
      'dot: {ellipse: [10 mm, 10 mm]}',
      'bar: {rectangle: [90 mm, 60 mm]}',
    ];
    const glued = 'body: [plate]}\n  dot: {body: [dot], glue_to: tag}\n  other: {body: [bar]';
    const [tag] = batchTags([await report(specOf(shapes, glued))]);
    assertNear(tag!.width!, 40, 0.001);
    assertNear(tag!.height!, 20, 0.001);
    assert.equal(tag!.picture!.paths.filter(({ use }) => use === 'material').length, 2);
  });

  it('is what stands out: over one and a half times as tall as the middle one, of three at least', async () => {
    const tall = async (...heights: readonly number[]) => (await plates(...heights)).map(({ isTall }) => isTall);
    assert.deepEqual(await tall(20, 20, 30.1), [false, false, true]);
    assert.deepEqual(await tall(20, 20, 29.9), [false, false, false]);
    assert.deepEqual(await tall(20, 60), [false, false], 'of two, neither is the others');
    assert.deepEqual(await tall(60, 60, 20), [false, false, false], 'a small one hangs well beside the others');
  });

  it('is a short name as tall as it is wide, beside long ones of one width', async () => {
    const engine = newEngine();
    const options = { locate: (relative: string) => relative };
    const spec = `tagwright: 1
batch: [Jo, Rosalind, Marguerite, Konstantin]
shapes: {word: {text: "{name}", font: Pacifico, width: 70 mm}}
pieces: {tag: {body: [word], parts: many}}
`;
    const tags = batchTags(await reportsOf(engine, await engine.compute(spec, options), options));
    assert.deepEqual(
      tags.map(({ isTall }) => isTall),
      [true, false, false, false],
    );
  });

  it('is said to be hard to read where its words are', async () => {
    const [tag] = batchTags([
      await report(
        specOf(
          ['word: {text: Sorrel, font: Nunito, x_height: 0.5 mm}', 'plate: {rectangle: [40 mm, 20 mm]}'],
          'body: [plate], engrave: [word]',
        ),
      ),
    ]);
    assert.equal(tag!.isHardToRead, true);
  });

  it('is how many problems each has and how grave, and no picture where nothing could be made', async () => {
    const small = specOf(
      ['plate: {rectangle: [40 mm, 20 mm]}'],
      'body: [plate], hanger: {hole: {on: plate, at: left, diameter: 1 mm}}',
      ['tie: {twine: 2 mm}'],
    );
    const [good, weak, broken] = batchTags([
      await report(specOf(['plate: {rectangle: [40 mm, 20 mm]}'], 'body: [plate]')),
      await report(small),
      await report('tagwright: 1\nshapes: {a: {circle: 3}}\n'),
    ]);
    assert.deepEqual([good!.problems, good!.severity], [0, undefined]);
    assert.ok(weak!.problems >= 1 && weak!.severity !== undefined && weak!.picture);
    assert.ok([good, weak, broken].every((each) => !each!.isHardToRead));
    assert.equal(broken!.severity, 'error');
    assert.equal(broken!.picture, undefined);
  });
});
