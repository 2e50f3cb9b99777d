import assert from 'node:assert/strict';
import { lettersInWords } from '../../../src/fixes/letters-in-words.ts';
import { lookChange } from '../../../src/fixes/look.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { make } from '../support/engine.ts';
import type { LettersChange } from '../../../src/fixes/letters-in-words.ts';

/** Mean width of strokes by the shoelace formula and the lengths of the edges. */
function strokeOf(region: Region): number {
  let [twiceArea, length] = [0, 0];
  for (const ring of region)
    ring.forEach((a, index) => {
      const b = ring[(index + 1) % ring.length]!;
      twiceArea += a.x * b.y - b.x * a.y;
      length += Math.hypot(b.x - a.x, b.y - a.y);
    });
  return twiceArea / length;
}

const said = (change: Partial<LettersChange>) =>
  lettersInWords({ of: 6, redrawn: [], marked: [], larger: 0, heavier: 0, ...change });

describe('What has become of letters, in words', () => {
  it('is nothing where nobody would notice', () => {
    assert.deepEqual(said({}), []);
    assert.deepEqual(said({ larger: 0.019, heavier: -0.019 }), []);
    assert.deepEqual(said({ larger: 0.021 }), ['letters 2 % larger']);
  });

  it('says “letters” once, whatever they have become', () => {
    const all = said({ larger: 0.05, heavier: -0.12, spaced: 'further apart' });
    assert.deepEqual(all, ['letters 5 % larger, 12 % lighter and further apart']);
  });

  it('names letters of another shape, up to three, or says it of all', () => {
    assert.deepEqual(said({ redrawn: ['a', 'e', 'a'] }), ['“a” and “e” of another shape']);
    assert.deepEqual(said({ of: 9, redrawn: ['a', 'e', 'o', 'n'] }), ['some letters of another shape']);
    assert.deepEqual(said({ redrawn: ['a', 'e', 'o', 'n'], spaced: 'closer together' }), ['letters of another shape']);
  });

  it('tells dots and accents that have moved from letters', () => {
    assert.deepEqual(said({ marked: ['i'] }), ['dot of “i” moved']);
    assert.deepEqual(said({ marked: ['i', 'j'] }), ['dots moved']);
    assert.deepEqual(said({ marked: ['í', 'é'] }), ['accents moved']);
    assert.deepEqual(said({ marked: ['i', 'é'] }), ['dots and accents moved']);
  });

  it('says of another font by how much its strokes are wider or narrower on the piece', async () => {
    const inFont = (font: string, growth: number) =>
      make(
        `tagwright: 1\nshapes:\n  name: {text: Rosa, font: ${font}, width: 60 mm, grow: ${growth} mm, straps: 1.5 mm}\npieces:\n  tag: {body: [name]}\n`,
      );
    // All growth counts as much on thin strokes as on bold ones: of the letters as drawn its share is larger.
    const [script, plain] = [await inFont('Great Vibes', 0.5), await inFont('Nunito', 0.5)];
    const [thin, bold] = [script, plain].map(({ report }) => {
      const piece = report.tag!.pieces[0]!;
      return strokeOf([...report.tag!.made.values()].find(({ lettering }) => lettering)?.region ?? piece.region);
    }) as [number, number];
    const { words } = lookChange(script.report, plain.report);
    const heavier = Math.round(100 * (bold / thin - 1));
    assert.ok(heavier > 10, String(heavier));
    assert.match(words.join(), new RegExp(`^letters of another shape.* and ${heavier} % heavier$`));
    const back = lookChange(plain.report, script.report).words.join();
    assert.match(back, new RegExp(` and ${Math.round(100 * (1 - thin / bold))} % lighter$`));
  });
});
