/** A word is read the same whether its letters are one text or shapes of their own: its own reading as one text is what the others are held to. */

import assert from 'node:assert/strict';
import { normalise, union } from '../../../src/geometry/clipper.ts';
import { boundsOf, boxRing, widened } from '../../../src/geometry/measure.ts';
import type { Bounds } from '../../../src/geometry/types.ts';
import { letterLines } from '../../../src/tag/hanger/letter-lines.ts';
import { readAs, readingOf } from '../../../src/tag/hanger/reading.ts';
import { Lettering } from '../../../src/tag/lettering/letters.ts';
import type { MadeShape } from '../../../src/tag/made-shape.ts';
import { make, makeUnchecked, specOf } from '../support/engine.ts';

async function wordShape(text: string): Promise<MadeShape> {
  const { report } = await makeUnchecked(
    specOf([`body: {text: "${text}", font: Nunito, weight: 800, x_height: 10}`], 'body: [body], parts: many'),
  );
  return [...report.tag!.made.values()][0]!;
}

/** Each letter a shape, as if the spec had them one by one. */
function lettersOf({ band, lettering }: MadeShape): MadeShape[] {
  const [{ letters, path, xHeight, grow, as }] = lettering as [Lettering];
  return letters.map((letter) => {
    const alone = new Lettering({ path, xHeight, grow, as }, () => [{ ...letter, opens: true }]);
    return { region: letter.region, lettering: [alone], ...(band ? { band } : {}) };
  });
}

/** All of them one shape, with a bar along the line through their feet or a plate below all. */
function unitedWith(shapes: readonly MadeShape[], box: Bounds): MadeShape {
  const region = union([...shapes.map((each) => each.region), normalise([boxRing(box)])]);
  return { region, lettering: shapes.flatMap((each) => each.lettering!.map((own) => own.within(each.region))) };
}

const ring = { hole: 1.5, wall: 2 };

function readings(shapes: readonly MadeShape[], box: Bounds): string[] {
  const reading = readingOf(shapes);
  const found: string[] = [];
  for (let x = box.minX; x < box.maxX; x += 1)
    for (let y = box.minY; y < box.maxY; y += 1)
      found.push(`${x.toFixed(1)},${y.toFixed(1)}: ${readAs(reading, { x, y }, ring).join()}`);
  return found;
}

describe('The lines that a ring is read with', () => {
  for (const text of ['Lamb', 'Liv', 'Aila'])
    it(`are those of ${text}, its letters one text, one by one, or put together with a bar`, async () => {
      const word = await wordShape(text);
      const box = boundsOf(word.region)!;
      const about = widened(box, 8);
      const letters = lettersOf(word);
      const { baseline } = letterLines([word])[0]!;
      const bar = { minX: box.minX - 2, maxX: box.maxX + 2, minY: baseline - 2, maxY: baseline + 2 };
      const asText = readings([word], about);
      assert.ok(
        asText.filter((each) => !each.endsWith(': ')).length > asText.length / 10,
        'a ring is read as something',
      );
      assert.deepEqual(readings(letters, about), asText);
      assert.deepEqual(readings([unitedWith(letters, bar)], about), asText);
    });

  it('are none of letters within a plate that they were put together with', async () => {
    const word = await wordShape('Lamb');
    assert.deepEqual(letterLines([unitedWith(lettersOf(word), widened(boundsOf(word.region)!, 4))]), []);
  });

  it('are two of letters over one another, or far apart', async () => {
    const [one, other] = lettersOf(await wordShape('Il')) as [MadeShape, MadeShape];
    for (const shift of [
      { e: 0, f: 30 },
      { e: 40, f: 0 },
    ]) {
      const moved = {
        ...other,
        lettering: other.lettering!.map((each) => each.mapped({ a: 1, b: 0, c: 0, d: 1, ...shift })),
      };
      assert.equal(letterLines([one, moved]).length, 2);
    }
    assert.equal(letterLines([one, other]).length, 1);
  });
});

describe('A ring on initials that are shapes of their own', () => {
  const initials = (place: string, body: string) => {
    const letter = (text: string, more = '') => `{text: ${text}, font: Nunito, weight: 800, x_height: 9${more}}`;
    const shapes = [
      `l: ${letter('L')}`,
      `a: ${letter('A', ', place: {right_of: l, gap: 1}')}`,
      `b: ${letter('B', ', place: {right_of: a, gap: 1}')}`,
      'bar: {rectangle: [42, 4], place: {below: a, gap: -2}}',
      'all: {union: [bar, l, a, b]}',
    ];
    const stock = ['stock: {thickness: 3, kerf: 0.16}', 'tie: {twine: 1.5}'];
    return make(specOf(shapes, `body: [${body}], hanger: {ring: ${place}}`, stock));
  };

  // There it is an Å; before, it was put there.
  for (const body of ['bar, l, a, b', 'all'])
    it(`does not stand on the head of the A by itself: [${body}]`, async () => {
      const [hanger] = (await initials('auto', body)).pieces[0]!.hangers;
      assert.ok(!hanger!.readAs!.includes('ringed'), hanger!.readAs!.join());
    });

  it('is told of where it is put there', async () => {
    const made = await initials('{at: {up: 10}}', 'all');
    assert.match(made.issues.find(({ code }) => code === 'hole-blocked')?.message ?? '', /head of an “A”/);
  });
});
