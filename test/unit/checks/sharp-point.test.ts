import assert from 'node:assert/strict';
import { findFixes } from '../../../src/fixes/find-fixes.ts';
import { centroid } from '../../../src/geometry/measure.ts';
import type { Point } from '../../../src/geometry/types.ts';
import { assertNear, make, newEngine, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertSilent, only } from './found.ts';

/** A triangle on a bar, with a point of so many degrees at the top. */
function point(
  degrees: number,
  head: readonly string[] = ['stock: {thickness: 3, min_web: 1.5}'],
  rotate = 0,
): Promise<Made> {
  const half = 40 * Math.tan((degrees * Math.PI) / 360);
  const path = `M0 0 L${half} 40 V60 H${-half} V40 Z`;
  return make(specOf([`body: {path: "${path}", rotate: ${rotate}}`], 'body: [body]', head));
}

/** Exact: how far from its end a straight point is as wide as that. */
const lengthTo = (width: number, degrees: number) => width / (2 * Math.tan((degrees * Math.PI) / 360));

const lengthIn = ({ message }: { message: string }) => Number(/last (\d+\.\d)/.exec(message)![1]);

describe('A sharp point', () => {
  it('is told with its length, at its end, however it is turned', async () => {
    for (const rotate of [0, 33, 90, 200]) {
      const made = await point(12, undefined, rotate);
      const issue = only(made, 'sharp-point');
      assert.equal(issue.severity, 'warning');
      assertNear(lengthIn(issue), lengthTo(0.8, 12), 0.15, `turned by ${rotate}`);
      assert.equal(placeOf(made.report, issue).line, 4);
      const [end] = issue.points!;
      // Of all corners the point is the farthest from the middle of mass.
      const middle = centroid(made.region)!;
      const away = ({ x, y }: Point) => Math.hypot(x - middle.x, y - middle.y);
      assertNear(away(end!), Math.max(...made.region[0]!.map(away)), 0.001);
    }
  });

  it('is one thinner than 0.8 mm over more than 2.5 mm', async () => {
    // Exact: 0.8 / (2·tan 9.09°) is 2.5.
    assertSilent(await point(19), 'sharp-point');
    only(await point(17.2), 'sharp-point');
  });

  it('is judged alike by whatever web is wanted, and by that where it is less', async () => {
    for (const minWeb of [1, 2, 3.2])
      assertNear(
        lengthIn(only(await point(12, [`stock: {thickness: 3, min_web: ${minWeb}}`]), 'sharp-point')),
        lengthTo(0.8, 12),
        0.2,
      );
    const card = ['stock: {thickness: 0.4, min_web: 0.5}'];
    assertSilent(await point(12, card), 'sharp-point');
    assertNear(lengthIn(only(await point(8, card), 'sharp-point')), lengthTo(0.5, 8), 0.15);
  });

  it('of the plate beside what is cut through it is told of as that, and rounded off', async () => {
    const text = specOf(
      ['plate: {rectangle: [80, 90]}', 'star: {path: "M0 0 H40 V60 H23 L20 20 L17 60 H0 Z"}'],
      'body: [plate], cut: [star]',
      ['stock: {thickness: 3, min_web: 1.5}'],
    );
    const made = await make(text);
    const issue = only(made, 'sharp-point');
    assert.match(issue.message, /^Beside the cut-out “star”, “tag” runs to a point thinner .* breaks off\.$/);
    const [fix] = await findFixes(newEngine(), made.report, issue, { locate: () => undefined });
    assert.equal(fix?.title, 'Round off the points beside “star”: radius 0.4 mm');
  });

  it('is longer by a wide kerf', async () => {
    const stock = (kerf: number) => [`stock: {thickness: 3, min_web: 2, kerf: ${kerf}}`];
    assertNear(lengthIn(only(await point(12, stock(0.2)), 'sharp-point')), lengthTo(0.8, 12), 0.15);
    assertNear(lengthIn(only(await point(12, stock(0.3)), 'sharp-point')), lengthTo(1.2, 12), 0.2);
  });

  it('is told once for a shape, with how many there are', async () => {
    const star = 'body: {path: "M0 -40 L4 -4 L40 0 L4 4 L0 40 L-4 4 L-40 0 L-4 -4 Z"}';
    const issue = only(
      await make(specOf([star], 'body: [body]', ['stock: {thickness: 3, min_web: 2}'])),
      'sharp-point',
    );
    // Exact: each tapers by 8 over 36, so it is 0.8 wide 3.6 from its end.
    assert.match(issue.message, /^4 points are thinner than 0\.80 mm over up to 3\.[67] mm/);
  });

  it('is told of an arrow, and of a swash that ends in a needle', async () => {
    const arrow = 'body: {arrow: {length: 90, width: 20, shaft: 12, tip: 14}}';
    only(await make(specOf([arrow])), 'sharp-point');
    const swash = 'body: {union: [{rectangle: [40, 12]}, {path: "M0 0 C20 -2 40 4 60 -6 C42 8 20 6 0 6 Z"}]}';
    only(
      await make(specOf([swash], 'body: [body], parts: many', ['stock: {thickness: 3, min_web: 1.5}'])),
      'sharp-point',
    );
  });
});

describe('No sharp point', () => {
  for (const [name, shape] of [
    [
      'a five-pointed star',
      '{path: "M0 -40 L9 -12.4 L38 -12.4 L14.5 4.7 L23.5 32.4 L0 15.3 L-23.5 32.4 L-14.5 4.7 L-38 -12.4 L-9 -12.4 Z"}',
    ],
    ['a triangle', '{polygon: {sides: 3, across: 40}}'],
    ['a heart', '{heart: 40}'],
    ['a leaf', '{path: "M0 0 C10 -16 30 -16 44 0 C30 16 10 16 0 0 Z"}'],
    ['a slim ellipse', '{ellipse: [60, 5]}'],
    ['an arrow with a notched tail', '{arrow: {length: 80, width: 26, shaft: 14, tip: 60, tail: notched, notch: 6}}'],
    ['a needle with a round end', '{from: needle, grow: 0.5}'],
    ['slab serifs', '{text: HERBS, font: Alfa Slab One, width: 90}'],
    ['brush script', '{text: Felicity, font: Pacifico, width: 110, grow: 0.3}'],
  ] as const) {
    it(`has ${name}`, async () => {
      const needle = 'needle: {path: "M0 0 L3 40 V60 H-3 V40 Z"}';
      const head = ['stock: {thickness: 3, min_web: 1.5}'];
      assertSilent(await make(specOf([needle, `body: ${shape}`], 'body: [body], parts: many', head)), 'sharp-point');
    });
  }

  it('is told where a pen script is thin all over, which is said already', async () => {
    const made = await make(
      specOf(['body: {text: Chives, font: Great Vibes, width: 80}'], 'body: [body], parts: many'),
    );
    only(made, 'thin-stroke');
    assertSilent(made, 'sharp-point');
  });

  it('is told of a piece that is glued on, and carried', async () => {
    const text = (glue: string) => `tagwright: 1
stock: {thickness: 3, min_web: 1.5}
shapes:
  plate: {rectangle: [40, 90]}
  needle: {path: "M0 0 L3 40 V60 H-3 V40 Z"}
pieces:
  back: {body: [plate]}
  front: {body: [needle]${glue}}
`;
    assertSilent(await make(text(', glue_to: back')), 'sharp-point');
    only(await make(text('')), 'sharp-point');
  });
});
