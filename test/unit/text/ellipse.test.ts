import assert from 'node:assert/strict';
import { Ellipse } from '../../../src/text/ellipse.ts';
import { assertNear } from '../support/engine.ts';

/** The radius of the circle through three points: the product of the sides over four times the area (Euclid). */
function radiusThrough(points: readonly { readonly x: number; readonly y: number }[]): number {
  const [a, b, c] = points as [(typeof points)[0], (typeof points)[0], (typeof points)[0]];
  const sides = [
    [a, b],
    [b, c],
    [c, a],
  ].map(([p, q]) => Math.hypot(p!.x - q!.x, p!.y - q!.y));
  const twice = Math.abs((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y));
  return (sides[0]! * sides[1]! * sides[2]!) / (2 * twice);
}

describe('The sharpest turn of an ellipse', () => {
  it('is that of a circle through three points near each other, from its middle to there', () => {
    for (const [a, b] of [
      [30, 10],
      [12, 20],
      [15, 15],
    ] as const) {
      const ellipse = new Ellipse(a, b);
      for (const share of [0.02, 0.1, 0.2, 0.3, 0.45]) {
        const end = share * ellipse.perimeter;
        const radii = Array.from({ length: 60 }, (_, i) => {
          const [from, to] = [(i * end) / 60, ((i + 1) * end) / 60];
          const points = [from, (from + to) / 2, to].map((way) => {
            const angle = ellipse.angleAt(way);
            return { x: a * Math.sin(angle), y: b * Math.cos(angle) };
          });
          return radiusThrough(points);
        });
        assertNear(ellipse.leastRadius(end) / Math.min(...radii), 1, 0.06, `${a}, ${b} at ${share}`);
      }
    }
  });

  it('is that of the circle, wherever', () => {
    const circle = new Ellipse(7, 7);
    for (const way of [-5, 0, 3, 20]) assert.ok(Math.abs(circle.leastRadius(way) - 7) < 1e-9);
  });
});
