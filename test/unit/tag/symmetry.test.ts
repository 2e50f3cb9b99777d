import assert from 'node:assert/strict';
import { scaling, transform } from '../../../src/geometry/affine.ts';
import { difference } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, boxCentre } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { make, specOf } from '../support/engine.ts';

/** What of a region is not in its mirror image about the middle of its box, in mm². */
function lopsided(region: Region, way: 'left-right' | 'up-down'): number {
  const centre = boxCentre(boundsOf(region)!);
  const [x, y] = way === 'left-right' ? [-1, 1] : [1, -1];
  return area(difference(region, [transform(region, scaling(x, y, centre))]));
}

describe('What is symmetric', () => {
  // Exact but for Clipper's grid: a ten-thousandth of a millimetre along a metre of outline.
  const none = 1e-3;
  // Round corners of a growth are flattened to 0.005 mm from one side on.
  const grown = 0.05;
  for (const [body, ways] of [
    ['{rectangle: [60, 30], radius: 6}', ['left-right', 'up-down']],
    ['{ellipse: [70, 33]}', ['left-right', 'up-down']],
    ['{polygon: {sides: 6, across: 44}}', ['left-right', 'up-down']],
    ['{arrow: {length: 90, width: 36, shaft: 24}}', ['up-down']],
    ['{rectangle: [60, 30], grow: 2.5}', ['left-right', 'up-down']],
  ] as const) {
    for (const way of ways) {
      it(`stays so, also when it is hung in the middle: ${body}, ${way}`, async () => {
        const side = way === 'left-right' ? 'top' : 'left';
        for (const hanger of [`hole: {at: ${side}}`, `ring: {at: ${side}}`, `slot: {at: ${side}}`]) {
          const { region } = await make(specOf([`body: ${body}`], `body: [body], hanger: {${hanger}}`));
          assert.ok(
            lopsided(region, way) < (body.includes('grow') ? grown : none),
            `${hanger}: ${lopsided(region, way)} mm²`,
          );
        }
      });
    }
  }

  it('are two shapes stacked or put on one another', async () => {
    const shapes = [
      'neck: {rectangle: [26, 18], radius: 6}',
      'base: {rectangle: [84, 40], radius: 6}',
      'plate: {stack: {shapes: [neck, base]}}',
      'drop: {ellipse: [20, 12], place: {on: plate, part: base}}',
    ];
    const { region } = await make(specOf(shapes, 'body: [plate], cut: [drop], hanger: {slot: {at: top}}'));
    assert.ok(lopsided(region, 'left-right') < none);
  });
});
