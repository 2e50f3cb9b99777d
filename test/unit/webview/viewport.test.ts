import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  actualScale,
  fitted,
  fittedAbove,
  gridStep,
  panned,
  scrolled,
  showing,
  toScreen,
  toWorld,
  transformOf,
  zoomedAt,
  type Box,
  type Viewport,
} from '../../../webview/common/camera/viewport.ts';

const stage = { width: 600, height: 400 };
const coordinate = fc.double({ min: -500, max: 500, noNaN: true });
const anyView = fc.record({ x: coordinate, y: coordinate, scale: fc.double({ min: 0.1, max: 200, noNaN: true }) });

function near(actual: readonly number[], expected: readonly number[], tolerance: number): void {
  assert.equal(actual.length, expected.length);
  actual.forEach((value, index) => {
    assert.ok(Math.abs(value - expected[index]!) <= tolerance, `${actual.join()} is not ${expected.join()}`);
  });
}

describe('The viewport', () => {
  it('shows a millimetre at its size when actual: an inch of 25.4 mm is 96 px (CSS Values)', () => {
    const view: Viewport = { x: 0, y: 0, scale: actualScale };
    near([toScreen(view, stage, [25.4, 0])[0] - toScreen(view, stage, [0, 0])[0]], [96], 1e-9);
  });

  it('fits a drawing where it stays as something opens below, until it has no room there', () => {
    const wide: Box = [0, 0, 90, 10];
    const [closed, open] = [fitted(wide, stage), fittedAbove(wide, { ...stage, height: 300 }, 100)];
    near(toScreen(open, { ...stage, height: 300 }, [10, 5]), toScreen(closed, stage, [10, 5]), 1e-9);
    assert.equal(open.scale, closed.scale);
    const tall: Box = [0, 0, 90, 60];
    const low = { ...stage, height: 300 };
    assert.deepEqual(fittedAbove(tall, low, 100), fitted(tall, low));
    assert.deepEqual(fittedAbove(tall, stage, 0), fitted(tall, stage));
  });

  it('keeps the point under the pointer while zooming', () => {
    fc.assert(
      fc.property(
        anyView,
        coordinate,
        coordinate,
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        (view, x, y, factor) => {
          near(toWorld(zoomedAt(view, stage, [x, y], factor), stage, [x, y]), toWorld(view, stage, [x, y]), 1e-6);
        },
      ),
    );
  });

  it('maps to the screen and back', () => {
    fc.assert(
      fc.property(anyView, coordinate, coordinate, (view, x, y) => {
        near(toWorld(view, stage, toScreen(view, stage, [x, y])), [x, y], 1e-6);
      }),
    );
  });

  it('moves what is drawn by as many pixels as the hand', () => {
    fc.assert(
      fc.property(anyView, coordinate, coordinate, (view, dx, dy) => {
        const [x, y] = toScreen(view, stage, [7, -3]);
        near(toScreen(panned(view, dx, dy), stage, [7, -3]), [x + dx, y + dy], 1e-6);
      }),
    );
  });

  it('never zooms to nothing or without end', () => {
    let view: Viewport = { x: 0, y: 0, scale: 1 };
    for (let step = 0; step < 100; step++) view = zoomedAt(view, stage, [10, 10], 4);
    assert.ok(view.scale <= 1000);
    for (let step = 0; step < 100; step++) view = zoomedAt(view, stage, [10, 10], 0.25);
    assert.ok(view.scale >= 0.01);
  });

  it('fits a drawing with a margin, whatever the shape of the panel', () => {
    const side = fc.double({ min: 1, max: 900, noNaN: true });
    fc.assert(
      fc.property(
        side,
        side,
        fc.integer({ min: 120, max: 2000 }),
        fc.integer({ min: 80, max: 2000 }),
        (w, h, width, height) => {
          const size = { width, height };
          const view = fitted([-5, -5, w - 5, h - 5], size);
          const [left, top] = toScreen(view, size, [-5, -5]);
          const [right, bottom] = toScreen(view, size, [w - 5, h - 5]);
          assert.ok(left > 0 && top > 0 && right < width && bottom < height);
        },
      ),
    );
  });

  it('fits a single point without dividing by nothing', () => {
    assert.ok(Number.isFinite(fitted([3, 3, 3, 3], stage).scale));
  });

  it('writes the transform that it computes with', () => {
    const view: Viewport = { x: 12, y: -8, scale: 4 };
    const [, x, y, scale] = /translate\((.*)px, (.*)px\) scale\((.*)\)/.exec(transformOf(view, stage))!.map(Number);
    near([x! + 30 * scale!, y! + 20 * scale!], toScreen(view, stage, [30, 20]), 0.02);
  });
});

describe('Scrolling', () => {
  const box: Box = [0, 0, 100, 50];

  it('leaves alone a drawing that fits', () => {
    const view = fitted(box, stage);
    assert.deepEqual(scrolled(view, stage, box, 120, 120), view);
  });

  it('moves one that does not, as far as its edge', () => {
    const view: Viewport = { x: 50, y: 25, scale: 20 };
    assert.equal(scrolled(view, stage, box, 100, 0).x, 55);
    const end = scrolled(view, stage, box, 1e6, 0);
    assert.ok(toScreen(end, stage, [100, 0])[0] > 0 && toScreen(end, stage, [100, 0])[0] < stage.width);
    assert.equal(end.y, 25);
  });

  it('never pulls back a drawing that was dragged away', () => {
    const view: Viewport = { x: 900, y: 25, scale: 20 };
    assert.equal(scrolled(view, stage, box, 10, 0).x, 900);
    assert.ok(scrolled(view, stage, box, -100, 0).x < 900);
  });
});

describe('Showing what the cursor made', () => {
  it('does not move what can be seen already', () => {
    const view: Viewport = { x: 50, y: 25, scale: 4 };
    assert.equal(showing(view, stage, [40, 20, 60, 30]), view);
    assert.equal(showing(view, stage, [-1000, -1000, 1000, 1000]), view);
  });

  it('centres what is out of sight, at the same zoom', () => {
    assert.deepEqual(showing({ x: 50, y: 25, scale: 40 }, stage, [200, 0, 210, 4]), { x: 205, y: 2, scale: 40 });
  });
});

describe('The grid', () => {
  it('is as fine as can be told apart', () => {
    assert.deepEqual(
      [0.05, 0.2, 2, 20].map((scale) => gridStep(scale, 'mm')),
      [1000, 100, 10, 1],
    );
    assert.deepEqual(
      [0.05, 0.2, 2, 20].map((scale) => Math.round(gridStep(scale, 'in') / 0.254) / 100),
      [100, 10, 1, 0.1],
    );
  });
});
