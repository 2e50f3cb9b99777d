import assert from 'node:assert/strict';
import type { Contour, Segment } from '../../../src/geometry/contour.ts';
import type { Point } from '../../../src/geometry/types.ts';
import { withTabs } from '../../../src/toolpath/tabs.ts';
import { assertNear } from '../support/engine.ts';

const at = (x: number, y = 0): Point => ({ x, y });
const line = (x: number, y: number): Segment => ({ type: 'line', to: at(x, y) });
const closed = (start: Point, ...segments: Segment[]): Contour => ({ start, segments, closed: true });
const square = closed(at(0, 0), line(10, 0), line(10, 10), line(0, 10), line(0, 0));

/** Gaps are tab and kerf together; here 0.75 + 0.25 = 1 mm, so 0.5 mm either side of its middle. */
const [width, kerf] = [0.75, 0.25];

/** The nodes of each stretch, `x y`, to a millionth. */
function nodes(contours: readonly Contour[]): string[] {
  const written = ({ x, y }: Point) => [x, y].map((mm) => Number(mm.toFixed(6)) + 0).join(' ');
  return contours.map(({ start, segments }) => [start, ...segments.map(({ to }) => to)].map(written).join(', '));
}

describe('Tabs', () => {
  it('leave gaps as far from each other as they can be, the first at the start, and cut all else', () => {
    const cut = withTabs(square, { count: 2, width }, kerf);
    assert.deepEqual(nodes(cut), ['0.5 0, 10 0, 10 9.5', '9.5 10, 0 10, 0 0.5']);
    assert.ok(cut.every((contour) => !contour.closed));
    assert.deepEqual(nodes(withTabs(square, { count: 4, width }, kerf)), [
      '0.5 0, 9.5 0',
      '10 0.5, 10 9.5',
      '9.5 10, 0.5 10',
      '0 9.5, 0 0.5',
    ]);
  });

  it('may begin and end in corners', () => {
    assert.deepEqual(nodes(withTabs(square, { count: 1, width: 19.75 }, kerf)), ['10 0, 10 10, 0 10']);
  });

  it('take no more than half the way, or there are fewer, or none', () => {
    // Of 40 mm 20 may be gaps: four of 5, one of 20.
    assert.equal(withTabs(square, { count: 9, width: 4.75 }, kerf).length, 4);
    assert.equal(withTabs(square, { count: 9, width: 4.8 }, kerf).length, 3);
    assert.deepEqual(withTabs(square, { count: 2, width: 19.8 }, kerf), [square]);
  });

  it('cut arcs by their angle: 1 mm of a radius of 10 is a tenth of a radian', () => {
    for (const side of [1, -1]) {
      const half = (x: number): Segment => ({ type: 'arc', to: at(x, 0), centre: at(0, 0), sweep: side * Math.PI });
      const [cut, ...more] = withTabs(closed(at(10), half(-10), half(10)), { count: 1, width: 2 - kerf }, kerf);
      assert.equal(more.length, 0);
      const [x, y] = [10 * Math.cos(0.1), side * 10 * Math.sin(0.1)];
      assert.deepEqual(
        nodes([cut!]),
        nodes([{ start: at(x, y), segments: [line(-10, 0), line(x, -y)], closed: false }]),
      );
      for (const segment of cut!.segments) {
        assert.ok(segment.type === 'arc');
        assertNear(segment.sweep, side * (Math.PI - 0.1), 1e-9);
      }
    }
  });

  it('cut cubics by their length, however their parameter runs', () => {
    // x = 30·t³ and straight, so as long as x is; back again likewise.
    const there: Segment = { type: 'cubic', c1: at(0), c2: at(0), to: at(30) };
    const back: Segment = { type: 'cubic', c1: at(30), c2: at(30), to: at(0) };
    const gap = { width: 6 - kerf };
    assert.deepEqual(nodes(withTabs(closed(at(0), there, back), { count: 2, ...gap }, kerf)), [
      '3 0, 27 0',
      '27 0, 3 0',
    ]);
    assert.deepEqual(nodes(withTabs(closed(at(0), there, back), { count: 1, ...gap }, kerf)), ['3 0, 30 0, 3 0']);
  });
});
