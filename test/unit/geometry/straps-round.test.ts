import assert from 'node:assert/strict';
import { intersection, union } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, boxCentre } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import { strappedAs } from '../../../src/geometry/straps-round.ts';
import type { Side } from '../../../src/geometry/types.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { assertNear, make, report, specOf } from '../support/engine.ts';
import { box, disc } from '../support/shapes.ts';

/** A frame 60 by 80 mm with a rim of 5 mm, and in it a block of 20 by 30 mm; between them 15 mm at the sides, 20 mm above and below. */
const frame: Region = [box(-30, -40, 30, 40), box(-25, -35, 25, 35).toReversed()];
const framed: Region = [...frame, box(-10, -15, 10, 15)];

const side: Readonly<Record<Side, { readonly x: number; readonly y: number }>> = {
  right: { x: 17.5, y: 0 },
  left: { x: -17.5, y: 0 },
  top: { x: 0, y: 25 },
  bottom: { x: 0, y: -25 },
};

describe('Straps at sides', () => {
  for (const sides of [['left', 'right'], ['top', 'bottom'], ['left'], ['top']] as const)
    it(`stand at ${sides.join(' and ')}, straight out and as wide as asked, and come out nowhere else`, () => {
      const { region, strips } = strappedAs(framed, { width: 3, sides });
      assert.equal(partsOf(region).length, 1);
      assert.equal(strips.length, sides.length);
      strips.forEach((strip, index) => {
        const middle = boxCentre(boundsOf([strip])!);
        const { x, y } = side[sides[index]!];
        assertNear(middle.x, x, 0.8, 'across');
        assertNear(middle.y, y, 0.8, 'up');
      });
      // By area: 3 mm times each gap.
      const gap = sides.reduce((sum, each) => sum + (side[each].y === 0 ? 15 : 20), 0);
      assertNear(area(region) - area(framed), 3 * gap, 0.01, 'area of the straps');
    });

  it('end within a rim thinner than they are wide', () => {
    const thin: Region = [box(-30, -40, 30, 40), box(-29, -39, 29, 39).toReversed()];
    const { region } = strappedAs([...thin, box(-10, -15, 10, 15)], { width: 6, sides: ['left', 'top'] });
    assert.deepEqual(boundsOf(region), boundsOf(thin));
  });

  it('join letters side by side once, and what has nothing there where it is nearest', () => {
    const row: Region = [box(0, 0, 10, 20), box(14, 0, 24, 20), box(28, 0, 50, 20)];
    const { region, strips } = strappedAs(row, { width: 2, sides: ['left', 'right'] });
    assert.equal(strips.length, 2);
    assertNear(area(region) - area(row), 2 * 8, 0.01);
    const above = strappedAs(row, { width: 2, sides: ['top'] });
    assert.equal(partsOf(above.region).length, 1);
  });
});

describe('Straps at both sides of a letter with an accent', () => {
  // An E whose foot is longer than its arms: the shortest strap at the right is at the foot, at the left anywhere.
  const letter = union([[box(-8, -15, -3, 15)], [box(-3, 11, 6, 15)], [box(-3, -2, 4, 2)], [box(-3, -15, 9, -11)]]);
  const accent = [box(-1, 17, 4, 20)];

  for (const asked of [{ sides: ['left', 'right'] as const }, { count: 2 }])
    it(`are in one line, and the accent stands on its letter: ${Object.keys(asked)[0]!}`, () => {
      const { region, strips } = strappedAs([...frame, ...letter, ...accent], { width: 3, ...asked });
      assert.equal(partsOf(region).length, 1);
      assert.equal(strips.length, 3);
      const [one, other, post] = strips.map((strip) => boundsOf([strip])!);
      // So many of them start towards what is nearest, here above the accent.
      const ends = 'sides' in asked ? (['minY', 'maxY'] as const) : (['minX', 'maxX'] as const);
      for (const end of ends) assertNear(one![end], other![end], 1e-6, end);
      assertNear(one![ends[1]] - one![ends[0]], 3, 1e-6, 'straight');
      // From the arm at 15 to the accent at 17, half a width into either.
      assertNear(post!.minY, 15 - 1.5, 1e-6);
      assertNear(post!.maxY, 17 + 1.5, 1e-6);
      assert.ok(post!.minX > -3 && post!.maxX < 6, `${post!.minX} to ${post!.maxX}`);
    });

  it('stand where each is shortest if one line would make them much longer', () => {
    // A Z of two arms, each near the frame at its own end.
    const arms = union([[box(-23, 5, 2, 15)], [box(-2, -15, 2, 15)], [box(-2, -15, 23, -5)]]);
    const { strips } = strappedAs([...frame, ...arms], { width: 3, sides: ['left', 'right'] });
    const [left, right] = strips.map((strip) => boxCentre(boundsOf([strip])!));
    assert.ok(left!.y > 5 && right!.y < -5, `${left!.y}, ${right!.y}`);
  });
});

describe('A number of straps', () => {
  for (const count of [1, 2, 3, 4, 6])
    it(`of ${count} stand evenly round each part`, () => {
      const hoop: Region = [disc(0, 0, 30), disc(0, 0, 26).toReversed()];
      const wheel: Region = [...hoop, disc(0, 0, 10)];
      const { region, strips } = strappedAs(wheel, { width: 2, count });
      assert.equal(strips.length, count);
      const angles = strips
        .map((strip) => boxCentre(boundsOf([strip])!))
        .map(({ x, y }) => (Math.atan2(y, x) * 180) / Math.PI)
        .sort((a, b) => a - b);
      angles.forEach((angle, k) => {
        const next = angles[(k + 1) % count]! + (k === count - 1 ? 360 : 0);
        assertNear(next - angle, 360 / count, 2, 'degrees between two');
      });
      // Each shows in the gap as a bar of 2 mm.
      const ring: Region = [disc(0, 0, 20), disc(0, 0, 19.9).toReversed()];
      assertNear(area(intersection(region, ring)) / 0.1, 2 * count, 0.05 * count, 'mm of straps in the gap');
    });
});

describe('Straps of a spec', () => {
  const spec = (straps: string): string =>
    specOf(
      [
        'plate: {rectangle: [60, 80]}',
        'window: {rectangle: [50, 70]}',
        'block: {rectangle: [20, 30]}',
        'frame: {difference: [plate, window]}',
        `all: {union: [frame, block], straps: ${straps}}`,
      ],
      'body: all',
    );

  it('are as the group says, and as a mere width where they are nearest', async () => {
    const plain = 60 * 80 - 50 * 70 + 20 * 30;
    for (const [straps, more] of [
      ['3 mm', 15 * 3],
      ['{width: 3 mm, at: top-bottom}', 2 * 20 * 3],
      ['{width: 2 mm, count: 4}', 2 * (15 + 15 + 20 + 20)],
    ] as const)
      assertNear((await make(spec(straps))).area, plain + more, 0.5, straps);
  });

  it('have sides or a number, not both', async () => {
    const { issues, source } = await report(spec('{width: 3 mm, at: left, count: 2}'));
    assert.equal(issues.length, 1);
    assert.match(issues[0]!.message, /“count” spreads the straps round each part, “at” names their sides/);
    assert.equal(source.text.slice(issues[0]!.range.start, issues[0]!.range.end), 'count');
  });
});
