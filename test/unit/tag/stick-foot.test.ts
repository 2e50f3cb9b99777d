import assert from 'node:assert/strict';
import { intersection } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, boxRing, ringArea } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { assertNear, make, makeShape, specOf } from '../support/engine.ts';
import { intersectionAreaByJts } from '../support/reference.ts';

const width = 7;

async function stickUnder(text: string, keys = 'font: Pacifico, overlap: auto') {
  const name = [`name: {text: ${text}, width: 60, ${keys}}`];
  const { region } = await makeShape(`{stick: {carries: name, length: 50, width: ${width}}}`, name);
  const { region: letters } = await makeShape('{from: name}', name);
  return { stick: region, letters, box: boundsOf(letters)! };
}

const band = (minY: number, maxY: number): Region => [boxRing({ minX: -200, maxX: 200, minY, maxY })];

/** The fillets beside the strokes reach so far above the foot, in mm. */
const filletMm = 1;

// What is measured here is measured by jts.
describe('A stick under letters', () => {
  it('ends at their lower edge and leaves counters open', async () => {
    for (const [text, keys] of [
      ['Sorrel'],
      ['Mint'],
      ['DILL', 'font: Alfa Slab One, overlap: auto'],
      ['Mimosa', 'font: Nunito, weight: 800, overlap: auto'],
    ] as const) {
      const { stick, letters, box } = await stickUnder(text, keys);
      assert.ok(boundsOf(stick)!.maxY < box.minY + 1.5 + filletMm + 0.01, text);
      for (const ring of letters.filter((each) => -ringArea(each) > 3)) {
        const counter = [ring.toReversed()];
        assert.ok(intersectionAreaByJts(counter, stick) < 0.1 * area(counter), text);
      }
    }
  });

  it('has strokes on its foot that are as wide together as it is', async () => {
    for (const text of ['Sorrel', 'Mint', 'Sage']) {
      const { stick, letters } = await stickUnder(text);
      const top = boundsOf(stick)!.maxY - filletMm;
      const slab = band(top - 0.02, top - 0.01);
      const joint = intersectionAreaByJts(intersection(letters, stick), slab) / 0.01;
      assert.ok(joint > width - 0.1, `${text}: ${joint}`);
    }
  });

  it('stands beside a descender rather than over it', async () => {
    for (const text of ['Thyme', 'Sage', 'Jay']) {
      const { stick, letters, box } = await stickUnder(text);
      const tail = band(box.minY - 1, box.minY + 4);
      assert.ok(intersectionAreaByJts(letters, tail) > 5, text);
      assertNear(intersectionAreaByJts(intersection(letters, tail), stick), 0, 1e-6, text);
    }
  });

  it('has a foot as long to either side, and covers less than a millimetre of the letters', async () => {
    for (const [text, keys] of [['Sorrel'], ['Kale'], ['Onion', 'font: Nunito, weight: 800, overlap: auto']] as const) {
      const { stick, box } = await stickUnder(text, keys);
      const foot = boundsOf(intersection(stick, band(box.minY - 1.2, box.minY - 0.8)))!;
      const shaft = boundsOf(intersection(stick, band(box.minY - 30, box.minY - 25)))!;
      assertNear((foot.minX + foot.maxX) / 2, (shaft.minX + shaft.maxX) / 2, 0.05, text);
      const top = boundsOf(stick)!.maxY;
      assert.ok(top < box.minY + 0.8 + filletMm + 0.3, `${text}: ${top - box.minY}`);
    }
  });

  it('has such a foot beside a descender too: there the stick is moved rather than the foot longer to one side', async () => {
    for (const text of ['Jürgen', 'Rye']) {
      const { stick, box } = await stickUnder(text);
      const foot = boundsOf(stick)!;
      const shaft = boundsOf(intersection(stick, band(box.minY - 30, box.minY - 25)))!;
      // It is moved by eighths of its width.
      const aside = (foot.minX + foot.maxX - shaft.minX - shaft.maxX) / 2;
      assert.ok(Math.abs(aside) < width / 8, `${text}: ${aside.toFixed(2)} mm`);
    }
  });

  it('goes as deep as into any plate where the letters lie in one', async () => {
    const shapes = ['plate: {rectangle: [80, 40]}', 'name: {text: Basil, font: Pacifico, width: 60}'];
    const { bounds } = await makeShape('{stick: {carries: {union: [plate, name]}, length: 50, width: 6}}', shapes);
    assertNear(bounds.maxY, -20 + 6, 0.02);
  });

  it('is no bar below a word whose descenders are in the middle: it stands where the letters are', async () => {
    const name = ['name: {text: Gypsyweed, font: Pacifico, x_height: 10, overlap: auto, grow: 0.2}'];
    const { bounds } = await makeShape(`{stick: {carries: name, length: 80, width: ${width}}}`, name);
    const { bounds: letters } = await makeShape('{from: name}', name);
    const { bounds: plain } = await makeShape('{text: weed, font: Pacifico, x_height: 10, grow: 0.2}', name);
    // The d has no descender: from its top down to the line is as high as “weed” is.
    const line = letters.maxY - (plain.maxY - plain.minY);
    assert.ok(letters.minY < line - 5);
    assertNear(bounds.maxY, line + 0.8, filletMm, 'top of the foot');
  });

  it('brings no problem, nor a hair of material where its end only just meets a stroke', async () => {
    for (const name of ['text: Basil, font: Pacifico, width: 70', 'text: Ysop, font: Pacifico, x_height: 10']) {
      const shapes = [
        `name: {${name}, overlap: auto, grow: 0.2}`,
        'spike: {stick: {carries: name, length: 90, width: 7}}',
      ];
      assert.deepEqual((await make(specOf(shapes, 'body: [name, spike]'))).issues, [], name);
    }
  });
});
