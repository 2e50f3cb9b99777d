import assert from 'node:assert/strict';
import { area, boundsOf } from '../../../src/geometry/measure.ts';
import { hintsOf } from '../../../src/language/hover/hints.ts';
import { report } from '../support/engine.ts';

/** A piece of one shape, of a stock whose members must be 1.5 mm wide. */
async function grown(shape: string, piece = 'body: [a]') {
  const text = `tagwright: 1\nstock: {thickness: 3 mm, min_web: 1.5 mm}\nshapes:\n  disc: {circle: 60 mm}\n  a: ${shape}\npieces:\n  tag: {${piece}, parts: many}\n`;
  const made = await report(text);
  assert.ok(made.tag, JSON.stringify(made.issues));
  const shapeA = made.model!.shapes.get('a')!;
  const region = made.tag.made.get(shapeA)!.region;
  const thin = made.issues.filter(({ code }) => code === 'thin-stroke' || code === 'weak-bridge');
  return { made, region, box: boundsOf(region)!, thin, growth: made.tag.growths?.get(shapeA) };
}

describe('Growth as much as it needs', () => {
  it('makes a bar as wide as min_web, and no wider', async () => {
    const { box, thin, growth } = await grown('{rectangle: [40 mm, 1 mm], grow: auto}');
    assert.deepEqual(thin, []);
    // Half of what it lacks on either side.
    assert.ok(Math.abs(growth! - 0.25) < 0.011, `${growth}`);
    assert.ok(Math.abs(box.maxY - box.minY - 1.5) < 0.025);
  });

  it('leaves no specks where counters close, as those of these letters at 70 mm did', async () => {
    const { made, region } = await grown('{lines: [Granny, Smith], font: Pacifico, width: 70 mm, grow: 1 mm}');
    assert.ok(!made.issues.some(({ code }) => code === 'speck'));
    for (const ring of region) {
      const { minX, minY, maxX, maxY } = boundsOf([ring])!;
      assert.ok(Math.max(maxX - minX, maxY - minY) >= 0.1);
    }
  });

  it('is none where nothing is too narrow', async () => {
    const { region, growth } = await grown('{rectangle: [40 mm, 10 mm], grow: auto}');
    assert.equal(growth, 0);
    assert.ok(Math.abs(area(region) - 400) < 1e-6);
  });

  for (const size of [
    'width: 70 mm',
    'x_height: 9 mm',
    'width: 80 mm, overlap: 0.6 mm',
    'fit: {in: disc, margin: 3 mm}',
  ]) {
    it(`leaves no thin place in lettering with ${size}`, async () => {
      const plain = await grown(`{text: Lavender, font: Great Vibes, ${size}}`);
      assert.ok(plain.thin.length > 0, 'it has some by itself');
      const { thin, growth, box } = await grown(`{text: Lavender, font: Great Vibes, ${size}, grow: auto}`);
      assert.deepEqual(thin, []);
      assert.ok(growth! > 0 && growth! <= 0.75);
      if (size === 'width: 70 mm') assert.ok(Math.abs(box.maxX - box.minX - 70) < 0.06, 'the size is the finished one');
    });
  }

  it('is shown behind the word', async () => {
    const { made } = await grown('{rectangle: [40 mm, 1 mm], grow: auto}');
    const hints = hintsOf(made, made.source).map(({ text }) => text);
    assert.ok(
      hints.some((text) => /^= 0\.2[56] mm$/.test(text)),
      hints.join(', '),
    );
  });
});
