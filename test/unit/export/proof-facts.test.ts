import assert from 'node:assert/strict';
import { assembliesOf } from '../../../src/export/pictures/assemblies.ts';
import { hangingInWords, sizeOf } from '../../../src/export/proof/proof-facts.ts';
import { explodedDrawing } from '../../../src/export/pictures/exploded-drawing.ts';
import { PageBuilder } from '../../../src/export/page/page.ts';
import { bundledFace } from '../../fonts/faces.ts';
import { assertNear, make, specOf } from '../support/engine.ts';

describe('The size on a proof', () => {
  for (const [thickness, words] of [
    ['0.25 mm', '0.25 mm thick'],
    ['0.95 mm', '0.95 mm thick'],
    ['1.05 mm', '1.1 mm thick'],
    ['3 mm', '3 mm thick'],
  ] as const) {
    it(`states ${words}`, async () => {
      const { report } = await make(
        specOf(['plate: {rectangle: [60, 30]}'], 'body: plate', [`stock: {thickness: ${thickness}}`]),
      );
      const [assembly] = assembliesOf(report.tag!.pieces);
      assert.equal(sizeOf(assembly!, report.tag!), `60 mm wide, 30 mm high, ${words}`);
    });
  }
});

describe('The thicknesses of glued layers on a proof', () => {
  const layered = (units: string, back: string, front: string) => `tagwright: 1
units: ${units}
stocks: {one: {thickness: ${back}}, two: {thickness: ${front}}}
shapes: {plate: {rectangle: [60 mm, 30 mm]}, dot: {circle: 10 mm}}
pieces: {back: {body: plate, stock: one}, front: {body: dot, stock: two, glue_to: back}}
`;
  for (const [units, back, front, words] of [
    ['in', '1/8 in', '1/16 in', '0.1875 in thick (two layers: 0.125 in and 0.0625 in, glued)'],
    ['in', '1/16 in', '1/16 in', '0.125 in thick (two layers of 0.0625 in, glued)'],
    ['in', '1/8 in', '1/8 in', '0.25 in thick (two layers of 0.125 in, glued)'],
    ['in', '3 mm', '1/32 in', undefined],
    ['mm', '3 mm', '3 mm', '6 mm thick (two layers of 3 mm, glued)'],
    ['mm', '1.55 mm', '1.55 mm', '3.1 mm thick (two layers of 1.55 mm, glued)'],
    ['mm', '3 mm', '0.6 mm', '3.6 mm thick (two layers: 3 mm and 0.6 mm, glued)'],
  ] as const) {
    it(`add up in ${units}, of ${back} and ${front}`, async () => {
      const { report } = await make(layered(units, back, front));
      const [assembly] = assembliesOf(report.tag!.pieces);
      const size = sizeOf(assembly!, report.tag!);
      if (words !== undefined) assert.ok(size.endsWith(words), size);
      const [whole, ...each] = [...size.split('high, ')[1]!.matchAll(/([\d.]+) (?:mm|in)/g)].map(([, figure]) =>
        Number(figure),
      );
      const sum = each.length === 1 ? 2 * each[0]! : each[0]! + each[1]!;
      assert.ok(Math.abs(whole! - sum) < 1e-9, size);
    });
  }
});

describe('What a proof says a tag hangs on', () => {
  const spec = (upper: string, lower: string) =>
    [
      'tagwright: 1',
      'tie: {twine: 2 mm}',
      'shapes: {plate: {rectangle: [60, 40]}}',
      `pieces: {back: {body: plate, hanger: ${lower}}, front: {body: plate, glue_to: back, hanger: ${upper}}}`,
    ].join('\n');

  it('counts a hole through two layers once, by its narrowest place', async () => {
    const hole = '{hole: {at: top, diameter: 4 mm, inset: 5 mm}}';
    const wider = '{hole: {at: top, diameter: 6 mm, inset: 4 mm}}';
    for (const [upper, lower] of [
      [hole, hole],
      [wider, hole],
      [hole, wider],
    ] as const) {
      const { report } = await make(spec(upper, lower));
      assert.equal(hangingInWords(report.tag!), 'Twine 2 mm thick, through a hole 4 mm across');
    }
    const { report } = await make(spec(hole.replace('top', 'bottom'), hole));
    assert.equal(hangingInWords(report.tag!), 'Twine 2 mm thick, through two holes 4 mm across');
  });
});

describe('The layers of a proof', () => {
  it('are joined by guides that stand on the ends of their outline, and hide nothing of one another', async () => {
    const { report } = await make(
      [
        'tagwright: 1',
        'shapes: {plate: {circle: 40}}',
        'pieces: {back: {body: plate}, front: {body: plate, glue_to: back}}',
      ].join('\n'),
    );
    const [assembly] = assembliesOf(report.tag!.pieces);
    const page = new PageBuilder();
    const drawing = explodedDrawing(assembly!, report.tag!, { width: 200, height: 200 }, () => '');
    drawing.draw(page, 0, drawing.height, await bundledFace('Nunito'));
    const dashes = page.drawings.flatMap((each) => {
      if (!('path' in each) || each.path.length !== 2) return [];
      const [from, to] = each.path;
      return from!.type === 'M' && to!.type === 'L' ? [{ x: from!.x, from: from!.y, to: to!.y }] : [];
    });
    const sides = [...new Set(dashes.map(({ x }) => x))].sort((a, b) => a - b);
    assert.equal(sides.length, 2);
    // Leaning by 0.3, x + 0.3 y is largest on a circle at r √(1 + 0.3²); drawn 1.5 times as large.
    assertNear(sides[1]! - sides[0]!, 1.5 * 40 * Math.hypot(1, 0.3), 0.05);
    const [low, high] = [Math.min(...dashes.map(({ from }) => from)), Math.max(...dashes.map(({ to }) => to))];
    // The upper disc is lifted by more than the lower is high, 1.5 · 0.5 · 40 mm; the ends of its axis are that much apart again.
    const across = (2 * 0.5 * 1.5 * 20 * 0.3) / Math.hypot(1, 0.3);
    assert.ok(high - low - across > 1.5 * 0.5 * 40, `${high - low - across}`);
  });
});
