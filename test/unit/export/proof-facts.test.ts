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
