/** Carons, breves and rings of letters that slide, by eye: on a post a caron makes a “Y” of its letter, and drawn in beside a stem it is lost. */

import assert from 'node:assert/strict';
import { intersection } from '../../../src/geometry/clipper.ts';
import { area, boundsOf } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Bounds, Region } from '../../../src/geometry/types.ts';
import { marksAbove } from '../../../src/tag/lettering/marks-above.ts';
import { makeUnchecked, specOf } from '../support/engine.ts';
import { box } from '../support/shapes.ts';

const xHeight = 12;
const web = 1.5;

interface Marked {
  readonly whole: Region;
  readonly letter: Bounds;
  readonly mark: Region;
}

async function marked(text: string, font: string, index: number): Promise<Marked> {
  const shape = `body: {text: "${text}", font: ${font}, x_height: ${xHeight} mm, overlap: 0.6 mm}`;
  const made = await makeUnchecked(
    specOf([shape], 'body: [body], parts: many', ['stock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}']),
  );
  assert.equal(partsOf(made.region).length, 1, 'in one part');
  const { region } = [...made.report.tag!.made.values()][0]!.lettering![0]!.letters[index]!;
  const [mark] = marksAbove(region);
  const letter = boundsOf(partsOf(region).toSorted((a, b) => Math.abs(area(b)) - Math.abs(area(a)))[0]!)!;
  return { whole: made.region, letter, mark: mark! };
}

describe('A mark on a point', () => {
  for (const [text, font, index] of [
    ['Žofie', 'Pacifico', 0],
    ['Ďuro', 'Nunito', 0],
    ['Miloš', 'Nunito', 4],
    ['Erdoğan', 'Pacifico', 4],
    ['Åsa', 'Nunito', 0],
  ] as const)
    it(`stands on its letter itself, and no post: ${text} in ${font}`, async () => {
      const { letter, mark } = await marked(text, font, index);
      const { minY, maxY } = boundsOf(mark)!;
      assert.ok(minY < letter.maxY, `${minY - letter.maxY} mm above the letter`);
      assert.ok(letter.maxY - minY <= 0.3 * (maxY - minY) + 0.1, `sunk by ${letter.maxY - minY} of ${maxY - minY} mm`);
    });

  it('leaves the opening of a ring open', async () => {
    const { mark, whole } = await marked('Åsa', 'Nunito', 0);
    const opening = mark.map((ring) => [ring]).toSorted((a, b) => Math.abs(area(a)) - Math.abs(area(b)))[0]!;
    const { minX, maxX, minY, maxY } = boundsOf(opening)!;
    const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
    const seen: Region = [box(middle.x - 0.3, middle.y - 0.3, middle.x + 0.3, middle.y + 0.3)];
    assert.equal(area(intersection(whole, seen)), 0);
  });
});

describe('A caron beside a tall letter', () => {
  for (const [text, font, index] of [
    ['Ľuba', 'Nunito', 0],
    ['Ľuba', 'Pacifico', 0],
    ['Laďka', 'Nunito', 2],
    ['chuť', 'Pacifico', 3],
  ] as const)
    it(`is held by a bar with white above or below it: ${text} in ${font}`, async () => {
      const { whole, mark } = await marked(text, font, index);
      const { minX, minY, maxY } = boundsOf(mark)!;
      const foot = boundsOf(intersection(mark, [box(minX, minY, minX + 99, minY + 0.2)]))!;
      const beside: Region = [box(foot.minX - 0.1 * xHeight, minY, foot.minX - 0.05, maxY)];
      const material = area(intersection(whole, beside));
      assert.ok(area(beside) - material > 0.1 * xHeight * web, `${area(beside) - material} mm² of white`);
      assert.ok(material > 0, 'held there');
    });
});
